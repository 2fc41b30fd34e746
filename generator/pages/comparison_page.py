"""The page that sets the records of one kind side by side: their charts, then a table."""

from __future__ import annotations

from itertools import groupby
from typing import Any

from generator.kind import Comparison, Kind
from generator.pages import figures, markup
from generator.pages.page import Page, link, record_uri
from generator.pages.record_page import environment
from generator.pages.site import Site, comparison_uri
from generator.quantities.fact import Fact

WHENCE = {"invented": "invented for {scenario}", "published": "from published works, which the pages of the records name", "measured": "measured"}
"""Where numbers come from, by the `data` of their record."""


def comparison_page(site: Site, kind: Kind[Any]) -> Page:
    """The records of one kind side by side."""
    uri = comparison_uri(kind.name)
    comparison = site.comparison(kind)
    units = [_common_unit(comparison, column) for column in range(len(comparison.heads))]
    heads = [f"{head} ({unit})" if unit else head for head, unit in zip(comparison.heads, units, strict=True)]

    def value(cell: Fact | str, record: str, unit: str) -> str:
        if isinstance(cell, str):
            return markup.number(cell)
        if cell.value is None:
            return markup.number(cell.undefined_because.partition(":")[0] or "not defined")
        shown = markup.number(cell.shown_bare if unit else cell.shown)
        return f'<a class="fact" href="{link(uri, record_uri(record))}#{markup.fact_anchor(cell.id)}">{shown}</a>'

    body = environment(kind.folder).get_template("compare.md.j2").render(
        prose=markup.prose, title=kind.title, heads=heads, units=units, value=value,
        groups=[(head, list(rows)) for head, rows in groupby(comparison.rows, key=lambda row: row.of)],
        looks=[_look(comparison, column) for column in range(len(heads))],
        address=lambda record: link(uri, record_uri(record)),
        provenance=_provenance(site, comparison),
        charts=[figures.figure(chart, uri) for chart in comparison.charts],
    )  # fmt: skip
    return Page(uri=uri, title=f"{kind.title} compared", description=f"{kind.title} side by side.", body=body)


def _provenance(site: Site, comparison: Comparison) -> str:
    """Which records' numbers are invented, published or measured; one sentence without names where all are the same."""
    titles: dict[str, list[str]] = {}
    for record in dict.fromkeys(row.subject for row in comparison.rows):
        found = site.library.subjects[record].record
        titles.setdefault(WHENCE[found.data].format(scenario=site.library.course.scenario or "this course"), []).append(found.title)
    if len(titles) == 1:
        return markup.prose(f"The numbers on this page are {next(iter(titles))}.")
    return markup.prose(" ".join(f"Numbers {whence}: {', '.join(named)}." for whence, named in titles.items()))


def _look(comparison: Comparison, column: int) -> str:
    """How a column is set: numbers end at its right edge, a class with its reading wants more room."""
    cells = [row.cells[column] for row in comparison.rows]
    known = [cell for cell in cells if isinstance(cell, Fact) and cell.value is not None]
    if any(cell.reading for cell in known):
        return ' class="words"'
    return ' class="number"' if known and all(isinstance(cell.value, float) for cell in known) else ""


def _common_unit(comparison: Comparison, column: int) -> str:
    """The unit that all numbers of a column share; nothing where they differ or have none."""
    cells = [row.cells[column] for row in comparison.rows]
    shown = {cell.unit.shown if cell.unit else "" for cell in cells if isinstance(cell, Fact) and cell.value is not None}
    return shown.pop() if len(shown) == 1 else ""
