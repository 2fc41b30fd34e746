"""Statements on the levels of a pyramid, to be checked against its numbers."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from generator.kind import in_sentence
from generator.kinds.pyramid.asking import Asking
from generator.quantities import shown
from generator.questions.claims import Claim, which_hold
from generator.questions.making import Draft, drawn
from generator.questions.question import Made, Needs

TIMES_APART = 1.1
"""What differs by less is called neither more nor less."""
FEW_LARGE = "Fewer need not weigh less: read the numbers of both, or their two bars."
OUTWEIGHED = "A level can weigh more than the one that it eats, where that grows and is eaten very fast. Here it does not: compare their two bars."
ALL_OF_A_LEVEL = "Each animal above is larger, but there are far fewer of them. Compare all of a level on the same area."
CHECK = (
    "Take one statement at a time, and find its two numbers among those of the level.",
    "For a share, say first what the whole is; then compare the part with the fraction of it that the statement names.",
)


class StatementQuestions(Asking):
    """Whether a statement holds follows from numbers that are plainly apart."""

    def statements(self) -> Made:
        sorts = (self._fixed(), self._guts(), self._passed(), self._grazed(), self._growth(), self._standing(), self._top())
        claims = [claim for sort in sorts for claim in drawn(sort, self.subject.id, "statements")[:1]]
        draft = Draft(
            id="statements", needs=Needs.DATA, solution="", hints=CHECK,
            prompt="Which of these statements hold? Check each against the numbers of the levels.",
        )  # fmt: skip
        return which_hold(draft, claims, self.catalogue, salt=self.subject.id)

    def _compared(self, one: float | None, other: float | None) -> int:
        """1 where the first is plainly larger, -1 where it is plainly smaller, 0 where neither can be said."""
        if one is None or other is None:
            return 0
        return (one > TIMES_APART * other) - (other > TIMES_APART * one)

    def _fixed(self) -> Iterator[Claim]:
        level = self.record.levels[0]
        respired, built = self.number(level, "respiration"), self.number(level, "production")
        more, fewer = (f"In {in_sentence(level.label)}, {word} energy is respired than built up" for word in ("more", "less"))
        if sign := self._compared(respired, built):
            because = f"Respired: {self.sure(level, 'respiration').shown}; built up: {self.sure(level, 'production').shown}."
            yield Claim(more, fewer, because, "ps.no-respiration") if sign > 0 else Claim(fewer, more, because, "bio.respired-net", instead="Respiration is one part of gross production, and what is built up is the other. Compare the two.")

    def _guts(self) -> Iterator[Claim]:
        for level in self.record.levels[1:]:
            egested, taken = self.number(level, "egested"), self.taken_up(level)
            if sign := self._compared(egested, taken):
                because = f"Of {self.sure(level, 'eaten').shown}, {self.sure(level, 'egested').shown} is egested, and half would be {shown.number(self.number(level, 'eaten') / 2)}."
                more, fewer = (f"In {in_sentence(level.label)}, {word} than half of the food passes through the gut undigested" for word in ("more", "less"))
                yield Claim(*((more, fewer) if sign > 0 else (fewer, more)), because, "en.assimilated-egested", instead="What passes through undigested is egested. Compare it with half of what is eaten.")

    def _passed(self) -> Iterator[Claim]:
        for below, level in pairwise(self.record.levels):
            share = self.number(level, "transfer_efficiency")
            if sign := self._compared(share, 10.0):
                because = f"Of {self.sure(below, 'production').shown}, {self.sure(level, 'production').shown} becomes production of {in_sentence(level.label)}: {self.sure(level, 'transfer_efficiency').shown}."
                more, fewer = (f"{word} than a tenth of the production of {in_sentence(below.label)} becomes production of {in_sentence(level.label)}" for word in ("More", "Less"))
                yield Claim(*((more, fewer) if sign > 0 else (fewer, more)), because, "en.always-ten")

    def _grazed(self) -> Iterator[Claim]:
        for below, level in pairwise(self.record.levels):
            share = self.number(level, "consumption_efficiency")
            if sign := self._compared(share, 50.0):
                because = f"Of {self.sure(below, 'production').shown}, {self.sure(level, 'eaten').shown} is eaten by {in_sentence(level.label)}: {self.sure(level, 'consumption_efficiency').shown}."
                more, fewer = (f"{word} than half of the production of {in_sentence(below.label)} is eaten by {in_sentence(level.label)}" for word in ("More", "Less"))
                yield Claim(more, fewer, because, "en.always-ten", instead="Divide what is eaten by all that the lower level builds up, and compare with 50 %.") if sign > 0 else Claim(fewer, more, because, "en.all-eaten")

    def _growth(self) -> Iterator[Claim]:
        for level in self.record.levels[1:]:
            respired, built = self.number(level, "respired"), self.number(level, "production")
            if sign := self._compared(respired, built):
                because = f"Respired: {self.sure(level, 'respired').shown}; built up: {self.sure(level, 'production').shown}."
                more, fewer = (f"In {in_sentence(level.label)}, {word} energy is respired than built up" for word in ("more", "less"))
                yield Claim(*((more, fewer) if sign > 0 else (fewer, more)), because, "en.respired-built", instead="What is respired leaves as heat, and only the rest of what is taken up is built up. Compare the two.")

    def _standing(self) -> Iterator[Claim]:
        for below, level in pairwise(self.record.levels):
            if sign := self._compared(self.number(below, "biomass"), self.number(level, "biomass")):
                because = f"Biomass of {in_sentence(below.label)}: {self.sure(below, 'biomass').shown}, of {in_sentence(level.label)}: {self.sure(level, 'biomass').shown}."
                lower, upper = (f"On one square metre there is more biomass of {in_sentence(one.label)} than of {in_sentence(other.label)}" for one, other in ((below, level), (level, below)))
                counts = [self.number(one, "individuals_per_m2") for one in (below, level)]
                fewer = None not in counts and (counts[0] or 0.0) < (counts[1] or 0.0)
                idea = "bio.numbers" if fewer else "bio.large-animals"
                yield Claim(lower, upper, because, idea, instead=FEW_LARGE if fewer else OUTWEIGHED if None in counts else ALL_OF_A_LEVEL) if sign > 0 else Claim(upper, lower, because, "bio.inverted")

    def _top(self) -> Iterator[Claim]:
        top = self.record.levels[-1]
        overall = self.facts["overall_efficiency"]
        if overall.is_number and (sign := self._compared(overall.number, 0.1)):
            more, fewer = (f"{word} than a thousandth of the net primary production is left as production of {in_sentence(top.label)}" for word in ("More", "Less"))
            yield Claim(*((more, fewer) if sign > 0 else (fewer, more)), f"The overall efficiency is {overall.shown}, and a thousandth is 0.1 %.", "en.accumulate", instead="Divide the production of the top level by the net production of the producers.")
