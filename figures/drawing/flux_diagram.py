"""Draws reservoirs as boxes and fluxes as arrows whose widths are to scale, with a key of the scale."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from string import ascii_lowercase

from figures.drawing.canvas import Canvas, rounded_box
from figures.drawing.flux_arrows import draw_arrow, draw_key, key_of, shaft_widths
from figures.drawing.flux_candidates import NoRoom
from figures.drawing.flux_layout import Demand, LabelForm, PlacedArrow, arrange, faults
from figures.drawing.flux_places import STOCK_TEXT, TEXT, PlacedBox, measured, place_boxes, sheet_of
from figures.drawing.flux_routes import Rectangle
from figures.drawing.text import ASCENT, LEADING, SMALLEST, block_size, break_in_two, text_width, wrap
from figures.flux_diagram import FluxArrow, FluxDiagram

_LABEL = SMALLEST
_ROW_HEIGHTS = (145.0, 170.0, 200.0, 240.0, 300.0)
_FEW = 4
"""Arrows on a narrow sheet that are few enough to try whole labels beside them."""
_EDGE, _LIST_LINE, _LETTER_GAP, _SIGN = 14.0, 19.0, 5.0, 20.0


class NoLayout(ValueError):
    """No places for the arrows of a diagram, at any height."""


@dataclass(frozen=True)
class Layout:
    """Boxes and arrows with their places on the canvas."""

    boxes: tuple[PlacedBox, ...]
    arrows: tuple[PlacedArrow, ...]
    lettered: bool
    """Whether arrows carry letters with their rates, and their labels stand in a list below."""


def draw_flux_diagram(chart: FluxDiagram) -> str:
    """The SVG of a whole cycle; where its arrows find no room on a narrow sheet, which names of great length can bring about, on a wide one."""
    try:
        layout, width = arranged(chart), sheet_of(chart).width
    except NoLayout:
        if not chart.narrow:
            raise
        return draw_flux_diagram(replace(chart, narrow=False))
    key = key_of(chart, width - 2 * _EDGE)
    listed, deep = _listed(chart.arrows, width) if layout.lettered else ([], 0)
    top, bottom = _extent(layout)
    below = bottom - top + 2 * _EDGE
    canvas = Canvas(width, math.ceil(below + key.height + _LIST_LINE * deep + _EDGE / 2))
    canvas.move(0, _EDGE - top)
    for arrow in sorted(layout.arrows, key=lambda placed: (-placed.demand.width, placed.demand.arrow.id)):
        draw_arrow(canvas, arrow.course.route, arrow.demand.width, arrow.demand.arrow)
    for box in layout.boxes:
        _box(canvas, box)
    ends = {end.key: end for arrow in layout.arrows if (end := arrow.course.outside) is not None}
    for end in ends.values():
        _box(canvas, end)
    for arrow in layout.arrows:
        (_short_label if layout.lettered else _label)(canvas, arrow)
    canvas.move(_EDGE, below)
    draw_key(canvas, key)
    canvas.move(_EDGE, below + key.height)
    for number, (sign, line) in enumerate(listed):
        x, y = width / 2 * (number // deep), _LIST_LINE * (1 + number % deep) - 4
        canvas.text(x + _SIGN, y, line, size=_LABEL)
        if sign:
            canvas.text(x + _SIGN - 8, y, sign, size=_LABEL, bold=True, anchor="end")
    return canvas.svg()


def arranged(chart: FluxDiagram) -> Layout:
    """The first layout, from low to high, in which nothing stands on or too close to anything, else the best.

    Where labels find no room at any height, arrows carry letters, on a narrow sheet already where some stand close; where
    arrows find no room, boxes leave their places.

    Raises
    ------
    ValueError
        If a flux starts where it ends or names an unknown box.
    NoLayout
        If nothing finds room at all.
    """
    widths = shaft_widths(chart.arrows)
    spelled = [Demand(arrow, widths[arrow.id], _forms(arrow.label)) for arrow in chart.arrows]
    lettered = [Demand(arrow, widths[arrow.id], _short_forms(number, arrow)) for number, arrow in enumerate(chart.arrows)]
    ways = ((lettered, True),) if chart.narrow and len(chart.arrows) > _FEW else ((spelled, False), (lettered, True))
    unplaced = replace(chart, boxes=tuple(replace(box, at=None) for box in chart.boxes))
    found: list[tuple[tuple[int, int, float], Layout]] = []
    for spec in dict.fromkeys((chart, unplaced)):
        for demands, are_lettered in ways:
            found += _by_height(spec, demands, are_lettered)
            best = min(found, key=lambda pair: pair[0], default=None)
            if best is not None and best[0][0] == 0 and (are_lettered or not chart.narrow or best[0][1] == 0):
                return best[1]
    if best is None:
        raise NoLayout(f"{chart.name}: no room for its arrows")
    return best[1]


def _by_height(spec: FluxDiagram, demands: Sequence[Demand], lettered: bool) -> list[tuple[tuple[int, int, float], Layout]]:
    """Layouts with their faults, up to the first without any."""
    found = []
    across = sheet_of(spec).width
    for row_height in _ROW_HEIGHTS:
        boxes = place_boxes(spec, row_height)
        standing = {box.box.id for box in boxes}
        ends = [measured(box, 0, 0, 116) for box in spec.boxes if box.id not in standing]
        try:
            arrows = arrange(demands, boxes, ends, across)
        except NoRoom:
            continue
        layout = Layout(boxes, tuple(arrows), lettered)
        found.append((faults(arrows, boxes, across), layout))
        if found[-1][0][:2] == (0, 0):
            break
    return found


def _listed(arrows: Sequence[FluxArrow], width: float) -> tuple[list[tuple[str, str]], int]:
    """Lines of the list of lettered labels, only the first line of a label with its letter, and how many stand below each other.

    Where all labels are short enough the list has two columns.
    """
    room = width - 2 * _EDGE - _SIGN
    half = (width - 2 * _EDGE) / 2 - _SIGN - 6
    if all(text_width(arrow.label, _LABEL) <= half for arrow in arrows):
        return [(_letter(number), arrow.label) for number, arrow in enumerate(arrows)], math.ceil(len(arrows) / 2)
    rows = []
    for number, arrow in enumerate(arrows):
        lines = wrap(arrow.label, _LABEL, room)
        rows += [(_letter(number) if line is lines[0] else "", line) for line in lines]
    return rows, len(rows)


def _forms(label: str) -> tuple[LabelForm, ...]:
    forms = dict.fromkeys(((label,), break_in_two(label, _LABEL)))
    return tuple(LabelForm(lines, block_size(lines, _LABEL)) for lines in forms)


def _letter(number: int) -> str:
    """The sign of an arrow, counted from 0: a, b, ..., and after z aa, bb."""
    return ascii_lowercase[number % 26] * (1 + number // 26)


def _short_forms(number: int, arrow: FluxArrow) -> tuple[LabelForm, ...]:
    """The letter of an arrow with its rate, on one line or below each other."""
    letter = _letter(number)
    width, height = block_size((letter,), _LABEL, bold=True)
    rate_width, both = text_width(arrow.rate_label, _LABEL), block_size((letter, arrow.rate_label), _LABEL)[1]
    beside = LabelForm((f"{letter} {arrow.rate_label}",), (width + _LETTER_GAP + rate_width, height))
    return beside, LabelForm((letter, arrow.rate_label), (max(width, rate_width), both))


def _extent(layout: Layout) -> tuple[float, float]:
    rectangles: list[Rectangle] = [box.rectangle for box in layout.boxes]
    rectangles += [arrow.label for arrow in layout.arrows if arrow.label is not None]
    rectangles += [arrow.course.outside.rectangle for arrow in layout.arrows if arrow.course.outside is not None]
    heights = [y for arrow in layout.arrows for y in arrow.course.points[:, 1]]
    tops, bottoms = [r[1] for r in rectangles] + heights, [r[3] for r in rectangles] + heights
    return float(min(tops, default=0)), float(max(bottoms, default=0))


def _box(canvas: Canvas, box: PlacedBox) -> None:
    left, top, right, bottom = box.rectangle
    frame = rounded_box(left, top, right - left, bottom - top, 11 if box.box.outside else 6)
    canvas.fill(frame, "ground")
    if box.box.outside:
        canvas.stroke(frame, "muted", 1, dash=(3, 3))
    else:
        canvas.stroke(frame, "ink", 1.6)
    gap = 2 if box.stock_lines else 0
    y = box.y - (TEXT * LEADING * len(box.lines) + STOCK_TEXT * LEADING * len(box.stock_lines) + gap) / 2
    for line in box.lines:
        role = "muted" if box.box.outside else "ink"
        canvas.text(
            box.x, y + TEXT, line, size=TEXT, anchor="middle", bold=not box.box.outside, italic=box.box.outside, role=role,
        )  # fmt: skip
        y += TEXT * LEADING
    for line in box.stock_lines:
        canvas.text(box.x, y + gap + STOCK_TEXT, line, size=STOCK_TEXT, anchor="middle")
        y += STOCK_TEXT * LEADING


def _label(canvas: Canvas, placed: PlacedArrow) -> None:
    if placed.label is None:
        return
    left, top, right, _ = placed.label
    for number, line in enumerate(placed.form.lines):
        y = top + _LABEL * (ASCENT + LEADING * number)
        canvas.text((left + right) / 2, y, line, size=_LABEL, anchor="middle", halo=True)


def _short_label(canvas: Canvas, placed: PlacedArrow) -> None:
    """The letter in bold, the rate beside or below it."""
    if placed.label is None:
        return
    left, top, right, _ = placed.label
    letter, *rate = [word for line in placed.form.lines for word in line.split(" ", 1 if len(placed.form.lines) == 1 else 0)]
    middle, y = (left + right) / 2, top + _LABEL * ASCENT
    if len(placed.form.lines) == 1:
        canvas.text(left, y, letter, size=_LABEL, bold=True, halo=True)
        canvas.text(right, y, rate[0], size=_LABEL, anchor="end", halo=True)
        return
    canvas.text(middle, y, letter, size=_LABEL, anchor="middle", bold=True, halo=True)
    canvas.text(middle, y + _LABEL * LEADING, " ".join(rate), size=_LABEL, anchor="middle", halo=True)
