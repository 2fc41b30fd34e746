"""Draws a pyramid on a narrow sheet: the words of a level above its bar, levels too thin to read again in frames below."""

from __future__ import annotations

from collections.abc import Sequence

from figures.drawing.canvas import Canvas, rounded_box
from figures.drawing.pyramid_bars import draw_arrow, draw_bars
from figures.drawing.pyramid_panels import NARROW, TOO_THIN, TOO_THIN_STILL, UNSEEN, Panel, caption, panels, unread
from figures.drawing.sheet import Sheet
from figures.drawing.text import SMALLEST, text_width, wrap, wrap_evenly
from figures.trophic_pyramid import PyramidLevel, TrophicPyramid

_TEXT, _SMALL, _LINE = 14.5, SMALLEST, 18.0
_TOP, _BAR, _GAP = 52.0, 34.0, 14.0
"""Where the words of the top level begin, the height of a bar, and the space between frames [px]."""
_STEP, _APART = 44.0, 26.0
"""From a bar to the words of the next level, with an arrow between them and without [px]."""


def draw_stacked_pyramid(chart: TrophicPyramid) -> str:
    """The SVG of a pyramid, producers at the bottom, its insets below it."""
    sheet, levels = Sheet.of(chart, wide=(12, 12), narrow=(12, 12)), chart.levels
    stack = panels([level.value for level in levels], NARROW)
    pyramid, *insets = stack
    heading = sheet.heading(chart.heading, _TEXT)
    rows = [_rows(level, sheet.room) for level in levels]
    tops = _bar_tops(rows, levels, _TOP + _LINE * (len(heading) - 1))
    frames = _frames(insets, tops[0] + _BAR + _GAP, levels)
    end = frames[-1][1] if frames else tops[0] + _BAR
    canvas = Canvas(sheet.width, round(end + _GAP))
    for number, line in enumerate(heading):
        canvas.text(12, 24 + _LINE * number, line, size=_TEXT, role="muted")
    draw_bars(canvas, pyramid, tops, _BAR, levels)
    hidden = unread(stack, UNSEEN)
    for number, level in enumerate(levels):
        _draw_rows(canvas, sheet, level, rows[number], tops[number])
        _too_thin(canvas, pyramid, number, tops[number], TOO_THIN_STILL if number in hidden else TOO_THIN)
        if number and level.passed_on_label:
            draw_arrow(canvas, pyramid.centre, tops[number] + _BAR + 4, tops[number] + _BAR + 26)
            canvas.text(pyramid.centre + 14, tops[number] + _BAR + 22, f"{level.passed_on_label} passed on", size=_SMALL)
    for inset, (top, bottom) in zip(insets, frames, strict=True):
        _frame(canvas, inset, top, bottom, levels)
    return canvas.svg()


def _rows(level: PyramidLevel, room: float) -> list[tuple[str, str]]:
    """What stands above a bar, line by line, as (at the left, at the right): the name, then the role with the value."""
    names = [(line, "") for line in wrap(level.label, _TEXT, room, bold=True)]
    fits = text_width(level.role, _SMALL) + text_width(level.value_label, _TEXT) + 14 <= room
    return [*names, *([(level.role, level.value_label)] if fits else [(level.role, ""), ("", level.value_label)])]


def _bar_tops(rows: Sequence[Sequence[tuple[str, str]]], levels: Sequence[PyramidLevel], top: float) -> list[float]:
    """The top of each level's bar, from the lowest level to the highest [px]."""
    found = []
    for lines, level in zip(reversed(rows), reversed(levels), strict=True):
        top += _LINE * len(lines) - 4
        found.append(top)
        top += _BAR + (_STEP if level.passed_on_label else _APART)
    return found[::-1]


def _draw_rows(canvas: Canvas, sheet: Sheet, level: PyramidLevel, rows: Sequence[tuple[str, str]], top: float) -> None:
    for number, (left, right) in enumerate(rows):
        y, is_role = top - 8 - _LINE * (len(rows) - 1 - number), left == level.role
        if left:
            canvas.text(sheet.left, y, left, size=_SMALL if is_role else _TEXT, bold=not is_role, role="muted" if is_role else "ink")
        if right:
            canvas.text(sheet.right, y, right, size=_TEXT, anchor="end")


def _too_thin(canvas: Canvas, panel: Panel, number: int, top: float, words: str) -> None:
    """Words beside the line that stands for a bar that nobody could see."""
    lines = wrap_evenly(words, _SMALL, panel.right - panel.centre - 18) if panel.widths[number - panel.first] < UNSEEN else ()
    for row, line in enumerate(lines):
        canvas.text(panel.centre + 12, top + _BAR / 2 + 5 + 17 * (row - (len(lines) - 1) / 2), line, size=_SMALL, italic=True)


def _caption(inset: Panel) -> list[tuple[str, bool]]:
    """Lines above the levels of an inset with whether they are bold."""
    which, factor = caption(inset)
    return [(f"{which[:1].upper()}{which[1:]}", False), (factor, True)]


def _frames(insets: Sequence[Panel], top: float, levels: Sequence[PyramidLevel]) -> list[tuple[float, float]]:
    """Top and bottom of the frame of each inset, one below the other [px]."""
    found = []
    for inset in insets:
        names = [wrap(levels[number].label, _SMALL, inset.right - inset.left - 20) for number in range(inset.first, inset.last + 1)]
        bottom = top + 12 + 2 * _LINE + sum(_LINE * len(lines) + _BAR + 10 for lines in names) + 2
        found.append((top, bottom))
        top = bottom + _GAP
    return found


def _frame(canvas: Canvas, inset: Panel, top: float, bottom: float, levels: Sequence[PyramidLevel]) -> None:
    """Some levels again: a dashed frame that says how many times wider, and hatched bars under their names."""
    canvas.stroke(rounded_box(inset.left, top, inset.right - inset.left, bottom - top, 6), "muted", 1.2, dash=(5, 4))
    for number, (line, bold) in enumerate(_caption(inset)):
        canvas.text(inset.centre, top + 20 + _LINE * number, line, size=_SMALL, anchor="middle", bold=bold)
    y, tops = top + 12 + 2 * _LINE, {}
    for number in range(inset.last, inset.first - 1, -1):
        for line in wrap(levels[number].label, _SMALL, inset.right - inset.left - 20):
            canvas.text(inset.centre, y + 13, line, size=_SMALL, anchor="middle")
            y += _LINE
        tops[number] = y
        y += _BAR + 10
    draw_bars(canvas, inset, tops, _BAR, levels)
    for number, bar in tops.items():
        _too_thin(canvas, inset, number, bar, TOO_THIN)
