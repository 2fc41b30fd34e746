"""Questions on pyramids: right answers, recognised slips, and what is left out where the record says too little."""

from __future__ import annotations

import pytest

from generator.questions.question import Choice, NumberEntry
from tests.kinds.pyramid.test_facts import pyramid
from tests.kinds.small_records import demo, made, rejected


def test_net_production_offers_gross_production_and_respiration() -> None:
    """Source: arithmetic on the record."""
    question = made(demo("pyramid/sill_lake"))["net_production"]
    assert isinstance(question, Choice)
    assert ["3600", "5800", "9400", "13"] == [option.text.split(" ")[0].split("\u202f")[0] for option in question.options]


def test_consumer_production_knows_each_forgotten_loss() -> None:
    """Source: arithmetic on the record: 2400 - 960, 2400 - 860, 960 + 860."""
    question = made(demo("pyramid/sill_lake"))["consumer_production"]
    assert isinstance(question, NumberEntry)
    assert {"1440", "1540", "1820"} == {slip.shown.split(" ")[0] for slip in question.slips}


def test_transfer_efficiency_knows_the_usual_slips() -> None:
    """Source: arithmetic on the record: 50/4, 100 - 8, 4/50/100 as percent, 4/580."""
    question = made(demo("pyramid/sill_lake"))["transfer_efficiency"]
    assert isinstance(question, NumberEntry)
    assert ("8.00 %", {"1250 %", "92.0 %", "0.0800 %", "0.690 %"}) == (question.answer, {slip.shown for slip in question.slips})


def test_supporting_area_knows_square_metres() -> None:
    """Source: arithmetic on the record, 38 000 / 20 = 1900 m2."""
    question = made(demo("pyramid/sill_lake"))["supporting_area"]
    assert isinstance(question, NumberEntry)
    assert {"1900 ha", "19.0 ha"} <= {slip.shown for slip in question.slips}


def test_levels_that_state_little_say_what_is_left_out() -> None:
    assert {
        "net_production": "the producers do not state gross production and respiration",
        "consumer_production": "no level states what is eaten, egested and respired",
        "supporting_area": "the record states no need of a top consumer",
    } == rejected(pyramid("production: 500", "production: 40"))


def test_nothing_produced_leaves_no_number_to_ask_for() -> None:
    assert "transfer_efficiency" in rejected(pyramid("production: 0", "production: 0"))


def test_flow_on_a_hectare_needs_no_turning_of_areas() -> None:
    """4000 MJ over 0.2 MJ on a hectare is 20 000 ha; nobody would be left with square metres."""
    top = "top_consumer: {level: l1, needs: {value: 4000, unit: MJ/yr}, measured_as: production}\n"
    of = pyramid("production: 500", "production: 0.2", more=top, head="units: {energy_flow: MJ/ha/yr}\n")
    question = made(of)["supporting_area"]
    assert isinstance(question, NumberEntry)
    assert ("20\u202f000 ha", ["en.area-inverse"]) == (question.answer, [slip.misconception for slip in question.slips])
    assert "m²" not in question.prompt + question.solution


def test_difference_that_rounding_hides_is_not_asked_for() -> None:
    assert "not_passed_on" in rejected(pyramid("production: 500", "production: 0.4"))


@pytest.mark.parametrize("record", ["sill_lake", "harrow_plain_grassland", "hollin_wood", "tillet_bay"])
def test_no_prompt_tells_the_answer_to_another_question(record: str) -> None:
    """A production that is asked for stands in no other prompt: there it is to be read off the pyramid."""
    questions = made(demo(f"pyramid/{record}")).values()
    answers = {question.id: question.fact.shown_exactly for question in questions if question.fact is not None}
    assert len(answers) >= 4
    assert [] == [(asked, q.id) for asked, answer in answers.items() for q in questions if q.id != asked and f" {answer}" in q.prompt]


def test_area_names_what_one_animal_and_what_the_level_takes() -> None:
    prompt = made(demo("pyramid/sill_lake"))["supporting_area"].prompt
    assert "One animal of the level “Pike” has to eat 38" in prompt
    assert "The level as a whole, all its animals together, eats 20 kJ m⁻² yr⁻¹" in prompt
