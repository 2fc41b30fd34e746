"""Spec of a food web: species at the height of their trophic level, arrows from the eaten to the eater."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import ClassVar, Literal

from figures.chart import Chart

Change = Literal["", "rises", "falls", "rises at first", "falls at first", "gone"]


@dataclass(frozen=True, kw_only=True)
class WebSpecies:
    """A species, a group of them, or dead matter."""

    id: str
    label: str
    level: float
    """Height in the drawing: the trophic level, 1 at the bottom."""
    sort: Literal["producer", "consumer", "detritus"]
    note: str
    """What stands under the label: "level 3.48", or what happens to it; empty for nothing."""
    change: Change = ""
    """A mark before the note, hollow for what holds at first only; the one that is gone is drawn with dashes, its links too."""
    room_for: tuple[str, ...] = ()
    """Its notes in other drawings of the same web: with room for each of them it stands at the same place in all."""


@dataclass(frozen=True, kw_only=True)
class FeedingLink:
    """One arrow; food and eater may be the same species."""

    food: str
    eater: str
    share: float | None
    """Of the eater's diet, above 0 up to 1: sets the width; None where it is not known."""


@dataclass(frozen=True, kw_only=True)
class FoodWebDiagram(Chart):
    """A whole web."""

    species: tuple[WebSpecies, ...]
    links: tuple[FeedingLink, ...]
    axis_label: str
    """What the height shows: "Trophic level"."""
    every_path: str = "every path"
    """What a full mark rests on, as the key says it: "every path of up to three arrows"."""
    HAS_NARROW: ClassVar[bool] = True


_MOST_SPECIES, _MOST_LINKS, _MOST_ABREAST, _ABREAST = 14, 28, 5, 0.4
"""Species whose levels lie closer than the last of these stand side by side."""


def crowded(spec: FoodWebDiagram) -> str | None:
    """Why a diagram of this spec will be hard to read, in plain words; None where it will not.

    The limits are our own, found by drawing on a canvas 700 px wide.
    """
    if len(spec.species) > _MOST_SPECIES:
        return f"{len(spec.species)} species stand in one drawing; more than {_MOST_SPECIES} are hard to follow"
    if len(spec.links) > _MOST_LINKS:
        return f"{len(spec.links)} arrows stand in one drawing; more than {_MOST_LINKS} are hard to tell apart"
    abreast = max((len(row) for row in rows([one.level for one in spec.species])), default=0)
    if abreast > _MOST_ABREAST:
        return f"{abreast} species stand side by side; more than {_MOST_ABREAST} do not find room"
    return None


def rows(levels: list[float]) -> list[list[float]]:
    """The levels in groups, from the bottom up, that lie too close for one species to stand above another.

    >>> rows([1, 2.3, 2, 1, 3.5])
    [[1, 1], [2, 2.3], [3.5]]
    """
    ordered = sorted(levels)
    cuts = [at for at, (low, high) in enumerate(pairwise(ordered), start=1) if high - low >= _ABREAST]
    return [ordered[start:end] for start, end in pairwise([0, *cuts, len(ordered)])] if ordered else []
