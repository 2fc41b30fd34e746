"""Light profiles: which stations get one, how deep they are drawn, and whether words and table agree with the facts."""

from __future__ import annotations

import pytest

from generator.kinds.aquatic_biome.charts import table_depths
from tests.kinds.aquatic_biome.test_facts import water
from tests.kinds.small_records import demo, kind


def charts(*stations: str) -> tuple:
    return kind("aquatic_biome").charts(water(*stations))


def test_description_names_the_deciding_numbers() -> None:
    """Source: read off the record; ln(2) / 0.09 is 7.70."""
    chart, _ = kind("aquatic_biome").charts(demo("aquatic_biome/reef"))
    for words in ("half every 7.70 m", "0.09 m⁻¹", "left at 51.2 m", "at 12 m, 34.0 % is still left"):
        assert words in chart.description


def test_only_stations_of_the_page_that_state_their_light_get_a_chart() -> None:
    light = "light: {extinction: 0.5}"
    found = charts(light, "", f"use: practice, {light}", f"use: paper, {light}")
    assert ["small.light_profile.s0"] == [chart.name for chart in found]


def test_table_follows_the_law() -> None:
    """Source: arithmetic, exp(-0.5 × 2) and exp(-0.5 × 4) as percent."""
    (chart,) = charts("light: {extinction: 0.5}")
    assert [("0", "100"), ("2.00", "36.8"), ("4.00", "13.5")] == list(chart.table.rows[:3])


def test_curve_runs_from_the_surface_to_the_bottom() -> None:
    (chart,) = charts("light: {extinction: 0.5}")
    assert ((0.0, 100.0), 10.0) == (chart.curve[0], chart.lowest_m)
    assert sorted(chart.curve, key=lambda point: -point[1]) == list(chart.curve)


def test_bottom_far_below_the_lit_water_is_named_but_not_drawn() -> None:
    (chart,) = charts("depth: 4200, light: {extinction: 0.04}")
    assert (True, "4200 m", "next to no light") == (chart.lowest_m < 200, chart.bottom_label, chart.bottom_light_label)
    assert chart.photic_depth_m < chart.lowest_m


@pytest.mark.parametrize("lowest", [0.03, 0.35, 1.0, 4.0, 9.99, 24, 115, 4200])
def test_table_has_five_to_ten_round_depths(lowest: float) -> None:
    depths = table_depths(lowest)
    assert 5 <= len(depths) <= 11
    assert (0.0, True) == (depths[0], depths[-1] <= lowest * (1 + 1e-9))
