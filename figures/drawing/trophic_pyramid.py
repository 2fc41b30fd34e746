"""Draws a pyramid of energy, biomass or numbers to scale; levels too thin to read are shown again, magnified, beside it."""

from __future__ import annotations

from collections.abc import Sequence

from figures.drawing.canvas import Canvas, rounded_box, segments
from figures.drawing.pyramid_bars import draw_arrow, draw_bars
from figures.drawing.pyramid_panels import SLIM, TOO_THIN, TOO_THIN_STILL, UNSEEN, WIDE, Panel, caption, panels, unread
from figures.drawing.sheet import Sheet
from figures.drawing.stacked_pyramid import draw_stacked_pyramid
from figures.drawing.text import SMALLEST, block_size, wrap, wrap_evenly
from figures.trophic_pyramid import PyramidLevel, TrophicPyramid

_NAMES = 12
_TOP, _TOP_WITH_INSET, _BAR, _PITCH, _FOOT = 56, 96, 56, 90, 18
_TEXT, _SMALL, _LINE = 14.5, SMALLEST, 17.0


def draw_trophic_pyramid(chart: TrophicPyramid) -> str:
    """The SVG of a pyramid, producers at the bottom, whichever level is the widest."""
    if chart.narrow:
        return draw_stacked_pyramid(chart)
    sheet, levels = Sheet.of(chart, wide=(WIDE.left, 12), narrow=(12, 12)), chart.levels
    blocks = [_text_block(level) for level in levels]
    stack = panels([level.value for level in levels])
    pyramid, *insets = stack
    pitch = max(_pitch(stack), *(sum(height for _, height, _, _ in block) + 10 for block in blocks))
    heading = sheet.heading(chart.heading, _TEXT)
    bottom = _top(insets, len(levels), len(heading)) + pitch * (len(levels) - 1) + _BAR
    canvas = Canvas(sheet.width, round(bottom + _FOOT))
    tops = [bottom - _BAR - pitch * number for number in range(len(levels))]
    for number, line in enumerate(heading):
        canvas.text(12, 26 + 18 * number, line, size=_TEXT, role="muted")
    draw_bars(canvas, pyramid, tops, _BAR, levels)
    for number, (level, block) in enumerate(zip(levels, blocks, strict=True)):
        _names(canvas, block, tops[number] + _BAR / 2)
        if pyramid.widths[number] < UNSEEN:
            _too_thin(canvas, pyramid.centre, tops[number] + _BAR / 2, number in unread(stack, UNSEEN))
        if number and level.passed_on_label:
            _passed_on(canvas, pyramid.centre, tops[number] + _BAR, tops[number - 1], level.passed_on_label)
    for inset in insets:
        _inset(canvas, inset, pyramid, tops, levels)
    return canvas.svg()


def _top(insets: Sequence[Panel], count: int, heading: int) -> float:
    """The top of the highest bar [px]: below the heading and the captions of insets that reach so high."""
    captions = [len(_inset_caption(inset)) for inset in insets if inset.last == count - 1]
    under_heading = _TOP + 18 * (heading - 1)
    return max([under_heading, *(26 + 18 * (heading - 1) + 20 + _LINE * lines for lines in captions), *[_TOP_WITH_INSET] * bool(captions)])


def _pitch(stack: Sequence[Panel]) -> float:
    """From bar to bar [px]: the caption of an inset below a wide bar must find room between the two."""
    pyramid, *insets = stack
    below_wide = [inset for inset in insets if inset.last < pyramid.last and pyramid.widths[inset.last + 1] >= SLIM]
    return max([float(_PITCH), *(_BAR + 12 + _LINE * len(_inset_caption(inset)) + 22 for inset in below_wide)])


def _too_thin(canvas: Canvas, centre: float, middle: float, everywhere: bool) -> None:
    lines = wrap_evenly(TOO_THIN_STILL if everywhere else TOO_THIN, _SMALL, centre - 14 - WIDE.left)
    for number, line in enumerate(lines):
        y = middle + 4.5 + _LINE * (number - (len(lines) - 1) / 2)
        canvas.text(centre - 10, y, line, size=_SMALL, anchor="end", italic=True)


def _text_block(level: PyramidLevel) -> list[tuple[str, float, bool, str]]:
    """Lines of the label column as (text, height, bold, role)."""
    parts = ((level.label, _TEXT, True, "ink"), (level.role, _SMALL, False, "muted"), (level.value_label, _TEXT, False, "ink"))
    room = WIDE.left - _NAMES - 8
    return [
        (line, block_size((line,), size)[1], bold, role)
        for text, size, bold, role in parts
        for line in wrap(text, size, room, bold)
        if line
    ]  # fmt: skip


def _names(canvas: Canvas, block: Sequence[tuple[str, float, bool, str]], middle: float) -> None:
    y = middle - sum(height for _, height, _, _ in block) / 2
    for line, height, bold, role in block:
        canvas.text(_NAMES, y + height * 0.79, line, size=_SMALL if role == "muted" else _TEXT, bold=bold, role=role)
        y += height


def _passed_on(canvas: Canvas, centre: float, top: float, bottom: float, label: str) -> None:
    draw_arrow(canvas, centre, top + 5, bottom - 5)
    canvas.text(centre - 14, (top + bottom) / 2 + 5, f"{label} passed on", size=_SMALL, anchor="end")


def _inset(canvas: Canvas, inset: Panel, pyramid: Panel, tops: Sequence[float], levels: Sequence[PyramidLevel]) -> None:
    caption = _inset_caption(inset)
    top, bottom = tops[inset.last] - 12 - _LINE * len(caption), tops[inset.first] + _BAR + 10
    canvas.stroke(rounded_box(inset.left, top, inset.right - inset.left, bottom - top, 6), "muted", 1.2, dash=(5, 4))
    for number, (line, bold) in enumerate(caption):
        canvas.text(inset.centre, top + 17 + _LINE * number, line, size=_SMALL, anchor="middle", bold=bold)
    draw_bars(canvas, inset, tops, _BAR, levels)
    if inset.left - pyramid.centre < 40:
        ends = ((inset.last, tops[inset.last], top + 6), (inset.first, tops[inset.first] + _BAR, bottom - 6))
        lines = [((pyramid.centre + pyramid.widths[level] / 2 + 2, y), (inset.left, end)) for level, y, end in ends]
        canvas.stroke(segments(lines), "muted", 1)


def _inset_caption(inset: Panel) -> list[tuple[str, bool]]:
    """Lines with whether they are bold: which levels, and how many times wider."""
    room = inset.right - inset.left - 6
    return [(line, bold) for text, bold in zip(caption(inset), (False, True), strict=True) for line in wrap(text, _SMALL, room, bold)]
