"""Where the boxes of a flux diagram stand: at their given places, or in a ring ordered so that few arrows cross."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import combinations, permutations

from figures.drawing.sheet import Sheet
from figures.drawing.text import SMALLEST, block_size, break_in_two, glued, wrap, wrap_evenly
from figures.flux_diagram import CLOSEST_PLACES, Box, FluxDiagram

TEXT = 14.5
RIM = 8.0
"""Kept free at the left and right edge of the canvas [px]."""
STOCK_TEXT = SMALLEST
_MOST_COLUMNS = 4
_SAME_ROW = 0.9
"""Boxes nearer than this, in rows, limit each other's width."""
_TRIED_IN_FULL = 7
"""Rings up to this size are ordered by trying all orders."""

Place = tuple[float, float]


@dataclass(frozen=True)
class PlacedBox:
    """A box on the canvas [px], its text broken into lines."""

    box: Box
    x: float
    """Of its middle."""
    y: float
    width: float
    height: float
    lines: tuple[str, ...]
    stock_lines: tuple[str, ...]

    @property
    def key(self) -> tuple[str, float, float]:
        """Which box it is, and where."""
        return self.box.id, self.x, self.y

    @property
    def rectangle(self) -> tuple[float, float, float, float]:
        """Left, top, right, bottom."""
        return self.x - self.width / 2, self.y - self.height / 2, self.x + self.width / 2, self.y + self.height / 2


def measured(box: Box, x: float, y: float, room: float) -> PlacedBox:
    """The box around (x, y), as wide as its words need, at best no wider than `room` [px]."""
    lines = wrap_evenly(box.label, TEXT, room - 20, bold=not box.outside)
    stock_lines = _stock_lines(box.stock_label, room - 20) if box.stock_label else ()
    width, height = block_size(lines, TEXT, bold=not box.outside)
    if stock_lines:
        stock_width, stock_height = block_size(stock_lines, STOCK_TEXT)
        width, height = max(width, stock_width), height + stock_height + 2
    return PlacedBox(box, x, y, width + 20, height + (6 if box.outside else 16), lines, stock_lines)


def _stock_lines(label: str, room: float) -> tuple[str, ...]:
    """The stock on as few lines as find room; on more than two with its numbers and units kept whole where that nearly does."""
    lines, whole = wrap(label, STOCK_TEXT, room), wrap(glued(label), STOCK_TEXT, room)
    if len(lines) == 2:
        return break_in_two(label, STOCK_TEXT)
    return whole if len(lines) > 2 and block_size(whole, STOCK_TEXT)[0] <= room + 16 else lines


def sheet_of(spec: FluxDiagram) -> Sheet:
    """The sheet of a diagram; its margins lie left of the first and right of the last box, on a wide one with room for ends outside."""
    return Sheet.of(spec, wide=(74, 74), narrow=(RIM, RIM))


def place_boxes(spec: FluxDiagram, row_height: float) -> tuple[PlacedBox, ...]:
    """All boxes with a fixed place: reservoirs, and ends outside that were given one or that exchange with another end.

    Places from the spec are kept unless boxes would touch or there are too many columns; then the ring is used.
    """
    fixed = _fixed_boxes(spec)
    places = _places(spec, fixed)
    columns = [column for column, _ in places.values()]
    left, span = min(columns, default=0), max(columns, default=0) - min(columns, default=0)
    sheet = sheet_of(spec)
    least = 92.0 if sheet.narrow else 96.0
    spacing = min(280.0, (sheet.room - (least if sheet.narrow else 124)) / max(span, 1))
    room = min(136.0, max(least, 0.62 * spacing * _nearest_column(list(places.values()))))
    middle = left + span / 2
    found = [measured(box, sheet.width / 2 + (places[box.id][0] - middle) * spacing, places[box.id][1] * row_height, room) for box in fixed]
    return tuple(replace(box, x=_kept_on(sheet, box)) for box in found)


def _kept_on(sheet: Sheet, box: PlacedBox) -> float:
    """The middle of a box, moved inwards where it would leave the sheet [px]."""
    reach = box.width / 2 + RIM + 1
    return min(max(box.x, reach), max(sheet.width - reach, reach))


def _nearest_column(places: Sequence[Place]) -> float:
    """How far apart, in columns, the two nearest boxes of about one row stand; 1 where none share a row."""
    across = [abs(a[0] - b[0]) for a, b in combinations(places, 2) if abs(a[1] - b[1]) < _SAME_ROW]
    return min(across, default=1.0)


def _fixed_boxes(spec: FluxDiagram) -> list[Box]:
    outside = {box.id for box in spec.boxes if box.outside and box.at is None}
    joined = {arrow.start for arrow in spec.arrows if {arrow.start, arrow.end} <= outside}
    return [box for box in spec.boxes if box.id not in outside or box.id in joined]


def _places(spec: FluxDiagram, fixed: Sequence[Box]) -> dict[str, Place]:
    given = {box.id: box.at for box in fixed if box.at is not None}
    columns = [column for column, _ in given.values()]
    touching = any(
        abs(a[0] - b[0]) < CLOSEST_PLACES[0] and abs(a[1] - b[1]) < CLOSEST_PLACES[1]
        for a, b in combinations(given.values(), 2)
    )
    pairs = [(arrow.start, arrow.end) for arrow in spec.arrows]
    if not given or touching or max(columns) - min(columns) > _MOST_COLUMNS - 1:
        return ring([box.id for box in fixed], pairs)
    for box in fixed:
        if box.id not in given:
            given[box.id] = _free_place(box.id, given, pairs)
    return given


def _free_place(identifier: str, taken: dict[str, Place], pairs: Sequence[tuple[str, str]]) -> Place:
    """The free crossing of columns and rows that is nearest to the boxes that this one exchanges with."""
    partners = [place for pair in pairs if identifier in pair for end in pair if (place := taken.get(end))]
    last_column = max(2, math.ceil(max(column for column, _ in taken.values())))
    last_row = math.ceil(max(row for _, row in taken.values())) + 1
    cells = [(float(column), float(row)) for row in range(last_row + 1) for column in range(last_column + 1)]
    free = [c for c in cells if all(abs(c[0] - t[0]) >= 0.9 or abs(c[1] - t[1]) >= 0.9 for t in taken.values())]
    return min(free, key=lambda cell: (sum(math.dist(cell, partner) for partner in partners), cell[1], cell[0]))


def ring(ids: Sequence[str], pairs: Sequence[tuple[str, str]]) -> dict[str, Place]:
    """Places of boxes on a ring that is three columns wide, in an order with few crossings; two stand side by side."""
    if len(ids) <= 2:
        return {identifier: (float(number), 0.0) for number, identifier in enumerate(ids)}
    ordered = _ring_order(ids, pairs)
    turn = 2 * math.pi / len(ids)
    height = 1.0 if len(ids) <= 5 else 0.22 * len(ids)
    return {
        identifier: (1 + math.sin(turn * number), height - height * math.cos(turn * number))
        for number, identifier in enumerate(ordered)
    }


def _ring_order(ids: Sequence[str], pairs: Sequence[tuple[str, str]]) -> list[str]:
    known = [pair for pair in dict.fromkeys(pairs) if set(pair) <= set(ids)]
    if len(ids) <= _TRIED_IN_FULL:
        orders = ([ids[0], *rest] for rest in permutations(ids[1:]))
        return min(orders, key=lambda order: _ring_cost(order, known))
    order = list(ids)
    improved = True
    while improved:
        improved = False
        for i, j in combinations(range(len(order)), 2):
            swapped = list(order)
            swapped[i], swapped[j] = order[j], order[i]
            if _ring_cost(swapped, known) < _ring_cost(order, known):
                order, improved = swapped, True
    return order


def _ring_cost(order: Sequence[str], pairs: Sequence[tuple[str, str]]) -> int:
    """Three for each crossing of two chords, and the length of each chord in steps along the ring."""
    place = {identifier: number for number, identifier in enumerate(order)}
    chords = [tuple(sorted((place[start], place[end]))) for start, end in pairs]
    lengths = sum(min(b - a, len(order) - b + a) for a, b in chords)
    crossings = sum(a < c < b < d or c < a < d < b for (a, b), (c, d) in combinations(chords, 2))
    return 3 * crossings + lengths
