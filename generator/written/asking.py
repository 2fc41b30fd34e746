"""What words tell: how many things a prompt asks for, whether data are to be quoted, and which words of a text carry its meaning."""

from __future__ import annotations

import re

NAMING = ("identify", "state", "list", "label", "define", "read_off")
"""Command words that are answered by a word or a value: no further data need be quoted."""
_COUNTS = {word: n for n, word in enumerate("one two three four five six seven eight nine ten".split(), start=1)}
_COUNT = re.compile(rf"\b({'|'.join(_COUNTS)}|\d+)\b", re.IGNORECASE)
_SO_MANY = re.compile(
    rf"\b(?:identify|state|list|name|give|label|suggest|propose|describe|explain|outline|predict|discuss)\s+(?:any\s+|at\s+least\s+)?({'|'.join(_COUNTS)}|\d+)\s+(?!or\b|to\b)[a-z]",
    re.IGNORECASE,
)
_WITH_DATA = re.compile(
    r"\b(?:us(?:e|ing)|with|from|quot(?:e|ing)|by)\s+(?:(?:the|some|its|your|these)\s+)?(?:data|values?|numbers|figures|readings|measurements)\b", re.IGNORECASE
)
_SMALL_WORDS = frozenset("about also and any are because both but can each for from has have how into its less many more most much not one only other over same some such than that the their them then there these they this those through too two until very was what when where which who why will with without would".split())


def first_count(text: str) -> int | None:
    """The first number in a text, in digits or as a word up to ten.

    >>> first_count("three to six"), first_count("as the prompt says")
    (3, None)
    """
    found = _COUNT.search(text)
    return _number(found[1]) if found else None


def so_many(prompt: str) -> int | None:
    """How many things a prompt asks for, where it says so behind its verb.

    >>> so_many("Give two reasons why the lake is green."), so_many("Explain why ten pike starve.")
    (2, None)
    """
    found = _SO_MANY.search(prompt)
    return _number(found[1]) if found else None


def asks_for_data(prompt: str, condition: str = "") -> bool:
    """Whether a value is to be quoted.

    >>> asks_for_data("Justify the choice with values from the diagram."), asks_for_data("Explain why trees are few.")
    (True, False)
    """
    return bool(_WITH_DATA.search(f"{prompt} {condition}"))


def content_words(text: str) -> set[str]:
    """The beginnings of the words that carry meaning, so that `tree` and `trees` are one.

    >>> sorted(content_words("The trees and a tree"))
    ['tree']
    """
    return {word[:4] for word in re.findall(r"[a-z]{3,}", text.casefold()) if word not in _SMALL_WORDS}


def _number(word: str) -> int:
    return int(word) if word.isdigit() else _COUNTS[word.casefold()]
