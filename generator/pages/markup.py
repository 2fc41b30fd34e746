"""Text of records as HTML: safe, with facts that lead to their working, and with chemical formulas set properly."""

from __future__ import annotations

import html
import re
from collections.abc import Callable

from generator.quantities.fact import Fact
from generator.quantities.text import Reference, references
from generator.quantities.units import UNITS, unit

NO_BREAK = "\u00a0"
_ELEMENT = r"(?:H|C|N|O|P|S|K|Ca|Mg|Na|Fe|Cl)"
_FORMULA = re.compile(rf"(?<![A-Za-z0-9_]){_ELEMENT}(?:{_ELEMENT}|\d)*(?:[+-]|(?:\d)?[+-])?(?![A-Za-z0-9])")
_PART = re.compile(r"(\d+)")
_SPECIAL = re.compile(r"[&<>\"'*_`\[\]\\~|#]")
_LIST_MARK = re.compile(r"^(\d*)([-+.)])(?=\s)")
_UNITS = "|".join(sorted((re.escape(unit(label).shown) for label in UNITS), key=len, reverse=True))
_BEFORE_UNIT = re.compile(rf"(?:(?<=\d)|(?<=\d[⁰¹²³⁴⁵⁶⁷⁸⁹]))[ ](?=(?:{_UNITS})(?![A-Za-z]))|[ ](?=(?:{_UNITS}|[A-Z][A-Z₂₃₄]*)⁻)")


def escaped(text: str) -> str:
    """The text with `&`, `<`, `>` and quotes made safe."""
    return html.escape(text, quote=True)


def number(text: str) -> str:
    """A value as shown, safe and kept on one line."""
    return escaped(text).replace(" ", NO_BREAK)


def fact_anchor(fact_id: str) -> str:
    """The id of a fact's entry on its page."""
    return f"fact-{fact_id.replace('.', '-').replace('_', '-')}"


def prose(text: str) -> str:
    """Plain text as HTML, with chemical formulas and numbers kept beside their units; Markdown changes nothing in it."""
    joined = _BEFORE_UNIT.sub(NO_BREAK, " ".join(text.split()))
    return _FORMULA.sub(lambda found: _formula(found[0]), _guarded(joined))


def _formula(text: str) -> str:
    """`NH4+` with its index and charge set; a lone capital letter or a word stays as it is."""
    body, charge = (text[:-1], text[-1]) if text[-1] in "+-" else (text, "")
    if not charge and not re.search(r"[A-Z]\w*\d", body):
        return text
    charge_text = {"+": "+", "-": "\u2212", "": ""}[charge]
    indices = _PART.sub(r"<sub>\1</sub>", body)
    return f"{indices}<sup>{charge_text}</sup>" if charge else indices


def _guarded(text: str) -> str:
    """Characters that HTML or Markdown would take as markup, as character references."""
    safe = _SPECIAL.sub(lambda found: f"&#{ord(found[0])};", text)
    return _LIST_MARK.sub(lambda found: f"{found[1]}&#{ord(found[2])};", safe)


def with_facts(text: str, look_up: Callable[[str], Fact], link_to: Callable[[Reference], str]) -> str:
    """Text with its `{...}` replaced by links.

    `look_up` gives the fact of a key, `link_to` the address of its working, or nothing where it has none.
    """
    pieces, position = [], 0
    for reference in references(text):
        start = text.index(reference.text, position)
        pieces.append(prose_piece(text[position:start]))
        fact = look_up(reference.key)
        address = link_to(reference)
        shown = number(fact.shown)
        pieces.append(f'<a class="fact" href="{address}">{shown}</a>' if address else shown)
        position = start + len(reference.text)
    pieces.append(prose_piece(text[position:]))
    return "".join(pieces).strip()


def prose_piece(text: str) -> str:
    """As `prose`, keeping the spaces at both ends so that pieces can be joined."""
    inner = prose(text)
    before = " " if text[:1].isspace() else ""
    after = " " if text[-1:].isspace() and text.strip() else ""
    return f"{before}{inner}{after}"
