"""The record as a box model, beside a solver that follows every flux of the record by itself."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from generator.kinds.cycle.model import box_model, course, last_model, left_out, sampled, stocks_at
from generator.kinds.cycle.record import CycleRecord
from tests.kinds.small_records import demo, record

LOOP = """
units: {{stock: kg N/ha, flux: kg N/ha/yr}}
outside: [rain, stream]
reservoirs: [{{id: soil, stock: 100}}, {{id: plants, stock: 20}}]
fluxes:
  - {{id: rainfall, from: rain, to: soil, rate: 5}}
  - {{id: uptake, from: soil, to: plants, rate: 10{uptake}}}
  - {{id: litter, from: plants, to: soil, rate: 10}}
  - {{id: leaching, from: soil, to: stream, rate: 4}}
"""


def loop(scenario: str = "", uptake: str = "") -> CycleRecord:
    """A soil that feeds plants, gets their litter back, and leaks; `scenario` as one line of a list."""
    scenarios = f"scenarios:\n  - {scenario}\n" if scenario else ""
    return record("cycle", LOOP.format(uptake=uptake) + scenarios)


def by_steps(of: CycleRecord, years: float, factors: dict[str, float]) -> dict[str, float]:
    """Every flux in turn, as a share of the stock that it leaves, by a solver of another program."""
    first = {reservoir.id: float(reservoir.stock.value or 0) for reservoir in of.reservoirs}
    ids = list(first)

    def change(_: float, stocks: Any) -> list[float]:
        now, rates = dict(zip(ids, stocks, strict=True)), dict.fromkeys(ids, 0.0)
        for flux in of.fluxes:
            share = now[flux.start] / first[flux.start] if flux.start in now else 1.0
            flow = float(flux.rate.value or 0) * factors.get(flux.id, 1.0) * share
            for end, sign in ((flux.start, -1), (flux.end, 1)):
                if end in rates:
                    rates[end] += sign * flow
        return [rates[one] for one in ids]

    run = solve_ivp(change, (0, years), list(first.values()), method="LSODA", rtol=1e-10, atol=1e-8)
    return dict(zip(ids, run.y[:, -1], strict=True))


def test_demo_scenario_goes_as_a_solver_goes_that_follows_its_fluxes() -> None:
    of = demo("cycle/wend_hollow_nitrogen").record
    (scenario,) = of.scenarios
    assert by_steps(of, 50.0, {"fertiliser": 2.0}) == pytest.approx(stocks_at(of, scenario, 50.0), rel=1e-6)
    assert by_steps(of, 50.0, {}) == pytest.approx(stocks_at(of, scenario, 50.0, changed=False), rel=1e-6)


def test_rates_are_shares_of_the_stock_from_column_to_row() -> None:
    """Source: arithmetic on the record; soil sends 10 of 100 to plants and 4 to the stream, plants 10 of 20 back."""
    model = box_model(loop())
    assert ("soil", "plants") == model.ids
    assert ((-0.14, 0.5), (0.1, -0.5)) == tuple(map(pytest.approx, model.rates))
    assert ((5.0, 0.0), (0.0, 0.0)) == (model.inputs, model.drains)


def test_constant_flux_leaves_no_rate_but_a_drain_and_an_input() -> None:
    model = box_model(loop(uptake=", constant: true"))
    assert ((-0.04, 0.5), (0.0, -0.5)) == tuple(map(pytest.approx, model.rates))
    assert ((-5.0, 10.0), (10.0, 0.0)) == (model.inputs, model.drains)


def test_fluxes_in_other_units_than_the_stocks_are_turned_into_them() -> None:
    of = record("cycle", LOOP.format(uptake="").replace("flux: kg N/ha/yr", "flux: g N/ha/yr"))
    assert (0.005, 0.0) == pytest.approx(box_model(of).inputs)


@pytest.mark.parametrize(
    ("change", "because"),
    [
        ({"soil, stock: 100": "soil, stock: unknown"}, "not known: the stock of soil is not known"),
        ({"stream, rate: 4": "stream, rate: unknown"}, "not known: the rate of leaching is not known"),
        ({"stream, rate: 4": "stream, rate: {low: 1, high: 9}"}, "not told: the rate of leaching is known as a range only"),
        ({"soil, stock: 100": "soil, stock: 0"}, "not defined: soil holds nothing that could flow out"),
    ],
)
def test_what_is_not_known_of_a_reservoir_is_not_known_of_those_it_feeds(change: dict[str, str], because: str) -> None:
    text = LOOP.format(uptake="")
    for old, new in change.items():
        assert old in text
        text = text.replace(old, new)
    assert {"soil": because, "plants": because} == left_out(record("cycle", text))


def test_reservoir_that_nothing_unknown_feeds_is_followed_alone() -> None:
    text = LOOP.format(uptake="").replace("from: soil, to: plants", "from: rain, to: plants").replace("stream, rate: 4", "stream, rate: unknown")
    of = record("cycle", text)
    assert (["soil"], ("plants",)) == (list(left_out(of)), box_model(of).ids)


def test_pulse_adds_at_its_year_and_is_told_before_and_after() -> None:
    of = loop("{id: s, name: S, change: [{into: soil, add: 50, at: 2}], years: 4, assumes: a}")
    moments = course(of, of.scenarios[0], [0.0, 2.0, 4.0])
    assert [0.0, 2.0, 2.0, 4.0] == [time for time, _ in moments]
    (_, before), (_, after) = moments[1:3]
    assert (before[0] + 50, before[1]) == pytest.approx(after)


def test_pulse_on_the_first_day_is_in_the_stocks_from_the_start() -> None:
    of = loop("{id: s, name: S, change: [{into: plants, add: 5}], years: 4, assumes: a}")
    assert [(0.0, (100.0, 20.0)), (0.0, (100.0, 25.0))] == course(of, of.scenarios[0], [0.0])


@settings(max_examples=25, deadline=None)
@given(st.floats(0.1, 6.0), st.floats(0.1, 3.0), st.floats(0.0, 5.0))
def test_change_that_has_ended_leaves_the_rates_as_they_were(begin: float, span: float, times: float) -> None:
    """Before it begins nothing differs; after it ends the stocks go on as an unchanged model would take them on."""
    of = loop(f"{{id: s, name: S, change: [{{flux: leaching, times: {times:.6f}, from: {begin:.6f}, until: {begin + span:.6f}}}], years: 12, assumes: a}}")
    (scenario,) = of.scenarios
    assert stocks_at(of, scenario, begin / 2, changed=False) == pytest.approx(stocks_at(of, scenario, begin / 2))
    assert box_model(of) == last_model(of, scenario)


@settings(max_examples=25, deadline=None)
@given(st.floats(0.5, 40.0))
def test_what_scenarios_add_and_take_away_adds_up(years: float) -> None:
    """Of a loop without leaks the total grows by the rain and the pulse, and by nothing else."""
    closed = LOOP.format(uptake="").replace("{id: leaching, from: soil, to: stream, rate: 4}", "{id: leaching, from: soil, to: stream, rate: 0}")
    of = record("cycle", f"{closed}scenarios: [{{id: s, name: S, change: [{{into: soil, add: 7, at: 0.25}}], years: 50, assumes: a}}]\n")
    assert 120 + 5 * years + 7 == pytest.approx(sum(stocks_at(of, of.scenarios[0], years).values()))


def test_rate_that_is_set_holds_for_its_years_only() -> None:
    of = loop("{id: s, name: S, change: [{flux: rainfall, rate: 0, from: 1, until: 3}, {flux: rainfall, rate: 50, from: 3}], years: 4, assumes: a}")
    (scenario,) = of.scenarios
    assert (50.0, 0.0) == last_model(of, scenario).inputs
    half_dry = stocks_at(of, scenario, 2.0)
    assert half_dry["soil"] < stocks_at(of, scenario, 2.0, changed=False)["soil"] < stocks_at(of, scenario, 4.0)["soil"]


def test_curve_has_points_at_both_ends_and_close_behind_each_change() -> None:
    of = loop("{id: s, name: S, change: [{flux: leaching, times: 2, from: 10}], years: 40, assumes: a}")
    times = sampled(of.scenarios[0])
    assert (0.0, 40.0) == (times[0], times[-1])
    assert times == sorted(set(times))
    assert len([time for time in times if 10 <= time < 10.5]) >= 5
    assert max(b - a for a, b in zip(times, times[1:], strict=False)) < 1.0
