"""Doubts about written questions are warnings at their place, each with a name by which its author can accept it."""

from __future__ import annotations

import pytest

from generator.diagnostics import Severity
from generator.written.asking import asks_for_data, so_many
from tests.kinds.small_records import library
from tests.written.small_question import CALCULATION, CHAIN, HEAD, READING, SAMPLES, doubted, read

IDEA = "{id: %s, says: %s, accept: [few trees can grow, trees lack water], not_enough: [it is bad]}"
OWN = """\
parts:
  - id: a
    command_word: explain
    marks: 2
    needs: both
    prompt: Explain why few trees grow there.
    focus: the scarcity of trees
    ideas: [%s, %s]
    award: {rule: each}
    """ % (IDEA % ("one", "'The soil dries, so young trees die.'"), IDEA % ("two", "Few trees are left.")) + SAMPLES % "one"


@pytest.mark.parametrize("text", [CHAIN, CALCULATION, OWN, READING.replace("Read off the elevation.", "Read off how high the trees grow.")])
def test_a_question_in_good_order_gives_no_warning(text: str) -> None:
    assert [] == doubted(text)


@pytest.mark.parametrize(
    ("text", "old", "new", "field", "rule"),
    [
        (CALCULATION, SAMPLES % "setup", "", "parts[0]", "few_samples"),
        (CALCULATION, "earns: [], comment: Off.}, {text: None., comment", "earns: [answer], comment: Off.}, {text: None., earns: [setup], comment", "parts[0].samples", "few_samples"),
        (OWN, "command_word: explain", "command_word: identify", "parts[0].marks", "unusual_marks"),
        (OWN, "command_word: explain", "command_word: design", "parts[0].marks", "unusual_marks"),
        (OWN, "command_word: explain", "command_word: state", "parts[0].prompt", "no_count"),
        (OWN, "dries, so young trees die", "is dry", "parts[0].ideas", "no_mechanism"),
        (OWN, "needs: both", "needs: data", "parts[0].ideas", "no_data_quoted"),
        (OWN, "grow there.", "grow there, using the data.", "parts[0].ideas", "no_data_quoted"),
        (OWN, "why few trees grow there.", "what effects the drought has.", "parts[0].prompt", "no_object"),
        (OWN, "why few trees grow there.", "the impacts.", "parts[0].prompt", "no_object"),
        (OWN, "focus: the scarcity of trees", "focus: the wind", "parts[0].focus", "off_focus"),
        (OWN, "needs: both", "needs: both\n    minutes: 12", "parts[0].minutes", "unusual_time"),
        (OWN, "needs: both", "needs: both\n    minutes: 1", "parts[0].minutes", "unusual_time"),
        (OWN, "accept: [few trees can grow, trees lack water], not_enough: [it is bad]}, {", "accept: [few trees can grow], not_enough: [it is bad]}, {", "parts[0].ideas[0]", "few_wordings"),
        (OWN, ", not_enough: [it is bad]}]", "}]", "parts[0].ideas[1]", "no_near_miss"),
    ],
)  # fmt: skip
def test_each_doubt_is_told_at_its_place(text: str, old: str, new: str, field: str, rule: str) -> None:
    assert old in text
    assert (field, rule) in doubted(text.replace(old, new, 1))
    assert read(text.replace(old, new, 1))[0] is not None


def test_a_name_need_not_quote_a_number_nor_say_what_it_is_the_name_of() -> None:
    named = OWN.replace("command_word: explain", "command_word: identify").replace("focus: the scarcity of trees", "focus: the wind").replace("needs: both", "needs: data")
    assert {"no_data_quoted", "off_focus"}.isdisjoint(rule for _, rule in doubted(named))
    assert ("parts[0].ideas", "no_data_quoted") in doubted(named.replace("grow there.", "grow there, with the data."))


@pytest.mark.parametrize("minutes", [3, 8])
def test_a_time_near_the_usual_one_is_no_doubt(minutes: int) -> None:
    """Two marks at two minutes each, as `AROUND` has it, or at 1.5 to 4 minutes where a mark takes 2.3."""
    assert (minutes == 8) == bool(doubted(OWN.replace("needs: both", f"needs: both\n    minutes: {minutes}")))


@pytest.mark.parametrize("prompt", ["State two things about the trees.", "State why trees die and what is left."])
def test_two_marks_for_naming_are_usual_where_two_things_are_asked_for(prompt: str) -> None:
    text = OWN.replace("command_word: explain", "command_word: state").replace("Explain why few trees grow there.", prompt)
    assert [] == doubted(text)


def test_stimulus_that_no_part_takes_up_is_told() -> None:
    head = HEAD.replace("]\n", ", {text: Birds sing.}, {chart: 'biome/savanna#climate_diagram.teva_crossing'}]\n")
    assert [("stimulus[1]", "stimulus_not_used"), ("stimulus[2]", "stimulus_not_used")] == doubted(CHAIN, head)
    assert [("stimulus[1]", "stimulus_not_used")] == doubted(CHAIN.replace("on Harrow Plain.", "on Harrow Plain, by the diagram."), head)


def test_a_warning_can_be_accepted_with_a_reason_and_an_idle_acceptance_is_told() -> None:
    head = f"{HEAD}accepted_warnings: [{{warning: off_focus, reason: The wind is meant.}}]\n"
    assert [] == doubted(OWN.replace("focus: the scarcity of trees", "focus: the wind"), head)
    assert ["nothing_to_accept"] == [rule for _, rule in doubted(OWN, head)]


def test_the_school_s_own_range_of_marks_counts() -> None:
    assert (2, 3) == library().command_words["explain"].marks
    assert (1, 1) == library().command_words["identify"].marks


@pytest.mark.parametrize(("prompt", "number"), [("Give two reasons.", 2), ("Explain three ways.", 3), ("Explain why two lakes differ.", None), ("Suggest one or two changes.", None)])
def test_how_many_things_are_asked_for(prompt: str, number: int | None) -> None:
    assert number == so_many(prompt)


def test_data_are_asked_for_in_the_prompt_or_in_the_condition() -> None:
    assert asks_for_data("Justify it.", "with the data of the station") and not asks_for_data("Justify it.", "the climate shown")


def test_doubts_about_the_demo_course_are_settled() -> None:
    assert [] == [one for one in library().warnings if "written/" in one.place.file and one.severity is Severity.WARNING]
