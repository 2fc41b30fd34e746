"""Questions that are answered off the climate diagram or a table of the page: a month, or two neighbouring ones (`climate_changes`).

Each is only asked where the answer stands out by itself and is not the month that a glance would give.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.kinds.biome.asked_station import AskedStation, beside, name, names, opposite
from generator.kinds.biome.charts import has_southern_summer
from generator.kinds.biome.climate_changes import fastest_change_of_rain, fastest_warming, standing_out
from generator.kinds.biome.climate_sums import wettest_share
from generator.quantities import shown
from generator.quantities.fact import Fact
from generator.questions.making import Draft, Wrong, reading
from generator.questions.question import Made, Rejected

LEAST_GAP_LEAD, LEAST_SOIL_LEAD = 2.0, 1.0
"""By how much [mm] the widest gap and the driest soil must stand apart from the next month."""
NEAR_GAP = 10.0
"""Difference [mm] of two gaps below which the feedback tells both, as the eye can hardly part them."""
PEAK = 0.1
"""By how much a peak must stand above the dip beside it, as part of the mean month."""
GROWTH = 5.0
"""Monthly mean temperature [degC] from which on most plants grow."""
NEXT_TO_IT = "That is the month beside it."


def readings(asked: AskedStation) -> Iterator[Made]:
    """The most telling first; the plain ones only where others are few."""
    return (make(asked) for make in (widest_gap, driest_soil, second_peak, growing_begins, fastest_warming, fastest_change_of_rain))


def plain_readings(asked: AskedStation) -> Iterator[Made]:
    """The highest point of precipitation, unless a sum asks for it, and the lowest."""
    is_asked = not isinstance(wettest_share(asked), Rejected)
    return (make(asked) for make in ((driest,) if is_asked else (wettest, driest)))


def widest_gap(asked: AskedStation) -> Made:
    """Where precipitation lies farthest below temperature, at the scales of the diagram."""
    item, gaps = "widest_gap", [2 * asked.temp(month) - asked.precip(month) for month in range(1, 13)]
    month = standing_out(gaps, LEAST_GAP_LEAD)
    runners_up = () if month is None else tuple(m for m in range(1, 13) if m != month and 0 < gaps[month - 1] - gaps[m - 1] < NEAR_GAP)
    warmest, driest = asked.months("warmest_month"), asked.months("driest_month")
    if month is None or gaps[month - 1] <= 0 or (month in warmest and month in driest):
        return Rejected(item, "no month stands out by lying farthest below the line of temperature")
    most = gaps.index(min(gaps)) + 1
    draft = Draft(
        id=item,
        prompt=(
            f"In which month does the precipitation line lie farthest below the temperature line in the climate diagram of {asked.place}?"
            + (" Some gaps look alike: take the numbers from the table, and count 10 °C as high as 20 mm." if runners_up else "")
        ),
        solution=(
            f"In {name(month)}, with {asked.told('monthly_mean_temp', month)} and {asked.told('monthly_precip', month)}, the lines lie farthest apart: "
            "10 °C stands at the height of 20 mm."
        ),
        hints=(
            "A gap is the distance between two lines: compare both of them in each month.",
            "Look only where the field between the lines is dotted, and find where it is widest from line to line." + (" Twice the temperature less the precipitation is the gap in millimetres." if runners_up else ""),
        ),
    )
    wrong = [
        *(((name(near),), Wrong("", "clim.height-not-gap" if near in (*warmest, *driest) or near not in beside(month) else "clim.wrong-month", _gap_told(asked, near, gaps, month))) for near in runners_up),
        (names(warmest), Wrong("", "clim.height-not-gap", "That is where it is warmest.")),
        (names(driest), Wrong("", "clim.height-not-gap", "That is where least falls." if max(gaps[m - 1] for m in driest) > 0 else "Least falls then, but the temperature line lies lower still.")),
        ((name(most),), Wrong("", "clim.dry-reversed", "There the precipitation line lies farthest above.")),
        *(((name(near),), Wrong("", "clim.wrong-month", _gap_told(asked, near, gaps, month))) for near in beside(month)),
    ]
    return _month(asked, draft, (month,), wrong, otherwise="In each month, measure from the line of temperature down to that of precipitation.")


def _gap_told(asked: AskedStation, near: int, gaps: Sequence[float], month: int) -> str:
    """Both gaps, where the eye can hardly part them."""
    narrow, wide = (shown.written(f"{gaps[one - 1]:.3g}") for one in (near, month))
    close = "It is close: in" if 0 <= gaps[month - 1] - gaps[near - 1] < NEAR_GAP else "In"
    return f"{close} {name(near)} the gap is {narrow} mm on the axis of precipitation, in {name(month)} {wide} mm."


def driest_soil(asked: AskedStation) -> Made:
    """The store of the soil is lowest at the end of a time in which more leaves than enters, not when least rain falls."""
    item = "driest_soil"
    if asked.no_balance:
        return Rejected(item, asked.no_balance)
    soil = asked.fact("monthly_soil_water").series
    month, driest = standing_out([-water for water in soil], LEAST_SOIL_LEAD), asked.months("driest_month")
    if month is None or month in driest:
        return Rejected(item, "no month stands out by its dry soil, or least falls in that month too")
    demand = asked.fact("monthly_pet").series
    draft = Draft(
        id=item,
        prompt=(
            f"Least precipitation falls at {asked.place} in {shown.months(driest)}. At the end of which month does its soil hold the least water? "
            "Use the table “Soil water at the end of each month” among the numbers of this page."
        ),
        solution=(
            f"At the end of {name(month)} the soil holds {asked.told('monthly_soil_water', month)}, less than after any other month. "
            f"Least falls in {shown.months(driest)}, but what counts is how long more leaves the soil than enters it."
        ),
        hints=(
            "The soil is a store: it shrinks as long as more leaves it than enters.",
            "Go down the last column of the table, month by month, and look for its smallest number.",
        ),
    )
    wrong = [
        (names(driest), Wrong("", "clim.store-is-flow", "That is when least precipitation falls.")),
        ((name(demand.index(max(demand)) + 1),), Wrong("", "clim.store-is-flow", "That is when most could evaporate.")),
        *(((name(near),), Wrong("", "clim.wrong-row", f"At the end of {name(near)} the soil holds {asked.told('monthly_soil_water', near)}.")) for near in beside(month)),
    ]
    return _month(asked, draft, (month,), wrong, otherwise="Take the column of soil water, not that of what falls or could evaporate.")


def second_peak(asked: AskedStation) -> Made:
    """The other rainy time of a place near the equator."""
    item, rain = "second_peak", asked.fact("monthly_precip").series
    peaks = _peaks(rain)
    if not peaks or not asked.is_steady:
        return Rejected(item, "precipitation has not two peaks in the year")
    first, other = peaks
    second = sorted((month for month in range(1, 13) if month != first), key=lambda month: -rain[month - 1])[:2]
    draft = Draft(
        id=item,
        prompt=f"The precipitation of {asked.place} has two peaks in a year. The higher one is in {name(first)}. In which month is the other? Use the table under the diagram.",
        solution=f"In {name(other)}, with {asked.told('monthly_precip', other)}, more falls than in the months before and after.",
        hints=(
            "A peak is a month that has more than the one before it and more than the one after it.",
            f"Go down the column of precipitation from {name(first)}: the numbers fall, and then rise again to another peak.",
        ),
    )
    wrong = [
        (names(tuple(second)), Wrong("", "clim.second-largest", "Much falls there too, but a month beside it has more.", "Look for a month from which the line goes down on both sides.")),
        (names((first,)), Wrong("", "clim.second-largest", "", "That is the higher peak, which the question names. Go on from it to the other one.")),
        (names(beside(first)), Wrong("", "clim.second-largest", "", f"A large number can stand on the slope of the peak of {name(first)}. Look for another month from which the line goes down on both sides.")),
        (names(asked.months("driest_month")), Wrong("", "clim.wrong-end", "That is the lowest point of the line.")),
        (names(beside(other)), Wrong("", "clim.second-largest", f"{name(other)}, beside it, has {asked.told('monthly_precip', other)}.", "A peak has more than both of its neighbours.")),
    ]
    return _month(asked, draft, (other,), wrong, otherwise="On both sides of a peak less falls: look at the months before and after yours.")


def growing_begins(asked: AskedStation) -> Made:
    """The first month warm enough for most plants; only where frost ends in an earlier one."""
    item, growing = "growing_begins", asked.months("growing_season_months")
    starts = [month for month in growing if beside(month)[0] not in growing]
    thaw = [month for month in range(1, 13) if asked.temp(month) > 0 and asked.temp(beside(month)[0]) <= 0]
    if len(starts) != 1 or len(thaw) != 1 or starts == thaw:
        return Rejected(item, "growth does not begin in another month than that in which frost ends")
    last = _last(growing)
    draft = Draft(
        id=item,
        prompt=f"By rule, a month counts as growing season if its mean is at least {GROWTH:g} °C. Which is the first such month of the year at {asked.place}?",
        solution=f"{name(starts[0])}, with {asked.told('monthly_mean_temp', starts[0])}; {name(starts[0] - 1)} has only {asked.told('monthly_mean_temp', starts[0] - 1)}.",
        hints=(
            f"Find {GROWTH:g} °C on the left axis, half way between 0 and 10 °C.",
            f"Follow the temperature line from the coldest month on, until it is at {GROWTH:g} °C or higher for the first time.",
        ),
    )
    wrong = [
        (names((thaw[0],)), Wrong("", "clim.thaw-is-growth", "There the mean is above 0 °C for the first time, but still below 5 °C.")),
        (names(asked.months("warmest_month")), Wrong("", "num.past-first", "", f"That is the warmest month. Growth has begun before: look for the first month with {GROWTH:g} °C or more.")),
        (names((last,)), Wrong("", "clim.wrong-end", "", "That is the last month of the growing season. Look for the first.")),
        (names((beside(last)[1],)), Wrong("", "clim.wrong-end", "", f"There it is too cold again: the season ended with {name(last)}. Look for where it begins.")),
        (names(tuple(growing)), Wrong("", "num.past-first", "", f"It is warm enough then, but in {name(starts[0])} already. Look for the first such month.")),
        (names(beside(starts[0])), Wrong("", "clim.wrong-month", NEXT_TO_IT)),
    ]
    otherwise = f"Compare each month with {GROWTH:g} °C, from the coldest one on."
    return _month(asked, draft, (starts[0],), wrong, otherwise, asked.fact("growing_season_months"))


def wettest(asked: AskedStation) -> Made:
    """Only where it is not the warmest month."""
    return _extreme(asked, "wettest_month", "most", ("warmest_month", "it is warmest"), ("driest_month", "least falls"))


def driest(asked: AskedStation) -> Made:
    """Only where it is not the coldest month, and some precipitation falls: a single 0 in a column is seen, not read."""
    if min(asked.fact("monthly_precip").series) <= 0:
        return Rejected("driest_month", "nothing falls in it, which is seen at a glance")
    return _extreme(asked, "driest_month", "least", ("coldest_month", "it is coldest"), ("wettest_month", "most falls"))


def _extreme(asked: AskedStation, fact: str, how: str, of_heat: tuple[str, str], far: tuple[str, str]) -> Made:
    month = asked.one_month(fact)
    if month is None or month in asked.months(of_heat[0]) or (asked.is_steady and _peaks(asked.fact("monthly_precip").series)):
        return Rejected(fact, "it is not one month, or temperature has the same one, or the other of two peaks is asked for, and the lowest point told with it")
    draft = Draft(
        id=fact,
        prompt=f"In which month does the {how} precipitation fall at {asked.place}? Use the table under the diagram.",
        solution=f"In {name(month)} {asked.told('monthly_precip', month)} falls; the column of precipitation shows it.",
        hints=("Find the numbers of precipitation first, those in millimetres.", f"Go through them month by month, and keep the {'largest' if how == 'most' else 'smallest'}."),
    )
    wrong = [
        (names(asked.months(of_heat[0])), Wrong("", "clim.other-column", f"That is when {of_heat[1]}.")),
        (names(asked.months(far[0])), Wrong("", "clim.wrong-end", f"That is when {far[1]}.")),
        (names(beside(month)), Wrong("", "clim.wrong-row", NEXT_TO_IT)),
    ]
    return _month(asked, draft, (month,), wrong, "Go through the numbers of precipitation month by month.", asked.fact(fact))


def coldest_in_the_south(asked: AskedStation) -> Made:
    """Of a station beyond the southern tropic, where July is winter."""
    item, coldest = "coldest_in_the_south", asked.months("coldest_month")
    if not has_southern_summer(asked.station) or asked.is_steady:
        return Rejected(item, "the station has no southern winter")
    draft = Draft(
        id=item,
        prompt=f"Which month is the coldest at {asked.place}?",
        solution=f"{asked.place} lies south of the equator: {asked.fact('coldest_month').shown} is in its winter.",
        hints=("Look at the latitude first. Diagrams from south of the tropics begin with July.", "Find the lowest point of the temperature line, and read the name of the month below it."),
    )
    wrong = [
        (names(opposite(*coldest)), Wrong("", "clim.hemisphere", "That is the middle of summer there.")),
        (names(asked.months("wettest_month")), Wrong("", "clim.wrong-axis", "That is when most precipitation falls.")),
        (names(beside(*coldest)), Wrong("", "clim.wrong-month", NEXT_TO_IT)),
    ]
    return _month(asked, draft, coldest, wrong, "Follow the temperature line to its lowest point.", asked.fact("coldest_month"))


def _month(
    asked: AskedStation, draft: Draft, right: Sequence[int], wrong: Sequence[tuple[Sequence[str], Wrong]], otherwise: str, fact: Fact | None = None
) -> Made:
    return reading(draft, names(asked.year), names(tuple(right)), wrong, asked.catalogue, otherwise=otherwise, fact=fact)


def _peaks(rain: Sequence[float]) -> list[int]:
    """The two months above their neighbours, the higher first, if the dips between them are plain; otherwise none."""
    tops = sorted((month for month in range(1, 13) if rain[month - 1] > max(rain[one - 1] for one in beside(month))), key=lambda one: -rain[one - 1])
    if len(tops) != 2 or rain[tops[0] - 1] == rain[tops[1] - 1]:
        return []
    early, late = sorted(tops)
    between, around = rain[early : late - 1], (*rain[late:], *rain[: early - 1])
    plain = rain[tops[1] - 1] - max(min(between), min(around)) >= PEAK * sum(rain) / len(rain)
    return tops if plain else []


def _last(growing: Sequence[int]) -> int:
    return next(month for month in growing if beside(month)[1] not in growing)

