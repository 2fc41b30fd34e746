"""Definitions that define nothing are told, and words for searching that lead to the wrong entry."""

from __future__ import annotations

import pytest

from generator.course.definitions import doubtful_definitions
from generator.course.glossaries import Word


def word(name: str, means: str, *also: str) -> Word:
    return Word(id=name.replace(" ", "_"), word=name, means=means, also=also)


@pytest.mark.parametrize("means", ["Aridity index.", "The aridity index of a place.", "An aridity index"])
def test_definition_that_repeats_its_word_is_told(means: str) -> None:
    (finding,) = doubtful_definitions([word("aridity index", means)])
    assert (("words", 0, "means"), "repeated_word") == (finding.path, finding.rule)


@pytest.mark.parametrize("means", ["Precipitation over what could evaporate.", "Part of an index; the aridity index of a desert is small.", "Aridity indexes differ."])
def test_definition_in_other_words_is_not(means: str) -> None:
    assert [] == list(doubtful_definitions([word("aridity index", means)]))


def test_word_for_searching_with_an_entry_of_its_own_is_told() -> None:
    (finding,) = doubtful_definitions([word("food web", "All feeding links.", "feeding links", "Food chain"), word("food chain", "One way through a web.")])
    assert (("words", 0, "also", 1), '"Food chain", which has one', "two_entries") == (finding.path, finding.found, finding.rule)
