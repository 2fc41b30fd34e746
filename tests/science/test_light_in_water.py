"""Properties of generator/science/light_in_water.py; outside values are in test_checks.py."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science import METHODS

extinctions = st.floats(0.01, 20)
depths = st.floats(0, 20)


def light(extinction: float, depth: float) -> float:
    return METHODS["light_at_depth"].compute(extinction=extinction, depth=depth)


@given(extinctions, depths, depths)
def test_two_layers_pass_on_the_product_of_what_each_passes_on(extinction: float, upper: float, lower: float) -> None:
    assert light(extinction, upper + lower) == pytest.approx(light(extinction, upper) * light(extinction, lower))


@given(extinctions)
def test_one_percent_is_left_at_the_photic_depth_and_ten_half_way(extinction: float) -> None:
    """The two methods fit together: the one is the other turned round."""
    photic = METHODS["photic_depth"].compute(extinction=extinction)
    assert (0.01, 0.1) == pytest.approx((light(extinction, photic), light(extinction, photic / 2)))


@given(st.floats(0.05, 60))
def test_light_reaches_some_three_times_as_deep_as_the_disk_is_seen(secchi_depth: float) -> None:
    """By the rule of 1.7 the photic depth is 4.605 / 1.7 = 2.71 times the Secchi depth, whatever the water."""
    extinction = METHODS["extinction_from_secchi"].compute(secchi_depth=secchi_depth)
    assert 2.709 * secchi_depth == pytest.approx(METHODS["photic_depth"].compute(extinction=extinction), rel=1e-3)
