"""What is remembered is what would be made anew, whatever is edited in between."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from generator.build import check
from generator.kind import Subject
from generator.kinds import all_kinds
from generator.pages.fresh import fresh_script
from generator.pages.practice import practice_script
from generator.pages.record_page import record_page
from generator.pages.remembered import Remembered
from generator.pages.site import Site
from tests.content.patches import BIOME, CYCLE, PYRAMID, substitute, write_course

EDITS = {
    "a number": (BIOME, "66, 42, 34", "66, 52, 34"),
    "a title": (BIOME, "title: Temperate grassland", "title: Steppe"),
    "a word": ("vocabulary.yaml", "word: biome", "word: biom"),
    "a source": ("sources.yaml", "year: 2008", "year: 2009"),
    "the scenario": ("course.yaml", "scenario: The Long Traverse", "scenario: Another one"),
    "a hidden topic": ("course.yaml", "[cycle/wend_hollow_nitrogen]", "[cycle/wend_hollow_nitrogen]\n    show: false"),
    "a misconception": ("misconceptions.yaml", "status: from memory", "status: read"),
}


def site(content: Path) -> Site:
    return Site(library=check(content), kinds=all_kinds())


@pytest.fixture
def content(tmp_path: Path) -> Path:
    """A course in which a text of one record shows a number of another."""
    folder = write_course(tmp_path / "content")
    substitute(folder / PYRAMID, "from algae to pike:", "where {biome/temperate_grassland:harrow_plain.annual_precip} of rain falls:")
    return folder


@pytest.mark.parametrize("make", [record_page, fresh_script, practice_script])
@pytest.mark.parametrize("edit", list(EDITS))
def test_what_is_remembered_is_what_would_be_made(content: Path, edit: str, make: Callable[[Site, Subject[Any]], object]) -> None:
    remembered, before = Remembered(make), site(content)
    for subject in before.subjects:
        remembered(before, subject)
    file, old, new = EDITS[edit]
    text = (content / file).read_text("utf-8")
    assert old in text
    (content / file).write_text(text.replace(old, new, 1), "utf-8")
    now = site(content)
    assert [make(now, subject) for subject in now.subjects] == [remembered(now, subject) for subject in now.subjects]


def test_what_an_edit_cannot_change_is_not_made_anew(content: Path) -> None:
    made: list[str] = []
    remembered = Remembered(lambda site, subject: made.append(subject.id))

    def made_now() -> list[str]:
        made.clear()
        now = site(content)
        for subject in now.subjects:
            remembered(now, subject)
        return made

    assert ["biome/temperate_grassland", "cycle/wend_hollow_nitrogen", "pyramid/sill_lake"] == made_now()
    assert [] == made_now()
    substitute(content / CYCLE, "title: Nitrogen", "title: The nitrogen")
    assert ["cycle/wend_hollow_nitrogen"] == made_now()
    substitute(content / BIOME, "66, 42, 34", "66, 52, 34")
    assert ["biome/temperate_grassland", "pyramid/sill_lake"] == made_now()
