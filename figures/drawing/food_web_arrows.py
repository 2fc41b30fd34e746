"""The arrows of a food web: where they leave and reach boxes, how they bend round others, and how they are drawn."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from matplotlib.path import Path

from figures.drawing.canvas import Canvas, Point, polygon
from figures.food_web_diagram import FeedingLink

THINNEST, WIDEST, PLAIN = 1.2, 5.0, 1.8
"""Shafts of the smallest and the largest share, and of all where shares are not known [px]."""
_HEAD, _PORT, _CORNER = 9.0, 20.0, 13.0
"""Length of a head, most room between two arrows at one side of a box, room kept at its corners [px]."""
_BENDS = tuple(sign * by for by in (0.0, 8.0, 16.0, 26.0, 38.0, 52.0, 70.0, 100.0, 135.0) for sign in (1, -1))
"""How far an arrow may stand aside [px]: the least first, so that of equally good ones the straightest is taken."""
_TURNS = sorted(((one, other) for one in _BENDS for other in _BENDS if one != other), key=lambda pair: abs(pair[0]) + abs(pair[1]))
"""How far its two halves may do so where no even bend is free [px]."""
_FLAT = 0.27
"""The least rise of a way between two boxes, for its run, at which it leaves above or below and not at the side."""
_STEEP, _STRAIGHT = 0.6, 24.0
"""The least rise of a head towards its box, for its run, so that the box covers none of it, and the run in which it takes it [px]."""
_SAMPLES = 60
"""Pieces of an arrow in which it is looked for boxes that it touches."""
_RIM = 4.0
"""Room that arrows leave at the edges [px]."""
_NEAR = 3.0
"""So close to a box an arrow seems to touch it [px]."""
LOOP = 30.0
"""How far the arrow of a cannibal reaches out to the right [px]."""


@dataclass(frozen=True)
class Frame:
    """A box in its place [px]."""

    x: float
    y: float
    width: float
    height: float


@dataclass(frozen=True)
class Arrow:
    """A bent line from the eaten to the eater."""

    start: Point
    control: Point
    other_control: Point
    end: Point

    def at(self, share: float) -> Point:
        """The point after a share of the way."""
        a, b, c, d = (1 - share) ** 3, 3 * share * (1 - share) ** 2, 3 * share**2 * (1 - share), share**3
        points = (self.start, self.control, self.other_control, self.end)
        x, y = (sum(weight * point[axis] for weight, point in zip((a, b, c, d), points, strict=True)) for axis in (0, 1))
        return x, y


def shaft(share: float | None) -> float:
    """The width of an arrow [px], in proportion to the share but never under THINNEST."""
    return PLAIN if share is None else max(THINNEST, WIDEST * share)


def arrows(links: Sequence[FeedingLink], frames: dict[str, Frame], left: float, right: float) -> list[Arrow]:
    """An arrow for each link, between left and right edge [px], bent where it would run through a box that is not its own."""
    sides = {(at, end): _side(link, end, frames) for at, link in enumerate(links) for end in (0, 1) if link.food != link.eater}
    ports = _ports(links, frames, sides)
    return [
        _round_corner(frames[link.food]) if link.food == link.eater
        else _bent(ports[at, 0], ports[at, 1], _OUTWARDS[sides[at, 1]], [frame for name, frame in frames.items() if name not in (link.food, link.eater)], left, right)
        for at, link in enumerate(links)
    ]  # fmt: skip


def _ends(link: FeedingLink, end: int) -> tuple[str, str]:
    return (link.food, link.eater) if end == 0 else (link.eater, link.food)


def _side(link: FeedingLink, end: int, frames: dict[str, Frame]) -> str:
    """At which side of a box a link ends: above or below where the other box is clear of it and not far aside, else left or right."""
    own, other = (frames[name] for name in _ends(link, end))
    down = abs(other.y - own.y) - (own.height + other.height) / 2
    across = abs(other.x - own.x) - (own.width + other.width) / 2
    if down > max(12.0, _FLAT * across):
        return "top" if other.y < own.y else "bottom"
    return "right" if other.x > own.x else "left"


def _ports(links: Sequence[FeedingLink], frames: dict[str, Frame], sides: dict[tuple[int, int], str]) -> dict[tuple[int, int], Point]:
    """The point of each end of each link, spread along the side of its box in the order of the boxes at the other end."""
    found: dict[tuple[int, int], Point] = {}
    for name, frame in frames.items():
        for side in ("top", "bottom", "left", "right"):
            here = [key for key, at in sides.items() if at == side and _ends(links[key[0]], key[1])[0] == name]
            level = side in ("top", "bottom")

            def there(key: tuple[int, int]) -> tuple[float, int]:
                other = frames[_ends(links[key[0]], key[1])[1]]
                return (other.x if level else other.y, key[0])

            here.sort(key=there)
            room = (frame.width if level else frame.height) - 2 * _CORNER
            step = min(_PORT, room / max(len(here) - 1, 1))
            for number, key in enumerate(here):
                along = step * (number - (len(here) - 1) / 2)
                found[key] = _port(frame, side, along)
    return found


def _port(frame: Frame, side: str, along: float) -> Point:
    match side:
        case "top":
            return frame.x + along, frame.y - frame.height / 2
        case "bottom":
            return frame.x + along, frame.y + frame.height / 2
        case "left":
            return frame.x - frame.width / 2, frame.y + along
    return frame.x + frame.width / 2, frame.y + along


_OUTWARDS: dict[str, Point] = {"top": (0, -1), "bottom": (0, 1), "left": (-1, 0), "right": (1, 0)}


def _arriving(end: Point, control: Point, outwards: Point) -> Point:
    """The last control point, moved where the head would come so flat to the side of its box that this covered a part of it."""
    away = (control[0] - end[0], control[1] - end[1])
    rise, run = away[0] * outwards[0] + away[1] * outwards[1], away[0] * -outwards[1] + away[1] * outwards[0]
    if rise >= _STEEP * abs(run):
        return control
    run = min(max(run, -_STRAIGHT), _STRAIGHT)
    rise = max(rise, _STEEP * abs(run))
    return end[0] + rise * outwards[0] - run * outwards[1], end[1] + rise * outwards[1] + run * outwards[0]


def _bent(start: Point, end: Point, outwards: Point, others: Sequence[Frame], left: float, right: float) -> Arrow:
    """The least bent line that stays between the edges and touches the fewest other boxes; bent unevenly only where that helps."""
    across, down = end[0] - start[0], end[1] - start[1]
    length = max(math.hypot(across, down), 1e-9)

    def control(along: float, aside: float) -> Point:
        by = aside * 4 / 3 / length
        return start[0] + across * along - down * by, start[1] + down * along + across * by

    def first_of(bends: Sequence[tuple[float, float]]) -> tuple[float, Arrow]:
        tries = [Arrow(start, control(0.3, one), _arriving(end, control(0.7, other), outwards), end) for one, other in bends]
        faults = _leaving(tries, left, right) * (len(others) + 1) + _touched(tries, others)
        best = int(np.argmin(faults))
        return float(faults[best]), tries[best]

    even = first_of([(by, by) for by in _BENDS])
    return min(even, first_of(_TURNS), key=lambda found: found[0])[1] if even[0] else even[1]


def touched(arrow: Arrow, others: Sequence[Frame]) -> int:
    """How many boxes an arrow runs through or nearly touches."""
    return int(_touched([arrow], others)[0])


def _points(tries: Sequence[Arrow]) -> np.ndarray:
    """Points along each arrow; shape (tries, samples, 2)."""
    share = np.linspace(0, 1, _SAMPLES + 1)[:, None]
    weights = np.hstack([(1 - share) ** 3, 3 * share * (1 - share) ** 2, 3 * share**2 * (1 - share), share**3])
    return weights @ np.array([(arrow.start, arrow.control, arrow.other_control, arrow.end) for arrow in tries])


def _leaving(tries: Sequence[Arrow], left: float, right: float) -> np.ndarray:
    """Which arrows run beyond the left or right edge; shape (tries,)."""
    across = _points(tries)[..., 0]
    return ((across < left + _RIM) | (across > right - _RIM)).any(axis=1)


def _touched(tries: Sequence[Arrow], others: Sequence[Frame]) -> np.ndarray:
    """How many boxes each arrow runs through or nearly touches; shape (tries,)."""
    boxes = np.array([(one.x, one.y, one.width / 2 + _NEAR, one.height / 2 + _NEAR) for one in others]).reshape(-1, 4)
    away = np.abs(_points(tries)[:, :, None, :] - boxes[:, :2])
    return (away < boxes[:, 2:]).all(axis=3).any(axis=1).sum(axis=1)


def _round_corner(frame: Frame) -> Arrow:
    """Out of the right side and back from above, for a species that eats its own kind."""
    right, top = frame.x + frame.width / 2, frame.y - frame.height / 2
    return Arrow((right, frame.y - 2), (right + LOOP + 8, frame.y - 8), (right + LOOP - 16, top - LOOP), (right - 16, top))


@dataclass(frozen=True)
class Head:
    """The tip of an arrow and what it stands on [px]."""

    corners: tuple[Point, Point, Point]
    neck: Point
    """Where the shaft ends, a little inside the head."""


def head_of(arrow: Arrow, share: float | None) -> Head:
    """The head at the eater, larger where the shaft is wide."""
    width = shaft(share)
    tip, before = arrow.end, arrow.at(0.93)
    length = max(math.dist(tip, before), 1e-9)
    along = ((tip[0] - before[0]) / length, (tip[1] - before[1]) / length)
    base = (tip[0] - (_HEAD + width) * along[0], tip[1] - (_HEAD + width) * along[1])
    half = 4 + width * 0.6
    corners = (tip, (base[0] - half * along[1], base[1] + half * along[0]), (base[0] + half * along[1], base[1] - half * along[0]))
    return Head(corners, (base[0] + 2 * along[0], base[1] + 2 * along[1]))


def shaft_of(arrow: Arrow, share: float | None) -> Arrow:
    """What is drawn of an arrow beside its head."""
    (x, y), (neck_x, neck_y) = arrow.end, head_of(arrow, share).neck
    back = (arrow.other_control[0] + neck_x - x, arrow.other_control[1] + neck_y - y)
    return Arrow(arrow.start, arrow.control, back, (neck_x, neck_y))


def draw_shaft(canvas: Canvas, drawn: Arrow, share: float | None, *, dashed: bool, part: str) -> None:
    """The line of an arrow, without its head."""
    path = Path([drawn.start, drawn.control, drawn.other_control, drawn.end], [Path.MOVETO, Path.CURVE4, Path.CURVE4, Path.CURVE4])
    canvas.stroke(path, "muted", shaft(share), dash=(5, 4) if dashed else (), part=part)


def draw_head(canvas: Canvas, arrow: Arrow, share: float | None, part: str = "") -> None:
    """The head of an arrow."""
    canvas.fill(polygon(head_of(arrow, share).corners), "muted", part=part)
