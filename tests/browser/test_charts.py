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
