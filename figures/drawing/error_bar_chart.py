"""Draws means with error bars: places from left to right, marks of several series side by side, single readings as small dots."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from figures.drawing.axis import CAP, draw_bar, draw_legend, draw_line, draw_mark, ends_of, legend_rows, mark_corners, mark_label, marks_between, round_ends
from figures.drawing.canvas import Canvas, Point, segments
from figures.drawing.series_names import Box, Drawn, Placed, along, draw_names, name_places
from figures.drawing.sheet import Sheet, draw_notes, notes_height
from figures.drawing.text import text_width, wrap_evenly
from figures.error_bars import BarredMean, BarredSeries, ErrorBarChart

_TEXT = 14.5
_LEADING = 19.0
_LEGEND_LEADING = 22.0
_HEIGHT = 300.0
"""Of the area between the axes [px]."""
_APART, _JOINED_APART = 34.0, 10.0
"""From a series to the next at one place [px]."""
_READING, _BESIDE, _LEAST_BESIDE = 4.0, 11.0, 8.0
"""Diameter of a single reading, its distance from the mean, and the least distance where series stand close [px]."""
NEAR = 0.5
"""With all values above this part of the largest, an axis from 0 would waste most of the sheet."""


@dataclass(frozen=True)
class _Frame:
    """Turns places and values into places on the canvas [px]."""

    sheet: Sheet
    top: float
    low: float
    high: float
    first: float
    last: float
    margin: float
    """Room beside the first and the last place [px]."""

    @property
    def bottom(self) -> float:
        return self.top + _HEIGHT

    def x(self, at: float) -> float:
        left, right = self.sheet.left + self.margin, self.sheet.right - self.margin
        return (left + right) / 2 if self.last == self.first else left + (at - self.first) / (self.last - self.first) * (right - left)

    def y(self, value: float) -> float:
        return self.bottom - (value - self.low) / (self.high - self.low) * _HEIGHT


@dataclass(frozen=True)
class _Mean:
    """A mean in its place, with the ends of its bar and its readings [px]."""

    place: Point
    bar: tuple[Point, Point] | None
    dots: tuple[Point, ...]


def draw_error_bar_chart(chart: ErrorBarChart) -> str:
    """The SVG of the means with their bars; each series is named beside its marks, or in a key where there is no room."""
    low, high, step = round_ends(*span(chart), 7)
    sheet = Sheet.of(chart, wide=(70, 24), narrow=(50, 10)).beside([mark_label(mark, step) for mark in marks_between(low, high, step)], _TEXT)
    heading = sheet.heading(chart.quantity, _TEXT)
    top = 15 + _LEADING * len(heading) + 14
    apart = _dodge(chart, sheet)
    frame = _Frame(sheet, top, low, high, chart.places[0][0], chart.places[-1][0], _margin(chart, sheet) + apart * chart.joined * (len(chart.series) - 1) / 2)
    names = _names(frame, chart, apart, step) if _shares_places(chart) else []
    rows = legend_rows(chart.series, _TEXT, 12, sheet.width - 12) if names is None else []
    if rows:
        frame = replace(frame, top=top + _LEGEND_LEADING * (rows[-1][2] + 1))
    labels = _labels(frame, chart)
    foot = frame.bottom + 25 + _LEADING * max(len(lines) for _, lines in labels)
    notes = sheet.lines([chart.bars] + ([f"The axis begins at {mark_label(low, step)}, not at 0."] if low > 0 else []))
    canvas = Canvas(sheet.width, foot + 18 + notes_height(notes))
    for number, line in enumerate(heading):
        canvas.text(12, 24 + _LEADING * number, line, size=_TEXT)
    draw_legend(canvas, rows, _TEXT, top - 14 + 15, _LEGEND_LEADING)
    _axes(canvas, frame, step)
    _places(canvas, frame, labels)
    canvas.text((sheet.left + sheet.right) / 2, foot, chart.across, size=_TEXT, anchor="middle")
    _draw_means(canvas, chart, _placed(frame, chart, apart))
    draw_names(canvas, names or (), _TEXT)
    draw_notes(canvas, notes, sheet.left, foot + 22)
    return canvas.svg()


def span(chart: ErrorBarChart) -> tuple[float, float]:
    """The lowest and highest value that must find room; 0 is one of them unless all values lie close together far above it."""
    ends = ends_of(chart.series)
    low, high = min(ends), max(ends)
    return (low, high) if low > NEAR * high else (min(low, 0.0), max(high, 0.0))


def _margin(chart: ErrorBarChart, sheet: Sheet) -> float:
    """Room beside the first and the last place [px]: in time a little, else half a place's share."""
    if chart.joined:
        return 22.0 if sheet.narrow else 34.0
    return sheet.room / (2 * len(chart.places))


def _shares_places(chart: ErrorBarChart) -> bool:
    """Whether several series have a mean at one place, so that they must be named apart from it."""
    taken = [mean.at for one in chart.series for mean in one.means]
    return len(taken) != len(set(taken))


def _dodge(chart: ErrorBarChart, sheet: Sheet) -> float:
    """How far the series stand apart [px]; less where places are close, so that no two places mix."""
    if not _shares_places(chart):
        return 0.0
    places = [at for at, _ in chart.places]
    wanted = _JOINED_APART if chart.joined else _APART
    gaps = [(b - a) / ((places[-1] - places[0]) or 1) for a, b in zip(places, places[1:], strict=False)]
    room = min(gaps, default=1.0) * (sheet.room - 2 * _margin(chart, sheet) - wanted * len(chart.series) * chart.joined)
    return min(wanted, max(room, 0.0) / (len(chart.series) + 1)) if gaps else wanted


def _axes(canvas: Canvas, frame: _Frame, step: float) -> None:
    left, right = frame.sheet.left, frame.sheet.right
    marks = marks_between(frame.low, frame.high, step)
    canvas.stroke(segments(((left, frame.y(v)), (right, frame.y(v))) for v in marks), "grid", 0.5)
    for value in marks:
        canvas.text(left - 9, frame.y(value) + 5, mark_label(value, step), size=_TEXT, anchor="end")
    ground = frame.y(0) if frame.low < 0 < frame.high else frame.bottom
    canvas.stroke(segments([((left, frame.top), (left, frame.bottom)), ((left, ground), (right, ground))]), "ink", 1)


def _labels(frame: _Frame, chart: ErrorBarChart) -> list[tuple[float, tuple[str, ...]]]:
    """The words below each place: on several lines where they name things; on a scale only those that find room."""
    if not chart.to_scale:
        return [(frame.x(at), wrap_evenly(label, _TEXT, 2 * frame.margin - 8)) for at, label in chart.places]
    halves = [text_width(label, _TEXT) / 2 for _, label in chart.places]
    last_left = _inside(frame, frame.x(frame.last), halves[-1]) - halves[-1]
    taken, found = float("-inf"), []
    for number, ((at, label), half) in enumerate(zip(chart.places, halves, strict=True)):
        x = _inside(frame, frame.x(at), half)
        has_room = x - half > taken + 8 and (number == len(halves) - 1 or x + half < last_left - 8)
        found.append((frame.x(at), (label,) if has_room else ()))
        taken = x + half if has_room else taken
    return found


def _inside(frame: _Frame, x: float, half: float) -> float:
    """The middle of a label of this half width, moved in where it would leave the sheet [px]."""
    return min(x, frame.sheet.width - 4 - half)


def _places(canvas: Canvas, frame: _Frame, labels: Sequence[tuple[float, tuple[str, ...]]]) -> None:
    canvas.stroke(segments(((x, frame.bottom), (x, frame.bottom + 5)) for x, _ in labels), "ink", 1)
    for x, lines in labels:
        for row, line in enumerate(lines):
            canvas.text(_inside(frame, x, text_width(line, _TEXT) / 2), frame.bottom + 22 + _LEADING * row, line, size=_TEXT, anchor="middle")


def _placed(frame: _Frame, chart: ErrorBarChart, apart: float) -> list[list[_Mean]]:
    """The means of each series on the sheet."""
    beside = max(_LEAST_BESIDE, min(_BESIDE, 0.45 * apart)) if len(chart.series) > 1 else _BESIDE
    found = []
    for number, one in enumerate(chart.series):
        shift = apart * (number - (len(chart.series) - 1) / 2)
        side = -1 if chart.joined and number == 0 else 1
        found.append([_mean(frame, mean, frame.x(mean.at) + shift, side * beside) for mean in one.means])
    return found


def _mean(frame: _Frame, mean: BarredMean, x: float, beside: float) -> _Mean:
    bar = ((x, frame.y(mean.mean - mean.error)), (x, frame.y(mean.mean + mean.error))) if mean.error else None
    return _Mean((x, frame.y(mean.mean)), bar, tuple((x + beside, frame.y(reading)) for reading in mean.readings))


def _draw_means(canvas: Canvas, chart: ErrorBarChart, placed: Sequence[Sequence[_Mean]]) -> None:
    """Lines first, then readings and bars, then marks, so that no mark is covered."""
    for one, means in zip(chart.series, placed, strict=True) if chart.joined else ():
        draw_line(canvas, [mean.place for mean in means], one)
    for one, means in zip(chart.series, placed, strict=True):
        for mean in means:
            if mean.dots:
                canvas.dots([(dot, dot) for dot in mean.dots], "muted", _READING)
            if mean.bar:
                draw_bar(canvas, *mean.bar, one)
    for one, means in zip(chart.series, placed, strict=True):
        for mean in means:
            draw_mark(canvas, mean.place, one.mark, one.role, part=f"mean {one.label}")


def _names(frame: _Frame, chart: ErrorBarChart, apart: float, step: float) -> list[Placed] | None:
    """Each series' name with a place beside its marks or its line, on no line of the grid where there is room, if all find one."""
    drawn = [_drawn(one, means, chart.joined) for one, means in zip(chart.series, _placed(frame, chart, apart), strict=True)]
    zero = frame.y(0)
    bounds = (frame.sheet.left + 6, frame.top + 3, frame.sheet.right - 2, frame.bottom - 4)
    level = [_across(frame, zero)] if frame.low < 0 < frame.high else []
    grid = [_across(frame, frame.y(value)) for value in marks_between(frame.low, frame.high, step)]
    return name_places(drawn, _TEXT, bounds, [*level, *grid]) or name_places(drawn, _TEXT, bounds, level)


def _across(frame: _Frame, y: float) -> Box:
    """The room that a level line takes."""
    return frame.sheet.left, y - 1, frame.sheet.right, y + 1


def _drawn(one: BarredSeries, means: Sequence[_Mean], joined: bool) -> Drawn:
    line = along([mean.place for mean in means]) if joined else []
    bars = [point for mean in means if mean.bar for point in along(mean.bar)]
    caps = [(x + side * CAP, y) for mean in means if mean.bar for x, y in mean.bar for side in (-1, 1)]
    marks = [corner for mean in means for corner in mark_corners(mean.place, one.mark)]
    dots = [dot for mean in means for dot in mean.dots]
    ends = [end for mean in means if mean.bar for end in mean.bar]
    return Drawn(one.label, line or [*(mean.place for mean in means), *ends, *dots], [*line, *bars, *caps, *marks, *dots])
