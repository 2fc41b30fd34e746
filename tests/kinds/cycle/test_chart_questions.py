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


def test_fluxes_of_people_alone_are_asked_for_where_others_are_driven_by_both() -> None:
    fluxes = "a source pool 9\nb source pool 3, cause: people\nc pool sink 5, cause: people"
    assert asked(cycle(fluxes), "largest_by_people").prompt == "Which is the largest flux caused by people?"
    assert asked(cycle(f"{fluxes}\nd pool sink 7, cause: both"), "largest_by_people").prompt == "Which is the largest flux caused by people alone?"


@pytest.mark.parametrize("flux", ["c pool sink 3, cause: people", f"c pool sink {RANGE}, cause: people", "c pool sink 4", "c pool sink unknown, cause: people"])
def test_tied_or_unsure_or_single_fluxes_of_people_are_not_asked_about(flux: str) -> None:
    assert not isinstance(asked(cycle(f"a source pool 9\nb source pool 3, cause: people\n{flux}"), "largest_by_people"), ChartReading)


def test_without_people_only_nature_brings_something_in() -> None:
    of = subject("cycle", BOXES.format(sea=1000, b=5, d=1) + "  - {id: e, from: x, to: sea, rate: 9, cause: people}\n  - {id: f, from: x, to: soil, rate: 3}\n  - {id: g, from: soil, to: x, rate: 1, cause: people}\n")
    right, slips = read(of, "natural_input")
    inner = dict.fromkeys("ABC", "cyc.inner-input")
    assert (("F",), inner | {"E": "cyc.cause-overlooked"} | dict.fromkeys("DG", "cyc.output-as-input")) == (right, slips)


@pytest.mark.parametrize(
    "fluxes",
    [
        "a source pool 9\nb source pool 3", "a source pool 9, cause: people", "a source pool 9, cause: both\nb source pool 3\nc source pool 1, cause: people",
        "a source pool 9, cause: people\nb source pool 3",
    ],
)  # fmt: skip
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


def test_sums_of_a_solution_have_no_spread() -> None:
    """Source: the record: 95 and 4 leave the plants, known within 8."""
    assert "“Living plants” comes next, with 99 kg N ha⁻¹ yr⁻¹." in asked(demo("cycle/wend_hollow_nitrogen"), "largest_outflow").solution


@pytest.mark.parametrize("numbers", [{"d": 12}, {"d": 11}, {"b": RANGE}, {"d": "unknown"}, {"b": 2}])
def test_largest_outflow_must_be_sure_and_not_that_of_the_largest_stock(numbers: dict[str, object]) -> None:
    """The sea passes most on, or as much as the air, or as much as nobody knows; 6 to 15 of the air reach across 8; 6 + 2 are 8 too."""
    assert not isinstance(asked(boxes(**numbers), "largest_outflow"), ChartReading)


def test_stock_that_is_not_known_is_not_called_the_largest() -> None:
    assert (("Air",), {"Soil": "cyc.stock-is-flow"}) == read(boxes(sea="unknown"), "largest_outflow")


def test_less_evaporation_from_the_land_leaves_more_water_there() -> None:
    """Source: less leaves the land while as much falls on it; the air has that much less."""
    assert (("Soil, lakes and rivers",), {"Atmosphere": "cyc.other-line"}) == read(demo("cycle/water"), "scenario_gain")
    question = asked(demo("cycle/water"), "scenario_gain")
    assert "which stock is larger than it would be" in question.prompt
    assert question.otherwise.startswith("This stock gains nothing by the change.")
    assert question.solution.endswith("“Evapotranspiration” takes less out of it than before, so more water is left there.")


def test_of_two_stocks_that_a_change_leaves_larger_the_one_that_gains_most_is_asked_for() -> None:
    """Source: arithmetic on the record: half the emissions of ten years are 47 Gt of fuel and 8 Gt of forest and soil."""
    assert (("Fossil fuel reserves",), {"Atmosphere": "cyc.other-line"}) == read(demo("cycle/global_carbon"), "scenario_gain")
    assert "which stock ends farthest above what it would be" in asked(demo("cycle/global_carbon"), "scenario_gain").prompt


@pytest.mark.parametrize(("rate", "alike"), [(7, True), (2, False)])
def test_gains_that_look_alike_are_not_compared(rate: int, alike: bool) -> None:
    """Source: arithmetic: what stops flowing out of coal and peat stays there, 9 against 7 or 2 in a year; 9 is less than 1.3 times 7."""
    text = f"""
units: {{stock: Gt C, flux: Gt C/yr}}
outside: [x]
reservoirs: [{{id: air, stock: 500}}, {{id: coal, stock: 900}}, {{id: peat, stock: 900}}]
fluxes:
  - {{id: a, from: coal, to: air, rate: 9, constant: true}}
  - {{id: b, from: peat, to: air, rate: {rate}, constant: true}}
  - {{id: c, from: air, to: x, rate: 2, constant: true}}
scenarios: [{{id: stop, name: Stop, years: 10, change: [{{flux: a, times: 0}}, {{flux: b, times: 0}}], assumes: nothing else}}]
"""
    assert alike is not isinstance(asked(subject("cycle", text), "scenario_gain"), ChartReading)


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
    assert [2, 1] == [len(ids) for ids in asked_of.values()]  # of the second, what people bring in is added up elsewhere
    assert asked_of["global_carbon"] != asked_of["wend_hollow_nitrogen"]
