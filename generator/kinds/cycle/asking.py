"""What every question on a cycle is asked from: its record, its facts, and the reservoirs whose numbers are known best."""

from __future__ import annotations

import math
import re
from collections.abc import Iterable

from generator.kind import Subject
from generator.kinds.cycle.budget_facts import fluxes_in, fluxes_out
from generator.kinds.cycle.charts import end_names
from generator.kinds.cycle.record import CycleRecord, Flux, Reservoir
from generator.quantities.amount import Amount
from generator.quantities.fact import Fact
from generator.questions.misconception import Catalogue

Ends = tuple[float, float]
"""The least and the most that a number can be."""
UNKNOWN_ENDS = (0.0, math.inf)
NO_EXACT = "no reservoir has all its fluxes stated as single numbers"
_FORMULA = re.compile(r"(?:[A-Z][a-z]?\d*)+[+-]?")
_BELOW, _ABOVE = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉"), str.maketrans("+-", "⁺⁻")
_MATTER = {"C": "carbon", "N": "nitrogen", "P": "phosphorus", "S": "sulfur", "H2O": "water", "km3": "water"}

_WITH_ARTICLE = ("air", "atmosphere", "land", "ocean", "rock", "sea", "soil")
"""Labels that a sentence can hold as words of its own, singular and with an article."""


class Asking:
    """A record that is asked about, with the parts that suit a question."""

    def __init__(self, subject: Subject[CycleRecord], catalogue: Catalogue) -> None:
        self.subject, self.record, self.facts, self.catalogue = subject, subject.record, subject.facts, catalogue
        self.busy = sorted(filter(self._is_exact, self.record.reservoirs), key=self._fluxes, reverse=True)
        """The reservoirs whose fluxes are all stated as single numbers; those with several on both sides come first."""
        self.names = end_names(self.record)
        """What boxes and ends outside are called."""

    def fact(self, part: str, name: str) -> Fact:
        """A fact of a part of the cycle."""
        return self.facts[f"{part}.{name}"]

    def growing(self) -> Reservoir | None:
        """A stock that grows, one that people feed where there is one."""
        growing = [reservoir for reservoir in self.busy if (self.fact(reservoir.id, "balance").value or 0.0) > 0]
        return next(iter(sorted(growing, key=lambda reservoir: not self._fed_by_people(reservoir))), None)

    def shrinking(self) -> Reservoir | None:
        """A stock that is known and loses more than it gains."""
        return next((one for one in self.busy if (self.fact(one.id, "balance").value or 0.0) < 0 and one.stock.value and one.stock.low is None), None)

    def _fed_by_people(self, reservoir: Reservoir) -> bool:
        return any(flux.cause != "nature" for flux in fluxes_in(self.record, reservoir.id))

    def inflow_ends(self, reservoir: Reservoir) -> Ends:
        """The least and the most that can flow in, in units of the record."""
        return summed(ends(flux.rate) for flux in fluxes_in(self.record, reservoir.id))

    def outflow_ends(self, reservoir: Reservoir) -> Ends:
        """The least and the most that can flow out, in units of the record."""
        return summed(ends(flux.rate) for flux in fluxes_out(self.record, reservoir.id))

    def time_ends(self, reservoir: Reservoir) -> Ends:
        """The least and the most that stock over outflow can be within their stated ranges, in units of the record."""
        (small, large), (low, high) = ends(reservoir.stock), self.outflow_ends(reservoir)
        return (small / high if high else math.inf), (large / low if low else math.inf)

    @property
    def matter(self) -> str:
        """What the cycle is of, in a word."""
        words = self.record.units.stock.replace("/", " ").split()
        return next((_MATTER[word] for word in words if word in _MATTER), "matter")

    def _fluxes(self, reservoir: Reservoir) -> int:
        return min(len(fluxes_in(self.record, reservoir.id)), len(fluxes_out(self.record, reservoir.id)))

    def _is_exact(self, reservoir: Reservoir) -> bool:
        """A range has no one right answer, so nobody is asked for the middle of it."""
        fluxes = (*fluxes_in(self.record, reservoir.id), *fluxes_out(self.record, reservoir.id))
        return bool(fluxes) and all(map(is_single, fluxes))


def formula(text: str) -> str:
    """A chemical formula with its digits below and its charge above the line: `NO3-` as NO₃⁻; any other text as it is."""
    return text.translate(_BELOW).translate(_ABOVE) if _FORMULA.fullmatch(text) else text


def named(label: str) -> str:
    """A box as a sentence names it: as plain words where its label is such a word, or else by its label in quotation marks.

    >>> named("Atmosphere"), named("Soil, lakes and rivers")
    ('the atmosphere', '“Soil, lakes and rivers”')
    """
    return f"the {label.lower()}" if label.lower() in _WITH_ARTICLE else f"“{label}”"


def told(fact: Fact) -> str:
    """A range as a range, any other number without its spread."""
    return fact.shown if fact.low is not None else fact.shown_exactly


def is_single(flux: Flux) -> bool:
    """Whether the rate is one known number, no range."""
    return flux.rate.value is not None and flux.rate.low is None


def ends(amount: Amount) -> Ends:
    """The ends of a range; a single number is both, and of a number that is not known nothing can be said."""
    if amount.value is None:
        return UNKNOWN_ENDS
    if amount.low is None or amount.high is None:
        return amount.value, amount.value
    return amount.low, amount.high


def summed(several: Iterable[Ends]) -> Ends:
    """The ends of a sum."""
    found = list(several)
    return math.fsum(low for low, _ in found), math.fsum(high for _, high in found)


def plainly_less(one: Ends, other: Ends, times: float = 1.0) -> bool:
    """Whether the one is smaller wherever in their ranges both are, so many times at least."""
    return one[1] * times < other[0]


def listed(words: Iterable[str]) -> str:
    """Labels in a row, the later ones as they stand inside a sentence."""
    words = list(words)
    if len(words) < 2:
        return "".join(words)
    lower = [words[0], *(word[:1].lower() + word[1:] for word in words[1:])]
    return f"{', '.join(lower[:-1])} and {lower[-1]}"
