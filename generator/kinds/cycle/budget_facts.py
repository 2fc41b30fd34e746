"""Budgets of a cycle: stocks, rates, balances, turnover times, whether they close, and the share of people in each process."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from generator.kind import Subject, in_sentence
from generator.kinds.cycle.record import CycleRecord, Flux, Reservoir
from generator.quantities import shown
from generator.quantities.amount import Amount
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed, stated
from generator.quantities.units import unit
from generator.quantities.working import Rule, RulePath
from generator.science import budgets

YEAR, PERCENT = unit("yr"), unit("percent")
BINARY_NOISE = 1e-12
"""Relative size below which a difference of sums is rounding of the machine."""


def budget_facts(record: CycleRecord) -> Iterator[Fact]:
    """Reservoir by reservoir, then flux by flux, then process by process."""
    rates = {flux.id: _rate(record, flux) for flux in record.fluxes}
    for reservoir in record.reservoirs:
        yield from _of_reservoir(record, reservoir, rates)
    yield from rates.values()
    yield from _human_shares(record, rates)


def fluxes_in(record: CycleRecord, reservoir: str) -> tuple[Flux, ...]:
    """The fluxes that fill a reservoir."""
    return tuple(flux for flux in record.fluxes if flux.end == reservoir)


def is_refilled(subject: Subject[CycleRecord], reservoir: Reservoir) -> bool:
    """Whether anything flows in: without, stock over outflow says when it will be used up, not how long matter stays."""
    return bool(fluxes_in(subject.record, reservoir.id))


def fluxes_out(record: CycleRecord, reservoir: str) -> tuple[Flux, ...]:
    """The fluxes that drain a reservoir."""
    return tuple(flux for flux in record.fluxes if flux.start == reservoir)


def _rate(record: CycleRecord, flux: Flux) -> Fact:
    name = f"Rate of {in_sentence(flux.label)}{', found as the rest' if flux.residual else ''}"
    return stated(f"{flux.id}.rate", name, flux.rate, unit(record.units.flux), figures=significant_figures(record))


def significant_figures(record: CycleRecord) -> int:
    """Of computed values: what the record says, or the usual number."""
    return record.figures or shown.FIGURES


def _of_reservoir(record: CycleRecord, reservoir: Reservoir, rates: dict[str, Fact]) -> Iterator[Fact]:
    figures, flow = significant_figures(record), unit(record.units.flux)
    stock = stated(f"{reservoir.id}.stock", "Stock", reservoir.stock, unit(record.units.stock), figures=figures)
    yield stock
    inflow = _total(record, f"{reservoir.id}.inflow", "Inflow", fluxes_in(record, reservoir.id), rates)
    outflow = _total(record, f"{reservoir.id}.outflow", "Outflow", fluxes_out(record, reservoir.id), rates)
    given = {"inflow": inflow, "outflow": outflow}
    balance = computed(
        f"{reservoir.id}.balance", "Balance", budgets.BALANCE.expression, given, flow, method="balance", figures=figures
    )  # fmt: skip
    balance = replace(_settled(balance, outflow), plus_minus=_quadrature(inflow.plus_minus, outflow.plus_minus))
    yield from (inflow, outflow, balance)
    if reservoir.change is not None:
        name = "Change of stock, found as the rest" if reservoir.residual else "Change of stock, measured apart"
        yield stated(f"{reservoir.id}.change", name, reservoir.change, flow, figures=figures)
    yield _turnover_time(reservoir, stock, outflow, figures)
    yield _closes(record, reservoir, balance)


def _settled(balance: Fact, outflow: Fact) -> Fact:
    """Zero where only the binary spelling of decimals is left: 0.1 + 0.2 - 0.3 is not a growing stock."""
    is_noise = balance.value is not None and abs(balance.number) <= BINARY_NOISE * outflow.number
    return replace(balance, value=0.0) if is_noise else balance


def _total(record: CycleRecord, fact_id: str, name: str, fluxes: Sequence[Flux], rates: dict[str, Fact]) -> Fact:
    flow = unit(record.units.flux)
    if not fluxes:
        return stated(fact_id, name, Amount(value=0.0, written="0"), flow)
    given = {flux.symbol: rates[flux.id] for flux in fluxes}
    total = computed(fact_id, name, total_expression(fluxes), given, flow, figures=significant_figures(record))
    if total.value is None:
        return total
    spread = _quadrature(*(rates[flux.id].plus_minus or _half_range(rates[flux.id]) for flux in fluxes))
    if all(rates[flux.id].low is None for flux in fluxes):
        return replace(total, plus_minus=spread)
    low, high = (math.fsum(_end(rates[flux.id], end) for flux in fluxes) for end in ("low", "high"))
    return replace(total, plus_minus=spread, low=low, high=high)


def _end(rate: Fact, end: str) -> float:
    """An end of a rate stated as a range; of any other the rate itself."""
    stated_end = getattr(rate, end)
    return rate.number if stated_end is None else float(stated_end)


def total_expression(fluxes: Sequence[Flux]) -> Expression:
    """All the fluxes together; raises ExpressionError where there are more than one formula can hold."""
    return Expression(" + ".join(flux.symbol for flux in fluxes))


def share_expression(fluxes: Sequence[Flux]) -> Expression:
    """The part of some fluxes that people cause; raises ExpressionError where there are more than one formula can hold."""
    people = " + ".join(flux.symbol for flux in fluxes if flux.cause == "people")
    return Expression(f"({people}) / ({' + '.join(flux.symbol for flux in fluxes)})")


def _half_range(fact: Fact) -> float | None:
    return None if fact.low is None or fact.high is None else (fact.high - fact.low) / 2


def _quadrature(*spreads: float | None) -> float | None:
    """Independent uncertainties together; None where none is stated at all."""
    known = [spread for spread in spreads if spread is not None]
    return budgets.combined_uncertainty(known) if known else None


def _turnover_time(reservoir: Reservoir, stock: Fact, outflow: Fact, figures: int) -> Fact:
    time = computed(
        f"{reservoir.id}.turnover_time", "Turnover time", budgets.TURNOVER_TIME.expression,
        {"stock": stock, "outflow": outflow}, YEAR, method="turnover_time", figures=figures,
    )  # fmt: skip
    if time.value is None:
        because = "not defined: nothing flows out" if outflow.value == 0.0 else time.undefined_because
        return replace(time, undefined_because=because)
    return quotient_with_range(time, stock, outflow)


def quotient_with_range(quotient: Fact, above: Fact, below: Fact) -> Fact:
    """A quotient where a part of it is a range: from least over most to most over least, unless that has no end."""
    (least, most), (low, high) = _range(above), _range(below)
    if quotient.value is None or (least, low) == (most, high) or not low or not above.number:
        return quotient
    in_its_unit = quotient.number * below.number / above.number
    return replace(quotient, low=in_its_unit * least / high, high=in_its_unit * most / low)


def _range(fact: Fact) -> tuple[float, float]:
    return (fact.number, fact.number) if fact.low is None or fact.high is None else (fact.low, fact.high)


def _closes(record: CycleRecord, reservoir: Reservoir, balance: Fact) -> Fact:
    """Whether balance and measured change agree within their uncertainty; None where no change is stated apart."""
    fact_id, name, method = f"{reservoir.id}.closes", "Budget closes", budgets.CLOSES.id
    change = reservoir.change
    if change is None or change.value is None or balance.value is None:
        because = "not known: no change of stock is stated apart from the fluxes"
        return Fact(id=fact_id, name=name, value=None, method=method, undefined_because=because)
    if because := _found_as_the_rest(record, reservoir):
        return Fact(id=fact_id, name=name, value=None, method=method, undefined_because=f"no check: {because} was found as the rest")
    spreads = [spread for spread in (balance.plus_minus, change.spread) if spread is not None]
    spread = budgets.combined_uncertainty(spreads)
    holds = budgets.closes(balance.number, change.value, spreads)
    gap, figures, flow = abs(balance.number - change.value), significant_figures(record), unit(record.units.flux).shown
    numbers = f"{shown.number(gap, figures)} {flow} against {shown.number(spread, figures)} {flow}"
    rule = Rule("Do balance and measured change differ by no more than their joint uncertainty?", numbers, holds)
    return Fact(id=fact_id, name=name, value=holds, working=RulePath((rule,)), method=method)


def _found_as_the_rest(record: CycleRecord, reservoir: Reservoir) -> str:
    """What makes this budget close whatever the numbers are; empty if nothing."""
    if reservoir.residual:
        return "the change"
    fluxes = (*fluxes_in(record, reservoir.id), *fluxes_out(record, reservoir.id))
    return next((in_sentence(flux.label) for flux in fluxes if flux.residual), "")


def _human_shares(record: CycleRecord, rates: dict[str, Fact]) -> Iterator[Fact]:
    for process in dict.fromkeys(flux.process_id for flux in record.fluxes):
        fluxes = [flux for flux in record.fluxes if flux.process_id == process]
        name = f"Share of people in {in_sentence(fluxes[0].process or fluxes[0].label)}"
        if any(flux.cause == "both" for flux in fluxes):
            because = "not known: nature and people drive it together"
            yield Fact(
                id=f"{process}.human_share", name=name, value=None, unit=PERCENT, method="human_share", undefined_because=because
            )  # fmt: skip
            continue
        if len({flux.cause for flux in fluxes}) == 1:
            yield _one_cause(f"{process}.human_share", name, fluxes, rates)
            continue
        yield computed(
            f"{process}.human_share", name, share_expression(fluxes), {flux.symbol: rates[flux.id] for flux in fluxes}, PERCENT,
            method="human_share", figures=significant_figures(record),
        )  # fmt: skip


def _one_cause(fact_id: str, name: str, fluxes: Sequence[Flux], rates: dict[str, Fact]) -> Fact:
    """All or nothing: no division is needed, only that something flows at all."""
    people = fluxes[0].cause == "people"
    asks = "Do people cause" if people else "Does nature cause"
    rule = Rule(f"{asks} every flux of this process?", ", ".join(in_sentence(flux.label) for flux in fluxes), True)
    known = [rates[flux.id].value for flux in fluxes]
    value = (100.0 if people else 0.0) if any(known) else None
    undefined = "not known: the record does not state how much flows" if None in known else "not defined: nothing flows"
    return Fact(
        id=fact_id, name=name, value=value, unit=PERCENT, working=RulePath((rule,)), method="human_share",
        written="" if value is None else f"{value:.0f}", undefined_because="" if value is not None else undefined,
    )  # fmt: skip
