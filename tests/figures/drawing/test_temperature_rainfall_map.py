"""The drawn map: places by climate, names where they fit, numbers where they do not, and no region as an answer."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from figures import TemperatureRainfallMap
from figures.drawing.temperature_rainfall_map import axes_of, coinciding
from tests.figures.drawn import drawn
from tests.figures.overview_specimens import MAPS, REGIONS, rainfall_map

FEW, MANY, EMPTY, BARE, _, TWINS = MAPS
CROWD = rainfall_map("Crowd", REGIONS, *((f"Twin town number {n}", 9.9, 800, "x") for n in range(9)), *(
    (f"A town with a long name, number {n}", 10.5 + n % 5, 700 + 40 * n, "x") for n in range(16)
))  # fmt: skip


def texts(chart: TemperatureRainfallMap) -> list[str]:
    return [element.text for element in ElementTree.fromstring(drawn(chart)).findall(".//{*}text")]


def points(chart: TemperatureRainfallMap, part: str) -> list[tuple[float, float]]:
    path = ElementTree.fromstring(drawn(chart)).find(f".//*[@data-part='{part}']").get("d")
    return [tuple(map(float, point.split())) for point in re.findall(r"[-\d.]+ [-\d.]+", path)]


@pytest.mark.parametrize("chart", (FEW, MANY), ids=lambda chart: chart.name)
def test_stations_stand_at_their_climate(chart: TemperatureRainfallMap):
    axes = axes_of(chart)
    for station in chart.stations:
        place = axes.place(station.annual_mean_temp_degc, station.annual_precip_mm)
        assert place == pytest.approx(points(chart, f"station {station.id}")[0], abs=0.01)


def test_warmer_is_right_and_wetter_is_up_in_even_steps():
    axes = axes_of(FEW)
    (x0, y0), (x1, y1), (x2, y2) = (axes.place(10 * n, 1000 * n) for n in range(3))
    assert (x1 - x0, y0 - y1) == pytest.approx((x2 - x1, y1 - y2))
    assert x0 < x1 and y1 < y0


def test_an_outline_is_drawn_through_all_its_corners():
    for region in REGIONS:
        axes = axes_of(EMPTY)
        expected = [pytest.approx(axes.place(*corner), abs=0.01) for corner in region.outline]
        assert expected == points(EMPTY, f"region {region.id}")[: len(expected)]


def test_every_region_is_named_in_the_map_or_by_a_letter_with_a_key():
    for chart in MAPS[:3]:
        words = re.sub(r"/ ", "/", " ".join(texts(chart)))
        assert [] == [region.label for region in chart.regions if region.label not in words]


def test_stations_carry_their_names_where_these_find_room():
    for chart in (FEW, MANY):
        assert "1" not in texts(chart)
        assert {station.label for station in chart.stations} <= set(texts(chart))


def test_stations_whose_names_find_no_room_carry_numbers_with_a_key():
    says = texts(CROWD)
    on_the_axis = ("10", "15", "20", "25")
    assert [2] * 16 == [says.count(number) - (number in on_the_axis) for number in map(str, range(10, 26))]
    assert {station.label for station in CROWD.stations} <= set(says)


def test_stations_at_one_place_share_a_label_that_names_them_all():
    near = ("Amber Head", 16.7, 516.0, "Woodland/shrubland"), ("Cape Sorrel", 16.6, 533.0, "Woodland/shrubland")
    root = ElementTree.fromstring(drawn(rainfall_map("near", REGIONS, *near)))
    (x1, y1), (x2, y2) = (
        (float(e.get("x")), float(e.get("y"))) for e in root.findall(".//{*}text") if e.text in ("Amber Head", "Cape Sorrel")
    )  # fmt: skip
    assert x1 == x2 and 10 < y2 - y1 < 20
    assert {"station s0", "station s1"} <= {e.get("data-part") for e in root.findall(".//{*}path")}


def test_numbers_of_stations_at_one_place_stand_together():
    assert "1, 2, 3, 4, 5, 6, 7, 8, 9" in texts(CROWD)


@pytest.mark.parametrize(("dots", "expected"), (
    ([], []), ([(0, 0)], [[0]]), ([(0, 0), (9, 0)], [[0], [1]]), ([(0, 0), (4, 0), (8, 0), (50, 0)], [[0, 1, 2], [3]]),
    ([(0, 0), (8, 0), (4, 0)], [[0, 1, 2]]),
))  # fmt: skip
def test_dots_that_cover_each_other_are_one_group(dots: list[tuple[float, float]], expected: list[list[int]]):
    assert expected == coinciding(dots)


def test_a_station_in_no_region_is_a_ring_and_the_map_says_what_rings_are():
    assert {"in a region", "in no region"} <= set(texts(FEW))
    assert "in no region" not in texts(TWINS)
    assert "in no region" not in texts(BARE)


def test_the_axes_grow_with_what_is_shown():
    assert (5000, 500) == axes_of(EMPTY).precips[1:]
    assert -20 == axes_of(EMPTY).temps[0]
    wet = rainfall_map("wet", REGIONS, ("Wet Hill", 17.3, 11_800, ""))
    assert axes_of(wet).precips[1] >= 11_800


def test_map_tells_which_stations_share_a_dot_and_that_the_dot_tells_the_region():
    pair = rainfall_map("Pair", REGIONS, ("Amber Head", 16.0, 530, "x"), ("Cape Sorrel", 16.05, 532, "x"), ("Far", 25.0, 2000, "x"))
    told = " ".join(texts(pair))
    assert "Amber Head and Cape Sorrel share a dot" in told
    assert "A station lies in the region in which its dot stands." in told
    assert "share a dot" not in " ".join(texts(FEW))
