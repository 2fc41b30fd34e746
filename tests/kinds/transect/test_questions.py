"""Questions on transects: right answers, recognised slips, and what is asked only where the record allows it."""

from __future__ import annotations

import pytest

from generator.questions.question import Choice, NumberEntry
from tests.kinds.small_records import demo, made, rejected
from tests.kinds.transect.test_facts import RIDGE, transect


def numbers(question: object) -> set[str]:
    assert isinstance(question, NumberEntry)
    return {slip.shown.split(" ")[0] for slip in question.slips}


def test_lapse_rate_knows_metres_the_inverse_and_the_sign() -> None:
    """Source: arithmetic on the record, 3.45 K over 615 m."""
    question = made(demo("transect/coastal_range"))["lapse_rate"]
    assert ("5.61 K km⁻¹", {"0.00561", "0.178", "−5.61"}) == (question.answer, numbers(question))


def test_steps_know_the_wrong_lapse_rate() -> None:
    """Source: arithmetic: 20 - 10 x 0.8, then - 6 x 2.2, then + 10 x 3; dry all the way up -10, moist all the way 2, moist down 16.8."""
    air = "temperature: 20, cloud_base: 800, dry_lapse_rate: 10, moist_lapse_rate: 6"
    questions = made(transect(*RIDGE, air=air))
    assert ["12.0 °C", "−1.20 °C", "28.8 °C", "8.80 K"] == [questions[name].answer for name in ("base_temperature", "crest_temperature", "lee_temperature", "warming")]
    assert {"15.2", "28.0", "10.0"} == numbers(questions["base_temperature"])
    assert {"−10.0", "2.00", "−6.00", "41.2"} == numbers(questions["crest_temperature"])
    assert {"16.8", "20.0", "−31.2"} == numbers(questions["lee_temperature"])
    assert {"12.0", "22.0", "35.2"} == numbers(questions["warming"])


def test_cloud_base_that_is_asked_for_is_told_in_no_prompt() -> None:
    questions = made(demo("transect/coastal_range"))
    assert "525 m" == questions["cloud_base"].answer
    assert [] == [name for name, question in questions.items() if "525" in question.prompt]


def test_stated_cloud_base_is_told_and_not_asked_for() -> None:
    questions = made(transect(*RIDGE, air="temperature: 20, cloud_base: 800"))
    assert "cloud_base" not in questions
    assert "800 m" in questions["crest_temperature"].prompt


def test_without_cloud_only_the_reason_is_asked_for() -> None:
    assert {"lapse_rate", "why_colder", "why_dry"} == set(made(transect(*RIDGE, air="temperature: 20, cloud_base: 4000")))


def test_line_without_air_asks_more_of_its_stations() -> None:
    """Source: arithmetic on the record, 7.6 - 5.51 x 0.285 and 22.24 K over 4.114 km."""
    questions = made(demo("transect/climb_to_high_saddle"))
    assert {"lapse_rate", "lapse_rate_2", "whole_line", "halfway", "why_colder", "wettest"} == set(questions)
    assert ("5.41 K km⁻¹", "6.03 °C") == (questions["whole_line"].answer, questions["halfway"].answer)
    assert {"9.17", "4.46", "2.09"} == numbers(questions["halfway"])
    assert {} == rejected(demo("transect/climb_to_high_saddle"))


def test_wettest_station_is_the_right_one_and_the_highest_a_known_mistake() -> None:
    question = made(demo("transect/climb_to_high_saddle"))["wettest"]
    assert isinstance(question, Choice)
    assert ["Cloud Stair"] == [option.text for option in question.options if option.right]
    assert "clim.higher-wetter" in {option.misconception for option in question.options}


@pytest.mark.parametrize("stations", [((0, 300, 12), (5, 300, 11.5)), ((0, 300, 12), (5, 400, 11.5))])
def test_hardly_any_climb_gives_no_lapse_rate_to_ask_for(stations: tuple[tuple[float, float, float], ...]) -> None:
    assert not {"lapse_rate", "whole_line", "halfway"} & set(made(transect(*stations)))
