"""The chart of a scenario: its curves, ends, axes and words agree with its facts."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from figures import StockCurves

from generator.kind import Subject
from generator.kinds.cycle.scenario_charts import _stock_ticks, _year_ticks
from tests.kinds.cycle.test_facts import text
from tests.kinds.cycle.test_model import LOOP
from tests.kinds.small_records import demo, kind, subject


def loop(scenario: str) -> Subject:
    return subject("cycle", f"{LOOP.format(uptake='')}scenarios: [{{id: s, name: S, {scenario}, assumes: a}}]\n")


def chart(of: Subject) -> StockCurves:
    _, found = kind("cycle").charts(of)
    assert isinstance(found, StockCurves)
    return found


def test_curves_begin_with_the_stock_now_and_end_with_the_fact() -> None:
    of = demo("cycle/wend_hollow_nitrogen")
    for panel, name in zip(chart(of).panels, ("plants", "soil_organic", "ammonium", "nitrate"), strict=True):
        assert of.facts[f"{name}.stock"].number == panel.curve[0][1] == panel.other[0][1]
        ends = (of.facts[f"fertiliser_doubled.{name}_{run}at_50"] for run in ("", "without_"))
        for fact, line, label, words in zip(
            ends, (panel.curve, panel.other), (panel.end_label, panel.other_end_label), ("with", "without"), strict=True
        ):  # fmt: skip
            assert (50.0, pytest.approx(fact.number)) == line[-1]
            assert f"{words} {fact.shown_number}" == label


def test_description_says_where_each_stock_goes_and_where_it_would_go() -> None:
    said = chart(demo("cycle/wend_hollow_nitrogen")).description
    assert "living plants from 210 to 263 kg N ha⁻¹ (without the change to 215)" in said


def test_stocks_that_hardly_change_are_named_and_not_drawn() -> None:
    found = chart(subject("cycle", text("a source pool 5", "stock: 100000", "units: {stock: Gt C, flux: Gt C/yr}\n") + "scenarios: [{id: s, name: S, years: 5, assumes: a}]\n"))
    assert ["Pool"] == [panel.label for panel in found.panels]
    water = [one for one in kind("cycle").charts(demo("cycle/water")) if isinstance(one, StockCurves)]
    assert "Ocean" not in [panel.label for panel in water[0].panels]
    assert "Hardly changing, by less than 0.5 %: ocean." in water[0].description


def test_without_a_change_there_is_one_line_and_no_key() -> None:
    found = chart(loop("years: 5"))
    assert ("", "") == found.key
    assert all(panel.other == () and panel.other_end_label == "" for panel in found.panels)
    assert not any("broken" in step for step in found.reading)
    assert "without" not in found.description


def test_reader_is_told_whether_axes_leave_out_zero() -> None:
    cut = chart(demo("cycle/wend_hollow_nitrogen"))
    assert any(panel.begins_above_zero for panel in cut.panels)
    assert "does not begin at zero" in cut.reading[-1]
    whole = chart(loop("change: [{into: soil, add: 900, at: 1}, {into: plants, add: 900, at: 1}], years: 40"))
    assert [False, False] == [panel.begins_above_zero for panel in whole.panels]
    assert "from zero" in whole.reading[-1]


def test_table_has_the_quarters_and_the_told_years_of_every_stock() -> None:
    found = chart(loop("change: [{flux: leaching, times: 2}], years: 40, tell: [3]")).table
    assert ["0", "3", "10", "20", "30", "40"] == [row[0] for row in found.rows]
    assert ("Year", "Soil", "Soil, without", "Plants", "Plants, without") == found.columns
    assert found.caption.endswith(": stocks in kg N ha⁻¹ by years from now; “without” leaves out the change")


def test_stock_that_nothing_changes_is_called_unchanged() -> None:
    (stop,) = [one for one in kind("cycle").charts(demo("cycle/global_carbon")) if one.title.startswith("Emissions stop")]
    assert "fossil fuel reserves unchanged at 930 Gt C (without the change to 836)" in stop.description


def test_pulse_is_a_jump_of_the_curve_and_in_the_table() -> None:
    found = chart(loop("change: [{into: soil, add: 50, at: 10}], years: 40"))
    curve = found.panels[0].curve
    (jump,) = [(a, b) for a, b in zip(curve, curve[1:], strict=False) if a[0] == b[0]]
    assert jump[0][1] + 50 == pytest.approx(jump[1][1])
    assert f"{jump[1][1]:.0f}" == dict((row[0], row[1]) for row in found.table.rows)["10"]


@settings(max_examples=200)
@given(st.floats(0.0, 1e10), st.floats(0.0, 1e10))
def test_axis_of_stocks_holds_them_with_two_to_six_different_words(one: float, other: float) -> None:
    low, high = sorted((round(one, 6), round(other, 6)))
    ticks = _stock_ticks(low, high)
    assert ticks[0][0] <= low + 1e-9 * high and high <= ticks[-1][0] * (1 + 1e-9) + 1e-9
    assert 2 <= len(ticks) <= 7
    if high - low > 1e-4 * high:
        assert len(ticks) == len({words for _, words in ticks})


def test_axis_begins_at_zero_where_the_stock_begins_near_it() -> None:
    assert ["0", "20", "40", "60", "80", "100"] == [words for _, words in _stock_ticks(12, 88)] or 0 == _stock_ticks(12, 88)[0][0]
    assert _stock_ticks(870, 970)[0][0] > 0


@pytest.mark.parametrize(
    ("years", "words"),
    [(50, ["0", "10", "20", "30", "40", "50"]), (20, ["0", "5", "10", "15", "20"]), (100, ["0", "20", "40", "60", "80", "100"]),
     (30, ["0", "10", "20", "30"]), (7, ["0", "1", "2", "3", "4", "5", "6", "7"]), (13, ["0", "6.5", "13"])],
)  # fmt: skip
def test_axis_of_years_has_equal_round_steps(years: float, words: list[str]) -> None:
    assert words == [word for _, word in _year_ticks(years)]
