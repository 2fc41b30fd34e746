"""Questions on oxygen and salt: what a water holds and could hold, and how warmth and salt change it."""

from __future__ import annotations

from collections.abc import Sequence

from generator.kinds.aquatic_biome.asked_water import AskedWater
from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
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
APART = 1.07
"""How many times as much oxygen one water must be able to hold as the next, to be put in order."""


def oxygen_percent(asked: AskedWater) -> Made:
    """What is there over what could be there."""
    share, oxygen, full = (asked.fact(name) for name in ("oxygen_saturation_percent", "dissolved_oxygen", "oxygen_saturation"))
    draft = Draft(
        id="oxygen_percent",
        prompt=(
            f"The water at {asked.place} holds {oxygen.shown_exactly} of oxygen. At its temperature and salinity it would hold "
            f"{full.shown_exactly} in balance with the air. How much of the saturation is that, in percent?"
        ),
        solution=f"{oxygen.shown_exactly} ÷ {full.shown_exactly} = {share.shown}.",
        hints=("Saturation is the whole here: all that the water could hold in balance with the air.", "Divide what was measured by the saturation, then multiply by 100 %."),
    )
    return number_entry(
        draft, share, {"oxygen": oxygen, "full": full},
        (
            Mistake("wat.saturation-inverse", "full / oxygen", "dividing the saturation by what was measured"),
            Mistake("carb.pct-whole", "oxygen / full / 100", "giving the part of the whole without turning it into percent"),
            Mistake("nit.complement", "1 - oxygen / full", "giving what is missing"),
        ),
        asked.catalogue, otherwise="What was measured stands above the line, what the water could hold below it.",
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
            f"At its coldest the water at {asked.place} can hold {cold.shown_exactly} of oxygen, at its warmest {warm.shown_exactly}. "
            "How many per cent less can it hold at its warmest?"
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
        asked.catalogue, otherwise="What is lost stands above the line, what the coldest water can hold below it.",
    )  # fmt: skip


def warmest_for_oxygen(asked: AskedWater) -> Made:
    """Up to which temperature the water can hold so much oxygen, read off the curve of its own salinity."""
    item, salinity = "warmest_for_oxygen", asked.station.salinity
    low, high = (int(end) for end in VALID_TEMPERATURES)
    temps = range(low, high + 1, STEP)
    holds = {t: OXYGEN_SATURATION.compute(absolute_temperature=convert(float(t), DEGC, K), salinity=float(salinity)) for t in temps}
    found = next(((limit, t) for limit in drawn(LIMITS, asked.salt, item) for t in temps[1:-1] if holds[t] >= PLAIN * limit and holds[t + STEP] * PLAIN <= limit), None)
    if found is None or not asked.has("oxygen_saturation_percent"):
        return Rejected(item, "the curve shows no limit plainly, or no curve is drawn")
    limit, warmest = found
    labels = [_degrees(t) for t in temps]
    curve = asked.fact("salinity_class").shown
    draft = Draft(
        id=item,
        prompt=f"Which is the highest of these temperatures at which {curve} such as that at {asked.place} can hold {limit} mg L⁻¹ of oxygen, in balance with the air? Read the curve.",
        solution=f"At {_degrees(warmest)} the curve lies above {limit} mg L⁻¹, at {_degrees(warmest + STEP)} below.",
        hints=(
            f"Find {limit} mg L⁻¹ on the left axis; where it stands between two lines of the grid, find it between their numbers.",
            f"Go right to the curve of {curve}, then down to the temperature. Take the next lower one of those to choose from.",
        ),
    )
    wrong = [
        ([_degrees(warmest + STEP)], Wrong("", "num.not-reached", f"There the curve is below {limit} mg L⁻¹.")),
        ([labels[-1]], Wrong("", "wat.warm-holds-more", f"There the curve is lowest, far below {limit} mg L⁻¹.")),
        ([_degrees(limit)], Wrong("", "wat.axes-swapped", f"You looked for {limit} on the axis of temperature.")),
        ([_degrees(t) for t in temps if t < warmest], Wrong("", "num.past-first", f"There it can hold {limit} mg L⁻¹, but it still can at {_degrees(warmest)}, which is warmer.")),
    ]
    wrong = [([label for label in where if label in labels], slip) for where, slip in wrong]
    return reading(draft, labels, [_degrees(warmest)], wrong, asked.catalogue, otherwise="Go from the axis of oxygen right to the curve, then straight down.")


def _degrees(temp: float) -> str:
    return f"{temp:g} °C"


def capacity_order(asked: Sequence[AskedWater]) -> Made:
    """Waters by what they could hold, as they were measured and at the ends of their year; only those plainly apart."""
    item = "capacity_order"
    found = sorted((one for water in asked for one in _capacities(water)), key=lambda one: -one[1])
    kept = found[:1]
    for text, holds in found[1:]:
        if kept[-1][1] >= APART * holds:
            kept.append((text, holds))
    if len(kept) < FEWEST_STEPS or any(water.is_salty for water in asked):
        return Rejected(item, "too few waters are plainly apart by what they can hold")
    told = {text: f"{shown.number(holds)} mg L⁻¹" for text, holds in kept}
    draft = Draft(
        id=item,
        prompt="Put these waters in order by how much oxygen they can hold in balance with the air, the most first.",
        solution="; ".join(f"{text}: {told[text]}" for text, _ in kept) + ". The warmer the water, the less.",
        needs=Needs.BOTH,
        hints=("All of them are fresh, so one thing alone makes the difference.", "Find the temperatures on the oxygen curve: where is it highest?"),
    )
    return ordering(
        draft, [text for text, _ in kept], starts_with="Gas leaves warm water more easily. Which of them keeps most?", salt=asked[0].salt,
        leads_on=lambda text: f"This one can hold {told[text]}. Which of the others can hold most?",
    )  # fmt: skip


def _capacities(asked: AskedWater) -> list[tuple[str, float]]:
    found = [(f"{asked.place} at {asked.fact('temperature').shown_exactly}", asked.fact("oxygen_saturation"))]
    if asked.has("saturation_when_coldest", "saturation_when_warmest") and (year := asked.station.yearly_temperature) is not None:
        fact = asked.fact("yearly_temperature")
        ends = [DEGC.after(part) for part in fact.shown_bare.split(" to ")] if year.low is not None else []
        found += [(f"{asked.place} at {end}", asked.fact(f"saturation_when_{word}")) for end, word in zip(ends, ("coldest", "warmest"), strict=False)]
    return [(text, fact.number) for text, fact in found if fact.is_number]


def warm_water(asked: AskedWater) -> Made:
    """That gases leave warm water."""
    why = "In warm water the molecules of a gas move faster and leave it more easily, so less stays dissolved"
    if asked.has("saturation_when_coldest", "saturation_when_warmest"):
        cold, warm = (asked.fact(f"saturation_when_{word}").shown_exactly for word in ("coldest", "warmest"))
        of = f"Over the year the water at {asked.place} is {asked.fact('yearly_temperature').shown} warm."
        why = f"{why}: {warm} when it is warmest, {cold} when it is coldest"
    else:
        of = f"The water at {asked.place} was measured at {asked.fact('temperature').shown_exactly}."
    draft = Draft(
        id="warm_water", prompt=f"{of} How much oxygen can it hold when it gets warmer?", solution=f"{why}.", needs=Needs.BOTH,
        hints=("Think of a bottle of fizzy water: when does its gas leave it faster?", "Follow the oxygen curve from left to right."),
    )  # fmt: skip
    wrong = (
        Wrong("More: everything dissolves better in warm water", "wat.warm-holds-more"),
        Wrong("The same: the air above it has not changed", "wat.oxygen-constant"),
        Wrong("More: algae make more oxygen when it is warm", "wat.made-is-held"),
    )
    return choice(draft, "Less: gas leaves warm water more easily", wrong, asked.catalogue, salt=asked.salt)


def salt(asked: AskedWater) -> Made:
    """What salt does to oxygen and to density."""
    salinity, word = asked.fact("salinity"), asked.fact("salinity_class")
    draft = Draft(
        id="salt",
        prompt=f"The water at {asked.place} holds {salinity.shown_exactly} of salt: {word.shown}. How does it differ from fresh water just as warm?",
        solution="Salt ions bind water molecules, so fewer are left to hold gas; and salt makes water denser.",
        needs=Needs.BOTH,
        hints=("Salt adds mass to each litre, and its ions hold on to water molecules.", "On the oxygen curves, which line is lower: that of fresh or of salt water?"),
    )
    wrong = (
        Wrong("It can hold more oxygen, because salt holds gases fast", "wat.salt-holds-oxygen"),
        Wrong("It is lighter and floats on fresh water", "wat.salt-floats"),
        Wrong("It can hold just as much oxygen, because the air is the same", "wat.oxygen-constant"),
    )
    return choice(draft, "It can hold less oxygen, and it is denser", wrong, asked.catalogue, salt=asked.salt)


def breathing(asked: AskedWater) -> Made:
    """Dissolved oxygen, told from the oxygen of water molecules."""
    full, temp = asked.fact("oxygen_saturation").shown_exactly, asked.fact("temperature").shown_exactly
    known = f", here at {temp} at most about {full} in balance with the air" if asked.has("oxygen_saturation") else ""
    draft = Draft(
        id="breathing",
        prompt=f"Where do fish at {asked.place} get their oxygen?",
        solution=f"Gills take up oxygen that is dissolved in the water{known}. It comes from the air and from photosynthesis.",
        needs=Needs.KNOWLEDGE,
        hints=("Oxygen that is bound to other atoms is of no use to gills.", "The meter of the expedition measured it in mg L⁻¹: what was measured?"),
    )
    wrong = (
        Wrong("From the oxygen of the water molecules, H₂O", "wat.breathe-water"),
        Wrong("From the bubbles that they swallow at the surface", "wat.breathe-bubbles"),
        Wrong("From the algae and plants that they eat", "wat.oxygen-from-food"),
    )
    return choice(draft, "From oxygen gas that is dissolved in the water", wrong, asked.catalogue, salt=asked.salt)
