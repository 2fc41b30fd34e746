"""Draws a transect: the land in profile, the air that crosses it, and a column for each station with what is measured there."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from figures.drawing.canvas import Canvas, Point, polygon, polyline, segments
from figures.drawing.columns import columns_under
from figures.drawing.sheet import Sheet
from figures.drawing.station_rows import draw_rows, letter, rows_height
from figures.drawing.text import LEADING, SMALLEST, block_size, text_width, wrap_evenly
from figures.transect_profile import AirPath, ProfileStation, TransectProfile

_TEXT = SMALLEST
_LINE = _TEXT * LEADING
_PANEL = 210.0
"""Height of the profile [px]."""
_BARS = 70.0
"""Height of the longest bar of precipitation [px]."""
_ABOVE = 18.0
"""How far above the ground the air is drawn [px]."""
_VEIL = 22.0
"""Thickness of the cloud over the way of the air [px]."""
_STEP = 20.0
"""Diameter of the numbered steps [px]; two of them are never nearer."""
_SAMPLE = 24.0
"""Length of a line in the legend [px]."""
_BESIDE = 8.0
"""Room between two columns, and between a name and the line that leads past it [px]."""
_LINES: dict[str, tuple[str, float, tuple[float, ...]]] = {"dry": ("heat", 2.4, (7, 4)), "moist": ("water", 4.0, ()), "base": ("water", 2.2, (2, 4))}
"""Colour role, width and dashes of the lines of the air."""


class _Frame:
    """Turns distances [km] and heights [m] into places on the canvas [px]."""

    def __init__(self, chart: TransectProfile, sheet: Sheet, top: float) -> None:
        self.left, self.right = sheet.left, sheet.right
        self.top, self.bottom = top, top + _PANEL
        self.step = height_step(chart.highest_m - chart.lowest_m)
        self.low = math.floor(chart.lowest_m / self.step) * self.step
        self.high = math.ceil(chart.highest_m / self.step) * self.step
        room = _ABOVE + _VEIL if chart.air else 0.0
        while (self.high - chart.highest_m) / (self.high - self.low) * _PANEL < room:
            self.high += self.step
        first, last = chart.stations[0].distance_km, chart.stations[-1].distance_km
        self.first, self.span = first, last - first
        self.inset = 18.0 if sheet.narrow else 36.0

    def x(self, distance: float) -> float:
        return self.left + self.inset + (distance - self.first) / self.span * (self.right - self.left - 2 * self.inset)

    def y(self, height: float) -> float:
        return self.bottom - (height - self.low) / (self.high - self.low) * _PANEL

    def place(self, station: ProfileStation) -> Point:
        return self.x(station.distance_km), self.y(station.height_m)


def height_step(span: float) -> float:
    """The distance of the height marks [m]: 1, 2 or 5 times a power of ten, three to seven of them over a span.

    >>> height_step(2280.0)
    500.0
    """
    power = 10.0 ** math.floor(math.log10(max(span, 1.0) / 3))
    return max(step * power for step in (1, 2, 5) if step * power <= max(span, 1.0) / 3)


def draw_transect_profile(chart: TransectProfile) -> str:
    """The SVG of the line, from its first station on the left to its last; on a narrow sheet stations stand below each other."""
    sheet = Sheet.of(chart, wide=(112, 16), narrow=(56, 8))
    begin = 12.0 if sheet.narrow else sheet.left
    keys = list(_placed(_keys(chart.air), begin, sheet.right)) if chart.air else []
    frame = _Frame(chart, sheet, 34 + (34 + (keys[-1][1] + 1) * (_LINE + 3) if keys else 0))
    names = [_column_name(chart, sheet, number) for number in range(len(chart.stations))]
    columns = _column_places(chart, sheet, [frame.x(station.distance_km) for station in chart.stations], names)
    rows = [max((len(lines) for lines in names[start::2]), default=0) for start in (0, 1)]
    tops = _tops(frame.bottom, rows)
    canvas = Canvas(sheet.width, tops["second"] + rows_height(chart.stations) if sheet.narrow else tops["end"])
    _heights(canvas, frame)
    _land(canvas, frame, chart.stations)
    _leaders(canvas, frame, chart.stations, columns, tops, staggered=not sheet.narrow)
    if chart.air:
        _crossing(canvas, frame, chart, chart.air)
        _draw_keys(canvas, keys)
    _names(canvas, columns, names, tops, staggered=not sheet.narrow)
    if sheet.narrow:
        draw_rows(canvas, chart.stations, tops["second"], sheet.width)
    else:
        _columns(canvas, frame, chart.stations, columns, tops)
    return canvas.svg()


def _column_name(chart: TransectProfile, sheet: Sheet, number: int) -> tuple[str, ...]:
    """What stands under the profile for a station: its name, or on a narrow sheet the letter of its row below."""
    if sheet.narrow:
        return (letter(number),)
    return wrap_evenly(chart.stations[number].label, _TEXT, 1.8 * sheet.room / len(chart.stations) - 10)


def _column_places(chart: TransectProfile, sheet: Sheet, points: Sequence[float], names: Sequence[tuple[str, ...]]) -> list[float]:
    """Where columns stand across: under their stations, or as near as their names and values allow; evenly where there is no room."""
    halves = [block_size(lines, _TEXT, bold=sheet.narrow)[0] / 2 for lines in names]
    values = [0.0] * len(halves) if sheet.narrow else [_values_width(station) / 2 for station in chart.stations]
    gaps = [max(name + _BESIDE, other_name + _BESIDE, one + other + _BESIDE) for (name, one), (other_name, other) in pairwise(zip(halves, values, strict=True))]
    low = sheet.left + values[0]
    found = columns_under(points, gaps, low, sheet.width - 4 - max(halves[-1], values[-1]))
    return found or [sheet.left + (number + 0.5) * sheet.room / len(points) for number in range(len(points))]


def _values_width(station: ProfileStation) -> float:
    """Of the widest value in a column [px]."""
    plain = (station.distance_label, station.height_label, station.precip_label or "not known")
    return max(text_width(station.temp_label, _TEXT, bold=True), *(text_width(text, _TEXT) for text in plain))


def _tops(bottom: float, rows: Sequence[int]) -> dict[str, float]:
    """Where the rows below the profile begin [px]."""
    names = bottom + 34
    second = names + rows[0] * _LINE + 4
    values = second + rows[1] * _LINE + 16
    bars = values + 3 * (_LINE + 5) + 8
    return {"names": names, "second": second, "values": values, "bars": bars, "end": bars + _LINE + _BARS + 22}


def _heights(canvas: Canvas, frame: _Frame) -> None:
    """The height axis with level lines across the profile."""
    marks = [frame.low + number * frame.step for number in range(round((frame.high - frame.low) / frame.step) + 1)]
    canvas.stroke(segments(((frame.left, frame.y(mark)), (frame.right, frame.y(mark))) for mark in marks), "grid", 0.5)
    for mark in marks:
        text = f"{mark:.0f}" if abs(mark) < 10000 else f"{mark / 1000:.0f}\u202f000"
        canvas.text(frame.left - 9, frame.y(mark) + 5, text.replace("-", "−"), size=_TEXT, anchor="end")
    canvas.text(12, frame.top - 14, "Height, m", size=_TEXT)


def _land(canvas: Canvas, frame: _Frame, stations: Sequence[ProfileStation]) -> None:
    """The ground from station to station, level beyond the ends."""
    line = [frame.place(station) for station in stations]
    edge = [(frame.left, line[0][1]), *line, (frame.right, line[-1][1])]
    canvas.fill(polygon([(frame.left, frame.bottom), *edge, (frame.right, frame.bottom)]), "soil", opacity=0.35)
    canvas.stroke(polyline(edge), "soil", 2.6, part="ground")
    canvas.stroke(segments([((frame.left, frame.bottom), (frame.right, frame.bottom))]), "ink", 1)


def _leaders(
    canvas: Canvas, frame: _Frame, stations: Sequence[ProfileStation], columns: Sequence[float], tops: dict[str, float], staggered: bool
) -> None:
    """A line from each station on the ground down to its name."""
    for number, (station, column) in enumerate(zip(stations, columns, strict=True)):
        x, y = frame.place(station)
        canvas.stroke(segments([((x, y), (x, frame.bottom))]), "muted", 1, dash=(3, 3))
        head = _name_top(number, tops, staggered) - 4
        way = [(x, frame.bottom), (column, frame.bottom + 22), (column, max(head, frame.bottom + 22))]
        canvas.stroke(polyline(way), "muted", 1)
        canvas.dots([((x, y), (x, y))], "ink", 8)


def _name_top(number: int, tops: dict[str, float], staggered: bool) -> float:
    """Names stand by turns in two rows, letters in one."""
    return tops["second" if staggered and number % 2 else "names"]


def _names(canvas: Canvas, columns: Sequence[float], names: Sequence[tuple[str, ...]], tops: dict[str, float], staggered: bool) -> None:
    for number, (x, lines) in enumerate(zip(columns, names, strict=True)):
        for row, line in enumerate(lines):
            canvas.text(x, _name_top(number, tops, staggered) + 11 + row * _LINE, line, size=_TEXT, anchor="middle", halo=True, bold=not staggered)


def _columns(canvas: Canvas, frame: _Frame, stations: Sequence[ProfileStation], columns: Sequence[float], tops: dict[str, float]) -> None:
    """Distance, height, temperature and a bar of precipitation for each station."""
    for word, number in (("Distance", 0), ("Height", 1), ("Mean of year", 2)):
        canvas.text(12, tops["values"] + number * (_LINE + 5) + 12, word, size=_TEXT, role="muted")
    foot = tops["bars"] + _LINE + _BARS
    for row, word in enumerate(("Rain and", "snow, year")):
        canvas.text(12, foot - 22 + row * _LINE, word, size=_TEXT, role="muted")
    canvas.stroke(segments([((frame.left, foot), (frame.right, foot))]), "ink", 1)
    most = max((station.precip_mm or 0.0 for station in stations), default=0.0) or 1.0
    for station, x in zip(stations, columns, strict=True):
        for row, text in enumerate((station.distance_label, station.height_label, station.temp_label)):
            canvas.text(x, tops["values"] + row * (_LINE + 5) + 12, text, size=_TEXT, anchor="middle", bold=row == 2)
        tall = _BARS * (station.precip_mm or 0.0) / most
        if tall > 0:
            canvas.fill(polygon([(x - 14, foot), (x - 14, foot - tall), (x + 14, foot - tall), (x + 14, foot)]), "water", part="precipitation")
        canvas.text(x, foot - tall - 6, station.precip_label or "not known", size=_TEXT, anchor="middle")


def _keys(air: AirPath) -> list[tuple[str, str]]:
    """What the marks of the air mean: the mark, and its words with the numbers."""
    steps = [(f"{number}", label) for number, label in enumerate(air.step_labels, start=1)]
    lines = [("dry", f"no cloud: {air.dry_label}")]
    if air.cloud_base_m is not None:
        lines += [("moist", f"in cloud: {air.moist_label}"), ("base", f"cloud base {air.cloud_label}")]
    return [*steps, *lines]


def _placed(keys: Sequence[tuple[str, str]], left: float, right: float) -> Iterator[tuple[float, int, str, str]]:
    """Place, row, mark and words of each key; the steps stand in a row of their own."""
    x, row, lines_begun = left, 0, False
    for mark, words in keys:
        width = (_STEP if mark.isdigit() else _SAMPLE) + 6 + text_width(words, _TEXT)
        begins = not mark.isdigit() and not lines_begun
        if x > left and (begins or x + width > right):
            x, row = left, row + 1
        lines_begun = lines_begun or begins
        yield x, row, mark, words
        x += width + 14


def _draw_keys(canvas: Canvas, keys: Sequence[tuple[float, int, str, str]]) -> None:
    for x, row, mark, words in keys:
        y = 46 + row * (_LINE + 3)
        if mark.isdigit():
            _number(canvas, (x + _STEP / 2, y - 5), mark)
            canvas.text(x + _STEP + 6, y, words, size=_TEXT)
        else:
            role, width, dash = _LINES[mark]
            canvas.stroke(segments([((x, y - 5), (x + _SAMPLE, y - 5))]), role, width, dash=dash)
            canvas.text(x + _SAMPLE + 6, y, words, size=_TEXT)


def _number(canvas: Canvas, place: Point, text: str) -> None:
    canvas.dots([(place, place)], "ink", _STEP)
    canvas.text(place[0], place[1] + 5, text, size=_TEXT, anchor="middle", bold=True, role="ground")


def _crossing(canvas: Canvas, frame: _Frame, chart: TransectProfile, air: AirPath) -> None:
    """The way of the air over the ground, its cloud and its steps."""
    rightwards = air.start < air.end
    sides = ("windward side", "lee side") if rightwards else ("lee side", "windward side")
    begin = 12.0 if chart.narrow else frame.left
    canvas.text(begin, 20, sides[0], size=_TEXT, bold=True)
    canvas.text(frame.right, 20, sides[1], size=_TEXT, bold=True, anchor="end")
    between = [begin + text_width(sides[0], _TEXT, bold=True), frame.right - text_width(sides[1], _TEXT, bold=True)]
    middle = sum(between) / 2 + 16
    canvas.text(middle - 32, 20, "wind", size=_TEXT, anchor="end")
    _arrow(canvas, middle, 15, 46 if rightwards else -46)
    up, down = _way(frame, chart, air)
    turn = len(up) if air.cloud_base_m is None else next(n for n, point in enumerate(up) if point[1] <= frame.y(air.cloud_base_m) - _ABOVE + 0.01)
    dry, moist = (up, []) if air.cloud_base_m is None else (up[: turn + 1], up[turn:])
    _cloud(canvas, frame, air, moist)
    for part, points, line in (("dry ascent", dry, "dry"), ("moist ascent", moist, "moist"), ("dry descent", down, "dry")):
        if len(points) > 1:
            role, width, dash = _LINES[line]
            canvas.stroke(polyline(points), role, width, part=part, dash=dash)
    _tip(canvas, *down[-2:])
    stops = [up[0], *([moist[0]] if moist else []), up[-1], down[-1]]
    for number, place in enumerate(_apart(stops), start=1):
        _number(canvas, place, f"{number}")


def _way(frame: _Frame, chart: TransectProfile, air: AirPath) -> tuple[list[Point], list[Point]]:
    """Points of the air from start to crest, with one where it reaches the cloud base, and from crest to end."""
    step = 1 if air.start < air.end else -1
    up = [frame.place(station) for station in chart.stations[slice_between(air.start, air.crest)]][::step]
    down = [frame.place(station) for station in chart.stations[slice_between(air.crest, air.end)]][::step]
    if air.cloud_base_m is not None:
        up = list(_with_crossing(up, frame.y(air.cloud_base_m)))
    return [(x, y - _ABOVE) for x, y in up], [(x, y - _ABOVE) for x, y in down]


def slice_between(one: int, other: int) -> slice:
    """Both ends and what lies between them, in rising order.

    >>> [0, 1, 2, 3, 4][slice_between(3, 1)]
    [1, 2, 3]
    """
    return slice(min(one, other), max(one, other) + 1)


def _with_crossing(points: Sequence[Point], level: float) -> Iterator[Point]:
    """The points, with one put in where the line first climbs through a level [px]; a start above it stays as it is."""
    done = points[0][1] <= level
    for here, there in pairwise(points):
        yield here
        if not done and there[1] <= level < here[1]:
            share = (here[1] - level) / (here[1] - there[1])
            if share < 1:
                yield here[0] + share * (there[0] - here[0]), level
            done = True
    yield points[-1]


def _cloud(canvas: Canvas, frame: _Frame, air: AirPath, moist: Sequence[Point]) -> None:
    """A veil over the way in cloud, and its base as a dotted line from the windward edge to the crest."""
    if air.cloud_base_m is None or len(moist) < 2:
        return
    y = frame.y(air.cloud_base_m)
    above = [(x, y - _VEIL) for x, y in moist]
    canvas.fill(polygon([*moist, *reversed(above)]), "water", opacity=0.25)
    role, width, dash = _LINES["base"]
    edge = frame.left if air.start < air.end else frame.right
    canvas.stroke(segments([((edge, y), (moist[-1][0], y))]), role, width, dash=dash, part="cloud base")


def _arrow(canvas: Canvas, x: float, y: float, length: float) -> None:
    """A wind arrow about `x`, to the right for a length above zero."""
    half, head = length / 2, math.copysign(9, length)
    canvas.stroke(segments([((x - half, y), (x + half - head / 2, y))]), "ink", 2)
    canvas.fill(polygon([(x + half, y), (x + half - head, y - 5), (x + half - head, y + 5)]), "ink")


def _tip(canvas: Canvas, before: Point, last: Point) -> None:
    """The head of the air's way, short of its last step."""
    length = math.hypot(last[0] - before[0], last[1] - before[1]) or 1.0
    ahead = ((last[0] - before[0]) / length, (last[1] - before[1]) / length)
    across = (-ahead[1], ahead[0])
    tip = (last[0] - ahead[0] * (_STEP / 2 + 1), last[1] - ahead[1] * (_STEP / 2 + 1))
    back = (tip[0] - ahead[0] * 11, tip[1] - ahead[1] * 11)
    sides = [(back[0] + sign * 5 * across[0], back[1] + sign * 5 * across[1]) for sign in (1, -1)]
    canvas.fill(polygon([tip, *sides]), "heat")


def _apart(places: Sequence[Point]) -> list[Point]:
    """The places, each moved up until it is clear of those before it."""
    found: list[Point] = []
    for x, y in places:
        while any(math.hypot(x - other[0], y - other[1]) < _STEP + 1 for other in found):
            y -= 3
        found.append((x, y))
    return found
