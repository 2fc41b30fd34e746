"""Properties of the expressions in generator/science/energy_flow.py; outside values are in test_checks.py."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS
from generator.science.energy_flow import ASSIMILATED_FROM_USES, CONSUMER_BALANCE, PRODUCER_BALANCE

flows = st.floats(0.001, 1e6)
chains = st.lists(flows, min_size=2, max_size=6)


def efficiencies(chain: list[float]) -> list[float]:
    compute = METHODS["transfer_efficiency"].compute
    return [compute(production=above, production_below=below) for below, above in pairwise(chain)]


def overall(chain: list[float]) -> float:
    return float(METHODS["overall_efficiency"].compute(top_production=chain[-1], producer_production=chain[0]))


@given(chains, st.floats(0.001, 1000))
def test_scaling_every_level_leaves_efficiencies_alone(chain: list[float], factor: float) -> None:
    """A lake of twice the production has the same efficiencies."""
    scaled = [level * factor for level in chain]
    assert efficiencies(chain) == pytest.approx(efficiencies(scaled))
    assert overall(chain) == pytest.approx(overall(scaled))


@given(chains)
def test_overall_efficiency_is_the_product_of_the_steps(chain: list[float]) -> None:
    """What reaches the top is what every step lets through."""
    assert overall(chain) == pytest.approx(math.prod(efficiencies(chain)))


@given(chains)
def test_nothing_is_lost_from_the_account(chain: list[float]) -> None:
    """Production of the producers = everything not passed on + production of the top level."""
    compute = METHODS["not_passed_on"].compute
    kept_back = [compute(production=below, production_above=above) for below, above in pairwise(chain)]
    assert chain[0] == pytest.approx(sum(kept_back) + chain[-1], rel=1e-9, abs=1e-6)


@given(flows, flows, flows)
def test_what_is_eaten_is_egested_respired_or_produced(eaten: float, egested: float, respired: float) -> None:
    """Outputs and production add up to the input."""
    production = METHODS["consumer_production"].compute(eaten=eaten, egested=egested, respired=respired)
    assert eaten == pytest.approx(production + egested + respired, rel=1e-9, abs=1e-6)


@given(flows, flows)
def test_area_yields_the_need(need: float, flow: float) -> None:
    """The flow of the whole area is what one consumer needs."""
    assert need == pytest.approx(METHODS["supporting_area"].compute(need=need, flow=flow) * flow)


@given(flows, flows, flows)
def test_production_to_biomass_inverts_a_turnover_time(production: float, biomass: float, content: float) -> None:
    """The energy stored over the energy produced is the turnover time of the biomass."""
    ratio = METHODS["production_to_biomass"].compute(production=production, biomass=biomass, energy_content=content)
    turnover = METHODS["turnover_time"].compute(stock=biomass * content, outflow=production)
    assert 1.0 == pytest.approx(ratio * turnover)


@given(flows, flows, flows, flows)
def test_the_three_shares_multiply_to_the_transfer_efficiency(below: float, egested: float, respired: float, built: float) -> None:
    """Eaten of what grew, taken up of what is eaten, built up of what is taken up: nothing is left to the whole step."""
    eaten = egested + respired + built
    shares = (
        METHODS["consumption_efficiency"].compute(eaten=eaten, production_below=below),
        METHODS["assimilation_efficiency"].compute(eaten=eaten, egested=egested),
        METHODS["production_efficiency"].compute(production=built, eaten=eaten, egested=egested),
    )
    assert math.prod(shares) == pytest.approx(efficiencies([below, built])[0], rel=1e-6)


@given(flows, flows, flows)
def test_taken_up_is_the_same_by_what_becomes_of_it(egested: float, respired: float, built: float) -> None:
    """Production efficiency from food less faeces, or from what is respired and built up."""
    by_food = METHODS["production_efficiency"].compute(production=built, eaten=egested + respired + built, egested=egested)
    assert by_food == pytest.approx(ASSIMILATED_FROM_USES.value(production=built, respired=respired), rel=1e-6)


@given(flows, flows, flows)
def test_balances_undo_each_other(egested: float, respired: float, built: float) -> None:
    """Each flow of a consumer, and of producers, follows from the others."""
    flow = {"eaten": egested + respired + built, "egested": egested, "respired": respired, "production": built}
    for name, expression in CONSUMER_BALANCE.items():
        assert flow[name] == pytest.approx(expression.evaluate(flow), rel=1e-6, abs=1e-6)
    plant = {"gross_production": respired + built, "respiration": respired, "production": built}
    for name, expression in PRODUCER_BALANCE.items():
        assert plant[name] == pytest.approx(expression.evaluate(plant), rel=1e-6, abs=1e-6)


@given(flows, flows, flows)
def test_biomass_is_production_times_turnover_time(production: float, biomass: float, content: float) -> None:
    """The turnover time is the ratio of production to biomass turned round."""
    given_values = {"production": production, "biomass": biomass, "energy_content": content}
    time, ratio = (METHODS[name].compute(**given_values) for name in ("biomass_turnover_time", "production_to_biomass"))
    assert 1.0 == pytest.approx(time * ratio)


@pytest.mark.parametrize(
    ("method", "given_values"),
    [
        ("transfer_efficiency", {"production": 1.0, "production_below": 0.0}),
        ("overall_efficiency", {"top_production": 1.0, "producer_production": 0.0}),
        ("supporting_area", {"need": 1.0, "flow": 0.0}),
        ("production_to_biomass", {"production": 1.0, "biomass": 0.0, "energy_content": 20.0}),
        ("consumption_efficiency", {"eaten": 1.0, "production_below": 0.0}),
        ("assimilation_efficiency", {"eaten": 0.0, "egested": 0.0}),
        ("production_efficiency", {"production": 0.0, "eaten": 5.0, "egested": 5.0}),
        ("biomass_turnover_time", {"production": 0.0, "biomass": 1.0, "energy_content": 20.0}),
    ],
)
def test_division_by_nothing_is_undefined(method: str, given_values: dict[str, float]) -> None:
    """A zero flow or biomass below the line raises, so that no infinite number is ever shown."""
    with pytest.raises(ZeroDivisionError):
        METHODS[method].compute(**given_values)


@given(flows, flows)
def test_production_from_below_undoes_the_efficiency(below: float, above: float) -> None:
    efficiency = METHODS["transfer_efficiency"].compute(production=above, production_below=below)
    assert above == pytest.approx(METHODS["production_from_below"].compute(production_below=below, transfer_efficiency=efficiency))


@pytest.mark.parametrize(
    ("method", "given_values", "expected"),
    [
        ("net_production", {"gross_production": 5.0, "respiration": 5.0}, 0.0),
        ("net_production", {"gross_production": 0.0, "respiration": 5.0}, -5.0),
        ("consumer_production", {"eaten": 0.0, "egested": 0.0, "respired": 0.0}, 0.0),
        ("transfer_efficiency", {"production": 0.0, "production_below": 5.0}, 0.0),
        ("overall_efficiency", {"top_production": 0.0, "producer_production": 5.0}, 0.0),
        ("overall_efficiency", {"top_production": 5.0, "producer_production": 5.0}, 1.0),
        ("consumption_efficiency", {"eaten": 0.0, "production_below": 5.0}, 0.0),
        ("assimilation_efficiency", {"eaten": 5.0, "egested": 0.0}, 1.0),
        ("assimilation_efficiency", {"eaten": 5.0, "egested": 5.0}, 0.0),
        ("production_efficiency", {"production": 0.0, "eaten": 5.0, "egested": 1.0}, 0.0),
        ("production_from_below", {"production_below": 0.0, "transfer_efficiency": 0.1}, 0.0),
        ("not_passed_on", {"production": 5.0, "production_above": 0.0}, 5.0),
        ("not_passed_on", {"production": 5.0, "production_above": 5.0}, 0.0),
        ("supporting_area", {"need": 0.0, "flow": 5.0}, 0.0),
        ("production_to_biomass", {"production": 0.0, "biomass": 5.0, "energy_content": 20.0}, 0.0),
        ("biomass_turnover_time", {"production": 5.0, "biomass": 0.0, "energy_content": 20.0}, 0.0),
    ],
)  # fmt: skip
def test_flows_of_nothing_and_flows_that_pass_whole(method: str, given_values: dict[str, float], expected: float) -> None:
    assert expected == METHODS[method].compute(**given_values)
