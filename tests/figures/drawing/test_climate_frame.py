"""The frame that climate diagrams share."""

from __future__ import annotations

import pytest

from figures.drawing.climate_frame import Frame, bounds, cold_stretches, month_names


@pytest.mark.parametrize("heights, step, expected", (
    ((3, 18), 10, (0, 20)), ((0, 19.5), 10, (0, 30)), ((-3, 15), 10, (-10, 20)), ((-30, 15), 20, (-40, 20)), ((-39.5, 101), 20, (-60, 120)),
))  # fmt: skip
def test_bounds_are_whole_steps_with_a_little_room_and_start_at_zero_unless_it_freezes(heights, step, expected):
    assert expected == bounds(heights, step)


def test_months_and_heights_have_their_places():
    frame = Frame(left=100, right=220, top=10, bottom=110, low=-10, high=40)
    assert (160.0, 90.0) == frame.place(6, 0)
    assert 6 == frame.month(frame.x(6))


def test_a_southern_year_starts_in_july():
    assert ("Jul", "Dec", "Jan", "Jun") == tuple(month_names(southern=True)[place] for place in (0, 5, 6, 11))
    assert "Jan" == month_names(southern=False)[0]


@pytest.mark.parametrize(("temps", "southern", "expected"), (
    ([-1] * 12, False, [(0, 12)]), ([0] * 12, False, []), ([-1, 0, *[5] * 10], False, [(0, 1)]), ([-0.1] + [5] * 11, True, [(6, 7)]),
    ([-5, -2] + [3] * 8 + [-1, -4], False, [(0, 2), (10, 12)]), ([-5, -2] + [3] * 8 + [-1, -4], True, [(4, 8)]),
))  # fmt: skip
def test_stretches_of_months_below_zero_follow_the_order_of_the_frame(temps: list[float], southern: bool, expected: list[tuple[int, int]]):
    assert expected == cold_stretches(temps, southern)
