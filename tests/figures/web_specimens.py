"""Specs of food webs: ordinary ones, extreme ones, and webs made at random from a seed."""

from __future__ import annotations

import random

from figures import FeedingLink, FoodWebDiagram, WebSpecies
from tests.figures.specimens import TABLE

BOTTOM = {"Plants": "producer", "Dead matter": "detritus"}


def web(name: str, levels: dict[str, float], eats: dict[str, dict[str, float | None]], **changes: str) -> FoodWebDiagram:
    """`levels` by label, `eats` as shares by eater and food; labels are the ids. With changes, those are the notes."""
    species = tuple(
        WebSpecies(
            id=label, label=label, level=level, sort=BOTTOM.get(label, "consumer" if label in eats else "producer"),
            note=changes.get(label.lower().replace(" ", "_"), "not told") if changes else f"level {level:.3g}",
            change=note if (note := changes.get(label.lower().replace(" ", "_"), "")) in ("rises", "falls", "gone") else "",
        )
        for label, level in levels.items()
    )  # fmt: skip
    return FoodWebDiagram(
        name=f"web_{name.lower().replace(' ', '_')}", title=f"Food web of {name}", description="Who eats whom.", reading=(), table=TABLE,
        species=species, axis_label="Trophic level",
        links=tuple(FeedingLink(food=food, eater=eater, share=share) for eater, foods in eats.items() for food, share in foods.items()),
    )  # fmt: skip


LAKE = web(
    "the lake",
    {
        "Phytoplankton": 1, "Pondweed": 1, "Dead matter": 1, "Zooplankton": 2, "Midge larvae": 2, "Roach": 2.75, "Perch": 3.05, "Pike": 3.98,
    },
    {
        "Zooplankton": {"Phytoplankton": 0.9, "Dead matter": 0.1}, "Midge larvae": {"Dead matter": 1.0},
        "Roach": {"Zooplankton": 0.55, "Midge larvae": 0.2, "Pondweed": 0.25}, "Perch": {"Zooplankton": 0.65, "Midge larvae": 0.3, "Roach": 0.05},
        "Pike": {"Perch": 0.55, "Roach": 0.4, "Pike": 0.05},
    },
)  # fmt: skip
WITHOUT_PIKE = web(
    "the lake without pike", {one.label: one.level for one in LAKE.species},
    {one.label: {link.food: link.share for link in LAKE.links if link.eater == one.id} for one in LAKE.species if one.sort == "consumer"},
    pike="gone", perch="rises", roach="rises", zooplankton="falls", phytoplankton="rises", midge_larvae="falls",
)  # fmt: skip
WEBS = (
    LAKE,
    WITHOUT_PIKE,
    web("a chain", {"Grass": 1, "Voles": 2, "Owls": 3}, {"Voles": {"Grass": None}, "Owls": {"Voles": None}}),
    web("one plant", {"Moss": 1}, {}),
    web("each other", {"Algae": 1, "Copepods": 2.41, "Fish larvae": 3.06, "Crabs": 2.5},
        {"Copepods": {"Algae": 0.8, "Fish larvae": 0.2}, "Fish larvae": {"Algae": 0.25, "Copepods": 0.75}, "Crabs": {"Algae": 0.5, "Copepods": 0.3, "Crabs": 0.2}}),
    web("long names", {"Grasses and herbs with everything else that is green": 1, "Dead matter": 1, "Grasshoppers, caterpillars and leaf beetles": 2,
                       "Earthworms, woodlice and springtails in the litter": 2, "Longnosedearthwormeatingbadgers": 3.2},
        {"Grasshoppers, caterpillars and leaf beetles": {"Grasses and herbs with everything else that is green": 1.0},
         "Earthworms, woodlice and springtails in the litter": {"Dead matter": 1.0},
         "Longnosedearthwormeatingbadgers": {"Grasshoppers, caterpillars and leaf beetles": 0.6, "Earthworms, woodlice and springtails in the litter": 0.2, "Longnosedearthwormeatingbadgers": 0.2}}),
    web("nine abreast", {**{f"Plant number {n}": 1 for n in range(9)}, "Deer": 2}, {"Deer": {f"Plant number {n}": None for n in range(9)}}),
)  # fmt: skip
NOT_CROWDED = WEBS[:-1]
_NAMES = ("Snails", "Grasshoppers", "Water fleas", "Frogs", "Mice and voles", "Shrews", "Lizards", "Herons", "Foxes", "Eagle owls", "Otters", "Spiders")


def random_web(seed: int) -> FoodWebDiagram:
    """Two bottoms and up to twelve eaters; each eats one to four others, now and then its own kind or one above it."""
    chance = random.Random(seed)
    eaters = chance.sample(_NAMES, chance.randint(1, len(_NAMES)))
    levels, eats = {"Plants": 1.0, "Dead matter": 1.0}, {}
    for at, name in enumerate(eaters):
        foods = chance.sample([*levels], min(chance.randint(1, 4), len(levels)))
        levels[name] = round(1 + sum(levels[food] for food in foods) / len(foods), 2)
        eats[name] = dict.fromkeys([*foods, *[name] * (chance.random() < 0.15), *([eaters[at + 1]] if chance.random() < 0.1 and at + 1 < len(eaters) else [])])
    shares = chance.random() < 0.5
    return web(f"chance {seed}", levels, {name: {food: 1 / len(foods) if shares else None for food in foods} for name, foods in eats.items()})
