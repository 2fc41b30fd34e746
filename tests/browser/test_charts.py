"""Every chart of the built site, measured in the browser, those that are folded away too: no label overlaps another or leaves its drawing."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from playwright.sync_api import Page

from tests.figures.measure import text_violations

pytestmark = pytest.mark.browser


@pytest.mark.parametrize("width", [390, 1300])
def test_no_label_overlaps_another_or_leaves_the_drawing(built_site: Path, opened: Callable[..., Page], width: int) -> None:
    page = opened(f"{built_site.as_uri()}/index.html", viewport={"width": width, "height": 900})
    found, charts = [], 0
    for file in sorted(built_site.rglob("*.html")):
        page.goto(file.as_uri())
        charts += page.locator("svg[role='img']").count()
        page.evaluate("document.querySelectorAll('details').forEach(details => { details.open = true })")
        found += [f"{file.name}: {violation}" for violation in text_violations(page)]
    assert found == []
    assert charts > 20
