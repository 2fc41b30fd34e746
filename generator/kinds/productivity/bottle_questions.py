"""Questions on light and dark bottles: net, gross and respiration, a day, carbon, the dark bottle, losses."""

from __future__ import annotations

from collections.abc import Iterator

from generator.kind import Subject, in_sentence
from generator.kinds.productivity.bottle_facts import COLUMN, DAILY, DAY, MOLAR
from generator.kinds.productivity.record import Bottles, Depth, ProductivityRecord
from generator.kinds.productivity.replicate_questions import ReplicateQuestions, only_made
from generator.kinds.productivity.statement_questions import StatementQuestions
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.text import sentence
from generator.questions.making import Draft, Wrong, choice, choice_of_numbers, matching, number_entry, reading
from generator.questions.misconception import Catalogue
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Needs, Pair, Rejected


class BottleQuestions(ReplicateQuestions):
    """The bottles that are asked about: those of the richest depth, and those of another one for the day."""

    def __init__(self, subject: Subject[ProductivityRecord], bottles: Bottles, catalogue: Catalogue) -> None:
        super().__init__(subject, catalogue)
        self.bottles = bottles
        self.richest = max(bottles.depths, key=lambda depth: self.fact(depth, "net_production").number)
        others = [depth for depth in bottles.depths if depth is not self.richest]
        self.other = max(others, key=lambda depth: abs(self.fact(depth, "daily_net_production").number), default=self.richest)
        self.hours = self.facts["incubation"]

    def fact(self, depth: Depth, name: str) -> Fact:
        return self.facts[f"{depth.id}.{name}"]

    def questions(self) -> Iterator[Made]:
        yield self.net_production()
        yield self.gross_production()
        yield self.respiration()
        yield self.what_bottles_show()
        yield self.why_dark()
        yield self.day()
        yield self.carbon()
        yield self.why_replicates("a bottle", "several bottles of each sort", "the meter")
        light = self.fact(self.richest, "light_error")
        if light.is_number and light.number > 0:
            spread = self.fact(self.richest, "light_spread")
            yield self.standard_error(f"light bottles {self.at(self.richest)}", spread, light, len(self.richest.light))
        yield self.loss()
        if len(self.bottles.depths) > 2:
            yield self.best_depth()
        yield from only_made(self.gain_by_day(), StatementQuestions(self.subject, self.catalogue).on_bottles(self.bottles))
        yield from self.verdict()

    def verdict(self) -> Iterator[Made]:
        """On the depth whose net production is told apart least, or else on another than the richest."""
        depth = next((depth for depth in self.bottles.depths if self.fact(depth, "net_told_apart").value is False), self.other)
        net, error, verdict = (self.fact(depth, name) for name in ("net_production", "net_error", "net_told_apart"))
        if isinstance(verdict.value, bool) and error.number > 0:
            yield self.told_apart(self.opening(depth), "net production per hour", net, error, verdict.value, answered=depth is self.richest)

    def at(self, depth: Depth) -> str:
        """Where, inside a sentence."""
        return in_sentence(depth.label)

    def opening(self, depth: Depth) -> str:
        """Where, at the beginning of a sentence."""
        return sentence(depth.label)

    def given(self, depth: Depth) -> dict[str, Fact]:
        return {sort: self.fact(depth, f"{sort}_oxygen") for sort in ("initial", "light", "dark")} | {"hours": self.hours}

    def means(self, depth: Depth, *sorts: str) -> str:
        words = {"initial": "the initial bottles", "light": "the light bottles", "dark": "the dark bottles"}
        said = " and ".join(f"{self.fact(depth, f'{sort}_oxygen').shown_exactly} in {words[sort]}" for sort in sorts)
        return f"{said} after {self.hours.shown_exactly}"

    def net_production(self) -> Made:
        depth = self.richest
        net, given = self.fact(depth, "net_production"), self.given(depth)
        draft = Draft(
            id="net_production",
            prompt=f"Mean oxygen {self.at(depth)} was {self.means(depth, 'initial', 'light')}. What is net production per hour?",
            solution=f"Light less initial is what is left over, and the hours make a rate of it: {net.shown_exactly}.",
        )
        return number_entry(
            draft, net, given,
            (
                Mistake("inv.no-time", "light - initial", "leaving out the time"),
                Mistake("inv.start-less-end", "(initial - light) / hours", "taking the start less the end"),
                Mistake("ps.bottles", "(light - dark) / hours", "taking light less dark, which is gross production"),
                Mistake("ps.bottles", "(initial - dark) / hours", "taking initial less dark, which is respiration"),
            ),
            self.catalogue, kept=(self.hours.id,), asks_unit=True,
            otherwise="By how much did the oxygen change in the light, and in how many hours?",
        )  # fmt: skip

    def gross_production(self) -> Made:
        depth = self.richest
        gross = self.fact(depth, "gross_production")
        draft = Draft(
            id="gross_production",
            prompt=(
                f"Mean oxygen {self.at(depth)} was {self.means(depth, 'light', 'dark')}. "
                "Respiration is taken to be the same in light and dark. What is gross production per hour?"
            ),
            solution=f"All that was made is what is left over in the light and what was used besides, so light less dark: {gross.shown_exactly}.",
            hints=("The two sorts of bottles differ by photosynthesis alone.", "Light less dark, divided by the hours = ?"),
        )
        return choice_of_numbers(
            draft, gross, self.given(depth),
            (
                Mistake("bio.gross-net", "(light - initial) / hours", "giving net production"),
                Mistake("bio.respired-net", "(initial - dark) / hours", "giving respiration"),
                Mistake("inv.no-time", "light - dark", "leaving out the time"),
                Mistake("ps.sign", "(light - initial) / hours - (initial - dark) / hours", "taking respiration off net production"),
            ),
            self.catalogue,
        )  # fmt: skip

    def respiration(self) -> Made:
        depth = self.richest
        respired = self.fact(depth, "respiration")
        draft = Draft(
            id="respiration",
            prompt=f"Mean oxygen {self.at(depth)} was {self.means(depth, 'initial', 'dark')}. What is respiration per hour, as a positive number?",
            solution=f"In the dark oxygen is only used, so initial less dark over the hours is respiration: {respired.shown_exactly}.",
        )
        return number_entry(
            draft, respired, self.given(depth),
            (
                Mistake("inv.no-time", "initial - dark", "leaving out the time"),
                Mistake("ps.bottles", "(light - dark) / hours", "taking light less dark, which is gross production"),
                Mistake("ps.bottles", "(light - initial) / hours", "taking light less initial, which is net production"),
                Mistake("ps.loss-is-negative", "(dark - initial) / hours", "giving the loss with its sign"),
            ),
            self.catalogue, kept=(self.hours.id,), otherwise="How much oxygen was used in the dark, and in how many hours?",
        )  # fmt: skip

    def what_bottles_show(self) -> Made:
        pairs = (
            Pair("Oxygen in the light bottles less that at the start", "Net production", "In the light oxygen is made and used: what is left over shows."),
            Pair("Oxygen at the start less that in the dark bottles", "Respiration", "In the dark oxygen is only used: the loss shows how much."),
            Pair("Oxygen in the light bottles less that in the dark ones", "Gross production", "What is left over and what was used besides make up all that was made."),
        )
        draft = Draft(
            id="what_bottles_show",
            prompt="Each of these differences, divided by the hours, is the rate of one process. Match each with its rate.",
            solution="One of the answers fits none of the lines: the bottles are closed, so no oxygen goes to the air or comes from it. The pairs stand below, each with its reason.",
            needs=Needs.KNOWLEDGE,
            hints=("Say of each bottle which processes run in it.", "A difference of two bottles shows the process by which they differ."),
        )
        return matching(draft, pairs, ["Exchange of oxygen with the air"], salt=self.subject.id)

    def why_dark(self) -> Made:
        draft = Draft(
            id="why_dark",
            prompt="What is the dark bottle for?",
            solution="In the dark there is no photosynthesis, so the oxygen that is lost shows respiration alone. It is the control.",
            needs=Needs.KNOWLEDGE,
        )
        wrong = (
            Wrong("It shows photosynthesis without the disturbance of respiration", "ps.no-respiration", "It is the other way round."),
            Wrong("It shows what algae do at night, when they begin to respire", "ps.night-only"),
            Wrong("It is a second try of the light bottle, to take a mean", "inv.control-is-replicate"),
        )
        return choice(draft, "It shows how much oxygen respiration uses", wrong, self.catalogue, salt=self.subject.id)

    def day(self) -> Made:
        depth, light = self.other, self.facts["light_hours"]
        gross, respired = (self.fact(depth, name) for name in ("gross_production", "respiration"))
        given = {"gross": gross, "respired": respired, "light": light, "day": DAY}
        known = self.fact(depth, "daily_net_production")
        net = computed(known.id, known.name, Expression("gross * light - respired * day"), given, DAILY, figures=known.figures)
        taken = (
            "Take gross production and respiration per hour from the numbers on this page."
            if depth is self.richest
            else f"{self.opening(depth)} gross production is {gross.shown_exactly} and respiration {respired.shown_exactly}."
        )
        draft = Draft(
            id="day_and_night",
            prompt=f"{taken} The day has {light.shown_number} hours of light. What is net production in a day and a night?",
            solution=(
                f"Made in the light: {gross.shown_exactly} × {light.shown_exactly}. Used day and night: {respired.shown_exactly} × {DAY.shown_exactly}. "
                f"The difference is {net.shown_exactly}."
            ),
        )
        return number_entry(
            draft, net, given,
            (
                Mistake("ps.hours", "(gross - respired) * day", "letting photosynthesis run all day and night"),
                Mistake("ps.respire-in-light", "(gross - respired) * light", "counting respiration in the hours of light only"),
                Mistake("ps.night-only", "gross * light - respired * (day - light)", "counting respiration at night only"),
                Mistake("bio.gross-net", "gross * light", "giving gross production of the day"),
            ),
            self.catalogue, kept=(DAY.id,), otherwise="In how many hours of a day is oxygen made, and in how many is it used?",
        )  # fmt: skip

    def carbon(self) -> Made:
        part = COLUMN if len(self.bottles.depths) > 1 else self.richest.id
        fixed = self.facts[f"{part}.gross_carbon"]
        oxygen = self.facts[f"{part}.gross_production" if part == COLUMN else f"{part}.daily_gross_production"]
        quotient = self.facts["photosynthetic_quotient"]
        carbon, gas = MOLAR["molar_mass_carbon"], MOLAR["molar_mass_oxygen"]
        draft = Draft(
            id="carbon",
            prompt=(
                f"Gross production is {oxygen.shown_exactly}. How much carbon is that? A mole of carbon has {carbon.shown_number} g, a mole of "
                f"oxygen gas, O₂, {gas.shown_number} g. The photosynthetic quotient is {quotient.shown_number}: so many moles of oxygen are made for each mole of carbon."
            ),
            solution=f"{oxygen.shown_exactly} × {carbon.shown_number} ÷ {gas.shown_number} ÷ {quotient.shown_number} = {fixed.shown_exactly}.",
        )
        return number_entry(
            draft, fixed, {"oxygen": oxygen, "carbon": carbon, "gas": gas, "quotient": quotient},
            (
                Mistake("ps.oxygen-is-carbon", "oxygen", "taking a gram of oxygen for a gram of carbon"),
                Mistake("ps.quotient-left-out", "oxygen * carbon / gas", "leaving out the quotient"),
                Mistake("ps.quotient-times", "oxygen * carbon / gas * quotient", "multiplying by the quotient"),
                Mistake("ps.molar-inverse", "oxygen * gas / carbon / quotient", "turning the molar masses round"),
            ),
            self.catalogue, kept=(carbon.id, gas.id, quotient.id),
            otherwise="Which weighs less: a mole of oxygen gas, or the carbon that is fixed while it is made?",
        )  # fmt: skip

    def loss(self) -> Made:
        deepest = min(self.bottles.depths, key=lambda depth: self.fact(depth, "net_production").number)
        lost = self.fact(deepest, "net_told_apart").value is True and self.fact(deepest, "net_production").number < 0
        case = (
            f"{self.opening(deepest)} the light bottles held less oxygen at the end than at the start."
            if lost
            else "In deep water a light bottle can hold less oxygen at the end than at the start."
        )
        draft = Draft(
            id="loss",
            prompt=f"{case} What does that say?",
            solution="Net production is below zero: living things there use more oxygen than is made in such dim light.",
            needs=Needs.BOTH if lost else Needs.KNOWLEDGE,
            hints=("What else goes on in a light bottle, beside photosynthesis?", "Compare what is made there with what is used."),
        )
        wrong = (
            Wrong("The bottles leaked, for oxygen cannot get less in a light bottle", "inv.negative-is-wrong"),
            Wrong(
                "It shows that no photosynthesis took place there", "ps.net-is-gross",
                "A loss comes whether little oxygen is made or none: light bottles beside dark ones show whether any is.",
            ),
            Wrong("Respiration stopped, as it does in the light", "ps.night-only"),
        )
        return choice(draft, "More oxygen was used there than was made", wrong, self.catalogue, salt=self.subject.id)

    def best_depth(self) -> Made:
        """Read off the profile."""
        labels = {depth.id: self.fact(depth, "depth").shown for depth in self.bottles.depths}

        def largest(name: str) -> list[str]:
            """The depths at which a value as shown is the largest."""
            most = max((self.fact(depth, name) for depth in self.bottles.depths), key=lambda fact: fact.number).shown_exactly
            return [labels[depth.id] for depth in self.bottles.depths if self.fact(depth, name).shown_exactly == most]

        best = largest("daily_net_production")
        draft = Draft(
            id="best_depth",
            prompt="Look at the chart of production over depth. At which of the measured depths is net production of a day the largest?",
            solution=f"The line of net production lies farthest to the right at {best[0]}.",
            hints=("Find the line of net production in the key.", "Look for its point farthest to the right, and read the depth beside it."),
        )
        wrong = (
            (largest("daily_gross_production"), Wrong("", "bio.gross-net", "There gross production is the largest.")),
            (largest("daily_respiration"), Wrong("", "bio.respired-net", "There respiration is the largest.")),
            ([labels[self.bottles.depths[-1].id]], Wrong("", "inv.depth-upwards")),
        )
        otherwise = "Find the line of net production in the key, and follow it to its point farthest to the right."
        return reading(draft, tuple(labels.values()), best, wrong, self.catalogue, otherwise=otherwise)

    def gain_by_day(self) -> Made:
        """Where the light bottles gain oxygen, but the night uses up more than that."""
        labels = {depth.id: self.fact(depth, "depth").shown for depth in self.bottles.depths}
        gains = [depth for depth in self.bottles.depths if self.fact(depth, "light_change").number > 0]
        right = [labels[depth.id] for depth in gains if self.fact(depth, "daily_net_production").number < 0]
        if not right or len(right) == len(gains):
            return Rejected("gain_by_day", "no depth gains by day what a night more than uses up, beside others that keep a gain")
        draft = Draft(
            id="gain_by_day",
            prompt="Go by the means. At which depth do the light bottles gain oxygen, while a day and a night together leave a loss?",
            solution=f"At {right[0]} the light bottles lie above the line of no change, but net production of the day lies below zero: respiration goes on at night.",
            needs=Needs.BOTH,
            hints=("Use both charts: the change in the bottles, and production of a day over depth.", "First keep the depths at which the light bottles lie above the line of 0."),
        )
        kept = [labels[depth.id] for depth in gains if labels[depth.id] not in right]
        wrong = ((kept, Wrong("", "ps.respire-in-light", "Here a day and a night leave a gain too.")),)
        otherwise = "Here the light bottles lose oxygen too. Look for a gain in the one chart and a loss in the other."
        return reading(draft, tuple(labels.values()), right, wrong, self.catalogue, otherwise=otherwise)
