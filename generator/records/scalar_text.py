"""Where each character of a text's value stands in the file, whether the text is plain, quoted, literal or folded."""

from __future__ import annotations

from collections.abc import Iterator

_SPACE = " \t\r\n\x85\u2028\u2029"
_HEX_DIGITS = {"x": 2, "u": 4, "U": 8}
_ESCAPES = {"0": "\0", "a": "\a", "b": "\b", "t": "\t", "n": "\n", "v": "\v", "f": "\f", "r": "\r", "e": "\x1b"}
_ESCAPES |= {" ": " ", '"': '"', "/": "/", "\\": "\\", "N": "\x85", "_": "\u00a0", "L": "\u2028", "P": "\u2029"}


def positions(text: str, start: int, style: str, value: str) -> list[int]:
    """The position in `text` of each character of `value`, a scalar that begins at `start`; empty if they do not match.

    Folding changes only white space: all else stands in the file in the same order, quotes and escapes aside.
    White space stands where the character after it stands, or at the end of the one before it.
    """
    signs = _signs(text, start, style)
    found: list[int] = []
    waiting, end = 0, start
    for character in value:
        if character in _SPACE:
            waiting += 1
            continue
        sign, position, length = next(signs, ("", 0, 0))
        if sign != character:
            return []
        found += [position] * (waiting + 1)
        waiting, end = 0, position + length
    return found + [end] * waiting


def _signs(text: str, start: int, style: str) -> Iterator[tuple[str, int, int]]:
    """The characters other than white space from a scalar's start on, with position and length in the file."""
    if style in ("|", ">"):
        line_ends = [at for at in (text.find("\n", start), text.find("\r", start)) if at >= 0]
        at = min(line_ends, default=len(text))
    else:
        at = start + len(style)
    while at < len(text):
        sign, length = _sign(text, at, style)
        if sign not in _SPACE:
            yield sign, at, length
        at += length


def _sign(text: str, at: int, style: str) -> tuple[str, int]:
    if style == "'" and text.startswith("''", at):
        return "'", 2
    if style != '"' or text[at] != "\\":
        return text[at], 1
    kind = text[at + 1 : at + 2]
    if kind in _HEX_DIGITS:
        digits = text[at + 2 : at + 2 + _HEX_DIGITS[kind]]
        return chr(int(digits, 16)), 2 + len(digits)
    return _ESCAPES.get(kind, " "), 2
