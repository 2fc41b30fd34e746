"""Biomes: the climate of their stations, and what it makes possible."""

from pathlib import Path

from generator.kind import Kind, PartOf
from generator.kinds.biome.charts import charts, practice_charts
from generator.kinds.biome.compare import compare
from generator.kinds.biome.facts import METHODS, facts
from generator.kinds.biome.findings import doubts, findings
from generator.kinds.biome.import_table import import_table
from generator.kinds.biome.questions import questions
from generator.kinds.biome.record import BiomeRecord
from generator.kinds.biome.schemes import remarks

KIND = Kind(
    name="biome",
    title="Biomes",
    record=BiomeRecord,
    parts=lambda record: {station.id: PartOf(station.label, station.use) for station in record.stations},
    facts=facts,
    findings=findings,
    doubts=doubts,
    charts=charts,
    practice_charts=practice_charts,
    questions=questions,
    compare=compare,
    methods=METHODS,
    remarks=remarks,
    folder=Path(__file__).parent,
    import_table=import_table,
)
