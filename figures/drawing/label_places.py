"""Finds places for the labels of many points so that no label lies on another, on a point or on a line that leads to one."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from figures.drawing.canvas import Point

Rectangle = tuple[float, float, float, float]
"""Left, top, right, bottom [px]."""
_RINGS = (0.5, 10.0, 18.0, 28.0, 42.0, 60.0, 80.0)
"""Distances of a label from the mark of its point, beside the gap [px]; from the second on a line leads to the label."""
_DIRECTIONS = 16
_SAMPLES = 12
_KEPT = 80
"""Places tried for one label, the cheapest."""
_GAP = 2.0
_MIDDLE = 0.35
"""The share of a label's height, above and below, that no line leads to."""
_CONFLICT = 1000.0
_ON_LINE = 3.5
"""More than the worst side of a point costs, and less than a place apart."""
_ROUNDS, _STARTS = 60, 6


@dataclass(frozen=True)
class Place:
    """Where a label stands."""

    box: Rectangle
    leader: tuple[Point, Point] | None
    """A line from the point to the label, where the label stands apart."""


@dataclass(frozen=True)
class _Options:
    """All places of all labels, flat; shapes (n, 4), (n, samples, 2), (n,), (n,)."""

    boxes: np.ndarray
    leaders: np.ndarray
    """Points along each leader; NaN where there is none, so that they lie in nothing."""
    costs: np.ndarray
    owners: np.ndarray


def place_labels(
    points: Sequence[Point], sizes: Sequence[tuple[float, float]], radius: float, bounds: Rectangle, taken: Sequence[Rectangle],
    lines: Sequence[Point] = (),
) -> tuple[list[Place], int]:  # fmt: skip
    """A place for each label of a size [px] beside its point, and how many of them are in conflict with something.

    `radius` [px] is that of the points' marks, `taken` what no label may cover, `lines` points along what it covers only
    where it would else stand apart. Equal arguments give equal places.
    """
    if not points:
        return [], 0
    places = [_candidates(point, size, radius) for point, size in zip(points, sizes, strict=True)]
    flat, options = _measured(places, points, radius, bounds, taken, lines)
    clash = _clashes(options)
    starts = (_settled(options, clash, len(points), random.Random(start)) for start in range(_STARTS))
    best = min(starts, key=lambda chosen: _total(options, clash, chosen))
    faults = sum(options.costs[one] >= _CONFLICT or bool(clash[one, best].any()) for one in best)
    return [flat[one] for one in best], int(faults)


def _candidates(point: Point, size: tuple[float, float], radius: float) -> list[Place]:
    """Places around a point: near ones at all sides, far ones with a leader."""
    x, y = point
    width, height = size
    found = []
    for ring in _RINGS:
        distance = radius + _GAP + ring
        for number in range(_DIRECTIONS):
            angle = 2 * math.pi * number / _DIRECTIONS
            across, up = round(math.cos(angle), 6), round(math.sin(angle), 6)
            centre = x + across * (distance + width / 2), y - up * (distance + height / 2)
            box = (centre[0] - width / 2, centre[1] - height / 2, centre[0] + width / 2, centre[1] + height / 2)
            found.append(Place(box, _leader(point, box, radius) if ring > _RINGS[0] else None))
    return found


def _leader(point: Point, box: Rectangle, radius: float) -> tuple[Point, Point]:
    """From the edge of the mark to the middle height of the label, or the end is taken for a line under it."""
    x, y = point
    inset = (box[3] - box[1]) * _MIDDLE
    end = min(max(x, box[0]), box[2]), min(max(y, box[1] + inset), box[3] - inset)
    length = max(math.dist(point, end), 1e-9)
    share = min(radius / length, 1)
    return (x + share * (end[0] - x), y + share * (end[1] - y)), end


def _measured(
    places: Sequence[Sequence[Place]], points: Sequence[Point], radius: float, bounds: Rectangle, taken: Sequence[Rectangle],
    lines: Sequence[Point],
) -> tuple[list[Place], _Options]:  # fmt: skip
    """The cheapest places of each label, and the same as arrays."""
    flat = [(owner, number, place) for owner, own in enumerate(places) for number, place in enumerate(own)]
    boxes = np.array([place.box for _, _, place in flat])
    leaders = np.full((len(flat), _SAMPLES, 2), np.nan)
    for row, (_, _, place) in enumerate(flat):
        if place.leader is not None:
            leaders[row] = np.linspace(*place.leader, _SAMPLES)
    owners = np.array([owner for owner, _, _ in flat])
    costs = np.array([_own_cost(number, place) for _, number, place in flat])
    marks = np.array([(x - radius, y - radius, x + radius, y + radius) for x, y in points])
    obstacles = np.array([*marks, *taken])
    on_something = _overlap(boxes, obstacles).any(axis=1)
    near = np.linalg.norm(np.array(points)[:, None, :] - np.array(points)[None, :, :], axis=2) < 2 * radius
    foreign = np.concatenate([~near[owners], np.ones((len(owners), len(taken)), bool)], axis=1)
    led_through = (_inside(leaders, obstacles) & foreign).any(axis=1)
    outside = (boxes[:, 0] < bounds[0]) | (boxes[:, 1] < bounds[1]) | (boxes[:, 2] > bounds[2]) | (boxes[:, 3] > bounds[3])
    x, y = np.array(lines, float).reshape(-1, 2).T
    on_line = (x > boxes[:, :1]) & (x < boxes[:, 2:3]) & (y > boxes[:, 1:2]) & (y < boxes[:, 3:])
    costs = costs + _ON_LINE * on_line.any(axis=1) + _CONFLICT * (on_something | led_through | outside)
    kept = np.sort(np.concatenate([_cheapest(costs, np.flatnonzero(owners == owner)) for owner in range(len(points))]))
    return [flat[place][2] for place in kept], _Options(boxes[kept], leaders[kept], costs[kept], owners[kept])


def _cheapest(costs: np.ndarray, places: np.ndarray) -> np.ndarray:
    return places[np.argsort(costs[places], kind="stable")[:_KEPT]]


def _own_cost(number: int, place: Place) -> float:
    """Right of the point is best, then left, then above and below, then the corners; far is worse than near."""
    ring, direction = divmod(number, _DIRECTIONS)
    preference = {0: 0.0, 8: 1.0, 4: 1.5, 12: 1.5}.get(direction, 2.0 + direction / 100)
    return preference + 4 * ring + 2 * (place.leader is not None)


def _overlap(boxes: np.ndarray, others: np.ndarray) -> np.ndarray:
    """Which of (n, 4) come closer than the gap to which of (m, 4); shape (n, m)."""
    if not len(others):
        return np.zeros((len(boxes), 0), bool)
    one, other = boxes[:, None, :], others[None, :, :]
    across = (one[..., 0] < other[..., 2] + _GAP) & (other[..., 0] < one[..., 2] + _GAP)
    return across & (one[..., 1] < other[..., 3] + _GAP) & (other[..., 1] < one[..., 3] + _GAP)


def _inside(leaders: np.ndarray, boxes: np.ndarray) -> np.ndarray:
    """Which of (n, samples, 2) touch which of (m, 4); shape (n, m)."""
    found = np.zeros((len(leaders), len(boxes)), bool)
    for sample in range(leaders.shape[1]):
        x, y = leaders[:, sample, 0, None], leaders[:, sample, 1, None]
        found |= (x > boxes[:, 0]) & (x < boxes[:, 2]) & (y > boxes[:, 1]) & (y < boxes[:, 3])
    return found


def _clashes(options: _Options) -> np.ndarray:
    """Which places cannot both be taken; shape (n, n)."""
    through = _inside(options.leaders, options.boxes)
    clash = _overlap(options.boxes, options.boxes) | through | through.T | _crossings(options.leaders)
    return clash & (options.owners[:, None] != options.owners[None, :])


def _crossings(leaders: np.ndarray) -> np.ndarray:
    """Which straight leaders cross which; shape (n, n)."""
    start, end = leaders[:, 0], leaders[:, -1]

    def side(of: np.ndarray) -> np.ndarray:
        """On which side of each leader (rows) each point (columns) lies."""
        along, away = (end - start)[:, None, :], of[None, :, :] - start[:, None, :]
        return np.sign(along[..., 0] * away[..., 1] - along[..., 1] * away[..., 0])

    parted = side(start) * side(end) < 0
    return parted & parted.T


def _settled(options: _Options, clash: np.ndarray, count: int, chance: random.Random) -> list[int]:
    """The places after every label in turn has gone to the best one that the others leave, until none moves."""
    own = [np.flatnonzero(options.owners == owner) for owner in range(count)]
    chosen = [int(places[np.argmin(options.costs[places])]) for places in own]
    order = list(range(count))
    for _ in range(_ROUNDS):
        chance.shuffle(order)
        moved = False
        for owner in order:
            others = [place for number, place in enumerate(chosen) if number != owner]
            costs = options.costs[own[owner]] + _CONFLICT * clash[np.ix_(own[owner], others)].sum(axis=1)
            best = int(own[owner][np.argmin(costs)])
            moved |= best != chosen[owner]
            chosen[owner] = best
        if not moved:
            break
    return chosen


def _total(options: _Options, clash: np.ndarray, chosen: list[int]) -> float:
    return float(options.costs[chosen].sum() + _CONFLICT * clash[np.ix_(chosen, chosen)].sum())
