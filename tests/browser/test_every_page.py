"""What holds for every page of the site, wherever it is opened from."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from bs4 import BeautifulSoup

from tests.browser.watch import Watch, violations
from tests.publish.site_tree import link_problems

pytestmark = pytest.mark.browser
OPEN_ALL = """async () => {
  document.querySelectorAll('details').forEach(details => { details.open = true })
  await new Promise(done => requestAnimationFrame(() => setTimeout(done)))  // `toggle` is told a little later
}"""
EXCLUDED = "data-search-exclude"
WIDE, NARROW = {"width": 1300, "height": 900}, {"width": 400, "height": 800}


def names(site: Path) -> list[str]:
    found = sorted(page.relative_to(site).as_posix() for page in site.rglob("*.html"))
    assert "index.html" in found
    return found


def test_no_page_complains_or_asks_for_anything_outside_its_folder(
    built_site: Path, address: Callable[[Path], str], watched: Callable[..., Watch]
) -> None:
    watch = watched(address(built_site))
    for name in names(built_site):
        watch.open(name)
    assert [] == watch.complaints
    assert [] == watch.strangers


def test_the_watch_notices_a_stranger_an_error_and_a_missing_file(
    tmp_path: Path, watched: Callable[..., Watch]
) -> None:
    (tmp_path / "index.html").write_text(
        "<!doctype html><title>a</title><img alt='' src='missing.png'><img alt='' src='http://127.0.0.1:9/x.png'>"
        "<script>throw new Error('on purpose')</script>"
    )
    watch = watched(tmp_path.as_uri())
    watch.open("index.html")
    assert ["http://127.0.0.1:9/x.png"] == watch.strangers
    assert [True] * 2 == [any(word in said for said in watch.complaints) for word in ("missing.png", "on purpose")]


def test_the_browser_itself_refuses_a_request_out_of_the_folder(
    built_site: Path, watched: Callable[..., Watch]
) -> None:
    watch = watched(built_site.as_uri())
    page = watch.open("index.html")
    page.evaluate("() => { const image = new Image(); image.src = 'http://127.0.0.1:9/x.png'; document.body.append(image) }")
    page.wait_for_timeout(100)
    assert [True] == ["Content Security Policy" in said for said in watch.complaints if said.startswith("error")]
    assert ["failed: http://127.0.0.1:9/x.png csp"] == [said for said in watch.complaints if said.startswith("failed")]


def test_every_link_leads_somewhere_and_every_id_is_unique(built_site: Path) -> None:
    assert [] == link_problems(built_site)


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("size", [WIDE, NARROW], ids=["wide", "narrow"])
def test_axe_finds_nothing_with_every_answer_open(
    built_site: Path, watched: Callable[..., Watch], scheme: str, size: dict[str, int]
) -> None:
    watch = watched(built_site.as_uri(), color_scheme=scheme, viewport=size)
    found = []
    for name in names(built_site):
        page = watch.open(name, settled=False)
        assert {"light": "default", "dark": "slate"}[scheme] == page.locator("body").get_attribute("data-md-color-scheme")
        page.evaluate(OPEN_ALL)
        found += [f"{name}: {violation}" for violation in violations(page)]
    assert [] == found


def test_axe_finds_what_is_wrong_on_a_page_that_is_wrong(tmp_path: Path, watched: Callable[..., Watch]) -> None:
    (tmp_path / "index.html").write_text("<!doctype html><html><title>a</title><main><h1>a</h1><img src='data:,'></main></html>")
    found = violations(watched(tmp_path.as_uri()).open("index.html"))
    assert [True] * 2 == [any(line.startswith(rule) for line in found) for rule in ("image-alt", "html-has-lang")]


def test_every_answer_is_kept_from_the_search(built_site: Path) -> None:
    parts = [
        (name, part)
        for name in names(built_site)
        for part in BeautifulSoup((built_site / name).read_text("utf-8"), "html.parser").select(".answer > :not(summary)")
    ]
    assert len(parts) > 10
    found = [name for name, part in parts if not part.has_attr(EXCLUDED) and not part.find_parent(attrs={EXCLUDED: True})]
    assert [] == found


def test_no_page_is_wider_than_a_phone(built_site: Path, watched: Callable[..., Watch]) -> None:
    # WCAG 2.2, 1.4.10: content reflows at a width of 320 CSS pixels, which is 400 % zoom of 1280.
    watch = watched(built_site.as_uri(), viewport={"width": 320, "height": 640})
    wide = [name for name in names(built_site) if watch.open(name, settled=False).evaluate("document.documentElement.scrollWidth") > 320]
    assert [] == wide
