"""Facts of transects: lapse rates between stations, and air that crosses a crest, worked out by hand from the record."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.kind import Subject
from generator.science.lapse_rates import moist_adiabatic_lapse_rate
from tests.kinds.small_records import demo, subject

Station = tuple[float, float, float]
RIDGE: tuple[Station, ...] = ((0, 0, 20), (40, 3000, 2), (90, 0, 21))


def text(*stations: Station, air: str = "", units: str = "") -> str:
    """The record of stations `s0`, `s1`, ... as (distance, height, mean temperature)."""
    lines = "".join(
        f"  - {{id: s{number}, distance: {distance!r}, height: {height!r}, annual_mean_temp: {temp!r}, annual_precip: {1000 - 100 * number}}}\n"
        for number, (distance, height, temp) in enumerate(stations)
    )
    shadow = f"rain_shadow: {{from: s0, crest: s1, to: s2, {air}}}\n" if air else ""
    return f"{units}stations:\n{lines}{shadow}"


def transect(*stations: Station, air: str = "", units: str = "") -> Subject:
    return subject("transect", text(*stations, air=air, units=units))


def test_lapse_rates_of_the_example() -> None:
    """Source: arithmetic on the record, such as (9.85 - 6.4) / 0.615 km."""
    facts = demo("transect/coastal_range").facts
    expected = {"moss_stair": 3.45 / 0.615, "kestrel_pass": 5.0 / 0.89, "larch_gate": 4.8 / 0.8, "harrow_plain": -0.52 / 0.31}
    assert expected == pytest.approx({name: facts[f"{name}.lapse_rate_from_previous"].value for name in expected})
    assert (9.85 + 2.6) / 2.255 == pytest.approx(facts["lapse_rate"].number)


def test_air_of_the_example_step_by_step() -> None:
    """Source: arithmetic on the record; 9.8 K/km up to 25 m + 3 x 125 m, the moist rate at 8.3 degC and 966 hPa, 9.8 down again."""
    facts = demo("transect/coastal_range").facts
    dry, moist = 9.80665 / 1.00467, moist_adiabatic_lapse_rate(12 - 9.80665 / 1.00467 * 0.375, 966.1)
    base = 12 - dry * 0.375
    crest = base - moist * 1.88
    expected = {"cloud_base": 400, "base_temperature": base, "crest_temperature": crest, "lee_temperature": crest + dry * 1.97, "warming": (dry - moist) * 1.88}
    assert expected == pytest.approx({name: facts[f"air.{name}"].value for name in expected}, rel=1e-3)


def test_published_crossing_comes_out_step_by_step() -> None:
    """Source: European Space Agency: 20 degC, cloud from 900 m, 10 and 5 K/km, 3 degC at 2500 m; 28 degC down at the sea."""
    air = "temperature: 20, cloud_base: 900, dry_lapse_rate: 10, moist_lapse_rate: 5"
    facts = transect((0, 0, 15), (30, 2500, 1), (60, 0, 16), air=air).facts
    assert [11, 3, 28, 8] == pytest.approx([facts[f"air.{name}"].value for name in ("base_temperature", "crest_temperature", "lee_temperature", "warming")])


def test_crossing_of_the_usual_class_numbers() -> None:
    """Source: arithmetic, 20 - 8 - 13.2 + 30 with 10 and 6 K/km, cloud from 0.8 km, a crest of 3 km."""
    air = "temperature: 20, cloud_base: 800, dry_lapse_rate: 10, moist_lapse_rate: 6"
    facts = transect(*RIDGE, air=air).facts
    assert [12.0, -1.2, 28.8, 8.8] == pytest.approx([facts[f"air.{name}"].value for name in ("base_temperature", "crest_temperature", "lee_temperature", "warming")])


@pytest.mark.parametrize("air", ["temperature: 20, cloud_base: 3000", "temperature: 20, cloud_base: 3500", "temperature: 20, dew_point: -20"])
def test_cloud_base_at_the_crest_or_above_means_no_warming(air: str) -> None:
    facts = transect(*RIDGE, air=air).facts
    assert (False, 0.0) == (facts["air.cloud_forms"].value, facts["air.warming"].value)
    assert 20 == pytest.approx(facts["air.lee_temperature"].number)
    assert {"not defined: no cloud forms below the crest"} == {facts[f"air.{name}"].undefined_because for name in ("base_temperature", "moist_lapse_rate")}


def test_saturated_air_makes_cloud_where_it_sets_out() -> None:
    facts = transect((0, 300, 12), (40, 3000, 0), (90, 0, 15), air="temperature: 10, dew_point: 10").facts
    assert (300.0, 10.0) == (facts["air.cloud_base"].value, facts["air.base_temperature"].value)


@settings(max_examples=25, deadline=None)
@given(st.integers(-10, 30), st.integers(0, 15), st.integers(0, 500))
def test_warming_is_what_comes_back_at_the_same_height(temperature: int, spread: int, height: int) -> None:
    air = f"temperature: {temperature}, dew_point: {temperature - spread}"
    facts = transect((0, height, 12), (40, 3200, 0), (90, height, 12), air=air).facts
    assert facts["air.warming"].number == pytest.approx(facts["air.lee_temperature"].number - temperature, abs=1e-9)
    assert facts["air.warming"].number >= 0


@settings(max_examples=25, deadline=None)
@given(st.lists(st.integers(0, 4000), min_size=2, max_size=6, unique=True), st.integers(3, 9))
def test_one_rate_everywhere_is_found_between_all_stations(heights: list[int], rate: int) -> None:
    stations = [(float(10 * n), float(height), 30 - rate * height / 1000) for n, height in enumerate(heights)]
    facts = transect(*stations).facts
    rates = [facts[f"s{n}.lapse_rate_from_previous"].value for n in range(1, len(stations))]
    assert [float(rate)] * len(rates) == pytest.approx(rates)
    assert float(rate) == pytest.approx(facts["lapse_rate"].number)


def test_equal_heights_have_no_lapse_rate_and_say_why() -> None:
    facts = transect((0, 300, 12), (5, 300, 11.5)).facts
    assert {"not defined: both stations lie at the same height"} == {facts[name].undefined_because for name in ("s1.lapse_rate_from_previous", "lapse_rate")}
    assert 0.0 == facts["s1.climb_from_previous"].value


def test_first_station_has_nothing_before_it() -> None:
    facts = transect(*RIDGE).facts
    assert {"not defined: no station stands before it"} == {facts[f"s0.{name}_from_previous"].undefined_because for name in ("climb", "lapse_rate")}


def test_feet_and_fahrenheit_are_converted_with_the_step_shown() -> None:
    """Source: arithmetic, 32 degF are 0 degC, 41 are 5, 3280.84 ft are 1 km."""
    facts = transect((0, 0, 41), (5, 3280.84, 32), units="units: {height: ft, temperature: degF}\n").facts
    assert 5.0 == pytest.approx(facts["s1.lapse_rate_from_previous"].number, rel=1e-5)
    assert "32 °F" in facts["s1.annual_mean_temp"].shown_working


def test_air_in_feet_and_fahrenheit_comes_out_as_in_metres() -> None:
    units = "units: {height: ft, temperature: degF}\n"
    feet = transect((0, 0, 59), (9, 9842.52, 32), (20, 0, 60), air="temperature: 68, cloud_base: 2624.672", units=units).facts
    metres = transect((0, 0, 15), (9, 3000, 0), (20, 0, 16), air="temperature: 20, cloud_base: 800").facts
    for name in ("cloud_base", "base_temperature", "crest_temperature", "lee_temperature", "warming"):
        assert metres[f"air.{name}"].number == pytest.approx(feet[f"air.{name}"].number, abs=1e-3)


def test_air_too_cold_for_the_formula_is_not_worked_out() -> None:
    facts = transect((0, 0, -60), (40, 8800, -70), (90, 0, -60), air="temperature: -68, cloud_base: 6000").facts
    assert facts["air.moist_lapse_rate"].undefined_because.startswith("not defined")
    assert (None, None) == (facts["air.crest_temperature"].value, facts["air.warming"].value)


def test_wind_may_blow_against_the_order_of_the_stations() -> None:
    stations = "stations:\n" + "".join(f"  - {{id: s{n}, distance: {d}, height: {h}, annual_mean_temp: 10}}\n" for n, (d, h) in enumerate([(0, 0), (40, 3000), (90, 0)]))
    facts = subject("transect", f"{stations}rain_shadow: {{from: s2, crest: s1, to: s0, temperature: 20, cloud_base: 800}}\n").facts
    assert facts["air.warming"].number > 5
