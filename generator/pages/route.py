"""The route: every station of the course on one line from south to north, each with a bar as high as its year's precipitation.

Wet equator, dry belts on both sides, wet middle latitudes: the line is the first chart of the course. It heads the pages of records and
the home page, with the stations of the page picked out, so that a reader sees where on Earth a page is. Nothing is drawn between
stations, for nothing is known of it.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from generator.kind import Subject
from generator.pages.markup import escaped, number, prose
from generator.pages.page import link, record_uri
from generator.pages.site import Site

STYLE = "assets/route.css"
MARK = "assets/mark.svg"
"""The sign of the site, in the header and on a browser's tab."""
BARS = 5
"""Stretches of the line that the sign shows, each by the wettest of its stations."""
TELLS = "The stations of the course from south to north, each with its year's precipitation as a bar."
LEAST = 4.0
"""Percent of the highest bar that even a desert's takes, or nobody would see that there is a station."""
SQUARE = 10, 1000
"""Degrees and millimetres that one square behind the bars takes."""
FEWEST = 5
"""Stations below which a line would say nothing."""
TICKS = (-60, -40, -20, 0, 20, 40, 60, 80)
_END = 6.0
"""Percent of the line's length from its ends."""
_MARGIN = 6.0
"""Degrees of latitude left free at each end."""


@dataclass(frozen=True)
class Stop:
    """A station on the route."""

    record: str
    name: str
    latitude: float
    """In degrees, south is negative."""
    rain: float
    """Precipitation in a year, in millimetres, as the facts of all stations have it."""
    where: str
    fallen: str
    """Both as shown."""


@dataclass(frozen=True)
class Route:
    """The stations from south to north."""

    stops: tuple[Stop, ...]

    @property
    def scale(self) -> tuple[float, float, float]:
        """Its southern and northern end in degrees, and the most precipitation: what the place of any station on it rests on."""
        return self.stops[0].latitude - _MARGIN, self.stops[-1].latitude + _MARGIN, max(stop.rain for stop in self.stops)

    def across(self, latitude: float) -> float:
        """Where a latitude stands, in percent of the line's length."""
        south, north, _ = self.scale
        return (latitude - south) / (north - south) * 100

    def up(self, stop: Stop) -> float:
        """How high a station's bar is, in percent of the highest one."""
        return stop.rain / self.scale[2] * 100


def route(site: Site) -> Route | None:
    """The route of the stations that pages show, or None where a course has too few of them."""
    stops = sorted(_stops(site), key=lambda stop: (stop.latitude, stop.record, stop.name))
    return Route(tuple(stops)) if len(stops) >= FEWEST and any(stop.rain > 0 for stop in stops) else None


def _stops(site: Site) -> Iterator[Stop]:
    for subject in site.subjects:
        for part, of in site.kinds[subject.kind].parts(subject.record).items():
            latitude, rain = (subject.facts.get(f"{part}.{name}") for name in ("latitude", "annual_precip"))
            if of.use == "page" and latitude and rain and latitude.value is not None and rain.value is not None:
                yield Stop(subject.id, of.label, float(latitude.value), float(rain.value), latitude.shown, rain.shown)


def strip(found: Route | None, subject: Subject[Any]) -> str:
    """The line above a record's page, with its own stations named; nothing for records that stand on no station."""
    here = [stop for stop in found.stops if stop.record == subject.id] if found else []
    if not found or not here:
        return ""
    told = "; ".join(f"{stop.name}, {stop.where}, {stop.fallen} in a year" for stop in here)
    label = f"{TELLS} On this page: {told}."
    named = "".join(f'<span class="named" style="--x: {found.across(stop.latitude):.1f}%">{prose(f"{stop.name}, {stop.fallen} in a year")}</span>' for stop in here)
    return f'<div class="route" data-search-exclude role="img" aria-label="{escaped(label)}">{_line(found, here)}{named}</div>'


def _line(found: Route, here: Iterable[Stop] = ()) -> str:
    """The bars of all stations come with the site's style, so that a page rests on its own stations only, and on the scale."""
    own = "".join(f'<i style="--x: {found.across(stop.latitude):.1f}%; --up: {found.up(stop):.1f}%"></i>' for stop in here)
    return f'<span class="bars">{own}</span>{_ticks(found)}'


def _ticks(found: Route) -> str:
    shown = [tick for tick in TICKS if 0 <= found.across(tick) <= 100]
    return "".join(f'<span class="tick{_classes(tick, found.across(tick))}" style="--x: {found.across(tick):.1f}%">{_named(tick)}</span>' for tick in shown)


def _classes(tick: int, across: float) -> str:
    """What a phone leaves out, and what stands so near an end of the line that its name would not fit below it."""
    return (" fine" if tick % 40 else "") + ("" if _END <= across <= 100 - _END else " end")


def _named(tick: int) -> str:
    return "Equator" if tick == 0 else f"{abs(tick)}° {'N' if tick > 0 else 'S'}"


def stations(found: Route | None, page: str) -> str:
    """The whole route for the home page: the line, and below it every station with its record, from south to north."""
    if not found:
        return ""
    rows = "\n".join(
        f'<li><a href="{escaped(link(page, record_uri(stop.record)))}">{prose(stop.name)}</a> <span class="where">{number(stop.where)}, {number(stop.fallen)} in a year</span></li>'
        for stop in found.stops
    )
    label = f"{TELLS} The list below names them."
    wettest = max(found.stops, key=lambda stop: stop.rain)
    caption = f"Each bar is a year's precipitation at a station. The highest: {wettest.name}, {wettest.fallen}."
    caption += f" A square is {SQUARE[0]}° wide and {SQUARE[1]} mm high."
    if any(found.up(stop) < LEAST for stop in found.stops):
        caption += " A bar that would be too short to see is drawn longer."
    return (
        f'<div class="route whole" data-search-exclude role="img" aria-label="{escaped(label)}">{_line(found)}</div>\n'
        f'<p class="route-caption">{prose(caption)}</p>\n'
        f'<details class="folded stations">\n<summary>The {len(found.stops)} stations, from south to north</summary>\n<ol>\n{rows}\n</ol>\n</details>'
    )


def route_style(found: Route | None) -> Mapping[str, bytes]:
    """The sign, and the style that hands the bars to every page, as a mask for the header's edge and for the line above; nothing without a route."""
    if not found:
        return {}
    bars = "".join(f"M{found.across(stop.latitude):.1f} 20V{20 - 0.2 * max(found.up(stop), LEAST):.1f}" for stop in found.stops)
    style = f':root {{\n  --route: {_mask(bars, 3)};\n  --squares: {_mask(_squares(found), 1)};\n}}\n'
    return {STYLE: style.encode(), MARK: _mark(found).encode()}


def _mask(path: str, stroke: int) -> str:
    """Lines in a field of 100 by 20 that is stretched over the whole line, as thick as said at any size."""
    picture = f"%3Csvg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 100 20' preserveAspectRatio='none'%3E%3Cpath d='{path}' stroke='%23000' stroke-width='{stroke}' vector-effect='non-scaling-stroke'/%3E%3C/svg%3E"
    return f'url("data:image/svg+xml,{picture}")'


def _squares(found: Route) -> str:
    """The lines of the paper behind the bars."""
    (south, north, most), (degrees, rain) = found.scale, SQUARE
    upright = "".join(f"M{found.across(degrees * n):.2f} 0V20" for n in range(math.ceil(south / degrees), math.floor(north / degrees) + 1))
    return upright + "".join(f"M0 {20 * (1 - rain * n / most):.2f}H100" for n in range(1, math.floor(most / rain) + 1))


def _mark(found: Route) -> str:
    """The route in a square of 24: so small that only the wettest station of each stretch is drawn, on the ground line."""
    south, north, most = found.scale
    wettest = [0.0] * BARS
    for stop in found.stops:
        stretch = int((stop.latitude - south) / (north - south) * BARS)
        wettest[stretch] = max(wettest[stretch], stop.rain)
    bars = "".join(f"M{3 + 4.5 * place:g} 20v{-17 * rain / most:.1f}" for place, rain in enumerate(wettest) if rain)
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 24 24" fill="none">'
        f'<path d="{bars}" stroke="#5577ff" stroke-width="3"/><path d="M1 21h22" stroke="#8a8a85" stroke-width="2"/></svg>\n'
    )
