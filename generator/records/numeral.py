"""Plain words of a file as the values an author means by them; numbers remember how they were written."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from typing import Any


class WrittenInt(int):
    """A whole number and its digits as they stand in the file."""

    text: str

    def __new__(cls, text: str) -> WrittenInt:
        number = super().__new__(cls, text)
        number.text = text
        return number


class WrittenFloat(float):
    """A number and its digits as they stand in the file: `12.50` states four figures, `12.5` three."""

    text: str

    def __new__(cls, text: str) -> WrittenFloat:
        number = super().__new__(cls, text)
        number.text = text
        return number


_INTEGER = re.compile(r"-?(0|[1-9]\d{0,17})", re.ASCII)
_DECIMAL = re.compile(r"-?(0|[1-9]\d{0,17})(\.\d{1,18})?([eE][+-]?\d{1,3})?", re.ASCII)
_WORDS = {"true": True, "false": False, "null": None, "~": None, "": None}


def plain_value(text: str) -> bool | WrittenInt | WrittenFloat | str | None:
    """The value of an unquoted scalar.

    `true` and `false`; `null`, `~` and the empty text as None; numbers of at most 18 digits before and after the point.
    All else is text: `NO`, `yes`, `010`, `0x1F`, `1_000`, `12:30`, `2024-01-02`, `<<`, `=`.

    >>> plain_value("NO"), plain_value("1e3"), plain_value("010"), plain_value("~")
    ('NO', 1000.0, '010', None)
    """
    if text in _WORDS:
        return _WORDS[text]
    if _INTEGER.fullmatch(text):
        return WrittenInt(text)
    if _DECIMAL.fullmatch(text) and math.isfinite(float(text)):
        return WrittenFloat(text)
    return text


def comma_mend(text: str, more: int) -> str:
    """How to write decimals in a list of numbers that has some too many, if decimal commas would make just as many.

    >>> comma_mend("[8, 9,5, 11]", 1), comma_mend("[8, 9, 11]", 1)
    ('a decimal comma makes two values: write 9.5', '')
    """
    found = re.findall(r"-?\d+,\d+", text)
    return _two_values(found[0]) if found and len(found) == more else ""


def decimal_mend(group: Mapping[str, Any], name: str) -> str:
    """How to write `{value: 60,5}`, which YAML reads as a field `5` without a value, behind a whole number.

    >>> decimal_mend({"value": 60, "5": None}, "5"), decimal_mend({"value": 60, "five": None}, "five")
    ('a decimal comma makes two values: write 60.5', '')
    """
    before = dict(zip([*group][1:], group.values(), strict=False)).get(name)
    digits = name.isdecimal() and group[name] is None and isinstance(before, int) and not isinstance(before, bool)
    return _two_values(f"{before},{name}") if digits else ""


def _two_values(decimal: str) -> str:
    return f"a decimal comma makes two values: write {decimal.replace(',', '.')}"


_NUMBER = r"-?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?"
_SMALL = "zero one two three four five six seven eight nine ten eleven twelve".split()
_TEENS = "thirteen fourteen fifteen sixteen seventeen eighteen nineteen".split()
_TENS = "twenty thirty forty fifty sixty seventy eighty ninety".split()
_SPELLED = (
    {word: i for i, word in enumerate(_SMALL)}
    | {word: i + 13 for i, word in enumerate(_TEENS)}
    | {word: 10 * i + 20 for i, word in enumerate(_TENS)}
    | {"hundred": 100, "a hundred": 100, "one hundred": 100, "thousand": 1000, "a thousand": 1000, "one thousand": 1000}
)


def number_mend(text: str, *, amount: bool = False) -> str:
    """How to write the number that the text seems to mean; `amount` allows ranges, uncertainties and `unknown`.

    >>> number_mend("thirty"), number_mend("12,5"), number_mend("10 to 25", amount=True)
    ('write 30', 'write 12.5, with a point', 'write {low: 10, high: 25}')
    """
    word = re.sub(r"[\s\u00a0\u2007\u202f]+", " ", text).strip()
    spelled = _SPELLED.get(word.lower())
    if spelled is not None:
        return f"write {spelled}"
    if _is_number(word):
        return f"write {word} without quotes" if word == text else f"write {word}, without other characters around it"
    return _mend_of_digits(word.replace("\u2212", "-"), amount, dashes="\u2212" in word)


def _mend_of_digits(word: str, amount: bool, dashes: bool) -> str:
    if dashes and _is_number(word):
        return f"write {word}, with the hyphen of the keyboard"
    if re.fullmatch(r"-?\d{1,3}([ ,_']\d{3})+(\.\d+)?", word):
        return f"write {re.sub(r'[^0-9.-]', '', word)}, without separators"
    if re.fullmatch(r"-?\d+,\d+", word):
        return f"write {tidied(word.replace(',', '.'))}, with a point"
    if amount and (match := re.fullmatch(rf"({_NUMBER}) ?(?:\u00b1|\+/?-) ?({_NUMBER})", word)):
        return f"write {{value: {tidied(match[1])}, plus_minus: {tidied(match[2])}}}"
    if amount and (match := re.fullmatch(rf"({_NUMBER}) ?(?:-|\u2013|to|\.\.+) ?({_NUMBER})", word)):
        return f"write {{low: {tidied(match[1])}, high: {tidied(match[2])}}}"
    if re.fullmatch(rf"\+?{_NUMBER}", word):
        number = tidied(word.lstrip("+"))
        return f"write {number}" if _is_number(number) else "write a number of at most 18 digits"
    if match := re.match(rf"\+?({_NUMBER}) ?[^\d\s.,:/-]", word):
        return f"write {tidied(match[1])} alone; units are declared once, in units"
    return "write the number, or unknown" if amount else "write a number in digits, with a point for decimals"


def _is_number(word: str) -> bool:
    return isinstance(plain_value(word), (WrittenInt, WrittenFloat))


def tidied(number: str) -> str:
    """The digits as our own rule for numbers has them: no leading zeros, a digit on both sides of the point."""
    sign, digits = ("-", number[1:]) if number.startswith("-") else ("", number)
    mantissa, exponent = re.fullmatch(r"([\d.]*)(.*)", digits).groups()
    whole, _, decimals = mantissa.partition(".")
    whole = whole.lstrip("0") or "0"
    return f"{sign}{whole}{'.' + decimals if decimals else ''}{exponent}"
