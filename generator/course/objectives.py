"""Which objectives a record serves: those that it names, or else all of its topic."""

from __future__ import annotations

from collections.abc import Iterator

from generator.course.course_file import CourseFile
from generator.diagnostics import did_you_mean, few_of
from generator.records import Finding, Record


def objectives_of(course: CourseFile, record_id: str, record: Record) -> tuple[str, ...]:
    """The ids of the objectives that a record serves; `serves: []` says that it serves none."""
    if record.serves is not None:
        return tuple(record.serves)
    topic = course.topic_of(record_id)
    return tuple(objective.id for objective in topic.objectives) if topic else ()


def unknown_objectives(course: CourseFile, record: Record) -> Iterator[Finding]:
    """Objectives that the record names and no topic has."""
    known = [objective.id for topic in course.topics for objective in topic.objectives]
    for index, name in enumerate(record.serves or ()):
        if name not in known:
            mend = did_you_mean(name, known, few_of(name, known, "objectives"))
            yield Finding(path=("serves", index), expected="an objective of course.yaml", found=f'"{name}"', mend=mend)


def repeated_objectives(course: CourseFile) -> Iterator[Finding]:
    """Objectives of two topics under one id, so that a record could not say which it serves."""
    first: dict[str, str] = {}
    for t, topic in enumerate(course.topics):
        for o, objective in enumerate(topic.objectives):
            if first.setdefault(objective.id, topic.id) != topic.id:
                yield Finding(
                    path=("topics", t, "objectives", o, "id"), expected="each objective under an id of its own",
                    found=f'"{objective.id}" again', mend=f"rename one; it stands in {first[objective.id]} already",
                )  # fmt: skip
