"""Properties of generator/science/water_column.py beside numpy and scipy; outside values are in test_checks.py."""

from __future__ import annotations

from itertools import accumulate

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate

from generator.science import METHODS
from generator.science.water_column import column_error, column_sum, layer_weights

values = st.floats(-10, 10)
gaps = st.floats(0.1, 20)


@st.composite
def profiles(draw: st.DrawFn) -> tuple[list[float], list[float]]:
    """Depths from the uppermost down, and a value at each."""
    layers = draw(st.lists(gaps, min_size=1, max_size=7))
    depths = list(accumulate([draw(st.floats(0, 5)), *layers]))
    return depths, [draw(values) for _ in depths]


@given(profiles())
def test_sum_is_that_of_numpy_and_scipy(profile: tuple[list[float], list[float]]) -> None:
    depths, found = profile
    for other in (np.trapezoid(found, depths), integrate.trapezoid(found, depths)):
        assert column_sum(depths, found) == pytest.approx(float(other), rel=1e-9, abs=1e-9)


@given(profiles(), values)
def test_an_even_column_holds_its_value_times_its_thickness(profile: tuple[list[float], list[float]], value: float) -> None:
    depths, _ = profile
    assert column_sum(depths, [value] * len(depths)) == pytest.approx(value * (depths[-1] - depths[0]), abs=1e-9)


@given(profiles())
def test_a_depth_on_the_straight_line_between_two_changes_nothing(profile: tuple[list[float], list[float]]) -> None:
    depths, found = profile
    middle, between = (depths[0] + depths[1]) / 2, (found[0] + found[1]) / 2
    assert column_sum(depths, found) == pytest.approx(column_sum([depths[0], middle, *depths[1:]], [found[0], between, *found[1:]]), abs=1e-9)


@given(profiles())
def test_errors_add_up_to_less_than_in_full_and_to_no_less_than_the_largest(profile: tuple[list[float], list[float]]) -> None:
    depths, found = profile
    errors = [abs(value) for value in found]
    single = [weight * error for weight, error in zip(layer_weights(depths), errors, strict=True)]
    assert max(single) - 1e-9 <= column_error(depths, errors) <= column_sum(depths, errors) + 1e-9


@given(st.floats(0, 20), gaps, st.floats(0.001, 5), st.floats(0.001, 5))
def test_compensation_depth_lies_between_gain_and_loss(upper: float, thickness: float, gain: float, loss: float) -> None:
    given_values = {"upper_depth": upper, "lower_depth": upper + thickness, "upper_net": gain, "lower_net": -loss}
    found = METHODS["compensation_depth"].compute(**given_values)
    assert upper <= found <= upper + thickness
    assert 0.0 == pytest.approx(float(np.interp(found, [upper, upper + thickness], [gain, -loss])), abs=1e-6)


@pytest.mark.parametrize(("depths", "found"), [([2], [1.0]), ([2, 2], [1.0, 1.0]), ([4, 2], [1.0, 1.0]), ([0, 4, 2], [1.0, 1.0, 1.0]), ([0, 2, 2], [1.0, 1.0, 1.0])])
def test_depths_that_do_not_go_down_are_refused(depths: list[float], found: list[float]) -> None:
    with pytest.raises(ValueError, match="each below the one before"):
        column_sum(depths, found)


def test_a_value_too_few_is_refused() -> None:
    with pytest.raises(ValueError, match="a value for each of 2 depths, found 1"):
        column_sum([0, 2], [1.0])


def test_an_error_below_nothing_is_refused() -> None:
    with pytest.raises(ValueError, match="none below 0"):
        column_error([0, 2], [0.1, -0.1])
