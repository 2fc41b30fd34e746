"""The soil's year as facts: what adds up, what is said of snow and cold, and where a number is missing."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.kinds.biome.test_facts import biome
from tests.kinds.small_records import demo

WATER = ("monthly_soil_water", "monthly_actual_evapotranspiration", "actual_evapotranspiration", "water_deficit", "water_surplus")
BARROW = "[-25.2, -27.7, -26.2, -18.9, -6.8, 1.2, 4.1, 3.2, -0.8, -10, -18.8, -23.9]"


@settings(max_examples=25, deadline=None)
@given(st.lists(st.integers(0, 300), min_size=12, max_size=12), st.lists(st.integers(-30, 35), min_size=12, max_size=12))
def test_rain_is_used_or_left_over_and_demand_is_met_or_lacking(rain: list[int], temp: list[int]) -> None:
    facts = biome(temp, rain).facts
    used, lacking, left = (facts[f"here.{name}"].number for name in WATER[2:])
    assert facts["here.annual_precip"].number == pytest.approx(used + left, abs=1e-6)
    assert facts["here.potential_evapotranspiration"].number == pytest.approx(used + lacking, abs=1e-6)


def test_grassland_uses_all_its_rain_and_lacks_the_rest() -> None:
    """Source: arithmetic on the record's own facts; in no year that repeats itself does any water run off there."""
    facts = demo("biome/temperate_grassland").facts
    assert 327 == pytest.approx(facts["harrow_plain.actual_evapotranspiration"].number)
    assert 0 == facts["harrow_plain.water_surplus"].number
    assert facts["harrow_plain.potential_evapotranspiration"].number - 327 == pytest.approx(facts["harrow_plain.water_deficit"].number)


def test_table_of_the_deficit_adds_up_to_it() -> None:
    fact = demo("biome/temperate_grassland").facts["harrow_plain.water_deficit"]
    *_, (head, cells) = fact.working.columns
    assert "deficit (mm)" == head
    assert fact.number == pytest.approx(math.fsum(map(float, cells)), abs=0.6)
    assert f"the last column adds up to {fact.shown}" == fact.working.conclusion


def test_each_annual_fact_ends_its_table_with_its_own_column() -> None:
    facts = demo("biome/temperate_grassland").facts
    assert ["actual evapotranspiration (mm)", "deficit (mm)", "surplus (mm)"] == [
        facts[f"harrow_plain.{name}"].working.columns[-1][0] for name in WATER[2:]
    ]


def test_usual_store_is_named_where_the_record_states_none() -> None:
    fact = biome().facts["here.soil_store"]
    assert (100, "100 mm") == (fact.number, fact.shown)
    assert "Otherwise the usual 100 mm are taken: no" in fact.shown_working


def test_stated_store_is_taken_in_the_unit_of_the_record() -> None:
    """Source: 1 inch is 25.4 mm by definition."""
    stated = biome(latitude="latitude: 46.5, soil_store: 50").facts
    inches = biome(latitude="latitude: 46.5, soil_store: 10", head="units: {soil_store: in}\n").facts
    assert (50, 254) == (stated["here.soil_store"].number, pytest.approx(inches["here.soil_store"].number))
    assert max(stated["here.monthly_soil_water"].series) <= 50
    assert "254 mm" in inches["here.soil_store"].shown
    assert "the soil holds 50 mm at most" in stated["here.monthly_soil_water"].shown_working


def test_smaller_store_runs_off_sooner() -> None:
    rain, temp = [120] * 6 + [5] * 6, [12] * 12
    small, large = (biome(temp, rain, latitude=f"latitude: 40, soil_store: {store}").facts for store in (20, 200))
    assert small["here.water_surplus"].number > large["here.water_surplus"].number


def test_snow_is_said_not_to_be_followed_where_it_freezes() -> None:
    told = "snow is not followed: in December to February it counts as water at once"
    assert told in biome().facts["here.monthly_soil_water"].shown_working
    assert "snow" not in biome([10] * 12).facts["here.monthly_soil_water"].shown_working


def test_formula_out_of_its_depth_is_said_beside_the_heat_index() -> None:
    """Heat index 1.36: the formula gives 416 mm a year where no month is warmer than 4.1 °C."""
    cold = biome(BARROW, latitude="latitude: 71.3").facts["here.monthly_pet"]
    assert "heat index of the year: 1.36" in cold.shown_working
    assert "so little warmth makes this formula give far too much" in cold.shown_working
    assert "far too much" not in biome().facts["here.monthly_pet"].shown_working
    assert "far too much" not in biome([-20] * 12).facts["here.monthly_pet"].shown_working


def test_no_latitude_leaves_the_water_balance_unknown() -> None:
    facts = biome(latitude="").facts
    assert {name: (None, "not known: the station states no latitude") for name in WATER} == {
        name: (facts[f"here.{name}"].value, facts[f"here.{name}"].shown) for name in WATER
    }


def test_frost_all_year_lets_everything_run_off() -> None:
    facts = biome([-20] * 12, [10] * 12).facts
    assert (0.0, 0.0, 120.0) == tuple(facts[f"here.{name}"].value for name in WATER[2:])
    assert (100.0,) * 12 == facts["here.monthly_soil_water"].value


def test_no_rain_leaves_nothing_to_use() -> None:
    facts = biome([25] * 12, [0] * 12).facts
    assert (0.0, 0.0) == (facts["here.actual_evapotranspiration"].value, facts["here.water_surplus"].value)
    assert facts["here.potential_evapotranspiration"].number == pytest.approx(facts["here.water_deficit"].number)
