"""Questions on oxygen and salt: what a water holds and could hold, and how warmth and salt change it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from generator.kinds.aquatic_biome.asked_water import AskedWater
from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.fact import computed
from generator.quantities.units import convert, unit
from generator.questions.making import FEWEST_STEPS, Draft, Wrong, choice, drawn, number_entry, ordering, reading
from generator.questions.mistake import Mistake, as_shown
from generator.questions.question import Made, Needs, Rejected
from generator.science.dissolved_oxygen import OXYGEN_SATURATION, VALID_TEMPERATURES

PERCENT, DEGC, K = unit("percent"), unit("degC"), unit("K")
STEP = 5
"""Of the temperatures [K] to choose from on the oxygen curve."""
LIMITS = (6, 7, 8, 9, 10, 11, 12)
"""Oxygen [mg/L] that is looked for on the curve."""
PLAIN = 1.03
"""How many times the limit the curve must lie above it at one temperature, and below it at the next."""
LEAST_LOSS = 0.15
"""Part of what the coldest water can hold that must be lost by warming, to be worth a sum."""
SEA = 35.0
"""Salinity [g/kg] of the sea."""
FRESH_AT, LEAST_STEP = 25, 2
"""Temperature [degC] of the fresh water that is set beside salt water, and by how much [K] the latter must be colder to hold as much."""
APART = 1.07
"""How many times as much oxygen one water must be able to hold as the next, to be put in order."""


def oxygen_percent(asked: AskedWater) -> Made:
    """What is there over what could be there."""
    share, oxygen, full = (asked.fact(name) for name in ("oxygen_saturation_percent", "dissolved_oxygen", "oxygen_saturation"))
    draft = Draft(
        id="oxygen_percent",
        prompt=(
            f"The water {asked.water} holds {oxygen.shown_exactly} of oxygen. At its temperature and salinity it would hold "
            f"{full.shown_exactly} in balance with the air. What percentage of this saturation is there?"
        ),
        solution=f"{oxygen.shown_exactly} ÷ {full.shown_exactly} = {share.shown}.",
        hints=("Saturation is the whole here: all that the water could hold in balance with the air.", "Divide what was measured by the saturation, then multiply by 100 %."),
    )
    return number_entry(
        draft, share, {"oxygen": oxygen, "full": full},
        (
            Mistake("wat.saturation-inverse", "full / oxygen", "dividing the saturation by what was measured"),
            Mistake("carb.pct-whole", "oxygen / full / 100", "giving the part of the whole without turning it into percent"),
            Mistake("nit.complement", "1 - oxygen / full", "giving what is missing", "The question asks for the part that is there."),
        ),
        asked.catalogue, otherwise="What was measured stands above the line, what the water could hold below it.", kept=(full.id,),
    )  # fmt: skip


def capacity_loss(asked: AskedWater) -> Made:
    """By what part the yearly warming lowers what the water can hold."""
    item = "capacity_loss"
    if not asked.has("saturation_when_coldest", "saturation_when_warmest", "yearly_temperature"):
        return Rejected(item, "it is not known what the water can hold over the year")
    cold, warm = (as_shown(asked.fact(name)) for name in ("saturation_when_coldest", "saturation_when_warmest"))
    if cold.number - warm.number < LEAST_LOSS * cold.number:
        return Rejected(item, "over the year what the water can hold hardly changes")
    loss = computed(
        f"{asked.station.id}.{item}", "Part of the oxygen saturation that is lost from the coldest to the warmest time",
        Expression("(saturation_when_coldest - saturation_when_warmest) / saturation_when_coldest"),
        {"saturation_when_coldest": cold, "saturation_when_warmest": warm}, PERCENT,
    )  # fmt: skip
    draft = Draft(
        id=item,
        prompt=(
            f"At its coldest the water {asked.water} can hold {cold.shown_exactly} of oxygen, at its warmest {warm.shown_exactly}. "
            "How many percent less can it hold at its warmest?"
        ),
        solution=f"({cold.shown_exactly} − {warm.shown_exactly}) ÷ {cold.shown_exactly} = {loss.shown}. Gas leaves warm water more easily.",
        hints=("A loss in percent compares what is lost with what was there before.", "First subtract, then divide by what the coldest water can hold."),
    )
    return number_entry(
        draft, loss, {"cold": cold, "warm": warm},
        (
            Mistake("carb.pct-base", "(cold - warm) / warm", "dividing by what the warmest water can hold"),
            Mistake("nit.complement", "warm / cold", "giving the part that is left"),
            Mistake("carb.pct-whole", "(cold - warm) / cold / 100", "leaving out the factor of 100 %"),
        ),
        asked.catalogue, otherwise="What is lost stands above the line, what the coldest water can hold below it.", kept=(cold.id,),
    )  # fmt: skip


def warmest_for_oxygen(asked: AskedWater) -> Made:
    """Up to which temperature the water can hold so much oxygen, read off the curve of its own salinity."""
    item, salinity = "warmest_for_oxygen", asked.station.salinity
    low, high = (int(end) for end in VALID_TEMPERATURES)
    temps = range(low, high + 1, STEP)
    holds = {t: _held(t, salinity) for t in temps}
    found = next(((limit, t) for limit in drawn(LIMITS, asked.salt, item) for t in temps[1:-1] if holds[t] >= PLAIN * limit and holds[t + STEP] * PLAIN <= limit), None)
    if found is None or not asked.has("oxygen_saturation_percent"):
        return Rejected(item, "the curve shows no limit plainly, or no curve is drawn")
    limit, warmest = found
    labels = [_degrees(t) for t in temps]
    curve = asked.fact("salinity_class").shown
    draft = Draft(
        id=item,
        prompt=f"Read the curve of {curve}. Up to which of the temperatures below can such water hold {limit} mg L⁻¹ of oxygen or more, in balance with the air?",
        solution=f"At {_degrees(warmest)} the curve lies above {limit} mg L⁻¹, at {_degrees(warmest + STEP)} below.",
        hints=(
            f"Find {limit} mg L⁻¹ on the left axis; where it stands between two lines of the grid, find it between their numbers.",
            f"Go right to the curve of {curve}, then down to the temperature. Take the nearest of those below it.",
        ),
    )
    wrong = [
        ([_degrees(warmest + STEP)], Wrong("", "num.not-reached", "", f"There the curve is below {limit} mg L⁻¹. Go back to the next lower temperature.")),
        ([labels[-1]], Wrong("", "wat.warm-holds-more", f"There the curve is lowest, far below {limit} mg L⁻¹.")),
        ([_degrees(limit)], Wrong("", "wat.axes-swapped", f"You looked for {limit} on the axis of temperature.")),
        ([_degrees(t) for t in temps if t < warmest], Wrong("", "num.past-first", f"There it can hold {limit} mg L⁻¹, but it still can at {_degrees(warmest)}, which is warmer.")),
    ]
    wrong = [([label for label in where if label in labels], slip) for where, slip in wrong]
    return reading(draft, labels, [_degrees(warmest)], wrong, asked.catalogue, otherwise="Go from the axis of oxygen right to the curve, then straight down.")


def _degrees(temp: float) -> str:
    return f"{temp:g} °C"


def capacity_order(asked: Sequence[AskedWater]) -> Made:
    """Fresh waters by what they could hold, as they were measured and at the ends of their year, and one of the sea; only those plainly apart."""
    item = "capacity_order"
    found = sorted((one for water in asked for one in _capacities(water)), key=lambda one: -one.holds)
    fresh = found[:1]
    for one in found[1:]:
        if fresh[-1].holds >= APART * one.holds:
            fresh.append(one)
    if len(fresh) < FEWEST_STEPS or any(water.is_salty for water in asked):
        return Rejected(item, "too few waters are plainly apart by what they can hold")
    kept = _with_sea_water(fresh)
    if kept is None:
        return Rejected(item, "no sea water holds less than warmer fresh water, and plainly more or less than the others")
    told = {one.text: f"{shown.number(one.holds)} mg L⁻¹" for one in kept}
    draft = Draft(
        id=item,
        prompt=(
            "Put these waters in order by how much oxygen they can hold in balance with the air, the most first. "
            "Sea water can hold about a fifth less than fresh water of the same temperature."
        ),
        solution="; ".join(f"{text}: {holds}" for text, holds in told.items()) + ". The warmer and the saltier the water, the less.",
        needs=Needs.BOTH,
        hints=("Two things make the difference here: warmth and salt.", "Find each temperature on the oxygen curve of fresh water. For the sea water, take a fifth off the value that you read."),
    )
    return ordering(
        draft, list(told), starts_with="Gas leaves warm water more easily, and salt water holds less of it. Which of them keeps most?", salt=asked[0].salt,
        leads_on=lambda text: f"This one can hold {told[text]}. Which of the others can hold most?",
    )  # fmt: skip


@dataclass(frozen=True)
class _Holds:
    """A water at one temperature [degC], and the oxygen [mg/L] that it can hold there."""

    text: str
    temp: float
    holds: float


def _with_sea_water(fresh: Sequence[_Holds]) -> list[_Holds] | None:
    """Fresh waters and one of the sea that holds less than a much warmer one of them, so that warmth alone does not tell the order."""
    found: dict[float, list[_Holds]] = {}
    for temp in range(0, int(VALID_TEMPERATURES[1]), STEP):
        sea = _Holds(f"Sea water at {_degrees(temp)}", temp, OXYGEN_SATURATION.compute(absolute_temperature=convert(float(temp), DEGC, K), salinity=SEA))
        apart = [one for one in fresh if max(one.holds, sea.holds) >= APART * min(one.holds, sea.holds)]
        warmer_by = max((one.temp - temp for one in apart if one.holds > sea.holds), default=0.0)
        if len(apart) + 1 >= FEWEST_STEPS and warmer_by > 0:
            found.setdefault(warmer_by, sorted((*apart, sea), key=lambda one: -one.holds))
    return found[max(found)] if found else None


def _capacities(asked: AskedWater) -> list[_Holds]:
    found = [(asked.fact("temperature").shown_exactly, asked.fact("temperature").number, asked.fact("oxygen_saturation"))]
    if asked.has("saturation_when_coldest", "saturation_when_warmest") and (year := asked.station.yearly_temperature) is not None:
        fact = asked.fact("yearly_temperature")
        ends = [DEGC.after(part) for part in fact.shown_bare.split(" to ")] if year.low is not None else []
        found += [(end, temp or 0.0, asked.fact(f"saturation_when_{word}")) for end, temp, word in zip(ends, (fact.low, fact.high), ("coldest", "warmest"), strict=False)]
    return [_Holds(f"{asked.place} at {end}", temp, fact.number) for end, temp, fact in found if fact.is_number]


def warm_water(asked: AskedWater) -> Made:
    """That gases leave warm water."""
    why = "In warm water the molecules of a gas move faster and leave it more easily, so less stays dissolved"
    asks = "When it gets warmer, it can hold less oxygen. Why?"
    if asked.has("saturation_when_coldest", "saturation_when_warmest"):
        cold, warm = (asked.fact(f"saturation_when_{word}").shown_exactly for word in ("coldest", "warmest"))
        of = f"Over the year the water at {asked.site} is at {asked.fact('yearly_temperature').shown}."
        asks = f"In balance with the air it can hold {cold} of oxygen when it is coldest, and {warm} when it is warmest. Why can warm water hold less?"
    else:
        of = f"The water at {asked.place} was measured at {asked.fact('temperature').shown_exactly}."
    draft = Draft(
        id="warm_water", prompt=f"{of} {asks}", solution=f"{why}.", needs=Needs.KNOWLEDGE,
        hints=("Think of a bottle of fizzy water: when does its gas leave it faster?", "What do the molecules of a gas do differently in warm water?"),
    )  # fmt: skip
    wrong = (
        Wrong("The animals in it are more active, and use more of the gas up", "wat.used-is-capacity"),
        Wrong("The water itself takes up more room, so less gas fits in", "wat.no-room"),
        Wrong("The air above it holds a smaller share of oxygen in summer", "wat.summer-air"),
    )
    return choice(draft, "The gases dissolved in it move faster, and escape more easily", wrong, asked.catalogue, salt=asked.salt)


def salt(asked: AskedWater) -> Made:
    """What salt does to oxygen and to density."""
    salinity = asked.fact("salinity")
    draft = Draft(
        id="salt",
        prompt=f"Fresh water of a river runs into water with {salinity.shown_exactly} of salt, as at {asked.site}; both are equally warm, and calm. Where does the river water go, and how much oxygen could a litre of it hold in balance with the air?",
        solution="Salt makes water denser, so the fresh water floats. Salt ions bind water molecules, so that fewer are left to hold gas: fresh water of the same temperature can hold more.",
        needs=Needs.BOTH,
        hints=("Salt adds mass to each litre, and its ions hold on to water molecules.", "On the oxygen curves, which line is higher: that of fresh or of salt water?"),
    )
    wrong = (
        Wrong("It floats on top, and could hold less than the salt water", "wat.salt-holds-oxygen"),
        Wrong("It sinks to the bottom, and could hold more than the salt water", "wat.salt-floats"),
        Wrong("It sinks to the bottom, and could hold less than the salt water", "wat.salt-floats"),
    )
    return choice(draft, "It floats on top, and could hold more than the salt water", wrong, asked.catalogue, salt=asked.salt)


def salt_on_the_curves(asked: AskedWater) -> Made:
    """How much colder salt water must be to hold as much oxygen as fresh water, read off both curves."""
    item = "salt_on_the_curves"
    colder = min(range(1, FRESH_AT), key=lambda t: abs(_held(t, asked.station.salinity) - _held(FRESH_AT, 0)))
    step = FRESH_AT - colder
    if step < LEAST_STEP or not asked.has("oxygen_saturation_percent"):
        return Rejected(item, "the curves of salt and of fresh water lie too near each other, or none is drawn")
    apart = max(LEAST_STEP, step // 2)
    temps = sorted(t for t in {colder - 2 * apart, colder - apart, colder, colder + apart, FRESH_AT, FRESH_AT + apart} if VALID_TEMPERATURES[0] <= t <= VALID_TEMPERATURES[1])
    salinity, level = asked.fact("salinity").shown_exactly, f"{shown.number(_held(FRESH_AT, 0), 2)} mg L⁻¹"
    draft = Draft(
        id=item,
        prompt=f"Read the curves. At about which temperature can water with {salinity} of salt, as at {asked.site}, hold as much oxygen as fresh water of {_degrees(FRESH_AT)}?",
        solution=f"Fresh water of {_degrees(FRESH_AT)} can hold about {level}. The curve of the salt water is as high at about {_degrees(colder)}: salt leaves less room for oxygen, and cold makes up for that.",
        hints=(f"Find {_degrees(FRESH_AT)} on the axis below, and go up to the curve of fresh water.", "From there go level to the curve of the salt water, then straight down."),
    )
    wrong = [
        ([_degrees(FRESH_AT)], Wrong("", "wat.oxygen-constant", "", "At the same temperature the two curves lie apart: salt water holds less.")),
        ([_degrees(t) for t in temps if t > FRESH_AT], Wrong("", "wat.salt-holds-oxygen", "", "Warm salt water holds less for two reasons. From the curve of fresh water go level to the lower curve.")),
        ([_degrees(t) for t in temps if t < colder], Wrong("", "num.past-first", "", "So cold, it could hold more than that. Go level from one curve to the other.")),
    ]
    return reading(draft, [_degrees(t) for t in temps], [_degrees(colder)], wrong, asked.catalogue, otherwise="Go from the curve of fresh water level to that of the salt water, then straight down.")


def _held(temp: float, salinity: float) -> float:
    """Oxygen [mg/L] that water of a temperature [degC] and a salinity [g/kg] holds in balance with the air."""
    return OXYGEN_SATURATION.compute(absolute_temperature=convert(float(temp), DEGC, K), salinity=float(salinity))


def breathing(asked: AskedWater) -> Made:
    """Dissolved oxygen, told from the oxygen of water molecules by water that has lost the one and not the other."""
    draft = Draft(
        id="breathing",
        prompt="Water is boiled for a while and cooled in a full, closed bottle. Why could no fish live in it?",
        solution="Gas leaves hot water, and no air came in while it cooled. Gills take up oxygen that is dissolved, and hardly any is left, though the water looks the same.",
        needs=Needs.KNOWLEDGE,
        hints=("What do the small bubbles hold that rise in a pot long before the water boils?", "Oxygen that is bound to other atoms is of no use to gills."),
    )
    wrong = (
        Wrong("Boiling has taken the oxygen out of its molecules, H₂O", "wat.breathe-water"),
        Wrong("In a closed bottle no bubbles rise that gills could take", "wat.breathe-bubbles"),
        Wrong("Boiling has killed the algae that give fish their oxygen as food", "wat.oxygen-from-food"),
    )
    return choice(draft, "Hardly any oxygen is dissolved in it any more", wrong, asked.catalogue, salt=asked.salt)
