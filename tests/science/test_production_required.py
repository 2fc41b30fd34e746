"""Plant growth behind a catch; outside values are in test_checks.py."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS

amounts, shares, levels = st.floats(0.001, 1e6), st.floats(0.02, 0.5), st.floats(1, 5)


def required(catch: float, share: float, level: float, fresh: float = 9.0) -> float:
    given_values = {"catch": catch, "fresh_mass_per_carbon": fresh, "transfer_efficiency": share, "trophic_level": level}
    return float(METHODS["primary_production_required"].compute(**given_values))


@given(amounts, shares, levels)
def test_a_level_higher_takes_one_division_more(catch: float, share: float, level: float) -> None:
    assert required(catch, share, level) / share == pytest.approx(required(catch, share, level + 1), rel=1e-6)


@given(amounts, shares)
def test_plants_need_their_own_carbon(catch: float, share: float) -> None:
    assert catch / 9 == pytest.approx(required(catch, share, 1.0))


@given(amounts, shares, st.floats(1, 3), st.floats(0.5, 2))
def test_mean_level_of_a_mixed_catch_gives_too_little(catch: float, share: float, level: float, apart: float) -> None:
    """The sum over species is larger than the same catch at the mean level, for the growth with the level is exponential."""
    by_species = required(catch, share, level) + required(catch, share, level + apart)
    assert required(2 * catch, share, level + apart / 2) < by_species


@given(amounts, amounts, amounts)
def test_share_of_all_that_grows_is_one(carbon: float, content: float, net: float) -> None:
    share = METHODS["primary_production_share"].compute
    assert 1.0 == pytest.approx(share(primary_production_required=carbon, energy_per_carbon=content, net_production=carbon * content))
    with pytest.raises(ZeroDivisionError):
        share(primary_production_required=net, energy_per_carbon=content, net_production=0.0)


@given(amounts, levels)
def test_where_nothing_is_lost_the_level_does_not_matter(catch: float, level: float) -> None:
    assert required(catch, 1.0, level) == pytest.approx(required(catch, 1.0, 1.0))


def test_no_catch_needs_no_plants_and_no_efficiency_no_end_of_them() -> None:
    assert 0.0 == required(0.0, 0.1, 3.0)
    with pytest.raises(ZeroDivisionError):
        required(1.0, 0.0, 3.0)


@given(amounts, amounts, amounts, st.floats(0.001, 1000))
def test_share_does_not_depend_on_the_unit_of_carbon(carbon: float, content: float, net: float, factor: float) -> None:
    share = METHODS["primary_production_share"].compute
    once = share(primary_production_required=carbon, energy_per_carbon=content, net_production=net)
    assert once == pytest.approx(share(primary_production_required=carbon * factor, energy_per_carbon=content / factor, net_production=net))


def test_no_catch_rests_on_nothing() -> None:
    assert 0.0 == METHODS["primary_production_share"].compute(primary_production_required=0.0, energy_per_carbon=45.0, net_production=10.0)
