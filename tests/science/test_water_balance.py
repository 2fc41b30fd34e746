"""Properties and edges of generator/science/water_balance.py; outside values are in test_checks.py."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS
from generator.science.water_balance import WaterBalance, bucket_balance, drying_balance

Balance = Callable[[Sequence[float], Sequence[float], float], WaterBalance]
months = st.lists(st.floats(0, 500), min_size=12, max_size=12)
stores = st.one_of(st.floats(1, 500), st.just(0.01))
"""The last is emptied by a month's demand down to the smallest float and beyond."""
VARIANTS = pytest.mark.parametrize("balance", [drying_balance, bucket_balance])


@VARIANTS
@given(months, months, stores)
def test_all_rain_is_used_or_runs_off(balance: Balance, precip: list[float], pet: list[float], store: float) -> None:
    """Over the year that repeats itself precipitation is evapotranspiration and surplus."""
    year = balance(precip, pet, store)
    assert math.fsum(precip) == pytest.approx(math.fsum(year.evapotranspiration) + math.fsum(year.surplus), abs=1e-6)


@VARIANTS
@given(months, months, stores)
def test_demand_is_used_or_lacking(balance: Balance, precip: list[float], pet: list[float], store: float) -> None:
    """In each month demand is evapotranspiration and deficit."""
    year = balance(precip, pet, store)
    assert pet == pytest.approx([a + d for a, d in zip(year.evapotranspiration, year.deficit, strict=True)], abs=1e-9)


@VARIANTS
@given(months, months, stores)
def test_each_month_hands_its_soil_water_on(balance: Balance, precip: list[float], pet: list[float], store: float) -> None:
    """In each month the soil gains what falls and is neither used nor surplus; January begins where December ended."""
    year = balance(precip, pet, store)
    before = (year.soil_water[-1], *year.soil_water[:-1])
    left = [p - a - s for p, a, s in zip(precip, year.evapotranspiration, year.surplus, strict=True)]
    assert left == pytest.approx([now - then for now, then in zip(year.soil_water, before, strict=True)], abs=1e-6)


@VARIANTS
@given(months, months, stores)
def test_nothing_is_negative_and_the_store_never_overflows(
    balance: Balance, precip: list[float], pet: list[float], store: float
) -> None:
    year = balance(precip, pet, store)
    assert all(value >= 0 for series in (year.evapotranspiration, year.deficit, year.surplus) for value in series)
    assert all(0 <= water <= store for water in year.soil_water)
    assert not any(s and d for s, d in zip(year.surplus, year.deficit, strict=True))


@VARIANTS
@given(months, months, stores)
def test_it_is_the_year_that_a_long_run_ends_in(
    balance: Balance, precip: list[float], pet: list[float], store: float
) -> None:
    """Month after month from a full store, as one would do by hand, nears the same soil water from above."""
    water = store
    for _ in range(60):
        for p, e in zip(precip, pet, strict=True):
            lack = e - p
            if lack <= 0:
                water = min(water - lack, store)
            else:
                water = water * math.exp(-lack / store) if balance is drying_balance else max(water - lack, 0.0)
    steady = balance(precip, pet, store).soil_water[-1]
    assert steady <= water + 1e-6
    lost = [max(e - p, 0.0) for p, e in zip(precip, pet, strict=True)]
    if balance is drying_balance and math.fsum(lost) > store / 2:
        assert steady == pytest.approx(water, abs=1e-6)


@VARIANTS
@given(months, months, stores, st.floats(0.1, 10))
def test_units_do_not_matter(
    balance: Balance, precip: list[float], pet: list[float], store: float, times: float
) -> None:
    """All waters times a number give all results times that number."""
    once, more = balance(precip, pet, store), balance([times * p for p in precip], [times * e for e in pet], times * store)
    for name in ("evapotranspiration", "surplus"):
        total = math.fsum(getattr(once, name)) * times
        assert total == pytest.approx(math.fsum(getattr(more, name)), rel=1e-6, abs=1e-4)


@given(months, months, stores)
def test_bucket_gives_no_less_than_a_soil_that_holds_on(precip: list[float], pet: list[float], store: float) -> None:
    """A soil that gives up its water ever more slowly never lets plants use more over the year."""
    slow, quick = drying_balance(precip, pet, store), bucket_balance(precip, pet, store)
    assert math.fsum(slow.evapotranspiration) <= math.fsum(quick.evapotranspiration) + 1e-6


@VARIANTS
def test_all_frozen_keeps_a_full_soil_and_lets_all_run_off(balance: Balance) -> None:
    """Without demand nothing is used or lacking."""
    year = balance([5.0] * 12, [0.0] * 12, 100.0)
    assert ((100.0,) * 12, (0.0,) * 12, (0.0,) * 12) == (year.soil_water, year.evapotranspiration, year.deficit)
    assert [5.0] * 12 == pytest.approx(year.surplus)


@VARIANTS
def test_no_rain_leaves_the_soil_empty(balance: Balance) -> None:
    """A store that is never filled is empty in the year that repeats itself, and all demand is lacking."""
    year = balance([0.0] * 12, [80.0] * 12, 100.0)
    assert ((0.0,) * 12, (0.0,) * 12, (80.0,) * 12) == (year.soil_water, year.evapotranspiration, year.deficit)


@VARIANTS
def test_neither_rain_nor_demand_leaves_the_soil_full(balance: Balance) -> None:
    """Any soil water would repeat itself; the full store is taken, as where one begins to count."""
    assert (100.0,) * 12 == balance([0.0] * 12, [0.0] * 12, 100.0).soil_water


@VARIANTS
def test_twelve_months_of_rain_equal_to_demand(balance: Balance) -> None:
    year = balance([60.0] * 12, [60.0] * 12, 100.0)
    assert ((100.0,) * 12, (60.0,) * 12) == (year.soil_water, year.evapotranspiration)
    assert 0.0 == math.fsum(year.deficit) + math.fsum(year.surplus)


@VARIANTS
def test_dry_climate_is_not_helped_by_where_one_begins(balance: Balance) -> None:
    """Rain that demand swallows in every month is all used: no water of an invented start is left over."""
    year = balance([1.0] * 12, [90.0] * 12, 100.0)
    assert 12.0 == pytest.approx(math.fsum(year.evapotranspiration), abs=1e-9)


def test_larger_store_carries_more_into_the_dry_season() -> None:
    wet_winter, summer_demand = [90.0] * 6 + [0.0] * 6, [20.0] * 6 + [100.0] * 6
    used = [math.fsum(drying_balance(wet_winter, summer_demand, store).evapotranspiration) for store in (50.0, 100.0, 200.0)]
    assert used == sorted(used)
    assert used[0] < used[-1]


@VARIANTS
@pytest.mark.parametrize("store", [0.0, -5.0, math.inf, math.nan])
def test_impossible_store_is_refused(balance: Balance, store: float) -> None:
    with pytest.raises(ValueError, match=r"soil_store: expected a finite number above 0 \[mm\], found"):
        balance([1.0] * 12, [1.0] * 12, store)


@VARIANTS
def test_negative_rain_and_demand_are_refused(balance: Balance) -> None:
    with pytest.raises(ValueError, match="monthly_precip: expected values from 0"):
        balance([-1.0] * 12, [1.0] * 12, 100.0)
    with pytest.raises(ValueError, match="monthly_pet: expected values from 0"):
        balance([1.0] * 12, [-1.0] * 12, 100.0)


@given(months, months, stores)
def test_methods_tell_parts_of_one_and_the_same_year(precip: list[float], pet: list[float], store: float) -> None:
    """Rain of the year is used or runs off, demand is used or lacking, by the totals that pages show."""
    series = {"monthly_precip": precip, "monthly_pet": pet, "soil_store": store}
    used, lacking, surplus = (METHODS[name].compute(**series) for name in ("actual_evapotranspiration", "water_deficit", "water_surplus"))
    assert math.fsum(precip) == pytest.approx(used + surplus, abs=1e-6)
    assert math.fsum(pet) == pytest.approx(used + lacking, abs=1e-6)
    assert used == pytest.approx(math.fsum(METHODS["monthly_actual_evapotranspiration"].compute(**series)), abs=1e-9)
    assert store >= max(METHODS["monthly_soil_water"].compute(**series))
