"""Draws a light profile: depth downwards, light to the right, with the photic depth and the bottom."""

from __future__ import annotations

import math
from collections.abc import Sequence

from figures.drawing.canvas import Canvas, Point, polygon, polyline, segments
from figures.drawing.sheet import Sheet, draw_notes, notes_height
from figures.drawing.text import glued, text_width, wrap
from figures.light_profile import LightProfile

_TEXT, _LINE = 14.5, 18.0
_HEIGHT = 330.0
"""Of the water [px]."""
_GOES_ON = "The axis goes on below, as deep as at the other stations."
_LABEL_ROOM = 26.0
"""Height of a line of text beside a level line [px]."""


class _Frame:
    """Turns light [%] and depth [m] into places on the canvas [px]."""

    def __init__(self, chart: LightProfile, sheet: Sheet, top: float) -> None:
        self.lowest, self.sheet, self.top = max(chart.lowest_m, chart.axis_m), sheet, top
        self.floor = top + _HEIGHT
        """Where the axis ends."""
        self.end = self.y(chart.lowest_m)
        """Where the curve ends."""

    def x(self, light: float) -> float:
        return self.sheet.left + light / 100 * self.sheet.room

    def y(self, depth: float) -> float:
        return self.top + depth / self.lowest * _HEIGHT

    def place(self, depth: float, light: float) -> Point:
        return self.x(light), self.y(depth)


def depth_step(lowest: float) -> float:
    """The distance of the depth marks [m]: 1, 2 or 5 times a power of ten, four to nine of them down to `lowest`."""
    power = 10.0 ** math.floor(math.log10(lowest / 4))
    return max(step * power for step in (1, 2, 5) if step * power <= lowest / 4)


def depth_labels(lowest: float) -> list[str]:
    """The depth marks as written, all with the same decimals.

    >>> depth_labels(1.1)
    ['0.0', '0.2', '0.4', '0.6', '0.8', '1.0']
    """
    step = depth_step(lowest)
    decimals = max(0, -math.floor(math.log10(step) + 1e-9))
    return [f"{number * step:.{decimals}f}" for number in range(int(lowest / step + 1e-9) + 1)]


def draw_light_profile(chart: LightProfile) -> str:
    """The SVG of one place's light, from the surface down."""
    sheet = Sheet.of(chart, wide=(76, 32), narrow=(38, 20)).beside(depth_labels(max(chart.lowest_m, chart.axis_m)), _TEXT)
    size = 16.0 if sheet.narrow else 20.0
    names, places = wrap(chart.station, size, sheet.width - 24, bold=True), wrap(glued(chart.place), _TEXT, sheet.width - 24)
    head = 8 + 1.15 * size * len(names) + _LINE * len(places)
    frame = _Frame(chart, sheet, head + (78 if sheet.narrow else 64))
    ground = wrap(glued(f"bottom at {chart.bottom_label}, {chart.bottom_light_label} left"), _TEXT, sheet.room, bold=True) if _has_bottom(chart) else ()
    below = max(frame.floor + 4, frame.end + 18 + _LINE * len(ground) if ground else 0)
    notes = sheet.lines([_note(chart), *([_GOES_ON] if frame.floor > frame.end + 1 else [])])
    canvas = Canvas(sheet.width, below + 12 + notes_height(notes))
    for number, line in enumerate(names):
        canvas.text(12, 8 + 1.15 * size * (number + 1) - 3, line, size=size, bold=True)
    for number, line in enumerate(places):
        canvas.text(12, head - _LINE * (len(places) - number - 1), line, size=_TEXT, role="muted")
    _water(canvas, frame, chart)
    _axes(canvas, frame)
    canvas.stroke(polyline(frame.place(*point) for point in chart.curve), "heat", 3.2, part="light")
    if ground:
        _bottom(canvas, frame, ground)
    _photic_depth(canvas, frame, chart)
    draw_notes(canvas, notes, sheet.left, below + 18)
    return canvas.svg()


def _has_bottom(chart: LightProfile) -> bool:
    return chart.bottom_m <= chart.lowest_m


def _water(canvas: Canvas, frame: _Frame, chart: LightProfile) -> None:
    """Water below the photic depth is hatched; the light that is left is a filled area, named where it is wide enough."""
    left, right = frame.sheet.left, frame.sheet.right
    edge = [frame.place(*point) for point in chart.curve]
    canvas.fill(polygon([frame.place(0, 0), *edge, frame.place(chart.lowest_m, 0)]), "soil", opacity=0.35)
    if all(x > left + 20 + text_width("light left", _TEXT, bold=True) for x, y in edge if y < frame.top + 30):
        canvas.text(left + 12, frame.top + 24, "light left", size=_TEXT, bold=True)
    top = frame.y(min(chart.photic_depth_m, chart.lowest_m))
    rows = [y for y in (top + 6 + 9 * row for row in range(60)) if y < frame.end - 3]
    if rows:
        canvas.stroke(segments(((left + 1, y), (right - 1, y)) for y in rows), "grid", 0.8)


def _axes(canvas: Canvas, frame: _Frame) -> None:
    left, right, top = frame.sheet.left, frame.sheet.right, frame.top
    canvas.text((left + right) / 2, top - (50 if frame.sheet.narrow else 34), "Light, % of what enters the water", size=_TEXT, anchor="middle")
    canvas.text(12, top - 34, "Depth, m", size=_TEXT)
    ticks = []
    for light in range(0, 101, 20):
        ticks.append(((frame.x(light), top), (frame.x(light), top - 5)))
        canvas.text(frame.x(light), top - 11, f"{light}", size=_TEXT, anchor="middle")
    for number, label in enumerate(depth_labels(frame.lowest)):
        y = frame.y(number * depth_step(frame.lowest))
        ticks.append(((left, y), (left - 5, y)))
        canvas.text(left - 9, y + 5, label, size=_TEXT, anchor="end")
    canvas.stroke(polyline([(left, frame.floor), (left, top), (right, top), (right, frame.end)]), "ink", 1, part="frame")
    canvas.stroke(segments(ticks), "ink", 1)
    canvas.stroke(segments([((left, top), (right, top))]), "water", 2.3, part="surface")


def _photic_depth(canvas: Canvas, frame: _Frame, chart: LightProfile) -> None:
    """A dashed line with its words above it, or below it where the surface is too near."""
    if chart.photic_depth_m > frame.lowest:
        return
    y, right = frame.y(chart.photic_depth_m), frame.sheet.right
    canvas.stroke(segments([((frame.sheet.left, y), (right, y))]), "plant", 2.2, dash=(8, 5), part="photic depth")
    baseline = y - 8 if y - frame.top > _LABEL_ROOM else y + 19
    canvas.text(right - 10, baseline, f"1 % left at {chart.photic_label}", size=_TEXT, bold=True, anchor="end", halo=True)


def _bottom(canvas: Canvas, frame: _Frame, words: Sequence[str]) -> None:
    """The bottom as ground with slanting strokes, and what light is left there."""
    left, right, y = frame.sheet.left, frame.sheet.right, frame.end
    canvas.stroke(segments(((x, y + 2), (x - 9, y + 14)) for x in range(round(left) + 10, round(right) + 1, 12)), "soil", 1.6)
    canvas.stroke(segments([((left, y), (right, y))]), "soil", 4.4, part="bottom")
    for number, line in enumerate(words):
        canvas.text(right - 10, y + 33 + _LINE * number, line, size=_TEXT, bold=True, anchor="end")


def _note(chart: LightProfile) -> str:
    """What lies below the lowest depth drawn, and what the hatching is."""
    if chart.photic_depth_m > chart.lowest_m:
        return f"1 % would only be left at {chart.photic_label}."
    if not _has_bottom(chart):
        return f"Hatched: less than 1 % left. Bottom at {chart.bottom_label}."
    return "Hatched: less than 1 % of the light is left." if chart.photic_depth_m < chart.bottom_m else ""
