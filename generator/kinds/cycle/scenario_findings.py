"""What does not add up in the scenarios of a cycle."""

from __future__ import annotations

import math
from collections.abc import Iterator

from generator.diagnostics import did_you_mean, listed
from generator.kind import in_sentence
from generator.kinds.cycle.model import course, followed, follows_stock, left_out, sampled
from generator.kinds.cycle.record import Change, CycleRecord, Scenario
from generator.quantities import shown
from generator.quantities.units import unit
from generator.records.field_path import FieldPath
from generator.records.finding import Finding


def scenario_findings(record: CycleRecord) -> Iterator[Finding]:
    """Scenarios of what is not there, changes that say nothing or two things at once, years outside the scenario."""
    for s, scenario in enumerate(record.scenarios):
        path: FieldPath = ("scenarios", s)
        for c, change in enumerate(scenario.change):
            yield from _ends(record, change, (*path, "change", c))
            yield from _form(record, change, (*path, "change", c))
            yield from _years(scenario, change, (*path, "change", c))
        yield from _twice(scenario, path)
        for t, year in enumerate(scenario.tell):
            if year > scenario.years:
                yield Finding(
                    path=(*path, "tell", t), expected=f"a year up to the last, {scenario.years:.10g}", found=f"{year}",
                    mend="make the scenario longer, or tell an earlier year",
                )  # fmt: skip


def _ends(record: CycleRecord, change: Change, path: FieldPath) -> Iterator[Finding]:
    fluxes, reservoirs = {flux.id for flux in record.fluxes}, {reservoir.id for reservoir in record.reservoirs}
    for field, named, known, what in (("flux", change.flux, fluxes, "flux"), ("into", change.into, reservoirs, "reservoir")):
        if named is not None and named not in known:
            yield Finding(
                path=(*path, field), expected=f"the id of a {what}", found=f'"{named}"',
                mend=did_you_mean(named, known, f"write one of {listed(sorted(known))}"),
            )  # fmt: skip


def _form(record: CycleRecord, change: Change, path: FieldPath) -> Iterator[Finding]:
    """A change is `flux` with `times` or `rate`, or `into` with `add`."""
    of_flux = {"times": change.times, "rate": change.rate, "from": change.begin, "until": change.until}
    of_pulse = {"add": change.add, "at": change.at}
    if (change.flux is None) == (change.into is None):
        yield Finding(
            path=path, expected="either `flux`, for a change of a rate, or `into`, for what is added at once",
            found="neither" if change.flux is None else "both",
            mend="write {flux: ..., times: ...}, or {into: ..., add: ...}",
        )  # fmt: skip
        return
    for field, value in (of_flux if change.is_pulse else of_pulse).items():
        if value is not None:
            with_what = "into" if change.is_pulse else "flux"
            yield Finding(
                path=(*path, field), expected=f"no such field with `{with_what}`", found=f"{field}", mend="remove it", at_key=True
            )  # fmt: skip
    if change.is_pulse and change.add is None:
        yield Finding(path=path, expected="`add` beside `into`", found="none", mend="write how much is added, in the unit of the stocks")
    if not change.is_pulse and (change.times is None) == (change.rate is None):
        yield Finding(
            path=path, expected="either `times` or `rate` beside `flux`", found="neither" if change.times is None else "both",
            mend="write what the rate is multiplied by, or to what it is set",
        )  # fmt: skip
    flux = next((flux for flux in record.fluxes if flux.id == change.flux), None)
    if flux is not None and change.rate is not None and follows_stock(record, flux):
        yield Finding(
            path=(*path, "rate"), expected="`times`, for this flux follows the stock that it leaves", found=f"{change.rate:.10g}",
            mend="write times:, or say constant: true at the flux", at_key=True,
        )  # fmt: skip


def _years(scenario: Scenario, change: Change, path: FieldPath) -> Iterator[Finding]:
    last = f"{scenario.years:.10g}"
    for field, year in (("from", change.begin), ("at", change.at)):
        if year is not None and year >= scenario.years:
            yield Finding(
                path=(*path, field), expected=f"a year before the last, {last}", found=f"{year:.10g}",
                mend="make the scenario longer, or begin earlier",
            )  # fmt: skip
    if change.until is not None and change.until > scenario.years:
        mend = "make the scenario longer, or leave `until` out"
        yield Finding(path=(*path, "until"), expected=f"a year up to the last, {last}", found=f"{change.until:.10g}", mend=mend)
    if change.until is not None and change.until <= (change.begin or 0.0):
        mend = "exchange the two, or leave one out"
        yield Finding(path=(*path, "until"), expected=f"a year after {change.begin or 0.0:.10g}", found=f"{change.until:.10g}", mend=mend)


def _twice(scenario: Scenario, path: FieldPath) -> Iterator[Finding]:
    """Two changes of one flux must follow each other."""
    spans = [
        (change.flux, change.begin or 0.0, math.inf if change.until is None else change.until, c)
        for c, change in enumerate(scenario.change) if change.flux is not None
    ]  # fmt: skip
    for number, (flux, begin, end, c) in enumerate(spans):
        if any(flux == other and begin < until and other_begin < end for other, other_begin, until, _ in spans[:number]):
            yield Finding(
                path=(*path, "change", c, "flux"), expected="one change of a flux at a time", found=f'"{flux}" again in the same years',
                mend="let the first end with `until:` before the second begins with `from:`",
            )  # fmt: skip


def scenario_doubts(record: CycleRecord) -> Iterator[Finding]:
    """Scenarios that nothing is known of, and stocks that fall below nothing.

    Both are errors all the same: they come late because only a record without contradictions can be run as a model.
    """
    reservoirs = followed(record)
    for s, scenario in enumerate(record.scenarios):
        path: FieldPath = ("scenarios", s)
        if not reservoirs:
            yield Finding(
                path=path, expected="a reservoir whose stock and fluxes are known as single numbers", found=next(iter(left_out(record).values())),
                mend="leave the scenario out, or state the numbers that it needs",
            )  # fmt: skip
            continue
        moments = course(record, scenario, sampled(scenario))
        for place, reservoir in enumerate(reservoirs):
            year, least = min(((time, stocks[place]) for time, stocks in moments), key=lambda pair: pair[1])
            if least < -1e-9 * max(stock for _, stocks in moments for stock in stocks):
                then = f"{unit(record.units.stock).after(shown.number(least))} of {in_sentence(reservoir.label)} after {shown.number(year)} years"
                yield Finding(
                    path=path, expected="stocks that stay above nothing", found=then,
                    mend="shorten the scenario, change less, or take constant: true from a flux that leaves this reservoir",
                )  # fmt: skip
