"""Coverage: which records and questions serve each objective, and what is left open."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.course.course_file import Objective, Topic
from generator.course.library import Library
from generator.course.objectives import objectives_of
from generator.questions.question import Question


@dataclass(frozen=True, kw_only=True)
class Serving:
    """A record with its questions."""

    record: str
    title: str
    questions: tuple[Question, ...]


@dataclass(frozen=True, kw_only=True)
class CoveredObjective:
    """An objective with the records that serve it, in taught order."""

    objective: Objective
    served_by: tuple[Serving, ...]

    @property
    def questions(self) -> int:
        """How many questions serve it."""
        return sum(len(serving.questions) for serving in self.served_by)


@dataclass(frozen=True, kw_only=True)
class CoveredTopic:
    """A topic with the tests that cover it."""

    topic: Topic
    tests: tuple[str, ...]
    """Their titles."""
    objectives: tuple[CoveredObjective, ...]


@dataclass(frozen=True, kw_only=True)
class Coverage:
    """Objectives × records × questions of a whole course."""

    title: str
    topics: tuple[CoveredTopic, ...]
    servings: tuple[Serving, ...]
    """Every record with a page, whether it serves an objective or not, in taught order, those of no topic last."""
    gaps: tuple[str, ...]
    """What is left open, each in a sentence without its full stop."""


def coverage(library: Library) -> Coverage:
    """The coverage of a course; topics that are not shown yet count too."""
    course = library.course
    with_page = [record for record, subject in library.subjects.items() if subject.record.use == "page"]
    in_order = dict.fromkeys([*(record for topic in course.topics for record in topic.records), *with_page])
    servings = {
        record: Serving(record=record, title=library.subjects[record].record.title, questions=library.questions[record])
        for record in in_order
    }
    serves = {record: objectives_of(course, record, library.subjects[record].record) for record in servings}
    topics = tuple(
        CoveredTopic(
            topic=topic, tests=tuple(test.title for test in course.tests if topic.id in test.covers),
            objectives=tuple(
                CoveredObjective(
                    objective=objective,
                    served_by=tuple(serving for serving in servings.values() if objective.id in serves[serving.record]),
                )
                for objective in topic.objectives
            ),
        )
        for topic in course.topics
    )  # fmt: skip
    idle = [record for record in servings if not serves[record]]
    gaps = [*(gap for topic in topics for gap in _gaps(topic)), *(f"{record}: the record serves no objective" for record in idle)]
    return Coverage(title=course.title, topics=topics, servings=tuple(servings.values()), gaps=tuple(gaps))


def _gaps(covered: CoveredTopic) -> Iterator[str]:
    if not covered.objectives:
        yield f"{covered.topic.id}: the topic has no objective"
    for one in covered.objectives:
        if not one.served_by:
            yield f"{covered.topic.id}: no record serves the objective {one.objective.id}"
        elif not one.questions:
            yield f"{covered.topic.id}: no question serves the objective {one.objective.id}"
    if not covered.tests:
        yield f"{covered.topic.id}: no test covers the topic"
