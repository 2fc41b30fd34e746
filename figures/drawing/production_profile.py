"""Draws rates over depth: the surface on top, losses left of the line of nothing and gains right of it, the compensation depth dashed."""

from __future__ import annotations

import math
from dataclasses import dataclass

from figures.drawing.axis import draw_bar, draw_legend, draw_mark, ends_of, legend_rows, mark_label, marks_between, round_ends, round_step
from figures.drawing.canvas import Canvas, Point, polyline, rectangle, segments
from figures.drawing.text import SMALLEST, size_to_fit, text_width
from figures.error_bars import ProductionProfile

WIDTH = 700
_LEFT, _RIGHT = 76.0, 668.0
_TEXT, _SMALL = 14.5, SMALLEST
_LEGEND_TOP, _LEADING = 24.0, 22.0
_HEIGHT = 330.0
"""Of the water [px]."""
_BELOW = 1.06
"""How far down the water is drawn, of the lowest depth, so that its marks stand clear of the end."""


@dataclass(frozen=True)
class _Frame:
    """Turns values and depths [m] into places on the canvas [px]."""

    top: float
    low: float
    high: float
    lowest: float

    @property
    def bottom(self) -> float:
        return self.top + _HEIGHT

    def x(self, value: float) -> float:
        return _LEFT + (value - self.low) / (self.high - self.low) * (_RIGHT - _LEFT)

    def place(self, depth: float, value: float) -> Point:
        return self.x(value), self.top + depth / self.lowest * _HEIGHT


def draw_production_profile(chart: ProductionProfile) -> str:
    """The SVG of the rates, from the surface down."""
    rows = legend_rows(chart.series, _TEXT, 12, WIDTH - 12)
    top = _LEGEND_TOP + _LEADING * (rows[-1][2] + 1) + 60
    ends = ends_of(chart.series)
    low, high, step = round_ends(min(*ends, 0.0), max(*ends, 0.0), 7)
    lowest = _BELOW * max(mean.at for one in chart.series for mean in one.means)
    frame = _Frame(top, low, high, lowest)
    notes = [chart.bars] + (["Hatched: a loss, more used than made."] if low < 0 else [])
    canvas = Canvas(WIDTH, frame.bottom + 14 + 19 * len(notes))
    draw_legend(canvas, rows, _TEXT, _LEGEND_TOP, _LEADING)
    _axes(canvas, frame, chart, step, round_step(lowest, 7))
    if chart.compensation_m is not None:
        _compensation(canvas, frame, chart, chart.compensation_m)
    for one in chart.series:
        places = [frame.place(mean.at, mean.mean) for mean in one.means]
        canvas.stroke(polyline(places), one.role, 1.8, part=f"line {one.label}")
        for mean, (x, y) in zip(one.means, places, strict=True):
            if mean.error:
                draw_bar(canvas, (frame.x(mean.mean - mean.error), y), (frame.x(mean.mean + mean.error), y), one.role, part=f"bar {one.label}")
    for one in chart.series:
        for mean in one.means:
            draw_mark(canvas, frame.place(mean.at, mean.mean), one.mark, one.role, part=f"mean {one.label}")
    for number, note in enumerate(notes):
        canvas.text(_LEFT, frame.bottom + 22 + 19 * number, note, size=size_to_fit(note, _SMALL, _RIGHT - _LEFT), role="muted")
    return canvas.svg()


def _axes(canvas: Canvas, frame: _Frame, chart: ProductionProfile, step: float, depth_step: float) -> None:
    if frame.low < 0:
        _hatch(canvas, frame)
    canvas.text((_LEFT + _RIGHT) / 2, frame.top - 38, chart.quantity, size=size_to_fit(chart.quantity, _TEXT, 430), anchor="middle")
    canvas.text(12, frame.top - 38, "Depth, m", size=_TEXT)
    ticks = []
    for value in marks_between(frame.low, frame.high, step):
        x = frame.x(value)
        ticks.append(((x, frame.top), (x, frame.top - 5)))
        canvas.text(x, frame.top - 14, mark_label(value, step), size=_TEXT, anchor="middle")
    for depth in marks_between(0, depth_step * math.floor(frame.lowest / depth_step), depth_step):
        _, y = frame.place(depth, 0)
        ticks.append(((_LEFT, y), (_LEFT - 5, y)))
        canvas.text(_LEFT - 9, y + 5, mark_label(depth, depth_step), size=_TEXT, anchor="end")
    canvas.stroke(segments(ticks), "ink", 1)
    canvas.stroke(segments([((_LEFT, frame.top), (_LEFT, frame.bottom))]), "ink", 1)
    canvas.stroke(segments([(frame.place(0, 0), frame.place(frame.lowest, 0))]), "ink", 1.4, part="zero")
    canvas.stroke(segments([((_LEFT, frame.top), (_RIGHT, frame.top))]), "water", 3, part="surface")


def _hatch(canvas: Canvas, frame: _Frame) -> None:
    """The side of losses: slanting lines, so that it needs no colour."""
    right, pitch = frame.x(0), 12.0
    lines = []
    for number in range(int((right - _LEFT + _HEIGHT) / pitch) + 1):
        offset = number * pitch
        start = (min(_LEFT + offset, right), frame.top + max(0.0, offset - (right - _LEFT)))
        end = (_LEFT + max(0.0, offset - _HEIGHT), frame.top + min(offset, _HEIGHT))
        lines.append((start, end))
    canvas.stroke(segments(lines), "grid", 0.5)


def _compensation(canvas: Canvas, frame: _Frame, chart: ProductionProfile, depth: float) -> None:
    """A dashed line with its words at its right end."""
    _, y = frame.place(depth, 0)
    canvas.stroke(segments([((_LEFT, y), (_RIGHT, y))]), "ink", 1.4, dash=(7, 5), part="compensation depth")
    words = f"compensation depth {chart.compensation_label}"
    width = text_width(words, _TEXT, bold=True)
    below = y + 22 < frame.bottom - 4
    baseline = y + 20 if below else y - 9
    canvas.fill(rectangle(_RIGHT - 8 - width, baseline - 14, width + 6, 18), "ground")
    canvas.text(_RIGHT - 4, baseline, words, size=_TEXT, bold=True, anchor="end", halo=True)
