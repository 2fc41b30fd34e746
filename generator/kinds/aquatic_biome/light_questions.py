"""Questions on light in a water: how fast it fades, where one percent is left, what that means for plants and for what eats them."""

from __future__ import annotations

import math

from generator.kinds.aquatic_biome.asked_water import AskedWater
from generator.kinds.aquatic_biome.charts import lowest_drawn, share, table_depths
from generator.quantities import shown
from generator.quantities.amount import Amount
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed, stated
from generator.quantities.units import unit
from generator.questions.making import FEWEST_STEPS, Draft, Wrong, as_option, choice, choice_of_numbers, drawn, number_entry, ordering, reading
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Needs, Rejected

M, PERCENT = unit("m"), unit("percent")
LEFT_LEAST, LEFT_MOST = 20.0, 65.0
"""Part of the light [%] that is left at a depth that is asked for: neither nearly all nor next to nothing."""
READ_AT = (10.0, 25.0, 50.0, 75.0)
"""Parts of the light [%] that are looked for on the profile."""
PLAIN, PLAIN_RATIO = 5.0, 1.15
"""How far [%], or how many times, the light of the depths on both sides must be from the part that is looked for."""
APART = 1.2
"""How many times as deep each mark on the way down must lie as the one before."""
SHALLOW = 1.0
"""Depth [m] of the water below which nobody doubts that light reaches its bottom."""
MURKIER = 0.6
"""How many times as deep as before a white disk is lost from sight in murkier water."""
SUPPOSED_DEEPER, SUPPOSED_SHALLOWER = 1.12, 0.8
"""How many times as deep as the bottom the photic depth of a supposed water lies."""
ABYSS = 10.0
"""How many times the photic depth a bottom may lie deep before nobody thinks of plants on it."""
DEEP = 10.0
"""Depth [m] of the water from which on life below the light is worth a question."""


def murkier(asked: AskedWater) -> Made:
    """How much the extinction rises when a white disk is lost from sight sooner: it changes the other way round, and by another part."""
    before = asked.fact("secchi_depth")
    after = _supposed(before, MURKIER * before.number)
    given = {"before": before, "after": after}
    old, new = (computed(name, "Extinction coefficient", Expression("1.7 / depth"), {"depth": depth}, unit("1/m")) for name, depth in (("old", before), ("new", after)))
    right = computed(f"{asked.station.id}.murkier", "Rise of the extinction", Expression("before / after - 1"), given, PERCENT)
    draft = Draft(
        id="murkier", supposed=True,
        prompt=(
            f"At {asked.place} a white disk is lost from sight at {before.shown_exactly}, and after heavy rain at {after.shown_exactly}. "
            "The extinction coefficient of light is 1.7 ÷ this depth. By how many percent has the coefficient risen?"
        ),
        solution=f"It was 1.7 ÷ {before.shown_exactly} = {old.shown_exactly}, and is 1.7 ÷ {after.shown_exactly} = {new.shown_exactly}. What has come on top, divided by what was there: {right.shown}.",
        hints=("The smaller the depth at which the disk is lost, the larger the coefficient.", "Divide the new coefficient by the old one. What is above 1 is the rise."),
    )
    return number_entry(
        draft, right, given | {"old": old, "new": new},
        (
            Mistake("wat.disk-for-extinction", "1 - after / before", "giving how many percent the depth of the disk has fallen"),
            Mistake("num.times-for-rise", "before / after", "giving how large the new coefficient is compared with the old one"),
            Mistake("wat.secchi-times", "after / before", "dividing the new depth by the old one", "The smaller the depth, the larger the coefficient: work out both coefficients, and compare these."),
        ),
        asked.catalogue, otherwise="Work out both coefficients. The difference, divided by the old one, is the rise.",
    )  # fmt: skip


def _light_told(asked: AskedWater) -> str:
    """What a prompt says of the light: the Secchi depth where the extinction coefficient follows from it and is asked for."""
    if asked.has("secchi_depth"):
        return f"At {asked.place} a white disk is lost from sight at {asked.fact('secchi_depth').shown_exactly}, the Secchi depth. The extinction coefficient is 1.7 ÷ Secchi depth."
    return f"The extinction coefficient of light at {asked.place} is {asked.fact('extinction').shown_exactly}."


def photic_depth(asked: AskedWater) -> Made:
    """Only where it lies above the bottom: a depth that the water does not have is nothing to ask for."""
    photic, extinction = asked.fact("photic_depth"), asked.fact("extinction")
    if asked.is_lit_to_the_bottom:
        return Rejected("photic_depth", "the bottom lies above it")
    given = {"extinction": extinction}
    seen: tuple[Mistake, ...] = ()
    first = ""
    if asked.has("secchi_depth"):
        given["secchi"] = secchi = asked.fact("secchi_depth")
        photic = computed(photic.id, photic.name, Expression("4.605 * secchi / 1.7"), {"secchi": secchi}, M, figures=photic.figures)
        first = f"1.7 ÷ {secchi.shown_exactly} = {extinction.shown_exactly}, and "
        seen = (Mistake("wat.secchi-light-gone", "secchi", "giving the Secchi depth"),)
    draft = Draft(
        id="photic_depth",
        prompt=f"{_light_told(asked)} Where 1 % of the light is left, extinction × depth = 4.605. At what depth is that?",
        solution=f"{first}4.605 ÷ {extinction.shown_exactly} = {photic.shown}.",
        hints=("The product of extinction and depth is known, and so is the extinction. How does the depth follow?", "Photic depth = 4.605 ÷ extinction coefficient."),
    )
    return number_entry(
        draft, photic, given,
        (
            Mistake("wat.extinction-inverse", "extinction / 4.605", "dividing the extinction by 4.605"),
            Mistake("wat.photic-times", "4.605 * extinction", "multiplying by the extinction"),
            Mistake("wat.one-over", "1 / extinction", "dividing 1 by the extinction: there 37 % of the light is left"),
            Mistake("wat.light-linear", "100 / extinction", "dividing 100 by the extinction, as if it were a percentage of the light for each metre", "The coefficient is no percentage: 0.05 m⁻¹ means that each metre takes about 5 % of what is left."),
            *seen,
        ),
        asked.catalogue, otherwise="4.605 stands above the line; the larger the extinction, the shallower the lit water.",
    )  # fmt: skip


def half_way(asked: AskedWater) -> Made:
    """Equal steps take equal parts: what is left at half the photic depth."""
    draft = Draft(
        id="half_way", supposed=True,
        prompt=f"At the photic depth of {asked.place} 1 % of the light is left. How much is left half way down to it?",
        solution="Each half of the way lets the same part through: a tenth of 100 % is 10 %, and a tenth of 10 % is 1 %.",
        hints=("Each half of the way lets the same part of the light through.", "Which part of 100 %, and then the same part of that again, is 1 %?"),
    )
    wrong = (
        Wrong("About 50 %", "wat.light-linear", "That would be so if every metre took the same amount of light."),
        Wrong("About 2 %", "wat.light-inverse", "Light does not double when the depth is halved."),
        Wrong("About 90 %", "wat.light-complement", "So much is gone by then, and not left."),
    )
    return choice(draft, "About 10 %", wrong, asked.catalogue, salt=asked.salt)


def light_at_depth(asked: AskedWater) -> Made:
    """Which part of the light gets down to a depth that neither chart nor table names; below the bottom, that of a pool as clear."""
    item, extinction, photic = "light_at_depth", asked.fact("extinction"), asked.fact("photic_depth")
    told = {*table_depths(lowest_drawn(asked.fact("depth"), photic)), asked.station.depth, 1.0}
    round_depths = [step * power for power in (0.1, 1.0, 10.0) for step in (1, 1.5, 2, 2.5, 3, 4, 5, 6, 7, 8)]
    at = next((z for z in round_depths if z not in told and LEFT_LEAST <= share(extinction, z) <= LEFT_MOST), None)
    if at is None:
        return Rejected(item, "no round depth has a middling part of the light")
    depth = Fact(id=f"{asked.station.id}.asked_depth", name="Depth", value=at, unit=M, written=f"{at:g}")
    left = computed(f"{asked.station.id}.{item}", f"Light left at {depth.shown}", Expression("exp(-extinction * depth)"), {"extinction": extinction, "depth": depth}, PERCENT)
    is_here = at < asked.station.depth
    where = f"How much is left {depth.shown} down?" if is_here else f"How much is left {depth.shown} down in a pool as clear as that?"
    draft = Draft(
        id=item, prompt=f"{_light_told(asked)} The part left is e to the power of −(extinction × depth). {where}",
        solution=f"e to the power of −({extinction.shown_exactly} × {depth.shown}), in percent, is {left.shown}.",
        hints=(
            "Multiply the extinction by the depth, and put a minus before it.",
            "The key for e to the power of a number gives a part of 1; times 100 it is in percent.",
        ),
    )
    return choice_of_numbers(
        draft, left, {"extinction": extinction, "depth": depth, "photic": photic},
        (
            Mistake("wat.light-complement", "1 - exp(-extinction * depth)", "giving the light that is lost"),
            *((Mistake("wat.light-linear", "1 - 0.99 * depth / photic", "letting light fall in a straight line to 1 %"),) if at < photic.number else ()),
            Mistake("wat.one-metre", "100 * exp(-extinction)", "taking the light at a depth of one metre"),
            Mistake("wat.light-inverse", "0.01 * photic / depth", "starting from 1 % at the photic depth and taking light to double when depth halves"),
        ),
        asked.catalogue,
    )  # fmt: skip


def plants_on_the_bottom(asked: AskedWater) -> Made:
    """The depth of the water beside another photic depth than the page tells: of clearer water where its own bottom is dark, else of murkier."""
    item, photic, depth = "plants_on_the_bottom", asked.fact("photic_depth"), asked.fact("depth")
    if not SHALLOW <= asked.station.depth <= ABYSS * photic.number:
        return Rejected(item, "so shallow or so deep a water leaves no doubt")
    lit = not asked.is_lit_to_the_bottom
    wanted = depth.number * (SUPPOSED_DEEPER if lit else SUPPOSED_SHALLOWER)
    if asked.has("secchi_depth"):
        secchi = _supposed(asked.fact("secchi_depth"), 1.7 * wanted / 4.605)
        case = f"a white disk is lost from sight at {secchi.shown_exactly}. Extinction is 1.7 ÷ that depth"
        given = {"secchi": secchi}
        found = computed(photic.id, photic.name, Expression("4.605 * secchi / 1.7"), given, M, figures=photic.figures)
        working = f"4.605 × {secchi.shown_exactly} ÷ 1.7"
    else:
        extinction = _supposed(asked.fact("extinction"), 4.605 / wanted)
        case = f"the extinction coefficient of light is {extinction.shown_exactly}"
        found = computed(photic.id, photic.name, Expression("4.605 / extinction"), {"extinction": extinction}, M, figures=photic.figures)
        working = f"4.605 ÷ {extinction.shown_exactly}"
    if (found.number >= depth.number) is not lit:
        return Rejected(item, "rounded, the supposed water is no clearer or murkier than its own")
    draft = Draft(
        id=item, supposed=True,
        prompt=(
            f"In another water, {depth.shown_exactly} deep, {case}. "
            "Plants need about 1 % of the light; where that is left, extinction × depth = 4.605. Can they live on the bottom?"
        ),
        solution=f"{working} = {found.shown_exactly}: there 1 % of the light is left, about the least on which plants can live. The bottom lies at {depth.shown_exactly}.",
        hints=("Plants need about 1 % of the light to keep alive, and the photic depth is where that much is left.", "Work out the photic depth first. Which lies deeper then: that, or the bottom?"),
    )
    said = {True: "Yes: the bottom lies above the photic depth", False: "No: the bottom lies below the photic depth"}
    wrong = (
        Wrong(said[not lit], "wat.depths-misread", f"The photic depth is {found.shown_exactly}, and the bottom lies at {depth.shown_exactly}."),
        Wrong("Yes: any light that gets down there will do", "wat.any-light"),
        Wrong("No: the disk is lost from sight far above the bottom", "wat.secchi-light-gone") if lit and asked.has("secchi_depth")
        else Wrong("No: plants need the full light of the Sun", "wat.full-light"),
    )  # fmt: skip
    return choice(draft, said[lit], wrong, asked.catalogue, salt=asked.salt)


def _supposed(fact: Fact, value: float) -> Fact:
    """The fact with another value, of two figures."""
    number = shown.rounded(value, 2)
    return stated(f"{fact.id}.supposed", fact.name, Amount(value=float(number), written=f"{number:f}"), fact.unit)


def below_the_light(asked: AskedWater) -> Made:
    """Where food comes from in the dark."""
    if asked.is_lit_to_the_bottom or asked.station.depth < DEEP:
        return Rejected("below_the_light", "the water is too shallow for a life of its own below the light")
    vents = " At hot vents and cold seeps bacteria build food without light, but such places are few." if asked.is_salty else ""
    draft = Draft(
        id="below_the_light",
        prompt=f"Animals live far below the photic depth of {'a sea' if asked.is_salty else 'a lake'} such as {asked.site}. Where, and by what, was most of the energy in their food first stored?",
        solution=f"Plants and algae build food in the light. It sinks as dead matter and faeces, or is eaten by animals that swim down.{vents}",
        needs=Needs.KNOWLEDGE,
        hints=("Animals cannot build food from what is dissolved in water.", "Which living things build food, and what do they need for it?"),
    )
    wrong = (
        Wrong("In the mud of the bottom, by water plants", "wat.plants-in-dark"),
        Wrong("In the deep water, by animals that take up nutrients", "wat.animals-eat-nutrients"),
        Wrong("In the deep water, out of the oxygen that it holds", "wat.oxygen-is-food"),
    )
    return choice(draft, "In the lit water near the surface, by algae", wrong, asked.catalogue, salt=asked.salt)


def light_depth(asked: AskedWater) -> Made:
    """The first depth of the profile's table at which less than a part of the light is left; only where none is near the limit."""
    item, light = "light_depth", asked.fact("extinction")
    depths = table_depths(lowest_drawn(asked.fact("depth"), asked.fact("photic_depth")))
    found = next(((part, place) for part in drawn(READ_AT, asked.salt, item) if (place := _first_below(light, depths, part)) is not None), None)
    if found is None:
        return Rejected(item, "at no depth of the table light falls plainly below a round part")
    part, place = found
    labels = [_metres(depth) for depth in depths]
    before, at = (shown.number(share(light, depth)) for depth in depths[place - 1 : place + 1])
    draft = Draft(
        id=item,
        prompt=f"Which of these depths is the first at which less than {part:g} % of the light is left at {asked.place}? Read the light profile.",
        solution=f"At {labels[place]} {at} % is left; at {labels[place - 1]} it is still {before} %.",
        hints=(
            f"Find {part:g} % on the axis of light, at the top of the profile.",
            f"Go straight down from {part:g} % to the curve, then left to the depth. Of the depths in the list, take the next deeper one.",
        ),
    )
    straight = next((label for depth, label in zip(depths, labels, strict=True) if 100 - 99 * depth / asked.fact("photic_depth").number < part), "")
    lost = next((n for n, depth in enumerate(depths) if share(light, depth) < 100 - part), len(depths))
    told = f"That is the first of these depths at which more than {part:g} % is lost: {{}} % is still left there."
    of_loss = [([_metres(depth)], Wrong("", "wat.light-complement", told.format(shown.number(share(light, depth))))) for depth in depths[lost : lost + 1]]
    wrong = [
        *(of_loss if lost == place - 1 else ()),
        ([labels[place - 1]], Wrong("", "num.not-reached", "", f"There {before} % is left: not yet less than {part:g} %.")),
        ([straight] if straight else [], Wrong("", "wat.light-linear", "There it would be if light fell in a straight line from 100 % at the surface to 1 % at the photic depth.")),
        ([label for label in labels if label == _metres(part)], Wrong("", "wat.axes-swapped", f"You looked for {part:g} on the axis of depth.")),
        *of_loss,
        (labels[place + 1 :], Wrong("", "num.past-first", "", f"It is darker there, but less than {part:g} % is left at {labels[place]} already. Look for the first such depth.")),
    ]
    return reading(draft, labels, [labels[place]], wrong, asked.catalogue, otherwise="Go down from the axis of light to the curve, then left to the axis of depth.")


def _first_below(light: Fact, depths: tuple[float, ...], part: float) -> int | None:
    """The place of the first depth with less light, from the third on; none where its light or that above is near the part."""
    place = next((n for n, depth in enumerate(depths) if share(light, depth) < part), None)
    if place is None or place < 2:
        return None
    above, below = share(light, depths[place - 1]), share(light, depths[place])
    plain = (above - part >= PLAIN or above >= PLAIN_RATIO * part) and (part - below >= PLAIN or part >= PLAIN_RATIO * below)
    return place if plain else None


def _metres(depth: float) -> str:
    return f"{depth:g} m"


def way_down(asked: AskedWater) -> Made:
    """What a stone passes on its way down: only marks that lie plainly apart, and the bottom last."""
    item = "way_down"
    bottom = asked.fact("depth")
    light = asked.fact("extinction").number
    if not asked.has("secchi_depth"):
        return Rejected(item, "without the depth of the disk the order is that of the numbers alone")
    secchi, photic = asked.fact("secchi_depth"), asked.fact("photic_depth")
    half = math.log(2) / light
    marks = [
        ("Where half of the light is left", half, f"at {shown.number(half)} m"),
        ("Where nine tenths of the light is gone", math.log(10) / light, f"at {shown.number(math.log(10) / light)} m, half way down to the photic depth"),
        ("Where a white disk is lost from sight", secchi.number, f"at {secchi.shown_exactly}"),
        ("Where plants can only just stay alive", photic.number, f"at the photic depth, {photic.shown_exactly}"),
    ]  # fmt: skip
    marks = [mark for mark in sorted(marks, key=lambda mark: mark[1]) if mark[1] * APART <= bottom.number]
    marks = [mark for n, mark in enumerate(marks) if n == 0 or mark[1] >= APART * marks[n - 1][1]]
    marks.append(("The bottom", bottom.number, f"at {bottom.shown_exactly}"))
    if len(marks) < FEWEST_STEPS:
        return Rejected(item, "too few depths of this water lie plainly apart")
    at = {text: told for text, _, told in marks}
    draft = Draft(
        id=item,
        prompt=f"A stone sinks at {asked.place}. Put the depths that it reaches in order, from the surface down.",
        solution=f"{as_option('; '.join(f'{text[:1].lower()}{text[1:]}: {at[text]}' for text in at))}.",
        needs=Needs.BOTH,
        hints=(
            "The more light is left, the nearer is the surface.",
            "Find the depths on the light profile, and the depth of the disk and of the bottom among the numbers of this page.",
        ),
    )
    return ordering(
        draft, list(at), starts_with="Which of these depths is nearest to the surface?", salt=asked.salt,
        leads_on=lambda text: f"This is {at[text]}. Which of the others comes next below it?",
    )  # fmt: skip
