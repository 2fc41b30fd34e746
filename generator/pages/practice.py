"""The practice page and its data: every question of the course, drawn from by what is due; and the student's own record."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import date
from typing import Any

from generator.kind import Subject
from generator.pages.course_pages import render
from generator.pages.data_script import data_script, script_name
from generator.pages.page import Page, link, record_uri
from generator.pages.questions import field_id, item_type
from generator.pages.record_page import RecordView
from generator.pages.site import PRACTICE, PROGRESS, Site, part_anchor, shown_questions, written_uri
from generator.records.parts import SORTS

FOLDER = "assets/practice/"
DAY_0 = date(1970, 1, 1)
"""From which scripts count days."""


def practice_page(site: Site) -> Page:
    """Mixed practice; without a script, the way to the questions of each record."""
    asked = ((subject, site.library.questions[subject.id]) for subject in site.subjects)
    records = [(subject.record.title, f"{record_uri(subject.id)}#{field_id(items[0])}") for subject, items in asked if items]
    body = render("practice.md.j2", PRACTICE, records=records, folder=link(PRACTICE, FOLDER) + "/", progress=PROGRESS)
    return Page(uri=PRACTICE, title="Practice", description="Mixed questions from the whole course, what is due first.", body=body)


def progress_page(site: Site) -> Page:
    """What a student has done on this device."""
    body = render("progress.md.j2", PROGRESS, folder=link(PROGRESS, FOLDER) + "/")
    return Page(uri=PROGRESS, title="My record", description="What is solid, what is due, which mistakes came up: on this device only.", body=body)


def practice_scripts(site: Site, script: Callable[[Site, Subject[Any]], bytes] | None = None) -> Mapping[str, bytes]:
    """The index of all questions, and each record's questions; `script` is `practice_script`, or one that remembers."""
    made = {FOLDER + script_name(subject.id): (script or practice_script)(site, subject) for subject in site.subjects}
    return {f"{FOLDER}index.js": data_script("studyPractice", _index(site))} | {uri: text for uri, text in made.items() if text}


def practice_script(site: Site, subject: Subject[Any]) -> bytes:
    """A record's questions as they stand on the practice page; empty where it has none."""
    return data_script("studyQuestions", subject.id, _blocks(site, subject)) if site.library.questions[subject.id] else b""


def _blocks(site: Site, subject: Subject[Any]) -> dict[str, str]:
    view = RecordView(site, subject, PRACTICE)
    return {item.id: block for item, block in zip(site.library.questions[subject.id], view.questions, strict=True)}


def _index(site: Site) -> dict[str, Any]:
    topics = [topic for topic in site.library.course.topics if topic.show]
    place = {topic.id: n for n, topic in enumerate(topics)}
    tests = [
        {"title": test.title, "covers": [place[topic] for topic in test.covers if topic in place], "on": test.on and (test.on - DAY_0).days}
        for test in site.library.course.tests
    ]
    items = [
        [subject.id, item.id, item_type(item), n, subject.record.title, link(PRACTICE, record_uri(subject.id))]
        for n, topic in enumerate(topics)
        for subject in (site.library.subjects[record] for record in topic.records)
        for item in site.library.questions[subject.id]
    ]
    written = [
        [f"{guided.name}/{part.id}", guided.question.title, part.id, place[guided.question.topic], link(PRACTICE, f"{written_uri(guided.name)}#{part_anchor(part.id)}")]
        for guided in shown_questions(site)
        for part in guided.question.parts
    ]
    slips = {entry.id: [entry.idea, entry.correction] for entry in site.library.catalogue.values()}
    return {
        "tests": [test for test in tests if test["covers"]], "topics": [{"title": topic.title} for topic in topics], "items": items, "slips": slips,
        "written": written, "sorts": SORTS,
    }  # fmt: skip
