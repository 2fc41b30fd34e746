"""Vague words: what the file says is checked at its place, and the demo's list asks without judging."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from generator.course.vague_words import JUDGING, VagueWord, wrong_vague_words
from tests.content.patches import ROOT, Patch
from tests.course.test_library import library as library_of
from tests.kinds.small_records import library

ONE = "vague_words: [{words: [stuff], ask: Name it., unless: ['nitr*']}]\n"


def entry(*words: str, topics: tuple[str, ...] = ()) -> VagueWord:
    return VagueWord(words=words, ask="Which one?", topics=topics)


def test_a_course_without_the_file_has_no_vague_words(tmp_path: Path) -> None:
    assert () == library_of(tmp_path).vague_words


def test_the_teacher_s_file_is_what_the_library_holds(tmp_path: Path) -> None:
    (found,) = library_of(tmp_path, Patch(add={"vague_words.yaml": ONE})).vague_words
    assert (("stuff",), "Name it.", ("nitr*",), "from memory") == (found.words, found.ask, found.unless, found.status)


@pytest.mark.parametrize(
    ("words", "fields"),
    [
        ((entry("stuff"), entry("things", "Stuff")), [("vague_words", 1, "words", 1)]),
        ((entry("stuff", topics=("biomes",)), entry("stuff", topics=("energy",))), []),
        ((entry("stuff", topics=("biomes",)), entry("stuff", topics=("energy", "biomes"))), [("vague_words", 1, "words", 0)]),
        ((entry("stuff", topics=("biomes",)), entry("stuff")), [("vague_words", 1, "words", 0)]),
        ((entry("stuff", topics=("biome",)),), [("vague_words", 0, "topics", 0)]),
    ],
)
def test_a_spelling_asks_one_question_in_each_topic(words: tuple[VagueWord, ...], fields: list[tuple[str | int, ...]]) -> None:
    assert fields == [finding.path for finding in wrong_vague_words(words, ("biomes", "energy"))]


def test_the_demo_asks_about_more_than_a_hundred_expressions() -> None:
    """Those that are commonly named: a teacher may take any of them out again."""
    spellings = {word for one in library().vague_words for word in one.words}
    assert len(library().vague_words) >= 110
    assert spellings >= {"pollution", "affects", "chemicals", "balance of nature", "energy is lost", "traps heat", "over time", "things", "human error", "goes extinct"}


def test_questions_are_short_and_plain() -> None:
    asked = [one.ask for one in library().vague_words]
    assert [] == [ask for ask in asked if len(ask.split()) > 22 or JUDGING.search(ask)]
    assert [] == [ask for ask in asked if not re.match(r"[A-Z]", ask)]


def test_wordings_that_research_describes_name_who_did() -> None:
    named = {one.source for one in library().vague_words if one.source}
    assert named == {"Jeffries, Stanisstreet and Boyes 2001", "Hartley et al. 2011", "Caspar and Balgopal 2018"}


def test_the_entry_that_readme_shows_is_read(tmp_path: Path) -> None:
    blocks = re.findall(r"^```yaml\n(.*?)^```", (ROOT / "README.md").read_text("utf-8"), re.MULTILINE | re.DOTALL)
    (shown,) = (block for block in blocks if block.startswith("vague_words:"))
    (found,) = library_of(tmp_path, Patch(add={"vague_words.yaml": shown})).vague_words
    assert ("chemical", "chemicals") == found.words and found.topics == ("energy",)
