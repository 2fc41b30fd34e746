"""A topic on one page: columns that are covered and looked under, core ideas that fit a sheet of paper."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.watch import violations
from tests.kinds.small_records import library

pytestmark = pytest.mark.browser
SHEET = "topics/waters/on-one-page.html"
TOPICS = [topic.id for topic in library().course.topics if topic.show]
PAPER = {"width": 710, "height": 1000}
"""What A4 leaves inside margins of one centimetre, in CSS pixels at 96 to the inch, less a line for the page number."""


def test_meanings_are_covered_looked_at_and_shown_again(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{SHEET}")
    rows = page.locator("table.recall tbody tr")
    first = rows.first.locator("td").inner_text()
    page.get_by_role("button", name="Cover the meanings").click()
    expect(page.get_by_role("status").filter(has_text="are covered")).to_be_visible()
    expect(rows.first.locator(".held")).to_be_hidden()
    look = rows.first.get_by_role("button")
    look.focus()
    page.keyboard.press("Enter")
    expect(rows.first.locator(".held")).to_have_text(first)
    expect(look).to_be_focused()
    expect(look).to_have_attribute("aria-expanded", "true")
    page.get_by_role("button", name="Show both").click()
    assert [] == page.locator(".uncover").all()
    assert first == rows.first.locator("td").inner_text()


def test_words_are_covered_too_and_the_page_stays_accessible(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{SHEET}", viewport={"width": 390, "height": 800})
    page.get_by_role("button", name="Cover the words").click()
    expect(page.locator("table.recall tbody th .held").first).to_be_hidden()
    assert [] == violations(page)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_what_is_covered_on_the_screen_stands_on_paper(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{SHEET}")
    page.get_by_role("button", name="Cover the meanings").click()
    page.emulate_media(media="print")
    expect(page.locator("table.recall .held").first).to_be_visible()
    expect(page.locator(".uncover").first).to_be_hidden()


@pytest.mark.parametrize("topic", TOPICS)
def test_core_ideas_fit_one_sheet_of_paper(built_site: Path, opened: Callable[..., Page], topic: str) -> None:
    page = opened(f"{built_site.as_uri()}/topics/{topic.replace('_', '-')}/on-one-page.html", viewport=PAPER)
    page.emulate_media(media="print")
    top = page.locator("h1").bounding_box()
    ideas = page.locator(".sheet").first.bounding_box()
    assert top and ideas
    assert ideas["y"] + ideas["height"] - top["y"] <= PAPER["height"]
