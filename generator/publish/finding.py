"""The index of the search, made to find a page by the word that a reader has, and to show the page that is about it first.

All is done to the index when the site is built. Each entry may get two fields more, which are searched and not shown:
`names`, what an entry is about, and `also`, other words for what it says. The engine is the theme's own.
"""

from __future__ import annotations

import html
import re
from collections import Counter
from collections.abc import Iterable, Mapping
from itertools import groupby
from typing import Any

from generator.pages.search_notes import SearchNotes, Term

Entry = dict[str, Any]

FIELDS = {"title": {"boost": 1000.0}, "names": {"boost": 4000.0}, "text": {"boost": 1.0}, "also": {"boost": 20.0}, "tags": {"boost": 1.0}}
"""How much a hit counts where it stands. `tags` holds the sort of page, which must not outweigh what the page says."""
RECORD_BOOST, TERM_BOOST = 2.0, 2.5
"""An entry below a page counts less in the theme's engine than a page, so a term gets more than a record."""
OFTEN, OFTEN_FORMULA = 6, 30
MENTIONS = 3
"""So often must a page say a term to be found by the everyday words for it, unless it lists the term or has it in a title."""

FORMULAS = {
    "carbon dioxide": "CO2", "methane": "CH4", "nitrous oxide": "N2O", "nitrogen gas": "N2", "nitrate": "NO3", "nitrite": "NO2",
    "ammonium": "NH4", "ammonia": "NH3", "phosphate": "PO4", "sulfur dioxide": "SO2", "calcium carbonate": "CaCO3", "oxygen": "O2",
}  # fmt: skip
"""Names and the formulas that stand for them, without charges, as the query is read (Nomenclature of Inorganic Chemistry, from memory)."""
_SPELLINGS = (
    (r"(\w{3,}[^aeiou\W])is(e|ed|es|er|ers|ing|ation|ations)", r"\1iz\2"),
    (r"(col|harb|vap|behavi|neighb|fav|lab|od|hum)our(\w*)", r"\1or\2"),
    (r"(\w*)(met|lit|cent|fib)re(s?)", r"\1\2er\3"),
    (r"sulf(\w*)", r"sulph\1"), (r"sulph(\w*)", r"sulf\1"),
    (r"grey(\w*)", r"gray\1"), (r"plough(\w*)", r"plow\1"), (r"mould(\w*)", r"mold\1"), (r"alumini(um)", r"alumin\1"),
    (r"(\w+)lys(e|ed|es|ing)", r"\1lyz\2"), (r"foehn", r"föhn"),
)  # fmt: skip
_RULES = tuple((re.compile(pattern), to) for pattern, to in _SPELLINGS)
_NO_VARIANT = frozenset("precise precised advise wise otherwise likewise exercise exercises surprise surprises promise noise".split())
_TAGS = re.compile(r"<[^>]*>")
_DOUBLED = frozenset({"sources"})
"""Sections that repeat a page of their own for each record."""


def findable(content: Mapping[str, Any], notes: SearchNotes) -> dict[str, Any]:
    """The theme's index with the sort of each page, one entry for each term, and the words that lead to them."""
    pages = groupby(content["docs"], key=lambda entry: entry["location"].partition("#")[0])
    words = _Words(notes.terms)
    found = [entry for page, entries in pages for entry in _page(page, list(entries), notes, words)]
    return {**content, "config": {**content["config"], "fields": FIELDS}, "docs": [*found, *map(_term, notes.terms)]}


def spellings(text: str) -> Counter[str]:
    """The words of a text as they are spelt on the other side of the ocean, where that differs, and how often each is there."""
    words = Counter(re.findall(r"[^\W\d_]{4,}", text.lower()))
    found: Counter[str] = Counter()
    for word in sorted(words.keys() - _NO_VARIANT):
        found.update({rule.sub(to, word): words[word] for rule, to in _RULES if rule.fullmatch(word)})
    return found


def formulas(text: str) -> Counter[str]:
    """The formulas of the substances that a text names, and how often it names each."""
    counts = {formula: len(re.findall(rf"\b{name}\b", text.lower())) for name, formula in FORMULAS.items()}
    return Counter({formula: count for formula, count in counts.items() if count})


def said(found: Counter[str], most: int) -> str:
    """Each word as often as it counts, so that a page that is about a thing comes before one that names it; at most so often."""
    return " ".join(word for word, count in found.items() for _ in range(min(count, most)))


def _page(page: str, entries: list[Entry], notes: SearchNotes, words: _Words) -> list[Entry]:
    """The entries of one page: its head as one entry, with what holds for the whole page."""
    if page in {term.location.partition("#")[0] for term in notes.terms}:
        entries = [{**entries[0], "text": ""}]
    head, *rest = _one_head([entry for entry in entries if entry["location"].partition("#")[2] not in _DOUBLED])
    plain = " ".join(_plain(entry) for entry in entries)
    also = f"{said(words.everyday(entries) + spellings(plain), OFTEN)} {said(formulas(plain), OFTEN_FORMULA)}".strip()
    head |= {"also": also} if also else {}
    head |= {"tags": [notes.sorts[page]]} if page in notes.sorts else {}
    head |= {"names": _name(html.unescape(head["title"]), notes.sorts[page]), "boost": RECORD_BOOST} if page in notes.named else {}
    return [head, *rest]


def _name(title: str, sort: str) -> str:
    """A topic says its name twice: it comes before its records, which may be called like it."""
    return f"{title}, {title}" if sort == "topic" else title


def _one_head(entries: list[Entry]) -> list[Entry]:
    """The theme makes two entries of a page's head where something stands above its heading."""
    first, *rest = entries
    if rest and "#" not in first["location"] and rest[0]["title"] == first["title"]:
        second, *rest = rest
        return [{**first, "text": f"{first['text']} {second['text']}".strip()}, *rest]
    return [dict(first), *rest]


def _term(term: Term) -> Entry:
    names = ", ".join([term.word, *term.also])
    other = spellings(f"{names} {term.means}") + formulas(f"{names} {term.means}")
    entry = {"location": term.location, "title": html.escape(term.word), "text": html.escape(term.means), "boost": TERM_BOOST}
    return {**entry, "names": ", ".join([names, *spellings(names)]), "tags": ["word"]} | ({"also": " ".join(other)} if other else {})


class _Words:
    """The terms of a course, to be found in the text of a page."""

    def __init__(self, terms: Iterable[Term]) -> None:
        self._also = {term.word.lower(): term.also for term in terms if term.also}
        longest_first = sorted(self._also, key=lambda word: (-len(word), word))
        self._any = re.compile(rf"\b({'|'.join(map(re.escape, longest_first))})(?:s|es)?\b") if longest_first else None

    def everyday(self, entries: Iterable[Entry]) -> Counter[str]:
        """Everyday words for the terms that a page lists, has in a title or says often."""
        if not self._any:
            return Counter()
        counts: Counter[str] = Counter()
        for entry in entries:
            in_text = self._any.findall(_plain(entry))
            weighty = self._any.findall(entry["title"].lower()) + (in_text if entry["location"].endswith("#words") else [])
            counts.update(in_text + weighty * MENTIONS)
        found: Counter[str] = Counter()
        for word, count in counts.items():
            if count >= MENTIONS:
                found.update({everyday: count - MENTIONS + 1 for everyday in self._also[word]})
        return found


def _plain(entry: Entry) -> str:
    return html.unescape(_TAGS.sub(" ", entry["text"])).lower()
