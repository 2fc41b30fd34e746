"""Spec of a reservoir-and-flux diagram: boxes for stocks, arrows as wide as the flux is large, hollow where it is not known."""

from __future__ import annotations

from dataclasses import dataclass
from typing import ClassVar, Literal

from figures.chart import Chart


@dataclass(frozen=True, kw_only=True)
class Box:
    """A reservoir, or an end of fluxes outside the budget."""

    id: str
    label: str
    stock_label: str
    """The stock as shown with its unit; empty for an end outside the budget."""
    outside: bool
    at: tuple[float, float] | None
    """Column and row in the drawing, counted from the top left; None lets the drawing choose."""
    lies: Literal["above", "below", ""] = ""
    """Where it belongs, seen from what it exchanges with: air lies above it, a stream below; counts where the drawing chooses."""


@dataclass(frozen=True, kw_only=True)
class FluxArrow:
    """One flux."""

    id: str
    start: str
    end: str
    """Ids of boxes."""
    rate: float | None
    """In the diagram's unit, zero or more; sets the width. None where nobody knows it."""
    label: str
    """What stands beside the arrow: the process and the rate as shown, without the unit."""
    rate_label: str
    """The rate alone, for where the whole label finds no room and stands in a list."""
    by_people: bool
    """Whether people drive it, alone or together with nature."""


@dataclass(frozen=True, kw_only=True)
class FluxDiagram(Chart):
    """A whole cycle."""

    boxes: tuple[Box, ...]
    arrows: tuple[FluxArrow, ...]
    unit_label: str
    """The unit of all arrows as shown, e.g. "kg N ha⁻¹ yr⁻¹"."""
    HAS_NARROW: ClassVar[bool] = True


_MOST_RESERVOIRS, _MOST_ARROWS, _MOST_AT_ONE_BOX, _MOST_BETWEEN_TWO, _MOST_COLUMNS = 8, 18, 8, 3, 4
CLOSEST_PLACES = (0.7, 0.5)
"""Two boxes nearer than this, in columns and at once in rows, would touch."""


def crowded(spec: FluxDiagram) -> str | None:
    """Why a diagram of this spec will be hard to read, in plain words; None where it will not.

    The limits are our own, found by drawing on a canvas 700 px wide.
    """
    reservoirs = [box for box in spec.boxes if not box.outside]
    names = {box.id: box.label for box in spec.boxes}
    if len(reservoirs) > _MOST_RESERVOIRS:
        return f"{len(reservoirs)} reservoirs stand in one drawing; more than {_MOST_RESERVOIRS} are hard to follow"
    if len(spec.arrows) > _MOST_ARROWS:
        return f"{len(spec.arrows)} arrows stand in one drawing; more than {_MOST_ARROWS} are hard to tell apart"
    for box in reservoirs:
        count = sum(box.id in (arrow.start, arrow.end) for arrow in spec.arrows)
        if count > _MOST_AT_ONE_BOX:
            return f"{count} arrows meet at {box.label}; more than {_MOST_AT_ONE_BOX} do not find room around one box"
    pairs = [tuple(sorted((arrow.start, arrow.end))) for arrow in spec.arrows]
    for first, second in dict.fromkeys(pairs):
        if (count := pairs.count((first, second))) > _MOST_BETWEEN_TWO and not _any_outside(spec, first, second):
            return f"{count} arrows join {names[first]} and {names[second]}; more than {_MOST_BETWEEN_TWO} lie too close"
    return _ill_placed(spec)


def _any_outside(spec: FluxDiagram, *ids: str) -> bool:
    return any(box.outside for box in spec.boxes if box.id in ids)


def _ill_placed(spec: FluxDiagram) -> str | None:
    placed = [(box.label, box.at) for box in spec.boxes if box.at is not None]
    for number, (label, (column, row)) in enumerate(placed):
        for other, (other_column, other_row) in placed[:number]:
            if abs(column - other_column) < CLOSEST_PLACES[0] and abs(row - other_row) < CLOSEST_PLACES[1]:
                return f"the places of {other} and {label} are so near that the boxes would touch"
    columns = [column for _, (column, _) in placed]
    if columns and max(columns) - min(columns) + 1 > _MOST_COLUMNS:
        return f"the places span {max(columns) - min(columns) + 1:g} columns; more than {_MOST_COLUMNS} leave no room for labels"
    return None
