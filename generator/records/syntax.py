"""Text that is not YAML: the complaint in an author's words, and what to set aside so that the rest can be read."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

import yaml

from generator.records.source import Source
from generator.records.wording import excerpt

_KEY = r"(?:[^\s:#\"'\[\]{},&*!|>%@`-][^:#\r\n]*|\"[^\"\r\n]*\"|'[^'\r\n]*')"
_MARGIN = re.compile(r"(?:\A|(?<=[\r\n]))[^\s#\]}-]")
_SECTION = re.compile(rf"({_KEY}) *:(?=\s|$)")
_CLOSE_COLON = re.compile(r"^\s*(?:- )*([A-Za-z_]\w*):(?=[^\s:/])")
_KEY_BEFORE = re.compile(rf"^\s*(?:- )*{_KEY}:\s+(?=\S)")
_QUOTE = "put the text in quotes"
_CURLY = "\u201c\u201d\u201e\u2018\u2019"


@dataclass(frozen=True)
class Complaint:
    """What is wrong at a position of the text."""

    position: int
    expected: str
    found: str
    mend: str
    colon_in_text: bool = False
    """A colon that the author meant as part of a text: reading goes on as if it were another sign."""


def complaint(error: Exception, position: int, source: Source) -> Complaint:
    """The complaint about an error of PyYAML's Python parser; `position` is where the parser stood."""
    if not isinstance(
        error, yaml.MarkedYAMLError
    ):  # an escape beyond Unicode, or a version number of thousands of digits
        return _escape(source, 0, position)
    at = error.problem_mark.index if error.problem_mark else position
    start = error.context_mark.index if error.context_mark else at
    what = f"{error.context or ''}: {error.problem or ''}"
    for pattern, explain in _EXPLANATIONS:
        if re.search(pattern, what):
            return explain(source, start, at)
    return _general(at, source)


def _general(at: int, source: Source) -> Complaint:
    return Complaint(
        at, "a line that YAML can read", _rest(source, at), f"{_QUOTE}, or compare the line with another record"
    )


def _rest(source: Source, at: int) -> str:
    rest = source.line_from(at).strip()
    return (
        f'"{excerpt(rest)}"'
        if rest
        else "the end of the line"
        if at < len(source.text.rstrip())
        else "the end of the file"
    )


def _colon(source: Source, start: int, at: int) -> Complaint:
    place = source.place(at)
    line = source.line(place.line)
    before = line[: place.column - 1]
    close = _colon_without_space(source, place.line)
    if close:
        return close
    key = _KEY_BEFORE.match(before)
    if key or any(sign in before for sign in "{["):
        value = before[key.end() :] if key else ""
        if value[:1] in _CURLY and value:
            mend = "use straight quotes around the text, not curly ones"
        else:
            mend = f"{_QUOTE}: '{excerpt(line[key.end() :])}'" if key and "'" not in line else _QUOTE
        return Complaint(at, "text without a colon and a space in it", _rest(source, at), mend, colon_in_text=True)
    return _indented(source, start, at)


def _colon_without_space(source: Source, number: int) -> Complaint | None:
    """A colon right before its value, in this line or in the last one above it that says something."""
    for line_number in (number, *range(number - 1, max(number - 4, 0), -1)):
        line = source.line(line_number)
        close = _CLOSE_COLON.match(line)
        if close:
            at = source.line_starts[line_number - 1] + close.end()
            return Complaint(at, "a space after the colon", _rest(source, at), f'write "{close[1]}: " with a space')
        if line_number != number and line.strip():
            break
    return None


def _indented(source: Source, start: int, at: int) -> Complaint:
    place = source.place(at)
    indent = len(source.line(place.line)) - len(source.line(place.line).lstrip())
    if indent == 0 and (bare := _bare_line_above(source, place.line)) is not None:
        return _no_colon(source, bare, bare)
    first = source.line_starts[place.line - 1] + indent
    found = f"{indent} space{'' if indent == 1 else 's'}" if indent else "none"
    mend = "start fields that belong together in the same column; put the text above in quotes if it goes on here"
    return Complaint(first, "the indentation of the lines above", found, mend)


def _bare_line_above(source: Source, number: int) -> int | None:
    """Where the line above begins, if it stands at the margin and has no colon."""
    lines = ((n, source.line(n)) for n in range(number - 1, 0, -1))
    above, line = next(((n, line) for n, line in lines if line.strip()), (0, ""))
    return source.line_starts[above - 1] if line and not line.startswith((" ", "#")) and ":" not in line else None


def _block_end(source: Source, start: int, at: int) -> Complaint:
    place = source.place(at)
    before = source.line(place.line)[: place.column - 1].rstrip()
    if source.line_from(at)[:1] in ("}", "]", ","):
        return Complaint(at, "the end of the line, or the next field", _rest(source, at), f"delete it, or {_QUOTE}")
    if before.endswith(("'", '"')):
        mend = f"{_QUOTE} as a whole; inside 'single quotes' an apostrophe is written twice"
        return Complaint(at, "the end of the line after a text in quotes", _rest(source, at), mend)
    if before.endswith(("}", "]")):
        return Complaint(at, "the end of the line after a closing bracket", _rest(source, at), f"{_QUOTE} as a whole")
    return _indented(source, start, at)


def _unclosed_quote(source: Source, start: int, at: int) -> Complaint:
    mend = "end the text with the quote that it begins with"
    return Complaint(start, "a closing quote", "none up to the end of the file", mend)


def _brackets(source: Source, start: int, at: int) -> Complaint:
    close = "]" if source.line_from(start).startswith("[") else "}"
    opened, stopped = source.place(start), source.place(at)
    line = source.line(stopped.line)
    margin = len(source.line(opened.line)) - len(source.line(opened.line).lstrip())
    at_margin = stopped.line != opened.line and len(line) - len(line.lstrip()) <= margin
    if at_margin or not line[stopped.column - 1 :].strip():
        return Complaint(start, f"a closing {close}", "none where the list ends", f"add {close} at the end")
    if line[stopped.column - 1] == ":":
        mend = f"{_QUOTE}, or add the comma that is missing before it"
        return Complaint(at, "text without a colon and a space in it", _rest(source, at), mend, colon_in_text=True)
    return Complaint(at, f"a comma or a closing {close}", _rest(source, at), f"add it, or {_QUOTE} as a whole")


def _no_colon(source: Source, start: int, at: int) -> Complaint:
    close = _colon_without_space(source, source.place(start).line)
    if close:
        return close
    mend = 'write "name: value" with a colon and a space; indent the line if it belongs to the text above'
    return Complaint(start, "a field name and a colon", _rest(source, start), mend)


def _list_beside_key(source: Source, start: int, at: int) -> Complaint:
    mend = f"start the list on the next line, write it as [a, b], or {_QUOTE}"
    return Complaint(at, "a list on its own lines", _rest(source, at), mend)


def _sign(source: Source, start: int, at: int) -> Complaint:
    sign = source.text[at : at + 1]
    return Complaint(at, f"text that does not start with {sign}", _rest(source, at), _QUOTE)


def _start_sign(source: Source, start: int, at: int) -> Complaint:
    return _sign(source, start, start)


def _directive(source: Source, start: int, at: int) -> Complaint:
    return Complaint(start, "a field", _rest(source, start), "leave the line out")


def _escape(source: Source, start: int, at: int) -> Complaint:
    slash = source.text.rfind("\\", start, at + 1)
    place = slash if slash >= 0 else at
    found = f'"{excerpt(source.text[place : place + 2])}"'
    return Complaint(
        place, "a known escape after the backslash", found, "write two backslashes, or use 'single quotes'"
    )


def _nothing(source: Source, start: int, at: int) -> Complaint:
    opened = max(source.text.rfind(sign, 0, at) for sign in "[{")
    if not source.text[at:].strip() and opened >= 0:
        return _brackets(source, opened, at)
    return Complaint(
        at, "a value", _rest(source, at), f"add the value, or delete the sign; {_QUOTE} if it is meant as text"
    )


Explain = Callable[[Source, int, int], Complaint]
# The messages are those of PyYAML 6's scanner.py and parser.py; a new one falls through to the general complaint.
_EXPLANATIONS: tuple[tuple[str, Explain], ...] = (
    (r"mapping values are not allowed", _colon),
    (r"sequence entries are not allowed", _list_beside_key),
    (r"mapping keys are not allowed", _sign),
    (r"cannot start any token", _sign),
    (r"scanning a simple key", _no_colon),
    (r"scanning an (alias|anchor)", _start_sign),
    (r"scanning a tag|scanning a block scalar|tag handle|non-specific tag", _start_sign),
    (r"directive|document \(version", _directive),
    (r"scanning a double-quoted scalar", _escape),
    (r"scanning a quoted scalar", _unclosed_quote),
    (r"parsing a flow (sequence|mapping): expected ','", _brackets),
    (r"expected <block end>|expected '<document start>'", _block_end),
    (r"expected the node content", _nothing),
)


def without_section(text: str, position: int) -> tuple[str, str] | None:
    """The text with the value of one field at the margin blanked, as long as before, and the field's name.

    None where nothing at the margin stands at or above the position.
    """
    margins = [match.start() for match in _MARGIN.finditer(text)]
    begin = max((start for start in margins if start <= position), default=None)
    if begin is None:
        return None
    end = min((start for start in margins if start > begin), default=len(text))
    field = _SECTION.match(text, begin)
    value = field.end() if field else begin
    name = field[1].strip("\"' ") if field else re.match(r"\w*", text[begin:end])[0]
    return text[:value] + re.sub(r"[^\r\n]", " ", text[value:end]) + text[end:], name


def without_colon(text: str, position: int) -> str:
    """The text with the sign at the position replaced by one that means nothing to the parser."""
    return text[:position] + ";" + text[position + 1 :]
