"""Questions on cycles: right answers, recognised slips, and no wrong option that is right."""

from __future__ import annotations

import re

import pytest

from generator.kind import Subject
from generator.kinds.cycle.budget_questions import BudgetQuestions
from generator.kinds.cycle.process_questions import ProcessQuestions
from generator.questions.question import Choice, Matching, NumberEntry, Rejected
from tests.kinds.cycle.test_facts import UNITS, cycle
from tests.kinds.small_records import demo, library, made, rejected, subject

FORMS = """
a source pool 5, process: fixation, starts_as: N2, ends_as: NH3, done_by: bacteria, scene: Clover grows on sand
b source pool 5, process: capture, starts_as: N2, ends_as: NH3, done_by: factories, scene: A factory joins gases
c source pool 5, process: nitrification, starts_as: NH4+, ends_as: NO3-, done_by: bacteria, scene: Manure soaks into the ground
d pool sink 5, process: denitrification, starts_as: NO3-, ends_as: N2, done_by: bacteria, scene: A field stands under water
"""
NITROGEN = UNITS.replace("Gt C", "Gt N")


def right(question: object) -> str:
    assert isinstance(question, Choice)
    return next(option.text for option in question.options if option.right)


def test_turnover_question_knows_the_inverted_division() -> None:
    """Source: arithmetic on the record, 4800/94 = 51.1, 94/4800 = 0.0196, 4800/(98 + 94) = 25."""
    question = made(demo("cycle/wend_hollow_nitrogen"))["turnover_time"]
    assert isinstance(question, NumberEntry)
    slips = {slip.misconception: slip.shown for slip in reversed(question.slips)}
    assert ("51.1 yr", "0.0196 yr", "25.0 yr") == (question.answer, slips["carb.residence-inverse"], slips["carb.residence-both"])


def test_outflow_question_knows_each_way_to_miscount() -> None:
    """Source: arithmetic on the record: the pool gains 20 and loses 7 + 3 + 2 = 12; the largest of these is 7."""
    question = made(cycle("a source pool 20\nb pool sink 7\nc pool sink 3\nd pool sink 2"))["outflow"]
    assert isinstance(question, NumberEntry)
    assert "12 Gt C yr⁻¹" == question.answer
    assert {"32", "20", "7", "5"} == {slip.shown.split(" ")[0] for slip in question.slips}


def test_outflow_is_not_asked_where_the_wrong_arrows_give_it_as_well() -> None:
    """Source: the record: nitrate loses 77 and gains 77, ammonium 112 and 112, plants 99 and 99."""
    asked = made(demo("cycle/wend_hollow_nitrogen"))
    assert "outflow" not in asked and isinstance(asked["share_of_outflow"], NumberEntry)
    steady = BudgetQuestions(cycle("a source pool 5\nb pool sink 5"), library().catalogue).outflow()
    assert Rejected("outflow", "as much flows in as out, so that whoever adds up the wrong arrows is right") == steady


def test_share_of_a_mixed_process_is_asked_as_a_number() -> None:
    question = made(cycle("a source pool 9, process: fixation\nb source pool 3, process: fixation, cause: people"))["human_share"]
    assert isinstance(question, NumberEntry)
    assert ("25 %", ["33.3 %", "75 %", "0.25 %"]) == (question.answer, [slip.shown for slip in question.slips])


def test_what_people_bring_in_is_told_from_what_nature_brings_and_people_take_out() -> None:
    """Source: arithmetic on the record: 20 + 5 of fertiliser and exhaust, 12 + 3 + 2 by nature, 4 felled."""
    question = made(demo("cycle/wend_hollow_nitrogen"))["brought_in"]
    assert isinstance(question, NumberEntry)
    assert ("25", ["42", "29", "20", "17"]) == (question.answer.split(" ")[0], [slip.shown.split(" ")[0] for slip in question.slips])


NATURAL = "n source pool 3, process: rain\n"


@pytest.mark.parametrize(
    "fluxes",
    [
        "a source pool 9, cause: people, process: dung",
        "a source pool 9, cause: people, process: dung\nb source pool 2, cause: people, process: dung",
        "a source pool 9, cause: people, process: dung\nb source pool 2, cause: people, process: smoke\nc source pool 1, cause: both",
        "a source pool 9, cause: people, process: dung\nb source pool {low: 2, high: 9}, cause: people, process: smoke",
    ],
)
def test_inputs_of_people_are_added_up_only_where_they_are_several_sorts_of_single_numbers(fluxes: str) -> None:
    assert isinstance(ProcessQuestions(cycle(NATURAL + fluxes), library().catalogue).brought_in(), Rejected)


def test_inputs_of_people_alone_leave_nothing_to_pick_from() -> None:
    of = cycle("a source pool 9, cause: people, process: dung\nb source pool 2, cause: people, process: smoke")
    assert isinstance(ProcessQuestions(of, library().catalogue).brought_in(), Rejected)


def test_many_inputs_are_not_named_in_one_option() -> None:
    """Two fields have four inputs, which no option can hold."""
    assert isinstance(ProcessQuestions(demo("cycle/two_fields_nitrogen"), library().catalogue).human_share(), Rejected)


OTHER_DRIVEN = "a source pool 9\nb source pool 3, cause: people\nc pool sink 4, cause: people"


def test_without_a_mixed_process_a_single_human_input_is_asked_for() -> None:
    assert "B" == right(made(cycle(OTHER_DRIVEN))["human_share"])


def test_where_people_cause_nothing_but_an_input_all_inputs_are_asked_for() -> None:
    """Of fluxes that nature causes and a mine, the mine would be picked without a look at the diagram."""
    questions = made(demo("cycle/phosphorus"))
    assert "human_share" not in questions
    assert "Mining and weathering" == right(questions["inputs"])


def test_inflow_of_a_single_arrow_is_not_asked_for_as_a_sum() -> None:
    assert "inflow" not in made(demo("cycle/sallow_moss_carbon"))


def test_solution_shows_the_sum_behind_a_share_and_an_outflow() -> None:
    mixed = made(cycle("a source pool 9, process: fixation\nb source pool 3, process: fixation, cause: people"))
    assert "People cause “B”: 3 Gt C yr⁻¹ ÷ (3 Gt C yr⁻¹ + 9 Gt C yr⁻¹) = 25 %." == mixed["human_share"].solution
    questions = made(demo("cycle/sallow_moss_carbon"))
    assert questions["outflow"].solution.endswith("1.0 t C ha⁻¹ yr⁻¹ + 0.2 t C ha⁻¹ yr⁻¹ = 1.2 t C ha⁻¹ yr⁻¹.")


def test_scenes_are_matched_with_forms_that_only_one_of_them_has() -> None:
    """Fixation and capture both turn N2 into NH3, so that one of them stays away; a way back that nothing takes fits nothing."""
    question = made(cycle(FORMS, head=NITROGEN))["match_forms"]
    assert isinstance(question, Matching)
    assert {"Clover grows on sand", "Manure soaks into the ground", "A field stands under water"} == {pair.text for pair in question.pairs}
    assert {"N₂ → NH₃", "NH₄⁺ → NO₃⁻", "NO₃⁻ → N₂"} == {pair.partner for pair in question.pairs}
    others = [partner for partner in question.partners if partner not in {pair.partner for pair in question.pairs}]
    assert len(others) == 1 and others[0] in {"NH₃ → N₂", "NO₃⁻ → NH₄⁺", "N₂ → NO₃⁻"}


def test_way_back_that_a_process_without_a_scene_takes_is_no_spare_answer() -> None:
    """Of the three scenes only that of nitrification leads a way that nothing leads back."""
    back = "e pool sink 5, process: release, starts_as: NH3, ends_as: N2\nf pool sink 5, process: assimilation, starts_as: N2, ends_as: NO3-"
    question = made(cycle(f"{FORMS}{back}", head=NITROGEN))["match_forms"]
    assert isinstance(question, Matching)
    assert {"NO₃⁻ → NH₄⁺"} == set(question.partners) - {pair.partner for pair in question.pairs}


def test_forms_are_not_asked_by_the_names_of_processes_which_a_table_of_the_page_tells() -> None:
    without = re.sub(", scene: .*", "", FORMS)
    assert "match_forms" not in made(cycle(without, head=NITROGEN))
    names = {flux.process for flux in demo("cycle/wend_hollow_nitrogen").record.fluxes}
    assert not names & {pair.text.lower() for pair in made(demo("cycle/wend_hollow_nitrogen"))["match_forms"].pairs}


def test_bare_cycle_says_why_each_question_is_left_out() -> None:
    """A record of the fewest fields: no flux out, no people, no forms."""
    assert {
        "outflow": "no reservoir has fluxes on both sides",
        "times_as_long": "fewer than three reservoirs have a stock and an outflow stated as single numbers",
        "turnover_time": "no reservoir has a stock stated as one number and an outflow",
        "human_share": "people cause no flux that enters from outside",
        "way": "no way along 4 arrows or more can be walked in one order only",
        "statements": "the data bear 1 statements, expected 4",
        "match_forms": "fewer than three processes with forms of their own are told as a `scene:`",
    } == rejected(cycle("a source pool 5"))


RANGE = "{low: 2, high: 6}"
THREE = """
units: {{stock: Gt C, flux: Gt C/yr}}
outside: [x, y]
reservoirs: [{{id: pond, stock: {pond}}}, {{id: soil, stock: {soil}}}, {{id: rock, stock: {rock}}}]
fluxes:
  - {{id: a, from: x, to: pond, rate: {a}}}
  - {{id: b, from: pond, to: soil, rate: {b}}}
  - {{id: c, from: soil, to: rock, rate: {c}}}
  - {{id: d, from: rock, to: y, rate: {d}}}
"""


def three(**changes: object) -> Subject:
    """Matter runs through pond, soil and rock; it stays for 1, 10 and 100 years."""
    numbers = {"pond": 4, "soil": 40, "rock": 400, "a": 4, "b": 4, "c": 4, "d": 4}
    return subject("cycle", THREE.format(**(numbers | changes)))


def test_inflow_knows_each_way_to_miscount() -> None:
    """Source: arithmetic on the record: the pool gains 4 + 3 = 7 and loses 5, 12 in all, 2 on balance."""
    question = made(cycle("a source pool 4\nb source pool 3\nc pool sink 5"))["inflow"]
    assert isinstance(question, NumberEntry)
    assert ("7 Gt C yr⁻¹", {"12", "5", "2"}) == (question.answer, {slip.shown.split(" ")[0] for slip in question.slips})


def test_no_number_is_asked_for_where_all_fluxes_are_ranges() -> None:
    of = three(a=RANGE, b=RANGE, c=RANGE, d=RANGE)
    no_exact = "no reservoir has all its fluxes stated as single numbers"
    assert {"outflow": no_exact, "yearly_share": "no stock grows or shrinks by fluxes that are all stated as single numbers"}.items() <= rejected(of).items()
    assert "no reservoir has a stock stated as one number and an outflow" == rejected(of)["turnover_time"]
    assert {"new_steady"} >= {question.id for question in made(of).values() if isinstance(question, NumberEntry)}


def test_numbers_are_asked_of_reservoirs_without_a_range() -> None:
    """Only the rock has single numbers on both sides."""
    asked = made(three(a=RANGE, b=RANGE, d=5))
    assert all("the rock" in asked[name].prompt.lower() for name in ("outflow", "turnover_time"))


def test_inflow_that_equals_an_outflow_is_not_asked_for() -> None:
    """That outflow is asked for, or told, in another question."""
    for of in (three(), three(a=RANGE, b=RANGE)):
        assert isinstance(BudgetQuestions(of, library().catalogue).inflow(), Rejected)


@pytest.mark.parametrize("record", ["global_carbon", "global_nitrogen", "phosphorus", "water", "wend_hollow_nitrogen"])
def test_no_prompt_tells_the_answer_to_another_question(record: str) -> None:
    questions = made(demo(f"cycle/{record}")).values()
    answers = {question.id: question.answer for question in questions if isinstance(question, NumberEntry)}
    assert answers
    assert [] == [(asked, q.id) for asked, answer in answers.items() for q in questions if q.id != asked and f" {answer}" in q.prompt]


def test_share_of_a_process_with_a_range_is_not_asked_as_a_number() -> None:
    """Source: arithmetic; 3 of 3 + 7, the middle of the range, would be 30 %."""
    of = cycle("a source pool {low: 5, high: 9}, process: fixation\nb source pool 3, process: fixation, cause: people\nc pool sink 4, cause: people")
    assert 30 == of.facts["fixation.human_share"].value
    assert "%" not in repr(made(of)["human_share"])


@pytest.mark.parametrize(("label", "matter"), [("Gt C", "carbon"), ("kg N/ha", "nitrogen"), ("mm", "matter")])
def test_question_names_the_matter_of_the_units(label: str, matter: str) -> None:
    of = subject(
        "cycle",
        f"units: {{stock: {label}, flux: {label}/yr}}\noutside: [x, y]\nreservoirs: [{{id: p, stock: 1}}, {{id: q, stock: 1}}]\n"
        "fluxes: [{id: a, from: x, to: p, rate: 1, cause: people}, {id: b, from: x, to: p, rate: 1}, {id: c, from: p, to: q, rate: 1}]\n",
    )
    assert f"bring {matter} in" in made(of)["inputs"].prompt


def test_share_of_an_outflow_knows_the_wrong_whole_and_the_rest() -> None:
    """Source: arithmetic on the record: 40 of 113, of 73, and 73 of 113 thousand."""
    question = BudgetQuestions(demo("cycle/water"), library().catalogue).share_of_outflow()
    assert isinstance(question, NumberEntry)
    assert ("35.4 %", ["54.8 %", "64.6 %", "0.354 %"]) == (question.answer, [slip.shown for slip in question.slips])


def test_share_is_left_to_an_author_who_asks_for_two() -> None:
    assert "share_of_outflow" not in made(demo("cycle/water")) and "share_of_outflow" in made(demo("cycle/wend_hollow_nitrogen"))


@pytest.mark.parametrize("fluxes", ["a source pool 4\nb pool sink 3\nc pool sink 1", "a source pool 4\nb pool sink 4", "a source pool 4\nb pool sink 0\nc pool sink 0"])
def test_share_of_an_outflow_needs_a_second_reservoir_with_several(fluxes: str) -> None:
    assert isinstance(BudgetQuestions(cycle(fluxes), library().catalogue).share_of_outflow(), Rejected)


def test_outflow_that_another_prompt_tells_is_asked_for_only_where_there_are_few_others() -> None:
    """Of the carbon cycle the other prompts tell what leaves air and sea; plants and soils have one flux that is nearly all."""
    assert "outflow" not in made(demo("cycle/global_carbon"))
    assert [] == BudgetQuestions(demo("cycle/global_carbon"), library().catalogue).untold()
    assert "outflow" in made(cycle("a source pool 9\nb pool sink 4"))
