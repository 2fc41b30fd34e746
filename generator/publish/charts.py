"""Charts put into the page as SVG elements, so that their colours follow the page's scheme, its print and its reader."""

from __future__ import annotations

import re
from collections import Counter
from html.parser import HTMLParser
from pathlib import Path

from figures.inline import inline_svg

_FIGURE_IMAGES = re.compile(r'(<figure class="chart"[^>]*>\s*(?:<div class="drawing[^"]*"[^>]*>\s*)?)((?:<img\b[^>]*>\s*)+)')
_IMAGE = re.compile(r"<img\b[^>]*>")


class ChartMissing(Exception):
    """A page names a chart that was not drawn."""


def inline_charts(html: str, charts: Path, page: str) -> str:
    """A page whose chart images are replaced by the drawings they name.

    Parameters
    ----------
    html
        The page, with `<figure class="chart" ...><img src=".../NAME.svg" alt="DESCRIPTION" title="TITLE">`, one or
        two images alone or in a `<div class="drawing">`.
    charts
        The folder that holds `NAME.svg`.
    page
        What to call the page in an error.

    Raises
    ------
    ChartMissing
        If there is no such file.
    """
    seen: Counter[str] = Counter()

    def drawing(found: re.Match[str]) -> str:
        image = _attributes(found[0])
        name = Path(image["src"]).stem
        file = charts / f"{name}.svg"
        if not file.is_file():
            raise ChartMissing(f"{page}: expected the chart {file}, found no such file")
        seen[name] += 1
        return inline_svg(
            file.read_text("utf-8"),
            prefix=_prefix(name, seen[name]),
            title=image["title"],
            description=image["alt"],
        )

    return _FIGURE_IMAGES.sub(lambda found: found[1] + _IMAGE.sub(drawing, found[2]), html)


def _prefix(name: str, occurrence: int) -> str:
    """A start for the ids of a drawing, no two alike in one page."""
    letters = re.sub(r"[^a-zA-Z0-9]+", "-", name).strip("-")
    return f"chart-{letters}" if occurrence == 1 else f"chart-{letters}-{occurrence}"


class _Tag(HTMLParser):
    """Reads the attributes of one tag, with character references resolved."""

    found: dict[str, str]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found = {name: value or "" for name, value in attrs}


def _attributes(tag: str) -> dict[str, str]:
    parser = _Tag()
    parser.feed(tag)
    return parser.found
