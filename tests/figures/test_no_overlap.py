"""In Chromium, no text of any chart overlaps another or leaves its canvas, whatever the reader's typeface."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser

from figures import Chart
from figures.inline import inline_svg, palette_css
from tests.figures.drawn import drawn
from tests.figures.measure import small_texts, text_violations
from tests.figures.overview_specimens import CHAINS, MAPS, MULTIPLES, STOCKS, TURNOVERS, random_map
from tests.figures.specimens import CLIMATES, CROWDED, FLUX_DIAGRAMS, GRID, LONG_LABELS, PYRAMIDS, random_flux_diagram
from tests.figures.transect_specimens import TRANSECTS, random_transect
from tests.figures.water_specimens import BARS, CURVES, LIGHTS, PRODUCTIONS
from tests.figures.web_specimens import WEBS, random_web

pytestmark = pytest.mark.browser
TYPEFACES = ("inherit", "DejaVu Sans", "Liberation Sans")
SETS = {
    "climates": CLIMATES, "pyramids": PYRAMIDS, "fluxes": FLUX_DIAGRAMS, "crowds": (LONG_LABELS, CROWDED, GRID),
    "multiples": MULTIPLES, "turnovers": TURNOVERS, "maps": MAPS, "chains": CHAINS, "webs": WEBS, "stocks": STOCKS,
    "transects": TRANSECTS, "bars": BARS, "productions": PRODUCTIONS, "lights": LIGHTS, "oxygen": CURVES,
}  # fmt: skip
SETS["narrow"] = tuple(narrow for charts in SETS.values() for chart in charts if (narrow := chart.narrowed()))
AT_RANDOM = tuple(random_flux_diagram(seed) for seed in range(10))
MAPS_AT_RANDOM = tuple(random_map(seed) for seed in range(4))
TRANSECTS_AT_RANDOM = tuple(random_transect(seed) for seed in range(12))
WEBS_AT_RANDOM = tuple(random_web(seed) for seed in range(8))
NARROW_AT_RANDOM = tuple(chart.narrowed() for chart in (*AT_RANDOM[:5], *MAPS_AT_RANDOM[:2], *TRANSECTS_AT_RANDOM[:4], *WEBS_AT_RANDOM[1:4]))


def page_of(charts: tuple[Chart, ...], typeface: str = "inherit") -> str:
    figures = [
        inline_svg(drawn(chart), prefix=f"c{number}", title=chart.name, description="d") for number, chart in enumerate(charts)
    ]
    style = f"{palette_css()} svg {{ width: 700px; display: block }} svg text {{ font-family: {typeface} }}"
    return f"<!doctype html><meta charset='utf-8'><style>{style}</style>{''.join(figures)}"


def violations(browser: Browser, html: str, count: int) -> list[str]:
    page = browser.new_page(viewport={"width": 740, "height": 600})
    try:
        page.set_content(html)
        assert count == page.locator("svg[role='img']").count()
        assert page.locator("svg text").count() > 0
        return text_violations(page)
    finally:
        page.close()


@pytest.mark.parametrize("typeface", TYPEFACES)
@pytest.mark.parametrize("charts", SETS.values(), ids=SETS)
def test_text_keeps_apart(browser: Browser, charts: tuple[Chart, ...], typeface: str):
    assert [] == violations(browser, page_of(charts, typeface), len(charts))


def test_text_keeps_apart_in_flux_diagrams_made_at_random(browser: Browser):
    assert [] == violations(browser, page_of(AT_RANDOM, "DejaVu Sans"), len(AT_RANDOM))


def test_text_keeps_apart_in_maps_made_at_random(browser: Browser):
    assert [] == violations(browser, page_of(MAPS_AT_RANDOM, "DejaVu Sans"), len(MAPS_AT_RANDOM))


def test_text_keeps_apart_in_food_webs_made_at_random(browser: Browser):
    assert [] == violations(browser, page_of(WEBS_AT_RANDOM, "DejaVu Sans"), len(WEBS_AT_RANDOM))


def test_text_keeps_apart_in_transects_made_at_random(browser: Browser):
    assert [] == violations(browser, page_of(TRANSECTS_AT_RANDOM, "DejaVu Sans"), len(TRANSECTS_AT_RANDOM))


def test_text_keeps_apart_in_narrow_drawings_made_at_random(browser: Browser):
    assert [] == violations(browser, page_of(NARROW_AT_RANDOM, "DejaVu Sans"), len(NARROW_AT_RANDOM))


def test_the_measure_finds_text_on_text_and_text_beyond_the_canvas(browser: Browser):
    words = ((5, "over"), (15, "lapping"), (185, "beyond"))
    texts = "".join(f'<text x="{x}" y="50" font-size="14">{word}</text>' for x, word in words)
    html = f"<svg role='img' viewBox='0 0 200 100' width='200' height='100'><title>t</title>{texts}</svg>"
    assert ['t: "lapping" overlaps "over"', 't: "beyond" leaves the canvas'] == violations(browser, html, 1)


def test_the_measure_finds_text_that_a_page_shows_too_small(browser: Browser):
    texts = "".join(f'<text x="5" y="{y}" font-size="{size}">{size}</text>' for y, size in ((30, 13), (60, 14)))
    page = browser.new_page(viewport={"width": 740, "height": 600})
    page.set_content(f"<svg role='img' viewBox='0 0 200 100' style='width: 160px'><title>t</title>{texts}</svg>")
    found = small_texts(page)
    page.close()
    assert ['t: "13" is smaller than 11 px'] == found
