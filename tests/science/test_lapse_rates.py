"""Lapse rates, cloud base and air that crosses a mountain: properties and edges; outside values are in test_checks.py."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS
from generator.science.lapse_rates import GAS_CONSTANT, GRAVITY, ZERO, moist_adiabatic_lapse_rate

temperatures, heights, rates = st.floats(-30, 40), st.floats(0, 6000), st.floats(2, 12)


def at_height(temperature: float, rate: float, height: float, before: float) -> float:
    given_values = {"temperature_before": temperature, "lapse_rate": rate, "height": height, "height_before": before}
    return float(METHODS["temperature_at_height"].compute(**given_values))


@given(temperatures, heights, rates)
def test_up_and_down_again_at_one_rate_comes_back(temperature: float, height: float, rate: float) -> None:
    above = at_height(temperature, rate, height / 1000, 0.0)
    assert temperature == pytest.approx(at_height(above, rate, 0.0, height / 1000), abs=1e-9)


@given(temperatures, rates, st.floats(0, 3), st.floats(0.1, 3))
def test_lapse_rate_is_found_again_from_the_two_temperatures(temperature: float, rate: float, low: float, climb: float) -> None:
    above = at_height(temperature, rate, low + climb, low)
    compute = METHODS["environmental_lapse_rate"].compute
    assert rate == pytest.approx(compute(temperature_before=temperature, temperature=above, height=low + climb, height_before=low))
    assert rate == pytest.approx(compute(temperature_before=above, temperature=temperature, height=low, height_before=low + climb))


@given(temperatures, st.floats(0, 2), st.floats(0, 3), st.floats(8, 10), st.floats(3, 8))
def test_warming_is_what_the_steps_add_up_to(temperature: float, base: float, above: float, dry: float, moist: float) -> None:
    """Up dry, up moist, down dry: the same as the difference of the rates over the way in cloud."""
    crest = base + above
    at_crest = at_height(at_height(temperature, dry, base, 0.0), moist, crest, base)
    warming = METHODS["foehn_warming"].compute(dry_lapse_rate=dry, moist_lapse_rate=moist, crest=crest, cloud_base=base)
    assert warming == pytest.approx(at_height(at_crest, dry, 0.0, crest) - temperature, abs=1e-9)


@given(temperatures, st.floats(0, 20), heights)
def test_drier_air_makes_cloud_higher_up(temperature: float, spread: float, height: float) -> None:
    compute = METHODS["cloud_base"].compute
    common = {"height": height, "rise_per_kelvin": 125.0, "temperature": temperature}
    assert height <= compute(dew_point=temperature - spread, **common) <= compute(dew_point=temperature - spread - 1, **common)


@given(st.floats(-60, 35), st.floats(300, 1050))
def test_moist_air_cools_more_slowly_than_dry_air(temperature: float, pressure: float) -> None:
    dry = 1000 * METHODS["dry_adiabatic_lapse_rate"].compute(gravity=GRAVITY, heat_capacity=1004.67)
    assert 0 < moist_adiabatic_lapse_rate(temperature, pressure) < dry


@given(st.floats(-60, 30), st.floats(400, 1000))
def test_warmth_and_thin_air_slow_the_cooling(temperature: float, pressure: float) -> None:
    rate = moist_adiabatic_lapse_rate(temperature, pressure)
    assert moist_adiabatic_lapse_rate(temperature + 1, pressure) < rate
    assert moist_adiabatic_lapse_rate(temperature, pressure + 10) > rate


def test_very_cold_air_cools_almost_like_dry_air() -> None:
    assert 9.761 == pytest.approx(moist_adiabatic_lapse_rate(-80.0, 300.0), abs=0.02)


def test_rate_added_up_over_pressure_is_the_moist_adiabat() -> None:
    """Source: metpy.calc.moist_lapse of MetPy 1.7.1 from 20 degC at 1000 hPa: 16.131030, 11.663080 and 6.369727 degC."""
    temperature, pressure, step, found = 20.0, 1000.0, 0.1, {}
    for _ in range(3000):
        climb = GAS_CONSTANT * (temperature + ZERO) / GRAVITY * step / pressure / 1000  # hydrostatic, [km]
        temperature -= moist_adiabatic_lapse_rate(temperature, pressure) * climb
        pressure -= step
        found[round(pressure, 1)] = temperature
    assert [16.131030, 11.663080, 6.369727] == pytest.approx([found[level] for level in (900.0, 800.0, 700.0)], abs=0.02)


@given(st.floats(-500, 10900))
def test_pressure_falls_with_height(height: float) -> None:
    compute = METHODS["standard_pressure"].compute
    assert 0 < compute(height=height + 100) < compute(height=height)


@pytest.mark.parametrize(("temperature", "pressure"), [(-80.1, 800.0), (50.1, 800.0), (10.0, 100.0), (10.0, math.inf), (math.nan, 800.0), (10.0, math.nan)])
def test_air_that_cannot_be_is_refused(temperature: float, pressure: float) -> None:
    with pytest.raises(ValueError, match="expected"):
        moist_adiabatic_lapse_rate(temperature, pressure)


def test_equal_heights_have_no_lapse_rate() -> None:
    with pytest.raises(ZeroDivisionError):
        METHODS["environmental_lapse_rate"].compute(temperature_before=10.0, temperature=9.0, height=0.4, height_before=0.4)


def test_thinnest_coldest_and_warmest_air_that_is_worked_out() -> None:
    """Just inside each limit there is a rate; the pressure itself of 100 hPa is refused above."""
    for temperature, pressure in ((-80.0, 100.5), (50.0, 1050.0), (-80.0, 1050.0)):
        assert 0.0 < moist_adiabatic_lapse_rate(temperature, pressure) < 10.0
