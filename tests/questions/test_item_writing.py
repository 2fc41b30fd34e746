"""Doubts about how a question is written. Rules: Haladyna and Downing 1989; Haladyna, Downing and Rodriguez 2002."""

from __future__ import annotations

from typing import Any

import pytest

from generator.diagnostics import Severity
from generator.questions.item_writing import doubts_about, false_steps_amiss, flaws, flaws_of_set
from generator.questions.question import Choice, Interval, Matching, Needs, NumberEntry, Option, Ordering, Pair, Question, Step
from generator.records.asked import AskedQuestion
from generator.records.parts import Explanation, FalseStep, Idea, Retold


def asked(right: str, *wrong: str, prompt: str = "What happens first when the bay warms up?", **given: Any) -> Choice:
    options = (
        Option(text=right, feedback="So.", right=True),
        *(Option(text=text, feedback="No.", misconception="a.b") for text in wrong),
    )
    return Choice(**{"id": "asked", "prompt": prompt, "needs": Needs.KNOWLEDGE, "solution": "So.", "options": options} | given)


def rules(item: Question) -> list[str]:
    return [flaw.rule for flaw in flaws(item)]


FAIR = asked("Oxygen falls", "Salt rises", "Light fades")


def test_a_fair_question_raises_no_doubt() -> None:
    assert [] == rules(FAIR)


@pytest.mark.parametrize(
    ("item", "rule"),
    [
        (asked("Oxygen falls because warm water holds less of it", "Salt rises", "Light fades"), "long_option"),
        (asked("Oxygen falls", "Salt always rises", "Light fades"), "absolute_word"),
        (asked("Oxygen often falls", "Salt rises", "Light fades"), "hedged_option"),
        (asked("Oxygen leaves as it warms", "Salt rises quickly there", "Light fades at depth"), "echo"),
        (asked("The oxygen falls there", "The oxygen falls here", "The oxygen falls now"), "repeated_words"),
        (asked("Oxygen falls", "Salt rises"), "options"),
        (asked("Oxygen falls", "Salt rises", "Light fades", prompt="What does not happen?"), "negative_prompt"),
        (asked("Oxygen falls", "Salt rises", "Light fades", prompt="What do you think happens?"), "opinion"),
        (asked("Oxygen falls", "Salt rises", "Light fades", prompt="word " * 46), "long_prompt"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_each_fault_is_told_by_its_rule_and_no_other(item: Choice, rule: str) -> None:
    assert [rule] == rules(item)


def test_an_absolute_word_in_the_right_option_too_gives_nothing_away() -> None:
    assert [] == rules(asked("Oxygen always falls", "Salt always rises", "Light fades"))


def test_a_number_to_type_is_only_doubted_for_its_prompt() -> None:
    item = NumberEntry(
        id="sum", prompt="What is not passed on?", needs=Needs.DATA, solution="So.", unit="", answer="1", accepted=Interval(1, 1),
        right_feedback="", slips=(), otherwise="",
    )  # fmt: skip
    assert [] == rules(item)


def test_a_set_whose_right_options_are_mostly_the_longest_is_told() -> None:
    longest = [asked("Oxygen falls there", "Salt rises", "Light fades", id=f"q{n}") for n in range(8)]
    shortest = [asked("Oxygen", "Salt rises", "Light fades", id=f"q{n}") for n in range(8)]
    assert (True, False) == tuple("longest_right" in [flaw.rule for flaw in flaws_of_set(items)] for items in (longest, shortest))


def test_a_set_whose_right_options_gather_at_one_place_is_told() -> None:
    """Eight of eight at the first of three places: 1 in 6561 by chance (binomial)."""
    first = [asked("Oxygen", "Salt rises", "Light fades", id=f"q{n}") for n in range(8)]
    spread = [
        asked("Oxygen", "Salt rises", "Light fades", id=f"q{n}", options=(*FAIR.options[n % 3 :], *FAIR.options[: n % 3])) for n in range(9)
    ]
    assert (True, False) == tuple("right_place" in [flaw.rule for flaw in flaws_of_set(items)] for items in (first, spread))


def test_seven_questions_are_too_few_for_a_doubt_about_the_set() -> None:
    assert [] == list(flaws_of_set([asked("Oxygen falls there", "Salt rises", "Light fades", id=f"q{n}") for n in range(7)]))


@pytest.mark.parametrize("text", ["May", "All twelve months", "It is below 5 °C all day", "Dry all year"])
def test_a_month_and_whole_spans_of_time_are_no_giveaways(text: str) -> None:
    assert {*rules(asked("July", text, "September")), *rules(asked(text, "July", "September"))} <= {"long_option"}


def test_doubts_stand_at_the_question_of_their_author_or_else_at_the_title() -> None:
    doubtful = asked("Oxygen falls", "Salt always rises", "Light fades")
    written = AskedQuestion(id="asked", ask="What?", needs="knowledge", answer="Oxygen falls", because="So.")
    (own,) = doubts_about([doubtful], [written])
    (made,) = doubts_about([doubtful], [])
    assert (("questions", 0, "ask"), Severity.WARNING, "absolute_word") == (own.path, own.severity, own.rule)
    assert ("title",) == made.path and 'question "asked"' in made.expected


def test_a_pair_with_a_word_in_common_is_doubtful_unless_others_have_it_too() -> None:
    def match(*partners: str) -> Matching:
        pairs = tuple(Pair(text, partner, "So.") for text, partner in zip(("deep roots", "thick bark", "small leaves"), partners, strict=True))
        return Matching(id="pairs", prompt="Match.", needs=Needs.KNOWLEDGE, solution="So.", pairs=pairs, partners=partners)

    assert ["echo"] == rules(match("roots reach water", "fire passes", "less evaporates"))
    assert [] == rules(match("roots reach water", "roots stay cool", "less evaporates")) == rules(match("water is reached", "fire passes", "less evaporates"))


@pytest.mark.parametrize(("text", "doubtful"), [
    ("So the ground warms", True), ("The plant takes these minerals up", True), ("Their roots hold the soil", True),
    ("Sometimes soil dries", False), ("The ground warms", False), ("It is coldest", False),
])  # fmt: skip
def test_a_step_that_points_at_another_is_doubtful(text: str, doubtful: bool) -> None:
    steps = (*(Step(f"Step {n}", "") for n in range(3)), Step(text, ""))
    item = Ordering(id="an_order", prompt="Put these in order.", needs=Needs.KNOWLEDGE, solution="Why.", steps=steps, start=(1, 0, 2, 3), starts_with="")
    assert (["linked_step"] if doubtful else []) == [flaw.rule for flaw in flaws(item)]


def with_false_step(steps: int, step: int, others: int = 0) -> Explanation:
    """An explanation retold in so many steps, one of them for students to find, and reasons for so many others."""
    false = FalseStep(step=step, says="Salt sinks to the bed.", because="It stays in the water.", others=tuple(f"Reason {n}" for n in range(others)))
    retold = Retold(asks="why a bay dries", steps=tuple(f"Step {n}" for n in range(steps)), false_step=false)
    return Explanation(id="bay", asks="why it is so", chain=(Idea(id="idea", says="It is so."),), retold=retold)


@pytest.mark.parametrize(("told", "where"), [
    (with_false_step(4, 4), []), (with_false_step(4, 1, others=3), []),
    (with_false_step(2, 1), ["steps"]), (with_false_step(6, 1), ["steps"]),
    (with_false_step(4, 5), ["false_step", "step"]), (with_false_step(4, 1, others=2), ["false_step", "others"]),
])  # fmt: skip
def test_a_false_step_takes_the_place_of_one_among_as_many_as_a_question_has_options(told: Explanation, where: list[str]) -> None:
    found = list(false_steps_amiss([told]))
    assert [("explanations", 0, "retold", *where)] * bool(where) == [one.path for one in found]
    assert all(one.severity is Severity.ERROR for one in found)
