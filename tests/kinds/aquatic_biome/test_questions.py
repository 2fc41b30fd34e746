"""Questions on waters: which are asked of which record, and what is asked where a record states little."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.questions.item_writing import flaws
from generator.questions.question import ChartReading, Choice, NumberEntry, SeveralChoice
from tests.kinds.aquatic_biome.test_facts import water
from tests.kinds.small_records import demo, made, rejected

WATERS = ["lake", "stream", "estuary", "open_sea", "reef"]


def test_what_a_record_does_not_state_is_not_asked() -> None:
    assert ["warm_water", "breathing"] == list(made(water("")))


def test_salt_is_asked_of_salt_water_and_breathing_of_fresh() -> None:
    assert {"salt": False, "breathing": True} == {name: name in made(water("salinity: 0.2")) for name in ("salt", "breathing")}
    assert {"salt": True, "breathing": False} == {name: name in made(water("salinity: 20")) for name in ("salt", "breathing")}


def test_light_at_a_depth_is_asked_where_it_reaches_the_bottom() -> None:
    assert "light_at_depth" not in made(water("depth: 100, light: {extinction: 0.5}"))
    assert "light_at_depth" not in made(water("depth: 3, light: {extinction: 30}"))
    assert "light_at_depth" in made(water("light: {extinction: 0.3}"))


@pytest.mark.parametrize("oxygen", [8.3, 9.08, 9.9])
def test_share_near_the_whole_is_not_asked_for(oxygen: float) -> None:
    """Of 9.08 mg/L these are 91, 100 and 109 %: a share and its inverse can hardly be told apart."""
    assert "oxygen_percent" not in made(water(f"dissolved_oxygen: {oxygen}"))


def test_share_well_above_the_whole_is_asked_for() -> None:
    """Source: arithmetic, 13.62 / 9.08 = 1.5."""
    assert "150 %" == made(water("dissolved_oxygen: 13.62"))["oxygen_percent"].answer


def test_share_is_asked_of_the_first_station_where_it_is_worth_a_sum() -> None:
    """The lake's upper water is at 104 % of saturation, its deep layer at 17 %."""
    assert "deep layer of Halden Water" in made(demo("aquatic_biome/lake"))["oxygen_percent"].prompt


def test_chart_that_no_page_shows_is_not_read() -> None:
    found = made(water("use: practice, light: {secchi_depth: 2}, depth: 30, dissolved_oxygen: 5, yearly_temperature: {low: 2, high: 20}"))
    assert not any(isinstance(question, ChartReading | SeveralChoice) for question in found.values())
    assert {"murkier", "photic_depth", "oxygen_percent"} <= set(found)


@pytest.mark.parametrize("record", WATERS)
def test_every_water_is_asked_by_four_types_and_mostly_from_its_data(record: str) -> None:
    questions = list(made(demo(f"aquatic_biome/{record}")).values())
    assert {ChartReading, NumberEntry, SeveralChoice, Choice} <= {type(question) for question in questions}
    assert 7 <= sum(question.needs != "knowledge" for question in questions) <= len(questions) <= 11


@pytest.mark.parametrize("record", WATERS)
def test_no_prompt_or_option_tells_the_answer_to_another_question(record: str) -> None:
    questions = made(demo(f"aquatic_biome/{record}")).values()
    numbers = [question for question in questions if isinstance(question, NumberEntry)]
    assert len(numbers) >= 2
    for asked in numbers:
        others = [q for q in questions if q is not asked]
        assert [] == [q.id for q in others if asked.answer in " ".join((q.prompt, *(o.text for o in getattr(q, "options", ()))))], asked.id


@pytest.mark.parametrize("record", WATERS)
def test_hints_hold_for_fresh_numbers_too(record: str) -> None:
    """No number that is given in the sum stands in a hint."""
    for question in made(demo(f"aquatic_biome/{record}")).values():
        if isinstance(question, NumberEntry):
            given = [fact.shown_exactly for fact in question.given.values()]
            assert [] == [hint for hint in question.hints for told in given if told in hint], question.id


@pytest.mark.parametrize("record", WATERS)
def test_examples_leave_no_question_out(record: str) -> None:
    assert {} == rejected(demo(f"aquatic_biome/{record}"))


FIELDS = st.tuples(
    st.sampled_from(["10", "30", "4000"]), st.sampled_from(["0", "0.2", "8", "20", "35"]), st.sampled_from(["2", "12", "21", "30"]),
    st.sampled_from(["", "light: {extinction: 0.03}", "light: {extinction: 3}", "light: {secchi_depth: 0.4}", "light: {secchi_depth: 9}"]),
    st.sampled_from(["", "dissolved_oxygen: 0", "dissolved_oxygen: 4.2", "dissolved_oxygen: 13"]), st.sampled_from(["", "flow_speed: 0", "flow_speed: 0.7"]),
    st.sampled_from(["", "discharge: 2.5", "discharge: 55, volume: 40000000"]),
)  # fmt: skip


@settings(max_examples=40, deadline=None)
@given(st.lists(FIELDS, min_size=1, max_size=2))
def test_questions_on_any_water_are_fair(stations: list[tuple[str, ...]]) -> None:
    texts = [", ".join(part for part in (f"depth: {depth}, salinity: {salt}, temperature: {temp}", *rest) if part) for depth, salt, temp, *rest in stations]
    of = water(*texts)
    assert {} == rejected(of)
    for question in made(of).values():
        assert [] == list(flaws(question))
        if isinstance(question, NumberEntry):
            ranges = [question.accepted, *(slip.accepted for slip in question.slips)]
            assert not any(a.meets(b) for n, a in enumerate(ranges) for b in ranges[:n]), question.id
