"""The line that questions are about, with short names for its stations and facts."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from generator.kind import Subject
from generator.kinds.transect.crossing import PART
from generator.kinds.transect.record import Station, TransectRecord
from generator.quantities.fact import Fact
from generator.quantities.working import Substitution
from generator.questions.misconception import Catalogue

LEAST_CLIMB = 200.0
"""Height [m] between two stations from which on they are compared by it."""


@dataclass(frozen=True)
class AskedLine:
    """A record, and the catalogue that wrong answers are named from."""

    subject: Subject[TransectRecord]
    catalogue: Catalogue

    @property
    def stations(self) -> tuple[Station, ...]:
        """Along the line."""
        return tuple(self.subject.record.stations)

    @property
    def salt(self) -> str:
        """What orders are drawn from."""
        return self.subject.id

    def fact(self, station: Station, name: str) -> Fact:
        return self.subject.facts[f"{station.id}.{name}"]

    def air(self, name: str) -> Fact:
        return self.subject.facts[f"{PART}.{name}"]

    def number(self, station: Station, name: str) -> float:
        return self.fact(station, name).number

    def told(self, station: Station, name: str) -> str:
        return self.fact(station, name).shown_exactly

    @property
    def pairs(self) -> tuple[tuple[Station, Station], ...]:
        """Neighbours along the line."""
        return tuple(pairwise(self.stations))

    @property
    def climbs(self) -> tuple[tuple[Station, Station], ...]:
        """Neighbours whose heights differ enough for a lapse rate."""
        return tuple(
            (before, station) for before, station in self.pairs
            if self.fact(station, "lapse_rate_from_previous").is_number and abs(self.number(station, "climb_from_previous")) >= LEAST_CLIMB
        )  # fmt: skip

    @property
    def rainy(self) -> tuple[Station, ...]:
        """The stations whose precipitation is known."""
        return tuple(station for station in self.stations if station.annual_precip is not None)

    @property
    def top(self) -> Station:
        return max(self.stations, key=lambda station: self.number(station, "height"))

    @property
    def wettest(self) -> Station:
        return max(self.rainy, key=lambda station: self.number(station, "annual_precip"))


def given_of(fact: Fact) -> dict[str, Fact]:
    """What a fact was worked out from, by the names of its formula."""
    return {name: part for name, part in fact.working.given if isinstance(part, Fact)} if isinstance(fact.working, Substitution) else {}
