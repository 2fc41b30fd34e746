"""Draws means with error bars: places from left to right, marks of several series side by side, single readings as small dots."""

from __future__ import annotations

from dataclasses import dataclass

from figures.drawing.axis import draw_bar, draw_legend, draw_mark, ends_of, legend_rows, mark_label, marks_between, round_ends
from figures.drawing.canvas import Canvas, Point, polyline, segments
from figures.drawing.text import SMALLEST, size_to_fit, text_width
from figures.error_bars import BarredMean, ErrorBarChart

WIDTH = 700
_LEFT, _RIGHT = 70.0, 676.0
_TEXT, _SMALL = 14.5, SMALLEST
_LEGEND_TOP, _LEADING = 50.0, 22.0
_HEIGHT = 300.0
"""Of the area between the axes [px]."""
_MARGIN = 34.0
"""Room beside the first and the last place [px]."""
_APART, _JOINED_APART = 34.0, 10.0
"""From a series to the next at one place [px]."""
_READING, _BESIDE, _LEAST_BESIDE = 4.0, 11.0, 8.0
"""Diameter of a single reading, its distance from the mean, and the least distance where series stand close [px]."""
NEAR = 0.5
"""With all values above this part of the largest, an axis from 0 would waste most of the sheet."""


@dataclass(frozen=True)
class _Frame:
    """Turns places and values into places on the canvas [px]."""

    top: float
    low: float
    high: float
    first: float
    last: float
    apart: float

    @property
    def bottom(self) -> float:
        return self.top + _HEIGHT

    def x(self, at: float) -> float:
        left, right = _LEFT + _MARGIN + self.apart, _RIGHT - _MARGIN - self.apart
        return (left + right) / 2 if self.last == self.first else left + (at - self.first) / (self.last - self.first) * (right - left)

    def y(self, value: float) -> float:
        return self.bottom - (value - self.low) / (self.high - self.low) * _HEIGHT


def draw_error_bar_chart(chart: ErrorBarChart) -> str:
    """The SVG of the means with their bars."""
    rows = legend_rows(chart.series, _TEXT, 12, WIDTH - 12) if _shares_places(chart) else []
    top = _LEGEND_TOP + (_LEADING * (rows[-1][2] + 1) if rows else 0)
    low, high, step = round_ends(*span(chart), 7)
    apart = _dodge(chart)
    frame = _Frame(top, low, high, chart.places[0][0], chart.places[-1][0], apart * (len(chart.series) - 1) / 2)
    notes = [chart.bars] + ([f"The axis begins at {mark_label(low, step)}, not at 0."] if low > 0 else [])
    canvas = Canvas(WIDTH, frame.bottom + 62 + 19 * len(notes))
    canvas.text(12, 24, chart.quantity, size=size_to_fit(chart.quantity, _TEXT, WIDTH - 24))
    draw_legend(canvas, rows, _TEXT, _LEGEND_TOP, _LEADING)
    _axes(canvas, frame, chart, step)
    _means(canvas, frame, chart, apart)
    for number, note in enumerate(notes):
        canvas.text(_LEFT, frame.bottom + 66 + 19 * number, note, size=size_to_fit(note, _SMALL, _RIGHT - _LEFT), role="muted")
    return canvas.svg()


def span(chart: ErrorBarChart) -> tuple[float, float]:
    """The lowest and highest value that must find room; 0 is one of them unless all values lie close together far above it."""
    ends = ends_of(chart.series)
    low, high = min(ends), max(ends)
    return (low, high) if low > NEAR * high else (min(low, 0.0), max(high, 0.0))


def _shares_places(chart: ErrorBarChart) -> bool:
    """Whether several series have a mean at one place, so that a legend must tell them apart."""
    taken = [mean.at for one in chart.series for mean in one.means]
    return len(taken) != len(set(taken))


def _dodge(chart: ErrorBarChart) -> float:
    """How far the series stand apart [px]; less where places are close, so that no two places mix."""
    if not _shares_places(chart):
        return 0.0
    places = [at for at, _ in chart.places]
    wanted = _JOINED_APART if chart.joined else _APART
    gaps = [(b - a) / ((places[-1] - places[0]) or 1) for a, b in zip(places, places[1:], strict=False)]
    room = min(gaps, default=1.0) * (_RIGHT - _LEFT - 2 * _MARGIN - wanted * len(chart.series))
    return min(wanted, room / (len(chart.series) + 1))


def _axes(canvas: Canvas, frame: _Frame, chart: ErrorBarChart, step: float) -> None:
    marks = marks_between(frame.low, frame.high, step)
    canvas.stroke(segments(((_LEFT, frame.y(v)), (_RIGHT, frame.y(v))) for v in marks), "grid", 0.5)
    for value in marks:
        canvas.text(_LEFT - 9, frame.y(value) + 5, mark_label(value, step), size=_TEXT, anchor="end")
    ground = frame.y(0) if frame.low < 0 < frame.high else frame.bottom
    lines = [((_LEFT, frame.top), (_LEFT, frame.bottom)), ((_LEFT, ground), (_RIGHT, ground))]
    canvas.stroke(segments(lines), "ink", 1)
    last_left = frame.x(chart.places[-1][0]) - text_width(chart.places[-1][1], _TEXT) / 2
    taken = float("-inf")
    ticks = []
    for number, (at, label) in enumerate(chart.places):
        x, width = frame.x(at), text_width(label, _TEXT)
        ticks.append(((x, frame.bottom), (x, frame.bottom + 5)))
        is_last = number == len(chart.places) - 1
        if x - width / 2 > taken + 8 and (is_last or x + width / 2 < last_left - 8):
            canvas.text(x, frame.bottom + 22, label, size=_TEXT, anchor="middle")
            taken = x + width / 2
    canvas.stroke(segments(ticks), "ink", 1)
    canvas.text((_LEFT + _RIGHT) / 2, frame.bottom + 44, chart.across, size=_TEXT, anchor="middle")


def _means(canvas: Canvas, frame: _Frame, chart: ErrorBarChart, apart: float) -> None:
    """Lines first, then readings and bars, then marks, so that no mark is covered."""
    shifts = [apart * (number - (len(chart.series) - 1) / 2) for number in range(len(chart.series))]
    placed = [[(mean, _place(frame, mean, shift)) for mean in one.means] for one, shift in zip(chart.series, shifts, strict=True)]
    if chart.joined:
        for one, means in zip(chart.series, placed, strict=True):
            canvas.stroke(polyline([place for _, place in means]), one.role, 1.6, part=f"line {one.label}")
    beside = max(_LEAST_BESIDE, min(_BESIDE, 0.45 * apart)) if len(chart.series) > 1 else _BESIDE
    for number, (one, means) in enumerate(zip(chart.series, placed, strict=True)):
        side = -1 if chart.joined and number == 0 else 1
        for mean, (x, y) in means:
            dots = [(x + side * beside, frame.y(reading)) for reading in mean.readings]
            if dots:
                canvas.dots([(dot, dot) for dot in dots], "muted", _READING)
            if mean.error:
                draw_bar(canvas, (x, frame.y(mean.mean - mean.error)), (x, frame.y(mean.mean + mean.error)), one.role, part=f"bar {one.label}")
    for one, means in zip(chart.series, placed, strict=True):
        for _, place in means:
            draw_mark(canvas, place, one.mark, one.role, part=f"mean {one.label}")


def _place(frame: _Frame, mean: BarredMean, shift: float) -> Point:
    return frame.x(mean.at) + shift, frame.y(mean.mean)
