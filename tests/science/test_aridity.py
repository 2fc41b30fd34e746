"""Properties and edges of generator/science/aridity.py; outside values are in test_checks.py."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS
from generator.science.aridity import ARIDITY_CLASSES, aridity_class, is_cold

NAMES = [name for _, name in ARIDITY_CLASSES]


@given(st.floats(0, 1e6))
def test_class_is_the_only_one_whose_limits_enclose_the_index(index: float) -> None:
    """The class found has its upper limit above the index and its lower limit at or below it."""
    place = NAMES.index(aridity_class(index) or "")
    lower = ARIDITY_CLASSES[place - 1][0] if place else 0.0
    assert lower <= index < ARIDITY_CLASSES[place][0]


@given(st.floats(0, 10), st.floats(0, 10))
def test_a_larger_index_is_never_a_drier_class(index: float, more: float) -> None:
    """Classes are ordered from dry to wet."""
    assert NAMES.index(aridity_class(index + more) or "") >= NAMES.index(aridity_class(index) or "")


def test_limits_rise_and_leave_no_gap() -> None:
    """The limits are in order and the last one is open."""
    limits = [limit for limit, _ in ARIDITY_CLASSES]
    assert all(low < high for low, high in pairwise(limits))
    assert math.inf == limits[-1]


def test_index_is_undefined_where_nothing_evaporates() -> None:
    """The expression divides by zero there; the class of an undefined index is undefined."""
    with pytest.raises(ZeroDivisionError):
        METHODS["aridity_index"].compute(annual_precip=1.0, potential_evapotranspiration=0.0)
    assert aridity_class(None) is None


def test_no_rain_is_hyper_arid() -> None:
    """A place without rain has index 0."""
    index = METHODS["aridity_index"].compute(annual_precip=0.0, potential_evapotranspiration=1100.0)
    assert "hyper-arid" == aridity_class(index)


@pytest.mark.parametrize("index", [-0.01, math.nan, math.inf])
def test_impossible_index_is_refused(index: float) -> None:
    """Negative or endless indices are errors, never a class."""
    with pytest.raises(ValueError, match="aridity_index: expected a finite number from 0, found"):
        aridity_class(index)


@given(st.floats(0, 5000), st.floats(1, 3000), st.floats(0.01, 100))
def test_index_does_not_depend_on_the_unit_of_water(precip: float, demand: float, factor: float) -> None:
    compute = METHODS["aridity_index"].compute
    once = compute(annual_precip=precip, potential_evapotranspiration=demand)
    assert once == pytest.approx(compute(annual_precip=factor * precip, potential_evapotranspiration=factor * demand))


@given(st.lists(st.floats(-50, 40), min_size=12, max_size=12), st.floats(0, 30), st.permutations(range(12)))
def test_a_warmer_year_is_never_cold_where_the_colder_one_is_not(temp: list[float], warmer: float, order: list[int]) -> None:
    """And the order of the months does not matter."""
    assert is_cold(temp) or not is_cold([value + warmer for value in temp])
    assert is_cold(temp) == is_cold([temp[month] for month in order])


@pytest.mark.parametrize(
    ("temp", "cold"),
    [
        ([-10.0] * 12, True), ([-0.1] * 7 + [6.0] * 5, True), ([-0.1] * 6 + [6.0] * 6, False), ([0.0] * 6 + [-0.1] * 6, False),
        ([-0.1] * 9 + [6.01] * 3, True), ([-0.1] * 8 + [6.01] * 4, False), ([25.0] * 12, False),
    ],
)  # fmt: skip
def test_cold_is_more_than_six_months_of_frost_and_at_most_three_above_six_degrees(temp: list[float], cold: bool) -> None:
    """Each limit on both of its sides, a year of frost and a year without."""
    assert cold is is_cold(temp)
