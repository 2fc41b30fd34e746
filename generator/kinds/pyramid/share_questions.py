"""Questions on what is left of energy on its way: the order of its stages, the shares of one level, base and top."""

from __future__ import annotations

from itertools import combinations

from generator.kind import in_sentence
from generator.kinds.pyramid.asking import Asking
from generator.kinds.pyramid.record import Level
from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.units import unit
from generator.quantities.working import Substitution
from generator.questions.fresh import DRAWS, followed, fresh_fact, near, same_order
from generator.questions.making import DOES_NOT_COME_OUT, Draft, drawn, matching, number_entry
from generator.questions.mistake import Mistake, done_over, told_apart
from generator.questions.question import Made, Needs, Pair, Rejected
from generator.questions.supposed import SAID

SHARES = (
    ("consumption_efficiency", "Eaten, of what the level below builds up"), ("assimilation_efficiency", "Taken up, of what is eaten"),
    ("production_efficiency", "Built up, of what is taken up"), ("transfer_efficiency", "Built up, of what the level below builds up"),
)  # fmt: skip

EGESTED = "Egested, of what is eaten"
CHANGES = {
    "consumption_efficiency": (
        ("A disease kills much of their food before they find it", "What dies first feeds decomposers, so a smaller part of what the level below builds up is eaten."),
        ("Much of their food is now out of their reach", "What they cannot reach dies uneaten, so a smaller part of what the level below builds up is eaten."),
    ),
    "assimilation_efficiency": (
        ("Their food holds more tough parts that no enzyme of theirs breaks down", "What is not digested cannot pass the gut wall. It leaves as faeces, so a smaller part of the food is taken up."),
        ("Food passes through their gut so fast that much stays undigested", "What is not digested cannot pass the gut wall. It leaves as faeces, so a smaller part of the food is taken up."),
    ),
    "production_efficiency": (
        ("They have to move farther to find a mate, and eat as much as before", "Muscles respire more, and that energy leaves as heat, so a smaller part of what was taken up is left for growth."),
        ("They have to flee more often, and eat as much as before", "Muscles respire more, and that energy leaves as heat, so a smaller part of what was taken up is left for growth."),
    ),
}
"""Changes that act on one share alone, with why, by the share that each lowers."""
CHECKED = 4
"""Figures in which the printed productions must give the key, one more than it is shown with."""


class ShareQuestions(Asking):
    """Asked of levels that state enough."""

    def lowered_share(self) -> Made:
        """Which share a change lowers: before the mouth, at the gut wall, or behind it; what is egested fits none."""
        place = drawn(range(1, len(self.record.levels)), self.subject.id, "lowered_share")[0]
        below, level = (in_sentence(one.label) for one in self.record.levels[place - 1 : place + 1])
        titles = dict(SHARES)
        picked = {name: drawn(ways, self.subject.id, name)[0] for name, ways in CHANGES.items()}
        pairs = [Pair(change, titles[name], why) for name, (change, why) in picked.items()]
        draft = Draft(
            id="lowered_share", needs=Needs.KNOWLEDGE,
            prompt=f"Think of {level}, which live on {below}. Match each change with the share that it lowers first.",
            solution="One of the answers fits none of the lines. The pairs stand below, each with its reason.",
            hints=("Follow the energy: before the mouth, through the gut wall, and in the body. Where does each change act?",),
        )  # fmt: skip
        return matching(draft, pairs, [EGESTED], salt=self.subject.id)

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
        other = computed("", EGESTED, Expression("egested / eaten"), {"egested": egested, "eaten": eaten}, unit("percent"), figures=shares[0].figures)
        found = [new for share in shares if (new := followed(share, fresh)) and near(share, new)]
        if len(found) < len(shares) or not all(told_apart(a.number, b.number, a.figures) for a, b in combinations([*found, other], 2)):
            return None
        return self._shares_of(level, list(fresh.values()), [(title, share) for (_, title), share in zip(SHARES, found, strict=True)], other)

    def _shares_of(self, level: Level, flows: list[Fact], known: list[tuple[str, Fact]], other: Fact) -> Made:
        below, eaten, egested, built = (flow.shown_exactly for flow in flows)
        pairs = [Pair(title, fact.shown, f"Say first what the whole is, then divide the part by it. {_formula(fact)}") for title, fact in known]
        draft = Draft(
            id="shares_match", needs=Needs.BOTH, supposed=True,
            prompt=f"{SAID} {level.label}: the level below builds up {below}. Of it {eaten} is eaten, {egested} egested and {built} built up. Match each share with its value.",
            solution=f"{other.shown} fits none of the lines: it is what is egested, of what is eaten. {' '.join(f'{title}: {fact.shown}.' for title, fact in known)}",
            hints=("What stands behind “of” is the whole: divide by it.", "What is taken up is what is eaten less what is egested."),
        )  # fmt: skip
        return matching(draft, pairs, [other.shown], salt=self.subject.id)

    def times_the_top(self) -> Made:
        """How many times the production of the top the producers build up."""
        bottom, top = self.record.levels[0], self.record.levels[-1]
        given = {"base": self.sure(bottom, "production"), "below": self.sure(self.record.levels[-2], "production"), "top": self.sure(top, "production")}
        right = computed("times_the_top", "Net production, times that of the top", Expression("base / top"), given, unit(""), figures=self.facts["overall_efficiency"].figures)
        again = done_over(right)
        if again is None or shown.number(again.number, CHECKED) != shown.number(right.number, CHECKED):
            return Rejected("times_the_top", DOES_NOT_COME_OUT)
        gross = self.fact(bottom, "gross_production")
        as_gross = (Mistake("bio.gross-net", "gross / top", "dividing gross production by the top", "Part of gross production is respired by the producers. Take what is left, which the energy pyramid shows."),)
        draft = Draft(
            id="times_the_top", needs=Needs.DATA,
            prompt=(
                f"Take the numbers from this page. The net production of {in_sentence(bottom.label)} is how many times "
                f"the production of {in_sentence(top.label)}?"
            ),
            solution=f"{given['base'].shown_exactly} ÷ {given['top'].shown_exactly} = {right.shown}.",
            hints=(
                "The energy pyramid shows net production, what is left after the producers' own respiration.",
                "The level that comes first in the question stands above the line, so the answer is far more than 1.",
            ),
        )  # fmt: skip
        return number_entry(
            draft, right, given | ({"gross": gross} if gross is not None and gross.is_number else {}),
            (
                *(as_gross if gross is not None and gross.is_number else ()),
                Mistake("en.times-inverse", "top / base", "dividing the top by the base"),
                Mistake("en.next-is-base", "below / top", "going down a single step"),
                Mistake("en.always-ten", f"10 ** {len(self.record.levels) - 1}", "taking a tenth for each step"),
            ),
            self.catalogue, otherwise="Net production is what is left after the producers' own respiration. Which two bars of the energy pyramid do you need?",
        )  # fmt: skip


def _formula(fact: Fact) -> str:
    working = fact.working
    return f"Here: {working.formula}." if isinstance(working, Substitution) else ""
