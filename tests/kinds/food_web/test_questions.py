"""Questions on food webs: right answers, recognised slips, and forecasts only where all paths agree."""

from __future__ import annotations

import pytest

from generator.kinds.food_web.losses import losses
from generator.kinds.food_web.questions import WebQuestions
from generator.questions.question import Choice, NumberEntry, Rejected
from tests.kinds.food_web.test_facts import LAKE, web
from tests.kinds.small_records import demo, library, made, rejected

PLAIN = "food_web/harrow_plain_web"


def options(question: object) -> dict[str, str]:
    """Text and misconception; the right one has none."""
    assert isinstance(question, Choice)
    return {option.text: option.misconception for option in question.options}


def test_level_knows_the_usual_slips() -> None:
    """Source: arithmetic on the record; roach 2.40; 1.40 without the step, 1 + 5/3, and one above the highest or the lowest food."""
    question = made(demo(LAKE))["level"]
    assert isinstance(question, NumberEntry)
    assert ("2.40", {"1.40", "2.67", "3.00", "2.00"}) == (question.answer, {slip.shown for slip in question.slips})


def test_level_is_not_asked_of_cannibals_or_unknown_diets() -> None:
    of = web(grass="", vole="grass", owl="vole 0.9, owl 0.1")
    assert Rejected("level", "no species with several foods has a known trophic level, cannibals aside") == WebQuestions(of, library().catalogue).level()
    assert "level" not in made(demo(PLAIN))


def test_arrow_reversed_is_the_first_wrong_reading() -> None:
    found = options(made(demo(LAKE))["arrow"])
    assert "" == found["From zooplankton to roach: energy goes with the food"]
    assert "en.arrow-eats" == found["From roach to zooplankton: it points at what is eaten"]


def test_one_food_is_told_from_one_eater() -> None:
    """Roach and perch have one eater each; whoever reads arrows backwards picks them."""
    found = options(WebQuestions(demo(LAKE), library().catalogue).one_food())
    assert ("", "en.arrow-eats", "en.arrow-eats") == (found["Midge larvae"], found["Roach"], found["Perch"])


@pytest.mark.parametrize("record", [LAKE, PLAIN])
def test_forecasts_are_asked_only_where_all_paths_agree(record: str) -> None:
    of = demo(record)
    asked = {name: question for name, question in made(of).items() if name.startswith("gone_")}
    assert set(asked) == {f"gone_{gone}" for gone in of.record.if_gone}
    for name, question in asked.items():
        assert isinstance(question, Choice) and question.fact is not None
        target = losses(of.record, name.removeprefix("gone_"))[question.fact.id.partition(".")[0]]
        assert {path.effect for path in target.paths} == {target.effect}
        (right,) = [option.text for option in question.options if option.right]
        assert {1: "It rises", -1: "It falls"}[target.effect] == right


def test_forecast_follows_two_arrows_or_three() -> None:
    question = made(demo(LAKE))["gone_pike"]
    assert question.fact.id == "phytoplankton.if_pike_gone"
    assert {"It rises": "", "It falls": "web.same-way", "It stays as it is": "web.neighbours"}.items() <= options(question).items()


def test_fall_below_a_lost_eater_is_confused_with_release() -> None:
    """Without hawks more shrews, and so fewer worms."""
    found = options(made(web("if_gone: [hawk]\n", dead="", moss="", worm="dead", shrew="worm", hawk="shrew"))["gone_hawk"])
    assert "web.same-way" in found.values()
    found = options(made(web("if_gone: [hawk]\n", moss="", shrew="moss", hawk="shrew"))["gone_hawk"])
    assert "web.top-eats-all" == found["It rises"]


def test_fall_above_a_lost_food_is_confused_with_turning_round() -> None:
    of = web("if_gone: [worm]\n", dead="", leaf="", worm="dead", fly="leaf", shrew="worm 0.5, fly 0.5", hawk="shrew")
    assert "web.turns-each-time" == options(made(of)["gone_worm"])["It rises"]


def test_loss_on_which_nothing_agrees_is_not_asked_for() -> None:
    of = web("if_gone: [fox]\n", seeds="", mouse="seeds 0.5, fox 0.5", fox="mouse 0.5, seeds 0.5")
    assert (Rejected("gone_fox", "no living species is within 3 arrows of fox on which all paths agree"),) == WebQuestions(of, library().catalogue).gone()


def test_dead_matter_is_not_asked_for_where_arrows_alone_settle_it() -> None:
    """Grass that nobody grazes dies and adds to it, which no arrow of the web shows."""
    assert "falls" == losses(demo(PLAIN).record, "grasshoppers")["dead_grass"].verdict
    asked = [question.fact.id for gone, question in made(demo(PLAIN)).items() if gone.startswith("gone_")]
    assert ["voles.if_grasshoppers_gone", "grasses.if_dead_grass_gone"] == asked


def test_forecast_says_how_far_paths_are_followed() -> None:
    """By larks, falcons, lizards and snakes, five arrows, voles would fall when grasshoppers go; by the shorter paths they rise."""
    question = made(demo(PLAIN))["gone_grasshoppers"]
    assert "by paths of up to 3 of them" in question.prompt and "It rises" == next(o.text for o in question.options if o.right)


def test_longest_chain_knows_boxes_and_shorter_chains() -> None:
    question = made(demo(PLAIN))["longest_chain"]
    assert isinstance(question, NumberEntry)
    assert ("4", {"5": "en.one-many", "3": "en.one-few", "2": "web.any-chain"}) == (
        question.answer, {slip.shown: slip.misconception for slip in question.slips}
    )  # fmt: skip


def test_arrow_to_its_own_kind_counts_in_no_chain() -> None:
    """Pike eat pike, so that whoever counts that arrow too finds one more, as with the boxes."""
    slips = {record: made(demo(record))["longest_chain"].slips[0].feedback for record in (LAKE, PLAIN)}
    assert "counting the boxes, or the arrow from pike to pike as well." in slips[LAKE]
    assert "counting the boxes." in slips[PLAIN]


@pytest.mark.parametrize(("gone", "hint"), [("dead_grass", "the eaters of dead grass: those"), ("grasshoppers", "the eaters and the food of grasshoppers: those")])
def test_hint_to_a_loss_asks_only_for_arrows_that_are_there(gone: str, hint: str) -> None:
    assert hint in made(demo(PLAIN))[f"gone_{gone}"].hints[0]


def test_foods_are_told_from_eaters_and_from_both() -> None:
    question = WebQuestions(demo(LAKE), library().catalogue).foods_counted()
    assert isinstance(question, NumberEntry)
    assert ("3", {"1": "en.arrow-eats", "4": "web.all-arrows"}) == (question.answer, {s.shown: s.misconception for s in question.slips})


def test_top_is_told_from_those_below_it_and_from_the_bottom() -> None:
    found = options(WebQuestions(demo(PLAIN), library().catalogue).at_the_top())
    assert ("", "en.arrow-eats") == (found["Falcons"], found["Grasses and herbs"])
    assert 2 == list(found.values()).count("web.all-arrows")


def test_record_without_losses_says_so_where_too_few_questions_are_left() -> None:
    assert "the record names no species under `if_gone:`" == rejected(web(grass="", vole="grass"))["gone"]


def test_plain_questions_fill_up_small_webs_only() -> None:
    assert {"foods_counted", "one_food", "at_the_top"} <= set(made(web(grass="", moss="", vole="grass, moss", owl="vole")))
    assert {"foods_counted", "one_food", "at_the_top"}.isdisjoint(made(demo(PLAIN)))
