"""Marking guides follow from facts and chains: change a number, and prompt, set-up, answer and range change with it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from generator.course.course_file import MarkingRules
from generator.course.written_questions import read_written
from generator.kinds import all_kinds
from generator.questions.fresh import variants
from generator.records.checking import check
from generator.records.folder import RecordFile
from generator.records.located import located
from generator.written.guide import ANSWER, SETUP
from tests.kinds.small_records import CONTENT, library
from tests.written.small_question import AROUND, CALCULATION, CARRYING, CHAIN, HEAD, read, sound


def test_a_chain_gives_the_ideas_with_its_record_s_facts_in_them() -> None:
    (guide,) = sound(CHAIN).guides
    assert ["demand", "soil_dries", "seedlings_die"] == [line.id for line in guide.lines]
    grassland = library().subjects["biome/temperate_grassland"].facts
    assert grassland["harrow_plain.annual_precip"].shown in guide.lines[0].says
    assert "it is dry" in guide.lines[0].not_enough
    assert ("One mark for each idea, 3 at most.",) == guide.rules


def test_a_calculation_is_one_mark_for_the_set_up_and_one_for_the_answer() -> None:
    """Common practice: set-up with units, then the answer with its unit. 4 of 50 is 8 %, by hand."""
    (guide,) = sound(CALCULATION).guides
    assert [(SETUP, 1), (ANSWER, 1)] == [(line.id, line.marks) for line in guide.lines]
    assert guide.worked is not None
    assert ("8 %", "4 kJ m⁻² yr⁻¹ ÷ 50 kJ m⁻² yr⁻¹") == (guide.worked.entry.answer, guide.worked.setup)
    assert guide.worked.entry.accepted.low <= 8 <= guide.worked.entry.accepted.high
    assert ["1250 %"] == [slip.shown for slip in guide.worked.entry.slips]


def test_change_a_fact_and_set_up_answer_and_range_follow() -> None:
    text = (CONTENT / "pyramid/sill_lake.yaml").read_text("utf-8")
    assert 1 == text.count("    production: 50\n")
    kind = all_kinds()["pyramid"]
    changed, problems = check(located(text.replace("    production: 50\n", "    production: 40\n").replace("    respired: 150", "    respired: 160").encode(), "sill_lake.yaml"), kind.record)
    assert () == problems and changed is not None
    around = replace(AROUND, subjects={**AROUND.subjects, "pyramid/sill_lake": kind.subject("sill_lake", changed)})
    found, told = read_written(RecordFile("written", "small", located(f"{HEAD}{CALCULATION}\n".encode(), "small.yaml")), around)
    assert () == told and found is not None
    worked = found.guides[0].worked
    assert worked is not None
    assert ("10 %", "4 kJ m⁻² yr⁻¹ ÷ 40 kJ m⁻² yr⁻¹") == (worked.entry.answer, worked.setup)
    assert worked.entry.accepted.low > 9


def test_a_calculation_has_parallel_variants_each_with_its_own_key() -> None:
    worked = sound(CALCULATION).guides[0].worked
    assert worked is not None
    drawn = variants(worked.entry, library().catalogue, "small")
    assert len(drawn) >= 4
    for variant in drawn:
        part, whole = (fact.number for fact in variant.given)
        assert variant.accepted.low <= 100 * part / whole <= variant.accepted.high


@pytest.mark.parametrize(
    ("award", "rule"),
    [("{rule: any, of: 2}", "One mark for each idea; any 2 of them earn all 2."), ("{rule: all}", "2 for all ideas together; some of them earn none.")],
)
def test_other_rules_are_said_in_a_sentence(award: str, rule: str) -> None:
    text = CHAIN.replace("marks: 3", "marks: 2").replace("{rule: each}", award)
    assert (rule,) == sound(text).guides[0].rules


def test_a_part_that_carries_a_result_on_says_how_a_wrong_one_is_treated() -> None:
    rules = sound(f"{CALCULATION}\n{CARRYING}").guides[1].rules
    assert any(rule.startswith("A wrong result of part a that is carried on rightly loses no mark here, unless") for rule in rules)


def test_a_part_in_words_names_every_part_that_it_rests_on() -> None:
    words = CHAIN.replace("parts:\n", "").replace("id: a", "id: z").replace("needs: both", "needs: both\n    depends_on: [a, b]")
    rules = sound(f"{CALCULATION}\n{CARRYING}\n{words}")["z"].rules
    assert "What follows rightly from a wrong answer to part a or part b loses no mark here." in rules


def test_a_school_that_follows_nothing_up_and_forgives_units_says_so() -> None:
    rules = MarkingRules(follow_through=False, unit_missing_loses_answer_mark=False)
    found, _ = read(f"{CALCULATION}\n{CARRYING}", around=replace(AROUND, rules=rules))
    assert found is not None
    assert "A wrong result of part a is not followed up: the marks here need the right one." in found["b"].rules
    assert "A missing unit costs no mark here; a wrong one does." in found["b"].rules


OWN = "ideas: [{id: a, says: %s}, {id: b, says: B.}, {id: c, says: C., gives: drawback}]"


def with_own_ideas(says: str, more: str = "") -> str:
    text = CHAIN.replace("ideas: {from: 'biome/temperate_grassland#few_trees'}", OWN % says + more)
    return text.replace("earns: [demand]", "earns: [a]")


@pytest.mark.parametrize(
    ("says", "gives"),
    [("'{pyramid/sill_lake:pike.production} is left.'", "data"), ("'It is dry, so they die.'", "mechanism"), ("They die because it is dry.", "mechanism"), ("They die.", "")],
)
def test_an_idea_says_its_sort_or_its_words_do_or_it_stays_unnamed(says: str, gives: str) -> None:
    (guide,) = sound(with_own_ideas(says)).guides
    assert [gives, "", "drawback"] == [line.gives for line in guide.lines]


def test_sorts_of_ideas_come_with_a_chain() -> None:
    (guide,) = sound(CHAIN).guides
    assert ["data", "mechanism", "result"] == [line.gives for line in guide.lines]


def test_each_line_knows_the_record_that_teaches_it() -> None:
    """The chain's record; the part's own word; the record whose fact is quoted; then the question's word, and else none."""
    quoting = "'{pyramid/sill_lake:pike.production} is left.'"
    head = f"see: biome/savanna\n{HEAD}"

    def taught(text: str, head: str = HEAD) -> list[str]:
        return [line.teaches for guide in sound(text, head).guides for line in guide.lines]

    assert ["biome/temperate_grassland"] * 3 == taught(CHAIN, head)
    assert ["pyramid/sill_lake", "", ""] == taught(with_own_ideas(quoting))
    assert ["pyramid/sill_lake", "biome/savanna", "biome/savanna"] == taught(with_own_ideas(quoting), head)
    assert ["biome/tundra"] * 3 == taught(with_own_ideas(quoting, "\n    see: biome/tundra"), head)
    assert ["pyramid/sill_lake"] * 2 == taught(CALCULATION, head)
