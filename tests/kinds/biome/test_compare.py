"""Biomes side by side."""

from __future__ import annotations

from tests.kinds.biome.test_facts import biome
from tests.kinds.biome.test_findings import station
from tests.kinds.small_records import kind, subject


def test_rows_run_from_the_driest_on() -> None:
    wet, dry = biome(precip=[100] * 12), biome(precip=[5] * 12)
    comparison = kind("biome").compare([wet, dry])
    at = comparison.heads.index("Annual precipitation")
    assert ["60 mm", "1200 mm"] == [row.cells[at].shown for row in comparison.rows]


def test_stations_kept_for_papers_are_not_compared() -> None:
    text = f"region: none\nstations: [{station(use='paper')}, {station(name='there')}]\n"
    assert ["A title: There"] == [row.label for row in kind("biome").compare([subject("biome", text)]).rows]


def test_only_years_from_south_of_the_tropics_begin_in_july_and_the_reading_says_so() -> None:
    of = [biome(latitude=f"latitude: {latitude}") for latitude in (46.5, -3.5, -46.5)]
    _, multiples = kind("biome").compare(of).charts
    assert [False, False, True] == [panel.southern for panel in multiples.panels]
    assert any(step.startswith("Diagrams from south of the tropics begin in July") for step in multiples.reading)
