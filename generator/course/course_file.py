"""course.yaml: taught order, what each topic is for, what the next test covers, and the school's own rules."""

from __future__ import annotations

from typing import Annotated

from pydantic import AfterValidator

from generator.records.fields import Bounds, Day, Id, Many, Number, RecordId, Some, Text, different
from generator.records.parts import Part


class MarkingRules(Part):
    """How this school marks; settings, not facts of nature."""

    minutes_per_mark: Annotated[Number, AfterValidator(Bounds(0.5, 10, "minutes"))] = 2.0
    unit_missing_loses_answer_mark: bool = True
    follow_through: bool = True


class Objective(Part):
    """What a student can do after a topic."""

    id: Id
    says: Text


class Topic(Part):
    """A part of the course."""

    id: Id
    title: Text
    objectives: Annotated[Many[Objective], different()] = ()
    records: Annotated[Many[RecordId], different()] = ()
    show: bool = True
    """False leaves the topic out of the students' site until it is taught."""


class Test(Part):
    """A class test and the topics that it covers."""

    id: Id
    title: Text
    covers: Annotated[Some[Id], different()]
    on: Day | None = None
    """When it is set; practice is planned towards it."""


class CourseFile(Part):
    """The whole course."""

    title: Text
    scenario: Text | None = None
    reading_grade: Annotated[Number, AfterValidator(Bounds(1, 20, "school years"))] = 9.0
    marks_word: Text = "marks"
    """What the school calls them."""
    marking_rules: MarkingRules = MarkingRules()
    topics: Annotated[Some[Topic], different()]
    tests: Annotated[Many[Test], different()] = ()

    def topic_of(self, record: str) -> Topic | None:
        """The first topic that lists the record."""
        return next((topic for topic in self.topics if record in topic.records), None)
