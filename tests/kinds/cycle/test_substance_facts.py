"""Matter counted as other substances, ratios of elements, and what stays in the air."""

from __future__ import annotations

import math

import pytest

from generator.kind import Subject
from tests.kinds.cycle.test_facts import text
from tests.kinds.small_records import demo, subject

NITROGEN = "units: {stock: Tg N, flux: Tg N/yr}\n"


def cycle(more: str, fluxes: str = "a source pool 12.011", reservoir: str = "stock: 10", head: str = "units: {stock: Gt C, flux: Gt C/yr}\n") -> Subject:
    return subject("cycle", text(fluxes, reservoir, head) + more)


def test_working_of_a_conversion_shows_the_molar_masses() -> None:
    fact = cycle("conversions: [{of: a.rate, as: CO2}]\n").facts["a.rate_as_co2"]
    assert "44.0 Gt CO₂ yr⁻¹" == fact.shown
    assert "12.011 Gt C yr⁻¹ × 44.009 g CO₂ mol⁻¹ ÷ 12.011 g C mol⁻¹ = 44.0 Gt CO₂ yr⁻¹" in fact.shown_working


def test_two_atoms_in_one_molecule_are_counted() -> None:
    """Source: formula of nitrous oxide; 28.014 of nitrogen in 44.013."""
    fact = cycle("conversions: [{of: a.rate, as: N2O}]\n", "a source pool 28.014", head=NITROGEN).facts["a.rate_as_n2o"]
    assert 44.013 == pytest.approx(fact.number)
    assert "÷ (2 × 14.007 g N mol⁻¹)" in fact.shown_working


def test_conversion_can_be_shown_in_another_unit() -> None:
    fact = cycle("conversions: [{of: pool.stock, as: CO2, unit: Mt CO2}]\n").facts["pool.stock_as_co2"]
    assert 10_000 * 44.009 / 12.011 == pytest.approx(fact.number)


def test_spread_and_range_are_converted_too() -> None:
    factor = 62.004 / 14.007
    fluxes = "a source pool {value: 10, plus_minus: 2}\nb pool sink {low: 4, high: 8}"
    facts = cycle("conversions: [{of: a.rate, as: NO3}, {of: b.rate, as: NO3}]\n", fluxes, head=NITROGEN).facts
    assert 2 * factor == pytest.approx(facts["a.rate_as_no3"].plus_minus)
    assert (4 * factor, 8 * factor) == pytest.approx((facts["b.rate_as_no3"].low, facts["b.rate_as_no3"].high))


def test_unknown_quantity_stays_unknown() -> None:
    fact = cycle("conversions: [{of: a.rate, as: CO2}]\n", "a source pool unknown").facts["a.rate_as_co2"]
    assert (None, "not known") == (fact.value, fact.shown)


def test_carbon_of_the_air_as_ppm_names_its_factor() -> None:
    """Source: arithmetic with 2.124 Gt C for each ppm."""
    facts = cycle("conversions: [{of: pool.stock, as: ppm}, {of: a.rate, as: ppm}]\n", "a source pool 2.124", "stock: 870").facts
    assert ("410 ppm CO₂", "1.00 ppm CO₂ yr⁻¹") == (facts["pool.stock_as_ppm"].shown, facts["a.rate_as_ppm"].shown)
    assert "÷ 2.124 Gt C ppm⁻¹ CO₂" in facts["pool.stock_as_ppm"].shown_working


RATIO = """
numbers: [{{id: other, name: Other, value: {other}, unit: {unit}, source: SMIL2000}}]
ratios: [{{id: pair, name: Pair, of: numbers.other, to: pool.stock}}]
"""


def test_ratio_by_atoms_is_that_of_moles_whatever_the_units_of_mass() -> None:
    """Source: arithmetic; 16 moles of nitrogen to one of phosphorus, once in Tg and once in Gt."""
    for other, unit in ((16 * 14.007, "Tg N"), (16 * 14.007 / 1000, "Gt N")):
        of = cycle(RATIO.format(other=other, unit=unit), reservoir="stock: 30.974", head="units: {stock: Tg P, flux: Tg P/yr}\n")
        assert (16.0, 16 * 14.007 / 30.974) == pytest.approx((of.facts["pair.by_atoms"].number, of.facts["pair.by_mass"].number))
        assert ("16.0", "7.24 g N g⁻¹ P") == (of.facts["pair.by_atoms"].shown, of.facts["pair.by_mass"].shown)


def test_ratio_of_ranges_reaches_from_least_over_most_to_most_over_least() -> None:
    of = cycle(RATIO.format(other="{low: 10, high: 20}", unit="Tg N"), reservoir="stock: {low: 1, high: 4}", head="units: {stock: Tg P, flux: Tg P/yr}\n")
    by_mass = of.facts["pair.by_mass"]
    assert (10 / 4, 20 / 1) == pytest.approx((by_mass.low, by_mass.high))


def test_ratio_of_nothing_to_a_range_is_none_at_all() -> None:
    more = RATIO.format(other="0", unit="Tg N")
    of = cycle(more, reservoir="stock: {low: 1, high: 4}", head="units: {stock: Tg P, flux: Tg P/yr}\n")
    assert [(0.0, None, None)] * 2 == [(fact.value, fact.low, fact.high) for fact in (of.facts["pair.by_atoms"], of.facts["pair.by_mass"])]


def test_sea_holds_nitrogen_and_phosphorus_nearly_as_plankton_does() -> None:
    fact = demo("cycle/phosphorus").facts["sea_water.by_atoms"]
    assert fact.low < demo("cycle/phosphorus").facts["numbers.redfield"].number < fact.high


AIR = "airborne_fraction: {air: pool, emissions: [a, b]}\n"


def test_airborne_fraction_is_growth_over_emissions_with_its_uncertainty() -> None:
    """Source: arithmetic; 4 of 10, relative errors 1/4 and 0.5 hypot(3, 4)/10 in quadrature."""
    fluxes = "a source pool {value: 7, plus_minus: 0.3}\nb source pool {value: 3, plus_minus: 0.4}\nc pool sink 6"
    fact = cycle(AIR, fluxes, "stock: 10, change: {value: 4, plus_minus: 1}").facts["airborne_fraction"]
    assert (0.4, 0.4 * math.hypot(0.25, 0.05)) == pytest.approx((fact.value, fact.plus_minus))
    assert "growth ÷ (a + b)" in fact.shown_working


def test_without_spreads_the_fraction_has_none() -> None:
    assert cycle(AIR, "a source pool 7\nb source pool 3", "stock: 10, change: 4").facts["airborne_fraction"].plus_minus is None


def test_fraction_of_no_emissions_is_undefined() -> None:
    fact = cycle(AIR, "a source pool 0\nb source pool 0", "stock: 10, change: 4").facts["airborne_fraction"]
    assert (None, "not defined: it would divide by zero") == (fact.value, fact.shown)


def test_demo_keeps_less_than_half_of_its_emissions_in_the_air() -> None:
    """Source: arithmetic on the record, 5.1 of 9.4 + 1.6."""
    assert 5.1 / 11.0 == pytest.approx(demo("cycle/global_carbon").facts["airborne_fraction"].number)
    assert "airborne_fraction" not in demo("cycle/water").facts
