"""Transects: stations along a line, how it gets colder with height, and the rain shadow of a crest."""

from pathlib import Path

from generator.kind import Kind, PartOf
from generator.kinds.transect.charts import charts
from generator.kinds.transect.compare import compare
from generator.kinds.transect.facts import METHODS, facts
from generator.kinds.transect.findings import doubts, findings
from generator.kinds.transect.import_table import import_table
from generator.kinds.transect.questions import questions
from generator.kinds.transect.record import TransectRecord

KIND = Kind(
    name="transect",
    title="Transects",
    record=TransectRecord,
    parts=lambda record: {station.id: PartOf(station.label) for station in record.stations},
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
