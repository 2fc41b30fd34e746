"""The path of one arrow between two boxes: a gently bent curve, its outline, and the places where its label can stand."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from matplotlib.path import Path

Rectangle = tuple[float, float, float, float]
Point = tuple[float, float]
SAMPLES = 25
"""Points along a route at which its distance to other things is measured."""
_SHARES = np.linspace(0, 1, SAMPLES)
_WEIGHTS = np.stack([(1 - _SHARES) ** 2, 2 * _SHARES * (1 - _SHARES), _SHARES**2], axis=1)
_OUTLINE_POINTS = 13
_CLEARANCE = 4.0
"""Between an arrow's ends and the boxes [px]."""


@dataclass(frozen=True)
class Route:
    """A quadratic curve from one box to another [px]."""

    root: Point
    """Inside the box, behind the start."""
    start: Point
    control: Point
    end: Point

    def points(self) -> np.ndarray:
        """Places along the route, shape (SAMPLES, 2)."""
        return _WEIGHTS @ np.array((self.start, self.control, self.end))

    @property
    def length(self) -> float:
        """Roughly: the mean of chord and control polygon."""
        chord = math.dist(self.start, self.end)
        return (chord + math.dist(self.start, self.control) + math.dist(self.control, self.end)) / 2


def route(source: Rectangle, target: Rectangle, shift: float, bend: float, width: float) -> Route | None:
    """The curve between two rectangles, moved sideways by `shift` [px] and bent by `bend` times its length.

    None where it would be too short to be seen as an arrow, or would not leave its box at all, or where a shaft `width`
    [px] wide would stick out beside the box.
    """
    (ax, ay), (bx, by) = _middle(source), _middle(target)
    length = math.hypot(bx - ax, by - ay)
    if length < 1:
        return None
    nx, ny = -(by - ay) / length, (bx - ax) / length
    a, b = (ax + nx * shift, ay + ny * shift), (bx + nx * shift, by + ny * shift)
    sideways = bend * length
    control = (a[0] + b[0]) / 2 + nx * sideways, (a[1] + b[1]) / 2 + ny * sideways
    margin = _CLEARANCE + width / 2
    start, end = _exit(a, control, source, margin), _exit(b, control, target, margin)
    if start is None or end is None or math.dist(start, end) < 34:
        return None
    if (end[0] - start[0]) * (bx - ax) + (end[1] - start[1]) * (by - ay) <= 0:
        return None
    return Route(a, start, control, end)


def _middle(rectangle: Rectangle) -> Point:
    return (rectangle[0] + rectangle[2]) / 2, (rectangle[1] + rectangle[3]) / 2


def _exit(inside: Point, towards: Point, rectangle: Rectangle, margin: float) -> Point | None:
    """Where the ray leaves the rectangle, a little clear of it.

    None if it starts within `margin` [px] of the border, or its aim lies inside.
    """
    left, top, right, bottom = (
        rectangle[0] - _CLEARANCE, rectangle[1] - _CLEARANCE, rectangle[2] + _CLEARANCE, rectangle[3] + _CLEARANCE,
    )  # fmt: skip
    x, y = inside
    dx, dy = towards[0] - x, towards[1] - y
    if not (left + margin <= x <= right - margin and top + margin <= y <= bottom - margin):
        return None
    shares = []
    if dx:
        shares.append(((right if dx > 0 else left) - x) / dx)
    if dy:
        shares.append(((bottom if dy > 0 else top) - y) / dy)
    share = min(shares, default=1.0)
    return (x + share * dx, y + share * dy) if share < 1 else None


def _behind_box(path: Route, width: float) -> Point:
    """Where the shaft begins: so far back that the box, which is drawn over it, cuts it off without a gap."""
    depth = math.dist(path.start, path.root) or 1.0
    return _lerp(path.start, path.root, min(1.0, (_CLEARANCE + 1.2 * width) / depth))


def head_size(width: float, length: float) -> tuple[float, float]:
    """Length and half width [px] of the head of an arrow whose shaft is `width` wide."""
    return min(0.5 * length, 8 + 0.45 * width), width / 2 + max(3.5, 0.16 * width)


def outline(path: Route, width: float) -> Path:
    """The closed outline of an arrow with a shaft of the given width [px], from tail over tip and back to the tail."""
    head_length, head_half = head_size(width, path.length)
    share = 1 - head_length / path.length
    neck, tail = _on(path, share), _behind_box(path, width)
    along, back = _unit(neck, path.end), _unit(tail, path.start)
    shaft = np.linspace(0, share, _OUTLINE_POINTS)
    sides = [
        [(tail[0] - back[1] * half, tail[1] + back[0] * half), *(_beside(path, float(place), half) for place in shaft)]
        for half in (width / 2, -width / 2)
    ]
    barbs = [(neck[0] - side * along[1] * head_half, neck[1] + side * along[0] * head_half) for side in (1, -1)]
    points = [*sides[0], barbs[0], path.end, barbs[1], *reversed(sides[1])]
    return Path([*points, points[0]], [Path.MOVETO, *[Path.LINETO] * (len(points) - 1), Path.CLOSEPOLY])


def shaft_and_head(path: Route, width: float) -> tuple[Path, Path]:
    """The middle line of the shaft, open, and the head, closed."""
    head_length, head_half = head_size(width, path.length)
    share = 1 - head_length / path.length
    control, neck = _lerp(path.start, path.control, share), _on(path, share)
    along = _unit(neck, path.end)
    barbs = [(neck[0] - side * along[1] * head_half, neck[1] + side * along[0] * head_half) for side in (1, -1)]
    shaft = Path([_behind_box(path, width), control, neck], [Path.MOVETO, Path.CURVE3, Path.CURVE3])
    head = Path([barbs[0], path.end, barbs[1], barbs[0]], [Path.MOVETO, Path.LINETO, Path.LINETO, Path.CLOSEPOLY])
    return shaft, head


def stripes(path: Route, width: float, pitch: float) -> list[tuple[Point, Point]]:
    """Slanted lines across the shaft, `pitch` [px] apart, that mark an arrow without colour."""
    head_length, _ = head_size(width, path.length)
    end = 1 - head_length / path.length
    count = max(1, int(path.length * end / pitch))
    lean = min(0.5 * width, pitch) / path.length
    lines = []
    for number in range(count):
        share = end * (number + 0.5) / count
        one, other = max(share - lean / 2, 0), min(share + lean / 2, end)
        lines.append((_beside(path, one, width / 2), _beside(path, other, -width / 2)))
    return lines


def _on(path: Route, share: float) -> Point:
    return _lerp(_lerp(path.start, path.control, share), _lerp(path.control, path.end, share), share)


def _beside(path: Route, share: float, distance: float) -> Point:
    x, y = _on(path, share)
    along = _unit(_lerp(path.start, path.control, share), _lerp(path.control, path.end, share))
    return x - along[1] * distance, y + along[0] * distance


def _unit(start: Point, end: Point) -> Point:
    length = math.dist(start, end) or 1.0
    return (end[0] - start[0]) / length, (end[1] - start[1]) / length


def _lerp(a: Point, b: Point, share: float) -> Point:
    return a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share


def label_rectangles(points: np.ndarray, half_width: float, size: tuple[float, float]) -> tuple[np.ndarray, np.ndarray]:
    """Rectangles for a label of a size [px] beside a route, just clear of it, and how far each is from the middle.

    Shapes (K, 4) and (K,): left, top, right, bottom; share of the route, 0 to 0.4.
    """
    width, height = size
    rectangles, far = [], []
    for index in range(2, SAMPLES - 2):
        x, y = points[index]
        dx, dy = points[index + 1] - points[index - 1]
        length = math.hypot(dx, dy) or 1.0
        for nx, ny in ((-dy / length, dx / length), (dy / length, -dx / length)):
            for gap in (4.0, 9.0):
                reach = half_width + gap + abs(nx) * width / 2 + abs(ny) * height / 2
                left, top = x + nx * reach - width / 2, y + ny * reach - height / 2
                rectangles.append((left, top, left + width, top + height))
                far.append(abs(index / (SAMPLES - 1) - 0.5) + (gap > 5) * 0.04)
    return np.array(rectangles), np.array(far)


def rectangles_of(rows: Sequence[Rectangle]) -> np.ndarray:
    """Shape (N, 4), also for none."""
    return np.array(rows, dtype=float).reshape(-1, 4)
