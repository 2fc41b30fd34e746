"""Questions on what a climate diagram shows and hides: dry months, and statements that hold or fail by the numbers."""

from __future__ import annotations

import math
from collections.abc import Iterator

from generator.kinds.biome.asked_station import AskedStation, begin, name, opposite
from generator.kinds.biome.charts import is_southern
from generator.quantities import shown
from generator.questions.making import Draft, Sound, Wrong, as_option, choice, drawn, several
from generator.questions.question import Made, Needs, Rejected
from generator.science.aridity import ARIDITY_CLASSES

HUMID = ARIDITY_CLASSES[-1][1]
WANTED = 2
"""Right statements, and wrong ones at most one more."""
SEASONAL = 0.7
"""Part of the year's precipitation in its wettest six months from which on they plainly bring over two thirds."""
MUCH_OF_IT = (("nine tenths", 0.92), ("three quarters", 0.78), ("two thirds", SEASONAL))
"""What those months plainly bring more than, in words, and from which part on."""
TWICE, HARDLY = 2.2, 1.6
"""Wettest over driest month: well over twice as much, and well under it."""
PLAIN = 1.2
"""How many times as large one amount must be as another to be plainly larger."""
MUCH = 100.0
"""Precipitation [mm] of a driest month that is still a wet one."""
MILD = 12.0
"""Mean [degC] of a coldest month above which nobody thinks of frost."""
_BELOW = "the precipitation line runs below the temperature line"
LITTLE, PLENTY = 700.0, 500.0
"""Annual precipitation [mm] below which a humid place and above which a dry one are easily misjudged by it."""


def dry_months(asked: AskedStation) -> Made:
    """Only of a single dry season: a list of all months, of none, or of scattered ones is seen through."""
    item, dry = "dry_months", asked.fact("dry_months")
    if begin(asked.months(item)) is None:
        return Rejected(item, f"by the rule of the diagram there is no single dry season: {dry.shown}")
    frozen, rainless, warmest = (asked.fact(name) for name in ("months_below_freezing", "driest_month", "warmest_month"))
    draft = Draft(
        id=item,
        prompt=f"Which months are dry at {asked.place} by the rule of the climate diagram (precipitation in mm below twice the temperature in °C)? Choose the answer that names all of them and no other month.",
        solution=_ends_told(asked),
        hints=(
            "In a dry month the precipitation line runs below the temperature line.",
            "Find the two places where the lines cross. The dry months are those between them, on the side of the dotted field.",
        ),
    )
    fewer = tuple(month for month in range(1, 13) if asked.precip(month) < asked.temp(month))
    humid = tuple(month for month in range(1, 13) if month not in asked.months(item))
    away = (
        Wrong(as_option(shown.months(opposite(*asked.months(item)))), "clim.hemisphere", "These months lie half a year away.")
        if is_southern(asked.station)
        else Wrong(as_option(shown.months(humid)), "clim.dry-reversed", "These are the humid months.")
    )
    first = begin(asked.months(item))
    assert first is not None
    before = (first - 2) % 12 + 1
    too_many = Wrong(
        as_option(shown.months((before, *asked.months(item)))), "clim.wrong-month", "",
        f"{name(before)} has {asked.told('monthly_precip', before)} and {asked.told('monthly_mean_temp', before)}: twice the temperature is not more than that, so it is humid. Check each end of the dry time in the table.",
    )  # fmt: skip
    wrong = [
        *([Wrong(as_option(shown.months(fewer)), "clim.dry-once", "In these months there are fewer millimetres than degrees.")] if fewer else []),
        too_many, away,
        Wrong(as_option(rainless.shown), *_least_told(asked, rainless.shown)),
        Wrong(as_option(warmest.shown), "clim.desert-hot", _warmest_told(asked), "Test each month, and not the warmest alone."),
        Wrong(as_option(frozen.shown), "clim.frost-is-dry", "These months average below 0 °C."),
    ]
    said = [w for w in wrong if w.text.casefold() != dry.shown.casefold() and w.text != "No month"]
    return choice(draft, as_option(dry.shown), said[:4], asked.catalogue, fact=dry, salt=asked.subject.id)


def _ends_told(asked: AskedStation) -> str:
    """The numbers on both sides of both ends of the one dry season."""
    dry = asked.months("dry_months")
    first = begin(dry)
    assert first is not None
    last = (first + len(dry) - 2) % 12 + 1
    before, after = (first - 2) % 12 + 1, last % 12 + 1
    told = (f"{name(month)} has {asked.told('monthly_precip', month)} and {asked.told('monthly_mean_temp', month)}" for month in (before, first, last, after))
    return "{}: still humid. {}: already dry. {}: still dry. {}: humid again.".format(*told)


def _least_told(asked: AskedStation, months: str) -> tuple[str, str]:
    """The wrong idea, and that least falls then; also that more months are dry, where these are."""
    least = asked.months("driest_month")
    if not set(least) <= set(asked.months("dry_months")):
        return "clim.least-is-dry", "That is when least precipitation falls."
    return "clim.driest-only", f"Least falls then, and {months} {'is' if len(least) == 1 else 'are'} dry, but not alone."


def _warmest_told(asked: AskedStation) -> str:
    warmest, dry = asked.months("warmest_month"), asked.months("dry_months")
    others = tuple(month for month in dry if month not in warmest)
    more = f", but less than twice as many millimetres as degrees fall in {shown.months(others)} too" if set(warmest) <= set(dry) else ""
    return f"That is when it is warmest{more}."


def why_dry(asked: AskedStation) -> Made:
    """Only where the total alone would mislead: it is neither little nor much."""
    total, demand, index = (asked.fact(name) for name in ("annual_precip", "potential_evapotranspiration", "aridity_class"))
    if asked.no_balance:
        return Rejected("why_dry", asked.no_balance)
    if not (total.number < LITTLE if index.value == HUMID else total.number > PLENTY):
        return Rejected("why_dry", "its precipitation alone tells how dry it is")
    balance = "less falls there in a mean year than" if total.number < demand.number else "at least as much falls there in a mean year as"
    draft = Draft(
        id="why_dry",
        prompt=f"What do you have to compare in order to tell how dry or humid the climate of {asked.place} is for plants?",
        solution=f"Supply stands against demand: {balance} could evaporate, so the climate counts as {index.shown}.",
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
        prompt=f"Which two of these statements about {asked.place} does the climate diagram show to be true?",
        solution=" ".join(one.because for one in right),
        hints=(
            "Take one statement at a time, and find the months that it speaks of on both lines.",
            "The diagram shows monthly means and totals of a mean year. Ask of each statement whether these can tell it.",
        ),
    )
    return several(draft, right, wrong, asked.catalogue, salt=salt)


def _warmth_and_rain(asked: AskedStation) -> Iterator[Sound | Wrong]:
    warm, wet = asked.one_month("warmest_month"), asked.one_month("wettest_month")
    if warm is None or wet is None or asked.is_steady:
        return
    text = "The wettest month is also the warmest"
    if wet == warm:
        yield Sound(text, f"In {name(wet)} both lines are highest.")
    else:
        yield Wrong(text, "clim.warm-is-wet", f"It is warmest in {name(warm)}, with {asked.told('monthly_precip', warm)}, and most falls in {name(wet)}, {asked.told('monthly_precip', wet)}.")


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
        yield Wrong(text, "clim.warm-is-dry", told, "Read both months on the axis of precipitation.")


def _driest(asked: AskedStation) -> Iterator[Sound | Wrong]:
    least, dry = asked.months("driest_month"), asked.months("dry_months")
    is_dry = set(least) <= set(dry)
    if len(least) == len(asked.year) or asked.months("wettest_month")[0] in dry or not (is_dry or set(least).isdisjoint(dry)):
        return
    month, which = least[0], "month with the least precipitation is" if len(least) == 1 else "months with the least precipitation are"
    text = f"The {which} dry: {_BELOW}"
    each = f"{asked.fact('driest_month').shown} have {asked.told('monthly_precip', month)} each: less than twice as many millimetres as degrees."
    yield Sound(text, _compared(asked, month) if len(least) == 1 else each) if is_dry else Wrong(text, "clim.least-is-dry", _compared(asked, month))


def _wettest(asked: AskedStation) -> Iterator[Sound | Wrong]:
    month = asked.months("wettest_month")[0]
    if month in asked.months("dry_months"):
        yield Sound(f"Even the month with the most precipitation is dry: {_BELOW}", _compared(asked, month))


def _compared(asked: AskedStation, month: int) -> str:
    """Its precipitation with its temperature, by the rule of the diagram."""
    falls, warmth = asked.told("monthly_precip", month), asked.told("monthly_mean_temp", month)
    if asked.temp(month) <= 0:
        return f"{name(month)} has {falls} at {warmth}: no month of frost is dry by this rule."
    compared = "less" if month in asked.months("dry_months") else "not less"
    return f"Twice {warmth.removesuffix(' °C')} is {shown.written(f'{2 * asked.temp(month):g}')}, and {falls} falls in {name(month)}: {compared} than that."


def _spread(asked: AskedStation) -> Iterator[Sound | Wrong]:
    """How unevenly the year's precipitation comes, at its plainest."""
    wet, dry = asked.months("wettest_month")[0], asked.months("driest_month")[0]
    most, least = asked.precip(wet), asked.precip(dry)
    told = f"{asked.told('monthly_precip', wet)} falls in {name(wet)}, {asked.told('monthly_precip', dry)} in {name(dry)}."
    start, half = max(((month, _half(asked, month)) for month in range(1, 13)), key=lambda one: one[1])
    total = asked.fact("annual_precip")
    if half > SEASONAL * total.number:
        season = f"from {name(start)} to {name(start + 5)}"
        much = next(words for words, least in MUCH_OF_IT if half > least * total.number)
        halves = f"Added up, the six months {season} bring over {much} of the {total.shown} of the year."
        yield Sound(f"Over {much} of the year's precipitation falls {season}", halves)
        yield Wrong(f"About half of the year's precipitation falls {season}", "clim.even-rain", halves)
    elif least > MUCH:
        yield Sound(f"Each month brings more than {MUCH:g} mm", told)
    elif most > TWICE * least > 0:
        yield Sound("The month with the most precipitation brings over twice as much as the one with the least", told)
        yield Wrong("Precipitation is spread evenly over the months", "clim.even-rain", told)
    elif least < most < HARDLY * least:
        yield Sound("The month with the least precipitation brings over half as much as the one with the most", told)


def _half(asked: AskedStation, start: int) -> float:
    """Precipitation [mm] of six months from this one on."""
    return math.fsum(asked.precip((start + step - 1) % 12 + 1) for step in range(6))


def _nights(asked: AskedStation) -> Iterator[Sound | Wrong]:
    cold, warm = asked.months("coldest_month")[0], asked.months("warmest_month")[0]
    if asked.is_steady:
        ends = f"The monthly means run from {asked.told('monthly_mean_temp', cold)} to {asked.told('monthly_mean_temp', warm)}."
        within = math.ceil(2 * (asked.temp(warm) - asked.temp(cold)) + 0.5) / 2
        yield Sound(f"The monthly means of temperature lie within {shown.written(f'{within:g}')} °C of each other", ends)
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
    yield Sound(f"{len(growing)} of the twelve months have a mean of 5 °C or more", told)
    yield Wrong(f"{thawed} of the twelve months have a mean of 5 °C or more", "clim.thaw-is-growth", told)
