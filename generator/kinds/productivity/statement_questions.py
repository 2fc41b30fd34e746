"""Statements on the results of an investigation, to be checked against its numbers; what is not told apart is not spoken of."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from generator.kind import Subject, in_sentence
from generator.kinds.productivity.harvest_facts import GRAZING
from generator.kinds.productivity.record import Bottles, Harvest, ProductivityRecord
from generator.quantities.fact import Fact
from generator.questions.claims import Claim, which_hold
from generator.questions.making import Draft, drawn
from generator.questions.misconception import Catalogue
from generator.questions.question import Made, Needs
from generator.science.replicates import TIMES_THE_ERROR, told_apart

TIMES_APART = 1.2
PROMPT = "Which of these statements do the results bear out? Check each against the charts and the numbers."
REACHES = "A bar reaches two standard errors to both sides: the line of no change is reached where the change is no more than that."
HINTS = (
    "Take one statement at a time, and look up the two numbers that it compares.",
    "A bar reaches two standard errors to both sides of a mean: two bars that share no height are told apart.",
)


class StatementQuestions:
    """The record that is asked about."""

    def __init__(self, subject: Subject[ProductivityRecord], catalogue: Catalogue) -> None:
        self.subject, self.facts, self.catalogue = subject, subject.facts, catalogue

    def _asked(self, sorts: tuple[tuple[Iterator[Claim], int], ...]) -> Made:
        claims = [claim for sort, most in sorts for claim in drawn(sort, self.subject.id, "statements")[:most]]
        draft = Draft(id="statements", needs=Needs.DATA, prompt=PROMPT, solution="", hints=HINTS)
        return which_hold(draft, claims, self.catalogue, salt=self.subject.id)

    def on_bottles(self, bottles: Bottles) -> Made:
        return self._asked(((self._depths(bottles), 1), (self._used(bottles), 1), (self._fading(bottles), 1), (self._reaching(bottles), 2)))

    def _depths(self, bottles: Bottles) -> Iterator[Claim]:
        for upper, lower in pairwise(bottles.depths):
            one, other = (self.facts[f"{depth.id}.daily_gross_production"] for depth in (upper, lower))
            if not (sign := _told_apart(one, other, *(self.facts[f"{depth.id}.daily_gross_error"] for depth in (upper, lower)))):
                continue
            first, second = (in_sentence(depth.label) for depth in ((upper, lower) if sign > 0 else (lower, upper)))
            because = f"Gross production of the day: {one.shown_exactly} {in_sentence(upper.label)}, {other.shown_exactly} {in_sentence(lower.label)}."
            yield Claim(f"More oxygen is made {first} than {second}", f"More oxygen is made {second} than {first}", because, "inv.depth-upwards")

    def _used(self, bottles: Bottles) -> Iterator[Claim]:
        """Whether more was lost in the uppermost dark bottles than in the lowest; how dark it is around them makes no difference."""
        ends = bottles.depths[0], bottles.depths[-1]
        one, other = (self.facts[f"{depth.id}.respiration"] for depth in ends)
        if _told_apart(one, other, *(self.facts[f"{depth.id}.respiration_error"] for depth in ends)) > 0:
            above, below = (in_sentence(depth.label) for depth in ends)
            because = f"Respiration: {one.shown_exactly} {above}, {other.shown_exactly} {below}."
            yield Claim(f"The dark bottles lost more oxygen {above} than {below}", f"The dark bottles lost more oxygen {below} than {above}", because, "ps.night-only", instead="No light reaches any dark bottle, so the dim water around it makes no difference: compare the two rates.")

    def _fading(self, bottles: Bottles) -> Iterator[Claim]:
        """Whether gross production or respiration falls by more from the uppermost depth to the lowest."""
        top, bottom = bottles.depths[0], bottles.depths[-1]
        (made, used), (made_below, used_below) = ([self.facts[f"{depth.id}.{name}"] for name in ("gross_production", "respiration")] for depth in (top, bottom))
        if top is bottom or min(made.number, used.number, made_below.number, used_below.number) <= 0:
            return
        if made.number / made_below.number > TIMES_APART * used.number / used_below.number:
            because = f"Gross production falls from {made.shown_exactly} to {made_below.shown_exactly}, respiration from {used.shown_exactly} to {used_below.shown_exactly}."
            down = f"from {in_sentence(top.label)} to {in_sentence(bottom.label)}".replace("from at ", "from ").replace("to at ", "to ")
            yield Claim(
                f"Going {down}, gross production falls by a larger share than respiration", f"Going {down}, respiration falls by a larger share than gross production",
                because, "ps.respiration-needs-light", instead="Light drives what is made; respiration needs none. Divide each lower value by the upper one.",
            )  # fmt: skip

    def _reaching(self, bottles: Bottles) -> Iterator[Claim]:
        """Of a depth whose light bottles are told apart from no change, and of one where they are not: those that come nearest to the other."""
        times: dict[str, float] = {}
        for depth in bottles.depths:
            change, error = (self.facts[f"{depth.id}.{name}"] for name in ("light_change", "light_change_error"))
            if error.is_number and error.number > 0:
                times[depth.id] = abs(change.number) / error.number
        apart = [depth for depth in bottles.depths if times.get(depth.id, 0.0) > TIMES_THE_ERROR]
        close = [depth for depth in bottles.depths if times.get(depth.id, math.inf) <= TIMES_THE_ERROR]
        picked = (*sorted(apart, key=lambda depth: times[depth.id])[:1], *sorted(close, key=lambda depth: -times[depth.id])[:1])
        for depth in picked:
            at, change, error = in_sentence(depth.label), self.facts[f"{depth.id}.light_change"], self.facts[f"{depth.id}.light_change_error"]
            because = f"The change {at} is {change.shown_exactly}, its standard error {error.shown_exactly}."
            hidden = f"The error bar of the light bottles {at} reaches the line of no change"
            clear = f"The error bar of the light bottles {at} does not reach the line of no change"
            yield Claim(*((clear, hidden) if depth in apart else (hidden, clear)), because, "inv.no-rule", instead=REACHES)

    def on_harvests(self, harvest: Harvest) -> Made:
        return self._asked(((self._growth(harvest), 1), (self._side_by_side(harvest), 2), (self._eaten(harvest), 1), (self._by_chance(), 1), (self._respired(harvest), 1)))

    def _growth(self, harvest: Harvest) -> Iterator[Claim]:
        """Whether more grew per day in the first or in the last time between two harvests."""
        for plot in harvest.plots:
            for (start, middle), (_, end) in pairwise(pairwise(plot.harvests)):
                early, late, *errors = (self.facts[f"{plot.id}.{name}_{cut.id}"] for name in ("growth", "rate_error") for cut in (middle, end))
                if sign := _told_apart(late, early, *errors):
                    because = f"Per day {early.shown_exactly} grew up to {in_sentence(middle.label)}, and {late.shown_exactly} after it."
                    first, second = f"between {in_sentence(start.label)} and {in_sentence(middle.label)}", f"between {in_sentence(middle.label)} and {in_sentence(end.label)}"
                    later, earlier = (f"{plot.label}: more grew per day {a} than {b}" for a, b in ((second, first), (first, second)))
                    yield Claim(*((later, earlier) if sign > 0 else (earlier, later)), because, "clim.height-slope")

    def _side_by_side(self, harvest: Harvest) -> Iterator[Claim]:
        """Two plots on one day: told apart or not."""
        for one, other in pairwise(harvest.plots):
            for cut in one.harvests:
                if (same := next((c for c in other.harvests if c.day == cut.day), None)) is None:
                    continue
                masses = self.facts[f"{one.id}.biomass_{cut.id}"], self.facts[f"{other.id}.biomass_{same.id}"]
                errors = self.facts[f"{one.id}.area_error_{cut.id}"], self.facts[f"{other.id}.area_error_{same.id}"]
                if not all(error.is_number for error in errors):
                    continue
                apart = bool(_told_apart(*masses, *errors))
                bars = abs(masses[0].number - masses[1].number) > TIMES_THE_ERROR * (errors[0].number + errors[1].number)
                if apart != bars:  # what the rule says and what the eye sees differ
                    continue
                bars_of = f"On {in_sentence(cut.label)} the bars of “{one.label}” and “{other.label}”"
                because = f"“{one.label}” {masses[0].shown}, “{other.label}” {masses[1].shown}; a bar reaches twice as far as that error."
                told, hidden = f"{bars_of} share no height", f"{bars_of} overlap"
                yield Claim(*((told, hidden) if apart else (hidden, told)), because, "inv.no-rule", instead="Go twice the error up and down from each mean, and see whether the two bars meet.")

    def _eaten(self, harvest: Harvest) -> Iterator[Claim]:
        share = self.facts.get(f"{GRAZING}.eaten_share")
        if share is not None and share.is_number and (share.number > 50 * TIMES_APART or share.number < 50 / TIMES_APART):
            grazed = next(plot.label for plot in harvest.plots if plot.grazing == "open")
            more, fewer = (f"In the plot “{grazed}” {word} than half of what grew was eaten" for word in ("more", "less"))
            yield Claim(*((more, fewer) if share.number > 50 else (fewer, more)), f"{share.shown_exactly} of it was eaten.", "bio.eaten-is-left", instead="Divide what was eaten by what grew without grazers, and compare with 50 %.")

    def _by_chance(self) -> Iterator[Claim]:
        told = self.facts.get(f"{GRAZING}.eaten_told_apart")
        if told is not None and isinstance(told.value, bool):
            eaten, error = self.facts[f"{GRAZING}.eaten"], self.facts[f"{GRAZING}.eaten_error"]
            because = f"Eaten: {eaten.shown_exactly}, with a standard error of {error.shown_exactly}."
            more, chance = "The amount eaten is more than chance alone would explain", "The amount eaten could be explained by chance alone"
            yield Claim(*((more, chance) if told.value else (chance, more)), because, "inv.no-rule", instead="What is more than twice its standard error is more than chance alone would explain.")

    def _respired(self, harvest: Harvest) -> Iterator[Claim]:
        for plot in harvest.plots:
            respired, net, error = (self.facts[f"{plot.id}.{name}"] for name in ("respiration", "net_production", "net_error"))
            if sign := _told_apart(respired, net, replace(error, value=respired.plus_minus), error):
                because = f"Respired: {respired.shown_exactly}; built up net: {net.shown_exactly}."
                more, fewer = (f"{plot.label}: the plants respired {word} than they kept as net production" for word in ("more", "less"))
                yield Claim(*((more, fewer) if sign > 0 else (fewer, more)), because, "bio.respired-net", instead="Compare the two: together they are gross production.")


def _told_apart(one: Fact, other: Fact, error: Fact, other_error: Fact) -> int:
    """1 where the first is larger by more than twice the standard error of the difference, -1 where it is smaller, 0 where neither can be said."""
    if not all(fact.is_number for fact in (one, other, error, other_error)):
        return 0
    difference = one.number - other.number
    return (difference > 0) - (difference < 0) if told_apart(difference, math.hypot(error.number, other_error.number)) else 0
