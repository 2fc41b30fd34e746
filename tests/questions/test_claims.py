"""Statements to pick from: each claim once, as it holds or turned, and both kinds enough."""

from __future__ import annotations

from dataclasses import replace

import pytest

from generator.questions.claims import Claim, which_hold
from generator.questions.making import Draft
from generator.questions.misconception import Catalogue, Misconception
from generator.questions.question import Rejected, SeveralChoice

CATALOGUE = Catalogue({"t.slip": Misconception(id="t.slip", idea="An idea.", because="the reason.", instead="the remedy.")})
DRAFT = Draft(id="statements", prompt="Which hold?", solution="")


def claims(number: int) -> list[Claim]:
    return [Claim(f"{n} holds", f"{n} turned", f"It is {n}.", "t.slip") for n in range(number)]


@pytest.mark.parametrize("number", [4, 5, 9])
def test_every_claim_is_shown_at_most_once(number: int) -> None:
    for record in range(20):
        made = which_hold(DRAFT, claims(number), CATALOGUE, salt=f"kind/{record}")
        assert isinstance(made, SeveralChoice)
        shown = [option.text.partition(" ")[0] for option in made.options]
        assert len(set(shown)) == len(shown) == min(number, 5)
        assert all(option.right == option.text.endswith("holds") for option in made.options)


def test_two_of_each_sort_and_now_and_then_one_more() -> None:
    found = set()
    for record in range(40):
        made = which_hold(DRAFT, claims(8), CATALOGUE, salt=f"kind/{record}")
        assert isinstance(made, SeveralChoice)
        found.add((sum(option.right for option in made.options), sum(not option.right for option in made.options)))
    assert {(2, 3), (3, 2)} == found


def test_feedback_says_how_it_is_and_the_solution_why_the_right_ones_hold() -> None:
    made = which_hold(DRAFT, claims(4), CATALOGUE, salt="kind/record")
    assert isinstance(made, SeveralChoice)
    right = [option for option in made.options if option.right]
    assert {f"It is {option.text[0]}." for option in right} == {option.feedback for option in right}
    assert all(option.feedback in made.solution for option in right)
    assert all(f"It is {option.text[0]}. The reason. The remedy." == option.feedback for option in made.options if not option.right)


def test_too_few_claims_are_no_question() -> None:
    assert Rejected("statements", "the data bear 3 statements, expected 4") == which_hold(DRAFT, claims(3), CATALOGUE, salt="kind/record")


def test_what_a_look_tells_holds_only_where_nothing_else_does() -> None:
    seen = [replace(claim, seen=True) for claim in claims(5)]
    for record in range(20):
        made = which_hold(DRAFT, [*seen[:2], *claims(5)[2:]], CATALOGUE, salt=f"kind/{record}")
        assert isinstance(made, SeveralChoice)
        assert {"2 holds", "3 holds", "4 holds"} >= {option.text for option in made.options if option.right}
    assert isinstance(which_hold(DRAFT, seen, CATALOGUE, salt="kind/record"), SeveralChoice)


def test_prompt_asks_for_as_many_as_hold() -> None:
    asked = replace(DRAFT, prompt="Which of these hold?")
    for record in range(20):
        made = which_hold(asked, claims(8), CATALOGUE, salt=f"kind/{record}")
        assert isinstance(made, SeveralChoice)
        assert f"Which {'two' if sum(o.right for o in made.options) == 2 else 'three'} of these hold?" == made.prompt
