"""How the arrows of a flux diagram look, and the key that says what their widths and patterns mean."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from figures.drawing.canvas import Canvas, polygon, polyline, segments
from figures.drawing.flux_routes import Route, outline, shaft_and_head, stripes
from figures.drawing.text import text_width, wrap
from figures.flux_diagram import FluxArrow, FluxDiagram

WIDEST, THINNEST = 26.0, 1.5
"""Shaft of the largest flux, and of every flux that would be thinner [px]."""
_OUTLINED = 5.0
"""Arrows thinner than this [px] are drawn as lines."""
_LINE, _DASH, _SAMPLE = 1.2, (6.0, 3.0), 34.0
"""Line around an arrow, dashes of thin arrows by people, length of a sample in the key [px]."""
_TEXT, _TEXT_LINE, _ROW = 13.5, 17.0, 30.0


def shaft_widths(arrows: Sequence[FluxArrow]) -> dict[str, float]:
    """The width of each arrow [px], in proportion to its flux but never under THINNEST."""
    largest = _largest(arrows)
    return {arrow.id: max(THINNEST, _to_scale(arrow.rate, largest)) for arrow in arrows}


def _largest(arrows: Sequence[FluxArrow]) -> float:
    return max((arrow.rate for arrow in arrows), default=0.0)


def _to_scale(rate: float, largest: float) -> float:
    return WIDEST * (rate / largest) if largest > 0 else 0.0


def draw_arrow(canvas: Canvas, path: Route, width: float, arrow: FluxArrow) -> None:
    """By nature: tinted with a line around, or one line; by people: striped across, or dashed."""
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


@dataclass(frozen=True)
class KeyEntry:
    """A sample of a shaft and what it means; no lines of text where the next sample means the same."""

    x: float
    y: float
    width: float
    by_people: bool
    lines: tuple[str, ...]


@dataclass(frozen=True)
class Key:
    """All samples with their places [px]."""

    title: str
    entries: tuple[KeyEntry, ...]
    height: float


def key_of(chart: FluxDiagram, room: float) -> Key:
    """The key of a diagram, `room` [px] wide: three widths, who moves what, and which arrows are drawn too wide."""
    largest = _largest(chart.arrows)
    title = "Width of arrows:" if largest > 0 else ""
    entries: list[KeyEntry] = []
    top = 0.0
    for row in _key_rows(chart, largest):
        x = text_width(title, _TEXT) + 12 if title and not entries else 0.0
        lines: tuple[str, ...] = ()
        for width, by_people, text in row:
            lines = wrap(text, _TEXT, room - x - _SAMPLE - 7) if text else ()
            entries.append(KeyEntry(x, top + 14, width, by_people, lines))
            x += _SAMPLE + 7 + (max(text_width(line, _TEXT) for line in lines) + 22 if lines else 0)
        top += _ROW + _TEXT_LINE * max(0, len(lines) - 1)
    return Key(title, tuple(entries), top)


def _key_rows(chart: FluxDiagram, largest: float) -> list[list[tuple[float, bool, str]]]:
    """Rows of samples as (width [px], by people, text)."""
    rows: list[list[tuple[float, bool, str]]] = []
    if largest > 0:
        *smaller, last = [value for value in _round_values(largest) if _to_scale(value, largest) >= THINNEST]
        rows.append([(_to_scale(value, largest), False, _number(value)) for value in smaller])
        rows[0].append((_to_scale(last, largest), False, f"{_number(last)} {chart.unit_label}"))
    if any(arrow.by_people for arrow in chart.arrows):
        rows.append([(12, False, ""), (2.5, False, "by nature"), (12, True, ""), (2.5, True, "people take part")])
    if any(_to_scale(arrow.rate, largest) < THINNEST for arrow in chart.arrows):
        limit = f"below {_number(largest * THINNEST / WIDEST)}" if largest > 0 else "of 0"
        rows.append([(THINNEST, False, f"all fluxes {limit} {chart.unit_label} are drawn this thin: less could not be seen")])
    return rows


def _round_values(largest: float) -> list[float]:
    """Three round fluxes for the key: about the largest, half and a tenth of it."""
    power = 10.0 ** math.floor(math.log10(largest))
    top = next((multiple * power for multiple in (1, 2, 5) if multiple * power >= 0.6 * largest), 10 * power)
    return [top / 10, top / 2, top]


def _number(value: float) -> str:
    """Two significant figures, digits in groups from 10 000 up."""
    shown = np.format_float_positional(value, precision=2, unique=False, fractional=False, trim="-")
    return f"{int(shown):,}".replace(",", "\u202f") if "." not in shown and value >= 10_000 else shown


def draw_key(canvas: Canvas, key: Key) -> None:
    """The key from the canvas's current place downwards."""
    if key.title:
        canvas.text(0, 18.5, key.title, size=_TEXT, role="muted")
    for entry in key.entries:
        _sample(canvas, entry)
        for number, line in enumerate(entry.lines):
            canvas.text(entry.x + _SAMPLE + 7, entry.y + 4.5 + _TEXT_LINE * number, line, size=_TEXT)


def _sample(canvas: Canvas, entry: KeyEntry) -> None:
    """A piece of shaft, `_SAMPLE` [px] long."""
    x, y, role = entry.x, entry.y, "heat" if entry.by_people else "plant"
    if entry.width < _OUTLINED:
        canvas.stroke(polyline([(x, y), (x + _SAMPLE, y)]), role, entry.width, dash=_DASH if entry.by_people else ())
        return
    half = (entry.width - _LINE) / 2
    shape = polygon([(x, y - half), (x + _SAMPLE, y - half), (x + _SAMPLE, y + half), (x, y + half)])
    if entry.by_people:
        canvas.stroke(segments(((x + 5.5 * n + 2, y + half), (x + 5.5 * n - 2, y - half)) for n in (1, 2, 3, 4, 5)), role, 2.2)
    else:
        canvas.fill(shape, role, opacity=0.3)
    canvas.stroke(shape, role, _LINE)
