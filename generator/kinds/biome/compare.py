"""Biomes side by side, a line for each station that pages show."""

from __future__ import annotations

from collections.abc import Sequence

from generator.kind import Comparison, ComparisonRow, Subject
from generator.kinds.biome.record import BiomeRecord

COLUMNS = (
    ("Annual mean temperature", "annual_mean_temp"),
    ("Annual temperature range", "annual_temp_range"),
    ("Annual precipitation", "annual_precip"),
    ("Potential evapotranspiration", "potential_evapotranspiration"),
    ("Aridity class", "aridity_class"),
    ("Potential net primary production (dry matter)", "potential_npp"),
)


def compare(subjects: Sequence[Subject[BiomeRecord]]) -> Comparison:
    """All stations of all biomes, from the driest on."""
    rows = [
        (
            subject.facts[f"{station.id}.annual_precip"].number,
            ComparisonRow(
                subject=subject.id,
                label=f"{subject.record.title}: {station.label}",
                cells=tuple(subject.facts[f"{station.id}.{name}"] for _, name in COLUMNS),
            ),
        )
        for subject in subjects
        for station in subject.record.stations
        if station.use == "page"
    ]
    ordered = sorted(rows, key=lambda pair: (pair[0], pair[1].label))
    return Comparison(heads=tuple(head for head, _ in COLUMNS), rows=tuple(row for _, row in ordered))
