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
    """The chart with its reading steps and its numbers, as HTML without blank lines, for the page at this path."""
    steps = "\n".join(f"<li>{prose(step)}</li>" for step in chart.reading)
    return (
        f"{drawing(chart, page)}\n"
        f'<details class="reading">\n<summary>How to read this chart</summary>\n<ol>\n{steps}\n</ol>\n</details>\n'
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
    """The picture alone, named and described."""
    return (
        f'<figure class="chart">\n{_images(chart, page, chart.description)}\n'
        f"<figcaption>{prose(chart.title)}. {prose(chart.description)}</figcaption>\n</figure>"
    )


def _images(chart: Chart, page: str, described: str) -> str:
    """The drawing, followed by the one for a phone's width if there is one; the style sheet shows one of them at a time."""
    narrow = chart.narrowed()
    images = "".join(
        f'<img src="{escaped(link(page, chart_uri(shape)))}" alt="{escaped(described)}" title="{escaped(chart.title)}">\n'
        for shape in (chart, narrow) if shape
    )  # fmt: skip
    both = " both" if narrow else ""
    return f'<div class="drawing{both}" data-search-exclude tabindex="0" role="group" aria-label="{escaped(chart.title)}">\n{images}</div>'


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


def data_table(table: DataTable, label: str = "") -> str:
    """A table whose first column names the rows; a column of numbers ends at its right edge."""
    aligned = [' class="number"' if all(map(_is_number, column)) else "" for column in zip(*table.rows, strict=True)]
    heads = "".join(
        f'<th scope="col"{kind if place else ""}>{prose(head)}</th>'
        for place, (head, kind) in enumerate(zip(table.columns, aligned or [""] * len(table.columns), strict=True))
    )
    rows = "\n".join(
        f'<tr><th scope="row">{prose(first)}</th>'
        + "".join(f"<td{kind}>{_cell(cell)}</td>" for kind, cell in zip(aligned[1:], rest, strict=True))
        + "</tr>"
        for first, *rest in table.rows
    )
    return (
        f'<div class="scrolled" tabindex="0" role="group" aria-label="{escaped(label or table.caption)}">\n<table class="ruled">\n'
        f"<caption>{prose(table.caption)}</caption>\n<thead><tr>{heads}</tr></thead>\n<tbody>\n{rows}\n</tbody>\n</table>\n</div>"
    )
