"""Rows, orders and rivals: what the arrows bear out is right, and nothing else is."""

from __future__ import annotations

from itertools import pairwise

import networkx as nx
import pytest

from generator.kind import Subject
from generator.kinds.food_web.chain_questions import ChainQuestions
from generator.questions.question import NumberEntry, Rejected, SeveralChoice
from tests.kinds.food_web.test_facts import LAKE, web
from tests.kinds.small_records import demo, library

PLAIN = "food_web/harrow_plain_web"


def chains(of: Subject) -> ChainQuestions:
    return ChainQuestions(of, library().catalogue)


def linked(of: Subject, row: list[str]) -> list[bool]:
    """Of each step of a row of labels, whether an arrow of the record bears it out."""
    ids = {label.casefold(): name for name, label in of.record.labels.items()}
    return [ids[food.casefold()] in of.record.eats[ids[eater.casefold()]] for food, eater in pairwise(row)]


@pytest.mark.parametrize("record", [LAKE, PLAIN])
def test_rows_are_right_where_every_step_is_an_arrow(record: str) -> None:
    of = demo(record)
    question = chains(of).chains()
    assert isinstance(question, SeveralChoice)
    assert {option.text: option.right for option in question.options} == {o.text: all(linked(of, o.text.split(" → "))) for o in question.options}
    assert {"en.arrow-eats", "web.skipped-link", "web.side-by-side"} == {option.misconception for option in question.options if not option.right}


def test_row_of_two_that_eat_each_other_is_not_called_backwards() -> None:
    """Read from the other end it is a chain just as well, so that too few wrong rows are left."""
    of = web(seeds="", fox="seeds, mouse", mouse="seeds, fox")
    assert Rejected("chains", "expected 2 right options and 2 wrong ones, found 2 and 0") == chains(of).chains()


@pytest.mark.parametrize("diets", [{"grass": "", "vole": "grass"}, {"grass": "", "vole": "grass", "owl": "vole"}])
def test_web_of_one_chain_has_no_rows_to_choose_from(diets: dict[str, str]) -> None:
    assert isinstance(chains(web(**diets)).chains(), Rejected)


@pytest.mark.parametrize("record", [LAKE, PLAIN])
def test_chains_between_two_species_are_all_ways_along_the_arrows(record: str) -> None:
    """Source: networkx, all simple paths."""
    of = demo(record)
    question = chains(of).chains_between()
    assert isinstance(question, NumberEntry)
    ids = {name.casefold(): one for one, name in of.record.spoken.items()}
    start, end = question.prompt.removeprefix("How many different food chains of this web lead from ").partition("?")[0].split(" to ")
    graph = nx.DiGraph((food, eater) for eater, foods in of.record.eats.items() for food in foods)
    assert len(list(nx.all_simple_paths(graph, ids[start], ids[end]))) == int(question.answer)
    assert len(question.slips) >= 2


def test_webs_with_few_chains_have_none_to_count() -> None:
    assert isinstance(chains(web(grass="", vole="grass", hare="grass", owl="vole, hare")).chains_between(), Rejected)


def test_rivals_share_a_food_and_eaters_do_not() -> None:
    of = web(grass="", vole="grass", hare="grass", goose="grass", owl="vole", fox="vole, hare")
    question = chains(of).rivals()
    assert isinstance(question, SeveralChoice)
    grazers = {"Vole", "Hare", "Goose"}
    (asked,) = grazers - {option.text for option in question.options if option.right}
    assert f"compete with {asked.lower()} for food" in question.prompt
    assert {"Owl", "Fox"} == {option.text for option in question.options if not option.right}
    ideas = {option.text: option.misconception for option in question.options}
    eaten_by = {"Vole": {"Owl", "Fox"}, "Hare": {"Fox"}, "Goose": set()}[asked]
    assert {name: "web.enemy-is-rival" if name in eaten_by else "web.no-shared-food" for name in ("Owl", "Fox")} == {name: ideas[name] for name in ("Owl", "Fox")}


@pytest.mark.parametrize("diets", [{"grass": "", "vole": "grass", "owl": "vole"}, {"grass": "", "vole": "grass", "hare": "grass", "owl": "vole"}])
def test_single_rivals_are_not_asked_for(diets: dict[str, str]) -> None:
    assert isinstance(chains(web(**diets)).rivals(), Rejected)
