"""What a coach is told of a part: taken from its prompt, its guide and the course's words, with no idea of the guide in it."""

from __future__ import annotations

import json
from typing import Any

import pytest

from generator.course.glossaries import CommandWord, Word
from generator.written.coaching import bank_of, fewest, outline_of, task_of
from generator.written.guide import PartGuide
from tests.kinds.small_records import library
from tests.written.small_question import CALCULATION, CHAIN, SAMPLES, sound

WORDS = library().command_words
IDEAS = """\
parts:
  - id: a
    command_word: %s
    marks: 2
    needs: both
    prompt: %s
    condition: %s
    ideas:
      - {id: wash, says: 'Rain washes nitrate out, which is leaching.', accept: [denitrification turns it into gas]}
      - {id: roots, says: Potential evapotranspiration of trophic levels matters.}
    award: {rule: each}
    """ + SAMPLES % "wash"


def guide(verb: str = "explain", prompt: str = "Explain it.", condition: str = "as shown", text: str = IDEAS) -> PartGuide:
    (found,) = sound(text % (verb, prompt, condition) if text is IDEAS else text).guides
    return found


def task(**said: str) -> dict[str, Any]:
    part = guide(**said)
    return task_of(part, "energy", WORDS[part.part.command_word], library().vocabulary.values())


def word(text: str) -> Word:
    return Word(id="a_word", word=text, means="Something.")


def bank(prompt: str, *terms: str) -> list[str]:
    return [term.word for term in bank_of(guide(prompt=prompt), [word(one) for one in terms])]


def test_a_task_is_plain_data_about_the_part() -> None:
    found = task(prompt="Explain why nitrate falls.", condition="in spring")
    assert found == json.loads(json.dumps(found))
    expected = {"command": "explain", "verb": "Explain", "topic": "energy", "prompt": "Explain why nitrate falls.", "needs": "both", "condition": "in spring"}
    assert expected == {key: found[key] for key in expected}


def test_no_idea_of_the_guide_is_given_away() -> None:
    """Only single terms of the course's vocabulary are."""
    for guided in library().written:
        for part in guided.guides:
            text = json.dumps(task_of(part, guided.question.topic, WORDS[part.part.command_word], library().vocabulary.values()), ensure_ascii=False)
            assert [] == [line.says for line in part.lines if line.says in text and line.says not in part.prompt]


@pytest.mark.parametrize(
    ("prompt", "terms", "expected"),
    [
        ("Explain it.", ("leaching", "denitrification", "nitrification"), ["leaching", "denitrification"]),
        ("Explain it.", ("denitrification", "leaching"), ["leaching", "denitrification"]),
        ("Explain it without leaching.", ("leaching", "denitrification"), ["denitrification"]),
        ("Explain it.", ("evapotranspiration", "potential evapotranspiration"), ["potential evapotranspiration"]),
        ("Explain it.", ("trophic level", "gas"), ["gas", "trophic level"]),
        ("Explain trophic levels.", ("trophic level",), []),
        ("Explain it.", ("leach", "ash"), []),
    ],
)
def test_the_bank_holds_terms_of_the_guide_that_the_prompt_does_not_give(prompt: str, terms: tuple[str, ...], expected: list[str]) -> None:
    assert expected == bank(prompt, *terms)


def test_terms_come_with_the_words_by_which_students_may_say_them() -> None:
    terms = task(prompt="Explain it.")["terms"]
    assert {"term": "leaching", "also": ["washing out"]} in terms


@pytest.mark.parametrize(
    ("verb", "prompt", "condition", "expected"),
    [
        ("explain", "Explain it using the data.", "as shown", True),
        ("explain", "Explain it.", "with values of both", True),
        ("explain", "Explain it, with the data of the station.", "in spring", True),
        ("explain", "Explain why data are missing.", "in spring", False),
        ("identify", "Identify the month.", "with values from the diagram", False),
    ],
)
def test_data_are_to_be_quoted_where_the_prompt_or_its_condition_says_so(verb: str, prompt: str, condition: str, expected: bool) -> None:
    assert expected == task(verb=verb, prompt=prompt, condition=condition)["data"]


@pytest.mark.parametrize(
    ("verb", "prompt", "expected"),
    [
        ("explain", "Explain three ways in which nitrate is lost.", 3),
        ("explain", "Explain how two waters differ.", 1),
        ("explain", "The lake is deep. Give two reasons for its colour.", 2),
        ("explain", "Explain at least 4 of them.", 4),
        ("identify", "Identify what was changed and what was measured.", 2),
        ("explain", "Explain it.", 1),
    ],
)
def test_as_many_things_are_asked_as_the_prompt_says(verb: str, prompt: str, expected: int) -> None:
    assert expected == task(verb=verb, prompt=prompt)["asked"]


@pytest.mark.parametrize(("ideas", "expected"), [("two joined ideas in about two sentences", 2), ("three to six", 3), ("One or two pairs", 1), ("as many as asked", 1), ("12 lines", 12)])
def test_the_usual_number_of_ideas_is_read_from_the_words_of_its_entry(ideas: str, expected: int) -> None:
    assert expected == fewest(ideas)


def test_no_more_ideas_are_usual_than_the_part_has_marks() -> None:
    """An explanation usually takes three; this one is worth two."""
    assert (3, 2) == (fewest(WORDS["explain"].ideas), task()["fewest"])


def test_a_calculation_has_no_bank_of_words() -> None:
    part = guide(text=CALCULATION)
    assert [] == bank_of(part, [word("share"), word("kJ")])


def test_a_chain_lends_its_words_too() -> None:
    assert "evaporation" in [term.word for term in bank_of(guide(text=CHAIN), library().vocabulary.values())]


def test_an_outline_is_whole_at_first_and_loses_its_first_question_each_time() -> None:
    verb = WORDS["explain"]
    lengths = [len(outline_of(verb, place)) for place in range(7)]
    assert lengths == [4, 3, 2, 1, 0, 0, 0]
    assert [verb.outline[place:] for place in range(7)] == [outline_of(verb, place) for place in range(7)]


def test_every_command_word_has_an_outline_of_short_questions() -> None:
    assert len(WORDS) == 24
    assert [] == [word.id for word in WORDS.values() if not 2 <= len(word.outline) <= 5]
    asked = [question for word in WORDS.values() for question in word.outline]
    assert [] == [question for question in asked if len(question.split()) > 15]
    assert 60 <= len(set(asked))


def test_a_command_word_may_go_without_an_outline() -> None:
    plain = CommandWord(id="show", word="Show", asks="that", not_enough="this", ideas="one", model="That.", near_miss="This.")
    assert () == outline_of(plain, 0)
