"""The charts of a cycle: its reservoirs and fluxes, and its stocks through each scenario."""

from __future__ import annotations

from figures import Box, Chart, DataTable, FluxArrow, FluxDiagram

from generator.diagnostics import listed
from generator.kind import Subject, in_sentence
from generator.kinds.cycle.record import CycleRecord, Flux
from generator.kinds.cycle.scenario_charts import stock_curves
from generator.quantities.fact import Fact, Facts
from generator.quantities.units import unit

BOXES = (
    "A box with a full frame is a reservoir; the number in it is its stock. A dashed frame lies outside the budget.",
    "An arrow is a flux; the number beside it says how much flows in a year. Its width is to scale, apart from the smallest fluxes: see the key.",
)
RANGES = "Where a label gives a range, the width of its arrow shows the middle of it."
PEOPLE = "Broken arrows are driven by people, alone or together with nature; whole ones by nature alone."
UNKNOWN = "A hollow arrow is a flux whose rate is not known: it runs that way, but its width says nothing."
HIGH, LOW = ("air", "atmosphere", "sky", "space"), ("brook", "ditch", "river", "sea", "sea_floor", "stream")
"""Ends outside that lie above, and below, all that exchanges with them."""
BALANCE = "To see whether a reservoir grows, add up the arrows that end at it and take off those that start there."


def charts(subject: Subject[CycleRecord]) -> tuple[Chart, ...]:
    """The diagram of the whole cycle, then a chart for each scenario in its order."""
    return (flux_diagram(subject), *(stock_curves(subject, scenario) for scenario in subject.record.scenarios))


def flux_diagram(subject: Subject[CycleRecord]) -> FluxDiagram:
    """The diagram of the whole cycle."""
    record, facts = subject.record, subject.facts
    flow = unit(record.units.flux)
    names = end_names(record)
    table = DataTable(
        caption=f"{record.title}: fluxes",
        columns=("Flux", "From", "To", f"Rate ({flow.shown})", "Cause"),
        rows=tuple((f.label, names[f.start], names[f.end], _rate(f, facts), f.cause) for f in record.fluxes),
    )
    return FluxDiagram(
        name=f"{subject.name}.flux_diagram",
        title=f"{record.title}: reservoirs and fluxes",
        description=_description(record, facts),
        reading=reading(record),
        table=table,
        boxes=(
            *(
                Box(id=r.id, label=r.label, stock_label=facts[f"{r.id}.stock"].shown, outside=False, at=_place(r.at))
                for r in record.reservoirs
            ),
            *(Box(id=end, label=names[end], stock_label="", outside=True, at=None, lies="above" if end in HIGH else "below" if end in LOW else "") for end in record.outside),
        ),
        arrows=tuple(
            FluxArrow(
                id=f.id, start=f.start, end=f.end, rate=f.rate.value,
                label=f"{f.label} {_brief(facts[f'{f.id}.rate'])}", rate_label=_brief(facts[f"{f.id}.rate"]), by_people=f.cause != "nature",
            )
            for f in record.fluxes
        ),
        unit_label=flow.shown,
    )  # fmt: skip


def reading(record: CycleRecord) -> tuple[str, ...]:
    """The steps that teach how to read this diagram: only what it shows."""
    fluxes = record.fluxes
    asides = (
        (RANGES, any(flux.rate.low is not None for flux in fluxes)), (PEOPLE, any(flux.cause != "nature" for flux in fluxes)),
        (UNKNOWN, any(flux.rate.value is None for flux in fluxes)),
    )  # fmt: skip
    return (*BOXES, *(text for text, is_shown in asides if is_shown), BALANCE)


def end_names(record: CycleRecord) -> dict[str, str]:
    """The name of each end of a flux."""
    outside = {end: end.replace("_", " ").capitalize() for end in record.outside}
    return outside | {reservoir.id: reservoir.label for reservoir in record.reservoirs}


def _place(at: tuple[float, float] | None) -> tuple[float, float] | None:
    return None if at is None else (float(at[0]), float(at[1]))


def _brief(rate: Fact) -> str:
    """What stands beside an arrow: the rate without its unit and spread, but a range as a range."""
    return rate.shown_number if rate.low is None else rate.shown_bare


def _rate(flux: Flux, facts: Facts) -> str:
    return facts[f"{flux.id}.rate"].shown_bare


def _description(record: CycleRecord, facts: Facts) -> str:
    """What the diagram shows, in words, with the numbers that decide."""
    names = end_names(record)
    known = [flux for flux in record.fluxes if flux.rate.value is not None]
    stocks = [r for r in record.reservoirs if r.stock.value is not None]
    counts = (_count(len(record.reservoirs), "reservoir", "reservoirs"), _count(len(record.fluxes), "flux", "fluxes"))
    sentences = [f"{' and '.join(counts)}."]
    if stocks:
        largest = max(stocks, key=lambda r: r.stock.value or 0)
        sentences.append(f"The largest stock is that of “{largest.label}” with {facts[f'{largest.id}.stock'].shown}.")
    if known:
        widest = max(known, key=lambda f: f.rate.value or 0)
        ends = f"from {in_sentence(names[widest.start])} to {in_sentence(names[widest.end])}"
        sentences.append(f"The largest flux is {in_sentence(widest.label)} {ends}, {facts[f'{widest.id}.rate'].shown}.")
    people = [in_sentence(flux.label) for flux in record.fluxes if flux.cause == "people"]
    if people:
        sentences.append(f"People drive {listed(people, 'and')}.")
    if len(known) < len(record.fluxes):
        unknown = [in_sentence(flux.label) for flux in record.fluxes if flux.rate.value is None]
        sentences.append(f"No rate is known for {listed(unknown, 'and')}.")
    return " ".join(sentences)


def _count(number: int, one: str, many: str) -> str:
    return f"{number} {one if number == 1 else many}"
