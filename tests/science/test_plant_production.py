"""Properties of the expressions in generator/science/plant_production.py; outside values are in test_checks.py."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS

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
