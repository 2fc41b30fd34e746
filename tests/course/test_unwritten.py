"""Texts that a new record leaves to its author are told as long as they stand there."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.build import check
from generator.course.new_record import create
from generator.course.template import placeholders
from generator.course.unwritten import UNWRITTEN, unwritten
from generator.kinds import all_kinds
from tests.content.patches import ROOT, substitute, write_course

CONCEPT = all_kinds()["concept"]
SENTENCE = "Write the first paragraph here. Keep sentences short."


@pytest.fixture
def content(tmp_path: Path) -> Path:
    return write_course(tmp_path / "content")


def told(content: Path) -> list[str]:
    """Place and field of each warning."""
    return [f"{one.place.line}:{one.place.column} {one.field}" for one in check(content).warnings if one.rule == UNWRITTEN]


def test_each_unwritten_text_is_told_at_its_place(content: Path) -> None:
    create(content, all_kinds(), "concept", "x")
    assert ["7:3 summary", "8:11 question", "10:12 sections[0].title", "12:7 sections[0].text", "28:10 questions[0].ask"] == told(content)


def test_a_text_is_told_as_long_as_one_of_its_placeholders_stands(content: Path) -> None:
    path = create(content, all_kinds(), "concept", "x").path
    substitute(path, SENTENCE, "Tides come and go.")
    assert "14:7 sections[0].text" in told(content)
    substitute(path, "Write the second paragraph here. A number of another record can stand in braces, with the record's kind and name.", "So it is.")
    assert [] == [one for one in told(content) if "sections[0].text" in one]


def test_the_warning_can_be_accepted(content: Path) -> None:
    path = create(content, all_kinds(), "biome", "x").path
    assert ["7:3 summary", "20:11 stations[0].name"] == told(content)
    path.write_text(path.read_text("utf-8") + "\naccepted_warnings:\n  - {warning: unwritten, reason: Written next week.}\n", "utf-8")
    assert {"not_in_course"} == {one.rule for one in check(content).warnings}


def test_words_that_any_text_may_hold_are_told_only_where_they_are_all_of_it() -> None:
    assert "This one" in placeholders(CONCEPT)
    assert [("a",)] == [one.path for one in unwritten(CONCEPT, {"a": "This one", "b": "This one is right"})]
    assert [("c", 0)] == [one.path for one in unwritten(CONCEPT, {"c": [f"Now. {SENTENCE}"]})]


def test_the_demo_course_has_nothing_unwritten() -> None:
    assert [] == told(ROOT / "content")
