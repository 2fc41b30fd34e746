"""Draws a trophic pyramid to scale; levels too thin to see are shown again, magnified, in an inset beside it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from figures.drawing.canvas import Canvas, polygon, rounded_box, segments
from figures.drawing.text import block_size, wrap
from figures.trophic_pyramid import TrophicPyramid, PyramidLevel

WIDTH = 700
THIN = 2.0
"""A bar narrower than this [px] cannot be read off and gets an inset."""
_NAMES, _LEFT, _RIGHT = 12, 222, 688
_TOP, _TOP_WITH_INSET, _BAR, _PITCH, _FOOT = 56, 96, 56, 90, 18
_TEXT, _SMALL = 14.5, 13.0
_REPEATED = 14.0
"""A level that is narrower than this [px] is repeated in the inset when one above it is thin."""
_INSET_MARGIN, _MOST_INSETS = 14.0, 3
_MULTIPLES = (1, 2, 3, 4, 5, 8)
_COUNTS = {2: "two", 3: "three", 4: "four", 5: "five"}


@dataclass(frozen=True)
class Panel:
    """A stack of bars: the whole pyramid, or its top again at a larger scale."""

    first: int
    """Index of the lowest level shown; all levels above are shown too."""
    magnified: int
    """How many times wider than in the pyramid itself; 1 for the pyramid."""
    left: float
    right: float
    widths: tuple[float, ...]
    """Of the levels from `first` up [px]; always in proportion to their values."""

    @property
    def centre(self) -> float:
        return (self.left + self.right) / 2


def panels(values: Sequence[float]) -> list[Panel]:
    """The pyramid and as many insets, left to right, as its thin top levels need.

    Raises
    ------
    ValueError
        If there is no level, or a value is not above zero.
    """
    if not values or min(values) <= 0:
        raise ValueError(f"a pyramid needs values above zero, found {tuple(values)}")
    scale = (_RIGHT - _LEFT) / max(values)
    pyramid = Panel(0, 1, _LEFT, _RIGHT, tuple(value * scale for value in values))
    stack = [pyramid]
    for count in range(1, _MOST_INSETS + 1):
        if min(stack[-1].widths) >= THIN:
            break
        stack = [pyramid, *_insets(pyramid, count)]
    return stack


def _insets(pyramid: Panel, count: int) -> list[Panel]:
    """`count` insets side by side over the right half, each for the levels that are thin in the one before."""
    start = pyramid.centre + 26
    room = (pyramid.right - start + _INSET_MARGIN) / count - _INSET_MARGIN
    insets: list[Panel] = []
    before = pyramid
    for number in range(count):
        first = _first_repeated(before, pyramid)
        if first is None:
            break
        magnified = _round_multiple((room - 20) / max(pyramid.widths[first:]))
        left = start + number * (room + _INSET_MARGIN)
        before = Panel(first, magnified, left, left + room, tuple(width * magnified for width in pyramid.widths[first:]))
        insets.append(before)
    return insets


def _first_repeated(before: Panel, pyramid: Panel) -> int | None:
    """The lowest level of the next inset; None where nothing is thin, or where a wide bar stands in its place."""
    thin = next((before.first + number for number, width in enumerate(before.widths) if width < THIN), None)
    if thin is None:
        return None
    first = thin - 1 if thin > before.first + 1 and before.widths[thin - 1 - before.first] < _REPEATED else thin
    return first if max(pyramid.widths[first:]) < _REPEATED else None


def _round_multiple(most: float) -> int:
    """The largest number up to `most`, at least 1, with one leading digit that is easy to say."""
    power = 10 ** math.floor(math.log10(max(most, 1)))
    return max(multiple for multiple in _MULTIPLES if multiple * power <= max(most, 1)) * power


def draw_trophic_pyramid(chart: TrophicPyramid) -> str:
    """The SVG of a pyramid, producers at the bottom."""
    levels = chart.levels
    blocks = [_text_block(level) for level in levels]
    pitch = max(_PITCH, *(sum(height for _, height, _, _ in block) + 10 for block in blocks))
    pyramid, *insets = panels([level.value for level in levels])
    bottom = (_TOP_WITH_INSET if insets else _TOP) + pitch * (len(levels) - 1) + _BAR
    canvas = Canvas(WIDTH, round(bottom + _FOOT))
    tops = [bottom - _BAR - pitch * number for number in range(len(levels))]
    heading = f"Width of the bars: {chart.quantity[:1].lower()}{chart.quantity[1:]}"
    for number, line in enumerate(wrap(heading, _TEXT, WIDTH - 24)):
        canvas.text(12, 26 + 18 * number, line, size=_TEXT, role="muted")
    _bars(canvas, pyramid, tops, levels)
    for number, (level, block) in enumerate(zip(levels, blocks, strict=True)):
        _names(canvas, block, tops[number] + _BAR / 2)
        if number and level.passed_on_label:
            _passed_on(canvas, pyramid.centre, tops[number] + _BAR, tops[number - 1], level.passed_on_label)
    for inset in insets:
        _inset(canvas, inset, pyramid, tops, levels)
    return canvas.svg()


def _text_block(level: PyramidLevel) -> list[tuple[str, float, bool, str]]:
    """Lines of the label column as (text, height, bold, role)."""
    parts = ((level.label, _TEXT, True, "ink"), (level.role, _SMALL, False, "muted"), (level.value_label, _TEXT, False, "ink"))
    room = _LEFT - _NAMES - 8
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


def _bars(canvas: Canvas, panel: Panel, tops: Sequence[float], levels: Sequence[PyramidLevel]) -> None:
    for number, width in enumerate(panel.widths, start=panel.first):
        left, top = panel.centre - width / 2, tops[number]
        corners = [(left, top), (left + width, top), (left + width, top + _BAR), (left, top + _BAR)]
        name = f"{'bar' if panel.magnified == 1 else 'inset'} {levels[number].id}"
        canvas.fill(polygon(corners), "animal" if number else "plant", part=name)


def _passed_on(canvas: Canvas, centre: float, top: float, bottom: float, label: str) -> None:
    tip, tail = top + 5, bottom - 5
    canvas.stroke(segments([((centre, tail), (centre, tip + 6))]), "muted", 2)
    canvas.fill(polygon([(centre, tip), (centre + 6, tip + 9), (centre - 6, tip + 9)]), "muted")
    canvas.text(centre - 14, (top + bottom) / 2 + 5, f"{label} passed on", size=_SMALL, anchor="end")


def _inset(canvas: Canvas, inset: Panel, pyramid: Panel, tops: Sequence[float], levels: Sequence[PyramidLevel]) -> None:
    caption = _inset_caption(inset)
    top, bottom = tops[-1] - 12 - 16 * len(caption), tops[inset.first] + _BAR + 10
    canvas.stroke(rounded_box(inset.left, top, inset.right - inset.left, bottom - top, 6), "muted", 1.2, dash=(5, 4))
    for number, line in enumerate(caption):
        canvas.text(inset.centre, top + 17 + 16 * number, line, size=_SMALL, anchor="middle")
    _bars(canvas, inset, tops, levels)
    if inset.left - pyramid.centre < 40:
        edges = ((pyramid.widths[-1], tops[-1], top + 6), (pyramid.widths[inset.first], tops[inset.first] + _BAR, bottom - 6))
        canvas.stroke(segments(((pyramid.centre + w / 2 + 2, y), (inset.left, end)) for w, y, end in edges), "muted", 1)


def _inset_caption(inset: Panel) -> list[str]:
    count = len(inset.widths)
    which = "this level," if count == 1 else f"these {_COUNTS.get(count, '')} levels,".replace("  ", " ")
    times = f"{inset.magnified:,}".replace(",", "\u202f")
    room = inset.right - inset.left - 6
    return [line for text in (which, f"{times} times wider") for line in wrap(text, _SMALL, room)]
