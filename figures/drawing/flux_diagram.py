"""Draws reservoirs as boxes and fluxes as arrows whose widths are to scale, with a key of the scale."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from figures.drawing.canvas import Canvas, rounded_box
from figures.drawing.flux_arrows import draw_arrow, draw_key, key_of, shaft_widths
from figures.drawing.flux_candidates import NoRoom
from figures.drawing.flux_layout import Demand, LabelForm, PlacedArrow, arrange, faults
from figures.drawing.flux_places import STOCK_TEXT, TEXT, WIDTH, PlacedBox, measured, place_boxes
from figures.drawing.flux_routes import Rectangle
from figures.drawing.text import ASCENT, LEADING, SMALLEST, block_size, break_in_two, wrap
from figures.flux_diagram import FluxArrow, FluxDiagram

_LABEL = SMALLEST
_ROW_HEIGHTS = (145.0, 170.0, 200.0, 240.0, 300.0)
_EDGE, _LIST_LINE = 14.0, 19.0


@dataclass(frozen=True)
class Layout:
    """Boxes and arrows with their places on the canvas."""

    boxes: tuple[PlacedBox, ...]
    arrows: tuple[PlacedArrow, ...]
    numbered: bool
    """Whether arrows carry numbers, and their labels stand in a list below."""


def draw_flux_diagram(chart: FluxDiagram) -> str:
    """The SVG of a whole cycle."""
    layout = arranged(chart)
    key = key_of(chart, WIDTH - 2 * _EDGE)
    listed = _listed(chart.arrows) if layout.numbered else []
    top, bottom = _extent(layout)
    below = bottom - top + 2 * _EDGE
    canvas = Canvas(WIDTH, math.ceil(below + key.height + _LIST_LINE * len(listed) + _EDGE / 2))
    canvas.move(0, _EDGE - top)
    for arrow in sorted(layout.arrows, key=lambda placed: (-placed.demand.width, placed.demand.arrow.id)):
        draw_arrow(canvas, arrow.course.route, arrow.demand.width, arrow.demand.arrow)
    for box in layout.boxes:
        _box(canvas, box)
    ends = {end.key: end for arrow in layout.arrows if (end := arrow.course.outside) is not None}
    for end in ends.values():
        _box(canvas, end)
    for arrow in layout.arrows:
        _label(canvas, arrow, layout.numbered)
    canvas.move(_EDGE, below)
    draw_key(canvas, key)
    canvas.move(_EDGE, below + key.height)
    for row, (number, line) in enumerate(listed, start=1):
        canvas.text(22, _LIST_LINE * row - 4, line, size=_LABEL)
        if number:
            canvas.text(14, _LIST_LINE * row - 4, number, size=_LABEL, bold=True, anchor="end")
    return canvas.svg()


def arranged(chart: FluxDiagram) -> Layout:
    """The first layout, from low to high, in which nothing stands on or too close to anything, else the best.

    Where labels find no room at any height, arrows carry numbers; where arrows find none, boxes leave their places.

    Raises
    ------
    ValueError
        If a flux starts where it ends or names an unknown box, or if nothing finds room at all.
    """
    widths = shaft_widths(chart.arrows)
    spelled = [Demand(arrow, widths[arrow.id], _forms(arrow.label)) for arrow in chart.arrows]
    numbers = [LabelForm((f"{number}",), (22, 20)) for number in range(1, len(chart.arrows) + 1)]
    numbered = [Demand(arrow, widths[arrow.id], (form,)) for arrow, form in zip(chart.arrows, numbers, strict=True)]
    unplaced = replace(chart, boxes=tuple(replace(box, at=None) for box in chart.boxes))
    found: list[tuple[tuple[int, int, float], Layout]] = []
    for spec in dict.fromkeys((chart, unplaced)):
        for demands, is_numbered in ((spelled, False), (numbered, True)):
            found += _by_height(spec, demands, is_numbered)
            best = min(found, key=lambda pair: pair[0], default=None)
            if best is not None and best[0][0] == 0:
                return best[1]
    if best is None:
        raise ValueError(f"{chart.name}: no room for its arrows")
    return best[1]


def _by_height(spec: FluxDiagram, demands: Sequence[Demand], numbered: bool) -> list[tuple[tuple[int, int, float], Layout]]:
    """Layouts with their faults, up to the first without any."""
    found = []
    for row_height in _ROW_HEIGHTS:
        boxes = place_boxes(spec, row_height)
        standing = {box.box.id for box in boxes}
        ends = [measured(box, 0, 0, 116) for box in spec.boxes if box.id not in standing]
        try:
            arrows = arrange(demands, boxes, ends)
        except NoRoom:
            continue
        layout = Layout(boxes, tuple(arrows), numbered)
        found.append((faults(arrows, boxes), layout))
        if found[-1][0][:2] == (0, 0):
            break
    return found


def _listed(arrows: Sequence[FluxArrow]) -> list[tuple[str, str]]:
    """Lines of the list of numbered labels; only the first line of a label has its number."""
    rows = []
    for number, arrow in enumerate(arrows, start=1):
        lines = wrap(arrow.label, _LABEL, WIDTH - 2 * _EDGE - 22)
        rows += [(f"{number}" if line is lines[0] else "", line) for line in lines]
    return rows


def _forms(label: str) -> tuple[LabelForm, ...]:
    forms = dict.fromkeys(((label,), break_in_two(label, _LABEL)))
    return tuple(LabelForm(lines, block_size(lines, _LABEL)) for lines in forms)


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


def _label(canvas: Canvas, placed: PlacedArrow, numbered: bool) -> None:
    if placed.label is None:
        return
    left, top, right, _ = placed.label
    for number, line in enumerate(placed.form.lines):
        y = top + _LABEL * (ASCENT + LEADING * number)
        canvas.text((left + right) / 2, y, line, size=_LABEL, anchor="middle", halo=True, bold=numbered)
