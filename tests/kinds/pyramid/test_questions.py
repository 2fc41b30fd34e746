"""Questions on pyramids: right answers, recognised slips, and what is left out where the record says too little."""

from __future__ import annotations

import pytest

from generator.kind import Subject
from generator.kinds.pyramid.questions import MOST_SUMS, WANTED, sums
from generator.questions.question import Made, NumberEntry, Rejected
from tests.kinds.pyramid.test_facts import pyramid
from tests.kinds.small_records import demo, library, made, rejected

PYRAMIDS = ["ember_spring", "sill_lake", "harrow_plain_grassland", "hollin_wood", "tillet_bay"]


def all_sums(of: Subject) -> dict[str, Made]:
    """The sums that come out by id, whether or not the record asks them."""
    return {item.id: item for item in sums(of, library().catalogue) if not isinstance(item, Rejected)}


def test_net_share_knows_the_wrong_part_and_the_wrong_whole() -> None:
    """Source: arithmetic on the record: 5800 / 9400, 3600 / 9400, 5800 / 3600 and 9400 / 5800 (nearly the same), the fraction; 3600 / 5800 is nearly the answer."""
    question = all_sums(demo("pyramid/sill_lake"))["net_share"]
    assert isinstance(question, NumberEntry)
    assert ("61.7 %", ["38.3 %", "161 %", "0.617 %"]) == (question.answer, [slip.shown for slip in question.slips])


def test_growth_share_knows_each_forgotten_loss_and_the_whole_of_another_share() -> None:
    """Source: arithmetic on the record: 580 / 2400; 1440 / 2400, 1540 / 2400, 580 / 1440, 1820 / 2400."""
    question = all_sums(demo("pyramid/sill_lake"))["growth_share"]
    assert isinstance(question, NumberEntry)
    assert ("24.2 %", ["60.0 %", "64.2 %", "40.3 %", "75.8 %", "0.242 %"]) == (question.answer, [slip.shown for slip in question.slips])


def test_uneaten_share_parts_what_is_lost_before_the_mouth_from_what_is_lost_behind_it() -> None:
    """Source: arithmetic on the record: (5800 - 2400) / (5800 - 580); 3400 / 5800, 1820 / 5220, 2400 / 5800, 3400 / 1820."""
    question = all_sums(demo("pyramid/sill_lake"))["uneaten_share"]
    assert isinstance(question, NumberEntry)
    assert ("65.1 %", ["58.6 %", "34.9 %", "41.4 %", "187 %", "0.651 %"]) == (question.answer, [slip.shown for slip in question.slips])


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
        "net_share": "the producers do not state gross production and respiration",
        "uneaten_share": "no level states what it eats beside what it and the level below build up",
        "growth_share": "no level states what is eaten, egested and respired",
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


@pytest.mark.parametrize("above", ["eaten: 600, egested: 100, respired: 300", "production: 40", "eaten: 40, egested: 10, respired: 30"])
def test_uneaten_share_needs_what_is_eaten_and_built_up(above: str) -> None:
    """More is eaten than grows there; what is eaten is not known; nothing is built up."""
    assert not [name for name in all_sums(pyramid("production: 500", above)) if name == "uneaten_share"]


@pytest.mark.parametrize("record", PYRAMIDS)
def test_no_prompt_tells_the_answer_to_another_question(record: str) -> None:
    """As the course asks them: what one sum supposes is not what another one comes to."""
    questions = library().questions[f"pyramid/{record}"]
    answers = {question.id: question.fact.shown_exactly for question in questions if question.fact is not None}
    assert len(answers) >= 4
    assert [] == [(asked, q.id) for asked, answer in answers.items() for q in questions if q.id != asked and f" {answer}" in q.prompt]


def test_area_names_what_one_animal_and_what_the_level_takes() -> None:
    prompt = all_sums(demo("pyramid/sill_lake"))["supporting_area"].prompt
    assert "One animal of the level “Pike” must eat 38" in prompt
    assert "The whole level eats 20 kJ m⁻² yr⁻¹." in prompt


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


def test_efficiency_in_two_units_knows_the_step_that_is_left_out() -> None:
    """Source: arithmetic on the record: 30 of 375 kcal are 8 %; with 126 kJ as printed, 126 / 375 are 33.6 %, and 126 / (375 / 4.184) 141 %."""
    question = made(demo("pyramid/ember_spring"))["mixed_units"]
    assert isinstance(question, NumberEntry)
    assert "375 kcal m⁻² yr⁻¹" in question.prompt and "126 kJ m⁻² yr⁻¹" in question.prompt
    assert ("8.00 %", ["33.6 %", "141 %"]) == (question.answer, [slip.shown for slip in question.slips][:2])


def test_record_in_kilojoules_is_asked_nothing_in_two_units() -> None:
    assert "mixed_units" not in all_sums(demo("pyramid/sill_lake"))


def test_stored_energy_is_asked_where_a_level_holds_less_than_its_eaters() -> None:
    """Source: arithmetic on the record: 3.6 x 21 / (1.8 x 20) = 2.1; 360 / 2600 = 0.138."""
    question = made(demo("pyramid/tillet_bay"))["stored_below"]
    assert isinstance(question, NumberEntry)
    assert "2.10" == question.answer and "0.138" in {slip.shown for slip in question.slips}
    assert "stored_below" not in all_sums(demo("pyramid/sill_lake"))


@pytest.mark.parametrize("record", PYRAMIDS)
def test_no_drawn_share_is_mistaken_for_a_tenth(record: str) -> None:
    asked = [q for q in library().questions[f"pyramid/{record}"] if q.id in ("transfer_efficiency", "production_efficiency", "mixed_units")]
    assert asked
    assert all(isinstance(q, NumberEntry) and q.fact and not 8.0 < q.fact.number < 12.5 for q in asked)


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
    assert {"mixed_units", "stored_below", "biomass_turnover_time", "primary_production_required", "supporting_area"} & set(all_sums(demo(f"pyramid/{record}"))) <= set(asked)


def test_pyramids_do_not_all_ask_the_same() -> None:
    asked = [frozenset(made(demo(f"pyramid/{record}"))) for record in PYRAMIDS]
    assert len(set(asked)) == len(asked)


def test_match_of_shares_takes_the_place_of_the_sums_of_one_level() -> None:
    asked = set(made(demo("pyramid/ember_spring")))
    assert "shares_match" in asked and not {"assimilation_efficiency", "production_efficiency"} & asked


def test_one_question_is_on_what_becomes_of_energy_or_of_matter() -> None:
    asked = [{"where_it_goes", "what_returns"} & set(made(demo(f"pyramid/{record}"))) for record in PYRAMIDS]
    assert all(len(one) == 1 for one in asked) and len(set.union(*asked)) == 2
