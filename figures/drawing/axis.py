"""Axes of numbers: round marks, and the marks of series with a legend that names them."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from figures.drawing.canvas import Canvas, Point, polygon, polyline, segments
from figures.drawing.text import text_width
from figures.error_bars import BarredSeries, Mark

MARK = 5.0
"""Half the width of a mark [px]."""
CAP = 5.0
"""Half the width of the stroke at the end of a bar [px]."""


@dataclass(frozen=True)
class Look:
    """What a series' lines and bars look like, whatever their colour [px]."""

    dash: tuple[float, ...]
    bar: float
    """Width of its error bars, and of its outline where its marks are open."""
    bar_dash: tuple[float, ...] = ()


LOOKS: dict[Mark, Look] = {
    "circle": Look((), 1.8),
    "square": Look((9, 4), 2.8),
    "diamond": Look((2, 3), 1.2),
    "open circle": Look((9, 3, 2, 3), 1.8, (5, 2)),
    "open square": Look((5, 3), 2.8, (5, 2)),
    "open diamond": Look((2, 6), 1.2, (5, 2)),
}
"""By the shape of a series' marks."""


def round_step(span: float, most: int) -> float:
    """The smallest of 1, 2 or 5 times a power of ten that divides a span into at most so many parts.

    >>> round_step(10, 5), round_step(0.9, 8)
    (2.0, 0.2)
    """
    power = 10.0 ** math.floor(math.log10(span / most))
    return next(step * power for step in (1, 2, 5, 10) if span / (step * power) <= most * (1 + 1e-9))


def round_ends(low: float, high: float, most: int) -> tuple[float, float, float]:
    """Round ends around two numbers, and the step between marks; a span of nothing is widened.

    >>> round_ends(7.1, 9.9, 8)
    (7.0, 10.0, 0.5)
    """
    if high - low < 1e-12 * max(abs(low), abs(high), 1e-9):
        low, high = low - max(abs(low), 1.0) / 2, high + max(abs(high), 1.0) / 2
    step = round_step(high - low, most)
    return math.floor(low / step + 1e-9) * step, math.ceil(high / step - 1e-9) * step, step


def marks_between(low: float, high: float, step: float) -> list[float]:
    """Every mark from one end to the other, free of the dust of floats."""
    return [round(low / step + number) * step for number in range(round((high - low) / step) + 1)]


def mark_label(number: float, step: float) -> str:
    """A number of an axis with the decimals that its step needs."""
    decimals = max(0, -math.floor(math.log10(step) + 1e-9))
    return f"{number:.{decimals}f}".replace("-", "\u2212") if abs(number) > step / 1e6 else "0"


def draw_mark(canvas: Canvas, place: Point, mark: Mark, role: str, part: str = "") -> None:
    """The mark of a series, with a thin edge in the ground colour that parts it from bars and lines; an open one is an outline."""
    corners = mark_corners(place, mark)
    if mark.startswith("open"):
        canvas.fill(polygon(corners), "ground", part=part)
        canvas.stroke(polygon(corners), role, LOOKS[mark].bar)
        return
    canvas.fill(polygon(corners), role, part=part)
    canvas.stroke(polygon(corners), "ground", 1)


def mark_corners(place: Point, mark: Mark) -> list[Point]:
    """The outline of a mark."""
    x, y = place
    if mark.endswith("circle"):
        return [(x + 1.1 * MARK * math.cos(math.pi * n / 12), y + 1.1 * MARK * math.sin(math.pi * n / 12)) for n in range(24)]
    if mark.endswith("square"):
        return [(x - MARK, y - MARK), (x + MARK, y - MARK), (x + MARK, y + MARK), (x - MARK, y + MARK)]
    return [(x, y - 1.45 * MARK), (x + 1.45 * MARK, y), (x, y + 1.45 * MARK), (x - 1.45 * MARK, y)]


def draw_line(canvas: Canvas, points: Sequence[Point], one: BarredSeries) -> None:
    """The line that joins the means of a series."""
    canvas.stroke(polyline(points), one.role, 1.8, dash=LOOKS[one.mark].dash, part=f"line {one.label}")


def draw_bar(canvas: Canvas, low: Point, high: Point, one: BarredSeries) -> None:
    """An error bar of a series with strokes across its ends, upright or level."""
    upright, look = low[0] == high[0], LOOKS[one.mark]
    across = (CAP, 0.0) if upright else (0.0, CAP)
    caps = [((x - across[0], y - across[1]), (x + across[0], y + across[1])) for x, y in (low, high)]
    canvas.stroke(polyline([low, high]), one.role, look.bar, dash=look.bar_dash, part=f"bar {one.label}")
    canvas.stroke(segments(caps), one.role, look.bar, dash=look.bar_dash)


def legend_rows(series: Sequence[BarredSeries], size: float, left: float, right: float) -> list[tuple[BarredSeries, float, int]]:
    """Each series with the place of its mark across [px] and its row, as many in a row as find room."""
    found, x, row = [], left, 0
    for one in series:
        width = 24 + text_width(one.label, size) + 26
        if x > left and x + width - 26 > right:
            x, row = left, row + 1
        found.append((one, x + 8, row))
        x += width
    return found


def draw_legend(canvas: Canvas, rows: Sequence[tuple[BarredSeries, float, int]], size: float, top: float, leading: float) -> None:
    """The mark and the name of each series."""
    for one, x, row in rows:
        y = top + row * leading
        draw_mark(canvas, (x, y - size * 0.36), one.mark, one.role)
        canvas.text(x + 16, y, one.label, size=size)


def ends_of(series: Sequence[BarredSeries]) -> list[float]:
    """Everything that must find room along the axis of values: means, the ends of their bars, single readings."""
    found = []
    for one in series:
        for mean in one.means:
            error = mean.error or 0.0
            found += [mean.mean - error, mean.mean + error, *mean.readings]
    return found
