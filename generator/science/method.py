"""Method: what a page and a test must know of a computation besides its code."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True, kw_only=True)
class Method:
    """One computation, its formula, and what it rests on."""

    id: str
    """Also the name of its file of outside checks, `checks/<id>.yaml`."""
    name: str
    """As a heading: "Potential evapotranspiration after Thornthwaite"."""
    formula: tuple[str, ...]
    """Lines of the expression language (`quantities/expression.py`), each `symbol = expression`; pages typeset them.
    A method of one line is computed from that very line, so formula and computation cannot differ."""
    symbols: tuple[tuple[str, str, str], ...]
    """Each symbol of the formula with its meaning and its unit (empty for a plain number)."""
    sources: tuple[str, ...]
    """Keys of `science/sources.yaml`; empty only for a definition that everybody shares."""
    limits: str
    """Where it does not hold, in a sentence or two for a student."""
    compute: Callable[..., Any]
    """Plain numbers in, plain numbers out; called with the symbols, or with the function's own parameters."""
