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
        return self._asked(((self._days(bottles), 2), (self._depths(bottles), 1), (self._fading(bottles), 1), (self._reaching(bottles), 1)))

    def _days(self, bottles: Bottles) -> Iterator[Claim]:
        """What a day and a night leave, where it is told apart from zero."""
        for depth in bottles.depths:
            net, error = (self.facts[f"{depth.id}.{name}"] for name in ("daily_net_production", "daily_net_error"))
            if not error.is_number or abs(net.number) <= TIMES_THE_ERROR * error.number:
                continue
            at, because = in_sentence(depth.label), f"Net production of the day is {net.shown_exactly} there."
            gain, loss = (f"A day and a night leave a {word} of oxygen in the water {at}" for word in ("gain", "loss"))
            yield Claim(gain, loss, because, "inv.depth-upwards") if net.number > 0 else Claim(loss, gain, because, "ps.respire-in-light")

    def _depths(self, bottles: Bottles) -> Iterator[Claim]:
        for upper, lower in pairwise(bottles.depths):
            one, other = (self.facts[f"{depth.id}.daily_gross_production"] for depth in (upper, lower))
            if not (sign := _told_apart(one, other, *(self.facts[f"{depth.id}.daily_gross_error"] for depth in (upper, lower)))):
                continue
            first, second = (in_sentence(depth.label) for depth in ((upper, lower) if sign > 0 else (lower, upper)))
            because = f"Gross production of the day: {one.shown_exactly} {in_sentence(upper.label)}, {other.shown_exactly} {in_sentence(lower.label)}."
            yield Claim(f"More oxygen is made {first} than {second}", f"More oxygen is made {second} than {first}", because, "inv.depth-upwards")

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
                because, "ps.respiration-needs-light",
            )  # fmt: skip

    def _reaching(self, bottles: Bottles) -> Iterator[Claim]:
        """Whether the light bottles are told apart from no change."""
        for depth in bottles.depths:
            change, error = (self.facts[f"{depth.id}.{name}"] for name in ("light_change", "light_change_error"))
            if not error.is_number or error.number <= 0:
                continue
            at, because = in_sentence(depth.label), f"The change is {change.shown_exactly}, its standard error {error.shown_exactly}."
            hidden = f"The bar of the light bottles {at} reaches the line of no change"
            clear = f"The bar of the light bottles {at} stays clear of the line of no change"
            yield Claim(*((clear, hidden) if abs(change.number) > TIMES_THE_ERROR * error.number else (hidden, clear)), because, "inv.no-rule")

    def on_harvests(self, harvest: Harvest) -> Made:
        return self._asked(((self._growth(harvest), 1), (self._side_by_side(harvest), 2), (self._eaten(), 1), (self._by_chance(), 1), (self._respired(harvest), 1)))

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
                yield Claim(*((told, hidden) if apart else (hidden, told)), because, "inv.no-rule")

    def _eaten(self) -> Iterator[Claim]:
        share = self.facts.get(f"{GRAZING}.eaten_share")
        if share is not None and share.is_number and (share.number > 50 * TIMES_APART or share.number < 50 / TIMES_APART):
            more, fewer = (f"Grazers ate {word} than half of what grew without them" for word in ("more", "less"))
            yield Claim(*((more, fewer) if share.number > 50 else (fewer, more)), f"They ate {share.shown_exactly} of it.", "bio.eaten-is-left")

    def _by_chance(self) -> Iterator[Claim]:
        told = self.facts.get(f"{GRAZING}.eaten_told_apart")
        if told is not None and isinstance(told.value, bool):
            eaten, error = self.facts[f"{GRAZING}.eaten"], self.facts[f"{GRAZING}.eaten_error"]
            because = f"Eaten: {eaten.shown_exactly}, with a standard error of {error.shown_exactly}."
            more, chance = "What grazers ate is more than chance alone would give", "What grazers ate could be a matter of chance alone"
            yield Claim(*((more, chance) if told.value else (chance, more)), because, "inv.no-rule")

    def _respired(self, harvest: Harvest) -> Iterator[Claim]:
        for plot in harvest.plots:
            respired, net, error = (self.facts[f"{plot.id}.{name}"] for name in ("respiration", "net_production", "net_error"))
            if sign := _told_apart(respired, net, replace(error, value=respired.plus_minus), error):
                because = f"Respired: {respired.shown_exactly}; built up net: {net.shown_exactly}."
                more, fewer = (f"{plot.label}: the plants respired {word} than they kept as net production" for word in ("more", "less"))
                yield Claim(*((more, fewer) if sign > 0 else (fewer, more)), because, "bio.respired-net")


def _told_apart(one: Fact, other: Fact, error: Fact, other_error: Fact) -> int:
    """1 where the first is larger by more than twice the standard error of the difference, -1 where it is smaller, 0 where neither can be said."""
    if not all(fact.is_number for fact in (one, other, error, other_error)):
        return 0
    difference = one.number - other.number
    return (difference > 0) - (difference < 0) if told_apart(difference, math.hypot(error.number, other_error.number)) else 0
