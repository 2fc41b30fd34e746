"""Cycles of matter: reservoirs, the fluxes between them, and whether the budget closes."""

from pathlib import Path

from generator.kind import Kind, PartOf
from generator.kinds.cycle.charts import charts
from generator.kinds.cycle.compare import compare
from generator.kinds.cycle.facts import METHODS, facts
from generator.kinds.cycle.findings import doubts, findings
from generator.kinds.cycle.import_table import import_table
from generator.kinds.cycle.questions import questions
from generator.kinds.cycle.record import CycleRecord


def parts(record: CycleRecord) -> dict[str, PartOf]:
    """Reservoirs and fluxes, then scenarios, ratios and fuels, which have facts of their own."""
    named = {part.id: PartOf(part.name) for part in (*record.scenarios, *record.ratios, *record.fuels)}
    return {part.id: PartOf(part.label) for part in (*record.reservoirs, *record.fluxes)} | named


KIND = Kind(
    name="cycle",
    title="Cycles",
    record=CycleRecord,
    parts=parts,
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
