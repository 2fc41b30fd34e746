"""The drawn production profile: depth downwards, to scale, the compensation depth where the lines cross, words that keep apart."""

from __future__ import annotations

import pytest

from tests.figures.drawn import corners, words
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
