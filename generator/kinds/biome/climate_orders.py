"""Orders: the turning points of a year one after the other, and the amounts of its water from the largest on."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from generator.kinds.biome.asked_station import AskedStation, after, begin, name
from generator.kinds.biome.climate_changes import fastest_change
from generator.kinds.biome.climate_statements import PLAIN
from generator.questions.making import Draft, as_option, drawn, ordering
from generator.questions.question import Made, Needs, Rejected

FEWEST_EVENTS, MOST_EVENTS = 4, 5
FEWEST_TELLING, MOST_TELLING = 2, 3
"""Turning points that only the diagram dates: with fewer the order can be told without it, and the seasons are its frame."""
_ASKED_BY = {"fastest_warming": "The steepest", "growing_begins": "The growing season begins", "driest_soil": "The least precipitation"}
"""Questions that date a turning point, and how its text begins."""
LEAST_LIGHT = 1.0
"""Difference [h] of the longest and the shortest mean day that is worth speaking of."""
_LONGEST = "The days are longest"


def year_order(asked: AskedStation, others: Collection[str] = ()) -> Made:
    """What the diagram shows, one after the other: only of months that stand out by themselves, and all different ones.

    What one of the `others`, ids of questions on the same station, asks for or tells is left out.
    """
    item = "year_order"
    told = tuple(beginning for name, beginning in _ASKED_BY.items() if name in others)
    dates, frame = (
        drawn([one for one in events(asked) if one[1] is not None and not one[0].startswith(told)], asked.subject.id, item) for events in (telling, seasonal)
    )
    dated: dict[int, str] = {}
    for text, month in dates:
        if len(dated) < MOST_TELLING:
            dated.setdefault(month, text)
    if len(dated) < FEWEST_TELLING:
        return Rejected(item, "the order of its year can be told without the diagram")
    for text, month in frame:
        dated.setdefault(month, text)
    first = asked.year[0]
    months = sorted(list(dated)[:MOST_EVENTS], key=lambda month: (month - first) % 12)
    if len(months) < FEWEST_EVENTS:
        return Rejected(item, "too few months of its year stand out by themselves")
    at = {dated[month]: month for month in months}
    draft = Draft(
        id=item,
        prompt=f"Put these turning points of the mean year at {asked.place} in order, from {name(first)} on. Each falls in a different month.",
        solution="; ".join(f"{name(month)}: {dated[month][:1].lower()}{dated[month][1:]}" for month in months) + ".",
        hints=(
            "Date each of them first, in the tables of this page: temperature and precipitation under the diagram, the length of the day among the numbers." if _LONGEST in at else "Date each of them first, in the table under the diagram.",
            f"The first of them comes in {name(months[0])}, the last in {name(months[-1])}.",
        ),
    )
    return ordering(
        draft, [dated[month] for month in months], starts_with=f"Go on from {name(first)}: which of them do you meet first?",
        leads_on=lambda text: f"This comes in {name(at[text])}. Which of the others comes soonest after it?", salt=asked.subject.id,
    )  # fmt: skip


def telling(asked: AskedStation) -> Iterator[tuple[str, int | None]]:
    """Turning points that only the diagram dates; the month is none where it does not stand out."""
    dry, fastest = asked.months("dry_months"), fastest_change(asked)
    warm, wet = asked.one_month("warmest_month"), asked.one_month("wettest_month")
    yield "The most precipitation falls", None if warm == wet and not asked.is_steady else wet
    yield "The least precipitation falls", asked.one_month("driest_month")
    yield "The dry months begin, by the rule of the diagram", begin(dry)
    yield "The first humid month after the dry ones", after(dry)
    if fastest is not None:
        yield f"The steepest {fastest[0]} of temperature begins", fastest[1]


def seasonal(asked: AskedStation) -> Iterator[tuple[str, int | None]]:
    """Turning points of the warmth and the light, whose order everybody knows who knows the seasons."""
    growing, frozen = asked.months("growing_season_months"), asked.months("months_below_freezing")
    warm, wet = asked.one_month("warmest_month"), asked.one_month("wettest_month")
    if not asked.is_steady:
        yield "It is warmest, and the most precipitation falls" if warm == wet else "It is warmest", warm
        yield "It is coldest", asked.one_month("coldest_month")
    yield "The growing season begins, with a mean of 5 °C or more", begin(growing)
    yield "The growing season is over: the mean is below 5 °C again", after(growing)
    yield "The first month with a mean of 0 °C or more", after(frozen)
    yield "The first month with a mean below 0 °C again", begin(frozen)
    yield _LONGEST, _longest_day(asked)


def _longest_day(asked: AskedStation) -> int | None:
    hours = asked.fact("monthly_day_length")
    if not hours.is_series or max(hours.series) - min(hours.series) < LEAST_LIGHT:
        return None
    longest = [month for month in range(1, 13) if hours.shown_members[month - 1] == hours.shown_members[hours.series.index(max(hours.series))]]
    return longest[0] if len(longest) == 1 else None


def water_order(asked: AskedStation) -> Made:
    """The amounts of a year's water from the largest on; only those that are plainly apart."""
    item = "water_order"
    if asked.no_balance:
        return Rejected(item, asked.no_balance)
    named = {
        "Precipitation": "annual_precip", "What could evaporate": "potential_evapotranspiration",
        "What does evaporate": "actual_evapotranspiration", "What runs off or seeps away": "water_surplus", "What plants could use but do not get": "water_deficit",
    }  # fmt: skip
    sizes = sorted(((asked.fact(fact).number, text) for text, fact in named.items()), key=lambda one: -one[0])
    kept = sizes[:1]
    for size, text in sizes[1:]:
        if kept[-1][0] > PLAIN * size:
            kept.append((size, text))
    if len(kept) < FEWEST_EVENTS:
        return Rejected(item, "too few amounts of its water are plainly apart")
    texts = [text for _, text in kept]
    draft = Draft(
        id=item, needs=Needs.BOTH,
        prompt=f"Put these amounts of water of a mean year at {asked.place} in order, the largest first.",
        solution=f"{as_option(' > '.join(f'{text[:1].lower()}{text[1:]} ({asked.fact(named[text]).shown})' for text in texts))}.",
        hints=("No more can run off than falls.", "Look the amounts up among the numbers of this page: potential and actual evapotranspiration, surplus and deficit."),
    )
    return ordering(
        draft, texts, starts_with="Which amount is the largest of them all?", salt=asked.subject.id,
        leads_on=lambda text: f"This is {asked.fact(named[text]).shown}. Which of the others comes nearest below it?",
    )  # fmt: skip
