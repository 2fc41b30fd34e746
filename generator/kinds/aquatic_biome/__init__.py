"""Aquatic biomes: light, salt, warmth and oxygen of their waters, and what they make possible."""

from pathlib import Path

from generator.kind import Kind, PartOf
from generator.kinds.aquatic_biome.charts import charts, practice_charts
from generator.kinds.aquatic_biome.compare import compare
from generator.kinds.aquatic_biome.facts import METHODS, facts
from generator.kinds.aquatic_biome.findings import doubts, findings
from generator.kinds.aquatic_biome.questions import questions
from generator.kinds.aquatic_biome.record import AquaticBiomeRecord

KIND = Kind(
    name="aquatic_biome",
    title="Aquatic biomes",
    record=AquaticBiomeRecord,
    parts=lambda record: {station.id: PartOf(station.label, station.use) for station in record.stations},
    facts=facts,
    findings=findings,
    doubts=doubts,
    charts=charts,
    practice_charts=practice_charts,
    questions=questions,
    compare=compare,
    methods=METHODS,
    folder=Path(__file__).parent,
)
