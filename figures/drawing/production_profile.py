"""Draws rates over depth: the surface on top, losses left of the line of nothing and gains right of it, the compensation depth dashed."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import count

from figures.drawing.axis import LOOKS, MARK, draw_bar, draw_legend, draw_line, draw_mark, ends_of, legend_rows, mark_corners, mark_label, marks_between, round_ends, round_step
from figures.drawing.canvas import Canvas, Point, rectangle, segments
from figures.drawing.series_names import Box, Drawn, Placed, along, distances, draw_names, name_places
from figures.drawing.sheet import Sheet, draw_notes, notes_height
from figures.drawing.text import block_size, break_in_two, glued
from figures.error_bars import BarredMean, BarredSeries, ProductionProfile

_TEXT = 14.5
_LEADING, _LEGEND_LEADING = 18.0, 22.0
_HEIGHT = 330.0
"""Of the water [px]."""
_BELOW = 1.06
"""How far down the water is drawn, of the lowest depth, so that its marks stand clear of the end."""
_HANGING, _BESIDE = 9.0, 3.0
"""How far below its mark a bar hangs that would cover another, and the least gap between bars and marks on one level [px]."""
_HUNG = "Where bars would cover each other, one hangs below its mark."


@dataclass(frozen=True)
class _Frame:
    """Turns values and depths [m] into places on the canvas [px]."""

    sheet: Sheet
    top: float
    low: float
    high: float
    lowest: float

    @property
    def bottom(self) -> float:
        return self.top + _HEIGHT

    def x(self, value: float) -> float:
        return self.sheet.left + (value - self.low) / (self.high - self.low) * self.sheet.room

    def place(self, depth: float, value: float) -> Point:
        return self.x(value), self.top + depth / self.lowest * _HEIGHT

    def bar(self, mean: BarredMean, row: int = 0) -> tuple[Point, Point]:
        """The ends of an error bar, so many rows below its mark."""
        error, (_, y) = mean.error or 0.0, self.place(mean.at, 0)
        return (self.x(mean.mean - error), y + row * _HANGING), (self.x(mean.mean + error), y + row * _HANGING)


def draw_production_profile(chart: ProductionProfile) -> str:
    """The SVG of the rates, from the surface down; each line is named where it runs, or in a key where there is no room."""
    lowest = _BELOW * max(mean.at for one in chart.series for mean in one.means)
    depth_step = round_step(lowest, 7)
    depths = marks_between(0, depth_step * math.floor(lowest / depth_step), depth_step)
    sheet = Sheet.of(chart, wide=(76, 32), narrow=(38, 18)).beside([mark_label(depth, depth_step) for depth in depths], _TEXT)
    heading = sheet.heading(chart.quantity, _TEXT)
    ends = ends_of(chart.series)
    low, high, step = round_ends(min(*ends, 0.0), max(*ends, 0.0), 5 if sheet.narrow else 7)
    frame = _Frame(sheet, 22 + _LEADING * len(heading) + 44, low, high, lowest)
    names = _names(frame, chart)
    rows = legend_rows(chart.series, _TEXT, 12, sheet.width - 12) if names is None else []
    if rows:
        frame = replace(frame, top=frame.top + _LEGEND_LEADING * (rows[-1][2] + 1))
    hung = [_HUNG] if any(_rows(frame, chart).values()) else []
    notes = sheet.lines([chart.bars, *hung] + (["Hatched: a loss, more used than made."] if low < 0 else []))
    canvas = Canvas(sheet.width, frame.bottom + 14 + notes_height(notes))
    draw_legend(canvas, rows, _TEXT, 24, _LEGEND_LEADING)
    _axes(canvas, frame, heading, step)
    _depths(canvas, frame, depths, depth_step)
    if chart.compensation_m is not None:
        _compensation(canvas, frame, chart)
    _draw_series(canvas, frame, chart)
    draw_names(canvas, names or (), _TEXT)
    draw_notes(canvas, notes, sheet.left, frame.bottom + 22)
    return canvas.svg()


def _draw_series(canvas: Canvas, frame: _Frame, chart: ProductionProfile) -> None:
    """Lines first, then bars, a thin one on a thick one where they meet, then marks."""
    for one in chart.series:
        draw_line(canvas, [frame.place(mean.at, mean.mean) for mean in one.means], one)
    rows = _rows(frame, chart)
    for one in sorted(chart.series, key=lambda one: -LOOKS[one.mark].bar):
        for mean in one.means:
            if mean.error:
                row, place = rows[one.label, mean.at], frame.place(mean.at, mean.mean)
                if row:
                    canvas.stroke(segments([(place, (place[0], frame.bar(mean, row)[0][1]))]), one.role, LOOKS[one.mark].bar)
                draw_bar(canvas, *frame.bar(mean, row), one)
    for one in chart.series:
        for mean in one.means:
            draw_mark(canvas, frame.place(mean.at, mean.mean), one.mark, one.role, part=f"mean {one.label}")


def _rows(frame: _Frame, chart: ProductionProfile) -> dict[tuple[str, float], int]:
    """How many rows below its mark each bar hangs, so that it covers no other bar of its depth and no other's mark."""
    width = 1.45 * MARK
    found: dict[tuple[str, float], int] = {}
    taken: dict[tuple[float, int], list[tuple[float, float]]] = {}
    for one in chart.series:
        for mean in (mean for mean in one.means if mean.error):
            (left, _), (right, _) = frame.bar(mean)
            span = (min(left, frame.x(mean.mean) - width) - _BESIDE, max(right, frame.x(mean.mean) + width) + _BESIDE)
            row = next(row for row in count() if all(span[1] < low or high < span[0] for low, high in taken.get((mean.at, row), [])))
            taken.setdefault((mean.at, row), []).append((left, right))
            found[one.label, mean.at] = row
    return found


def _axes(canvas: Canvas, frame: _Frame, heading: Sequence[str], step: float) -> None:
    left, right = frame.sheet.left, frame.sheet.right
    if frame.low < 0:
        _hatch(canvas, frame)
    for number, line in enumerate(reversed(heading)):
        canvas.text((left + right) / 2, frame.top - 54 - _LEADING * number, line, size=_TEXT, anchor="middle")
    ticks = []
    for value in marks_between(frame.low, frame.high, step):
        x = frame.x(value)
        ticks.append(((x, frame.top), (x, frame.top - 5)))
        canvas.text(x, frame.top - 14, mark_label(value, step), size=_TEXT, anchor="middle")
    canvas.stroke(segments(ticks), "ink", 1)
    canvas.stroke(segments([((left, frame.top), (left, frame.bottom))]), "ink", 1)
    canvas.stroke(segments([(frame.place(0, 0), frame.place(frame.lowest, 0))]), "ink", 1.4, part="zero")
    canvas.stroke(segments([((left, frame.top), (right, frame.top))]), "water", 3.8, part="surface")


def _depths(canvas: Canvas, frame: _Frame, depths: Sequence[float], step: float) -> None:
    """The depth axis."""
    left = frame.sheet.left
    canvas.text(12, frame.top - 36, "Depth, m", size=_TEXT)
    for depth in depths:
        canvas.text(left - 9, frame.place(depth, 0)[1] + 5, mark_label(depth, step), size=_TEXT, anchor="end")
    canvas.stroke(segments(((left, frame.place(depth, 0)[1]), (left - 5, frame.place(depth, 0)[1])) for depth in depths), "ink", 1)


def _hatch(canvas: Canvas, frame: _Frame) -> None:
    """The side of losses: slanting lines, so that it needs no colour."""
    left, right, pitch = frame.sheet.left, frame.x(0), 12.0
    lines = []
    for number in range(int((right - left + _HEIGHT) / pitch) + 1):
        offset = number * pitch
        start = (min(left + offset, right), frame.top + max(0.0, offset - (right - left)))
        end = (left + max(0.0, offset - _HEIGHT), frame.top + min(offset, _HEIGHT))
        lines.append((start, end))
    canvas.stroke(segments(lines), "grid", 0.5)


def _marks(frame: _Frame, one: BarredSeries, rows: Mapping[tuple[str, float], int]) -> list[Point]:
    """Points that stand for all that is drawn of a series."""
    line = along([frame.place(mean.at, mean.mean) for mean in one.means])
    bars = [point for mean in one.means if mean.error for point in along(frame.bar(mean, rows[one.label, mean.at]))]
    return [*line, *bars, *(corner for mean in one.means for corner in mark_corners(frame.place(mean.at, mean.mean), one.mark))]


def _names(frame: _Frame, chart: ProductionProfile) -> list[Placed] | None:
    """Each series' name with a place beside its line, off the hatching where there is room, if all find one."""
    rows = _rows(frame, chart)
    drawn = [Drawn(one.label, along([frame.place(mean.at, mean.mean) for mean in one.means]), _marks(frame, one, rows)) for one in chart.series]
    zero = frame.x(0)
    taken = [(zero - 2, frame.top, zero + 2, frame.bottom)]
    if chart.compensation_m is not None:
        _, y = frame.place(chart.compensation_m, 0)
        taken += [(frame.sheet.left, y - 2, frame.sheet.right, y + 2), _compensation_words(frame, chart)[1]]
    left, right = frame.sheet.left + 4, frame.sheet.right - 2
    tries = ((right, [*taken, (left, frame.top, zero, frame.bottom)]), (right, taken), (frame.sheet.width - 4, taken))
    found = (name_places(drawn, _TEXT, (left, frame.top + 4, end, frame.bottom - 2), boxes) for end, boxes in tries)
    return next((places for places in found if places is not None), None)


def _compensation_words(frame: _Frame, chart: ProductionProfile) -> tuple[tuple[str, ...], Box]:
    """The words of the dashed line, on one line or two, and their box at an end of it where they cover least."""
    words = glued(f"compensation depth {chart.compensation_label}")
    _, y = frame.place(chart.compensation_m or 0.0, 0)
    rows = _rows(frame, chart)
    crowd = [point for one in chart.series for point in _marks(frame, one, rows)]
    options = []
    for lines in ((words,), break_in_two(words, _TEXT)):
        width, height = block_size(lines, _TEXT, bold=True)
        for left in (frame.sheet.right - width - 4, frame.sheet.left + 6):
            for top in (y + 5, y - 5 - height):
                if top + height <= frame.bottom - 2 and top >= frame.top + 4:
                    options.append((lines, (left, top, left + width, top + height)))
    return min(options, key=lambda option: int((distances(option[1], crowd) < 5).sum()))


def _compensation(canvas: Canvas, frame: _Frame, chart: ProductionProfile) -> None:
    """A dashed line with its words at one of its ends."""
    _, y = frame.place(chart.compensation_m or 0.0, 0)
    canvas.stroke(segments([((frame.sheet.left, y), (frame.sheet.right, y))]), "ink", 1.4, dash=(7, 5), part="compensation depth")
    lines, (left, top, right, bottom) = _compensation_words(frame, chart)
    canvas.fill(rectangle(left - 2, top, right - left + 4, bottom - top), "ground")
    for number, line in enumerate(lines):
        canvas.text(left, top + _TEXT * (0.94 + 1.22 * number), line, size=_TEXT, bold=True, halo=True)
