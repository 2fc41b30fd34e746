"""Places for the names of series beside their own lines and marks, so that no key has to be looked up."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from figures.drawing.canvas import Canvas, Point
from figures.drawing.text import ASCENT, LEADING, block_size, break_in_two

Box = tuple[float, float, float, float]
"""Left, top, right, bottom [px]."""
_PITCH = 7.0
"""Between the points that stand for a line [px]."""
_OWN, _OTHER, _NEARER = 5.0, 12.0, 7.0
"""Least distances of a name from its own marks and from others, and how much nearer it is to its own [px]."""
_REACHES = (6.0, 10.0, 15.0)
_SIDES = ((1, 0), (-1, 0), (0, -1), (0, 1), (1, -1), (1, 1), (-1, -1), (-1, 1))
_BETWEEN = 16.0
"""Least distance of two names [px]."""
_CLEAR = 60.0
"""A distance from others beyond which more is no better [px]."""
_BROKEN = 25.0
"""What a name on two lines costs; it is taken where one line finds no room that is as clear."""


@dataclass(frozen=True)
class Drawn:
    """What is drawn of a series."""

    name: str
    spots: Sequence[Point]
    """Where its name may stand: along its line, or at its marks."""
    marks: Sequence[Point]
    """Points that stand for everything drawn of it."""


@dataclass(frozen=True)
class Placed:
    """A name in its place."""

    lines: tuple[str, ...]
    box: Box


def along(points: Sequence[Point], pitch: float = _PITCH) -> list[Point]:
    """Points along a line, close enough that nothing slips between them."""
    found = list(points[:1])
    for (x0, y0), (x1, y1) in pairwise(points):
        parts = max(1, int(np.hypot(x1 - x0, y1 - y0) / pitch))
        found += [(x0 + (x1 - x0) * n / parts, y0 + (y1 - y0) * n / parts) for n in range(1, parts + 1)]
    return found


def distances(box: Box, points: Sequence[Point]) -> np.ndarray:
    """From each point to the nearest edge of a box [px]; nothing inside it."""
    left, top, right, bottom = box
    x, y = np.asarray(points, float).reshape(-1, 2).T
    zero = np.zeros_like(x)
    return np.hypot(np.max([left - x, x - right, zero], axis=0), np.max([top - y, y - bottom, zero], axis=0))


def apart(box: Box, other: Box, gap: float = 4.0) -> bool:
    """Whether two boxes keep a distance."""
    return box[0] >= other[2] + gap or other[0] >= box[2] + gap or box[1] >= other[3] + gap or other[1] >= box[3] + gap


def name_places(series: Sequence[Drawn], size: float, bounds: Box, taken: Sequence[Box] = ()) -> list[Placed] | None:
    """A place for each name, in bold, beside its own marks and clear of all others; None where one finds no room.

    Names that have the fewest places to stand choose first; each takes the place farthest from what is not its own.
    """
    free = [list(_free(one, [other for other in series if other is not one], size, bounds, taken)) for one in series]
    chosen: dict[int, Placed] = {}
    for number in sorted(range(len(series)), key=lambda number: len(free[number])):
        left = [(cost, place) for cost, place in free[number] if all(apart(place.box, other.box, _BETWEEN) for other in chosen.values())]
        if not left:
            return None
        chosen[number] = min(left, key=lambda pair: pair[0])[1]
    return [chosen[number] for number in range(len(series))]


def draw_names(canvas: Canvas, places: Sequence[Placed], size: float) -> None:
    """The names in their places."""
    for place in places:
        middle = (place.box[0] + place.box[2]) / 2
        for number, line in enumerate(place.lines):
            canvas.text(middle, place.box[1] + size * (ASCENT + LEADING * number), line, size=size, bold=True, halo=True, anchor="middle")


def _free(one: Drawn, others: Sequence[Drawn], size: float, bounds: Box, taken: Sequence[Box]) -> Iterator[tuple[float, Placed]]:
    """Places in which a name would be read as its own series', with their cost."""
    strange = [mark for other in others for mark in other.marks]
    forms = {(one.name,): 0.0, break_in_two(one.name, size): _BROKEN} if " " in one.name else {(one.name,): 0.0}
    for lines, cost in forms.items():
        for box in _boxes(one.spots, *block_size(lines, size, bold=True)):
            inside = box[0] >= bounds[0] and box[1] >= bounds[1] and box[2] <= bounds[2] and box[3] <= bounds[3]
            if not inside or not all(apart(box, other) for other in taken):
                continue
            own = distances(box, one.marks).min()
            other = distances(box, strange).min(initial=np.inf)
            if own >= _OWN and other >= max(_OTHER, own + _NEARER):
                yield float(cost + own - min(other, _CLEAR)), Placed(lines, box)


def _boxes(spots: Sequence[Point], width: float, height: float) -> Iterator[Box]:
    """Boxes to the sides of every spot, near and a little farther."""
    for x, y in spots:
        for across, down in _SIDES:
            for reach in _REACHES:
                left = x + across * reach - (0 if across > 0 else width if across < 0 else width / 2)
                top = y + down * reach - (0 if down > 0 else height if down < 0 else height / 2)
                yield left, top, left + width, top + height
