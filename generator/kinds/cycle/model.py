"""The record as a linear box model: which reservoirs it can follow, and how their stocks go on through a scenario."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from generator.kind import in_sentence
from generator.kinds.cycle.budget_facts import significant_figures
from generator.kinds.cycle.record import Change, CycleRecord, Flux, Reservoir, Scenario
from generator.quantities import shown
from generator.quantities.last_digits import MOST_WHOLE_DIGITS
from generator.quantities.units import convert, unit
from generator.science.box_model import stocks_after

Moment = tuple[float, tuple[float, ...]]
"""A time [yr] and the stocks at that time."""
STEPS = 60
"""Even steps of a scenario; more stand behind each change, where stocks may bend sharply."""
_SOON = (0.03, 0.08, 0.18, 0.35, 0.6)
"""Parts of a step."""


@dataclass(frozen=True)
class BoxModel:
    """Rates and inputs of the reservoirs that can be followed, in the order of the record."""

    ids: tuple[str, ...]
    start: tuple[float, ...]
    """Stocks now, in the unit of the record's stocks; the middle of a range."""
    rates: tuple[tuple[float, ...], ...]
    """Rate constants [1/yr], row to, column from."""
    inputs: tuple[float, ...]
    """What fluxes that follow no stock bring [stock/yr], less what they take."""
    drains: tuple[float, ...]
    """What they take [stock/yr]."""

    def part(self, ids: Sequence[str]) -> BoxModel:
        """The model of some of its reservoirs alone; what flows from them to others is lost."""
        places = [self.ids.index(one) for one in ids]
        rates = tuple(tuple(self.rates[row][column] for column in places) for row in places)
        start, inputs, drains = (tuple(values[at] for at in places) for values in (self.start, self.inputs, self.drains))
        return BoxModel(tuple(ids), start, rates, inputs, drains)

    def sources_of(self, reservoir: str) -> tuple[str, ...]:
        """The reservoir and all from which its matter comes, over any number of steps."""
        found = {reservoir}
        while True:
            places = [self.ids.index(one) for one in found]
            more = found | {one for at, one in enumerate(self.ids) if any(self.rates[place][at] > 0 for place in places)}
            if more == found:
                return tuple(one for one in self.ids if one in found)
            found = more


def box_model(record: CycleRecord, changed: Mapping[str, float] | None = None) -> BoxModel:
    """The reservoirs that can be followed; `changed` gives the rates of fluxes [flux unit] that are not as stated."""
    known = followed(record)
    places = {reservoir.id: at for at, reservoir in enumerate(known)}
    start = tuple(float(reservoir.stock.value or 0.0) for reservoir in known)
    rates = [[0.0] * len(known) for _ in known]
    lost, gains, drains = ([0.0] * len(known) for _ in range(3))
    for flux in record.fluxes:
        flow = per_year(record) * (changed or {}).get(flux.id, flux.rate.value or 0.0)
        into, out_of = places.get(flux.end), places.get(flux.start)
        if not follows_stock(record, flux):
            for place, fixed in ((into, gains), (out_of, drains)):
                if place is not None:
                    fixed[place] += flow
        elif out_of is not None and flow:
            share = flow / start[out_of]
            if into is None:
                lost[out_of] += share
            else:
                rates[into][out_of] += share
    for column in range(len(known)):
        rates[column][column] = -math.fsum([lost[column], *(row[column] for row in rates)])
    inputs = tuple(gain - drain for gain, drain in zip(gains, drains, strict=True))
    return BoxModel(tuple(places), start, tuple(map(tuple, rates)), inputs, tuple(drains))


def follows_stock(record: CycleRecord, flux: Flux) -> bool:
    """Whether a flux keeps its share of the stock that it leaves: not from outside, and not where the record says otherwise."""
    return not flux.constant and any(reservoir.id == flux.start for reservoir in record.reservoirs)


def per_year(record: CycleRecord) -> float:
    """What the unit of the fluxes is in units of the stocks per year."""
    return convert(1.0, unit(record.units.flux), unit(f"{record.units.stock}/yr"))


def followed(record: CycleRecord) -> tuple[Reservoir, ...]:
    """The reservoirs whose stocks the model carries on."""
    unknown = left_out(record)
    return tuple(reservoir for reservoir in record.reservoirs if reservoir.id not in unknown)


def left_out(record: CycleRecord) -> dict[str, str]:
    """The reservoirs that no model can follow, each with the reason; what they feed cannot be followed either."""
    reasons = {reservoir.id: because for reservoir in record.reservoirs if (because := _unknown(record, reservoir))}
    while True:
        fed = {
            flux.end: reasons[flux.start] for flux in record.fluxes
            if flux.start in reasons and flux.end not in reasons and any(r.id == flux.end for r in record.reservoirs)
            and follows_stock(record, flux)
        }  # fmt: skip
        if not fed:
            return reasons
        reasons |= fed


def _unknown(record: CycleRecord, reservoir: Reservoir) -> str:
    """What is not known of a reservoir or its own fluxes; empty if nothing."""
    if reservoir.stock.value is None:
        return f"not known: the stock of {in_sentence(reservoir.label)} is not known"
    for flux in record.fluxes:
        if reservoir.id not in (flux.start, flux.end):
            continue
        if flux.rate.value is None:
            return f"not known: the rate of {in_sentence(flux.label)} is not known"
        if flux.rate.low is not None:
            return f"not told: the rate of {in_sentence(flux.label)} is known as a range only"
        if flux.start == reservoir.id and flux.rate.value and not reservoir.stock.value and follows_stock(record, flux):
            return f"not defined: {in_sentence(reservoir.label)} holds nothing that could flow out"
    return ""


def course(record: CycleRecord, scenario: Scenario, times: Sequence[float], *, changed: bool = True) -> list[Moment]:
    """The stocks at these times [yr, rising], with or without what the scenario changes; at a pulse just before and after it."""
    changes = scenario.change if changed else ()
    pulses = sorted((change for change in changes if change.is_pulse), key=lambda change: change.at or 0.0)
    turns = {limit for change in changes if not change.is_pulse for limit in _limits(change)}
    stops = sorted(stop for stop in {0.0, *times, *turns, *(float(pulse.at or 0.0) for pulse in pulses)} if stop <= max(times))
    moments: list[Moment] = []
    model = box_model(record)
    stocks, now = model.start, 0.0
    for stop in stops:
        if stop > now:
            model = box_model(record, _rates_at(record, changes, (now + stop) / 2))
            stocks, now = stocks_after(model.rates, model.inputs, stocks, stop - now), stop
        due = [pulse for pulse in pulses if (pulse.at or 0.0) == stop and pulse.into in model.ids]
        if due or stop in times:
            moments.append((stop, stocks))
        if due:
            stocks = tuple(
                stock + math.fsum(pulse.add or 0.0 for pulse in due if pulse.into == one)
                for one, stock in zip(model.ids, stocks, strict=True)
            )
            moments.append((stop, stocks))
    return moments


def stocks_at(record: CycleRecord, scenario: Scenario, year: float, *, changed: bool = True) -> dict[str, float]:
    """The stock of each reservoir after some years; of a pulse in that very year, after it."""
    (*_, (_, stocks)) = course(record, scenario, [year], changed=changed)
    return dict(zip(box_model(record).ids, stocks, strict=True))


def last_model(record: CycleRecord, scenario: Scenario) -> BoxModel:
    """The model with the rates that hold just before the scenario's end."""
    return box_model(record, _rates_at(record, scenario.change, scenario.years * (1 - 1e-9)))


def figures_of(record: CycleRecord, stock: float) -> int:
    """Significant figures of a stock to come: to the unit at least, as for sums, or small changes of large stocks would not show."""
    return max(significant_figures(record), min(shown.whole_digits(stock), MOST_WHOLE_DIGITS))


def sampled(scenario: Scenario) -> list[float]:
    """Times for a smooth curve: even steps, and some close behind each change."""
    step = scenario.years / STEPS
    turns = {0.0, *(limit for change in scenario.change for limit in (*_limits(change), float(change.at or 0.0)) if limit < math.inf)}
    times = {step * number for number in range(STEPS)} | {turn + step * part for turn in turns for part in _SOON} | turns
    return sorted({time for time in times if time < scenario.years} | {float(scenario.years)})


def _rates_at(record: CycleRecord, changes: Sequence[Change], year: float) -> dict[str, float]:
    """The rates that are not as stated in a year, in the unit of the fluxes."""
    stated = {flux.id: flux.rate.value or 0.0 for flux in record.fluxes}
    now = [change for change in changes if change.flux in stated and _limits(change)[0] <= year < _limits(change)[1]]
    return {str(change.flux): _changed(stated[str(change.flux)], change) for change in now}


def _changed(rate: float, change: Change) -> float:
    if change.rate is not None:
        return float(change.rate)
    return rate * (1.0 if change.times is None else float(change.times))


def _limits(change: Change) -> tuple[float, float]:
    """The first and the last year of a change; without a last one it goes on beyond the scenario."""
    return float(change.begin or 0.0), math.inf if change.until is None else float(change.until)
