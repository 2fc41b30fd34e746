"""Questions on what a climate diagram shows and hides: statements that hold or fail by the numbers, and the order of the year."""

from __future__ import annotations

import math
from collections.abc import Iterator

from generator.kinds.biome.asked_station import LEAST_SEASON, AskedStation, beside, name, opposite
from generator.kinds.biome.charts import is_southern
from generator.kinds.biome.climate_sums import wettest_share
from generator.quantities import shown
from generator.questions.making import Draft, Sound, Wrong, as_option, choice, drawn, ordering, several
from generator.questions.question import Made, Needs, Rejected
from generator.science.aridity import ARIDITY_CLASSES

HUMID = ARIDITY_CLASSES[-1][1]
WANTED = 2
"""Right statements, and wrong ones at most one more."""
SEASONAL = 0.7
"""Part of the year's precipitation in its wettest six months from which on they plainly bring over two thirds."""
TWICE, HARDLY = 2.2, 1.6
"""Wettest over driest month: well over twice as much, and well under it."""
PLAIN = 1.2
"""How many times as large one amount must be as another to be plainly larger."""
MUCH = 100.0
"""Precipitation [mm] of a driest month that is still a wet one."""
MILD = 12.0
"""Mean [degC] of a coldest month above which nobody thinks of frost."""
LEAST_LIGHT = 1.0
"""Difference [h] of the longest and the shortest mean day that is worth speaking of."""
FEWEST_EVENTS, MOST_EVENTS = 4, 5
_LONGEST = "The days are longest"
LITTLE, PLENTY = 700.0, 500.0
"""Annual precipitation [mm] below which a humid place and above which a dry one are easily misjudged by it."""


def dry_months(asked: AskedStation) -> Made:
    """Only of a single dry season: a list of all months, of none, or of scattered ones is seen through."""
    item, dry = "dry_months", asked.fact("dry_months")
    if _begin(asked.months(item)) is None:
        return Rejected(item, f"by the rule of the diagram there is no single dry season: {dry.shown}")
    frozen, rainless, warmest = (asked.fact(name) for name in ("months_below_freezing", "driest_month", "warmest_month"))
    draft = Draft(
        id=item,
        prompt=f"Which list names all months that are dry at {asked.place} by the rule of the climate diagram (precipitation in mm below twice the temperature in °C)?",
        solution=f"By the rule, {dry.shown}: compare the two lines month by month.",
        hints=(
            "In a dry month the line of precipitation runs below that of temperature.",
            "Find the two places where the lines cross. The dry months are those between them, on the side of the dotted field.",
        ),
    )
    wrong = [
        Wrong(as_option(rainless.shown), *_least_told(asked, rainless.shown)),
        Wrong(as_option(warmest.shown), "clim.desert-hot", _warmest_told(asked)),
        Wrong(as_option(frozen.shown), "clim.frost-is-dry", "These months average below 0 °C."),
    ]
    if is_southern(asked.station):
        wrong.insert(0, Wrong(as_option(shown.months(opposite(*asked.months(item)))), "clim.hemisphere", "These months lie half a year away."))
    else:
        humid = tuple(month for month in range(1, 13) if month not in asked.months(item))
        wrong.append(Wrong(as_option(shown.months(humid)), "clim.dry-reversed", "These are the humid months."))
    said = [w for w in wrong if w.text.casefold() != dry.shown.casefold() and w.text != "No month"]
    return choice(draft, as_option(dry.shown), said[:3], asked.catalogue, fact=dry, salt=asked.subject.id)


def _least_told(asked: AskedStation, months: str) -> tuple[str, str]:
    """The wrong idea, and that least falls then; also that more months are dry, where these are."""
    least = asked.months("driest_month")
    if not set(least) <= set(asked.months("dry_months")):
        return "clim.least-is-dry", "That is when least precipitation falls."
    return "clim.driest-only", f"Least falls then, and {months} {'is' if len(least) == 1 else 'are'} dry, but not alone."


def _warmest_told(asked: AskedStation) -> str:
    more = ", but other months are dry too" if set(asked.months("warmest_month")) <= set(asked.months("dry_months")) else ""
    return f"That is when it is warmest{more}."


def why_dry(asked: AskedStation) -> Made:
    """Only where the total alone would mislead: it is neither little nor much."""
    total, demand, index = (asked.fact(name) for name in ("annual_precip", "potential_evapotranspiration", "aridity_class"))
    if asked.no_balance:
        return Rejected("why_dry", asked.no_balance)
    if not (total.number < LITTLE if index.value == HUMID else total.number > PLENTY):
        return Rejected("why_dry", "its precipitation alone tells how dry it is")
    balance = "less falls" if total.number < demand.number else "no less falls"
    draft = Draft(
        id="why_dry",
        prompt=f"What do you have to compare in order to tell how dry or humid the climate of {asked.place} is for plants?",
        solution=f"Supply stands against demand: {balance} there in a mean year than could evaporate, and the class that follows is {index.shown}.",
        needs=Needs.KNOWLEDGE,
        hints=("Plants lack water where the demand is larger than the supply.", "The supply is what falls. What sets the demand?"),
    )
    wrong = (
        Wrong("What falls in a year with what falls at other places", "clim.rain-alone"),
        Wrong("The temperature of its warmest and of its coldest month", "clim.desert-hot", "That tells how much warmth changes over the year."),
        Wrong("What falls in its driest and in its wettest month", "clim.least-is-dry", "That tells how unevenly precipitation is spread."),
    )
    return choice(draft, "What falls in a year with what could evaporate", wrong, asked.catalogue, salt=asked.subject.id)


def diagram_shows(asked: AskedStation) -> Made:
    """Two statements that the diagram bears out, among others that are wrong or that no diagram of means can show.

    Each is about something else, so that none of them gives another one away.
    """
    item, salt = "diagram_shows", asked.subject.id
    topics = drawn([list(make(asked)) for make in (_warmth_and_rain, _season_of_rain, _driest, _wettest, _spread, _nights, _days_and_years, _growth)], salt, item)
    right = [one for topic in topics for one in topic[:1] if isinstance(one, Sound)][:WANTED]
    wrong = [one for topic in topics if not any(one in right for one in topic) for one in topic if isinstance(one, Wrong)][: WANTED + 1]
    if len(right) < WANTED or len(wrong) < WANTED:
        return Rejected(item, "too little can be said of its year that is plainly right or plainly wrong")
    draft = Draft(
        id=item,
        prompt=f"Which two of these statements about {asked.place} does the climate diagram bear out?",
        solution=" ".join(one.because for one in right),
        hints=(
            "Take one statement at a time, and find the months that it speaks of on both lines.",
            "A diagram of a mean year shows monthly means and totals. Single days and single years are hidden in them.",
        ),
    )
    return several(draft, right, wrong, asked.catalogue, salt=salt)


def _warmth_and_rain(asked: AskedStation) -> Iterator[Sound | Wrong]:
    warm, wet = asked.one_month("warmest_month"), asked.one_month("wettest_month")
    if warm is None or wet is None or asked.is_steady:
        return
    text = "Most precipitation falls in the month that is warmest"
    if wet == warm:
        yield Sound(text, f"In {name(wet)} both lines are highest.")
    else:
        yield Wrong(text, "clim.warm-is-wet", f"It is warmest in {name(warm)}, and most falls in {name(wet)}.")


def _season_of_rain(asked: AskedStation) -> Iterator[Sound | Wrong]:
    warm, cold = asked.months("warmest_month")[0], asked.months("coldest_month")[0]
    if asked.is_steady:
        return
    summer, winter = asked.precip(warm), asked.precip(cold)
    told = f"{asked.told('monthly_precip', warm)} falls in {name(warm)}, {asked.told('monthly_precip', cold)} in {name(cold)}."
    text = f"Less precipitation falls in {name(warm)} than in {name(cold)}"
    if summer * PLAIN < winter:
        yield Sound(text, told)
    elif summer > PLAIN * winter:
        yield Wrong(text, "clim.warm-is-dry", told)


def _driest(asked: AskedStation) -> Iterator[Sound | Wrong]:
    least, dry = asked.months("driest_month"), asked.months("dry_months")
    is_dry = set(least) <= set(dry)
    if len(least) == len(asked.year) or asked.months("wettest_month")[0] in dry or not (is_dry or set(least).isdisjoint(dry)):
        return
    month, which = least[0], "month with least precipitation is" if len(least) == 1 else "months with least precipitation are"
    text = f"The {which} dry: the line runs below that of temperature"
    each = f"{asked.fact('driest_month').shown} have {asked.told('monthly_precip', month)} each: less than twice as many millimetres as degrees."
    yield Sound(text, _compared(asked, month) if len(least) == 1 else each) if is_dry else Wrong(text, "clim.least-is-dry", _compared(asked, month))


def _wettest(asked: AskedStation) -> Iterator[Sound | Wrong]:
    month = asked.months("wettest_month")[0]
    if month in asked.months("dry_months"):
        yield Sound("Even the month with most precipitation is dry: the line runs below that of temperature", _compared(asked, month))


def _compared(asked: AskedStation, month: int) -> str:
    """Its precipitation with its temperature, by the rule of the diagram."""
    told = f"{name(month)} has {asked.told('monthly_precip', month)} at {asked.told('monthly_mean_temp', month)}"
    if asked.temp(month) <= 0:
        return f"{told}: no month of frost is dry by this rule."
    return f"{told}: {'less' if month in asked.months('dry_months') else 'not less'} than twice as many millimetres as degrees."


def _spread(asked: AskedStation) -> Iterator[Sound | Wrong]:
    """How unevenly the year's precipitation comes, at its plainest."""
    wet, dry = asked.months("wettest_month")[0], asked.months("driest_month")[0]
    most, least = asked.precip(wet), asked.precip(dry)
    told = f"{asked.told('monthly_precip', wet)} falls in {name(wet)}, {asked.told('monthly_precip', dry)} in {name(dry)}."
    start, half = max(((month, _half(asked, month)) for month in range(1, 13)), key=lambda one: one[1])
    total = asked.fact("annual_precip")
    if half > SEASONAL * total.number:
        season = f"from {name(start)} to {name(start + 5)}"
        halves = f"Added up, the six months {season} bring over two thirds of the {total.shown} of the year."
        yield Sound(f"Over two thirds of the year's precipitation falls {season}", halves)
        yield Wrong(f"About half of the year's precipitation falls {season}", "clim.even-rain", halves)
    elif least > MUCH:
        yield Sound(f"Each month brings more than {MUCH:g} mm", told)
    elif most > TWICE * least > 0:
        yield Sound("The month with most precipitation brings over twice as much as the one with least", told)
        yield Wrong("Precipitation is spread evenly over the months", "clim.even-rain", told)
    elif least < most < HARDLY * least:
        yield Sound("The month with least precipitation brings over half as much as the one with most", told)


def _half(asked: AskedStation, start: int) -> float:
    """Precipitation [mm] of six months from this one on."""
    return math.fsum(asked.precip((start + step - 1) % 12 + 1) for step in range(6))


def _nights(asked: AskedStation) -> Iterator[Sound | Wrong]:
    cold, warm = asked.months("coldest_month")[0], asked.months("warmest_month")[0]
    if asked.is_steady:
        ends = f"They run from {asked.told('monthly_mean_temp', cold)} to {asked.told('monthly_mean_temp', warm)}."
        yield Sound(f"The monthly means of temperature lie within {LEAST_SEASON:g} °C of each other", ends)
    if 0 < asked.temp(cold) <= MILD:
        yield Wrong(f"In {name(cold)} it stays above 0 °C at night", "clim.mean-hides", "The diagram shows the mean of days and nights.")


def _days_and_years(asked: AskedStation) -> Iterator[Sound | Wrong]:
    wet = asked.months("wettest_month")[0]
    if asked.precip(wet) > 0:
        amount = asked.told("monthly_precip", wet)
        yield drawn(
            (
                Wrong(f"Next year {amount} will fall in {name(wet)}", "clim.one-year", "The diagram shows the mean of many years."),
                Wrong(f"The rainiest day of the year falls in {name(wet)}", "clim.month-hides-days", "The diagram shows no single days."),
                Wrong(f"{name(wet)} has more days with precipitation than any other month", "clim.month-hides-days", "The diagram shows how much falls, and not on how many days."),
            ),
            asked.subject.id, "hidden",
        )[0]  # fmt: skip


def _growth(asked: AskedStation) -> Iterator[Sound | Wrong]:
    """The months warm enough for growth, told from those without frost."""
    growing, thawed = asked.months("growing_season_months"), 12 - len(asked.months("months_below_freezing"))
    if not 0 < len(growing) < thawed < 12:
        return
    told = f"{len(growing)} months reach 5 °C, {thawed} are at 0 °C or above."
    yield Sound(f"A mean of 5 °C, enough for most plants to grow, is reached in {len(growing)} months", told)
    yield Wrong(f"A mean of 5 °C, enough for most plants to grow, is reached in {thawed} months", "clim.thaw-is-growth", told)


def year_order(asked: AskedStation) -> Made:
    """What the diagram shows, one after the other: only of months that stand out by themselves, and all different ones."""
    item = "year_order"
    dated: dict[int, str] = {}
    for text, month in drawn([one for one in _events(asked) if one[1] is not None], asked.subject.id, item):
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


def _events(asked: AskedStation) -> Iterator[tuple[str, int | None]]:
    """Turning points of the year; the month is none where it does not stand out."""
    dry, growing = asked.months("dry_months"), asked.months("growing_season_months")
    warm, wet = asked.one_month("warmest_month"), asked.one_month("wettest_month")
    if warm == wet and not asked.is_steady:
        yield "It is warmest, and most precipitation falls", warm
    elif isinstance(wettest_share(asked), Rejected):  # its prompt names the month
        yield "Most precipitation falls", wet
    if not asked.is_steady:
        yield "It is warmest", None if warm == wet else warm
        yield "It is coldest", asked.one_month("coldest_month")
    yield "Least precipitation falls", asked.one_month("driest_month")
    yield "The dry months begin, by the rule of the diagram", _begin(dry)
    yield "The first humid month after the dry ones", _after(dry)
    yield "The growing season begins, with a mean of 5 °C or more", _begin(growing)
    yield "The growing season is over: the mean is below 5 °C again", _after(growing)
    yield _LONGEST, _longest_day(asked)


def _longest_day(asked: AskedStation) -> int | None:
    hours = asked.fact("monthly_day_length")
    if not hours.is_series or max(hours.series) - min(hours.series) < LEAST_LIGHT:
        return None
    longest = [month for month in range(1, 13) if hours.shown_members[month - 1] == hours.shown_members[hours.series.index(max(hours.series))]]
    return longest[0] if len(longest) == 1 else None


def _begin(months: tuple[int, ...]) -> int | None:
    """The first month of a single run; none where all months belong to it, or none, or there are two runs."""
    found = [month for month in months if beside(month)[0] not in months]
    return found[0] if len(found) == 1 else None


def _after(months: tuple[int, ...]) -> int | None:
    found = [beside(month)[1] for month in months if beside(month)[1] not in months]
    return found[0] if len(found) == 1 else None


def water_order(asked: AskedStation) -> Made:
    """The amounts of a year's water from the largest on; only those that are plainly apart."""
    item = "water_order"
    if asked.no_balance:
        return Rejected(item, asked.no_balance)
    named = {
        "Precipitation": "annual_precip", "What could evaporate": "potential_evapotranspiration",
        "What does evaporate": "actual_evapotranspiration", "What runs off or seeps away": "water_surplus", "What plants lack": "water_deficit",
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
        hints=("More cannot evaporate than could, nor run off than falls.", "Look the amounts up among the numbers of this page: potential and actual evapotranspiration, surplus and deficit."),
    )
    return ordering(
        draft, texts, starts_with="Which amount is the largest of them all?", salt=asked.subject.id,
        leads_on=lambda text: f"This is {asked.fact(named[text]).shown}. Which of the others comes nearest below it?",
    )  # fmt: skip
