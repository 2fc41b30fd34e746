"""The charts of an investigation: readings with their means and error bars, rates over depth, biomass in time."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import cycle

from figures import BarredMean, BarredSeries, Chart, DataTable, ErrorBarChart, ProductionProfile

from generator.kind import Subject, in_sentence
from generator.kinds.productivity.bottle_facts import COLUMN, ERRORS
from generator.kinds.productivity.harvest_facts import GRAZING
from generator.kinds.productivity.record import Bottles, Depth, Harvest, Plot, ProductivityRecord
from generator.quantities.fact import Fact
from generator.science.replicates import TIMES_THE_ERROR

BARS = "Bars: mean ± two standard errors. Small dots: single readings."
BARS_OF_RATES = "Bars: ± two standard errors."
NO_BARS = "No bars: with a single reading nobody can say how far to trust it."
OXYGEN_READING = (
    "Pick a depth at the bottom and look at its two marks: they show by how much the oxygen changed since the start, the line of 0.",
    "The light bottles: above 0 is a gain, below 0 a loss. Divided by the hours this is net production.",
    "The dark bottles lie below 0, for oxygen is only used there. Divided by the hours their loss is respiration.",
    "The distance from the dark bottles up to the light ones, divided by the hours, is gross production.",
    "Look at the bars: a mean whose bar reaches the line of 0 cannot be told apart from no change at all.",
    "Look at the small dots: they are the single bottles, and show how far these differ among themselves.",
)
CROSSING = "Find where these two lines cross: above it a day leaves a gain, below it a loss. That is the compensation depth."
PROFILE_READING = (
    "Start at the top, the surface of the water, and follow one line down: it shows how much is made, used or left over in a day at each depth.",
    "Compare the lines of gross production and of respiration: the distance between them is net production.",
    CROSSING,
    "Net production is drawn too: right of the line of 0 it is a gain, left of it, on the hatched side, a loss.",
    "Look at the bars of net production: where one reaches the line of 0, gain and loss cannot be told apart.",
)
RATES_READING = (
    "Compare the heights: gross production is what is made, respiration what is used, and net production what is left over.",
    "Check that net production and respiration together reach as high as gross production.",
    "Look at the bars: a mean whose bar reaches 0 cannot be told apart from zero.",
)
BIOMASS_READING = (
    "Go from left to right: each mark is the mean of all quadrats of one harvest, on one square metre.",
    "The steeper the line between two marks, the larger the net production between them.",
    "Look at the bars and the small dots: the dots are single quadrats, the bars say how well their mean is known.",
)
COMPARED = "Compare the two lines: what the one plot gained more than the other is what grazers ate."
SORTS = (("light", "light bottles", "soil", "diamond"), ("dark", "dark bottles", "ink", "square"))
RATES = (
    ("gross_production", "Gross production", "plant", "circle"), ("respiration", "Respiration", "heat", "square"),
    ("net_production", "Net production", "animal", "diamond"),
)  # fmt: skip
PLOTS = (("plant", "circle"), ("soil", "square"), ("water", "diamond"), ("heat", "open circle"), ("animal", "open square"), ("ink", "open diamond"))


def charts(subject: Subject[ProductivityRecord]) -> tuple[Chart, ...]:
    """Two charts of bottles; one of harvests."""
    return tuple(_charts(subject))


def _charts(subject: Subject[ProductivityRecord]) -> Iterator[Chart]:
    bottles, harvest = subject.record.bottles, subject.record.harvest
    if bottles:
        yield _readings(subject, bottles)
        yield _profile(subject, bottles) if len(bottles.depths) > 1 else _rates(subject, bottles.depths[0])
    if harvest:
        yield _biomass(subject, harvest)


def _mean(at: float, mean: Fact, error: Fact, readings: Sequence[float] = ()) -> BarredMean:
    half = TIMES_THE_ERROR * error.number if error.is_number else None
    return BarredMean(at, mean.number, half, tuple(map(float, readings)))


def _bars(errors: Sequence[Fact], words: str) -> str:
    return words if any(error.is_number for error in errors) else NO_BARS


def _readings(subject: Subject[ProductivityRecord], bottles: Bottles) -> ErrorBarChart:
    """What the oxygen of light and dark bottles changed by at each depth."""
    facts, depths = subject.facts, bottles.depths
    shown_depth = {depth.id: facts[f"{depth.id}.depth"].shown for depth in depths}
    start = {depth.id: facts[f"{depth.id}.initial_oxygen"].number for depth in depths}
    changes = ((depth, sort, label) for depth in depths for sort, label, *_ in SORTS)
    return ErrorBarChart(
        name=f"{subject.name}.readings",
        title=f"{subject.record.title}: change of oxygen since the start",
        description=" ".join(_of_bottles(subject, depth) for depth in depths),
        reading=OXYGEN_READING,
        table=DataTable(
            caption="Change of oxygen in the bottles", columns=("Depth", "Bottles", "Change (mg L⁻¹)", "Standard error (mg L⁻¹)"),
            rows=tuple(
                (shown_depth[depth.id], label, facts[f"{depth.id}.{sort}_change"].shown_number, facts[f"{depth.id}.{sort}_change_error"].shown_number)
                for depth, sort, label in changes
            ),
        ),
        quantity="Change of dissolved oxygen since the start, mg L⁻¹",
        across="Depth at which the bottles hung",
        places=tuple((facts[f"{depth.id}.depth"].number, shown_depth[depth.id]) for depth in depths),
        to_scale=True,
        series=tuple(
            BarredSeries(
                label=label, role=role, mark=mark,
                means=tuple(
                    _mean(
                        facts[f"{depth.id}.depth"].number, facts[f"{depth.id}.{sort}_change"], facts[f"{depth.id}.{sort}_change_error"],
                        [reading - start[depth.id] for reading in getattr(depth, sort)],
                    )
                    for depth in depths
                ),
            )
            for sort, label, role, mark in SORTS
        ),
        joined=False,
        bars=_bars([facts[f"{depth.id}.{sort}_change_error"] for depth in depths for sort, *_ in SORTS], BARS),
    )  # fmt: skip


def _of_bottles(subject: Subject[ProductivityRecord], depth: Depth) -> str:
    light, dark = (subject.facts[f"{depth.id}.{sort}_change"].shown_exactly for sort, *_ in SORTS)
    return f"{depth.label}: {light} in the light, {dark} in the dark."


def _profile(subject: Subject[ProductivityRecord], bottles: Bottles) -> ProductionProfile:
    """What a day makes, uses and leaves over at each depth."""
    facts = subject.facts
    crossing = facts[f"{COLUMN}.compensation_depth"]
    met = f"As much is made as used at {crossing.shown}, the compensation depth."
    if not crossing.is_number:
        met = f"The compensation depth is {crossing.shown}."
    rows = tuple(
        (facts[f"{depth.id}.depth"].shown_number, *(facts[f"{depth.id}.daily_{rate}"].shown_bare for rate, *_ in RATES)) for depth in bottles.depths
    )
    ends = (bottles.depths[0], bottles.depths[-1])
    at = "; at ".join(
        f"{facts[f'{depth.id}.depth'].shown}, {facts[f'{depth.id}.daily_gross_production'].shown_exactly} are made "
        f"and {facts[f'{depth.id}.daily_respiration'].shown_exactly} used"
        for depth in ends
    )
    return ProductionProfile(
        name=f"{subject.name}.profile",
        title=f"{subject.record.title}: production of a day over depth",
        description=f"At {at}. {met}",
        reading=tuple(step for step in PROFILE_READING if step is not CROSSING or crossing.is_number),
        table=DataTable(
            caption="Oxygen made, used and left over in a day, with standard errors",
            columns=("Depth (m)", *(f"{label} (mg L⁻¹ d⁻¹)" for _, label, *_ in RATES)), rows=rows,
        ),
        quantity="Oxygen of a day and a night, mg L⁻¹ d⁻¹",
        series=tuple(
            BarredSeries(
                label=label, role=role, mark=mark,
                means=tuple(
                    _mean(facts[f"{depth.id}.depth"].number, facts[f"{depth.id}.daily_{rate}"], facts[f"{depth.id}.daily_{ERRORS[rate]}"])
                    for depth in bottles.depths
                ),
            )
            for rate, label, role, mark in RATES
        ),
        compensation_m=crossing.number if crossing.is_number else None,
        compensation_label=crossing.shown if crossing.is_number else "",
        bars=_bars([facts[f"{depth.id}.daily_{ERRORS[rate]}"] for depth in bottles.depths for rate, *_ in RATES], BARS_OF_RATES),
    )  # fmt: skip


def _rates(subject: Subject[ProductivityRecord], depth: Depth) -> ErrorBarChart:
    """Gross production, respiration and net production per hour, at the only depth."""
    rates = [subject.facts[f"{depth.id}.{rate}"] for rate, *_ in RATES]
    errors = [subject.facts[f"{depth.id}.{ERRORS[rate]}"] for rate, *_ in RATES]
    return ErrorBarChart(
        name=f"{subject.name}.rates",
        title=f"{subject.record.title}: production and respiration per hour",
        description=" ".join(f"{label}: {fact.shown}." for (_, label, *_), fact in zip(RATES, rates, strict=True)),
        reading=RATES_READING,
        table=DataTable(
            caption="Rates per hour", columns=("Rate", "Oxygen (mg L⁻¹ h⁻¹)", "Standard error"),
            rows=tuple((label, fact.shown_number, error.shown_number) for (_, label, *_), fact, error in zip(RATES, rates, errors, strict=True)),
        ),
        quantity="Oxygen in an hour, mg L⁻¹ h⁻¹",
        across=depth.label,
        places=tuple((float(number), label) for number, (_, label, *_) in enumerate(RATES)),
        to_scale=False,
        series=tuple(
            BarredSeries(label=label, role=role, mark=mark, means=(_mean(number, fact, error),))
            for number, ((_, label, role, mark), fact, error) in enumerate(zip(RATES, rates, errors, strict=True))
        ),
        joined=False,
        bars=_bars(errors, BARS_OF_RATES),
    )  # fmt: skip


def _biomass(subject: Subject[ProductivityRecord], harvest: Harvest) -> ErrorBarChart:
    """Biomass of each plot at each harvest."""
    facts = subject.facts
    area = facts["quadrat_area"].number
    cuts = [(plot, cut) for plot in harvest.plots for cut in plot.harvests]
    places = {float(cut.day): cut.label for _, cut in reversed(cuts)}
    series = tuple(
        BarredSeries(
            label=plot.label, role=role, mark=mark,
            means=tuple(
                _mean(
                    float(cut.day), facts[f"{plot.id}.biomass_{cut.id}"], facts[f"{plot.id}.area_error_{cut.id}"],
                    [mass / area for mass in cut.dry_mass],
                )
                for cut in plot.harvests
            ),
        )
        for plot, (role, mark) in zip(harvest.plots, cycle(PLOTS), strict=False)
    )  # fmt: skip
    return ErrorBarChart(
        name=f"{subject.name}.biomass",
        title=f"{subject.record.title}: biomass above ground",
        description=" ".join(_of_plot(subject, plot) for plot in harvest.plots),
        reading=(*BIOMASS_READING, *([COMPARED] if f"{GRAZING}.eaten" in facts else [])),
        table=DataTable(
            caption="Biomass by harvest", columns=("Harvest", "Plot", "Biomass (g m⁻²)", "Standard error (g m⁻²)"),
            rows=tuple(
                (cut.label, plot.label, facts[f"{plot.id}.biomass_{cut.id}"].shown_number, facts[f"{plot.id}.area_error_{cut.id}"].shown_number)
                for plot, cut in cuts
            ),
        ),
        quantity="Biomass above ground, g m⁻² of dry matter",
        across="Day of harvest",
        places=tuple(sorted(places.items())),
        to_scale=True,
        series=series,
        joined=True,
        bars=_bars([facts[f"{plot.id}.area_error_{cut.id}"] for plot, cut in cuts], BARS),
    )  # fmt: skip


def _of_plot(subject: Subject[ProductivityRecord], plot: Plot) -> str:
    first, last = plot.harvests[0], plot.harvests[-1]
    start, end = (subject.facts[f"{plot.id}.biomass_{cut.id}"].shown for cut in (first, last))
    net = subject.facts[f"{plot.id}.net_production"].shown
    return f"{plot.label}: from {start} ({in_sentence(first.label)}) to {end} ({in_sentence(last.label)}), a net production of {net}."
