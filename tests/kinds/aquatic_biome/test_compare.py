"""Aquatic biomes side by side."""

from __future__ import annotations

from tests.kinds.aquatic_biome.test_facts import water
from tests.kinds.small_records import kind


def test_rows_run_from_the_freshest_on() -> None:
    comparison = kind("aquatic_biome").compare([water("salinity: 35"), water("salinity: 0.2", "salinity: 7")])
    at = comparison.heads.index("Salinity")
    assert ["0.2 g kg⁻¹", "7 g kg⁻¹", "35 g kg⁻¹"] == [row.cells[at].shown for row in comparison.rows]


def test_what_is_not_stated_is_a_dash() -> None:
    comparison = kind("aquatic_biome").compare([water("")])
    (row,) = comparison.rows
    assert ["–", "–", "–"] == [row.cells[comparison.heads.index(h)] for h in ("Photic depth", "Oxygen, part of saturation", "Flushing time")]


def test_only_stations_of_the_page_are_compared() -> None:
    comparison = kind("aquatic_biome").compare([water("use: paper", "name: There", "use: practice")])
    assert ["A title: There"] == [row.label for row in comparison.rows]
