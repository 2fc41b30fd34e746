"""Light, dark and paper."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from figures import palette

pytestmark = pytest.mark.browser
PAGE = "biome/temperate-grassland.html"


def rgb(colour: str) -> str:
    return f"rgb({', '.join(str(int(colour[start:start + 2], 16)) for start in (1, 3, 5))})"


def chart_colour(page: Page) -> str:
    return page.locator("figure.chart svg rect").evaluate("bar => getComputedStyle(bar).fill")


def colour(page: Page, selector: str, name: str = "color") -> str:
    return page.locator(selector).first.evaluate("(element, name) => getComputedStyle(element)[name]", name)


@pytest.mark.parametrize(("scheme", "colours"), [("light", palette.LIGHT), ("dark", palette.DARK)])
def test_charts_follow_the_scheme_of_the_system(
    sample_site: Path, opened: Callable[..., Page], scheme: str, colours: dict[str, str]
) -> None:
    page = opened(f"{sample_site.as_uri()}/{PAGE}", color_scheme=scheme)
    assert rgb(colours["water"]) == chart_colour(page)


@pytest.mark.parametrize(("scheme", "link"), [("light", "#00605a"), ("dark", "#5fd6c6")])
def test_our_colours_win_over_the_themes(
    sample_site: Path, opened: Callable[..., Page], scheme: str, link: str
) -> None:
    page = opened(f"{sample_site.as_uri()}/{PAGE}", color_scheme=scheme)
    assert rgb(link) == colour(page, "article p a")
    assert rgb(palette.PAGE[scheme][0]) == colour(page, ".md-header", "backgroundColor")


def test_charts_follow_the_toggle_and_the_choice_is_kept(sample_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{sample_site.as_uri()}/{PAGE}", color_scheme="light")
    page.get_by_title("Switch to dark colours").click()
    expect(page.locator("body")).to_have_attribute("data-md-color-scheme", "slate")
    assert rgb(palette.DARK["water"]) == chart_colour(page)
    page.reload()
    assert rgb(palette.DARK["water"]) == chart_colour(page)


def test_paper_is_light_even_from_the_dark_scheme(sample_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{sample_site.as_uri()}/{PAGE}", color_scheme="dark")
    page.emulate_media(media="print")
    assert rgb(palette.LIGHT["water"]) == chart_colour(page)
    assert ["rgb(0, 0, 0)"] * 3 == [colour(page, selector) for selector in ("article h1", "article p", "article td")]
    assert "rgb(255, 255, 255)" == colour(page, "body", "backgroundColor")


def test_answers_are_not_printed_unless_asked_for(sample_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{sample_site.as_uri()}/{PAGE}")
    page.evaluate("document.querySelectorAll('details').forEach(details => { details.open = true })")
    answer = page.get_by_text("The quagga answer is 327 mm.")
    expect(answer).to_be_visible()
    page.emulate_media(media="print")
    expect(answer).to_be_hidden()
    page.evaluate("document.body.classList.add('with-answers')")
    expect(answer).to_be_visible()


def test_paper_leaves_out_what_only_a_screen_needs(sample_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{sample_site.as_uri()}/{PAGE}")
    page.emulate_media(media="print")
    for selector in (".md-header", ".md-footer", ".md-sidebar--primary", ".md-sidebar--secondary"):
        expect(page.locator(selector)).to_be_hidden()
    expect(page.locator("article h1")).to_be_visible()
