"""The pages that hold the course together: home, topics, comparisons, words, sources."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import Any

from generator.course.course_file import Objective, Test, Topic
from generator.kind import Subject
from generator.pages import markup
from generator.pages.chains import chain_anchor
from generator.pages.miniatures import miniature
from generator.pages.page import Page, link, markdown_link, record_uri
from generator.pages.record_page import TEMPLATES, RecordView, by_author, environment
from generator.pages.route import route, stations
from generator.pages.site import (
    HOME,
    METHODS,
    PRACTICE,
    PROGRESS,
    READ,
    SOURCES,
    VOCABULARY,
    WRITTEN,
    Site,
    comparison_uri,
    source_anchor,
    recall_uri,
    shown_questions,
    topic_uri,
    word_anchor,
)
from generator.quantities.shown import MONTHS
from generator.quantities.text import sentence


@dataclass(frozen=True)
class _TopicLine:
    """A topic as other pages list it."""

    title: str
    uri: str
    objectives: tuple[Objective, ...]
    first: tuple[str, str] | None = None
    """Title and address of its first record."""
    miniature: str = ""
    """Its first chart in small, as HTML."""


@dataclass(frozen=True)
class _SubjectLine:
    """A record as its topic lists it."""

    title: str
    uri: str
    summary: str
    explains: tuple[tuple[str, str], ...]
    """Each question that it answers, and where."""


@dataclass(frozen=True)
class _TestLine:
    """A test with those of its topics that are shown."""

    title: str
    topics: tuple[_TopicLine, ...]
    day: str
    """When it is, in words; empty where the course does not say."""


def home_page(site: Site) -> Page:
    """The front page."""
    course = site.library.course
    look_up = [(f"{kind.title} compared", comparison_uri(kind.name)) for kind in site.compared_kinds]
    body = render(
        "home.md.j2", HOME, course=course, written=WRITTEN if any(shown_questions(site)) else "", route=stations(route(site), HOME), practice=PRACTICE, topics=[_on_the_map(site, topic) for topic in _shown_topics(site)],
        tests=[line for test in course.tests if (line := _test_line(site, test)).topics],
        look_up=[*look_up, ("Words", VOCABULARY), ("Methods", METHODS), ("Sources", SOURCES)],
    )  # fmt: skip
    return Page(uri=HOME, title=course.title, description=f"{course.title}: a course to read, practise and look up.", body=body, leads_on=True)


def _on_the_map(site: Site, topic: Topic) -> _TopicLine:
    subjects = [site.library.subjects[record] for record in topic.records]
    drawn = (miniature(chart) for subject in subjects for chart in site.kinds[subject.kind].charts(subject))
    first = (subjects[0].record.title, record_uri(subjects[0].id)) if subjects else None
    return replace(_topic_line(topic), first=first, miniature=next(filter(None, drawn), ""))


def topic_page(site: Site, topic: Topic) -> Page:
    """The page of one topic."""
    uri = topic_uri(topic.id)
    subjects = [site.library.subjects[record] for record in topic.records]
    body = render(
        "topic.md.j2", uri, topic=topic, recall=recall_uri(topic.id), subjects=[_subject_line(site, subject, uri) for subject in subjects],
        tests=[_test_line(site, test) for test in site.library.course.tests if topic.id in test.covers],
    )  # fmt: skip
    return Page(uri=uri, title=topic.title, description=" ".join(o.says for o in topic.objectives), body=body)


def vocabulary_page(site: Site) -> Page:
    """All words of the course."""
    words = sorted(site.library.vocabulary.values(), key=lambda word: (word.word.casefold(), word.id))
    body = render("vocabulary.md.j2", VOCABULARY, words=words, anchor=word_anchor)
    return Page(uri=VOCABULARY, title="Words", description="The terms of the course and what they mean.", body=body)


def sources_page(site: Site) -> Page:
    """The bibliography, without works that only tests of the methods use."""
    cited = {key for subject in site.subjects for key in _cited(subject)}
    cited |= {key for kind in site.shown_kinds for method in kind.methods.values() for key in method.sources}
    works = [site.library.sources[key] for key in by_author(site, cited)]
    body = render("sources.md.j2", SOURCES, sources=works, anchor=source_anchor, read=READ)
    return Page(uri=SOURCES, title="Sources", description="What the numbers and formulas rest on.", body=body)


def navigation(site: Site, written: Sequence[dict[str, Any]] = ()) -> list[dict[str, Any]]:
    """The site's tree: home, the topics with their records, what else there is to practise, and where to look things up.

    Titles are escaped for HTML.
    """
    subjects = site.library.subjects
    topics: list[dict[str, Any]] = [
        {markup.escaped(topic.title): [topic_uri(topic.id), {f"{markup.escaped(topic.title)} on one page": recall_uri(topic.id)}, *({markup.escaped(subjects[r].record.title): record_uri(r)} for r in topic.records)]}
        for topic in _shown_topics(site)
    ]
    comparisons: list[dict[str, Any]] = [{f"{kind.title} compared": comparison_uri(kind.name)} for kind in site.compared_kinds]
    return [{"Home": HOME}, *topics, *written, {"Practice": [PRACTICE, {"My record": PROGRESS}]}, {"Look up": [*comparisons, {"Words": VOCABULARY}, {"Methods": METHODS}, {"Sources": SOURCES}]}]


def _shown_topics(site: Site) -> Iterator[Topic]:
    return (topic for topic in site.library.course.topics if topic.show)


def _topic_line(topic: Topic) -> _TopicLine:
    return _TopicLine(topic.title, topic_uri(topic.id), tuple(topic.objectives))


def _test_line(site: Site, test: Test) -> _TestLine:
    day = f"{test.on.day} {MONTHS[test.on.month - 1]} {test.on.year}" if test.on else ""
    return _TestLine(test.title, tuple(_topic_line(topic) for topic in _shown_topics(site) if topic.id in test.covers), day)


def _subject_line(site: Site, subject: Subject[Any], page: str) -> _SubjectLine:
    view, uri = RecordView(site, subject, page), record_uri(subject.id)
    explains = tuple((sentence(e.asks), f"{uri}#{chain_anchor(e.id)}") for e in subject.record.explanations)
    return _SubjectLine(subject.record.title, uri, view.text(subject.record.summary), explains)


def _cited(subject: Subject[Any]) -> Iterator[str]:
    """What a record and its facts name; methods are on a page of their own, whether a fact uses them or not."""
    yield from subject.record.sources
    for fact in subject.facts.values():
        yield from fact.sources


def render(template: str, page: str, **context: Any) -> str:
    """A page of the course from one of the shared templates."""
    return environment(TEMPLATES).get_template(template).render(
        prose=markup.prose, cited=markup.cited, escaped=markup.escaped, address=partial(markdown_link, page), address_html=partial(link, page), **context
    )  # fmt: skip
