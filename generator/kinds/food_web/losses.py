"""What the loss of a species would mean for the others: a word for each, and the paths that lead to it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from figures.food_web_diagram import Change

from generator.kinds.food_web.record import FoodWebRecord
from generator.quantities.fact import Fact
from generator.quantities.working import Listing
from generator.science.food_web_effects import (
    LEFT_WITHOUT_FOOD, REMOVAL_EFFECT, EffectPath, agreed, left_without_food, removal_paths, shortest,
)  # fmt: skip

WORDS = {1: "rises", -1: "falls"}
STEPS = {1: "up", -1: "down"}
NO_FOOD, NO_LINK, NOT_TOLD = "left without food", "not linked", "not told, for the paths disagree"
NOT_SHOWN = "not told, for no arrow shows what adds to it"
"""Of dead matter: arrows show who takes from it, but not what dies and adds to it. Grass that is no longer grazed dies as well."""


@dataclass(frozen=True)
class Loss:
    """What happens to one species when another goes."""

    paths: tuple[EffectPath, ...]
    """The shortest first."""
    starves: bool
    is_dead: bool = False
    """Whether it is dead matter, of which the arrows tell too little."""

    @property
    def effect(self) -> int:
        """1 or -1 where everything agrees, 0 where it does not, where nothing links the two, and for dead matter."""
        return self._told(self.paths)

    @property
    def first(self) -> int:
        """The direction of the shortest paths, which act first; 0 where these disagree."""
        return self._told(shortest(self.paths))

    def _told(self, paths: Sequence[EffectPath]) -> int:
        if self.is_dead:
            return 0
        return -1 if self.starves else agreed(paths)

    @property
    def verdict(self) -> str:
        """What is told of it."""
        if self.starves:
            return NO_FOOD
        if not self.paths:
            return NO_LINK
        if self.is_dead:
            return NOT_SHOWN
        if self.effect:
            return WORDS[self.effect]
        return f"{WORDS[self.first]} at first, then not told" if self.first else NOT_TOLD

    @property
    def change(self) -> Change:
        """The mark in the diagram: for what everything agrees on, or else the shortest paths."""
        if self.effect:
            return "rises" if self.effect == 1 else "falls"
        if self.first:
            return "rises at first" if self.first == 1 else "falls at first"
        return ""


def losses(record: FoodWebRecord, gone: str) -> dict[str, Loss]:
    """What happens to each other species, in the record's order."""
    paths, starving = removal_paths(record.eats, gone), left_without_food(record.eats, gone)
    return {one.id: Loss(paths.get(one.id, ()), one.id in starving, one.feeding == "detritus") for one in record.species if one.id != gone}


def path_line(record: FoodWebRecord, path: EffectPath) -> str:
    """A path in words: "pike gone, perch up, zooplankton down"."""
    first, *others = zip(path.species, path.changes, strict=True)
    names = record.spoken
    return ", ".join([f"{record.labels[first[0]]} gone", *(f"{names[name]} {STEPS[change]}" for name, change in others)])


def path_lines(record: FoodWebRecord, paths: Sequence[EffectPath]) -> tuple[str, ...]:
    """A line for each path."""
    return tuple(path_line(record, path) for path in paths)


def loss_facts(record: FoodWebRecord, name: str, found: Mapping[str, Mapping[str, Loss]]) -> Iterator[Fact]:
    """For each species that may go, what that means for this one; for this one, whom its own loss leaves without food.

    `found` holds the `losses` of each species that may go.
    """
    names = record.spoken
    for gone, others in found.items():
        if gone == name:
            starving = [one for one in record.eats if one != gone and others[one].starves]
            lines = tuple(f"{record.labels[one]}: {', '.join(names[food] for food in record.eats[one])}" for one in starving)
            yield Fact(
                id=f"{gone}.left_without_food", name="Left without food if it were gone", method=LEFT_WITHOUT_FOOD.id,
                value=", ".join(names[one] for one in starving) or "nobody", working=Listing("Those that no chain from the bottom reaches any more, with what they ate", lines),
            )  # fmt: skip
            continue
        yield loss_fact(record, gone, name, others[name])


def loss_fact(record: FoodWebRecord, gone: str, name: str, loss: Loss) -> Fact:
    """What the loss of one species means for another."""
    return Fact(
        id=f"{name}.if_{gone}_gone", name=f"If {record.spoken[gone]} were gone", value=loss.verdict,
        working=Listing("Paths", path_lines(record, loss.paths)), method=REMOVAL_EFFECT.id,
    )  # fmt: skip
