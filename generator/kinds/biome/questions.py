"""Questions on a biome: at most three on reading and working out its climate, the rest on what the climate means for living things."""

from __future__ import annotations

from collections.abc import Sequence

from generator.kind import Subject
from generator.kinds.biome import ecology_questions as ecology
from generator.kinds.biome.charts import is_southern
from generator.kinds.biome.climate_facts import MM
from generator.kinds.biome.record import BiomeRecord, Station
from generator.kinds.biome.scheme_facts import COLD
from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.questions.making import Draft, Wrong, as_option, choice, enough, number_entry
from generator.questions.misconception import Catalogue
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Needs, Rejected


def questions(subject: Subject[BiomeRecord], catalogue: Catalogue) -> Sequence[Made]:
    """Questions on the first station that the page shows, or else on the first for practice."""
    record = subject.record
    station = next((s for s in record.stations if s.use == "page"), None) or next(s for s in record.stations if s.use != "paper")
    return _Station(subject, station, catalogue).questions()


COLD_FORMULA = "in a cold climate the formula gives far more evapotranspiration than there is"
WANTED, MOST_SUMS = 6, 3
"""Questions that every record should have, and how many of them may be read or worked out where there are others."""
LEAST_SEASON, STEADY = 3.0, 5.0
"""Annual ranges [K] below which it makes no sense to ask for a warmest month, and below which the year is called steady."""


class _Station:
    """The station that is asked about, with short names for its facts."""

    def __init__(self, subject: Subject[BiomeRecord], station: Station, catalogue: Catalogue) -> None:
        self.subject, self.station, self.catalogue = subject, station, catalogue
        self.place = station.label

    def fact(self, name: str) -> Fact:
        return self.subject.facts[f"{self.station.id}.{name}"]

    def questions(self) -> tuple[Made, ...]:
        """Three sums and all others that come out; more sums only where there would be too few questions."""
        first, second = self.temperature_sums()
        sums = [self.dry_months(), first, self.aridity_index(), self.annual_precip(), second, self.warmest_month(), self.mean_precip()]
        others = [
            self.why_dry(), ecology.limiting_factor(self.subject, self.station, self.catalogue),
            *(make(self.subject, self.catalogue) for make in (ecology.nutrients, ecology.which_climate)),
        ]  # fmt: skip
        about = [one for one in others if not isinstance(one, Rejected)]
        asked = [one for one in sums if not isinstance(one, Rejected)][: max(MOST_SUMS, WANTED - len(about))]
        if len(asked) + len(about) < WANTED:
            return enough([*sums, *others], WANTED)
        return (*asked[:2], *about[:1], *asked[2:], *about[1:])

    def temperature_sums(self) -> tuple[Made, Made]:
        """Of frost or a steady year the range tells most; elsewhere the mean comes first, so that not all pages ask the same."""
        swing, frost = self.fact("annual_temp_range").number, self.fact("months_below_freezing").value
        spread, mean = self.annual_temp_range(), self.annual_mean_temp()
        return (spread, mean) if frost or swing < STEADY else (mean, spread)

    def warmest_month(self) -> Made:
        """Only months that share none with the warmest ones are offered as wrong: half of an answer is not plainly wrong."""
        warmest, wettest = self.fact("warmest_month"), self.fact("wettest_month")
        if self.fact("annual_temp_range").number < LEAST_SEASON:
            return Rejected("warmest_month", "the months are all nearly equally warm")
        draft = Draft(
            id="warmest_month",
            prompt=f"When is it warmest at {self.place}?",
            solution=f"The temperature line is highest in {warmest.shown}.",
        )
        wrong = (
            (_shifted(warmest), "clim.hemisphere", "That is half a year away."),
            (_months(wettest), "clim.wrong-axis", "That is where most precipitation falls."),
            (_next(warmest), "clim.wrong-month", ""),
        )
        right = set(_months(warmest))
        kept = [Wrong(as_option(shown.months(months)), idea, because) for months, idea, because in wrong if not right & set(months)]
        return choice(draft, as_option(warmest.shown), kept, self.catalogue, fact=warmest, salt=self.subject.id)

    def mean_precip(self) -> Made:
        """The mean month, from the total of the year: a division that many turn round."""
        total = self.fact("annual_precip")
        mean = computed("mean_precip", "Mean precipitation of a month", Expression("total / 12"), {"total": total}, MM)
        draft = Draft(
            id="mean_precip",
            prompt=f"How much precipitation falls at {self.place} in an average month? Use the table of the chart.",
            solution=f"{total.shown} shared among twelve months is {mean.shown} a month.",
        )
        return number_entry(
            draft, mean, {"total": total},
            (
                Mistake("clim.sum-mean", "total", "giving the total of the year"),
                Mistake("clim.sum-mean", "total * 12", "multiplying by twelve"),
            ),
            self.catalogue, otherwise="Add up the year first, then share the total among its twelve months.",
        )  # fmt: skip

    def annual_precip(self) -> Made:
        total = self.fact("annual_precip")
        draft = Draft(
            id="annual_precip",
            prompt=f"How much precipitation falls at {self.place} in a year? Use the table of the chart.",
            solution=f"Precipitation adds up: the twelve months together bring {total.shown}.",
        )
        return number_entry(
            draft, total, {"monthly": self.fact("monthly_precip")},
            (
                Mistake("clim.sum-mean", "mean(monthly)", "dividing the total by twelve"),
                Mistake("clim.mm-cm", "sum(monthly) / 10", "turning millimetres into centimetres"),
                Mistake("clim.range-max", "max(monthly)", "taking the wettest month alone"),
            ),
            self.catalogue, otherwise="Add up all twelve months, and check that you have left none out.",
        )  # fmt: skip

    def annual_mean_temp(self) -> Made:
        mean = self.fact("annual_mean_temp")
        draft = Draft(
            id="annual_mean_temp",
            prompt=f"What is the annual mean temperature at {self.place}, all months counted alike?",
            solution=f"The mean of all twelve months is {mean.shown}.",
        )
        return number_entry(
            draft, mean, {"monthly": self.fact("monthly_mean_temp")},
            (
                Mistake("clim.mean-of-extremes", "(max(monthly) + min(monthly)) / 2", "taking the mean of the warmest and the coldest month"),
                Mistake("clim.range-max", "max(monthly)", "taking the warmest month alone"),
                Mistake("clim.sum-mean", "mean(monthly) * 12", "adding up the months without dividing by twelve"),
            ),
            self.catalogue, otherwise="Add up all twelve months with their signs, then divide by twelve.",
        )  # fmt: skip

    def annual_temp_range(self) -> Made:
        spread = self.fact("annual_temp_range")
        draft = Draft(
            id="annual_temp_range",
            prompt=f"What is the annual temperature range at {self.place}: the difference between its warmest and its coldest month, in kelvin (1 K is a step of 1 °C)?",
            solution=f"Warmest minus coldest month is {spread.shown}; a difference of 1 K is as large as one of 1 °C.",
        )
        return number_entry(
            draft, spread, {"monthly": self.fact("monthly_mean_temp")},
            (
                Mistake("clim.range-max", "max(monthly)", "giving the warmest month alone"),
                Mistake(
                    "clim.range-sign" if min(self.fact("monthly_mean_temp").series) < 0 else "clim.range-sum",
                    "max(monthly) + min(monthly)", "adding the coldest month, with its sign, instead of subtracting it",
                ),
                Mistake("clim.range-mean", "(max(monthly) + min(monthly)) / 2", "taking the mean of the two months"),
            ),
            self.catalogue, otherwise="Find the highest and the lowest point of the temperature line, then subtract.",
        )  # fmt: skip

    def dry_months(self) -> Made:
        dry, coldest = self.fact("dry_months"), self.fact("months_below_freezing")
        rainless, warmest = self.fact("driest_month"), self.fact("warmest_month")
        draft = Draft(
            id="dry_months",
            prompt=f"Which months are dry at {self.place} by the rule of the climate diagram (precipitation in mm below twice the temperature in °C)?",
            solution=f"By the rule, {dry.shown}: compare the two lines month by month.",
        )
        wrong = [
            Wrong(as_option(rainless.shown), "clim.least-is-dry", "That is when least precipitation falls."),
            Wrong(as_option(warmest.shown), "clim.desert-hot", "That is when it is warmest."),
            Wrong(as_option(coldest.shown), "clim.frost-is-dry", "These months average below 0 °C."),
        ]
        if is_southern(self.station):
            wrong.insert(0, Wrong(as_option(shown.months(_shifted(dry))), "clim.hemisphere", "These months lie half a year away."))
        else:
            humid = tuple(month for month in range(1, 13) if month not in _months(dry))
            wrong.append(Wrong(as_option(shown.months(humid)), "clim.dry-reversed", "These are the humid months."))
        said = [w for w in wrong if w.text.casefold() != dry.shown.casefold() and w.text != "No month"]
        return choice(draft, as_option(dry.shown), said[:3], self.catalogue, fact=dry, salt=self.subject.id)

    def aridity_index(self) -> Made:
        index = self.fact("aridity_index")
        total, demand = self.fact("annual_precip"), self.fact("potential_evapotranspiration")
        if self.fact("aridity_class").value == COLD:
            return Rejected("aridity_index", COLD_FORMULA)
        draft = Draft(
            id="aridity_index",
            prompt=(
                f"By Thornthwaite's formula {demand.shown} could evaporate at {self.place} in a year. Divide its annual precipitation by that: "
                "what is the aridity index?"
            ),
            solution=f"{total.shown} ÷ {demand.shown} = {index.shown}. An index below 1 means that more could evaporate than falls.",
        )
        return number_entry(
            draft, index, {"fall": total, "demand": demand},
            (
                Mistake("clim.index-inverse", "demand / fall", "dividing evapotranspiration by precipitation"),
                Mistake("clim.deficit-sign", "demand - fall", "subtracting instead of dividing"),
                Mistake("clim.deficit-sign", "fall - demand", "subtracting instead of dividing"),
                Mistake("carb.pct-whole", "100 * fall / demand", "giving the ratio in percent"),
            ),
            self.catalogue, otherwise="Precipitation stands above the line, potential evapotranspiration below it.",
        )  # fmt: skip

    def why_dry(self) -> Made:
        total, demand, index = self.fact("annual_precip"), self.fact("potential_evapotranspiration"), self.fact("aridity_class")
        if index.value is None:
            return Rejected("why_dry", f"the aridity class is {index.shown}")
        if index.value == COLD:
            return Rejected("why_dry", COLD_FORMULA)
        balance = "less falls" if total.number < demand.number else "no less falls"
        draft = Draft(
            id="why_dry",
            prompt=f"Which comparison tells best how dry or humid the climate of {self.place} is for plants?",
            solution=f"Supply stands against demand: {balance} there in a mean year than could evaporate, and the class that follows is {index.shown}.",
            needs=Needs.KNOWLEDGE,
        )
        wrong = (
            Wrong("Its annual precipitation with that of other places", "clim.rain-alone"),
            Wrong("Its warmest month with its coldest month", "clim.desert-hot", "That tells how much warmth changes over the year."),
            Wrong("Its driest month with its wettest month", "clim.least-is-dry", "That tells how unevenly precipitation is spread."),
        )
        return choice(draft, "Its annual precipitation with what could evaporate there", wrong, self.catalogue, salt=self.subject.id)


def _months(fact: Fact) -> tuple[int, ...]:
    """The months that a fact names."""
    return tuple(int(month) for month in fact.value) if isinstance(fact.value, tuple) else ()


def _shifted(fact: Fact) -> tuple[int, ...]:
    """The months half a year away."""
    return tuple(sorted((month + 5) % 12 + 1 for month in _months(fact)))


def _next(fact: Fact) -> tuple[int, ...]:
    """The months after."""
    return tuple(sorted(month % 12 + 1 for month in _months(fact)))
