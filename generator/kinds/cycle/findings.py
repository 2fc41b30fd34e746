"""What does not add up in a cycle, and what a careful reader would question."""

from __future__ import annotations

from collections.abc import Iterator

from figures.flux_diagram import crowded

from generator.diagnostics import Severity, did_you_mean, listed
from generator.kind import Subject
from generator.kinds.cycle.budget_facts import fluxes_in, fluxes_out, share_expression, total_expression
from generator.kinds.cycle.charts import flux_diagram
from generator.kinds.cycle.record import CycleRecord
from generator.kinds.cycle.scenario_findings import scenario_doubts, scenario_findings
from generator.kinds.cycle.substance_findings import substance_findings
from generator.quantities.expression import ExpressionError
from generator.quantities.fact import Facts
from generator.quantities.units import UnitError, unit
from generator.questions.item_writing import stems
from generator.records.finding import Finding

MOST_FLUXES = 30
"""More arrows than this find no places that can be told apart."""


def findings(record: CycleRecord) -> Iterator[Finding]:
    """Contradictions inside the record."""
    yield from _units(record)
    yield from _ends(record)
    yield from _residuals(record)
    yield from _scenes(record)
    yield from scenario_findings(record)
    yield from substance_findings(record)
    yield from _sums(record)
    if len(record.fluxes) > MOST_FLUXES:
        yield Finding(
            path=("fluxes",), expected=f"at most {MOST_FLUXES} fluxes", found=str(len(record.fluxes)),
            mend="nobody can read a drawing with more: join fluxes that teach the same, or make two records",
        )  # fmt: skip


def _units(record: CycleRecord) -> Iterator[Finding]:
    found = {}
    for field in ("stock", "flux"):
        label = getattr(record.units, field)
        try:
            found[field] = unit(label)
        except UnitError as error:
            yield Finding(
                path=("units", field), expected="a unit such as kg N/ha, Gt C or kg N/ha/yr", found=f'"{label}"', mend=f"{error}"
            )  # fmt: skip
    if len(found) == 2 and not unit(f"{found['stock'].label}/yr").same_kind(found["flux"]):
        yield Finding(
            path=("units", "flux"), expected=f"the unit of the stocks per time, such as {found['stock'].label}/yr",
            found=f'"{found["flux"].label}"', mend="stock and flux must count the same substance over the same area",
        )  # fmt: skip


def _ends(record: CycleRecord) -> Iterator[Finding]:
    """Each flux must run between two different, known ends."""
    reservoirs = {reservoir.id for reservoir in record.reservoirs}
    known = reservoirs | set(record.outside)
    for f, flux in enumerate(record.fluxes):
        for field, end in (("from", flux.start), ("to", flux.end)):
            if end not in known:
                yield Finding(
                    path=("fluxes", f, field), expected="the id of a reservoir, or one of `outside:`", found=f'"{end}"',
                    mend=did_you_mean(end, known, f"write one of {listed(sorted(known))}, or add it under `outside:`"),
                )  # fmt: skip
        if flux.start == flux.end:
            yield Finding(
                path=("fluxes", f, "to"), expected="an end other than the start", found=f'"{flux.end}" twice',
                mend="a flux leaves one reservoir for another",
            )  # fmt: skip
        elif {flux.start, flux.end} <= set(record.outside) - reservoirs:
            yield Finding(
                path=("fluxes", f), expected="at least one end that is a reservoir", found=f"{flux.start} to {flux.end}, both outside",
                mend="leave the flux out, or give one end a stock under `reservoirs:`",
            )  # fmt: skip
    for o, end in enumerate(record.outside):
        if end in reservoirs:
            yield Finding(
                path=("outside", o), expected="an end without a stock", found=f'"{end}", which is a reservoir too',
                mend="an end of fluxes is either a reservoir or outside the budget",
            )  # fmt: skip


def _residuals(record: CycleRecord) -> Iterator[Finding]:
    for r, reservoir in enumerate(record.reservoirs):
        if reservoir.residual and reservoir.change is None:
            yield Finding(
                path=("reservoirs", r, "residual"), expected="a `change` that was found as the rest", found="none",
                mend="state the change, or say residual: true at the flux that was found as the rest", at_key=True,
            )  # fmt: skip


def _scenes(record: CycleRecord) -> Iterator[Finding]:
    """A scene is asked about by its process and its forms."""
    for f, flux in enumerate(record.fluxes):
        missing = [field for field in ("process", "starts_as", "ends_as") if not getattr(flux, field)]
        if flux.scene and missing:
            yield Finding(
                path=("fluxes", f, "scene"), expected="`process`, `starts_as` and `ends_as` beside a scene",
                found=f"no {listed([f'`{field}`' for field in missing], 'and')}",
                mend="state the process and its forms, or leave the scene out", at_key=True,
            )  # fmt: skip


def _sums(record: CycleRecord) -> Iterator[Finding]:
    """What is added up must fit into one formula."""
    ways = {flux.process_id: [f for f in record.fluxes if f.process_id == flux.process_id] for flux in record.fluxes}
    sums = [(fluxes_in(record, r.id), total_expression, f"into {r.id}") for r in record.reservoirs]
    sums += [(fluxes_out(record, r.id), total_expression, f"out of {r.id}") for r in record.reservoirs]
    sums += [(tuple(fluxes), share_expression, f"of {process}") for process, fluxes in ways.items() if len({f.cause for f in fluxes}) > 1]
    for fluxes, expression, of in sums:
        try:
            if fluxes:
                expression(fluxes)
        except ExpressionError:
            yield Finding(
                path=("fluxes",), expected="fluxes whose sum fits into one formula", found=f"{len(fluxes)} {of}",
                mend="join fluxes that teach the same, or shorten their ids",
            )  # fmt: skip


def doubts(record: CycleRecord, facts: Facts) -> Iterator[Finding]:
    """Budgets that do not close, scenes and scenarios that ask or tell the wrong thing, and a drawing that would be hard to read."""
    for r, reservoir in enumerate(record.reservoirs):
        if facts[f"{reservoir.id}.closes"].value is False:
            change, balance = facts[f"{reservoir.id}.change"], facts[f"{reservoir.id}.balance"]
            yield Finding(
                path=("reservoirs", r, "change"), expected=f"the balance of the fluxes, {balance.shown}, within the uncertainty",
                found=change.shown, severity=Severity.WARNING, rule="budget_does_not_close",
                mend="look for a flux that is missing or counted twice, or accept the warning with a reason",
            )  # fmt: skip
    for f, flux in enumerate(record.fluxes):
        if named := sorted(stems(flux.scene or "") & stems(flux.process or "")):
            words = listed((f'"{stem}…"' for stem in named), "and")
            yield Finding(
                path=("fluxes", f, "scene"), expected="a scene that does not name its process", found=f'{words} in "{flux.scene}"',
                severity=Severity.WARNING, rule="scene_tells",
                mend="tell it in other words: by its name the forms can be looked up in the table of the page",
            )  # fmt: skip
    yield from scenario_doubts(record)
    diagram = flux_diagram(Subject(kind="cycle", name="", record=record, facts=facts))
    if because := crowded(diagram):
        yield Finding(
            path=("fluxes",), expected="a diagram that can be read", found=because, severity=Severity.WARNING,
            rule="crowded_chart", mend="join fluxes that teach the same, or give the reservoirs more room with `at:`",
        )  # fmt: skip
