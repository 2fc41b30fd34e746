"""What the search is told beside the pages: which sort of page each is, and by which everyday words a term is looked for."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from generator.kind import Kind
from generator.pages.page import Page, link, record_uri
from generator.pages.site import (
    COMMAND_WORDS, HOME, METHODS, PRACTICE, PROGRESS, SOURCES, VOCABULARY, WRITTEN,
    Site, recall_uri, shown_questions, topic_uri, word_anchor, written_uri,
)  # fmt: skip

_SORTS = {
    HOME: "start", VOCABULARY: "words", SOURCES: "sources", METHODS: "methods", PRACTICE: "practice", PROGRESS: "practice",
    WRITTEN: "written questions", COMMAND_WORDS: "command words",
}  # fmt: skip


@dataclass(frozen=True, kw_only=True)
class Term:
    """An entry of the vocabulary, as the search knows it."""

    location: str
    """The entry's address, as seen from the site's folder."""
    word: str
    means: str
    also: tuple[str, ...] = ()


@dataclass(frozen=True, kw_only=True)
class SearchNotes:
    """Of a whole site."""

    sorts: Mapping[str, str]
    """Which sort of page each is, in words, by its address from the site's folder."""
    named: frozenset[str] = frozenset()
    """The addresses of pages that are about what they are called: they come before pages that only mention it."""
    terms: tuple[Term, ...] = ()
    ways: tuple[tuple[str, str], ...] = ()
    """Title and address of pages to go on from when nothing is found."""


def search_notes(site: Site, pages: Iterable[Page]) -> SearchNotes:
    """What the search is told of a site and its pages."""
    topics = [topic for topic in site.library.course.topics if topic.show]
    records = {record_uri(subject.id): site.kinds[subject.kind] for subject in site.subjects}
    sorts = _SORTS | {uri: _one_of(kind) for uri, kind in records.items()}
    sorts |= {topic_uri(topic.id): "topic" for topic in topics} | {recall_uri(topic.id): "topic on one page" for topic in topics}
    sorts |= {written_uri(guided.name): "written question" for guided in shown_questions(site)}
    found = {page.uri: sorts.get(page.uri, "comparison") for page in pages}
    return SearchNotes(
        sorts={link("", uri): sort for uri, sort in found.items()},
        named=frozenset(link("", uri) for uri in (*records, *(topic_uri(topic.id) for topic in topics)) if uri in found),
        terms=tuple(
            Term(location=link("", f"{VOCABULARY}#{word_anchor(word.id)}"), word=word.word, means=word.means, also=word.looked_for_as)
            for word in site.library.vocabulary.values()
        ),
        ways=(("the list of words", link("", VOCABULARY)), *((topic.title, link("", topic_uri(topic.id))) for topic in topics)),
    )


def _one_of(kind: Kind[Any]) -> str:
    """The sort of a record's page: `record: food web`."""
    return f"record: {kind.name.replace('_', ' ')}"
