"""Cycles side by side."""

from __future__ import annotations

from tests.kinds.small_records import demo, kind


def test_each_reservoir_has_a_line() -> None:
    subject = demo("cycle/wend_hollow_nitrogen")
    comparison = kind("cycle").compare([subject])
    assert [reservoir.label for reservoir in subject.record.reservoirs] == [row.label for row in comparison.rows]
    assert [subject.facts["plants.stock"], subject.facts["plants.inflow"]] == list(comparison.rows[0].cells[:2])


def test_reservoirs_without_a_dot_are_named() -> None:
    """Nobody burns fossil fuels in again, and the water record gives no flow of ice: both stand in the table, without a turnover time to draw."""
    (chart,) = kind("cycle").compare([demo("cycle/global_carbon"), demo("cycle/water")]).charts
    assert not {"Fossil fuel reserves", "Ice on land"} & {time.label for time in chart.times}
    assert all(name in chart.reading[-1] for name in ("“Fossil fuel reserves” of “Carbon on Earth”", "“Ice on land”", "“Groundwater”"))
