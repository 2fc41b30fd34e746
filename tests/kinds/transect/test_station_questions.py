"""Lapse rates. Sources: arithmetic on the records."""

from __future__ import annotations

import pytest

from generator.kinds.transect import station_questions as stations
from generator.questions.question import Choice, NumberEntry, Rejected
from tests.kinds.transect.asked import number, of_demo, small


def test_lapse_rate_knows_metres_the_inverse_and_the_sign() -> None:
    """3.45 K over 615 m."""
    line = of_demo("coastal_range")
    answer, slips = number(stations.lapse_rate(line, *line.climbs[0]))
    assert ("5.61 K km⁻¹", {"0.00561", "0.178", "−5.61"}) == (answer, set(slips))


def test_rate_of_the_whole_line_is_asked_for_with_its_unit() -> None:
    """22.24 K over 4.114 km."""
    question = stations.whole_line(of_demo("climb_to_high_saddle"))
    assert isinstance(question, NumberEntry)
    assert ("5.41 K km⁻¹", True) == (question.answer, question.asks_unit)
    assert "K km" not in question.prompt + " ".join(question.hints)


def test_halfway_takes_half_the_climb() -> None:
    """7.6 - 5.51 x 0.285 = 6.03; added 9.17; the whole climb 4.46; once a kilometre 2.09."""
    line = of_demo("climb_to_high_saddle")
    answer, slips = number(stations.halfway(line, *line.climbs[-1]))
    assert ("6.03 °C", {"9.17", "4.46", "2.09"}) == (answer, set(slips))


def test_freezing_height_is_counted_from_the_highest_station() -> None:
    """4120 + 4.46 / 5.51 x 1000 = 4930 m; 809 m without the station's height; 3310 m downwards."""
    question = stations.freezing_height(of_demo("climb_to_high_saddle"))
    answer, slips = number(question)
    assert ("4930 m", "clim.height-forgotten", "clim.height-downwards") == (answer, slips["809"], slips["3310"])
    assert isinstance(question, NumberEntry) and question.solution.startswith("4.46 K ÷ 5.51 K km⁻¹ = 0.810 km")


@pytest.mark.parametrize("line", [((0, 0, 20), (9, 4000, -2)), ((0, 0, 26), (9, 1000, 21)), ((0, 0, 12), (9, 1000, 13)), ((0, 1000, 10), (9, 0, 15))])
def test_freezing_height_is_not_asked_for_in_frost_far_above_in_an_inversion_or_without_a_station_before(line: tuple[tuple[float, float, float], ...]) -> None:
    """From 21 °C at 5 K/km freezing lies 4200 m above the highest station."""
    assert isinstance(stations.freezing_height(small(*line)), Rejected)


def test_pressure_and_warmth_are_asked_about_by_a_case_that_the_page_does_not_tell() -> None:
    """A line that air crosses explains it in its own words, so that the answer could be copied."""
    assert isinstance(stations.pressed_air(of_demo("coastal_range")), Rejected)
    question = stations.pressed_air(of_demo("climb_to_high_saddle"))
    assert isinstance(question, Choice)
    assert "bicycle pump" in question.prompt
    right = next(option.text for option in question.options if option.right)
    assert len(right) <= max(len(option.text) for option in question.options if not option.right)
