"""Types of fields that records of every kind share; each says in an author's words what it expects."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from datetime import date
from typing import Annotated, Any, Literal, TypeVar

from pydantic import (
    AfterValidator,
    PlainValidator,
    Strict,
    ValidationError,
    ValidatorFunctionWrapHandler,
    WrapValidator,
)
from pydantic_core import PydanticCustomError

from generator.diagnostics import did_you_mean, listed
from generator.quantities.amount import Amount
from generator.quantities.shown import MONTHS
from generator.quantities.units import UnitError, unit
from generator.records.expectation import Inner, expected, joined, several
from generator.records.numeral import WrittenFloat, WrittenInt, decimal_mend, number_mend
from generator.records.wording import written

UNKNOWN = "unknown"
Use = Literal["page", "practice", "paper"]
"""Where numbers may appear: on pages, in questions alone, or in class tests alone."""
Item = TypeVar("Item")


def _text(value: str) -> str:
    if not value.strip():
        raise expected("some text", "write the text after the colon")
    return value.strip()


Text = Annotated[str, AfterValidator(_text)]
"""Text that is not empty, without white space around it."""


def _sentence(value: str) -> str:
    if re.search(r"[.!?][”’\"')]*$", value):
        return value
    raise expected("a text that ends as a sentence", "end it with a full stop, for another sentence follows it")


Sentence = Annotated[Text, AfterValidator(_sentence)]
"""Text that ends as a sentence; it may begin in the middle of one."""


def spelled(pattern: str, what: str, example: str, tidy: Callable[[str], str] = str) -> Any:
    """A text type of one spelling; `tidy` turns a near miss into the right spelling for the mend."""
    shape = re.compile(pattern, re.ASCII)

    def check(value: str) -> str:
        if shape.fullmatch(value):
            return value
        near = tidy(value)
        raise expected(what, f"write {near}" if shape.fullmatch(near) else f"write it like {example}")

    return Annotated[str, AfterValidator(check)]


def _snake(text: str) -> str:
    return re.sub(r"[^a-z0-9]+", "_", text.lower()).strip("_")


ID = r"[a-z][a-z0-9]*(?:_[a-z0-9]+)*"
_ID_WORDS = "an id in small letters, digits and _"
Id = spelled(ID, _ID_WORDS, "harrow_plain", _snake)
MisconceptionId = spelled(rf"{ID}\.[a-z0-9]+(?:-[a-z0-9]+)*", "the id of a misconception", "clim.desert-hot", str.strip)
SourceKey = spelled(
    r"[A-Za-z][A-Za-z0-9_-]*", "the key of a source", "RICKLEFS2008", lambda text: re.sub(r"\W", "", text)
)
RecordId = spelled(
    rf"{ID}/{ID}", "a record as kind/name", "biome/temperate_grassland", lambda text: text.removesuffix(".yaml")
)

def _day(value: Any) -> date:
    if isinstance(value, str) and re.fullmatch(r"\d{4}-\d{2}-\d{2}", value, re.ASCII):
        try:
            return date.fromisoformat(value)
        except ValueError:
            raise expected("a day of the calendar", "check month and day") from None
    raise expected("a day as year-month-day", "write it like 2026-12-18", found=written(value))


Day = Annotated[date, PlainValidator(_day)]
"""A day, written as in ISO 8601."""


def _unit_label(value: str) -> str:
    try:
        unit(value)
    except UnitError as error:
        raise expected("a unit such as mm, kg N/ha or 1/yr", f"{error}") from None
    return value


UnitLabel = Annotated[str, AfterValidator(_unit_label)]
"""The label of a unit that the program knows; an empty one is a bare number."""

Many = Annotated[tuple[Item, ...], Strict(False)]
"""A list of any length, `Many[Text]`; a record keeps it as a tuple."""


def _not_empty(items: tuple[Item, ...]) -> tuple[Item, ...]:
    if not items:
        raise expected("at least one item", "add an item, or remove the field where it is optional")
    return items


Some = Annotated[tuple[Item, ...], Strict(False), AfterValidator(_not_empty)]
"""A list of at least one."""


def different(name: str = "id") -> WrapValidator:
    """For a list: its groups must differ in a field, its plain items in themselves; told with all else."""

    def check(items: Any, handler: ValidatorFunctionWrapHandler) -> Any:
        again = list(_repeated(items, name)) if isinstance(items, (list, tuple)) else []
        try:
            result = handler(items)
        except ValidationError as error:
            raise joined(error, again) from None
        if again:
            raise several(again)
        return result

    return WrapValidator(check)


def _repeated(items: Iterable[Any], name: str) -> Iterator[Inner]:
    first: dict[str, int] = {}
    for at, item in enumerate(items):
        plain = isinstance(item, str)
        key = item if plain else item.get(name) if isinstance(item, dict) else getattr(item, name, None)
        if isinstance(key, str) and key in first:
            refusal = expected(
                "each of them once", "rename or remove one", found=f'"{key}" again (first at [{first[key]}])'
            )
            yield Inner((at,) if plain else (at, name), key, refusal)
        elif isinstance(key, str):
            first[key] = at


def number(value: Any) -> WrittenFloat:
    """The number with its digits as written, refusing text, true and false."""
    if isinstance(value, (WrittenInt, WrittenFloat)):
        return WrittenFloat(value.text)
    if isinstance(value, (int, float)) and not isinstance(value, bool) and math.isfinite(value):
        return WrittenFloat(repr(value))
    mend = number_mend(value) if isinstance(value, str) else "write one number"
    raise expected("a number", "write the number after the colon" if value is None else mend)


def _whole(value: Any) -> int:
    plain = number(value)
    if not plain.is_integer():
        raise expected("a whole number", f"write {round(plain)}, or whatever whole number is meant")
    return int(plain)


Number = Annotated[float, PlainValidator(number)]
"""A plain number, kept as `WrittenFloat`: a float that also has its `text`."""
Whole = Annotated[int, PlainValidator(_whole)]


def stated_amount(value: Any) -> Amount:
    """A number, `{value:, plus_minus:}`, `{low:, high:}` or `unknown`."""
    if isinstance(value, Amount):
        return value
    if isinstance(value, dict):
        return _amount_of_fields(value)
    if value == UNKNOWN:
        return Amount.unknown()
    try:
        plain = number(value)
    except PydanticCustomError:
        mend = number_mend(value, amount=True) if isinstance(value, str) else "write the number, or unknown"
        raise expected("a number", mend) from None
    return Amount(value=plain, written=plain.text)


StatedAmount = Annotated[Amount, PlainValidator(stated_amount)]
"""An `Amount` as records state it; its unit is declared in the record's `units`."""
_PAIRS = (("value", "plus_minus"), ("low", "high"))


def _amount_of_fields(fields: dict[str, Any]) -> Amount:
    pair = max(_PAIRS, key=lambda names: sum(name in fields for name in names))
    refused = [
        Inner(
            (name,),
            fields[name],
            expected(" and ".join(pair), decimal_mend(fields, name) or did_you_mean(name, pair, "remove it"), found="another field"),
        )
        for name in fields
        if name not in pair
    ]
    numbers = {}
    for name in pair:
        try:
            if name in fields:
                numbers[name] = number(fields[name])
        except PydanticCustomError as refusal:
            refused.append(Inner((name,), fields[name], refusal))
    if not refused and len(numbers) < 2:
        whole = "write the number alone, or both fields: {value: 60, plus_minus: 15} or {low: 10, high: 25}"
        raise expected(" and ".join(pair), whole)
    if not refused:
        refused = _refused_pair(numbers, pair)
    if refused:
        raise several(refused)
    first, second = numbers[pair[0]], numbers[pair[1]]
    if pair == ("low", "high"):
        return Amount.between(first, second)
    return Amount(value=first, plus_minus=second, written=first.text)


def _refused_pair(numbers: dict[str, WrittenFloat], pair: tuple[str, str]) -> list[Inner]:
    first, second = numbers[pair[0]], numbers[pair[1]]
    if pair == ("low", "high") and first > second:
        return [
            Inner(
                ("low",),
                first,
                expected(f"no more than high ({second.text})", "exchange low and high", found=first.text),
            )
        ]
    if pair == ("value", "plus_minus") and second < 0:
        return [Inner(("plus_minus",), second, expected("0 or more", "write it without the sign", found=second.text))]
    return []


@dataclass(frozen=True)
class Bounds:
    """Limits of a number, or of an amount's value and ends: `Annotated[Number, AfterValidator(Bounds(-90, 90))]`."""

    low: float = -math.inf
    high: float = math.inf
    unit: str = ""
    mend: str = "check the digits"
    above: bool = False
    """The lower limit itself is refused."""

    def __call__(self, value: Any) -> Any:
        numbers = (value.value, value.low, value.high) if isinstance(value, Amount) else (value,)
        for one in numbers:
            if one is not None and (one < self.low or one > self.high or (self.above and one == self.low)):
                raise expected(str(self), self.mend, found=written(one))
        return value

    def __str__(self) -> str:
        unit = f" {self.unit}" if self.unit else ""
        if self.high == math.inf:
            return f"more than {self.low:g}{unit}" if self.above else f"{self.low:g}{unit} or more"
        if self.low == -math.inf:
            return f"at most {self.high:g}{unit}"
        return f"{self.low:g} to {self.high:g}{unit}"


def monthly(bounds: Bounds | None = None) -> Any:
    """The type of a series of twelve numbers, January first, each in the bounds; a tuple of `WrittenFloat`."""

    def twelve(value: Any) -> tuple[float, ...]:
        if not isinstance(value, (list, tuple)):
            raise expected("12 values, January to December", "write the twelve values as [1, 2, ...]")
        numbers, refused = _months(value, bounds)
        if len(value) != len(MONTHS):
            refused.append(Inner((), value, _not_twelve(len(value))))
        if refused:
            raise several(refused)
        return tuple(numbers)

    return Annotated[tuple[float, ...], PlainValidator(twelve)]


def _not_twelve(length: int) -> PydanticCustomError:
    many = abs(length - len(MONTHS))
    months = f"the missing {'month' if many == 1 else f'{many} months'}"
    mend = (
        f"add {months}" if length < len(MONTHS) else f"remove the {'value' if many == 1 else f'{many} values'} too many"
    )
    return expected("12 values, January to December", mend, found=str(length), length=len(MONTHS))


def _months(values: Iterable[Any], bounds: Bounds | None) -> tuple[list[float], list[Inner]]:
    numbers, refused = [], []
    for at, value in enumerate(values):
        try:
            one = number(value)
            numbers.append(bounds(one) if bounds else one)
        except PydanticCustomError as refusal:
            words = refusal.context
            note = MONTHS[at] if at < len(MONTHS) else ""
            named = expected(words["expected"], words["mend"], found=words["found"], note=note)
            refused.append(Inner((at,), value, named))
    return numbers, refused


Series12 = monthly()


def one_of(*words: str) -> Any:
    """A text type of a few words; like `Literal`, where the words are known only when the program runs."""

    def check(value: str) -> str:
        if value in words:
            return value
        raise expected(listed(words), did_you_mean(value, words, "write one of them"))

    return Annotated[str, AfterValidator(check)]
