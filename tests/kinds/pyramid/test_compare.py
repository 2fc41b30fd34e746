"""Pyramids side by side."""

from __future__ import annotations

from tests.kinds.small_records import demo, kind


def test_each_pyramid_has_a_line() -> None:
    """Source: arithmetic on the record."""
    (row,) = kind("pyramid").compare([demo("pyramid/sill_lake")]).rows
    assert ["4", "5800 kJ m⁻² yr⁻¹", "4 kJ m⁻² yr⁻¹", "0.0690 %"] == [cell if isinstance(cell, str) else cell.shown for cell in row.cells]
