"""Facts of biomes: values worked out by hand from the numbers of the record, and what is said where a number is missing."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.kind import Subject
from tests.kinds.small_records import demo, subject

TEMP = "[-9, -6, 0, 8, 14, 19, 22, 21, 15, 8, 0, -7]"
PRECIP = "[12, 10, 16, 26, 48, 66, 42, 34, 26, 20, 15, 12]"
SOUTH = "[22, 21, 15, 8, 0, -7, -9, -6, 0, 8, 14, 19]"


def biome(temp: object = TEMP, precip: object = PRECIP, latitude: str = "latitude: 46.5", head: str = "") -> Subject:
    """A biome of one station."""
    station = f"{{id: here, {latitude + ', ' if latitude else ''}monthly_mean_temp: {temp}, monthly_precip: {precip}}}"
    return subject("biome", f"{head}region: none\nstations: [{station}]\n")


def test_grassland_year_is_the_arithmetic_of_its_months() -> None:
    """Source: arithmetic on the record."""
    facts = demo("biome/temperate_grassland").facts
    assert (-9 - 6 + 0 + 8 + 14 + 19 + 22 + 21 + 15 + 8 + 0 - 7) / 12 == pytest.approx(facts["harrow_plain.annual_mean_temp"].number)
    assert 12 + 10 + 16 + 26 + 48 + 66 + 42 + 34 + 26 + 20 + 15 + 12 == facts["harrow_plain.annual_precip"].number
    assert 22 - -9 == facts["harrow_plain.annual_temp_range"].number


def test_grassland_months_are_those_of_the_record() -> None:
    """Source: read off the record; dry where 42 < 44, 34 < 42, 26 < 30 and nowhere else."""
    facts = demo("biome/temperate_grassland").facts
    expected = {
        "warmest_month": (7,), "coldest_month": (1,), "wettest_month": (6,), "driest_month": (2,),
        "dry_months": (7, 8, 9), "months_below_freezing": (1, 2, 12), "growing_season_months": (4, 5, 6, 7, 8, 9, 10),
    }  # fmt: skip
    assert expected == {name: facts[f"harrow_plain.{name}"].value for name in expected}


def test_grassland_aridity_is_what_falls_over_what_could_evaporate() -> None:
    """Source: arithmetic on the record; the classes' limits 0.50 and 0.65 are those that the method cites."""
    facts = demo("biome/temperate_grassland").facts
    demand = math.fsum(facts["harrow_plain.monthly_pet"].series)
    assert demand == pytest.approx(facts["harrow_plain.potential_evapotranspiration"].number)
    assert 327 / demand == pytest.approx(facts["harrow_plain.aridity_index"].number)
    assert 0.50 <= 327 / demand < 0.65
    assert "dry sub-humid" == facts["harrow_plain.aridity_class"].value


def test_grassland_production_is_held_down_by_precipitation() -> None:
    """Source: arithmetic on the record with the two formulas of Lieth."""
    facts = demo("biome/temperate_grassland").facts
    by_rain, by_warmth = 3000 * (1 - math.exp(-0.000664 * 327)), 3000 / (1 + math.exp(1.315 - 0.119 * 85 / 12))
    assert by_rain < by_warmth
    assert by_rain == pytest.approx(facts["harrow_plain.potential_npp"].number)


def test_frozen_months_demand_no_water_and_the_warmest_demands_most() -> None:
    facts = demo("biome/temperate_grassland").facts
    demand = facts["harrow_plain.monthly_pet"].series
    assert [0.0] * 5 == [demand[m] for m in (0, 1, 2, 10, 11)]
    assert 6 == demand.index(max(demand))


@settings(max_examples=25, deadline=None)
@given(st.lists(st.integers(0, 500), min_size=12, max_size=12), st.integers(2, 9))
def test_all_rain_times_a_number_gives_the_total_times_that_number(rain: list[int], times: int) -> None:
    total = biome(precip=rain).facts["here.annual_precip"].number
    assert times * total == biome(precip=[times * month for month in rain]).facts["here.annual_precip"].number


@settings(max_examples=25, deadline=None)
@given(st.lists(st.integers(-30, 35), min_size=12, max_size=12), st.integers(1, 11))
def test_starting_the_year_in_another_month_changes_no_yearly_number(temp: list[int], months: int) -> None:
    turned = temp[months:] + temp[:months]
    for name in ("annual_mean_temp", "annual_temp_range"):
        assert biome(temp=temp).facts[f"here.{name}"].number == pytest.approx(biome(temp=turned).facts[f"here.{name}"].number)


def test_ties_are_all_listed() -> None:
    assert (7, 8) == biome(temp="[0, 1, 2, 3, 4, 5, 9, 9, 4, 3, 2, 1]").facts["here.warmest_month"].value


def test_fahrenheit_and_inches_are_turned_with_the_step_shown() -> None:
    """Source: 50 °F is 10 °C and 1 inch is 25.4 mm, by definition of the units."""
    facts = biome([50] * 12, [1] * 12, head="units: {temperature: degF, precipitation: in}\n").facts
    assert [10.0] * 12 == pytest.approx(facts["here.monthly_mean_temp"].series)
    assert 12 * 25.4 == pytest.approx(facts["here.annual_precip"].number)
    assert "(°F − 32) × 5 ÷ 9" in facts["here.monthly_mean_temp"].shown_working
    assert "inches × 25.4" in facts["here.monthly_precip"].shown_working
    assert "January | 50 | 10.0" in facts["here.monthly_mean_temp"].shown_working


def test_a_range_in_fahrenheit_is_a_difference_and_not_a_reading() -> None:
    """Source: 68 °F is 20 °C, 50 °F is 10 °C; their difference is 10 K."""
    facts = biome([50] * 6 + [68] * 6, head="units: {temperature: degF}\n").facts
    assert 10 == pytest.approx(facts["here.annual_temp_range"].number)
    assert "K" == facts["here.annual_temp_range"].unit.label


def test_centimetres_are_turned_into_millimetres() -> None:
    assert 240 == pytest.approx(biome(precip=[2] * 12, head="units: {precipitation: cm}\n").facts["here.annual_precip"].number)


def test_feet_are_turned_into_metres() -> None:
    """Source: 1 foot is 0.3048 m by definition."""
    facts = biome(latitude="elevation: 1000", head="units: {elevation: ft}\n").facts
    assert 304.8 == pytest.approx(facts["here.elevation"].number)


def test_station_without_latitude_has_no_water_demand_and_says_why() -> None:
    facts = biome(latitude="").facts
    names = ("monthly_day_length", "monthly_pet", "potential_evapotranspiration", "aridity_index", "aridity_class")
    assert {name: (None, "not known: the station states no latitude") for name in names} == {
        name: (facts[f"here.{name}"].value, facts[f"here.{name}"].shown) for name in names
    }
    assert 327 == facts["here.annual_precip"].number


def test_southern_station_has_long_days_in_december() -> None:
    north, south = biome().facts["here.monthly_day_length"].series, biome(SOUTH, latitude="latitude: -46.5").facts["here.monthly_day_length"].series
    assert north.index(max(north)) == 5
    assert south.index(max(south)) == 11


def test_southern_station_has_its_growing_season_over_the_turn_of_the_year() -> None:
    found = biome(SOUTH, latitude="latitude: -46.5").facts["here.growing_season_months"]
    assert ((1, 2, 3, 4, 10, 11, 12), "October to April") == (found.value, found.shown)


def test_frost_all_year_leaves_the_index_undefined() -> None:
    """Nothing could evaporate, so nothing can be divided by it."""
    facts = biome([-20] * 12).facts
    assert (0.0, None, None) == tuple(facts[f"here.{n}"].value for n in ("potential_evapotranspiration", "aridity_index", "aridity_class"))
    assert "not defined" in facts["here.aridity_index"].shown


def test_no_usual_range_gives_null_and_a_reason() -> None:
    found = biome().facts["here.in_usual_range"]
    assert (None, "not known: the record cites no usual range") == (found.value, found.shown)


def test_figures_of_the_record_set_the_digits_of_computed_numbers() -> None:
    assert ("7.083 °C", "7.08 °C") == (
        biome(head="figures: 4\n").facts["here.annual_mean_temp"].shown, biome().facts["here.annual_mean_temp"].shown,
    )  # fmt: skip


def test_a_cold_climate_has_the_class_cold_whatever_its_index() -> None:
    """Nine months below 0 °C and none above 6 °C: the index would call this place semi-arid."""
    facts = biome(temp="[-25, -27, -26, -19, -7, 1, 4, 3, -1, -10, -19, -24]", latitude="latitude: 71.3").facts
    assert "cold" == facts["here.aridity_class"].value
    assert "9 below, 3 above" not in facts["here.aridity_class"].shown_working
    assert "9 below, 0 above: yes" in facts["here.aridity_class"].shown_working
