"""Draws a food web: boxes at the height of their trophic level, arrows from the eaten to the eater, and the key."""

from __future__ import annotations

import math
from collections.abc import Sequence, Set
from dataclasses import dataclass, replace
from itertools import combinations

import numpy as np
from matplotlib.path import Path

from figures.drawing.canvas import Canvas, polygon, polyline, rectangle, rounded_box, segments
from figures.drawing.food_web_arrows import LOOP, Arrow, Frame, arrows, draw_head, draw_shaft, shaft, shaft_of, touched
from figures.drawing.food_web_crossings import gaps
from figures.drawing.food_web_places import Web, places_across
from figures.drawing.sheet import Sheet
from figures.drawing.text import ASCENT, block_size, text_width, wrap
from figures.food_web_diagram import FeedingLink, FoodWebDiagram, WebSpecies, rows

_EDGE, _TOP, _FOOT = 10.0, 46.0, 14.0
_PER_LEVEL, _APART, _STEP = 124.0, 34.0, 16.0
"""Height of one level, of the arrows' room between two rows of boxes at least, and between the two steps of a row [px]."""
_STRETCHES = (1.0, 1.3, 1.7, 2.2)
"""Times the usual height of a level, tried until no box lies on another."""
_TEXT, _SMALL, _PAD, _LINE = 14.5, 14.0, 9.0, 17.5
_NARROWEST, _MARK = 60.0, 13.0
"""Least width of a box, and room for the mark before its note [px]."""
_KEY_TEXT, _KEY_LINE, _SAMPLE, _KEY_ROW = 14.0, 17.0, 40.0, 28.0
_STEPPED = "Boxes that find no room side by side stand a little above or below the line of their level."
_MARKS = {"rises": (True, True), "falls": (False, True), "rises at first": (True, False), "falls at first": (False, False)}
"""For each change with a mark whether its triangle points up, and whether it is full."""
_KEYS = {"producer": "producer", "detritus": "dead matter", "consumer": "consumer"}
_KeyRow = tuple[list[tuple[str, float | None, str, float]], list[str]]
"""A row of the key: samples as (sort, share, text, x [px]), and all lines of the last one's text."""


@dataclass(frozen=True)
class _Box:
    """A species with its text and the room that it takes."""

    species: WebSpecies
    lines: tuple[str, ...]
    width: float
    height: float
    is_cannibal: bool
    aside: float = 0.0
    """How far it stands below the height of its level [px]."""

    @property
    def room(self) -> float:
        """Its width with the arrow of a cannibal, on both sides so that the box stays in the middle."""
        return self.width + (2 * (LOOP - 6) if self.is_cannibal else 0)


def draw_food_web_diagram(chart: FoodWebDiagram) -> str:
    """The SVG of a food web, the bottom of the chains at the bottom.

    Raises
    ------
    ValueError
        If there is no species, or a link names one that is not there.
    """
    known = {one.id for one in chart.species}
    if not known or not known.issuperset(end for link in chart.links for end in (link.food, link.eater)):
        raise ValueError(f"{chart.name}: expected links between species that are there")
    sheet = Sheet.of(chart, wide=(58, 10), narrow=(34, 6))
    boxes = _stepped([_box(one, any(link.food == link.eater == one.id for link in chart.links), sheet) for one in chart.species], sheet)
    width = _width(boxes, sheet)
    per_level, top, frames = _standing(chart, boxes, sheet, width)
    bottom = max(frame.y + frame.height / 2 for frame in frames.values())
    key = _key_rows(chart, width, any(box.aside for box in boxes))
    canvas = Canvas(width, math.ceil(bottom + 18 + _KEY_ROW * len(key) + _KEY_LINE * sum(len(row[1]) - 1 for row in key) + _FOOT))
    _axis(canvas, chart, sheet, top, bottom, per_level, max(one.level for one in chart.species), width)
    drawn = arrows(chart.links, frames, _axis_at(sheet), width)
    gone = {one.id for one in chart.species if one.change == "gone"}
    _draw_arrows(canvas, chart.links, drawn, gone)
    for box in boxes:
        _draw_box(canvas, box, frames[box.species.id])
    _draw_key(canvas, key, bottom + 18)
    return canvas.svg()


def _draw_arrows(canvas: Canvas, links: Sequence[FeedingLink], drawn: Sequence[Arrow], gone: Set[str]) -> None:
    """All shafts, then a gap in one of two that cross, then all heads, so that no gap cuts a head."""
    shafts = [shaft_of(arrow, link.share) for link, arrow in zip(links, drawn, strict=True)]
    for link, one in zip(links, shafts, strict=True):
        draw_shaft(canvas, one, link.share, dashed=bool(gone & {link.food, link.eater}), part=f"arrow {link.food} {link.eater}")
    for gap in gaps(shafts, [shaft(link.share) for link in links]):
        width, under = shaft(links[gap.over].share), links[gap.under]
        canvas.stroke(polyline(gap.piece), "ground", width + 5, part=f"gap {under.food} {under.eater}")
        canvas.stroke(polyline(gap.piece), "muted", width)
    for link, arrow in zip(links, drawn, strict=True):
        draw_head(canvas, arrow, link.share, part=f"head {link.food} {link.eater}")


def _box(species: WebSpecies, is_cannibal: bool, sheet: Sheet) -> _Box:
    lines = wrap(species.label, _TEXT, 90 if sheet.narrow else 118, bold=True)
    notes = [note for note in (species.note, *species.room_for) if note]
    note = max((text_width(note, _SMALL) for note in notes), default=0) + (_MARK if species.room_for or species.change in _MARKS else 0)
    width = max(_NARROWEST, block_size(lines, _TEXT, bold=True)[0], note) + 2 * (_PAD - 3 * sheet.narrow)
    return _Box(species, lines, width, _LINE * (len(lines) + bool(notes)) + 2 * _PAD - 2, is_cannibal)


def _between(sheet: Sheet) -> tuple[float, float]:
    """Room between two boxes side by side, and where an arrow joins them [px]."""
    return (10.0, 34.0) if sheet.narrow else (24.0, 50.0)


def _in_rows(boxes: Sequence[_Box]) -> list[list[_Box]]:
    """The boxes in rows of about one level."""
    return [[box for box in boxes if box.species.level in row] for row in rows([box.species.level for box in boxes])]


def _needed(row: Sequence[_Box], sheet: Sheet) -> float:
    """Width that boxes side by side take [px]."""
    return sum(box.room + _between(sheet)[0] + 4 for box in row)


def _stepped(boxes: Sequence[_Box], sheet: Sheet) -> list[_Box]:
    """The boxes; on a narrow sheet those of a row that is too wide stand by turns above and below its height."""
    aside: dict[str, float] = {}
    for row in _in_rows(boxes) if sheet.narrow else ():
        steps = min(len(row), math.ceil(_needed(row, sheet) / sheet.room))
        apart = max(box.height for box in row) + _STEP
        aside |= {box.species.id: (number % steps - (steps - 1) / 2) * apart for number, box in enumerate(row)}
    return [replace(box, aside=aside.get(box.species.id, 0.0)) for box in boxes]


def _width(boxes: Sequence[_Box], sheet: Sheet) -> float:
    """Of the canvas [px]: wider than usual where the boxes of one row need it."""
    steps = [[box for box in row if box.aside == aside] for row in _in_rows(boxes) for aside in {box.aside for box in row}]
    margins = sheet.left + sheet.width - sheet.right
    return math.ceil(max(sheet.width, *(_needed(step, sheet) + margins for step in steps)))


def _per_level(boxes: Sequence[_Box]) -> float:
    """The height of one level [px]: more than usual where tall boxes need it, or rows in steps."""
    spread = max(2 * abs(box.aside) for box in boxes)
    return max(_PER_LEVEL, max(box.height for box in boxes) + _APART + spread)


def _above(boxes: Sequence[_Box]) -> float:
    """Room for the arrow of a cannibal at the top [px]."""
    highest = max(box.species.level for box in boxes)
    return LOOP - 8 if any(box.is_cannibal and box.species.level > highest - 0.3 for box in boxes) else 0.0


def _standing(chart: FoodWebDiagram, boxes: Sequence[_Box], sheet: Sheet, width: float) -> tuple[float, float, dict[str, Frame]]:
    """The height of one level and of the highest one [px], and the boxes in their places: levels so high that none lies on another."""
    highest = max(box.species.level for box in boxes)
    for stretch in _STRETCHES:
        per_level = stretch * _per_level(boxes)
        below = [(highest - box.species.level) * per_level + box.aside for box in boxes]
        top = _TOP + max(box.height / 2 - down for down, box in zip(below, boxes, strict=True)) + _above(boxes)
        frames = _frames(chart, boxes, [top + down for down in below], sheet, width)
        if not any(_overlap(one, other) for one, other in combinations(frames.values(), 2)):
            break
    return per_level, top, frames


def _overlap(one: Frame, other: Frame) -> bool:
    return abs(one.x - other.x) < (one.width + other.width) / 2 and abs(one.y - other.y) < (one.height + other.height) / 2


def _frames(chart: FoodWebDiagram, boxes: Sequence[_Box], middles: Sequence[float], sheet: Sheet, width: float) -> dict[str, Frame]:
    place = {box.species.id: at for at, box in enumerate(boxes)}
    links = [(place[link.food], place[link.eater]) for link in chart.links if link.food != link.eater]
    web = Web(
        middles=np.array(middles), sizes=np.array([(box.room, box.height) for box in boxes]),
        links=np.array(links, int).reshape(-1, 2), left=sheet.left + 6, right=width - sheet.width + sheet.right, between=_between(sheet),
    )  # fmt: skip
    ways = [
        {box.species.id: Frame(round(x, 1), middle, box.width, box.height) for box, x, middle in zip(boxes, across, middles, strict=True)}
        for across in places_across(web)
    ]
    return min(ways, key=lambda frames: _behind(chart, frames, _axis_at(sheet), width))


def _behind(chart: FoodWebDiagram, frames: dict[str, Frame], left: float, right: float) -> int:
    """How many boxes have an arrow behind them that is not theirs."""
    drawn = zip(chart.links, arrows(chart.links, frames, left, right), strict=True)
    return sum(touched(arrow, [frame for name, frame in frames.items() if name not in (link.food, link.eater)]) for link, arrow in drawn)


def _axis_at(sheet: Sheet) -> float:
    """Where the lines across begin [px]."""
    return sheet.left - (6 if sheet.narrow else 18)


def _axis(
    canvas: Canvas, chart: FoodWebDiagram, sheet: Sheet, top: float, bottom: float, per_level: float, highest: float, width: float
) -> None:  # fmt: skip
    """A line across at every whole level, with its number at the left."""
    canvas.text(8, 22, chart.axis_label, size=_KEY_TEXT, role="muted")
    axis = _axis_at(sheet)
    for level in range(1, math.ceil(highest) + 1):
        y = top + (highest - level) * per_level
        if y < 34:
            continue
        canvas.stroke(segments([((axis, y), (width - _EDGE, y))]), "grid", 0.7, dash=(2, 4))
        canvas.text(axis - 10, y + 4.7, f"{level}", size=_TEXT, anchor="end")


def _outline(box: _Box, frame: Frame, shrunk: float = 0.0) -> Path:
    """Producers have corners, consumers round ends, dead matter cut corners; so the shape says it without colour."""
    left, top = frame.x - frame.width / 2 + shrunk, frame.y - frame.height / 2 + shrunk
    width, height = frame.width - 2 * shrunk, frame.height - 2 * shrunk
    return _shape(box.species.sort, left, top, width, height)


def _shape(sort: str, left: float, top: float, width: float, height: float) -> Path:
    if sort == "producer":
        return rectangle(left, top, width, height)
    if sort == "consumer":
        return rounded_box(left, top, width, height, min(14.0, height / 2))
    right, bottom, cut = left + width, top + height, min(10.0, height / 3)
    return polygon([
        (left + cut, top), (right - cut, top), (right, top + cut), (right, bottom - cut),
        (right - cut, bottom), (left + cut, bottom), (left, bottom - cut), (left, top + cut),
    ])  # fmt: skip


_ROLES = {"producer": "plant", "detritus": "soil", "consumer": "ink"}


def _paint(canvas: Canvas, sort: str, outline: Path, inner: Path, *, gone: bool, part: str = "") -> None:
    canvas.fill(outline, "ground", part=part)
    if sort != "consumer":
        canvas.fill(outline, _ROLES[sort], opacity=0.14)
    canvas.stroke(outline, "heat" if gone else _ROLES[sort], 1.8, dash=(6, 4) if gone else ())
    if sort == "producer":
        canvas.stroke(inner, _ROLES[sort], 0.9)


def _draw_box(canvas: Canvas, box: _Box, frame: Frame) -> None:
    species = box.species
    _paint(canvas, species.sort, _outline(box, frame), _outline(box, frame, 3.5), gone=species.change == "gone", part=f"box {species.id}")
    free = frame.height - _LINE * (len(box.lines) + bool(species.note)) - 2 * _PAD + 2
    y = frame.y - frame.height / 2 + free / 2 + _PAD - 2 + _TEXT * ASCENT
    for line in box.lines:
        canvas.text(frame.x, y, line, size=_TEXT, anchor="middle", bold=True)
        y += _LINE
    if not species.note:
        return
    has_mark = species.change in _MARKS
    if has_mark:
        _mark(canvas, frame.x - (text_width(species.note, _SMALL) + _MARK) / 2 + 4.5, y - 4.5, species.change)
    canvas.text(frame.x + (_MARK / 2 if has_mark else 0), y, species.note, size=_SMALL, anchor="middle")


def _mark(canvas: Canvas, x: float, y: float, change: str) -> None:
    """A small triangle that points up or down, hollow for what holds at first only."""
    up, full = _MARKS[change]
    tip, base = (y - 4.5, y + 4.5) if up else (y + 4.5, y - 4.5)
    triangle = polygon([(x, tip), (x + 5, base), (x - 5, base)])
    canvas.fill(triangle, "ink" if full else "ground", part=f"mark {change}")
    canvas.stroke(triangle, "ink", 1.2)


def _key_rows(chart: FoodWebDiagram, width: float, stepped: bool) -> list[_KeyRow]:
    """The arrow and what its width means, then the shapes that are there."""
    room = width - 2 * _EDGE - _SAMPLE - 8
    known = any(link.share is not None for link in chart.links)
    long = ["An arrow points from the eaten to the eater: that is the way the energy goes."]
    entries: list[list[tuple[str, float | None, str]]] = [[("arrow", 0.4 if known else None, long[0])]]
    if known:
        entries.append([("arrow", 0.1, "a tenth of the eater’s food"), ("arrow", 0.5, "half of it"), ("arrow", 1.0, "all of it")])
    entries.append([(sort, None, text) for sort, text in _KEYS.items() if any(one.sort == sort for one in chart.species)])
    if any(one.change == "gone" for one in chart.species):
        entries[-1].append(("gone", None, "gone, with its links"))
    there = {_MARKS[one.change][1] for one in chart.species if one.change in _MARKS}
    if there:
        marks = (("every", True, f"{chart.every_path} says so"), ("shortest", False, "only the shortest paths say so"))
        entries.append([(sort, None, text) for sort, full, text in marks if full in there])
    if stepped:
        entries.append([("", None, _STEPPED)])
    made: list[_KeyRow] = []
    for row in entries:
        x, placed, more = _EDGE, [], [""]
        for sort, share, text in row:
            lines = wrap(text, _KEY_TEXT, room) if len(row) == 1 else (text,)
            if placed and x + _SAMPLE + 8 + text_width(text, _KEY_TEXT) > width - _EDGE:
                made.append((placed, [""]))
                x, placed = _EDGE, []
            placed.append((sort, share, lines[0], x))
            more = list(lines)
            x += _SAMPLE + 8 + text_width(text, _KEY_TEXT) + 20
        made.append((placed, more))
    return made


def _draw_key(canvas: Canvas, key: list[_KeyRow], top: float) -> None:
    y = top + 14
    for placed, lines in key:
        for sort, share, text, x in placed:
            _sample(canvas, sort, share, x, y)
            canvas.text(x + _SAMPLE + 8, y + 4.5, text, size=_KEY_TEXT)
        for line in lines[1:]:
            y += _KEY_LINE
            canvas.text(placed[-1][3] + _SAMPLE + 8, y + 4.5, line, size=_KEY_TEXT)
        y += _KEY_ROW


def _sample(canvas: Canvas, sort: str, share: float | None, x: float, y: float) -> None:
    if not sort:
        return
    if sort == "arrow":
        start, end = (x, y), (x + _SAMPLE - 2, y)
        arrow = Arrow(start, (x + 12, y), (x + 24, y), end)
        draw_shaft(canvas, shaft_of(arrow, share), share, dashed=False, part="")
        draw_head(canvas, arrow, share)
        return
    if sort in ("every", "shortest"):
        for at, change in enumerate(change for change, (_, full) in _MARKS.items() if full == (sort == "every")):
            _mark(canvas, x + _SAMPLE / 2 - 9 + 16 * at, y, change)
        return
    kind = "consumer" if sort == "gone" else sort
    _paint(
        canvas, kind, _shape(kind, x + 1, y - 9, _SAMPLE - 4, 18), _shape(kind, x + 4, y - 6, _SAMPLE - 10, 12), gone=sort == "gone"
    )  # fmt: skip
