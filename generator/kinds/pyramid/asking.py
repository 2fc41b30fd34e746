"""What every question on a pyramid is asked from: its record, with short names for its facts."""

from __future__ import annotations

from generator.kind import Subject
from generator.kinds.pyramid.record import Level, PyramidRecord
from generator.quantities.fact import Fact
from generator.questions.misconception import Catalogue
from generator.questions.question import Interval

BELOW_A_TENTH, ABOVE_A_TENTH = Interval(0.0, 8.0), Interval(12.5, 100.0)
"""Percentages that nobody takes for a tenth."""


class Asking:
    """A record that is asked about."""

    def __init__(self, subject: Subject[PyramidRecord], catalogue: Catalogue) -> None:
        self.subject, self.record, self.facts, self.catalogue = subject, subject.record, subject.facts, catalogue

    def fact(self, level: Level, name: str) -> Fact | None:
        """A fact that a level may have."""
        return self.facts.get(f"{level.id}.{name}")

    def sure(self, level: Level, name: str) -> Fact:
        """A fact that every level has."""
        return self.facts[f"{level.id}.{name}"]

    def number(self, level: Level, name: str) -> float | None:
        """The value of a fact where it is a known number."""
        fact = self.fact(level, name)
        return fact.number if fact is not None and fact.is_number else None

    def taken_up(self, level: Level) -> float | None:
        """By the gut wall, or by photosynthesis."""
        if level is self.record.levels[0]:
            return self.number(level, "gross_production")
        eaten, egested = self.number(level, "eaten"), self.number(level, "egested")
        return None if eaten is None or egested is None else eaten - egested


def off_a_tenth(share: Fact) -> Interval | None:
    """Where a drawn share must lie so that it is told from a tenth that is taken without dividing, on the side of the record's own."""
    return (BELOW_A_TENTH if share.number < 10.0 else ABOVE_A_TENTH) if share.is_number else None
