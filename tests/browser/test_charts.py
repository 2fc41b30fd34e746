"""Every chart of the built site in the browser, folded away or not: no label overlaps another, leaves its drawing or is too small."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page

from tests.figures.measure import small_texts, text_violations

pytestmark = pytest.mark.browser


@pytest.mark.parametrize("width", [390, 1300])
def test_no_label_overlaps_another_leaves_the_drawing_or_is_too_small(built_site: Path, opened: Callable[..., Page], width: int) -> None:
    page = opened(f"{built_site.as_uri()}/index.html", viewport={"width": width, "height": 900})
    found, charts = [], 0
    for file in sorted(built_site.rglob("*.html")):
        page.goto(file.as_uri())
        charts += page.locator("svg[role='img']").count()
        page.evaluate("document.querySelectorAll('details').forEach(details => { details.open = true })")
        found += [f"{file.name}: {violation}" for violation in (*text_violations(page), *small_texts(page))]
    assert found == []
    assert charts > 20


_SHOWN = """
() => [...document.querySelectorAll(".drawing")].map((drawing) => ({
  name: drawing.getAttribute("aria-label"),
  both: drawing.classList.contains("both"),
  shown: [...drawing.querySelectorAll("svg")].map((svg) => svg.getBoundingClientRect().width > 0),
  scrolls: drawing.scrollWidth > drawing.clientWidth,
}))
"""


def test_on_a_phone_no_chart_scrolls_and_no_letter_of_one_is_smaller_than_11_px(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/index.html", viewport={"width": 360, "height": 800})
    found, charts = [], 0
    for file in sorted(built_site.rglob("*.html")):
        page.goto(file.as_uri())
        page.evaluate("document.querySelectorAll('details').forEach(details => { details.open = true })")
        drawings = page.evaluate(_SHOWN)
        charts += len(drawings)
        found += [f"{file.name}: {drawing['name']} scrolls" for drawing in drawings if drawing["scrolls"]]
        found += [f"{file.name}: {drawing['name']} shows {sum(drawing['shown'])} drawings" for drawing in drawings if sum(drawing["shown"]) != 1]
        found += [f"{file.name}: {small}" for small in small_texts(page)]
    assert found == []
    assert charts > 100


@pytest.mark.parametrize("width, media, second", [(390, "screen", True), (360, "screen", True), (1300, "screen", False), (390, "print", False)])
def test_of_two_drawings_a_phone_shows_the_narrow_one_without_scrolling_and_paper_never(
    built_site: Path, opened: Callable[..., Page], width: int, media: str, second: bool
) -> None:
    page = opened(f"{built_site.as_uri()}/biome/savanna.html", viewport={"width": width, "height": 900})
    page.emulate_media(media=media)
    both = [drawing for drawing in page.evaluate(_SHOWN) if drawing["both"]]
    assert both
    assert all([not second, second] == drawing["shown"] for drawing in both)
    assert not second or not any(drawing["scrolls"] for drawing in both)
