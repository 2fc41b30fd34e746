"""Pyramids: how much of a year's energy each trophic level has, and what passes on."""

from pathlib import Path

from generator.kind import Kind, PartOf
from generator.kinds.pyramid.charts import charts
from generator.kinds.pyramid.compare import compare
from generator.kinds.pyramid.facts import METHODS, facts
from generator.kinds.pyramid.findings import doubts, findings
from generator.kinds.pyramid.import_table import import_table
from generator.kinds.pyramid.questions import questions
from generator.kinds.pyramid.record import PyramidRecord

KIND = Kind(
    name="pyramid",
    title="Pyramids",
    record=PyramidRecord,
    parts=lambda record: {level.id: PartOf(level.label) for level in record.levels},
    facts=facts,
    findings=findings,
    doubts=doubts,
    charts=charts,
    questions=questions,
    compare=compare,
    methods=METHODS,
    folder=Path(__file__).parent,
    import_table=import_table,
)
