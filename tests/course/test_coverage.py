"""Which records and questions serve each objective, and the gaps."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from generator.build import check
from generator.course.coverage import Coverage, coverage
from generator.course.coverage_text import WIDTH, markdown, table
from generator.diagnostics import ContentErrors
from tests.content.patches import BIOME, CYCLE, PYRAMID, Patch, write_course

OBJECTIVES = {
    "course.yaml": [
        ("    records: [cycle/wend", "    objectives: [{id: forms, says: Name the forms of nitrogen.}]\n    records: [cycle/wend"),
        ("    records: [pyramid/", "    objectives: [{id: transfer, says: Follow energy.}, {id: area, says: Find an area.}]\n    records: [pyramid/"),
    ]
}


def covered(folder: Path, change: dict[str, list[tuple[str, str]]] | None = None) -> Coverage:
    """The coverage of the small course with an objective or two in every topic, patched further."""
    both = {file: [*OBJECTIVES.get(file, []), *(change or {}).get(file, [])] for file in {**OBJECTIVES, **(change or {})}}
    return coverage(check(write_course(folder / "content", Patch(both))))


def serving(found: Coverage) -> dict[str, list[str]]:
    return {one.objective.id: [s.record for s in one.served_by] for topic in found.topics for one in topic.objectives}


def test_a_record_serves_all_objectives_of_its_topic_unless_it_says_which(tmp_path: Path) -> None:
    found = covered(tmp_path)
    pyramid = ["pyramid/sill_lake"]
    expected = {"read_climate": ["biome/temperate_grassland"], "forms": ["cycle/wend_hollow_nitrogen"], "transfer": pyramid, "area": pyramid}
    assert (expected, ()) == (serving(found), found.gaps)


def test_a_record_may_name_objectives_of_any_topic(tmp_path: Path) -> None:
    found = covered(tmp_path, {PYRAMID: [("data: invented", "data: invented\nserves: [area, read_climate]")]})
    assert [[], ["pyramid/sill_lake"]] == [serving(found)["transfer"], serving(found)["area"]]
    assert ["biome/temperate_grassland", "pyramid/sill_lake"] == serving(found)["read_climate"]
    assert ("energy: no record serves the objective transfer",) == found.gaps


def test_a_record_that_says_it_serves_none_is_a_gap(tmp_path: Path) -> None:
    gaps = covered(tmp_path, {CYCLE: [("data: invented", "data: invented\nserves: []")]}).gaps
    assert ("cycles: no record serves the objective forms", "cycle/wend_hollow_nitrogen: the record serves no objective") == gaps


def test_questions_count_for_the_objectives_of_their_record(tmp_path: Path) -> None:
    found = covered(tmp_path)
    asked = {serving.record: len(serving.questions) for serving in found.servings}
    for objective in (one for topic in found.topics for one in topic.objectives):
        assert objective.questions == sum(asked[serving.record] for serving in objective.served_by) >= 6


def test_a_topic_without_test_and_one_without_objective_are_gaps(tmp_path: Path) -> None:
    change = Patch({"course.yaml": [("covers: [biomes, cycles, energy]", "covers: [biomes]")]})
    gaps = coverage(check(write_course(tmp_path / "content", change))).gaps
    assert "cycles: the topic has no objective" in gaps
    assert "cycles: no test covers the topic" in gaps
    assert "cycle/wend_hollow_nitrogen: the record serves no objective" in gaps
    assert not [gap for gap in gaps if gap.startswith("biome")]


def test_a_record_without_questions_leaves_its_objective_without(tmp_path: Path) -> None:
    library = check(write_course(tmp_path / "content"))
    without = coverage(type(library)(**(vars(library) | {"questions": dict.fromkeys(library.questions, ())})))
    assert "biomes: no question serves the objective read_climate" in without.gaps


def test_a_record_of_no_topic_is_listed_last(tmp_path: Path) -> None:
    found = covered(tmp_path, {"course.yaml": [("records: [biome/temperate_grassland]", "records: []")]})
    assert "biome/temperate_grassland" == found.servings[-1].record
    assert "biome/temperate_grassland: the record serves no objective" in found.gaps


def test_a_record_without_a_page_covers_nothing(tmp_path: Path) -> None:
    found = covered(tmp_path, {PYRAMID: [("\ndata: invented", "\nuse: practice\ndata: invented")], "course.yaml": [("[pyramid/sill_lake]", "[]")]})
    assert "pyramid/sill_lake" not in [one.record for one in found.servings]


def test_an_unknown_objective_is_told_at_its_place(tmp_path: Path) -> None:
    with pytest.raises(ContentErrors) as raised:
        covered(tmp_path, {BIOME: [("data: invented", "serves: [read_climat]\ndata: invented")]})
    told = 'content/biome/temperate_grassland.yaml:3:10: serves[0]: expected an objective of course.yaml, found "read_climat"\n    mend: did you mean "read_climate"?'
    assert told == str(raised.value.diagnostics[0])


def test_two_objectives_under_one_id_are_told(tmp_path: Path) -> None:
    with pytest.raises(ContentErrors) as raised:
        covered(tmp_path, {"course.yaml": [("{id: forms,", "{id: transfer,"), ("{id: area,", "{id: read_climate,")]})
    told = [(one.field, one.found, one.mend) for one in raised.value.diagnostics]
    assert [
        ("topics[2].objectives[0].id", '"transfer" again', "rename one; it stands in cycles already"),
        ("topics[2].objectives[1].id", '"read_climate" again', "rename one; it stands in biomes already"),
    ] == told


def test_the_table_shows_objective_record_and_questions(tmp_path: Path) -> None:
    shown = table(covered(tmp_path, {"course.yaml": [("covers: [biomes, cycles, energy]", "covers: [biomes, cycles]")]}))
    assert shown.startswith("Biomes and climate (tested in First test)\n  read_climate: Read a climate diagram")
    assert re.search(r"    biome/temperate_grassland   \d+ questions: widest_gap, ", shown)
    assert shown.endswith("Gaps\n  energy: no test covers the topic")
    assert max(map(len, shown.splitlines())) <= WIDTH


def test_the_document_has_every_prompt_and_no_sign_that_breaks_its_tables(tmp_path: Path) -> None:
    found = covered(tmp_path, {"course.yaml": [("says: Find an area.", "says: 'Find A | B * C.'"), ("id: area,", "id: areas,")]})
    text = markdown(found)
    assert re.search(r"\| Find A \\\| B \\\* C\. \(`areas`\) \| Energy flow in Sill Lake \(`pyramid/sill_lake`\) \| \d+ questions: ", text)
    asked = sum(len(serving.questions) for serving in found.servings)
    assert asked == sum(line.startswith("| `") for line in text.splitlines())
    assert {4} == {line.replace(r"\|", "").count("|") - 1 for line in text.splitlines() if line.startswith("| `")}
