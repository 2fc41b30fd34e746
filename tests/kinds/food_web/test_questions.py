"""Questions on food webs: right answers, recognised slips, and forecasts only where all paths agree."""

from __future__ import annotations

import re

import pytest

from generator.kinds.food_web.losses import losses
from generator.kinds.food_web.questions import Case, WebQuestions
from generator.questions.question import Choice, NumberEntry, Rejected
from tests.kinds.food_web.test_facts import LAKE, web
from tests.kinds.small_records import demo, library, made

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


@pytest.mark.parametrize("record", [LAKE, PLAIN])
def test_arrow_to_be_turned_is_the_one_from_an_eater_to_its_food(record: str) -> None:
    """The prompt tells who eats whom, and of its four arrows one alone starts at the eater; whoever reads arrows as “eats” turns the other three."""
    question = made(demo(record))["arrow"]
    told, arrows = question.prompt.split(" Somebody draws ")
    reversed_ = [(one, other) for one, other in re.findall(r"([a-z ]+?) → ([a-z ]+?)(?:,| and |\.)", arrows.replace(", ", ",")) if re.search(rf"{one.strip()} eat (?:[a-z ]+ and )?{other.strip()}\b", told)]
    assert 1 == len(reversed_)
    by_idea = {idea: text for text, idea in options(question).items()}
    arrow = " → ".join(part.strip() for part in reversed_[0])
    assert by_idea[""].startswith(f"Only {arrow},") and by_idea["en.arrow-eats"].startswith(f"All but {arrow},")


def test_two_pages_ask_about_the_arrows_of_two_webs() -> None:
    assert made(demo(LAKE))["arrow"].prompt != made(demo(PLAIN))["arrow"].prompt


def test_arrow_is_never_asked_of_species_that_the_page_shows() -> None:
    of = web(algae="", tadpoles="algae", caterpillars="algae", seaweed="", newts="tadpoles")
    assert Rejected("arrow", "the webs in which an arrow is to be turned hold species of this one") == WebQuestions(of, library().catalogue).arrow()


def test_one_food_is_told_from_one_eater() -> None:
    """Roach and perch have one eater each; whoever reads arrows backwards picks them."""
    found = options(WebQuestions(demo(LAKE), library().catalogue).one_food())
    assert ("", "en.arrow-eats", "en.arrow-eats") == (found["Midge larvae"], found["Roach"], found["Perch"])


@pytest.mark.parametrize("record", [LAKE, PLAIN])
def test_forecasts_are_asked_only_where_all_paths_agree(record: str) -> None:
    of = demo(record)
    asked = {name: question for name, question in made(of).items() if name.startswith("gone_")}
    assert len(asked) == 2 and set(asked).isdisjoint(f"gone_{gone}" for gone in of.record.if_gone)
    for name, question in asked.items():
        assert isinstance(question, Choice) and question.fact is not None
        target = losses(of.record, name.removeprefix("gone_"))[question.fact.id.partition(".")[0]]
        assert {path.effect for path in target.paths} == {target.effect}
        (right,) = [option.text for option in question.options if option.right]
        assert {1: "It rises", -1: "It falls"}[target.effect] == right


@pytest.mark.parametrize(("shown", "told"), [("snail", {"snail"}), ("grass", {"snail"}), ("crab", {"crab", "heron"})])
def test_loss_whose_chart_the_page_shows_is_not_asked_for(shown: str, told: set[str]) -> None:
    """Source: the record: snails starve without grass, and herons without crabs, so that the chart of the one loss tells the other."""
    links = {"grass": "", "alga": "", "snail": "grass", "worm": "alga", "crab": "snail, worm", "heron": "crab"}
    asked = {name for name in made(web(f"if_gone: [{shown}]\n", **links)) if name.startswith("gone_")}
    assert asked and asked.isdisjoint(f"gone_{name}" for name in told)


def test_forecast_follows_two_arrows_or_three() -> None:
    question = made(demo(LAKE))["gone_midge_larvae"]
    assert question.fact.id == "pondweed.if_midge_larvae_gone"
    assert {"It rises": "", "It falls": "web.same-way", "It stays as it is": "web.neighbours"}.items() <= options(question).items()


def test_two_forecasts_differ_in_their_direction_where_they_can() -> None:
    """Source: the records: of both webs some losses let another rise, and some let it fall."""
    for record in (LAKE, PLAIN):
        right = [o.text for name, question in made(demo(record)).items() if name.startswith("gone_") for o in question.options if o.right]
        assert ["It falls", "It rises"] == sorted(right)


def test_forecast_along_few_paths_is_preferred() -> None:
    """Source: the record: larks gone, snakes rise along six paths, which nobody keeps track of; of other losses three or four tell."""
    assert 6 == len(losses(demo(PLAIN).record, "larks")["snakes"].paths)
    assert [3, 4] == [len(question.fact.working.lines) for name, question in made(demo(PLAIN)).items() if name.startswith("gone_")]


def test_eater_that_is_lost_is_no_food_that_is_lost() -> None:
    """Whoever thinks that shrews stay as they are without hawks has not lost a food from sight, but an eater."""
    of = web(moss="", shrew="moss", hawk="shrew")
    cases = [Case(gone, other, losses(of.record, gone)[other]) for gone, other in (("hawk", "shrew"), ("shrew", "hawk"))]
    said = [options(WebQuestions(of, library().catalogue)._gone(case))["It stays as it is"] for case in cases]
    assert ["web.neighbours", "web.just-switch"] == said


def test_fall_below_a_lost_eater_is_confused_with_release() -> None:
    """Without hawks more shrews, and so fewer worms."""
    found = options(made(web(dead="", moss="", worm="dead", shrew="worm", hawk="shrew"))["gone_hawk"])
    assert "web.same-way" in found.values()
    found = options(made(web(moss="", shrew="moss", hawk="shrew"))["gone_hawk"])
    assert "web.top-eats-all" == found["It rises"]


def test_fall_above_a_lost_food_is_confused_with_turning_round() -> None:
    of = web(moss="", leaf="", worm="moss", fly="leaf", shrew="worm 0.5, fly 0.5", hawk="shrew")
    assert "web.turns-each-time" == options(made(of)["gone_fly"])["It rises"]


def test_loss_on_which_nothing_agrees_is_not_asked_for() -> None:
    of = web(seeds="", mouse="seeds 0.5, fox 0.5", fox="mouse 0.5, seeds 0.5")
    (item,) = WebQuestions(of, library().catalogue).gone()
    assert isinstance(item, Rejected) and item.because.startswith("of no animal beside those under `if_gone:`")


def test_no_path_through_dead_matter_is_asked_for() -> None:
    """Without larvae more dead leaves would be left for zooplankton, if arrows alone settled how many there are."""
    lost = losses(demo(LAKE).record, "midge_larvae")["phytoplankton"]
    assert "falls" == lost.verdict and any("dead_matter" in path.species for path in lost.paths)
    asked = [question.fact.working.lines for gone, question in made(demo(LAKE)).items() if gone.startswith("gone_")]
    assert asked and not any("dead matter" in line for lines in asked for line in lines)


def test_forecast_says_how_far_paths_are_followed() -> None:
    assert "along paths of at most three arrows," in made(demo(PLAIN))["gone_snakes"].prompt


def test_species_that_could_come_twice_are_spoken_of_only_where_a_way_could_go_round() -> None:
    """Owls that eat owls, and shrews and foxes that eat each other; below the loop of the lake, pike that eat pike, nothing goes round."""
    assert "twice" not in made(web(grass="", vole="grass", owl="vole"))["longest_chain"].prompt
    assert "No species may come twice." in made(web(grass="", vole="grass", owl="vole 0.9, owl 0.1"))["longest_chain"].prompt
    assert "twice" not in made(demo(LAKE))["longest_chain_to_roach"].prompt


def test_longest_chain_is_asked_for_below_that_of_the_whole_web() -> None:
    """Source: the record: snakes are reached by three arrows or two, and falcons, at the end of the longest chain, by four."""
    question = made(demo(PLAIN))["longest_chain_to_snakes"]
    assert isinstance(question, NumberEntry)
    assert ("3", {"4": "en.one-many", "2": "web.any-chain"}) == (question.answer, {slip.shown: slip.misconception for slip in question.slips})


def test_where_no_other_chains_differ_the_longest_of_the_web_is_asked_for() -> None:
    """Source: the record: crabs and minnows are reached by two arrows on any way, herons by three."""
    question = made(demo("food_web/salt_marsh_web"))["longest_chain"]
    assert isinstance(question, NumberEntry)
    assert ("3", {"4": "en.one-many", "2": "en.one-few"}) == (question.answer, {slip.shown: slip.misconception for slip in question.slips})


def test_arrow_to_its_own_kind_counts_in_no_chain() -> None:
    """Owls eat owls, so that whoever counts that arrow too finds one more, as with the boxes."""
    slips = [made(web(grass="", vole="grass", owl=diet))["longest_chain"].slips[0].feedback for diet in ("vole 0.9, owl 0.1", "vole")]
    assert "counting the boxes, or the arrow from owl to owl as well." in slips[0]
    assert "counting the boxes." in slips[1]


@pytest.mark.parametrize(("record", "gone", "hint"), [("salt_marsh_web", "herons", "the food of herons: those"), ("harrow_plain_web", "snakes", "the eaters and the food of snakes: those")])
def test_hint_to_a_loss_asks_only_for_arrows_that_are_there(record: str, gone: str, hint: str) -> None:
    assert hint in made(demo(f"food_web/{record}"))[f"gone_{gone}"].hints[0]


def test_foods_are_told_from_eaters_and_from_both() -> None:
    question = WebQuestions(demo(LAKE), library().catalogue).foods_counted()
    assert isinstance(question, NumberEntry)
    assert ("3", {"1": "en.arrow-eats", "4": "web.all-arrows"}) == (question.answer, {s.shown: s.misconception for s in question.slips})


def test_top_is_told_from_those_below_it_and_from_the_bottom() -> None:
    found = options(WebQuestions(demo(PLAIN), library().catalogue).at_the_top())
    assert ("", "en.arrow-eats") == (found["Falcons"], found["Grasses and herbs"])
    assert 2 == list(found.values()).count("web.all-arrows")


def test_plain_questions_fill_up_small_webs_only() -> None:
    assert {"foods_counted", "one_food", "at_the_top"} <= set(made(web(grass="", moss="", vole="grass, moss", owl="vole")))
    assert {"foods_counted", "one_food", "at_the_top"}.isdisjoint(made(demo(PLAIN)))
