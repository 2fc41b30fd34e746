"""Cycles side by side."""

from __future__ import annotations

from tests.kinds.small_records import demo, kind


def test_each_reservoir_has_a_line() -> None:
    subject = demo("cycle/wend_hollow_nitrogen")
    comparison = kind("cycle").compare([subject])
    assert [reservoir.label for reservoir in subject.record.reservoirs] == [row.label.split(": ")[1] for row in comparison.rows]
    assert [subject.facts["plants.stock"], subject.facts["plants.inflow"]] == list(comparison.rows[0].cells[:2])
