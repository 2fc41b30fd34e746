"""Transects side by side, a line each."""

from __future__ import annotations

from collections.abc import Sequence

from generator.kind import Comparison, ComparisonRow, Subject
from generator.kinds.transect.crossing import PART
from generator.kinds.transect.record import TransectRecord
from generator.quantities.fact import Fact

HEADS = ("Stations", "Length", "Highest station", "Lapse rate, lowest to highest", "Wettest", "Driest", "Air comes down warmer by")
NONE = "–"


def compare(subjects: Sequence[Subject[TransectRecord]]) -> Comparison:
    """All transects, in the order of their records."""
    return Comparison(
        heads=HEADS, rows=tuple(ComparisonRow(subject=subject.id, label=subject.record.title, cells=_cells(subject)) for subject in subjects)
    )  # fmt: skip


def _cells(subject: Subject[TransectRecord]) -> tuple[Fact | str, ...]:
    facts, stations = subject.facts, subject.record.stations
    highest = max((facts[f"{station.id}.height"] for station in stations), key=lambda fact: fact.number)
    rain = [fact for station in stations if (fact := facts.get(f"{station.id}.annual_precip"))]
    wettest, driest = (choose(rain, key=lambda fact: fact.number) if rain else NONE for choose in (max, min))
    return (
        str(len(stations)), facts[f"{stations[-1].id}.distance"], highest, facts["lapse_rate"], wettest, driest,
        facts.get(f"{PART}.warming", NONE),
    )  # fmt: skip
