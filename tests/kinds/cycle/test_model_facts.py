"""Steady states, the adjustment time and scenarios as facts, and every way in which they can be undefined."""

from __future__ import annotations

import numpy as np
import pytest

from generator.kind import Subject
from generator.quantities.working import ValueTable
from tests.kinds.cycle.test_facts import cycle
from tests.kinds.cycle.test_model import LOOP
from tests.kinds.small_records import demo, subject


def loop(change: dict[str, str] | None = None, more: str = "") -> Subject:
    text = LOOP.format(uptake="")
    for old, new in (change or {}).items():
        assert old in text
        text = text.replace(old, new)
    return subject("cycle", text + more)


def shown(of: Subject, *names: str) -> list[str]:
    return [of.facts[name].shown for name in names]


def test_steady_state_is_inflow_times_turnover_time() -> None:
    """Source: arithmetic on the record; soil ends at 5 / 0.04 = 125, plants get 12.5 a year and hold them two years."""
    of = loop()
    assert ["125 kg N ha⁻¹", "25.0 kg N ha⁻¹"] == shown(of, "soil.steady_state", "plants.steady_state")
    assert "steady inflow × turnover time = 12.5 kg N ha⁻¹ yr⁻¹ × 2.00 yr = 25.0 kg N ha⁻¹" == of.facts["plants.steady_state"].shown_working


def test_adjustment_time_of_the_loop_is_that_of_its_slowest_eigenvalue() -> None:
    of = loop()
    assert -1 / max(np.linalg.eigvals([[-0.14, 0.5], [0.1, -0.5]])) == pytest.approx(of.facts["adjustment_time"].number)
    assert of.facts["soil.turnover_time"].number < of.facts["adjustment_time"].number


def test_demo_adjusts_more_slowly_than_any_of_its_reservoirs_turns_over() -> None:
    facts = demo("cycle/wend_hollow_nitrogen").facts
    times = [facts[f"{name}.turnover_time"].number for name in ("plants", "soil_organic", "ammonium", "nitrate")]
    assert 2 * max(times) < facts["adjustment_time"].number


def test_table_behind_the_adjustment_time_has_each_turnover_time_and_says_what_is_left_out() -> None:
    of = loop(more="  - {id: dust, from: rain, to: pond, rate: unknown}\n", change={"{id: plants": "{id: pond, stock: 3}, {id: plants"})
    working = of.facts["adjustment_time"].working
    assert isinstance(working, ValueTable)
    assert (("Soil", "7.14 yr"), ("Plants", "2 yr")) == working.rows
    assert working.conclusion.endswith("too little is known: pond.")


def test_range_of_a_stock_is_the_same_range_of_its_steady_state() -> None:
    """Source: arithmetic; with 80 to 120 in the soil the same shares leave, and it ends at 100 to 150."""
    of = loop({"soil, stock: 100": "soil, stock: {low: 80, high: 120}"})
    assert ["100 to 150 kg N ha⁻¹", "25.0 kg N ha⁻¹"] == shown(of, "soil.steady_state", "plants.steady_state")


def test_range_in_a_closed_loop_leaves_its_share_unknown() -> None:
    of = loop({"soil, stock: 100": "soil, stock: {low: 80, high: 120}", "rate: 5}": "rate: 0}", "to: stream, rate: 4}": "to: stream, rate: 0}"})
    assert "not told: the stock of soil is known as a range only" == of.facts["plants.steady_state"].shown


def test_closed_loop_shares_out_what_it_holds() -> None:
    """Source: arithmetic; 120 in all, shared as 0.5 to 0.1."""
    of = loop({"rate: 5}": "rate: 0}", "to: stream, rate: 4}": "to: stream, rate: 0}"})
    assert ["100 kg N ha⁻¹", "20.0 kg N ha⁻¹"] == shown(of, "soil.steady_state", "plants.steady_state")


@pytest.mark.parametrize(
    ("fluxes", "reservoir", "because"),
    [
        ("a source pool 5\nb pool sink unknown", "stock: 10", "not known: the rate of b is not known"),
        ("a source pool 5\nb pool sink 5", "stock: unknown", "not known: the stock of pool is not known"),
        ("a source pool {low: 1, high: 5}\nb pool sink 5", "stock: 10", "not told: the rate of a is known as a range only"),
        ("a source pool 5", "stock: 10", "not defined: at these rates the stock never comes to rest"),
        ("a source pool 5\nb pool sink 9, constant: true", "stock: 10", "not defined: at these rates the stock never comes to rest"),
        ("a source pool 1\nb pool sink 9, constant: true\nc pool sink 1", "stock: 10", "not defined: more is taken away than there is"),
    ],
)
def test_steady_state_that_is_not_known_or_not_there_says_why(fluxes: str, reservoir: str, because: str) -> None:
    fact = cycle(fluxes, reservoir).facts["pool.steady_state"]
    assert (None, because) == (fact.value, fact.shown)


def test_constant_outflow_comes_off_before_the_rest_turns_over() -> None:
    """Source: arithmetic; (9 - 4) a year over a share of 2/10 a year."""
    fact = cycle("a source pool 9\nb pool sink 4, constant: true\nc pool sink 2").facts["pool.steady_state"]
    assert ("25.0 Gt C", "(steady inflow − constant outflow) × turnover time") == (fact.shown, fact.shown_working.split(" = ")[0])


def test_stock_that_nothing_enters_or_leaves_stays() -> None:
    assert "10.0 Gt C" == cycle("a source pool 0").facts["pool.steady_state"].shown


@pytest.mark.parametrize(
    ("fluxes", "because"),
    [
        ("a source pool 5", "not defined: no outflow follows its stock"),
        ("a source pool 5\nb pool sink 5, constant: true", "not defined: no outflow follows its stock"),
        ("a source pool 5\nb pool sink unknown", "not known: the rate of b is not known"),
    ],
)
def test_adjustment_time_that_is_not_there_says_why(fluxes: str, because: str) -> None:
    fact = cycle(fluxes).facts["adjustment_time"]
    assert (None, because) == (fact.value, fact.shown)


def test_one_box_adjusts_within_its_turnover_time() -> None:
    facts = cycle("a source pool 5\nb pool sink 2").facts
    assert facts["pool.turnover_time"].number == pytest.approx(facts["adjustment_time"].number)


SCENARIO = "scenarios: [{id: wet, name: Wet years, change: [{flux: rainfall, times: 2}], years: 40, tell: [10, 40], assumes: a}]\n"


def test_scenario_tells_each_year_with_the_change_and_without_it() -> None:
    facts = loop(more=SCENARIO).facts
    told = [name for name in facts if name.startswith("wet.soil")]
    assert ["wet.soil_at_10", "wet.soil_without_at_10", "wet.soil_at_40", "wet.soil_without_at_40", "wet.soil_steady_state"] == told
    assert "Soil after 10 years, without the change" == facts["wet.soil_without_at_10"].name
    assert ("250 kg N ha⁻¹", "125 kg N ha⁻¹") == (facts["wet.soil_steady_state"].shown, facts["soil.steady_state"].shown)
    assert 100 < facts["wet.soil_without_at_40"].number < facts["wet.soil_at_40"].number < 250


def test_scenario_without_a_change_tells_how_things_go_on() -> None:
    facts = loop(more="scenarios: [{id: go_on, name: On, years: 2.5, assumes: a}]\n").facts
    assert ["go_on.soil_at_2_5", "go_on.plants_at_2_5"] == [name for name in facts if "_at_" in name]


def test_working_of_a_told_stock_has_quarters_and_ends_with_it() -> None:
    fact = loop(more=SCENARIO).facts["wet.soil_at_40"]
    assert isinstance(fact.working, ValueTable)
    assert ["0", "10", "20", "30", "40"] == [year for year, _ in fact.working.rows]
    assert ("100", fact.shown_number) == (fact.working.rows[0][1], fact.working.rows[-1][1])


def test_stock_of_a_range_stands_in_with_its_middle_and_the_working_says_so() -> None:
    fact = demo("cycle/wend_hollow_nitrogen").facts["fertiliser_doubled.nitrate_at_50"]
    assert "stands in with its middle: nitrate in soil." in fact.shown_working


def test_large_stocks_are_shown_to_the_unit_so_that_small_changes_show() -> None:
    facts = demo("cycle/global_carbon").facts
    assert ["2175 Gt C", "2167 Gt C"] == [facts[f"emissions_halved.land_{name}at_10"].shown for name in ("", "without_")]


def test_constant_emissions_mean_a_stock_that_rises_by_the_same_amount_each_year() -> None:
    """Source: arithmetic on the record; the air gains 5.0 a year as long as nothing changes, and loses 6.0 once nobody emits."""
    facts = demo("cycle/global_carbon").facts
    stock, balance = facts["atmosphere.stock"].number, facts["atmosphere.balance"].number
    emitted = facts["fossil_burning.rate"].number + facts["land_clearing.rate"].number
    expected = [stock + 10 * balance, stock + 20 * balance, stock + 10 * (balance - emitted / 2), stock + 10 * (balance - emitted)]
    told = ("same_emissions.atmosphere_at_10", "same_emissions.atmosphere_at_20", "emissions_halved.atmosphere_at_10", "emissions_stop.atmosphere_at_10")
    assert expected == pytest.approx([facts[name].number for name in told])

