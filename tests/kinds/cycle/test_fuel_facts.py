"""Fuel that is burned, step by step, against the factors of the source and the formula of a compound."""

from __future__ import annotations

import pytest

from generator.kind import Subject
from tests.kinds.cycle.test_facts import text
from tests.kinds.small_records import demo, subject


def burned(fuel: str, more: str = "", reservoir: str = "stock: 10") -> Subject:
    return subject("cycle", f"{text('a source pool 10', reservoir)}fuels: [{{id: fire, name: Fire, {fuel}}}]\n{more}")


def values(of: Subject, *names: str) -> list[object]:
    return [of.facts[f"fire.{name}"].value for name in names]


def test_steps_of_an_ordinary_fuel() -> None:
    """Source: arithmetic on 48.0 GJ/t and 15.3 kg C/GJ."""
    of = burned("fuel: natural_gas, mass: 2, unit: t")
    carbon = 2 * 48.0 * 15.3 / 1000
    expected = [96.0, carbon, carbon * 44.009 / 12.011, 15.3 * 44.009 / 12.011, carbon / 1e9 / 2.124]
    assert expected == pytest.approx(values(of, "energy", "carbon", "carbon_dioxide", "emission_factor", "rise_in_air"))


def test_pure_compound_goes_by_its_formula_and_has_no_energy() -> None:
    """Source: 2.743190 kg of carbon dioxide for a kilogram of methane, worked out from molar masses."""
    of = burned("formula: CH4, mass: 1, unit: kg")
    assert [2.743190] == pytest.approx(values(of, "carbon_dioxide"))
    assert "fire.energy" not in of.facts and "fire.emission_factor" not in of.facts
    assert "1 kg × 1 × 12.011 g C mol⁻¹ ÷ 16.043 g mol⁻¹" in of.facts["fire.carbon"].shown_working


def test_rise_that_stays_needs_an_airborne_fraction() -> None:
    air = "airborne_fraction: {air: pool, emissions: [a]}\n"
    of = burned("fuel: lignite, mass: 5, unit: Gt", air, "stock: 10, change: 4")
    (rise, stays) = values(of, "rise_in_air", "rise_that_stays")
    assert 0.4 * float(str(rise)) == pytest.approx(stays)
    assert "fire.rise_that_stays" not in burned("fuel: lignite, mass: 5, unit: Gt").facts


def test_default_values_carry_their_source() -> None:
    facts = burned("fuel: diesel, mass: 1, unit: t").facts
    assert [("43.0 GJ t⁻¹", ("IPCC2006V2",)), ("20.2 kg C GJ⁻¹", ("IPCC2006V2",))] == [
        (facts[f"fire.{name}"].shown, facts[f"fire.{name}"].sources) for name in ("net_calorific_value", "carbon_content")
    ]


def test_a_gigatonne_of_coal_gives_off_more_than_it_weighs_and_gas_least_for_its_energy() -> None:
    facts = demo("cycle/global_carbon").facts
    assert facts["hard_coal.mass"].number < facts["hard_coal.carbon_dioxide"].number
    factors = [facts[f"{fuel}.emission_factor"].number for fuel in ("natural_gas", "crude_oil", "hard_coal")]
    assert sorted(factors) == factors
