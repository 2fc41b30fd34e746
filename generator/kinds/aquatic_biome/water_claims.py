"""What the data of a record's waters bear out: statements on light, oxygen, salt and depth, each true or turned by a wrong idea."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.kinds.aquatic_biome.asked_water import AskedWater
from generator.questions.claims import Claim, which_hold
from generator.questions.making import Draft
from generator.questions.question import Made

PLAIN = 1.1
"""How many times as much is plainly more."""
SALTIER = 2.0
"""Difference of salinities [g/kg] that is worth a statement."""
DEEP = 2.0
"""Depth [m] of a water that has a second metre."""
SWING = 2.0
"""How many times as wide one yearly range of temperature must be as another."""


def data_shows(asked: Sequence[AskedWater]) -> Made:
    """Which statements the numbers of the first two waters bear out."""
    draft = Draft(
        id="data_shows",
        prompt=f"Which of these statements do the numbers bear out? Compare {' with '.join(water.place for water in asked[:2])}.",
        solution="",
        hints=(
            "Take one statement at a time, and look up the two numbers that it compares.",
            "Light profiles show what each depth has; on the oxygen chart the curve is what water could hold, the dot what it does hold.",
        ),
    )
    return which_hold(draft, _claims(asked[:2]), asked[0].catalogue, salt=asked[0].salt)


def _claims(asked: Sequence[AskedWater]) -> Sequence[Claim]:
    """One for each idea, so that no statement gives another away."""
    first: dict[str, Claim] = {}
    for claim in _all_claims(asked):
        first.setdefault(claim.misconception, claim)
    return tuple(first.values())


def _all_claims(asked: Sequence[AskedWater]) -> Iterator[Claim]:
    for water in asked:
        yield from _of_one(water)
    if len(asked) == 2:
        yield from _of_two(*asked)


def _of_one(water: AskedWater) -> Iterator[Claim]:
    if water.station.light is not None:
        photic, light = water.fact("photic_depth"), water.fact("extinction")
        if water.has("secchi_depth"):
            secchi = water.fact("secchi_depth")
            yield Claim(
                f"At {water.place} 1 % of the light is left deeper than the eye can see a white disk",
                f"At {water.place} a white disk can still be seen at the depth where 1 % of the light is left",
                f"The disk is lost at {secchi.shown_exactly}, and 1 % is left at {photic.shown_exactly}.", "wat.secchi-light-gone",
            )  # fmt: skip
        elif water.station.depth >= DEEP:
            yield Claim(
                f"At {water.place} the first metre takes more light than the second",
                f"At {water.place} the first metre takes as much light as the second",
                f"With an extinction of {light.shown_exactly}, each takes the same part of what enters it, and more enters the first.", "wat.light-linear",
            )  # fmt: skip


def _of_two(one: AskedWater, other: AskedWater) -> Iterator[Claim]:
    if one.has("extinction") and other.has("extinction"):
        yield from _clear_and_murky(one, other)
    if one.has("oxygen_saturation") and other.has("oxygen_saturation"):
        yield from _capacity(one, other)
    if one.has("oxygen_saturation_percent") and other.has("oxygen_saturation_percent"):
        yield from _oxygen(one, other)
    if abs(one.station.salinity - other.station.salinity) >= SALTIER:
        yield _density(one, other)
    if all(water.has("discharge", "flow_speed") for water in (one, other)):
        yield from _flow(one, other)
    yield from _year(one, other)
    yield from _below_the_light(one, other)


def _clear_and_murky(one: AskedWater, other: AskedWater) -> Iterator[Claim]:
    clear, murky = sorted((one, other), key=lambda water: water.fact("extinction").number)
    small, large = clear.fact("extinction"), murky.fact("extinction")
    if large.number < PLAIN * small.number:
        return
    told = f"The extinction is {small.shown_exactly} at {clear.place}, {large.shown_exactly} at {murky.place}."
    yield Claim(
        f"A metre of water takes more of the light at {murky.place} than at {clear.place}",
        f"A metre of water takes more of the light at {clear.place} than at {murky.place}", told, "wat.extinction-clear",
    )  # fmt: skip


def _flow(one: AskedWater, other: AskedWater) -> Iterator[Claim]:
    """Only where the slower water is the larger flow."""
    slow, fast = sorted((one, other), key=lambda water: water.fact("flow_speed").number)
    if slow.fact("discharge").number < PLAIN * fast.fact("discharge").number or fast.fact("flow_speed").number < PLAIN * slow.fact("flow_speed").number:
        return
    told = f"{slow.place}: {slow.fact('discharge').shown_exactly} at {slow.fact('flow_speed').shown_exactly}; {fast.place}: {fast.fact('discharge').shown_exactly} at {fast.fact('flow_speed').shown_exactly}."
    yield Claim(
        f"More water passes {slow.place}, though it runs more slowly there", f"More water passes {fast.place}, because it runs faster there", told,
        "wat.speed-is-discharge",
    )  # fmt: skip


def _capacity(one: AskedWater, other: AskedWater) -> Iterator[Claim]:
    more, less = sorted((one, other), key=lambda water: -water.fact("oxygen_saturation").number)
    high, low = more.fact("oxygen_saturation"), less.fact("oxygen_saturation")
    if high.number < PLAIN * low.number:
        return
    idea = "wat.warm-holds-more" if more.station.temperature < less.station.temperature else "wat.salt-holds-oxygen"
    told = f"At {more.place} the water could hold {high.shown_exactly}, at {less.place} {low.shown_exactly}."
    yield Claim(
        f"The water at {more.place} could hold more oxygen than that at {less.place}", f"The water at {less.place} could hold more oxygen than that at {more.place}",
        told, idea,
    )  # fmt: skip


def _oxygen(one: AskedWater, other: AskedWater) -> Iterator[Claim]:
    full, empty = sorted((one, other), key=lambda water: -water.fact("oxygen_saturation_percent").number)
    high, low = full.fact("oxygen_saturation_percent"), empty.fact("oxygen_saturation_percent")
    if high.number < PLAIN * low.number:
        return
    told = f"Of the oxygen that it could hold, the water holds {high.shown_exactly} at {full.place} and {low.shown_exactly} at {empty.place}."
    yield Claim(
        f"Measured against what the water could hold, there is less oxygen at {empty.place} than at {full.place}",
        f"Measured against what the water could hold, there is as much oxygen at {empty.place} as at {full.place}", told, "wat.always-full",
    )  # fmt: skip


def _density(one: AskedWater, other: AskedWater) -> Claim:
    salt, fresh = sorted((one, other), key=lambda water: -water.station.salinity)
    told = f"{salt.place} has {salt.fact('salinity').shown_exactly} of salt, {fresh.place} {fresh.fact('salinity').shown_exactly}."
    return Claim(
        f"If both were equally warm, the water of {salt.place} would sink below that of {fresh.place}",
        f"If both were equally warm, the water of {salt.place} would float on that of {fresh.place}",
        told, "wat.salt-floats",
    )  # fmt: skip


def _year(one: AskedWater, other: AskedWater) -> Iterator[Claim]:
    years = [(water, year) for water in (one, other) if (year := water.station.yearly_temperature) is not None and year.low is not None and year.high is not None]
    if len(years) < 2:
        return
    (wide, swings), (narrow, rests) = sorted(years, key=lambda pair: (pair[1].low or 0) - (pair[1].high or 0))
    if (swings.high or 0) - (swings.low or 0) < SWING * ((rests.high or 0) - (rests.low or 0)):
        return
    told = f"{wide.place}: {wide.fact('yearly_temperature').shown}; {narrow.place}: {narrow.fact('yearly_temperature').shown}."
    yield Claim(
        f"Over the year the temperature changes less at {narrow.place} than at {wide.place}", f"Over the year the temperature changes as much at {narrow.place} as at {wide.place}",
        told, "wat.depth-swings",
    )  # fmt: skip


def _below_the_light(one: AskedWater, other: AskedWater) -> Iterator[Claim]:
    """Of a sample taken in the deep, beside a station that tells how far the light reaches."""
    for deep, lit in ((one, other), (other, one)):
        if deep.has("sample_depth") and lit.has("photic_depth"):
            at, photic = deep.fact("sample_depth"), lit.fact("photic_depth")
            if at.number >= PLAIN * photic.number:
                yield Claim(
                    f"{deep.place} lies below the light that plants need", f"{deep.place} still has light enough for plants",
                    f"The sample of {deep.place} comes from {at.shown_exactly}; 1 % of the light is left at {photic.shown_exactly}.", "wat.water-clear",
                )  # fmt: skip
