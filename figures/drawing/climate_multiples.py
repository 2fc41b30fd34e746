"""Draws many climate diagrams in a grid on one common scale; only the outer panels carry numbers."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from figures.climate_multiples import ClimateMultiples, ClimatePanel
from figures.drawing.canvas import Canvas, polyline, rectangle, segments
from figures.drawing.climate_frame import (
    COLD_WORDS, SCALE_CHANGE, SCALE_WORDS, Frame, Pen, bounds, cold_stretches, draw_areas, draw_cold_months, draw_curves,
    draw_frame, draw_temperature_mark, month_names,
)  # fmt: skip
from figures.drawing.sheet import Sheet
from figures.drawing.text import SMALLEST, text_width, wrap
from figures.drawing.walter_lieth import SCALE_CHANGE_MM, Vertex, precipitation_height, vertices

_COLUMNS, _NARROW_COLUMNS, _GAP = 4, 2, 14
_WIDEST = 260.0
_TITLE, _TEXT = 14.5, SMALLEST
_TOP, _TITLE_LINE, _TEXT_LINE, _FOOT, _KEY_LINE, _SAMPLE = 40.0, 18.0, 17.0, 44.0, 22.0, 30.0
_COLD_BAR = 5.0
_HEIGHTS, _PX_PER_DEGC = (104.0, 170.0), 1.35
_PEN = Pen(hatches=36, hatch=1, dot=1.8, pitch=6.0, precipitation=2.4, temperature=1.6, month_dot=4)


@dataclass(frozen=True)
class _Head:
    """The lines above a panel."""

    title: tuple[str, ...]
    subtitle: tuple[str, ...]

    @property
    def height(self) -> float:
        return _TITLE_LINE * len(self.title) + _TEXT_LINE * len(self.subtitle)


def common_bounds(years: Sequence[Sequence[Vertex]]) -> tuple[int, int, int]:
    """Bottom and top [degC] of all frames, in whole steps, and the step of the temperature axis."""
    heights = [height for points in years for _, temp, precip in points for height in (temp, precip)]
    lowest = min(temp for points in years for _, temp, _ in points)
    step = 10 if max(heights) - lowest < 45 else 20
    low, high = bounds([lowest, max(heights)], step)
    return low, high, step


def draw_climate_multiples(chart: ClimateMultiples) -> str:
    """The SVG of all panels.

    Raises
    ------
    ValueError
        If there is no panel.
    """
    if not chart.panels:
        raise ValueError(f"{chart.name}: no climate to draw")
    years = [vertices(p.monthly_mean_temp_degc, p.monthly_precip_mm, p.southern) for p in chart.panels]
    low, high, step = common_bounds(years)
    sheet = Sheet.of(chart, wide=(46, 48), narrow=(38, 46))
    columns = min(_NARROW_COLUMNS if sheet.narrow else _COLUMNS, len(years))
    width = min(_WIDEST, (sheet.room - _GAP * (columns - 1)) / columns)
    height = min(max((high - low) * _PX_PER_DEGC, _HEIGHTS[0]), _HEIGHTS[1])
    heads = [_head(panel, width) for panel in chart.panels]
    tops, bottom = _rows(heads, columns, height, _TOP + _KEY_LINE * sheet.narrow)
    key = _key(high > SCALE_CHANGE, any(min(panel.monthly_mean_temp_degc) < 0 for panel in chart.panels))
    lines = _key_lines(key, sheet)
    canvas = Canvas(sheet.width, math.ceil(bottom + _KEY_LINE * len(lines) + 4))
    _axis_titles(canvas, sheet, sheet.left + columns * (width + _GAP) - _GAP)
    for number, (panel, points) in enumerate(zip(chart.panels, years, strict=True)):
        row, column = divmod(number, columns)
        left = sheet.left + column * (width + _GAP)
        frame = Frame(left, left + width, tops[row], tops[row] + height, low, high)
        _panel(canvas, frame, points, number, step)
        _head_text(canvas, frame, heads[number])
        months = month_names(panel.southern)
        draw_cold_months(canvas, frame, cold_stretches(panel.monthly_mean_temp_degc, panel.southern), frame.bottom + 3, _COLD_BAR)
        canvas.text(frame.left, frame.bottom + 23, months[0], size=_TEXT)
        canvas.text(frame.right, frame.bottom + 23, months[-1], size=_TEXT, anchor="end")
        if column == 0:
            _temperature_axis(canvas, frame, points_of_row(years, row, columns), step)
        if column == columns - 1 or number == len(years) - 1:
            _precipitation_axis(canvas, frame)
    for number, samples in enumerate(lines):
        for x, pattern, words in samples:
            _key_sample(canvas, x, bottom + _KEY_LINE * number, pattern, words)
    return canvas.svg()


def points_of_row(years: Sequence[Sequence[Vertex]], row: int, columns: int) -> list[Vertex]:
    """All vertices of the panels in one row of the grid."""
    return [vertex for points in years[row * columns : (row + 1) * columns] for vertex in points]


def _head(panel: ClimatePanel, width: float) -> _Head:
    subtitle = (line for part in panel.subtitle.split("\n") if part for line in wrap(part, _TEXT, width))
    return _Head(wrap(panel.title, _TITLE, width, bold=True), tuple(subtitle))


def _rows(heads: Sequence[_Head], columns: int, height: float, top: float) -> tuple[list[float], float]:
    """The top of the frames in each row [px], and where the last row ends with its months."""
    tops: list[float] = []
    y = top
    for start in range(0, len(heads), columns):
        tops.append(y + max(head.height for head in heads[start : start + columns]) + 3)
        y = tops[-1] + height + _FOOT
    return tops, y


def _head_text(canvas: Canvas, frame: Frame, head: _Head) -> None:
    y = frame.top - 3 - head.height
    for line in head.title:
        y += _TITLE_LINE
        canvas.text(frame.left, y - 4, line, size=_TITLE, bold=True)
    for line in head.subtitle:
        y += _TEXT_LINE
        canvas.text(frame.left, y - 3.5, line, size=_TEXT, role="muted")


def _panel(canvas: Canvas, frame: Frame, points: Sequence[Vertex], number: int, step: int) -> None:
    levels = [h for h in range(int(frame.low), int(frame.high) + 1, step) if h not in (0, frame.low, frame.high)]
    canvas.stroke(segments((frame.place(0, h), frame.place(12, h)) for h in levels), "grid", 0.5)
    draw_areas(canvas, frame, points, _PEN)
    draw_frame(canvas, frame)
    if frame.high > SCALE_CHANGE:
        canvas.stroke(segments([(frame.place(0, SCALE_CHANGE), frame.place(12, SCALE_CHANGE))]), "ink", 1, dash=(4, 3))
    draw_curves(canvas, frame, points, _PEN, suffix=f" {number}")


def _temperature_axis(canvas: Canvas, frame: Frame, points: Sequence[Vertex], step: int) -> None:
    warmest = max(max(temp for _, temp, _ in points), step)
    ticks = []
    for height in range(int(frame.low), int(min(frame.high, step * math.ceil(warmest / step))) + 1, step):
        ticks.append((frame.place(0, height), (frame.left - 4, frame.y(height))))
        canvas.text(frame.left - 7, frame.y(height) + 5, f"{height}".replace("-", "−"), size=_TEXT, anchor="end")
    canvas.stroke(segments(ticks), "ink", 1)


def precipitation_ticks(frame: Frame) -> list[float]:
    """Values [mm] for the right axis that stand at least 17 px apart, 0 and 100 mm always among them where they fit."""
    ticks: list[float] = []
    for mm in (0.0, SCALE_CHANGE_MM, 50.0, *map(float, range(500, 10_000, 500)), 200.0, 300.0):
        y = frame.y(precipitation_height(mm))
        if y >= frame.top - 1 and all(abs(y - frame.y(precipitation_height(other))) >= 17 for other in ticks):
            ticks.append(mm)
    return sorted(ticks)


def _precipitation_axis(canvas: Canvas, frame: Frame) -> None:
    ticks = []
    for mm in precipitation_ticks(frame):
        y = frame.y(precipitation_height(mm))
        ticks.append(((frame.right, y), (frame.right + 4, y)))
        canvas.text(frame.right + 7, y + 5, f"{mm:g}", size=_TEXT)
    canvas.stroke(segments(ticks), "ink", 1)


def _axis_titles(canvas: Canvas, sheet: Sheet, right: float) -> None:
    """The curves with what they show, beside each other or, on a narrow sheet, on two lines."""
    draw_temperature_mark(canvas, [(8, 13), (34, 13)], _PEN)
    canvas.text(40, 18, "Temperature, °C (left)", size=_TITLE)
    if sheet.narrow:
        canvas.stroke(polyline([(8, 13 + _KEY_LINE), (34, 13 + _KEY_LINE)]), "water", _PEN.precipitation)
        canvas.text(40, 18 + _KEY_LINE, "Precipitation, mm (right)", size=_TITLE)
        return
    x = max(right + 40, 430) if right < sheet.width - 100 else sheet.width - 6
    canvas.stroke(polyline([(x - 26, 13), (x, 13)]), "water", _PEN.precipitation)
    canvas.text(x - 32, 18, "Precipitation, mm (right)", size=_TITLE, anchor="end")


def _key(above_change: bool, cold: bool) -> list[list[tuple[str, str]]]:
    """Lines of the key as (pattern, words)."""
    first = [("humid", "humid season"), ("dry", "dry season"), *[("cold", COLD_WORDS)] * cold]
    if not above_change:
        return [first]
    return [first, [("solid", SCALE_WORDS)]]


def _key_lines(key: Sequence[Sequence[tuple[str, str]]], sheet: Sheet) -> list[list[tuple[float, str, str]]]:
    """Samples as (place across [px], pattern, words), broken where the sheet ends; words that go on have no pattern."""
    left = 8.0 if sheet.narrow else sheet.left
    lines: list[list[tuple[float, str, str]]] = []
    for samples in key:
        x = left
        lines.append([])
        for pattern, words in samples:
            first, *more = wrap(words, _TEXT, sheet.width - left - _SAMPLE - 8)
            if x > left and x + _SAMPLE + text_width(first, _TEXT) > sheet.width:
                x = left
                lines.append([])
            lines[-1].append((x, pattern, first))
            lines += [[(x, "", line)] for line in more]
            x += _SAMPLE + text_width(first, _TEXT) + 26
    return lines


def _key_sample(canvas: Canvas, x: float, top: float, pattern: str, words: str) -> None:
    """A patch of the pattern and what it means."""
    box = rectangle(x, top, 24, 13)
    if pattern == "humid":
        canvas.stroke(segments(((x + 2 + 4 * n, top), (x + 2 + 4 * n, top + 13)) for n in range(6)), "water", _PEN.hatch)
    elif pattern == "dry":
        dots = [(x + 3 + 3 * n, top + 3 + 3 * row) for n in range(7) for row in range(3) if (n + row) % 2 == 0]
        canvas.dots(((dot, dot) for dot in dots), "heat", _PEN.dot)
    elif pattern == "cold":
        canvas.fill(rectangle(x, top + 4, 24, _COLD_BAR), "ink")
    elif pattern:
        canvas.fill(box, "water")
    if pattern and pattern != "cold":
        canvas.stroke(box, "muted", 1)
    canvas.text(x + _SAMPLE, top + 11, words, size=_TEXT)
