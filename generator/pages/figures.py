"""A chart on a page: the picture with its description, how to read it, and its numbers as a table."""

from __future__ import annotations

from figures import Chart, DataTable

from generator.pages.markup import escaped, number, prose
from generator.pages.page import link
from generator.records.parts import Picture


def chart_uri(chart: Chart) -> str:
    """Where the drawing stands below the pages folder."""
    return f"charts/{chart.name}.svg"


def saved_uri(chart: Chart, ending: str) -> str:
    """Where the file of a chart to take away stands: its table as `csv`, its drawing as `svg`."""
    return f"files/{chart.name}.{ending}"


def figure(chart: Chart, page: str) -> str:
    """The chart with its reading steps, its description and its numbers, as HTML without blank lines, for the page at this path.

    The description is folded: it tells what the questions ask a reader to find in the chart.
    """
    steps = "\n".join(f"<li>{prose(step)}</li>" for step in chart.reading)
    return (
        f"{drawing(chart, page)}\n"
        f'<details class="reading">\n<summary>How to read this chart</summary>\n<ol>\n{steps}\n</ol>\n</details>\n'
        f'<details class="described">\n<summary>This chart in words</summary>\n<p>{prose(chart.description)}</p>\n</details>\n'
        f'<details class="chart-data">\n<summary>The numbers of this chart as a table</summary>\n{data_table(chart.table)}\n'
        f"{_saved(chart, page)}\n</details>"
    )


def _saved(chart: Chart, page: str) -> str:
    """Links to the files to take away, to be saved where a browser does so by itself, else opened."""
    table, drawn = (escaped(link(page, saved_uri(chart, ending))) for ending in ("csv", "svg"))
    return (
        f'<p class="screen-only">To keep: <a href="{table}" download>the table for a spreadsheet (CSV)</a>, '
        f'<a href="{drawn}" download>the chart for white paper (SVG)</a></p>'
    )


def drawing(chart: Chart, page: str) -> str:
    """The picture alone, named below, and described to those who do not see it."""
    return (
        f'<figure class="chart">\n{_images(chart, page, chart.description)}\n'
        f"<figcaption>{prose(chart.title)}</figcaption>\n</figure>"
    )


def _images(chart: Chart, page: str, described: str) -> str:
    """The drawing, followed by the one for a phone's width if there is one; the style sheet shows one of them at a time."""
    narrow = chart.narrowed()
    images = "".join(
        f'<img src="{escaped(link(page, chart_uri(shape)))}" alt="{escaped(described)}" title="{escaped(chart.title)}">\n'
        for shape in (chart, narrow) if shape
    )  # fmt: skip
    fit = " both" if narrow else " slim" if chart.FITS_A_PHONE else ""
    return f'<div class="drawing{fit}" data-search-exclude tabindex="0" role="group" aria-label="{escaped(chart.title)}">\n{images}</div>'


def asked_figure(chart: Chart, page: str) -> str:
    """The chart as a question shows it: its description would tell the answers, so its numbers stand in its place, as a table."""
    return (
        f'<figure class="chart">\n{_images(chart, page, f"{chart.title}. Its numbers stand in the table below.")}\n'
        f"<figcaption>{prose(chart.title)}</figcaption>\n</figure>\n"
        f'<details class="chart-data">\n<summary>The numbers of this chart as a table</summary>\n{data_table(chart.table)}\n</details>'
    )


def picture_uri(file: str) -> str:
    """Where a picture of the content stands below the pages folder."""
    return f"pictures/{file}"


def picture(found: Picture, page: str) -> str:
    """A picture with its credit, as one block of HTML without blank lines."""
    source = escaped(link(page, picture_uri(found.file)))
    return (
        f'<figure class="picture">\n<img src="{source}" alt="{escaped(found.alt)}">\n'
        f"<figcaption>{prose(found.purpose)} <small>{prose(found.credit)}</small></figcaption>\n</figure>"
    )


def _is_number(text: str) -> bool:
    return not text[:1].isalpha()


def _cell(text: str) -> str:
    """A number stays on one line with its unit; words may break, or a long list of them would run off the sheet."""
    return number(text) if _is_number(text) else prose(text)


def data_table(table: DataTable) -> str:
    """A table whose first column names the rows; a column of numbers ends at its right edge.

    Pages hold many such cells, so these say little: where all other columns are numbers the table says it, and a head cell before
    data cells is their row's by itself (HTML Living Standard, 4.9.12.2, from memory; a test reads it from the browser).
    """
    are_numbers = [all(map(_is_number, column)) for column in zip(*table.rows, strict=True)][1:] or [False] * (len(table.columns) - 1)
    alike = all(are_numbers)
    kinds = [' class="number"' if is_number and not alike else "" for is_number in are_numbers]
    first_head, *other_heads = table.columns
    heads = "".join(f'<th scope="col"{kind}>{prose(head)}</th>' for head, kind in zip(other_heads, kinds, strict=True))
    rows = "\n".join(
        f"<tr><th>{prose(first)}</th>" + "".join(f"<td{kind}>{_cell(cell)}</td>" for kind, cell in zip(kinds, rest, strict=True)) + "</tr>"
        for first, *rest in table.rows
    )
    return (
        f'<div class="scrolled" tabindex="0" role="group" aria-label="{escaped(table.caption)}">\n'
        f'<table class="ruled{" numbers" if alike else ""}">\n<caption>{prose(table.caption)}</caption>\n'
        f'<thead><tr><th scope="col">{prose(first_head)}</th>{heads}</tr></thead>\n<tbody>\n{rows}\n</tbody>\n</table>\n</div>'
    )
