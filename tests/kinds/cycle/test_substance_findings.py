"""What is told about conversions, ratios, the airborne fraction and fuels that do not fit."""

from __future__ import annotations

import pytest

from tests.kinds.cycle.test_facts import text
from tests.kinds.small_records import findings

CARBON, NITROGEN, AREA = ("units: {stock: Gt C, flux: Gt C/yr}\n", "units: {stock: Tg N, flux: Tg N/yr}\n", "units: {stock: kg N/ha, flux: kg N/ha/yr}\n")
WATER = "units: {stock: mm, flux: mm/yr}\n"
NUMBER = "numbers: [{id: other, name: Other, value: 4, unit: UNIT, source: SMIL2000}]\n"


def told(more: str, head: str = CARBON, reservoir: str = "stock: 10") -> list[tuple[object, ...]]:
    return [(found.path, found.found) for found in findings("cycle", text("a source pool 5", reservoir, head) + more)]


@pytest.mark.parametrize(
    ("more", "head"),
    [
        ("conversions: [{of: a.rate, as: CO2}, {of: a.rate, as: ppm}, {of: pool.balance, as: CH4}]\n", CARBON),
        ("conversions: [{of: pool.stock, as: NO3, unit: g NO3/m2}]\n", AREA),
        (f"{NUMBER.replace('UNIT', 'Gt P')}ratios: [{{id: r, name: R, of: pool.stock, to: numbers.other}}]\n", NITROGEN),
        ("fuels: [{id: f, name: F, fuel: wood, mass: 1, unit: kg}, {id: g, name: G, formula: C2H6O, mass: 1, unit: Gt}]\n", CARBON),
    ],
)
def test_what_fits_has_no_findings(more: str, head: str) -> None:
    assert [] == told(more, head)


@pytest.mark.parametrize(
    ("conversion", "head", "where", "found"),
    [
        ("of: b.rate, as: CO2", CARBON, "of", '"b.rate"'),
        ("of: pool.change, as: CO2", CARBON, "of", '"pool.change"'),
        ("of: a.rate, as: NO3", CARBON, "as", "NO3"),
        ("of: a.rate, as: CO2", WATER, "as", "CO2"),
        ("of: a.rate, as: ppm", NITROGEN, "as", "Tg N/yr"),
        ("of: a.rate, as: ppm, unit: ppm CO2/yr", CARBON, "unit", "ppm CO2/yr"),
        ("of: a.rate, as: CO2, unit: Gt C/yr", CARBON, "unit", "Gt C/yr"),
        ("of: a.rate, as: CO2, unit: Gt CO2", CARBON, "unit", "Gt CO2"),
    ],
)
def test_conversion_that_cannot_be_made_is_told_at_its_place(conversion: str, head: str, where: str, found: str) -> None:
    assert [(("conversions", 0, where), found)] == told(f"conversions: [{{{conversion}}}]\n", head)


def test_conversion_made_twice_is_told() -> None:
    assert [(("conversions", 1), '"a.rate" as CO2 again')] == told("conversions: [{of: a.rate, as: CO2}, {of: a.rate, as: CO2}]\n")


@pytest.mark.parametrize(
    ("number", "pair", "where", "found"),
    [
        ("Tg P", "of: numbers.other, to: b.rate", ("to",), '"b.rate"'),
        ("Tg P", "of: numbers.others, to: pool.stock", ("of",), '"numbers.others"'),
        ("Tg P/yr", "of: numbers.other, to: pool.stock", (), "Tg P/yr and Tg N"),
        ("Tg NO3", "of: numbers.other, to: pool.stock", (), "Tg NO3 and Tg N"),
        ("Tg", "of: numbers.other, to: pool.stock", (), "Tg and Tg N"),
    ],
)
def test_ratio_of_what_cannot_be_compared_is_told(number: str, pair: str, where: tuple[str, ...], found: str) -> None:
    more = f"{NUMBER.replace('UNIT', number)}ratios: [{{id: r, name: R, {pair}}}]\n"
    assert [(("ratios", 0, *where), found)] == told(more, NITROGEN)


@pytest.mark.parametrize(
    ("air", "reservoir", "where", "found"),
    [
        ("air: pool, emissions: [a]", "stock: 10", ("air",), '"pool"'),
        ("air: pol, emissions: [a]", "stock: 10, change: 2", ("air",), '"pol"'),
        ("air: pool, emissions: [a, b]", "stock: 10, change: 2", ("emissions", 1), '"b"'),
    ],
)
def test_airborne_fraction_of_what_is_not_there_is_told(air: str, reservoir: str, where: tuple[object, ...], found: str) -> None:
    assert [(("airborne_fraction", *where), found)] == told(f"airborne_fraction: {{{air}}}\n", reservoir=reservoir)


@pytest.mark.parametrize(
    ("fuel", "where", "found"),
    [
        ("mass: 1, unit: t", (), "neither"),
        ("fuel: wood, formula: CH4, mass: 1, unit: t", (), "both"),
        ("formula: Ca(OH)2, mass: 1, unit: t", ("formula",), '"Ca(OH)2"'),
        ("formula: H2O, mass: 1, unit: t", ("formula",), '"H2O"'),
        ("fuel: wood, mass: 1, unit: m3", ("unit",), '"m3"'),
        ("fuel: wood, mass: 1, unit: t C", ("unit",), '"t C"'),
    ],
)
def test_fuel_that_cannot_be_worked_out_is_told(fuel: str, where: tuple[str, ...], found: str) -> None:
    assert [(("fuels", 0, *where), found)] == told(f"fuels: [{{id: f, name: F, {fuel}}}]\n")


def test_parts_of_one_id_are_told() -> None:
    fuels = "fuels: [{id: pool, name: F, fuel: wood, mass: 1, unit: t}, {id: a, name: F, fuel: wood, mass: 1, unit: t}]\n"
    assert [(("fuels", 0, "id"), '"pool"'), (("fuels", 1, "id"), '"a"')] == told(fuels)
    scenario = "scenarios: [{id: s, name: S, years: 5, assumes: a}]\nfuels: [{id: s, name: F, fuel: wood, mass: 1, unit: t}]\n"
    assert [(("fuels", 0, "id"), '"s"')] == told(scenario)


def test_unit_that_cannot_be_read_is_told_once() -> None:
    more = "conversions: [{of: a.rate, as: CO2}]\n"
    assert [("units", "stock")] == [path for path, _ in told(more, "units: {stock: bananas, flux: Gt C/yr}\n")]
