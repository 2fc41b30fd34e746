"""Concepts with something changed at random: never an exception but the report, and what passes can be written."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.content.patches import Patch, write_course
from tests.course.test_fuzz import NUMBERS, SORTS, WORDS, changed, holds

RECORD = "concept/apart.yaml"
GOLDEN = Path(__file__).parents[2] / "golden" / "concept" / "record.yaml"
TEXT = GOLDEN.read_text("utf-8").replace("[golden]", "[biome]") + (
    "people: [{problem: p, cause: c, effect: e, actions: [{do: d, works_by: w, drawback: b}]}]\n"
).replace("e: e", "e: '{pyramid/sill_lake:pike.production}'") + "accepted_warnings: []\n"
FACTS = ["fact: pyramid/sill_lake:pike.production", "fact: cycle/wend_hollow_nitrogen:nitrate.stock", "fact: pyramid/sill_lake:pike.x", "answer: A"]
CHANGES = st.lists(
    st.tuples(st.sampled_from(SORTS), st.integers(0, 10_000), st.integers(0, 10_000), st.sampled_from(NUMBERS), st.sampled_from([*WORDS, *FACTS])),
    min_size=1,
    max_size=3,
)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The small course with a concept."""
    made = tmp_path_factory.mktemp("concepts")
    write_course(made / "content", Patch({"course.yaml": [("[pyramid/sill_lake]", "[pyramid/sill_lake, concept/apart]")]}, add={RECORD: TEXT}))
    return made


def test_the_record_that_changes_start_from_is_fine(folder: Path) -> None:
    holds(folder, {RECORD: TEXT})
    assert (folder / "work" / "pages" / "concept" / "apart.md").is_file()


@settings(deadline=None, max_examples=60, derandomize=True, database=None)
@given(changes=CHANGES)
def test_a_concept_with_changes_is_told_or_written(folder: Path, changes: list[tuple[str, int, int, str, str]]) -> None:
    text = TEXT
    for change in changes:
        text = changed(text, *change)
    holds(folder, {RECORD: text})
