"""What is wrong with a written question is told at its place, all at once."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from generator.course.written_questions import read_written
from generator.kind import PartOf
from generator.kinds import all_kinds
from generator.records.folder import RecordFile
from generator.records.located import located
from tests.conventions.project import ROOT
from tests.written.small_question import AROUND, CALCULATION, CARRYING, CHAIN, HEAD, READING, read, told


def test_a_sound_question_has_nothing_to_tell() -> None:
    assert [] == told(CHAIN) == told(CALCULATION)


@pytest.mark.parametrize(
    ("text", "old", "new", "field", "expected"),
    [
        (CHAIN, "command_word: explain", "command_word: explian", "parts[0].command_word", "a word of command_words.yaml"),
        (CHAIN, "temperate_grassland#few_trees", "temperate_grasland#few_trees", "parts[0].ideas.from", "a record"),
        (CHAIN, "temperate_grassland#few_trees", "temperate_grassland#no_trees", "parts[0].ideas.from", "an explanation of biome/temperate_grassland"),
        (CHAIN, "needs: both", "needs: both\n    see: biome/savana", "parts[0].see", "a record"),
        (CHAIN, "marks: 3", "marks: 4", "parts[0].marks", "3, one for each idea"),
        (CHAIN, "{rule: each}", "{rule: any}", "parts[0].award", "`of:` with `rule: any`, and only there"),
        (CHAIN, "{rule: each}", "{rule: any, of: 2}", "parts[0].award.of", "3, one idea for each mark"),
        (CHAIN, "{rule: each}", "{rule: any, of: 3}", "parts[0].award", "more than 3 ideas to choose from"),
        (CHAIN, "{rule: each}", "{setup: 3}", "parts[0].award", "`rule: each`, `all` or `any` beside ideas"),
        (CHAIN, "earns: [demand]", "earns: [demnd]", "parts[0].samples[0].earns[0]", "an idea of this part"),
        (CHAIN, "needs: both", "needs: both\n    depends_on: z", "parts[0].depends_on", "an earlier part"),
        (CHAIN, "Explain why few trees grow", "Explain why {harrow_plain.annual_precip} falls", "parts[0].prompt", "a fact of a record"),
        (CHAIN, "on Harrow Plain.", "on {biome/temperate_grassland:harrow_plain.rain}.", "parts[0].prompt", "a fact of biome/temperate_grassland"),
        (CALCULATION, "expression: part / whole", "expression: part / all", "parts[0].calculate.expression", "names that stand under `given:`"),
        (CALCULATION, "expression: part / whole", "expression: part //", "parts[0].calculate.expression", "an expression"),
        (CALCULATION, "unit: percent", "unit: mm", "parts[0].calculate.expression", "an expression with a number for an answer"),
        (CALCULATION, "pike.production", "pike.prodction", "parts[0].calculate.given.part", "a fact of pyramid/sill_lake"),
        (CALCULATION, "whole: 'pyramid/sill_lake:perch.production'", "whole: 'part:z'", "parts[0].calculate.given.whole", "an earlier part"),
        (CALCULATION, "text: All.", "text: '{answr}'", "parts[0].samples[0].text", "a fact of a record, or what a calculation gives"),
        (CALCULATION, "text: All.", "text: '{slip.2}'", "parts[0].samples[0].text", "a fact of a record, or what a calculation gives"),
        (CALCULATION.replace("text: All.", "text: '{slip.1}'"), "{expression: whole / part,", "{expression: part / whole,", "parts[0].samples[0].text", "a slip with a number of its own"),
        (CALCULATION, "prompt: Calculate the share.", "prompt: 'Calculate {answer}.'", "parts[0].prompt", "a fact of a record"),
        (READING, "harrow_plain.elevation", "harrow_plain.elevatin", "parts[0].read.fact", "a fact of biome/temperate_grassland"),
        (READING, "harrow_plain.elevation", "harrow_plain.wettest_month", "parts[0].read.fact", "a fact that is one known number"),
        (READING, "gridline: 100", "gridline: 0", "parts[0].read.gridline", "more than 0"),
        (READING, "award: {answer: 1}", "award: {setup: 1}", "parts[0].award", "`award: {answer: 1}`"),
        (f"{CALCULATION}\n{CARRYING}".replace("id: b", "id: b\n    depends_on: a"), "{share: 'part:a'}", "{share: 'pyramid/sill_lake:pike.transfer_efficiency'}", "parts[1].calculate.given", "the result of part a"),
        (CALCULATION, "carb.pct-whole", "carb.pct-hole", "parts[0].calculate.slips[0].misconception", "an entry of misconceptions.yaml"),
        (CALCULATION, "{setup: 1, answer: 1}", "{setup: 1}", "parts[0].award", "marks for set-up and answer that make 2"),
    ],
)  # fmt: skip
def test_each_fault_is_told_at_its_place(text: str, old: str, new: str, field: str, expected: str) -> None:
    assert old in text
    found = told(text.replace(old, new))
    assert (field, expected) in [(at, what) for at, what, _ in found]
    assert read(text.replace(old, new))[0] is None


@pytest.mark.parametrize("prompt", ["Collect water from the stream.", "Design a test of the soil.", "Heat the leaves."])
def test_work_in_field_or_laboratory_is_refused_without_cautions(prompt: str) -> None:
    text = CHAIN.replace("Explain why few trees grow on Harrow Plain.", prompt)
    assert [("parts[0]", "cautions beside work in field or laboratory", "none")] == told(text)
    assert [] == told(text.replace("award:", "cautions: [Only with your teacher.]\n    award:"))


def test_stimulus_is_one_thing_and_charts_are_there() -> None:
    head = HEAD.replace("{text: Look at the share of the trees.}", "{text: Look at the share of the trees., chart: 'biome/savanna#climate_diagram.teva_crossing'}, {chart: 'biome/savanna#climate_diagram.teva'}")
    assert [
        ("stimulus[0]", "one of `text`, `chart` or `table`"), ("stimulus[1].chart", "a chart of biome/savanna"),
    ] == [(field, expected) for field, expected, _ in told(CHAIN, head)]  # fmt: skip


def test_places_that_are_kept_for_class_tests_are_not_named() -> None:
    """The demo keeps none, so that one is made so."""
    pyramid = all_kinds()["pyramid"]
    hidden = replace(pyramid, parts=lambda record: {name: PartOf(part.label, "paper") for name, part in pyramid.parts(record).items()})
    around = replace(AROUND, kinds={**AROUND.kinds, "pyramid": hidden})
    _, problems = read_written(RecordFile("written", "small", located(f"{HEAD}{CALCULATION}\n".encode(), "small.yaml")), around)
    assert {"a fact that students may see"} == {one.expected for one in problems}


LOOK = "title: A title\ntopic: biomes\nstimulus: [{%s}]\n"


def test_a_chart_of_a_place_for_practice_can_be_shown() -> None:
    assert [] == told(CHAIN, LOOK % "chart: biome/savanna#climate_diagram.dry_fig_camp")


def test_charts_facts_and_chains_of_a_record_that_is_kept_for_class_tests_cannot_be_named() -> None:
    """The demo keeps none, so that two are made so."""
    kept = {
        record: replace(of, record=of.record.model_copy(update={"use": "paper"}))
        for record, of in AROUND.subjects.items() if record in ("pyramid/sill_lake", "biome/temperate_grassland")
    }  # fmt: skip
    around = replace(AROUND, subjects={**AROUND.subjects, **kept})

    def fields(part: str, head: str = HEAD) -> set[tuple[str, str]]:
        _, problems = read_written(RecordFile("written", "small", located(f"{head}{part}\n".encode(), "small.yaml")), around)
        return {(one.field.rpartition(".")[2], one.expected) for one in problems}

    assert {("part", "a fact that students may see"), ("whole", "a fact that students may see")} == fields(CALCULATION)
    assert ("from", "an explanation of biome/temperate_grassland") in fields(CHAIN)
    assert ("table", "a chart of pyramid/sill_lake") in fields(CALCULATION, LOOK % "table: pyramid/sill_lake#energy_pyramid")


def test_the_question_that_readme_shows_has_nothing_to_tell() -> None:
    blocks = re.findall(r"^```yaml\n(.*?)^```", (ROOT / "README.md").read_text("utf-8"), re.MULTILINE | re.DOTALL)
    (shown,) = (block for block in blocks if "command_word:" in block)
    found, problems = read_written(RecordFile("written", "shown", located(shown.encode(), "shown.yaml")), replace(AROUND, topics=("energy",)))
    assert () == problems and found is not None


@pytest.mark.parametrize(
    ("claim", "told_as"),
    [
        ("pyramid/sill_lake:pike.production < 5", None), ("pyramid/sill_lake:pike.production > 5", "pyramid/sill_lake:pike.production > 5, for the idea says so"),
        ("pyramid/sill_lake:pike.production +", "a comparison of facts"),
    ],
)  # fmt: skip
def test_idea_that_is_no_longer_true_is_told(claim: str, told_as: str | None) -> None:
    ideas = f"ideas: [{{id: a, says: A few trees., holds_if: '{claim}'}}, {{id: b, says: B.}}, {{id: c, says: C.}}]"
    text = CHAIN.replace("ideas: {from: 'biome/temperate_grassland#few_trees'}", ideas).replace("earns: [demand]", "earns: [a]")
    assert [("parts[0].ideas[0].holds_if", told_as)] * bool(told_as) == [(field, expected) for field, expected, _ in told(text)]
