"""Properties and edges of generator/science/combustion.py; outside values are in test_checks.py."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS
from generator.science.combustion import FUELS, Fuel
from generator.science.substances import atoms, molar_mass

each_fuel = pytest.mark.parametrize("fuel", FUELS.values(), ids=FUELS)


def emitted(fuel: Fuel) -> float:
    """Carbon dioxide for the energy [kg/TJ], by our own steps."""
    given_ = {"fuel": 1.0, "net_calorific_value": float(fuel.net_calorific_value)}
    carbon = METHODS["fuel_carbon"].compute(**given_, carbon_content=float(fuel.carbon_content))
    gas = METHODS["as_substance"].compute(mass=carbon, molar_mass_new=molar_mass("CO2"), molar_mass_old=molar_mass("C"), atoms=1)
    return 1000 * METHODS["emission_factor"].compute(carbon_dioxide=gas, energy=METHODS["fuel_energy"].compute(**given_))


@each_fuel
def test_steps_lead_to_the_factor_that_the_source_states(fuel: Fuel) -> None:
    """It rounds to hundreds of kg/TJ or more, and takes 44 over 12."""
    assert fuel.emission_factor == pytest.approx(emitted(fuel), rel=0.003)


@each_fuel
def test_carbon_is_a_believable_part_of_the_fuel(fuel: Fuel) -> None:
    """Source: wet brown coal holds about a third, oil some 85 percent of carbon."""
    assert 0.3 < float(fuel.net_calorific_value) * float(fuel.carbon_content) / 1000 < 0.9


def test_for_the_same_energy_gas_gives_off_least_and_coal_most_of_the_fossil_fuels() -> None:
    ranked = sorted((fuel for fuel in FUELS.values() if not fuel.biogenic), key=emitted)
    assert ("natural_gas", "lignite") == (ranked[0].id, ranked[-1].id)


@given(st.floats(0.001, 1e6), st.sampled_from(["CH4", "C3H8", "C8H18", "C2H6O", "C6H12O6"]))
def test_carbon_of_a_compound_is_less_than_its_mass_and_in_proportion(mass: float, formula: str) -> None:
    given_ = {"carbon_atoms": atoms(formula)["C"], "molar_mass_carbon": molar_mass("C"), "molar_mass_fuel": molar_mass(formula)}
    carbon = METHODS["compound_carbon"].compute(fuel=mass, **given_)
    assert 0 < carbon < mass
    assert 3 * carbon == pytest.approx(METHODS["compound_carbon"].compute(fuel=3 * mass, **given_))


def test_nothing_burned_gives_nothing() -> None:
    assert 0.0 == METHODS["fuel_carbon"].compute(fuel=0.0, net_calorific_value=48.0, carbon_content=15.3)
    assert 0.0 == METHODS["fuel_energy"].compute(fuel=0.0, net_calorific_value=48.0)
    assert 0.0 == METHODS["compound_carbon"].compute(fuel=0.0, carbon_atoms=1, molar_mass_carbon=12.011, molar_mass_fuel=16.043)
    with pytest.raises(ZeroDivisionError):
        METHODS["emission_factor"].compute(carbon_dioxide=0.0, energy=0.0)


@given(st.floats(0.001, 1e6), st.floats(5, 60), st.floats(10, 40))
def test_factor_of_a_fuel_does_not_depend_on_how_much_is_burned(mass: float, calorific: float, content: float) -> None:
    def factor(fuel: float) -> float:
        energy = METHODS["fuel_energy"].compute(fuel=fuel, net_calorific_value=calorific)
        carbon = METHODS["fuel_carbon"].compute(fuel=fuel, net_calorific_value=calorific, carbon_content=content)
        return float(METHODS["emission_factor"].compute(carbon_dioxide=carbon * 44.009 / 12.011, energy=energy))

    assert factor(mass) == pytest.approx(factor(1.0))
