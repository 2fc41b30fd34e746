"""Which way up a pyramid stands; outside values are in test_checks.py."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science.pyramid_shape import pyramid_shape

stocks = st.lists(st.floats(0, 1e6), min_size=2, max_size=6)


@given(stocks)
def test_sorted_levels_stand_upright(levels: list[float]) -> None:
    assert "upright" == pyramid_shape(sorted(levels, reverse=True))


@given(st.lists(st.integers(0, 10**6), min_size=2, max_size=6, unique=True))
def test_turning_a_pyramid_over_turns_its_shape_round(levels: list[int]) -> None:
    turned = {"upright": "inverted", "inverted": "upright", "partly inverted": "partly inverted"}
    found = pyramid_shape([float(level) for level in levels])
    assert turned[str(found)] == pyramid_shape([float(level) for level in reversed(levels)])


@given(stocks, st.floats(1.5, 1000))
def test_the_unit_does_not_matter(levels: list[float], factor: float) -> None:
    scaled = [level * factor for level in levels]
    if [a > b for a, b in zip(levels[1:], levels, strict=False)] == [a > b for a, b in zip(scaled[1:], scaled, strict=False)]:
        assert pyramid_shape(levels) == pyramid_shape(scaled)


@pytest.mark.parametrize("levels", [[], [3.0]])
def test_fewer_than_two_levels_have_no_shape(levels: list[float]) -> None:
    assert None is pyramid_shape(levels)


@pytest.mark.parametrize("wrong", [-1.0, math.inf, math.nan])
def test_a_stock_must_be_finite_and_not_negative(wrong: float) -> None:
    with pytest.raises(ValueError, match="as number 2"):
        pyramid_shape([1.0, wrong])
