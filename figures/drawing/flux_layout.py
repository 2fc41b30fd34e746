"""Finds a course for every arrow, a place for every label and an end for every flux from or to outside.

Each arrow has many candidate courses and each course many candidate places for its label. Arrows are placed widest
first, each where it costs least among those already placed; then, now with labels, they are moved again and again until
none can do better.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from figures.drawing.flux_candidates import Course, courses
from figures.drawing.flux_places import RIM, PlacedBox
from figures.drawing.flux_routes import SAMPLES, Rectangle, label_rectangles, rectangles_of
from figures.flux_diagram import FluxArrow

BLOCKED = 1000.0
"""Cost of something that must not be: a label on a label, on a box or off the canvas."""
_ON_ARROW, _NEAR_ARROW, _CROSSING, _SHARED = 60.0, 4.0, 8.0, 22.0
_MISTAKABLE, _TOO_CLOSE = 80.0, 75.0
_CLEARER = 5.0
"""How much farther from its label than its own arrow any other must be [px]."""
_UNLIKE, _ONE_ROW = 40.0, 40.0
"""What it costs an end outside to stand straight above one box and straight below another of its row, and how near their heights are [px]."""
_SHAFT = np.append(np.ones(SAMPLES - 2), (0.5, 0.0))
"""How much of its half width an arrow fills along its course: it ends in a tip."""
_SWEEPS, _TRIED = 6, 12


@dataclass(frozen=True)
class LabelForm:
    """One way to set a label: its lines and the room they take [px]."""

    lines: tuple[str, ...]
    size: tuple[float, float]


@dataclass(frozen=True)
class Demand:
    """An arrow to be placed."""

    arrow: FluxArrow
    width: float
    """Of the shaft as drawn [px]."""
    forms: tuple[LabelForm, ...]


@dataclass(frozen=True)
class PlacedArrow:
    """An arrow with its course and label on the canvas [px]."""

    demand: Demand
    course: Course
    form: LabelForm
    label: Rectangle | None
    """None while courses are still being sorted out."""
    cost: float


class _Surroundings:
    """Everything but the arrow that is being placed, as arrays."""

    def __init__(self, across: float, boxes: np.ndarray, others: Sequence[PlacedArrow]) -> None:
        ends = {end.key: end.rectangle for other in others if (end := other.course.outside) is not None}
        self.across, self.boxes = across, boxes
        self.labels = rectangles_of([other.label for other in others if other.label is not None])
        self.end_keys = tuple(ends)
        self.ends = rectangles_of(list(ends.values()))
        self.points = np.concatenate([np.empty((0, 2)), *(other.course.points for other in others)])
        self.reach = np.concatenate([np.empty(0), *(np.full(SAMPLES, o.demand.width / 2) for o in others)])
        self.courses = tuple((other.course, other.demand.width / 2) for other in others)
        self.leans = [(end.box.id, other.course.level, other.course.lean) for other in others if (end := other.course.outside) is not None]


class _Choice:
    """All courses of one arrow, as arrays."""

    def __init__(self, demand: Demand, candidates: Sequence[Course]) -> None:
        self.demand, self.courses = demand, candidates
        self.costs = np.array([course.cost for course in candidates])
        self.points = np.stack([course.points for course in candidates])
        self.end_keys = [None if course.outside is None else course.outside.key for course in candidates]
        self.ends = rectangles_of([course.outside.rectangle for course in candidates if course.outside is not None])
        self.leans = np.array([course.lean for course in candidates])
        self._met: dict[Course, np.ndarray] = {}

    def met(self, course: Course, half_width: float) -> np.ndarray:
        """Where each course comes too near to another arrow's; kept, because most arrows stay where they are."""
        if course not in self._met:
            points = self.points[:, ::2]
            dx = points[:, :, None, 0] - course.points[None, None, ::2, 0]
            dy = points[:, :, None, 1] - course.points[None, None, ::2, 1]
            self._met[course] = (dx * dx + dy * dy < (self.demand.width / 2 + half_width + 5) ** 2).any(axis=-1)
        return self._met[course]


def arrange(demands: Sequence[Demand], boxes: Sequence[PlacedBox], ends: Sequence[PlacedBox], across: float) -> list[PlacedArrow]:
    """Places for all arrows, in the order of `demands`, on a canvas `across` [px] wide.

    `boxes` stand where they are; each of `ends` is a sample of an end outside, drawn as often and wherever it helps.
    """
    solid = rectangles_of([box.rectangle for box in boxes])
    choices = [_Choice(demand, courses(demand.arrow, demand.width, boxes, ends, across)) for demand in demands]
    choices.sort(key=lambda choice: (len(choice.ends) > 0, -choice.demand.width, choice.demand.arrow.id))
    placed: dict[str, PlacedArrow] = {}
    for choice in choices:
        placed[choice.demand.arrow.id] = _bare(choice, _Surroundings(across, solid, list(placed.values())))
    for _ in range(_SWEEPS):
        before = {identifier: (arrow.course, arrow.label) for identifier, arrow in placed.items()}
        for choice in choices:
            placed.pop(choice.demand.arrow.id, None)
            placed[choice.demand.arrow.id] = _best(choice, _Surroundings(across, solid, list(placed.values())))
        if before == {identifier: (arrow.course, arrow.label) for identifier, arrow in placed.items()}:
            break
    return [placed[demand.arrow.id] for demand in demands]


def faults(placed: Sequence[PlacedArrow], boxes: Sequence[PlacedBox], across: float) -> tuple[int, int, float]:
    """How many things stand on each other or off the canvas, how many arrows or labels come too close, and the cost of all."""
    ends = {end.key: end.rectangle for arrow in placed if (end := arrow.course.outside) is not None}
    labels = [arrow.label for arrow in placed if arrow.label is not None]
    rectangles = rectangles_of([*(box.rectangle for box in boxes), *ends.values(), *labels])
    touching = (int(_overlaps(rectangles, rectangles).sum()) - len(rectangles)) // 2
    beyond = int(((rectangles[:, 0] < RIM) | (rectangles[:, 2] > across - RIM)).sum())
    return touching + beyond, sum(arrow.cost > _TOO_CLOSE for arrow in placed), round(sum(arrow.cost for arrow in placed))


def _bare(choice: _Choice, around: _Surroundings) -> PlacedArrow:
    """The course that costs least without a label."""
    costs = _course_costs(choice, around)
    index = int(np.argmin(costs))
    return PlacedArrow(choice.demand, choice.courses[index], choice.demand.forms[0], None, float(costs[index]))


def _course_costs(choice: _Choice, around: _Surroundings) -> np.ndarray:
    return choice.costs + _end_costs(choice, around) + _crossing_costs(choice, around)


def _best(choice: _Choice, around: _Surroundings) -> PlacedArrow:
    """The course and label that cost least, among the courses that look best without label."""
    costs = _course_costs(choice, around)
    order = np.argsort(costs, kind="stable")
    best = _with_label(choice, int(order[0]), costs, around)
    for index in order[1:_TRIED]:
        if costs[index] < best.cost:
            best = min(best, _with_label(choice, int(index), costs, around), key=lambda placed: placed.cost)
    return best


def _end_costs(choice: _Choice, around: _Surroundings) -> np.ndarray:
    """What each course's end outside costs: less where it is shared, more where it leans unlike one of its name in its row, BLOCKED on something."""
    if not len(choice.ends):
        return np.zeros(len(choice.courses))
    roomy = _inflated(choice.ends, 8)
    hits = _overlaps(roomy, around.labels).sum(axis=1) + _overlaps(roomy, around.ends).sum(axis=1)
    hits = hits + _inside(around.points, around.reach + 1, roomy).any(axis=1)
    shared = np.array([key in around.end_keys for key in choice.end_keys])
    names, level = (choice.demand.arrow.start, choice.demand.arrow.end), choice.courses[0].level
    leans = np.array([lean for name, other, lean in around.leans if name in names and abs(level - other) < _ONE_ROW])
    unlike = np.abs(choice.leans[:, None] - leans[None, :]).max(axis=1, initial=0.0)
    return np.where(shared, -_SHARED, BLOCKED * hits) + _UNLIKE / 2 * unlike


def _crossing_costs(choice: _Choice, around: _Surroundings) -> np.ndarray:
    """For each course: how much of it runs on other arrows, through labels, and through other ends outside."""
    costs = np.zeros(len(choice.courses))
    if around.courses:
        met_at = np.logical_or.reduce([choice.met(*course) for course in around.courses]).sum(axis=-1)
        costs += _CROSSING * met_at + 3 * np.maximum(met_at - 4, 0) ** 2  # one may cross another, not run along it
    flat = choice.points.reshape(-1, 2)
    reach = np.full(len(flat), choice.demand.width / 2 + 1)
    for rectangles, cost in ((around.labels, 0.5 * BLOCKED), (around.ends, BLOCKED)):
        met = _inside(flat, reach, rectangles).reshape(len(rectangles), *choice.points.shape[:2]).any(axis=-1)
        if rectangles is around.ends:
            met &= np.array([[key != own for own in choice.end_keys] for key in around.end_keys], dtype=bool).reshape(met.shape)
        costs += cost * met.any(axis=0)
    return costs


def _with_label(choice: _Choice, index: int, costs: np.ndarray, around: _Surroundings) -> PlacedArrow:
    """One course with the best place and form for its label."""
    demand, course = choice.demand, choice.courses[index]
    own_end = rectangles_of([course.outside.rectangle] if course.outside else [])
    solid = np.concatenate([around.boxes, around.labels, around.ends, own_end])
    best: tuple[float, LabelForm, Rectangle] | None = None
    for form in demand.forms:
        rectangles, far = label_rectangles(course.points, demand.width / 2, form.size)
        blocked = _overlaps(_inflated(rectangles, 3), solid).sum(axis=1)
        blocked = blocked + (rectangles[:, 0] < RIM) + (rectangles[:, 2] > around.across - RIM)
        own = _inside(course.points, np.full(SAMPLES, demand.width / 2), rectangles).sum(axis=1)
        on = _inside(around.points, around.reach + 1, rectangles).sum(axis=1)
        near = _inside(around.points, around.reach + 10, rectangles).sum(axis=1)
        to_own = _gap(course.points, demand.width / 2 * _SHAFT, rectangles)
        mistakable = _gap(around.points, around.reach, rectangles) < to_own + _CLEARER
        label_costs = BLOCKED * blocked + _ON_ARROW * (on + own) + _NEAR_ARROW * near + _MISTAKABLE * mistakable + 30 * far + to_own
        place = int(np.argmin(label_costs))
        if best is None or label_costs[place] < best[0]:
            best = float(label_costs[place]), form, tuple(map(float, rectangles[place]))
    if best is None:
        raise ValueError(f"no form of the label of the flux {demand.arrow.id}")
    return PlacedArrow(demand, course, best[1], best[2], float(costs[index]) + best[0])


def _overlaps(a: np.ndarray, b: np.ndarray) -> np.ndarray:
    """Whether each rectangle of `a` meets each of `b`, shape (len(a), len(b))."""
    a, b = a[:, None, :], b[None, :, :]
    return (a[..., 0] < b[..., 2]) & (b[..., 0] < a[..., 2]) & (a[..., 1] < b[..., 3]) & (b[..., 1] < a[..., 3])


def _inside(points: np.ndarray, reach: np.ndarray, rectangles: np.ndarray) -> np.ndarray:
    """Whether each point comes within its reach of each rectangle, shape (len(rectangles), len(points))."""
    x, y = points[None, :, 0], points[None, :, 1]
    left, top, right, bottom = (rectangles[:, None, side] for side in range(4))
    return (x > left - reach) & (x < right + reach) & (y > top - reach) & (y < bottom + reach)


def _gap(points: np.ndarray, reach: np.ndarray, rectangles: np.ndarray) -> np.ndarray:
    """How far [px] each rectangle stands from the nearest point's reach; infinite where there is no point."""
    x, y = points[None, :, 0], points[None, :, 1]
    left, top, right, bottom = (rectangles[:, None, side] for side in range(4))
    across, down = np.maximum(left - x, x - right).clip(min=0), np.maximum(top - y, y - bottom).clip(min=0)
    return (np.hypot(across, down) - reach).min(axis=1, initial=np.inf)


def _inflated(rectangles: np.ndarray, by: float) -> np.ndarray:
    return rectangles + np.array([-by, -by, by, by])
