"""The station of a water that questions are about, with short names for its facts."""

from __future__ import annotations

from dataclasses import dataclass

from generator.kind import Subject
from generator.kinds.aquatic_biome.record import AquaticBiomeRecord, Station
from generator.quantities.fact import Fact
from generator.questions.misconception import Catalogue

FULL = 10.0
"""Distance [%] from saturation below which a share and its inverse, or what is there and what is missing, look alike."""
SALTY = 5.0
"""Salinity [g/kg] from which on salt is worth a question."""
FRESH = "fresh water"
PLACING = ("before", "after", "at", "in", "near", "below", "above", "during", "under")
"""Words with which a part of a label says already where or when it is."""


@dataclass(frozen=True)
class AskedWater:
    """One station of a record, and the catalogue that wrong answers are named from."""

    subject: Subject[AquaticBiomeRecord]
    station: Station
    catalogue: Catalogue

    @property
    def place(self) -> str:
        """The label, with what stands behind a comma in brackets, so that a sentence can go on."""
        return f"{self.site} ({self.part})" if self.part else self.site

    @property
    def site(self) -> str:
        """The label without its part, where what is asked holds for all of its parts."""
        return self.station.label.partition(", ")[0]

    @property
    def part(self) -> str:
        """What stands behind the comma of the label."""
        return self.station.label.partition(", ")[2]

    @property
    def water(self) -> str:
        """Whose water it is, as a sentence goes on after "the water"."""
        if not self.part:
            return f"of {self.site}"
        return f"of {self.site} {self.part}" if placed(self.part) == self.part else f"{placed(self.part)} of {self.site}"

    @property
    def salt(self) -> str:
        """What orders are drawn from."""
        return self.subject.id

    def fact(self, name: str) -> Fact:
        return self.subject.facts[f"{self.station.id}.{name}"]

    def has(self, *names: str) -> bool:
        """Whether all of these are known."""
        found = [self.subject.facts.get(f"{self.station.id}.{name}") for name in names]
        return all(fact is not None and fact.value is not None for fact in found)

    @property
    def is_lit_to_the_bottom(self) -> bool:
        return self.has("reaches_bottom") and bool(self.fact("reaches_bottom").value)

    @property
    def is_short_of_oxygen(self) -> bool:
        """Whether clearly less oxygen is there than could be."""
        return self.has("oxygen_saturation_percent") and self.fact("oxygen_saturation_percent").number <= 100 - FULL

    @property
    def is_above_saturation(self) -> bool:
        """Whether clearly more oxygen is there than stays in balance with the air."""
        return self.has("oxygen_saturation_percent") and self.fact("oxygen_saturation_percent").number >= 100 + FULL

    @property
    def is_salty(self) -> bool:
        return self.station.salinity >= SALTY


def placed(part: str) -> str:
    """Where or when a part of a label is, inside a sentence.

    >>> placed("after the flood"), placed("the ford"), placed("deep layer")
    ('after the flood', 'at the ford', 'in the deep layer')
    """
    if part.partition(" ")[0] in PLACING:
        return part
    return f"at {part}" if part.startswith("the ") else f"in the {part}"
