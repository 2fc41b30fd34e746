"""Templates of new records: what they write is YAML that says what was meant, and they know what waits for an author."""

from __future__ import annotations

import re

import pytest

from generator.course.template import flow, placeholders, rendered, text_scalar
from generator.kinds import all_kinds
from generator.records.checking import check
from generator.records.located import located


def test_scalars_are_read_back_as_they_were() -> None:
    for text in ("plain", "12", "a: b", "- a", "yes", "~", '"', "'", "#x", "é", "1.0"):
        assert text == located(f"a: {text_scalar(text)}".encode(), "x").value["a"]
    assert {"a": {"low": 1, "x": "y"}, "b": [1, "z z"]} == located(flow({"a": {"low": "1", "x": "y"}, "b": ["1", "z z"]}).encode(), "x").value


@pytest.mark.parametrize("kind", list(all_kinds()))
def test_every_field_behind_a_sign_can_be_used_by_taking_away_the_sign_and_one_space(kind: str) -> None:
    """As the second line of each template says; what the fields name need not be there."""
    text = rendered(all_kinds()[kind], "A title")
    assert "To use it, take away the # and one space in each of its lines" in text.splitlines()[1]
    used = re.sub(r"^( *)# (?= *(?:- |\w+: ))|^( *)# (?= *\w+:$)", r"\1\2", text, flags=re.MULTILINE)
    file = located(used.encode(), "r.yaml")
    record, problems = check(file, all_kinds()[kind].record)
    assert () == problems
    assert record.explanations and len(file.value) > len(located(text.encode(), "r.yaml").value) + 4


@pytest.mark.parametrize("kind", list(all_kinds()))
def test_a_template_marks_what_waits_for_an_author(kind: str) -> None:
    summary = located(rendered(all_kinds()[kind], "A title").encode(), "r.yaml").value["summary"]
    assert summary in placeholders(all_kinds()[kind])
