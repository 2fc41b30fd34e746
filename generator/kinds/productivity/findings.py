"""What contradicts itself in an investigation of production, and what a careful reader would question."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from generator.diagnostics import Severity
from generator.kinds.productivity.bottle_facts import COLUMN
from generator.kinds.productivity.harvest_facts import GRAZING
from generator.kinds.productivity.record import Bottles, Harvest, Plot, ProductivityRecord
from generator.quantities import shown
from generator.quantities.fact import Fact, Facts
from generator.quantities.units import convert, unit
from generator.records.field_path import FieldPath
from generator.records.finding import Finding
from generator.science.replicates import told_apart

WIDE_OXYGEN, WIDE_MASS = 0.2, 1.0
"""Standard deviation over mean beyond which a slip of the pen is likelier than the spread of bottles, or of quadrats."""


def findings(record: ProductivityRecord) -> Iterator[Finding]:
    """Contradictions inside the record."""
    given = [name for name in ("bottles", "harvest") if getattr(record, name) is not None]
    if len(given) != 1:
        yield Finding(
            path=(), expected="bottles or harvest", found="both" if given else "neither",
            mend="keep one; the other method needs a record of its own" if given else "add `bottles:` or `harvest:` with the readings",
        )  # fmt: skip
    if record.bottles:
        yield from _depths(record.bottles)
    if record.harvest:
        yield from _plots(record.harvest)


def _depths(series: Bottles) -> Iterator[Finding]:
    for index, (above, below) in enumerate(pairwise(series.depths), start=1):
        if below.depth <= above.depth:
            yield Finding(
                path=("bottles", "depths", index, "depth"), expected=f"a depth below {shown.written(above.depth.text)} m",
                found=f"{shown.written(below.depth.text)} m", mend="list the depths from the surface down, each of them once",
            )  # fmt: skip
    yield from _reserved(("bottles", "depths"), [depth.id for depth in series.depths], COLUMN)


def _plots(series: Harvest) -> Iterator[Finding]:
    path: FieldPath = ("harvest", "plots")
    for index, plot in enumerate(series.plots):
        yield from _days((*path, index), plot)
    for sort in ("kept_out", "open"):
        same = [index for index, plot in enumerate(series.plots) if plot.grazing == sort]
        for index in same[1:]:
            yield Finding(
                path=(*path, index, "grazing"), expected=f"one plot with `grazing: {sort}`", found="another one",
                mend="leave `grazing:` out here: what grazers ate is worked out from one pair of plots",
            )  # fmt: skip
    yield from _reserved(path, [plot.id for plot in series.plots], GRAZING)


def _days(path: FieldPath, plot: Plot) -> Iterator[Finding]:
    if len(plot.harvests) < 2:
        yield Finding(
            path=(*path, "harvests"), expected="two harvests or more", found="one",
            mend="add a later one: biomass alone is no production, which is a change per time",
        )  # fmt: skip
    for index, (earlier, later) in enumerate(pairwise(plot.harvests), start=1):
        if later.day <= earlier.day:
            yield Finding(
                path=(*path, "harvests", index, "day"), expected=f"a day after {shown.written(earlier.day.text)}",
                found=shown.written(later.day.text), mend="list the harvests in order; without time between them there is no rate",
            )  # fmt: skip


def _reserved(path: FieldPath, ids: Sequence[str], name: str) -> Iterator[Finding]:
    for index, one in enumerate(ids):
        if one == name:
            mend = "rename it: facts of the whole have that name"
            yield Finding(path=(*path, index, "id"), expected=f"another id than {name}", found=f'"{one}"', mend=mend)


def doubts(record: ProductivityRecord, facts: Facts) -> Iterator[Finding]:
    """Readings that cannot be right, single readings, and differences that the spread hides."""
    if record.bottles:
        yield from _bottle_doubts(record, record.bottles, facts)
    if record.harvest:
        for index, plot in enumerate(record.harvest.plots):
            yield from _plot_doubts(("harvest", "plots", index), plot, facts)
        eaten = facts.get(f"{GRAZING}.eaten")
        if eaten is not None and eaten.is_number:
            if eaten.number < 0:
                yield _warning(
                    ("harvest", "plots"), "grazed_plot_grew_more", "no more growth where grazers could feed than where they were kept out", eaten.shown,
                    "check which plot is which; grazed plants can also grow again faster, or the net took their light",
                )  # fmt: skip
            yield from _not_told_apart(("harvest", "plots"), eaten, facts[f"{GRAZING}.eaten_error"])


def _bottle_doubts(record: ProductivityRecord, series: Bottles, facts: Facts) -> Iterator[Finding]:
    hours = convert(float(series.incubation), unit(record.units.incubation), unit("h"))
    if hours > series.light_hours:
        yield _warning(
            ("bottles", "incubation"), "incubation_into_the_night", f"at most the hours of light, {shown.written(series.light_hours.text)} h",
            f"{shown.number(hours)} h", "check both; bottles that hang into the night mix light and dark, so production per hour comes out too small",
        )  # fmt: skip
    for index, depth in enumerate(series.depths):
        path: FieldPath = ("bottles", "depths", index)
        oxygen = {sort: facts[f"{depth.id}.{sort}_oxygen"] for sort in ("initial", "light", "dark")}
        for sort in oxygen:
            readings = getattr(depth, sort)
            yield from _replicates((*path, sort), readings, oxygen[sort], facts[f"{depth.id}.{sort}_spread"], WIDE_OXYGEN)
        for rule, at_least, because in (
            ("dark_above_initial", "initial", "oxygen is not made in the dark: light got in, or a reading is wrong"),
            ("light_below_dark", "light", "light takes no oxygen away: bottles were exchanged, or a reading is wrong"),
        ):
            if oxygen["dark"].number > oxygen[at_least].number:
                most = f"dark bottles no higher than the {at_least} ones, {oxygen[at_least].shown}"
                yield _warning((*path, "dark"), rule, most, oxygen["dark"].shown, because)
        yield from _not_told_apart(path, facts[f"{depth.id}.net_production"], facts[f"{depth.id}.net_error"])


def _plot_doubts(path: FieldPath, plot: Plot, facts: Facts) -> Iterator[Finding]:
    for index, cut in enumerate(plot.harvests):
        mean, spread = facts[f"{plot.id}.dry_mass_{cut.id}"], facts[f"{plot.id}.spread_{cut.id}"]
        yield from _replicates((*path, "harvests", index, "dry_mass"), cut.dry_mass, mean, spread, WIDE_MASS)
    biomass = [facts[f"{plot.id}.biomass_{cut.id}"] for cut in plot.harvests]
    highest = max(biomass, key=lambda fact: fact.number)
    if highest.number > biomass[-1].number and highest is not biomass[0]:
        yield _warning(
            (*path, "harvests", len(biomass) - 1), "past_the_peak", f"the last harvest at the peak, {highest.shown}", biomass[-1].shown,
            "end the series at the peak: afterwards more dies than grows, and production comes out too small",
        )  # fmt: skip
    yield from _not_told_apart(path, facts[f"{plot.id}.net_production"], facts[f"{plot.id}.net_error"])


def _replicates(path: FieldPath, readings: Sequence[float], mean: Fact, spread: Fact, wide: float) -> Iterator[Finding]:
    if len(readings) == 1:
        because = "repeat it: a single reading has no spread, so nobody can say how far to trust it"
        yield _warning(path, "single_reading", "two readings or more", "one", because)
    elif spread.number > wide * mean.number:
        yield _warning(
            path, "wide_spread", f"readings whose standard deviation is at most {wide:g} of their mean",
            f"{spread.shown_exactly} around {mean.shown_exactly}",
            "check the digits of each reading; or accept the warning with what is known of it",
        )  # fmt: skip


def _not_told_apart(path: FieldPath, difference: Fact, error: Fact) -> Iterator[Finding]:
    if difference.is_number and error.is_number and not told_apart(difference.number, error.number):
        yield _warning(
            path, "not_told_apart", f"{difference.name.partition(',')[0].lower()} of more than twice its standard error, {error.shown_exactly}",
            difference.shown_exactly, "no mistake, but say so: chance alone gives as much; more replicates or more time would show more",
        )  # fmt: skip


def _warning(path: FieldPath, rule: str, expected: str, found: str, mend: str) -> Finding:
    return Finding(path=path, rule=rule, expected=expected, found=found, mend=mend, severity=Severity.WARNING)
