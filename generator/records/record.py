"""What a record of any kind says."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import AfterValidator

from generator.records.asked import AskedQuestions
from generator.records.fields import Bounds, Id, Many, MisconceptionId, Text, Use, Whole, different
from generator.records.parts import AcceptedWarnings, Explanations, HumanImpact, Part, Picture, SourceKeys, StatedNumber


class Record(Part):
    """The fields that every kind shares; a kind's own record adds to them.

    References to words, misconceptions and sources are checked where those are known, facts in text where facts are.
    """

    title: Text
    use: Use = "page"
    """Whether it has a page; `practice` only serves written questions, `paper` is kept for class tests."""
    data: Literal["invented", "published", "measured"]
    """Where the numbers come from; the page says so."""
    level: Literal["core", "extension"] = "core"
    summary: Text
    units: dict[Id, Text] = {}
    """Unit by quantity; each kind names its own quantities."""
    figures: Annotated[Whole, AfterValidator(Bounds(1, 6, mend="three is usual"))] | None = None
    """Significant figures of computed values, where they are not the usual three."""
    numbers: Annotated[Many[StatedNumber], different()] = ()
    """Numbers that sentences name as `{numbers.<id>}`."""
    explanations: Explanations = ()
    people: Many[HumanImpact] = ()
    pictures: Many[Picture] = ()
    questions: AskedQuestions = ()
    """Of the author's own; they follow those that the kind makes."""
    vocabulary: Annotated[Many[Id], different()] = ()
    misconceptions: Annotated[Many[MisconceptionId], different()] = ()
    sources: SourceKeys = ()
    serves: Annotated[Many[Id], different()] | None = None
    """Ids of the objectives that it serves, where these are not just all of its topic."""
    accepted_warnings: AcceptedWarnings = ()
