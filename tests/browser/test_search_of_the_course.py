"""What students type into the search of the whole course, from its folder: the right page is among the first three results."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.browser.search_queries import QUERIES, first_results
from tests.browser.watch import Watch, violations

pytestmark = pytest.mark.browser


def test_each_query_finds_its_page_among_the_first_three_results(built_site: Path, watched: Callable[..., Watch]) -> None:
    assert len(QUERIES) >= 60
    page = watched(built_site.as_uri()).open("index.html")
    page.get_by_role("textbox", name="Search").click()
    missed = []
    for asks, finds in QUERIES:
        shown = [address for addresses in first_results(page, asks) for address in addresses]
        if f"{built_site.as_uri()}/{finds}" not in shown:
            missed.append((asks, finds, shown))
    assert [] == missed


def test_the_index_stays_below_one_megabyte(built_site: Path) -> None:
    assert (built_site / "search" / "search_index.js").stat().st_size < 1_000_000


def test_teachers_marking_and_workings_are_not_in_the_index(built_site: Path) -> None:
    index = (built_site / "search" / "search_index.js").read_text("utf-8")
    assert "Mark these answers first" not in index
    assert "The teacher's marking" not in index
    assert "Method: " not in index


@pytest.mark.parametrize("width", [390, 1200])
@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("query", ["rotting", "zzzz"])
def test_axe_finds_nothing_in_the_open_search(
    built_site: Path, watched: Callable[..., Watch], scheme: str, width: int, query: str
) -> None:
    page = watched(built_site.as_uri(), color_scheme=scheme, viewport={"width": width, "height": 800}).open("index.html")
    if width == 390:
        page.get_by_role("button", name="Search").click()
    page.get_by_role("textbox", name="Search").press_sequentially(query)
    expect(page.locator(".md-search-result__meta")).to_contain_text("matching document", timeout=15_000)
    page.wait_for_timeout(500)  # the theme fades its results in
    assert [] == violations(page)
