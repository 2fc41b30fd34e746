"""The chart of a scenario: how each stock goes on, with the change and without it."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from figures import DataTable, StockCurves, StockPanel

from generator.kind import Subject, in_sentence
from generator.kinds.cycle.model import Moment, box_model, course, figures_of, followed, sampled
from generator.kinds.cycle.record import CycleRecord, Reservoir, Scenario
from generator.quantities import shown
from generator.quantities.units import unit

STILL = 0.005
"""A stock that changes by a smaller part than this is only named: its line would be level."""
FROM_ZERO = 0.6
"""An axis begins at zero where the least stock is a smaller part of the largest."""
ONE_LINE = (
    "Each panel is a reservoir. The line shows its stock from now on, and the number at its end is the last stock.",
    "Where the line rises, more flows in than out; where it is level, as much flows in as out.",
)
TWO_LINES = (
    "Each panel is a reservoir. The full line shows its stock with the change, the broken line without it; the numbers at their ends are the last stocks.",
    "Where a line rises, more flows in than out; where it is level, as much flows in as out.",
    "What the change does is the distance between the two lines.",
)
AXES = "Every panel has an axis of its own, from zero."
CUT_AXES = (
    "Every panel has an axis of its own. One with a zigzag at its foot does not begin at zero: read its numbers, for a line that "
    "rises to twice the height is not twice the stock."
)
Shown = Mapping[str, tuple[Sequence[Moment], Sequence[Moment]]]


def stock_curves(subject: Subject[CycleRecord], scenario: Scenario) -> StockCurves:
    """Panels of all stocks that change by more than a little, in the order of the record."""
    record = subject.record
    model, times = box_model(record), sampled(scenario)
    changed = course(record, scenario, times)
    unchanged = course(record, scenario, times, changed=False) if scenario.change else []
    reservoirs = followed(record)
    curves = {
        reservoir.id: tuple(tuple((time, stocks[model.ids.index(reservoir.id)]) for time, stocks in moments) for moments in (changed, unchanged))
        for reservoir in reservoirs
    }  # fmt: skip
    moving = [reservoir for reservoir in reservoirs if _moves(curves[reservoir.id])] or reservoirs
    still = [reservoir for reservoir in reservoirs if reservoir not in moving]
    panels = tuple(_panel(record, reservoir, *curves[reservoir.id]) for reservoir in moving)
    return StockCurves(
        name=f"{subject.name}.scenario.{scenario.id}",
        title=f"{scenario.name}: stocks through {scenario.years:.10g} years",
        description=_description(record, scenario, moving, still, curves),
        reading=(*(TWO_LINES if scenario.change else ONE_LINE), CUT_AXES if any(panel.begins_above_zero for panel in panels) else AXES),
        table=_table(record, scenario, reservoirs),
        axis=f"Stock, {unit(record.units.stock).shown}",
        key=("with the change", "without it") if scenario.change else ("", ""),
        year_ticks=_year_ticks(float(scenario.years)),
        panels=panels,
    )  # fmt: skip


def _moves(curves: Sequence[Sequence[tuple[float, float]]]) -> bool:
    stocks = [stock for curve in curves for _, stock in curve]
    return max(stocks) - min(stocks) > STILL * max(map(abs, stocks))


def _panel(record: CycleRecord, reservoir: Reservoir, curve: Sequence[tuple[float, float]], other: Sequence[tuple[float, float]]) -> StockPanel:
    ends = [_shown(record, line[-1][1]) for line in (curve, other) if line]
    stocks = [stock for line in (curve, other) for _, stock in line]
    return StockPanel(
        label=reservoir.label, curve=tuple(curve), other=tuple(other), ticks=_stock_ticks(min(stocks), max(stocks)),
        end_label=f"with {ends[0]}" if other else ends[0], other_end_label=f"without {ends[1]}" if other else "",
    )  # fmt: skip


def _shown(record: CycleRecord, stock: float) -> str:
    return shown.number(stock, figures_of(record, stock))


def _step(span: float, most: int) -> float:
    """A step of 1, 2 or 5 times a power of ten, so that at most so many go into a span."""
    power = 10.0 ** math.floor(math.log10(span / most))
    return next(step * power for step in (1, 2, 5, 10) if step * power * most >= span * (1 - 1e-9))


def _stock_ticks(low: float, high: float) -> tuple[tuple[float, str], ...]:
    """Round stocks from below the least to above the largest, written alike."""
    if high == low:
        low, high = (low - abs(low) / 2, high + abs(high) / 2) if low else (0.0, 1.0)
    base = 0.0 if 0.0 <= low <= FROM_ZERO * high else low
    step = _step(high - base, 4)
    first, last = math.floor(base / step + 1e-9), math.ceil(high / step - 1e-9)
    return tuple((number * step, _tick(number, step, last)) for number in range(first, last + 1))


def _tick(number: int, step: float, last: int) -> str:
    place = math.floor(math.log10(step) + 1e-9)
    if last * step >= 1e7 and number:
        return shown.number(number * step, max(1, len(str(abs(number * round(step / 10.0**place))))))
    return shown.written(f"{number * step:.{max(0, -place)}f}")


def _year_ticks(years: float) -> tuple[tuple[float, str], ...]:
    """Round years with equal steps up to the last one; where none are round, two steps."""
    parts = next((parts for parts in (5, 4, 3, 2, 6, 7, 8) if _is_round(years / parts)), 2)
    return tuple((years * part / parts, shown.written(f"{years * part / parts:.10g}")) for part in range(parts + 1))


def _is_round(step: float) -> bool:
    return any(math.isclose(step / 10.0 ** math.floor(math.log10(step) + 1e-9), one) for one in (1, 2, 2.5, 5))


def _table(record: CycleRecord, scenario: Scenario, reservoirs: Sequence[Reservoir]) -> DataTable:
    years = sorted({scenario.years * quarter / 4 for quarter in range(5)} | set(scenario.told_years))
    runs = [course(record, scenario, years, changed=changed) for changed in ((True, False) if scenario.change else (True,))]
    ids, of = box_model(record).ids, unit(record.units.stock).shown
    after_a_jump = [dict(run) for run in runs]
    rows = tuple(
        (f"{year:.10g}", *(_shown(record, run[year][ids.index(r.id)]) for r in reservoirs for run in after_a_jump)) for year in years
    )  # fmt: skip
    heads = [f"{r.label}{run}" for r in reservoirs for run in ("", ", without")[: len(runs)]]
    without = "; “without” leaves out the change" if scenario.change else ""
    return DataTable(caption=f"{scenario.name}: stocks in {of} by years from now{without}", columns=("Year", *heads), rows=rows)


def _description(
    record: CycleRecord, scenario: Scenario, moving: Sequence[Reservoir], still: Sequence[Reservoir], curves: Shown
) -> str:
    """Where each stock that moves begins and ends, in words."""
    of = unit(record.units.stock)

    def said(reservoir: Reservoir) -> str:
        curve, other = curves[reservoir.id]
        first, last = (_shown(record, stock) for stock in (curve[0][1], curve[-1][1]))
        without = f" (without the change to {_shown(record, other[-1][1])})" if other else ""
        way = f"from {first} to" if first != last else "unchanged at"
        return f"{in_sentence(reservoir.label)} {way} {of.after(last)}{without}"

    sentences = [f"Within {scenario.years:.10g} years: {'; '.join(map(said, moving))}."]
    if still:
        sentences.append(f"Hardly changing, by less than 0.5 %: {', '.join(in_sentence(reservoir.label) for reservoir in still)}.")
    return " ".join(sentences)
