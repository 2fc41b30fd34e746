"""Text of records as HTML: safe, with facts that lead to their working, and with chemical formulas set properly."""

from __future__ import annotations

import html
import re
from collections.abc import Callable
from functools import lru_cache

from generator.quantities.fact import Fact
from generator.quantities.shown import MINUS
from generator.quantities.text import Reference, references, sentence
from generator.quantities.units import HAS_SUBSTANCE, SUBSTANCES, UNITS, unit

NO_BREAK = "\u00a0"
_ELEMENT = r"(?:Al|Ba|Br|Ca|Cd|Cl|Cu|Fe|Hg|Li|Mg|Mn|Na|Pb|Si|Zn|[CFHKNOPS])"
_ATOMS = rf"{_ELEMENT}(?:[2-9]|[1-9]\d)?"
_NO_FORMULA = r"COP\d|CFC\d|HFC\d|HCFC\d|PFC\d"
"""Names that look like formulas: a conference, trade names of gases."""
_ELEMENTS = ("H2", "N2", "O2", "O3", "F2", "S8", "P4", "Cl2", "Br2", "C3", "C4")
"""Molecules of one element, and the two ways of plants to bind carbon; `C14` or `K2` means something else."""
_IONS = (
    "H+", "H3O+", "Na+", "K+", "NH4+", "Ca2+", "Mg2+", "Fe2+", "Fe3+", "Mn2+", "Al3+", "Cu2+", "Zn2+", "Pb2+", "Cd2+", "Hg2+",
    "OH-", "Cl-", "F-", "Br-", "NO2-", "NO3-", "HCO3-", "CO32-", "SO32-", "SO42-", "HSO4-", "PO43-", "HPO42-", "H2PO4-", "HS-", "S2-",
)  # fmt: skip
"""Listed, because `N- and P-poor` has a hyphen, and `SO42-` an index and a charge that only knowledge can part."""
_COMPOUND = rf"(?!{_NO_FORMULA})(?=[A-Za-z(]*\d){_ATOMS}(?:{_ATOMS}|\((?:{_ATOMS})+\)[2-9])+"
_ONE_OF = "|".join(map(re.escape, (*_IONS, *_ELEMENTS)))
_FORMULA = re.compile(rf"(?<![A-Za-z0-9_])(?:{_ONE_OF}|{_COMPOUND})(?!(?!eq?\b)[A-Za-z0-9])")
_INDEX = re.compile(r"(\d+)")
_SPECIAL = re.compile(r"[&<>\"'*_`\[\]\\~|#{}]")
_MARKDOWN = re.compile(r"[*_`\[\]\\~|{}]")
_LIST_MARK = re.compile(r"^(\d*)([-+.)=])(?=\s|-|=|$)")
_RANGE = re.compile(r"(?<=\d)-(?=\d)")
_BLANKS = re.compile(r"[ \t\r\n\f\v]+")
"""Spaces at which a line may break; those that hold a number together stay."""
_UNITS = "|".join(sorted((re.escape(unit(label).shown) for label in UNITS), key=len, reverse=True))
_OF = "|".join(sorted((unit(f"g {substance}").shown.partition(" ")[2] for substance in SUBSTANCES), key=len, reverse=True))
_OF_MATTER = "|".join(sorted((re.escape(unit(label).shown) for label in HAS_SUBSTANCE), key=len, reverse=True))
_FACTOR = rf"(?:(?:{_OF_MATTER})[⁻¹²³]*[ ](?:{_OF})|(?:{_UNITS})[⁻¹²³]*)(?![A-Za-z])"
_MEASURE = re.compile(rf"(?:(?<=[0-9⁰¹²³⁴⁵⁶⁷⁸⁹])[ ]|(?<![A-Za-z])){_FACTOR}(?:[ ](?=\S+⁻|\S+[ ]\S+⁻){_FACTOR})*|(?<=\d)[ ]±[ ](?=\d)")
"""A number's space and its unit, or a unit alone; the sign between a value and its uncertainty."""


def escaped(text: str) -> str:
    """The text with `&`, `<`, `>` and quotes made safe."""
    return html.escape(text, quote=True)


def attribute(text: str) -> str:
    """Text as the value of an attribute, in which neither HTML nor Markdown changes anything."""
    return _guarded(_BLANKS.sub(" ", text).strip(" "))


def number(text: str) -> str:
    """A value as shown, safe and kept on one line; a series may break behind its commas, one in words but not before a unit.

    A value may be made of a record's own names, in which Markdown changes nothing.
    """
    safe = _MARKDOWN.sub(_as_reference, escaped(_BLANKS.sub(" ", text)))
    return _together(safe) if text[:1].isalpha() else safe.replace(" ", NO_BREAK).replace(f",{NO_BREAK}", ", ")


def stopped(text: str) -> str:
    """The text with a full stop, unless it ends with a mark of its own."""
    return text if text.endswith((".", "?", "!")) else f"{text}."


def fact_anchor(fact_id: str) -> str:
    """The id of a fact's entry on its page."""
    return f"fact-{fact_id.replace('.', '-').replace('_', '-')}"


@lru_cache(maxsize=10_000)
def prose(text: str) -> str:
    """Plain text as HTML, with chemical formulas and numbers kept beside their units; Markdown changes nothing in it."""
    return _FORMULA.sub(lambda found: _formula(found[0]), _guarded(_together(_BLANKS.sub(" ", text).strip(" "))))


def cited(text: str) -> str:
    """Authors or a place of publication, as a line of a bibliography begins: ranges of pages have a dash."""
    return prose(_RANGE.sub("–", sentence(text)))


def _together(text: str) -> str:
    """The text with every number, its uncertainty and its unit on one line."""
    return _MEASURE.sub(lambda found: found[0].replace(" ", NO_BREAK), text)


def _formula(text: str) -> str:
    """`NH4+` with its index and its charge set."""
    charge = _charge(text) if text in _IONS else ""
    indices = _INDEX.sub(r"<sub>\1</sub>", text.removesuffix(charge))
    return f"{indices}<sup>{charge.replace('-', MINUS)}</sup>" if charge else indices


def _charge(ion: str) -> str:
    """`2+` of `Ca2+`, `2-` of `SO42-`, `+` of `NH4+`: a single digit behind several elements is an index."""
    digits = len(ion[:-1]) - len(ion[:-1].rstrip("0123456789"))
    has_number = digits == 2 or (digits == 1 and re.fullmatch(_ELEMENT, ion[:-2]) is not None)
    return ion[-2:] if has_number else ion[-1]


def _guarded(text: str) -> str:
    """Characters that HTML or Markdown would take as markup, as character references."""
    safe = _SPECIAL.sub(_as_reference, text)
    return _LIST_MARK.sub(lambda found: f"{found[1]}&#{ord(found[2])};", safe)


def _as_reference(found: re.Match[str]) -> str:
    return f"&#{ord(found[0])};"


def with_facts(text: str, look_up: Callable[[str], Fact], link_to: Callable[[Reference], str], piece: Callable[[str], str] | None = None) -> str:
    """Text with its `{...}` replaced by links.

    `look_up` gives the fact of a key, `link_to` the address of its working, or nothing where it has none; `piece` turns what stands
    between facts into HTML, by default `prose_piece`.
    """
    plain = piece or prose_piece
    pieces, position = [], 0
    for reference in references(text):
        start = text.index(reference.text, position)
        pieces.append(plain(text[position:start]))
        fact = look_up(reference.key)
        address = link_to(reference)
        shown = number(fact.shown)
        pieces.append(f'<a class="fact" href="{address}">{shown}</a>' if address else shown)
        position = start + len(reference.text)
    pieces.append(plain(text[position:]))
    return "".join(pieces).strip()


def prose_piece(text: str) -> str:
    """As `prose`, keeping the spaces at both ends so that pieces can be joined."""
    inner = prose(text)
    before = " " if text[:1].isspace() else ""
    after = " " if text[-1:].isspace() and inner else ""
    return f"{before}{inner}{after}"
