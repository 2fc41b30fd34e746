"""Questions on what is left of energy on its way: the order of its stages, the shares of one level, base and top."""

from __future__ import annotations

from itertools import combinations

from generator.kind import in_sentence
from generator.kinds.pyramid.asking import Asking
from generator.kinds.pyramid.record import Level
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.units import unit
from generator.quantities.working import Substitution
from generator.questions.fresh import DRAWS, followed, fresh_fact, near, same_order
from generator.questions.making import Draft, drawn, matching, number_entry, ordering
from generator.questions.mistake import Mistake, told_apart
from generator.questions.question import Made, Needs, Pair, Rejected
from generator.questions.supposed import SAID

SHARES = (
    ("consumption_efficiency", "Eaten, of what the level below builds up"), ("assimilation_efficiency", "Taken up, of what is eaten"),
    ("production_efficiency", "Built up, of what is taken up"), ("transfer_efficiency", "Built up, of what the level below builds up"),
)  # fmt: skip


class ShareQuestions(Asking):
    """Asked of levels that state enough."""

    def energy_path(self) -> Made:
        """The stages between the food of one level and the growth of another, in the order in which energy passes them."""
        levels = self.record.levels
        first = drawn(range(len(levels) - 1), self.subject.id, "energy_path")[0]
        stages = self._stages(first)
        below, above = in_sentence(levels[first].label), in_sentence(levels[first + 1].label)
        draft = Draft(
            id="energy_path", needs=Needs.KNOWLEDGE,
            prompt=f"Energy goes from {'light' if first == 0 else f'the food of {below}'} into the growth of {above}. Put the stages in the order in which the energy goes through them.",
            solution=f"Each stage is what is left of the one before: {' → '.join(in_sentence(stage) for stage, _ in stages)}.",
            hints=("Each stage holds less energy than the one before it.", "An animal eats, takes up part of it through the gut wall, and builds up part of that."),
        )  # fmt: skip
        losses = dict(stages)
        return ordering(
            draft, [stage for stage, _ in stages], starts_with="Look for the stage from which all the energy of the others comes.",
            leads_on=lambda stage: f"{losses[stage]} What is left is the next stage.", salt=self.subject.id,
        )  # fmt: skip

    def _stages(self, first: int) -> list[tuple[str, str]]:
        """Each stage with what is lost after it."""
        below, above = (in_sentence(level.label) for level in self.record.levels[first : first + 2])
        respired, egested, uneaten = "What is respired comes off.", "What is egested comes off.", f"What is not eaten by {above} comes off."

        def eater(name: str, last: str) -> list[tuple[str, str]]:
            return [(f"Eaten by {name}", egested), (f"Taken up through the gut wall of {name}", respired), (f"Built up by {name}", last)]

        if first == 0:
            return [(f"Fixed by {below} in photosynthesis", respired), (f"Built up by {below}", uneaten), *eater(above, "")]
        return [*eater(below, uneaten), *eater(above, "")]

    def shares_match(self) -> Made:
        """The shares of one level with their values; what is egested of the food fits none."""
        for place, level in drawn(enumerate(self.record.levels[1:]), self.subject.id, "shares"):
            flows = [self.fact(self.record.levels[place], "production"), *(self.fact(level, name) for name in ("eaten", "egested", "production"))]
            shares = [self.fact(level, name) for name, _ in SHARES]
            if all(fact is not None and fact.is_number and fact.number for fact in (*flows, *shares)):
                for attempt in range(DRAWS):
                    made = self._drawn_shares(level, [flow for flow in flows if flow], [share for share in shares if share], f"{self.subject.id}/shares/{attempt}")
                    if made is not None:
                        return made
        return Rejected("shares_match", "no level has four shares that are known and apart")

    def _drawn_shares(self, level: Level, flows: list[Fact], shares: list[Fact], salt: str) -> Made | None:
        """Asked with drawn flows, for the page shows the shares of the record's own; None where the draw is not one that nature allows."""
        fresh = {flow.id: drawn_flow for flow in flows if (drawn_flow := fresh_fact(flow, f"{salt}/{flow.id}"))}
        if len(fresh) < len(flows) or not same_order({flow.id: flow for flow in flows}, fresh):
            return None
        _, eaten, egested, _ = fresh.values()
        other = computed("", "Egested, of what is eaten", Expression("egested / eaten"), {"egested": egested, "eaten": eaten}, unit("percent"), figures=shares[0].figures)
        found = [new for share in shares if (new := followed(share, fresh)) and near(share, new)]
        if len(found) < len(shares) or not all(told_apart(a.number, b.number, a.figures) for a, b in combinations([*found, other], 2)):
            return None
        return self._shares_of(level, list(fresh.values()), [(title, share) for (_, title), share in zip(SHARES, found, strict=True)], other)

    def _shares_of(self, level: Level, flows: list[Fact], known: list[tuple[str, Fact]], other: Fact) -> Made:
        below, eaten, egested, built = (flow.shown_exactly for flow in flows)
        pairs = [Pair(title, fact.shown, f"Say first what the whole is, then divide the part by it. {_formula(fact)}") for title, fact in known]
        draft = Draft(
            id="shares_match", needs=Needs.BOTH, supposed=True,
            prompt=f"{SAID} {level.label}: the level below builds up {below}. Of it {eaten} are eaten, {egested} egested and {built} built up. Match each share with its value.",
            solution=f"{other.shown} fits none of the lines: it is what is egested, of what is eaten. {' '.join(f'{title}: {fact.shown}.' for title, fact in known)}",
            hints=("What stands behind “of” is the whole: divide by it.", "What is taken up is what is eaten less what is egested."),
        )  # fmt: skip
        return matching(draft, pairs, [other.shown], salt=self.subject.id)

    def times_the_top(self) -> Made:
        """How many times the production of the top the producers build up."""
        bottom, top = self.record.levels[0], self.record.levels[-1]
        given = {"base": self.sure(bottom, "production"), "below": self.sure(self.record.levels[-2], "production"), "top": self.sure(top, "production")}
        right = computed("times_the_top", "Net production, times that of the top", Expression("base / top"), given, unit(""), figures=self.facts["overall_efficiency"].figures)
        draft = Draft(
            id="times_the_top", needs=Needs.DATA,
            prompt=(
                f"Take both productions from the energy pyramid. How many times as large as the production of {in_sentence(top.label)} is the net production "
                f"of {in_sentence(bottom.label)}?"
            ),
            solution=f"{given['base'].shown_exactly} ÷ {given['top'].shown_exactly} = {right.shown}.",
        )
        return number_entry(
            draft, right, given,
            (
                Mistake("en.times-inverse", "top / base", "dividing the top by the base"),
                Mistake("en.next-is-base", "below / top", "going down a single step"),
                Mistake("en.always-ten", f"10 ** {len(self.record.levels) - 1}", "taking a tenth for each step"),
            ),
            self.catalogue, otherwise="Which of the two productions is larger? So must the answer be more or less than 1?",
        )  # fmt: skip


def _formula(fact: Fact) -> str:
    working = fact.working
    return f"Here: {working.formula}." if isinstance(working, Substitution) else ""
