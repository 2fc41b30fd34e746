"""Investigations side by side: the whole column or the only depth of bottles, every plot of a harvest."""

from __future__ import annotations

from generator.kinds.productivity.compare import compare
from generator.quantities.fact import Fact
from tests.kinds.productivity.small_series import DEEP, GRAZED, GREW, TOP, bottles, harvest, of
from tests.kinds.small_records import demo


WITH_QUOTIENTS = "light and dark bottles; photosynthetic quotient 1.2, respiratory quotient 1.0"
"""Without both, oxygen and carbon of one line do not seem to fit: 1.66 g of oxygen beside 0.32 g of carbon."""


def ids(cells: tuple[Fact | str, ...]) -> list[str]:
    return [cell.id if isinstance(cell, Fact) else cell for cell in cells]


def test_bottles_at_several_depths_are_one_line_for_the_column() -> None:
    (row,) = compare([of(bottles(TOP, DEEP))]).rows
    names = ("gross_production", "respiration", "net_production", "net_carbon")
    assert ("A title", [WITH_QUOTIENTS, *(f"water_column.{name}" for name in names)]) == (row.label, ids(row.cells))


def test_bottles_at_one_depth_give_their_day() -> None:
    (row,) = compare([of(bottles())]).rows
    assert "A title: At 0 m" == row.label
    assert ["d0.daily_gross_production", "d0.daily_respiration", "d0.daily_net_production", "d0.net_carbon"] == ids(row.cells)[1:]


def test_every_plot_of_a_harvest_is_a_line() -> None:
    rows = compare([of(harvest(("", GREW), ("", GRAZED)))]).rows
    assert ["A title: P0", "A title: P1"] == [row.label for row in rows]
    assert ["harvest", "p1.gross_production", "p1.respiration", "p1.net_production", "p1.net_carbon"] == ids(rows[1].cells)


def test_carbon_is_counted_alike_in_the_demo() -> None:
    """The one column in which both methods can be compared."""
    rows = compare([demo("productivity/halden_water_bottles"), demo("productivity/harrow_plain_harvest")]).rows
    units = {cell.unit.label for row in rows if isinstance(cell := row.cells[-1], Fact) and cell.unit}
    assert ({"g C/m2/d"}, 3) == (units, len(rows))
