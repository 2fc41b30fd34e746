"""Draws a food web: boxes at the height of their trophic level, arrows from the eaten to the eater, and the key."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from matplotlib.path import Path

from figures.drawing.canvas import Canvas, polygon, rectangle, rounded_box, segments
from figures.drawing.food_web_arrows import LOOP, Arrow, Frame, arrows, draw_arrow
from figures.drawing.food_web_places import Web, places_across
from figures.drawing.text import ASCENT, block_size, text_width, wrap
from figures.food_web_diagram import FoodWebDiagram, WebSpecies, rows

WIDTH = 700.0
_AXIS, _LEFT, _EDGE, _TOP, _FOOT = 40.0, 58.0, 10.0, 46.0, 14.0
_PER_LEVEL, _APART = 124.0, 34.0
"""Height of one level, and of the arrows' room between two rows of boxes at least [px]."""
_TEXT, _SMALL, _PAD, _LINE = 14.5, 13.8, 9.0, 17.5
_WIDEST, _NARROWEST = 118.0, 60.0
"""Most room for a label in one line, and least width of a box [px]."""
_MARK = 13.0
_KEY_TEXT, _KEY_LINE, _SAMPLE, _KEY_ROW = 13.8, 17.0, 40.0, 28.0
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
    boxes = [_box(one, any(link.food == link.eater == one.id for link in chart.links)) for one in chart.species]
    width = _width(boxes)
    per_level = _per_level(boxes)
    levels = [box.species.level for box in boxes]
    top = _TOP + max(box.height / 2 - (max(levels) - box.species.level) * per_level for box in boxes) + _above(boxes)
    middles = [top + (max(levels) - level) * per_level for level in levels]
    bottom = max(middle + box.height / 2 for middle, box in zip(middles, boxes, strict=True))
    frames = _frames(chart, boxes, middles, width)
    key = _key_rows(chart, width)
    canvas = Canvas(width, math.ceil(bottom + 18 + _KEY_ROW * len(key) + _KEY_LINE * sum(len(row[1]) - 1 for row in key) + _FOOT))
    _axis(canvas, chart, top, bottom, per_level, max(levels), width)
    drawn = arrows(chart.links, frames)
    gone = {one.id for one in chart.species if one.change == "gone"}
    for link, arrow in zip(chart.links, drawn, strict=True):
        draw_arrow(canvas, arrow, link.share, dashed=bool(gone & {link.food, link.eater}), part=f"arrow {link.food} {link.eater}")
    for box in boxes:
        _draw_box(canvas, box, frames[box.species.id])
    _draw_key(canvas, key, bottom + 18)
    return canvas.svg()


def _box(species: WebSpecies, is_cannibal: bool) -> _Box:
    lines = wrap(species.label, _TEXT, _WIDEST, bold=True)
    note = text_width(species.note, _SMALL) + (_MARK if species.change in ("rises", "falls") else 0)
    width = max(_NARROWEST, block_size(lines, _TEXT, bold=True)[0], note) + 2 * _PAD
    return _Box(species, lines, width, _LINE * (len(lines) + bool(species.note)) + 2 * _PAD - 2, is_cannibal)


def _width(boxes: Sequence[_Box]) -> float:
    """Of the canvas [px]: wider than usual where the boxes of one row need it."""
    needed = [
        sum(box.room + 28 for box in boxes if box.species.level in row) + _LEFT + _EDGE
        for row in rows([box.species.level for box in boxes])
    ]
    return math.ceil(max(WIDTH, *needed))


def _per_level(boxes: Sequence[_Box]) -> float:
    """The height of one level [px]: more than usual where tall boxes need it."""
    return max(_PER_LEVEL, max(box.height for box in boxes) + _APART)


def _above(boxes: Sequence[_Box]) -> float:
    """Room for the arrow of a cannibal at the top [px]."""
    highest = max(box.species.level for box in boxes)
    return LOOP - 8 if any(box.is_cannibal and box.species.level > highest - 0.3 for box in boxes) else 0.0


def _frames(chart: FoodWebDiagram, boxes: Sequence[_Box], middles: Sequence[float], width: float) -> dict[str, Frame]:
    place = {box.species.id: at for at, box in enumerate(boxes)}
    links = [(place[link.food], place[link.eater]) for link in chart.links if link.food != link.eater]
    web = Web(
        middles=np.array(middles), sizes=np.array([(box.room, box.height) for box in boxes]),
        links=np.array(links, int).reshape(-1, 2), left=_LEFT + 6, right=width - _EDGE,
    )  # fmt: skip
    return {
        box.species.id: Frame(round(x, 1), middle, box.width, box.height)
        for box, x, middle in zip(boxes, places_across(web), middles, strict=True)
    }


def _axis(canvas: Canvas, chart: FoodWebDiagram, top: float, bottom: float, per_level: float, highest: float, width: float) -> None:
    """A line across at every whole level, with its number at the left."""
    canvas.text(8, 22, chart.axis_label, size=_KEY_TEXT, role="muted")
    for level in range(1, math.ceil(highest) + 1):
        y = top + (highest - level) * per_level
        if y < 34:
            continue
        canvas.stroke(segments([((_AXIS, y), (width - _EDGE, y))]), "grid", 0.7, dash=(2, 4))
        canvas.text(_AXIS - 10, y + 4.7, f"{level}", size=_TEXT, anchor="end")


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
    y = frame.y - frame.height / 2 + _PAD - 2 + _TEXT * ASCENT
    for line in box.lines:
        canvas.text(frame.x, y, line, size=_TEXT, anchor="middle", bold=True)
        y += _LINE
    if not species.note:
        return
    has_mark = species.change in ("rises", "falls")
    if has_mark:
        _mark(canvas, frame.x - (text_width(species.note, _SMALL) + _MARK) / 2 + 4.5, y - 4.5, species.change == "rises")
    canvas.text(frame.x + (_MARK / 2 if has_mark else 0), y, species.note, size=_SMALL, anchor="middle")


def _mark(canvas: Canvas, x: float, y: float, up: bool) -> None:
    """A small triangle that points up or down."""
    tip, base = (y - 4.5, y + 4.5) if up else (y + 4.5, y - 4.5)
    canvas.fill(polygon([(x, tip), (x + 5, base), (x - 5, base)]), "ink")


def _key_rows(chart: FoodWebDiagram, width: float) -> list[_KeyRow]:
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
    if sort == "arrow":
        start, end = (x, y), (x + _SAMPLE - 2, y)
        draw_arrow(canvas, Arrow(start, (x + 12, y), (x + 24, y), end), share, dashed=False, part="")
        return
    kind = "consumer" if sort == "gone" else sort
    _paint(
        canvas, kind, _shape(kind, x + 1, y - 9, _SAMPLE - 4, 18), _shape(kind, x + 4, y - 6, _SAMPLE - 10, 12), gone=sort == "gone"
    )  # fmt: skip
