"""Properties and edges of generator/science/food_web_effects.py; outside values are in test_checks.py."""

from __future__ import annotations

from itertools import pairwise
from math import prod

import networkx
from hypothesis import given

from generator.science.food_web_effects import (
    DOWN, FARTHEST, UP, EffectPath, agreed, left_without_food, removal_effects, removal_paths, shortest,
)  # fmt: skip
from tests.science.webs import Diets, foods, webs

CHAIN = {"zooplankton": ["algae"], "perch": ["zooplankton"], "pike": ["perch"], "otter": ["pike"]}


def signed(diets: Diets) -> networkx.MultiDiGraph:
    """Each feeding link as two edges: with the arrow up, against it down; keys are the signs."""
    made = networkx.MultiDiGraph()
    for eater, diet in diets.items():
        for food in diet:
            made.add_edge(food, eater, key=UP)
            made.add_edge(eater, food, key=DOWN)
    made.remove_edges_from([edge for edge in list(made.edges(keys=True)) if edge[0] == edge[1]])
    return made


@given(webs())
def test_effect_of_a_path_is_minus_the_product_of_the_signs_of_its_links(diets: Diets) -> None:
    for gone in diets:
        for name, paths in removal_paths(foods(diets), gone).items():
            for path in paths:
                assert (gone, name, len(path.species) - 1) == (path.species[0], path.species[-1], len(path.signs))
                assert -prod(path.signs) == path.effect == path.changes[-1]
                assert [first * second for first, second in pairwise(path.changes)] == list(path.signs)


@given(webs())
def test_each_sign_is_that_of_a_feeding_link(diets: Diets) -> None:
    eats = foods(diets)
    for gone in diets:
        for path in (path for paths in removal_paths(eats, gone).values() for path in paths):
            for (one, other), sign in zip(pairwise(path.species), path.signs, strict=True):
                assert one in eats.get(other, ()) if sign == UP else other in eats.get(one, ())


@given(webs())
def test_paths_are_all_the_simple_ones_within_reach(diets: Diets) -> None:
    """Source: networkx.all_simple_edge_paths on the signed graph."""
    web = signed(diets)
    for gone in diets:
        distances = networkx.single_source_shortest_path_length(web, gone)
        found = removal_paths(foods(diets), gone)
        assert set(found) == set(distances) - {gone}
        for name, paths in found.items():
            cutoff = max(FARTHEST, distances[name])
            expected = [tuple(key for _, _, key in edges) for edges in networkx.all_simple_edge_paths(web, gone, name, cutoff=cutoff)]
            assert sorted(expected) == sorted(path.signs for path in paths)


@given(webs())
def test_own_food_rises_at_first_and_own_eaters_fall(diets: Diets) -> None:
    """Where the two do not eat each other."""
    eats = foods(diets)
    for gone in diets:
        for name, paths in removal_paths(eats, gone).items():
            if name in eats[gone] and gone not in eats.get(name, ()):
                assert 1 == agreed(shortest(paths))
            if gone in eats.get(name, ()) and name not in eats[gone]:
                assert -1 == agreed(shortest(paths))


def test_signs_alternate_down_a_chain_however_long() -> None:
    """The algae are four arrows away, and still the one shortest way to them is followed."""
    assert {"pike": 1, "perch": -1, "zooplankton": 1, "algae": -1} == removal_effects(CHAIN, "otter")


def test_all_above_fall_when_the_bottom_goes() -> None:
    assert {"zooplankton": -1, "perch": -1, "pike": -1, "otter": -1} == removal_effects(CHAIN, "algae")


def test_two_that_eat_each_other_are_linked_with_both_signs() -> None:
    assert {"larva": 0, "algae": 0} == removal_effects({"copepod": ["larva"], "larva": ["copepod", "algae"]}, "copepod")


def test_no_path_agrees_on_nothing() -> None:
    assert (0, ()) == (agreed(()), shortest(()))


def test_shortest_paths_are_parted_from_longer_ones() -> None:
    short, long = EffectPath(("a", "b"), (UP,)), EffectPath(("a", "c", "b"), (DOWN, DOWN))
    assert (short,) == shortest((short, long))


@given(webs())
def test_whoever_is_left_without_food_is_out_of_reach_of_the_bottom(diets: Diets) -> None:
    """Source: networkx.descendants, in the web without the species."""
    for gone in (*diets, "plant", "dead"):
        web = networkx.DiGraph((food, eater) for eater, diet in diets.items() for food in diet if gone not in (eater, food))
        web.add_nodes_from({"plant", "dead", *diets} - {gone})
        reached = set().union(*(networkx.descendants(web, bottom) for bottom in {"plant", "dead"} - {gone}))
        assert [name for name in diets if name not in {*reached, gone}] == left_without_food(foods(diets), gone)


def test_loss_works_its_way_up() -> None:
    assert ["zooplankton", "perch", "pike", "otter"] == left_without_food(CHAIN, "algae")


def test_the_top_leaves_nobody_without_food() -> None:
    assert [] == left_without_food(CHAIN, "otter")


@given(webs())
def test_effects_are_told_of_all_that_is_linked_and_are_open_only_where_paths_disagree(diets: Diets) -> None:
    """Source: networkx.descendants on the signed graph."""
    web = signed(diets)
    for gone in diets:
        found = removal_effects(foods(diets), gone)
        assert networkx.descendants(web, gone) == set(found)
        for name, effect in found.items():
            signs = {path.effect for path in removal_paths(foods(diets), gone)[name]}
            assert signs == {effect} if effect else signs == {-1, 1}


def test_nothing_is_linked_with_a_species_that_only_eats_itself() -> None:
    assert {} == removal_effects({"snail": ["snail"], "vole": ["grass"]}, "snail")
