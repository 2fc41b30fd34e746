"""Questions on what a climate means for plants: what limits them, and what would grow in another climate."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import groupby

from generator.kind import Subject
from generator.kinds.biome.record import BiomeRecord, Station
from generator.quantities import shown
from generator.questions.making import Draft, Wrong, choice
from generator.questions.misconception import Catalogue
from generator.questions.mistake import apart
from generator.questions.question import Made, Needs, Rejected
from generator.science.biome_regions import NAMES, biome_region

ROUNDED = 2
"""Significant figures of a precipitation that is made up, so that it looks no more exact than it is."""
WARMER, WETTER = 2.0, 1.25
"""How far a climate must lie inside its region of the map: by so many degrees, and so many times as wet or as dry.

The borders of the map are drawn by eye, and nature has none; a point beside one can be taken for either side.
"""
TEMPERATURES, PRECIPITATIONS = range(-15, 30), range(20, 4400, 20)
"""Where other climates are looked for: about the extent of the map [degC, mm]."""


def limiting_factor(subject: Subject[BiomeRecord], station: Station, catalogue: Catalogue) -> Made:
    """What more of the plentiful one does, where the other limits production; not asked where the two are too close to tell."""
    warmth, water = (subject.facts[f"{station.id}.{name}"] for name in ("npp_by_temperature", "npp_by_precipitation"))
    if not apart(warmth.number, water.number):
        return Rejected("limiting_factor", "temperature and precipitation allow about the same production")
    change, large, small = (
        ("more precipitation falls, and it is as warm as before", "precipitation", "temperature")
        if warmth.number < water.number
        else ("it gets warmer, and as much precipitation falls as before", "temperature", "precipitation")
    )
    draft = Draft(
        id="limiting_factor", supposed=True, needs=Needs.BOTH,
        prompt=(
            f"By a model, temperature alone would let plants at {station.label} produce {warmth.shown} of dry matter, "
            f"and precipitation alone {water.shown}. Suppose {change}. What does the model then give?"
        ),
        hints=("Plants need warmth and water at once: neither can stand in for the other.", "Which of the two numbers is the smaller one? Does the change raise that one?"),
        solution=f"The smaller of the two limits decides, {min(warmth, water, key=lambda fact: fact.number).shown}, and the change does not raise it.",
    )  # fmt: skip
    wrong = (
        Wrong(f"More, for {large} allows more", "bio.limit-larger"),
        Wrong("A little more, for temperature and precipitation count alike", "bio.limit-mean"),
        Wrong("As much as before, for plants are adapted to the climate", "bio.limit-none", "As much as before is right, but for another reason.", "Adapted plants would grow more as well if they got more of what is short."),
    )
    return choice(draft, f"As much as before, for {small} sets the limit", wrong, catalogue, salt=subject.id)


def which_climate(subject: Subject[BiomeRecord], station: Station, catalogue: Catalogue) -> Made:
    """Which region of the map a climate lies in that is as warm as a station, or else as wet; only from a station in the region of its biome."""
    mean, total = (subject.facts[f"{station.id}.{name}"] for name in ("annual_mean_temp", "annual_precip"))
    own = biome_region(mean.number, total.number)
    if own is None or own != subject.record.region:
        return Rejected("which_climate", f"the map does not show {station.label} in the region of its biome")
    wetter = _inmost([_Climate(mean.number, rain) for rain in PRECIPITATIONS], own)
    found = wetter or _inmost([_Climate(temp, total.number) for temp in TEMPERATURES], own)
    if found is None:
        return Rejected("which_climate", "the map shows no other region well off its borders as warm or as wet as that")
    rain, warmth = f"{shown.number(found.total, ROUNDED)} mm", f"{shown.written(f'{found.mean:.0f}')} °C"
    told = (
        f"Another place has the same annual mean as {station.label}, {mean.shown}, but gets {rain} of precipitation in a year instead of {total.shown}."
        if wetter
        else f"Another place gets as much precipitation in a year as {station.label}, {total.shown}, but its annual mean is {warmth} instead of {mean.shown}."
    )
    at_that_mean = {one.region: one for one in _stretches([_Climate(found.mean, total) for total in PRECIPITATIONS])}
    at_that_rain = {one.region: one for one in _stretches([_Climate(temp, found.total) for temp in TEMPERATURES])}
    same, other = (at_that_mean, at_that_rain) if wetter else (at_that_rain, at_that_mean)
    alone, other_alone = ("clim.temp-alone", "clim.rain-alone") if wetter else ("clim.rain-alone", "clim.temp-alone")
    wrong = [same[own].as_wrong(alone)] if own in same else []
    taken = {found.region, own}
    for regions, idea in ((other, other_alone), (same, "clim.any-climate"), (other, "clim.any-climate")):
        stretch = max((one for one in regions.values() if one.region not in taken), key=lambda one: len(one.points), default=None)
        if stretch is not None:
            wrong.append(stretch.as_wrong(idea))
            taken.add(stretch.region)
    draft = Draft(
        id="which_climate", needs=Needs.MAP,
        prompt=f"{told} In which region of the map on the page “Biomes compared” does it lie?",
        solution=f"At {mean.shown if wetter else warmth} and {rain if wetter else total.shown} the map shows the region “{NAMES[found.region]}”.",
        hints=("Which of these regions reach that temperature? Which of them reach that precipitation too?", "On the map find the temperature on its axis, then go up to the precipitation."),
    )  # fmt: skip
    return choice(draft, NAMES[found.region], wrong[:3], catalogue, salt=subject.id)


@dataclass(frozen=True)
class _Climate:
    """A point of the map."""

    mean: float
    """[degC]"""
    total: float
    """[mm]"""

    @property
    def region(self) -> str | None:
        return biome_region(self.mean, self.total)

    @property
    def is_inside(self) -> bool:
        """Whether it lies well inside one region, and not beside a border."""
        warmths, rains = (self.mean - WARMER, self.mean, self.mean + WARMER), (self.total / WETTER, self.total, self.total * WETTER)
        return len({biome_region(mean, total) for mean in warmths for total in rains}) == 1


@dataclass(frozen=True)
class _Stretch:
    """A piece of a line through the map, all in one region; the line runs along the precipitation at one mean, or along the warmth."""

    region: str
    points: Sequence[_Climate]
    along_rain: bool

    def as_wrong(self, idea: str) -> Wrong:
        """Its region as a wrong option; what is said of it is where on the line the map does show it."""
        first, last = self.points[0], self.points[-1]
        if self.along_rain:
            told = f"At this mean the map shows it at about {shown.number(first.total, ROUNDED)} to {shown.number(last.total, ROUNDED)} mm."
        else:
            told = f"With that much precipitation the map shows it at about {shown.written(f'{first.mean:.0f}')} to {shown.written(f'{last.mean:.0f}')} °C."
        return Wrong(NAMES[self.region], idea, told)


def _inmost(line: Sequence[_Climate], own: str) -> _Climate | None:
    """The middle of the longest stretch that lies well inside one region other than one's own, rounded as it is shown."""
    inside = [stretch for stretch in _stretches([point for point in line if point.is_inside]) if stretch.region != own]
    longest = max(inside, key=lambda stretch: len(stretch.points), default=None)
    if longest is None:
        return None
    middle = longest.points[len(longest.points) // 2]
    return _Climate(middle.mean, float(shown.rounded(middle.total, ROUNDED))) if longest.along_rain else middle


def _stretches(line: Sequence[_Climate]) -> Iterator[_Stretch]:
    for region, points in groupby(line, key=lambda point: point.region):
        if region is not None:
            yield _Stretch(region, list(points), along_rain=line[0].mean == line[-1].mean)
