"""The geometry of a Walter-Lieth diagram: heights on its two scales, and where the dry season begins and ends."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import TypeVar

T = TypeVar("T")
Vertex = tuple[float, float, float]
"""Month, counted from the left edge of the frame with mid-months at 0.5, 1.5, ...; temperature; height of precipitation."""
SCALE_CHANGE_MM = 100.0
"""From here up 20 mm, not 2 mm, stand as high as 1 degC."""
_MM_PER_DEGC, _MM_PER_DEGC_ABOVE = 2.0, 20.0


def precipitation_height(precip_mm: float) -> float:
    """How high a precipitation [mm] stands, as the temperature [degC] that is as high.

    Walter & Lieth 1960-67, Klimadiagramm-Weltatlas: 10 degC as high as 20 mm, and a tenth of that scale above 100 mm.
    """
    if precip_mm <= SCALE_CHANGE_MM:
        return precip_mm / _MM_PER_DEGC
    return SCALE_CHANGE_MM / _MM_PER_DEGC + (precip_mm - SCALE_CHANGE_MM) / _MM_PER_DEGC_ABOVE


def frame_order(months: Sequence[T], southern: bool) -> list[T]:
    """What belongs to twelve months, January first, from left to right in the frame: July first where `southern`."""
    return [*months[6:], *months[:6]] if southern else list(months)


def year_round(monthly: Sequence[float], southern: bool) -> list[tuple[float, float]]:
    """The twelve monthly values as a line over the whole frame, in frame order.

    Shape (14, 2): month position and value. December and January meet half way, at both edges of the frame.
    """
    ordered = frame_order(monthly, southern)
    edge = (ordered[0] + ordered[-1]) / 2
    return [(0.0, edge), *((month + 0.5, value) for month, value in enumerate(ordered)), (12.0, edge)]


def vertices(temp_degc: Sequence[float], precip_mm: Sequence[float], southern: bool) -> list[Vertex]:
    """Both curves at every point where one of them bends or they cross; straight lines join them on the drawing.

    Monthly values are joined by straight lines in their own unit, so the curve of precipitation bends where it passes
    100 mm.
    """
    temp, precip = year_round(temp_degc, southern), year_round(precip_mm, southern)
    points: list[Vertex] = []
    for ((start, t0), (end, t1)), ((_, p0), (_, p1)) in zip(pairwise(temp), pairwise(precip), strict=True):
        shares = [0.0]
        if (p0 - SCALE_CHANGE_MM) * (p1 - SCALE_CHANGE_MM) < 0:
            shares.append((SCALE_CHANGE_MM - p0) / (p1 - p0))
        points += [
            (start + s * (end - start), t0 + s * (t1 - t0), precipitation_height(p0 + s * (p1 - p0))) for s in shares
        ]
    points.append((12.0, temp[-1][1], precipitation_height(precip[-1][1])))
    return _with_crossings(points)


def _with_crossings(points: list[Vertex]) -> list[Vertex]:
    crossed = [points[0]]
    for (m0, t0, p0), (m1, t1, p1) in pairwise(points):
        if (p0 - t0) * (p1 - t1) < 0:
            share = (t0 - p0) / ((t0 - p0) - (t1 - p1))
            height = t0 + share * (t1 - t0)
            crossed.append((m0 + share * (m1 - m0), height, height))
        crossed.append((m1, t1, p1))
    return crossed


def seasons(points: Sequence[Vertex]) -> list[tuple[float, float, bool]]:
    """Stretches of the frame as (start, end, dry); dry is where precipitation stands below temperature."""
    stretches: list[tuple[float, float, bool]] = []
    for (start, t0, p0), (end, t1, p1) in pairwise(points):
        dry = p0 + p1 < t0 + t1
        if stretches and stretches[-1][2] == dry:
            stretches[-1] = (stretches[-1][0], end, dry)
        else:
            stretches.append((start, end, dry))
    return stretches


def at(points: Sequence[Vertex], month: float) -> tuple[float, float]:
    """Temperature and height of precipitation at a place in the frame, 0 to 12."""
    for (start, t0, p0), (end, t1, p1) in pairwise(points):
        if month <= end:
            share = (month - start) / (end - start) if end > start else 0.0
            return t0 + share * (t1 - t0), p0 + share * (p1 - p0)
    return points[-1][1:]
