"""Draws reservoirs as boxes and fluxes as arrows whose widths are to scale, with a key of the scale."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from figures.drawing.canvas import Canvas, polygon, polyline, rounded_box, segments
from figures.drawing.flux_layout import Demand, LabelForm, PlacedArrow, arrange, faults
from figures.drawing.flux_places import STOCK_TEXT, TEXT, WIDTH, PlacedBox, measured, place_boxes
from figures.drawing.flux_routes import Rectangle, outline, shaft_and_head, stripes
from figures.drawing.text import ASCENT, LEADING, block_size, break_in_two, size_to_fit, text_width, wrap
from figures.flux_diagram import FluxArrow, FluxDiagram

WIDEST, THINNEST = 26.0, 1.5
"""Shaft of the largest flux, and of every flux that would be thinner [px]."""
_LABEL = 13.5
_ROW_HEIGHTS = (145.0, 170.0, 200.0, 240.0, 300.0)
_EDGE = 14.0
_OUTLINED = 5.0
"""Arrows thinner than this [px] are drawn as lines."""
_LINE, _DASH, _SAMPLE = 1.2, (6.0, 3.0), 34.0
"""Line around an arrow, dashes of thin arrows by people, length of a sample in the key [px]."""


@dataclass(frozen=True)
class Layout:
    """Boxes and arrows with their places on the canvas."""

    boxes: tuple[PlacedBox, ...]
    arrows: tuple[PlacedArrow, ...]
    numbered: bool
    """Whether arrows carry numbers, and their labels stand in a list below."""


def shaft_widths(arrows: Sequence[FluxArrow]) -> dict[str, float]:
    """The width of each arrow [px], in proportion to its flux but never under THINNEST."""
    largest = _largest(arrows)
    return {arrow.id: max(THINNEST, _to_scale(arrow.rate, largest)) for arrow in arrows}


def _largest(arrows: Sequence[FluxArrow]) -> float:
    return max((arrow.rate for arrow in arrows), default=0.0)


def _to_scale(rate: float, largest: float) -> float:
    return WIDEST * (rate / largest) if largest > 0 else 0.0


def draw_flux_diagram(chart: FluxDiagram) -> str:
    """The SVG of a whole cycle."""
    layout = arranged(chart)
    key = _key_rows(chart)
    top, bottom = _extent(layout)
    listed = _listed(chart.arrows) if layout.numbered else []
    canvas = Canvas(WIDTH, math.ceil(bottom - top + 2 * _EDGE + 30 * len(key) + 10 + 19 * len(listed)))
    canvas.move(0, _EDGE - top)
    for arrow in sorted(layout.arrows, key=lambda placed: (-placed.demand.width, placed.demand.arrow.id)):
        _arrow(canvas, arrow)
    for box in layout.boxes:
        _box(canvas, box)
    ends = {end.key: end for arrow in layout.arrows if (end := arrow.course.outside) is not None}
    for end in ends.values():
        _box(canvas, end)
    for arrow in layout.arrows:
        _label(canvas, arrow, layout.numbered)
    canvas.move(0, bottom - top + 2 * _EDGE)
    _key(canvas, key)
    for row, (number, line) in enumerate(listed, start=1):
        y = 30 * len(key) + 19 * row - 4
        canvas.text(_EDGE + 22, y, line, size=_LABEL)
        if number:
            canvas.text(_EDGE + 14, y, number, size=_LABEL, bold=True, anchor="end")
    return canvas.svg()


def arranged(chart: FluxDiagram) -> Layout:
    """The first layout, from low to high, in which nothing stands on or too close to anything, else the best.

    Where labels find no room at any height, arrows carry numbers.
    """
    widths = shaft_widths(chart.arrows)
    spelled = [Demand(arrow, widths[arrow.id], _forms(arrow.label)) for arrow in chart.arrows]
    numbered = [Demand(arrow, widths[arrow.id], (LabelForm((f"{n}",), (22, 20)),)) for n, arrow in enumerate(chart.arrows, 1)]
    best: tuple[tuple[int, int], Layout] | None = None
    for demands, is_numbered in ((spelled, False), (numbered, True)):
        for row_height in _ROW_HEIGHTS:
            boxes = place_boxes(chart, row_height)
            standing = {box.box.id for box in boxes}
            ends = [measured(box, 0, 0, 116) for box in chart.boxes if box.id not in standing]
            arrows = arrange(demands, boxes, ends) if demands else []
            found = faults(arrows, boxes)
            if best is None or found < best[0]:
                best = found, Layout(boxes, tuple(arrows), is_numbered)
            if found == (0, 0):
                break
        if best is not None and best[0][0] == 0:
            break
    if best is None:
        raise ValueError(f"nothing to draw in {chart.name}")
    return best[1]


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


def _arrow(canvas: Canvas, placed: PlacedArrow) -> None:
    """By nature: tinted with a line around, or one line; by people: striped across, or dashed."""
    arrow, width, path = placed.demand.arrow, placed.demand.width, placed.course.route
    role, part = ("heat" if arrow.by_people else "plant"), f"arrow {arrow.id}"
    shape = outline(path, width)
    canvas.stroke(shape, "ground", 5)
    if width < _OUTLINED:
        shaft, head = shaft_and_head(path, width)
        canvas.stroke(shaft, role, width, dash=_DASH if arrow.by_people else (), part=part)
        canvas.fill(head, role)
        return
    canvas.fill(shape, "ground", part=part)
    inner = outline(path, width - _LINE)
    if arrow.by_people:
        canvas.stroke(segments(stripes(path, width - _LINE, 5.5)), role, 2.2)
    else:
        canvas.fill(inner, role, opacity=0.3)
    canvas.stroke(inner, role, _LINE)


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
        canvas.text(box.x, y + TEXT, line, size=TEXT, anchor="middle", bold=not box.box.outside, italic=box.box.outside, role=role)
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


def _key_rows(chart: FluxDiagram) -> list[list[tuple[float, bool, str]]]:
    """Rows of samples as (width [px], by people, text)."""
    largest = _largest(chart.arrows)
    rows: list[list[tuple[float, bool, str]]] = []
    if largest > 0:
        widths = {value: _to_scale(value, largest) for value in _round_values(largest)}
        rows.append([(width, False, _number(value)) for value, width in widths.items() if width >= THINNEST])
        rows[0][-1] = (*rows[0][-1][:2], f"{rows[0][-1][2]} {chart.unit_label}")
    if any(arrow.by_people for arrow in chart.arrows):
        rows.append([(12, False, ""), (2.5, False, "by nature"), (12, True, ""), (2.5, True, "by people")])
    if any(_to_scale(arrow.rate, largest) < THINNEST for arrow in chart.arrows):
        limit = f"below {_number(largest * THINNEST / WIDEST)}" if largest > 0 else "of 0"
        rows.append([(THINNEST, False, f"all fluxes {limit} {chart.unit_label} are drawn this thin: less could not be seen")])
    return rows


def _number(value: float) -> str:
    """Two significant figures, digits in groups from 10 000 up."""
    shown = np.format_float_positional(value, precision=2, unique=False, fractional=False, trim="-")
    return f"{int(shown):,}".replace(",", "\u202f") if "." not in shown and value >= 10_000 else shown


def _round_values(largest: float) -> list[float]:
    """Three round fluxes for the key: about the largest, about half and about a tenth of it."""
    power = 10 ** math.floor(math.log10(largest))
    top = next(multiple * power for multiple in (1, 2, 5, 10) if multiple * power >= 0.6 * largest)
    return [top / 10, top / 2, top]


def _key(canvas: Canvas, rows: Sequence[Sequence[tuple[float, bool, str]]]) -> None:
    for number, row in enumerate(rows):
        x, y = _EDGE, 30 * number + 14.0
        if number == 0 and len(row) > 1:
            canvas.text(x, y + 4.5, "Width of arrows:", size=_LABEL, role="muted")
            x += text_width("Width of arrows:", _LABEL) + 12
        for width, by_people, text in row:
            _sample(canvas, x, y, width, by_people)
            x += _SAMPLE + 7
            if text:
                canvas.text(x, y + 4.5, text, size=size_to_fit(text, _LABEL, WIDTH - _EDGE - x))
                x += text_width(text, _LABEL) + 22


def _sample(canvas: Canvas, x: float, y: float, width: float, by_people: bool) -> None:
    """A piece of shaft, `_SAMPLE` [px] long, with its middle line starting at (x, y)."""
    role = "heat" if by_people else "plant"
    if width < _OUTLINED:
        canvas.stroke(polyline([(x, y), (x + _SAMPLE, y)]), role, width, dash=_DASH if by_people else ())
        return
    half = (width - _LINE) / 2
    shape = polygon([(x, y - half), (x + _SAMPLE, y - half), (x + _SAMPLE, y + half), (x, y + half)])
    if by_people:
        canvas.stroke(segments(((x + 5.5 * n + 2, y + half), (x + 5.5 * n - 2, y - half)) for n in (1, 2, 3, 4, 5)), role, 2.2)
    else:
        canvas.fill(shape, role, opacity=0.3)
    canvas.stroke(shape, role, _LINE)
