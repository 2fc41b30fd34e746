"""Slips in an exponent are told at their place; numbers that occur are not."""

from __future__ import annotations

import pytest

from generator.course.magnitude import beyond_measure
from generator.records.located import located


def found(text: str) -> list[tuple[object, str]]:
    return [(finding.path, finding.found) for finding in beyond_measure(located(text.encode(), "f").value)]


@pytest.mark.parametrize("number", ["0", "-0.0", "0.0007", "-273.15", "3.9e18", "1e24", "1e-15", "true", "unknown", "'1e300'"])
def test_sizes_that_occur_are_fine(number: str) -> None:
    assert [] == found(f"stock: {number}")


@pytest.mark.parametrize("number", ["1.1e24", "-1e300", "9e-16", "-1e-300"])
def test_sizes_that_do_not_occur_are_told_as_written(number: str) -> None:
    assert [(("stock",), number)] == found(f"stock: {number}")


def test_all_numbers_at_any_depth_are_looked_at() -> None:
    text = "fluxes:\n  - rate: {low: 1e-99, high: 2}\n  - rates: [1, 1e99, 3e99]\n"
    low, second, third = ("fluxes", 0, "rate", "low"), ("fluxes", 1, "rates", 1), ("fluxes", 1, "rates", 2)
    assert [(low, "1e-99"), (second, "1e99"), (third, "3e99")] == found(text)
