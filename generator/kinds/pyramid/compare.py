"""Pyramids side by side, a line each."""

from __future__ import annotations

from collections.abc import Sequence

from generator.kind import Comparison, ComparisonRow, Subject
from generator.kinds.pyramid.record import PyramidRecord

HEADS = ("Levels", "Net production of producers", "Production of the top level", "Overall efficiency")


def compare(subjects: Sequence[Subject[PyramidRecord]]) -> Comparison:
    """All pyramids, in the order of their records."""
    return Comparison(
        heads=HEADS,
        rows=tuple(
            ComparisonRow(
                subject=subject.id,
                label=subject.record.title,
                cells=(
                    str(len(subject.record.levels)),
                    subject.facts[f"{subject.record.levels[0].id}.production"],
                    subject.facts[f"{subject.record.levels[-1].id}.production"],
                    subject.facts["overall_efficiency"],
                ),
            )
            for subject in subjects
        ),
    )
