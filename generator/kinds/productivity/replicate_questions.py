"""Questions on replicates: the standard error, what replicates are for, and what error bars say."""

from __future__ import annotations

from collections.abc import Iterator

from generator.kind import Subject
from generator.kinds.productivity.record import ProductivityRecord
from generator.kinds.productivity.samples import told_apart
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.units import unit
from generator.questions.making import Draft, Wrong, choice, number_entry
from generator.questions.misconception import Catalogue
from generator.questions.mistake import Mistake, as_shown
from generator.questions.question import Made, Needs, Rejected

ROOT = "Does a mean stray more than a single reading, or less? And what does the number of readings do to that?"
FARTHER = ((4, "four", "half"), (9, "nine", "a third"), (16, "sixteen", "a quarter"))
"""How far the mean of so many readings strays, beside a single one."""


def _strays(count: int) -> str:
    """Two other numbers of readings, from which the rule can be seen."""
    (_, one, half), (_, other, third) = [row for row in FARTHER if row[0] != count][:2]
    return f"The mean of {one} readings strays {half} as far as a single one, that of {other} {third} as far. What part is it, then, for {count} readings?"


def only_made(*items: Made) -> Iterator[Made]:
    """Those that came out; why others did not is not told, for many records give no rise to them."""
    return (item for item in items if not isinstance(item, Rejected))


class ReplicateQuestions:
    """The record that is asked about; a method's own questions build on it."""

    def __init__(self, subject: Subject[ProductivityRecord], catalogue: Catalogue) -> None:
        self.subject, self.facts, self.catalogue = subject, subject.facts, catalogue

    def standard_error(self, what: str, spread: Fact, error: Fact, count: int) -> Made:
        """Of one sort of bottle, or one harvest; `what` names the readings as they go on after "the"."""
        replicates = Fact(id="replicates", name="Replicates", value=float(count), unit=unit(""), written=str(count))
        draft = Draft(
            id="standard_error",
            prompt=(
                f"The {count} readings of the {what} have a standard deviation of {spread.shown_exactly}. "
                "What is the standard error of their mean?"
            ),
            solution=f"{spread.shown_exactly} ÷ √{count} = {error.shown}.",
            hints=(ROOT, _strays(count)),
        )
        return number_entry(
            draft, error, {"spread": spread, "replicates": replicates},
            (
                Mistake("inv.error-divide-n", "spread / replicates", "dividing by the number of readings itself"),
                Mistake("inv.error-grows", "spread * sqrt(replicates)", "multiplying by the root"),
                Mistake("inv.spread-is-error", "spread", "giving the standard deviation"),
            ),
            self.catalogue, kept=("replicates",), otherwise="Is your number smaller than the standard deviation, and by how many times? Compare that with how well a mean of so many readings is known.",
        )  # fmt: skip

    def why_replicates(self, only_one: str, several: str, instrument: str) -> Made:
        """What is lost without them; `only_one` tells of a single try of each sort."""
        draft = Draft(
            id="why_replicates",
            prompt=f"Suppose that only {only_one}, and that two readings differ a little. What would {several} have told about the difference?",
            solution=f"Single readings differ by chance. Only {several} show by how much, and so how far their mean can be trusted.",
            needs=Needs.KNOWLEDGE,
            hints=("Two single readings always differ a little. When does that mean something?", f"What do {several} show besides their mean?"),
        )
        wrong = (
            Wrong("Its exact size, for the mean of several has no error", "inv.mean-has-no-error"),
            Wrong("Hardly anything more, for one careful reading is enough", "inv.one-is-enough"),
            Wrong(f"Whether it comes from {instrument}, which reads too high", "inv.replicates-show-bias"),
        )
        return choice(draft, "Whether it is larger than chance alone makes it", wrong, self.catalogue, salt=self.subject.id)

    def told_apart(self, where: str, what: str, difference: Fact, error: Fact, answered: bool = False) -> Made:
        """What a value and its standard error say together; where the value answers another question, it is to be looked up."""
        case = f"{where} {what} is {difference.shown_exactly}, with a standard error of {error.shown_exactly}."
        assert error.unit is not None
        told = told_apart("", "Told apart from zero", difference, error)
        verdict = told.value is True
        twice = computed("", "Twice the standard error", Expression("2 * error"), {"error": as_shown(error)}, error.unit)
        goes_beyond = abs(as_shown(difference).number) > twice.number
        if goes_beyond is not verdict:
            return Rejected("told_apart", "so near to twice its standard error, the rounded numbers tell otherwise")
        sides = f"Twice the standard error is {twice.shown_exactly}, and {difference.shown_exactly} is {'more' if verdict else 'less'}{', its minus sign left aside' if difference.number < 0 else ''}."
        draft = Draft(
            id="told_apart",
            prompt=f"{f'Look up {what} and its standard error in the numbers on this page.' if answered else case} By the rule of twice the standard error, can it be told apart from zero?",
            solution=f"{sides} A value is told apart from zero where it is more than twice its standard error.",
            needs=Needs.BOTH,
            hints=("Work out twice the standard error.", f"{'Leave the minus sign aside: is' if difference.number < 0 else 'Is'} the value larger than that, or smaller?"),
        )
        apart = "Yes: chance alone would seldom give as much"
        hidden = "No: chance alone could give as much"
        wrong = [
            Wrong(hidden if verdict else apart, "inv.no-rule", sides),
            Wrong("Yes: it is known exactly, since a mean was taken", "inv.mean-has-no-error"),
            Wrong(f"{'No' if verdict else 'Yes'}: the readings lie within one standard error of the mean", "inv.bars-are-range"),
        ]
        if not verdict:
            wrong[1] = Wrong("No: it is exactly zero", "inv.not-apart-is-nothing")
        return choice(draft, apart if verdict else hidden, wrong, self.catalogue, fact=told, salt=self.subject.id)
