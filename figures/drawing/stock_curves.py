"""Draws stocks through time: full lines for what is changed, broken ones for what goes on as it is, each with its last stock.

An axis that does not begin at zero has a zigzag at its foot, and the key says what that means.
"""

from __future__ import annotations

from collections.abc import Sequence

from figures.drawing.canvas import Canvas, Point, polyline, segments
from figures.drawing.sheet import Sheet
from figures.drawing.text import LEADING, text_width, wrap_evenly
from figures.stock_curves import StockCurves, StockPanel, Ticks

_TEXT, _TITLE = 14.5, 16.0
_HEAD, _ROW, _FOOT = 34.0, 246.0, 14.0
"""Heights of the key, of a row of panels with the words under its years, and of the edge below [px]."""
_TOP, _BOTTOM = 40.0, 54.0
"""Room above and below the frame inside a panel [px]."""
_GAP = 9.0
_SAMPLE, _ZIGZAG_SAMPLE, _KEY_ROW = 46.0, 20.0, 24.0
"""From a sample of the key to its words, and from row to row [px]."""
_ZIGZAG = 20.0
"""Height of the foot of an axis that does not begin at zero [px]."""
BREAK_WORDS = "axis does not begin at 0"
_APART = 19.0
"""From baseline to baseline of the two labels at the end of a panel's curves [px]."""


class _Frame:
    """Turns years and stocks of one panel into places on the canvas [px]."""

    def __init__(self, panel: StockPanel, years: Ticks, left: float, top: float, width: float, more: float, margins: tuple[float, float]) -> None:
        self.left, self.right = left + margins[0], left + width - margins[1]
        self.top, self.foot = top + _TOP + more, top + _ROW - _BOTTOM + more
        self.bottom = self.foot - (_ZIGZAG if panel.begins_above_zero else 0.0)
        self.years, self.stocks = (years[0][0], years[-1][0]), (panel.ticks[0][0], panel.ticks[-1][0])

    def place(self, year: float, stock: float) -> Point:
        first, last = self.years
        low, high = self.stocks
        across, up = (year - first) / (last - first), (stock - low) / (high - low)
        return self.left + across * (self.right - self.left), self.bottom - up * (self.bottom - self.top)


def draw_stock_curves(chart: StockCurves) -> str:
    """The SVG of all panels."""
    sheet = Sheet.of(chart, wide=(12, 4), narrow=(12, 4))
    columns = 1 if sheet.narrow or len(chart.panels) <= 2 else 2
    rows = -(-len(chart.panels) // columns)
    is_cut = any(panel.begins_above_zero for panel in chart.panels)
    key = _key_places(chart.key if any(chart.key) else (), is_cut, sheet)
    keyed = _KEY_ROW * (key[-1][1] + 1) if key else 0.0
    names = [wrap_evenly(panel.label, _TITLE, sheet.width / columns - 60, bold=True) for panel in chart.panels]
    margins = _margins(chart.panels)
    more = _TITLE * LEADING * (max(map(len, names)) - 1)
    row_height = _ROW + more
    canvas = Canvas(sheet.width, _HEAD + keyed + rows * row_height + _FOOT)
    canvas.text(12, 24, chart.axis, size=_TEXT)
    _draw_key(canvas, key)
    for number, panel in enumerate(chart.panels):
        row, column = divmod(number, columns)
        width = sheet.width / columns
        frame = _Frame(panel, chart.year_ticks, column * width, _HEAD + keyed + row * row_height, width - 4, more, margins)
        for line, words in enumerate(reversed(names[number])):
            canvas.text(column * width + 12, frame.top - 14 - line * _TITLE * LEADING, words, size=_TITLE, bold=True)
        _panel(canvas, frame, panel, chart.year_ticks, number)
        canvas.text((frame.left + frame.right) / 2, frame.foot + 41, "Years from now", size=_TEXT, anchor="middle")
    return canvas.svg()


def _margins(panels: Sequence[StockPanel]) -> tuple[float, float]:
    """Room at both sides of every frame [px]: the same for all panels, so that years and edges stand below each other."""
    before = max(text_width(text, _TEXT) for panel in panels for _, text in panel.ticks)
    after = max(text_width(text, _TEXT, bold=True) for panel in panels for text in (panel.end_label, panel.other_end_label))
    return before + 2 * _GAP, after + 2 * _GAP


def _key_places(words: Sequence[str], is_cut: bool, sheet: Sheet) -> list[tuple[float, int, str]]:
    """Place across [px], row and words of each sample of the key, as many in a row as find room."""
    found, x, row = [], sheet.left, 0
    for text in (*words, *([BREAK_WORDS] if is_cut else [])):
        sample = _ZIGZAG_SAMPLE if text == BREAK_WORDS else _SAMPLE
        width = sample + text_width(text, _TEXT)
        if found and x + width > sheet.width - 4:
            x, row = sheet.left, row + 1
        found.append((x, row, text))
        x += width + 26
    return found


def _draw_key(canvas: Canvas, places: Sequence[tuple[float, int, str]]) -> None:
    for number, (x, row, words) in enumerate(places):
        y = _HEAD + 12 + _KEY_ROW * row
        if words == BREAK_WORDS:
            canvas.stroke(polyline(_zigzag(x + 6, y - _ZIGZAG / 2, y + _ZIGZAG / 2)), "ink", 1.4, part="key of the zigzag")
            canvas.text(x + _ZIGZAG_SAMPLE, y + 5, words, size=_TEXT)
        else:
            _line(canvas, [(x, y), (x + 38, y)], number)
            canvas.text(x + _SAMPLE, y + 5, words, size=_TEXT)


def _zigzag(x: float, top: float, bottom: float) -> list[Point]:
    """An upright line that is bent aside twice, as where a piece of an axis is left out."""
    step = (bottom - top) / 5
    return [(x, top), (x, top + step), (x - 5, top + 1.5 * step), (x + 5, top + 3.5 * step), (x, top + 4 * step), (x, bottom)]


def _line(canvas: Canvas, places: Sequence[Point], number: int, part: str = "") -> None:
    """The first line is full and coloured, the second broken and grey."""
    role, width, dash = (("heat", 3.0, ()), ("muted", 2.2, (7, 4)))[number]
    canvas.stroke(polyline(places), role, width, dash=dash, part=part)


def _panel(canvas: Canvas, frame: _Frame, panel: StockPanel, years: Ticks, number: int) -> None:
    _axes(canvas, frame, panel, years, number)
    curves = [curve for curve in (panel.curve, panel.other) if curve]
    for which in reversed(range(len(curves))):  # the broken line lies below the full one
        _line(canvas, [frame.place(*point) for point in curves[which]], which, part=f"curve {number} {which}")
    labels = [text for text in (panel.end_label, panel.other_end_label) if text]
    for which, y in enumerate(_baselines([frame.place(*curve[-1])[1] for curve in curves], frame)):
        canvas.text(frame.right + _GAP, y, labels[which], size=_TEXT, bold=which == 0)


def _axes(canvas: Canvas, frame: _Frame, panel: StockPanel, years: Ticks, number: int) -> None:
    rules = [(frame.place(frame.years[0], stock), frame.place(frame.years[1], stock)) for stock, _ in panel.ticks]
    canvas.stroke(segments(rules), "grid", 0.5)
    for stock, text in panel.ticks:
        x, y = frame.place(frame.years[0], stock)
        canvas.text(x - _GAP, y + 5, text, size=_TEXT, anchor="end")
    marks = []
    for year, text in years:
        x, _ = frame.place(year, frame.stocks[0])
        marks.append(((x, frame.foot), (x, frame.foot + 5)))
        canvas.text(x, frame.foot + 21, text, size=_TEXT, anchor="middle")
    upright = ((frame.left, frame.top), (frame.left, frame.bottom))
    canvas.stroke(segments([*marks, upright, ((frame.left, frame.foot), (frame.right, frame.foot))]), "ink", 1)
    if panel.begins_above_zero:
        canvas.stroke(polyline(_zigzag(frame.left, frame.bottom, frame.foot)), "ink", 1.4, part=f"zigzag {number}")


def _baselines(ends: Sequence[float], frame: _Frame) -> list[float]:
    """Beside the ends of the curves, pushed apart where they would lie on each other, the upper one staying above."""
    if len(ends) == 1:
        return [ends[0] + 5]
    first_is_above = ends[0] <= ends[1]
    upper, lower = sorted(ends)
    middle, half = (upper + lower) / 2, max(_APART, lower - upper) / 2
    middle = min(max(middle, frame.top + half), frame.bottom - half)
    places = [middle - half + 5, middle + half + 5]
    return places if first_is_above else places[::-1]
