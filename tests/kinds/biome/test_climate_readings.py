"""Readings: the month that stands out, the slips of reading, and nothing where no month stands out. Sources: read off the records."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.kinds.biome import climate_readings as readings
from generator.quantities.shown import MONTHS
from generator.questions.question import ChartReading, Rejected
from tests.kinds.biome.asked import STEADY, WARM, of_demo, read, small
from tests.kinds.biome.test_facts import SOUTH

TWO_PEAKS = [60, 80, 120, 150, 110, 70, 40, 60, 90, 140, 100, 70]


def test_month_after_the_first_warm_one_is_warm_enough_as_well() -> None:
    """Spruce Halt: 8.5 °C in May, so June is no misread axis; September is the last month, October too cold again."""
    item = readings.growing_begins(of_demo("boreal_forest"))
    right, wrong = read(item)
    assert (("May",), "num.past-first", "clim.wrong-end", "clim.wrong-end") == (right, wrong["June"], wrong["September"], wrong["October"])
    told = "There it is too cold again: the season ended with September. Look for where it begins."
    assert [told] == [slip.feedback for slip in item.slips if slip.labels == ("October",)]


def test_slip_of_a_line_in_the_table_is_told_what_the_soil_holds_there() -> None:
    """Drummel Sound: 100 mm again at the end of September."""
    item = readings.driest_soil(of_demo("temperate_rain_forest"))
    assert any(slip.feedback.startswith("At the end of September the soil holds 100") for slip in item.slips if slip.labels == ("September",))


def test_widest_gap_is_neither_the_warmest_nor_the_driest_month() -> None:
    """Savanna: twice 29 °C less 4 mm is 54 in March; April, the warmest, has 60 - 22; January, among the driest, 48 - 0."""
    right, wrong = read(readings.widest_gap(of_demo("savanna")))
    assert ("March",) == right
    assert {"April": "clim.height-not-gap", "January": "clim.height-not-gap", "December": "clim.height-not-gap", "August": "clim.dry-reversed"}.items() <= wrong.items()
    assert "clim.wrong-month" == wrong["February"]


def test_gap_that_the_eye_can_hardly_part_from_the_widest_is_told_with_it() -> None:
    item = readings.widest_gap(of_demo("savanna"))
    told = next(slip for slip in item.slips if "January" in slip.labels).feedback
    assert told.startswith("It is close: in January the gap is 48 mm on the axis of precipitation, in March 54 mm.")


@pytest.mark.parametrize("precip", [[90] * 12, [0] * 12])
def test_no_gap_is_asked_for_without_dry_months_or_where_the_warmest_decides(precip: list[float]) -> None:
    """Where nothing falls, the warmest month is one of the driest: nothing can be confused."""
    assert isinstance(readings.widest_gap(small(precip=precip)), Rejected)


def test_soil_is_driest_after_the_months_in_which_least_falls() -> None:
    """Boreal forest: 16 mm at the end of August; least falls in February, most could evaporate in July."""
    right, wrong = read(readings.driest_soil(of_demo("boreal_forest")))
    assert (("August",), "clim.store-is-flow", "clim.store-is-flow", "clim.wrong-row") == (right, wrong["February"], wrong["July"], wrong["September"])


@pytest.mark.parametrize("name", ["tundra", "alpine", "hot_desert"])
def test_soil_is_not_asked_for_in_the_cold_nor_where_it_never_or_always_is_dry(name: str) -> None:
    assert isinstance(readings.driest_soil(of_demo(name)), Rejected)


def test_soil_is_not_asked_for_without_latitude() -> None:
    assert isinstance(readings.driest_soil(small(latitude="")), Rejected)


def test_second_peak_is_told_from_the_slopes_of_the_first() -> None:
    right, wrong = read(readings.second_peak(small(STEADY, TWO_PEAKS, "latitude: 1")))
    assert ("October",) == right
    assert {"March": "clim.second-largest", "May": "clim.second-largest", "April": "clim.second-largest", "July": "clim.wrong-end"}.items() <= wrong.items()


@pytest.mark.parametrize("precip", [[90] * 12, [0] * 12, [60, 80, 120, 150, 110, 70, 60, 61, 60, 60, 60, 60], [60, 80, 150, 80, 60, 70, 80, 150, 110, 70, 60, 60]])
def test_even_rain_small_bumps_and_equal_peaks_have_no_second_one(precip: list[float]) -> None:
    assert isinstance(readings.second_peak(small(STEADY, precip, "latitude: 1")), Rejected)


def test_growing_season_begins_after_the_thaw() -> None:
    """Boreal forest: 1.5 °C in April, 8.5 °C in May."""
    right, wrong = read(readings.growing_begins(of_demo("boreal_forest")))
    assert (("May",), "clim.thaw-is-growth", "clim.wrong-end") == (right, wrong["April"], wrong["October"])


@pytest.mark.parametrize("temp", [WARM, [-9] * 12, [-9, -6, 0, 8, 14, 19, 22, 21, 15, 8, 0, -7], [-5, 6, -5, 6, 8, 10, 12, 10, 8, 6, -2, -5]])
def test_growth_without_frost_in_endless_frost_at_once_or_twice_is_not_asked_for(temp: list[float]) -> None:
    assert isinstance(readings.growing_begins(small(temp)), Rejected)


def test_growing_season_of_the_south_begins_in_its_own_spring() -> None:
    right, _ = read(readings.growing_begins(small([22, 21, 15, 8, 0, -7, -9, -6, 1, 8, 14, 19], latitude="latitude: -46.5")))
    assert ("October",) == right


def test_wettest_and_driest_month_are_told_from_the_warmest_and_the_coldest() -> None:
    assert (("December",), "clim.other-column") == (read(readings.wettest(small()))[0], read(readings.wettest(small()))[1]["July"])
    right, wrong = read(readings.driest(small()))
    assert (("July",), "clim.other-column", "clim.wrong-end") == (right, wrong["January"], wrong["December"])


def test_lowest_point_is_not_asked_for_beside_the_second_peak_whose_feedback_tells_it() -> None:
    assert isinstance(readings.driest(of_demo("alpine")), Rejected)


@pytest.mark.parametrize("precip", [[90] * 12, [90, 90, 50, 50, 50, 50, 50, 50, 50, 50, 50, 50], [50, 50, 50, 50, 50, 50, 90, 50, 50, 50, 50, 50]])
def test_wettest_month_that_is_not_one_or_is_the_warmest_is_not_asked_for(precip: list[float]) -> None:
    assert isinstance(readings.wettest(small(precip=precip)), Rejected)


def test_coldest_month_of_the_south_is_told_from_that_of_the_north() -> None:
    right, wrong = read(readings.coldest_in_the_south(of_demo("mediterranean_shrubland", 1)))
    assert (("July",), "clim.hemisphere", "clim.wrong-axis") == (right, wrong["January"], wrong["June"])
    assert isinstance(readings.coldest_in_the_south(small(SOUTH, latitude="latitude: -10")), Rejected)
    assert isinstance(readings.coldest_in_the_south(small()), Rejected)


@settings(max_examples=60, deadline=None)
@given(st.floats(-20, 28), st.floats(0, 20), st.lists(st.floats(-1, 1), min_size=12, max_size=12), st.lists(st.integers(0, 300), min_size=12, max_size=12))
def test_answers_on_any_year_are_those_of_its_months(mean: float, swing: float, noise: list[float], rain: list[int]) -> None:
    """Each worked out once more from the bare numbers; a known slip is never the answer."""
    temp = [round(mean + swing * (1 - abs(month - 6) / 3) + noise[month], 1) for month in range(12)]
    rise = [temp[(month + 1) % 12] - temp[month] for month in range(12)]
    gap = [2 * temp[month] - rain[month] for month in range(12)]
    warm = [month for month in range(12) if temp[month] >= 5 > temp[month - 1]]

    def step(month: int) -> str:
        return f"{MONTHS[month]} to {MONTHS[(month + 1) % 12]}"

    expected = {
        "widest_gap": MONTHS[gap.index(max(gap))], "fastest_warming": step(rise.index(max(rise))),
        "wettest_month": MONTHS[rain.index(max(rain))], "driest_month": MONTHS[rain.index(min(rain))], "growing_begins": MONTHS[warm[0]] if warm else "",
    }  # fmt: skip
    station = small(temp, rain)
    for item in (*readings.readings(station), *readings.plain_readings(station)):
        if isinstance(item, ChartReading) and item.id in expected:
            cools = item.id == "fastest_warming" and "fall fastest" in item.prompt
            assert (step(rise.index(min(rise))) if cools else expected[item.id],) == item.right, item.id
            assert not {*item.right} & {label for slip in item.slips for label in slip.labels}


def test_month_without_any_rain_is_not_looked_for() -> None:
    """A single 0 in a column of twelve is seen at a glance; 1 mm has to be compared."""
    rain = [40, 30, 20, 15, 9, 7, 4, 2, 12, 20, 30, 35]
    assert ("August",) == read(readings.driest(small(precip=rain)))[0]
    assert isinstance(readings.driest(small(precip=[*rain[:7], 0, *rain[8:]])), Rejected)
