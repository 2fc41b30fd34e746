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
    assert right.startswith(answer) and "9.21 m" in question.solution


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


@pytest.mark.parametrize("oxygen", [8.3, 9.08, 9.9])
def test_share_near_the_whole_is_not_asked_for(oxygen: float) -> None:
    """Of 9.08 mg/L these are 91, 100 and 109 %: a share and its inverse can hardly be told apart."""
    assert "oxygen_percent" not in made(water(f"dissolved_oxygen: {oxygen}"))


def test_share_well_above_the_whole_is_asked_for() -> None:
    """Source: arithmetic, 13.62 / 9.08 = 1.5."""
    assert "150 %" == made(water("dissolved_oxygen: 13.62"))["oxygen_percent"].answer


def test_share_is_asked_of_the_first_station_where_it_is_worth_a_sum() -> None:
    """The lake's upper water is at 104 % of saturation, its deep layer at 17 %."""
    assert "Halden Water, deep layer" in made(demo("aquatic_biome/lake"))["oxygen_percent"].prompt


@pytest.mark.parametrize("record", ["lake", "stream", "estuary", "open_sea", "reef"])
def test_no_prompt_or_option_tells_the_answer_to_another_question(record: str) -> None:
    questions = made(demo(f"aquatic_biome/{record}")).values()
    numbers = [question for question in questions if isinstance(question, NumberEntry)]
    assert len(numbers) >= 1
    for asked in numbers:
        others = [q for q in questions if q is not asked]
        assert [] == [q.id for q in others if asked.answer in " ".join((q.prompt, *(o.text for o in getattr(q, "options", ()))))], asked.id


def test_flushing_of_an_estuary_counts_the_river_alone_and_says_so() -> None:
    estuary, lake = (made(demo(f"aquatic_biome/{name}"))["flushing_time"].prompt for name in ("estuary", "lake"))
    assert [True, False] == ["leave the tides out of account" in prompt for prompt in (estuary, lake)]


def test_feedback_on_a_time_in_days_does_not_speak_of_years() -> None:
    for slip in made(demo("aquatic_biome/estuary"))["flushing_time"].slips:
        assert "year" not in slip.feedback.casefold()


def test_no_oxygen_at_all_is_still_a_fair_question() -> None:
    assert {} == rejected(water("dissolved_oxygen: 0"))
    question = made(water("dissolved_oxygen: 0"))["oxygen_percent"]
    assert isinstance(question, NumberEntry)
    assert question.accepted.low == question.accepted.high == 0


@pytest.mark.parametrize("record", ["lake", "stream", "estuary", "open_sea", "reef"])
def test_examples_leave_no_question_out(record: str) -> None:
    assert {} == rejected(demo(f"aquatic_biome/{record}"))
