"""Models and near misses of command words: facts are put in and follow; a wrong name is told at its place, and class tests stay secret."""

from __future__ import annotations

from dataclasses import replace

import pytest

from generator.course.command_words import with_facts
from generator.course.glossaries import CommandWord
from generator.records.located import located
from tests.kinds.small_records import library
from tests.written.small_question import AROUND

PIKE = "{pyramid/sill_lake:pike.production}"


def word(model: str, near_miss: str = "Many.") -> CommandWord:
    return CommandWord.model_validate({"id": "count", "word": "Count", "asks": "a number", "not_enough": "many", "ideas": "one", "model": model, "near_miss": near_miss})


def file_of(model: str) -> bytes:
    return f"command_words:\n  - id: count\n    model: '{model}'\n    near_miss: Many.\n".encode()


def test_facts_are_put_into_both_and_follow_the_record() -> None:
    lake = library().subjects["pyramid/sill_lake"]
    fact = replace(lake.facts["pike.production"], value=7.0, written="7")
    changed = replace(lake, facts={**lake.facts, "pike.production": fact})
    for subject, shown in ((lake, "4 kJ m⁻² yr⁻¹"), (changed, "7 kJ m⁻² yr⁻¹")):
        around = replace(AROUND, subjects={**AROUND.subjects, lake.id: subject})
        words, told = with_facts({"count": word(f"It is {PIKE}.", f"About {PIKE}.")}, located(file_of(PIKE), "c.yaml"), around)
        assert () == told and (f"It is {shown}.", f"About {shown}.") == (words["count"].model, words["count"].near_miss)


@pytest.mark.parametrize(
    ("model", "found"),
    [("{pyramid/sill_lake:pik.production}", "pik.production"), ("{pike.production}", "pike.production"), ("{pyramid/sill:pike.production}", "pyramid/sill"), ("Pike {", "a brace that stands alone")],
)  # fmt: skip
def test_a_name_that_leads_nowhere_is_told_at_its_place(model: str, found: str) -> None:
    _, told = with_facts({"count": word(model)}, located(file_of(model), "c.yaml"), AROUND)
    assert 1 == len(told) and found in told[0].found and 3 == told[0].place.line


def test_a_number_that_is_kept_for_class_tests_is_refused() -> None:
    around = replace(AROUND)
    vars(around)["kept"] = frozenset({PIKE.strip("{}")})
    _, told = with_facts({"count": word(PIKE)}, located(file_of(PIKE), "c.yaml"), around)
    assert ["a fact that students may see"] == [one.expected for one in told]
