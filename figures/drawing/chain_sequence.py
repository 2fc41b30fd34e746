"""Draws an explanation chain as stairs: each step a numbered box, joined to the next by an arrow."""

from __future__ import annotations

import math

from figures.chain_sequence import ChainSequence
from figures.drawing.canvas import Canvas, polygon, polyline, rounded_box
from figures.drawing.text import ASCENT, LEADING, SMALLEST, block_size, glued, text_width, wrap_evenly

WIDTH = 700
_EDGE, _GAP, _ROUND = 8.0, 16.0, 15.0
_LARGEST = 16.0
_PAD, _NUMBER_ROOM = 14.0, 54.0
_STAIRS, _MOST_STAIRS, _STEPS = 220.0, 420.0, (34.0, 62.0)
"""How far all stairs should and may lead to the right [px], and how far one at least and at most."""


def draw_chain_sequence(chart: ChainSequence) -> str:
    """The SVG of one chain, first cause at the top left.

    Raises
    ------
    ValueError
        If there is no step.
    """
    if not chart.steps:
        raise ValueError(f"{chart.name}: no step to draw")
    count = len(chart.steps)
    stairs = max(count - 1, 1)
    step = min(max(_STAIRS / stairs, _STEPS[0]), _STEPS[1], _MOST_STAIRS / stairs)
    width = WIDTH - 2 * _EDGE - step * (count - 1)
    steps = tuple(glued(sentence) for sentence in chart.steps)
    size = text_size(steps, width)
    blocks = [wrap_evenly(sentence, size, width - _NUMBER_ROOM - _PAD) for sentence in steps]
    heights = [max(block_size(lines, size)[1] + 1.6 * _PAD, 2 * _ROUND + 16) for lines in blocks]
    canvas = Canvas(WIDTH, math.ceil(sum(heights) + _GAP * (count - 1) + 2 * _EDGE))
    y = _EDGE
    for number, (lines, height) in enumerate(zip(blocks, heights, strict=True)):
        left = _EDGE + step * number
        _box(canvas, left, y, width, height, number + 1)
        top = y + (height - block_size(lines, size)[1]) / 2
        for row, line in enumerate(lines):
            canvas.text(left + _NUMBER_ROOM, top + size * (ASCENT + LEADING * row), line, size=size)
        if number + 1 < count:
            _arrow(canvas, left + step / 2 - 3, y + height, left + step, y + height + _GAP + heights[number + 1] / 2)
        y += height + _GAP
    return canvas.svg()


def text_size(steps: tuple[str, ...], width: float) -> float:
    """The size [px] at which the longest word still fits its box, between the least size and 16."""
    widest = max(text_width(word, _LARGEST) for sentence in steps for word in sentence.split(" "))
    return max(SMALLEST, min(_LARGEST, _LARGEST * (width - _NUMBER_ROOM - _PAD) / widest)) if widest else _LARGEST


def _box(canvas: Canvas, left: float, top: float, width: float, height: float, number: int) -> None:
    canvas.stroke(rounded_box(left, top, width, height, 8), "ink", 1.6, part=f"step {number}")
    x, y = left + 12 + _ROUND, top + height / 2
    canvas.dots([((x, y), (x, y))], "ink", 2 * _ROUND)
    canvas.text(x, y + 5.2, f"{number}", size=15, bold=True, anchor="middle", role="ground")


def _arrow(canvas: Canvas, x: float, top: float, right: float, y: float) -> None:
    """From a box's lower edge down, then into the next box from its left."""
    canvas.stroke(polyline([(x, top + 1), (x, y), (right - 9, y)]), "ink", 2.4, part="arrow")
    canvas.fill(polygon([(right - 1, y), (right - 11, y - 6), (right - 11, y + 6)]), "ink")
