"""Which way the others of a food web change when one species goes: signs along paths, and who is left without food."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from generator.science.food_webs import without_source
from generator.science.method import Method

UP, DOWN = 1, -1
"""The sign of a link: from food to eater a change keeps its direction, from eater to food it turns round."""
FARTHEST = 3
"""Arrows along which paths are followed. Our own rule: long paths have little effect as a rule, and there are very many of them.
A species that no such path reaches is followed to along its shortest ones."""


@dataclass(frozen=True)
class EffectPath:
    """One way in which the loss of a species is felt by another."""

    species: tuple[str, ...]
    """From the one that is gone to the one that is affected, none twice."""
    signs: tuple[int, ...]
    """Of each link, `UP` or `DOWN`."""

    @property
    def changes(self) -> tuple[int, ...]:
        """The direction in which each species of the path changes: -1 for the one that goes, then as the links say."""
        return tuple(-math.prod(self.signs[:at]) for at in range(len(self.species)))

    @property
    def effect(self) -> int:
        """Whether the last species rises (1) or falls (-1) along this path."""
        return self.changes[-1]


def removal_paths(eats: Mapping[str, Sequence[str]], gone: str) -> dict[str, tuple[EffectPath, ...]]:
    """The paths from a species that goes to each other one that is linked with it; of one species the shortest first.

    Two species that eat each other are linked twice, with opposite signs, and each link makes a path of its own.
    Links of a species with itself are no part of a path. A species that is not linked at all is left out.
    """
    links = _links(eats)
    far = _distances(links, gone)
    found: dict[str, list[EffectPath]] = {name: [] for name in far if name != gone}
    for path in _paths_from(EffectPath((gone,), ()), links, far):
        found[path.species[-1]].append(path)
    return {name: tuple(sorted(paths, key=lambda path: len(path.signs))) for name, paths in found.items()}


def removal_effects(eats: Mapping[str, Sequence[str]], gone: str) -> dict[str, int]:
    """Which way each species changes when one goes: 1 up, -1 down, 0 where the paths to it disagree.

    Parameters
    ----------
    eats : mapping of str to sequence of str
        What each species eats.
    gone : str
        The species that is taken away.

    Returns
    -------
    dict of str to int
        A sign for each other species that a path reaches, the nearest first.

    Notes
    -----
    The sign along a path is minus the product of its links' signs. Where all paths agree it is that of the response; the
    paths are those of `removal_paths`.

    References
    ----------
    .. [1] PUCCIA_LEVINS1985, DAMBACHER2001

    Examples
    --------
    >>> removal_effects({"urchin": ["kelp"], "otter": ["urchin"]}, "otter")
    {'urchin': 1, 'kelp': -1}
    """
    return {name: agreed(paths) for name, paths in removal_paths(eats, gone).items()}


def agreed(paths: Sequence[EffectPath]) -> int:
    """The effect on which all the paths agree; 0 where they do not, or where there is none."""
    effects = {path.effect for path in paths}
    return effects.pop() if len(effects) == 1 else 0


def shortest(paths: Sequence[EffectPath]) -> tuple[EffectPath, ...]:
    """The shortest of the paths; while time since the loss is short, they decide which way the change goes."""
    least = min((len(path.signs) for path in paths), default=0)
    return tuple(path for path in paths if len(path.signs) == least)


def left_without_food(eats: Mapping[str, Sequence[str]], gone: str) -> list[str]:
    """The species that no chain from the bottom reaches any more when one goes, in their order.

    Those that ate nothing else are among them, those that lived on these alone, and closed loops that have lost their source.

    References
    ----------
    .. [1] DUNNE2002

    Examples
    --------
    >>> left_without_food({"caterpillar": ["oak"], "tit": ["caterpillar", "beech nut"], "wasp": ["caterpillar"]}, "oak")
    ['caterpillar', 'wasp']
    """
    lost = without_source(eats, gone)
    return [name for name in eats if name in lost]


_Links = dict[str, list[tuple[str, int]]]


def _links(eats: Mapping[str, Sequence[str]]) -> _Links:
    """For each species the ones at the other end of its links, with the sign of the way there."""
    found: _Links = {}
    for eater, foods in eats.items():
        found.setdefault(eater, [])
        for food in foods:
            found.setdefault(food, [])
            if food != eater:
                found[food].append((eater, UP))
                found[eater].append((food, DOWN))
    return found


def _distances(links: _Links, start: str) -> dict[str, int]:
    """Links on the shortest way from a species to each that can be reached, the nearest first."""
    far = {start: 0}
    for name in (queue := [start]):
        for other, _ in links.get(name, ()):
            if other not in far:
                far[other] = far[name] + 1
                queue.append(other)
    return far


def _paths_from(path: EffectPath, links: _Links, far: Mapping[str, int]) -> Iterator[EffectPath]:
    """Every longer path that begins with this one."""
    for other, sign in links.get(path.species[-1], ()):
        length = len(path.signs) + 1
        if other not in path.species and (length <= FARTHEST or length == far[other]):
            longer = EffectPath((*path.species, other), (*path.signs, sign))
            yield longer
            yield from _paths_from(longer, links, far)


REMOVAL_EFFECT = Method(
    id="removal_effect",
    name="Which way others change when a species goes",
    formula=(),
    rule="From food to eater a change keeps its direction: less food, fewer eaters. From eater to food it turns round: fewer eaters, more food. "
    "Along a path each arrow is taken in turn. Paths of up to three arrows are followed, and longer ones only to species that no shorter one reaches.",
    symbols=(),
    sources=("PUCCIA_LEVINS1985", "DAMBACHER2001", "CARPENTER1987"),
    limits="Signs only, no amounts. Where paths disagree the sign is not told. It leaves out that animals change their diet or hide, "
    "that living things also compete for space or light, and that what dies becomes dead matter, of which nothing is told for this reason.",
    function=removal_effects,
)

LEFT_WITHOUT_FOOD = Method(
    id="left_without_food",
    name="Who is left without food when a species goes",
    formula=(),
    rule="A species is left without food when no chain from a producer or from dead matter reaches it any more.",
    symbols=(),
    sources=("DUNNE2002",),
    limits="It counts as fed whoever keeps any food at all, though little may be too little.",
    function=left_without_food,
)
