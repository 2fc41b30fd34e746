"""Regions of the temperature-rainfall map: areas of the outlines, and the edges of what they enclose."""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from generator.science.biome_regions import NAMES, biome_region, outlines

# Areas [degC cm] by shapely 2.2.0, Polygon(corners).area after buffer(0) where the outline touches itself; library.
AREAS = {
    "tundra": 382.600, "boreal_forest": 863.666, "temperate_seasonal_forest": 1943.010, "temperate_rain_forest": 726.301,
    "tropical_rain_forest": 1216.397, "tropical_seasonal_forest_savanna": 1857.836, "subtropical_desert": 918.940,
    "temperate_grassland_desert": 694.171, "woodland_shrubland": 963.039,
}  # fmt: skip

SHAPES = {region: shapely.make_valid(shapely.Polygon(outline)) for region, outline in outlines().items()}
EDGES = [edge for outline in outlines().values() for edge in pairwise((*outline, outline[0])) if edge[0] != edge[1]]
HAIR = 1e-4
"""A step off a line, in degC and in mm: far more than rounding, far less than a region."""


def by_shapely(temps: np.ndarray, precips: np.ndarray) -> list[list[str]]:
    """For each point the regions that enclose it or on whose line it lies, in the order of NAMES."""
    within = {region: shapely.intersects_xy(shape, temps, precips) for region, shape in SHAPES.items()}
    return [[region for region in NAMES if within[region][k]] for k in range(len(temps))]


def area(outline: tuple[tuple[float, float], ...]) -> float:
    """Shoelace formula, in degC cm."""
    return abs(sum(x1 * y2 - x2 * y1 for (x1, y1), (x2, y2) in pairwise((*outline, outline[0])))) / 2 / 10


@pytest.mark.parametrize("region", NAMES)
def test_outline_has_the_area_that_a_geometry_library_gives(region: str) -> None:
    assert AREAS[region] == pytest.approx(area(outlines()[region]), rel=1e-3)


def test_points_all_over_the_map_lie_where_shapely_finds_them() -> None:
    """Source: shapely.intersects_xy on the outlines made valid."""
    drawn = np.random.default_rng(1975)
    temps, precips = drawn.uniform(-18.0, 33.0, 2000), drawn.uniform(0.0, 4700.0, 2000)
    found = [biome_region(*point) for point in zip(temps, precips, strict=True)]
    assert {None, *NAMES} == set(found)
    assert [next(iter(regions), None) for regions in by_shapely(temps, precips)] == found


def test_a_hair_off_every_line_and_corner_lies_where_shapely_finds_it() -> None:
    """To both sides of the middle of each edge, and left and right of, above and below each corner."""
    middles = np.array([((x1 + x2) / 2, (y1 + y2) / 2) for (x1, y1), (x2, y2) in EDGES])
    corners = np.array([start for start, _ in EDGES])
    steps = HAIR * np.array([(1, 0), (-1, 0), (0, 1), (0, -1)])
    points = np.concatenate([base + step for base in (middles, corners) for step in steps])
    lines = shapely.MultiLineString(EDGES)
    clear = points[shapely.distance(lines, shapely.points(points)) > HAIR / 1e4]
    assert len(clear) > 0.95 * len(points)
    found = [biome_region(*point) for point in clear.tolist()]
    assert [next(iter(regions), None) for regions in by_shapely(*clear.T)] == found


def test_on_a_line_or_corner_the_region_is_one_that_meets_there_or_none() -> None:
    points = np.array([point for (x1, y1), (x2, y2) in EDGES for point in ((x1, y1), ((x1 + x2) / 2, (y1 + y2) / 2))])
    shapes = {region: shapely.buffer(shape, HAIR) for region, shape in SHAPES.items()}
    for x, y in points.tolist():
        region = biome_region(x, y)
        assert region is None or shapely.intersects_xy(shapes[region], x, y)


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
