"""Boxes picked on a web: one is right by the arrows, and each slip of reading knows its own."""

from __future__ import annotations

import pytest

from generator.kind import Subject
from generator.kinds.food_web.label_questions import LabelQuestions
from generator.kinds.food_web.questions import WebQuestions
from generator.questions.question import ChartReading, Choice, Made, Rejected, SeveralChoice
from tests.kinds.food_web.test_facts import LAKE, web
from tests.kinds.small_records import demo, library, made

PLAIN = "food_web/harrow_plain_web"


def labels(of: Subject) -> LabelQuestions:
    return LabelQuestions(of, library().catalogue)


def read(item: Made) -> tuple[tuple[str, ...], dict[str, str]] | None:
    """The right labels and the wrong idea behind each wrong one; nothing where it is not asked."""
    if not isinstance(item, ChartReading):
        return None
    return item.right, {label: slip.misconception for slip in item.slips for label in slip.labels}


def test_who_eats_from_the_bottom_and_animals_too() -> None:
    of = web(grass="", seeds="", vole="grass, seeds", fox="vole, grass", owl="vole, fox")
    assert (("Fox",), {"Vole": "web.many-is-omnivore", "Owl": "web.many-is-omnivore"}) == read(labels(of).two_heights())


def test_eater_of_several_foods_is_told_of_which_kind_they_are() -> None:
    item = labels(web(grass="", seeds="", vole="grass, seeds", fox="vole, grass", owl="vole, fox")).two_heights()
    assert isinstance(item, ChartReading)
    told = {label: slip.feedback for slip in item.slips for label in slip.labels}
    assert ("of them are producers or dead matter" in told["Vole"], "of them are animals" in told["Owl"]) == (True, True)


@pytest.mark.parametrize("owl", ["vole", "vole, grass"])
def test_none_or_several_such_feeders_are_not_asked_about(owl: str) -> None:
    fox = "vole" if owl == "vole" else "vole, grass"
    assert read(labels(web(grass="", vole="grass", fox=fox, owl=owl)).two_heights()) is None


def test_own_kind_as_food_makes_nobody_a_feeder_at_two_heights() -> None:
    assert read(labels(web(grass="", vole="grass 0.9, vole 0.1", owl="vole")).two_heights()) is None


def test_single_eater_is_told_from_a_single_food_and_from_none() -> None:
    of = web(grass="", vole="grass", hare="grass", goose="grass", fox="vole, hare")
    assert (("Vole", "Hare"), {"Goose": "en.arrow-eats", "Fox": "en.arrow-eats"}) == read(labels(of).single_eater())


def test_own_kind_is_no_eater() -> None:
    of = web(grass="", vole="grass", fox="vole 0.9, fox 0.1", owl="vole")
    assert read(labels(of).single_eater())[0] == ("Grass",)


def test_single_eaters_are_not_asked_for_where_there_are_none() -> None:
    assert read(labels(web(grass="", moss="", vole="grass, moss", hare="moss, grass")).single_eater()) is None


@pytest.mark.parametrize(("diet", "says"), [("vole 0.7, grass 0.3", "It would fall, for more of the food stands lower"), ("vole 0.3, grass 0.7", "It would rise, for more of the food stands higher")])
def test_exchanged_shares_draw_the_level_towards_the_food_that_gains(diet: str, says: str) -> None:
    """Source: arithmetic: 1 + 0.7 x 2 + 0.3 is 2.7, and 1 + 0.3 x 2 + 0.7 is 2.3."""
    item = labels(web(grass="", vole="grass", fox=diet)).exchanged_shares()
    assert isinstance(item, Choice)
    assert [says] == [option.text for option in item.options if option.right]


@pytest.mark.parametrize("fox", ["vole 0.52, grass 0.48", "vole, grass", "vole", "vole 0.7, hare 0.3"])
def test_even_unknown_and_single_diets_and_foods_of_one_level_are_not_exchanged(fox: str) -> None:
    assert isinstance(labels(web(grass="", vole="grass", hare="grass", fox=fox)).exchanged_shares(), Rejected)


def test_diet_that_another_prompt_tells_is_not_exchanged() -> None:
    asked = made(demo(LAKE))
    told = WebQuestions(demo(LAKE), library().catalogue).mixed_feeder()
    assert told is not None and told.label.lower() in asked["level"].prompt
    assert f"diet of {told.label.lower()}" not in asked["exchanged_shares"].prompt


def test_only_those_that_eat_can_be_picked_where_eaters_are_asked_for() -> None:
    of = demo(LAKE)
    eaters = tuple(one.label for one in of.record.species if one.eats)
    for item in (labels(of).two_heights(), labels(of).left_without()):
        assert isinstance(item, ChartReading) and item.labels == eaters


def test_who_loses_the_only_food_is_told_from_who_loses_one() -> None:
    """Source: the record: only larvae live on dead matter alone; others lose it, or larvae, and have more."""
    assert labels(demo(LAKE)).left_without().prompt.startswith("Suppose there were no more dead matter. ")
    assert (("Midge larvae",), dict.fromkeys(("Zooplankton", "Roach", "Perch"), "web.loses-one")) == read(labels(demo(LAKE)).left_without())


def test_several_that_lose_their_only_food_are_picked_out() -> None:
    """Source: the record: grasshoppers and voles live on grasses alone, larks eat beetles too."""
    question = labels(demo(PLAIN)).left_without()
    assert isinstance(question, SeveralChoice) and "grasses and herbs" in question.prompt
    assert {"Grasshoppers", "Voles"} == {option.text for option in question.options if option.right}
    assert {"web.loses-one"} == {option.misconception for option in question.options if not option.right}


@pytest.mark.parametrize(
    "links",
    [
        {"grass": "", "vole": "grass"},
        {"grass": "", "moss": "", "vole": "grass, moss", "owl": "vole"},
        {"grass": "", "moss": "", "goose": "moss", "owl": "goose, vole, hare, deer, sheep", **dict.fromkeys(("vole", "hare", "deer", "sheep"), "grass")},
    ],
)
def test_loss_that_starves_nobody_or_all_or_too_many_is_not_asked_about(links: dict[str, str]) -> None:
    shown = "if_gone: [moss]\n" if "goose" in links else ""
    assert isinstance(labels(web(shown, **links)).left_without(), Rejected)


def test_loss_whose_chart_the_page_shows_starves_nobody_in_a_question() -> None:
    links = {"grass": "", "moss": "", "vole": "grass", "goose": "moss", "owl": "vole, goose"}
    asked = {shown: labels(web(f"if_gone: [{shown}]\n", **links)).left_without() for shown in ("grass", "moss")}
    assert ("left_without_moss", "left_without_grass") == (asked["grass"].id, asked["moss"].id)
