"""Food webs: trophic levels from diets, chains from the bottom up, loops and omnivores."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence

import numpy as np

from generator.science.method import Method

Eats = Mapping[str, Sequence[str]]
"""What each species eats; a species without food is basal: a producer, or dead matter."""
SHARES_TOLERANCE = 1e-6
"""How far from 1 the shares of a diet may add up to."""
MOST_STEPS = 20_000
"""Steps of a search for chains, after which there are too many to follow."""


class TooManyChains(ValueError):
    """A web in which more chains cross than can be followed."""


def trophic_levels(diets: Mapping[str, Mapping[str, float]]) -> dict[str, float]:
    """The trophic level of every species: 1 for producers and dead matter, else one above the mean level of the food.

    Parameters
    ----------
    diets : mapping of str to mapping of str to float
        For each species the share of each food in its diet; empty for producers and dead matter, which may be left out.

    Returns
    -------
    dict of str to float
        The level of each species that is named, in the order of first appearance.

    Raises
    ------
    ValueError
        If a share is not above 0, the shares of a species do not add up to 1, or no chain from the bottom reaches it.

    Notes
    -----
    All levels are solved for together, (I - D) levels = 1 with D the shares, so cannibals and loops are no obstacle.

    References
    ----------
    .. [1] ODUM_HEALD1975, LEVINE1980

    Examples
    --------
    >>> trophic_levels({"zooplankton": {"algae": 1.0}, "anchovy": {"algae": 0.5, "zooplankton": 0.5}})
    {'zooplankton': 2.0, 'algae': 1.0, 'anchovy': 2.5}
    """
    names = list(_species(diets))
    for eater, diet in diets.items():
        for food, share in diet.items():
            if not 0.0 < share < math.inf:
                raise ValueError(f"{eater}: expected shares above 0, found {share:g} of {food}")
        if diet and abs(math.fsum(diet.values()) - 1.0) > SHARES_TOLERANCE:
            raise ValueError(f"{eater}: expected shares that add up to 1, found {math.fsum(diet.values()):g}")
    if lost := without_source({eater: tuple(diet) for eater, diet in diets.items()}):
        raise ValueError(f"expected a chain from the bottom to every species, found none to {', '.join(lost)}")
    place = {name: at for at, name in enumerate(names)}
    matrix = np.eye(len(names))
    for eater, diet in diets.items():
        for food, share in diet.items():
            matrix[place[eater], place[food]] -= share
    levels = np.linalg.solve(matrix, np.ones(len(names)))
    return {name: float(level) for name, level in zip(names, levels, strict=True)}


def without_source(eats: Eats, gone: str | None = None) -> tuple[str, ...]:
    """The species that no chain from a producer or from dead matter reaches, such as two that eat only each other.

    With a species that is gone, those that no chain reaches without it.
    """
    there = [name for name in _species(eats) if name != gone]
    fed = {name for name in there if not eats.get(name)}
    while more := {name for name in there if name not in fed and fed.intersection(eats[name])}:
        fed |= more
    return tuple(name for name in there if name not in fed)


def feeding_loops(eats: Eats) -> tuple[tuple[str, ...], ...]:
    """Species that eat each other, straight or through others, together; a cannibal outside such a group stands alone."""
    below = {name: _all_food(eats, name) for name in _species(eats)}
    groups = dict.fromkeys(tuple(other for other in below if other in below[name] and name in below[other]) for name in below)
    return tuple(group for group in groups if group)


def food_chains(eats: Eats, end: str) -> tuple[tuple[str, ...], ...]:
    """Every chain that leads from the bottom up to a species, no species twice; the shortest first, then by name.

    Raises
    ------
    TooManyChains
        If there are more than can be followed.
    """
    left = MOST_STEPS

    def down(chain: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
        nonlocal left
        left -= 1
        if left < 0:
            raise TooManyChains(f"more chains lead to {end} than can be followed")
        if not eats.get(chain[0]):
            yield chain
        for food in eats.get(chain[0], ()):
            if food not in chain:
                yield from down((food, *chain))

    return tuple(sorted(down((end,)), key=lambda chain: (len(chain), chain)))


def chain_lengths(eats: Eats, species: str) -> list[int]:
    """The length of every chain to a species, counted in arrows, the shortest first; 0 for a basal species.

    Raises
    ------
    TooManyChains
        If there are more than can be followed.

    References
    ----------
    .. [1] PIMM1982

    Examples
    --------
    >>> chain_lengths({"vole": ["grass"], "snake": ["vole"], "buzzard": ["vole", "snake"]}, "buzzard")
    [2, 3]
    """
    return [len(chain) - 1 for chain in food_chains(eats, species)]


def omnivores(eats: Eats) -> tuple[str, ...]:
    """The species whose foods stand at different heights, counted along the shortest chain; eating its own kind is left aside."""
    height = {name: _height(eats, name) for name in _species(eats)}
    foods = {name: [food for food in eats.get(name, ()) if food != name] for name in height}
    return tuple(name for name in height if len({height[food] for food in foods[name]}) > 1)


def _height(eats: Eats, species: str) -> int | None:
    """Arrows of the shortest chain; None where none leads there."""
    seen: set[str] = set()
    following, height = {species}, 0
    while following - seen:
        if any(not eats.get(name) for name in following):
            return height
        seen |= following
        following = {food for name in following for food in eats[name]} - seen
        height += 1
    return None


def _all_food(eats: Eats, species: str) -> set[str]:
    """Everything that a species lives on, straight or through others."""
    found: set[str] = set()
    following = set(eats.get(species, ()))
    while following - found:
        found |= following
        following = {food for name in following for food in eats.get(name, ())}
    return found


def _species(eats: Mapping[str, object]) -> dict[str, None]:
    """Everyone who eats or is eaten, in order of first appearance."""
    found: dict[str, None] = {}
    for eater, foods in eats.items():
        found[eater] = None
        found |= dict.fromkeys(foods)  # of a diet its keys
    return found


TROPHIC_LEVEL = Method(
    id="trophic_level",
    name="Trophic level from the diet",
    formula=("level = 1 + sum(share * level_of_food)",),
    symbols=(
        ("level", "trophic level of the eater", ""),
        ("share", "share of a food in its diet; all shares add up to 1", ""),
        ("level_of_food", "trophic level of that food", ""),
    ),
    rule="Producers and dead matter stand at level 1 by convention. Where species eat each other or their own kind, all levels are solved for together.",
    sources=("ODUM_HEALD1975", "LEVINE1980", "TROPHLAB2000"),
    limits="As good as the diet: shares change with season, place and age. By convention dead matter has level 1, "
    "although bacteria may have eaten it before.",
    function=trophic_levels,
)

CONNECTANCE = Method(
    id="connectance",
    name="Connectance of a food web",
    formula=("connectance = links / species ** 2",),
    symbols=(
        ("connectance", "part of all possible feeding links that are there", ""),
        ("links", "feeding links, those of cannibals included", ""),
        ("species", "species or groups, dead matter included", ""),
    ),
    sources=("MARTINEZ1991",),
    limits="It depends on how finely species are told apart: a web drawn with groups seems more tightly linked than one with species.",
)

CHAIN_LENGTH = Method(
    id="chain_length",
    name="Length of food chains",
    formula=(),
    rule="A chain begins with a producer or dead matter and follows the arrows up; its length counts arrows. No species comes twice, so loops end.",
    symbols=(),
    sources=("PIMM1982",),
    limits="A chain counts for nothing how much passes along it: a long one may carry hardly any energy.",
    function=chain_lengths,
)
