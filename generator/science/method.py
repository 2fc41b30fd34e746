"""Method: what a page and a test must know of a computation besides its code."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from generator.quantities.expression import Expression


@dataclass(frozen=True, kw_only=True)
class Method:
    """One computation, its formula, and what it rests on.

    There are two sorts. An *expression method* has one formula line and no function: it is computed from that very
    line, so formula and computation cannot differ. A *function method* has a function; its lines are for typesetting.
    """

    id: str
    """Also the name of its file of outside checks, `checks/<id>.yaml`."""
    name: str
    """As a heading: "Potential evapotranspiration after Thornthwaite"."""
    formula: tuple[str, ...]
    """Lines of the form `symbol = expression`; pages typeset them. Besides the functions of the expression language,
    the lines of a function method may name `sin`, `tan` and `arccos`."""
    symbols: tuple[tuple[str, str, str], ...]
    """Each symbol of the formula with its meaning and its unit (empty for a plain number)."""
    sources: tuple[str, ...]
    """Keys of `science/sources.yaml`; empty only for a definition that everybody shares."""
    limits: str
    """Where it does not hold, in a sentence or two for a student."""
    rule: str = ""
    """What formula lines cannot say: which branch applies, which months count."""
    function: Callable[..., Any] | None = None
    """The computation of a function method, called with the function's own parameters."""

    def __post_init__(self) -> None:
        if self.function is None and len(self.formula) != 1:
            raise ValueError(f"{self.id}: expected one formula line or a function, found {len(self.formula)} lines")
        if not self.formula and not self.rule:
            raise ValueError(f"{self.id}: expected a formula or a rule, found neither")

    @cached_property
    def expression(self) -> Expression:
        """The right-hand side of the one formula line.

        Raises
        ------
        TypeError
            If the method is computed by a function.
        """
        if self.function is not None:
            raise TypeError(f"{self.id}: expected a method of one formula line, found one computed by a function")
        return Expression(self.formula[0].partition("=")[2].strip())

    def compute(self, **given: Any) -> Any:
        """The value for plain numbers, or for quantities where the method is an expression.

        Raises
        ------
        ZeroDivisionError
            If an expression divides by zero: the caller says what undefined means. Functions return None there.
        ValueError
            If an argument is missing, unknown or out of its range.
        """
        if self.function is not None:
            return self.function(**given)
        return self.expression.value(**given)
