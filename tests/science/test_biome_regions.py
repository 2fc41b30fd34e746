"""Regions of the temperature-rainfall map: areas of the outlines, and the edges of what they enclose."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science.biome_regions import NAMES, biome_region, outlines

# Areas [degC cm] by shapely 2.2.0, Polygon(corners).area after buffer(0) where the outline touches itself; library.
AREAS = {
    "tundra": 382.600, "boreal_forest": 863.666, "temperate_seasonal_forest": 1943.010, "temperate_rain_forest": 726.301,
    "tropical_rain_forest": 1216.397, "tropical_seasonal_forest_savanna": 1857.836, "subtropical_desert": 918.940,
    "temperate_grassland_desert": 694.171, "woodland_shrubland": 963.039,
}  # fmt: skip


def area(outline: tuple[tuple[float, float], ...]) -> float:
    """Shoelace formula, in degC cm."""
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairwise((*outline, outline[0])))) / 2 / 10


@pytest.mark.parametrize("region", NAMES)
def test_outline_has_the_area_that_a_geometry_library_gives(region: str) -> None:
    assert AREAS[region] == pytest.approx(area(outlines()[region]), rel=1e-3)


def test_all_regions_of_the_source_are_there() -> None:
    assert (9, 775) == (len(outlines()), sum(map(len, outlines().values())))


@given(st.floats(-60, 60), st.floats(0, 6000))
def test_every_climate_has_a_region_or_none(temp: float, precip: float) -> None:
    assert biome_region(temp, precip) in {None, *NAMES}


@given(st.floats(-60, -20) | st.floats(35, 60), st.floats(0, 6000))
def test_climates_colder_or_hotter_than_the_map_have_none(temp: float, precip: float) -> None:
    assert biome_region(temp, precip) is None


def test_numbers_that_are_not_finite_are_refused() -> None:
    with pytest.raises(ValueError, match="finite"):
        biome_region(math.nan, 100.0)
