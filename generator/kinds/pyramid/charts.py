"""The chart of a pyramid: one bar a trophic level, as wide as its production."""

from __future__ import annotations

from figures import DataTable, PyramidLevel, TrophicPyramid

from generator.kind import Subject, in_sentence
from generator.kinds.pyramid.record import PyramidRecord
from generator.quantities.fact import Fact, Facts
from generator.quantities.units import unit

ROLES = ("Producers", "Primary consumers", "Secondary consumers", "Tertiary consumers", "Quaternary consumers")
READING = (
    "Start at the bottom: the widest bar is what producers build up in a year on one square metre.",
    "Go up a level: each bar is drawn to the same scale, so its width is its production.",
    "Compare neighbours: the percentage between two bars is the share that the upper level turns into its own production.",
)


def charts(subject: Subject[PyramidRecord]) -> tuple[TrophicPyramid, ...]:
    """The energy pyramid, unless a level's production is not known."""
    record, facts = subject.record, subject.facts
    production = [facts[f"{level.id}.production"] for level in record.levels]
    if not all(fact.is_number and fact.number > 0 for fact in production):
        return ()
    flow = unit(record.units.energy_flow).shown
    levels = tuple(
        PyramidLevel(
            id=level.id, label=level.label, role=role(index), value=fact.number, value_label=fact.shown_exactly,
            passed_on_label=_efficiency(facts, level.id) if index else "",
        )
        for index, (level, fact) in enumerate(zip(record.levels, production, strict=True))
    )  # fmt: skip
    return (
        TrophicPyramid(
            name=f"{subject.name}.energy_pyramid",
            title=f"{record.title}: energy pyramid",
            description=_description(record, facts, production),
            reading=READING,
            table=DataTable(
                caption=f"{record.title}: production by trophic level",
                columns=("Level", "Role", f"Production ({flow})", "Transfer efficiency from the level below"),
                rows=tuple((x.label, x.role, fact.shown_number, x.passed_on_label or "–") for x, fact in zip(levels, production, strict=True)),
            ),
            levels=levels,
            quantity=f"Production, {flow}",
        ),
    )


def role(index: int) -> str:
    """What a level is called by its place above the producers."""
    return ROLES[index] if index < len(ROLES) else f"Consumers of level {index + 1}"


def _efficiency(facts: Facts, level: str) -> str:
    return facts[f"{level}.transfer_efficiency"].shown


def _description(record: PyramidRecord, facts: Facts, production: list[Fact]) -> str:
    """What the pyramid shows, in words, with the numbers that decide."""
    bottom, top = record.levels[0], record.levels[-1]
    steps = ", ".join(f"{_efficiency(facts, level.id)} to {in_sentence(level.label)}" for level in record.levels[1:])
    return (
        f"Production falls from {production[0].shown_exactly} in {in_sentence(bottom.label)} to {production[-1].shown_exactly} "
        f"in {in_sentence(top.label)}. Passed on: {steps}. "
        f"Of the producers' net production {facts['overall_efficiency'].shown} is left at the top."
    )
