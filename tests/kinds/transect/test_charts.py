"""The profile: stations, bars, the way of the air and words agree with the facts."""

from __future__ import annotations

from tests.kinds.small_records import demo, kind
from tests.kinds.transect.test_facts import RIDGE, transect


def test_profile_of_the_example() -> None:
    """Source: the record."""
    (chart,) = kind("transect").charts(demo("transect/coastal_range"))
    assert [(0, 25, 2282), (46, 640, 2950), (95, 1390, 3420)] == [(s.distance_km, s.height_m, s.precip_mm) for s in chart.stations[:3]]
    assert (0, 3, 6, 400) == (chart.air.start, chart.air.crest, chart.air.end, chart.air.cloud_base_m)
    assert ("12 °C", "8.34 °C", "−1.77 °C", "17.5 °C") == chart.air.step_labels


def test_description_names_ends_crest_rain_and_air() -> None:
    (chart,) = kind("transect").charts(demo("transect/coastal_range"))
    for words in ("Drummel Sound at 25 m", "520 km away", "Kestrel Pass at 2280 m", "Lichen Shelf, 3420 mm", "Sage Wells, 245 mm", "sets out at 12 °C", "17.5 °C"):
        assert words in chart.description


def test_air_without_cloud_has_three_steps_and_no_cloud_base() -> None:
    (chart,) = kind("transect").charts(transect(*RIDGE, air="temperature: 20, cloud_base: 4000"))
    assert (None, 3) == (chart.air.cloud_base_m, len(chart.air.step_labels))
    assert 4 == len(chart.reading)


def test_line_without_air_has_none() -> None:
    (chart,) = kind("transect").charts(transect(*RIDGE))
    assert (None, 3) == (chart.air, len(chart.reading))


def test_table_shows_what_is_not_defined_as_a_dash() -> None:
    (chart,) = kind("transect").charts(transect((0, 300, 12), (5, 300, 11.5)))
    assert ["–", "–"] == [row[-1] for row in chart.table.rows]
