"""All courses that one arrow of a flux diagram might take, each with what it costs by itself."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from figures.drawing.flux_places import PlacedBox
from figures.drawing.flux_routes import Rectangle, Route, route
from figures.flux_diagram import FluxArrow

_SHIFTS = (0.0, 16.0, -16.0, 30.0, -30.0)
_BENDS = (0.0, 0.12, -0.12, 0.24, -0.24, 0.4, -0.4)
_OUTSIDE_BENDS = (0.0, 0.16, -0.16)
_STEP = 20.0
"""Distance of the places that are tried for ends outside [px]."""
_NEAREST, _FARTHEST = 48.0, 190.0
"""How far an end outside stands from the box it exchanges with, border to middle [px]."""
_THROUGH_A_BOX = 1000.0
_INWARDS = 40.0
"""Ends outside belong on the rim of the drawing, not among the boxes."""
_UPSIDE_DOWN, _ASIDE = 20.0, 0.5
"""What it costs an end that belongs above to stand straight below, and the lean from which on it stands where it belongs."""


class NoRoom(ValueError):
    """Boxes stand so near that an arrow has no course between them."""


@dataclass(frozen=True, eq=False)
class Course:
    """One possible course of an arrow."""

    route: Route
    points: np.ndarray
    """Shape (SAMPLES, 2) [px]."""
    cost: float
    outside: PlacedBox | None
    """The end outside that comes with it."""
    level: float = 0.0
    """The height of the box that it exchanges with [px]."""
    lean: float = 0.0
    """How far that end stands below this box, as a share of their distance: -1 straight above, 1 straight below."""


def courses(arrow: FluxArrow, width: float, boxes: Sequence[PlacedBox], ends: Sequence[PlacedBox], across: float) -> list[Course]:
    """At least one course for an arrow `width` [px] wide, on a canvas `across` [px] wide.

    Raises
    ------
    ValueError
        If the arrow starts where it ends, or names an unknown box; NoRoom if it has no course.
    """
    if arrow.start == arrow.end:
        raise ValueError(f"the flux {arrow.id} starts and ends at {arrow.start}")
    fixed = {box.box.id: box for box in boxes}
    free = {end.box.id: end for end in ends}
    for identifier in (arrow.start, arrow.end):
        if identifier not in fixed and identifier not in free:
            raise ValueError(f"the flux {arrow.id} names an unknown box: {identifier}")
    if arrow.start in fixed and arrow.end in fixed:
        return _passable(_between(fixed[arrow.start], fixed[arrow.end], width, boxes, across))
    if arrow.start in fixed:
        return _passable(_to_outside(fixed[arrow.start], free[arrow.end], width, boxes, across, inwards=False))
    return _passable(_to_outside(fixed[arrow.end], free[arrow.start], width, boxes, across, inwards=True))


def _passable(found: list[Course]) -> list[Course]:
    """Without the courses through boxes, where there is a choice."""
    return [course for course in found if course.cost < _THROUGH_A_BOX] or found


def _between(source: PlacedBox, target: PlacedBox, width: float, boxes: Sequence[PlacedBox], across: float) -> list[Course]:
    """Courses between two fixed boxes; the harder bends are there for parallel and opposite arrows."""
    found = []
    for shift in _SHIFTS:
        for bend in _BENDS:
            path = route(source.rectangle, target.rectangle, shift, bend, width)
            if path is not None:
                cost = 90 * abs(bend) + 0.35 * abs(shift)
                found.append(_course(path, width, cost, boxes, across, {source.box.id, target.box.id}, None))
    if not found:
        raise NoRoom(f"{source.box.label} and {target.box.label} stand too near for an arrow between them")
    return found


def _to_outside(box: PlacedBox, sample: PlacedBox, width: float, boxes: Sequence[PlacedBox], across: float, *, inwards: bool) -> list[Course]:
    """Courses between a box and an end outside that may stand anywhere around it."""
    found = []
    for x, y in _places_around(box, across):
        end = replace(sample, x=x, y=y)
        if not _stands_free(end.rectangle, boxes, across):
            continue
        inwardness, lean = _INWARDS * _inwardness(box, x, y, boxes), (y - box.y) / math.hypot(x - box.x, y - box.y)
        misplaced = _UPSIDE_DOWN * max(0.0, _ASIDE - lean * {"above": -1, "below": 1}[sample.box.lies]) / (1 + _ASIDE) if sample.box.lies else 0.0
        for bend in _OUTSIDE_BENDS:
            ends = (end.rectangle, box.rectangle) if inwards else (box.rectangle, end.rectangle)
            path = route(*ends, 0.0, bend, 0.0)
            if path is not None:
                cost = 60 * abs(bend) + 0.12 * abs(path.length - 80) + inwardness + misplaced
                found.append(replace(_course(path, width, cost, boxes, across, {box.box.id}, end), level=box.y, lean=lean))
    if not found:
        raise NoRoom(f"no room around {box.box.label} for an arrow to or from {sample.box.label}")
    return found


def _places_around(box: PlacedBox, across: float) -> list[tuple[float, float]]:
    """Places of a lattice common to all boxes, so that two arrows can share an end."""
    left, top, right, bottom = box.rectangle
    columns = np.arange(round(across / _STEP)) * _STEP + _STEP / 2
    rows = np.arange(np.floor((top - _FARTHEST) / _STEP), np.ceil((bottom + _FARTHEST) / _STEP)) * _STEP
    return [
        (float(x), float(y))
        for x in columns
        for y in rows
        if _NEAREST < max(left - x, x - right, top - y, y - bottom) and np.hypot(
            max(left - x, x - right, 0), max(top - y, y - bottom, 0)) < _FARTHEST
    ]  # fmt: skip


def _inwardness(box: PlacedBox, x: float, y: float, boxes: Sequence[PlacedBox]) -> float:
    """0 where (x, y) lies straight away from the middle of all boxes, 1 where it lies towards it."""
    middle_x, middle_y = (sum(values) / len(boxes) for values in zip(*((b.x, b.y) for b in boxes), strict=True))
    away_x, away_y = box.x - middle_x, box.y - middle_y
    lengths = math.hypot(away_x, away_y) * math.hypot(x - box.x, y - box.y)
    return (1 - (away_x * (x - box.x) + away_y * (y - box.y)) / lengths) / 2 if lengths else 0.5


def _stands_free(end: Rectangle, boxes: Sequence[PlacedBox], across: float) -> bool:
    if end[0] < 10 or end[2] > across - 10:
        return False
    return all(
        end[2] < left - 10 or end[0] > right + 10 or end[3] < top - 10 or end[1] > bottom + 10
        for left, top, right, bottom in (box.rectangle for box in boxes)
    )


def _course(
    path: Route, width: float, cost: float, boxes: Sequence[PlacedBox], across: float, own: set[str],
    outside: PlacedBox | None,
) -> Course:  # fmt: skip
    points = path.points()
    x, y = points[:, 0], points[:, 1]
    reach = width / 2 + 5
    for box in boxes:
        if box.box.id not in own:
            left, top, right, bottom = box.rectangle
            inside = (x > left - reach) & (x < right + reach) & (y > top - reach) & (y < bottom + reach)
            cost += _THROUGH_A_BOX * bool(inside.any())
    if (x < reach).any() or (x > across - reach).any():
        cost += _THROUGH_A_BOX
    return Course(path, points, cost, outside)
