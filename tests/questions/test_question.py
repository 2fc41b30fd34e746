"""Item types refuse what no student could answer fairly."""

from __future__ import annotations

import pytest

from generator.questions.question import (
    ChartReading, Choice, LabelSlip, Matching, Needs, Option, Ordering, Pair, SeveralChoice, Step,
)  # fmt: skip

RIGHT = Option(text="Right", feedback="Yes.", right=True)
WRONG = Option(text="Wrong", feedback="No.", misconception="t.slip")


def asked(*options: Option) -> Choice:
    return Choice(id="asked", prompt="What?", needs=Needs.DATA, solution="That.", options=options)


def test_one_right_option_is_fine() -> None:
    assert (WRONG, RIGHT) == asked(WRONG, RIGHT).options


@pytest.mark.parametrize("options", [(WRONG,), (RIGHT, Option(text="Other", feedback="Yes.", right=True))])
def test_none_or_two_right_options_are_refused(options: tuple[Option, ...]) -> None:
    with pytest.raises(ValueError, match="asked: expected one right option, found [02]"):
        asked(*options)


def test_options_that_say_the_same_are_refused() -> None:
    with pytest.raises(ValueError, match="asked: two options say the same"):
        asked(RIGHT, WRONG, Option(text="WRONG", feedback="No.", misconception="t.slip"))


def test_wrong_option_without_a_misconception_is_refused() -> None:
    with pytest.raises(ValueError, match="asked: no misconception is named for 'Other'"):
        asked(RIGHT, WRONG, Option(text="Other", feedback="No."))


COMMON = {"id": "item", "prompt": "What?", "needs": Needs.KNOWLEDGE, "solution": "So."}


@pytest.mark.parametrize("right", [(True, False, False), (True, True, True)])
def test_several_need_two_right_options_and_a_wrong_one(right: tuple[bool, ...]) -> None:
    options = tuple(Option(text=str(n), feedback="", right=one, misconception="a.b") for n, one in enumerate(right))
    with pytest.raises(ValueError, match="two right options or more, and a wrong one"):
        SeveralChoice(**COMMON, options=options)


def test_steps_must_not_start_in_their_right_order() -> None:
    with pytest.raises(ValueError, match="another order than the right one"):
        Ordering(**COMMON, steps=(Step("a", ""), Step("b", "")), start=(0, 1), starts_with="")


def test_two_equal_steps_have_no_order() -> None:
    with pytest.raises(ValueError, match="two steps say the same"):
        Ordering(**COMMON, steps=(Step("a", ""), Step("A", "")), start=(1, 0), starts_with="")


def test_every_partner_is_listed_and_fits_once() -> None:
    with pytest.raises(ValueError, match="'y' is not listed"):
        Matching(**COMMON, pairs=(Pair("a", "x", ""), Pair("b", "y", "")), partners=("x", "z"))
    with pytest.raises(ValueError, match="say the same"):
        Matching(**COMMON, pairs=(Pair("a", "x", ""), Pair("b", "y", "")), partners=("x", "y", "X"))


@pytest.mark.parametrize(
    ("right", "wrong", "fault"),
    [((), ("b",), "right and wrong labels among"), (("a",), ("c",), "right and wrong labels among"), (("a",), ("a",), "two verdicts")],
)
def test_each_label_of_a_chart_has_one_verdict(right: tuple[str, ...], wrong: tuple[str, ...], fault: str) -> None:
    with pytest.raises(ValueError, match=fault):
        ChartReading(**COMMON, labels=("a", "b"), right=right, slips=(LabelSlip(wrong, "", "a.b"),), otherwise="")
