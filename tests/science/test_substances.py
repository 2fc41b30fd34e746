"""Properties and edges of generator/science/substances.py; outside values are in test_checks.py."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.quantities.units import SUBSTANCES
from generator.science import METHODS
from generator.science.substances import ATOMIC_MASSES, atoms, molar_mass, shared_atoms

OF_NITROGEN = ("N", "NO3", "NH4", "NH3", "N2O", "N2")
convert = METHODS["as_substance"].compute


def as_substance(mass: float, old: str, new: str) -> float:
    return convert(mass=mass, molar_mass_new=molar_mass(new), molar_mass_old=molar_mass(old), atoms=shared_atoms(old, new))


@pytest.mark.parametrize("substance", SUBSTANCES)
def test_every_substance_of_the_units_has_a_molar_mass(substance: str) -> None:
    assert molar_mass(substance) > 1.0


@given(st.dictionaries(st.sampled_from(sorted(ATOMIC_MASSES)), st.integers(1, 30), min_size=1))
def test_formula_is_read_as_it_is_written(counts: dict[str, int]) -> None:
    formula = "".join(f"{element}{count if count > 1 else ''}" for element, count in counts.items())
    assert counts == atoms(formula)
    assert sum(count * ATOMIC_MASSES[element] for element, count in counts.items()) == pytest.approx(molar_mass(formula))


def test_element_that_stands_twice_counts_twice() -> None:
    assert {"C": 2, "H": 6, "O": 1} == atoms("CH3CH2OH")


@given(st.floats(0.0, 1e9), st.sampled_from(OF_NITROGEN), st.sampled_from(OF_NITROGEN))
def test_there_and_back_is_the_same_mass(mass: float, old: str, new: str) -> None:
    assert mass == pytest.approx(as_substance(as_substance(mass, old, new), new, old))


@given(st.floats(0.0, 1e9), st.sampled_from(OF_NITROGEN), st.sampled_from(OF_NITROGEN), st.sampled_from(OF_NITROGEN))
def test_detour_over_another_substance_makes_no_difference(mass: float, old: str, middle: str, new: str) -> None:
    assert as_substance(mass, old, new) == pytest.approx(as_substance(as_substance(mass, old, middle), middle, new))


@pytest.mark.parametrize(("old", "new", "expected"), [("N", "N2O", 2), ("N2O", "N", 0.5), ("C", "CO2", 1), ("NO3", "NH4", 1), ("N2", "NH3", 0.5)])
def test_atoms_in_common_tell_how_many_units_make_one(old: str, new: str, expected: float) -> None:
    """Source: the formulas."""
    assert expected == shared_atoms(old, new)


@pytest.mark.parametrize(("old", "new", "found"), [("C", "NO3", "none"), ("CO2", "H2O", "none"), ("H2O", "O2", "none")])
def test_substances_of_different_elements_are_not_turned_into_each_other(old: str, new: str, found: str) -> None:
    with pytest.raises(ValueError, match=f"expected one element that both hold, found {found}"):
        shared_atoms(old, new)


@pytest.mark.parametrize("formula", ["", "co2", "C0", "NO3-", "Ca(OH)2", "CO₂", "2C"])
def test_what_is_no_plain_formula_is_refused(formula: str) -> None:
    with pytest.raises(ValueError, match="formula: expected"):
        atoms(formula)


def test_unknown_element_is_named() -> None:
    with pytest.raises(ValueError, match="found 'Fe' in 'FeS2'"):
        molar_mass("FeS2")


@given(st.floats(0.001, 1e6), st.floats(0.001, 1e6))
def test_ratios_by_mass_and_by_atoms_undo_each_other(mass: float, other: float) -> None:
    by_atoms = METHODS["atom_ratio"].compute(mass=mass, molar_mass=14.007, other_mass=other, other_molar_mass=30.974)
    assert mass / other == pytest.approx(METHODS["mass_ratio"].compute(atom_ratio=by_atoms, molar_mass=14.007, other_molar_mass=30.974))


def test_no_matter_is_no_matter_in_any_form_and_a_ratio_to_nothing_is_undefined() -> None:
    assert 0.0 == as_substance(0.0, "C", "CO2")
    ratio = {"molar_mass": 14.007, "other_molar_mass": 30.974}
    assert 0.0 == METHODS["mass_ratio"].compute(atom_ratio=0.0, **ratio)
    with pytest.raises(ZeroDivisionError):
        METHODS["atom_ratio"].compute(mass=1.0, other_mass=0.0, **ratio)
