"""Formulas as MathML: every current browser lays it out, without a script and without a font."""

from __future__ import annotations

import re
from html import escape

from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.notation import Terms, in_words, write


_TAG = re.compile(r"<[^>]*>|&#8289;")
_LONGEST = 60
"""Characters of a bracket that is not broken; a phone's line holds some 45, paper 90."""


def formula(expression: Expression) -> str:
    """The expression in words: `stock over outflow` as a fraction."""
    return _math(write(expression, MathMLNotation()))


def line(text: str) -> str:
    """A line of a method, `symbol = expression`."""
    symbol, _, expression = text.partition("=")
    notation = MathMLNotation()
    return _math(f"{notation.name(symbol.strip())}<mo>=</mo>{write(Expression(expression.strip()), notation)}")


def put_in(expression: Expression, stands_for: dict[str, str], terms: dict[str, Terms], result: str) -> str:
    """The expression with its numbers put in, and the result behind an equals sign."""
    row = write(expression, MathMLNotation(stands_for, terms))
    return _math(f"{row}<mo>=</mo>{_text(result)}")


def _math(inner: str) -> str:
    return f'<math display="block"><mrow>{inner}</mrow></math>'


def _text(text: str) -> str:
    """A name or a number with its unit. Between two of `<mtext>`, which counts as space, a browser sets a sign without room."""
    return f"<mi>{escape(text.replace(' ', chr(160)))}</mi>"


def _held(inner: str) -> str:
    """What stays on one line, unless it is longer than a line."""
    return f"<mrow>{inner}</mrow>" if len(_TAG.sub("", inner)) <= _LONGEST else inner


class MathMLNotation:
    """Fractions stand one above the other, so their parts need no brackets."""

    fractions_bracket = False

    def __init__(self, stands_for: dict[str, str] | None = None, terms: dict[str, Terms] | None = None) -> None:
        self.stands_for = stands_for or {}
        self.terms = {_text(name): members for name, members in (terms or {}).items()}

    def name(self, name: str) -> str:
        return _text(self.stands_for.get(name, in_words(name)))

    def number(self, text: str) -> str:
        return f"<mn>{escape(text)}</mn>"

    def negated(self, inner: str) -> str:
        return f"<mrow><mo>{shown.MINUS}</mo>{inner}</mrow>"

    def sum(self, left: str, sign: str, right: str) -> str:
        return f"{left}<mo>{sign}</mo>{right}"

    def product(self, left: str, right: str) -> str:
        return f"{left}<mo>×</mo>{right}"

    def quotient(self, above: str, below: str) -> str:
        return f"<mfrac><mrow>{above}</mrow><mrow>{below}</mrow></mfrac>"

    def power(self, base: str, exponent: str) -> str:
        return f"<msup><mrow>{base}</mrow><mrow>{exponent}</mrow></msup>"

    def call(self, function: str, arguments: list[str]) -> str:
        first, *rest = arguments
        members = self.terms[first].written_out(function) if first in self.terms and not rest else None
        if members is not None:
            return self._written_out(function, members)
        if function == "sqrt":
            return f"<msqrt>{first}</msqrt>"
        inside = "<mo>,</mo>".join(arguments)
        named = function.replace("_", " ")
        return _held(f'<mi>{named}</mi><mo class="tight">&#8289;</mo>{self.bracketed(inside)}')

    def _written_out(self, function: str, members: tuple[str, ...]) -> str:
        together = "<mo>+</mo>".join(map(_text, members))
        return self.quotient(together, f"<mn>{len(members)}</mn>") if function == "mean" else together

    def bracketed(self, inner: str) -> str:
        return _held(f'<mo class="tight">(</mo>{inner}<mo class="tight">)</mo>')

    def comparison(self, left: str, sign: str, right: str) -> str:
        return f"{left}<mo>{escape(sign)}</mo>{right}"
