"""The drawn production profile: depth downwards, to scale, the compensation depth where the lines cross, words that keep apart."""

from __future__ import annotations

from itertools import combinations
from xml.etree import ElementTree

import pytest

from figures.drawing.text import text_width
from tests.figures.drawn import corners, drawn, words
from tests.figures.water_specimens import CAVE, LAKE_BY_DEPTH, POND

def test_lines_are_to_scale_in_both_directions() -> None:
    (line,), ((zero, top), (_, bottom)) = corners(LAKE_BY_DEPTH, "line Gross production"), corners(LAKE_BY_DEPTH, "zero")[0]
    across, down = (line[0][0] - zero) / 0.83, (bottom - top) / 10.6
    expected = [(zero + across * value, top + down * depth) for depth, value in zip([0, 2, 4, 7, 10], [0.83, 0.9, 0.63, 0.19, 0.04], strict=True)]
    assert [pytest.approx(point, abs=0.1) for point in expected] == line


def test_bars_reach_to_both_sides_of_their_means() -> None:
    (line,), bars = corners(LAKE_BY_DEPTH, "line Respiration"), corners(LAKE_BY_DEPTH, "bar Respiration")
    assert [pytest.approx(x, abs=0.1) for x, _ in line] == [(a[0] + b[0]) / 2 for a, b in bars]
    assert [] == corners(CAVE, "bar Respiration")


def test_compensation_depth_lies_where_the_lines_cross_and_where_nothing_is_left_over() -> None:
    ((_, y), _) = corners(LAKE_BY_DEPTH, "compensation depth")[0]
    (net,), ((zero, _), _) = corners(LAKE_BY_DEPTH, "line Net production"), corners(LAKE_BY_DEPTH, "zero")[0]
    (x0, y0), (x1, y1) = net[2], net[3]
    assert y == pytest.approx(y0 + (zero - x0) / (x1 - x0) * (y1 - y0), abs=0.3)
    assert "compensation depth 6.38 m" in words(LAKE_BY_DEPTH)


def test_without_losses_nothing_is_hatched_and_without_a_crossing_nothing_dashed() -> None:
    assert ("Hatched" in words(LAKE_BY_DEPTH), "Hatched" in words(POND)) == (True, False)
    assert [] == corners(POND, "compensation depth")


def test_no_bar_covers_another_and_the_ones_that_hang_are_told() -> None:
    """At the surface respiration and net production lie 0.03 apart, their bars reach 0.05 to either side."""
    bars = [ends for one in LAKE_BY_DEPTH.series for ends in corners(LAKE_BY_DEPTH, f"bar {one.label}")]
    level = [(min(a[0], b[0]), max(a[0], b[0]), a[1]) for a, b in bars]
    assert 15 == len(level)
    assert [] == [(one, other) for one, other in combinations(level, 2) if abs(one[2] - other[2]) < 5 and one[0] < other[1] and other[0] < one[1]]
    assert ("hangs below" in words(LAKE_BY_DEPTH), "hangs below" in words(POND)) == (True, False)


def test_names_keep_inside_the_frame_and_off_the_hatching_where_there_is_room() -> None:
    ((_, _), (right, _)) = corners(LAKE_BY_DEPTH, "surface")[0]
    ((zero, _), _) = corners(LAKE_BY_DEPTH, "zero")[0]
    names = {e.text: float(e.get("x", "nan")) for e in ElementTree.fromstring(drawn(LAKE_BY_DEPTH)).findall(".//{*}text") if (e.text or "").endswith("production")}
    halves = {name: text_width(name, 14.5, bold=True) / 2 for name in names}
    assert {"Gross production", "Net production"} == set(names)
    assert [] == [name for name, x in names.items() if x + halves[name] > right or x - halves[name] < zero]
