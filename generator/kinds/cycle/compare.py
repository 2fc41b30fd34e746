"""Cycles side by side: a line for each reservoir, and how fast each turns over."""

from __future__ import annotations

from collections.abc import Sequence

from figures import DataTable, TurnoverChart, TurnoverTime

from generator.kind import Comparison, ComparisonRow, Subject
from generator.kinds.cycle.budget_facts import is_refilled
from generator.kinds.cycle.record import CycleRecord, Reservoir
from generator.quantities import shown
from generator.quantities.fact import Fact
from generator.quantities.units import convert, unit

COLUMNS = (
    ("Stock", "stock"), ("Inflow", "inflow"), ("Outflow", "outflow"), ("Balance", "balance"),
    ("Turnover time", "turnover_time"), ("Budget closes", "closes"),
)  # fmt: skip
SHORT = 0.1
"""Turnover times below this [yr] are labelled in days."""
Timed = tuple[Subject[CycleRecord], Reservoir, Fact]


def compare(subjects: Sequence[Subject[CycleRecord]]) -> Comparison:
    """All reservoirs of all cycles, in the order of their records."""
    rows = tuple(
        ComparisonRow(
            subject=subject.id,
            of=subject.record.title,
            label=reservoir.label,
            cells=tuple(subject.facts[f"{reservoir.id}.{name}"] for _, name in COLUMNS),
        )
        for subject in subjects
        for reservoir in subject.record.reservoirs
    )
    timed = [
        (subject, reservoir, time)
        for subject in subjects
        for reservoir in subject.record.reservoirs
        if (time := subject.facts[f"{reservoir.id}.turnover_time"]).is_number and time.number > 0 and is_refilled(subject, reservoir)
    ]
    return Comparison(heads=tuple(head for head, _ in COLUMNS), rows=rows, charts=(_turnover(timed, _left_out(subjects, timed)),) if timed else ())


def _left_out(subjects: Sequence[Subject[CycleRecord]], timed: Sequence[Timed]) -> str:
    """Which reservoirs of the table have no dot, and why, in a sentence."""
    drawn = {(subject.id, reservoir.id) for subject, reservoir, _ in timed}
    missing = [
        f"“{reservoir.label}” of “{subject.record.title}”"
        for subject in subjects
        for reservoir in subject.record.reservoirs
        if (subject.id, reservoir.id) not in drawn
    ]
    return f"No dot: {', '.join(missing)}. Nothing flows in or out there, or the stock is not known." if missing else ""


def _turnover(timed: Sequence[Timed], left_out: str) -> TurnoverChart:
    ordered = sorted(timed, key=lambda item: item[2].number)
    return TurnoverChart(
        name="cycle.turnover_times",
        title="Turnover times of reservoirs that are filled and drained",
        description=(
            f"{_named(*ordered[0])} turns over fastest; {_named(*ordered[-1])} slowest. "
            "Equal steps along the axis multiply the time by ten."
        ),
        reading=(
            "A dot is a reservoir; further right means that matter stays longer.",
            "Each tenfold step is equally long: from a year on, half-way between two lines is about three times the left one.",
            "A line through a dot shows a range: the stock or the outflow is known only between two ends. The dot is the middle stock divided by the middle outflow, so it need not stand in the middle of the line.",
            *([left_out] if left_out else []),
        ),
        table=DataTable(
            caption="Turnover times, from the shortest to the longest",
            columns=("Reservoir", "Cycle", "Turnover time"),
            rows=tuple((reservoir.label, subject.record.title, time.shown) for subject, reservoir, time in ordered),
        ),
        times=tuple(
            TurnoverTime(
                id=f"{subject.name}.{reservoir.id}", label=reservoir.label, cycle=subject.record.title, years=time.number,
                value_label=_label(time), range_years=_range(time),
            )
            for subject, reservoir, time in timed
        ),
    )  # fmt: skip


def _named(subject: Subject[CycleRecord], reservoir: Reservoir, time: Fact) -> str:
    return f"“{reservoir.label}” of “{subject.record.title}” ({_label(time)})"


def _label(time: Fact) -> str:
    """The time as shown, in days where it is a small part of a year."""
    if time.number > SHORT or time.low is not None:
        return time.shown
    return unit("d").after(shown.number(convert(time.number, unit("yr"), unit("d"))))


def _range(time: Fact) -> tuple[float, float] | None:
    return None if not time.low or time.high is None else (time.low, time.high)
