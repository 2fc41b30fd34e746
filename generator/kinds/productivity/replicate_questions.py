"""Questions on replicates: the standard error, what replicates are for, and what error bars say."""

from __future__ import annotations

from collections.abc import Iterator

from generator.kind import Subject
from generator.kinds.productivity.record import ProductivityRecord
from generator.quantities import shown
from generator.quantities.fact import Fact
from generator.quantities.units import unit
from generator.questions.making import Draft, Wrong, choice, number_entry
from generator.questions.misconception import Catalogue
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Needs, Rejected

ROOT = "Does a mean stray more than a single reading, or less? And what does the number of readings do to that?"
APART = ((2.6, 1.0), (5.4, 3.0), (1.2, 0.8))
"""Three differences and their standard errors, in multiples of one error: only the first is more than twice its own."""
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
            prompt=f"Suppose that only {only_one}, and that the two readings differ a little. What would {several} have told about the difference?",
            solution=f"Single readings differ by chance. Only {several} show by how much, and so how far their mean can be trusted.",
            needs=Needs.KNOWLEDGE,
            hints=("Two single readings always differ a little. When does that mean something?", f"What do {several} show besides their mean?"),
        )
        wrong = (
            Wrong("Its exact size, for the mean of several has no error", "inv.mean-has-no-error"),
            Wrong("Hardly anything more, for one careful reading is enough", "inv.one-is-enough"),
            Wrong(f"Whether it comes from {instrument}, which reads too high", "inv.replicates-show-bias"),
        )
        return choice(draft, "Whether it is larger than chance alone explains", wrong, self.catalogue, salt=self.subject.id)

    def told_apart(self, compares: str, error: Fact) -> Made:
        """Which of three differences the rule tells apart from zero: neither the largest one nor that with the smallest error."""
        assert error.unit is not None
        unit_, size = error.unit, float(shown.rounded(error.number, 1))
        told, largest, surest = ((unit_.after(shown.number(size * times, 2)), unit_.after(shown.number(size * errors, 2))) for times, errors in APART)
        draft = Draft(
            id="told_apart", supposed=True, needs=Needs.BOTH,
            prompt=f"Three teams compare {compares}, and find these differences. Which of them can be told apart from zero?",
            solution=f"It has to be more than twice its standard error. {told[0]} is more than two times {told[1]}; {largest[0]} is less than two times {largest[1]}, and {surest[0]} less than two times {surest[1]}.",
            hints=("By which rule is a difference told apart from chance?", "Double each standard error, and compare it with its own difference."),
        )
        wrong = (
            Wrong(_with_error(*largest), "inv.no-rule", "It is the largest difference, but twice its standard error is more than that.", "Compare each difference with its own error."),
            Wrong(_with_error(*surest), "inv.no-rule", "It has the smallest error, but twice that is more than the difference.", "Compare each difference with its own error."),
            Wrong("Each of the three, for each is larger than its standard error", "inv.no-rule", "", "That is not enough: chance alone often gives more than one standard error. The rule asks for more than twice as much."),
        )
        return choice(draft, _with_error(*told), wrong, self.catalogue, salt=self.subject.id)


def _with_error(difference: str, error: str) -> str:
    return f"{difference}, with a standard error of {error}"
