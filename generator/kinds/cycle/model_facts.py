"""Facts of the record as a linear box model: steady states, how long the whole takes to adjust, and its scenarios."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from generator.kind import in_sentence
from generator.kinds.cycle.budget_facts import significant_figures
from generator.kinds.cycle.model import (
    BoxModel,
    Moment,
    box_model,
    course,
    figures_of,
    followed,
    last_model,
    left_out,
    per_year,
    stocks_at,
)
from generator.kinds.cycle.record import CycleRecord, Reservoir, Scenario
from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.units import Unit, unit
from generator.quantities.working import ValueTable
from generator.science import box_model as boxes

YEAR = unit("yr")
ALL_REST = Expression("steady_inflow * turnover_time")
SOME_CONSTANT = Expression("(steady_inflow - constant_outflow) * turnover_time")
FADING = "not defined: no outflow follows its stock"
NO_REST = "not defined: at these rates the stock never comes to rest"
ALONE = "A reservoir by itself adjusts within its turnover time."
LINKED = "the slowest disturbance is shared between them, and the longest of these times does not decide alone"
BELOW_ZERO = "not defined: more is taken away than there is"


def model_facts(record: CycleRecord, budget: Mapping[str, Fact]) -> Iterator[Fact]:
    """Steady states and the adjustment time, then what each scenario tells; `budget` has stocks and turnover times."""
    reasons, model = left_out(record), box_model(record)
    for reservoir in record.reservoirs:
        because = reasons.get(reservoir.id, "")
        yield _steady(record, reservoir, f"{reservoir.id}.steady_state", "Steady state in a linear model", None if because else model, because)
    yield _adjustment_time(record, model, budget)
    for scenario in record.scenarios:
        yield from _of_scenario(record, scenario)


def _steady(record: CycleRecord, reservoir: Reservoir, fact_id: str, name: str, model: BoxModel | None, because: str) -> Fact:
    """Where a stock comes to rest: what then flows in, times the time that it stays."""
    stock, flow = unit(record.units.stock), unit(record.units.flux)
    nothing = Fact(id=fact_id, name=name, value=None, unit=stock, method=boxes.STEADY_STATE.id, undefined_because=because)
    if model is None:
        return nothing
    part = model.part(model.sources_of(reservoir.id))
    steady = boxes.steady_state(part.rates, part.inputs, part.start)
    if steady is None or (because := _not_told(record, part, steady)):
        return replace(nothing, undefined_because=because or NO_REST)
    at = part.ids.index(reservoir.id)
    share = -part.rates[at][at]
    if not share:
        return _at_rest(nothing, steady[at], record)
    arriving = sum(part.rates[at][other] * steady[other] for other in range(len(steady)) if other != at)
    factor, constant = per_year(record), part.drains[at]
    given = {
        "steady_inflow": _plain("Inflow in the steady state", (arriving + part.inputs[at] + constant) / factor, flow),
        "constant_outflow": _plain("Outflow that stays as it is", constant / factor, flow),
        "turnover_time": _plain("Turnover time by the outflow that follows the stock", 1 / share, YEAR),
    }
    fact = computed(
        fact_id, name, SOME_CONSTANT if constant else ALL_REST, given, stock, method=boxes.STEADY_STATE.id, figures=significant_figures(record)
    )  # fmt: skip
    return replace(fact, figures=figures_of(record, fact.number), **_range(reservoir, fact))


def _not_told(record: CycleRecord, part: BoxModel, steady: Sequence[float]) -> str:
    if min(steady) < -1e-9 * max(map(abs, steady)):
        return BELOW_ZERO
    ranges = [r for r in record.reservoirs if r.id in part.ids and r.stock.low is not None]
    without = boxes.steady_state(part.rates, part.inputs, [0.0] * len(steady))
    if ranges and (without is None or max(abs(a - b) for a, b in zip(steady, without, strict=True)) > 1e-9 * max(map(abs, steady))):
        return f"not told: the stock of {in_sentence(ranges[0].label)} is known as a range only"
    return ""


def _at_rest(nothing: Fact, steady: float, record: CycleRecord) -> Fact:
    """Of a reservoir that nothing leaves: its stock, with whatever still arrives before its inflow has run dry."""
    table = ValueTable(("Outflow", "Inflow in the end"), (("0", "0"),), "What it holds once nothing flows in any more.")
    return replace(nothing, value=steady, working=table, figures=figures_of(record, steady))


def _range(reservoir: Reservoir, fact: Fact) -> dict[str, float]:
    """A steady stock is in proportion to the stock now, as long as the shares that leave are: so a range stays one."""
    stock = reservoir.stock
    if stock.low is None or stock.high is None or not stock.value or fact.value is None:
        return {}
    return {"low": fact.number * stock.low / stock.value, "high": fact.number * stock.high / stock.value}


def _plain(name: str, value: float, of: Unit) -> Fact:
    return Fact(id="", name=name, value=value, unit=of)


def _adjustment_time(record: CycleRecord, model: BoxModel, budget: Mapping[str, Fact]) -> Fact:
    name, method = "Adjustment time of the whole", boxes.ADJUSTMENT_TIME.id
    time = boxes.adjustment_time(model.rates)
    nothing = Fact(id="adjustment_time", name=name, value=None, unit=YEAR, method=method)
    if time is None:
        reasons = left_out(record)
        return replace(nothing, undefined_because=FADING if model.ids else next(iter(reasons.values())))
    labels = {reservoir.id: reservoir.label for reservoir in record.reservoirs}
    rows = tuple((labels[one], budget[f"{one}.turnover_time"].shown) for one in model.ids)
    missing = [in_sentence(labels[one]) for one in left_out(record)]
    left = f" Not counted, because too little is known: {', '.join(missing)}." if missing else ""
    longest = max((fact.number for one in model.ids if (fact := budget[f"{one}.turnover_time"]).is_number), default=0.0)
    linked = "matter goes round between them before it leaves, so the whole takes longer" if time > 1.02 * longest else LINKED
    conclusion = f"Each by itself would adjust within its own turnover time. Linked as they are, {linked}.{left}" if len(rows) > 1 else f"{ALONE}{left}"
    working = ValueTable(("Reservoir", "Turnover time"), rows, conclusion)
    return replace(nothing, value=time, working=working, figures=significant_figures(record))


def _of_scenario(record: CycleRecord, scenario: Scenario) -> Iterator[Fact]:
    """For each year that is told the stocks with the change and without it, then where the stocks lead."""
    reservoirs = followed(record)
    for year in scenario.told_years:
        for changed in (True, False) if scenario.change else (True,):
            stocks = stocks_at(record, scenario, year, changed=changed)
            on_the_way = course(record, scenario, [year * part / 4 for part in range(5)], changed=changed)
            when = f"after {year:.10g} years{'' if changed else ', without the change'}"
            for reservoir in reservoirs:
                fact_id, name = scenario.then(reservoir.id, year, changed), f"{reservoir.label} {when}"
                yield _stock_then(record, reservoir, fact_id, name, stocks[reservoir.id], on_the_way)
    model = last_model(record, scenario)
    for reservoir in reservoirs:
        yield _steady(record, reservoir, scenario.finally_(reservoir.id), f"{reservoir.label} in the end", model, "")


def _stock_then(record: CycleRecord, reservoir: Reservoir, fact_id: str, name: str, value: float, on_the_way: Sequence[Moment]) -> Fact:
    stock, reservoirs = unit(record.units.stock), followed(record)
    at = reservoirs.index(reservoir)
    rows = tuple((f"{time:.10g}", shown.number(stocks[at], figures_of(record, stocks[at]))) for time, stocks in on_the_way)
    ranges = [in_sentence(r.label) for r in reservoirs if r.stock.low is not None]
    middle = f" A stock that is known as a range stands in with its middle: {', '.join(ranges)}." if ranges else ""
    table = ValueTable(
        ("Year", f"{reservoir.label} ({stock.shown})"), rows, f"All stocks of the model are moved on together, year by year.{middle}"
    )  # fmt: skip
    return Fact(
        id=fact_id, name=name, value=value, unit=stock, working=table,
        method=boxes.STOCKS_AFTER.id, figures=figures_of(record, value),
    )  # fmt: skip

