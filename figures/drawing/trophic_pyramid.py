"""Draws a pyramid of energy, biomass or numbers to scale; levels too thin to read are shown again, magnified, beside it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from figures.drawing.canvas import Canvas, Point, polygon, rectangle, rounded_box, segments
from figures.drawing.text import SMALLEST, block_size, wrap
from figures.trophic_pyramid import THIN, WIDEST_BAR, PyramidLevel, TrophicPyramid

WIDTH = 700
UNSEEN = 0.5
"""A bar narrower than this [px] cannot be seen at all, which the drawing says in words."""
_NAMES, _LEFT, _RIGHTS = 12, 222, (222 + WIDEST_BAR, 688.0, 688.0, 540.0)
"""The pyramid's right edge by the number of insets beside each other: three need more room than its half."""
_TOP, _TOP_WITH_INSET, _BAR, _PITCH, _FOOT = 56, 96, 56, 90, 18
_TEXT, _SMALL, _LINE = 14.5, SMALLEST, 17.0
_HATCH, _OUTLINE = 7.0, 1.6
"""Distance of the strokes across a magnified bar, and the line around it [px]."""
_SLIM = 14.0
"""Beside levels narrower than this [px] an inset finds room; the nearest of them is repeated in it for comparison."""
_INSET_RIGHT, _INSET_MARGIN, _MOST_INSETS = 688.0, 14.0, 3
_MULTIPLES = (1, 2, 3, 4, 5, 8)
_COUNTS = {2: "two", 3: "three", 4: "four", 5: "five"}
_TOO_THIN, _TOO_THIN_STILL = "too thin to see at this scale", "too thin to see even when magnified"


@dataclass(frozen=True)
class Panel:
    """A stack of bars: the whole pyramid, or some neighbouring levels again at a larger scale."""

    first: int
    """Index of the lowest level shown."""
    magnified: int
    """How many times wider than in the pyramid itself; 1 for the pyramid."""
    left: float
    right: float
    widths: tuple[float, ...]
    """Of the levels from `first` up [px]; always in proportion to their values."""

    @property
    def centre(self) -> float:
        return (self.left + self.right) / 2

    @property
    def last(self) -> int:
        """Index of the highest level shown."""
        return self.first + len(self.widths) - 1


def panels(values: Sequence[float]) -> list[Panel]:
    """The pyramid and, for each run of levels too thin to read, insets from left to right, as few as show the most.

    Raises
    ------
    ValueError
        If there is no level, or a value is not above zero.
    """
    if not values or min(values) <= 0:
        raise ValueError(f"a pyramid needs values above zero, found {tuple(values)}")
    stacks = [_stack(values, count) for count in range(_MOST_INSETS + 1)]
    return min(stacks, key=lambda stack: len(_unread(stack)))


def _stack(values: Sequence[float], count: int) -> list[Panel]:
    """The pyramid with up to `count` insets beside each run of slim levels."""
    scale = (_RIGHTS[count] - _LEFT) / max(values)
    pyramid = Panel(0, 1, _LEFT, _RIGHTS[count], tuple(value * scale for value in values))
    return [pyramid, *(inset for run in _slim_runs(pyramid) for inset in _chain(pyramid, run, count))]


def _unread(stack: Sequence[Panel], least: float = THIN) -> list[int]:
    """Levels that are narrower than `least` [px] wherever they are shown."""
    widest = [max(p.widths[level - p.first] for p in stack if p.first <= level <= p.last) for level in range(len(stack[0].widths))]
    return [level for level, width in enumerate(widest) if width < least]


def _slim_runs(pyramid: Panel) -> list[tuple[int, int]]:
    """First and last level of each run of neighbours that leave room for an inset beside them."""
    slim = [width < _SLIM for width in pyramid.widths]
    starts = [level for level, is_slim in enumerate(slim) if is_slim and (level == 0 or not slim[level - 1])]
    ends = [level for level, is_slim in enumerate(slim) if is_slim and (level == len(slim) - 1 or not slim[level + 1])]
    return list(zip(starts, ends, strict=True))


def _chain(pyramid: Panel, run: tuple[int, int], count: int) -> list[Panel]:
    """Up to `count` insets side by side over the right half, each for the levels of a run that are thin in the one before."""
    start = pyramid.centre + 26
    room = (_INSET_RIGHT - start + _INSET_MARGIN) / max(count, 1) - _INSET_MARGIN
    insets: list[Panel] = []
    shown = replace(pyramid, first=run[0], widths=pyramid.widths[run[0] : run[1] + 1])
    for number in range(count):
        thin = [shown.first + place for place, width in enumerate(shown.widths) if width < THIN]
        if not thin:
            break
        first, last = thin[0], thin[-1]
        if first > shown.first + bool(insets) and shown.widths[first - 1 - shown.first] < _SLIM:
            first -= 1
        if last < shown.last - bool(insets) and shown.widths[last + 1 - shown.first] < _SLIM:
            last += 1
        widths = pyramid.widths[first : last + 1]
        magnified = _round_multiple((room - 20) / max(widths))
        if magnified <= shown.magnified:
            break
        left = start + number * (room + _INSET_MARGIN)
        shown = Panel(first, magnified, left, left + room, tuple(width * magnified for width in widths))
        insets.append(shown)
    return insets


def _round_multiple(most: float) -> int:
    """The largest number up to `most`, at least 1, with one leading digit that is easy to say."""
    power = 10 ** math.floor(math.log10(max(most, 1)))
    return max(multiple for multiple in _MULTIPLES if multiple * power <= max(most, 1)) * power


def draw_trophic_pyramid(chart: TrophicPyramid) -> str:
    """The SVG of a pyramid, producers at the bottom, whichever level is the widest."""
    levels = chart.levels
    blocks = [_text_block(level) for level in levels]
    stack = panels([level.value for level in levels])
    pyramid, *insets = stack
    pitch = max(_pitch(stack), *(sum(height for _, height, _, _ in block) + 10 for block in blocks))
    heading = wrap(f"Width of the bars: {chart.quantity[:1].lower()}{chart.quantity[1:]}", _TEXT, WIDTH - 24)
    bottom = _top(insets, len(levels), len(heading)) + pitch * (len(levels) - 1) + _BAR
    canvas = Canvas(WIDTH, round(bottom + _FOOT))
    tops = [bottom - _BAR - pitch * number for number in range(len(levels))]
    for number, line in enumerate(heading):
        canvas.text(12, 26 + 18 * number, line, size=_TEXT, role="muted")
    _bars(canvas, pyramid, tops, levels)
    for number, (level, block) in enumerate(zip(levels, blocks, strict=True)):
        _names(canvas, block, tops[number] + _BAR / 2)
        if pyramid.widths[number] < UNSEEN:
            _too_thin(canvas, pyramid.centre, tops[number] + _BAR / 2, number in _unread(stack, UNSEEN))
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
    below_wide = [inset for inset in insets if inset.last < pyramid.last and pyramid.widths[inset.last + 1] >= _SLIM]
    return max([float(_PITCH), *(_BAR + 12 + _LINE * len(_inset_caption(inset)) + 22 for inset in below_wide)])


def _too_thin(canvas: Canvas, centre: float, middle: float, everywhere: bool) -> None:
    lines = wrap(_TOO_THIN_STILL if everywhere else _TOO_THIN, _SMALL, centre - 14 - _LEFT)
    for number, line in enumerate(lines):
        y = middle + 4.5 + _LINE * (number - (len(lines) - 1) / 2)
        canvas.text(centre - 10, y, line, size=_SMALL, anchor="end", italic=True)


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
    """Bars to scale: full, or hatched where they are magnified, so that none is taken for a bar of the pyramid."""
    for number, width in enumerate(panel.widths, start=panel.first):
        left, top, role = panel.centre - width / 2, tops[number], "animal" if number else "plant"
        bar = rectangle(left, top, width, _BAR)
        if panel.magnified == 1:
            canvas.fill(bar, role, part=f"bar {levels[number].id}")
            continue
        canvas.fill(bar, "ground", part=f"inset {levels[number].id}")
        if width > 2 * _OUTLINE:
            canvas.stroke(segments(hatching(left, top, width, _BAR)), role, 1.4)
            canvas.stroke(rectangle(left + _OUTLINE / 2, top + _OUTLINE / 2, width - _OUTLINE, _BAR - _OUTLINE), role, _OUTLINE)
        else:
            canvas.fill(bar, role)


def hatching(left: float, top: float, width: float, height: float) -> list[tuple[Point, Point]]:
    """Slanting strokes from edge to edge of a box [px]."""
    strokes = []
    for step in range(1, int((width + height) / _HATCH) + 1):
        foot = step * _HATCH - height
        start, end = max(foot, 0.0), min(foot + height, width)
        if end > start:
            strokes.append(((left + start, top + height - (start - foot)), (left + end, top + height - (end - foot))))
    return strokes


def _passed_on(canvas: Canvas, centre: float, top: float, bottom: float, label: str) -> None:
    tip, tail = top + 5, bottom - 5
    canvas.stroke(segments([((centre, tail), (centre, tip + 6))]), "muted", 2)
    canvas.fill(polygon([(centre, tip), (centre + 6, tip + 9), (centre - 6, tip + 9)]), "muted")
    canvas.text(centre - 14, (top + bottom) / 2 + 5, f"{label} passed on", size=_SMALL, anchor="end")


def _inset(canvas: Canvas, inset: Panel, pyramid: Panel, tops: Sequence[float], levels: Sequence[PyramidLevel]) -> None:
    caption = _inset_caption(inset)
    top, bottom = tops[inset.last] - 12 - _LINE * len(caption), tops[inset.first] + _BAR + 10
    canvas.stroke(rounded_box(inset.left, top, inset.right - inset.left, bottom - top, 6), "muted", 1.2, dash=(5, 4))
    for number, (line, bold) in enumerate(caption):
        canvas.text(inset.centre, top + 17 + _LINE * number, line, size=_SMALL, anchor="middle", bold=bold)
    _bars(canvas, inset, tops, levels)
    if inset.left - pyramid.centre < 40:
        ends = ((inset.last, tops[inset.last], top + 6), (inset.first, tops[inset.first] + _BAR, bottom - 6))
        lines = [((pyramid.centre + pyramid.widths[level] / 2 + 2, y), (inset.left, end)) for level, y, end in ends]
        canvas.stroke(segments(lines), "muted", 1)


def _inset_caption(inset: Panel) -> list[tuple[str, bool]]:
    """Lines with whether they are bold: which levels, and how many times wider."""
    count = len(inset.widths)
    which = "this level," if count == 1 else f"these {_COUNTS.get(count, '')} levels,".replace("  ", " ")
    room = inset.right - inset.left - 6
    factor = f"{_spoken(inset.magnified)} times wider"
    return [(line, bold) for text, bold in ((which, False), (factor, True)) for line in wrap(text, _SMALL, room, bold)]


def _spoken(multiple: int) -> str:
    """A round number as one says it: from a million on in words."""
    for size, word in ((10**12, "trillion"), (10**9, "billion"), (10**6, "million")):
        if multiple >= size:
            return f"{multiple // size:,} {word}".replace(",", "\u202f")
    return f"{multiple:,}".replace(",", "\u202f")
