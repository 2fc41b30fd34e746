"""How a number is shown: the only place where anything is rounded.

The policy: computed numbers have three significant figures unless the record says otherwise; stated numbers keep the
digits they were written with; the members of a series share their decimals. Halves round up. Groups of three digits are
parted by a thin space from five digits on, and minus is a minus sign.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from decimal import ROUND_HALF_UP, Decimal

FIGURES = 3
THIN = "\u202f"
MINUS = "\u2212"
MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip
_SUPERSCRIPT = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")


def rounded(value: float, figures: int = FIGURES) -> Decimal:
    """The value to so many significant figures, half up; zero stays zero."""
    exact = Decimal(repr(float(value)))
    if exact == 0:
        return Decimal(0)
    return exact.quantize(Decimal(1).scaleb(_last_place(exact, figures)), ROUND_HALF_UP)


def number(value: float, figures: int = FIGURES) -> str:
    """A computed number as shown: `24 000`, `0.0536`, `1.34 × 10⁶`."""
    exact = rounded(value, figures)
    if exact != 0 and not -4 <= exact.adjusted() < 7:
        power = exact.adjusted()
        return f"{_plain(exact.scaleb(-power))} × 10{str(power).translate(_SUPERSCRIPT)}"
    return _plain(exact)


def with_spread(value: float, spread: float, figures: int = FIGURES) -> str:
    """A computed value and its uncertainty, `4 ± 13`: the spread to two figures, the value to the same place at most."""
    if spread == 0:
        return f"{number(value, figures)} ± 0"
    narrow = rounded(spread, 2)
    place = max(_last_place(Decimal(repr(float(value))), figures) if value else -99, int(str(narrow.as_tuple().exponent)))
    step = Decimal(1).scaleb(place)
    both = (Decimal(repr(float(x))).quantize(step, ROUND_HALF_UP) for x in (value, spread))
    return " ± ".join(_plain(x) for x in both)


def series(values: Sequence[float | None], figures: int = FIGURES) -> tuple[str, ...]:
    """The members of a series, all with the decimals that give the largest of them its significant figures."""
    known = [abs(v) for v in values if v is not None]
    largest = Decimal(repr(float(max(known, default=0.0))))
    place = min(0, _last_place(largest, figures)) if largest else 0
    step = Decimal(1).scaleb(place)
    return tuple("–" if v is None else _plain(Decimal(repr(float(v))).quantize(step, ROUND_HALF_UP)) for v in values)


def written(text: str) -> str:
    """A stated number with the author's own digits, in our spelling of minus and groups."""
    try:
        exact = Decimal(text)
    except ArithmeticError:
        return text
    return number(float(exact), max(1, len(exact.as_tuple().digits))) if "e" in text.lower() else _plain(exact)


def months(numbers: Iterable[int]) -> str:
    """Month numbers as names: `May, June and August`, or runs as `May to September`."""
    runs = _runs(sorted(numbers))
    if not runs:
        return "no month"
    if sum(len(run) for run in runs) == 12:
        return "all twelve months"
    names = [_run_name(run) for run in runs]
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


def decimals(text: str) -> int:
    """How many digits a plainly written number has after its decimal point."""
    found = re.search(r"\.(\d+)", text)
    return len(found[1]) if found else 0


def _last_place(exact: Decimal, figures: int) -> int:
    """The power of ten of the last figure that is kept; rounding 9.996 to three figures must give 10.0, not 10.00."""
    place = exact.adjusted() - figures + 1
    carried = exact.quantize(Decimal(1).scaleb(place), ROUND_HALF_UP)
    return carried.adjusted() - figures + 1


def _plain(exact: Decimal) -> str:
    text = f"{abs(exact):f}"
    whole, _, rest = text.partition(".")
    if len(whole) > 4:
        head = len(whole) % 3 or 3
        whole = THIN.join([whole[:head], *(whole[i : i + 3] for i in range(head, len(whole), 3))])
    sign = MINUS if exact < 0 else ""
    return f"{sign}{whole}.{rest}" if rest else f"{sign}{whole}"


def _runs(numbers: Sequence[int]) -> list[list[int]]:
    """Months that follow each other, December running on into January."""
    runs: list[list[int]] = []
    for month in numbers:
        if runs and runs[-1][-1] == month - 1:
            runs[-1].append(month)
        else:
            runs.append([month])
    if len(runs) > 1 and runs[0][0] == 1 and runs[-1][-1] == 12:
        runs[0] = runs.pop() + runs[0]
    return runs


def _run_name(run: Sequence[int]) -> str:
    first, last = MONTHS[run[0] - 1], MONTHS[run[-1] - 1]
    if len(run) == 1:
        return first
    return f"{first} and {last}" if len(run) == 2 else f"{first} to {last}"
