"""Draws oxygen against temperature: what water can hold as a curve, what was measured as points hanging from it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from figures.drawing.canvas import Canvas, Point, polyline, segments
from figures.drawing.text import ASCENT, LEADING, block_size, glued, text_width, wrap
from figures.oxygen_curve import OxygenCurve, OxygenPoint

WIDTH, HEIGHT = 700, 440
_LEFT, _RIGHT, _TOP, _BOTTOM = 56, 558, 52, 386
_TEXT = 14.5
_DASHES: tuple[tuple[float, ...], ...] = ((), (9, 4), (3, 4))
"""Marks and gaps of the curves, from the freshest water to the saltest [px]."""
_NAME_GAP, _NAME_ROOM, _NAME_SPACE = 16.0, 122.0, 4.0
"""From the frame to the names of curves beside it, their room, and the space between them [px]."""
_WARMEST, _LEAST_TOP = 40, 16
_LEADER_FROM = 18.0
"""A label farther from its point than this [px] is tied to it by a line."""
Box = tuple[float, float, float, float]
"""Left, top, width, height [px]."""


class _Frame:
    """Turns temperatures [degC] and oxygen [mg/L] into places on the canvas [px]."""

    def __init__(self, chart: OxygenCurve) -> None:
        self.top = max(_LEAST_TOP, 4 * math.ceil((max(point.oxygen_mg_per_l for point in chart.points) + 0.5) / 4))

    def place(self, temperature: float, oxygen: float) -> Point:
        return _LEFT + temperature / _WARMEST * (_RIGHT - _LEFT), _BOTTOM - oxygen / self.top * (_BOTTOM - _TOP)


def draw_oxygen_curve(chart: OxygenCurve) -> str:
    """The SVG of the curves with their points."""
    frame, canvas = _Frame(chart), Canvas(WIDTH, HEIGHT)
    _axes(canvas, frame)
    taken = list(_curves(canvas, frame, chart))
    crowd = list(_marks(frame, chart))
    for point in chart.points:
        end, start = (frame.place(point.temperature_degc, o) for o in (point.oxygen_mg_per_l, point.saturation_mg_per_l))
        canvas.stroke(segments([(start, end)]), "muted", 1.4, dash=(3, 3))
        canvas.dots([(end, end)], "animal", 11)
    places = [frame.place(point.temperature_degc, point.oxygen_mg_per_l) for point in chart.points]
    for point, place in sorted(zip(chart.points, places, strict=True), key=lambda pair: pair[1][1]):
        others = [other for other in places if other != place]
        taken.append(_label(canvas, point, place, taken, crowd, others))
    return canvas.svg()


def _axes(canvas: Canvas, frame: _Frame) -> None:
    canvas.text(12, 26, "Dissolved oxygen, mg L⁻¹", size=_TEXT)
    canvas.text((_LEFT + _RIGHT) / 2, HEIGHT - 12, "Water temperature, °C", size=_TEXT, anchor="middle")
    levels = range(4, frame.top + 1, 4)
    canvas.stroke(segments((frame.place(0, o), frame.place(_WARMEST, o)) for o in levels), "grid", 0.5)
    for oxygen in (0, *levels):
        x, y = frame.place(0, oxygen)
        canvas.text(x - 9, y + 5, f"{oxygen}", size=_TEXT, anchor="end")
    ticks = []
    for temperature in range(0, _WARMEST + 1, 10):
        x, y = frame.place(temperature, 0)
        ticks.append(((x, y), (x, y + 5)))
        canvas.text(x, y + 22, f"{temperature}", size=_TEXT, anchor="middle")
    canvas.stroke(segments([*ticks, ((_LEFT, _TOP), (_LEFT, _BOTTOM)), ((_LEFT, _BOTTOM), (_RIGHT, _BOTTOM))]), "ink", 1)


def _curves(canvas: Canvas, frame: _Frame, chart: OxygenCurve) -> Iterator[Box]:
    """The curves, each named beside its warm end; gives the boxes of the names."""
    names = [wrap(glued(curve.label), _TEXT, _NAME_ROOM) for curve in chart.curves]
    ends = [frame.place(*curve.points[-1]) for curve in chart.curves]
    heights = [block_size(lines, _TEXT)[1] for lines in names]
    for number, (curve, lines, top) in enumerate(zip(chart.curves, names, name_tops([y for _, y in ends], heights), strict=True)):
        canvas.stroke(polyline(frame.place(*point) for point in curve.points), "water", 3, dash=_DASHES[number], part=f"curve {number}")
        canvas.stroke(segments([(ends[number], (_RIGHT + _NAME_GAP - 4, top + heights[number] / 2))]), "muted", 1)
        for row, line in enumerate(lines):
            canvas.text(_RIGHT + _NAME_GAP, top + _TEXT * (ASCENT + LEADING * row), line, size=_TEXT)
        yield _RIGHT + _NAME_GAP, top, block_size(lines, _TEXT)[0], heights[number]


def name_tops(ends: Sequence[float], heights: Sequence[float]) -> list[float]:
    """Where names begin [px] so that they keep apart and stand, one or a few together, level with the ends of their curves.

    >>> name_tops([100, 110, 300], [20, 20, 20])
    [83.0, 107.0, 290.0]
    """
    groups = [[number] for number in range(len(ends))]

    def top(group: Sequence[int]) -> float:
        return sum(ends[number] for number in group) / len(group) - depth(group) / 2

    def depth(group: Sequence[int]) -> float:
        return sum(heights[number] for number in group) + _NAME_SPACE * (len(group) - 1)

    place = 0
    while place + 1 < len(groups):
        above, below = groups[place], groups[place + 1]
        if top(above) + depth(above) + _NAME_SPACE > top(below):
            groups[place : place + 2] = [[*above, *below]]
            place = max(place - 1, 0)
        else:
            place += 1
    return [top(group) + sum(heights[other] + _NAME_SPACE for other in group if other < number) for group in groups for number in group]


def _marks(frame: _Frame, chart: OxygenCurve) -> Iterator[Point]:
    """Places that no label should cover: the curves, and the points with what they hang from."""
    for curve in chart.curves:
        yield from (frame.place(*point) for point in curve.points)
    for point in chart.points:
        low, high = sorted((point.oxygen_mg_per_l, point.saturation_mg_per_l))
        yield from (frame.place(point.temperature_degc, low + (high - low) * step / 8) for step in range(9))


def _label(
    canvas: Canvas, point: OxygenPoint, place: Point, taken: Sequence[Box], crowd: Sequence[Point], others: Sequence[Point]
) -> Box:
    """Name and value where they cover least and belong to no other point; a line leads to them where they stand off."""
    lines = (point.label, point.value_label)
    width = max(text_width(line, _TEXT, bold=number == 0) for number, line in enumerate(lines))
    height = block_size(lines, _TEXT)[1]
    x, y = place
    tops = [y - height / 2, *(y + off for off in (10, 24, 40, 60)), *(y - off - height for off in (10, 24, 40, 60))]
    boxes = [(left, top, width, height) for top in tops for left in (x + 14, x - 14 - width, x - width / 2)]
    best = min(boxes, key=lambda box: _cost(box, taken, crowd, place, others))
    if _distance(best, place) > _LEADER_FROM:
        end = (min(max(x, best[0]), best[0] + width), min(max(y, best[1]), best[1] + height))
        canvas.stroke(segments([(place, end)]), "ink", 1)
    for number, line in enumerate(lines):
        canvas.text(best[0], best[1] + _TEXT * (0.94 + 1.22 * number), line, size=_TEXT, bold=number == 0, halo=True)
    return best


def _cost(box: Box, taken: Sequence[Box], crowd: Sequence[Point], point: Point, others: Sequence[Point]) -> float:
    """How badly a label stands: outside the frame, on another label, on marks, nearer to another point, or far from its own."""
    left, top, width, height = box
    outside = left < _LEFT + 4 or left + width > WIDTH - 4 or top < 34 or top + height > _BOTTOM - 3
    on_labels = sum(left < l + w + 6 and l < left + width + 6 and top < t + h + 2 and t < top + height + 2 for l, t, w, h in taken)
    on_marks = sum(left - 5 < x < left + width + 5 and top - 4 < y < top + height + 4 for x, y in crowd)
    own = _distance(box, point)
    astray = sum(_distance(box, other) < own + 6 for other in others)
    return 1000 * outside + 1000 * on_labels + 300 * astray + 10 * on_marks + own / 5


def _distance(box: Box, point: Point) -> float:
    """From a place to the nearest edge of a box [px]; nothing inside it."""
    left, top, width, height = box
    return math.hypot(max(left - point[0], 0, point[0] - left - width), max(top - point[1], 0, point[1] - top - height))
