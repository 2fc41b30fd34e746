"""Flows stated in kilocalories, as carbon or as dry matter: turned into energy with the step shown."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.kind import Subject
from tests.kinds.pyramid.test_facts import pyramid
from tests.kinds.small_records import demo

KCAL = "units: {energy_flow: kcal/m2/yr, energy_content: kcal/g}\nconversions: {to: kJ/m2/yr}\n"


def converted(units: str, conversions: str, *levels: str) -> Subject:
    return pyramid(*levels, head=f"units: {{{units}}}\nconversions: {{{conversions}}}\n")


def test_kilocalories_become_kilojoules_with_the_step_shown() -> None:
    """Source: Pint 0.25.3, 8833 kcal = 36957.272 kJ; it is shown to the unit, as sums of such flows are."""
    fact = pyramid("production: 8833", "production: 100", head=KCAL).facts["l0.production"]
    assert 36957.272 == pytest.approx(fact.number)
    assert "amount × factor = 8833 kcal m⁻² yr⁻¹ × 4.184 kJ kcal⁻¹ = 36\u202f957 kJ m⁻² yr⁻¹" == fact.shown_working


def test_silver_springs_keeps_its_shares_in_kilojoules() -> None:
    """Source: Odum 1957, from memory: 20 810 fixed, 11 977 respired, 8833 left; 1478 of 3368 built up by herbivores."""
    facts = pyramid("gross_production: 20810, respiration: 11977", "respired: 1890, production: 1478", head=KCAL).facts
    assert 36957.272 == pytest.approx(facts["l0.production"].number)
    assert [100 * 1478 / 8833, 100 * 1478 / 3368] == pytest.approx([facts[f"l1.{name}"].number for name in ("transfer_efficiency", "production_efficiency")])


def test_energy_content_and_need_are_converted_too() -> None:
    """Source: arithmetic, 5 x 4.184 and 1000 x 4.184."""
    top = "top_consumer: {level: l1, needs: {value: 1000, unit: kcal/yr}, measured_as: production}\n"
    facts = pyramid("production: 500, biomass: 2, energy_content: 5", "production: 5", head=KCAL, more=top).facts
    assert [(20.92, "kJ/g"), (4184.0, "kJ/yr")] == [
        (pytest.approx(fact.number), fact.unit.label) for fact in (facts["l0.energy_content"], facts["l1.need"]) if fact.unit
    ]
    assert 2 * 5 / 500 * 365.25 == pytest.approx(facts["l0.biomass_turnover_time"].number)


def test_factor_is_a_fact_that_names_its_kilocalorie() -> None:
    factor = demo("pyramid/ember_spring").facts["conversions.factor"]
    assert (4.184, "4.184 kJ kcal⁻¹", ("NIST_SP811",)) == (pytest.approx(factor.number), factor.shown, factor.sources)
    assert "thermochemical" in factor.name


def test_other_units_of_energy_convert_as_well() -> None:
    """Source: arithmetic, 1 MJ/ha is 0.1 kJ/m2; no calorie, so no source is needed."""
    facts = converted("energy_flow: MJ/ha/yr", "to: kJ/m2/yr", "production: 500", "production: 5").facts
    assert (50.0, 0.1, ()) == (pytest.approx(facts["l0.production"].number), pytest.approx(facts["conversions.factor"].number), facts["conversions.factor"].sources)


def test_record_in_the_wanted_unit_is_left_alone() -> None:
    facts = converted("energy_flow: kJ/m2/yr", "to: kJ/m2/yr", "production: 500", "production: 5").facts
    assert ("500 kJ m⁻² yr⁻¹ (stated in the record)", False) == (facts["l0.production"].shown_working, "conversions.factor" in facts)


def test_carbon_becomes_energy_by_the_stated_factor() -> None:
    """Source: arithmetic, 500 x 45."""
    facts = converted("energy_flow: g C/m2/yr", "energy_per_carbon: 45, source: STRAYER2012", "production: 500", "production: 5").facts
    assert (22500.0, "energy_from_carbon") == (pytest.approx(facts["l0.production"].number), facts["l0.production"].method)
    assert ("STRAYER2012",) == facts["conversions.energy_per_carbon"].sources


@pytest.mark.parametrize(
    ("conversions", "energy"), [("energy_per_dry_matter: 20", 10000.0), ("energy_per_carbon: 45, carbon_per_dry_matter: 0.45", 10125.0)]
)
def test_dry_matter_becomes_energy_directly_or_by_way_of_carbon(conversions: str, energy: float) -> None:
    """Source: arithmetic, 500 x 20 and 500 x 0.45 x 45."""
    assert energy == pytest.approx(converted("energy_flow: g/m2/yr", conversions, "production: 500", "production: 5").facts["l0.production"].number)


@pytest.mark.parametrize(("amount", "shown"), [("{value: 100, plus_minus: 10}", "418 ± 42"), ("{low: 100, high: 200}", "418 to 837")])
def test_spread_is_converted_with_the_flow(amount: str, shown: str) -> None:
    """Source: arithmetic, 10 x 4.184 and both ends x 4.184."""
    assert f"{shown} kJ m⁻² yr⁻¹" == pyramid("production: 500", f"production: {amount}", head=KCAL).facts["l1.production"].shown


@settings(max_examples=25, deadline=None)
@given(st.lists(st.integers(1, 10**5), min_size=2, max_size=4), st.sampled_from([KCAL, "units: {energy_flow: g C/m2/yr}\nconversions: {energy_per_carbon: 41.3}\n"]))
def test_shares_do_not_depend_on_the_unit(flows: list[int], head: str) -> None:
    levels = [f"production: {flow}" for flow in flows]
    plain, turned = pyramid(*levels).facts, pyramid(*levels, head=head).facts
    assert plain["overall_efficiency"].number == pytest.approx(turned["overall_efficiency"].number)
