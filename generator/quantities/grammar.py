"""Grammar: reading the text of an expression into a tree of the few nodes that may stand in one, or saying what may not."""

from __future__ import annotations

import ast
import keyword
import math
import re

LONGEST = 2000
"""Characters; a sum over all fluxes of a large cycle fits in."""
DEEPEST = 100

ARGUMENTS: dict[str, tuple[int, int, str]] = {
    "sum": (1, 99, "a series, or values to add"),
    "mean": (1, 99, "a series, or values to average"),
    "max": (1, 99, "a series, or values to compare"),
    "min": (1, 99, "a series, or values to compare"),
    "sum_months": (3, 3, "a series, the first month and the last"),
    "count": (1, 1, "a series or months"),
    "exp": (1, 1, "one number"),
    "ln": (1, 1, "one number"),
    "log": (1, 1, "one number"),
    "sin": (1, 1, "one number"),
    "tan": (1, 1, "one number"),
    "arccos": (1, 1, "one number"),
    "sqrt": (1, 1, "one number"),
    "abs": (1, 1, "one number"),
}
"""Every function that an expression may call: the fewest and most arguments, and what they are, in words."""

_OPERATORS = (ast.Add, ast.Sub, ast.Mult, ast.Div, ast.Pow)
_COMPARISONS = (ast.Lt, ast.LtE, ast.Gt, ast.GtE, ast.Eq, ast.NotEq, ast.In, ast.NotIn)
_CHAINS: tuple[tuple[type[ast.cmpop], ...], ...] = ((ast.Lt, ast.LtE), (ast.Gt, ast.GtE), (ast.Eq,))
_SPELLED = {
    "^": "**", "×": "*", "·": "*", "⋅": "*", "÷": "/", "−": "-", "–": "-", "≤": "<=", "≥": ">=", "≠": "!=",
    "²": "**2", "³": "**3", "&": "and", "|": "or", "!": "not", "“": '"', "”": '"', "’": "'", "‘": "'",
}  # fmt: skip
_NOWHERE = "%@~#\\$?;:`{}[]"
_QUOTED = re.compile(r"('[^']*'|\"[^\"]*\")")
_FOREIGN = re.compile(rf"!(?!=)|(?<![<>=!])=(?!=)|[{re.escape(''.join(_SPELLED).replace('!', '') + _NOWHERE)}]")
_NUMBER_LIKE = re.compile(r"(?<![\w.])\.?\d(?:[\w.]*[eE][+-]\d\w*|[\w.]*)")
_NUMBER = re.compile(r"(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?\Z", re.ASCII)
_OURS = {"and", "or", "not", "in", "is", "True", "False", "None"}
_RESERVED = re.compile(rf"\b({'|'.join(word for word in keyword.kwlist if word not in _OURS)})\b")
_BOLD_A = 0x1D41A


class ExpressionError(ValueError):
    """An expression that cannot be read or worked out; `column` counts characters from 0 within its text."""

    def __init__(self, message: str, column: int = 0) -> None:
        self.column = column
        super().__init__(message)


def parse(source: str) -> ast.expr:
    """The tree of an expression; its names are plain or dotted, its numbers finite.

    Raises
    ------
    ExpressionError
        If it is empty, too long, nested too deep, or holds anything but numbers, names, texts between quotes,
        `+ - * / **`, brackets, the functions of `ARGUMENTS`, comparisons, `and`, `or`, `not` and `in`.
    """
    if len(source) > LONGEST:
        raise ExpressionError(f"expected at most {LONGEST} characters, found {len(source)}")
    if not source.strip():
        raise ExpressionError("expected an expression, found nothing")
    text = "".join(" " if character.isspace() else character for character in source)
    parts = _QUOTED.split(text)
    _refuse_signs(parts)
    parts[::2] = [_RESERVED.sub(_as_a_name, part) for part in parts[::2]]
    readable = "".join(parts)
    lead = len(readable) - len(readable.lstrip())
    try:
        tree = ast.parse(readable.strip(), mode="eval").body
    except SyntaxError as error:
        raise _unreadable(text, lead + max(0, (error.offset or 1) - 1)) from None
    except (ValueError, RecursionError, MemoryError):
        raise ExpressionError("this is not an expression that can be read") from None
    _Grammar(text, readable.strip(), lead).check(tree, DEEPEST)
    return tree


def dotted(node: ast.AST) -> str | None:
    """The dotted name that a node spells, or None when it is something else."""
    if isinstance(node, ast.Name):
        return node.id
    if isinstance(node, ast.Attribute) and (owner := dotted(node.value)):
        return f"{owner}.{node.attr}"
    return None


def _as_a_name(found: re.Match[str]) -> str:
    """A word that Python reserves, so that a fact may be called `yield`: a bold letter is read as the plain one in names."""
    return chr(_BOLD_A + ord(found[0][0]) - ord("a")) + found[0][1:]


def _refuse_signs(parts: list[str]) -> None:
    """Signs and numbers that are spelled in another way, in what stands outside quotes (every second part)."""
    start = 0
    for index, part in enumerate(parts):
        if index % 2 == 0:
            if found := _FOREIGN.search(part):
                raise ExpressionError(_about_sign(found[0]), start + found.start())
            for found in _NUMBER_LIKE.finditer(part):
                if not _NUMBER.match(found[0]):
                    message = f"{found[0]} is neither a number such as 0.65 nor a name, which begins with a letter"
                    raise ExpressionError(message, start + found.start())
                if not math.isfinite(float(found[0])):
                    raise ExpressionError(f"{_short(found[0])} is too large for a number", start + found.start())
        elif "\\" in part:
            raise ExpressionError(_about_sign("\\"), start + part.index("\\"))
        start += len(part)


def _about_sign(sign: str) -> str:
    if sign == "=":
        return "one = says nothing here: write == to ask whether two values are equal"
    if sign in _SPELLED:
        return f"{sign} is written {_SPELLED[sign]} here"
    return f"{sign} has no place in an expression"


def _unreadable(text: str, at: int) -> ExpressionError:
    for opening, closing in ("()",):
        if text.count(opening) != text.count(closing):
            more, fewer = (opening, closing) if text.count(opening) > text.count(closing) else (closing, opening)
            return ExpressionError(f"there are more {more} than {fewer}", at)
    rest = text[at:].strip()
    return ExpressionError(f'"{_short(rest)}" cannot be read' if rest else "the expression breaks off", at)


def _short(text: str, longest: int = 40) -> str:
    return text if len(text) <= longest else f"{text[:longest]}..."


class _Grammar:
    """Goes through a tree and refuses what is not in the language, by the piece of text that it stands for."""

    def __init__(self, text: str, parsed: str, lead: int) -> None:
        self.text, self.parsed, self.lead = text, parsed, lead

    def check(self, node: ast.AST, depth: int) -> None:
        if depth == 0:
            raise ExpressionError("the expression is nested too deep")
        for part in self._parts(node):
            self.check(part, depth - 1)

    def _parts(self, node: ast.AST) -> list[ast.expr]:
        match node:
            case ast.Constant(value=bool() | None):
                piece = self._piece(node)
                raise self._refusal(node, f"{piece} is not needed: name the fact alone, or write `not` before it")
            case ast.Constant(value=int() | float() | str()):
                return []
            case ast.Name() | ast.Attribute() if dotted(node):
                return []
            case ast.BinOp(op=op) if isinstance(op, _OPERATORS):
                return [node.left, node.right]
            case ast.BinOp(op=ast.FloorDiv()):
                raise self._refusal(node, "// has no place in an expression: write / to divide")
            case ast.UnaryOp(op=ast.USub() | ast.Not()):
                return [node.operand]
            case ast.UnaryOp(op=ast.UAdd()):
                raise self._refusal(node, f"leave out the + that begins {self._piece(node)}")
            case ast.BoolOp():
                return node.values
            case ast.Compare():
                return self._compared(node)
            case ast.Call():
                return self._arguments(node)
            case ast.Tuple():
                where = "a comma stands only between the arguments of a function"
                raise self._refusal(node, f"{where}; decimals have a point, as in 0.65")
        raise self._refusal(node, f"{self._piece(node)} has no place in an expression")

    def _compared(self, node: ast.Compare) -> list[ast.expr]:
        kinds = [type(op) for op in node.ops]
        if any(kind not in _COMPARISONS for kind in kinds):
            raise self._refusal(node, f"{self._piece(node)}: write == or != instead of `is`")
        if len(kinds) > 1 and not any(all(kind in chain for kind in kinds) for chain in _CHAINS):
            raise self._refusal(node, f"{self._piece(node)}: compare two at a time and join them with `and`")
        return [node.left, *node.comparators]

    def _arguments(self, node: ast.Call) -> list[ast.expr]:
        known = ", ".join(ARGUMENTS)
        if not isinstance(node.func, ast.Name):
            raise self._refusal(node, f"{self._piece(node.func)} is not a function; the functions are {known}")
        name = node.func.id
        if name not in ARGUMENTS:
            raise self._refusal(node, f"{name} is not a function here; the functions are {known}")
        fewest, most, words = ARGUMENTS[name]
        spread_out = any(isinstance(argument, ast.Starred) for argument in node.args)
        if node.keywords or spread_out or not fewest <= len(node.args) <= most:
            raise self._refusal(node, f"{self._piece(node)}: expected {words} between the brackets of {name}")
        return node.args

    def _piece(self, node: ast.AST) -> str:
        start = self._column(node)
        end = self.lead + len(self.parsed.encode()[: getattr(node, "end_col_offset", None)].decode())
        return _short(self.text[start:end])

    def _column(self, node: ast.AST) -> int:
        """In characters of the author's text, where the parser counts bytes."""
        return self.lead + len(self.parsed.encode()[: getattr(node, "col_offset", 0)].decode())

    def _refusal(self, node: ast.AST, message: str) -> ExpressionError:
        return ExpressionError(message, self._column(node))
