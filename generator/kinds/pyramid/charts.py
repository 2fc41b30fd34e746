"""The charts of a pyramid: one bar a trophic level, as wide as its production, its biomass or its number of individuals."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from figures import DataTable, PyramidLevel, TrophicPyramid

from generator.kind import Subject, in_sentence
from generator.kinds.pyramid.record import PyramidRecord
from generator.quantities.fact import Fact, Facts

ROLES = ("Producers", "Primary consumers", "Secondary consumers", "Tertiary consumers", "Quaternary consumers")
SCALE = "Go up a level: each bar is drawn to the same scale, so its width is its {quantity}."
MAGNIFIED = "A level too thin to read is shown again beside or below: hatched, in a dashed frame that says how many times wider."
ENERGY_READING = (
    "Start at the bottom: the widest bar is what producers build up in a year on one square metre.",
    SCALE.format(quantity="production"),
    "Compare neighbours: the percentage between two bars is the share that the upper level turns into its own production.",
)
STANDING = (
    ("biomass", "Biomass", "biomass pyramid", "A biomass pyramid shows what is there at one moment, not what is made in a year: where the lower level grows and is eaten fast, it can be narrower than the level above."),
    ("individuals_per_m2", "Individuals", "pyramid of numbers", "A pyramid of numbers counts a tree and an insect alike, so a few large producers can stand below many small consumers."),
)  # fmt: skip


def charts(subject: Subject[PyramidRecord]) -> tuple[TrophicPyramid, ...]:
    """The energy pyramid, and those of biomass and of numbers where every level states them."""
    return (*_energy(subject), *(chart for field in STANDING for chart in _standing(subject, *field)))


def _energy(subject: Subject[PyramidRecord]) -> Iterator[TrophicPyramid]:
    record, facts = subject.record, subject.facts
    production = _known(subject, "production")
    if not production:
        return
    flow = production[0].unit.shown if production[0].unit else ""
    levels = _levels(record, production, [_efficiency(facts, level.id) for level in record.levels[1:]])
    yield _with_reading(TrophicPyramid(
        name=f"{subject.name}.energy_pyramid",
        title=f"{record.title}: energy pyramid",
        description=_description(record, facts, production),
        reading=ENERGY_READING,
        table=DataTable(
            caption=f"{record.title}: production by trophic level",
            columns=("Level", "Role", f"Production ({flow})", "Transfer efficiency from the level below"),
            rows=tuple((x.label, x.role, fact.shown_bare, x.passed_on_label or "–") for x, fact in zip(levels, production, strict=True)),
        ),
        levels=levels,
        quantity=f"Production, {flow}",
    ))  # fmt: skip


def _standing(subject: Subject[PyramidRecord], field: str, quantity: str, sort: str, note: str) -> Iterator[TrophicPyramid]:
    """A pyramid of what is there at one moment; unlike that of energy it may stand on its head."""
    record, stock = subject.record, _known(subject, field)
    if not stock:
        return
    per = stock[0].unit.shown if stock[0].unit else ""
    levels = _levels(record, stock, [""] * (len(stock) - 1))
    widest = max(zip(levels, stock, strict=True), key=lambda pair: pair[1].number)
    place = "at the bottom" if widest[0] is levels[0] else f"not at the bottom but in {in_sentence(widest[0].label)}"
    yield _with_reading(TrophicPyramid(
        name=f"{subject.name}.{'numbers' if field != 'biomass' else field}_pyramid",
        title=f"{record.title}: {sort}",
        description=f"The widest bar is {place}, with {widest[1].shown_exactly}. From the bottom up: {', '.join(fact.shown_exactly for fact in stock)}.",
        reading=("Start at the bottom, with the producers.", SCALE.format(quantity=quantity.lower()), note),
        table=DataTable(
            caption=f"{record.title}: {quantity.lower()} by trophic level",
            columns=("Level", "Role", f"{quantity} ({per})"),
            rows=tuple((x.label, x.role, fact.shown_bare) for x, fact in zip(levels, stock, strict=True)),
        ),
        levels=levels,
        quantity=f"{quantity}, {per}",
    ))  # fmt: skip


def _with_reading(chart: TrophicPyramid) -> TrophicPyramid:
    """The chart, its reading steps with one about magnified bars where it has some."""
    return replace(chart, reading=(*chart.reading, MAGNIFIED)) if chart.has_thin_levels else chart


def _known(subject: Subject[PyramidRecord], field: str) -> list[Fact]:
    """The fact of every level, or nothing unless all of them are numbers above zero."""
    found = [subject.facts.get(f"{level.id}.{field}") for level in subject.record.levels]
    known = [fact for fact in found if fact is not None and fact.is_number and fact.number > 0]
    return known if len(known) == len(found) else []


def _levels(record: PyramidRecord, values: list[Fact], passed_on: list[str]) -> tuple[PyramidLevel, ...]:
    return tuple(
        PyramidLevel(
            id=level.id, label=level.label, role=role(index), value=fact.number, value_label=fact.shown_exactly, passed_on_label=share,
        )
        for index, (level, fact, share) in enumerate(zip(record.levels, values, ["", *passed_on], strict=True))
    )  # fmt: skip


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
