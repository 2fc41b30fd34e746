"""A small study guide as the page writer would leave it, so that publishing is tested without content or charts drawn."""

from __future__ import annotations

from pathlib import Path
from types import SimpleNamespace

from generator.pages.search_notes import SearchNotes
from generator.diagnostics import ContentErrors, Diagnostic, Place

NAV = [
    {"Home": "index.md"},
    {"Biomes and climate": ["topics/biomes.md", {"Temperate grassland": "biome/temperate-grassland.md"}]},
    {"Cycles of matter": ["topics/cycles.md", {"Nitrogen in Wend Hollow": "cycle/wend-hollow-nitrogen.md"}]},
]
CHART = """\
<?xml version="1.0" encoding="utf-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="320" height="120" viewBox="0 0 320 120">
<rect id="bar" x="20" y="20" width="80" height="80" fill="#5975ff"/>
<path d="M20 100H300" stroke="#1b1f23" fill="none"/>
<text x="60" y="115" fill="#1b1f23">June</text>
</svg>
"""
FIGURE = """\
<figure class="chart" data-search-exclude>
<img src="../charts/{name}.svg" alt="Rain peaks in June with 54 mm &amp; more than in July." title="{title}">
<figcaption>{title}</figcaption>
</figure>
"""
CHECK = """\
<div class="check">
<form>
<fieldset><legend>How much rain falls in a year at Harrow Plain?</legend>
<label><input type="radio" name="q1"> 27 mm</label>
<label><input type="radio" name="q1"> 327 mm</label>
</fieldset>
</form>
<div data-search-exclude>
<details class="answer"><summary>Answer and working</summary>
<div class="working">Added month by month.</div>
<p>The quagga answer is 327 mm.</p>
</details>
</div>
</div>
"""
PAGES = {
    "index.md": """\
# Living world

An expedition along one meridian. Start with [biomes](topics/biomes.md).
""",
    "topics/biomes.md": """\
# Biomes and climate

Temperature and precipitation decide which plants can live.

- [Temperate grassland](../biome/temperate-grassland.md)
""",
    "topics/cycles.md": """\
# Cycles of matter

Burning adds CO<sub>2</sub> to the air; denitrification adds N₂O.

- [Nitrogen in Wend Hollow](../cycle/wend-hollow-nitrogen.md)
""",
    "biome/temperate-grassland.md": "\n".join([
        "# Temperate grassland\n",
        "Grasses outlast drought below the ground. Snow is melting in spring.\n",
        "## Climate\n",
        FIGURE.format(name="temperate_grassland.climate", title="Climate of Harrow Plain"),
        "| Month | Evaporation in mm | Remark on the month | Wind |\n| --- | ---: | --- | --- |\n"
        "| June | 54 | wettest month of the year, with storms | westerly |\n| July | 48 | haymaking | calm |\n",
        "See the [nitrogen cycle](../cycle/wend-hollow-nitrogen.md#forms).\n",
        "## Check yourself\n",
        CHECK,
    ]),
    "cycle/wend-hollow-nitrogen.md": "\n".join([
        "# Nitrogen in Wend Hollow\n",
        "## Forms {#forms}\n",
        "Ammonium, NH₄⁺, becomes nitrate, NO<sub>3</sub><sup>−</sup>.\n",
        "<table><tr><th>Process</th><th>Who</th></tr><tr><td>uptake</td><td>grasses</td></tr></table>\n",
        FIGURE.format(name="wend_hollow.fluxes", title="Stores and flows"),
        FIGURE.format(name="wend_hollow.fluxes", title="The same again"),
    ]),
}  # fmt: skip


SEARCH = SearchNotes(
    sorts={"biome/temperate-grassland.html": "record: biome", "topics/cycles.html": "topic"},
    named=frozenset({"biome/temperate-grassland.html"}),
    ways=(("Cycles of matter", "topics/cycles.html"),),
)


def write_fake_pages(content: Path, work: Path, name: str = "", drawings: object = None) -> SimpleNamespace:
    """Write the pages, their charts and one style and script of their own; `content/title.txt` may hold the title."""
    pages = work / "pages"
    for name, text in PAGES.items():
        _write(pages / name, text)
    for name in ("temperate_grassland.climate", "wend_hollow.fluxes"):
        _write(pages / "charts" / f"{name}.svg", CHART)
    _write(pages / "assets" / "check.css", ".check { border: 1px solid currentcolor; padding: 0.5rem }\n")
    _write(pages / "assets" / "check.js", "document.documentElement.dataset.checkReady = 'yes'\n")
    title = content / "title.txt"
    return SimpleNamespace(
        nav=NAV, title=title.read_text("utf-8").strip() if title.exists() else "Living world", warnings=(),
        search=SEARCH,
    )


def find_wrong(content: Path, work: Path, name: str = "", drawings: object = None) -> SimpleNamespace:
    """Write nothing, since the content is wrong."""
    raise ContentErrors([Diagnostic(Place("content/biome/x.yaml", 4, 15), "latitude", "-90 to 90", "146.5", "check it")])


def _write(file: Path, text: str) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(text.encode())
