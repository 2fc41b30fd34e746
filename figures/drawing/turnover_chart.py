"""Draws turnover times as dots on a logarithmic axis whose ticks are named in words, one reservoir a row."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from figures.drawing.canvas import Canvas, polyline, segments
from figures.drawing.sheet import Sheet
from figures.drawing.text import LEADING, SMALLEST, block_size, text_width, wrap
from figures.turnover_chart import TurnoverChart, TurnoverTime

_TEXT, _SMALL = 14.5, SMALLEST
_ROW, _HEADING, _DOT, _DOT_IN_RANGE, _GAP = 27.0, 32.0, 9.0, 6.0, 9.0
_HEADER_LINE, _WORDS = 20.0, 92.0
"""From line to line of the header, and the width at which the words of a time are broken [px]."""
_YEAR_DAYS = 365.25
_RANGE = "from lowest to highest; its dot: middle stock divided by middle outflow"
TICKS: tuple[tuple[float, str, int], ...] = (
    (1 / (_YEAR_DAYS * 1440), "a minute", 1), (1 / (_YEAR_DAYS * 24), "an hour", 1), (1 / _YEAR_DAYS, "a day", 0), (1 / 12, "a month", 1),
    (1.0, "a year", 0), (1e1, "ten years", 2), (1e2, "a hundred years", 2), (1e3, "a thousand years", 1),
    (1e4, "ten thousand years", 3), (1e5, "a hundred thousand years", 3), (1e6, "a million years", 1), (1e7, "ten million years", 3),
    (1e8, "a hundred million years", 3), (1e9, "a billion years", 1), (1e10, "ten billion years", 3),
)  # fmt: skip
"""Times [yr] with their words and how early they give way where words are too close, the lowest last."""


@dataclass(frozen=True)
class Scale:
    """A logarithmic axis."""

    sheet: Sheet
    low: float
    high: float
    """Times [yr] at the left and right end."""

    def x(self, years: float) -> float:
        """The place [px] of a time [yr]."""
        share = math.log10(years / self.low) / math.log10(self.high / self.low)
        return self.sheet.left + share * self.sheet.room


@dataclass(frozen=True)
class Row:
    """A reservoir with the place of its label."""

    time: TurnoverTime
    lines: tuple[str, ...]
    anchor: str
    x: float
    above: bool
    """Whether the label stands above the mark, because no side of it has room."""

    @property
    def height(self) -> float:
        return max(_ROW, block_size(self.lines, _TEXT)[1] + 8 + 12 * self.above)


@dataclass(frozen=True)
class AxisWord:
    """A named time under the axis."""

    years: float
    x: float
    """The middle of the words [px], near their tick."""
    lines: tuple[str, ...]
    tier: int
    """0: right under the axis; 1: lower, at the end of a long tick."""


def scale_of(times: Sequence[TurnoverTime], sheet: Sheet) -> Scale:
    """From the last named tick below all times to the first above them, a little room left on both sides.

    Raises
    ------
    ValueError
        If there is no time, or one is not above zero.
    """
    found = [years for time in times for years in (time.years, *(time.range_years or ()))]
    if not found or min(found) <= 0:
        raise ValueError(f"turnover times must be above zero, found {found}")
    names = [years for years, _, _ in TICKS]
    low = max((years for years in names if years <= min(found) / 1.3), default=min(found) / 10)
    high = min((years for years in names if years >= max(found) * 1.3), default=max(found) * 10)
    return Scale(sheet, low, high)


def grouped(times: Sequence[TurnoverTime]) -> list[tuple[str, list[TurnoverTime]]]:
    """Cycles in the order in which they first occur, in each the quickest reservoir first."""
    return [
        (cycle, sorted((time for time in times if time.cycle == cycle), key=lambda time: (time.years, time.label)))
        for cycle in dict.fromkeys(time.cycle for time in times)
    ]  # fmt: skip


def draw_turnover_chart(chart: TurnoverChart) -> str:
    """The SVG of all turnover times."""
    sheet = Sheet.of(chart, wide=(30, 30), narrow=(22, 22))
    scale = scale_of(chart.times, sheet)
    groups = [(cycle, [_row(time, scale) for time in times]) for cycle, times in grouped(chart.times)]
    header = [line for text in ("Turnover time; each tenfold step is equally long", lines_told(scale)) for line in wrap(text, _TEXT, sheet.width - 24)]
    ranges = wrap(_RANGE, _TEXT, sheet.width - 64) if any(time.range_years for time in chart.times) else ()
    top = 14 + _HEADER_LINE * (len(header) + len(ranges))
    bottom = top + sum(_HEADING * bool(cycle) + sum(row.height for row in rows) for cycle, rows in groups) + 8
    words = axis_words(scale)
    tiers = _tier_heights(words)
    canvas = Canvas(sheet.width, math.ceil(bottom + 16 + sum(tiers)))
    _header(canvas, header, ranges)
    _axis(canvas, scale, top, bottom, words, tiers[0])
    y = top
    for cycle, rows in groups:
        if cycle:
            canvas.text(12, y + _HEADING - 8, cycle, size=_TEXT, bold=True, halo=True)
            y += _HEADING
        for row in rows:
            _mark(canvas, scale, row, y)
            y += row.height
    return canvas.svg()


def _header(canvas: Canvas, header: Sequence[str], ranges: Sequence[str]) -> None:
    """What the axis and its lines are, then what a range and the dot in it are."""
    for number, line in enumerate(header):
        canvas.text(12, 20 + _HEADER_LINE * number, line, size=_TEXT, role="muted")
    y = 20 + _HEADER_LINE * len(header)
    if ranges:
        _range(canvas, 14, 48, y - 5)
        _dot(canvas, 31, y - 5, _DOT_IN_RANGE)
    for number, line in enumerate(ranges):
        canvas.text(56, y + _HEADER_LINE * number, line, size=_TEXT, role="muted")


def lines_told(scale: Scale) -> str:
    """Where the upright lines stand: below a year at times that have names, from a year on at each tenfold.

    >>> lines_told(Scale(Sheet(700, 30, 670, False), 1 / 365.25, 100))
    'Upright lines: a day, a month, a year, then each ten times the one before'
    """
    names = [text for years, text, _ in TICKS if scale.low <= years <= min(1.0, scale.high) * 1.0001]
    then = ["then each ten times the one before"] if scale.high > 1 else []
    return f"Upright lines: {', '.join([*names, *then])}" if scale.low < 1 else "Upright lines: each ten times the one before"


def _row(time: TurnoverTime, scale: Scale) -> Row:
    """The label stands right of the mark where it finds room, else left of it, else above."""
    ends = [scale.x(years) for years in (time.years, *(time.range_years or ()))]
    start, end = max(ends) + _DOT / 2 + _GAP, min(ends) - _DOT / 2 - _GAP
    text = f"{time.label}, {time.value_label}" if time.value_label else time.label
    width = text_width(text, _TEXT)
    if width <= scale.sheet.width - 8 - start:
        return Row(time, (text,), "start", start, above=False)
    if width <= end - 8:
        return Row(time, (text,), "end", end, above=False)
    lines = wrap(text, _TEXT, scale.sheet.width - 24)
    half = block_size(lines, _TEXT)[0] / 2
    return Row(time, lines, "middle", min(max(scale.x(time.years), 8 + half), scale.sheet.width - 8 - half), above=True)


def _mark(canvas: Canvas, scale: Scale, row: Row, top: float) -> None:
    middle = top + row.height / 2
    y = top + row.height - 11 if row.above else middle
    if row.time.range_years:
        low, high = (scale.x(years) for years in sorted(row.time.range_years))
        _range(canvas, low, high, y, part=f"range {row.time.id}")
    x = scale.x(row.time.years)
    diameter = _DOT_IN_RANGE if row.time.range_years else _DOT  # a full one would hide a short range
    _dot(canvas, x, y, diameter, part=f"dot {row.time.id}")
    for number, line in enumerate(row.lines):
        baseline = middle - 6 * row.above + _TEXT * (0.36 + LEADING * (number - (len(row.lines) - 1) / 2))
        canvas.text(row.x, baseline, line, size=_TEXT, anchor=row.anchor, halo=True)


def _dot(canvas: Canvas, x: float, y: float, diameter: float, part: str = "") -> None:
    canvas.stroke(polyline([(x, y), (x + 0.01, y)]), "ink", diameter, round_ends=True, part=part)


def _range(canvas: Canvas, low: float, high: float, y: float, part: str = "") -> None:
    canvas.stroke(polyline([(low, y), (high, y)]), "water", 3, part=part)
    canvas.stroke(segments(((x, y - 7), (x, y + 7)) for x in (low, high)), "water", 2)


def axis_words(scale: Scale) -> list[AxisWord]:
    """The named times under the axis: on one line where all find room, else by turns on two; then the least round give way."""
    shown = [(years, wrap(text, _SMALL, _WORDS), rank) for years, text, rank in TICKS if scale.low <= years <= scale.high * 1.0001]
    level = _placed(scale, [(years, lines, rank, 0) for years, lines, rank in shown])
    if len(level) == len(shown):
        return level
    return _placed(scale, [(years, lines, rank, number % 2) for number, (years, lines, rank) in enumerate(shown)])


def _placed(scale: Scale, wanted: Sequence[tuple[float, tuple[str, ...], int, int]]) -> list[AxisWord]:
    """As many of (years, lines, rank, tier) as keep apart, the upper tier and low ranks first."""
    found: list[tuple[AxisWord, float, float]] = []
    for years, lines, _, tier in sorted(wanted, key=lambda word: (word[3], word[2], word[0])):
        half = block_size(lines, _SMALL)[0] / 2
        x = min(max(scale.x(years), half + 2), scale.sheet.width - half - 2)
        apart = all(
            x + half + 7 <= left or right + 7 <= x - half if other.tier == tier else not left - 3 < scale.x(years) < right + 3
            for other, left, right in found
        )
        if apart:
            found.append((AxisWord(years, x, lines, tier), x - half, x + half))
    return sorted((word for word, _, _ in found), key=lambda word: word.years)


def _tier_heights(words: Sequence[AxisWord]) -> tuple[float, float]:
    """The room of each tier [px]."""
    deepest = [max((len(word.lines) for word in words if word.tier == tier), default=0) for tier in (0, 1)]
    return deepest[0] * _SMALL * LEADING + 4, deepest[1] * _SMALL * LEADING + 4 * bool(deepest[1])


def _axis(canvas: Canvas, scale: Scale, top: float, bottom: float, words: Sequence[AxisWord], first_tier: float) -> None:
    """The level line, ticks, and a thin line up from each named time."""
    ticks = [years for years, _, _ in TICKS if scale.low <= years <= scale.high * 1.0001]
    lengths = {word.years: 7 + word.tier * first_tier for word in words}
    canvas.stroke(segments(((scale.x(t), top - 4), (scale.x(t), bottom)) for t in ticks), "grid", 0.5)
    canvas.stroke(segments([((scale.sheet.left - 12, bottom), (scale.sheet.right + 12, bottom))]), "ink", 1.2)
    canvas.stroke(segments(((scale.x(t), bottom), (scale.x(t), bottom + lengths.get(t, 4))) for t in ticks), "ink", 1)
    for word in words:
        below = bottom + 9 + word.tier * first_tier
        for number, line in enumerate(word.lines):
            canvas.text(word.x, below + _SMALL * (0.94 + LEADING * number), line, size=_SMALL, anchor="middle")
