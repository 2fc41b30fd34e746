"""Units by their labels: reading `kg N/ha/yr`, working with it, and showing it as `kg N ha⁻¹ yr⁻¹`."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Any

import pint

_REGISTRY = pint.UnitRegistry(None, cache_folder=None)
_REGISTRY.load_definitions(files(__package__).joinpath("units.txt").read_text("utf-8").splitlines())
Quantity = _REGISTRY.Quantity

SUBSTANCES = ("C", "N", "P", "S", "CO2", "CH4", "O2", "H2O", "N2O", "NH3", "NH4", "NO3", "PO4")
UNITS = (
    "nm um mm cm m km in ft ha mL L ng ug mg g kg t kt Mt Gt Gg Tg Pg s min h d yr K degC degF J kJ MJ GJ cal kcal W Pa hPa "
    "umol mmol mol individuals deg percent permille ppm ppb"
).split()
_SHOWN = {"degC": "°C", "degF": "°F", "percent": "%", "permille": "‰", "um": "µm", "ug": "µg", "umol": "µmol", "deg": "°"}
_SPOKEN = {
    "nm": "nanometres", "um": "micrometres", "mm": "millimetres", "cm": "centimetres", "m": "metres", "km": "kilometres",
    "in": "inches", "ft": "feet", "ha": "hectares", "mL": "millilitres", "L": "litres", "ng": "nanograms", "ug": "micrograms",
    "mg": "milligrams", "g": "grams", "kg": "kilograms", "t": "tonnes", "kt": "kilotonnes", "Mt": "megatonnes",
    "Gt": "gigatonnes", "Gg": "gigagrams", "Tg": "teragrams", "Pg": "petagrams", "s": "seconds", "min": "minutes",
    "h": "hours", "d": "days", "yr": "years", "K": "kelvin", "degC": "degrees Celsius", "degF": "degrees Fahrenheit",
    "J": "joules", "kJ": "kilojoules", "MJ": "megajoules", "GJ": "gigajoules", "cal": "calories", "kcal": "kilocalories",
    "W": "watts", "Pa": "pascals", "hPa": "hectopascals", "umol": "micromoles", "mmol": "millimoles", "mol": "moles",
    "individuals": "individuals", "deg": "degrees", "percent": "percent", "permille": "per mille", "ppm": "parts per million",
    "ppb": "parts per billion",
}  # fmt: skip
_SUPERSCRIPT = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")
_FROM_SUPERSCRIPT = str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "-0123456789")
_SUBSCRIPT = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
_FACTOR = re.compile(r"([A-Za-zµ°%‰]+?)(?:\^|\*\*)?(-?[1-9])?\Z")
_ALIASES = {"%": "percent", "°C": "degC", "µm": "um", "µg": "ug", "a": "yr", "year": "yr", "individual": "individuals"}


class UnitError(ValueError):
    """A unit label that is not in the language of units, or that does not fit where it stands."""


@dataclass(frozen=True)
class Unit:
    """A unit with its label as written; two labels of one unit compare by `same_kind`, not by `==`."""

    label: str
    factors: tuple[tuple[str, int, str], ...]
    """Unit name, exponent, substance (or nothing), in the order of the label."""

    @property
    def pint(self) -> Any:
        """The unit for calculations."""
        return _pint(self)

    @property
    def shown(self) -> str:
        """As printed: `kJ m⁻² yr⁻¹`."""
        return " ".join(_shown_factor(*factor) for factor in self.factors)

    def after(self, number: str) -> str:
        """A number as shown with this unit behind it; only the degree sign of an angle stands close."""
        return f"{number}°" if self.shown == "°" else f"{number} {self.shown}".strip()

    @property
    def spoken(self) -> str:
        """In words, for readers who listen: `kilojoules per square metre per year`."""
        over = [_spoken_factor(*factor) for factor in self.factors if factor[1] > 0]
        under = [_spoken_factor(*factor) for factor in self.factors if factor[1] < 0]
        return " ".join([*over, *(f"per {_singular(word)}" for word in under)])

    def same_kind(self, other: Unit) -> bool:
        """Whether the two convert into each other: same dimension, same substances."""
        return self.pint.dimensionality == other.pint.dimensionality

    def quantity(self, number: Any) -> Any:
        """A quantity of this unit, or a whole series of them."""
        return Quantity(number, self.pint)


@cache
def unit(label: str) -> Unit:
    """The unit that a label names, e.g. `kJ/m2/yr`, `kg N/ha`, `degC`, `1/yr`, `kJ m-2 yr-1`; an empty label is a bare number.

    Raises
    ------
    UnitError
        If a part of the label is no unit, or a substance stands without a unit before it.
    """
    factors: list[tuple[str, int, str]] = []
    text = label.replace("·", " ").replace("²", "^2").replace("³", "^3")
    text = re.sub("[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+", lambda m: m[0].translate(_FROM_SUPERSCRIPT), text)
    for index, part in enumerate(text.split("/")):
        words = part.split()
        if not words and label.strip():
            raise UnitError(f"a unit on both sides of each / was expected in {label!r}")
        for word in words:
            _take(word, -1 if index else 1, factors, label, first=index == 0)
    return Unit(label.strip(), tuple(factors))


def convert(number: float, source: Unit, target: Unit) -> float:
    """A number of one unit in another; temperatures are converted as readings.

    Raises
    ------
    UnitError
        If the two are not of one kind.
    """
    if not source.same_kind(target):
        raise UnitError(f"{source.label} cannot be turned into {target.label}")
    return float(source.quantity(number).m_as(target.pint))


def _take(word: str, sign: int, factors: list[tuple[str, int, str]], label: str, *, first: bool) -> None:
    if word in SUBSTANCES:
        if not factors or factors[-1][2]:
            raise UnitError(f"a unit before the substance {word} was expected in {label!r}")
        name, exponent, _ = factors[-1]
        factors[-1] = (name, exponent, word)
        return
    if word == "1" and first:
        return
    found = _FACTOR.match(word)
    name = _ALIASES.get(found[1], found[1]) if found else word
    if not found or name not in UNITS:
        raise UnitError(f"{word!r} is not a unit that is known here")
    factors.append((name, sign * int(found[2] or 1), ""))


@cache
def _pint(unit: Unit) -> Any:
    product = _REGISTRY.Unit("")
    for name, exponent, substance in unit.factors:
        product *= _REGISTRY.Unit(name) ** exponent
        if substance:
            product *= _REGISTRY.Unit(f"of_{substance}") ** (1 if exponent > 0 else -1)
    return product


def _shown_factor(name: str, exponent: int, substance: str) -> str:
    power = "" if exponent == 1 else str(exponent).translate(_SUPERSCRIPT)
    return f"{_SHOWN.get(name, name)}{power}" + (f" {substance.translate(_SUBSCRIPT)}" if substance else "")


def _spoken_factor(name: str, exponent: int, substance: str) -> str:
    power = {1: "", 2: "square ", 3: "cubic "}.get(abs(exponent), "")
    return f"{power}{_SPOKEN[name]}" + (f" of {substance}" if substance else "")


def _singular(words: str) -> str:
    head, *rest = words.split(" of ")
    ends = {"feet": "foot", "inches": "inch", "degrees Celsius": "degree Celsius", "degrees Fahrenheit": "degree Fahrenheit"}
    kept = {"kelvin", "percent", "per mille", "parts per million", "parts per billion"}
    head = ends.get(head, head if head in kept or not head.endswith("s") else head[:-1])
    return " of ".join([head, *rest])
