"""The matter of a cycle counted as other substances, with the step over molar masses; ratios of elements; what stays in the air."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import replace

from generator.kind import NUMBERS
from generator.kinds.cycle.budget_facts import quotient_with_range, significant_figures
from generator.kinds.cycle.record import PPM, Conversion, CycleRecord, Ratio
from generator.quantities.amount import Amount
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed, in_proportion, stated
from generator.quantities.units import Unit, unit
from generator.science import airborne, substances

IUPAC, FACTOR_SOURCE = "IUPAC2021", "BALLANTYNE2012"
ONE_FOR_ONE = Expression("mass * molar_mass_new / molar_mass_old")
SEVERAL = substances.AS_SUBSTANCE.expression


def conversion_facts(record: CycleRecord, facts: Mapping[str, Fact]) -> Iterator[Fact]:
    """One for each conversion, called after its quantity: `fossil_burning.rate_as_co2`."""
    for conversion in record.conversions:
        quantity = facts[conversion.of]
        if conversion.substance == PPM:
            yield _as_ppm(quantity, conversion, significant_figures(record))
        else:
            yield as_substance(
                quantity, conversion.substance, conversion.fact, significant_figures(record), unit(conversion.unit) if conversion.unit else None
            )  # fmt: skip


def substance_of(of: Unit) -> str:
    """The substance that a unit counts; empty for a unit without one."""
    return next((substance for _, _, substance in of.factors if substance), "")


def with_substance(of: Unit, substance: str) -> Unit:
    """The same unit of another substance."""
    old = substance_of(of)
    return unit(" ".join(substance if word == old else word for word in of.label.replace("/", " / ").split()).replace(" / ", "/"))


def molar_mass_fact(substance: str, per_mole: str = "") -> Fact:
    """The molar mass of a substance as a stated number, for workings, in grams of it unless another unit is told."""
    written = f"{substances.molar_mass(substance):.3f}"
    name = f"Molar mass of {substance}"
    return stated(f"molar_mass.{substance}", name, Amount(value=float(written), written=written), unit(per_mole or f"g {substance}/mol"), sources=(IUPAC,))


def as_substance(quantity: Fact, substance: str, fact_id: str, figures: int, shown_in: Unit | None = None) -> Fact:
    """The same atoms counted as another substance."""
    assert quantity.unit is not None
    old = substance_of(quantity.unit)
    count = substances.shared_atoms(old, substance)
    given = {"mass": quantity, "molar_mass_new": molar_mass_fact(substance), "molar_mass_old": molar_mass_fact(old)}
    if count != 1:
        given["atoms"] = stated("atoms", "Atoms", Amount(value=count, written=f"{count:g}"), unit(""))
    fact = computed(
        fact_id, f"{quantity.name}, as {substance}", ONE_FOR_ONE if count == 1 else SEVERAL, given,
        shown_in or with_substance(quantity.unit, substance), method=substances.AS_SUBSTANCE.id, figures=figures,
    )  # fmt: skip
    return in_proportion(fact, quantity)


def carbon_per_ppm() -> Fact:
    """The one factor between carbon in the air and parts per million."""
    factor = Amount(value=float(airborne.CARBON_PER_PPM), written=airborne.CARBON_PER_PPM)
    return stated("", "Carbon in the whole air for each ppm", factor, unit("Gt C/ppm CO2"), sources=(FACTOR_SOURCE,))


def as_ppm(carbon: Fact, fact_id: str, name: str, of: Unit, figures: int) -> Fact:
    """Carbon of the air as parts per million of carbon dioxide."""
    fact = computed(
        fact_id, name, airborne.CARBON_AS_PPM.expression, {"carbon": carbon, "carbon_per_ppm": carbon_per_ppm()}, of,
        method=airborne.CARBON_AS_PPM.id, figures=figures,
    )  # fmt: skip
    return in_proportion(fact, carbon)


def _as_ppm(quantity: Fact, conversion: Conversion, figures: int) -> Fact:
    assert quantity.unit is not None
    per_year = "/yr" if len(quantity.unit.factors) > 1 else ""
    return as_ppm(quantity, conversion.fact, f"{quantity.name}, in parts per million of the air", unit(f"ppm CO2{per_year}"), figures)


def ratio_facts(record: CycleRecord, facts: Mapping[str, Fact]) -> Iterator[Fact]:
    """Each ratio by mass and by atoms."""
    for ratio in record.ratios:
        of, to = (quantity(record, facts, key) for key in (ratio.of, ratio.to))
        yield from _ratio(ratio, of, to, significant_figures(record))


def quantity(record: CycleRecord, facts: Mapping[str, Fact], key: str) -> Fact:
    """A fact of the cycle, or a number that the record states for its sentences."""
    if key in facts:
        return facts[key]
    number = next(number for number in record.numbers if key == f"{NUMBERS}.{number.id}")
    return stated(key, number.name, number.value, unit(number.unit), sources=(number.source,))


def _ratio(ratio: Ratio, of: Fact, to: Fact, figures: int) -> Iterator[Fact]:
    assert of.unit is not None and to.unit is not None
    elements = substance_of(of.unit), substance_of(to.unit)
    masses = {"molar_mass": molar_mass_fact(elements[0]), "other_molar_mass": molar_mass_fact(elements[1])}
    named = f"{ratio.name}, {elements[0]} to {elements[1]}"
    atoms = computed(
        f"{ratio.id}.by_atoms", f"{named} by atoms", substances.ATOM_RATIO.expression, {"mass": of, "other_mass": to} | masses, unit(""),
        method=substances.ATOM_RATIO.id, figures=figures,
    )  # fmt: skip
    atoms = quotient_with_range(atoms, of, to)
    yield atoms
    by_mass = computed(
        f"{ratio.id}.by_mass", f"{named} by mass", substances.MASS_RATIO.expression, {"atom_ratio": atoms} | masses,
        unit(f"g {elements[0]}/g {elements[1]}"), method=substances.MASS_RATIO.id, figures=figures,
    )  # fmt: skip
    yield in_proportion(by_mass, atoms)


def airborne_fact(record: CycleRecord, facts: Mapping[str, Fact]) -> Iterator[Fact]:
    """The share of people's emissions that stays in the air, where the record says which reservoir and fluxes are meant."""
    if (about := record.airborne_fraction) is None:
        return
    growth = facts[f"{about.air}.change"]
    fluxes = [flux for flux in record.fluxes if flux.id in about.emissions]
    emissions = " + ".join(flux.symbol for flux in fluxes)
    given = {"growth": growth} | {flux.symbol: facts[f"{flux.id}.rate"] for flux in fluxes}
    fact = computed(
        "airborne_fraction", "Airborne fraction", Expression(f"growth / ({emissions})"), given, unit(""),
        method=airborne.AIRBORNE_FRACTION.id, figures=significant_figures(record),
    )  # fmt: skip
    yield replace(fact, plus_minus=_relative_spread(fact, growth, [given[flux.symbol] for flux in fluxes]))


def _relative_spread(fraction: Fact, growth: Fact, emissions: list[Fact]) -> float | None:
    """Independent errors of numerator and divisor, each relative to its size, in quadrature."""
    spreads = [emission.plus_minus for emission in emissions if emission.plus_minus is not None]
    if fraction.value is None or not growth.value or (growth.plus_minus is None and not spreads):
        return None
    below = math.hypot(*spreads) / math.fsum(emission.number for emission in emissions)
    return abs(fraction.number) * math.hypot((growth.plus_minus or 0.0) / growth.number, below)
