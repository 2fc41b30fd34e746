"""Questions on an investigation of production: by its own method, and on replicates, which both methods need."""

from __future__ import annotations

from collections.abc import Sequence

from generator.kind import Subject
from generator.kinds.productivity.bottle_questions import BottleQuestions
from generator.kinds.productivity.harvest_questions import HarvestQuestions
from generator.kinds.productivity.record import ProductivityRecord
from generator.questions.misconception import Catalogue
from generator.questions.question import Made


def questions(subject: Subject[ProductivityRecord], catalogue: Catalogue) -> Sequence[Made]:
    """Questions on the bottles, or on the harvests."""
    found: list[Made] = []
    if subject.record.bottles:
        found += BottleQuestions(subject, subject.record.bottles, catalogue).questions()
    if subject.record.harvest:
        found += HarvestQuestions(subject, subject.record.harvest, catalogue).questions()
    return tuple(found)
