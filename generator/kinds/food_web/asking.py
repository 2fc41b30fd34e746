"""What every question on a food web is asked from: its record, with short names for its facts, and its arrows."""

from __future__ import annotations

from collections.abc import Sequence

from generator.diagnostics import listed
from generator.kind import Subject
from generator.kinds.food_web.record import FoodWebRecord, Species
from generator.quantities.fact import Fact
from generator.questions.misconception import Catalogue

IN_WORDS = ("no", "one", "two", "three")


class Asking:
    """A record that is asked about."""

    def __init__(self, subject: Subject[FoodWebRecord], catalogue: Catalogue) -> None:
        self.subject, self.record, self.facts, self.catalogue = subject, subject.record, subject.facts, catalogue
        self.names, self.labels = self.record.spoken, self.record.labels
        self._feeding = {one.id: one.feeding for one in self.record.species}

    def fact(self, species: Species, name: str) -> Fact:
        """A fact of a species."""
        return self.facts[f"{species.id}.{name}"]

    def foods_of(self, species: Species) -> str:
        """Its foods in a row."""
        return listed((self.names[food.food] for food in species.eats), "and")

    def is_eaten_by(self, food: str, eater: str) -> bool:
        """Whether an arrow leads from the one to the other."""
        return food in self.record.eats[eater]

    def eaters(self, food: str) -> tuple[str, ...]:
        """Who eats it, its own kind left aside."""
        return tuple(name for name in self.record.eats if name != food and self.is_eaten_by(food, name))

    def without(self, species: str) -> str:
        """The supposition that it is lost."""
        name = self.names[species]
        return f"Suppose there were no more {name}." if self._feeding[species] == "detritus" else f"Suppose the {name} died out."

    def arrows(self, chain: Sequence[str]) -> str:
        """A chain as it is written."""
        return " → ".join([self.labels[chain[0]], *(self.names[name] for name in chain[1:])])
