"""What is in a library, and that one problem hides no other."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.build import check
from generator.course.library import Library, taught
from generator.diagnostics import ContentErrors
from tests.content.patches import BIOME, CYCLE, PYRAMID, Patch, write_course

HIDDEN = Patch({"course.yaml": [("[cycle/wend_hollow_nitrogen]", "[cycle/wend_hollow_nitrogen]\n    show: false")]})


def library(tmp_path: Path, patch: Patch = Patch()) -> Library:
    return check(write_course(tmp_path / "content", patch))


def wrong_fields(content: Path) -> list[str]:
    """`file: field` of every diagnostic."""
    with pytest.raises(ContentErrors) as raised:
        check(content)
    return [f"{one.place.file}: {one.field}" for one in raised.value.diagnostics]


def test_a_library_holds_every_record_with_its_facts_and_questions(tmp_path: Path) -> None:
    found = library(tmp_path)
    assert ["biome/temperate_grassland", "cycle/wend_hollow_nitrogen", "pyramid/sill_lake"] == list(found.subjects)
    assert 327.0 == found.subjects["biome/temperate_grassland"].facts["harrow_plain.annual_precip"].value
    assert [] == [record for record in found.subjects if len(found.questions[record]) < 6]


def test_the_sources_of_methods_stand_beside_those_of_the_course(tmp_path: Path) -> None:
    assert {"RICKLEFS2008", "LINDEMAN1942"} <= set(library(tmp_path).sources)


def test_records_of_a_hidden_topic_are_checked_but_not_taught(tmp_path: Path) -> None:
    found = library(tmp_path, HIDDEN)
    assert "cycle/wend_hollow_nitrogen" in found.subjects
    assert ["biome/temperate_grassland", "pyramid/sill_lake"] == list(taught(found))


@pytest.mark.parametrize("use", ["practice", "paper"])
def test_a_record_that_says_what_it_is_for_need_not_stand_in_a_topic(tmp_path: Path, use: str) -> None:
    found = library(tmp_path, Patch({"course.yaml": [("    records: [cycle/wend_hollow_nitrogen]", "")], CYCLE: [("\ndata: invented", f"\nuse: {use}\ndata: invented")]}))
    assert () == found.warnings and "cycle/wend_hollow_nitrogen" not in taught(found)
    assert "cycle/wend_hollow_nitrogen" in found.subjects


def test_questions_are_missed_only_where_a_page_would_ask_them(tmp_path: Path) -> None:
    one_level = "title: A pond\ndata: invented\nuse: practice\nsummary: A pond.\nunits: {energy_flow: kJ/m2/yr}\nlevels: [{id: algae, name: Algae, production: 900}, {id: fleas, name: Water fleas, production: 90}]\n"
    assert () == library(tmp_path / "practice", Patch(add={"pyramid/pond.yaml": one_level})).warnings
    shown = one_level.replace("use: practice\n", "")
    assert {"question_left_out", "not_in_course"} == {one.rule for one in library(tmp_path / "page", Patch(add={"pyramid/pond.yaml": shown})).warnings}


def test_a_text_may_name_facts_of_its_own_record_and_of_others(tmp_path: Path) -> None:
    found = library(tmp_path)
    table = found.facts_for(found.subjects["pyramid/sill_lake"])
    assert "4 kJ m⁻² yr⁻¹" == table["pike.production"].shown
    assert "327 mm" == table["biome/temperate_grassland:harrow_plain.annual_precip"].shown
    assert len(table) == len(list(table)) == len(set(table))


def test_a_folder_that_is_not_there_is_one_problem(tmp_path: Path) -> None:
    assert ["nowhere: "] == wrong_fields(tmp_path / "nowhere")


def test_a_missing_course_file_does_not_hide_a_wrong_record(tmp_path: Path) -> None:
    patch = Patch({PYRAMID: [("energy_flow: kJ/m2/yr", "energy_flow: kJ/m2/ry")]}, remove=["course.yaml"])
    expected = ["content/course.yaml: ", "content/pyramid/sill_lake.yaml: units.energy_flow"]
    assert expected == wrong_fields(write_course(tmp_path / "content", patch))


def test_a_record_that_does_not_add_up_is_not_unknown_to_texts_of_others(tmp_path: Path) -> None:
    far = "{cycle/wend_hollow_nitrogen:nitrate.outflow}"
    patch = Patch({CYCLE: [("flux: kg N/ha/yr", "flux: kg N/ha")], PYRAMID: [("{pike.production}", far)]})
    assert ["content/cycle/wend_hollow_nitrogen.yaml: units.flux"] == wrong_fields(write_course(tmp_path / "content", patch))


def test_numbers_beyond_measure_are_told_with_names_that_are_unknown(tmp_path: Path) -> None:
    patch = Patch({BIOME: [("[12, 10, 16,", "[12, 1e200, 16,"), ("[biome, evapo", "[biom, evapo")]})
    file = "content/biome/temperate_grassland.yaml"
    expected = [f"{file}: stations[0].monthly_precip[1]", f"{file}: vocabulary[0]"]
    assert expected == wrong_fields(write_course(tmp_path / "content", patch))


def test_words_misconceptions_and_sources_may_be_left_out_altogether(tmp_path: Path) -> None:
    """A course of one record without any of them needs none of the shared files but the misconceptions of its questions."""
    record = "title: Lake\ndata: invented\nsummary: A lake.\nunits: {energy_flow: kJ/m2/yr}\nlevels:\n"
    record += "  - {id: algae, gross_production: 900, respiration: 300}\n"
    record += "  - {id: fleas, eaten: 200, egested: 60, respired: 80}\n"
    course = "title: One lake\ntopics: [{id: energy, title: Energy, records: [pyramid/lake]}]\n"
    patch = Patch(
        remove=["biome", "cycle", "pyramid", "course.yaml", "vocabulary.yaml", "sources.yaml"],
        add={"pyramid/lake.yaml": record, "course.yaml": course},
    )
    assert {} == library(tmp_path, patch).vocabulary


def test_a_broken_shared_file_does_not_call_an_acceptance_idle(tmp_path: Path) -> None:
    """Without misconceptions no question is made, so nobody knows whether one would have been left out."""
    accepted = "accepted_warnings: [{warning: question_left_out, reason: As it is.}]\nvocabulary: [biome"
    content = write_course(tmp_path / "content", Patch({BIOME: [("vocabulary: [biome", accepted)]}))
    assert wrong_if_any(content) == [f"content/{BIOME}: accepted_warnings[0].warning"]
    (content / "misconceptions.yaml").write_text("misconceptions: [{id: clim.x}]\n", "utf-8")
    assert not [one for one in wrong_fields(content) if "accepted_warnings" in one]


def wrong_if_any(content: Path) -> list[str]:
    """As `wrong_fields`, of content that has only warnings."""
    return [f"{one.place.file}: {one.field}" for one in check(content).warnings]
