"""Words of the vocabulary in running text: each is a link to its entry where it first stands on a page, and brings its meaning along."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, field

from generator.course.glossaries import Word
from generator.pages.markup import attribute, escaped, prose_piece
from generator.pages.page import link
from generator.pages.site import VOCABULARY, word_anchor


@dataclass
class ToldWords:
    """What a page has told of its words so far; one is made for each page, and used from its top to its end."""

    page: str
    entries: Iterable[Word]
    _left: dict[str, Word] = field(init=False)

    def __post_init__(self) -> None:
        self._left = {entry.word.casefold(): entry for entry in self.entries}

    def piece(self, text: str) -> str:
        """A piece of text as HTML, with a link at the first place of each word that has not been told yet."""
        found = self._pattern().search(text) if self._left else None
        if not found:
            return prose_piece(text)
        entry = self._left.pop(found[1].casefold())
        return f"{prose_piece(text[: found.start()])}{self._told(entry, found[0])}{self.piece(text[found.end() :])}"

    def _pattern(self) -> re.Pattern[str]:
        words = "|".join(re.escape(word) for word in sorted(self._left, key=len, reverse=True))
        return re.compile(rf"(?<![\w{{-])({words})s?(?![\w-])", re.IGNORECASE)

    def _told(self, entry: Word, text: str) -> str:
        address = link(self.page, f"{VOCABULARY}#{word_anchor(entry.id)}")
        return f'<a class="word" href="{escaped(address)}" data-means="{attribute(entry.means)}">{prose_piece(text)}</a>'
