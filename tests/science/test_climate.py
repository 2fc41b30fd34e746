"""Properties and edges of generator/science/climate.py; outside values are in test_checks.py."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS
from generator.science.climate import (
    dry_months,
    extreme_months,
    growing_season_months,
    months_below_freezing,
    precipitation_seasonality,
)

temperatures = st.lists(st.floats(-60, 45), min_size=12, max_size=12)
precipitations = st.lists(st.floats(0, 900), min_size=12, max_size=12)


def half_a_year_later(months: tuple[int, ...]) -> tuple[int, ...]:
    return tuple(sorted((month + 5) % 12 + 1 for month in months))


@given(temperatures, precipitations)
def test_other_hemisphere_shifts_every_month_by_six(temp: list[float], precip: list[float]) -> None:
    """The same climate half a year later has the same months, six further on."""
    later_temp, later_precip = temp[6:] + temp[:6], precip[6:] + precip[:6]
    assert half_a_year_later(dry_months(temp, precip)) == dry_months(later_temp, later_precip)
    assert half_a_year_later(growing_season_months(temp)) == growing_season_months(later_temp)
    assert half_a_year_later(months_below_freezing(temp)) == months_below_freezing(later_temp)
    assert half_a_year_later(extreme_months(precip, largest=False)) == extreme_months(later_precip, largest=False)


@given(temperatures, precipitations)
def test_frozen_months_are_never_dry_and_never_grow(temp: list[float], precip: list[float]) -> None:
    """A month below freezing is in neither of the two warm lists."""
    frozen = set(months_below_freezing(temp))
    assert set() == frozen & (set(dry_months(temp, precip)) | set(growing_season_months(temp)))


@given(temperatures, precipitations)
def test_more_rain_never_makes_a_month_dry(temp: list[float], precip: list[float]) -> None:
    """The dry months of a wetter year are among those of the drier one."""
    assert set(dry_months(temp, [p + 10 for p in precip])) <= set(dry_months(temp, precip))


@given(temperatures)
def test_extreme_months_hold_the_extreme_value(temp: list[float]) -> None:
    """Warmest and coldest months hold the greatest and least value, and there is at least one of each."""
    assert max(temp) == pytest.approx(temp[extreme_months(temp, largest=True)[0] - 1], abs=1e-9)
    assert min(temp) == pytest.approx(temp[extreme_months(temp, largest=False)[0] - 1], abs=1e-9)


@given(temperatures)
def test_range_is_the_difference_of_the_extremes(temp: list[float]) -> None:
    """The range is never negative and belongs to the warmest and coldest month."""
    found = METHODS["annual_temp_range"].compute(monthly_mean_temp=temp)
    assert found >= 0
    warmest, coldest = extreme_months(temp, largest=True)[0], extreme_months(temp, largest=False)[0]
    assert temp[warmest - 1] - temp[coldest - 1] == pytest.approx(found, abs=1e-8)


def test_all_months_tie_in_a_uniform_year() -> None:
    """Where every month is alike, all twelve are warmest and coldest."""
    year = tuple(range(1, 13))
    assert year == extreme_months([20.0] * 12, largest=True)
    assert year == extreme_months([20.0] * 12, largest=False)


def test_ties_survive_the_last_digits_of_a_conversion() -> None:
    """Values that differ by rounding only are equal: 0.1 + 0.2 ties with 0.3."""
    assert (1, 2) == extreme_months([0.1 + 0.2, 0.3] + [0.0] * 10, largest=True)


def test_limits_survive_the_last_digits_of_a_conversion() -> None:
    """A rounding error at 0 and 5 degC, or at P = 2T, does not move a month across the limit."""
    assert () == months_below_freezing([-5e-14] * 12)
    assert 12 == len(growing_season_months([5 - 5e-14] * 12))
    assert () == dry_months([10.0] * 12, [20 - 5e-14] * 12)


def test_no_rain_makes_every_warm_month_dry() -> None:
    """Without rain a month is dry exactly when it averages above 0 degC."""
    assert (2, 3, 4, 5, 6, 7, 8, 9, 10, 11) == dry_months([0] + [15] * 10 + [-3], [0] * 12)


def test_eleven_months_are_refused() -> None:
    """A series that is not twelve months names itself, what it should be, and what it is."""
    with pytest.raises(ValueError, match="monthly_precip: expected 12 values, January to December, found 11"):
        dry_months([10.0] * 12, [50.0] * 11)


def test_negative_precipitation_is_refused() -> None:
    """Precipitation below zero is named with its month."""
    with pytest.raises(ValueError, match="monthly_precip: expected values from 0 to inf, found -1 in month 3"):
        dry_months([10.0] * 12, [50.0, 50.0, -1.0] + [50.0] * 9)


def test_missing_value_is_refused() -> None:
    """A value that is not a number is named with its month, and never becomes a result."""
    with pytest.raises(ValueError, match="monthly_mean_temp: expected finite values, found nan in month 12"):
        growing_season_months([10.0] * 11 + [float("nan")])


@given(precipitations, st.permutations(range(12)), st.floats(0.1, 10))
def test_seasonality_does_not_ask_when_or_how_much(precip: list[float], order: list[int], times: float) -> None:
    """Months in another order, and more rain in all of them, leave it as it is; it stays within its ends."""
    found = precipitation_seasonality(precip)
    if sum(precip) < 1e-6:
        return
    assert 0 <= found <= 11 / 6 + 1e-9
    assert found == pytest.approx(precipitation_seasonality([times * precip[month] for month in order]), abs=1e-9)


def test_seasonality_ends_at_even_rain_and_at_one_wet_month() -> None:
    assert 0.0 == pytest.approx(precipitation_seasonality([33.3] * 12), abs=1e-12)
    assert 0.0 == pytest.approx(precipitation_seasonality([0.01] * 12), abs=1e-12)
    assert 11 / 6 == pytest.approx(precipitation_seasonality([0.0] * 11 + [5.0]))


def test_seasonality_without_rain_is_undefined() -> None:
    assert precipitation_seasonality([0.0] * 12) is None


@given(temperatures, precipitations, st.integers(1, 11))
def test_year_has_the_same_mean_total_and_range_wherever_it_begins(temp: list[float], precip: list[float], shift: int) -> None:
    for method, of in (("annual_mean_temp", {"monthly_mean_temp": temp}), ("annual_temp_range", {"monthly_mean_temp": temp}), ("annual_precip", {"monthly_precip": precip})):
        moved = {name: values[shift:] + values[:shift] for name, values in of.items()}
        assert METHODS[method].compute(**of) == pytest.approx(METHODS[method].compute(**moved), abs=1e-9)


@given(temperatures, precipitations)
def test_mean_lies_between_the_extremes_and_the_total_is_twelve_mean_months(temp: list[float], precip: list[float]) -> None:
    assert min(temp) - 1e-9 <= METHODS["annual_mean_temp"].compute(monthly_mean_temp=temp) <= max(temp) + 1e-9
    assert 12 * math.fsum(precip) / len(precip) == pytest.approx(METHODS["annual_precip"].compute(monthly_precip=precip))


@pytest.mark.parametrize(("temp", "mean", "spread"), [([0.0] * 12, 0.0, 0.0), ([-30.0] * 12, -30.0, 0.0), ([-6.0, 6.0] * 6, 0.0, 12.0)])
def test_even_frozen_and_balanced_years(temp: list[float], mean: float, spread: float) -> None:
    found = (METHODS[name].compute(monthly_mean_temp=temp) for name in ("annual_mean_temp", "annual_temp_range"))
    assert (mean, spread) == tuple(found)


def test_year_without_rain_has_no_precipitation() -> None:
    assert 0.0 == METHODS["annual_precip"].compute(monthly_precip=[0.0] * 12)
