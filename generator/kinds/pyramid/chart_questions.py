"""Questions whose answer is a level, or a step between two, picked by its label on a pyramid."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from generator.diagnostics import listed
from generator.kind import in_sentence
from generator.kinds.pyramid.asking import Asking
from generator.kinds.pyramid.charts import STANDING
from generator.quantities import shown
from generator.questions.making import Draft, Wrong, drawn, reading
from generator.questions.mistake import told_apart
from generator.questions.question import Made, Needs, Rejected

TIMES_APART = 1.05
"""What differs by less is called neither larger nor smaller."""
FEWEST_LABELS = 3


class ChartQuestions(Asking):
    """Each is asked only where the numbers are known, and plainly apart."""

    def readings(self, most: int) -> tuple[Made, ...]:
        """So many of those that come out, drawn so that records differ in what they ask."""
        made = {item.id: item for item in (self.smallest_share(), self.respires_most(), *self.second_widest()) if not isinstance(item, Rejected)}
        return tuple(made[name] for name in drawn(made, self.subject.id, "readings")[:most])

    def smallest_share(self) -> Made:
        """The step at which the smallest part of the production is passed on, which need not be that of the largest loss."""
        levels = self.record.levels
        steps = {f"{below.label} to {in_sentence(level.label)}": (below, level) for below, level in pairwise(levels)}
        shares = {step: self.number(level, "transfer_efficiency") for step, (_, level) in steps.items()}
        known = {step: share for step, share in shares.items() if share}
        rising = sorted(known, key=lambda step: known[step])
        if len(known) < max(FEWEST_LABELS, len(steps)) or known[rising[1]] < TIMES_APART * known[rising[0]]:
            return Rejected("smallest_share", "no step of three or more passes on plainly less than the others")
        least, loses = rising[0], max(steps, key=lambda step: self.sure(steps[step][0], "not_passed_on").number)
        share = self.sure(steps[least][1], "transfer_efficiency")
        draft = Draft(
            id="smallest_share", needs=Needs.DATA,
            prompt="At which step of the energy pyramid is the smallest share of the production below turned into new production?",
            solution=f"The percentage between two bars is that share. The smallest is {share.shown}: {in_sentence(least)}.",
            hints=("The percentages between the bars are shares; the bars themselves are amounts.", "Compare the percentages, from the bottom step to the top step."),
        )  # fmt: skip
        wrong = (
            ([loses], Wrong("", "en.share-for-amount", "Most energy is lost here, but of the largest production.")),
            ([rising[-1]], Wrong("", "en.eff-complement", "Here the largest share is passed on.")),
        )
        return reading(draft, list(steps), [least], wrong, self.catalogue, otherwise="Compare the percentages between the bars.", fact=share)

    def respires_most(self) -> Made:
        """The level that respires the largest share of what it takes up or fixes."""
        taken = {level: self.taken_up(level) for level in self.record.levels}
        left = {level: self.sure(level, "production").number / amount for level, amount in taken.items() if amount and self.number(level, "production") is not None}
        rising = sorted(left, key=lambda level: left[level])
        if len(rising) < max(FEWEST_LABELS, len(taken)) or left[rising[1]] < TIMES_APART * left[rising[0]]:
            return Rejected("respires_most", "no level of three or more respires a plainly larger share than the others")
        right = rising[0]
        shares = listed((f"{in_sentence(level.label)} {shown.number(100 * (1 - left[level]))} %" for level in rising), "and")
        respired = {level: (taken[level] or 0.0) * (1 - left[level]) for level in left}
        most = max(respired, key=lambda level: respired[level])
        draft = Draft(
            id="respires_most", needs=Needs.BOTH,
            prompt="Which level respires the largest share of the energy that it takes up through the gut wall, or fixes by photosynthesis?",
            solution=f"{right.label}. Of what is taken up, this share is respired: {shares}.",
            hints=(
                "Look up what each level takes up (eaten less egested; of producers, gross production) and what it respires.",
                "Divide what is respired by what is taken up, level by level.",
            ),
        )  # fmt: skip
        wrong = (
            ([most.label], Wrong("", "en.share-for-amount", "Most energy is respired here, but of much more that is taken up.")),
            ([rising[-1].label], Wrong("", "en.respired-built", "Here the largest share is built up.")),
        )
        return reading(draft, [level.label for level in taken], [right.label], wrong, self.catalogue, otherwise="Divide what is respired by what is taken up.")

    def second_widest(self) -> Iterator[Made]:
        """Of a pyramid of biomass or of numbers whose widest bar is not the lowest, as its page tells: the bar that comes next, if not the lowest."""
        bottom = self.record.levels[0]
        for field, quantity, sort, _ in STANDING:
            amounts = {level: self.number(level, field) for level in self.record.levels}
            known = {level: amount for level, amount in amounts.items() if amount}
            falling = sorted(known, key=lambda level: -known[level])
            if len(known) < max(FEWEST_LABELS, len(amounts)) or bottom in falling[:2]:
                continue
            if not all(told_apart(known[one], known[other], self.sure(bottom, field).figures) for one, other in pairwise(falling[:3])):
                continue
            widest, right = falling[:2]
            draft = Draft(
                id=f"second_widest_{'numbers' if field != 'biomass' else field}", needs=Needs.DATA,
                prompt=f"Look at the {sort}. Which level has the second widest bar?",
                solution=f"{right.label}: {self.sure(right, field).shown}. Only the bar of {in_sentence(widest.label)} is wider, with {self.sure(widest, field).shown}; that of the producers has {self.sure(bottom, field).shown}.",
                hints=("A pyramid need not stand on a wide base: look at each bar.", f"Compare the numbers beside the bars: {quantity.lower()}, level by level."),
            )  # fmt: skip
            idea = "bio.inverted" if field == "biomass" else "bio.base-widest"
            wrong = (([bottom.label], Wrong("", idea, "This is the widest bar of the energy pyramid, not of this one.")),)
            yield reading(draft, [level.label for level in known], [right.label], wrong, self.catalogue, otherwise="Find the widest bar, leave it out, and look again.", fact=self.sure(right, field))
