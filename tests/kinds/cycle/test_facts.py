"""Facts of cycles: budgets worked out by hand from the record, and every way in which a number can be missing."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.kind import Subject
from tests.kinds.small_records import demo, subject

UNITS = "units: {stock: Gt C, flux: Gt C/yr}\n"


def cycle(fluxes: str, reservoir: str = "stock: 10", head: str = UNITS) -> Subject:
    """One reservoir `pool` between `source` and `sink`; each flux as `id from to rate, more fields`."""
    return subject("cycle", text(fluxes, reservoir, head))


def text(fluxes: str, reservoir: str = "stock: 10", head: str = UNITS) -> str:
    """The record that `cycle` reads."""
    lines = []
    for line in fluxes.strip().splitlines():
        flux, start, end, rate = line.strip().split(" ", 3)
        lines.append(f"  - {{id: {flux}, from: {start}, to: {end}, rate: {rate}}}\n")
    return f"{head}outside: [source, sink]\nreservoirs: [{{id: pool, {reservoir}}}]\nfluxes:\n{''.join(lines)}"


def values(of: Subject, *names: str) -> list[object]:
    return [of.facts[f"pool.{name}"].value for name in names]


def test_budget_of_the_example_is_the_arithmetic_of_its_fluxes() -> None:
    """Source: arithmetic on the record."""
    facts = demo("cycle/wend_hollow_nitrogen").facts
    expected = {
        "plants": (12 + 42 + 45, 95 + 4), "soil_organic": (3 + 95, 92 + 2),
        "ammonium": (20 + 92, 70 + 42), "nitrate": (2 + 5 + 70, 45 + 14 + 18),
    }  # fmt: skip
    for reservoir, (into, out) in expected.items():
        assert (into, out, into - out) == tuple(facts[f"{reservoir}.{name}"].value for name in ("inflow", "outflow", "balance"))


def test_turnover_times_of_the_example_are_stock_over_outflow() -> None:
    """Source: arithmetic on the record."""
    facts = demo("cycle/wend_hollow_nitrogen").facts
    expected = {"plants": 210 / 99, "soil_organic": 4800 / 94, "ammonium": 6 / 112, "nitrate": 18 / 77}
    assert expected == pytest.approx({name: facts[f"{name}.turnover_time"].value for name in expected})


def test_uncertainties_of_the_example_add_in_quadrature() -> None:
    """Source: arithmetic on the record; rule for independent errors."""
    facts = demo("cycle/wend_hollow_nitrogen").facts
    assert math.sqrt(4**2 + 8**2 + 8**2) == pytest.approx(facts["plants.inflow"].plus_minus)
    assert math.sqrt(1**2 + 8**2 + 10**2) == pytest.approx(facts["soil_organic.balance"].plus_minus)


def test_example_closes_where_it_can_be_told() -> None:
    facts = demo("cycle/wend_hollow_nitrogen").facts
    assert [None, True, True, True] == [facts[f"{name}.closes"].value for name in ("plants", "soil_organic", "ammonium", "nitrate")]


def test_time_of_a_stock_stated_as_a_range_is_a_range() -> None:
    """Source: arithmetic on the record, 12/77 and 24/77."""
    time = demo("cycle/wend_hollow_nitrogen").facts["nitrate.turnover_time"]
    assert (12 / 77, 24 / 77) == pytest.approx((time.low, time.high))
    assert "0.156 to 0.312 yr" == time.shown


@settings(max_examples=25, deadline=None)
@given(st.lists(st.integers(0, 1000), min_size=2, max_size=5), st.integers(1, 900), st.integers(2, 9))
def test_all_fluxes_times_a_number_scale_the_balance_and_shorten_the_time(into: list[int], out: int, times: int) -> None:
    def made(factor: int) -> Subject:
        fluxes = [f"in_{n} source pool {factor * rate}" for n, rate in enumerate(into)]
        return cycle("\n".join([*fluxes, f"out pool sink {factor * out}"]))

    (balance, time), (more, shorter) = values(made(1), "balance", "turnover_time"), values(made(times), "balance", "turnover_time")
    assert (times * balance, time / times) == pytest.approx((more, shorter))


def test_decimals_that_cancel_leave_no_trace_of_binary_numbers() -> None:
    """0.1 + 0.2 - 0.3 is zero for a reader, whatever the machine makes of it."""
    of = cycle("a source pool 0.1\nb source pool 0.2\nc pool sink 0.3", "stock: 10, change: 0")
    assert [0.0, True] == values(of, "balance", "closes")


def test_nothing_flowing_out_has_no_turnover_time() -> None:
    time = cycle("a source pool 5\nb pool sink 0").facts["pool.turnover_time"]
    assert (None, "not defined: nothing flows out") == (time.value, time.shown)


def test_no_flux_out_at_all_counts_as_zero() -> None:
    of = cycle("a source pool 5")
    assert [0.0, 5.0, None] == values(of, "outflow", "balance", "turnover_time")


def test_unknown_stock_has_no_turnover_time() -> None:
    time = cycle("a source pool 5\nb pool sink 5", "stock: unknown").facts["pool.turnover_time"]
    assert (None, "not known") == (time.value, time.shown)


def test_unknown_flux_leaves_its_sum_unknown_and_the_others_known() -> None:
    assert [None, 5.0, None, 2.0] == values(
        cycle("a source pool unknown\nb source pool 2\nc pool sink 5"), "inflow", "outflow", "balance", "turnover_time"
    )


@pytest.mark.parametrize(
    ("change", "closes"),
    [
        ("{value: 8, plus_minus: 3}", True),
        ("{value: 12, plus_minus: 3}", False),
        ("{value: 10, plus_minus: 4}", True),
        ("unknown", None),
    ],
)
def test_budget_closes_within_the_joint_uncertainty(change: str, closes: bool | None) -> None:
    """Source: arithmetic; the balance is 5 with the spread 3, so a change with 3 may differ by 4.24, with 4 by 5."""
    of = cycle("a source pool {value: 9, plus_minus: 3}\nb pool sink 4", f"stock: 10, change: {change}")
    assert [closes] == values(of, "closes")


def test_budget_without_a_measured_change_cannot_be_tested() -> None:
    fact = cycle("a source pool 5").facts["pool.closes"]
    assert (None, "not known: no change of stock is stated apart from the fluxes") == (fact.value, fact.shown)


@pytest.mark.parametrize(
    ("fluxes", "reservoir", "because"),
    [
        ("a source pool 9, residual: true\nb pool sink 4", "stock: 10, change: 5", "no check: a was found as the rest"),
        ("a source pool 9\nb pool sink 4, residual: true", "stock: 10, change: 1", "no check: b was found as the rest"),
        ("a source pool 9\nb pool sink 4", "stock: 10, change: 5, residual: true", "no check: the change was found as the rest"),
    ],
)
def test_residual_is_no_check_whether_the_numbers_agree_or_not(fluxes: str, reservoir: str, because: str) -> None:
    fact = cycle(fluxes, reservoir).facts["pool.closes"]
    assert (None, because) == (fact.value, fact.shown)


def test_residual_of_another_budget_leaves_the_check_alone() -> None:
    head = UNITS + "outside: [source, sink]\nreservoirs: [{id: pool, stock: 10, change: 5}, {id: pond, stock: 10, change: 4}]\nfluxes:\n"
    fluxes = "  - {id: a, from: source, to: pool, rate: 5}\n  - {id: b, from: source, to: pond, rate: 4, residual: true}\n"
    facts = subject("cycle", head + fluxes).facts
    assert (True, None) == (facts["pool.closes"].value, facts["pond.closes"].value)


def test_what_was_found_as_the_rest_says_so_in_its_name() -> None:
    facts = cycle("a source pool 9, residual: true", "stock: 10, change: 9, residual: true").facts
    assert ("Rate of a, found as the rest", "Change of stock, found as the rest") == (facts["a.rate"].name, facts["pool.change"].name)


def test_share_of_people_in_a_mixed_process() -> None:
    """Source: arithmetic, 3 of 3 + 9."""
    of = cycle("a source pool 9, process: fixation\nb source pool 3, process: fixation, cause: people")
    assert 25.0 == pytest.approx(of.facts["fixation.human_share"].value)


@pytest.mark.parametrize(("cause", "share"), [("people", 100.0), ("nature", 0.0)])
def test_share_of_people_with_one_cause(cause: str, share: float) -> None:
    fact = cycle(f"a source pool 9, process: fixation, cause: {cause}").facts["fixation.human_share"]
    assert (share, f"{share:.0f} %") == (fact.value, fact.shown)


@pytest.mark.parametrize(("rate", "because"), [("0", "not defined: nothing flows"), ("unknown", "not known: the record does not state how much flows")])
def test_share_of_nothing_is_null_with_its_reason(rate: str, because: str) -> None:
    fact = cycle(f"a source pool {rate}, process: fixation").facts["fixation.human_share"]
    assert (None, because) == (fact.value, fact.shown)


def test_process_names_become_ids_of_facts() -> None:
    of = cycle('a source pool 9, process: "Haber-Bosch (NH3) process"')
    assert "haber_bosch_nh3_process.human_share" in of.facts


@pytest.mark.parametrize("name", ["import", "in", "sum", "lambda"])
def test_fluxes_may_have_names_that_the_expression_language_uses(name: str) -> None:
    assert [7.0] == values(cycle(f"{name} source pool 4\nother source pool 3"), "inflow")
