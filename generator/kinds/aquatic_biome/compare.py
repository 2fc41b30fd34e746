"""Aquatic biomes side by side, a line for each station that pages show."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.kind import Comparison, ComparisonRow, Subject
from generator.kinds.aquatic_biome.record import AquaticBiomeRecord
from generator.quantities.fact import Fact

COLUMNS = (
    ("Depth", "depth"),
    ("Photic depth", "photic_depth"),
    ("Salinity", "salinity"),
    ("Water temperature", "temperature"),
    ("Oxygen saturation", "oxygen_saturation"),
    ("Oxygen, part of saturation", "oxygen_saturation_percent"),
    ("Flushing time", "flushing_time"),
)
NOT_STATED = "–"


def compare(subjects: Sequence[Subject[AquaticBiomeRecord]]) -> Comparison:
    """All stations of all aquatic biomes, from the freshest on."""
    ordered = sorted(_rows(subjects), key=lambda pair: (pair[0], pair[1].label))
    return Comparison(heads=tuple(head for head, _ in COLUMNS), rows=tuple(row for _, row in ordered))


def _rows(subjects: Sequence[Subject[AquaticBiomeRecord]]) -> Iterator[tuple[float, ComparisonRow]]:
    for subject in subjects:
        for station in subject.record.stations:
            if station.use == "page":
                found: list[Fact | str] = [subject.facts.get(f"{station.id}.{name}", NOT_STATED) for _, name in COLUMNS]
                row = ComparisonRow(subject=subject.id, label=f"{subject.record.title}: {station.label}", cells=tuple(found))
                yield subject.facts[f"{station.id}.salinity"].number, row
