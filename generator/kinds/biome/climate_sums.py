"""Questions on a station that are worked out: means, totals, shares, and how much water lacks when a dry time begins."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal

from generator.kinds.biome.asked_station import AskedStation, beside, name
from generator.kinds.biome.climate_facts import MM
from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.units import unit
from generator.questions.making import Draft, as_option, number_entry
from generator.questions.mistake import Mistake, told_apart, tolerance
from generator.questions.question import Made, Rejected

PERCENT = unit("percent")
LEAST_SHARE = 15.0
"""Part [%] of the year's precipitation that the wettest month must bring, to be worth a sum; a twelfth is 8.3 %."""
COLUMNS = {"what_could_evaporate": "monthly_pet", "what_falls": "monthly_precip", "what_does_evaporate": "monthly_actual_evapotranspiration"}
"""What is added up over some months, and the fact that holds it by month."""
FEW = 3
"""Wettest months whose part of the year is asked for."""
SPELL, WORTH = 3, 50.0
"""Months of a dry time that are added up, and the lack [mm] in them from which on it is worth a sum."""


def wettest_months_share(asked: AskedStation) -> Made:
    """Which part of a year's precipitation its three wettest months bring; best of a station that no page shows."""
    item, total, monthly = "wettest_months_share", asked.fact("annual_precip"), asked.fact("monthly_precip")
    ranked = sorted(range(1, 13), key=lambda month: -asked.precip(month))
    most = sorted(ranked[:FEW])
    if asked.precip(ranked[FEW - 1]) <= asked.precip(ranked[FEW]):
        return Rejected(item, "the year has no three wettest months that stand apart from the next")
    few = _of_months(asked, "monthly_precip", f"Precipitation of {shown.months(most)}", most)
    share = computed(f"{asked.station.id}.{item}", "Part of the year's precipitation in its three wettest months", Expression("wettest_months / annual_precip"), {"wettest_months": few, "annual_precip": total}, PERCENT)
    draft = Draft(
        id=item, supposed=asked.is_unseen,
        prompt=f"At {asked.place} the precipitation from January to December is {_months(asked, 'monthly_precip')}. What percentage of the year's precipitation falls in the three wettest months together?",
        solution=f"The three wettest months, {shown.months(most)}, bring {few.shown} together, and all twelve {total.shown}: {few.shown} ÷ {total.shown} = {share.shown}. A quarter of the year would bring 25 % if each month brought as much.",
        hints=("You need two sums: that of the three largest numbers, and that of all twelve.", "Divide the smaller sum by the larger one, then multiply by 100 %."),
    )
    return number_entry(
        draft, share, {"wettest_months": few, "annual_precip": total, "monthly": monthly},
        (
            Mistake("clim.even-rain", "3 / 12", "giving three months a quarter of the year"),
            Mistake("cyc.share-of-rest", "wettest_months / (annual_precip - wettest_months)", "dividing by the other nine months"),
            Mistake("clim.range-max", "max(monthly) / annual_precip", "taking the wettest month alone", "Three months are asked for. Add up the three largest numbers first."),
            Mistake("carb.pct-whole", "wettest_months / annual_precip / 100", "leaving out the factor of 100 %"),
        ),
        asked.catalogue, otherwise="Add up the three largest numbers, and all twelve. The first sum stands above the line.",
    )  # fmt: skip


def driest_beside_average(asked: AskedStation) -> Made:
    """How the driest month stands beside an average one: a twelfth of the year is the whole."""
    item, month, total = "driest_beside_average", asked.one_month("driest_month"), asked.fact("annual_precip")
    if month is None or asked.precip(month) <= 0:
        return Rejected(item, "no single month with some precipitation is the driest")
    driest = _of_months(asked, "monthly_precip", f"Precipitation of {name(month)}", (month,))
    part = computed(f"{asked.station.id}.{item}", "Precipitation of the driest month over that of an average one", Expression("driest_month / (annual_precip / 12)"), {"driest_month": driest, "annual_precip": total}, PERCENT)
    draft = Draft(
        id=item,
        prompt=f"What percentage of an average month's precipitation falls in the driest month at {asked.place}? Use the diagram and the table under it.",
        solution=f"{driest.shown} falls in {name(month)}, and {total.shown} in the year, a twelfth of which is an average month: {part.shown}.",
        hints=("How much would each month bring if all brought as much?", "Divide what the driest month brings by a twelfth of the year's total, then multiply by 100 %."),
    )
    return number_entry(
        draft, part, {"driest_month": driest, "annual_precip": total, "monthly": asked.fact("monthly_precip")},
        (
            Mistake("clim.year-for-month", "driest_month / annual_precip", "dividing by the year", "That is its part of the year. An average month is a twelfth of the year: divide by that."),
            Mistake("clim.share-inverse", "(annual_precip / 12) / driest_month", "dividing the average month by the driest", "The driest month brings less than an average one, so the result must be below 100 %. The average month stands below the line."),
            Mistake("clim.range-max", "driest_month / max(monthly)", "dividing by the wettest month", "An average month is asked for: a twelfth of the year."),
        ),
        asked.catalogue, otherwise="An average month brings a twelfth of the year's total, which stands above the diagram.",
    )  # fmt: skip


def annual_mean_temp(asked: AskedStation) -> Made:
    """The mean of twelve months; best of a station that no page shows, as a climate diagram prints it."""
    mean, monthly = asked.fact("annual_mean_temp"), asked.fact("monthly_mean_temp")
    middle = (max(monthly.series) + min(monthly.series)) / 2
    if asked.is_steady or not told_apart(mean.number, middle, mean.figures, tolerance(mean)):
        return Rejected("annual_mean_temp", "one month, or the mean of the warmest and the coldest, is nearly the same")
    is_below = min(monthly.series) < 0
    added = shown.written(str(sum(Decimal(repr(shown.read(member))) for member in monthly.shown_members)))
    draft = Draft(
        id="annual_mean_temp", supposed=asked.is_unseen,
        prompt=f"The monthly mean temperatures at {asked.place} from January to December are {_months(asked, 'monthly_mean_temp')}. What is the annual mean temperature, all months counted alike?",
        solution=f"Added up {'with their signs ' if is_below else ''}the twelve months make {added}. {added} ÷ 12 = {mean.shown_number}, so the mean is {mean.shown}.",
        hints=("Each month counts as much as any other, a cold one too.", f"Add up all twelve{', those below zero with their minus sign' if is_below else ''}, and divide the sum by twelve."),
    )
    return number_entry(
        draft, mean, {"monthly": monthly},
        (
            Mistake("clim.mean-of-extremes", "(max(monthly) + min(monthly)) / 2", "taking the mean of the warmest and the coldest month"),
            Mistake("clim.range-max", "max(monthly)", "taking the warmest month alone"),
            Mistake("clim.sum-mean", "mean(monthly) * 12", "adding up the months without dividing by twelve", "Degrees do not pile up from month to month. Divide the sum by twelve."),
        ),
        asked.catalogue, otherwise=f"Add up all twelve months{' with their signs' if is_below else ''}, then divide by twelve.",
    )  # fmt: skip


def _months(asked: AskedStation, series: str) -> str:
    """All months of a series, the unit once."""
    fact = asked.fact(series)
    listed = ", ".join(fact.shown_members)
    return fact.unit.after(listed) if fact.unit else listed


def annual_temp_range(asked: AskedStation) -> Made:
    """Warmest minus coldest month."""
    spread, monthly = asked.fact("annual_temp_range"), asked.fact("monthly_mean_temp")
    is_below = min(monthly.series) < 0
    months = sorted(zip(monthly.series, monthly.shown_members, strict=True))
    (_, coldest), (_, warmest) = months[0], months[-1]
    assert monthly.unit is not None
    draft = Draft(
        id="annual_temp_range", supposed=asked.is_unseen,
        prompt=(
            f"The monthly mean temperatures at {asked.place} from January to December are {_months(asked, 'monthly_mean_temp')}. "
            "What is the annual temperature range, in kelvin (1 K is a step of 1 °C)?"
        ),
        solution=f"{monthly.unit.after(warmest)} − {_in_brackets(monthly.unit.after(coldest))} = {spread.shown}; a difference of 1 K is as large as one of 1 °C.",
        hints=("Two months count: the warmest and the coldest.", f"Find both among the twelve numbers, then subtract the colder one{', with its sign' if is_below else ''}."),
    )
    return number_entry(
        draft, spread, {"monthly": asked.fact("monthly_mean_temp")},
        (
            Mistake("clim.range-max", "max(monthly)", "giving the warmest month alone", "A range needs two months, the warmest and the coldest. Subtract one from the other."),
            Mistake(
                "clim.range-sign" if is_below else "clim.range-sum",
                "max(monthly) + min(monthly)",
                "adding the coldest month with its sign, or subtracting it without its sign" if is_below else "adding the coldest month instead of subtracting it",
            ),
            Mistake("inv.start-less-end", "min(monthly) - max(monthly)", "taking the warmest month off the coldest", "A range is never below zero. Take the coldest month off the warmest."),
            Mistake("clim.range-mean", "(max(monthly) + min(monthly)) / 2", "taking the mean of the two months"),
        ),
        asked.catalogue, otherwise="Find the warmest and the coldest month, then subtract the one from the other.",
    )  # fmt: skip


def _in_brackets(number: str) -> str:
    """A number as it stands behind another sign: in brackets where it has a sign of its own."""
    return f"({number})" if number.startswith("−") else number


def aridity_index(asked: AskedStation) -> Made:
    """What falls over what could evaporate; which of them stands above the line is left to be known."""
    index = asked.fact("aridity_index")
    total, demand = asked.fact("annual_precip"), asked.fact("potential_evapotranspiration")
    if asked.no_balance:
        return Rejected("aridity_index", asked.no_balance)
    draft = Draft(
        id="aridity_index",
        prompt=f"At {asked.place} {total.shown} falls in a year, and by Thornthwaite's formula {demand.shown} could evaporate. The aridity index is a ratio of the two, large where the climate is humid. What is it there?",
        solution=f"{total.shown} ÷ {demand.shown} = {index.shown}. Where it is below 1, more could evaporate than falls; where it is above 1, less.",
        hints=("In a humid climate much falls and little could evaporate: which of the two stands above the line, if the index is to be large?", "Divide what falls by what could evaporate; the units cancel."),
    )
    return number_entry(
        draft, index, {"fall": total, "demand": demand},
        (
            Mistake("clim.index-inverse", "demand / fall", "dividing potential evapotranspiration by precipitation"),
            Mistake("clim.deficit-sign", "demand - fall", "subtracting instead of dividing"),
            Mistake("clim.deficit-sign", "fall - demand", "subtracting instead of dividing"),
            Mistake("carb.pct-whole", "100 * fall / demand", "giving the ratio in percent", "An index is the ratio itself: do not multiply by 100."),
        ),
        asked.catalogue, otherwise="Precipitation stands above the line, potential evapotranspiration below it.",
    )  # fmt: skip


def wettest_share(asked: AskedStation) -> Made:
    """Which part of a year's precipitation its wettest month brings."""
    item, month, total = "wettest_share", asked.one_month("wettest_month"), asked.fact("annual_precip")
    if month is None or 100 * asked.precip(month) < LEAST_SHARE * total.number:
        return Rejected(item, "no month brings a large part of the year's precipitation")
    members = asked.fact("monthly_precip").shown_members
    wettest = Fact(
        id=f"{asked.station.id}.wettest_month_precip", name=f"Precipitation of {name(month)}", value=asked.precip(month), unit=MM,
        written=members[month - 1].replace("\u2212", "-"),
    )  # fmt: skip
    share = computed(f"{asked.station.id}.{item}", f"Part of the year's precipitation that falls in {name(month)}", Expression("wettest_month / annual_precip"), {"wettest_month": wettest, "annual_precip": total}, PERCENT)
    draft = Draft(
        id=item,
        prompt=f"What percentage of the year's precipitation at {asked.place} falls in its wettest month? Take both numbers from the diagram and the table under it.",
        solution=f"{wettest.shown} ÷ {total.shown} = {share.shown}; a twelfth of the year's precipitation would be 8.3 %.",
        hints=(
            "You need two numbers: what falls in the wettest month, and what falls in the whole year (it stands above the diagram).",
            f"Divide what falls in {name(month)} by what falls in the year, then multiply by 100 %.",
        ),
    )
    return number_entry(
        draft, share, {"wettest_month": wettest, "annual_precip": total},
        (
            Mistake("clim.even-rain", "1 / 12", "giving each month a twelfth"),
            Mistake("cyc.share-of-rest", "wettest_month / (annual_precip - wettest_month)", "dividing by the rest of the year"),
            Mistake("carb.pct-whole", "wettest_month / annual_precip / 100", "leaving out the factor of 100 %"),
            Mistake("clim.share-inverse", "annual_precip / wettest_month", "dividing the year by the month"),
        ),
        asked.catalogue, otherwise="The part stands above the line, the whole year below it.",
    )  # fmt: skip


def lack_of_water(asked: AskedStation) -> Made:
    """How much more could evaporate than falls in the first months of the dry time, read from the table; only where wet months come before."""
    item = "lack_of_water"
    if asked.no_balance:
        return Rejected(item, asked.no_balance)
    months = _first_lacking(asked)
    if not months or asked.fact("water_surplus").number <= 0:
        return Rejected(item, "no dry time follows a wet one")
    given = {name: _of_months(asked, series, f"{as_option(name.replace('_', ' '))} from {span(months)}", months) for name, series in COLUMNS.items()}
    could, falls, _ = given
    right = computed(f"{asked.station.id}.{item}", f"More that could evaporate than falls from {span(months)}", Expression(f"{could} - {falls}"), {could: given[could], falls: given[falls]}, MM)
    if right.number < WORTH:
        return Rejected(item, "hardly more could evaporate than falls")
    store = asked.fact("soil_store").shown
    gives = ", which is too little to make up for that" if right.number > asked.fact("soil_store").number else ", and gives its water ever more slowly as it dries, so plants lack part of that"
    draft = Draft(
        id=item,
        prompt=f"How much more could evaporate at {asked.place} from {span(months)} than falls as precipitation? Use the table “Soil water at the end of each month” among the numbers of this page.",
        solution=f"{given[could].shown} could evaporate, and {given[falls].shown} falls: {right.shown} more. The soil holds at most {store}{gives}.",
        hints=("Two columns count: what falls, and what could evaporate.", f"Add up each of them from {span(months)}, then subtract one sum from the other."),
    )
    return number_entry(
        draft, right, given | {"year_could": asked.fact("potential_evapotranspiration"), "year_falls": asked.fact("annual_precip")},
        (
            Mistake("num.one-for-difference", "what_could_evaporate", "giving what could evaporate alone"),
            Mistake("num.sum-for-difference", "what_could_evaporate + what_falls", "adding the two sums"),
            Mistake("clim.could-is-does", "what_does_evaporate - what_falls", "taking what does evaporate for what could"),
            Mistake("clim.year-for-part", "year_could - year_falls", "taking the whole year"),
            Mistake("clim.lack-sign", "what_falls - what_could_evaporate", "subtracting the other way round"),
        ),
        asked.catalogue, otherwise=f"Take the months from {span(months)} and no others, and add up each column by itself.", asks_unit=True,
    )  # fmt: skip


def _first_lacking(asked: AskedStation) -> tuple[int, ...]:
    """The first months of the one run in which more could evaporate than falls; none where there are two runs, or a short one."""
    lacking = [month for month in range(1, 13) if asked.fact("monthly_pet").series[month - 1] > asked.precip(month)]
    starts = [month for month in lacking if beside(month)[0] not in lacking]
    first = tuple((starts[0] + step - 1) % 12 + 1 for step in range(SPELL)) if len(starts) == 1 else ()
    return first if set(first) <= set(lacking) else ()


def span(months: Sequence[int]) -> str:
    """`April to June`, also over the turn of the year."""
    return f"{name(months[0])} to {name(months[-1])}"


def _of_months(asked: AskedStation, series: str, called: str, months: Sequence[int]) -> Fact:
    """The sum of some months as the table shows them, so that whoever adds them up comes to the same."""
    members = asked.fact(series).shown_members
    total = sum((Decimal(repr(shown.read(members[month - 1]))) for month in months), Decimal(0))
    return Fact(id=f"{asked.station.id}.{series}_of_months", name=called, value=float(total), unit=MM, written=f"{float(total):g}")
