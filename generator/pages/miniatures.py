"""Miniatures: the numbers of a chart as a few bars, small enough for a map of the course. They are the chart's own numbers, nothing drawn by hand."""

from __future__ import annotations

from collections.abc import Sequence

from figures import Chart, DataTable, TrophicPyramid

from generator.pages.markup import prose

WIDE, HIGH = 120.0, 60.0
MOST = 12
"""Bars that can still be told apart."""
FEWEST = 3
FLAT = 1.5
"""Times the smallest number that the largest one must be, or the bars would all look alike."""
LEAST = 1.5
"""Width of a line that stands for a bar too thin to be seen."""
_GAP = 0.35
"""Share of a bar's room that stays empty."""


def miniature(chart: Chart) -> str:
    """The bars as SVG with a line that says what they are; nothing for a chart whose table holds no column of numbers.

    Twelve rows are the months of a year and stand side by side; the levels of a pyramid stand on each other; else a row is a bar from the left.
    """
    found = _numbers(chart.table)
    if not found:
        return ""
    head, values = found
    shares = [value / max(values) for value in values]
    bars = _standing(shares) if len(values) == MOST else _lying(list(reversed(shares)), centred=True) if isinstance(chart, TrophicPyramid) else _lying(shares)
    thinner = "; a line stands for a bar too thin to see" if len(values) != MOST and min(shares) * WIDE < LEAST else ""
    drawn = "".join(f'<rect x="{x:.1f}" y="{y:.1f}" width="{width:.1f}" height="{height:.1f}"/>' for x, y, width, height in bars)
    return (
        f'<svg class="miniature" preserveAspectRatio="xMinYMid meet" viewBox="0 0 {WIDE:g} {HIGH:g}" aria-hidden="true" focusable="false">{drawn}</svg>'
        f'<span class="of">{prose(f"{chart.title}: {head}{thinner}")}</span>'
    )


def _numbers(table: DataTable) -> tuple[str, list[float]] | None:
    """Head and values of the last column of numbers; a column with gaps only where none is whole."""
    if not 1 < len(table.rows) <= MOST:
        return None
    columns = list(zip(table.columns, zip(*table.rows, strict=True), strict=True))[1:]
    known = [(head, [value for value in map(_number, cells) if value is not None]) for head, cells in reversed(columns)]
    shown = [(head, values) for head, values in known if len(values) >= FEWEST and min(values) >= 0 and max(values) > FLAT * min(values)]
    return max(shown, key=lambda column: len(column[1]), default=None)


def _number(cell: str) -> float | None:
    """The value of a cell, without its uncertainty; None where it holds none, or no number alone."""
    try:
        return float(cell.partition(" ±")[0].replace("\u202f", "").replace("−", "-"))
    except ValueError:
        return None


def _standing(shares: Sequence[float]) -> list[tuple[float, float, float, float]]:
    room = WIDE / len(shares)
    return [(place * room, HIGH * (1 - share), room * (1 - _GAP), HIGH * share) for place, share in enumerate(shares)]


def _lying(shares: Sequence[float], *, centred: bool = False) -> list[tuple[float, float, float, float]]:
    room = HIGH / len(shares)
    widths = [max(WIDE * share, LEAST if share else 0.0) for share in shares]
    return [((WIDE - width) / 2 if centred else 0.0, place * room, width, room * (1 - _GAP)) for place, width in enumerate(widths)]
