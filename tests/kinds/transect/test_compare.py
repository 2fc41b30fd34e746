"""Transects side by side."""

from __future__ import annotations

from tests.kinds.small_records import demo, kind
from tests.kinds.transect.test_facts import RIDGE, transect


def shown(row: object) -> list[str]:
    return [cell if isinstance(cell, str) else cell.shown for cell in row.cells]  # the row is a ComparisonRow


def test_lines_of_the_demo() -> None:
    """Source: the records; (9.76 - 5.38) K km⁻¹ x 1.88 km of cloud; a line that nothing crosses has no warming."""
    compared = kind("transect").compare([demo("transect/coastal_range"), demo("transect/climb_to_high_saddle")])
    assert ["7", "520 km", "2280 m", "5.52 K km⁻¹", "3420 mm", "245 mm", "8.24 K"] == shown(compared.rows[0])
    assert ["6", "340 km", "4120 m", "5.41 K km⁻¹", "3870 mm", "1105 mm", "–"] == shown(compared.rows[1])


def test_line_without_cloud_gains_nothing() -> None:
    compared = kind("transect").compare([transect(*RIDGE, air="temperature: 20, cloud_base: 4000")])
    assert "0 K" == shown(compared.rows[0])[-1]
