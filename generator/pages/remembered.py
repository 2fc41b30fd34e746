"""What was made of a record before and would come out as it is: a preview makes that anew which a save can have changed."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import lru_cache
from typing import Any, Generic, TypeVar

from generator.kind import Subject
from generator.pages.route import route
from generator.pages.site import Site
from generator.records.fields import ID
from generator.records.located import FILES_KEPT
from generator.written.guide import Guided

Made = TypeVar("Made")


class Remembered(Generic[Made]):
    """A function of a site and a record on it, such as `record_page`, that keeps the last outcome for each record.

    The function may rest on the record, its questions, records that its texts name, and what all records share: the course
    file, words, misconceptions, sources and the scale of the route.
    """

    def __init__(self, make: Callable[[Site, Subject[Any]], Made]) -> None:
        self._make = make
        self._shared: tuple[object, ...] = ()
        self._made: dict[str, tuple[tuple[object, ...], Made]] = {}

    def __call__(self, site: Site, subject: Subject[Any]) -> Made:
        library = site.library
        along = route(site)
        shared = (library.course, library.vocabulary, library.catalogue, library.sources, site.kinds, along.scale if along else None)
        if shared != self._shared:
            self._made = {}
        self._shared = shared  # compared by identity for the next record of the same site
        made_of = (subject, library.questions[subject.id], *(library.subjects.get(name) for name in _named(subject)))
        kept = self._made.get(subject.id)
        if kept is None or kept[0] != made_of:
            kept = self._made[subject.id] = made_of, self._make(site, subject)
        return kept[1]


@lru_cache(maxsize=FILES_KEPT)
def _named(subject: Subject[Any]) -> tuple[str, ...]:
    """What in a record's texts looks like the id of a record: the page may show a number of it."""
    return tuple(sorted(set(re.findall(rf"{ID}/{ID}", str(subject.record)))))


class RememberedQuestion(Generic[Made]):
    """A function of a site and a written question on it that keeps the last outcome for each question.

    The function may rest on the question, its guide, records that it names, the course file and the misconceptions.
    """

    def __init__(self, make: Callable[[Site, Guided], Made]) -> None:
        self._make = make
        self._made: dict[str, tuple[tuple[object, ...], Made]] = {}

    def __call__(self, site: Site, guided: Guided) -> Made:
        library = site.library
        named = sorted(set(re.findall(rf"{ID}/{ID}", str(guided.question))))
        made_of = (guided.question, guided.guides, library.course, library.catalogue, *(library.subjects.get(name) for name in named))
        kept = self._made.get(guided.name)
        if kept is None or kept[0] != made_of:
            kept = self._made[guided.name] = made_of, self._make(site, guided)
        return kept[1]
