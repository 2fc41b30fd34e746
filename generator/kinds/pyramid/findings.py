"""What does not add up in a pyramid, and what a careful reader would question."""

from __future__ import annotations

from collections.abc import Iterator

from generator.diagnostics import Severity, did_you_mean, listed
from generator.kinds.pyramid.conversion_findings import catch_findings, conversion_doubts, conversion_findings
from generator.kinds.pyramid.flows import ENERGY
from generator.kinds.pyramid.record import Level, PyramidRecord
from generator.quantities import shown
from generator.quantities.fact import Facts
from generator.quantities.units import UnitError, unit
from generator.records.finding import Finding

ROUNDING = 0.005
"""Relative difference that rounding of stated numbers may leave in a sum."""
EXAMPLES = {"biomass": "g/m2", "energy_content": "kJ/g"}


def findings(record: PyramidRecord) -> Iterator[Finding]:
    """Contradictions inside the record."""
    units = [*_units(record), *conversion_findings(record)]
    yield from units
    yield from _sums(record)
    yield from _levels(record)
    yield from catch_findings(record)
    if not units:
        yield from _top_consumer(record)


def _units(record: PyramidRecord) -> Iterator[Finding]:
    for field, example in EXAMPLES.items():
        label = getattr(record.units, field)
        try:
            fits, because = unit(label).same_kind(unit(example)), f"write {example}, or another unit of the same kind"
        except UnitError as error:
            fits, because = False, str(error)
        if not fits:
            yield Finding(path=("units", field), expected=f"a unit such as {example}", found=f'"{label}"', mend=because)


def _sums(record: PyramidRecord) -> Iterator[Finding]:
    """What is eaten must be what is egested, respired and produced; gross production what is respired and produced."""
    for index, level in enumerate(record.levels):
        for whole, parts in (("eaten", ("egested", "respired", "production")), ("gross_production", ("respiration", "production"))):
            values = [_value(level, field) for field in parts]
            total = _value(level, whole)
            if total is None:
                continue
            adds_up = sum(value for value in values if value is not None)
            if None in values and adds_up > total * (1 + ROUNDING):
                known = [field for field, value in zip(parts, values, strict=True) if value is not None]
                yield Finding(
                    path=("levels", index, whole), expected=f"at least {' + '.join(known)} = {shown.written(f'{adds_up:g}')}",
                    found=shown.written(f"{total:g}"), mend=f"correct the number that is wrong: a part of {whole} cannot be more than all of it",
                )  # fmt: skip
            elif None not in values and abs(adds_up - total) > ROUNDING * max(total, adds_up):
                yield Finding(
                    path=("levels", index, whole), expected=f"{' + '.join(parts)} = {shown.written(f'{adds_up:g}')}",
                    found=shown.written(f"{total:g}"), mend="correct the number that is wrong, or leave one of them out: it is then computed",
                )  # fmt: skip


def _levels(record: PyramidRecord) -> Iterator[Finding]:
    first, *others = record.levels
    if not others:
        yield Finding(
            path=("levels",), expected="two levels or more", found="one", mend="add the level that eats it: a pyramid compares levels"
        )  # fmt: skip
    if first.eaten is not None:
        yield Finding(
            path=("levels", 0, "eaten"), expected="producers, which eat nothing", found=f'"{first.id}", which eats',
            mend="list the levels from producers up",
        )  # fmt: skip
    for index, level in enumerate(record.levels):
        if not _has_production(level, producer=index == 0):
            known = "production, or gross_production and respiration" if index == 0 else "production, or transfer_efficiency"
            yield Finding(
                path=("levels", index), expected=known, found="neither", mend=f"state what {level.label} produces in a year"
            )  # fmt: skip
    for index, level in enumerate(others, start=1):
        if level.production is not None and level.transfer_efficiency is not None:
            yield Finding(
                path=("levels", index, "transfer_efficiency"), expected="production or transfer_efficiency", found="both",
                mend="remove one: it follows from the other",
            )  # fmt: skip


def _has_production(level: Level, *, producer: bool) -> bool:
    if level.production is not None:
        return level.production.value is not None
    from_parts = ("gross_production", "respiration") if producer else ("eaten", "egested", "respired")
    return all(_value(level, field) is not None for field in from_parts) or (
        not producer and level.transfer_efficiency is not None
    )


def _top_consumer(record: PyramidRecord) -> Iterator[Finding]:
    top = record.top_consumer
    if top is None:
        return
    levels = {level.id: level for level in record.levels}
    if top.level not in levels:
        yield Finding(
            path=("top_consumer", "level"), expected="the id of a level", found=f'"{top.level}"',
            mend=did_you_mean(top.level, levels, f"write one of {listed(levels)}"),
        )  # fmt: skip
    elif top.measured_as == "eaten" and not _eaten_is_known(levels[top.level]):
        yield Finding(
            path=("top_consumer", "measured_as"), expected=f"a flow that {top.level} states", found='"eaten", which it does not state',
            mend="state `eaten:` for that level, or compare the need with its `production`",
        )  # fmt: skip
    try:
        fits = unit(f"{top.needs.unit}/m2").same_kind(ENERGY)
        because = "the need of one animal has the unit of the flows without the area"
    except UnitError as error:
        fits, because = False, str(error)
    if not fits:
        yield Finding(path=("top_consumer", "needs", "unit"), expected="a unit such as kJ/yr", found=f'"{top.needs.unit}"', mend=because)


def _eaten_is_known(level: Level) -> bool:
    made = level.production is not None or level.transfer_efficiency is not None
    return _value(level, "eaten") is not None or (made and all(_value(level, field) is not None for field in ("egested", "respired")))


def doubts(record: PyramidRecord, facts: Facts) -> Iterator[Finding]:
    """Levels that seem to have more than the level below can give, and factors that nothing uses."""
    yield from conversion_doubts(record)
    for index, level in enumerate(record.levels[1:], start=1):
        below = facts[f"{record.levels[index - 1].id}.production"]
        for field in ("eaten", "production"):
            taken = facts.get(f"{level.id}.{field}")
            if taken is None or not taken.is_number or not below.is_number:
                continue
            if taken.number > below.number:
                yield Finding(
                    path=("levels", index), expected=f"no more {field} than {below.shown}, the production of the level below",
                    found=taken.shown, severity=Severity.WARNING, rule="more_than_below",
                    mend="check the numbers and the order of the levels; food from outside would explain it",
                )  # fmt: skip
                break


def _value(level: Level, field: str) -> float | None:
    amount = getattr(level, field)
    return None if amount is None else amount.value
