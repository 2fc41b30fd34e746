"""What every question on a cycle is asked from: its record, its facts, and the reservoirs whose numbers are known best."""

from __future__ import annotations

from collections.abc import Iterable

from generator.kind import Subject
from generator.kinds.cycle.budget_facts import fluxes_in, fluxes_out
from generator.kinds.cycle.record import CycleRecord, Flux, Reservoir
from generator.quantities.fact import Fact
from generator.questions.misconception import Catalogue

NO_EXACT = "no reservoir has all its fluxes stated as single numbers"
_MATTER = {"C": "carbon", "N": "nitrogen", "P": "phosphorus", "S": "sulfur", "H2O": "water"}


class Asking:
    """A record that is asked about, with the parts that suit a question."""

    def __init__(self, subject: Subject[CycleRecord], catalogue: Catalogue) -> None:
        self.subject, self.record, self.facts, self.catalogue = subject, subject.record, subject.facts, catalogue
        self.busy = sorted(filter(self._is_exact, self.record.reservoirs), key=self._fluxes, reverse=True)
        """The reservoirs whose fluxes are all stated as single numbers; those with several on both sides come first."""

    def fact(self, part: str, name: str) -> Fact:
        """A fact of a part of the cycle."""
        return self.facts[f"{part}.{name}"]

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


def is_single(flux: Flux) -> bool:
    """Whether the rate is one known number, no range."""
    return flux.rate.value is not None and flux.rate.low is None


def listed(words: Iterable[str]) -> str:
    """Labels in a row, the later ones as they stand inside a sentence."""
    words = list(words)
    if len(words) < 2:
        return "".join(words)
    lower = [words[0], *(word[:1].lower() + word[1:] for word in words[1:])]
    return f"{', '.join(lower[:-1])} and {lower[-1]}"
