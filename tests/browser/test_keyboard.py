"""Everything in the frame of a page can be reached and used with the keyboard alone, on wide and on narrow pages."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser
PAGE = "biome/temperate-grassland.html"
NARROW = {"width": 320, "height": 640}
FOCUSED = """() => {
  const element = document.activeElement
  return element.classList[0] + '|' + (element.getAttribute('aria-label') || element.innerText || '').trim()
}"""


def tab_stops(page: Page, number: int) -> list[str]:
    stops = []
    for _ in range(number):
        page.keyboard.press("Tab")
        stops.append(page.evaluate(FOCUSED))
    return stops


def test_the_first_stop_skips_to_the_content(sample_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{sample_site.as_uri()}/{PAGE}")
    assert ["md-skip|Skip to content"] == tab_stops(page, 1)
    page.keyboard.press("Enter")
    assert page.url.endswith("#temperate-grassland")


def test_palette_and_search_are_among_the_first_stops(sample_site: Path, opened: Callable[..., Page]) -> None:
    stops = tab_stops(opened(f"{sample_site.as_uri()}/{PAGE}"), 5)
    assert [True] * 2 == [any(word in stop for stop in stops) for word in ("Switch to dark", "|Search")]


def test_the_palette_changes_with_the_space_bar(sample_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{sample_site.as_uri()}/{PAGE}", color_scheme="light")
    for _ in range(5):
        page.keyboard.press("Tab")
        if "Switch to" in page.evaluate(FOCUSED):
            break
    page.keyboard.press("ArrowDown")
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "slate")


def test_a_search_is_made_from_start_to_end(sample_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{sample_site.as_uri()}/index.html")
    page.keyboard.press("/")
    page.keyboard.type("haymaking")
    expect(page.locator(".md-search-result__item").first).to_be_visible()
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Enter")
    expect(page.locator("h1")).to_contain_text("Temperate grassland")


@pytest.mark.parametrize("key", ["Enter", "Space"])
def test_the_navigation_of_a_narrow_page_opens(sample_site: Path, opened: Callable[..., Page], key: str) -> None:
    page = opened(f"{sample_site.as_uri()}/{PAGE}", viewport=NARROW)
    navigation = page.get_by_role("button", name="Pages")
    navigation.focus()
    page.keyboard.press(key)
    expect(page.get_by_role("button", name="Pages", expanded=True)).to_have_count(1)
    expect(page.locator(".md-nav").get_by_role("link", name="Biomes and climate")).to_be_in_viewport()
    page.keyboard.press("Escape")
    expect(page.get_by_role("button", name="Pages", expanded=False)).to_be_focused()


def test_a_wide_page_needs_no_buttons_to_open_what_is_open(sample_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{sample_site.as_uri()}/{PAGE}", viewport={"width": 1300, "height": 900})
    expect(page.locator("[data-opens]")).to_have_count(2)
    expect(page.get_by_role("button", name="Pages")).to_have_count(0)
    expect(page.get_by_role("button", name="Search")).to_have_count(0)


def test_the_search_of_a_narrow_page_opens_with_the_cursor_in_it(
    sample_site: Path, opened: Callable[..., Page]
) -> None:
    page = opened(f"{sample_site.as_uri()}/{PAGE}", viewport=NARROW)
    page.get_by_role("button", name="Search").focus()
    page.keyboard.press("Enter")
    expect(page.locator("#__search")).to_be_checked()
    expect(page.get_by_role("textbox", name="Search")).to_be_focused()


def test_the_closed_navigation_of_a_narrow_page_takes_no_focus(sample_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{sample_site.as_uri()}/{PAGE}", viewport=NARROW)
    page.keyboard.press("Tab")
    seen = []
    for _ in range(12):
        page.keyboard.press("Tab")
        seen.append(page.evaluate("!!document.activeElement.closest('.md-sidebar--primary')"))
    assert [False] * 12 == seen


def test_a_table_wider_than_the_page_scrolls_by_keyboard(sample_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{sample_site.as_uri()}/{PAGE}", viewport=NARROW)
    box = page.locator(".md-typeset__scrollwrap")
    box.focus()
    page.keyboard.press("ArrowRight")
    # asked anew from outside: a condition that the page itself evaluates again would break its security policy
    for _ in range(50):
        if scrolled := box.evaluate("element => element.scrollLeft") > 0:
            break
        page.wait_for_timeout(100)
    assert scrolled


def test_a_table_that_fits_is_no_stop(sample_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{sample_site.as_uri()}/{PAGE}", viewport={"width": 1300, "height": 900})
    assert page.locator(".md-typeset__scrollwrap").get_attribute("tabindex") is None
