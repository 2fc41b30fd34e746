"""Properties and edges of generator/science/evapotranspiration.py; outside values are in test_checks.py."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS
from generator.science.evapotranspiration import (
    HOT_BRANCH_FROM,
    heat_index,
    monthly_pet,
    thornthwaite_pet,
    unadjusted_pet,
)
from generator.science.months import MONTH_LENGTHS

temperatures = st.lists(st.floats(-60, 50), min_size=12, max_size=12)
latitudes = st.floats(-90, 90)


@given(latitudes, temperatures)
def test_pet_is_finite_and_never_negative(latitude: float, temp: list[float]) -> None:
    """Up to 50 degC the method gives plain numbers from 0 up."""
    assert all(math.isfinite(pet) and pet >= 0 for pet in monthly_pet(latitude, temp))


@given(latitudes, temperatures)
def test_pet_is_zero_where_it_freezes(latitude: float, temp: list[float]) -> None:
    """A month at or below 0 degC has exactly no potential evapotranspiration."""
    frozen = [pet for pet, t in zip(monthly_pet(latitude, temp), temp, strict=True) if t <= 0]
    assert [0.0] * len(frozen) == frozen


@given(temperatures, st.integers(1, 11))
def test_starting_the_year_elsewhere_only_moves_the_values(temp: list[float], shift: int) -> None:
    """Without day lengths and month lengths no month is special."""
    moved = unadjusted_pet(temp[shift:] + temp[:shift])
    expected = unadjusted_pet(temp)
    assert list(expected[shift:] + expected[:shift]) == pytest.approx(list(moved), rel=1e-9, abs=1e-9)


@given(temperatures)
def test_equator_has_no_season_but_the_temperature(temp: list[float]) -> None:
    """At the equator the months differ from the standard month by their lengths only."""
    expected = [pet * days / 30 for pet, days in zip(unadjusted_pet(temp), MONTH_LENGTHS, strict=True)]
    assert expected == pytest.approx(list(monthly_pet(0.0, temp)), rel=1e-9, abs=1e-12)


@given(st.floats(26.5, 37.4), st.floats(0, 26))
def test_hot_branch_does_not_depend_on_the_other_months(hot: float, mild: float) -> None:
    """From 26.5 degC on a month's value is the same whatever the rest of the year is like."""
    assert unadjusted_pet([hot] + [0.0] * 11)[0] == unadjusted_pet([hot] + [mild] * 11)[0]


def test_hot_branch_starts_at_its_limit() -> None:
    """At 26.5 degC the curve holds, just below it the power law."""
    curve = -415.85 + 32.24 * HOT_BRANCH_FROM - 0.43 * HOT_BRANCH_FROM**2
    assert curve == pytest.approx(unadjusted_pet([HOT_BRANCH_FROM] * 12)[0], abs=1e-9)
    assert curve != pytest.approx(unadjusted_pet([HOT_BRANCH_FROM - 1e-6] * 12)[0], abs=1.0)


def test_a_year_of_frost_gives_nothing() -> None:
    """With no month above 0 degC the heat index is 0, and so is every month, without 0/0."""
    assert 0.0 == heat_index([-1.0] * 11 + [0.0])
    assert (0.0,) * 12 == monthly_pet(-90.0, [-1.0] * 11 + [0.0])


def test_polar_night_gives_nothing() -> None:
    """A mild month without daylight has no potential evapotranspiration."""
    assert 0.0 == monthly_pet(90.0, [5.0] * 12)[0]


def test_annual_value_is_the_sum_of_the_months() -> None:
    """The year's value is what the table by month adds up to."""
    pet = monthly_pet(46.5, [-9, -6, 0, 8, 14, 19, 22, 21, 15, 8, 0, -7])
    assert sum(pet) == pytest.approx(METHODS["potential_evapotranspiration"].compute(monthly_pet=list(pet)), abs=1e-9)


def test_too_hot_is_refused() -> None:
    """Above 50 degC the curve for hot months has no meaning."""
    with pytest.raises(ValueError, match="monthly_mean_temp: expected values from -inf to 50, found 51 in month 7"):
        monthly_pet(20.0, [30.0] * 6 + [51.0] + [30.0] * 5)


def test_impossible_day_length_is_refused() -> None:
    """A day has no more than 24 h."""
    with pytest.raises(ValueError, match="monthly_day_length: expected values from 0 to 24, found 25 in month 1"):
        thornthwaite_pet([10.0] * 12, [25.0] * 12, [30] * 12)


def test_impossible_month_length_is_refused() -> None:
    """A month has 28 to 31 days."""
    with pytest.raises(ValueError, match="days_in_month: expected values from 28 to 31, found 3 in month 2"):
        thornthwaite_pet([10.0] * 12, [12.0] * 12, [31, 3] + [30] * 10)


def test_latitude_off_the_globe_is_refused() -> None:
    """The latitude is checked before anything is computed."""
    with pytest.raises(ValueError, match=r"latitude: expected -90 to 90 \[deg\], found 146.5"):
        monthly_pet(146.5, [10.0] * 12)


@given(temperatures, st.permutations(range(12)))
def test_heat_index_does_not_ask_when_it_is_warm(temp: list[float], order: list[int]) -> None:
    """Frost counts as nothing, so that the index grows with every warm month alone."""
    assert heat_index(temp) == pytest.approx(heat_index([max(temp[month], 0.0) for month in order]))
    assert heat_index([*temp[:11], 20.0]) >= heat_index([*temp[:11], 0.0]) + 1


@given(st.floats(0, 160), st.floats(0, 20))
def test_exponent_rises_with_the_heat_index(index: float, more: float) -> None:
    compute = METHODS["thornthwaite_exponent"].compute
    assert compute(heat_index=0.0) <= compute(heat_index=index) <= compute(heat_index=index + more)


def test_exponent_of_a_year_of_frost_is_that_of_the_paper() -> None:
    """Source: the constant of Thornthwaite's cubic, 0.49239."""
    assert 0.49239 == METHODS["thornthwaite_exponent"].compute(heat_index=0.0)


@given(temperatures, st.lists(st.floats(0, 24), min_size=12, max_size=12))
def test_twice_the_daylight_is_twice_the_water(temp: list[float], hours: list[float]) -> None:
    half = thornthwaite_pet(temp, [value / 2 for value in hours], [30] * 12)
    assert [2 * pet for pet in half] == pytest.approx(list(thornthwaite_pet(temp, hours, [30] * 12)))
