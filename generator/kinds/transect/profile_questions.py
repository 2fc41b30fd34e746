"""Questions that are read off the profile of a line: stations and stretches that stand out, and statements that it bears out."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import pairwise

from generator.kinds.transect.asked_line import LEAST_CLIMB, AskedLine
from generator.kinds.transect.record import Station
from generator.quantities import shown
from generator.quantities.text import sentence
from generator.questions.claims import Claim, which_hold
from generator.questions.making import FEWEST_PAIRS, Draft, Wrong, as_option, matching, reading
from generator.questions.question import Made, Needs, Pair, Rejected

FEWEST = 4
"""Stations, or stretches between them, to choose from."""
PLAIN = 1.05
"""How many times as large what stands out must be as the next."""
MUCH = 1.5
"""How many times as much rain is plainly more."""
LEVEL, APART = 150.0, 1.0
"""Heights [m] that count as the same, and means [K] that then are plainly different."""
ALIKE = 1.1
"""How many times as large the largest lapse rate may be as the smallest, to be called about the same."""

BELTS = 4
"""Belts of plants that are matched at most."""
WARMINGS = tuple(half / 2 for half in range(6, 17))
"""By how much [K] it is supposed to become warmer along the line."""
NEAR, CLEAR = 1.5, 2.0
"""How near [K] a station then comes to the mean of the one below, and how much farther away it is from that of any other."""

Stretch = tuple[Station, Station]


def largest_drop(asked: AskedLine) -> Made:
    """The two neighbours between which the precipitation of a year drops most; the page tells where most falls."""
    item, rainy = "largest_drop", asked.rainy
    drops = {pair: asked.number(pair[0], "annual_precip") - asked.number(pair[1], "annual_precip") for pair in pairwise(rainy)}
    largest = _standing_out(drops)
    if len(rainy) < FEWEST or largest is None:
        return Rejected(item, "too few stations tell their rain, or it drops nowhere plainly more than elsewhere")
    driest, rise = min(rainy, key=lambda station: asked.number(station, "annual_precip")), min(drops, key=lambda pair: drops[pair])
    before, after = (asked.told(station, "annual_precip") for station in largest)
    draft = Draft(
        id=item, prompt="Compare the bars of the profile from left to right. From which station to the next does the precipitation of a year drop by the largest amount?",
        solution=f"{sentence(_from_to(largest))}: {before}, then {after}.",
        hints=("The bars below the profile show rain and snow, its line the height of the ground.", "Take the bars two by two: by how many millimetres is the right one shorter?"),
    )  # fmt: skip
    wrong = [
        *([([_stretch(rise)], Wrong("", "clim.wrong-end", "There it does not drop: it rises most."))] if drops[rise] < 0 else []),
        ([_stretch(pair) for pair in drops if pair[1] is driest and pair != largest and drops[pair] > 0], Wrong("", "clim.low-is-fall", f"Least falls at {driest.label}, {asked.told(driest, 'annual_precip')}, but the station before gets only {asked.told(rainy[rainy.index(driest) - 1], 'annual_precip')}.")),
    ]
    return reading(draft, [_stretch(pair) for pair in drops], [_stretch(largest)], wrong, asked.catalogue, otherwise="Subtract neighbour from neighbour, bar by bar.")


def steepest_ground(asked: AskedLine) -> Made:
    """Only where the largest climb is not the steepest: height over distance."""
    item = "steepest_ground"
    slopes = {pair: _slope(asked, pair) for pair in asked.pairs}
    steepest = _standing_out(slopes)
    largest = max(asked.pairs, key=lambda pair: abs(_climb(asked, pair)), default=None)
    longest = max(asked.pairs, key=lambda pair: _far(asked, pair), default=None)
    if len(asked.pairs) < FEWEST or steepest is None or steepest == largest or largest is None or longest is None:
        return Rejected(item, "no stretch of the ground stands out, or the largest climb is the steepest too")
    draft = Draft(
        id=item, prompt="Between which two neighbouring stations is the ground steepest?",
        solution=(
            f"From {steepest[0].label} to {steepest[1].label} it changes by {_height(asked, steepest)} over {_distance(asked, steepest)}: "
            f"{_steepness(asked, steepest)}, more than anywhere else."
        ),
        hints=("Steepness is height gained for each kilometre along the line.", "For each stretch, divide the difference of the heights by the difference of the distances; both stand in the rows below the profile."),
    )  # fmt: skip
    wrong = [
        ([_stretch(largest)], Wrong("", "clim.climb-not-slope", f"There the climb is larger, but so is the distance: {_sloping(asked, largest)}.")),
        *(([_stretch(pair)], Wrong("", "clim.high-is-steep", f"The ground is highest there, but {_sloping(asked, pair)}.")) for pair in asked.pairs if asked.top in pair and pair != steepest),
        ([_stretch(longest)], Wrong("", "clim.climb-not-slope", f"That is the longest stretch, but {_sloping(asked, longest)}.")),
    ]
    labels = [_stretch(pair) for pair in asked.pairs]
    return reading(draft, labels, [_stretch(steepest)], wrong, asked.catalogue, otherwise="Divide the climb by the distance, stretch by stretch.")


def rule_breaker(asked: AskedLine) -> Made:
    """The one station that lies lower than its neighbour and is colder all the same."""
    item = "rule_breaker"
    found = [pair for pair in asked.pairs if abs(_climb(asked, pair)) >= LEAST_CLIMB and asked.fact(pair[1], "lapse_rate_from_previous").is_number and asked.number(pair[1], "lapse_rate_from_previous") < 0]
    if len(found) != 1 or len(asked.stations) < FEWEST:
        return Rejected(item, "not exactly one station breaks the rule that higher means colder")
    low, high = sorted(found[0], key=lambda station: asked.number(station, "height"))
    if any(low.label in explanation.asks and high.label in explanation.asks for explanation in asked.subject.record.explanations):
        return Rejected(item, "a heading of the page tells it")
    coldest = min(asked.stations, key=lambda station: asked.number(station, "annual_mean_temp"))
    warmest = max(asked.stations, key=lambda station: asked.number(station, "annual_mean_temp"))
    lowest = min(asked.stations, key=lambda station: asked.number(station, "height"))
    draft = Draft(
        id=item, prompt="As a rule, the higher of two neighbouring stations is the colder one. Which station is colder than a neighbour although it lies lower?",
        solution=f"{low.label} at {asked.told(low, 'height')} has {asked.told(low, 'annual_mean_temp')}; {high.label} at {asked.told(high, 'height')} has {asked.told(high, 'annual_mean_temp')}.",
        hints=("Compare neighbours in two rows below the profile: height, and mean of the year.", "Look for two neighbours of which the lower one has the smaller mean."),
    )  # fmt: skip
    wrong = [
        ([high.label], Wrong("", "num.one-of-two", f"It lies higher than {low.label}, and is the warmer one of these two.")),
        ([coldest.label], Wrong("", "num.one-of-two", f"It is the coldest of all, but at {asked.told(coldest, 'height')} it lies higher than its neighbours.")),
        ([lowest.label] if lowest is warmest else [], Wrong("", "num.one-of-two", "It is the lowest of all, but the warmest too.")),
    ]
    return reading(draft, [station.label for station in asked.stations], [low.label], wrong, asked.catalogue, otherwise="Is this station lower than a neighbour, and colder than that one? Compare both rows.")


def belts_match(asked: AskedLine, filled: Callable[[str], str]) -> Made:
    """What would suit each station if it became as much warmer as it is at the station below; only of a line that climbs all the way."""
    item = "belts_match"
    told = [station for station in asked.stations if station.grows_there]
    means = [asked.number(station, "annual_mean_temp") for station in told]
    if any(warm <= cold for warm, cold in pairwise(means)):
        return Rejected(item, "it does not get colder from each station to the next")
    fitting = {warmer: [n for n in range(1, len(told)) if _fits(means, n, warmer)] for warmer in WARMINGS}
    warmer = max(fitting, key=lambda by: (len(fitting[by]), -sum(abs(means[n] + by - means[n - 1]) for n in fitting[by])))
    places = fitting[warmer][:BELTS]
    if len(places) < FEWEST_PAIRS:
        return Rejected(item, "too few stations tell what grows there, or no one warming lifts them to the means of those below")
    by = f"{shown.written(f'{warmer:g}')} °C"
    pairs = [
        Pair(
            told[n].label, as_option(filled(told[n - 1].grows_there or "")),
            f"With {by} more it has {shown.number(means[n] + warmer)} °C. Nearest to that is {told[n - 1].label} as it is now, with {asked.told(told[n - 1], 'annual_mean_temp')}.",
        )
        for n in places
    ]  # fmt: skip
    draft = Draft(
        id=item, needs=Needs.BOTH,
        prompt=f"Suppose that it became {by} warmer along the whole line, and that the belts of rain moved up as well. Match each station with the plants that would then suit its mean.",
        solution="Plants follow the climate, and not the height itself: each belt moves up to where it becomes as warm as it was below. One of the answers fits none of the lines.",
        hints=(f"Add {by} to the mean of each station.", "Which station has about that mean now, and what grows there?"),
    )  # fmt: skip
    return matching(draft, pairs, [as_option(filled(told[places[-1]].grows_there or ""))], salt=asked.salt)


def _fits(means: list[float], place: int, warmer: float) -> bool:
    """Whether a station that becomes so much warmer has about the mean of the one below it, and of no other."""
    away = [abs(means[place] + warmer - mean) for mean in means]
    return away[place - 1] <= NEAR and all(far >= away[place - 1] + CLEAR for n, far in enumerate(away) if n != place - 1)


def profile_shows(asked: AskedLine) -> Made:
    """Which statements the numbers of the stations bear out."""
    draft = Draft(
        id="profile_shows", prompt="Which of these statements agree with the numbers of this profile?", solution="",
        hints=("Take one statement at a time, and look up the two stations that it compares.", "Heights, distances and means stand in rows below the profile, rain and snow in the bars."),
    )  # fmt: skip
    return which_hold(draft, list(_claims(asked)), asked.catalogue, salt=asked.salt)


def _claims(asked: AskedLine) -> Iterator[Claim]:
    if len(asked.rainy) >= FEWEST:
        yield from _of_rain(asked)
    yield from _of_equal_heights(asked)
    yield from _of_slopes(asked)
    rates = [asked.number(station, "lapse_rate_from_previous") for _, station in asked.climbs]
    if len(rates) >= FEWEST and min(rates) > 0 and max(rates) < ALIKE * min(rates):
        yield Claim(
            "The temperature falls about as much per kilometre of height low down as high up", "The temperature falls far more per kilometre of height high up than low down",
            f"The lapse rates from station to station run from {shown.number(min(rates))} to {shown.number(max(rates))} K km⁻¹.", "clim.faster-higher",
        )  # fmt: skip
    if asked.subject.record.rain_shadow is not None and asked.air("cloud_forms").value and asked.air("moist_lapse_rate").is_number:
        yield from _of_air(asked)


def _of_rain(asked: AskedLine) -> Iterator[Claim]:
    wet, top = asked.wettest, asked.top
    warm = max(asked.rainy, key=lambda station: asked.number(station, "annual_mean_temp"))
    for other, text, idea in ((top, "higher", "clim.higher-wetter"), (warm, "warmer", "clim.warm-place-wet")):
        if other in asked.rainy and asked.number(wet, "annual_precip") >= PLAIN * asked.number(other, "annual_precip"):
            yield Claim(
                f"{other.label} is {text} than {wet.label}, but gets less rain and snow", f"{other.label} is {text} than {wet.label}, and so gets more rain and snow",
                f"{other.label} gets {asked.told(other, 'annual_precip')}, {wet.label} {asked.told(wet, 'annual_precip')}.", idea,
            )  # fmt: skip


def _of_equal_heights(asked: AskedLine) -> Iterator[Claim]:
    """On the two sides of the crest: as high, but not as wet, or not as warm."""
    place = asked.stations.index(asked.top)
    sides = [(one, other) for one in asked.stations[:place] for other in asked.stations[place + 1 :] if abs(asked.number(one, "height") - asked.number(other, "height")) <= LEVEL]
    for one, other in sides:
        if one in asked.rainy and other in asked.rainy and asked.number(one, "annual_precip") >= MUCH * asked.number(other, "annual_precip"):
            yield Claim(
                f"{one.label} and {other.label} are about equally high, but {one.label} is far wetter", f"{one.label} and {other.label} are about equally high, and so about equally wet",
                f"{one.label} gets {asked.told(one, 'annual_precip')}, {other.label} {asked.told(other, 'annual_precip')}.", "clim.height-tells-rain",
            )  # fmt: skip
            break
    for one, other in sides:
        cold, warm = asked.number(one, "annual_mean_temp"), asked.number(other, "annual_mean_temp")
        if warm - cold >= APART:
            yield Claim(
                f"At about the same height it is warmer at {other.label} than at {one.label}", f"{other.label} and {one.label} are about equally high, and so equally warm",
                f"{other.label} at {asked.told(other, 'height')} has {asked.told(other, 'annual_mean_temp')}, {one.label} at {asked.told(one, 'height')} {asked.told(one, 'annual_mean_temp')}.", "clim.lee-mirror",
                instead="Compare the two numbers in the row of means.",
            )  # fmt: skip
            break


def _of_slopes(asked: AskedLine) -> Iterator[Claim]:
    """Two stretches of which the smaller climb is the steeper one."""
    up = [pair for pair in asked.pairs if _climb(asked, pair) >= LEAST_CLIMB]
    found = [(one, other) for one in up for other in up if _climb(asked, one) * PLAIN < _climb(asked, other) and _slope(asked, one) > MUCH * _slope(asked, other)]
    for one, other in found[:1]:
        smaller = f"The climb {_from_to(one)} is smaller than that {_from_to(other)}"
        yield Claim(
            f"{smaller}, but steeper", f"{smaller}, and so less steep",
            f"{_begun(_from_to(one))} {_height(asked, one)} over {_distance(asked, one)}, and {_from_to(other)} {_height(asked, other)} over {_distance(asked, other)}.", "clim.climb-not-slope",
        )  # fmt: skip


def _of_air(asked: AskedLine) -> Iterator[Claim]:
    dry, moist = asked.air("dry_lapse_rate"), asked.air("moist_lapse_rate")
    yield Claim(
        "Rising air cools more slowly in the cloud than below it", "Rising air cools at one rate from the ground to the crest",
        f"It cools by {dry.shown_exactly} below the cloud, and by {moist.shown_exactly} in it.", "clim.dry-all-the-way",
    )  # fmt: skip


def _standing_out(values: dict[Stretch, float]) -> Stretch | None:
    """The stretch with the largest value, if it is plainly larger than any other."""
    ordered = sorted(values, key=lambda pair: -values[pair])
    return ordered[0] if len(ordered) > 1 and values[ordered[0]] > max(0.0, PLAIN * values[ordered[1]]) else None


def _stretch(pair: Stretch) -> str:
    return f"{pair[0].label} to {pair[1].label}"


def _from_to(pair: Stretch) -> str:
    return f"from {pair[0].label} to {pair[1].label}"


def _climb(asked: AskedLine, pair: Stretch) -> float:
    return asked.number(pair[1], "height") - asked.number(pair[0], "height")


def _far(asked: AskedLine, pair: Stretch) -> float:
    return asked.number(pair[1], "distance") - asked.number(pair[0], "distance")


def _slope(asked: AskedLine, pair: Stretch) -> float:
    """[m/km], upwards or downwards."""
    far = _far(asked, pair)
    return abs(_climb(asked, pair)) / far if far else 0.0


def _height(asked: AskedLine, pair: Stretch) -> str:
    return asked.told(pair[1], "climb_from_previous").lstrip(shown.MINUS)


def _distance(asked: AskedLine, pair: Stretch) -> str:
    return f"{shown.written(f'{_far(asked, pair):g}')} km"


def _steepness(asked: AskedLine, pair: Stretch) -> str:
    return f"{shown.number(_slope(asked, pair))} m for each kilometre"


def _sloping(asked: AskedLine, pair: Stretch) -> str:
    """What the ground does on a stretch, in numbers."""
    return f"it changes by {_height(asked, pair)} over {_distance(asked, pair)}, that is {_steepness(asked, pair)}"


def _begun(text: str) -> str:
    return text[:1].upper() + text[1:]
