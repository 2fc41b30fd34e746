"""Statements on the levels of a pyramid: they hold by the numbers, and what is tied is not spoken of."""

from __future__ import annotations

import pytest

from generator.kind import Subject
from generator.kinds.pyramid.statement_questions import StatementQuestions
from generator.questions.claims import Claim
from generator.questions.question import Rejected, SeveralChoice
from tests.kinds.pyramid.test_facts import pyramid
from tests.kinds.small_records import demo, library, made


def claims(of: Subject, sort: str) -> list[Claim]:
    return list(getattr(StatementQuestions(of, library().catalogue), sort)())


@pytest.mark.parametrize(("respired", "said"), [(600, ["more"]), (300, ["less"]), (500, []), (515, [])])
def test_plants_respire_more_or_less_than_they_build_up(respired: float, said: list[str]) -> None:
    """Source: arithmetic: of 1000, 400, 700, 500 and 485 are left."""
    of = pyramid(f"gross_production: 1000, respiration: {respired}", "production: 10")
    assert said == [claim.holds.split()[2] for claim in claims(of, "_fixed")]


@pytest.mark.parametrize(("egested", "said"), [(70, ["more"]), (20, ["less"]), (50, [])])
def test_half_of_the_food_is_the_mark_for_what_is_egested(egested: float, said: list[str]) -> None:
    of = pyramid("production: 1000", f"eaten: 100, egested: {egested}, respired: 10")
    assert said == [claim.holds.split()[2] for claim in claims(of, "_guts")]


@pytest.mark.parametrize(("made_above", "said"), [(150, ["More"]), (50, ["Less"]), (100, []), (105, [])])
def test_a_tenth_is_the_mark_for_what_passes_on(made_above: float, said: list[str]) -> None:
    assert said == [claim.holds.split()[0] for claim in claims(pyramid("production: 1000", f"production: {made_above}"), "_passed")]


@pytest.mark.parametrize(("eaten", "said"), [(800, ["More"]), (100, ["Less"]), (500, [])])
def test_half_is_the_mark_for_what_is_eaten(eaten: float, said: list[str]) -> None:
    of = pyramid("production: 1000", f"eaten: {eaten}, egested: 10, respired: 30")
    assert said == [claim.holds.split()[0] for claim in claims(of, "_grazed")]


def test_animals_respire_more_than_they_build_up_or_less() -> None:
    """Source: arithmetic: 60 of 80, then 30 of 80."""
    for respired, said in ((60, "more"), (30, "less")):
        of = pyramid("production: 1000", f"eaten: 100, egested: 20, respired: {respired}")
        assert [said] == [claim.holds.split()[2] for claim in claims(of, "_growth")]


def test_heavier_level_is_named_with_the_idea_that_turns_it_round() -> None:
    of = pyramid("production: 1000, biomass: 2", "production: 100, biomass: 5", "production: 10, biomass: 1")
    found = [(claim.holds, claim.misconception) for claim in claims(of, "_standing")]
    assert [("On one square metre there is more biomass of L1 than of L0", "bio.inverted"), ("On one square metre there is more biomass of L1 than of L2", "bio.large-animals")] == found


def test_few_large_trees_outweigh_many_insects() -> None:
    """Where the heavier level has fewer members the wrong idea is another one than where it has more."""
    found = [claim.misconception for claim in claims(demo("pyramid/hollin_wood"), "_standing")]
    assert "bio.numbers" == found[0]
    of = pyramid("production: 1000, biomass: 5, individuals_per_m2: 9", "production: 100, biomass: 2, individuals_per_m2: 1")
    assert ["bio.large-animals"] == [claim.misconception for claim in claims(of, "_standing")]


def test_what_reaches_the_top_is_set_against_a_thousandth() -> None:
    assert ["Less"] == [claim.holds.split()[0] for claim in claims(pyramid("production: 10000", "production: 1"), "_top")]
    assert ["More"] == [claim.holds.split()[0] for claim in claims(pyramid("production: 100", "production: 1"), "_top")]
    assert [] == claims(pyramid("production: 1000", "production: 1"), "_top")
    assert [] == claims(pyramid("production: 0", "production: 0"), "_top")


@pytest.mark.parametrize("record", ["ember_spring", "sill_lake", "harrow_plain_grassland", "hollin_wood", "tillet_bay"])
def test_every_demo_pyramid_has_statements_to_check(record: str) -> None:
    assert isinstance(made(demo(f"pyramid/{record}"))["statements"], SeveralChoice)


def test_levels_that_state_little_bear_too_few_statements() -> None:
    assert isinstance(StatementQuestions(pyramid("production: 500", "production: 5"), library().catalogue).statements(), Rejected)
