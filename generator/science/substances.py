"""Molar masses, and the same matter counted as another substance: carbon as carbon dioxide, nitrogen as nitrate."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from types import MappingProxyType

from generator.science.method import Method

ATOMIC_MASSES: Mapping[str, float] = MappingProxyType(
    {"H": 1.008, "C": 12.011, "N": 14.007, "O": 15.999, "P": 30.974, "S": 32.06}
)
"""Standard atomic masses, abridged to their usual digits [g/mol]."""
_PART = re.compile(r"([A-Z][a-z]?)([1-9]\d*)?")


def atoms(formula: str) -> dict[str, int]:
    """How many atoms of each element a formula without brackets and charges counts.

    Raises
    ------
    ValueError
        If the text is no such formula, or names an element that is not in `ATOMIC_MASSES`.

    Examples
    --------
    >>> atoms("C2H6O")
    {'C': 2, 'H': 6, 'O': 1}
    """
    found: dict[str, int] = {}
    if not formula or _PART.sub("", formula):
        raise ValueError(f"formula: expected one such as CO2, found {formula!r}")
    for element, count in _PART.findall(formula):
        if element not in ATOMIC_MASSES:
            raise ValueError(f"formula: expected elements of {', '.join(ATOMIC_MASSES)}, found {element!r} in {formula!r}")
        found[element] = found.get(element, 0) + int(count or 1)
    return found


def molar_mass(formula: str) -> float:
    """The mass of a mole of a substance.

    Parameters
    ----------
    formula : str
        Its formula without brackets and charges: "CO2", "NO3".

    Returns
    -------
    float
        Molar mass [g/mol].

    Raises
    ------
    ValueError
        As `atoms`.

    References
    ----------
    .. [1] IUPAC2021

    Examples
    --------
    >>> molar_mass("CO2")
    44.009
    """
    return round(math.fsum(count * ATOMIC_MASSES[element] for element, count in atoms(formula).items()), 6)


def shared_atoms(old: str, new: str) -> float:
    """How many units of the old substance give one of the new, by the atoms of the one element that both hold.

    Hydrogen and oxygen do not count, for they come and go with water and air.

    Raises
    ------
    ValueError
        If the two share none of the other elements, or more than one.

    Examples
    --------
    >>> shared_atoms("N", "N2O")
    2.0
    """
    before, after = atoms(old), atoms(new)
    both = [element for element in before if element in after and element not in ("H", "O")]
    if len(both) != 1:
        raise ValueError(f"{old}, {new}: expected one element that both hold, found {', '.join(both) or 'none'}")
    return after[both[0]] / before[both[0]]


MOLAR_MASS = Method(
    id="molar_mass",
    name="Molar mass",
    formula=("molar_mass = sum(number * atomic_mass)",),
    symbols=(
        ("molar_mass", "mass of a mole of the substance", "g/mol"), ("number", "atoms of each element in the formula", ""),
        ("atomic_mass", "mass of a mole of each element", "g/mol"),
    ),
    sources=("IUPAC2021",),
    limits="Atomic masses are means of the isotopes as they are found on Earth, here with four or five digits.",
    function=molar_mass,
)  # fmt: skip

AS_SUBSTANCE = Method(
    id="as_substance",
    name="The same matter as another substance",
    formula=("converted = mass * molar_mass_new / (atoms * molar_mass_old)",),
    symbols=(
        ("converted", "mass of the new substance", "the unit given"), ("mass", "mass of the old substance", "the unit given"),
        ("molar_mass_new", "molar mass of the new substance", "g/mol"),
        ("molar_mass_old", "molar mass of the old substance", "g/mol"),
        ("atoms", "units of the old substance in one unit of the new", ""),
    ),
    sources=("IUPAC2021",),
    limits="It counts the same atoms in another form; it does not say that they change into it. For carbon and carbon dioxide the "
    "molar masses give the factor 3.664; 44 over 12, which is 3.667, is often used, and the two must not be mixed in one budget.",
)  # fmt: skip

ATOM_RATIO = Method(
    id="atom_ratio",
    name="Ratio of two elements by atoms",
    formula=("atom_ratio = (mass / molar_mass) / (other_mass / other_molar_mass)",),
    symbols=(
        ("atom_ratio", "atoms of the first element for each atom of the second", ""), ("mass", "mass of the first element", "the unit given"),
        ("molar_mass", "its molar mass", "g/mol"), ("other_mass", "mass of the second element", "the unit given"),
        ("other_molar_mass", "its molar mass", "g/mol"),
    ),
    sources=("IUPAC2021",),
    limits="Ratios by atoms and by mass differ: say which is meant. Undefined where there is nothing of the second element.",
)  # fmt: skip

MASS_RATIO = Method(
    id="mass_ratio",
    name="Ratio of two elements by mass",
    formula=("mass_ratio = atom_ratio * molar_mass / other_molar_mass",),
    symbols=(
        ("mass_ratio", "mass of the first element for each unit of mass of the second", ""),
        ("atom_ratio", "atoms of the first element for each atom of the second", ""),
        ("molar_mass", "molar mass of the first element", "g/mol"), ("other_molar_mass", "molar mass of the second", "g/mol"),
    ),
    sources=("IUPAC2021",),
    limits="Ratios by atoms and by mass differ: say which is meant.",
)  # fmt: skip
