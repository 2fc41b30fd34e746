"""Stations of a transect below each other, for a sheet too narrow for columns: letter, name, values and a bar of precipitation."""

from __future__ import annotations

from collections.abc import Sequence

from figures.drawing.canvas import Canvas, rectangle, segments
from figures.drawing.text import LEADING, SMALLEST, text_width, wrap
from figures.transect_profile import ProfileStation

_TEXT = SMALLEST
_LINE = _TEXT * LEADING
_HEAD, _APART, _BAR = 52.0, 10.0, 13.0
"""Height of the heads, space between rows, and the height of a bar [px]."""
_LETTER, _NAME, _MARGIN = 12.0, 34.0, 8.0
"""Where letters and names begin, and the margin at the right [px]."""


def letter(number: int) -> str:
    """The letter of a station, A for the first.

    >>> letter(2)
    'C'
    """
    return chr(ord("A") + number)


def rows_height(stations: Sequence[ProfileStation]) -> float:
    """Height of the heads and of all rows [px]."""
    return _HEAD + sum(_row_height(station) for station in stations) + 4


def _row_height(station: ProfileStation) -> float:
    return _LINE * (len(_name_lines(station)) + 1) + _APART


def _name_lines(station: ProfileStation) -> tuple[str, ...]:
    return wrap(station.label, _TEXT, 250, bold=True)


def draw_rows(canvas: Canvas, stations: Sequence[ProfileStation], top: float, width: float) -> None:
    """Two lines for each station: its name and its mean; its distance and height, and a bar as long as its precipitation."""
    right = width - _MARGIN
    canvas.text(_NAME, top + 16, "Station", size=_TEXT, role="muted")
    canvas.text(right, top + 16, "Mean of year", size=_TEXT, role="muted", anchor="end")
    canvas.text(_NAME, top + 16 + _LINE, "Distance, height", size=_TEXT, role="muted")
    canvas.text(right, top + 16 + _LINE, "Rain and snow, year", size=_TEXT, role="muted", anchor="end")
    where = [f"{station.distance_label}, {station.height_label}" for station in stations]
    begin = max(_NAME + 12 + text_width(words, _TEXT) for words in where)
    room = right - begin - max(text_width(_precipitation(station), _TEXT) for station in stations) - 8
    most = max((station.precip_mm or 0.0 for station in stations), default=0.0) or 1.0
    y = top + _HEAD
    canvas.stroke(segments([((begin, y), (begin, y + sum(map(_row_height, stations)) - _APART))]), "ink", 1)
    for number, (station, words) in enumerate(zip(stations, where, strict=True)):
        names = _name_lines(station)
        canvas.text(_LETTER, y + 12, letter(number), size=_TEXT, bold=True)
        for row, line in enumerate(names):
            canvas.text(_NAME, y + 12 + _LINE * row, line, size=_TEXT, bold=True, halo=True)
        canvas.text(right, y + 12, station.temp_label, size=_TEXT, bold=True, anchor="end")
        below = y + _LINE * len(names)
        canvas.text(_NAME, below + 12, words, size=_TEXT)
        long = room * (station.precip_mm or 0.0) / most
        if long > 0:
            canvas.fill(rectangle(begin, below + 1, long, _BAR), "water", part="precipitation")
        canvas.text(begin + long + 8, below + 12, _precipitation(station), size=_TEXT)
        y += _row_height(station)


def _precipitation(station: ProfileStation) -> str:
    return station.precip_label or "not known"
