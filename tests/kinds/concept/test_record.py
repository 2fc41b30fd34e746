"""Concepts: what a record may say, and how its blocks of text become paragraphs."""

from __future__ import annotations

import pytest

from generator.kinds.concept.record import ConceptRecord, paragraphs
from generator.records.checking import check
from generator.records.located import located
from tests.kinds.small_records import CONTENT, kind

HEAD = "title: A title\nsummary: A summary.\n"
SECTIONS = "sections: [{title: One, text: Some text.}]\n"
QUESTIONS = "questions: [{id: q, ask: What?, needs: data, number: {value: 2}, because: So.}]\n"


def read(text: str) -> tuple[ConceptRecord | None, list[tuple[str, str, str]]]:
    found, problems = check(located(text.encode(), "small.yaml"), ConceptRecord)
    return found, [(one.field, one.expected, one.found) for one in problems]


def texts(block: str) -> list[str]:
    """The paragraphs of a section whose text is written as this block, indented as YAML wants it."""
    lines = "".join(f"      {line}\n" if line else "\n" for line in block.splitlines()[1:])
    found, problems = read(f"{HEAD}{QUESTIONS}sections:\n  - title: One\n    text: {block.splitlines()[0]}\n{lines}")
    assert [] == problems
    return [" ".join(one.split()) for one in found.sections[0].paragraphs]


def test_title_summary_sections_and_questions_are_enough() -> None:
    found, problems = read(HEAD + SECTIONS + QUESTIONS)
    assert ([], None, None) == (problems, found.data, found.table)


def test_what_is_missing_is_told() -> None:
    assert [("questions", "this field", "none"), ("sections", "this field", "none")] == read(HEAD)[1]


def test_sections_of_one_title_are_told() -> None:
    sections = "sections: [{title: One, text: a}, {title: One, text: b}]\n"
    assert [("sections[1].title", "each of them once", '"One" again (first at [0])')] == read(HEAD + sections + QUESTIONS)[1]


@pytest.mark.parametrize("mark", ["|", ">", "|-", ">-"])
def test_blank_lines_part_paragraphs_in_every_sort_of_block(mark: str) -> None:
    assert ["One line that goes on.", "The next.", "The last."] == texts(f"{mark}\nOne line\nthat goes on.\n\nThe next.\n\nThe last.\n")


def test_blank_lines_part_paragraphs_of_plain_text() -> None:
    assert ["One line that goes on.", "The next."] == texts("One line\nthat goes on.\n\nThe next.\n")


def test_sentence_that_ends_with_its_line_begins_no_paragraph_where_blank_lines_are_left() -> None:
    assert ["One. Two.", "Three."] == [" ".join(one.split()) for one in paragraphs("One.\nTwo.\n\nThree.")]


def test_several_blank_lines_are_one_break() -> None:
    assert ["One.", "Two."] == paragraphs("\nOne.\n\n \n\nTwo.\n")


def test_concept_has_no_numbers_of_its_own() -> None:
    found, _ = read(HEAD + SECTIONS + QUESTIONS)
    assert ({}, False) == (dict(kind("concept").facts(found)), kind("concept").computes)


def test_readme_example_is_a_record() -> None:
    readme = (CONTENT.parent / "README.md").read_text("utf-8").partition("### A concept without numbers")[2]
    found, problems = read(readme.partition("```yaml\n")[2].partition("```")[0])
    assert ([], ["two_a_day", "how_much"]) == (problems, [question.id for question in found.questions])
