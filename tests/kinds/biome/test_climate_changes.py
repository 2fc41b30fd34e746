"""Changes from month to month: the steepest step, the slips beside it, and nothing where none stands out. Sources: read off the records."""

from __future__ import annotations

import pytest

from generator.kinds.biome import climate_changes as changes
from generator.questions.question import ChartReading, Rejected
from tests.kinds.biome.asked import STEADY, of_demo, read, small


def test_fastest_warming_is_told_from_the_warmest_time_from_cooling_and_from_rain() -> None:
    """Grassland: from 0 to 8 °C in March to April; warmest in July; 8 to 0 °C from October on; 26 to 48 mm from April on."""
    right, wrong = read(changes.fastest_warming(of_demo("temperate_grassland")))
    assert ("March to April",) == right
    assert {"June to July": "clim.height-slope", "July to August": "clim.height-slope", "October to November": "clim.rise-or-fall"}.items() <= wrong.items()
    assert ("clim.wrong-axis", "clim.wrong-step") == (wrong["April to May"], wrong["February to March"])


def test_all_steps_of_the_steepest_fall_are_told_that_the_line_falls() -> None:
    """Linden Ford cools by as much from September to October as from October to November."""
    _, wrong = read(changes.fastest_warming(of_demo("temperate_deciduous_forest")))
    assert ["clim.rise-or-fall"] * 2 == [wrong["September to October"], wrong["October to November"]]


def test_step_that_rises_most_is_not_called_the_steepest_where_a_fall_is_steeper() -> None:
    """Drummel Sound: 2.8 K more from April to May, and 3.4 K less from October to November."""
    item = changes.fastest_warming(of_demo("temperate_rain_forest"))
    assert isinstance(item, ChartReading)
    assert "the line rises most steeply" in item.solution
    assert not any("steepest" in text for text in (item.otherwise, *(slip.feedback for slip in item.slips)))


def test_precipitation_is_not_said_to_rise_most_where_it_rises_as_much_elsewhere() -> None:
    item = changes.fastest_warming(of_demo("boreal_forest"))
    assert isinstance(item, ChartReading)
    assert [True] == ["as much as anywhere" in slip.feedback for slip in item.slips if slip.misconception == "clim.wrong-axis"]


def test_step_at_the_top_is_told_in_numbers_or_that_it_goes_the_other_way() -> None:
    """High Saddle: 125, 135, 110 mm from March to May."""
    item = changes.fastest_change_of_rain(of_demo("alpine"))
    assert isinstance(item, ChartReading)
    told = {label: slip.feedback for slip in item.slips for label in slip.labels}
    assert told["April to May"].startswith("The line is highest there, but it falls by only 25 mm.")
    assert told["March to April"].startswith("The line is highest there, but it rises.")


def test_fastest_warming_over_the_turn_of_the_year_begins_with_december() -> None:
    right, _ = read(changes.fastest_warming(small([20, 21, 20, 18, 16, 14, 12, 11, 10, 11, 12, 14], latitude="latitude: -30")))
    assert ("December to January",) == right


@pytest.mark.parametrize("temp", [STEADY, [9, 10, 12, 15, 18, 21, 24, 24, 21, 17, 13, 10], [20] * 12])
def test_no_two_months_stand_out_where_it_hardly_warms_or_as_fast_elsewhere(temp: list[float]) -> None:
    assert isinstance(changes.fastest_warming(small(temp)), Rejected)


def test_labels_run_as_on_the_diagram_of_the_south() -> None:
    item = changes.fastest_warming(small([22, 21, 15, 8, 0, -7, -9, -6, 0, 9, 14, 19], latitude="latitude: -46.5"))
    assert isinstance(item, ChartReading)
    assert ("July to August", "June to July", ("September to October",)) == (item.labels[0], item.labels[-1], item.right)


def test_rain_that_changes_fastest_is_asked_of_a_steady_year_alone() -> None:
    """Alpine: 110 to 75 mm from May on is the largest fall; no rise stands out, for 95 to 125 and 70 to 100 mm are alike."""
    right, wrong = read(changes.fastest_change_of_rain(of_demo("alpine")))
    assert (("May to June",), "clim.height-slope", "clim.rise-or-fall") == (right, wrong["April to May"], wrong["February to March"])
    assert isinstance(changes.fastest_change_of_rain(of_demo("savanna")), Rejected)
    assert isinstance(changes.fastest_change_of_rain(small(STEADY, [90] * 12)), Rejected)


def test_cooling_is_asked_where_no_warming_stands_out() -> None:
    """Salt Ladder warms by 4.5 °C twice, and cools by 6 from October to November, by 5 before."""
    item = changes.fastest_warming(of_demo("hot_desert"))
    assert "fall fastest" in item.prompt and ("October to November",) == read(item)[0]
