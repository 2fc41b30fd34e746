"""Food webs side by side, a line each."""

from __future__ import annotations

from collections.abc import Sequence

from generator.kind import Comparison, ComparisonRow, Subject
from generator.kinds.food_web.facts import tops
from generator.kinds.food_web.record import FoodWebRecord
from generator.quantities.fact import Fact

HEADS = ("Species and groups", "Feeding links", "Connectance", "Longest chain, arrows", "Top of the web", "Highest trophic level", "Feeding at several steps")


def compare(subjects: Sequence[Subject[FoodWebRecord]]) -> Comparison:
    """All webs, in the order of their records."""
    return Comparison(heads=HEADS, rows=tuple(_row(subject) for subject in subjects))


def _row(subject: Subject[FoodWebRecord]) -> ComparisonRow:
    facts = subject.facts
    at_top = [subject.record.spoken[one.id] for one in tops(subject.record, facts)]
    return ComparisonRow(
        subject=subject.id,
        label=subject.record.title,
        cells=(
            facts["species_count"], facts["link_count"], facts["connectance"], facts["longest_chain"], ", ".join(at_top) or "none",
            _highest(subject), facts["omnivores"],
        ),
    )  # fmt: skip


def _highest(subject: Subject[FoodWebRecord]) -> Fact:
    """The highest level that is known; where none above the bottom is, the first that is not, with its reason."""
    levels = [subject.facts[f"{one.id}.trophic_level"] for one in subject.record.species if one.eats]
    unknown = [level for level in levels if not level.is_number]
    return unknown[0] if unknown else max(levels, key=lambda level: level.number)
