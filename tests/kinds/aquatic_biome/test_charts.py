"""Light profiles and oxygen curves: which stations they show, and whether words, table and marks agree with the facts."""

from __future__ import annotations

import pytest

from figures import LightProfile
from generator.kinds.aquatic_biome.charts import common_axis, table_depths
from generator.quantities.fact import Fact
from tests.kinds.aquatic_biome.test_facts import water
from tests.kinds.small_records import demo, kind


def charts(*stations: str) -> tuple:
    return kind("aquatic_biome").charts(water(*stations))


def test_description_names_the_deciding_numbers() -> None:
    """Source: read off the record; ln(2) / 0.09 is 7.70."""
    chart, *_ = kind("aquatic_biome").charts(demo("aquatic_biome/reef"))
    for words in ("half every 7.70 m", "0.09 m⁻¹", "left at 51.2 m", "at 12 m, 34.0 % is still left"):
        assert words in chart.description


def test_only_stations_of_the_page_that_state_their_light_get_a_chart() -> None:
    light = "light: {extinction: 0.5}"
    found = charts(light, "", f"use: practice, {light}", f"use: paper, {light}")
    assert ["small.light_profile.s0"] == [chart.name for chart in found]


def test_stations_for_practice_have_charts_of_their_own_apart_from_the_page() -> None:
    light, oxygen = "light: {extinction: 0.5}", "dissolved_oxygen: 5, temperature: 12"
    of = water(f"{light}, {oxygen}", f"use: practice, {light}, {oxygen}", f"use: practice, {oxygen}", f"use: paper, {light}, {oxygen}")
    made = kind("aquatic_biome").practice_charts(of)
    names, titles = [chart.name for chart in made], [chart.title for chart in made]
    assert len(set(titles)) == len(titles)
    assert ["small.light_profile.s1", "small.oxygen_curve.s1", "small.oxygen_curve.s2"] == names
    assert ["small.light_profile.s0", "small.oxygen_curve"] == [chart.name for chart in kind("aquatic_biome").charts(of)]


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


def test_oxygen_curve_shows_every_measured_station_of_the_page() -> None:
    (chart,) = charts("dissolved_oxygen: 9", "name: There, dissolved_oxygen: 3", "", "use: paper, dissolved_oxygen: 1")
    assert ("small.oxygen_curve", ["S0", "There"]) == (chart.name, [point.label for point in chart.points])


def test_oxygen_points_and_their_words_are_the_facts() -> None:
    """Source: read off the record; the ends of the dotted lines are the saturations on its page."""
    *_, chart = kind("aquatic_biome").charts(demo("aquatic_biome/lake"))
    _, deep = chart.points
    assert (6.5, 2.1, "2.1 mg L⁻¹, 17.1 %") == (deep.temperature_degc, deep.oxygen_mg_per_l, deep.value_label)
    assert 12.3 == pytest.approx(deep.saturation_mg_per_l, abs=0.05)
    assert "2.1 mg L⁻¹ of oxygen at 6.5 °C, 17.1 % of the 12.3 mg L⁻¹ that it could hold" in chart.description


def test_points_at_saturation_lie_on_their_curve() -> None:
    (chart,) = charts("temperature: 20, dissolved_oxygen: 9")
    (curve,) = chart.curves
    assert dict(curve.points)[20.0] == pytest.approx(chart.points[0].saturation_mg_per_l)


@pytest.mark.parametrize(("other", "labels"), [(4, 1), (28, 2)])
def test_salinities_far_apart_get_a_curve_each(other: float, labels: int) -> None:
    (chart,) = charts("dissolved_oxygen: 9", f"salinity: {other}, dissolved_oxygen: 8")
    assert labels == len(chart.curves)
    assert "fresh water, 0.2 g kg⁻¹" == chart.curves[0].label


def test_salt_water_stands_beside_fresh_water() -> None:
    """Source: 14.6 mg/L for fresh water at 0 °C and 6.77 for sea water at 25 °C, from the checks of oxygen_saturation."""
    *_, chart = kind("aquatic_biome").charts(demo("aquatic_biome/reef"))
    assert ["fresh water, 0 g kg⁻¹", "sea water, 35.0 g kg⁻¹"] == [curve.label for curve in chart.curves]
    fresh, salt = (dict(curve.points) for curve in chart.curves)
    assert (14.6, 6.77) == pytest.approx((fresh[0.0], salt[25.0]), abs=0.05)
    assert any("Salt leaves less room" in step for step in chart.reading)


def test_water_beyond_the_fit_is_on_no_oxygen_curve() -> None:
    assert () == charts("temperature: 60, dissolved_oxygen: 2")


def test_profiles_of_a_page_share_their_axis_so_that_they_can_be_compared() -> None:
    """The shallow water ends at its bottom, the axis at the deep one's."""
    narrows, bar = (chart for chart in kind("aquatic_biome").charts(demo("aquatic_biome/estuary")) if isinstance(chart, LightProfile))
    assert ((5.0, 9.0), (9.0, 9.0)) == ((narrows.lowest_m, narrows.axis_m), (bar.lowest_m, bar.axis_m))


def test_a_profile_that_would_be_too_small_to_read_keeps_an_axis_of_its_own() -> None:
    depths = [(Fact(id="a.depth", name="Depth", value=d), Fact(id="a.photic_depth", name="Photic depth", value=p)) for d, p in ((3.0, 3.0), (100.0, 80.0))]
    assert (0.0, 100.0, 0.0) == (common_axis(depths), common_axis([depths[1], depths[1]]), common_axis(depths[1:]))
