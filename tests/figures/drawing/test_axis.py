"""Axes of numbers: marks that are round and few, labels with the decimals of their step, legends that keep to their rows."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from figures import BarredMean, BarredSeries
from figures.drawing.axis import ends_of, legend_rows, mark_label, marks_between, round_ends, round_step

numbers = st.floats(-1e6, 1e6)


def series(*labels: str) -> list[BarredSeries]:
    return [BarredSeries(label=label, role="ink", mark="circle", means=()) for label in labels]


@given(numbers, numbers, st.integers(3, 12))
def test_ends_are_round_and_hold_what_lies_between(one: float, other: float, most: int) -> None:
    low, high = sorted((one, other))
    start, end, step = round_ends(low, high, most)
    assert start <= low + 1e-6 * step and high - 1e-6 * step <= end
    assert f"{step:.0e}"[0] in "125"
    assert len(marks_between(start, end, step)) <= most + 3


@given(st.floats(1e-9, 1e9), st.integers(2, 12))
def test_step_is_the_smallest_round_one_that_is_few_enough(span: float, most: int) -> None:
    step = round_step(span, most)
    assert span / step <= most * (1 + 1e-6)
    assert span / step > most / 2.6


def test_ends_of_a_single_value_leave_room_around_it() -> None:
    start, end, _ = round_ends(5.0, 5.0, 7)
    assert start < 5.0 < end
    assert round_ends(0.0, 0.0, 7)[0] < 0.0


@pytest.mark.parametrize(("number", "step", "label"), [(0.2, 0.2, "0.2"), (-0.4, 0.2, "−0.4"), (1e-17, 0.2, "0"), (20.0, 20.0, "20"), (7.5, 0.5, "7.5"), (0.025, 0.005, "0.025")])
def test_labels_have_the_decimals_of_the_step(number: float, step: float, label: str) -> None:
    assert label == mark_label(number, step)


def test_legend_goes_on_in_a_second_row() -> None:
    rows = legend_rows(series("Gross production", "Respiration", "Net production"), 14.5, 12, 300)
    assert [0, 0, 1] == [row for _, _, row in rows]
    assert rows[0][1] == rows[2][1]


def test_ends_reach_to_bars_and_readings() -> None:
    one = BarredSeries(label="a", role="ink", mark="circle", means=(BarredMean(0, 5, 2, (9.0,)), BarredMean(1, 4)))
    assert [3, 7, 9, 4, 4] == ends_of([one])
