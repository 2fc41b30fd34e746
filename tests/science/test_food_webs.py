"""Properties and edges of generator/science/food_webs.py, and NetworkX beside it; outside values are in test_checks.py."""

from __future__ import annotations

from itertools import pairwise

import networkx
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS
from generator.science.food_webs import (
    TooManyChains, chain_lengths, feeding_loops, food_chains, omnivores, trophic_levels, without_source,
)  # fmt: skip
from tests.science.webs import Diets, foods, webs


def graph(diets: Diets) -> networkx.DiGraph:
    """With edges from food to eater."""
    made = networkx.DiGraph()
    made.add_weighted_edges_from((food, eater, share) for eater, diet in diets.items() for food, share in diet.items())
    return made


@given(webs())
def test_levels_are_those_of_networkx(diets: Diets) -> None:
    """Source: networkx.trophic_levels."""
    assert networkx.trophic_levels(graph(diets)) == pytest.approx(trophic_levels(diets))


@given(webs())
def test_every_level_is_one_above_the_mean_level_of_the_food(diets: Diets) -> None:
    levels = trophic_levels(diets)
    for eater, diet in diets.items():
        assert levels[eater] == pytest.approx(1 + sum(share * levels[food] for food, share in diet.items()))
    assert all(level >= 1 - 1e-9 for level in levels.values())
    assert all(level == pytest.approx(1) for name, level in levels.items() if name not in diets)


def test_basal_species_may_be_named_or_left_out() -> None:
    assert trophic_levels({"vole": {"grass": 1.0}})["vole"] == trophic_levels({"grass": {}, "vole": {"grass": 1.0}})["vole"] == 2.0


@pytest.mark.parametrize(
    ("diets", "told"),
    [
        ({"vole": {"grass": 0.9}}, "vole: expected shares that add up to 1, found 0.9"),
        ({"vole": {"grass": 1.5, "moss": -0.5}}, "vole: expected shares above 0, found -0.5 of moss"),
        ({"vole": {"grass": 1.0, "moss": 0.0}}, "vole: expected shares above 0, found 0 of moss"),
        ({"vole": {"grass": float("inf")}}, "vole: expected shares above 0, found inf of grass"),
        ({"vole": {"grass": float("nan")}}, "vole: expected shares above 0, found nan of grass"),
        ({"pike": {"pike": 1.0}}, "found none to pike"),
        ({"a": {"b": 1.0}, "b": {"a": 1.0}, "c": {"grass": 1.0}}, "found none to a, b"),
        ({"a": {"b": 1.0}, "b": {"a": 1.0}, "c": {"b": 0.5, "d": 0.5}, "d": {"c": 1.0}}, "found none to a, b, c, d"),
    ],
)
def test_diets_without_a_level_are_refused_by_name(diets: Diets, told: str) -> None:
    with pytest.raises(ValueError, match=told):
        trophic_levels(diets)


@given(webs())
def test_nobody_lacks_a_source_whom_networkx_can_reach_from_the_bottom(diets: Diets) -> None:
    """Source: networkx.descendants."""
    reached = {"plant", "dead"}.union(*(networkx.descendants(graph(diets), b) for b in ("plant", "dead") if b in graph(diets)))
    assert () == without_source(foods(diets))
    assert set(graph(diets)) <= reached


def test_species_above_a_closed_loop_lack_a_source_too() -> None:
    assert ("a", "b", "hawk") == without_source({"a": ["b"], "b": ["a"], "hawk": ["a"], "vole": ["grass"]})


@given(webs())
def test_loops_are_the_strong_components_and_the_cannibals(diets: Diets) -> None:
    """Source: networkx.strongly_connected_components."""
    expected = {frozenset(c) for c in networkx.strongly_connected_components(graph(diets)) if len(c) > 1}
    expected |= {frozenset([name]) for name, diet in diets.items() if name in diet and not any(name in group for group in expected)}
    assert expected == {frozenset(group) for group in feeding_loops(foods(diets))}


@given(webs())
def test_chains_are_the_simple_paths_from_the_bottom(diets: Diets) -> None:
    """Source: networkx.all_simple_paths."""
    for end in diets:
        bottom = [name for name in ("plant", "dead") if name in graph(diets)]
        expected = sorted(tuple(path) for start in bottom for path in networkx.all_simple_paths(graph(diets), start, end))
        assert expected == sorted(food_chains(foods(diets), end))
        assert [len(chain) - 1 for chain in food_chains(foods(diets), end)] == sorted(chain_lengths(foods(diets), end))


def test_more_chains_than_can_be_followed_are_told() -> None:
    crowd = {f"s{n}": ["plant", *(f"s{other}" for other in range(12))] for n in range(12)}
    with pytest.raises(TooManyChains, match="s3"):
        food_chains(crowd, "s3")


def test_web_of_four_full_layers_is_followed_to_the_last_chain() -> None:
    """Nine to the power of four chains lead up to the top, in some fourteen thousand steps."""
    layers = [["plant"], *([f"s{layer}{n}" for n in range(9)] for layer in range(4)), ["top"]]
    eats = {eater: below for below, layer in pairwise(layers) for eater in layer}
    assert 9**4 == len(food_chains(eats, "top"))


@given(webs())
def test_nobody_is_an_omnivore_with_one_food_or_over_plants_only(diets: Diets) -> None:
    for name in omnivores(foods(diets)):
        others = set(diets[name]) - {name}
        assert len(others) > 1 and others - {"plant", "dead"}


def test_omnivore_eats_at_several_heights() -> None:
    eats = {"vole": ["grass"], "bear": ["grass", "vole"], "owl": ["vole", "shrew"], "shrew": ["worm"], "worm": ["dead"], "pike": ["vole", "pike"]}
    assert ("bear", "owl") == omnivores(eats)


def test_height_of_what_no_chain_reaches_is_no_height() -> None:
    """Two that eat each other end the search, so that a half-written record can be looked at."""
    assert ("hawk",) == omnivores({"a": ["b"], "b": ["a"], "hawk": ["a", "grass"]})


@given(webs(), st.integers(2, 9))
def test_levels_do_not_depend_on_the_order_of_species(diets: Diets, turn: int) -> None:
    names = list(diets)
    turned = {name: diets[name] for name in [*names[turn % len(names) :], *names[: turn % len(names)]]}
    assert trophic_levels(diets) == pytest.approx(trophic_levels(turned))


@given(webs())
def test_connectance_is_the_density_of_the_web_with_loops(diets: Diets) -> None:
    """Source: networkx counts species and links; of all that could be, a species with itself included."""
    web = graph(diets)
    found = METHODS["connectance"].compute(links=web.number_of_edges(), species=web.number_of_nodes())
    assert 0.0 < found <= 1.0
    assert found == pytest.approx(networkx.to_numpy_array(web, weight=None).mean())


def test_connectance_of_a_lone_cannibal_of_no_links_and_of_no_species() -> None:
    connectance = METHODS["connectance"].compute
    assert (1.0, 0.0) == (connectance(links=1, species=1), connectance(links=0, species=4))
    with pytest.raises(ZeroDivisionError):
        connectance(links=0, species=0)
