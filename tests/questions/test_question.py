"""Item types refuse what no student could answer fairly."""

from __future__ import annotations

import pytest

from generator.questions.question import Choice, Needs, Option

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
