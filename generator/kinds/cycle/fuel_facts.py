"""Fuel that is burned: its energy, its carbon, the carbon dioxide that comes of it, and what that does to the air."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.kind import in_sentence
from generator.kinds.cycle.budget_facts import significant_figures
from generator.kinds.cycle.record import BurnedFuel, CycleRecord
from generator.kinds.cycle.substance_facts import as_ppm, as_substance, molar_mass_fact
from generator.quantities.amount import Amount
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed, stated
from generator.quantities.units import unit
from generator.science import combustion, substances

STAYS = Expression("rise * airborne_fraction")


def fuel_facts(record: CycleRecord, facts: Mapping[str, Fact]) -> Iterator[Fact]:
    """Fuel by fuel, each step made from the one before."""
    for fuel in record.fuels:
        yield from _of_fuel(fuel, facts.get("airborne_fraction"), significant_figures(record))


def _of_fuel(fuel: BurnedFuel, airborne_fraction: Fact | None, figures: int) -> Iterator[Fact]:
    mass = stated(f"{fuel.id}.mass", f"Burned: {in_sentence(fuel.name)}", Amount(value=fuel.mass, written=fuel.mass.text), unit(fuel.unit))
    yield mass
    carbon_unit = unit(f"{fuel.unit} C")
    if fuel.fuel is None:
        carbon = _of_compound(fuel, mass, figures)
    else:
        known, sources = combustion.FUELS[fuel.fuel], (combustion.SOURCE,)
        heat, content = (Amount(value=float(text), written=text) for text in (known.net_calorific_value, known.carbon_content))
        calorific = stated(f"{fuel.id}.net_calorific_value", f"Net calorific value of {known.name}", heat, unit("GJ/t"), sources=sources)
        content = stated(f"{fuel.id}.carbon_content", f"Carbon for the energy of {known.name}", content, unit("kg C/GJ"), sources=sources)
        yield from (calorific, content)
        given = {"fuel": mass, "net_calorific_value": calorific, "carbon_content": content}
        energy = computed(
            f"{fuel.id}.energy", "Energy set free", combustion.FUEL_ENERGY.expression, given, unit("GJ"),
            method=combustion.FUEL_ENERGY.id, figures=figures,
        )  # fmt: skip
        yield energy
        carbon = computed(
            f"{fuel.id}.carbon", "Carbon set free", combustion.FUEL_CARBON.expression, given, carbon_unit,
            method=combustion.FUEL_CARBON.id, figures=figures,
        )  # fmt: skip
    yield carbon
    gas = as_substance(carbon, "CO2", f"{fuel.id}.carbon_dioxide", figures)
    yield gas
    if fuel.fuel is not None:
        yield computed(
            f"{fuel.id}.emission_factor", "Carbon dioxide for the energy", combustion.EMISSION_FACTOR.expression,
            {"carbon_dioxide": gas, "energy": energy}, unit("kg CO2/GJ"), method=combustion.EMISSION_FACTOR.id, figures=figures,
        )  # fmt: skip
    rise = as_ppm(carbon, f"{fuel.id}.rise_in_air", "Rise in the air, if all of it stayed there", unit("ppm CO2"), figures)
    yield rise
    if airborne_fraction is not None:
        given = {"rise": rise, "airborne_fraction": airborne_fraction}
        name = "Rise in the air, if the airborne fraction stays there"
        yield computed(f"{fuel.id}.rise_that_stays", name, STAYS, given, unit("ppm CO2"), method="airborne_fraction", figures=figures)


def _of_compound(fuel: BurnedFuel, mass: Fact, figures: int) -> Fact:
    formula = str(fuel.formula)
    atoms = substances.atoms(formula)["C"]
    given = {
        "fuel": mass, "carbon_atoms": stated("", "Carbon atoms", Amount(value=float(atoms), written=str(atoms)), unit("")),
        "molar_mass_carbon": molar_mass_fact("C"), "molar_mass_fuel": molar_mass_fact(formula, "g/mol"),
    }  # fmt: skip
    return computed(
        f"{fuel.id}.carbon", "Carbon set free", combustion.COMPOUND_CARBON.expression, given, unit(f"{fuel.unit} C"),
        method=combustion.COMPOUND_CARBON.id, figures=figures,
    )  # fmt: skip
