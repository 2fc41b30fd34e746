"""Properties of generator/science/water_exchange.py; outside values are in test_checks.py."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.quantities.units import number_in, unit
from generator.science import METHODS


@given(st.floats(1, 1e12), st.floats(0.001, 1e6))
def test_time_times_discharge_is_the_volume(volume: float, discharge: float) -> None:
    time = METHODS["flushing_time"].compute(volume=volume, discharge=discharge)
    assert volume == pytest.approx(time * discharge)


def test_units_turn_seconds_into_days() -> None:
    """86 400 m3 at 1 m3/s take a day."""
    time = METHODS["flushing_time"].compute(volume=unit("m3").quantity(86400.0), discharge=unit("m3/s").quantity(1.0))
    assert 1.0 == pytest.approx(number_in(unit("d"), time))
