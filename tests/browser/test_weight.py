"""Record pages on the wire and on the screen: few bytes, nothing that moves while a page loads, words as soon as in the theme alone.

Bytes are counted and times compared with each other; no test asks for a number of seconds.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from statistics import median

import pytest
from playwright.sync_api import Browser, Page

from tests.benchmarks.bare_theme import bare_site, record_pages
from tests.browser.conftest import SUB_PATH
from tests.browser.wire import Scales, serving

pytestmark = pytest.mark.browser
FIRST, WARM = 150_000, 40_000
"""Most bytes for a reader who comes with an empty cache, and for one who comes from another record's page."""
LATER_THAN_BARE = 1.3
SLOWED = 4
LOADS = 5
SCREENS = {"phone": {"width": 390, "height": 800}, "laptop": {"width": 1300, "height": 900}}
NOTE_SHIFTS = """
window.shifts = []
new PerformanceObserver(list => {
  for (const one of list.getEntries()) {
    window.shifts.push(`${one.value.toFixed(4)} ${one.sources.map(source => source.node?.className || source.node?.nodeName).join(', ')}`)
  }
}).observe({ type: 'layout-shift', buffered: true })
"""
PAINTED = "() => performance.getEntriesByName('first-contentful-paint').length"


@pytest.fixture(scope="module")
def address(built_site: Path) -> Iterator[str]:
    """The site on a server that compresses."""
    with serving(built_site) as found:
        yield found


def test_every_record_page_is_light_and_the_heaviest_is_light_for_who_comes_first(built_site: Path, address: str, browser: Browser) -> None:
    names = [f"{name}.html" for name in record_pages(built_site)]
    scales = Scales(browser.new_context().new_page())
    scales.weigh(f"{address}/{names[-1]}")
    warm = {name: sum(scales.weigh(f"{address}/{name}").values()) for name in names}
    assert len(names) > 30 and {} == {name: size for name, size in warm.items() if size > WARM}
    first = Scales(browser.new_context().new_page()).weigh(f"{address}/{max(warm, key=lambda name: warm[name])}")
    assert sum(first.values()) <= FIRST, first


@pytest.mark.parametrize("screen", SCREENS)
def test_nothing_on_a_record_page_moves_while_it_loads_or_is_scrolled_through(built_site: Path, address: str, browser: Browser, screen: str) -> None:
    page = browser.new_context(viewport=SCREENS[screen]).new_page()
    page.add_init_script(NOTE_SHIFTS)
    moved = {}
    for name in record_pages(built_site):
        page.goto(f"{address}/{name}.html")
        scroll_through(page)
        if shifts := page.evaluate("window.shifts"):
            moved[name] = shifts
    assert {} == moved


def scroll_through(page: Page) -> None:
    for _ in range(4):
        page.mouse.wheel(0, 4000)
        page.evaluate("() => new Promise(done => requestAnimationFrame(() => setTimeout(done)))")


def test_what_moves_is_noticed(browser: Browser) -> None:
    page = browser.new_context(viewport=SCREENS["phone"]).new_page()
    page.add_init_script(NOTE_SHIFTS)
    page.route("**/*", lambda route: route.fulfill(content_type="text/html", body="<p>above</p><p>Text that is pushed down.</p>"))
    page.goto("http://localhost/")
    page.evaluate("() => new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))")
    page.evaluate("() => { document.querySelector('p').style.height = '300px' }")
    page.wait_for_function("() => window.shifts.length")


def test_the_heaviest_page_shows_its_first_words_about_as_soon_as_the_theme_alone_shows_them(
    built_site: Path, address: str, browser: Browser, tmp_path: Path
) -> None:
    heaviest = max(record_pages(built_site), key=lambda name: (built_site / f"{name}.html").stat().st_size)
    work = built_site.parents[len(SUB_PATH.split("/"))] / "work"
    with serving(bare_site(work / "pages", heaviest, tmp_path)) as bare:
        pairs = [(first_words(browser, f"{address}/{heaviest}.html"), first_words(browser, f"{bare}/index.html")) for _ in range(LOADS)]
    ours, theirs = (median(times) for times in zip(*pairs, strict=True))
    assert ours <= LATER_THAN_BARE * theirs, pairs


def first_words(browser: Browser, url: str) -> float:
    """When the first words of a page stand on the screen [ms], with an empty cache and a slowed processor."""
    context = browser.new_context(viewport=SCREENS["phone"])
    page = context.new_page()
    context.new_cdp_session(page).send("Emulation.setCPUThrottlingRate", {"rate": SLOWED})
    page.goto(url)
    page.wait_for_function(PAINTED)
    found = page.evaluate("performance.getEntriesByName('first-contentful-paint')[0].startTime")
    context.close()
    return float(found)
