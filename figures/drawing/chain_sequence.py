"""Draws an explanation chain as a column: each step a numbered box, joined to the next by an arrow."""

from __future__ import annotations

import math

from figures.chain_sequence import ChainSequence
from figures.drawing.canvas import Canvas, polygon, polyline, rounded_box
from figures.drawing.sheet import NARROW
from figures.drawing.text import ASCENT, LEADING, block_size, glued, text_width, wrap_evenly

_EDGE, _GAP, _ROUND = 3.0, 26.0, 14.0
_TEXT, _PAD, _NUMBER_ROOM = 16.0, 12.0, 48.0


def draw_chain_sequence(chart: ChainSequence) -> str:
    """The SVG of one chain, first cause at the top; wider than a phone's sheet only where a single word is.

    Raises
    ------
    ValueError
        If there is no step.
    """
    if not chart.steps:
        raise ValueError(f"{chart.name}: no step to draw")
    steps = tuple(glued(sentence) for sentence in chart.steps)
    longest = max(text_width(word, _TEXT) for sentence in steps for word in sentence.split(" "))
    width = max(NARROW, math.ceil(longest + _NUMBER_ROOM + _PAD + 2 * _EDGE))
    blocks = [wrap_evenly(sentence, _TEXT, width - 2 * _EDGE - _NUMBER_ROOM - _PAD) for sentence in steps]
    heights = [max(block_size(lines, _TEXT)[1] + 1.6 * _PAD, 2 * _ROUND + 16) for lines in blocks]
    canvas = Canvas(width, math.ceil(sum(heights) + _GAP * (len(steps) - 1) + 2 * _EDGE))
    y = _EDGE
    for number, (lines, height) in enumerate(zip(blocks, heights, strict=True), start=1):
        _box(canvas, y, width - 2 * _EDGE, height, number)
        top = y + (height - block_size(lines, _TEXT)[1]) / 2
        for row, line in enumerate(lines):
            canvas.text(_EDGE + _NUMBER_ROOM, top + _TEXT * (ASCENT + LEADING * row), line, size=_TEXT)
        y += height + _GAP
        if number < len(steps):
            _arrow(canvas, y - _GAP, y)
    return canvas.svg()


def _box(canvas: Canvas, top: float, width: float, height: float, number: int) -> None:
    canvas.stroke(rounded_box(_EDGE, top, width, height, 8), "ink", 1.6, part=f"step {number}")
    x, y = _middle(), top + height / 2
    canvas.dots([((x, y), (x, y))], "ink", 2 * _ROUND)
    canvas.text(x, y + 5.2, f"{number}", size=15, bold=True, anchor="middle", role="ground")


def _middle() -> float:
    """Of the numbers, across [px]."""
    return _EDGE + 10 + _ROUND


def _arrow(canvas: Canvas, top: float, bottom: float) -> None:
    """From a box's lower edge down to the next box, in the line of the numbers."""
    x = _middle()
    canvas.stroke(polyline([(x, top + 1), (x, bottom - 9)]), "ink", 2.4, part="arrow")
    canvas.fill(polygon([(x, bottom - 1), (x - 6, bottom - 11), (x + 6, bottom - 11)]), "ink")
