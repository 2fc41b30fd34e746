"""Draws a map of climates: regions as light areas with their names in them, stations as dots with names or numbers."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from figures.drawing.canvas import Canvas, Point, polygon, polyline, segments
from figures.drawing.label_places import Place, Rectangle, place_labels
from figures.drawing.region_names import RegionName, place_region_names
from figures.drawing.series_names import along
from figures.drawing.sheet import Sheet, draw_notes, notes_height
from figures.drawing.text import ASCENT, LEADING, SMALLEST, block_size, text_width
from figures.temperature_rainfall_map import MapStation, TemperatureRainfallMap

_TOP, _BOTTOM, _NARROW_BOTTOM = 36.0, 600.0, 540.0
_TEXT, _STATION, _REGION = 14.5, SMALLEST, SMALLEST
_DOT, _COINCIDE = 9.0, 5.0
"""Diameter of a dot; dots nearer than this cover each other and share a label [px]."""
_KEY_LINE, _KEY_GAP, _LIST_GAP = 20.0, 18.0, 7.0
_WHERE = "A station lies in the region in which its dot stands."
_FULL, _RING = "full dot", "ring"
_LED, _LONGEST_LEADER = 0.25, 34.0
"""The largest share of names that may stand apart from their dots, and how far [px]; beyond it, numbers are easier to follow."""


@dataclass(frozen=True)
class Axes:
    """The frame of the map in its own units."""

    sheet: Sheet
    temps: tuple[int, int, int]
    """Left, right and step [degC]."""
    precips: tuple[int, int, int]
    """Bottom, top and step [mm]."""

    @property
    def bottom(self) -> float:
        """Of the frame [px]."""
        return _NARROW_BOTTOM if self.sheet.narrow else _BOTTOM

    @property
    def inside(self) -> Rectangle:
        """Where names may stand [px]."""
        return self.sheet.left + 2, _TOP + 2, self.sheet.right - 2, self.bottom - 2

    def place(self, temp_degc: float, precip_mm: float) -> Point:
        """The place of a climate [px]."""
        low, high, _ = self.temps
        x = self.sheet.left + (temp_degc - low) / (high - low) * self.sheet.room
        return x, self.bottom - (precip_mm - self.precips[0]) / (self.precips[1] - self.precips[0]) * (self.bottom - _TOP)


@dataclass(frozen=True)
class Layout:
    """What stands where."""

    names: list[RegionName]
    labels: list[tuple[str, ...]]
    """Lines of each label; stations at one place share one."""
    places: list[Place]
    """Of the labels."""
    groups: list[list[int]]
    """Of stations, counted from 0, that share a label."""
    numbered: bool
    """Whether the labels are numbers, with a key below."""


def axes_of(chart: TemperatureRainfallMap) -> Axes:
    """Round bounds around all regions and stations; precipitation from zero."""
    climates = [corner for region in chart.regions for corner in region.outline]
    climates += [(station.annual_mean_temp_degc, station.annual_precip_mm) for station in chart.stations]
    temps, precips = [temp for temp, _ in climates] or [0.0], [precip for _, precip in climates] or [0.0]
    by = 10 if chart.narrow and max(temps) - min(temps) > 30 else 5
    low, high = by * math.floor(min(temps) / by), by * math.ceil(max(temps) / by)
    step = next(step for step in (100, 200, 500, 1000, 2000, 5000, 10_000) if max(precips) / step <= 10 or step == 10_000)
    return Axes(
        Sheet.of(chart, wide=(58, 12), narrow=(52, 12)), (low, max(high, low + 10), by),
        (0, step * max(math.ceil(max(precips) * 1.02 / step), 2), step),
    )  # fmt: skip


def draw_temperature_rainfall_map(chart: TemperatureRainfallMap) -> str:
    """The SVG of one map; where names of stations find no room, dots carry numbers and a key stands below."""
    axes = axes_of(chart)
    dots = [axes.place(station.annual_mean_temp_degc, station.annual_precip_mm) for station in chart.stations]
    outlines = [[axes.place(*corner) for corner in region.outline] for region in chart.regions]
    layout = arranged(chart, axes.inside, dots, outlines)
    key = [(f"{number}", station.label) for number, station in enumerate(chart.stations, start=1)] if layout.numbered else []
    letters = [(name.letter, region.label) for name, region in zip(layout.names, chart.regions, strict=True) if name.letter]
    notes = _notes(chart.stations) if chart.regions else []
    lists = [_columns(entries, axes.sheet) for entries in (letters, key, notes) if entries]
    told = axes.sheet.lines(_told(chart, layout), 12) if chart.regions else []
    canvas = Canvas(axes.sheet.width, math.ceil(axes.bottom + 54 + sum(_KEY_LINE * len(rows) + _LIST_GAP for rows in lists) + notes_height(told)))
    for outline in outlines:
        canvas.fill(polygon(outline), "plant", opacity=0.12)
    _axes(canvas, axes)
    for region, outline in zip(chart.regions, outlines, strict=True):
        canvas.stroke(polygon(outline), "muted", 1, part=f"region {region.id}")
    for name in layout.names:
        _region_name(canvas, name)
    for place in layout.places:
        if place.leader is not None:
            canvas.stroke(polyline(place.leader), "ink", 0.9)
    for station, dot in zip(chart.stations, dots, strict=True):
        _dot(canvas, dot, bool(station.region), part=f"station {station.id}")
    for lines, place in zip(layout.labels, layout.places, strict=True):
        _station_label(canvas, lines, place, layout.numbered)
    y = axes.bottom + 54.0
    for rows in lists:
        for row in rows:
            y += _KEY_LINE
            for x, sign, words in row:
                _entry(canvas, x, y - 4, sign, words)
        y += _LIST_GAP
    draw_notes(canvas, told, 12, y + 13)
    return canvas.svg()


def _told(chart: TemperatureRainfallMap, layout: Layout) -> list[str]:
    """Which region a name belongs to, and why a dot has two."""
    groups = [[chart.stations[number].label for number in group] for group in layout.groups if len(group) > 1]
    shared = [f"{', '.join(names[:-1])} and {names[-1]} share a dot: theirs would cover each other." for names in groups]
    return [*([_WHERE] if chart.stations else []), *shared]


def arranged(chart: TemperatureRainfallMap, inside: Rectangle, dots: Sequence[Point], outlines: Sequence[Sequence[Point]]) -> Layout:
    """Names beside the dots where all find room without driving out more than one region's name, else numbers."""
    regions = [region.label for region in chart.regions]
    marks = [(x - _DOT, y - _DOT, x + _DOT, y + _DOT) for x, y in dots]
    names = place_region_names(regions, outlines, _REGION, marks, inside)
    groups = coinciding(dots)
    middles = [(sum(dots[n][0] for n in group) / len(group), sum(dots[n][1] for n in group) / len(group)) for group in groups]
    labels = [tuple(chart.stations[number].label for number in group) for group in groups]
    if found := _spelled(regions, outlines, names, labels, middles, marks, inside):
        return replace(found, groups=groups)
    numbers = [(", ".join(f"{number + 1}" for number in group),) for group in groups]
    borders = _borders(outlines)
    places, faults = _station_places(numbers, middles, inside, [name.box for name in names], borders, bold=True)
    if faults:
        places, _ = _station_places(numbers, middles, inside, [], borders, bold=True)
        names = place_region_names(regions, outlines, _REGION, [*marks, *(place.box for place in places)], inside)
    return Layout(names, numbers, places, groups, numbered=True)


def _spelled(
    regions: Sequence[str], outlines: Sequence[Sequence[Point]], names: Sequence[RegionName], labels: list[tuple[str, ...]],
    dots: Sequence[Point], marks: Sequence[Rectangle], inside: Rectangle,
) -> Layout | None:  # fmt: skip
    """Names beside all dots, with as many names of regions as can be: those keep their places, or give way."""
    best: tuple[int, Layout] | None = None
    for taken in ([name.box for name in names], []):
        places, faults = _station_places(labels, dots, inside, taken, [], bold=False)  # names are too long to stand off all borders
        if faults or not _are_close(places):
            continue
        around = [*marks, *(place.box for place in places)]
        beside = list(names) if taken else place_region_names(regions, outlines, _REGION, around, inside)
        if any(_meet(name.box, box) for name in beside for box in around):
            continue
        lost = _lettered(beside) - _lettered(names)
        if lost <= 1 and (best is None or lost < best[0]):
            best = lost, Layout(beside, labels, places, [], numbered=False)
        if lost <= 0:
            break
    return best[1] if best else None


def _meet(one: Rectangle, other: Rectangle) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def _are_close(places: Sequence[Place]) -> bool:
    """Whether few enough names stand apart from their dots, and none far."""
    led = [math.dist(*place.leader) for place in places if place.leader is not None]
    return len(led) <= _LED * len(places) and max(led, default=0) <= _LONGEST_LEADER


def coinciding(dots: Sequence[Point]) -> list[list[int]]:
    """Numbers of dots, counted from 0, in groups of those that cover each other; most groups have one.

    >>> coinciding([(0, 0), (90, 0), (3, 1), (6, 2)])
    [[0, 2, 3], [1]]
    """
    groups: list[list[int]] = []
    for number, dot in enumerate(dots):
        near = [group for group in groups if any(math.dist(dot, dots[other]) < _COINCIDE for other in group)]
        groups = [group for group in groups if group not in near] + [[*(n for group in near for n in group), number]]
    return sorted(sorted(group) for group in groups)


def _station_places(
    labels: Sequence[tuple[str, ...]], dots: Sequence[Point], inside: Rectangle, taken: Sequence[Rectangle], borders: Sequence[Point],
    bold: bool,
) -> tuple[list[Place], int]:  # fmt: skip
    sizes = [(width + 2, height) for width, height in (block_size(lines, _STATION, bold) for lines in labels)]
    return place_labels(dots, sizes, _DOT / 2 + 1, inside, taken, borders)


def _borders(outlines: Sequence[Sequence[Point]]) -> list[Point]:
    """Points along the borders of all regions."""
    return [point for outline in outlines for point in along([*outline, outline[0]])]


def _lettered(names: Sequence[RegionName]) -> int:
    return sum(bool(name.letter) for name in names)


def _axes(canvas: Canvas, axes: Axes) -> None:
    (low, high, step), (_, most, precip_step) = axes.temps, axes.precips
    temps, precips = range(low, high + 1, step), range(0, most + 1, precip_step)
    lines = [(axes.place(low, p), axes.place(high, p)) for p in precips[1:-1]]
    canvas.stroke(segments([*lines, *((axes.place(t, 0), axes.place(t, most)) for t in temps[1:-1])]), "grid", 0.35)
    canvas.stroke(polygon([axes.place(low, 0), axes.place(low, most), axes.place(high, most), axes.place(high, 0)]), "ink", 1)
    left, bottom = axes.sheet.left, axes.bottom
    ticks = [((x, bottom), (x, bottom + 5)) for x, _ in (axes.place(t, 0) for t in temps)]
    ticks += [((left - 5, y), (left, y)) for _, y in (axes.place(low, p) for p in precips)]
    canvas.stroke(segments(ticks), "ink", 1)
    for temp in temps:
        canvas.text(axes.place(temp, 0)[0], bottom + 23, f"{temp}".replace("-", "−"), size=_TEXT, anchor="middle")
    for precip in precips:
        shown = f"{precip:,}".replace(",", "\u202f")
        canvas.text(left - 9, axes.place(low, precip)[1] + 5, shown, size=_TEXT, anchor="end")
    canvas.text(12, 22, "Annual precipitation, mm", size=_TEXT, bold=True)
    canvas.text(axes.sheet.right, bottom + 45, "Annual mean temperature, °C", size=_TEXT, bold=True, anchor="end")


def _region_name(canvas: Canvas, name: RegionName) -> None:
    if name.leader is not None:
        canvas.stroke(polyline(name.leader), "muted", 1)
        canvas.dots([(name.leader[1], name.leader[1])], "muted", 4)
    left, top, right, _ = name.box
    for number, line in enumerate(name.lines):
        y = top + _REGION * (ASCENT + LEADING * number)
        canvas.text((left + right) / 2, y, line, size=_REGION, anchor="middle", italic=not name.letter, bold=bool(name.letter))


def _station_label(canvas: Canvas, lines: Sequence[str], place: Place, bold: bool) -> None:
    for number, line in enumerate(lines):
        y = place.box[1] + _STATION * (ASCENT + LEADING * number)
        canvas.text(place.box[0] + 1, y, line, size=_STATION, bold=bold, halo=True)


def _dot(canvas: Canvas, dot: Point, full: bool, part: str = "") -> None:
    """A full dot for a place in a region, a ring for one outside all of them."""
    line = polyline([dot, (dot[0] + 0.01, dot[1])])
    canvas.stroke(line, "ground", _DOT + 3, round_ends=True)
    canvas.stroke(line, "ink", _DOT, round_ends=True, part=part)
    if not full:
        canvas.stroke(line, "ground", _DOT - 3.6, round_ends=True)


def _notes(stations: Sequence[MapStation]) -> list[tuple[str, str]]:
    """What full dots and rings mean, only where there are rings."""
    if all(station.region for station in stations):
        return []
    full = [(_FULL, "in a region")] if any(station.region for station in stations) else []
    return [*full, (_RING, "in no region")]


def _columns(entries: Sequence[tuple[str, str]], sheet: Sheet) -> list[list[tuple[float, str, str]]]:
    """Rows of (place across, sign, words), read down the columns; as many columns as the words allow, up to four."""
    widest = max(text_width(words, _STATION) for _, words in entries) + 24 + _KEY_GAP
    columns = max(1, min(4, int((sheet.right - 12) / widest)))
    deep = math.ceil(len(entries) / columns)
    places = [(12 + (sheet.right - 12) / columns * (number // deep), *entry) for number, entry in enumerate(entries)]
    return [places[row::deep] for row in range(deep)]


def _entry(canvas: Canvas, x: float, y: float, sign: str, words: str) -> None:
    if sign in (_FULL, _RING):
        _dot(canvas, (x + 13, y - 4.5), sign == _FULL)
    else:
        canvas.text(x + 18, y, sign, size=_STATION, bold=True, anchor="end")
    canvas.text(x + 24, y, words, size=_STATION)
