"""Life zones after Holdridge: what would grow, from the warmth that plants can use and the water that it takes."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np

from generator.science.method import Method
from generator.science.months import twelve

MOST_USEFUL = 30.0
"""Monthly mean [degC] beyond which warmth is not counted."""
PET_FACTOR = 58.93
"""Potential evapotranspiration of a year for each degree of biotemperature [mm]."""
DECIMALS = 9
"""Biotemperature and ratio are rounded to so many decimals before they are compared with limits."""

BELTS: tuple[tuple[float, str], ...] = (
    (1.5, "polar"),
    (3.0, "subpolar"),
    (6.0, "boreal"),
    (12.0, "cool temperate"),
    (18.0, "warm temperate"),
    (24.0, "subtropical"),
    (math.inf, "tropical"),
)
"""The belts from cold to warm, each with the biotemperature [degC] that it stays below."""

ZONES: dict[str, tuple[tuple[float, str], ...]] = {
    "polar": ((math.inf, "desert"),),
    "subpolar": (
        (0.25, "rain tundra"), (0.5, "wet tundra"), (1.0, "moist tundra"), (4.0, "dry tundra"), (math.inf, "desert"),
    ),
    "boreal": (
        (0.25, "rain forest"), (0.5, "wet forest"), (1.0, "moist forest"), (2.0, "dry scrub"), (math.inf, "desert"),
    ),
    "cool temperate": (
        (0.25, "rain forest"), (0.5, "wet forest"), (1.0, "moist forest"), (2.0, "steppe"), (4.0, "desert scrub"),
        (math.inf, "desert"),
    ),
    "warm temperate": (
        (0.25, "rain forest"), (0.5, "wet forest"), (1.0, "moist forest"), (2.0, "dry forest"), (4.0, "thorn steppe"),
        (8.0, "desert scrub"), (math.inf, "desert"),
    ),
    "subtropical": (
        (0.25, "rain forest"), (0.5, "wet forest"), (1.0, "moist forest"), (2.0, "dry forest"), (4.0, "thorn woodland"),
        (8.0, "desert scrub"), (math.inf, "desert"),
    ),
    "tropical": (
        (0.25, "rain forest"), (0.5, "wet forest"), (1.0, "moist forest"), (2.0, "dry forest"), (4.0, "very dry forest"),
        (8.0, "thorn woodland"), (16.0, "desert scrub"), (math.inf, "desert"),
    ),
}  # fmt: skip
"""The zones of each belt from wet to dry, each with the ratio of demand to precipitation [-] that it stays below."""


def biotemperature(monthly_mean_temp: Sequence[float]) -> float:
    """The mean of the year's warmth that plants can use.

    Parameters
    ----------
    monthly_mean_temp : sequence of float, length 12
        Mean temperature of each month [degC], January first.

    Returns
    -------
    float
        Biotemperature [degC], 0 to 30.

    Raises
    ------
    ValueError
        If the series is not twelve finite numbers.

    Notes
    -----
    Months below 0 degC count 0, months above 30 degC count 30. Some works set months above 30 degC to 0, others correct hot
    months by latitude; that changes hot places only.

    References
    ----------
    .. [1] HOLDRIDGE1967

    Examples
    --------
    >>> biotemperature([-10.0] * 6 + [10.0] * 6)
    5.0
    """
    temp = twelve("monthly_mean_temp", monthly_mean_temp)
    return float(np.mean(temp.clip(0.0, MOST_USEFUL)))


def life_zone(biotemperature: float, annual_precip: float) -> str:
    """The life zone of a climate: its belt of warmth, then what its moisture lets grow.

    Parameters
    ----------
    biotemperature : float
        As `biotemperature` gives it [degC], 0 to 30.
    annual_precip : float
        Precipitation of the year [mm], not negative.

    Returns
    -------
    str
        Such as `cool temperate steppe`.

    Raises
    ------
    ValueError
        If an argument is out of its range.

    Notes
    -----
    Belts are cut by biotemperature alone, zones by `pet_ratio` alone; the hexagons of the original drawing have cut
    corners. A limit belongs to the warmer belt and to the drier zone. Warm temperate and subtropical were parted by frost;
    18 degC stands in for it, as in [2]_.

    References
    ----------
    .. [1] HOLDRIDGE1967
    .. [2] CLIMACLASS

    Examples
    --------
    >>> life_zone(15.2, 804.0)
    'warm temperate dry forest'
    """
    ratio = pet_ratio(biotemperature, annual_precip)
    belt = belt_of(biotemperature)
    return f"{belt} {next(zone for limit, zone in ZONES[belt] if ratio < limit or limit == math.inf)}"


def belt_of(biotemperature: float) -> str:
    """The first belt whose upper limit lies above the biotemperature [degC].

    Raises
    ------
    ValueError
        If it does not lie between 0 and 30.
    """
    if not 0.0 <= biotemperature <= MOST_USEFUL:
        raise ValueError(f"biotemperature: expected 0 to 30 [degC], found {biotemperature:g}")
    return next(belt for limit, belt in BELTS if round(biotemperature, DECIMALS) < limit)


def pet_ratio(biotemperature: float, annual_precip: float) -> float:
    """Demand of the year over its precipitation [-], by Holdridge's own estimate of demand; infinite without precipitation.

    Raises
    ------
    ValueError
        If the precipitation is negative or not finite.
    """
    if not 0.0 <= annual_precip < math.inf:
        raise ValueError(f"annual_precip: expected a finite number from 0 [mm], found {annual_precip:g}")
    return round(PET_FACTOR * biotemperature / annual_precip, DECIMALS) if annual_precip else math.inf


BIOTEMPERATURE = Method(
    id="biotemperature",
    name="Biotemperature after Holdridge",
    formula=("biotemperature = mean(useful_temp)",),
    rule="Months below 0 °C count 0 °C, months above 30 °C count 30 °C.",
    symbols=(
        ("biotemperature", "mean of the warmth that plants can use", "degC"),
        ("useful_temp", "mean temperature of each month, kept between 0 and 30 °C", "degC"),
    ),
    sources=("HOLDRIDGE1967",),
    limits="Other works let months above 30 °C count 0, or correct hot months by latitude; so hot places differ from one to the other.",
    function=biotemperature,
)

LIFE_ZONE = Method(
    id="life_zone",
    name="Life zone after Holdridge",
    formula=("demand_ratio = 58.93 * biotemperature / annual_precip",),
    rule="The biotemperature gives the belt: below 1.5 °C polar, 3 subpolar, 6 boreal, 12 cool temperate, 18 warm temperate, "
    "24 subtropical, else tropical. The ratio of demand to precipitation gives the zone in the belt: below 0.25 rain, "
    "0.5 wet, 1 moist, 2 dry, then drier and drier.",
    symbols=(
        ("demand_ratio", "what plants could use over what falls; larger is drier", ""),
        ("biotemperature", "biotemperature, its number in °C", ""),
        ("annual_precip", "annual precipitation, its number in mm", ""),
    ),
    sources=("HOLDRIDGE1967", "CLIMACLASS"),
    limits="It names what the climate would let grow, made first for the tropics. Seasons, soil and fire are left out. Its belts are "
    "named after latitudes; on mountains the same warmth means other plants. Warm temperate and subtropical were parted by "
    "frost; 18 °C stands in for it.",
    function=life_zone,
)
