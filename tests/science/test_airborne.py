"""Properties and edges of generator/science/airborne.py; outside values are in test_checks.py."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS
from generator.science.airborne import CARBON_PER_PPM


@given(st.floats(0.0, 1e6))
def test_there_and_back_is_the_same_carbon(carbon: float) -> None:
    factor = float(CARBON_PER_PPM)
    parts = METHODS["carbon_as_ppm"].compute(carbon=carbon, carbon_per_ppm=factor)
    assert carbon == pytest.approx(METHODS["ppm_as_carbon"].compute(parts=parts, carbon_per_ppm=factor))


@given(st.floats(-50.0, 50.0), st.floats(0.001, 50.0), st.floats(0.001, 1000.0))
def test_airborne_fraction_does_not_depend_on_the_unit_of_carbon(growth: float, emissions: float, factor: float) -> None:
    fraction = METHODS["airborne_fraction"].compute
    assert fraction(growth=growth, emissions=emissions) == pytest.approx(fraction(growth=growth * factor, emissions=emissions * factor))


def test_share_of_no_emissions_is_undefined() -> None:
    with pytest.raises(ZeroDivisionError):
        METHODS["airborne_fraction"].compute(growth=1.0, emissions=0.0)


def test_air_that_loses_carbon_while_people_emit_has_a_negative_fraction() -> None:
    assert METHODS["airborne_fraction"].compute(growth=-1.0, emissions=10.0) == -0.1


def test_no_carbon_is_no_part_of_the_air() -> None:
    assert 0.0 == METHODS["carbon_as_ppm"].compute(carbon=0.0, carbon_per_ppm=float(CARBON_PER_PPM))
    assert 0.0 == METHODS["ppm_as_carbon"].compute(parts=0.0, carbon_per_ppm=float(CARBON_PER_PPM))
