"""With scripts off a page can still be read, chart, question and answer included."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

pytestmark = pytest.mark.browser


def test_text_chart_and_answer_are_there(sample_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{sample_site.as_uri()}/biome/temperate-grassland.html", java_script_enabled=False)
    expect(page.get_by_role("heading", level=1)).to_contain_text("Temperate grassland")
    expect(page.get_by_role("img", name="Climate of Harrow Plain")).to_be_visible()
    answer = page.get_by_text("The quagga answer is 327 mm.")
    expect(answer).to_be_hidden()
    page.get_by_text("Answer and working").click()
    expect(answer).to_be_visible()


def test_the_way_to_every_other_page_is_there(sample_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{sample_site.as_uri()}/index.html", java_script_enabled=False)
    page.locator(".md-tabs").get_by_role("link", name="Biomes and climate").click()
    page.locator("article").get_by_role("link", name="Temperate grassland").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("Temperate grassland")
