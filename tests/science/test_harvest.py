"""Properties of the expressions in generator/science/harvest.py; outside values are in test_checks.py."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS

masses = st.floats(0, 1e4)
days = st.floats(1, 400)
areas = st.floats(0.01, 10)


def compute(method: str, **given_values: float) -> Any:
    return METHODS[method].compute(**given_values)


def production(earlier: float, later: float, duration: float) -> float:
    return float(compute("harvest_net_production", earlier_biomass=earlier, later_biomass=later, duration=duration))


@given(masses, masses, masses, days, days)
def test_production_of_two_spans_is_that_of_the_whole(first: float, second: float, third: float, one: float, two: float) -> None:
    """What is gained in each span adds up to what is gained in all."""
    gained = production(first, second, one) * one + production(second, third, two) * two
    assert gained == pytest.approx(production(first, third, one + two) * (one + two), rel=1e-9, abs=1e-6)


@given(masses, areas)
def test_quadrats_of_any_size_give_the_same_biomass(per_metre: float, area: float) -> None:
    assert per_metre == pytest.approx(compute("biomass_of_area", dry_mass=per_metre * area, quadrat_area=area))


@given(st.floats(-50, 50), st.floats(0, 50))
def test_gross_production_is_never_below_net(net: float, respiration: float) -> None:
    gross = compute("gross_from_net", net_production=net, respiration=respiration)
    assert gross >= net
    assert net == pytest.approx(compute("net_production", gross_production=gross, respiration=respiration), abs=1e-9)


@given(st.floats(-50, 50))
def test_plots_that_grow_alike_show_no_grazing(net: float) -> None:
    assert 0.0 == compute("eaten_by_grazers", ungrazed_production=net, grazed_production=net)


@given(masses, st.floats(0.3, 0.6), st.floats(15, 25))
def test_carbon_and_energy_keep_to_the_dry_matter(dry: float, fraction: float, content: float) -> None:
    carbon = compute("carbon_from_dry_matter", dry_matter=dry, carbon_fraction=fraction)
    energy = compute("energy_from_dry_matter", dry_matter=dry, energy_content=content)
    assert carbon <= dry
    assert energy * fraction == pytest.approx(carbon * content)


@pytest.mark.parametrize(
    ("method", "given_values"),
    [
        ("harvest_net_production", {"earlier_biomass": 1.0, "later_biomass": 2.0, "duration": 0.0}),
        ("biomass_of_area", {"dry_mass": 1.0, "quadrat_area": 0.0}),
    ],
)
def test_division_by_nothing_is_undefined(method: str, given_values: dict[str, float]) -> None:
    with pytest.raises(ZeroDivisionError):
        compute(method, **given_values)


def test_nothing_grown_nothing_respired_and_nothing_eaten() -> None:
    assert 0.0 == production(5.0, 5.0, 80.0)
    assert 2.0 == compute("gross_from_net", net_production=2.0, respiration=0.0)
    assert -1.0 == compute("eaten_by_grazers", ungrazed_production=1.0, grazed_production=2.0)
