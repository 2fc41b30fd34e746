"""The search, from a folder and from a web server."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.watch import Watch, violations

pytestmark = pytest.mark.browser


@pytest.fixture
def ask(sample_site: Path, address: Callable[[Path], str], watched: Callable[..., Watch]) -> Callable[[str], Page]:
    """Type a query into the search of the home page, and wait for its outcome."""

    def query(text: str) -> Page:
        page = watched(address(sample_site)).open("index.html")
        page.get_by_role("textbox", name="Search").press_sequentially(text)
        expect(page.locator(".md-search-result__meta")).to_contain_text("matching document")
        return page

    return query


def titles(page: Page) -> list[str]:
    return page.locator(".md-search-result__item h1, .md-search-result__item h2").all_inner_texts()


@pytest.mark.parametrize(
    ("query", "found"),
    [
        pytest.param("drought", "Temperate grassland", id="a word of the text"),
        pytest.param("haymaking", "Temperate grassland", id="a word of a table"),
        pytest.param("grasses", "Nitrogen in Wend Hollow", id="a word of cells that touch in the source"),
        pytest.param("evapo", "Temperate grassland", id="the beginning of a word"),
        pytest.param("melted", "Temperate grassland", id="another form of a word"),
        pytest.param("CO2", "Cycles of matter", id="a formula with tags in the text"),
        pytest.param("N2O", "Cycles of matter", id="a formula with Unicode indices in the text"),
        pytest.param("N₂O", "Cycles of matter", id="a formula typed with an index"),
        pytest.param("NH4+", "Nitrogen in Wend Hollow", id="an ion"),
        pytest.param("NO₃⁻", "Nitrogen in Wend Hollow", id="an ion typed with indices"),
    ],
)
def test_is_found(ask: Callable[[str], Page], query: str, found: str) -> None:
    expect(ask(query).locator(".md-search-result__list")).to_contain_text(found)


@pytest.mark.parametrize("query", ["quagga", "month by month answer is added"])
def test_answers_are_not_shown(ask: Callable[[str], Page], query: str) -> None:
    page = ask(query)
    assert "quagga" not in page.locator(".md-search-result").inner_text()
    assert "Added" not in page.locator(".md-search-result").inner_text()


def test_a_word_of_answers_only_is_not_found(ask: Callable[[str], Page]) -> None:
    expect(ask("quagga").locator(".md-search-result__meta")).to_have_text("No matching documents")


def test_a_result_opens_its_page(ask: Callable[[str], Page]) -> None:
    page = ask("haymaking")
    page.locator(".md-search-result__link").first.click()
    expect(page.locator("h1")).to_contain_text("Temperate grassland")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_with_results_shown(sample_site: Path, watched: Callable[..., Watch], scheme: str) -> None:
    page = watched(sample_site.as_uri(), color_scheme=scheme).open("index.html")
    page.get_by_role("textbox", name="Search").press_sequentially("nitrogen")
    expect(page.locator(".md-search-result__item").first).to_be_visible()
    page.wait_for_timeout(400)  # the theme fades its results in, and half-faded text has less contrast
    assert [] == violations(page)


def test_the_search_complains_of_nothing_and_asks_nobody(
    sample_site: Path, address: Callable[[Path], str], watched: Callable[..., Watch]
) -> None:
    watch = watched(address(sample_site))
    page = watch.open("cycle/wend-hollow-nitrogen.html")
    page.get_by_role("textbox", name="Search").press_sequentially("nitrogen")
    expect(page.locator(".md-search-result__item").first).to_be_visible()
    assert ([], []) == (watch.complaints, watch.strangers)


def test_a_result_says_which_sort_of_page_it_is(ask: Callable[[str], Page]) -> None:
    expect(ask("haymaking").locator(".md-search-result__item").first.locator(".md-tag")).to_have_text("record: biome")


def test_nothing_found_tells_what_to_try_and_leads_on_by_keyboard(ask: Callable[[str], Page]) -> None:
    page = ask("quagga")
    expect(page.locator(".search-help")).to_contain_text("fewer letters")
    page.locator(".search-help a").first.focus()
    page.keyboard.press("Enter")
    expect(page.locator("h1")).to_contain_text("Cycles of matter")


def test_the_way_on_is_not_shown_beside_results(ask: Callable[[str], Page]) -> None:
    expect(ask("haymaking").locator(".search-help")).to_be_hidden()


def test_engine_and_index_come_when_a_reader_turns_to_the_search(sample_site: Path, address: Callable[[Path], str], watched: Callable[..., Watch]) -> None:
    watch = watched(address(sample_site))
    late = []
    watch.page.on("request", lambda request: late.append(request.url.rpartition("/")[2]))
    page = watch.open("index.html")
    heavy = {"search-engine.js", "search_index.js"}
    assert not heavy & set(late)
    page.get_by_role("textbox", name="Search").focus()
    expect(page.locator(".md-search-result__meta")).to_have_text("Type to start searching")
    assert heavy <= set(late)


def test_an_address_with_a_query_opens_the_search(sample_site: Path, address: Callable[[Path], str], watched: Callable[..., Watch]) -> None:
    page = watched(address(sample_site)).open("index.html?q=haymaking")
    expect(page.locator(".md-search-result__item").first).to_be_visible()
