"""Questions on what a climate means for plants: what limits them, why their nutrients are where they are, which climate is a biome's own."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from generator.kind import Subject
from generator.kinds.biome.record import BiomeRecord, Station, UsualRange
from generator.quantities import shown
from generator.quantities.fact import Fact
from generator.quantities.text import filled
from generator.questions.making import Draft, Wrong, as_option, choice, drawn
from generator.questions.misconception import Catalogue
from generator.questions.mistake import apart
from generator.questions.question import Made, Needs, Rejected
from generator.science.biome_regions import NAMES, biome_region

ROUNDED = 2
"""Significant figures of the climates that are offered, so that none looks more exact than another."""
TEMPERATURES, PRECIPITATIONS = range(-15, 30), range(20, 4400, 20)
"""Where other climates are looked for: about the extent of the map [degC, mm]."""
STORES = (
    ("nit.decomposer-cleaner", "Decomposers set no nutrients free", "Decomposers clear dead matter away, but set no nutrients free in doing so"),
    ("carb.made-new", "Plants make nutrients of sunlight", "Plants make their nutrients of sunlight, and keep them where they were made"),
    ("nit.energy-nutrient", "Energy turns into nutrients", "The energy of dead plants turns into nutrients where they fall"),
    ("nit.leaf-n2", "Leaves take them out of the air", "Leaves take the nutrients out of the air, and pass them on to where they are kept"),
)
"""Wrong reasons for where nutrients are kept, wrong in every biome: the idea, and how it is said briefly and at length."""


def limiting_factor(subject: Subject[BiomeRecord], station: Station, catalogue: Catalogue) -> Made:
    """Which of the two limits of production counts; not asked where they are too close to tell."""
    warmth, water = (subject.facts[f"{station.id}.{name}"] for name in ("npp_by_temperature", "npp_by_precipitation"))
    if not apart(warmth.number, water.number):
        return Rejected("limiting_factor", "temperature and precipitation allow about the same production")
    small, large = ("temperature", "precipitation") if warmth.number < water.number else ("precipitation", "temperature")
    draft = Draft(
        id="limiting_factor",
        prompt=(
            f"By the Miami model the mean temperature at {station.label} alone would allow plants to build up {warmth.shown} of dry matter, "
            f"the annual precipitation alone {water.shown}. What limits their growth, by these numbers?"
        ),
        hints=("Plants need warmth and water at once: neither can stand in for the other.", "Which of the two numbers is reached first, as growth goes up from zero?"),
        solution=f"The smaller of the two limits decides: {min(warmth, water, key=lambda fact: fact.number).shown}.",
    )
    wrong = (
        Wrong(f"The {large}, because it allows more", "bio.limit-larger"),
        Wrong("Both: growth lies half way between what temperature and precipitation allow", "bio.limit-mean"),
        Wrong("Neither, because plants of the place are adapted to it", "bio.limit-none"),
    )
    return choice(draft, f"The {small}, because it allows less", wrong, catalogue, salt=subject.id)


def nutrients(subject: Subject[BiomeRecord], catalogue: Catalogue) -> Made:
    """Why the nutrients are where the record says that they are."""
    soil = subject.record.soil
    if soil is None:
        return Rejected("nutrients", "the record says nothing of soil")
    said = _filled(subject, (soil.nutrients_held_in, soil.why, soil.deeper or "", *(text for one in soil.wrong for text in (one.text, one.because or ""))))
    if said is None:
        return Rejected("nutrients", "its texts name facts of other records")
    held, why, deeper, *told = said
    draft = Draft(
        id="nutrients",
        prompt=f"{subject.record.title}: most nutrients are held in {held}. Why is that so?",
        solution=f"{as_option(deeper)}." if deeper else f"They are held there because {why}.",
        needs=Needs.KNOWLEDGE,
        hints=("Nutrients stay where they are set free slowly, or taken up at once, or not washed out.", "How fast does dead matter decay there, and how much water seeps through the soil?"),
    )
    if soil.wrong:
        own = [Wrong(as_option(text), one.misconception, because) for one, text, because in zip(soil.wrong, told[::2], told[1::2], strict=True)]
        return choice(draft, as_option(why), own, catalogue, salt=subject.id)
    stores = [Wrong(min(texts, key=lambda text: abs(len(text) - len(why))), idea) for idea, *texts in STORES]
    return choice(draft, as_option(why), drawn(stores, subject.id, "nutrients")[:3], catalogue, salt=subject.id)


def which_climate(subject: Subject[BiomeRecord], catalogue: Catalogue) -> Made:
    """A station kept for practice among other climates; only where it lies in the region of its biome, and they outside."""
    record = subject.record
    station = next((one for one in record.stations if one.use == "practice"), None)
    if station is None:
        return Rejected("which_climate", "no station is kept for practice")
    mean, total = (subject.facts[f"{station.id}.{name}"] for name in ("annual_mean_temp", "annual_precip"))
    own = _Climate.of(mean, total)
    if record.region == "none" or own.region != record.region:
        return Rejected("which_climate", f"the map does not show {station.label} in the region of its biome")
    others = _elsewhere(own, record.usual_range)
    if others is None:
        return Rejected("which_climate", "the map knows too few other climates as warm or as wet")
    draft = Draft(
        id="which_climate",
        prompt=(
            f"{record.title}: which pair of annual mean temperature and annual precipitation, rounded, fits this biome best? "
            "Think of the map of temperature and precipitation."
        ),
        solution=f"These are the numbers of {station.label}, another station of this biome; on the map it lies in the region “{NAMES[record.region]}”.",
        hints=("Decide on the temperature first, then on the precipitation that goes with it.", f"Where on the map does the region “{NAMES[record.region]}” lie: how warm, and how wet?"),
        needs=Needs.BOTH,
    )
    ideas = ("clim.temp-alone", "clim.rain-alone", "clim.any-climate")
    wrong = [Wrong(other.text, idea, other.told) for other, idea in zip(others, ideas, strict=True)]
    return choice(draft, own.text, wrong, catalogue, salt=subject.id)


@dataclass(frozen=True)
class _Climate:
    """A point of the map, rounded as it is shown."""

    mean: float
    """[degC]"""
    total: float
    """[mm]"""

    @classmethod
    def of(cls, mean: Fact, total: Fact) -> _Climate:
        return cls(_round(mean.number), _round(total.number))

    @property
    def region(self) -> str | None:
        return biome_region(self.mean, self.total)

    @property
    def text(self) -> str:
        return f"{shown.number(self.mean, ROUNDED)} °C and {shown.number(self.total, ROUNDED)} mm"

    @property
    def told(self) -> str:
        """Where the map shows it, as feedback to one who picked it."""
        return f"On the map this climate lies in the region “{NAMES[self.region]}”." if self.region else "On the map this climate lies in no region."

    def within(self, usual: UsualRange) -> bool:
        return _between(self.mean, usual.annual_mean_temp) and _between(self.total, usual.annual_precip)


def _elsewhere(own: _Climate, usual: Sequence[UsualRange]) -> tuple[_Climate, _Climate, _Climate] | None:
    """As warm but not as wet, as wet but not as warm, and neither.

    Together with the right one the three make a square, so that none stands out by what it shares with the rest.
    """
    along = _middle([_Climate(mean, own.total) for mean in map(_round, TEMPERATURES)], own, usual)
    if along is None:
        return None
    mean = along.mean
    rains = [_round(total) for total in PRECIPITATIONS]
    up = _middle([_Climate(own.mean, total) for total in rains], own, usual) or _middle([_Climate(mean, total) for total in rains], own, usual)
    if up is None:
        return None
    found = (_Climate(own.mean, up.total), along, _Climate(mean, up.total))
    return found if all(_is_other(one, own, usual) for one in found) and len({own, *found}) == len(found) + 1 else None


def _middle(line: Sequence[_Climate], own: _Climate, usual: Sequence[UsualRange]) -> _Climate | None:
    """The middle of the longest stretch of a line that lies in one other region."""
    stretches = [stretch for stretch in _stretches(line) if stretch[0].region and _is_other(stretch[len(stretch) // 2], own, usual)]
    longest = max(stretches, key=len, default=None)
    return longest[len(longest) // 2] if longest else None


def _stretches(line: Sequence[_Climate]) -> Iterator[list[_Climate]]:
    stretch: list[_Climate] = []
    for point in line:
        if stretch and point.region != stretch[0].region:
            yield stretch
            stretch = []
        stretch.append(point)
    yield stretch


def _is_other(climate: _Climate, own: _Climate, usual: Sequence[UsualRange]) -> bool:
    return climate.region != own.region and not any(climate.within(one) for one in usual)


def _round(value: float) -> float:
    return float(shown.rounded(value, ROUNDED))


def _between(value: float, ends: tuple[float, float]) -> bool:
    return float(ends[0]) <= value <= float(ends[1])


def _filled(subject: Subject[BiomeRecord], texts: Sequence[str]) -> list[str] | None:
    """The texts with their facts put in; none where one of them names a fact of another record."""
    try:
        return [filled(text, subject.facts) for text in texts]
    except KeyError:
        return None
