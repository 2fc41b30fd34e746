"""Cycles side by side, a line for each reservoir."""

from __future__ import annotations

from collections.abc import Sequence

from generator.kind import Comparison, ComparisonRow, Subject
from generator.kinds.cycle.record import CycleRecord

COLUMNS = (
    ("Stock", "stock"), ("Inflow", "inflow"), ("Outflow", "outflow"), ("Balance", "balance"),
    ("Turnover time", "turnover_time"), ("Budget closes", "closes"),
)  # fmt: skip


def compare(subjects: Sequence[Subject[CycleRecord]]) -> Comparison:
    """All reservoirs of all cycles, in the order of their records."""
    rows = tuple(
        ComparisonRow(
            subject=subject.id,
            label=f"{subject.record.title}: {reservoir.label}",
            cells=tuple(subject.facts[f"{reservoir.id}.{name}"] for _, name in COLUMNS),
        )
        for subject in subjects
        for reservoir in subject.record.reservoirs
    )
    return Comparison(heads=tuple(head for head, _ in COLUMNS), rows=rows)
