"""Whittaker's biome regions on the map of temperature and precipitation, and which of them a climate falls in."""

from __future__ import annotations

import csv
import math
from collections.abc import Mapping, Sequence
from functools import cache
from importlib.resources import files
from itertools import pairwise
from types import MappingProxyType

from generator.science.method import Method

Outline = tuple[tuple[float, float], ...]
NAMES = MappingProxyType(
    {
        "tundra": "Tundra",
        "boreal_forest": "Boreal forest",
        "temperate_seasonal_forest": "Temperate seasonal forest",
        "temperate_rain_forest": "Temperate rain forest",
        "tropical_rain_forest": "Tropical rain forest",
        "tropical_seasonal_forest_savanna": "Tropical seasonal forest/savanna",
        "subtropical_desert": "Subtropical desert",
        "temperate_grassland_desert": "Temperate grassland/desert",
        "woodland_shrubland": "Woodland/shrubland",
    }
)
"""The nine regions by id, named as in the source."""


@cache
def outlines() -> Mapping[str, Outline]:
    """The outline of each region by id: corners as (annual mean temperature [degC], annual precipitation [mm])."""
    text = files("generator.science").joinpath("biome_regions.csv").read_text("utf-8")
    ids = {name: region for region, name in NAMES.items()}
    corners: dict[str, list[tuple[float, float]]] = {region: [] for region in NAMES}
    for row in csv.DictReader(text.splitlines()):
        corners[ids[row["biome"]]].append((float(row["temp_c"]), 10.0 * float(row["precip_cm"])))
    return MappingProxyType({region: tuple(points) for region, points in corners.items()})


def biome_region(annual_mean_temp: float, annual_precip: float) -> str | None:
    """The region of the map that a climate lies in.

    Parameters
    ----------
    annual_mean_temp : float
        Annual mean temperature [degC].
    annual_precip : float
        Annual precipitation [mm].

    Returns
    -------
    str or None
        The id of the region, or None where the climate lies in none: cold deserts, ice and very wet places do.

    Raises
    ------
    ValueError
        If an argument is not finite.

    Notes
    -----
    The regions do not overlap but for the width of a line; there the first in the order of `NAMES` is given.

    References
    ----------
    .. [1] WHITTAKER1975
    .. [2] RICKLEFS2008
    .. [3] PLOTBIOMES

    Examples
    --------
    >>> biome_region(10.0, 200.0)
    'temperate_grassland_desert'
    """
    if not (math.isfinite(annual_mean_temp) and math.isfinite(annual_precip)):
        raise ValueError(f"expected finite numbers, found {annual_mean_temp} and {annual_precip}")
    return next((region for region, line in outlines().items() if _inside(line, annual_mean_temp, annual_precip)), None)


def _inside(outline: Sequence[tuple[float, float]], x: float, y: float) -> bool:
    """Even-odd rule: a ray from the point crosses the outline an odd number of times."""
    inside = False
    for (x1, y1), (x2, y2) in pairwise((*outline, outline[0])):
        if (y1 > y) != (y2 > y) and x < x1 + (y - y1) * (x2 - x1) / (y2 - y1):
            inside = not inside
    return inside


BIOME_REGION = Method(
    id="biome_region",
    name="Region on the temperature-rainfall map",
    formula=(),
    rule="The region whose outline encloses the point of annual mean temperature and annual precipitation.",
    symbols=(),
    sources=("WHITTAKER1975", "RICKLEFS2008", "PLOTBIOMES"),
    limits="A typical region, not a verdict: season, soil, fire and height are left out, borders are drawn with a thick "
    "pen, and many real places lie in no region or in the one beside.",
    function=biome_region,
)
