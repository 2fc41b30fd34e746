"""The refusals of generator/science/months.py, and that a year is a year."""

from __future__ import annotations

import numpy as np
import pytest

from generator.science.months import MONTH_LENGTHS, months_where, twelve


def test_months_make_a_year_of_365_days() -> None:
    """Twelve months, February with 28 days."""
    assert (12, 28, 365) == (len(MONTH_LENGTHS), MONTH_LENGTHS[1], sum(MONTH_LENGTHS))


def test_twelve_numbers_pass_unchanged() -> None:
    """Whole numbers become floats; nothing else changes."""
    assert [float(value) for value in range(12)] == twelve("x", range(12)).tolist()


@pytest.mark.parametrize(
    ("values", "found"), [([], "0"), (range(13), "13"), ([[1.0] * 12], r"shape \(1, 12\)"), (5.0, r"shape \(\)")]
)
def test_other_shapes_are_told(values: object, found: str) -> None:
    """The error names the series and says how many values there are."""
    with pytest.raises(ValueError, match=f"^temp: expected 12 values, January to December, found {found}$"):
        twelve("temp", values)


@pytest.mark.parametrize("bad", [float("nan"), float("inf"), None])
def test_values_that_are_no_numbers_are_told(bad: float | None) -> None:
    """The error names the month."""
    with pytest.raises(ValueError, match="^temp: expected finite values, found (nan|inf) in month 2$"):
        twelve("temp", [1.0, bad] + [1.0] * 10)


def test_limits_themselves_are_allowed() -> None:
    """Least and greatest value count as inside; beyond them the month is named."""
    twelve("hours", [0.0, 24.0] * 6, low=0.0, high=24.0)
    with pytest.raises(ValueError, match="^hours: expected values from 0 to 24, found 24.5 in month 4$"):
        twelve("hours", [0.0, 24.0, 0.0, 24.5] + [1.0] * 8, low=0.0, high=24.0)


def test_months_are_counted_from_one() -> None:
    """January is 1, December 12."""
    assert (1, 12) == months_where(np.array([True] + [False] * 10 + [True]))
