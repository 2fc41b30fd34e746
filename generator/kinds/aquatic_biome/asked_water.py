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


@dataclass(frozen=True)
class AskedWater:
    """One station of a record, and the catalogue that wrong answers are named from."""

    subject: Subject[AquaticBiomeRecord]
    station: Station
    catalogue: Catalogue

    @property
    def place(self) -> str:
        """The label, with what stands behind a comma in brackets, so that a sentence can go on."""
        name, comma, part = self.station.label.partition(", ")
        return f"{name} ({part})" if comma else name

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
