"""The index leads from a reader's word to the page, names the sort of each page, and puts the thing itself forward."""

from __future__ import annotations

from typing import Any

import pytest

from generator.pages.search_notes import SearchNotes, Term
from generator.publish.finding import findable, formulas, spellings

ROTTING = Term(location="words.html#word-decomposer", word="decomposer", means="What breaks down dead matter.", also=("rotting", "decay"))
NOTES = SearchNotes(
    sorts={"words.html": "words", "biome/a.html": "record: biome", "topics/t/index.html": "topic"},
    named=frozenset({"biome/a.html", "topics/t/index.html"}), terms=(ROTTING,),
)  # fmt: skip


def entry(location: str, title: str, text: str) -> dict[str, Any]:
    return {"location": location, "title": title, "text": text}


def found(*entries: dict[str, Any]) -> dict[str, dict[str, Any]]:
    index = findable({"config": {"fields": {}, "lang": ["en"]}, "docs": list(entries)}, NOTES)
    return {one["location"]: one for one in index["docs"]}


def test_a_term_is_an_entry_of_its_own_with_its_everyday_words() -> None:
    term = found(entry("words.html", "Words", "decomposer What breaks down dead matter."))[ROTTING.location]
    assert ("decomposer", "What breaks down dead matter.", ["word"]) == (term["title"], term["text"], term["tags"])
    assert "rotting" in term["names"]


def test_the_page_of_words_does_not_say_the_terms_a_second_time() -> None:
    assert "" == found(entry("words.html", "Words", "decomposer What breaks down dead matter."))["words.html"]["text"]


@pytest.mark.parametrize(
    ("section", "leads"),
    [
        pytest.param(entry("biome/a.html#words", "Words", "<p>decomposer: what breaks down</p>"), True, id="listed"),
        pytest.param(entry("biome/a.html#why", "Why decomposers are slow", ""), True, id="in a title"),
        pytest.param(entry("biome/a.html#x", "Soil", "Decomposers, a decomposer and decomposers."), True, id="said often"),
        pytest.param(entry("biome/a.html#x", "Soil", "A decomposer."), False, id="said once"),
    ],
)
def test_everyday_words_lead_to_the_pages_of_a_term(section: dict[str, Any], leads: bool) -> None:
    page = found(entry("biome/a.html", "Tundra", "cold"), section)["biome/a.html"]
    assert leads == ("rotting" in page.get("also", ""))


def test_a_record_shows_its_sort_and_is_found_by_its_name() -> None:
    page = found(entry("biome/a.html", "Tundra", "cold"))["biome/a.html"]
    assert (["record: biome"], "Tundra") == (page["tags"], page["names"])


def test_a_topic_comes_before_records_that_are_called_like_it() -> None:
    assert "Energy, Energy" == found(entry("topics/t/index.html", "Energy", ""))["topics/t/index.html"]["names"]


def test_a_head_that_the_theme_cut_in_two_is_one_entry() -> None:
    index = found(entry("biome/a.html", "Tundra", "above"), entry("biome/a.html#tundra", "Tundra", "below"))
    assert "above below" == index["biome/a.html"]["text"]
    assert "biome/a.html#tundra" not in index


def test_sources_of_a_record_are_left_to_the_page_of_sources() -> None:
    assert "biome/a.html#sources" not in found(entry("biome/a.html", "Tundra", ""), entry("biome/a.html#sources", "Sources", "Allen"))


@pytest.mark.parametrize(
    ("word", "other"),
    [
        ("fertiliser", ["fertilizer"]), ("salinisation", ["salinization"]), ("vapour", ["vapor"]), ("sulfur", ["sulphur"]),
        ("sulphate", ["sulfate"]), ("kilometres", ["kilometers"]), ("grey", ["gray"]), ("otherwise", []), ("rise", []), ("organism", []),
    ],
)  # fmt: skip
def test_spellings_of_both_sides_of_the_ocean(word: str, other: list[str]) -> None:
    assert other == list(spellings(word))


def test_substances_are_found_by_their_formula_as_often_as_they_are_named() -> None:
    assert {"CO2": 2, "NO3": 1} == dict(formulas("Carbon dioxide, nitrate; carbon dioxide. Nitrated ammonias are none."))


def test_a_page_says_a_word_more_often_than_one_that_names_it_once() -> None:
    once, often = (found(entry("biome/a.html", "A", "nitrate " * count))["biome/a.html"]["also"] for count in (1, 5))
    assert (1, 5) == (once.split().count("NO3"), often.split().count("NO3"))
