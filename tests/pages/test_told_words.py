"""Words of the vocabulary in running text: linked where they first stand, whole words only, with their meaning."""

from __future__ import annotations

from bs4 import BeautifulSoup

from generator.course.glossaries import Word
from generator.pages.told_words import ToldWords
from tests.pages.rendered import demo_pages, rendered

WORDS = [Word(id="rain", word="rain", means="Water that falls."), Word(id="rain_shadow", word="rain shadow", means="The dry side, as CO2 & <b>.")]


def told(*texts: str) -> list[BeautifulSoup]:
    words = ToldWords("biome/x.md", WORDS)
    return [BeautifulSoup(words.piece(text), "html.parser") for text in texts]


def linked(found: BeautifulSoup) -> list[str]:
    return [word.get_text() for word in found.select("a.word")]


def test_a_word_is_linked_once_on_a_page_with_its_meaning() -> None:
    first, second = told("The rain falls. More rain falls.", "Rain again.")
    assert ["rain"] == linked(first) and [] == linked(second)
    assert "Water that falls." == first.select("a.word")[0]["data-means"]
    assert "../words.html#word-rain" == first.select("a.word")[0]["href"]
    assert "The rain falls. More rain falls." == first.get_text()


def test_the_longest_word_goes_first_and_only_whole_words_count() -> None:
    first, second = told("In the rain shadow.", "A terrain, a rain-fed field; Rains come.")
    assert ["rain shadow"] == linked(first)
    assert ["Rains"] == linked(second)


def test_a_meaning_is_text_whatever_signs_it_holds() -> None:
    (found,) = told("A rain shadow")
    assert "The dry side, as CO2 & <b>." == found.select("a.word")[0]["data-means"]
    assert not found.select("b")


def test_words_of_the_demo_are_told_in_their_pages_only_once() -> None:
    seen = 0
    for page in demo_pages().values():
        words = [str(word["href"]) for word in rendered(page).select("a.word")]
        if page.uri.startswith("topics/"):  # summaries of several records
            continue
        assert len(set(words)) == len(words)
        seen += len(words)
    assert seen > 50
