"""The catalogue of misconceptions: every entry a whole refutation, short, plain, and without judging anyone; feedback likewise."""

from __future__ import annotations

import re
from itertools import combinations

import pytest
import yaml

from generator.course.reading import sentences
from generator.questions.question import ChartReading, Choice, NumberEntry, SeveralChoice
from tests.content.patches import MISCONCEPTIONS
from tests.kinds.small_records import library

ENTRIES = yaml.safe_load(MISCONCEPTIONS.read_text("utf-8"))["misconceptions"]
SLOTS = ("idea", "because", "instead")
MOST_WORDS = 25
MOST_ALIKE = 0.7
"""Of the words of two slots together, the share that both may use: to put right an idea about above and below takes the same words."""
MOST_SENTENCES = 3
"""Source: a default of this project, after Shute 2008: feedback is specific, does not judge, and is short."""
MOST_OF_THEIR_OWN = 0.4
"""Share of wrong answers that may have a correction of their own, where that of their misconception would not fit."""
JUDGING = re.compile(r"\b(?:easy|easily|obvious(?:ly)?|simply?|clever|lazy|just|of course|stupid|silly|careless(?:ly)?|you believe|you think)\b", re.IGNORECASE)
each_entry = pytest.mark.parametrize("entry", [pytest.param(entry, id=entry["id"]) for entry in ENTRIES])


def words(text: str) -> set[str]:
    return set(re.findall(r"\w+", text.casefold()))


def test_there_are_as_many_as_the_course_needs() -> None:
    assert len(ENTRIES) >= 80


@each_entry
def test_each_slot_is_one_short_sentence(entry: dict[str, str]) -> None:
    assert [] == [slot for slot in SLOTS if not re.search(r"[.?!]”?$", entry[slot]) or len(sentences(entry[slot])) != 1]
    assert [] == [slot for slot in SLOTS if not 2 <= len(entry[slot].split()) <= MOST_WORDS]


@each_entry
def test_slots_do_not_repeat_each_other(entry: dict[str, str]) -> None:
    said = [words(entry[slot]) for slot in SLOTS]
    assert [] == [(one, other) for one, other in combinations(said, 2) if len(one & other) > MOST_ALIKE * len(one | other)]


@each_entry
def test_reason_and_remedy_read_on_after_a_colon(entry: dict[str, str]) -> None:
    """They begin in small letters but for names and formulas, and bring no second colon."""
    names = re.compile(r"Earth\b|Sun\b|CO₂|N₂|O₂|H₂O")
    found = [entry[slot] for slot in SLOTS[1:]]
    assert [] == [text for text in found if ":" in text or (text[0].isupper() and not names.match(text))]


@each_entry
def test_no_word_praises_blames_or_makes_light(entry: dict[str, str]) -> None:
    assert [] == [entry[slot] for slot in SLOTS if JUDGING.search(entry[slot])]


def feedback() -> list[tuple[str, str, str, str]]:
    """Question, misconception, feedback and refutation of every wrong answer of the demo course that has them."""
    return [
        (f"{record}/{item.id}", wrong.misconception, wrong.feedback, wrong.refutation)
        for record, items in library().questions.items()
        for item in items
        for wrong in (item.options if isinstance(item, Choice | SeveralChoice) else item.slips if isinstance(item, NumberEntry | ChartReading) else ())
        if wrong.misconception
    ]


def test_every_wrong_answer_is_refuted_by_its_own_misconception() -> None:
    found, catalogue = feedback(), library().catalogue
    assert len(found) > 500
    own = [item for item, name, says, _ in found if not says.endswith(catalogue[name].correction)]
    assert len(own) <= MOST_OF_THEIR_OWN * len(found)
    assert [] == [item for item, name, _, fuller in found if fuller != catalogue[name].refutation]


def test_feedback_is_short_and_tells_nobody_what_they_think() -> None:
    found = feedback()
    own = [(item, re.sub(r"“.*?”", "this", says)) for item, _, says, _ in found]  # what is quoted of a record does not count
    assert [] == [(item, says) for item, says in own if len(sentences(says)) > MOST_SENTENCES]
    assert [] == [(item, says) for item, _, says, _ in found if re.search(r"\byou (?:believe|think)\b", says, re.IGNORECASE)]
