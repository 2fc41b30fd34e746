"""Properties of generator/science/dissolved_oxygen.py; outside values are in test_checks.py."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS

temperatures = st.floats(0, 40)
salinities = st.floats(0, 40)


def saturation(temperature: float, salinity: float) -> float:
    """[mg/L] for a temperature in degC."""
    return METHODS["oxygen_saturation"].compute(absolute_temperature=temperature + 273.15, salinity=salinity)


@given(salinities)
def test_warmer_water_holds_less_over_the_whole_span(salinity: float) -> None:
    held = [saturation(temperature, salinity) for temperature in range(41)]
    assert all(cold > warm for cold, warm in pairwise(held))


@given(temperatures)
def test_salter_water_holds_less_over_the_whole_span(temperature: float) -> None:
    held = [saturation(temperature, salinity) for salinity in range(0, 41, 5)]
    assert all(fresh > salt for fresh, salt in pairwise(held))


@given(st.floats(0, 30))
def test_sea_water_holds_about_a_fifth_less_than_fresh_water(temperature: float) -> None:
    """Source: EN 25814 takes 21 % off at 0 °C and 17 % at 30 °C for 35 g/kg (0.0875 and 0.0371 mg/L for each g/kg)."""
    assert 0.16 < 1 - saturation(temperature, 35) / saturation(temperature, 0) < 0.24


@given(st.floats(0, 20), st.floats(1, 20))
def test_share_of_the_saturation_counts_from_nothing(dissolved: float, full: float) -> None:
    share = METHODS["oxygen_saturation_percent"].compute(dissolved_oxygen=dissolved, oxygen_saturation=full)
    assert dissolved == pytest.approx(share * full)
