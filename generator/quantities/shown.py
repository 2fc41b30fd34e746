"""How a number is shown: the only place where anything is rounded.

The policy: computed numbers have three significant figures unless the record says otherwise; stated numbers keep the
digits they were written with; sums and differences end where their terms do (`last_digits.py`); the members of a series share
their decimals. Halves round up. Groups of three digits are parted by a thin space from five digits on, and minus is a minus sign.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from decimal import ROUND_HALF_UP, Context, Decimal

FIGURES = 3
MOST_MORE = 4
"""Digits that a working shows of a number in between beside those that it has elsewhere."""
SURE = 12
"""Significant figures of a float that calculating leaves as they are: what stands behind them decides no half."""
THIN = "\u202f"
MINUS = "\u2212"
MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip
_EVERY_DIGIT = Context(prec=1500)
"""Precision enough for every digit of every float, so that rounding happens where it is meant and nowhere else."""
_SUPERSCRIPT = str.maketrans("-0123456789", "⁻⁰¹²³⁴⁵⁶⁷⁸⁹")
_NORMAL = str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "-0123456789")


def rounded(value: float, figures: int = FIGURES) -> Decimal:
    """The value to so many significant figures, half up; zero stays zero.

    Raises
    ------
    ValueError
        If the value is not finite, or fewer than one figure is asked for: neither can be shown.
    """
    if figures < 1:
        raise ValueError(f"expected one significant figure or more, found {figures}")
    return _to_figures(_exact(value), figures)


def number(value: float, figures: int = FIGURES) -> str:
    """A computed number as shown: `24 000`, `0.0536`, `1.34 × 10⁶`."""
    return _in_reach(rounded(value, figures))


def with_spread(value: float, spread: float, figures: int = FIGURES) -> str:
    """A computed value and its uncertainty, `4 ± 13`: the spread to two figures, the value to the same place.

    A spread of 0 says nothing about a place: then the value has its own figures.
    """
    if spread < 0:
        raise ValueError(f"expected a spread of 0 or more, found {spread}")
    if spread == 0:
        return f"{number(value, figures)} ± 0"
    narrow = rounded(spread, 2)
    wide = _to_place(_exact(value), int(narrow.as_tuple().exponent))
    power = max(wide, narrow, key=abs).adjusted()
    if _reaches(power):
        return f"{_plain(wide)} ± {_plain(narrow)}"
    scaled = (_plain(part.scaleb(-power, _EVERY_DIGIT)) for part in (wide, narrow))
    return f"({' ± '.join(scaled)}) × {_power_of_ten(power)}"


def to_place(value: float, place: int) -> str:
    """A number down to this power of ten, and in any case to its first figure.

    >>> to_place(98.0, 0), to_place(5.0, -1), to_place(1371.2, 1), to_place(0.42, 0)
    ('98', '5.0', '1370', '0.4')
    """
    exact = _exact(value)
    near = _to_place(exact, place)
    return _in_reach(near if near or not exact else _to_figures(exact, 1)) if exact else "0"


def without_zeros(text: str, decimals: int) -> str:
    """The same number without zeros behind so many decimals.

    >>> without_zeros("98.0", 0), without_zeros("1.40", 1), without_zeros("2.85", 1), without_zeros("1.50 × 10⁸", 0)
    ('98', '1.4', '2.85', '1.50 × 10⁸')
    """
    whole, point, part = text.partition(".")
    if not part.isdecimal():
        return text
    kept = part[:decimals] + part[decimals:].rstrip("0")
    return f"{whole}{point}{kept}" if kept else whole


def series(values: Sequence[float | None], figures: int = FIGURES) -> tuple[str, ...]:
    """The members of a series, all with the decimals that give the largest of them its significant figures.

    A series whose largest member is shown as a power of ten is shown number by number.
    """
    known = [_exact(v) for v in values if v is not None]
    largest = max((exact.copy_abs() for exact in known), default=Decimal(0))
    if largest and not _reaches(_to_figures(largest, figures).adjusted()):
        return tuple("–" if v is None else number(v, figures) for v in values)
    place = min(0, _last_place(largest, figures)) if largest else 0
    return tuple("–" if v is None else _plain(_to_place(_exact(v), place)) for v in values)


def adding_up(values: Sequence[float], total: str, figures: int = FIGURES) -> tuple[str, ...]:
    """The members of a series with the fewest more digits with which they add up to the total as it is shown; as they are where none do."""
    finer = (series(values, figures + more) for more in range(MOST_MORE + 1))
    return next((one for one in finer if _plain(_to_place(sum(map(_exact, map(read, one)), Decimal(0)), -decimals(total))) == total), series(values, figures))


def written(text: str) -> str:
    """A stated number with the author's own digits, in our spelling of minus and groups; anything else as it is."""
    try:
        exact = Decimal(text)
    except ArithmeticError:
        return text
    if not exact.is_finite() or abs(exact.adjusted()) > 400:
        return text
    return _in_reach(exact) if "e" in text.lower() else _plain(exact)


def read(text: str) -> float:
    """The number that a reader takes from one as shown: the way back of `number` and `written`, with all that rounding took off.

    Raises
    ------
    ValueError
        If the text is no number as it is shown.
    """
    digits, _, power = text.replace(THIN, "").replace(MINUS, "-").partition(" × 10")
    return float(f"{digits}e{power.translate(_NORMAL)}" if power else digits)


def months(numbers: Iterable[int]) -> str:
    """Month numbers as names: `May, June and August`, or runs of three and more as `May to September`.

    Raises
    ------
    ValueError
        If a number is not one of 1 to 12.
    """
    once = sorted(set(numbers))
    if any(month not in range(1, 13) for month in once):
        raise ValueError(f"expected months from 1 to 12, found {', '.join(map(str, once))}")
    if not once:
        return "no month"
    if len(once) == 12:
        return "all twelve months"
    names = [name for run in _runs(once) for name in _run_names(run)]
    return names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"


def whole_digits(value: float) -> int:
    """How many digits a number has before its decimal point."""
    exact = Decimal(repr(float(value)))
    return exact.adjusted() + 1 if abs(exact) >= 1 else 0


def power(value: float) -> int:
    """The power of ten of the first digit: 2 for 808, -1 for 0.808."""
    return _exact(value).adjusted()


def is_all(value: float, figures: int = FIGURES) -> bool:
    """Whether so many figures are all that a number has: of 12.5 three, of a third none."""
    return rounded(value, figures) == Context(prec=SURE).create_decimal(_exact(value))


def last_place(value: float, figures: int = FIGURES) -> int:
    """The power of ten of the last of so many figures: -1 for 80.8, 1 for 1370."""
    return _last_place(_exact(value), figures)


def place_of(value: float) -> int:
    """The power of ten of the last decimal that a number has, zero of a whole one: -1 for 12.5."""
    return min(0, int(Context(prec=SURE).create_decimal(_exact(value)).normalize().as_tuple().exponent))


def place_written(text: str) -> int | None:
    """The power of ten of the last digit that was written: -2 for 12.50, 0 for 120, 6 for 1.50e8; None of what is no number."""
    try:
        exponent = Decimal(text).as_tuple().exponent
    except ArithmeticError:
        return None
    return exponent if isinstance(exponent, int) else None


def decimals(text: str) -> int:
    """How many digits a plainly written number has after its decimal point."""
    found = re.search(r"\.(\d+)", text)
    return len(found[1]) if found else 0


def _exact(value: float) -> Decimal:
    exact = Decimal(repr(float(value)))
    if not exact.is_finite():
        raise ValueError(f"{value} cannot be shown as a number")
    return exact


def _to_place(exact: Decimal, place: int) -> Decimal:
    """Rounded there, halves up. 9.1425 less 9.32 is half a thousandth too, though floats make it a hair less."""
    settled = Context(prec=max(SURE, exact.adjusted() - place + 4)).plus(exact)
    return settled.quantize(Decimal(1).scaleb(place), ROUND_HALF_UP, _EVERY_DIGIT)


def _to_figures(exact: Decimal, figures: int) -> Decimal:
    return _to_place(exact, _last_place(exact, figures)) if exact else Decimal(0)


def _last_place(exact: Decimal, figures: int) -> int:
    """The power of ten of the last figure that is kept; rounding 9.996 to three figures must give 10.0, not 10.00."""
    return _to_place(exact, exact.adjusted() - figures + 1).adjusted() - figures + 1


def _reaches(power: int) -> bool:
    """Whether a number with this power of ten is shown without it."""
    return -4 <= power < 7


def _in_reach(exact: Decimal) -> str:
    power = exact.adjusted()
    if not exact or _reaches(power):
        return _plain(exact)
    return f"{_plain(exact.scaleb(-power, _EVERY_DIGIT))} × {_power_of_ten(power)}"


def _power_of_ten(power: int) -> str:
    return f"10{str(power).translate(_SUPERSCRIPT)}"


def _plain(exact: Decimal) -> str:
    text = f"{exact.copy_abs():f}"
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


def _run_names(run: Sequence[int]) -> list[str]:
    names = [MONTHS[month - 1] for month in run]
    return names if len(run) < 3 else [f"{names[0]} to {names[-1]}"]
