"""A topic on one page, to print and to recall from: its core ideas, a card of formulas and units, words to cover."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import Any

from generator.course.course_file import Topic
from generator.course.glossaries import Word
from generator.kind import Subject
from generator.pages import markup, mathml
from generator.pages.methods_page import shown_unit
from generator.pages.page import Page, link
from generator.pages.record_page import TEMPLATES, RecordView, environment
from generator.pages.site import METHODS, Site, method_anchor, recall_uri
from generator.quantities.notation import in_words
from generator.questions.question import NumberEntry
from generator.science.method import Method


COLUMN = 48
"""Characters of a formula, as it is written, that fit into one of the two columns of a printed sheet."""
STACKED = 0.6
"""The width of a formula with a fraction as part of its length in one line."""


def recall_page(site: Site, topic: Topic) -> Page:
    """The page to recall a topic from."""
    uri = recall_uri(topic.id)
    subjects = [site.library.subjects[record] for record in topic.records]
    body = environment(TEMPLATES).get_template("recall.md.j2").render(
        topic=topic, ideas=[_idea(site, subject, uri) for subject in subjects],
        methods=sorted(asked_methods(site, subjects), key=_is_long), words=_words(site, subjects), is_long=_is_long, prose=markup.prose, formula=mathml.line, unit=shown_unit, in_words=in_words,
        method=lambda name: link(uri, f"{METHODS}#{method_anchor(name)}"), address_html=partial(link, uri),
    )  # fmt: skip
    return Page(uri=uri, title=f"{topic.title} on one page", description=f"Core ideas, formulas and words of {topic.title}, to print.", body=body)


def _idea(site: Site, subject: Subject[Any], page: str) -> tuple[str, str, str]:
    """A record's title, its idea, and what its chains explain, for the reader to say."""
    view = RecordView(site, subject, page)
    return subject.record.title, view.text(subject.record.summary), "; ".join(view.text(one.asks) for one in subject.record.explanations)


def asked_methods(site: Site, subjects: list[Subject[Any]]) -> list[Method]:
    """The methods with a formula by which questions on these records are worked out, in the order in which they are first asked."""
    return list({method.id: method for subject in subjects for method in _asked(site, subject) if method.formula}.values())


def _asked(site: Site, subject: Subject[Any]) -> Iterator[Method]:
    methods = site.kinds[subject.kind].methods
    for question in site.library.questions[subject.id]:
        if isinstance(question, NumberEntry) and question.fact and question.fact.method in methods:
            yield methods[question.fact.method]


def _is_long(method: Method) -> bool:
    """Whether a formula needs more than a column of the printed card."""
    return any(len(line) * (STACKED if "/" in line else 1) > COLUMN for line in method.formula)


def _words(site: Site, subjects: list[Subject[Any]]) -> list[Word]:
    names = {name for subject in subjects for name in subject.record.vocabulary}
    return sorted((site.library.vocabulary[name] for name in names), key=lambda word: (word.word.casefold(), word.id))
