"""Questions whose answer is a level, or a step between two, picked by its label on a pyramid."""

from __future__ import annotations

from itertools import pairwise

from generator.diagnostics import listed
from generator.kind import in_sentence
from generator.kinds.pyramid.asking import Asking
from generator.quantities import shown
from generator.quantities.fact import Fact
from generator.questions.fresh import DRAWS, fresh_fact
from generator.questions.making import Draft, Wrong, drawn, reading
from generator.questions.question import Made, Needs, Rejected
from generator.questions.supposed import SAID

TIMES_APART = 1.05
"""What differs by less is called neither larger nor smaller."""
FEWEST_LABELS = 3
SHARES_APART = 1.3
"""Drawn shares differ by so many times at least."""
MOST_PASSED_ON = 30.0
"""The largest share that is drawn [%]."""
TOP_SHARE = "How much an animal respires depends on how warm and how active it is, not on its level. Work out the share for each level."


def _is_not_the_last(found: list[tuple[Fact, float]]) -> bool:
    """Whether the smallest share is not at the top, where the smallest production lies."""
    shares = [share for _, share in found[1:]]
    return shares.index(min(shares)) < len(shares) - 1


class ChartQuestions(Asking):
    """Each is asked only where the numbers are known, and plainly apart."""

    def readings(self, most: int) -> tuple[Made, ...]:
        """So many of those that come out, drawn so that records differ in what they ask."""
        made = {item.id: item for item in (self.smallest_share(), self.respires_most()) if not isinstance(item, Rejected)}
        return tuple(made[name] for name in drawn(made, self.subject.id, "readings")[:most])

    def smallest_share(self) -> Made:
        """The step at which the smallest part of the production is passed on, which is not that of the largest loss; with drawn numbers, for the chart shows the shares."""
        levels = self.record.levels
        made = [self.sure(level, "production") for level in levels]
        if len(levels) <= FEWEST_LABELS or not all(fact.is_number and fact.number for fact in made):
            return Rejected("smallest_share", "fewer than three steps of which the productions are known")
        drawn_ = [one for attempt in range(DRAWS) if (one := self._drawn_shares(made, f"{self.subject.id}/smallest_share/{attempt}"))]
        found = max(drawn_, key=_is_not_the_last, default=None)
        return Rejected("smallest_share", "no draw parts the smallest share from the largest loss") if found is None else self._smallest_of(found)

    def _drawn_shares(self, made: list[Fact], salt: str) -> list[tuple[Fact, float]]:
        """Productions with the share of each in the one below; empty where the smallest share cannot be told, or would be found by another look."""
        fresh = [new for fact in made if (new := fresh_fact(fact, f"{salt}/{fact.id}"))]
        if len(fresh) < len(made) or any(above.number >= below.number for below, above in pairwise(fresh)):
            return []
        shares = [100 * above.number / below.number for below, above in pairwise(fresh)]
        own = [above.number / below.number for below, above in pairwise(made)]
        rising = sorted(range(len(shares)), key=lambda step: shares[step])
        losses = [below.number - above.number for below, above in pairwise(fresh)]
        plain = all(shares[high] > SHARES_APART * shares[low] for low, high in pairwise(rising))
        tricky = rising[0] not in (losses.index(max(losses)), own.index(min(own)))
        return list(zip(fresh, [0.0, *shares], strict=True)) if plain and tricky and shares[rising[-1]] < MOST_PASSED_ON else []

    def _smallest_of(self, found: list[tuple[Fact, float]]) -> Made:
        levels = self.record.levels
        steps = [f"{below.label} to {in_sentence(level.label)}" for below, level in pairwise(levels)]
        shares = dict(zip(steps, [share for _, share in found[1:]], strict=True))
        rising = sorted(steps, key=lambda step: shares[step])
        told = listed((f"{in_sentence(level.label)} {fact.shown_number}" for level, (fact, _) in zip(levels, found, strict=True)), "and")
        unit_ = found[0][0].unit
        draft = Draft(
            id="smallest_share", needs=Needs.DATA, supposed=True,
            prompt=f"{SAID} Production{f' in {unit_.shown}' if unit_ else ''}: {told}. At which step is the smallest share of the production below turned into new production?",
            solution=f"Divide each production by the one below: {'; '.join(f'{in_sentence(step)} {shown.number(shares[step], 2)} %' for step in steps)}.",
            hints=("A share is a part divided by its whole. The whole is the production of the level below.", "Divide the production of each level by that of the level below it, and compare the three results."),
        )  # fmt: skip
        wrong = (
            ([steps[0]], Wrong("", "en.share-for-amount", "Most energy is lost here, but of the largest production.")),
            ([steps[-1]], Wrong("", "en.accumulate", "Least is built up at the end of this step, but the level below has little as well.", "Divide each production by the one below it.")),
            ([rising[-1]], Wrong("", "en.eff-complement", "Here the largest share is passed on.", "Look for the smallest one.")),
        )
        return reading(draft, steps, [rising[0]], wrong, self.catalogue, otherwise="Divide the production of each level by that of the level below it.")

    def respires_most(self) -> Made:
        """The level that respires the largest share of what it takes up or fixes."""
        taken = {level: self.taken_up(level) for level in self.record.levels}
        left = {level: self.sure(level, "production").number / amount for level, amount in taken.items() if amount and self.number(level, "production") is not None}
        rising = sorted(left, key=lambda level: left[level])
        if len(rising) < max(FEWEST_LABELS, len(taken)) or left[rising[1]] < TIMES_APART * left[rising[0]]:
            return Rejected("respires_most", "no level of three or more respires a plainly larger share than the others")
        right = rising[0]
        shares = listed((f"{in_sentence(level.label)} {shown.number(100 * (1 - left[level]), 2)} %" for level in rising), "and")
        respired = {level: (taken[level] or 0.0) * (1 - left[level]) for level in left}
        most = max(respired, key=lambda level: respired[level])
        draft = Draft(
            id="respires_most", needs=Needs.BOTH,
            prompt="Which level respires the largest share of the energy that it takes up through the gut wall, or fixes by photosynthesis?",
            solution=f"Respired, of what is taken up or fixed: {shares}.",
            hints=(
                "Look up what each level takes up (eaten less egested; of producers, gross production) and what it respires.",
                "Divide what is respired by what is taken up, level by level.",
            ),
        )  # fmt: skip
        wrong = (
            ([most.label], Wrong("", "en.share-for-amount", "Most energy is respired here, but of much more that is taken up.")),
            ([rising[-1].label], Wrong("", "en.respired-built", "Here the largest share is built up.", "Look for the level that respires most of what it takes up.")),
            ([self.record.levels[-1].label], Wrong("", "en.accumulate", "The top level need not respire the largest share.", TOP_SHARE)),
        )
        return reading(draft, [level.label for level in taken], [right.label], wrong, self.catalogue, otherwise="This level respires a smaller share than another one. Divide what is respired by what is taken up, level by level.")
