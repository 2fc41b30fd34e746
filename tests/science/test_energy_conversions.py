"""Conversions between energy, carbon and dry matter; outside values are in test_checks.py."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.quantities.units import convert, unit
from generator.science import METHODS
from generator.science.energy_conversions import KILOJOULES_PER_KILOCALORIE

amounts = st.floats(0.001, 1e6)


@given(amounts)
def test_the_kilocalorie_is_that_of_the_units(amount: float) -> None:
    """The factor of the method and the list of units mean the same, thermochemical, kilocalorie."""
    made = METHODS["energy_conversion"].compute(amount=amount, factor=KILOJOULES_PER_KILOCALORIE)
    assert made == pytest.approx(convert(amount, unit("kcal"), unit("kJ")))


@given(amounts, st.floats(0.1, 1), st.floats(10, 60))
def test_dry_matter_by_way_of_carbon_is_two_steps_in_one(matter: float, share: float, per_carbon: float) -> None:
    per_mass = METHODS["energy_per_dry_matter"].compute(carbon_per_dry_matter=share, energy_per_carbon=per_carbon)
    directly = METHODS["energy_from_dry_matter"].compute(dry_matter=matter, energy_content=per_mass)
    assert directly == pytest.approx(METHODS["energy_from_carbon"].compute(carbon=matter * share, energy_per_carbon=per_carbon))


@given(amounts, amounts)
def test_conversions_are_proportional(one: float, other: float) -> None:
    compute = METHODS["energy_from_carbon"].compute
    both = compute(carbon=one + other, energy_per_carbon=45.0)
    assert both == pytest.approx(compute(carbon=one, energy_per_carbon=45.0) + compute(carbon=other, energy_per_carbon=45.0))


@pytest.mark.parametrize(
    ("method", "given_values"),
    [
        ("energy_conversion", {"amount": 0.0, "factor": KILOJOULES_PER_KILOCALORIE}), ("energy_from_carbon", {"carbon": 0.0, "energy_per_carbon": 45.0}),
        ("energy_from_dry_matter", {"dry_matter": 0.0, "energy_content": 18.0}), ("energy_per_dry_matter", {"carbon_per_dry_matter": 0.0, "energy_per_carbon": 45.0}),
        ("carbon_from_dry_matter", {"dry_matter": 0.0, "carbon_fraction": 0.45}),
    ],
)  # fmt: skip
def test_nothing_turns_into_nothing(method: str, given_values: dict[str, float]) -> None:
    assert 0.0 == METHODS[method].compute(**given_values)
