"""Search that works from a folder, without a server and without a third party, and that shows no answers.

The theme's own worker is kept as text in a script, from which assets/search-worker.js starts it when a reader turns to
the search; the index comes then too. A page that is only read loads neither.
"""

from __future__ import annotations

import json
import re
import unicodedata
from collections.abc import Iterator
from html.parser import HTMLParser
from importlib.resources import files
from pathlib import Path

from generator.pages.search_notes import SearchNotes
from generator.publish.finding import findable

WORKER_SCRIPT = "assets/search-worker.js"
ENGINE_SCRIPT = "assets/search-engine.js"
_INDICES = "".join(map(chr, range(0x2070, 0x209D))) + "²³¹"
PLAIN_INDICES = str.maketrans({
    index: unicodedata.normalize("NFKC", index).replace("\N{MINUS SIGN}", "-")
    for index in _INDICES if unicodedata.normalize("NFKC", index) != index
})  # fmt: skip
_PLACE = "<!--set aside {}-->"
_PLACES = re.compile(r"<!--set aside (\d+)-->")
_TOUCHING_CELLS = re.compile(r"(</(?:td|th|caption)>)(?=<)")
_VOID = frozenset("area base br col embed hr img input link meta source track wbr".split())
"""Elements without an end. Source: HTML Living Standard, 13.1.2, void elements."""


def set_aside(html: str) -> tuple[str, tuple[str, ...]]:
    """Content without the elements marked `data-search-exclude`, and these elements in order; `put_back` undoes it.

    The theme's own reading of that mark ends at the first closing tag of the same name, so an answer that holds
    an element like the one around it would be found by the search.
    """
    spans = list(_outermost(_Excluded.spans(html)))
    kept, end = [], 0
    for number, (start, stop) in enumerate(spans):
        kept += [html[end:start], _PLACE.format(number)]
        end = stop
    return "".join([*kept, html[end:]]), tuple(html[start:stop] for start, stop in spans)


def put_back(html: str, parts: tuple[str, ...]) -> str:
    """A page with the elements that were set aside in their places again."""
    return _PLACES.sub(lambda place: parts[int(place[1])], html)


def cells_apart(html: str) -> str:
    """Content whose table cells do not touch: the theme reads `<td>level</td><td>fire</td>` as one word, `levelfire`.

    White space between cells is not shown (CSS 2.2, 17.2.1, from memory).
    """
    return _TOUCHING_CELLS.sub("\\1\n", html)


def write_offline_search(site: Path, notes: SearchNotes) -> None:
    """Rewrite the index of a finished site as a script, and add the worker as another.

    The theme fetches `search_index.json` with every page, so nothing but its settings is left there.
    Raises LookupError if the theme's files are not where they are expected.
    """
    index = site / "search" / "search_index.json"
    workers = sorted((site / "assets" / "javascripts" / "workers").glob("search.*.min.js"))
    if not index.is_file() or len(workers) != 1:
        raise LookupError(f"expected {index} and one search worker of the theme, found {[w.name for w in workers]}")
    content = json.loads(index.read_text("utf-8"))
    content["docs"] = [flattened(entry) for entry in content["docs"]]
    content = findable(content, notes)
    index.write_bytes(_json({**content, "docs": []}).encode())
    index.with_suffix(".js").write_bytes(f"var __index = {_json(content)}".encode())
    (site / ENGINE_SCRIPT).write_bytes(f"window.SEARCH_ENGINE = {_json(workers[0].read_text('utf-8'))}".encode())
    workers[0].unlink()
    ours = files("generator.publish") / "assets"
    shim, help_ = ((ours / name).read_text("utf-8") for name in ("search-worker.js", "search-help.js"))
    (site / WORKER_SCRIPT).write_bytes(f"{shim}window.SEARCH_WAYS = {_json(notes.ways)}\n{help_}".encode())


def _json(content: object) -> str:
    """Short, and such that it can stand in a page: nothing in it ends a script."""
    return json.dumps(content, ensure_ascii=False, separators=(",", ":")).replace("</", "<\\/")


def flattened(entry: dict[str, object]) -> dict[str, object]:
    """An entry of the index whose formulas are one word each: `CO<sub>2</sub>` and `CO₂` become `CO2`."""
    return {
        field: re.sub("</?su[bp]>", "", value).translate(PLAIN_INDICES)
        if field in ("title", "text") and isinstance(value, str) else value
        for field, value in entry.items()
    }  # fmt: skip


class _Excluded(HTMLParser):
    """Finds where elements marked `data-search-exclude` begin and end."""

    def __init__(self, html: str) -> None:
        super().__init__(convert_charrefs=False)
        self._lines = [0, *(found.end() for found in re.finditer("\n", html))]
        self._html = html
        self._open: list[tuple[str, int, int]] = []
        """Of each marked element not closed yet: name, start, and how many of that name are open inside it."""
        self.found: list[tuple[int, int]] = []

    @classmethod
    def spans(cls, html: str) -> list[tuple[int, int]]:
        parser = cls(html)
        parser.feed(html)
        parser.close()
        if parser._open:
            name, start, _ = parser._open[0]
            raise ValueError(f"expected </{name}> for an element marked data-search-exclude, found none: {html[start:][:80]}")
        return parser.found

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._open = [(name, start, inside + (name == tag)) for name, start, inside in self._open]
        if tag not in _VOID and any(name == "data-search-exclude" for name, _ in attrs):
            self._open.append((tag, self._here(), 0))

    def handle_endtag(self, tag: str) -> None:
        closed = [(name, start) for name, start, inside in self._open if name == tag and inside == 0]
        self._open = [
            (name, start, inside - (name == tag)) for name, start, inside in self._open if (name, start) not in closed
        ]
        stop = self._html.index(">", self._here()) + 1
        self.found += [(start, stop) for _, start in closed]

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """An element closed at once holds nothing."""

    def _here(self) -> int:
        line, column = self.getpos()
        return self._lines[line - 1] + column


def _outermost(spans: list[tuple[int, int]]) -> Iterator[tuple[int, int]]:
    end = 0
    for start, stop in sorted(spans):
        if start >= end:
            yield start, stop
            end = stop
