"""Amount: a number as a record states it, with its uncertainty, its range, or the plain word that nobody knows it."""

from __future__ import annotations

import math
from dataclasses import dataclass


@dataclass(frozen=True, kw_only=True)
class Amount:
    """A stated number. Unit and meaning are the field's, not the amount's.

    Raises
    ------
    ValueError
        If a number is not finite, the spread is negative, or a range has its ends exchanged.
    """

    value: float | None
    """The best value; the middle of a range; None where the record says `unknown`."""
    plus_minus: float | None = None
    """One standard deviation, or whatever spread the record's source gives; None where none is stated."""
    low: float | None = None
    high: float | None = None
    """The ends of a stated range; None where no range is stated."""
    written: str = ""
    """The number as the author wrote it ("12.50"), so that it is shown with the digits that were meant."""

    def __post_init__(self) -> None:
        numbers = (self.value, self.plus_minus, self.low, self.high)
        if any(number is not None and not math.isfinite(number) for number in numbers):
            raise ValueError(f"expected finite numbers, found {', '.join(map(str, numbers))}")
        if self.plus_minus is not None and self.plus_minus < 0:
            raise ValueError(f"expected a spread of 0 or more, found {self.plus_minus}")
        if self.low is not None and self.high is not None and self.low > self.high:
            raise ValueError(f"expected low up to high, found {self.low} and {self.high}")

    @classmethod
    def exactly(cls, value: float) -> Amount:
        """An amount of just this value, without a spread."""
        return cls(value=value)

    @classmethod
    def between(cls, low: float, high: float, written: str = "") -> Amount:
        """A range; its middle stands for it where one value is needed."""
        return cls(value=low / 2 + high / 2, low=low, high=high, written=written)

    @classmethod
    def unknown(cls) -> Amount:
        """An amount that the record says nobody knows."""
        return cls(value=None)

    @property
    def spread(self) -> float | None:
        """Half the width of what the value may be; None where nothing is stated."""
        if self.plus_minus is not None:
            return self.plus_minus
        return None if self.low is None or self.high is None else (self.high - self.low) / 2
