"""The frame that a mean year stands in, and what every climate diagram draws into it: shaded seasons and two curves."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from figures.drawing.canvas import Canvas, Point, polygon, polyline, rectangle, segments
from figures.drawing.walter_lieth import SCALE_CHANGE_MM, Vertex, at, frame_order, precipitation_height

SCALE_CHANGE = precipitation_height(SCALE_CHANGE_MM)
"""The height [degC] from which precipitation is drawn at a tenth of the scale."""
COLD_WORDS = "months averaging below 0 °C"
SCALE_WORDS = "above 100 mm (dashed line): the same height stands for ten times as much"
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


@dataclass(frozen=True)
class Frame:
    """Turns month positions, 0 to 12, and heights [degC] into places on the canvas [px]."""

    left: float
    right: float
    top: float
    bottom: float
    low: float
    high: float
    """Heights [degC] of the bottom and the top."""

    def x(self, month: float) -> float:
        return self.left + month / 12 * (self.right - self.left)

    def y(self, height: float) -> float:
        return self.bottom - (height - self.low) / (self.high - self.low) * (self.bottom - self.top)

    def place(self, month: float, height: float) -> Point:
        return self.x(month), self.y(height)

    def month(self, x: float) -> float:
        """The month position at a place across [px]."""
        return (x - self.left) / (self.right - self.left) * 12


@dataclass(frozen=True)
class Pen:
    """How heavily a frame is filled [px]."""

    hatches: int
    """Hatching lines in a year."""
    hatch: float
    dot: float
    pitch: float
    """Distance of the dots of a dry season in a row."""
    precipitation: float
    temperature: float
    month_dot: float
    """Dots on the temperature curve at mid-months; 0 for none."""


def month_names(southern: bool) -> tuple[str, ...]:
    """Short names of the months in the order of the frame."""
    return tuple(frame_order(MONTHS, southern))


def cold_stretches(monthly_mean_temp_degc: Sequence[float], southern: bool) -> list[tuple[int, int]]:
    """Stretches of months whose mean is below 0 degC, as (start, end) in months of the frame.

    A mean below 0 degC is no frost: frost needs daily minima, which monthly means do not tell.

    >>> cold_stretches([-9, -6, 0, 8, 14, 19, 22, 21, 15, 8, 0, -7], southern=False)
    [(0, 2), (11, 12)]
    """
    stretches: list[tuple[int, int]] = []
    for month, temp in enumerate(frame_order(monthly_mean_temp_degc, southern)):
        if temp < 0 and stretches and stretches[-1][1] == month:
            stretches[-1] = (stretches[-1][0], month + 1)
        elif temp < 0:
            stretches.append((month, month + 1))
    return stretches


def draw_cold_months(canvas: Canvas, frame: Frame, stretches: Sequence[tuple[int, int]], top: float, height: float) -> None:
    """A full bar below the months of each stretch."""
    for start, end in stretches:
        left, right = frame.x(start), frame.x(end)
        canvas.fill(rectangle(left, top, right - left, height), "ink", part="below 0 degC")


def bounds(heights: Iterable[float], step: int) -> tuple[int, int]:
    """Bottom and top of a frame [degC] in whole steps: the zero line at the bottom unless something lies below it."""
    found = list(heights)
    low = 0 if min(found) >= 0 else step * math.floor((min(found) - 1) / step)
    return low, max(20, step * math.ceil((max(found) + 1) / step))


def draw_areas(canvas: Canvas, frame: Frame, points: Sequence[Vertex], pen: Pen) -> None:
    """Humid: vertical hatching; dry: dots; above 100 mm: solid. Below 0 degC hatching starts at the zero line."""
    hatching = []
    for step in range(pen.hatches):
        month = (step + 0.25) * 12 / pen.hatches
        temp, precip = at(points, month)
        low, high = max(temp, 0), min(precip, SCALE_CHANGE)
        if high > low:
            hatching.append(((frame.x(month), round(frame.y(low))), (frame.x(month), round(frame.y(high)))))  # the curves cover both ends
    if hatching:
        canvas.stroke(segments(hatching), "water", pen.hatch)
    if dots := _dotted_rows(frame, points, pen):
        canvas.dots(dots, "heat", pen.dot, pitch=pen.pitch)
    if max(precip for _, _, precip in points) > SCALE_CHANGE:
        edge = [frame.place(month, max(precip, SCALE_CHANGE)) for month, _, precip in points]
        canvas.fill(polygon([frame.place(0, SCALE_CHANGE), *edge, frame.place(12, SCALE_CHANGE)]), "water")


def _dotted_rows(frame: Frame, points: Sequence[Vertex], pen: Pen) -> list[tuple[Point, Point]]:
    """Runs of a staggered lattice of dots that lie between precipitation, below, and temperature, above."""
    runs: list[tuple[Point, Point]] = []
    for row in range(int((frame.bottom - frame.top) / pen.pitch * 2)):
        y = frame.top + row * pen.pitch / 2
        count = int((frame.right - frame.left) / pen.pitch)
        places = [frame.left + (number + row % 2 / 2) * pen.pitch for number in range(1, count)]
        dry = [x for x in places if _is_dry(frame, points, x, y, pen.dot)]
        for number, x in enumerate(dry):
            if number and x - dry[number - 1] < 1.5 * pen.pitch:
                runs[-1] = (runs[-1][0], (x, y))
            else:
                runs.append(((x, y), (x, y)))
    return runs


def _is_dry(frame: Frame, points: Sequence[Vertex], x: float, y: float, dot: float) -> bool:
    temp, precip = at(points, frame.month(x))
    return frame.y(temp) + dot + 0.1 <= y <= frame.y(precip) - dot - 0.1


def draw_frame(canvas: Canvas, frame: Frame) -> None:
    """The frame itself and its zero line."""
    corners = [(0, frame.low), (0, frame.high), (12, frame.high), (12, frame.low)]
    canvas.stroke(polygon(frame.place(*corner) for corner in corners), "ink", 1)
    canvas.stroke(segments([(frame.place(0, 0), frame.place(12, 0))]), "ink", 1.8)


def draw_curves(canvas: Canvas, frame: Frame, points: Sequence[Vertex], pen: Pen, suffix: str = "") -> None:
    """Precipitation, thick; temperature, thin; `suffix` tells the parts of many frames apart."""
    precip = polyline(frame.place(month, height) for month, _, height in points)
    canvas.stroke(precip, "water", pen.precipitation, part=f"precipitation{suffix}")
    temp = polyline(frame.place(month, temp) for month, temp, _ in points)
    canvas.stroke(temp, "heat", pen.temperature, part=f"temperature{suffix}")
    if pen.month_dot:
        months = [frame.place(number + 0.5, at(points, number + 0.5)[0]) for number in range(12)]
        canvas.dots(zip(months, months, strict=True), "heat", pen.month_dot)


def draw_temperature_mark(canvas: Canvas, line: Sequence[Point], pen: Pen) -> None:
    """A piece of the temperature curve as it looks, for a key; with its dot where the curve has dots."""
    canvas.stroke(polyline(line), "heat", pen.temperature)
    if pen.month_dot:
        middle = (line[0][0] + line[-1][0]) / 2, line[0][1]
        canvas.dots([(middle, middle)], "heat", pen.month_dot)
