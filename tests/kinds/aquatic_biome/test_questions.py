"""Questions on waters: right answers, recognised slips, and what is asked where a record states little."""

from __future__ import annotations

import pytest

from generator.questions.question import Choice, NumberEntry
from tests.kinds.aquatic_biome.test_facts import water
from tests.kinds.small_records import demo, made, rejected


def test_photic_depth_knows_the_usual_slips() -> None:
    """Source: arithmetic on the lake: 0.5 / 4.605, 4.605 × 0.5, 1 / 0.5, 100 / 0.5, and the Secchi depth."""
    question = made(demo("aquatic_biome/lake"))["photic_depth"]
    assert isinstance(question, NumberEntry)
    assert ("9.21 m", {"0.109 m", "2.30 m", "2.00 m", "200 m", "3.40 m"}) == (question.answer, {slip.shown for slip in question.slips})


def test_oxygen_percent_knows_the_usual_slips() -> None:
    """Source: arithmetic; at 20 °C water can hold 9.08 mg/L, four times 2.27."""
    question = made(water("dissolved_oxygen: 2.27"))["oxygen_percent"]
    assert isinstance(question, NumberEntry)
    assert ("25.0 %", {"400 %", "0.250 %", "75.0 %"}) == (question.answer, {slip.shown for slip in question.slips})


def test_flushing_time_knows_seconds_and_hours() -> None:
    """Source: arithmetic on the estuary, 42 000 000 / 55 s is 8.84 d."""
    question = made(demo("aquatic_biome/estuary"))["flushing_time"]
    assert isinstance(question, NumberEntry)
    assert "8.84 d" == question.answer
    assert {"carb.residence-inverse", "wat.seconds"} == {slip.misconception for slip in question.slips}


def test_half_the_photic_depth_has_ten_percent_whatever_the_water() -> None:
    for extinction in (0.05, 0.5, 5):
        question = made(water(f"depth: 400, light: {{extinction: {extinction}}}"))["half_way"]
        assert isinstance(question, Choice)
        assert ["About 10 %"] == [option.text for option in question.options if option.right]


@pytest.mark.parametrize(("depth", "answer"), [(5, "Yes"), (50, "No")])
def test_plants_on_the_bottom_follow_the_numbers(depth: float, answer: str) -> None:
    """One percent of the light is left at 9.21 m."""
    question = made(water(f"depth: {depth}, light: {{extinction: 0.5}}"))["plants_on_the_bottom"]
    assert isinstance(question, Choice)
    (right,) = [option.text for option in question.options if option.right]
    assert right.startswith(answer) and "9.21 m" in right


def test_what_a_record_does_not_state_is_not_asked() -> None:
    assert ["warm_water", "breathing"] == list(made(water("")))


def test_salt_is_asked_of_salt_water_and_breathing_of_fresh() -> None:
    assert {"salt": False, "breathing": True} == {name: name in made(water("salinity: 0.2")) for name in ("salt", "breathing")}
    assert {"salt": True, "breathing": False} == {name: name in made(water("salinity: 20")) for name in ("salt", "breathing")}


def test_light_that_is_all_but_gone_is_not_asked_for() -> None:
    assert "light_at_bottom" not in made(water("depth: 100, light: {extinction: 0.5}"))
    assert "light_at_bottom" not in made(water("depth: 3, light: {extinction: 30}"))
    assert "light_at_bottom" in made(water("light: {extinction: 0.3}"))


def test_straight_line_is_no_option_where_it_would_fall_below_nothing() -> None:
    question = made(water("depth: 12, light: {extinction: 0.5}"))["light_at_bottom"]
    assert isinstance(question, Choice)
    assert all(not option.text.startswith("−") for option in question.options)


def test_oxygen_at_saturation_cannot_tell_the_inverse_apart() -> None:
    question = made(water("dissolved_oxygen: 9.08"))["oxygen_percent"]
    assert isinstance(question, NumberEntry)
    assert "wat.saturation-inverse" not in {slip.misconception for slip in question.slips}


def test_no_oxygen_at_all_is_still_a_fair_question() -> None:
    assert {} == rejected(water("dissolved_oxygen: 0"))
    question = made(water("dissolved_oxygen: 0"))["oxygen_percent"]
    assert isinstance(question, NumberEntry)
    assert question.accepted.low == question.accepted.high == 0


@pytest.mark.parametrize("record", ["lake", "stream", "estuary", "open_sea", "reef"])
def test_examples_leave_no_question_out(record: str) -> None:
    assert {} == rejected(demo(f"aquatic_biome/{record}"))
