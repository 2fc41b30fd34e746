"""Properties of the expressions in generator/science/plant_production.py; outside values are in test_checks.py."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS
from generator.science.plant_production import BOTH, limiting_factor

temperatures = st.floats(-60, 40)
precipitations = st.floats(0, 12000)


def potential_npp(temp: float, precip: float) -> float:
    limits = {
        "npp_by_temperature": METHODS["npp_by_temperature"].compute(annual_mean_temp=temp),
        "npp_by_precipitation": METHODS["npp_by_precipitation"].compute(annual_precip=precip),
    }
    return float(METHODS["potential_npp"].compute(**limits))


@given(temperatures, precipitations)
def test_production_stays_within_the_model(temp: float, precip: float) -> None:
    """No climate gives less than nothing or more than 3000 g/m2/yr."""
    assert 0 <= potential_npp(temp, precip) <= 3000


@given(temperatures, precipitations, st.floats(0, 20), st.floats(0, 1000))
def test_warmer_and_wetter_is_never_less(temp: float, precip: float, warmer: float, wetter: float) -> None:
    """Both limits rise with what they measure."""
    assert potential_npp(temp + warmer, precip + wetter) >= potential_npp(temp, precip) - 1e-9


@given(temperatures)
def test_desert_grows_nothing(temp: float) -> None:
    """Without rain warmth does not help."""
    assert 0.0 == potential_npp(temp, 0.0)


productions = st.floats(0, 3000)


@given(productions, productions)
def test_the_factor_that_limits_is_the_one_that_allows_less(by_temp: float, by_precip: float) -> None:
    """Exchanging the two productions exchanges the answer."""
    found = limiting_factor(by_temp, by_precip)
    if abs(by_temp - by_precip) > 1e-9:
        assert ("temperature" if by_temp < by_precip else "precipitation") == found
    swapped = {"temperature": "precipitation", "precipitation": "temperature", BOTH: BOTH}
    assert swapped[found] == limiting_factor(by_precip, by_temp)


def test_a_tie_is_said() -> None:
    assert "temperature and precipitation alike" == limiting_factor(900.0, 900.0)


@pytest.mark.parametrize("wrong", [-1.0, float("nan"), float("inf")])
def test_impossible_production_is_refused(wrong: float) -> None:
    with pytest.raises(ValueError, match="expected finite productions from 0"):
        limiting_factor(wrong, 1.0)
    with pytest.raises(ValueError, match="expected finite productions from 0"):
        limiting_factor(1.0, wrong)


def test_no_rain_and_deep_cold_leave_nothing_and_a_tie_is_what_both_allow() -> None:
    """Source: both curves of the model end at 3000 g/m2/yr, which neither reaches."""
    assert 0.0 == METHODS["npp_by_precipitation"].compute(annual_precip=0.0)
    assert 1.0 > METHODS["npp_by_temperature"].compute(annual_mean_temp=-60.0) > 0.0
    assert 700.0 == METHODS["potential_npp"].compute(npp_by_temperature=700.0, npp_by_precipitation=700.0)
