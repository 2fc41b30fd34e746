"""Draws a climate diagram on the scaling of Walter and Lieth, with dry season dotted and humid season hatched."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from figures.climate_diagram import ClimateDiagram
from figures.drawing.canvas import Canvas, polygon, polyline, rectangle, segments
from figures.drawing.climate_frame import (
    COLD_WORDS, SCALE_CHANGE, SCALE_WORDS, Frame, Pen, bounds, cold_stretches, draw_areas, draw_cold_months, draw_curves,
    draw_frame, draw_temperature_mark, month_names,
)  # fmt: skip
from figures.drawing.text import LEADING, SMALLEST, block_size, size_to_fit, text_width, wrap
from figures.drawing.walter_lieth import Vertex, at, precipitation_height, seasons, vertices



@dataclass(frozen=True)
class _Sheet:
    """How wide a diagram is and where its frame stands [px]."""

    width: float
    left: float
    right: float
    top: float
    pen: Pen
    narrow: bool
    """Whether months are told by their first letters and the year's values stand below the station's name."""

    @property
    def bottom(self) -> float:
        return self.top + _HEIGHT


_HEIGHT = 300.0
_TEXT = 14.5
_BAND, _BAND_HEIGHT, _COLD_BAR = 34.0, 24.0, 8.0
"""The band of seasons below the frame, its height, and the height of the bar above it that marks cold months [px]."""
_PEN = Pen(hatches=60, hatch=1.4, dot=2.4, pitch=9.0, precipitation=3.5, temperature=2.2, month_dot=7)
_WIDE = _Sheet(700, 62, 638, 104, _PEN, narrow=False)
_NARROW = _Sheet(400, 44, 346, 104, replace(_PEN, hatches=36), narrow=True)


def _frame(sheet: _Sheet, points: Sequence[Vertex]) -> tuple[Frame, int]:
    """The frame of one diagram and the step of its temperature axis [degC]."""
    heights = [height for _, temp, precip in points for height in (temp, precip)]
    step = 10 if max(heights) - min(temp for _, temp, _ in points) < 110 else 20
    low, high = bounds([min(temp for _, temp, _ in points), max(heights)], step)
    return Frame(sheet.left, sheet.right, sheet.top, sheet.bottom, low, high), step


def draw_climate_diagram(chart: ClimateDiagram) -> str:
    """The SVG of one station's mean year."""
    points = vertices(chart.monthly_mean_temp_degc, chart.monthly_precip_mm, chart.southern)
    sheet = replace(_NARROW, top=_narrow_top(chart)) if chart.narrow else _WIDE
    frame, step = _frame(sheet, points)
    cold = cold_stretches(chart.monthly_mean_temp_degc, chart.southern)
    band = frame.bottom + _BAND + (_COLD_BAR + 6) * bool(cold)
    notes = _notes(sheet, frame, bool(cold))
    canvas = Canvas(sheet.width, math.ceil(band + _BAND_HEIGHT + 10 + sum(_note_height(lines) for _, _, lines in notes)))
    (_narrow_header if chart.narrow else _header)(canvas, sheet, chart)
    _grid(canvas, frame, step)
    draw_areas(canvas, frame, points, sheet.pen)
    draw_frame(canvas, frame)
    _axes(canvas, sheet, frame, step, max(temp for _, temp, _ in points), chart.southern)
    draw_cold_months(canvas, frame, cold, frame.bottom + _BAND - 5, _COLD_BAR)
    _season_band(canvas, frame, points, band)
    _draw_notes(canvas, frame, notes, band + _BAND_HEIGHT + 8)
    draw_curves(canvas, frame, points, sheet.pen)
    _curve_names(canvas, frame, points)
    return canvas.svg()


def _header(canvas: Canvas, sheet: _Sheet, chart: ClimateDiagram) -> None:
    right = sheet.width - 12
    for label, caption in ((chart.total_label, "total of the year"), (chart.mean_label, "mean of the year")):
        canvas.text(right, 28, label, size=19, bold=True, anchor="end")
        canvas.text(right, 49, caption, size=_TEXT, role="muted", anchor="end")
        right -= 24 + max(text_width(label, 19, bold=True), text_width(caption, _TEXT))
    room = right - 12
    names = wrap(chart.station, 15, room, bold=True)
    if len(names) == 1:
        canvas.text(12, 28, chart.station, size=size_to_fit(chart.station, 20, room, bold=True), bold=True)
    for number, line in enumerate(names if len(names) > 1 else ()):
        canvas.text(12, 18 + 17 * number, line, size=15, bold=True)
    for number, line in enumerate(wrap(chart.place, SMALLEST, room)):
        canvas.text(12, 49 + 7 * (len(names) > 1) + 17 * number, line, size=SMALLEST, role="muted")


def _narrow_lines(chart: ClimateDiagram) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The lines of the station's name and of its place."""
    room = _NARROW.width - 16
    return wrap(chart.station, 16, room, bold=True), wrap(chart.place, SMALLEST, room)


def _narrow_top(chart: ClimateDiagram) -> float:
    """Where the frame of a narrow diagram begins, below its header."""
    names, places = _narrow_lines(chart)
    return 92 + 19 * len(names) + 17 * len(places)


def _narrow_header(canvas: Canvas, sheet: _Sheet, chart: ClimateDiagram) -> None:
    """Name and place above each other, below them the values of the year side by side."""
    names, places = _narrow_lines(chart)
    for number, line in enumerate(names):
        canvas.text(8, 20 + 19 * number, line, size=16, bold=True)
    for number, line in enumerate(places):
        canvas.text(8, 20 + 19 * len(names) + 17 * number, line, size=SMALLEST, role="muted")
    y = sheet.top - 56
    for x, anchor, label, caption in (
        (8.0, "start", chart.mean_label, "mean of the year"), (sheet.width - 8, "end", chart.total_label, "total of the year"),
    ):  # fmt: skip
        canvas.text(x, y, label, size=16, bold=True, anchor=anchor)
        canvas.text(x, y + 17, caption, size=SMALLEST, role="muted", anchor=anchor)


def _grid(canvas: Canvas, frame: Frame, step: int) -> None:
    heights = [height for height in range(int(frame.low), int(frame.high) + 1, step) if height not in (0, frame.low)]
    canvas.stroke(segments((frame.place(0, h), frame.place(12, h)) for h in heights), "grid", 0.5)


def _axes(canvas: Canvas, sheet: _Sheet, frame: Frame, step: int, warmest: float, southern: bool) -> None:
    for number, month in enumerate(month_names(southern)):
        canvas.text(frame.x(number + 0.5), frame.bottom + 20, month[:1] if sheet.narrow else month, size=_TEXT, anchor="middle")
    ticks = [(frame.place(month, frame.low), (frame.x(month), frame.bottom + 5)) for month in range(13)]
    for height in range(int(frame.low), int(min(frame.high, step * math.ceil(max(warmest, 1) / step))) + 1, step):
        ticks.append((frame.place(0, height), (frame.left - 5, frame.y(height))))
        canvas.text(frame.left - 9, frame.y(height) + 5, f"{height}".replace("-", "−"), size=_TEXT, anchor="end")
    for precip in _precipitation_ticks(frame, step):
        y = frame.y(precipitation_height(precip))
        ticks.append(((frame.right, y), (frame.right + 5, y)))
        canvas.text(frame.right + 9, y + 5, f"{precip:g}", size=_TEXT)
    canvas.stroke(segments(ticks), "ink", 1)
    _axis_titles(canvas, sheet)
    if frame.high > SCALE_CHANGE:
        _scale_change(canvas, frame)


def _precipitation_ticks(frame: Frame, step: int) -> list[float]:
    below = range(0, 101, 20) if step == 10 else range(0, 101, 50)
    above = range(100, 100_000, 20 * step)
    return [mm for mm in sorted({*below, *above}) if precipitation_height(mm) <= frame.high]


def _axis_titles(canvas: Canvas, sheet: _Sheet) -> None:
    y, edge = sheet.top - 14, 8 if sheet.narrow else 12
    draw_temperature_mark(canvas, [(edge, y - 5), (edge + 28, y - 5)], sheet.pen)
    canvas.text(edge + 35, y, "Temperature, °C", size=_TEXT)
    title = "Precipitation, mm"
    canvas.text(sheet.width - edge - 35, y, title, size=_TEXT, anchor="end")
    canvas.stroke(polyline([(sheet.width - edge - 28, y - 5), (sheet.width - edge, y - 5)]), "water", 3.5)


def _scale_change(canvas: Canvas, frame: Frame) -> None:
    y = frame.y(SCALE_CHANGE)
    canvas.stroke(segments([((frame.left, y), (frame.right, y))]), "ink", 1.2, dash=(6, 4))


def _season_band(canvas: Canvas, frame: Frame, points: Sequence[Vertex], top: float) -> None:
    bottom = top + _BAND_HEIGHT
    for start, end, dry in seasons(points):
        left, right = frame.x(start), frame.x(end)
        canvas.stroke(polygon([(left, top), (right, top), (right, bottom), (left, bottom)]), "muted", 1)
        words = ("dry season", "dry") if dry else ("humid season", "humid")
        word = next((word for word in words if text_width(word, _TEXT) + 28 <= right - left), None)
        room = (right - left - (text_width(word, _TEXT) if word else 0)) / 2
        for edge, inward in ((left, 1), (right, -1)):
            _season_sample(canvas, edge, inward, room - 6, top, dry)
        if word:
            canvas.text((left + right) / 2, top + 17, word, size=_TEXT, anchor="middle")


def _notes(sheet: _Sheet, frame: Frame, cold: bool) -> list[tuple[str, float, tuple[str, ...]]]:
    """The bar of cold months and the change of scale, where there are any, as (colour of the sample, its height, lines)."""
    wanted = ((cold, "ink", _COLD_BAR, COLD_WORDS), (frame.high > SCALE_CHANGE, "water", SMALLEST, SCALE_WORDS))
    return [(role, height, wrap(words, SMALLEST, sheet.width - sheet.left - 34 - (4 if sheet.narrow else 12))) for shown, role, height, words in wanted if shown]


def _note_height(lines: Sequence[str]) -> float:
    return SMALLEST * LEADING * len(lines) + 4


def _draw_notes(canvas: Canvas, frame: Frame, notes: Sequence[tuple[str, float, tuple[str, ...]]], top: float) -> None:
    for role, height, lines in notes:
        canvas.fill(rectangle(frame.left, top + (SMALLEST * LEADING - height) / 2 + 1, 26, height), role)
        for number, line in enumerate(lines):
            canvas.text(frame.left + 34, top + SMALLEST * (1 + LEADING * number), line, size=SMALLEST)
        top += _note_height(lines)


def _season_sample(canvas: Canvas, edge: float, inward: int, room: float, top: float, dry: bool) -> None:
    """The season's own pattern from an end of its band to its words, so that the band explains the areas."""
    steps = [edge + inward * offset for offset in range(4, math.ceil(room), 4)]
    if dry:
        dots = [(x, top + 6 + 4 * row) for number, x in enumerate(steps) for row in range(4) if (row + number) % 2 == 0]
        if dots:
            canvas.dots(((dot, dot) for dot in dots), "heat", 2.2)
    elif steps[::2]:
        canvas.stroke(segments(((x, top + 4), (x, top + 20)) for x in steps), "water", 1.4, part="humid sample")


def _curve_names(canvas: Canvas, frame: Frame, points: Sequence[Vertex]) -> None:
    """Each curve's name where there is most room beside it."""
    taken: list[tuple[float, float, float, float]] = []
    for curve, name in ((0, "temperature"), (1, "precipitation")):
        width, height = block_size((name,), _TEXT)
        candidates = [
            (left, edge + gap if below else edge - gap - height)
            for left in range(int(frame.left) + 12, int(frame.right - width) - 12, 6)
            for below in (False, True)
            for gap in (8, 16)
            for edge in [_edge(frame, points, curve, left, left + width, below)]
        ]
        left, top = min(candidates, key=lambda c: _name_cost(frame, points, curve, (*c, width, height), taken))
        taken.append((left, top, width, height))
        canvas.text(left, top + height * 0.79, name, size=_TEXT, bold=True, halo=True)


def _edge(frame: Frame, points: Sequence[Vertex], curve: int, left: float, right: float, below: bool) -> float:
    ys = [frame.y(at(points, month)[curve]) for month in _months_between(frame, left, right)]
    return max(ys) if below else min(ys)


def _months_between(frame: Frame, left: float, right: float) -> list[float]:
    start, end = map(frame.month, (left, right))
    return [start + (end - start) * share / 12 for share in range(13)]


def _name_cost(
    frame: Frame, points: Sequence[Vertex], curve: int, box: tuple[float, float, float, float],
    taken: Sequence[tuple[float, float, float, float]],
) -> float:  # fmt: skip
    """How badly a name stands: on a curve, on another name, outside the frame, on the zero line, or away from its curve."""
    left, top, width, height = box
    cost = 0.0
    if top < frame.top + 3 or top + height > frame.bottom - 3:
        cost += 1000
    if any(left < l + w + 8 and l < left + width + 8 and top < t + h + 4 and t < top + height + 4 for l, t, w, h in taken):
        cost += 1000
    if frame.low < 0 and top - 2 < frame.y(0) < top + height + 2:
        cost += 25
    if frame.high > SCALE_CHANGE and top - 2 < frame.y(SCALE_CHANGE) < top + height + 2:
        cost += 25
    for month in _months_between(frame, left - 8, left + width + 8):
        heights = at(points, month)
        distance = [_distance(frame.y(h), top, top + height) for h in heights]
        cost += 30 * (distance[1 - curve] < 6) + 60 * (distance[curve] < 3)
        cost += 8 * (distance[1 - curve] < distance[curve]) + 0.06 * distance[curve]
        low, high = frame.y(max(heights[0], 0)), frame.y(heights[1])
        cost += 1.2 * (min(low, high) < top + height and top < max(low, high))
        cost += 12 * (heights[1] > SCALE_CHANGE and frame.y(heights[1]) < top + height + 4 and top - 4 < frame.y(SCALE_CHANGE))
    return cost


def _distance(y: float, top: float, bottom: float) -> float:
    return max(top - y, y - bottom, 0)
