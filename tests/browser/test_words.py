"""Words in running text tell their meaning under the pointer, on focus and on a tap; without scripts they lead to the list."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.browser.watch import violations

pytestmark = pytest.mark.browser
FOREST = "biome/temperate-deciduous-forest.html"


def test_focus_tells_the_meaning_and_escape_takes_it_away(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{FOREST}")
    word = page.locator("a.word").first
    word.focus()
    note = page.get_by_role("tooltip")
    expect(note).to_have_text(word.get_attribute("data-means") or "-")
    expect(word).to_have_attribute("aria-describedby", "word-note")
    assert [] == violations(page)
    page.keyboard.press("Escape")
    expect(note).to_be_hidden()
    expect(word).to_be_focused()
    page.keyboard.press("Enter")
    page.wait_for_url(re.compile(r"words\.html#word-"))


def test_the_note_stays_while_the_pointer_is_on_it(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{FOREST}")
    page.locator("a.word").first.hover()
    page.get_by_role("tooltip").hover()
    expect(page.get_by_role("tooltip")).to_be_visible()
    page.locator("h1").hover()
    expect(page.get_by_role("tooltip")).to_be_hidden()


def test_a_tap_tells_and_a_second_one_leads_on(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{FOREST}", viewport={"width": 390, "height": 800}, has_touch=True)
    for word in page.locator("a.word").all():
        word.tap()
        expect(page.get_by_role("tooltip")).to_be_visible()
        box = page.get_by_role("tooltip").bounding_box()
        assert box and box["x"] >= 0 and box["x"] + box["width"] <= 390
    page.locator("a.word").last.tap()
    page.wait_for_url(re.compile(r"words\.html#word-"))


def test_without_scripts_a_word_leads_to_the_list(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{FOREST}", java_script_enabled=False)
    page.locator("a.word").first.click()
    page.wait_for_url(re.compile(r"words\.html#word-"))
