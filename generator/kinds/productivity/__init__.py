"""Productivity: investigations that measure primary production, with replicates, controls, cautions and what can go wrong."""

from collections.abc import Mapping
from pathlib import Path

from generator.kind import Kind, PartOf
from generator.kinds.productivity.bottle_facts import COLUMN
from generator.kinds.productivity.charts import charts
from generator.kinds.productivity.compare import compare
from generator.kinds.productivity.facts import METHODS, facts
from generator.kinds.productivity.findings import doubts, findings
from generator.kinds.productivity.harvest_facts import GRAZING
from generator.kinds.productivity.import_table import import_table
from generator.kinds.productivity.questions import questions
from generator.kinds.productivity.record import ProductivityRecord


def _parts(record: ProductivityRecord) -> Mapping[str, PartOf]:
    """Depths and the column that they make, or plots and what grazers took."""
    depths = record.bottles.depths if record.bottles else ()
    plots = record.harvest.plots if record.harvest else ()
    found = {part.id: PartOf(part.label) for part in (*depths, *plots)}
    if len(depths) > 1:
        found[COLUMN] = PartOf("The whole column of water")
    if {"kept_out", "open"} <= {plot.grazing for plot in plots}:
        found[GRAZING] = PartOf("What grazers took")
    return found


KIND = Kind(
    name="productivity",
    title="Measuring production",
    record=ProductivityRecord,
    parts=_parts,
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
