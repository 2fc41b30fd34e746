"""The route on paper and under forced colours: bars, names and axis stay to be seen."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page

pytestmark = pytest.mark.browser
FOREST = "biome/temperate-deciduous-forest.html"
BAR = "getComputedStyle(document.querySelector('.route .bars'), '::before').backgroundColor"
GROUND = "getComputedStyle(document.body).backgroundColor"


def test_paper_has_dark_names_and_a_dark_axis_whatever_the_screen_had(built_site: Path, opened: Callable[..., Page]) -> None:
    found = []
    for scheme in ("light", "dark"):
        page = opened(f"{built_site.as_uri()}/{FOREST}", color_scheme=scheme)
        page.emulate_media(media="print", color_scheme=scheme)
        name = page.locator(".route .named").first.evaluate("one => getComputedStyle(one).color")
        axis = page.locator(".route .bars").evaluate("one => getComputedStyle(one).borderBottomColor")
        found.append((name, axis))
    assert [("rgb(154, 63, 12)", "rgb(38, 40, 43)")] * 2 == found


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_bars_stand_out_under_forced_colours(built_site: Path, opened: Callable[..., Page], scheme: str) -> None:
    page = opened(f"{built_site.as_uri()}/{FOREST}", color_scheme=scheme, forced_colors="active")
    assert page.evaluate(BAR) != page.evaluate(GROUND)
    assert page.locator(".route i").first.evaluate("one => getComputedStyle(one).backgroundColor") != page.evaluate(GROUND)
