"""Where arrows of a food web cross, and which of two has a gap there, so that crossings can be told from meetings."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import combinations

import numpy as np

from figures.drawing.canvas import Point
from figures.drawing.food_web_arrows import Arrow

CLEAR = 14.0
"""Least distance of a gap from the ends of the arrow that it cuts [px]."""
_GAP = 2.5
"""Room on both sides of the arrow that passes over another [px]."""
_LONGEST = 16.0
"""Half the length of a gap at most, where two arrows cross at a small angle [px]."""
_PIECES = 60
"""Pieces of an arrow in which it is looked for crossings."""


@dataclass(frozen=True)
class Gap:
    """A short piece of an arrow, around which another one is cut."""

    over: int
    under: int
    """Places of the two in their row."""
    piece: tuple[Point, ...]
    """Of the arrow above, in the middle of it the crossing [px]."""


def gaps(shafts: Sequence[Arrow], widths: Sequence[float]) -> list[Gap]:
    """A gap for each crossing of two shafts: the later one passes over, unless the other is cut near an end; none where both would be."""
    share = np.linspace(0, 1, _PIECES + 1)
    ways = [np.array([shaft.at(float(part)) for part in share]) for shaft in shafts]
    found = []
    for one, other in combinations(range(len(shafts)), 2):
        for at_one, at_other, sine in _meetings(ways[one], ways[other]):
            half = min(_LONGEST, (widths[one] / 2 + widths[other] / 2 + _GAP) / max(sine, 0.1))
            for over, under, at, cut in ((other, one, at_other, at_one), (one, other, at_one, at_other)):
                if _from_ends(ways[under], cut) >= CLEAR + half:
                    found.append(Gap(over, under, _around(ways[over], at, half)))
                    break
    return found


def _meetings(one: np.ndarray, other: np.ndarray) -> list[tuple[float, float, float]]:
    """Where two ways cross, counted in pieces along each, with the sine of the angle between them."""
    a, b = np.diff(one, axis=0)[:, None, :], np.diff(other, axis=0)[None, :, :]
    apart = other[None, :-1, :] - one[:-1, None, :]
    turn = a[..., 0] * b[..., 1] - a[..., 1] * b[..., 0]
    with np.errstate(divide="ignore", invalid="ignore"):
        along_one = (apart[..., 0] * b[..., 1] - apart[..., 1] * b[..., 0]) / turn
        along_other = (apart[..., 0] * a[..., 1] - apart[..., 1] * a[..., 0]) / turn
    crossed = (along_one >= 0) & (along_one < 1) & (along_other >= 0) & (along_other < 1)
    lengths = np.linalg.norm(a, axis=2) * np.linalg.norm(b, axis=2)
    return [(i + float(along_one[i, j]), j + float(along_other[i, j]), abs(float(turn[i, j] / lengths[i, j]))) for i, j in np.argwhere(crossed).tolist()]


def _place(way: np.ndarray, at: float) -> np.ndarray:
    """The point so many pieces along a way."""
    piece = min(int(at), len(way) - 2)
    return way[piece] + (at - piece) * (way[piece + 1] - way[piece])


def _from_ends(way: np.ndarray, at: float) -> float:
    """The distance of a point of a way from the nearer one of its ends [px]."""
    return min(math.dist(_place(way, at), end) for end in (way[0], way[-1]))


def _around(way: np.ndarray, at: float, half: float) -> tuple[Point, ...]:
    """The piece of a way that reaches so far [px] to both sides of a point."""
    length = float(np.linalg.norm(np.diff(way, axis=0), axis=1).sum()) / (len(way) - 1)
    reach = half / max(length, 1e-9)
    return tuple((float(x), float(y)) for x, y in (_place(way, min(max(at + reach * step / 4, 0.0), len(way) - 1.0)) for step in range(-4, 5)))
