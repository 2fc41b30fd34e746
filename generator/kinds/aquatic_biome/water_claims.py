"""What the data of a record's waters bear out: statements on light, oxygen, salt and depth, each true or turned by a wrong idea."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from generator.kinds.aquatic_biome.asked_water import AskedWater, placed
from generator.quantities.fact import Fact
from generator.quantities.text import sentence
from generator.questions.claims import Claim, which_hold
from generator.questions.making import Draft
from generator.questions.question import Made, Rejected

PLAIN = 1.1
"""How many times as much is plainly more."""
SALTIER = 2.0
"""Difference of salinities [g/kg] that is worth a statement."""
DEEP = 2.0
"""Depth [m] of a water that has a second metre."""
SWING = 2.0
"""How many times as wide one yearly range of temperature must be as another."""
PARTS_GONE = (("Half", 0.5), ("A tenth", 0.9))
"""Parts of the light that may be gone, and what is then left: the first that both waters are deep enough for."""
HALF, WARMER = 50.0, 1.0
"""Half of what a water could hold [%]; how much warmer [K] one water must be to be called so."""
SURFACE = "near the surface"


@dataclass(frozen=True)
class _Told:
    """A water that is compared, and where or when it is, as a sentence says it."""

    water: AskedWater
    where: str

    def fact(self, name: str) -> Fact:
        return self.water.fact(name)

    def has(self, *names: str) -> bool:
        return self.water.has(*names)


def data_shows(asked: Sequence[AskedWater]) -> Made:
    """Which statements the numbers of the first two waters bear out."""
    if len(asked) < 2:
        return Rejected("data_shows", "the page shows no two waters to compare")
    one, other = asked[:2]
    draft = Draft(
        id="data_shows",
        prompt=f"{_compared(one, other)} Which of these statements do the numbers show to be true?",
        solution="",
        hints=(
            "Take one statement at a time, and look up the two numbers that it compares.",
            "Light profiles show what each depth has; on the oxygen chart the curve is what water could hold, the dot what it does hold.",
        ),
    )
    return which_hold(draft, _claims(one, other), one.catalogue, salt=one.salt)


def _compared(one: AskedWater, other: AskedWater) -> str:
    if not _is_one_site(one, other):
        return f"Compare {one.place} with {other.place}."
    wheres = [told.where for told in _told(one, other)]
    return f"Look at the charts and numbers of {one.site}." if SURFACE in wheres else f"Compare {one.site} {' and '.join(wheres)}."


def _is_one_site(one: AskedWater, other: AskedWater) -> bool:
    """Whether the two are parts of one water, or one water at two times."""
    labels = one.station.label, other.station.label
    return one.site == other.site or labels[1].startswith(labels[0]) or labels[0].startswith(labels[1])


def _told(one: AskedWater, other: AskedWater) -> tuple[_Told, _Told]:
    """A water beside a part of itself is called by its surface, where it was sampled."""
    if not _is_one_site(one, other):
        return _Told(one, f"at {one.place}"), _Told(other, f"at {other.place}")

    def where(water: AskedWater, beside: AskedWater) -> str:
        own = water.part or water.station.label.removeprefix(beside.station.label).strip(", ")
        return placed(own) if own and own != water.station.label else SURFACE

    return _Told(one, where(one, other)), _Told(other, where(other, one))


def _claims(one: AskedWater, other: AskedWater) -> Sequence[Claim]:
    """One for each idea, so that no statement gives another away."""
    first: dict[str, Claim] = {}
    for claim in _all_claims(*_told(one, other)):
        first.setdefault(claim.misconception, claim)
    return tuple(first.values())


def _all_claims(one: _Told, other: _Told) -> Iterator[Claim]:
    for told, beside in ((one, other), (other, one)):
        yield from _of_light(told, beside)
        yield from _missing(told)
    if one.has("extinction") and other.has("extinction"):
        yield from _clear_and_murky(one, other)
    if one.has("oxygen_saturation") and other.has("oxygen_saturation"):
        yield from _oxygen(one, other)
    if abs(one.water.station.salinity - other.water.station.salinity) >= SALTIER:
        yield from _salt(one, other)
    if all(told.has("discharge", "flow_speed") for told in (one, other)):
        yield from _flow(one, other)
    yield from _year(one, other)
    yield from _below_the_light(one, other)


def _of_light(told: _Told, beside: _Told) -> Iterator[Claim]:
    """Where only one of two layers tells its light, it holds for the whole water, and no place is named."""
    if told.water.station.light is None:
        return
    at = f"{told.where} " if beside.has("extinction") else ""
    photic, light = told.fact("photic_depth"), told.fact("extinction")
    if told.has("secchi_depth"):
        secchi = told.fact("secchi_depth")
        lost, seen = f"{at}a white disk is lost from sight well above", f"{at}a white disk can still be seen at"
        yield Claim(
            *(f"{sentence(said)} the depth where 1 % of the light is left" for said in (lost, seen)),
            f"The disk is lost at {secchi.shown_exactly}, and 1 % is left at {photic.shown_exactly}.", "wat.secchi-light-gone",
        )  # fmt: skip
    elif told.water.station.depth >= DEEP:
        first = sentence(f"{at}the first metre of water takes")
        yield Claim(
            f"{first} more light than the second", f"{first} as much light as the second",
            f"With an extinction of {light.shown_exactly}, each takes the same part of what enters it, and more enters the first.", "wat.light-linear",
        )  # fmt: skip


def _missing(told: _Told) -> Iterator[Claim]:
    """Of water that holds less than half of what it could."""
    if told.has("oxygen_saturation_percent") and PLAIN * told.fact("oxygen_saturation_percent").number <= HALF:
        there, full, share = (told.fact(name) for name in ("dissolved_oxygen", "oxygen_saturation", "oxygen_saturation_percent"))
        fewer, more = (f"{sentence(told.where)} {word} than half of the oxygen that could be dissolved is there" for word in ("less", "more"))
        yield Claim(fewer, more, f"It holds {there.shown_exactly} of {full.shown_exactly}, that is {share.shown_exactly}.", "nit.complement", instead="Divide what is there by what could be there; the rest is missing.")


def _clear_and_murky(one: _Told, other: _Told) -> Iterator[Claim]:
    clear, murky = sorted((one, other), key=lambda told: told.fact("extinction").number)
    small, large = clear.fact("extinction"), murky.fact("extinction")
    part = next((words for words, left in PARTS_GONE if all(told.fact("depth").number * told.fact("extinction").number > -math.log(left) for told in (clear, murky))), "")
    if large.number >= PLAIN * small.number and part:
        yield Claim(
            f"{part} of the light is gone at a smaller depth {murky.where} than {clear.where}", f"{part} of the light is gone at a smaller depth {clear.where} than {murky.where}",
            f"The extinction is {small.shown_exactly} {clear.where}, {large.shown_exactly} {murky.where}.", "wat.extinction-clear",
        )  # fmt: skip


def _oxygen(one: _Told, other: _Told) -> Iterator[Claim]:
    """What the waters hold and could hold; of cold water that is short of oxygen the two are set against each other."""
    more, less = sorted((one, other), key=lambda told: -told.fact("oxygen_saturation").number)
    high, low = more.fact("oxygen_saturation"), less.fact("oxygen_saturation")
    measured = one.has("oxygen_saturation_percent") and other.has("oxygen_saturation_percent")
    colder = less.fact("temperature").number - more.fact("temperature").number >= WARMER
    if measured and colder and PLAIN * more.fact("dissolved_oxygen").number <= less.fact("dissolved_oxygen").number:
        yield Claim(
            f"More oxygen is dissolved {less.where} than {more.where}, although the water is warmer", f"More oxygen is dissolved {more.where} than {less.where}, because the water is colder",
            f"Measured were {more.fact('dissolved_oxygen').shown_exactly} {more.where} and {less.fact('dissolved_oxygen').shown_exactly} {less.where}.", "wat.always-full",
        )  # fmt: skip
        return
    if high.number >= PLAIN * low.number:
        yield Claim(
            f"The water could hold more oxygen {more.where} than {less.where}", f"The water could hold more oxygen {less.where} than {more.where}",
            f"It could hold {high.shown_exactly} {more.where}, and {low.shown_exactly} {less.where}.", "wat.warm-holds-more" if colder else "wat.salt-holds-oxygen",
        )  # fmt: skip
    if measured:
        yield from _share(one, other)


def _share(one: _Told, other: _Told) -> Iterator[Claim]:
    full, empty = sorted((one, other), key=lambda told: -told.fact("oxygen_saturation_percent").number)
    high, low = full.fact("oxygen_saturation_percent"), empty.fact("oxygen_saturation_percent")
    if high.number >= PLAIN * low.number:
        yield Claim(
            f"As a percentage of saturation, there is less oxygen {empty.where} than {full.where}", f"As a percentage of saturation, there is as much oxygen {empty.where} as {full.where}",
            f"Compared with what the water could hold in balance with the air, there is {high.shown_exactly} {full.where}, and {low.shown_exactly} {empty.where}.", "wat.always-full",
        )  # fmt: skip


def _salt(one: _Told, other: _Told) -> Iterator[Claim]:
    """At one temperature salt alone tells what water can hold and, of waters that may meet, how dense they are."""
    salt, fresh = sorted((one, other), key=lambda told: -told.water.station.salinity)
    because = f"The water has {salt.fact('salinity').shown_exactly} of salt {salt.where}, and {fresh.fact('salinity').shown_exactly} {fresh.where}."
    yield Claim(
        f"At the same temperature, the water could hold more oxygen {fresh.where} than {salt.where}",
        f"At the same temperature, the water could hold more oxygen {salt.where} than {fresh.where}", because, "wat.salt-holds-oxygen",
    )  # fmt: skip
    if one.water.site != other.water.site:
        yield Claim(
            f"At the same temperature, the water would be denser {salt.where} than {fresh.where}",
            f"At the same temperature, the water would be denser {fresh.where} than {salt.where}", because, "wat.salt-floats",
        )  # fmt: skip


def _flow(one: _Told, other: _Told) -> Iterator[Claim]:
    """Only where the slower water is the larger flow."""
    slow, fast = sorted((one, other), key=lambda told: told.fact("flow_speed").number)
    if slow.fact("discharge").number < PLAIN * fast.fact("discharge").number or fast.fact("flow_speed").number < PLAIN * slow.fact("flow_speed").number:
        return
    passing = (f"{told.where} {told.fact('discharge').shown_exactly} at a speed of {told.fact('flow_speed').shown_exactly}" for told in (slow, fast))
    yield Claim(
        f"More water passes {slow.where}, though it runs more slowly there", f"More water passes {fast.where}, because it runs faster there",
        f"{sentence(', '.join(passing))}.", "wat.speed-is-discharge",
    )  # fmt: skip


def _year(one: _Told, other: _Told) -> Iterator[Claim]:
    years = [(told, year) for told in (one, other) if (year := told.water.station.yearly_temperature) is not None and year.low is not None and year.high is not None]
    if len(years) < 2:
        return
    (wide, swings), (narrow, rests) = sorted(years, key=lambda pair: (pair[1].low or 0) - (pair[1].high or 0))
    if (swings.high or 0) - (swings.low or 0) < SWING * ((rests.high or 0) - (rests.low or 0)):
        return
    yield Claim(
        f"Over the year the temperature changes less {narrow.where} than {wide.where}", f"Over the year the temperature changes as much {narrow.where} as {wide.where}",
        f"The year goes from {wide.fact('yearly_temperature').shown} {wide.where}, and from {narrow.fact('yearly_temperature').shown} {narrow.where}.", "wat.depth-swings",
    )  # fmt: skip


def _below_the_light(one: _Told, other: _Told) -> Iterator[Claim]:
    """Of a sample taken in the deep, beside a station that tells how far the light reaches."""
    for deep, lit in ((one, other), (other, one)):
        if deep.has("sample_depth") and lit.has("photic_depth"):
            at, photic = deep.fact("sample_depth"), lit.fact("photic_depth")
            if at.number >= 2 * PLAIN * photic.number:
                half = f"half way down to {at.shown_exactly}"
                yield Claim(
                    f"Even {half} there is too little light for plants", f"At least {half} there is still light enough for plants",
                    f"1 % of the light is left at {photic.shown_exactly}; half of {at.shown_exactly} lies below that.", "wat.water-clear",
                )  # fmt: skip
