"""Draws a light profile: depth downwards, light to the right, with the photic depth and the bottom."""

from __future__ import annotations

import math

from figures.drawing.canvas import Canvas, Point, polygon, polyline, segments
from figures.drawing.text import SMALLEST, size_to_fit
from figures.light_profile import LightProfile

WIDTH, HEIGHT = 700, 500
_LEFT, _RIGHT, _TOP, _BOTTOM = 76, 668, 118, 448
_TEXT, _SMALL = 14.5, SMALLEST
_LABEL_ROOM = 26.0
"""Height of a line of text beside a level line [px]."""


class _Frame:
    """Turns light [%] and depth [m] into places on the canvas [px]."""

    def __init__(self, chart: LightProfile) -> None:
        self.lowest = chart.lowest_m
        self.has_bottom = chart.bottom_m <= self.lowest
        self.floor = _BOTTOM - (2 * _LABEL_ROOM if self.has_bottom else 0)
        """Where the lowest depth lies; below it stands what is said of the bottom."""

    def x(self, light: float) -> float:
        return _LEFT + light / 100 * (_RIGHT - _LEFT)

    def y(self, depth: float) -> float:
        return _TOP + depth / self.lowest * (self.floor - _TOP)

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
    frame, canvas = _Frame(chart), Canvas(WIDTH, HEIGHT)
    canvas.text(12, 28, chart.station, size=size_to_fit(chart.station, 20, WIDTH - 24, bold=True), bold=True)
    canvas.text(12, 49, chart.place, size=size_to_fit(chart.place, _TEXT, WIDTH - 24), role="muted")
    _water(canvas, frame, chart)
    _axes(canvas, frame)
    canvas.stroke(polyline(frame.place(*point) for point in chart.curve), "heat", 3.2, part="light")
    if frame.has_bottom:
        _bottom(canvas, frame, chart)
    _photic_depth(canvas, frame, chart)
    _footer(canvas, frame, chart)
    return canvas.svg()


def _water(canvas: Canvas, frame: _Frame, chart: LightProfile) -> None:
    """Water below the photic depth is hatched; the light that is left is a filled area."""
    edge = [frame.place(*point) for point in chart.curve]
    canvas.fill(polygon([frame.place(0, 0), *edge, frame.place(chart.lowest_m, 0)]), "soil", opacity=0.35)
    canvas.text(_LEFT + 12, _TOP + 24, "light left", size=_TEXT, bold=True)
    top = frame.y(min(chart.photic_depth_m, chart.lowest_m))
    rows = [y for y in (top + 6 + 9 * row for row in range(60)) if y < frame.floor - 3]
    if rows:
        canvas.stroke(segments(((_LEFT + 1, y), (_RIGHT - 1, y)) for y in rows), "grid", 0.8)


def _axes(canvas: Canvas, frame: _Frame) -> None:
    canvas.text((_LEFT + _RIGHT) / 2, _TOP - 34, "Light, % of what enters the water", size=_TEXT, anchor="middle")
    canvas.text(12, _TOP - 34, "Depth, m", size=_TEXT)
    ticks = []
    for light in range(0, 101, 20):
        ticks.append(((frame.x(light), _TOP), (frame.x(light), _TOP - 5)))
        canvas.text(frame.x(light), _TOP - 11, f"{light}", size=_TEXT, anchor="middle")
    for number, label in enumerate(depth_labels(frame.lowest)):
        y = frame.y(number * depth_step(frame.lowest))
        ticks.append(((_LEFT, y), (_LEFT - 5, y)))
        canvas.text(_LEFT - 9, y + 5, label, size=_TEXT, anchor="end")
    canvas.stroke(polyline([(_LEFT, frame.floor), (_LEFT, _TOP), (_RIGHT, _TOP), (_RIGHT, frame.floor)]), "ink", 1)
    canvas.stroke(segments(ticks), "ink", 1)
    canvas.stroke(segments([((_LEFT, _TOP), (_RIGHT, _TOP))]), "water", 3, part="surface")


def _photic_depth(canvas: Canvas, frame: _Frame, chart: LightProfile) -> None:
    """A dashed line with its words above it, or below it where the surface is too near."""
    if chart.photic_depth_m > frame.lowest:
        return
    y = frame.y(chart.photic_depth_m)
    canvas.stroke(segments([((_LEFT, y), (_RIGHT, y))]), "plant", 2.2, dash=(8, 5), part="photic depth")
    baseline = y - 8 if y - _TOP > _LABEL_ROOM else y + 19
    canvas.text(_RIGHT - 10, baseline, f"1 % left at {chart.photic_label}", size=_TEXT, bold=True, anchor="end", halo=True)


def _bottom(canvas: Canvas, frame: _Frame, chart: LightProfile) -> None:
    """The bottom as ground with slanting strokes, and what light is left there."""
    y = frame.y(chart.bottom_m)
    canvas.stroke(segments(((x, y + 2), (x - 9, y + 14)) for x in range(_LEFT + 10, _RIGHT + 1, 12)), "soil", 1.6)
    canvas.stroke(segments([((_LEFT, y), (_RIGHT, y))]), "soil", 4, part="bottom")
    words = f"bottom at {chart.bottom_label}, {chart.bottom_light_label} left"
    canvas.text(_RIGHT - 10, y + 33, words, size=_TEXT, bold=True, anchor="end")


def _footer(canvas: Canvas, frame: _Frame, chart: LightProfile) -> None:
    """What lies below the lowest depth drawn."""
    if chart.photic_depth_m > frame.lowest:
        words = f"1 % would only be left at {chart.photic_label}: light for plants reaches the bottom."
    elif not frame.has_bottom:
        words = f"Hatched: less than 1 % left. The bottom lies deeper, at {chart.bottom_label}."
    else:
        words = "Hatched: less than 1 % of the light is left." if chart.photic_depth_m < chart.bottom_m else ""
    if words:
        canvas.text(_LEFT, HEIGHT - 16, words, size=size_to_fit(words, _SMALL, _RIGHT - _LEFT), role="muted")
