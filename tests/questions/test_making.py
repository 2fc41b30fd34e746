"""Questions made from facts: fair ones come out, others are rejected with the reason; the order of options is fixed."""

from __future__ import annotations

import os
import subprocess
import sys
from dataclasses import replace
from pathlib import Path

import pytest

from generator.quantities.amount import Amount
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed, stated
from generator.quantities.units import unit
from generator.questions.making import Draft, Sound, Wrong, choice, choice_of_numbers, enough, matching, number_entry, ordering, reading, several
from generator.questions.misconception import Catalogue, Misconception
from generator.questions.mistake import Mistake
from generator.questions.question import ChartReading, Choice, Made, Needs, NumberEntry, Pair, Rejected, SeveralChoice

CATALOGUE = Catalogue({"t.slip": Misconception(id="t.slip", idea="An idea.", because="the reason.", instead="the remedy.")})
DRAFT = Draft(id="asked", prompt="How much?", solution="So much.")
WRONG = [Wrong(word, "t.slip") for word in ("Red", "Green", "Blue")]
GIVEN = {name: stated(name, name, Amount(value=value, written=f"{value:g}"), unit("mm")) for name, value in (("a", 40.0), ("b", 10.0))}
DIFFERENCE = computed("d", "Difference", Expression("a - b"), GIVEN, unit("mm"))
UNKNOWN = Fact(id="u", name="Depth", value=None, unit=unit("mm"), undefined_because="not known")
SUM, FIRST, SECOND = (Mistake("t.slip", text, "slipping") for text in ("a + b", "a", "b"))


def test_number_entry_carries_answer_unit_and_slips() -> None:
    made = number_entry(DRAFT, DIFFERENCE, GIVEN, [SUM, FIRST], CATALOGUE, otherwise="Subtract.")
    assert isinstance(made, NumberEntry)
    assert ("30 mm", "mm", ["50 mm", "40 mm"]) == (made.answer, made.unit, [slip.shown for slip in made.slips])
    assert ("So much.", "Subtract.", DIFFERENCE) == (made.right_feedback, made.otherwise, made.fact)


def test_sum_hints_first_at_the_way_then_at_the_formula_and_never_at_numbers() -> None:
    made = number_entry(DRAFT, DIFFERENCE, GIVEN, [], CATALOGUE, otherwise="Subtract.")
    assert isinstance(made, NumberEntry) and ("Subtract.", "a − b = ?") == made.hints
    own = number_entry(replace(DRAFT, hints=("Think.",)), DIFFERENCE, GIVEN, [], CATALOGUE, otherwise="Subtract.")
    assert isinstance(own, NumberEntry) and ("Think.",) == own.hints


def test_solution_tells_what_the_numbers_as_shown_give_where_the_last_digit_differs() -> None:
    """Source: arithmetic: 20 / 3 is shown as 6.67, and 6.67 × 30 is 200.1; 40 - 10 needs no such word."""
    third = computed("third", "Third", Expression("a / 6"), {"a": GIVEN["a"]}, unit("mm"))
    right = computed("r", "Right", Expression("third * 30"), {"third": third}, unit("mm"), figures=4)
    made = number_entry(DRAFT, right, {"third": third}, [], CATALOGUE, otherwise="Multiply.")
    assert isinstance(made, NumberEntry) and made.solution == made.right_feedback
    assert made.solution.startswith("So much. With the numbers as shown it comes to 200.1 mm, which is right too")
    exact = number_entry(DRAFT, DIFFERENCE, GIVEN, [], CATALOGUE, otherwise="Subtract.")
    assert isinstance(exact, NumberEntry) and ("So much.", "So much.") == (exact.solution, exact.right_feedback)


def test_number_entry_without_a_single_slip_is_still_a_question() -> None:
    assert isinstance(number_entry(DRAFT, DIFFERENCE, GIVEN, [], CATALOGUE, otherwise="Subtract."), NumberEntry)


@pytest.mark.parametrize("as_choice", [True, False])
def test_number_that_is_not_known_is_no_question(as_choice: bool) -> None:
    made = (
        choice_of_numbers(DRAFT, UNKNOWN, GIVEN, [SUM], CATALOGUE)
        if as_choice
        else number_entry(DRAFT, UNKNOWN, GIVEN, [SUM], CATALOGUE, otherwise="Subtract.")
    )
    assert Rejected("asked", "depth is not known") == made


def test_choice_of_numbers_needs_two_distractors() -> None:
    assert isinstance(choice_of_numbers(DRAFT, DIFFERENCE, GIVEN, [SUM, FIRST], CATALOGUE), Choice)
    assert isinstance(choice_of_numbers(DRAFT, DIFFERENCE, GIVEN, [SUM], CATALOGUE), Rejected)


def test_distractors_that_meet_do_not_count_twice() -> None:
    assert isinstance(choice_of_numbers(DRAFT, DIFFERENCE, GIVEN, [SUM, SUM, SUM], CATALOGUE), Rejected)


@pytest.mark.parametrize("as_choice", [True, False])
def test_sum_whose_rounded_terms_do_not_give_its_result_is_no_question(as_choice: bool) -> None:
    """9414 − 5230 − 2620 is 1564, and the exact difference 1569: whoever typed 1564 would be told to be wrong."""
    exact = {name: Fact(id=name, name=name, value=value, unit=unit("mm"), figures=figures) for name, value, figures in (("a", 9414.0, 4), ("b", 5230.0, 4), ("c", 2615.0, 3))}
    right = computed("d", "Left", Expression("a - b - c"), exact, unit("mm"))
    wrong = [Mistake("t.slip", text, "slipping") for text in ("a - b", "a - c", "b + c")]
    for figures, fair in ((3, False), (4, True)):
        shown = exact | {"c": replace(exact["c"], figures=figures)}
        asked = replace(right, working=computed("d", "Left", Expression("a - b - c"), shown, unit("mm")).working)
        made = (
            choice_of_numbers(DRAFT, asked, shown, wrong, CATALOGUE)
            if as_choice
            else number_entry(DRAFT, asked, shown, wrong, CATALOGUE, otherwise="Subtract.")
        )
        assert fair != isinstance(made, Rejected)


def test_choice_in_words_has_one_right_option_and_feedback_for_all() -> None:
    made = choice(DRAFT, "White", [Wrong("Red", "t.slip", "Not red."), *WRONG[1:]], CATALOGUE)
    assert isinstance(made, Choice)
    assert {"White": "So much.", "Red": "Not red. The reason. The remedy.", "Green": "The reason. The remedy.", "Blue": "The reason. The remedy."} == {
        option.text: option.feedback for option in made.options
    }


def test_wrong_options_that_say_the_same_are_dropped() -> None:
    made = choice(DRAFT, "White", [*WRONG, Wrong("white", "t.slip"), Wrong("RED", "t.slip")], CATALOGUE)
    assert isinstance(made, Choice)
    assert {"White", "Red", "Green", "Blue"} == {option.text for option in made.options}


def test_too_few_different_options_are_no_question() -> None:
    assert Rejected("asked", "too few different wrong options are left") == choice(DRAFT, "White", [WRONG[0], WRONG[0]], CATALOGUE)


def test_order_of_options_is_drawn_anew_for_each_record() -> None:
    """Whichever place the right option has, over many records it has every place."""
    places = set()
    for record in range(40):
        made = choice(DRAFT, "White", WRONG, CATALOGUE, salt=f"kind/{record}")
        assert isinstance(made, Choice)
        places.add([option.right for option in made.options].index(True))
    assert {0, 1, 2, 3} == places


def test_order_of_options_does_not_depend_on_the_process() -> None:
    program = (
        "from tests.questions.test_making import *;"
        "print([o.text for o in choice(DRAFT, 'White', WRONG, CATALOGUE, salt='kind/record').options])"
    )
    root = Path(__file__).parents[2]
    outputs = {
        subprocess.run(
            [sys.executable, "-c", program], cwd=root, env={**os.environ, "PYTHONHASHSEED": seed}, capture_output=True, text=True, check=True
        ).stdout
        for seed in ("0", "1", "2")
    }
    here = choice(DRAFT, "White", WRONG, CATALOGUE, salt="kind/record")
    assert isinstance(here, Choice)
    assert {f"{[option.text for option in here.options]}\n"} == outputs


def candidates(pattern: str) -> list[Made]:
    """A question for each `q`, a rejected one for each `-`; ids are their places."""
    made: list[Made] = []
    for place, sign in enumerate(pattern):
        draft = Draft(id=str(place), prompt="How much?", solution="So much.")
        made.append(number_entry(draft, DIFFERENCE if sign == "q" else UNKNOWN, GIVEN, [], CATALOGUE, otherwise="Subtract."))
    return made


@pytest.mark.parametrize(
    ("pattern", "kept"),
    [
        ("qqq", "012"),  # as many as are wanted
        ("qqqq", "012"),  # the first ones
        ("-qq-q", "124"),  # enough without those that were rejected: nobody need be told
        ("qqq-", "012"),
        ("q-q", "021"),  # too few: what was left out is told after them
        ("---", "012"),
        ("", ""),
    ],
)
def test_first_questions_that_come_out_are_enough(pattern: str, kept: str) -> None:
    assert list(kept) == [item.id for item in enough(candidates(pattern), wanted=3)]


def test_six_questions_are_enough_unless_said_otherwise() -> None:
    assert list("012345") == [item.id for item in enough(candidates("qqqqqqqq"))]


def test_questions_need_data_unless_they_say_otherwise() -> None:
    assert Needs.DATA == DRAFT.needs


LABELS = ("January", "May", "June", "July")


def read_off(right: tuple[str, ...], *wrong: tuple[tuple[str, ...], Wrong]) -> Made:
    draft = Draft(id="warmest", prompt="When?", solution="Then.")
    return reading(draft, LABELS, right, wrong, CATALOGUE, otherwise="Look again.")


def test_a_slip_of_reading_never_claims_a_right_label_or_one_twice() -> None:
    first, second = Wrong("", "t.slip", "First."), Wrong("", "t.slip", "Second.")
    made = read_off(("July",), (("July", "June"), first), (("June", "May"), second))
    assert isinstance(made, ChartReading)
    assert [(("June",), "t.slip"), (("May",), "t.slip")] == [(slip.labels, slip.misconception) for slip in made.slips]
    assert made.slips[0].feedback.startswith("First. ")


def test_nothing_is_read_off_where_every_label_is_right() -> None:
    assert isinstance(read_off(LABELS), Rejected)


def test_several_right_options_each_say_why_and_wrong_ones_what_holds() -> None:
    made = several(DRAFT, [Sound("Wet", "It rains."), Sound("Warm", "It is hot.")], [*WRONG, Wrong("wet", "t.slip")], CATALOGUE, salt="s")
    assert isinstance(made, SeveralChoice)
    assert {"Wet": "It rains.", "Warm": "It is hot."} == {option.text: option.feedback for option in made.options if option.right}
    assert {"Red", "Green", "Blue"} == {option.text for option in made.options if option.feedback == "The reason. The remedy."}


@pytest.mark.parametrize(("sound", "wrong"), [(1, 3), (2, 1)])
def test_several_needs_two_of_either(sound: int, wrong: int) -> None:
    right = [Sound(f"Right {n}", "So it is.") for n in range(sound)]
    assert isinstance(several(DRAFT, right, WRONG[:wrong], CATALOGUE), Rejected)


@pytest.mark.parametrize("salt", ["a", "b", "c", "d", "e", "f"])
def test_order_never_begins_with_its_first_step(salt: str) -> None:
    item = ordering(DRAFT, ["one", "two", "three"], starts_with="Look.", leads_on=lambda text: f"After {text}?", salt=salt)
    assert item.start[0] != 0 and {0, 1, 2} == {*item.start}
    assert [("one", "After one?"), ("two", "After two?"), ("three", "")] == [(step.text, step.leads_on) for step in item.steps]


@pytest.mark.parametrize("count", [3, 4, 5])
def test_order_never_begins_as_the_right_one_backwards(count: int) -> None:
    texts = ["one", "two", "three", "four", "five"][:count]
    starts = {ordering(DRAFT, texts, starts_with="Look.", leads_on=str, salt=str(salt)).start for salt in range(400)}
    assert tuple(range(count))[::-1] not in starts
    assert all(start[0] != 0 and sorted(start) == [*range(count)] for start in starts)


def test_match_lists_the_partners_that_fit_nothing_too() -> None:
    item = matching(DRAFT, [Pair("a", "A", "So."), Pair("b", "B", "So.")], ["C"], salt="s")
    assert {"A", "B", "C"} == {*item.partners}


ALIKE = Rejected("asked", "two of the things that it is about have one name")


def test_things_of_one_name_cannot_be_put_in_order_matched_or_picked() -> None:
    """Names come from authors; two that are alike make no question, and no error either."""
    assert ALIKE == ordering(DRAFT, ["Pond", "Sea", "pond"], starts_with="Begin.", leads_on=str)
    assert ALIKE == matching(DRAFT, [Pair("Pond", "one", "So."), Pair("pond", "two", "So.")])
    assert ALIKE == matching(DRAFT, [Pair("Pond", "one", "So."), Pair("Sea", "two", "So.")], ["One"])
    assert ALIKE == reading(DRAFT, ["Pond", "Sea", "Pond"], ["Sea"], [], CATALOGUE, otherwise="Look again.")
