"""Amount: a stated number with its spread or its range."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.quantities.amount import Amount

FINITE = st.floats(allow_nan=False, allow_infinity=False)


@given(FINITE, FINITE)
def test_middle_of_a_range_lies_within_it(one: float, other: float) -> None:
    """Also where the ends are so large that their sum is not a number any more."""
    low, high = sorted((one, other))
    value = Amount.between(low, high).value
    assert value is not None
    assert low <= value <= high or math.isclose(low, value, abs_tol=1e-300)


def test_range_has_middle_and_half_width() -> None:
    amount = Amount.between(12.0, 24.0)
    assert (18.0, 6.0) == (amount.value, amount.spread)


@pytest.mark.parametrize(
    ("amount", "value", "spread"),
    [(Amount.exactly(3.0), 3.0, None), (Amount.unknown(), None, None), (Amount(value=4.0, plus_minus=3.0), 4.0, 3.0),
     (Amount(value=4.0, plus_minus=0.0), 4.0, 0.0), (Amount(value=4.0, plus_minus=0.5), 4.0, 0.5), (Amount.between(4.0, 4.0), 4.0, 0.0),
     (Amount(value=4.0, low=3.0), 4.0, None), (Amount(value=4.0, high=5.0), 4.0, None)],
)
def test_spread_is_what_is_stated(amount: Amount, value: float | None, spread: float | None) -> None:
    assert (value, spread) == (amount.value, amount.spread)


@pytest.mark.parametrize(
    ("fields", "words"),
    [
        ({"value": math.nan}, "finite"), ({"value": math.inf}, "finite"), ({"value": 1.0, "plus_minus": math.nan}, "finite"),
        ({"value": 1.0, "plus_minus": -1.0}, "a spread of 0 or more, found -1.0"),
        ({"value": 1.0, "low": 3.0, "high": 2.0}, "low up to high, found 3.0 and 2.0"),
    ],
)  # fmt: skip
def test_impossible_amount_is_refused(fields: dict[str, float], words: str) -> None:
    with pytest.raises(ValueError, match=words):
        Amount(**fields)


def test_range_with_exchanged_ends_is_refused() -> None:
    with pytest.raises(ValueError, match="low up to high, found 3 and 2"):
        Amount.between(3, 2)
