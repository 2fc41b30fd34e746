"""Questions on a transect: lapse rates between stations, air that crosses the crest step by step, and why the lee side is dry."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from generator.kind import Subject
from generator.kinds.transect.crossing import PART
from generator.kinds.transect.record import Station, TransectRecord
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.units import unit
from generator.quantities.working import Substitution
from generator.questions.making import Draft, Wrong, choice, number_entry
from generator.questions.misconception import Catalogue
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Needs

LEAST_CLIMB = 200.0
"""Height [m] between two stations from which on their lapse rate is asked for."""
DEGC = unit("degC")
COUNTED = "positive where it gets colder with height"
"""The sign of a lapse rate, as each question on one states it."""
HINT = "Work in kilometres, and count only the part of the way on which this rate holds."
_DIFFERENCE, _CLIMB = "(temperature_before - temperature)", "(height - height_before)"
LAPSE_SLIPS = (
    Mistake("clim.metres-for-kilometres", f"{_DIFFERENCE} / {_CLIMB} / 1000", "dividing by metres where kilometres are asked for"),
    Mistake("clim.lapse-inverse", f"{_CLIMB} / {_DIFFERENCE} / 1000", "dividing the height by the temperature"),
    Mistake("clim.lapse-minus", f"-1 * {_DIFFERENCE} / {_CLIMB}", "taking the difference the other way round"),
)
"""The usual slips of a lapse rate, by the names of its formula."""
_UP_DRY, _UP_MOIST = "dry * (base - start)", "moist * (crest - base)"
STEPS = (
    (
        "base_temperature", "where cloud begins", f"temperature - {_UP_DRY}",
        "Below the cloud base no water condenses, so the air cools by the dry lapse rate.",
        (
            Mistake("clim.moist-everywhere", "temperature - moist * (base - start)", "taking the moist rate below the cloud"),
            Mistake("clim.lapse-added", f"temperature + {_UP_DRY}", "adding where the air cools"),
            Mistake("clim.lapse-per-kilometre", "temperature - dry", "taking the rate off once, whatever the climb"),
        ),
    ),
    (
        "crest_temperature", "at the crest", f"temperature - {_UP_DRY} - {_UP_MOIST}",
        "Up to the cloud base the dry lapse rate holds. In cloud condensing water warms the air, so the moist one holds up to the crest.",
        (
            Mistake("clim.dry-all-the-way", "temperature - dry * (crest - start)", "going on with the dry rate in the cloud"),
            Mistake("clim.moist-everywhere", "temperature - moist * (crest - start)", "taking the moist rate from the ground up"),
            Mistake("clim.cloud-from-ground", f"temperature - {_UP_DRY} - moist * (crest - start)", "counting the way below the cloud twice"),
            Mistake("clim.lapse-added", f"temperature + {_UP_DRY} + {_UP_MOIST}", "adding where the air cools"),
        ),
    ),
    (
        "lee_temperature", "when it has come down on the other side", f"temperature - {_UP_DRY} - {_UP_MOIST} + dry * (crest - end)",
        "Up it cools by the dry rate and then by the moist one. Down it warms by the dry rate all the way, for the cloud is gone.",
        (
            Mistake("clim.lee-mirror", f"temperature - {_UP_DRY} - {_UP_MOIST} + moist * (crest - end)", "taking the moist rate on the way down"),
            Mistake("clim.dry-all-the-way", "temperature - dry * (crest - start) + dry * (crest - end)", "taking the dry rate up and down"),
            Mistake("clim.sinking-cools", f"temperature - {_UP_DRY} - {_UP_MOIST} - dry * (crest - end)", "cooling the air on its way down"),
        ),
    ),
)  # fmt: skip
"""The steps of the air: which temperature, its place in words, how it follows from the start, why, and the usual slips."""


def questions(subject: Subject[TransectRecord], catalogue: Catalogue) -> Sequence[Made]:
    """What the stations allow, then what the crossing air does."""
    asked = _Transect(subject, catalogue)
    crossing = list(asked.crossing()) if subject.record.rain_shadow else []
    return (*asked.stations(few=bool(crossing)), *crossing)


class _Transect:
    """The record that is asked about, with short names for its facts."""

    def __init__(self, subject: Subject[TransectRecord], catalogue: Catalogue) -> None:
        self.subject, self.record, self.facts, self.catalogue = subject, subject.record, subject.facts, catalogue

    def fact(self, station: Station, name: str) -> Fact:
        return self.facts[f"{station.id}.{name}"]

    def air(self, name: str) -> Fact:
        return self.facts[f"{PART}.{name}"]

    def stations(self, few: bool) -> Iterator[Made]:
        """Of lapse rates one or, where nothing crosses the line, several."""
        pairs = [
            (before, station) for before, station in pairwise(self.record.stations)
            if self.fact(station, "lapse_rate_from_previous").is_number
            and abs(self.fact(station, "climb_from_previous").number) >= LEAST_CLIMB
        ]  # fmt: skip
        for number, (before, station) in enumerate(pairs[: 1 if few else 2], start=1):
            yield self.lapse_rate(before, station, number)
        if pairs and not few:
            yield self.whole_line()
            if len(pairs) > 2:  # the lapse rates of the first two are asked for
                yield self.halfway(*pairs[-1])
        yield self.why_colder()
        if few or len(self.rainy) < 2:
            return
        yield self.wettest()

    @property
    def rainy(self) -> list[Station]:
        return [station for station in self.record.stations if station.annual_precip is not None]

    def lapse_rate(self, before: Station, station: Station, number: int) -> Made:
        right = self.fact(station, "lapse_rate_from_previous")
        given = self.between(before, station)
        told = " ".join(f"{one.label}: {self.fact(one, 'height').shown_exactly}, {self.fact(one, 'annual_mean_temp').shown_exactly}." for one in (before, station))
        draft = Draft(
            id="lapse_rate" if number == 1 else f"lapse_rate_{number}",
            prompt=f"{told} What is the lapse rate between them, in K km⁻¹, {COUNTED}?",
            solution=f"Difference of the temperatures divided by the difference of the heights in kilometres: {right.shown}.",
        )
        return number_entry(
            draft, right, given, LAPSE_SLIPS, self.catalogue,
            otherwise="Which is colder, and by how much? By how many kilometres is it higher? Divide the first by the second.",
        )  # fmt: skip

    def between(self, before: Station, station: Station) -> dict[str, Fact]:
        return {
            "temperature_before": self.fact(before, "annual_mean_temp"), "temperature": self.fact(station, "annual_mean_temp"),
            "height": self.fact(station, "height"), "height_before": self.fact(before, "height"),
        }  # fmt: skip

    def whole_line(self) -> Made:
        """From the lowest to the highest, left to be picked from the profile."""
        right = self.facts["lapse_rate"]
        given = _given(right)
        draft = Draft(
            id="whole_line",
            prompt=f"Take the lowest and the highest station from the profile on this page. What is the lapse rate between them, in K km⁻¹, {COUNTED}?",
            solution=f"Difference of the two temperatures divided by the difference of the two heights in kilometres: {right.shown}.",
        )
        return number_entry(
            draft, right, given, LAPSE_SLIPS, self.catalogue,
            otherwise="Read four numbers first: two heights and two temperatures.",
        )  # fmt: skip

    def halfway(self, before: Station, station: Station) -> Made:
        """The temperature at half the climb, by the lapse rate between two stations."""
        low, climb, rate = (
            self.fact(before, "annual_mean_temp"), self.fact(station, "climb_from_previous"), self.fact(station, "lapse_rate_from_previous"),
        )  # fmt: skip
        given = {"temperature_before": low, "lapse_rate": rate, "climb": climb}
        right = computed(f"{station.id}.halfway", "Mean halfway up", Expression("temperature_before - lapse_rate * climb / 2"), given, DEGC)
        draft = Draft(
            id="halfway",
            prompt=(
                f"{before.label} has a mean of {low.shown_exactly}. The lapse rate from there to {station.label} is {rate.shown_exactly}, "
                f"over a climb of {climb.shown_exactly}. What mean do you expect halfway up?"
            ),
            solution=f"Half the climb in kilometres times the lapse rate is taken off {low.shown_exactly}: {right.shown}.",
        )
        return number_entry(
            draft, right, given,
            (
                Mistake("clim.lapse-added", "temperature_before + lapse_rate * climb / 2", "adding where it gets colder"),
                Mistake("clim.lapse-whole-way", "temperature_before - lapse_rate * climb", "taking the whole climb"),
                Mistake("clim.lapse-per-kilometre", "temperature_before - lapse_rate", "taking the rate off once, whatever the climb"),
            ),
            self.catalogue, otherwise=HINT,
        )  # fmt: skip

    def why_colder(self) -> Made:
        draft = Draft(
            id="why_colder", prompt="Why is it colder higher up on this line?", needs=Needs.KNOWLEDGE,
            solution="Sunlight warms the ground, and the ground warms the air from below. Air that rises comes under less pressure, expands, and cools as it does.",
        )  # fmt: skip
        wrong = (
            Wrong("Because the wind is stronger there and blows the warmth away", "clim.lapse-wind"),
            Wrong("Because cold air is light and gathers on top", "clim.cold-air-rises"),
            Wrong("Because the ground there lies farther from the Sun", "clim.lapse-sign", "A few kilometres are nothing beside the distance of the Sun."),
        )
        return choice(draft, "Because air is warmed from the ground, and cools as it rises and expands", wrong, self.catalogue, salt=self.subject.id)

    def wettest(self) -> Made:
        ordered = sorted(self.rainy, key=lambda station: self.fact(station, "annual_precip").number)
        most = ordered[-1]
        others = [station for station in self.rainy if station is not most]
        top = max(self.record.stations, key=lambda station: self.fact(station, "height").number)
        wrong = [
            Wrong(station.label, "clim.higher-wetter" if station is top else "clim.wrong-column", _less(self.fact(station, "annual_precip")))
            for station in others
        ]
        draft = Draft(
            id="wettest", prompt="Read the bars of the profile. Where does most rain and snow fall in a year?",
            solution=f"At {most.label}, {self.fact(most, 'annual_precip').shown}. Rain grows with height only up to where the clouds hold most water.",
        )  # fmt: skip
        return choice(draft, most.label, wrong[-3:], self.catalogue, salt=self.subject.id)

    def crossing(self) -> Iterator[Made]:
        """Each step of the air, what it gains, and what that means for the lee side."""
        if self.asks_cloud_base:
            yield self.cloud_base()
        if self.air("cloud_forms").value and self.air("moist_lapse_rate").is_number:
            yield from (self.step(*step) for step in STEPS)
            yield self.warming()
        yield self.why_dry()

    @property
    def asks_cloud_base(self) -> bool:
        """Whether the cloud base is worked out, so that it is asked for and no other prompt may tell it."""
        return isinstance(self.air("cloud_base").working, Substitution) and "dew_point" in dict(_given(self.air("cloud_base")))

    def cloud_base(self) -> Made:
        right = self.air("cloud_base")
        given = _given(right)
        height = given["height"].shown_exactly
        draft = Draft(
            id="cloud_base",
            prompt=(
                f"Air at {height} has {given['temperature'].shown_exactly} and a dew point of {given['dew_point'].shown_exactly}. "
                f"For each kelvin between the two it must rise {given['rise_per_kelvin'].shown_number} m before cloud forms. At what height is that?"
            ),
            solution=f"The difference times {given['rise_per_kelvin'].shown_number} m, counted from {height}: {right.shown}.",
        )
        return number_entry(
            draft, right, given,
            (
                Mistake("clim.cloud-from-sea", "rise_per_kelvin * (temperature - dew_point)", "leaving out the height from which the air sets out"),
                Mistake("clim.spread-forgotten", "height + rise_per_kelvin * temperature", "taking the temperature instead of the difference"),
                Mistake("clim.spread-forgotten", "height + rise_per_kelvin * dew_point", "taking the dew point instead of the difference"),
            ),
            self.catalogue, otherwise="First the difference of temperature and dew point, then the rise for each kelvin of it, then add where it begins.",
            kept=(given["rise_per_kelvin"].id,),
        )  # fmt: skip

    @property
    def way(self) -> dict[str, Fact]:
        """All that the way of the air hangs on, by the names of `STEPS`."""
        return {
            "temperature": self.air("temperature"), "dry": self.air("dry_lapse_rate"), "moist": self.air("moist_lapse_rate"),
            "start": self.height_of("start"), "base": self.air("cloud_base"), "crest": self.height_of("crest"), "end": self.height_of("end"),
        }  # fmt: skip

    def step(self, name: str, asks: str, expression: str, why: str, mistakes: Sequence[Mistake]) -> Made:
        """From the start up to one of the steps, so that no prompt tells the answer to another one."""
        way = self.way
        wanted = Expression(expression)
        given = {symbol: way[symbol] for symbol in wanted.names}
        right = computed(f"{PART}.{name}", self.air(name).name, wanted, given, DEGC, figures=self.air(name).figures)
        base = "at the dotted line of the profile on this page" if self.asks_cloud_base else f"at {way['base'].shown_exactly}"
        draft = Draft(
            id=name,
            prompt=(
                f"Air sets out with {way['temperature'].shown_exactly} at {way['start'].shown_exactly}, crosses the crest at {way['crest'].shown_exactly} and sinks to "
                f"{way['end'].shown_exactly}. Cloud begins {base}. The dry lapse rate is {way['dry'].shown_exactly}, the moist one "
                f"{way['moist'].shown_exactly}. How warm is the air {asks}?"
            ),
            solution=f"{why} The air comes to {right.shown}.",
        )
        return number_entry(draft, right, way, mistakes, self.catalogue, otherwise=HINT)

    def height_of(self, end: str) -> Fact:
        return self.facts[f"{getattr(self.record.rain_shadow, end)}.height"]

    def warming(self) -> Made:
        right = self.air("warming")
        given = _given(right)
        base = "the dotted line of the profile on this page" if self.asks_cloud_base else given["cloud_base"].shown_exactly
        draft = Draft(
            id="warming",
            prompt=(
                f"Cloud stands from {base} up to the crest at {given['crest'].shown_exactly}. In it air cools by "
                f"{given['moist_lapse_rate'].shown_exactly}; without cloud it cools and warms by {given['dry_lapse_rate'].shown_exactly}. By how much is the air "
                "warmer when it is back at the height from which it set out?"
            ),
            solution=f"Only the way in cloud counts: up it cooled more slowly than it warms coming down. The difference of the two rates times that way is {right.shown}.",
        )
        return number_entry(
            draft, right, given | {"ground": self.height_of("start")},
            (
                Mistake("clim.cloud-from-ground", "(dry_lapse_rate - moist_lapse_rate) * (crest - ground)", "counting the whole climb as if it were in cloud"),
                Mistake("clim.dry-all-the-way", "dry_lapse_rate * (crest - cloud_base)", "forgetting that the air cooled on its way up"),
                Mistake("clim.rates-added", "(dry_lapse_rate + moist_lapse_rate) * (crest - cloud_base)", "adding the two rates"),
            ),
            self.catalogue, otherwise="Below the cloud base both ways cancel. Above it, by how much do the rates differ, and over how many kilometres?",
        )  # fmt: skip

    def why_dry(self) -> Made:
        cloud = bool(self.air("cloud_forms").value)
        draft = Draft(
            id="why_dry", prompt="Why does little rain fall on the lee side of a range that the wind crosses?", needs=Needs.KNOWLEDGE,
            solution="Air that sinks comes under more pressure and warms, so no water condenses: clouds dissolve. "
            + ("Much of its water has fallen before the crest." if cloud else "Where it lost water before the crest, it is drier still."),
        )  # fmt: skip
        wrong = (
            Wrong("The crest blocks the wind, so no air arrives there", "clim.wind-blocked"),
            Wrong("Air gets colder as it sinks, and cold air holds no rain", "clim.sinking-cools"),
            Wrong("The lee side lies farther from the clouds of the sea, and air loses water with distance only", "clim.distance-only"),
        )
        right = "The air sinks and warms there, so clouds dissolve, and it has lost water before"
        return choice(draft, right, wrong, self.catalogue, salt=self.subject.id)


def _given(fact: Fact) -> dict[str, Fact]:
    """What a fact was worked out from, by the names of its formula."""
    return {name: part for name, part in fact.working.given if isinstance(part, Fact)} if isinstance(fact.working, Substitution) else {}


def _less(fact: Fact) -> str:
    return f"There it is {fact.shown}."

