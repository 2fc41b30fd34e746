"""Questions that an author writes into a record: a choice of one or several, a number, an order, pairs, a label of a chart."""

from __future__ import annotations

from typing import Annotated, Literal

from generator.records.fields import ID, Id, Many, MisconceptionId, Number, Text, different, spelled
from generator.records.parts import Part

FactKey = spelled(
    rf"(?:{ID}/{ID}:)?{ID}(?:\.{ID})*", "the id of a fact", "pike.production or pyramid/sill_lake:pike.production",
    lambda text: text.strip("{} "),
)  # fmt: skip
"""A fact of the record itself, or of another one."""


class WrongOption(Part):
    """An option that is wrong for a known reason."""

    text: Text
    misconception: MisconceptionId
    because: Text | None = None
    """What to say first, about this very option; the correction of the misconception follows."""
    instead: Text | None = None
    """What to say in place of that correction, where it would not fit this option: as a sentence or two."""


class AskedNumber(Part):
    """The number that is right: typed with its unit, or a fact."""

    value: Number | None = None
    unit: Text | None = None
    """Of a typed value; left out for a bare number."""
    fact: FactKey | None = None


class WrongNumber(Part):
    """A number that a known mistake gives, in the unit of the right one: typed, or a fact."""

    value: Number | None = None
    fact: FactKey | None = None
    misconception: MisconceptionId
    how: Text
    """What was done, as it goes on after "You get this number by": `dividing the flow by the stock`."""
    instead: Text | None = None
    """What to say in place of the correction of the misconception, where it would not fit this number."""


class RightOption(Part):
    """One of several options that are right."""

    text: Text
    because: Text | None = None
    """Why; by default what the question's own `because` says."""


class AskedPair(Part):
    """Two things that belong together."""

    text: Text
    partner: Text
    because: Text


class AskedQuestion(Part):
    """One question, in the form that one of `answer`, `answers`, `number`, `steps` and `pairs` gives it."""

    id: Id
    """Different from those of all questions on the page; saved answers hang on it."""
    ask: Text
    needs: Literal["data", "knowledge", "both", "question"]
    """What the answer rests on: data on the page, what was learned, both, or data that stand in the question alone."""
    answer: Text | None = None
    """The one right option; the `wrong` ones stand beside it."""
    answers: Many[RightOption] = ()
    """All right options, where there are several."""
    wrong: Many[WrongOption] = ()
    labels: Many[Text] = ()
    """What can be picked on a chart, in its order; `answer` is one of them, `answers` are tied ones, and `wrong` are slips of reading."""
    number: AskedNumber | None = None
    mistakes: Many[WrongNumber] = ()
    steps: Many[Text] = ()
    """In the only order in which they can happen."""
    pairs: Many[AskedPair] = ()
    others: Many[Text] = ()
    """Partners that fit nothing, so that the last pair is no gift."""
    hint: Text | None = None
    """What to say to a wrong number or label that no known mistake explains."""
    hints: Many[Text] = ()
    """From a nudge to nearly all of the way; each is opened by the reader."""
    because: Text
    """Why the answer is what it is."""
    holds_if: Text | None = None
    """A condition on facts without which the answer would be another; the build stops when it no longer holds."""


AskedQuestions = Annotated[Many[AskedQuestion], different()]
