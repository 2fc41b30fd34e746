"""Readings, statements and belts: what stands out on the profile, and nothing where nothing does. Sources: read off the records."""

from __future__ import annotations

import pytest

from generator.kinds.transect import profile_questions as profile
from generator.questions.making import as_option
from generator.questions.question import ChartReading, Matching, Rejected, SeveralChoice
from tests.kinds.transect.asked import of_demo, read, small

EVEN = ((0, 0, 20), (10, 500, 17), (20, 1000, 14), (30, 1500, 11), (40, 2000, 8))
"""The wettest station, the first, is the lowest; all stretches are alike."""


def claims(line: object) -> dict[str, str]:
    return {claim.misconception: claim.holds for claim in profile._claims(line)}


def test_largest_drop_of_rain_is_told_from_the_largest_rise_and_from_the_driest_station() -> None:
    """Source: arithmetic on the record: 3870 - 2260 = 1610 mm; the driest station, with 1105 mm, comes after one with little more."""
    right, wrong = read(profile.largest_drop(of_demo("climb_to_high_saddle")))
    assert (("Cloud Stair to Beard Wood",), {"Fernback to Cloud Stair": "clim.wrong-end", "Tussock Flat to High Saddle": "clim.low-is-fall"}) == (right, wrong)


def test_rain_of_two_stations_or_alike_from_each_to_the_next_is_not_asked_about() -> None:
    assert isinstance(profile.largest_drop(small((0, 0, 20), (10, 500, 17))), Rejected)
    assert isinstance(profile.largest_drop(small((0, 2000, 8), (10, 1500, 11), (20, 1000, 14), (30, 0, 20))), Rejected)


def test_steepest_ground_is_not_the_largest_climb() -> None:
    """1050 m over 60 km are 17.5 m a kilometre, 1070 m over 70 km only 15.3."""
    right, wrong = read(profile.steepest_ground(of_demo("climb_to_high_saddle")))
    assert (("Cloud Stair to Beard Wood",), "clim.climb-not-slope", "clim.high-is-steep") == (right, wrong["Fernback to Cloud Stair"], wrong["Tussock Flat to High Saddle"])


@pytest.mark.parametrize("line", [EVEN, (*EVEN[:-1], (31, 2500, 5)), EVEN[:2]])
def test_even_ground_and_a_largest_climb_that_is_the_steepest_are_not_asked_for(line: tuple[tuple[float, float, float], ...]) -> None:
    assert isinstance(profile.steepest_ground(small(*line)), Rejected)


def test_steepness_is_told_in_numbers_to_whoever_picks_another_stretch() -> None:
    """570 m over 45 km are 12.7 m a kilometre."""
    item = profile.steepest_ground(of_demo("climb_to_high_saddle"))
    assert isinstance(item, ChartReading)
    told = {label: slip.feedback for slip in item.slips for label in slip.labels}
    assert "570 m over 45 km, that is 12.7 m for each kilometre" in told["Tussock Flat to High Saddle"]


def test_station_that_is_lower_and_colder_breaks_the_rule() -> None:
    """The third station at 600 m has 12 °C, the second at 1000 m 14 °C."""
    right, wrong = read(profile.rule_breaker(small((0, 0, 20), (10, 1000, 14), (20, 600, 12), (30, 100, 19))))
    assert (("S2",), "num.one-of-two") == (right, wrong["S1"])
    assert isinstance(profile.rule_breaker(of_demo("climb_to_high_saddle")), Rejected)
    assert isinstance(profile.rule_breaker(small(*EVEN)), Rejected)


def test_station_that_a_heading_of_the_page_names_is_not_asked_for() -> None:
    """The demo explains why Harrow Plain is colder than Sage Wells although it lies lower."""
    assert isinstance(profile.rule_breaker(of_demo("coastal_range")), Rejected)


def test_statements_on_a_climb_hold_by_its_numbers() -> None:
    """Lapse rates from 5.30 to 5.54; 650 m over 45 km are 14.4 m a kilometre, 774 m over 120 km 6.45."""
    assert {
        "clim.higher-wetter": "High Saddle is higher than Cloud Stair, but gets less rain and snow",
        "clim.warm-place-wet": "Maro Landing is warmer than Cloud Stair, but gets less rain and snow",
        "clim.climb-not-slope": "The climb from Beard Wood to Tussock Flat is smaller than that from Maro Landing to Fernback, but steeper",
        "clim.faster-higher": "The temperature falls about as much per kilometre of height low down as high up",
    } == claims(of_demo("climb_to_high_saddle"))


def test_statements_on_a_crossing_compare_the_two_sides_of_the_crest() -> None:
    """Moss Stair, 640 m, 2950 mm, 6.4 °C; Sage Wells, 620 m, 245 mm, 7.6 °C."""
    holds = {claim.holds for claim in profile._claims(of_demo("coastal_range"))}
    assert {
        "Moss Stair and Sage Wells are about equally high, but Moss Stair is far wetter", "At about the same height it is warmer at Sage Wells than at Moss Stair",
        "Rising air cools more slowly in the cloud than below it",
    } <= holds  # fmt: skip


def test_line_on_which_nothing_stands_out_has_too_few_statements() -> None:
    assert isinstance(profile.profile_shows(small(*EVEN)), Rejected)
    assert isinstance(profile.profile_shows(small((0, 0, 20), (10, 500, 17))), Rejected)


@pytest.mark.parametrize("name", ["climb_to_high_saddle", "coastal_range"])
def test_options_are_told_with_their_numbers(name: str) -> None:
    item = profile.profile_shows(of_demo(name))
    assert isinstance(item, SeveralChoice)
    assert all(any(character.isdigit() for character in option.feedback) for option in item.options)


def test_in_a_warmer_climate_each_station_gets_the_belt_of_the_nearest_mean() -> None:
    """Source: the record; 4.5 K lift Fernback to 27.1, Cloud Stair to 21.4, Beard Wood to 15.7 and Tussock Flat to 12.1 °C. High Saddle, with 8.96, lies between two belts."""
    line = of_demo("climb_to_high_saddle")
    item = profile.belts_match(line, str)
    assert isinstance(item, Matching) and "4.5 °C warmer" in item.prompt
    belts = {as_option(station.grows_there or ""): line.number(station, "annual_mean_temp") for station in line.stations}
    means = {station.label: line.number(station, "annual_mean_temp") for station in line.stations}
    assert ["Fernback", "Cloud Stair", "Beard Wood", "Tussock Flat"] == [pair.text for pair in item.pairs]
    for pair in item.pairs:
        assert pair.partner == min(belts, key=lambda belt: abs(belts[belt] - means[pair.text] - 4.5))
    assert {"The last small trees, between grass in tussocks"} == set(item.partners) - {pair.partner for pair in item.pairs}


def test_belts_are_not_asked_of_a_line_on_which_little_grows() -> None:
    assert isinstance(profile.belts_match(small(*EVEN), str), Rejected)
