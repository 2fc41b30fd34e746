"""Investigations side by side: a line for each series of bottles, and for each plot of a harvest."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.kind import Comparison, ComparisonRow, Subject
from generator.kinds.productivity.bottle_facts import COLUMN
from generator.kinds.productivity.record import ProductivityRecord
from generator.quantities.fact import Fact

HEADS = ("Method", "Gross production", "Respiration", "Net production", "Net production as carbon")
BOTTLES, HARVEST = "light and dark bottles", "harvest"


def compare(subjects: Sequence[Subject[ProductivityRecord]]) -> Comparison:
    """All investigations, in the order of their records."""
    return Comparison(heads=HEADS, rows=tuple(row for subject in subjects for row in _rows(subject)))


def _rows(subject: Subject[ProductivityRecord]) -> Iterator[ComparisonRow]:
    record = subject.record
    if record.bottles:
        several = len(record.bottles.depths) > 1
        part, prefix = (COLUMN, "") if several else (record.bottles.depths[0].id, "daily_")
        label = record.title if several else f"{record.title}: {record.bottles.depths[0].label}"
        quotients = ", ".join(f"{name} quotient {subject.facts[f'{name}_quotient'].shown_number}" for name in ("photosynthetic", "respiratory"))
        yield _row(subject, label, f"{BOTTLES}; {quotients}", part, prefix)
    if record.harvest:
        for plot in record.harvest.plots:
            yield _row(subject, f"{record.title}: {plot.label}", HARVEST, plot.id, "")


def _row(subject: Subject[ProductivityRecord], label: str, method: str, part: str, prefix: str) -> ComparisonRow:
    found: list[Fact | str] = [subject.facts[f"{part}.{prefix}{name}"] for name in ("gross_production", "respiration", "net_production")]
    return ComparisonRow(subject=subject.id, label=label, cells=(method, *found, subject.facts[f"{part}.net_carbon"]))
