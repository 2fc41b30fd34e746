"""How a pyramid's levels are shown: bars in one scale, and insets that show levels too thin to read again, magnified."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from figures.trophic_pyramid import THIN, WIDEST_BAR

UNSEEN = 1.5
"""A bar narrower than this [px] is hard to see or not at all: it is drawn this wide, which the drawing says in words."""
SLIM = 14.0
"""Beside levels narrower than this [px] an inset finds room; the nearest of them is repeated in it for comparison."""
TOO_THIN, TOO_THIN_STILL = "to scale, thinner than this line", "thinner than this line even when magnified"
_INSET_MARGIN, _MOST_INSETS = 14.0, 3
_MULTIPLES = (1, 2, 3, 4, 5, 8)
_COUNTS = {2: "two", 3: "three", 4: "four", 5: "five"}


@dataclass(frozen=True)
class Layout:
    """Where a pyramid stands on its sheet, and its insets [px]."""

    left: float
    rights: tuple[float, ...]
    """The pyramid's right edge by the number of insets beside each other: three need more room than its half."""
    beside: bool
    """Whether insets stand side by side over the right half of the pyramid, or below it, each over the whole sheet."""

    @property
    def thin(self) -> float:
        """A bar narrower than this cannot be read off [px]; the same levels on a sheet of any width."""
        return THIN * (self.rights[0] - self.left) / WIDEST_BAR

    def inset(self, centre: float, number: int, count: int) -> tuple[float, float]:
        """Left and right edge of one of so many insets."""
        if not self.beside:
            return self.left, self.rights[0]
        start = centre + 26
        room = (self.rights[0] - start + _INSET_MARGIN) / max(count, 1) - _INSET_MARGIN
        left = start + number * (room + _INSET_MARGIN)
        return left, left + room


WIDE = Layout(222, (222 + WIDEST_BAR, 688.0, 688.0, 540.0), beside=True)
NARROW = Layout(12, (388.0,) * 4, beside=False)


@dataclass(frozen=True)
class Panel:
    """A stack of bars: the whole pyramid, or some neighbouring levels again at a larger scale."""

    first: int
    """Index of the lowest level shown."""
    magnified: int
    """How many times wider than in the pyramid itself; 1 for the pyramid."""
    left: float
    right: float
    widths: tuple[float, ...]
    """Of the levels from `first` up [px]; always in proportion to their values."""

    @property
    def centre(self) -> float:
        return (self.left + self.right) / 2

    @property
    def last(self) -> int:
        """Index of the highest level shown."""
        return self.first + len(self.widths) - 1


def panels(values: Sequence[float], layout: Layout = WIDE) -> list[Panel]:
    """The pyramid and, for each run of levels too thin to read, insets in their order, as few as show the most.

    Raises
    ------
    ValueError
        If there is no level, or a value is not above zero.
    """
    if not values or min(values) <= 0:
        raise ValueError(f"a pyramid needs values above zero, found {tuple(values)}")
    stacks = [_stack(values, count, layout) for count in range(_MOST_INSETS + 1)]
    return min(stacks, key=lambda stack: len(unread(stack, layout.thin)))


def _stack(values: Sequence[float], count: int, layout: Layout) -> list[Panel]:
    """The pyramid with up to `count` insets for each run of slim levels."""
    left, right = layout.left, layout.rights[count]
    pyramid = Panel(0, 1, left, right, tuple(value * (right - left) / max(values) for value in values))
    return [pyramid, *(inset for run in _slim_runs(pyramid) for inset in _chain(pyramid, run, count, layout))]


def unread(stack: Sequence[Panel], least: float) -> list[int]:
    """Levels that are narrower than `least` [px] wherever they are shown."""
    widest = [max(p.widths[level - p.first] for p in stack if p.first <= level <= p.last) for level in range(len(stack[0].widths))]
    return [level for level, width in enumerate(widest) if width < least]


def _slim_runs(pyramid: Panel) -> list[tuple[int, int]]:
    """First and last level of each run of neighbours that leave room for an inset beside them."""
    slim = [width < SLIM for width in pyramid.widths]
    starts = [level for level, is_slim in enumerate(slim) if is_slim and (level == 0 or not slim[level - 1])]
    ends = [level for level, is_slim in enumerate(slim) if is_slim and (level == len(slim) - 1 or not slim[level + 1])]
    return list(zip(starts, ends, strict=True))


def _chain(pyramid: Panel, run: tuple[int, int], count: int, layout: Layout) -> list[Panel]:
    """Up to `count` insets, each for the levels of a run that are thin in the one before."""
    insets: list[Panel] = []
    shown = replace(pyramid, first=run[0], widths=pyramid.widths[run[0] : run[1] + 1])
    for number in range(count):
        thin = [shown.first + place for place, width in enumerate(shown.widths) if width < layout.thin]
        if not thin:
            break
        first, last = thin[0], thin[-1]
        if first > shown.first + bool(insets) and shown.widths[first - 1 - shown.first] < SLIM:
            first -= 1
        if last < shown.last - bool(insets) and shown.widths[last + 1 - shown.first] < SLIM:
            last += 1
        widths = pyramid.widths[first : last + 1]
        left, right = layout.inset(pyramid.centre, number, count)
        magnified = _round_multiple((right - left - 20) / max(widths))
        if magnified <= shown.magnified:
            break
        shown = Panel(first, magnified, left, right, tuple(width * magnified for width in widths))
        insets.append(shown)
    return insets


def _round_multiple(most: float) -> int:
    """The largest number up to `most`, at least 1, with one leading digit that is easy to say."""
    power = 10 ** math.floor(math.log10(max(most, 1)))
    return max(multiple for multiple in _MULTIPLES if multiple * power <= max(most, 1)) * power


def caption(inset: Panel) -> tuple[str, str]:
    """Which levels an inset shows, and how many times wider."""
    count = len(inset.widths)
    which = "this level," if count == 1 else f"these {_COUNTS.get(count, '')} levels,".replace("  ", " ")
    return which, f"{_spoken(inset.magnified)} times wider"


def _spoken(multiple: int) -> str:
    """A round number as one says it: from a million on in words."""
    for size, word in ((10**12, "trillion"), (10**9, "billion"), (10**6, "million")):
        if multiple >= size:
            return f"{multiple // size:,} {word}".replace(",", "\u202f")
    return f"{multiple:,}".replace(",", "\u202f")
