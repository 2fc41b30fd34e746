"""Climate diagrams: which stations get one, and whether words and table agree with the facts."""

from __future__ import annotations

from tests.kinds.biome.test_facts import SOUTH, biome
from tests.kinds.biome.test_findings import station
from tests.kinds.small_records import demo, kind, subject


def test_description_names_the_deciding_numbers() -> None:
    """Source: read off the record."""
    (chart,) = kind("biome").charts(demo("biome/temperate_grassland"))
    for words in ("−9 °C in January", "22 °C in July", "10 mm in February", "66 mm in June", "327 mm in all", "3 months are dry"):
        assert words in chart.description
    assert "July to September" not in chart.description, "a question asks for the list of the dry months"


def test_months_below_zero_are_told_in_words_where_there_are_any() -> None:
    """Source: read off the records."""
    (cold,), (warm,) = (kind("biome").charts(demo(f"biome/{name}")) for name in ("temperate_grassland", "tropical_rain_forest"))
    assert "Months averaging below 0 °C: December to February." in cold.description
    assert (True, False) == tuple(any("average below 0 °C" in step for step in chart.reading) for chart in (cold, warm))
    assert "below 0 °C" not in warm.description
    assert "frost" not in f"{cold.description} {cold.reading}".lower()


def test_table_holds_the_months_as_the_record_states_them() -> None:
    (chart,) = kind("biome").charts(demo("biome/temperate_grassland"))
    assert ("July", "22", "42") == chart.table.rows[6]
    assert 12 == len(chart.table.rows)


def test_southern_station_is_drawn_as_such() -> None:
    (chart,) = kind("biome").charts(biome(SOUTH, latitude="latitude: -46.5"))
    assert (True, "46.5° S") == (chart.southern, chart.place)


def test_between_the_tropics_the_year_starts_in_january_on_both_sides_of_the_equator() -> None:
    (chart,) = kind("biome").charts(biome(SOUTH, latitude="latitude: -3.5"))
    assert (False, "3.5° S") == (chart.southern, chart.place)


def test_only_stations_of_the_page_get_a_chart() -> None:
    text = f"region: none\nstations: [{station(use='paper')}, {station(name='there')}, {station(use='practice', name='yonder')}]\n"
    assert ["small.climate_diagram.there"] == [chart.name for chart in kind("biome").charts(subject("biome", text))]
    assert ["small.climate_diagram.yonder"] == [chart.name for chart in kind("biome").practice_charts(subject("biome", text))]
