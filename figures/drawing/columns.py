"""Places of columns of text under points: as near to their points as their width allows."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate


def columns_under(points: Sequence[float], gaps: Sequence[float], low: float, high: float) -> list[float] | None:
    """A place for each of some rising points, between two ends and neighbours at least a gap apart, moved least; None without room.

    With the gaps taken off, places only have to rise: neighbours that do not are put together at their mean, which is
    the nearest rising row in the sense of least squares (pool adjacent violators, common practice).

    >>> columns_under([10, 100, 110], [40, 40], 0, 200)
    [10.0, 85.0, 125.0]
    """
    shifts = [0.0, *accumulate(gaps)]
    if high - low < shifts[-1]:
        return None
    pools: list[tuple[float, int]] = []
    for point, shift in zip(points, shifts, strict=True):
        mean, count = float(point - shift), 1
        while pools and pools[-1][0] > mean:
            before, many = pools.pop()
            mean, count = (mean * count + before * many) / (count + many), count + many
        pools.append((mean, count))
    rising = [min(max(mean, low), high - shifts[-1]) for mean, count in pools for _ in range(count)]
    return [place + shift for place, shift in zip(rising, shifts, strict=True)]
