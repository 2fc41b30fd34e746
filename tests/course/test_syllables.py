"""Syllables by rules of spelling against a pronouncing dictionary."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.course.syllables import syllables

DICTIONARY = Path(__file__).parent / "syllable_counts.txt"


def counts() -> dict[str, set[int]]:
    """The dictionary's counts by word; its head says where they come from."""
    lines = [line.split(": ") for line in DICTIONARY.read_text("utf-8").splitlines() if not line.startswith("#")]
    return {word: {int(count) for count in found.split("/")} for found, words in lines for word in words.split()}


def test_nearly_all_words_of_the_demo_are_counted_as_in_the_dictionary() -> None:
    """Source: CMU Pronouncing Dictionary (status: library); 6 of 856 differ."""
    wrong = [word for word, found in counts().items() if syllables(word) not in found]
    assert len(counts()) > 800
    assert len(wrong) <= 0.01 * len(counts()), wrong


def test_wrong_counts_do_not_all_err_to_one_side() -> None:
    """The sum lies within 1 % of the dictionary's, its nearest count taken where it gives several."""
    nearest = {word: min(found, key=lambda count: (abs(count - syllables(word)), count)) for word, found in counts().items()}
    assert sum(nearest.values()) == pytest.approx(sum(map(syllables, nearest)), rel=0.01)


@pytest.mark.parametrize(
    ("word", "count"),
    [("N2", 1), ("23.4", 1), ("ppm", 1), ("long-run", 2), ("Earth's", 1), ("don’t", 1), ("Harrow", 2), ("PRECIPITATION", 5), ("a", 1)],
)
def test_numbers_formulas_and_parts_joined_by_hyphens(word: str, count: int) -> None:
    """Source: our own rule; a number is one syllable, whatever it is when spoken."""
    assert count == syllables(word)


@pytest.mark.parametrize("word", ["", "-", "é", "’", "ß"])
def test_every_text_has_at_least_one(word: str) -> None:
    assert 1 == syllables(word)
