"""Facts of aquatic biomes: worked out by hand from small records, in every unit that a record may use."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.kind import Subject
from tests.kinds.small_records import demo, subject


def text(*stations: str, head: str = "") -> str:
    """Stations `s0`, `s1`, ... with these fields beside depth 10, salinity 0.2 and 20 degrees, unless they state their own."""
    usual = {"depth": "10", "salinity": "0.2", "temperature": "20"}
    lines = []
    for number, fields in enumerate(stations):
        rest = ", ".join(f"{name}: {value}" for name, value in usual.items() if f"{name}: " not in fields.replace(f"_{name}", ""))
        lines.append(f"  - {{id: s{number}, {', '.join(part for part in (fields, rest) if part)}}}\n")
    return f"{head}stations:\n{''.join(lines)}"


def water(*stations: str, head: str = "") -> Subject:
    """The record that `text` writes, with its facts."""
    return subject("aquatic_biome", text(*stations, head=head))


def test_light_of_the_example_lake() -> None:
    """Source: arithmetic, 1.7 / 3.4 and ln(100) / 0.5 and exp(-12) as percent."""
    facts = demo("aquatic_biome/lake").facts
    expected = {"extinction": 0.5, "photic_depth": 9.2103, "light_at_bottom": 6.1442e-4}
    assert expected == pytest.approx({name: facts[f"halden_water.{name}"].number for name in expected}, rel=1e-4)
    assert facts["halden_water.reaches_bottom"].value is False


def test_flushing_time_of_the_example_lake() -> None:
    """Source: arithmetic, 38 000 000 / 4.6 / 86 400."""
    assert 95.6119 == pytest.approx(demo("aquatic_biome/lake").facts["halden_water.flushing_time"].number, rel=1e-5)


def test_oxygen_of_the_example_lake_is_that_of_the_table() -> None:
    """Source: tables of dissolved oxygen, 9.1 mg/L at 20 °C and 13.8 at 2 °C (published, the manual cited in the checks)."""
    facts = demo("aquatic_biome/lake").facts
    assert 9.1 == pytest.approx(facts["halden_water.oxygen_saturation"].number, abs=0.05)
    assert 13.8 == pytest.approx(facts["halden_water.saturation_when_coldest"].number, abs=0.05)
    assert 100 * 9.4 / 9.08 == pytest.approx(facts["halden_water.oxygen_saturation_percent"].number, rel=1e-3)


def test_stated_extinction_stays_as_written() -> None:
    fact = water("light: {extinction: 0.50}").facts["s0.extinction"]
    assert ("0.50 m⁻¹", "") == (fact.shown, fact.method)


def test_shallow_water_is_lit_to_the_bottom() -> None:
    """Source: arithmetic, exp(-0.6) at 2 m and 0.3 per metre."""
    facts = water("depth: 2, light: {extinction: 0.3}").facts
    assert (True, pytest.approx(100 * math.exp(-0.6))) == (facts["s0.reaches_bottom"].value, facts["s0.light_at_bottom"].number)


def test_bottom_in_the_dark_gets_words_instead_of_a_number() -> None:
    fact = water("depth: 4200, light: {extinction: 0.04}").facts["s0.light_at_bottom"]
    assert (None, "next to none: less than a billionth of a percent") == (fact.value, fact.shown)


def test_station_without_light_has_no_facts_about_it() -> None:
    facts = water("").facts
    assert not any(name in fact for fact in facts for name in ("extinction", "photic", "bottom"))
    assert "s0.oxygen_saturation" in facts


def test_feet_fahrenheit_and_cubic_kilometres_are_converted_with_the_step_shown() -> None:
    """Source: 10 ft = 3.048 m, 68 °F = 20 °C, 0.001 km3 = 1 000 000 m3."""
    head = "units: {depth: ft, temperature: degF, volume: km3}\n"
    facts = water("temperature: 68, yearly_temperature: {low: 41, high: 77}, volume: 0.001, discharge: 1", head=head).facts
    expected = {"depth": 3.048, "temperature": 20, "volume": 1e6, "flushing_time": 1e6 / 86400}
    assert expected == pytest.approx({name: facts[f"s0.{name}"].number for name in expected})
    assert "10 ft" in facts["s0.depth"].shown_working
    assert (5, 25) == pytest.approx((facts["s0.yearly_temperature"].low, facts["s0.yearly_temperature"].high))


@pytest.mark.parametrize(
    ("fields", "because"),
    [("temperature: 55", "0 to 40 °C"), ("temperature: -1.5", "0 to 40 °C"), ("salinity: 240", "0 to 40 g kg⁻¹")],
)
def test_beyond_the_fit_oxygen_is_not_defined_and_the_span_is_named(fields: str, because: str) -> None:
    facts = water(f"{fields}, dissolved_oxygen: 5").facts
    for name in ("oxygen_saturation", "oxygen_saturation_percent"):
        assert facts[f"s0.{name}"].value is None
        assert because in facts[f"s0.{name}"].shown


@pytest.mark.parametrize(
    ("salinity", "found", "asked"),
    [(0.2, "fresh water", 1), (0.5, "brackish water", 2), (35, "sea water", 3), (40, "brine", 3)],
)
def test_class_by_salinity_shows_the_questions_up_to_the_one_that_decides(salinity: float, found: str, asked: int) -> None:
    fact = water(f"salinity: {salinity}").facts["s0.salinity_class"]
    assert (found, asked) == (fact.value, len(fact.shown_working.splitlines()) - 1)


def test_water_without_outflow_is_never_exchanged() -> None:
    fact = water("volume: 1000, discharge: 0").facts["s0.flushing_time"]
    assert (None, True) == (fact.value, fact.shown.startswith("not defined"))


def test_volume_without_discharge_gives_no_flushing_time() -> None:
    assert "s0.flushing_time" not in water("volume: 1000").facts


@settings(max_examples=25, deadline=None)
@given(st.floats(0.02, 20), st.floats(0.1, 5000))
def test_bottom_is_lit_just_where_at_least_one_percent_is_left(extinction: float, depth: float) -> None:
    facts = water(f"depth: {depth!r}, light: {{extinction: {extinction!r}}}").facts
    left = facts["s0.light_at_bottom"]
    if left.is_number and abs(left.number - 1) > 1e-6:
        assert (left.number > 1) is facts["s0.reaches_bottom"].value
    elif not left.is_number:
        assert facts["s0.reaches_bottom"].value is False
