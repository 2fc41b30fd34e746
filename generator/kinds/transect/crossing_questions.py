"""Questions on air that crosses a crest: where cloud begins, how warm it is step by step, and why the lee side is dry."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from generator.kinds.transect.asked_line import AskedLine, given_of
from generator.kinds.transect.crossing import PART
from generator.kinds.transect.record import Station
from generator.quantities.amount import Amount
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed, stated
from generator.quantities.units import unit
from generator.quantities.working import Substitution
from generator.questions.making import FEWEST_STEPS, Draft, Wrong, choice, number_entry, ordering
from generator.questions.mistake import Mistake, as_shown
from generator.questions.question import Made, Needs, Rejected

DEGC = unit("degC")
HINT = "Work in kilometres, and count only the part of the way on which this rate holds."
MOST_STAGES, APART = 5, 150.0
"""Stages of the air that are put in order at most, and how far [m] their heights must be apart."""
COOLER, HIGHER = 2.0, 0.1
"""How much cooler [K] the air is from one day to the next, and by which part of the way to the crest its cloud base lies higher."""
_UP_DRY, _UP_MOIST = "dry * (base - start)", "moist * (crest - base)"
STEPS = (
    (
        "base_temperature", "where cloud begins", f"temperature - {_UP_DRY}", "Which rate holds as long as there is no cloud, and how far does the air rise without it?",
        "Below the cloud base no water condenses, so the air cools by the dry lapse rate.",
        (
            Mistake("clim.moist-everywhere", "temperature - moist * (base - start)", "taking the moist rate below the cloud"),
            Mistake("clim.lapse-added", f"temperature + {_UP_DRY}", "adding where the air cools"),
            Mistake("clim.lapse-per-kilometre", "temperature - dry", "taking the rate off once, whatever the climb"),
        ),
    ),
    (
        "crest_temperature", "at the crest", f"temperature - {_UP_DRY} - {_UP_MOIST}", "Draw the way: where does the air rise without cloud, and where in cloud?",
        "Up to the cloud base the dry lapse rate holds. In cloud condensing water warms the air, so the moist one holds up to the crest.",
        (
            Mistake("clim.dry-all-the-way", "temperature - dry * (crest - start)", "going on with the dry rate in the cloud"),
            Mistake("clim.moist-everywhere", "temperature - moist * (crest - start)", "taking the moist rate from the ground up"),
            Mistake("clim.cloud-from-ground", f"temperature - {_UP_DRY} - moist * (crest - start)", "counting the way below the cloud twice"),
            Mistake("clim.lapse-added", f"temperature + {_UP_DRY} + {_UP_MOIST}", "adding where the air cools"),
        ),
    ),
    (
        "lee_temperature", "down there", f"temperature - {_UP_DRY} - {_UP_MOIST} + dry * (crest - end)", "Draw the way: where does the air rise without cloud, where in cloud, where does it sink?",
        "Up it cools by the dry rate and then by the moist one. Down it warms by the dry rate all the way, for the cloud is gone.",
        (
            Mistake("clim.lee-mirror", f"temperature - {_UP_DRY} - {_UP_MOIST} + moist * (crest - end)", "taking the moist rate on the way down"),
            Mistake("clim.dry-all-the-way", "temperature - dry * (crest - start) + dry * (crest - end)", "taking the dry rate up and down"),
            Mistake("clim.sinking-cools", f"temperature - {_UP_DRY} - {_UP_MOIST} - dry * (crest - end)", "cooling the air on its way down"),
        ),
    ),
)  # fmt: skip
"""The steps of the air: which temperature, its place in words, how it follows from the start, what to draw first, why, and the usual slips."""


def crossing(asked: AskedLine) -> Iterator[Made]:
    """Each step of the air, what it gains, and what that means for the lee side."""
    if _asks_cloud_base(asked):
        yield cloud_base(asked)
    if asked.air("cloud_forms").value and asked.air("moist_lapse_rate").is_number:
        yield from (_step(asked, day, *step) for day, step in enumerate(STEPS, start=1))
        yield warming(asked)
        yield without_cloud(asked)
    yield why_dry(asked)


def _asks_cloud_base(asked: AskedLine) -> bool:
    """Whether the cloud base is worked out, so that it is asked for and no other prompt may tell it."""
    return isinstance(asked.air("cloud_base").working, Substitution) and "dew_point" in given_of(asked.air("cloud_base"))


def cloud_base(asked: AskedLine) -> Made:
    """From temperature and dew point of the air that sets out."""
    right = asked.air("cloud_base")
    given = given_of(right)
    height = given["height"].shown_exactly
    draft = Draft(
        id="cloud_base",
        prompt=(
            f"Air that sets out {height} above sea level has a temperature of {given['temperature'].shown_exactly} and a dew point of {given['dew_point'].shown_exactly}. "
            f"For each kelvin between the two it must rise {given['rise_per_kelvin'].shown_number} m before cloud forms. At what height above sea level does cloud begin?"
        ),
        solution=f"The difference times {given['rise_per_kelvin'].shown_number} m, counted from {height}: {right.shown}.",
        hints=("How many kelvin lie between the temperature and the dew point?", "Multiply them by the rise for each kelvin, and add the height from which the air sets out."),
    )
    return number_entry(
        draft, right, given,
        (
            Mistake("clim.cloud-from-sea", "rise_per_kelvin * (temperature - dew_point)", "leaving out the height from which the air sets out"),
            Mistake("clim.spread-forgotten", "height + rise_per_kelvin * temperature", "taking the temperature instead of the difference"),
            Mistake("clim.spread-forgotten", "height + rise_per_kelvin * dew_point", "taking the dew point instead of the difference"),
        ),
        asked.catalogue, otherwise="First the difference of temperature and dew point, then the rise for each kelvin of it, then add where it begins.",
        kept=(given["rise_per_kelvin"].id,),
    )  # fmt: skip


def _way(asked: AskedLine, day: int) -> dict[str, Fact]:
    """All that the way of the air hangs on, by the names of `STEPS`, on a cooler and drier day than the page works out, from day to day more so."""
    base, crest = asked.air("cloud_base"), _height_of(asked, "crest")
    return {
        "temperature": _on_another_day(asked.air("temperature"), asked.air("temperature").number - COOLER * day, 0),
        "dry": as_shown(asked.air("dry_lapse_rate")), "moist": as_shown(asked.air("moist_lapse_rate")),
        "start": _height_of(asked, "start"), "base": _on_another_day(base, base.number + HIGHER * day * (crest.number - base.number), -2), "crest": _height_of(asked, "crest"), "end": _height_of(asked, "end"),
    }  # fmt: skip


def _on_another_day(fact: Fact, number: float, digits: int) -> Fact:
    """A round number in place of the one that the page shows."""
    value = round(number, digits)
    return stated(f"{fact.id}.another_day", fact.name, Amount(value=value, written=f"{value:.0f}"), fact.unit)


def _step(asked: AskedLine, day: int, name: str, asks: str, expression: str, hint: str, why: str, mistakes: Sequence[Mistake]) -> Made:
    """From the start up to one of the steps, so that no prompt tells the answer to another one; on another day, for the page tells the shown one's."""
    way = _way(asked, day)
    wanted = Expression(expression)
    given = {symbol: way[symbol] for symbol in wanted.names}
    right = computed(f"{PART}.{name}", asked.air(name).name, wanted, given, DEGC, figures=asked.air(name).figures)
    crosses = f"{',' if 'end' in given else ' and'} crosses the crest at {way['crest'].shown_exactly}" if "crest" in given else ""
    sinks = f" and sinks to {way['end'].shown_exactly} without cloud" if "end" in given else ""
    draft = Draft(
        id=name, supposed=True,
        prompt=(
            f"Another day: air of {way['temperature'].shown_exactly} sets out at {way['start'].shown_exactly}{crosses}{sinks}. Cloud begins at {way['base'].shown_exactly}. "
            f"Lapse rates: dry {way['dry'].shown_exactly}, moist {way['moist'].shown_exactly}. How warm is it {asks}?"
        ),
        solution=f"{why} With a thousand metres to the kilometre: {Substitution(wanted, tuple(given.items())).put_in} = {right.shown}.",
        hints=(hint, f"For each part, multiply its height in kilometres by the rate that holds there. Upwards take it off{', downwards add it' if 'end' in given else ''}."),
    )
    return number_entry(draft, right, way, mistakes, asked.catalogue, otherwise=HINT, kept=(way["dry"].id, way["moist"].id))


def _height_of(asked: AskedLine, end: str) -> Fact:
    return asked.subject.facts[f"{getattr(asked.subject.record.rain_shadow, end)}.height"]


def warming(asked: AskedLine) -> Made:
    """How much warmer the air is when it is back at its first height, on another day than the page works out."""
    way = _way(asked, len(STEPS) + 1)
    wanted = Expression("(dry - moist) * (crest - base)")
    in_cloud = computed("in_cloud", "Way in cloud", Expression("crest - base"), {name: way[name] for name in ("crest", "base")}, unit("km"))
    right = computed(f"{PART}.warming_another_day", asked.air("warming").name, wanted, {name: way[name] for name in wanted.names}, unit("K"), figures=asked.air("warming").figures)
    draft = Draft(
        id="warming", supposed=True,
        prompt=(
            f"Another day: air sets out at {way['start'].shown_exactly}, rises in cloud from {way['base'].shown_exactly} to the crest at {way['crest'].shown_exactly}, and sinks back without cloud. "
            f"Lapse rates: dry {way['dry'].shown_exactly}, moist {way['moist'].shown_exactly}. How much warmer is it then than at the start?"
        ),
        solution=f"Only the way in cloud counts: up it cooled more slowly than it warms coming down. ({way['dry'].shown_exactly} − {way['moist'].shown_exactly}) × {in_cloud.shown_exactly} = {right.shown}.",
        hints=("Below the cloud base the way up and the way down cancel.", "Above it, multiply the difference of the two rates by the kilometres in cloud."),
    )
    return number_entry(
        draft, right, way | {"in_cloud": in_cloud},
        (
            Mistake("clim.cloud-from-ground", "(dry - moist) * (crest - start)", "counting the whole climb as if it were in cloud"),
            Mistake("clim.dry-all-the-way", "dry * (crest - base)", "forgetting that the air cooled on its way up", "In cloud it cooled as well, by the moist rate. Take that off."),
            Mistake("clim.rates-added", "(dry + moist) * (crest - base)", "adding the two rates"),
        ),
        asked.catalogue, otherwise="Below the cloud base both ways cancel. Above it, by how much do the rates differ, and over how many kilometres?",
        kept=(way["dry"].id, way["moist"].id),
    )  # fmt: skip


def without_cloud(asked: AskedLine) -> Made:
    """The stages of the air by temperature, on a day without cloud: then one rate holds up and down, and height alone decides."""
    item = "without_cloud"
    start, crest, end = (_named(asked, end) for end in ("start", "crest", "end"))
    first, top, last = (asked.stations.index(station) for station in (start, crest, end))
    stages = {start: f"It sets out from {start.label}", crest: f"It crosses {crest.label}", end: f"It comes down to {end.label}"}
    for station in sorted(asked.stations[first + 1 : last], key=lambda station: -asked.number(station, "height")):
        if len(stages) < MOST_STAGES and _is_apart(asked, station, stages):
            stages[station] = f"It {'rises' if asked.stations.index(station) < top else 'sinks'} past {station.label}"
    if len(stages) < FEWEST_STEPS or not all(_is_apart(asked, station, set(stages) - {station}) for station in stages):
        return Rejected(item, "too few stages of the air are plainly apart by their height")
    order = sorted(stages, key=lambda station: -asked.number(station, "height"))
    told = {stages[station]: asked.told(station, "height") for station in order}
    draft = Draft(
        id=item, needs=Needs.BOTH,
        prompt="On a drier day the same wind crosses this line, and no cloud forms anywhere. Put the stages of its air in order by temperature, from the coldest to the warmest.",
        solution=(
            f"Without cloud {asked.air('dry_lapse_rate').shown_exactly} holds on the way up and on the way down, so the higher the air, the colder it is: "
            f"{'; '.join(f'{text[:1].lower()}{text[1:]}, at {height}' for text, height in told.items())}."
        ),
        hints=("Why does air cool more slowly in cloud than below it? And what holds where there is none?", "Heights stand in a row below the profile."),
    )  # fmt: skip
    return ordering(
        draft, list(told), starts_with="Where has the air risen farthest?", salt=asked.salt,
        leads_on=lambda text: f"This is at {told[text]}. At which of the others is the air nearest below that?",
    )  # fmt: skip


def _is_apart(asked: AskedLine, station: Station, others: Iterable[Station]) -> bool:
    return all(abs(asked.number(station, "height") - asked.number(other, "height")) >= APART for other in others)


def why_dry(asked: AskedLine) -> Made:
    """Sinking air warms, so clouds dissolve: asked of the side that is wet, for a wind from the other side."""
    start, crest, end = (_named(asked, end) for end in ("start", "crest", "end"))
    place = asked.stations.index(crest)
    wet = max((station for station in asked.rainy if station in asked.stations[:place]), key=lambda station: asked.number(station, "annual_precip"), default=start)
    dry = min((station for station in asked.rainy if station in asked.stations[place + 1 :]), key=lambda station: asked.number(station, "annual_precip"), default=end)
    draft = Draft(
        id="why_dry", needs=Needs.BOTH,
        prompt=f"Suppose that the sea lay beyond {end.label}, and that the moist wind blew from there. Which station would then be far drier than it is now, and why?",
        solution=f"Then {wet.label} would lie behind the crest. Air that sinks comes under more pressure and warms, so no water condenses and clouds dissolve; much of its water has fallen before.",
        hints=("Which side of the range would the air then rise on, and which side would it sink on?", "What happens to the droplets of a cloud when its air is pressed together?"),
    )  # fmt: skip
    wrong = (
        Wrong(f"{dry.label}: its air would rise there and get warmer", "clim.lapse-added", "", f"At {dry.label} air would rise, and rising air expands and cools. It would get wetter there."),
        Wrong(f"{wet.label}: its air would sink there and get colder", "clim.sinking-cools", "", "The station is right. But sinking air is pressed together and warms, and that is what dissolves clouds."),
        Wrong(f"{dry.label}: the crest would still keep the wind away", "clim.wind-blocked", "", "The crest keeps no wind away: air rises over it, and loses its water on the side that it meets first."),
    )
    return choice(draft, f"{wet.label}: its air would sink there and get warmer", wrong, asked.catalogue, salt=asked.salt)


def _named(asked: AskedLine, end: str) -> Station:
    """The station at which the air sets out, crosses the crest, or ends its way."""
    wanted = getattr(asked.subject.record.rain_shadow, end)
    return next(station for station in asked.stations if station.id == wanted)
