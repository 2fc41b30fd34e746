"""Charts to take away: the numbers as a table for a spreadsheet, the drawing for white paper, both as files of the site."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterator, Mapping

from figures import Chart
from figures.palette import LIGHT

from generator.pages.figures import chart_uri, saved_uri
from generator.pages.markup import escaped
from generator.pages.page import record_uri
from generator.pages.site import Site, comparison_uri

_NUMBER = re.compile(r"[-−]?\d+(?:[ \u00a0\u202f\u2009]\d{3})*(?:\.\d+)?")
_BLANK = re.compile(r"[ \u00a0\u202f\u2009]")
_FORMULA = re.compile(r"[=+@\t\r-]")


def take_away(site: Site, drawings: Mapping[str, bytes]) -> Mapping[str, bytes]:
    """Table and drawing of each chart that stands on a page with its numbers; `drawings` holds charts by their path."""
    files: dict[str, bytes] = {}
    for chart, origin in _charts(site):
        files[saved_uri(chart, "csv")] = table_file(chart, origin)
        files[saved_uri(chart, "svg")] = drawing_file(chart, drawings[chart_uri(chart)].decode(), origin)
    return files


def table_file(chart: Chart, origin: str) -> bytes:
    """The numbers as comma-separated values, heads with units first, where they come from last.

    UTF-8 with a mark at its start, by which spreadsheets know it. Numbers have an ASCII minus and no gaps, so that they
    are read as numbers; a text that a spreadsheet would run as a formula gets an apostrophe.
    """
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerows([_cell(cell) for cell in row] for row in (chart.table.columns, *chart.table.rows))
    writer.writerows([[], [_cell(chart.table.caption)], [_cell(origin)]])
    return text.getvalue().encode("utf-8-sig")


def drawing_file(chart: Chart, svg: str, origin: str) -> bytes:
    """The drawing on white, named and described within."""
    words = f"<title>{escaped(chart.title)}</title>\n<desc>{escaped(f'{chart.description} {origin}')}</desc>\n"
    start = svg.index(">") + 1
    return f"{svg[:start]}\n{words}{svg[start:].lstrip()}".replace(LIGHT["ground"], "#ffffff").encode()


def _charts(site: Site) -> Iterator[tuple[Chart, str]]:
    """Each chart that is shown with its numbers, and where those come from, in a sentence."""
    course = site.library.course
    origins = {
        "invented": f"The numbers are invented for {course.scenario or 'this course'}.",
        "published": "The numbers are published; the page names their sources.",
        "measured": "The numbers were measured.",
    }
    for subject in site.subjects:
        page = record_uri(subject.id).replace(".md", ".html")
        for chart in site.kinds[subject.kind].charts(subject):
            yield chart, f"{course.title}, {page}. {origins.get(subject.record.data, '')}".strip()
    for kind in site.compared_kinds:
        for chart in site.comparison(kind).charts:
            page = comparison_uri(kind.name).replace(".md", ".html")
            yield chart, f"{course.title}, {page}. The pages of the records tell where their numbers come from."


def _cell(text: str) -> str:
    if _NUMBER.fullmatch(text):
        return _BLANK.sub("", text).replace("−", "-")
    return f"'{text}" if _FORMULA.match(text) else text
