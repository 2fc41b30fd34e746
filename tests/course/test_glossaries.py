"""Entries of the vocabulary: an example must be recognised, and the search knows more words than an answer repeats."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from generator.course.glossaries import VocabularyFile, Word


def word(term: str, example: str) -> Word:
    return Word(id="a_word", word=term, means="Something.", example=example)


@pytest.mark.parametrize(
    ("term", "example"),
    [
        ("egestion", "An Egested pellet"), ("windward", "The side that gets the wind"), ("growing season", "Grass that grows"),
        ("plankton", "Phytoplankton of a bay"), ("turnover time of biomass", "Ten times"),
    ],
)  # fmt: skip
def test_example_that_holds_its_word_or_a_part_of_it_is_refused(term: str, example: str) -> None:
    with pytest.raises(ValidationError, match="example"):
        word(term, example)


@pytest.mark.parametrize(("term", "example"), [("egestion", "A cow drops dung"), ("lee", "Behind a hedge"), ("growing season", "May to June")])
def test_example_in_other_words_is_taken(term: str, example: str) -> None:
    assert example == word(term, example).example


def test_two_words_have_no_example_in_common() -> None:
    words = [{"id": name, "word": name, "means": "Something.", "example": "The same case"} for name in ("peat", "silt")]
    with pytest.raises(ValidationError):
        VocabularyFile.model_validate({"words": words})
    VocabularyFile.model_validate({"words": [one | {"example": None} for one in words]})


def test_words_for_the_search_alone_follow_everyday_words() -> None:
    entry = Word(id="assimilation", word="assimilation", means="Building it in.", also=("making part of itself",), search_only=("uptake",))
    assert ("making part of itself", "uptake") == entry.looked_for_as
