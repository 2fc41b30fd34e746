"""The bars of a pyramid: full where they are to scale, hatched where they are magnified."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from figures.drawing.canvas import Canvas, Point, polygon, rectangle, segments
from figures.drawing.pyramid_panels import UNSEEN, Panel
from figures.trophic_pyramid import PyramidLevel

_HATCH, _OUTLINE = 7.0, 1.6
"""Distance of the strokes across a magnified bar, and the line around it [px]."""


def draw_bars(canvas: Canvas, panel: Panel, tops: Mapping[int, float] | Sequence[float], height: float, levels: Sequence[PyramidLevel]) -> None:
    """Bars to scale but for the thinnest: full, or hatched where they are magnified, so that none is taken for a bar of the pyramid."""
    for number, to_scale in enumerate(panel.widths, start=panel.first):
        width = max(to_scale, UNSEEN)
        left, top, role = panel.centre - width / 2, tops[number], "animal" if number else "plant"
        bar = rectangle(left, top, width, height)
        if panel.magnified == 1:
            canvas.fill(bar, role, part=f"bar {levels[number].id}")
            continue
        canvas.fill(bar, "ground", part=f"inset {levels[number].id}")
        if width > 2 * _OUTLINE:
            canvas.stroke(segments(hatching(left, top, width, height)), role, 1.4)
            canvas.stroke(rectangle(left + _OUTLINE / 2, top + _OUTLINE / 2, width - _OUTLINE, height - _OUTLINE), role, _OUTLINE)
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


def draw_arrow(canvas: Canvas, x: float, tip: float, tail: float) -> None:
    """An arrow upwards, for what a level passes on."""
    canvas.stroke(segments([((x, tail), (x, tip + 6))]), "muted", 2)
    canvas.fill(polygon([(x, tip), (x + 6, tip + 9), (x - 6, tip + 9)]), "muted")
