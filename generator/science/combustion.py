"""Burning fuel: its energy, its carbon, and the carbon dioxide that comes of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from generator.science.method import Method

SOURCE = "IPCC2006V2"


@dataclass(frozen=True, kw_only=True)
class Fuel:
    """Default values of a fuel as it is traded; real lots differ."""

    id: str
    name: str
    net_calorific_value: str
    """Energy set free, less what evaporates the water that forms [GJ/t], with the digits of the source."""
    carbon_content: str
    """Carbon for the energy [kg C/GJ]."""
    emission_factor: float
    """Carbon dioxide for the energy as the source rounds it [kg/TJ]; for comparison only."""
    biogenic: bool = False
    """Whether its carbon was in the air a few years ago, so that budgets count it elsewhere."""


FUELS: Mapping[str, Fuel] = MappingProxyType(
    {
        fuel.id: fuel
        for fuel in (
            Fuel(id="natural_gas", name="natural gas", net_calorific_value="48.0", carbon_content="15.3", emission_factor=56100),
            Fuel(id="liquefied_gas", name="liquefied petroleum gas", net_calorific_value="47.3", carbon_content="17.2", emission_factor=63100),
            Fuel(id="petrol", name="petrol", net_calorific_value="44.3", carbon_content="18.9", emission_factor=69300),
            Fuel(id="diesel", name="diesel oil", net_calorific_value="43.0", carbon_content="20.2", emission_factor=74100),
            Fuel(id="crude_oil", name="crude oil", net_calorific_value="42.3", carbon_content="20.0", emission_factor=73300),
            Fuel(id="anthracite", name="anthracite", net_calorific_value="26.7", carbon_content="26.8", emission_factor=98300),
            Fuel(id="bituminous_coal", name="hard coal", net_calorific_value="25.8", carbon_content="25.8", emission_factor=94600),
            Fuel(id="lignite", name="brown coal", net_calorific_value="11.9", carbon_content="27.6", emission_factor=101000),
            Fuel(id="wood", name="wood", net_calorific_value="15.6", carbon_content="30.5", emission_factor=112000, biogenic=True),
        )
    }
)  # fmt: skip
"""Default net calorific values and carbon contents for inventories of greenhouse gases, by id.

Some numbers of hard coal and crude oil are from memory; the others were seen in works that quote the source."""

FUEL_ENERGY = Method(
    id="fuel_energy",
    name="Energy set free by burning fuel",
    formula=("energy = fuel * net_calorific_value",),
    symbols=(
        ("energy", "heat that is set free", "GJ"), ("fuel", "mass of fuel burned", "t"),
        ("net_calorific_value", "heat for each unit of mass, the water leaving as vapour", "GJ/t"),
    ),
    sources=(SOURCE,),
    limits="Net calorific values; gross ones count the heat of condensing water as well and are up to a tenth larger.",
)  # fmt: skip

FUEL_CARBON = Method(
    id="fuel_carbon",
    name="Carbon in fuel",
    formula=("carbon = fuel * net_calorific_value * carbon_content",),
    symbols=(
        ("carbon", "carbon that is set free", "t C"), ("fuel", "mass of fuel burned", "t"),
        ("net_calorific_value", "heat for each unit of mass", "GJ/t"), ("carbon_content", "carbon for each unit of heat", "kg C/GJ"),
    ),
    sources=(SOURCE,),
    limits="Default values for a kind of fuel; a real lot can hold some percent more or less. All carbon is taken to burn.",
)  # fmt: skip

COMPOUND_CARBON = Method(
    id="compound_carbon",
    name="Carbon in a pure compound",
    formula=("carbon = fuel * carbon_atoms * molar_mass_carbon / molar_mass_fuel",),
    symbols=(
        ("carbon", "carbon that is set free", "t C"), ("fuel", "mass of compound burned", "t"),
        ("carbon_atoms", "carbon atoms in the formula of the compound", ""), ("molar_mass_carbon", "molar mass of carbon", "g C/mol"),
        ("molar_mass_fuel", "molar mass of the compound", "g/mol"),
    ),
    sources=("IUPAC2021",),
    limits="For one pure compound. Fuels of trade are mixtures, with water and ash besides.",
)  # fmt: skip

EMISSION_FACTOR = Method(
    id="emission_factor",
    name="Carbon dioxide for the energy of a fuel",
    formula=("emission_factor = carbon_dioxide / energy",),
    symbols=(
        ("emission_factor", "carbon dioxide for each unit of heat", "kg CO2/GJ"), ("carbon_dioxide", "carbon dioxide set free", "t CO2"),
        ("energy", "heat set free", "GJ"),
    ),
    sources=(SOURCE,),
    limits="Only what the fire gives off: mining, refining and transport come on top. For wood the carbon was in the air before.",
)  # fmt: skip
