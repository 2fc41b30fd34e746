"""How the arrows of a flux diagram look, and the key that says what their widths and patterns mean."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from figures.drawing.canvas import Canvas, polygon, polyline, segments
from figures.drawing.flux_routes import Route, outline, shaft_and_head, stripes
from figures.drawing.text import SMALLEST, text_width, wrap
from figures.flux_diagram import FluxArrow, FluxDiagram

WIDEST, THINNEST, UNKNOWN = 26.0, 1.5, 9.0
"""Shaft of the largest flux, of every flux that would be thinner, and of one that is not known [px]."""
_SHAPED = 5.0
"""Arrows thinner than this [px] are drawn as lines."""
_DASH, _LINE, _SAMPLE = (6.0, 3.0), 1.4, 34.0
"""Marks and gaps along arrows by people, line around a flux that is not known, length of a sample in the key [px]."""
_STEP = _SAMPLE + 7
_TOLD_APART = 1.5
"""How many times as wide as the thinnest sample one must be to look wider."""
_TEXT, _TEXT_LINE, _ROW = SMALLEST, 17.5, 30.0


def shaft_widths(arrows: Sequence[FluxArrow]) -> dict[str, float]:
    """The width of each arrow [px], in proportion to its flux but never under THINNEST; UNKNOWN where that is not known."""
    largest = _largest(arrows)
    return {a.id: UNKNOWN if a.rate is None else max(THINNEST, _to_scale(a.rate, largest)) for a in arrows}


def _largest(arrows: Sequence[FluxArrow]) -> float:
    return max((arrow.rate for arrow in arrows if arrow.rate is not None), default=0.0)


def _to_scale(rate: float, largest: float) -> float:
    return WIDEST * (rate / largest) if largest > 0 else 0.0


def draw_arrow(canvas: Canvas, path: Route, width: float, arrow: FluxArrow) -> None:
    """The same full ink at every width, so that the larger flux looks larger; by people: broken across; not known: hollow."""
    role, part = _role(arrow.by_people), f"arrow {arrow.id}"
    shape = outline(path, width)
    canvas.stroke(shape, "ground", 4)
    if arrow.rate is None:
        canvas.fill(shape, "ground", part=part)
        canvas.stroke(outline(path, width - _LINE), role, _LINE, dash=_DASH if arrow.by_people else ())
    elif width < _SHAPED:
        shaft, head = shaft_and_head(path, width)
        canvas.stroke(shaft, role, width, dash=_DASH if arrow.by_people else (), part=part)
        canvas.fill(head, role)
    else:
        canvas.fill(shape, role, part=part)
        if arrow.by_people:
            canvas.stroke(segments(stripes(path, width + 2, sum(_DASH))), "ground", _DASH[1])


def _role(by_people: bool) -> str:
    return "heat" if by_people else "plant"


@dataclass(frozen=True)
class Sample:
    """A piece of shaft for the key, with what it means; no text where the next sample means the same."""

    width: float
    by_people: bool
    text: str
    known: bool = True


@dataclass(frozen=True)
class KeyEntry:
    """A sample with its place [px] and its text on lines."""

    sample: Sample
    x: float
    y: float
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
        begin = x = text_width(title, _TEXT) + 12 if title and not entries else 0.0
        lines: tuple[str, ...] = ()
        for samples in _groups(row):
            words = samples[-1].text
            if x > begin and x + len(samples) * _STEP + text_width(words, _TEXT) > room:
                x, top = begin, top + _ROW
            lines = wrap(words, _TEXT, room - x - len(samples) * _STEP)
            entries += [KeyEntry(sample, x + number * _STEP, top + 14, lines if sample.text else ()) for number, sample in enumerate(samples)]
            x += len(samples) * _STEP + max(text_width(line, _TEXT) for line in lines) + 22
        top += _ROW + _TEXT_LINE * max(0, len(lines) - 1)
    return Key(title, tuple(entries), top)


def _groups(row: Sequence[Sample]) -> list[list[Sample]]:
    """The samples of a row with the one whose words they share."""
    groups: list[list[Sample]] = [[]]
    for sample in row:
        groups[-1].append(sample)
        if sample.text:
            groups.append([])
    return groups[:-1]


def _key_rows(chart: FluxDiagram, largest: float) -> list[list[Sample]]:
    rows: list[list[Sample]] = []
    too_thin = any(arrow.rate is not None and _to_scale(arrow.rate, largest) < THINNEST for arrow in chart.arrows)
    if largest > 0:
        least = THINNEST * (_TOLD_APART if too_thin else 1)
        *smaller, last = [value for value in _round_values(largest) if _to_scale(value, largest) >= least]
        rows.append([Sample(_to_scale(value, largest), False, _number(value)) for value in smaller])
        rows[0].append(Sample(_to_scale(last, largest), False, f"{_number(last)} {chart.unit_label}"))
    if any(arrow.by_people for arrow in chart.arrows):
        nature, people = (Sample(12, False, ""), Sample(2.5, False, "by nature")), (Sample(12, True, ""), Sample(2.5, True, "people take part"))
        rows.append([*nature, *people])
    if too_thin:
        limit = f"below {_number(largest * THINNEST / WIDEST)}" if largest > 0 else "of 0"
        rows.append([Sample(THINNEST, False, f"all fluxes {limit} {chart.unit_label} are drawn this thin: less could not be seen")])
    unknown = [arrow.by_people for arrow in chart.arrows if arrow.rate is None]
    if unknown:
        causes = [Sample(UNKNOWN, by_people, "", known=False) for by_people in sorted(set(unknown))]
        rows.append([*causes[:-1], replace(causes[-1], text="hollow: the rate is not known, so the width says nothing")])
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
        _draw_sample(canvas, entry.sample, entry.x, entry.y)
        for number, line in enumerate(entry.lines):
            canvas.text(entry.x + _SAMPLE + 7, entry.y + 4.5 + _TEXT_LINE * number, line, size=_TEXT)


def _draw_sample(canvas: Canvas, sample: Sample, x: float, y: float) -> None:
    """A piece of shaft, `_SAMPLE` [px] long, as the arrows have it."""
    role, dash = _role(sample.by_people), _DASH if sample.by_people else ()
    if sample.known:
        canvas.stroke(polyline([(x, y), (x + _SAMPLE, y)]), role, sample.width, dash=dash)
        return
    half = (sample.width - _LINE) / 2
    canvas.stroke(polygon([(x, y - half), (x + _SAMPLE, y - half), (x + _SAMPLE, y + half), (x, y + half)]), role, _LINE, dash=dash)
