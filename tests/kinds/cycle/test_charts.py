"""The diagram of a cycle: boxes, arrows, words and table agree with the facts."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from figures.drawing.flux_diagram import arranged
from figures.drawing.flux_layout import PlacedArrow
from tests.kinds.cycle.test_facts import cycle
from tests.kinds.small_records import demo, kind


def test_description_of_the_example_names_the_largest_and_the_human_fluxes() -> None:
    """Source: read off the record."""
    chart, *_ = kind("cycle").charts(demo("cycle/wend_hollow_nitrogen"))
    for words in (
        "4 reservoirs and 14 fluxes", "“Soil organic matter” with 4800 kg N ha⁻¹", "litter from living plants to soil organic matter, 95 ± 8",
        "People drive exhaust, fertiliser and felling.",
    ):  # fmt: skip
        assert words in chart.description


def test_air_lies_above_and_a_stream_below_what_they_exchange_with() -> None:
    chart, *_ = kind("cycle").charts(demo("cycle/wend_hollow_nitrogen"))
    boxes = {box.id: box.lies for box in chart.boxes}
    assert {"air": "above", "stream": "below", "store": "", "plants": ""} == {name: lies for name, lies in boxes.items() if name in ("air", "stream", "store", "plants")}


def test_ends_outside_the_budget_are_boxes_without_a_stock() -> None:
    (chart,) = kind("cycle").charts(cycle("a source pool 5\nb pool sink 3, cause: people"))
    assert {"pool": "10 Gt C", "source": "", "sink": ""} == {box.id: box.stock_label for box in chart.boxes}
    assert {"a": False, "b": True} == {arrow.id: arrow.by_people for arrow in chart.arrows}


def test_table_shows_a_rate_with_its_spread_and_an_unknown_one_as_unknown() -> None:
    (chart,) = kind("cycle").charts(cycle("a source pool {value: 5, plus_minus: 2}\nb pool sink unknown"))
    assert ["5 ± 2", "not known"] == [row[3] for row in chart.table.rows]


def test_an_unknown_rate_is_no_rate_of_zero_and_the_words_say_so() -> None:
    (chart,) = kind("cycle").charts(cycle("a source pool 5\nb pool sink unknown"))
    assert {"a": 5, "b": None} == {arrow.id: arrow.rate for arrow in chart.arrows}
    assert "No rate is known for b." in chart.description
    assert any("hollow" in step for step in chart.reading)


def test_reading_steps_explain_only_what_the_diagram_shows() -> None:
    (plain,) = kind("cycle").charts(cycle("a source pool 5"))
    (rich,) = kind("cycle").charts(cycle("a source pool {low: 5, high: 9}, cause: people\nb pool sink 4"))
    assert not any(word in " ".join(plain.reading) for word in ("hollow", "Broken", "range"))
    assert all(word in " ".join(rich.reading) for word in ("Broken", "range"))


def test_formula_in_a_name_keeps_its_capitals_inside_a_sentence() -> None:
    (chart,) = kind("cycle").charts(cycle("a source pool 5", "name: CO2 in the air, stock: 10"))
    assert "a from source to CO2 in the air" in chart.description


def test_one_of_a_sort_is_not_a_plural() -> None:
    (chart,) = kind("cycle").charts(cycle("a source pool 5"))
    assert chart.description.startswith("1 reservoir and 1 flux.")


def distance(label: tuple[float, float, float, float], arrow: PlacedArrow) -> float:
    """From a label to the nearest edge of an arrow [px]."""
    left, top, right, bottom = label
    return min(math.hypot(max(left - x, 0, x - right), max(top - y, 0, y - bottom)) for x, y in arrow.course.points) - arrow.demand.width / 2


@pytest.mark.parametrize("name", ("global_carbon", "global_nitrogen", "phosphorus", "water", "wend_hollow_nitrogen"))
@pytest.mark.parametrize("narrow", (False, True))
def test_every_label_of_the_demo_stands_nearer_to_its_own_arrow_than_to_any_other(name: str, narrow: bool) -> None:
    chart, *_ = kind("cycle").charts(demo(f"cycle/{name}"))
    arrows = arranged(replace(chart, narrow=narrow)).arrows
    for arrow in arrows:
        others = [distance(arrow.label, other) for other in arrows if other is not arrow]
        assert distance(arrow.label, arrow) < min(others), arrow.demand.arrow.label
