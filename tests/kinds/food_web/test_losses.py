"""What is told of a loss: only what all paths agree on, what the shortest do first, and who is left without food."""

from __future__ import annotations

from hypothesis import given, settings

from generator.kinds.food_web.losses import losses
from generator.science.food_web_effects import removal_effects
from tests.kinds.food_web.test_facts import LAKE, web
from tests.kinds.small_records import demo
from tests.science.webs import Diets, foods, webs

GONE = "if_gone: [{}]\n"


def told(gone: str, **diets: str) -> dict[str, object]:
    facts = web(GONE.format(gone), **diets).facts
    return {name: facts[f"{name}.if_{gone}_gone"].value for name in diets if name != gone}


def test_a_chain_alternates_downwards_and_starves_upwards() -> None:
    chain = {"grass": "", "vole": "grass", "owl": "vole"}
    assert {"grass": "falls", "vole": "rises"} == told("owl", **chain)
    assert {"grass": "rises", "owl": "left without food"} == told("vole", **chain)
    assert {"vole": "left without food", "owl": "left without food"} == told("grass", **chain)


def test_rivals_gain() -> None:
    assert {"grass": "rises", "hare": "rises"} == told("vole", grass="", vole="grass", hare="grass")


def test_longer_paths_that_disagree_leave_only_the_first_change_told() -> None:
    """Without foxes more mice, but mice and foxes both ate seeds."""
    assert {"seeds": "rises at first, then not told", "mouse": "rises"} == told("fox", seeds="", mouse="seeds", fox="mouse 0.5, seeds 0.5")


def test_shortest_paths_that_disagree_leave_nothing_told() -> None:
    """The fox loses weasels, which lived on voles, but finds more of the grass seed that voles ate."""
    found = told("vole", grass="", vole="grass", weasel="vole", fox="weasel 0.5, grass 0.5")
    assert {"grass": "rises", "weasel": "left without food", "fox": "not told, for the paths disagree"} == found


def test_of_dead_matter_nothing_is_told_for_no_arrow_shows_what_dies() -> None:
    """Without grasshoppers larks fall and beetles rise, which eat dead grass; but grass that is not grazed dies too."""
    found = losses(demo("food_web/harrow_plain_web").record, "grasshoppers")["dead_grass"]
    assert ({-1}, 0, "") == ({path.effect for path in found.paths}, found.effect, found.change)
    assert "not told, for no arrow shows what adds to it" == found.verdict


def test_species_without_a_link_is_said_to_be_not_linked() -> None:
    assert "not linked" == told("moth", grass="", vole="grass", lichen="", moth="lichen")["vole"]


def test_paths_stand_in_the_working_in_words() -> None:
    fact = demo(LAKE).facts["phytoplankton.if_pike_gone"]
    assert "Pike gone, perch up, zooplankton down, phytoplankton up\nPike gone, roach up, zooplankton down, phytoplankton up\nrises" in fact.shown_working


def test_those_left_without_food_are_named_with_what_they_ate() -> None:
    fact = web(GONE.format("oak"), oak="", rose="", moth="oak", tit="moth", wasp="moth 0.5, rose 0.5").facts["oak.left_without_food"]
    assert ("moth, tit", True) == (fact.value, "Tit: moth" in fact.shown_working)


def test_the_top_leaves_nobody_without_food() -> None:
    assert "nobody" == demo(LAKE).facts["pike.left_without_food"].value


@settings(max_examples=25, deadline=None)
@given(webs())
def test_marks_in_the_diagram_say_no_more_than_the_signs(diets: Diets) -> None:
    shares = {name: ", ".join(diet) for name, diet in diets.items()}
    record = web("if_gone: [s0]\n", plant="", dead="", **shares).record
    signs = removal_effects(foods(diets) | {"plant": (), "dead": ()}, "s0")
    for name, loss in losses(record, "s0").items():
        sure = -1 if loss.starves else signs.get(name, 0)
        at_first = {1: "rises at first", -1: "falls at first", 0: ""}[loss.first]
        assert ({1: "rises", -1: "falls", 0: at_first}[sure], sure) == (loss.change, loss.effect)
