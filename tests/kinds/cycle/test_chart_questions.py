"""Questions whose answer is picked on a chart of a cycle: right labels by the record's numbers, slips by what was read instead."""

from __future__ import annotations

import pytest

from generator.kinds.cycle.chart_questions import ChartQuestions
from generator.questions.question import ChartReading, Made
from tests.kinds.cycle.test_facts import cycle
from tests.kinds.small_records import demo, library, subject

RANGE = "{low: 2, high: 9}"


def asked(of: object, sort: str) -> Made:
    return getattr(ChartQuestions(of, library().catalogue), sort)()


def read(of: object, sort: str) -> tuple[tuple[str, ...], dict[str, str]]:
    """The right labels, and the wrong idea behind each wrong label."""
    question = asked(of, sort)
    assert isinstance(question, ChartReading)
    return question.right, {label: slip.misconception for slip in question.slips for label in slip.labels}


def test_largest_flux_of_people_is_not_the_widest_arrow() -> None:
    of = cycle("a source pool 9\nb source pool 3, cause: people\nc pool sink 5, cause: people\nd pool sink 7, cause: both\ne pool sink 4")
    assert (("C",), {"A": "cyc.widest-arrow", "B": "cyc.first-of-its-sort", "D": "cyc.cause-overlooked"}) == read(of, "largest_by_people")


@pytest.mark.parametrize("flux", ["c pool sink 3, cause: people", f"c pool sink {RANGE}, cause: people", "c pool sink 4", "c pool sink unknown, cause: people"])
def test_tied_or_unsure_or_single_fluxes_of_people_are_not_asked_about(flux: str) -> None:
    assert not isinstance(asked(cycle(f"a source pool 9\nb source pool 3, cause: people\n{flux}"), "largest_by_people"), ChartReading)


def test_without_people_only_nature_brings_something_in() -> None:
    of = subject("cycle", BOXES.format(sea=1000, b=5, d=1) + "  - {id: e, from: x, to: sea, rate: 9, cause: people}\n  - {id: f, from: x, to: soil, rate: 3}\n")
    right, slips = read(of, "natural_input")
    inner = dict.fromkeys("ABC", "cyc.inner-input")
    assert (("F",), inner | {"E": "cyc.cause-overlooked", "D": "cyc.output-as-input"}) == (right, slips)


@pytest.mark.parametrize("fluxes", ["a source pool 9\nb source pool 3", "a source pool 9, cause: people", "a source pool 9, cause: both\nb source pool 3\nc source pool 1, cause: people"])
def test_natural_input_needs_people_and_nature_apart(fluxes: str) -> None:
    assert not isinstance(asked(cycle(fluxes), "natural_input"), ChartReading)


BOXES = """
units: {{stock: Gt C, flux: Gt C/yr}}
outside: [x]
reservoirs: [{{id: air, stock: 10}}, {{id: sea, stock: {sea}}}, {{id: soil, stock: 50}}]
fluxes:
  - {{id: a, from: air, to: sea, rate: 6}}
  - {{id: b, from: air, to: soil, rate: {b}}}
  - {{id: c, from: soil, to: air, rate: 8}}
  - {{id: d, from: sea, to: x, rate: {d}}}
"""


def boxes(**numbers: object) -> object:
    return subject("cycle", BOXES.format(**({"sea": 1000, "b": 5, "d": 1} | numbers)))


def test_most_flows_out_of_a_reservoir_that_is_not_the_largest() -> None:
    """Source: arithmetic on the record: 6 + 5 out of the air, 8 by the widest arrow out of the soil, 1 out of the sea."""
    assert (("Air",), {"Sea": "cyc.stock-is-flow", "Soil": "cyc.largest-only"}) == read(boxes(), "largest_outflow")


@pytest.mark.parametrize("numbers", [{"d": 12}, {"d": 11}, {"b": RANGE}, {"d": "unknown"}, {"b": 2}])
def test_largest_outflow_must_be_sure_and_not_that_of_the_largest_stock(numbers: dict[str, object]) -> None:
    """The sea passes most on, or as much as the air, or as much as nobody knows; 6 to 15 of the air reach across 8; 6 + 2 are 8 too."""
    assert not isinstance(asked(boxes(**numbers), "largest_outflow"), ChartReading)


def test_stock_that_is_not_known_is_not_called_the_largest() -> None:
    assert (("Air",), {"Soil": "cyc.stock-is-flow"}) == read(boxes(sea="unknown"), "largest_outflow")


def test_less_evaporation_from_the_land_leaves_more_water_there() -> None:
    """Source: less leaves the land while as much falls on it; the air has that much less."""
    assert (("Soil, lakes and rivers",), {"Atmosphere": "cyc.other-line"}) == read(demo("cycle/water"), "scenario_gain")


def test_record_without_a_change_has_no_chart_of_it() -> None:
    of = boxes()
    assert not any(isinstance(asked(of, sort), ChartReading) for sort in ("scenario_gain", "scenario_most"))


def test_largest_share_is_told_from_the_largest_amount() -> None:
    """Source: arithmetic. Ten times the inflow of the pond, which holds 1 for a year; the sea gains most, but of 10 000."""
    text = """
units: {stock: Gt C, flux: Gt C/yr}
outside: [x]
reservoirs: [{id: pond, stock: 1}, {id: sea, stock: 10000}, {id: rock, stock: 500}]
fluxes: [{id: rain, from: x, to: pond, rate: 1}, {id: brook, from: pond, to: sea, rate: 1}, {id: sand, from: sea, to: rock, rate: 1}, {id: out, from: rock, to: x, rate: 1}]
scenarios: [{id: wet, name: Wet, years: 50, change: [{flux: rain, times: 10}], assumes: nothing else}]
"""
    assert (("Pond",), {"Sea": "cyc.absolute-change"}) == read(subject("cycle", text), "scenario_most")


def test_records_differ_in_what_they_let_read_and_ask_no_more_than_wanted() -> None:
    asked_of = {record: [item.id for item in ChartQuestions(demo(f"cycle/{record}"), library().catalogue).readings(2)] for record in ("global_carbon", "wend_hollow_nitrogen")}
    assert all(len(ids) == 2 for ids in asked_of.values())
    assert asked_of["global_carbon"] != asked_of["wend_hollow_nitrogen"]
