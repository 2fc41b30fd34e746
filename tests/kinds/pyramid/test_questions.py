"""Questions on pyramids: right answers, recognised slips, and what is left out where the record says too little."""

from __future__ import annotations

import pytest

from generator.kind import Subject
from generator.kinds.pyramid.questions import MOST_SUMS, WANTED, sums
from generator.questions.question import Choice, Made, NumberEntry, Rejected
from tests.kinds.pyramid.test_facts import pyramid
from tests.kinds.small_records import demo, library, made, rejected

PYRAMIDS = ["ember_spring", "sill_lake", "harrow_plain_grassland", "hollin_wood", "tillet_bay"]


def all_sums(of: Subject) -> dict[str, Made]:
    """The sums that come out by id, whether or not the record asks them."""
    return {item.id: item for item in sums(of, library().catalogue) if not isinstance(item, Rejected)}


def test_net_production_offers_gross_production_and_respiration() -> None:
    """Source: arithmetic on the record."""
    question = all_sums(demo("pyramid/sill_lake"))["net_production"]
    assert isinstance(question, Choice)
    assert ["3600", "5800", "9400", "13"] == [option.text.split(" ")[0].split("\u202f")[0] for option in question.options]


def test_consumer_production_knows_each_forgotten_loss() -> None:
    """Source: arithmetic on the record: 2400 - 960, 2400 - 860, 960 + 860."""
    question = all_sums(demo("pyramid/sill_lake"))["consumer_production"]
    assert isinstance(question, NumberEntry)
    assert {"1440", "1540", "1820"} == {slip.shown.split(" ")[0] for slip in question.slips}


def test_transfer_efficiency_knows_the_usual_slips() -> None:
    """Source: arithmetic on the record: 50/4, 100 - 8, 4/50/100 as percent, 4/580, and the rule of a tenth."""
    question = all_sums(demo("pyramid/sill_lake"))["transfer_efficiency"]
    assert isinstance(question, NumberEntry)
    assert ("8 %", {"1250 %", "92 %", "0.08 %", "0.690 %", "10 %"}) == (question.answer, {slip.shown for slip in question.slips})


def test_supporting_area_knows_square_metres() -> None:
    """Source: arithmetic on the record, 38 000 / 20 = 1900 m2."""
    question = all_sums(demo("pyramid/sill_lake"))["supporting_area"]
    assert isinstance(question, NumberEntry)
    assert {"1900 ha", "19 ha"} <= {slip.shown for slip in question.slips}


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
    question = all_sums(of)["supporting_area"]
    assert isinstance(question, NumberEntry)
    assert ("20\u202f000 ha", ["en.area-inverse"]) == (question.answer, [slip.misconception for slip in question.slips])
    assert "m²" not in question.prompt + question.solution


def test_difference_that_rounding_hides_is_not_asked_for() -> None:
    assert "not_passed_on" in rejected(pyramid("production: 500", "production: 0.4"))


@pytest.mark.parametrize("record", PYRAMIDS)
def test_no_prompt_tells_the_answer_to_another_question(record: str) -> None:
    """As the course asks them: what one sum supposes is not what another one comes to."""
    questions = library().questions[f"pyramid/{record}"]
    answers = {question.id: question.fact.shown_exactly for question in questions if question.fact is not None}
    assert len(answers) >= 4
    assert [] == [(asked, q.id) for asked, answer in answers.items() for q in questions if q.id != asked and f" {answer}" in q.prompt]


def test_area_names_what_one_animal_and_what_the_level_takes() -> None:
    prompt = all_sums(demo("pyramid/sill_lake"))["supporting_area"].prompt
    assert "Each of the pike has to eat 38" in prompt
    assert "all of them together eat 20 kJ m⁻² yr⁻¹" in prompt


def test_assimilation_efficiency_knows_what_is_egested_for_what_is_taken_up() -> None:
    """Source: arithmetic on the record: (2400 - 960) / 2400 = 60 %, 960 / 2400 = 40 %, 2400 / 1440 = 167 %."""
    question = all_sums(demo("pyramid/sill_lake"))["assimilation_efficiency"]
    assert isinstance(question, NumberEntry)
    assert ("60 %", {"40 %", "167 %", "0.6 %"}) == (question.answer, {slip.shown for slip in question.slips})


def test_production_efficiency_knows_the_wrong_whole() -> None:
    """Source: arithmetic on the record: 50 / 200 = 25 %, 50 / 260 = 19.2 %, 150 / 200 = 75 %, 200 / 50 = 400 %, and the rule of a tenth."""
    question = all_sums(demo("pyramid/sill_lake"))["production_efficiency"]
    assert isinstance(question, NumberEntry)
    assert ("25 %", {"19.2 %", "75 %", "400 %", "0.25 %", "10 %"}) == (question.answer, {slip.shown for slip in question.slips})


def test_production_that_another_question_asks_for_is_not_told() -> None:
    questions = all_sums(pyramid("production: 500", "eaten: 40, egested: 10, respired: 20"))
    assert "assimilation_efficiency" in questions
    assert "production_efficiency" not in questions


def test_kilojoules_know_division_and_the_thousand() -> None:
    """Source: arithmetic on the record: 10 x 4.184 = 41.84; 10 / 4.184 = 2.39."""
    question = made(demo("pyramid/ember_spring"))["kilojoules"]
    assert isinstance(question, NumberEntry)
    assert "the respiration of garfish" in question.prompt
    assert ("41.8 kJ m⁻² yr⁻¹", ["2.39", "10\u202f000", "10.0"]) == (question.answer, [slip.shown.removesuffix(" kJ m⁻² yr⁻¹") for slip in question.slips])


def test_record_in_kilojoules_is_not_asked_for_them() -> None:
    assert "kilojoules" not in all_sums(demo("pyramid/sill_lake"))


def test_turnover_is_asked_where_a_level_outweighs_the_one_below() -> None:
    """Source: arithmetic on the record: 2.0 x 23 / 30 years are 560 d; 30 / 46 upside down; 2 / 30 years without the content."""
    question = made(demo("pyramid/tillet_bay"))["biomass_turnover_time"]
    assert isinstance(question, NumberEntry)
    assert ("560 d", ["0.652 d", "24.4 d", "1.53 d"]) == (question.answer, [slip.shown for slip in question.slips])
    assert "biomass_turnover_time" not in all_sums(demo("pyramid/sill_lake"))


def test_catch_knows_a_step_too_many_and_fresh_mass_for_carbon() -> None:
    """Source: arithmetic on the record: 1.2 / 9 x 1000, and 12 000 / 9, 1200, 0.0012 / 9 and 1.2 / 9."""
    question = made(demo("pyramid/tillet_bay"))["primary_production_required"]
    assert isinstance(question, NumberEntry)
    assert "133 kg C ha⁻¹ yr⁻¹" == question.answer
    assert [("1330", "en.one-many"), ("1200", "en.fresh-carbon"), ("0.000133", "en.direction"), ("0.133", "en.same-level")] == [
        (slip.shown.split(" ")[0], slip.misconception) for slip in question.slips
    ]


@pytest.mark.parametrize("record", PYRAMIDS)
def test_every_pyramid_asks_some_of_the_sums_and_other_forms_beside(record: str) -> None:
    asked = made(demo(f"pyramid/{record}"))
    of_sums = [name for name in asked if name in all_sums(demo(f"pyramid/{record}"))]
    assert len(asked) >= WANTED and MOST_SUMS <= len(of_sums) <= MOST_SUMS + 1
    assert {"kilojoules", "biomass_turnover_time", "primary_production_required", "supporting_area"} & set(all_sums(demo(f"pyramid/{record}"))) <= set(asked)


def test_pyramids_do_not_all_ask_the_same() -> None:
    asked = [frozenset(made(demo(f"pyramid/{record}"))) for record in PYRAMIDS]
    assert len(set(asked)) == len(asked)


def test_match_of_shares_takes_the_place_of_the_sums_of_one_level() -> None:
    asked = set(made(demo("pyramid/ember_spring")))
    assert "shares_match" in asked and not {"assimilation_efficiency", "production_efficiency"} & asked


def test_one_question_is_on_what_becomes_of_energy_or_of_matter() -> None:
    asked = [{"where_it_goes", "what_returns"} & set(made(demo(f"pyramid/{record}"))) for record in PYRAMIDS]
    assert all(len(one) == 1 for one in asked) and len(set.union(*asked)) == 2
