"""Facts in text: `{harrow_plain.annual_precip}`, and claims that hold only while their numbers do."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass

from generator.quantities.expression import Expression, ExpressionError
from generator.quantities.fact import Fact

_BRACES = re.compile(r"\{([^{}]*)\}")
_REFERENCE = re.compile(r"(?:([a-z][a-z0-9_]*/[a-z0-9][a-z0-9_]*):)?([a-z0-9_]+(?:\.[a-z0-9_]+)*)\Z")
_FAR_NAME = re.compile(r"\b([a-z][a-z0-9_]*)/([a-z0-9][a-z0-9_]*):([a-z0-9_]+(?:\.[a-z0-9_]+)*)")


def sentence(text: str) -> str:
    """The text with a capital letter to begin with, all else as it is.

    >>> sentence("living plants"), sentence("CO2 in the air")
    ('Living plants', 'CO2 in the air')
    """
    return text[:1].upper() + text[1:]


@dataclass(frozen=True)
class Reference:
    """A place in a text where a fact belongs."""

    text: str
    """As written, with its braces."""
    record: str
    """`kind/record` of another record, or empty for the record that the text stands in."""
    fact: str

    @property
    def key(self) -> str:
        """The name under which the facts know it."""
        return f"{self.record}:{self.fact}" if self.record else self.fact


def references(text: str) -> Iterator[Reference]:
    """Every `{...}` of a text in order; one that names no fact has an empty `fact`."""
    for found in _BRACES.finditer(text):
        named = _REFERENCE.match(found[1].strip())
        yield Reference(found[0], named[1] or "", named[2]) if named else Reference(found[0], "", "")


def stray_braces(text: str) -> bool:
    """Whether a brace stands alone, so that the text cannot be meant as it is."""
    rest = _BRACES.sub("", text)
    return "{" in rest or "}" in rest


def filled(text: str, facts: Mapping[str, Fact], write: Callable[[Fact], str] = lambda fact: fact.shown) -> str:
    """The text with each reference replaced by its fact.

    Raises
    ------
    KeyError
        If a reference names a fact that is not there, or none at all.
    """

    def fact(found: re.Match[str]) -> str:
        reference = next(references(found[0]))
        if reference.key not in facts:
            raise KeyError(f"{reference.text} names no fact")
        return write(facts[reference.key])

    return _BRACES.sub(fact, text)


@dataclass(frozen=True)
class Claim:
    """A condition on facts, as a record writes it after `holds_if`."""

    source: str

    @property
    def _condition(self) -> tuple[Expression, dict[str, str]]:
        """The expression, with names of other records' facts replaced by names that the parser can read."""
        far: dict[str, str] = {}

        def near(found: re.Match[str]) -> str:
            name = f"far_record_{len(far)}"
            far[name] = found[0]
            return name

        source = _FAR_NAME.sub(near, self.source)
        try:
            return Expression(source), far
        except ExpressionError as error:
            raise _in_own_names(error, far) from None

    @property
    def keys(self) -> tuple[str, ...]:
        """The facts that it speaks of, by key.

        Raises
        ------
        ExpressionError
            If the condition cannot be read.
        """
        expression, far = self._condition
        return tuple(far.get(name, name) for name in expression.names)

    def holds(self, facts: Mapping[str, Fact]) -> bool:
        """Whether the condition is true of the facts; an undefined fact makes it false.

        Raises
        ------
        ExpressionError
            If the condition cannot be read, names no fact, compares what cannot be compared, or is no condition.
        """
        expression, far = self._condition
        values = {name: facts[far.get(name, name)].quantity for name in expression.names if far.get(name, name) in facts}
        if any(value is None for value in values.values()):
            return False
        try:
            result = expression.evaluate(values)
        except ZeroDivisionError:
            return False
        except ExpressionError as error:
            raise _in_own_names(error, far) from None
        if not isinstance(result, bool):
            raise ExpressionError(f"{self.source}: expected a comparison such as a < b, found a value")
        return result

    def numbers(self, facts: Mapping[str, Fact]) -> str:
        """The facts of the condition with their values, for a message: `aridity_index = 0.70`."""
        return " and ".join(f"{key} is {facts[key].shown}" for key in dict.fromkeys(self.keys) if key in facts)


def _in_own_names(error: ExpressionError, far: Mapping[str, str]) -> ExpressionError:
    """The same message with the names that the author wrote."""
    message = re.sub(r"far_record_\d+", lambda found: far.get(found[0], found[0]), str(error))
    return ExpressionError(message, error.column)
