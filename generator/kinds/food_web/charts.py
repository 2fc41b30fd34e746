"""The charts of a food web: the web itself, and for each species whose loss is thought through, what happens to the others."""

from __future__ import annotations

from collections.abc import Mapping

from figures import DataTable, FeedingLink, FoodWebDiagram, WebSpecies

from generator.kind import Subject
from generator.kinds.food_web.asking import IN_WORDS
from generator.kinds.food_web.facts import tops
from generator.kinds.food_web.losses import NO_FOOD, Loss, losses
from generator.kinds.food_web.record import FoodWebRecord, Species
from generator.quantities.fact import Facts
from generator.quantities.text import sentence
from generator.science.food_web_effects import FARTHEST
from generator.science.food_webs import trophic_levels

ARROWS = "An arrow points from the eaten to the eater: that is the way the energy goes. To see what a species eats, look for arrows that end at it."
WIDTHS = "The wider an arrow, the larger the share of that food in the eater's diet."
SHAPES = "A box with a double frame is a producer, one with cut corners dead matter, one with round corners a consumer."
LEVEL = ("Trophic level", "The height of a box is its trophic level: producers and dead matter stand at 1, every consumer one above the mean of its food.")
GUESS = (
    "Height: as if all foods counted alike",
    "Not every trophic level is known. The height of a box is only a guess: it stands one above the mean of its foods, as if it ate as much of each.",
)  # fmt: skip
EVERY_PATH = f"every path of up to {IN_WORDS[FARTHEST]} arrows"
LOSS_READING = (
    "The dashed box is the species that is gone; its arrows are dashed too.",
    f"A full triangle that points up or down says that {EVERY_PATH} from it leads to a rise, or to a fall.",
    "A hollow triangle says what the shortest paths lead to at first, where longer ones disagree. Where even the shortest disagree, nothing can be told.",
)
FAR_READING = f"For a species that is more than {IN_WORDS[FARTHEST]} arrows away, the triangle goes by the shortest paths alone."
DEAD_READING = "Dead matter has no triangle: what dies adds to it, and no arrow shows that."
SHORT = {NO_FOOD: "no food left"}
"""What fits into a box of what is told of a loss; of the rest what stands before the comma."""


def charts(subject: Subject[FoodWebRecord]) -> tuple[FoodWebDiagram, ...]:
    """The web, then one diagram for each of `if_gone:`, in its order."""
    return (_web(subject), *(_without(subject, gone) for gone in subject.record.if_gone))


def heights(record: FoodWebRecord) -> dict[str, float]:
    """The trophic level of every species, with foods counted alike where a diet is not known."""
    return trophic_levels({one.id: _diet_or_guess(one) for one in record.species})


def _diet_or_guess(species: Species) -> Mapping[str, float]:
    if species.diet is not None:
        return species.diet
    return {food.food: 1 / len(species.eats) for food in species.eats}


def knows_levels(record: FoodWebRecord, facts: Facts) -> bool:
    """Whether every species has a trophic level."""
    return all(facts[f"{one.id}.trophic_level"].is_number for one in record.species)


def _links(record: FoodWebRecord) -> tuple[FeedingLink, ...]:
    """Arrows as wide as the shares, where every diet is known; else all alike."""
    known = all(one.diet is not None for one in record.species)
    return tuple(
        FeedingLink(food=food.food, eater=one.id, share=(one.diet or {}).get(food.food) if known else None)
        for one in record.species
        for food in one.eats
    )


def _web(subject: Subject[FoodWebRecord]) -> FoodWebDiagram:
    record, facts = subject.record, subject.facts
    levels = knows_levels(record, facts)
    axis, height_reading = LEVEL if levels else GUESS
    links, height, notes = _links(record), heights(record), _notes(subject)
    return FoodWebDiagram(
        name=f"{subject.name}.food_web",
        title=f"{record.title}: who eats whom",
        description=_description(record, facts),
        reading=(ARROWS, height_reading, *([WIDTHS] if any(link.share is not None for link in links) else []), SHAPES),
        table=_table(record, facts),
        species=tuple(
            WebSpecies(
                id=one.id, label=one.label, level=height[one.id], sort=one.feeding,
                note=notes[one.id][0], room_for=notes[one.id],
            )
            for one in record.species
        ),
        links=links, axis_label=axis,
    )  # fmt: skip


def _table(record: FoodWebRecord, facts: Facts) -> DataTable:
    """A row a species, from the bottom up as the record has them."""
    has_biomass = any(one.biomass is not None for one in record.species)
    columns = ["Species", "Feeding", "Eats (share of the diet)", "Is eaten by", "Trophic level", "Shortest chain, arrows"]
    eaters = {one.id: [record.spoken[other.id] for other in record.species if one.id in record.eats[other.id]] for one in record.species}
    rows = []
    for one in record.species:
        level = facts[f"{one.id}.trophic_level"]
        row = [
            one.label, _feeding(one), _diet(record, facts, one) or "nothing", ", ".join(eaters[one.id]) or "nobody",
            level.shown if level.is_number else "not known", facts[f"{one.id}.shortest_chain"].shown,
        ]  # fmt: skip
        biomass = facts.get(f"{one.id}.biomass")
        rows.append(tuple([*row, biomass.shown_bare if biomass else "–"] if has_biomass else row))
    if has_biomass:
        unit = next(facts[f"{one.id}.biomass"].unit for one in record.species if one.biomass is not None)
        columns.append(f"Biomass ({unit.shown})" if unit else "Biomass")
    return DataTable(caption=f"{record.title}: species and links", columns=tuple(columns), rows=tuple(rows))


def _feeding(species: Species) -> str:
    return "dead matter" if species.feeding == "detritus" else species.feeding


def _diet(record: FoodWebRecord, facts: Facts, species: Species) -> str:
    parts = []
    for food in species.eats:
        share = facts.get(f"{species.id}.share_of_{food.food}")
        parts.append(record.spoken[food.food] + (f" {share.shown}" if share else ""))
    return ", ".join(parts)


def _description(record: FoodWebRecord, facts: Facts) -> str:
    """What the web shows, in words, with the numbers that decide."""
    at_top = tops(record, facts)
    bottom = [record.spoken[one.id] for one in record.species if not one.eats]
    longest = facts["longest_chain"]
    said = [
        f"{facts['species_count'].shown} species and groups, {facts['link_count'].shown} feeding links.",
        f"At the bottom: {', '.join(bottom)}.",
    ]  # fmt: skip
    if at_top:
        heads = [f"{record.spoken[one.id]}{_at_level(facts, one)}" for one in at_top]
        said.append(f"At the top: {', '.join(heads)}.")
    said.append(f"The longest chain has {longest.shown} {'arrow' if longest.number == 1 else 'arrows'}.")
    return " ".join(said)


def _at_level(facts: Facts, species: Species) -> str:
    level = facts[f"{species.id}.trophic_level"]
    return f" at level {level.shown}" if level.is_number else ""


def _without(subject: Subject[FoodWebRecord], gone: str) -> FoodWebDiagram:
    """The same web with the loss of one species, and what is told of each other."""
    record, facts = subject.record, subject.facts
    label, found = record.spoken[gone], losses(record, gone)
    axis, _ = LEVEL if knows_levels(record, facts) else GUESS
    height, notes = heights(record), _notes(subject)
    return FoodWebDiagram(
        name=f"{subject.name}.without_{gone}",
        title=f"{record.title}: if {label} were gone",
        description=_what_happens(record, found),
        reading=_loss_reading(found),
        table=DataTable(
            caption=f"If {label} were gone",
            columns=("Species", "What is told", "Number of paths", "Arrows of the shortest"),
            rows=tuple(
                (record.labels[name], loss.verdict, str(len(loss.paths)), str(len(loss.paths[0].signs)) if loss.paths else "–")
                for name, loss in found.items()
            ),
        ),
        species=tuple(
            WebSpecies(
                id=one.id, label=one.label, level=height[one.id], sort=one.feeding,
                note=_told(found, one.id),
                change="gone" if one.id == gone else "" if found[one.id].starves else found[one.id].change, room_for=notes[one.id],
            )
            for one in record.species
        ),
        links=_links(record), axis_label=axis, every_path=EVERY_PATH,
    )  # fmt: skip


def _loss_reading(found: Mapping[str, Loss]) -> tuple[str, ...]:
    """How a loss is read, with what only some webs need."""
    far = any(loss.paths and len(loss.paths[0].signs) > FARTHEST for loss in found.values())
    dead = any(loss.is_dead and loss.paths for loss in found.values())
    return (*LOSS_READING, *([FAR_READING] if far else []), *([DEAD_READING] if dead else []))


def _notes(subject: Subject[FoodWebRecord]) -> dict[str, tuple[str, ...]]:
    """What stands in the box of each species: in the web, then at each loss, so that it stands at one place in all of them."""
    record, facts = subject.record, subject.facts
    levels = knows_levels(record, facts)
    at_losses = [losses(record, gone) for gone in record.if_gone]
    return {
        one.id: (f"level {facts[f'{one.id}.trophic_level'].shown}" if levels else "", *(_told(found, one.id) for found in at_losses))
        for one in record.species
    }


def _told(found: Mapping[str, Loss], name: str) -> str:
    """What fits into a box of what is told of a loss; the one that is not told of is gone."""
    if name not in found:
        return "gone"
    verdict = found[name].verdict
    return SHORT.get(verdict, verdict.partition(",")[0])


def _what_happens(record: FoodWebRecord, found: Mapping[str, Loss]) -> str:
    """One sentence for each thing that is told of several species."""
    groups: dict[str, list[str]] = {}
    for name, loss in found.items():
        groups.setdefault(loss.verdict, []).append(record.spoken[name])
    told = "; ".join(f"{verdict}: {', '.join(names)}" for verdict, names in groups.items())
    return f"What the arrows tell of the {len(found)} others. {sentence(told)}."
