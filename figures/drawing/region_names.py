"""Finds places for the names of areas: inside, clear of marks; just outside with a short line in; else a letter for a key."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise
from string import ascii_lowercase, ascii_uppercase

import numpy as np

from figures.drawing.canvas import Point, polygon
from figures.drawing.text import block_size

Rectangle = tuple[float, float, float, float]
"""Left, top, right, bottom [px]."""
_STEP, _SAMPLE = 4.0, 2.0
_LEAST_ROOM, _ENOUGH_ROOM = 2.5, 14.0
"""Room around a name inside its outline [px]: the first is a must, more is better up to the second."""
_LONGEST_LINE = 60.0
"""From a name outside into its region [px]."""
_MOST_LINES = 3


@dataclass(frozen=True)
class RegionName:
    """A name on its lines, with its place."""

    lines: tuple[str, ...]
    box: Rectangle
    leader: tuple[Point, Point] | None = None
    """From the name to a point in its region, where the name stands outside."""
    letter: str = ""
    """What stands in the region instead of its name, where the name finds no room at all."""


def place_region_names(
    labels: Sequence[str], outlines: Sequence[Sequence[Point]], size: float, marks: Sequence[Rectangle], inside: Rectangle
) -> list[RegionName]:
    """A place for each name [px]: in its outline on up to three lines, else close outside all outlines, else a letter.

    No name lies on one of `marks` or on another name; a letter does only where its outline has no free room at all.
    """
    borders = [_border(outline) for outline in outlines]
    found: dict[int, RegionName] = {}

    def taken() -> list[Rectangle]:
        return [*marks, *(name.box for name in found.values())]

    for number, label in enumerate(labels):
        foreign = np.concatenate([np.empty((0, 2)), *(border for other, border in enumerate(borders) if other != number)])
        if name := _within(line_forms(label, size), outlines[number], foreign, size, taken()):
            found[number] = name
    for number, label in enumerate(labels):
        if number not in found and (name := _beside(label, number, outlines, size, taken(), inside)):
            found[number] = name
    letters = iter(ascii_uppercase + ascii_lowercase)
    for number in range(len(labels)):
        if number not in found:
            found[number] = _lettered(next(letters), outlines[number], size, taken())
    return [found[number] for number in range(len(labels))]


def line_forms(label: str, size: float) -> list[tuple[str, ...]]:
    """The label on one, two and three lines, each as narrow as can be; it may break at spaces and after a slash."""
    pieces = re.findall(r"[^ /]+/?|/", label) or [label]
    glue = ["" if piece.endswith("/") else " " for piece in pieces]
    forms = []
    for count in range(1, min(_MOST_LINES, len(pieces)) + 1):
        cuts = ((0, *inner, len(pieces)) for inner in combinations(range(1, len(pieces)), count - 1))
        broken = (
            tuple("".join(p + g for p, g in zip(pieces[a:b], glue[a:b], strict=True)).strip() for a, b in pairwise(cut)) for cut in cuts
        )
        forms.append(min(broken, key=lambda lines: block_size(lines, size)[0]))
    return forms


def _border(outline: Sequence[Point]) -> np.ndarray:
    """Points along an outline, a few px apart; shape (n, 2)."""
    found = []
    for start, end in pairwise([*outline, outline[0]]):
        found.append(np.linspace(start, end, max(2, math.ceil(math.dist(start, end) / _SAMPLE))))
    return np.concatenate(found)


def _grid(area: Rectangle, width: float, height: float) -> np.ndarray:
    """Boxes of a size at all places of an area; shape (n, 4)."""
    left, top = np.meshgrid(np.arange(area[0], area[2] - width, _STEP), np.arange(area[1], area[3] - height, _STEP))
    corners = np.stack([left.ravel(), top.ravel()], axis=1)
    return np.concatenate([corners, corners + (width, height)], axis=1)


def _clearance(boxes: np.ndarray, points: np.ndarray) -> np.ndarray:
    """Distance [px] from each box to the nearest of the points, 0 where one lies in it; shape (n,)."""
    if not len(points) or not len(boxes):
        return np.full(len(boxes), np.inf)
    away = [
        np.maximum(boxes[:, None, axis] - points[None, :, axis], points[None, :, axis] - boxes[:, None, axis + 2]).clip(min=0)
        for axis in (0, 1)
    ]
    return np.hypot(*away).min(axis=1)


def _meets(boxes: np.ndarray, others: Sequence[Rectangle], gap: float = 2) -> np.ndarray:
    """Which boxes come closer than a gap to any of the others; shape (n,)."""
    met = np.zeros(len(boxes), bool)
    for left, top, right, bottom in others:
        across = (boxes[:, 0] < right + gap) & (left < boxes[:, 2] + gap)
        met |= across & (boxes[:, 1] < bottom + gap) & (top < boxes[:, 3] + gap)
    return met


def _middles(boxes: np.ndarray) -> np.ndarray:
    return (boxes[:, :2] + boxes[:, 2:]) / 2


def _within(
    forms: Sequence[tuple[str, ...]], outline: Sequence[Point], foreign: np.ndarray, size: float, taken: Sequence[Rectangle]
) -> RegionName | None:
    """The roomiest place inside the outline, on few lines and near the middle; None where there is none."""
    path, border = polygon(outline), _border(outline)
    area = (*border.min(axis=0), *border.max(axis=0))
    best: tuple[float, RegionName] | None = None
    for lines in forms:
        boxes = _grid(area, *block_size(lines, size))
        room = _clearance(boxes, border)
        fits = (room >= _LEAST_ROOM) & ~_meets(boxes, taken)
        fits[fits] = path.contains_points(_middles(boxes[fits]))
        boxes, room = boxes[fits], room[fits]
        if not len(boxes):
            continue
        away = np.linalg.norm(_middles(boxes) - border.mean(axis=0), axis=1)
        crossed = _clearance(boxes, foreign) == 0
        cost = 200 * crossed + 8 * len(lines) - 4 * room.clip(max=_ENOUGH_ROOM) + 0.2 * away
        first = int(np.argmin(cost))
        if best is None or cost[first] < best[0]:
            best = float(cost[first]), RegionName(lines, _box(boxes[first]))
    return None if best is None else best[1]


def _beside(
    label: str, number: int, outlines: Sequence[Sequence[Point]], size: float, taken: Sequence[Rectangle], inside: Rectangle
) -> RegionName | None:
    """The nearest free place outside all outlines from which a short line leads in; None where there is none."""
    aims = _aims(outlines[number], taken)
    best: tuple[float, RegionName] | None = None
    for lines in line_forms(label, size) if len(aims) else ():
        boxes = _grid(inside, *block_size(lines, size))
        boxes = boxes[_meets(boxes, [(*aims.min(axis=0), *aims.max(axis=0))], _LONGEST_LINE) & ~_meets(boxes, taken)]
        boxes = boxes[_clearance(boxes, aims) <= _LONGEST_LINE]
        for outline in outlines:
            free = _clearance(boxes, _border(outline)) >= _LEAST_ROOM
            free[free] = ~polygon(outline).contains_points(_middles(boxes[free]))
            boxes = boxes[free]
        for box in boxes:
            end, aim = _shortest(box, aims)
            cost = math.dist(end, aim) + 8 * len(lines)
            if (best is None or cost < best[0]) and _is_clear(np.linspace(end, aim, 24), number, outlines, taken):
                best = cost, RegionName(lines, _box(box), (end, aim))
    return None if best is None else best[1]


def _is_clear(way: np.ndarray, number: int, outlines: Sequence[Sequence[Point]], taken: Sequence[Rectangle]) -> bool:
    """Whether a line into an outline keeps out of all others and of what is taken."""
    others = (polygon(outline) for other, outline in enumerate(outlines) if other != number)
    return not any(_covers(box, way[:-1]) for box in taken) and not any(other.contains_points(way).any() for other in others)


def _aims(outline: Sequence[Point], taken: Sequence[Rectangle]) -> np.ndarray:
    """Points well inside an outline, on nothing that lies in it; shape (n, 2)."""
    path, border = polygon(outline), _border(outline)
    places = _grid((*border.min(axis=0), *border.max(axis=0)), 0, 0)[::2]
    places = places[(_clearance(places, border) >= 2 * _LEAST_ROOM) & ~_meets(places, taken)]
    return places[path.contains_points(places[:, :2])][:, :2] if len(places) else places[:, :2]


def _shortest(box: np.ndarray, aims: np.ndarray) -> tuple[Point, Point]:
    """The shortest line from the edge of a box to one of the points."""
    ends = np.clip(aims, box[:2], box[2:])
    nearest = int(np.argmin(np.linalg.norm(ends - aims, axis=1)))
    (x, y), (to_x, to_y) = ends[nearest], aims[nearest]
    return (float(x), float(y)), (float(to_x), float(to_y))


def _lettered(letter: str, outline: Sequence[Point], size: float, taken: Sequence[Rectangle]) -> RegionName:
    """The letter at the roomiest place of an outline; in the middle of its corners where it has none."""
    name = _within([(letter,)], outline, np.empty((0, 2)), size, taken)
    if name is not None:
        return RegionName(name.lines, name.box, letter=letter)
    width, height = block_size((letter,), size, bold=True)
    x, y = np.mean(outline, axis=0)
    return RegionName((letter,), (float(x - width / 2), float(y - height / 2), float(x + width / 2), float(y + height / 2)), letter=letter)


def _covers(box: Rectangle, points: np.ndarray) -> bool:
    x, y = points[:, 0], points[:, 1]
    return bool(((x > box[0]) & (x < box[2]) & (y > box[1]) & (y < box[3])).any())


def _box(row: np.ndarray) -> Rectangle:
    left, top, right, bottom = map(float, row)
    return left, top, right, bottom
