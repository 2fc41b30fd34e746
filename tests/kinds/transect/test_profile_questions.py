"""Readings, statements and belts: what stands out on the profile, and nothing where nothing does. Sources: read off the records."""

from __future__ import annotations

import pytest

from generator.kinds.transect import profile_questions as profile
from generator.questions.question import ChartReading, Rejected, SeveralChoice
from tests.kinds.transect.asked import of_demo, order, read, small

EVEN = ((0, 0, 20), (10, 500, 17), (20, 1000, 14), (30, 1500, 11), (40, 2000, 8))
"""The wettest station, the first, is the lowest; all stretches are alike."""


def claims(line: object) -> dict[str, str]:
    return {claim.misconception: claim.holds for claim in profile._claims(line)}


def test_wettest_station_is_told_from_the_highest_and_the_warmest() -> None:
    right, wrong = read(profile.wettest_station(of_demo("climb_to_high_saddle")))
    assert (("Cloud Stair",), "clim.higher-wetter", "clim.warm-place-wet", "clim.wrong-column") == (right, wrong["High Saddle"], wrong["Maro Landing"], wrong["Fernback"])


@pytest.mark.parametrize("line", [((0, 0, 20), (10, 500, 17)), ((0, 2000, 8), (10, 1500, 11), (20, 1000, 14), (30, 0, 20))])
def test_wettest_of_few_stations_or_at_the_top_is_not_asked_for(line: tuple[tuple[float, float, float], ...]) -> None:
    assert isinstance(profile.wettest_station(small(*line)), Rejected)


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
    """Harrow Plain at 310 m has 7.08 °C, Sage Wells at 620 m 7.6 °C."""
    right, wrong = read(profile.rule_breaker(of_demo("coastal_range")))
    assert (("Harrow Plain",), "num.one-of-two", "num.one-of-two") == (right, wrong["Sage Wells"], wrong["Kestrel Pass"])
    assert isinstance(profile.rule_breaker(of_demo("climb_to_high_saddle")), Rejected)
    assert isinstance(profile.rule_breaker(small(*EVEN)), Rejected)


def test_belts_stand_from_the_lowest_station_up() -> None:
    found = order(profile.belts_order(of_demo("climb_to_high_saddle"), str))
    assert ("Lowland rain forest with tall trees and lianas", "Tussocks, cushions and giant rosettes without trees") == (found[0], found[-1])


def test_belts_of_a_line_that_goes_down_again_or_tells_none_are_not_ordered() -> None:
    assert isinstance(profile.belts_order(of_demo("coastal_range"), str), Rejected)
    assert isinstance(profile.belts_order(small(*EVEN), str), Rejected)


def test_statements_on_a_climb_hold_by_its_numbers() -> None:
    """Lapse rates from 5.30 to 5.54; 650 m over 45 km are 14.4 m a kilometre, 774 m over 120 km 6.45."""
    assert {
        "clim.higher-wetter": "High Saddle is higher than Cloud Stair, but gets less rain and snow",
        "clim.warm-place-wet": "Maro Landing is warmer than Cloud Stair, but gets less rain and snow",
        "clim.climb-not-slope": "The climb from Beard Wood to Tussock Flat is smaller than that from Maro Landing to Fernback, but steeper",
        "clim.faster-higher": "Each kilometre of climb costs about as much warmth low down as high up",
    } == claims(of_demo("climb_to_high_saddle"))


def test_statements_on_a_crossing_compare_the_two_sides_of_the_crest() -> None:
    """Moss Stair, 640 m, 2950 mm, 6.4 °C; Sage Wells, 620 m, 245 mm, 7.6 °C."""
    holds = {claim.holds for claim in profile._claims(of_demo("coastal_range"))}
    assert {
        "Moss Stair and Sage Wells are about as high, but Moss Stair is far wetter", "At about the same height it is warmer at Sage Wells than at Moss Stair",
        "Rising air cools more slowly in the cloud than below it", "Behind the crest the air comes down warmer than it set out",
    } <= holds  # fmt: skip


def test_line_on_which_nothing_stands_out_has_too_few_statements() -> None:
    assert isinstance(profile.profile_shows(small(*EVEN)), Rejected)
    assert isinstance(profile.profile_shows(small((0, 0, 20), (10, 500, 17))), Rejected)


@pytest.mark.parametrize("name", ["climb_to_high_saddle", "coastal_range"])
def test_options_are_told_with_their_numbers(name: str) -> None:
    item = profile.profile_shows(of_demo(name))
    assert isinstance(item, SeveralChoice)
    assert all(any(character.isdigit() for character in option.feedback) for option in item.options)
