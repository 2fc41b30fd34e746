"""Properties and edges of generator/science/salinity.py; outside values are in test_checks.py."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.science.salinity import SALINITY_CLASSES, salinity_class


@pytest.mark.parametrize("salinity", [-0.1, math.inf, math.nan])
def test_what_is_no_salinity_is_refused(salinity: float) -> None:
    with pytest.raises(ValueError, match="salinity: expected a finite number from 0"):
        salinity_class(salinity)


def test_each_limit_belongs_to_the_salter_class() -> None:
    limits = [limit for limit, _ in SALINITY_CLASSES[:-1]]
    below, at = ([salinity_class(limit * factor) for limit in limits] for factor in (1 - 1e-9, 1))
    assert [name for _, name in SALINITY_CLASSES] == [*below, at[-1]]
    assert below[1:] == at[:-1]


@given(st.floats(0, 400), st.floats(0, 100))
def test_more_salt_never_makes_water_fresher(salinity: float, more: float) -> None:
    names = [name for _, name in SALINITY_CLASSES]
    assert names.index(salinity_class(salinity)) <= names.index(salinity_class(salinity + more))


def test_water_without_any_salt_is_fresh() -> None:
    assert SALINITY_CLASSES[0][1] == salinity_class(0.0)
