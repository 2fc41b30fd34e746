"""Parts of records of several kinds: explanations, adaptations, people's actions, pictures, accepted warnings."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from generator.records.fields import Id, Many, Some, SourceKey, StatedAmount, Text, UnitLabel, different, one_of, spelled


SORTS: Mapping[str, str] = {
    "claim": "the answer itself, as a statement that could be wrong",
    "data": "a value or an observation, quoted",
    "comparison": "both things, on the same feature",
    "mechanism": "by which step one thing brings about the next",
    "result": "what follows in the end",
    "action": "what is to be done",
    "drawback": "what it costs, or whom it harms",
    "variable": "what is changed, measured or kept the same",
    "control": "what shows how things go without the thing that is tested",
    "repeats": "how often it is done, so that chance is told apart",
    "caution": "what to mind, so that nobody is harmed",
    "limit": "how far the data reach",
    "judgement": "which side counts for more, by a stated measure",
}
"""Which sorts of idea an answer is made of, and what an idea of each sort says. Claim, data and mechanism are the parts of a scientific
explanation (claim, evidence, reasoning: McNeill, Lizotte, Krajcik and Marx 2006); the others are what judgements and plans need."""


class Part(BaseModel):
    """A group of fields in a file: types are taken strictly, unknown fields are refused, nothing changes afterwards."""

    model_config = ConfigDict(strict=True, frozen=True, extra="forbid")


class Idea(Part):
    """One creditable statement of an explanation."""

    id: Id
    says: Text
    """May hold facts, `{harrow_plain.annual_precip}`."""
    holds_if: Text | None = None
    """A comparison over facts; where it is false, the statement is."""
    accept: Many[Text] = ()
    """Other wordings that earn the credit."""
    not_enough: Many[Text] = ()
    """Answers that do not."""
    gives: one_of(*SORTS) | None = None
    """Which of the `SORTS` it is; where it is left out, that is told from its words as far as they tell it."""


class FalseStep(Part):
    """What stands in place of a step, for students to find."""

    step: Annotated[int, Field(ge=1)]
    """Which step it takes the place of, counted from 1."""
    says: Text
    """What students wrongly believe to happen there, about as long as the step."""
    because: Text
    """Why that is wrong."""
    others: Many[Text] = ()
    """Why each of the other steps holds, in their order."""


class Retold(Part):
    """The causes of an explanation at work in another case, step by step."""

    asks: Text
    """As it goes on after "explains"."""
    steps: Annotated[Some[Text], different()]
    """Each can only happen after the one before. With a `false_step` students look for that, else they put the steps in order."""
    false_step: FalseStep | None = None
    """A step that is wrong, for students to find."""


class Explanation(Part):
    """A chain of ideas, in causal order unless the record says that they work together."""

    id: Id
    asks: Text
    """The question that it answers, as it goes on after "explain": `why few trees grow on Harrow Plain`."""
    joined: Literal["in_order", "together"] = "in_order"
    """Whether each idea leads to the next, or the ideas are reasons that work together, in any order."""
    chain: Annotated[Some[Idea], different()]
    retold: Retold | None = None
    """For a question: the chain itself stands on the page, so its order could be copied."""


class Adaptation(Part):
    """A feature of an organism, how it works and what it is good for."""

    who: Text
    feature: Text
    works_by: Text
    benefit: Text
    without: Text | None = None
    """What would go wrong for it without the feature, in none of the words above: said where students match the two, and nowhere else."""


class Action(Part):
    """What can be done about a problem; nothing is free."""

    do: Text
    works_by: Text
    drawback: Text
    shown_by: Text | None = None
    """What one would measure to see whether it works, in other words than above: said where students match the two, and nowhere else."""


class HumanImpact(Part):
    """A problem that people make or have, and what can be done."""

    problem: Text
    cause: Text
    effect: Text
    actions: Some[Action]


class Picture(Part):
    """A picture, what it shows to those who do not see it, whose it is, and why it is there."""

    file: spelled(
        r"[A-Za-z0-9_-]+(?:/[A-Za-z0-9_-]+)*\.(?:png|jpg|jpeg|svg|webp)", "a picture's file name", "pictures/steppe.jpg"
    )
    alt: Text
    credit: Text
    purpose: Text


class StatedNumber(Part):
    """A number that a record's sentences need and that nothing computes, with its unit and the work it comes from."""

    id: Id
    name: Text
    value: StatedAmount
    unit: UnitLabel = ""
    source: SourceKey


class AcceptedWarning(Part):
    """A warning that the author has seen and lets stand."""

    warning: Id
    """The name that the warning has in square brackets."""
    reason: Text


Explanations = Annotated[Many[Explanation], different()]
SourceKeys = Annotated[Many[SourceKey], different()]
AcceptedWarnings = Annotated[Many[AcceptedWarning], different("warning")]
