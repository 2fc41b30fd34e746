"""Path data said shorter: relative steps in tenths of a unit, without corners that lie on a straight line between others."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence
from itertools import groupby

Point = tuple[float, float]
Step = tuple[str, list[Point]]

STRAIGHT = 0.05
"""How far a corner may lie off the line between its neighbours and still be left out [unit of the drawing, on pages about a pixel]."""
_PLAIN = re.compile(r"M[MLQCz\d\s.,-]*")
_STEP = re.compile(r"([MLQCz])([^MLQCz]*)")
_NUMBER = re.compile(r"-?\d*\.?\d+")
_POINTS = {"Q": 2, "C": 3}
"""How many points make one curve: its handles and its end."""


def shorter(data: str, *, from_either_end: bool = False) -> str:
    """The same lines, nowhere off by more than about a tenth of a unit.

    A stroke between two points may be drawn `from_either_end` where it looks the same, which it does not where it is dashed.

    Read are absolute steps M, L, Q, C and z, as drawings have them; other data come back as they are.
    A stroke so short that no tenth is left of it keeps one: under a round cap it is a dot.
    """
    if not _PLAIN.fullmatch(data):
        return data
    pen = _Pen()
    for steps in _strokes(data):
        pen.draw(_from_the_nearer_end(steps, pen.place) if from_either_end else steps)
    return pen.written


def _strokes(data: str) -> Iterator[list[Step]]:
    """Each stroke from one M to the next, points that follow each other by the same command as one step."""
    stroke: list[Step] = []
    for command, group in groupby(_STEP.findall(data), key=lambda step: step[0]):
        runs = [_points(numbers) for _, numbers in group]
        for points in runs if command in "Mz" else [sum(runs, [])]:
            if command == "M" and stroke:
                yield stroke
                stroke = []
            stroke.append((command, points))
    yield stroke


def _from_the_nearer_end(stroke: list[Step], place: Point) -> list[Step]:
    """A stroke between two points that begins at the one which is nearer to a place; others stay as they are."""
    if [(command, len(points)) for command, points in stroke] != [("M", 1), ("L", 1)]:
        return stroke
    first, last = sorted((stroke[0][1][0], stroke[1][1][0]), key=lambda end: math.dist(end, place))
    return [("M", [first]), ("L", [last])]


def _points(numbers: str) -> list[Point]:
    found = [float(number) for number in _NUMBER.findall(numbers)]
    return list(zip(found[::2], found[1::2], strict=True))


def turning(points: Sequence[Point]) -> list[Point]:
    """The corners that make a line, both ends among them (the rule of Douglas and Peucker 1973, from memory)."""
    kept, stretches = {0, len(points) - 1}, [(0, len(points) - 1)]
    while stretches:
        first, last = stretches.pop()
        off, corner = max(((_off(points[i], points[first], points[last]), i) for i in range(first + 1, last)), default=(0.0, 0))
        if off > STRAIGHT:
            kept.add(corner)
            stretches += [(first, corner), (corner, last)]
    return [points[i] for i in sorted(kept)]


def _off(point: Point, start: Point, end: Point) -> float:
    """How far a point lies from the stretch between two others; not from the line through them, which a turn back stays on."""
    along, across = end[0] - start[0], end[1] - start[1]
    length = along**2 + across**2
    x, y = point[0] - start[0], point[1] - start[1]
    part = min(1.0, max(0.0, (x * along + y * across) / length)) if length else 0.0
    return float(((x - part * along) ** 2 + (y - part * across) ** 2) ** 0.5)


class _Pen:
    """Writes steps from where it stands; places are whole tenths, so that what is rounded off does not add up."""

    def __init__(self) -> None:
        self.written = ""
        self._place = (0, 0)
        self._command = self._number = ""

    @property
    def place(self) -> Point:
        """Where the pen stands."""
        return self._place[0] / 10, self._place[1] / 10

    def draw(self, stroke: list[Step]) -> None:
        """Write one stroke."""
        (_, (start,)), *steps = stroke
        self._add("m", self._to([start]))
        begun = self._place
        closed = bool(steps) and steps[-1][0] == "z"
        for command, points in steps[:-1] if closed else steps:
            if command == "L":
                corners = turning([start, *points])[1:]
                self._lines(corners[:-1] if closed and points is steps[-2][1] and _in_tenths(points[-1]) == begun else corners)
            else:
                size = _POINTS[command]
                for i in range(0, len(points), size):
                    self._add(command.lower(), self._to(points[i : i + size]))
            start = points[-1]
        if closed:
            self.written += "z"
            self._command, self._place = "z", begun
        elif self._command == "m" and steps:
            self._add("h", [1])

    def _lines(self, corners: list[Point]) -> None:
        for corner in corners:
            along, across = self._to([corner])
            if along and across:
                self._add("l", [along, across])
            elif along or across:
                self._add("h" if along else "v", [along or across])

    def _to(self, points: list[Point]) -> list[int]:
        """The way from here to each of the points."""
        return [new - old for point in points for new, old in zip(_in_tenths(point), self._place, strict=True)]

    def _add(self, command: str, steps: list[int]) -> None:
        """A step; its letter is left out where it follows from the step before, a space where a sign or a point parts numbers."""
        follows = command != "m" and command == self._command or (self._command, command) == ("m", "l")
        text = "" if follows else command
        before = self._number if follows else ""
        for step in steps:
            number = _shown(step)
            text += number if not before or number[0] == "-" or number[0] == "." in before else f" {number}"
            before = number
        self.written += text
        self._command, self._number = command, before
        along, across = {"h": (steps[0], 0), "v": (0, steps[0])}.get(command) or steps[-2:]
        self._place = self._place[0] + along, self._place[1] + across


def _in_tenths(point: Point) -> tuple[int, int]:
    return round(point[0] * 10), round(point[1] * 10)


def _shown(tenths: int) -> str:
    whole, tenth = divmod(abs(tenths), 10)
    sign = "-" if tenths < 0 else ""
    return f"{sign}{whole or ''}.{tenth}" if tenth else f"{sign}{whole}"
