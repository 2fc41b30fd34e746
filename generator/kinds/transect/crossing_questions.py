"""Questions on air that crosses a crest: where cloud begins, how warm it is step by step, and why the lee side is dry."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.kinds.transect.asked_line import AskedLine, given_of
from generator.kinds.transect.crossing import PART
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.units import unit
from generator.quantities.working import Substitution
from generator.questions.making import Draft, Wrong, as_option, choice, number_entry, ordering
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Needs, Rejected

DEGC = unit("degC")
HINT = "Work in kilometres, and count only the part of the way on which this rate holds."
APART = 1.0
"""Difference of temperatures [K] that is plain."""
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
        "lee_temperature", "then", f"temperature - {_UP_DRY} - {_UP_MOIST} + dry * (crest - end)",
        "Up it cools by the dry rate and then by the moist one. Down it warms by the dry rate all the way, for the cloud is gone.",
        (
            Mistake("clim.lee-mirror", f"temperature - {_UP_DRY} - {_UP_MOIST} + moist * (crest - end)", "taking the moist rate on the way down"),
            Mistake("clim.dry-all-the-way", "temperature - dry * (crest - start) + dry * (crest - end)", "taking the dry rate up and down"),
            Mistake("clim.sinking-cools", f"temperature - {_UP_DRY} - {_UP_MOIST} - dry * (crest - end)", "cooling the air on its way down"),
        ),
    ),
)  # fmt: skip
"""The steps of the air: which temperature, its place in words, how it follows from the start, why, and the usual slips."""

def crossing(asked: AskedLine) -> Iterator[Made]:
    """Each step of the air, what it gains, and what that means for the lee side."""
    if _asks_cloud_base(asked):
        yield cloud_base(asked)
    if asked.air("cloud_forms").value and asked.air("moist_lapse_rate").is_number:
        yield from (_step(asked, *step) for step in STEPS)
        yield warming(asked)
        yield air_order(asked)
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
            f"Air that sets out {height} above sea level has {given['temperature'].shown_exactly} and a dew point of {given['dew_point'].shown_exactly}. "
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


def _way(asked: AskedLine) -> dict[str, Fact]:
    """All that the way of the air hangs on, by the names of `STEPS`."""
    return {
        "temperature": asked.air("temperature"), "dry": asked.air("dry_lapse_rate"), "moist": asked.air("moist_lapse_rate"),
        "start": _height_of(asked, "start"), "base": asked.air("cloud_base"), "crest": _height_of(asked, "crest"), "end": _height_of(asked, "end"),
    }  # fmt: skip


def _step(asked: AskedLine, name: str, asks: str, expression: str, why: str, mistakes: Sequence[Mistake]) -> Made:
    """From the start up to one of the steps, so that no prompt tells the answer to another one."""
    way = _way(asked)
    wanted = Expression(expression)
    given = {symbol: way[symbol] for symbol in wanted.names}
    right = computed(f"{PART}.{name}", asked.air(name).name, wanted, given, DEGC, figures=asked.air(name).figures)
    base = "at the dotted line of the profile" if _asks_cloud_base(asked) else f"at {way['base'].shown_exactly}"
    crosses = f"{',' if 'end' in given else ' and'} crosses the crest at {way['crest'].shown_exactly}" if "crest" in given else ""
    sinks = f" and sinks to {way['end'].shown_exactly}" if "end" in given else ""
    draft = Draft(
        id=name,
        prompt=(
            f"Air of {way['temperature'].shown_exactly} sets out at {way['start'].shown_exactly}{crosses}{sinks}. Cloud begins {base}. "
            f"Lapse rates: dry {way['dry'].shown_exactly}, moist {way['moist'].shown_exactly}. How warm is it {asks}?"
        ),
        solution=f"{why} The air comes to {right.shown}.",
        hints=("Draw the way: where does the air rise without cloud, where in cloud, where does it sink?", "For each part, multiply its height in kilometres by the rate that holds there. Upwards take it off, downwards add it."),
    )
    return number_entry(draft, right, way, mistakes, asked.catalogue, otherwise=HINT)


def _height_of(asked: AskedLine, end: str) -> Fact:
    return asked.subject.facts[f"{getattr(asked.subject.record.rain_shadow, end)}.height"]


def warming(asked: AskedLine) -> Made:
    """How much warmer the air is when it is back at its first height."""
    right = asked.air("warming")
    given = given_of(right)
    base = "the dotted line of the profile" if _asks_cloud_base(asked) else given["cloud_base"].shown_exactly
    draft = Draft(
        id="warming",
        prompt=(
            f"Cloud stands from {base} up to the crest at {given['crest'].shown_exactly}. In it rising air cools by {given['moist_lapse_rate'].shown_exactly}; "
            f"elsewhere its rate is {given['dry_lapse_rate'].shown_exactly}. How much warmer is the air once back at its first height?"
        ),
        solution=f"Only the way in cloud counts: up it cooled more slowly than it warms coming down. The difference of the two rates times that way is {right.shown}.",
        hints=("Below the cloud base the way up and the way down cancel.", "Above it, multiply the difference of the two rates by the kilometres in cloud."),
    )
    return number_entry(
        draft, right, given | {"ground": _height_of(asked, "start")},
        (
            Mistake("clim.cloud-from-ground", "(dry_lapse_rate - moist_lapse_rate) * (crest - ground)", "counting the whole climb as if it were in cloud"),
            Mistake("clim.dry-all-the-way", "dry_lapse_rate * (crest - cloud_base)", "forgetting that the air cooled on its way up"),
            Mistake("clim.rates-added", "(dry_lapse_rate + moist_lapse_rate) * (crest - cloud_base)", "adding the two rates"),
        ),
        asked.catalogue, otherwise="Below the cloud base both ways cancel. Above it, by how much do the rates differ, and over how many kilometres?",
    )  # fmt: skip


def air_order(asked: AskedLine) -> Made:
    """The stages of the air from the coldest to the warmest; only where all are plainly apart."""
    item = "air_order"
    stages = {
        "It sets out": "temperature", "Cloud begins in it": "base_temperature", "It crosses the crest": "crest_temperature",
        "It has come down behind the crest": "lee_temperature",
    }  # fmt: skip
    found = sorted(stages, key=lambda text: asked.air(stages[text]).number)
    temps = [asked.air(stages[text]).number for text in found]
    if any(warm - cold < APART for cold, warm in zip(temps, temps[1:], strict=False)):
        return Rejected(item, "the stages of the air are not plainly apart by their temperature")
    told = {text: asked.air(stages[text]).shown_exactly for text in found}
    draft = Draft(
        id=item,
        prompt="Follow the air over the crest. Put its stages in order by temperature, from the coldest to the warmest.",
        solution=f"{as_option('; '.join(f'{text[:1].lower()}{text[1:]}: {told[text]}' for text in found))}.",
        needs=Needs.BOTH,
        hints=("Rising air cools and sinking air warms, but not at one rate.", "The profile shows the air's temperature at each numbered place."),
    )
    return ordering(
        draft, found, starts_with="Where has the air risen farthest?", salt=asked.salt,
        leads_on=lambda text: f"There it has {told[text]}. Which of the others is nearest above that?",
    )  # fmt: skip


def why_dry(asked: AskedLine) -> Made:
    """Sinking air warms, so clouds dissolve."""
    cloud = bool(asked.air("cloud_forms").value)
    draft = Draft(
        id="why_dry", prompt="Why does little rain fall on the lee side of a range that the wind crosses?", needs=Needs.KNOWLEDGE,
        solution="Air that sinks comes under more pressure and warms, so no water condenses: clouds dissolve. "
        + ("Much of its water has fallen before the crest." if cloud else "Where it lost water before the crest, it is drier still."),
        hints=("Rain needs air that rises and cools. What does the air do behind the crest?", "What happens to the droplets of a cloud when its air gets warmer?"),
    )  # fmt: skip
    wrong = (
        Wrong("The crest blocks the wind, so no air arrives there", "clim.wind-blocked"),
        Wrong("Air gets colder as it sinks, and cold air holds no rain", "clim.sinking-cools"),
        Wrong("It is farther from the sea, and air loses water with each kilometre", "clim.distance-only"),
    )
    return choice(draft, "The air sinks and warms there, so that clouds dissolve", wrong, asked.catalogue, salt=asked.salt)
