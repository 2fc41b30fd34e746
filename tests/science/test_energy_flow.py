"""Properties of the expressions in generator/science/energy_flow.py; outside values are in test_checks.py."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS

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


@pytest.mark.parametrize(
    ("method", "given_values"),
    [
        ("transfer_efficiency", {"production": 1.0, "production_below": 0.0}),
        ("overall_efficiency", {"top_production": 1.0, "producer_production": 0.0}),
        ("supporting_area", {"need": 1.0, "flow": 0.0}),
        ("production_to_biomass", {"production": 1.0, "biomass": 0.0, "energy_content": 20.0}),
    ],
)
def test_division_by_nothing_is_undefined(method: str, given_values: dict[str, float]) -> None:
    """A zero flow or biomass below the line raises, so that no infinite number is ever shown."""
    with pytest.raises(ZeroDivisionError):
        METHODS[method].compute(**given_values)
