"""Potential evapotranspiration after Thornthwaite: what plants could use if water never ran short."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from generator.science.day_length import monthly_day_length
from generator.science.method import Method
from generator.science.months import MONTH_LENGTHS, twelve

HOT_BRANCH_FROM = 26.5
"""Monthly mean temperature [degC] from which the curve for hot months replaces the power law."""
LEAST_HEAT_INDEX = 2.0
"""Heat index [-] below which the power law gives absurdly much: 416 mm a year for a place with a July of 4 degC."""


def heat_index(monthly_mean_temp: Sequence[float]) -> float:
    """Thornthwaite's annual heat index, the warmth of the year in one number.

    Parameters
    ----------
    monthly_mean_temp : sequence of float, length 12
        Mean temperature of each month of a mean year [degC], January first.

    Returns
    -------
    float
        Heat index (a plain number), 0 where no month is above 0 degC.

    Raises
    ------
    ValueError
        If the series is not twelve finite numbers.

    Notes
    -----
    To be taken from the mean year, never from single years.

    References
    ----------
    .. [1] THORNTHWAITE1948

    Examples
    --------
    >>> heat_index([5.0] * 6 + [-5.0] * 6)
    6.0
    """
    temp = twelve("monthly_mean_temp", monthly_mean_temp)
    return float(np.sum((temp.clip(min=0.0) / 5.0) ** 1.514))


def unadjusted_pet(monthly_mean_temp: Sequence[float]) -> tuple[float, ...]:
    """Potential evapotranspiration as if every month had 30 days of 12 hours of daylight.

    Not to be set against the rain of real months: use `monthly_pet` for that.

    Parameters
    ----------
    monthly_mean_temp : sequence of float, length 12
        Mean temperature of each month of a mean year [degC], January first, at most 50 degC.

    Returns
    -------
    tuple of float, length 12
        Potential evapotranspiration [mm month-1], January first, never negative.

    Raises
    ------
    ValueError
        If the series is not twelve finite numbers up to 50 degC.

    Notes
    -----
    A month at or below 0 degC gives 0, and so does a year of such months (no 0/0). From 26.5 degC the curve of [2]_
    takes over, which does not depend on the heat index; it falls again above 37.5 degC and would be negative from
    about 58 degC. Some public libraries lack this branch and give a hot place nearly half as much again.
    Very cold places, with a heat index below about `LEAST_HEAT_INDEX`, get absurdly high values in their summer.

    References
    ----------
    .. [1] THORNTHWAITE1948
    .. [2] WILLMOTT1985

    Examples
    --------
    >>> unadjusted_pet([-10.0] * 12)[0]
    0.0
    >>> round(unadjusted_pet([10.0] * 12)[0], 1)
    48.9
    """
    temp = twelve("monthly_mean_temp", monthly_mean_temp, high=50.0)
    index = heat_index(monthly_mean_temp)
    if index == 0.0:
        return (0.0,) * 12
    exponent = THORNTHWAITE_EXPONENT.compute(heat_index=index)
    warm = temp.clip(min=0.0)
    mild = 16.0 * (10.0 * warm / index) ** exponent
    hot = -415.85 + 32.24 * warm - 0.43 * warm**2
    return tuple(np.where(warm >= HOT_BRANCH_FROM, hot, mild).tolist())


def thornthwaite_pet(
    monthly_mean_temp: Sequence[float], monthly_day_length: Sequence[float], days_in_month: Sequence[float]
) -> tuple[float, ...]:
    """Potential evapotranspiration of each month, for day lengths and month lengths that are given.

    Needs only temperature and day length, so it suits comparing climates; it ignores wind and humidity, so it does not
    suit planning irrigation.

    Parameters
    ----------
    monthly_mean_temp : sequence of float, length 12
        Mean temperature of each month of a mean year [degC], January first, at most 50 degC.
    monthly_day_length : sequence of float, length 12
        Mean day length of each month [h], 0 to 24.
    days_in_month : sequence of float, length 12
        Length of each month [d], 28 to 31; 30 throughout leaves the length of months out.

    Returns
    -------
    tuple of float, length 12
        Potential evapotranspiration [mm month-1], January first, never negative.

    Raises
    ------
    ValueError
        If an argument is not twelve finite numbers within its range.

    References
    ----------
    .. [1] THORNTHWAITE1948
    .. [2] WILLMOTT1985

    Examples
    --------
    >>> round(thornthwaite_pet([10.0] * 12, [12.0] * 12, [30] * 12)[0], 1)
    48.9
    """
    pet = np.asarray(unadjusted_pet(monthly_mean_temp))
    hours = twelve("monthly_day_length", monthly_day_length, low=0.0, high=24.0)
    days = twelve("days_in_month", days_in_month, low=28.0, high=31.0)
    return tuple((pet * (hours / 12.0) * (days / 30.0)).tolist())


def monthly_pet(latitude: float, monthly_mean_temp: Sequence[float]) -> tuple[float, ...]:
    """Potential evapotranspiration of each month of a mean year at a place.

    Parameters
    ----------
    latitude : float
        Latitude [deg], -90 to 90, south negative.
    monthly_mean_temp : sequence of float, length 12
        Mean temperature of each month [degC], January first, at most 50 degC.

    Returns
    -------
    tuple of float, length 12
        Potential evapotranspiration [mm month-1], January first, never negative.

    Raises
    ------
    ValueError
        If an argument is out of its range, or the series is not twelve finite numbers.

    Notes
    -----
    `thornthwaite_pet` with the FAO-56 day length averaged over each month's days, and the months of a year of 365 days.

    References
    ----------
    .. [1] THORNTHWAITE1948
    .. [2] WILLMOTT1985
    .. [3] FAO56

    Examples
    --------
    >>> sum(monthly_pet(-90.0, [-28.0] * 12))
    0.0
    """
    return thornthwaite_pet(monthly_mean_temp, monthly_day_length(latitude), MONTH_LENGTHS)


THORNTHWAITE_EXPONENT = Method(
    id="thornthwaite_exponent",
    name="Exponent of Thornthwaite's power law",
    formula=("exponent = 6.75e-7 * heat_index ** 3 - 7.71e-5 * heat_index ** 2 + 1.792e-2 * heat_index + 0.49239",),
    symbols=(("exponent", "exponent of the power law", ""), ("heat_index", "heat index of the year", "")),
    sources=("THORNTHWAITE1948",),
    limits="A fit to measurements, with no law of nature behind its numbers.",
)

_TEMPERATURES = ("monthly_mean_temp", "mean temperature of each month", "degC")
_PET_LIMITS = (
    "Knows temperature and day length only: wind, dry air and cloud are left out. "
    "It is too high in the short summers of very cold places."
)
_HEAT_INDEX_LINE = "heat_index = sum((monthly_mean_temp / 5) ** 1.514)"
_PET_LINES = (
    _HEAT_INDEX_LINE,
    *THORNTHWAITE_EXPONENT.formula,
    "unadjusted_pet = 16 * (10 * monthly_mean_temp / heat_index) ** exponent",
    "unadjusted_pet_when_hot = -415.85 + 32.24 * monthly_mean_temp - 0.43 * monthly_mean_temp ** 2",
)
_PET_RULE = "Months at or below 0 °C count 0; the line for hot months holds from 26.5 °C on."
_PET_SYMBOLS = (
    ("unadjusted_pet", "potential evapotranspiration of a month of 30 days of 12 h", "mm"),
    ("unadjusted_pet_when_hot", "the same for months from 26.5 °C on, where the power law no longer holds", "mm"),
    _TEMPERATURES,
    *THORNTHWAITE_EXPONENT.symbols,
)
_ADJUSTED_LINE = "monthly_pet = unadjusted_pet * (monthly_day_length / 12) * (days_in_month / 30)"
_ADJUSTED_SYMBOLS = (
    ("monthly_pet", "potential evapotranspiration of each month", "mm"),
    ("monthly_day_length", "mean day length of each month", "h"),
    ("days_in_month", "days in each month", "d"),
    *_PET_SYMBOLS,
)

HEAT_INDEX = Method(
    id="heat_index",
    name="Thornthwaite's heat index",
    formula=(_HEAT_INDEX_LINE,),
    rule="Months at or below 0 °C count 0.",
    symbols=(("heat_index", "heat index of the year", ""), _TEMPERATURES),
    sources=("THORNTHWAITE1948",),
    limits="Made from the months of a mean year, not of a single one.",
    function=heat_index,
)

UNADJUSTED_PET = Method(
    id="unadjusted_pet",
    name="Potential evapotranspiration of a standard month after Thornthwaite",
    formula=_PET_LINES,
    rule=_PET_RULE,
    symbols=_PET_SYMBOLS,
    sources=("THORNTHWAITE1948", "WILLMOTT1985"),
    limits=_PET_LIMITS,
    function=unadjusted_pet,
)

THORNTHWAITE_PET = Method(
    id="thornthwaite_pet",
    name="Potential evapotranspiration after Thornthwaite, day lengths given",
    formula=(*_PET_LINES, _ADJUSTED_LINE),
    rule=_PET_RULE,
    symbols=_ADJUSTED_SYMBOLS,
    sources=("THORNTHWAITE1948", "WILLMOTT1985"),
    limits=_PET_LIMITS,
    function=thornthwaite_pet,
)

MONTHLY_PET = Method(
    id="monthly_pet",
    name="Potential evapotranspiration of each month after Thornthwaite",
    formula=(*_PET_LINES, _ADJUSTED_LINE),
    rule=_PET_RULE,
    symbols=_ADJUSTED_SYMBOLS,
    sources=("THORNTHWAITE1948", "WILLMOTT1985", "FAO56"),
    limits=_PET_LIMITS,
    function=monthly_pet,
)

POTENTIAL_EVAPOTRANSPIRATION = Method(
    id="potential_evapotranspiration",
    name="Potential evapotranspiration of the year after Thornthwaite",
    formula=("potential_evapotranspiration = sum(monthly_pet)",),
    symbols=(
        ("potential_evapotranspiration", "potential evapotranspiration of the year", "mm"),
        ("monthly_pet", "potential evapotranspiration of each month", "mm"),
    ),
    sources=("THORNTHWAITE1948", "WILLMOTT1985", "FAO56"),
    limits=_PET_LIMITS,
)
