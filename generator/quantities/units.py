"""Units by their labels: reading `kg N/ha/yr`, working with it, and showing it as `kg N ha⁻¹ yr⁻¹`."""

from __future__ import annotations

import math
import re
import unicodedata
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
_SUBSCRIPT = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
_FACTOR = re.compile(r"([A-Za-z°%‰]+?)(?:\^|\*\*)?(-?[1-9])?\Z")
_ALIASES = {
    "%": "percent", "‰": "permille", "°C": "degC", "°F": "degF", "°": "deg",
    "a": "yr", "year": "yr", "individual": "individuals",
}  # fmt: skip
_MENDS = {
    "ton": "write t for the tonne", "tonne": "write t", "tonnes": "write t", "month": "months differ in length: use yr or d",
    "l": "write L for the litre", "hr": "write h", "day": "write d", "days": "write d", "sec": "write s", "Kg": "write kg",
    "hectare": "write ha", "hectares": "write ha", "F": "write degF", "kj": "write kJ", "KJ": "write kJ", "kg*m": "write kg m",
}  # fmt: skip
HAS_SUBSTANCE = frozenset("nm um mm cm m km mL L ng ug mg g kg t kt Mt Gt Gg Tg Pg umol mmol mol percent permille ppm ppb".split())
"""Units that a substance may stand behind."""
_STEPS = {"degC": "delta_degree_Celsius", "degF": "delta_degree_Fahrenheit"}
DIFFERENCE = _REGISTRY.Unit("delta_degree_Celsius")
"""The unit of a temperature less a temperature, as large as a kelvin."""
LONGEST = 60
"""Characters of a label."""


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
    if len(label) > LONGEST:
        raise UnitError(f"a unit of at most {LONGEST} characters was expected")
    factors: list[tuple[str, int, str]] = []
    for index, part in enumerate(_spelled(label).split("/")):
        words = part.split()
        if not words and label.strip():
            raise UnitError(f"a unit on both sides of each / was expected in {label!r}")
        if words == ["1"] and not index:
            continue
        for position, word in enumerate(words):
            if word in SUBSTANCES:
                _label_last(word, factors if position else [], label)
            else:
                factors.append(_factor(word, -1 if index else 1))
    return Unit(label.strip(), tuple(factors))


def convert(number: float, source: Unit, target: Unit) -> float:
    """A number of one unit in another; temperatures are converted as readings.

    Raises
    ------
    UnitError
        If the two are not of one kind, or the number is not finite in the one or in the other.
    """
    if not source.same_kind(target):
        raise UnitError(f"{source.label or 'a bare number'} cannot be turned into {target.label or 'a bare number'}")
    converted = float(source.quantity(float(number)).m_as(target.pint))
    if not math.isfinite(converted):
        raise UnitError(f"{number} {source.label} is not a finite number of {target.label or 'ones'}")
    return converted


def is_reading(value: Any) -> bool:
    """Whether a value is read off a thermometer with a zero of its own (degC, degF), so that it cannot be added or multiplied."""
    return isinstance(value, Quantity) and value.units in (_REGISTRY.Unit(name) for name in _STEPS)


def number_in(unit: Unit, value: Any) -> float:
    """The number of a value in a unit; a bare value counts as dimensionless.

    Raises
    ------
    UnitError
        If the value is no single finite number, is of another kind, or is a difference of temperatures where a
        reading in degC or degF is wanted: its zero would be taken for a temperature.
    """
    magnitude = value.magnitude if isinstance(value, Quantity) else value
    if isinstance(magnitude, bool) or not isinstance(magnitude, (int, float)):
        raise UnitError("expected a single number, found a condition, a text or a series")
    quantity = value if isinstance(value, Quantity) else Quantity(value, "")
    found, wanted = shown_unit(quantity) or "a bare number", unit.shown or "a bare number"
    if quantity.dimensionality != unit.pint.dimensionality:
        raise UnitError(f"expected a value in {wanted}, found {found}")
    if is_reading(unit.quantity(0.0)) and quantity.units == DIFFERENCE:
        raise UnitError(f"expected a temperature in {wanted}, found a difference of temperatures, which is given in K")
    number = float(quantity.m_as(unit.pint))
    if not math.isfinite(number):
        raise UnitError(f"the value is not a finite number in {wanted}")
    return number


def shown_unit(quantity: Any) -> str:
    """The unit of a quantity as printed, whatever calculation it comes from; empty without a unit."""
    parts = sorted(quantity.unit_items(), key=lambda item: (item[1] < 0, item[0].startswith("of_"), item[0]))
    return " ".join(_shown_part(name, power) for name, power in parts)


def _shown_part(name: str, power: float) -> str:
    if name.startswith("of_"):
        return _shown_factor(name.removeprefix("of_"), 1, "").translate(_SUBSCRIPT) + _raised(power)
    symbol = "K" if name.startswith("delta_") else _REGISTRY.get_symbol(name)
    return f"{_SHOWN.get(symbol, symbol)}{_raised(power)}"


def _raised(power: float) -> str:
    return "" if power == 1 else f"{power:g}".translate(_SUPERSCRIPT) if power == int(power) else f"^{power:g}"


def _spelled(label: str) -> str:
    """The label in plain letters: superscripts, subscripts, the two micro signs and the minus sign have one spelling each."""
    plain = unicodedata.normalize("NFKC", label).replace("μ", "u").replace("−", "-")
    return plain.replace("·", " ").replace("⋅", " ")


def _label_last(substance: str, factors: list[tuple[str, int, str]], label: str) -> None:
    """Let a substance stand with the unit before it."""
    if not factors or factors[-1][2]:
        example = "degC for degrees Celsius, or g C for carbon" if substance == "C" else f"as in kg {substance}"
        raise UnitError(f"a unit before the substance {substance} was expected in {label!r}: {example}")
    name, exponent, _ = factors[-1]
    if name not in HAS_SUBSTANCE or abs(exponent) == 2:
        raise UnitError(f"the substance {substance} was expected behind a mass, an amount, a volume or a share in {label!r}")
    factors[-1] = (name, exponent, substance)


def _factor(word: str, sign: int) -> tuple[str, int, str]:
    found = _FACTOR.match(word)
    name = _ALIASES.get(found[1], found[1]) if found else word
    if not found or name not in UNITS:
        mend = f": {_MENDS[word]}" if word in _MENDS else ""
        raise UnitError(f"{word!r} is not a unit that is known here{mend}")
    return name, sign * int(found[2] or 1), ""


@cache
def _pint(unit: Unit) -> Any:
    product = _REGISTRY.Unit("")
    alone = len(unit.factors) == 1 and unit.factors[0][1] == 1
    for name, exponent, substance in unit.factors:
        # Beside another unit a degree is a step, not a reading: 6.5 degC/km is 6.5 K/km.
        product *= _REGISTRY.Unit(_STEPS.get(name, name) if not alone else name) ** exponent
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
