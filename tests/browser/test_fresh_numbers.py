"""Another sum on demand: loaded when asked for, marked by its own key, with help that fades after a worked example."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.watch import Watch

pytestmark = pytest.mark.browser
PAGE = "cycle/wend-hollow-nitrogen.html"


def first_sum(page: Page) -> Locator:
    return page.locator(".check:has(self-check[data-fresh])").first


def middle_of_key(block: Locator) -> str:
    line = block.locator('.feedback li[data-right="true"]')
    low, high = (float(line.get_attribute(f"data-{end}") or "nan") for end in ("low", "high"))
    return repr((low + high) / 2)


def test_another_one_has_other_numbers_and_its_own_key(built_site: Path, watched: Callable[..., Watch]) -> None:
    watch = watched(built_site.as_uri())
    page = watch.open(PAGE)
    block = first_sum(page)
    seen = [block.locator("legend").text_content()]
    for _ in range(8):
        block.get_by_role("button", name="Another one").click()
        expect(block.get_by_role("status")).to_have_text("New numbers stand above.")
        seen.append(block.locator("legend").text_content())
        block.locator("input").fill(middle_of_key(block))
        block.get_by_role("button", name="Check").click()
        expect(block.get_by_role("status")).to_contain_text("✓ Right.")
        wrong = block.locator('.feedback li[data-low][data-right="false"]')
        if wrong.count():
            low, high = (float(wrong.first.get_attribute(f"data-{end}") or "nan") for end in ("low", "high"))
            block.locator("input").fill(repr((low + high) / 2))
            block.get_by_role("button", name="Check").click()
            expect(block.get_by_role("status")).to_contain_text("✗ Not right. You get this number by")
    assert 9 == len(set(seen))
    assert [] == watch.complaints


def test_help_fades_after_a_worked_example(built_site: Path, opened: Callable[..., Page]) -> None:
    block = first_sum(opened(f"{built_site.as_uri()}/{PAGE}"))
    block.get_by_role("button", name="Show one worked out").click()
    expect(block.locator(".answer")).to_have_attribute("open", "")
    expect(block.locator(".helped")).to_have_count(0)
    lengths = []
    for _ in range(2):
        block.get_by_role("button", name="Another one").click()
        expect(block.locator(".answer")).not_to_have_attribute("open", "")
        expect(block.locator(".helped")).to_contain_text("= ?")
        lengths.append((block.locator(".helped").text_content() or "").count("="))
    assert [2, 1] == lengths
    block.get_by_role("button", name="Another one").click()
    expect(block.locator(".helped")).to_have_count(0)


def test_the_script_is_not_loaded_before_it_is_asked_for(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/{PAGE}")
    assert 0 == page.locator("script[src*='assets/fresh/']").count()
    first_sum(page).get_by_role("button", name="Another one").click()
    expect(page.locator("script[src*='assets/fresh/']")).to_have_count(1)


def test_a_script_that_is_missing_leaves_the_sum_as_it_was(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened("about:blank")
    page.route("**/assets/fresh/**", lambda route: route.abort())
    page.goto(f"{built_site.as_uri()}/{PAGE}")
    block = first_sum(page)
    before = block.locator("legend").text_content()
    block.get_by_role("button", name="Another one").click()
    expect(block.get_by_role("status")).to_contain_text("could not be loaded")
    assert before == block.locator("legend").text_content()
