"""Draws oxygen against temperature: what water can hold as a curve, what was measured as points hanging from it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import permutations

from figures.drawing.canvas import Canvas, Point, polyline, segments
from figures.drawing.sheet import Sheet
from figures.drawing.text import ASCENT, LEADING, block_size, glued, text_width, wrap, wrap_evenly
from figures.oxygen_curve import OxygenCurve, OxygenPoint

_TOP, _BOTTOM, HEIGHT = 52.0, 386.0, 440.0
_TEXT = 14.5
_DASHES: tuple[tuple[float, ...], ...] = ((), (9, 4), (3, 4))
"""Marks and gaps of the curves, from the freshest water to the saltiest [px]."""
_NAME_GAP, _NAME_SPACE = 16.0, 4.0
"""From the frame to the names of curves beside it, and the space between them [px]."""
_NARROW_LABEL = 150.0
"""Width to which the name of a point is broken on a narrow sheet [px]."""
_WARMEST, _LEAST_TOP = 40, 16
_OFFSETS = (10.0, 24.0, 40.0, 60.0, 84.0)
"""How far below or above its point a label may stand [px]."""
_FEW = 4
"""So many labels are set in every order, more of them from the top down and from the bottom up."""
_LEADER_FROM = 18.0
"""A label farther from its point than this [px] is tied to it by a line."""
Box = tuple[float, float, float, float]
"""Left, top, width, height [px]."""


class _Frame:
    """Turns temperatures [degC] and oxygen [mg/L] into places on the canvas [px]."""

    def __init__(self, chart: OxygenCurve) -> None:
        self.sheet = Sheet.of(chart, wide=(56, 142), narrow=(34, 112))
        self.top = max(_LEAST_TOP, 4 * math.ceil((max(point.oxygen_mg_per_l for point in chart.points) + 0.5) / 4))

    @property
    def name_room(self) -> float:
        """Width of the names of curves [px]."""
        return self.sheet.width - 4 - self.sheet.right - _NAME_GAP

    def place(self, temperature: float, oxygen: float) -> Point:
        return self.sheet.left + temperature / _WARMEST * self.sheet.room, _BOTTOM - oxygen / self.top * (_BOTTOM - _TOP)


def draw_oxygen_curve(chart: OxygenCurve) -> str:
    """The SVG of the curves with their points."""
    frame = _Frame(chart)
    canvas = Canvas(frame.sheet.width, HEIGHT)
    _axes(canvas, frame)
    taken = list(_curves(canvas, frame, chart))
    crowd = list(_marks(frame, chart))
    for point in chart.points:
        end, start = (frame.place(point.temperature_degc, o) for o in (point.oxygen_mg_per_l, point.saturation_mg_per_l))
        canvas.stroke(segments([(start, end)]), "muted", 1.4, dash=(3, 3))
        canvas.dots([(end, end)], "animal", 11)
    for label in _labels(frame, chart, taken, crowd):
        _draw_label(canvas, label)
    return canvas.svg()


def _axes(canvas: Canvas, frame: _Frame) -> None:
    left, right = frame.sheet.left, frame.sheet.right
    canvas.text(12, 26, "Dissolved oxygen, mg L⁻¹", size=_TEXT)
    canvas.text((left + right) / 2, HEIGHT - 12, "Water temperature, °C", size=_TEXT, anchor="middle")
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
    canvas.stroke(segments([*ticks, ((left, _TOP), (left, _BOTTOM)), ((left, _BOTTOM), (right, _BOTTOM))]), "ink", 1)


def _curves(canvas: Canvas, frame: _Frame, chart: OxygenCurve) -> Iterator[Box]:
    """The curves, each named beside its warm end; gives the boxes of the names."""
    names = [wrap(glued(curve.label), _TEXT, frame.name_room) for curve in chart.curves]
    ends, beside = [frame.place(*curve.points[-1]) for curve in chart.curves], frame.sheet.right + _NAME_GAP
    heights = [block_size(lines, _TEXT)[1] for lines in names]
    for number, (curve, lines, top) in enumerate(zip(chart.curves, names, name_tops([y for _, y in ends], heights), strict=True)):
        canvas.stroke(polyline(frame.place(*point) for point in curve.points), "water", 3, dash=_DASHES[number], part=f"curve {number}")
        canvas.stroke(segments([(ends[number], (beside - 4, top + heights[number] / 2))]), "muted", 1)
        for row, line in enumerate(lines):
            canvas.text(beside, top + _TEXT * (ASCENT + LEADING * row), line, size=_TEXT)
        yield beside, top, block_size(lines, _TEXT)[0], heights[number]


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


@dataclass(frozen=True)
class _Label:
    """Name and value of a point, where they stand, and how badly."""

    names: tuple[str, ...]
    value: str
    place: Point
    box: Box
    cost: float


def _labels(frame: _Frame, chart: OxygenCurve, taken: Sequence[Box], crowd: Sequence[Point]) -> list[_Label]:
    """A label for each point, set one after the other in the order in which they stand best together."""
    places = [(point, frame.place(point.temperature_degc, point.oxygen_mg_per_l)) for point in chart.points]
    downwards = sorted(places, key=lambda pair: pair[1][1])
    orders = permutations(downwards) if len(places) <= _FEW else (downwards, downwards[::-1])
    return min(([*_set(frame, order, taken, crowd)] for order in orders), key=lambda labels: sum(label.cost for label in labels))


def _set(frame: _Frame, order: Sequence[tuple[OxygenPoint, Point]], taken: Sequence[Box], crowd: Sequence[Point]) -> Iterator[_Label]:
    boxes = list(taken)
    for point, place in order:
        label = _label(frame, point, place, boxes, crowd, [other for _, other in order if other != place])
        boxes.append(label.box)
        yield label


def _label(frame: _Frame, point: OxygenPoint, place: Point, taken: Sequence[Box], crowd: Sequence[Point], others: Sequence[Point]) -> _Label:
    """Name and value where they cover least and belong to no other point."""
    names = wrap_evenly(point.label, _TEXT, _NARROW_LABEL, bold=True) if frame.sheet.narrow else (point.label,)
    width = max(*(text_width(line, _TEXT, bold=True) for line in names), text_width(point.value_label, _TEXT))
    height = block_size((*names, point.value_label), _TEXT)[1]
    x, y = place
    tops = [y - height / 2, *(y + off for off in _OFFSETS), *(y - off - height for off in _OFFSETS)]
    boxes = [(left, top, width, height) for top in tops for left in (x + 14, x - 14 - width, x - width / 2)]
    costs = [_cost(box, frame.sheet, taken, crowd, place, others) for box in boxes]
    return _Label(names, point.value_label, place, boxes[costs.index(min(costs))], min(costs))


def _draw_label(canvas: Canvas, label: _Label) -> None:
    """The words, with a line that leads to them where they stand off."""
    (x, y), (left, top, width, height) = label.place, label.box
    if _distance(label.box, label.place) > _LEADER_FROM:
        canvas.stroke(segments([((x, y), (min(max(x, left), left + width), min(max(y, top), top + height)))]), "ink", 1)
    for number, line in enumerate((*label.names, label.value)):
        canvas.text(left, top + _TEXT * (ASCENT + LEADING * number), line, size=_TEXT, bold=number < len(label.names), halo=True)


def _cost(box: Box, sheet: Sheet, taken: Sequence[Box], crowd: Sequence[Point], point: Point, others: Sequence[Point]) -> float:
    """How badly a label stands: outside the frame, on another label, on marks, nearer to another point, or far from its own."""
    left, top, width, height = box
    outside = left < sheet.left + 4 or left + width > sheet.width - 4 or top < 34 or top + height > _BOTTOM - 3
    on_labels = sum(left < l + w + 6 and l < left + width + 6 and top < t + h + 2 and t < top + height + 2 for l, t, w, h in taken)
    on_marks = sum(left - 5 < x < left + width + 5 and top - 4 < y < top + height + 4 for x, y in crowd)
    own = _distance(box, point)
    astray = sum(_distance(box, other) < own + 6 for other in others)
    return 1000 * outside + 1000 * on_labels + 300 * astray + 10 * on_marks + own / 5


def _distance(box: Box, point: Point) -> float:
    """From a place to the nearest edge of a box [px]; nothing inside it."""
    left, top, width, height = box
    return math.hypot(max(left - point[0], 0, point[0] - left - width), max(top - point[1], 0, point[1] - top - height))
