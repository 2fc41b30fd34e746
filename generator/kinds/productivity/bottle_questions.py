"""Questions on light and dark bottles: net, gross and respiration, a day, carbon, the dark bottle, losses."""

from __future__ import annotations

from collections.abc import Iterator

from generator.diagnostics import listed
from generator.kind import Subject, in_sentence
from generator.kinds.productivity.bottle_facts import COLUMN, DAILY, DAY, MOLAR
from generator.kinds.productivity.record import Bottles, Depth, ProductivityRecord
from generator.kinds.productivity.replicate_questions import ReplicateQuestions, only_made
from generator.kinds.productivity.statement_questions import TIMES_APART, StatementQuestions
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.text import sentence
from generator.questions.making import Draft, Wrong, choice, choice_of_numbers, number_entry, reading
from generator.questions.misconception import Catalogue
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Needs, Rejected
from generator.science.replicates import TIMES_THE_ERROR

HARDLY = 0.3
"""Part of what is made that may be left over where oxygen is said to have hardly changed."""

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
        yield self.lost_start()
        yield self.warm_dark()
        yield self.day()
        yield self.carbon()
        yield self.why_replicates("one bottle of each sort had been hung at each depth", "several bottles of each sort", "the meter")
        light = self.fact(self.richest, "light_error")
        if light.is_number and light.number > 0:
            spread = self.fact(self.richest, "light_spread")
            yield self.standard_error(f"light bottles {self.at(self.richest)}", spread, light, len(self.richest.light))
        yield self.hardly_changed()
        gain = self.gain_by_day()
        if len(self.bottles.depths) > 2 and isinstance(gain, Rejected):
            yield self.best_depth()
        yield from only_made(gain, StatementQuestions(self.subject, self.catalogue).on_bottles(self.bottles))
        error = self.fact(self.richest, "gross_error")
        if error.is_number and error.number > 0:
            yield self.told_apart("gross production per hour at two depths", error)

    def at(self, depth: Depth) -> str:
        """Where, inside a sentence."""
        return in_sentence(depth.label)

    def opening(self, depth: Depth) -> str:
        """Where, at the beginning of a sentence."""
        return sentence(depth.label)

    def given(self, depth: Depth) -> dict[str, Fact]:
        return {sort: self.fact(depth, f"{sort}_oxygen") for sort in ("initial", "light", "dark")} | {"hours": self.hours}

    def told(self, depth: Depth, *sorts: str) -> str:
        """The mean of each sort of bottles, briefly."""
        return listed((f"{self.fact(depth, f'{sort}_oxygen').shown_exactly} in {sort}" for sort in sorts), "and")

    def means(self, depth: Depth, *sorts: str) -> str:
        words = {"initial": "the initial bottles", "light": "the light bottles", "dark": "the dark bottles"}
        said = listed((f"{self.fact(depth, f'{sort}_oxygen').shown_exactly} in {words[sort]}" for sort in sorts), "and")
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
                f"Mean oxygen {self.at(depth)}: {self.told(depth, 'initial')} bottles; after {self.hours.shown_exactly} {self.told(depth, 'light', 'dark')} bottles. "
                "Respiration is taken to be the same in both. What is gross production per hour?"
            ),
            solution=f"All that was made is what is left over in the light and what was used besides, so light less dark: {gross.shown_exactly}.",
            hints=("The two sorts of bottles differ by photosynthesis alone.", "Light less dark, divided by the hours = ?"),
        )
        return choice_of_numbers(
            draft, gross, self.given(depth),
            (
                Mistake("bio.gross-net", "(light - initial) / hours", "giving net production"),
                Mistake("ps.bottles", "(initial - dark) / hours", "taking initial less dark, which is respiration"),
                Mistake("inv.no-time", "light - dark", "leaving out the time"),
                Mistake("ps.sign", "(light - initial) / hours - (initial - dark) / hours", "taking respiration off net production"),
            ),
            self.catalogue, kept=(self.hours.id,),
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

    def lost_start(self) -> Made:
        """Which rate is left where one sort of readings is missing; the page tells which pair gives which rate."""
        draft = Draft(
            id="lost_start",
            prompt=(
                "The readings at the start are lost. Light and dark bottles were read in the evening as planned, and the hours are known. "
                "Which rate can still be worked out?"
            ),
            solution="Light less dark is all that was made, whatever there was at the start. Net production is light less start, and respiration start less dark: both need the readings that are lost.",
            needs=Needs.KNOWLEDGE,
            hints=("Of which two sorts of bottles is each rate the difference?", "Leave out every difference in which the start stands."),
        )
        wrong = (
            Wrong("Net production alone", "ps.bottles", "Net production is light less start, over the hours.", "The start is missing, so look for the rate that needs only light and dark bottles."),
            Wrong("Respiration alone", "ps.bottles", "Respiration is start less dark, over the hours.", "The start is missing, so look for the rate that needs only light and dark bottles."),
            Wrong("Net production and respiration", "ps.bottles", "Both are differences from the start, which is missing.", "Look for the rate that needs only light and dark bottles."),
        )
        return choice(draft, "Gross production alone", wrong, self.catalogue, salt=self.subject.id)

    def warm_dark(self) -> Made:
        """What the dark bottles are for, asked by what goes wrong with the results when they differ by more than light."""
        draft = Draft(
            id="warm_dark",
            prompt=(
                "In the Sun, black foil warms a bottle more than clear glass does. Suppose that the dark bottles had been 5 °C warmer than the light ones. "
                "What would that do to the results?"
            ),
            solution="In warmer water living things respire faster, so more oxygen is lost in the dark bottles. Then start less dark comes out too large, and so does light less dark.",
            needs=Needs.KNOWLEDGE,
            hints=("What does warmth do to the respiration of algae, bacteria and small animals?", "In which two of the three differences do the dark bottles stand?"),
        )
        wrong = (
            Wrong("Respiration would come out too large, and gross production too small", "ps.sign", instead="Gross production is light less dark: the more is lost in the dark bottles, the larger it comes out."),
            Wrong("Net production would come out too small, and the others as they are", "ps.bottles", "In net production the dark bottles have no part.", "Look at the two differences in which they stand: start less dark, and light less dark."),
            Wrong("The results would stay as they are, for it was day and algae respire at night", "ps.night-only", instead="Algae respire at every hour, in the dark bottles all the time, and faster in warmer water."),
        )
        return choice(draft, "Respiration would come out too large, and gross production as well", wrong, self.catalogue, salt=self.subject.id)

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
            self.catalogue, kept=(DAY.id, light.id), otherwise="In how many hours of a day is oxygen made, and in how many is it used?",
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
                f"Gross production is {oxygen.shown_exactly}. How much carbon is that? Molar masses: C {carbon.shown_number} g mol⁻¹, O₂ {gas.shown_number} g mol⁻¹. "
                f"The photosynthetic quotient is {quotient.shown_number}: for each mole of carbon that is fixed, {quotient.shown_number} moles of oxygen are made."
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

    def hardly_changed(self) -> Made:
        """What it says that oxygen stays as it was in the light: asked of the depth where that is so, or else of any."""
        made = [depth for depth in self.bottles.depths if self._plainly_made(depth)]
        nearest = min(made, key=lambda depth: abs(self._left_over(depth)), default=None)
        shown_here = nearest is not None and abs(self._left_over(nearest)) <= HARDLY
        case = "Suppose that at one depth the oxygen in the light bottles had hardly changed from morning to evening."
        told = ""
        if nearest is not None and shown_here:
            case = f"{self.opening(nearest)} the oxygen in the light bottles hardly changed from morning to evening."
            told = f"Light bottles beside dark ones show that {self.fact(nearest, 'gross_production').shown_exactly} was made."
        draft = Draft(
            id="hardly_changed",
            prompt=f"{case} What does that show?",
            solution=f"Net production is close to zero: what was made was used by the living things in the same bottle.{' ' if told else ''}{told}",
            needs=Needs.BOTH if shown_here else Needs.KNOWLEDGE,
            hints=("What else goes on in a light bottle, beside photosynthesis?", "What do the light bottles show beside the dark ones?"),
        )
        wrong = (
            Wrong("Hardly any photosynthesis took place there", "ps.net-is-gross", told),
            Wrong("It was as dim as at night, so algae began to respire", "ps.night-only", instead="Algae respire at every hour, in bright light too. Here about as much was made as was used."),
            Wrong("Nothing respires in clear bottles, so algae hardly worked", "ps.no-respiration"),
        )
        return choice(draft, "Nearly as much was used there as was made", wrong, self.catalogue, salt=self.subject.id)

    def _plainly_made(self, depth: Depth) -> bool:
        gross, error = (self.fact(depth, name) for name in ("gross_production", "gross_error"))
        return gross.is_number and error.is_number and gross.number > TIMES_THE_ERROR * error.number

    def _left_over(self, depth: Depth) -> float:
        """Of what is made, the part that is not used at once."""
        return self.fact(depth, "net_production").number / self.fact(depth, "gross_production").number

    def best_depth(self) -> Made:
        """Read off the profile."""
        labels = {depth.id: self.fact(depth, "depth").shown for depth in self.bottles.depths}

        def largest(name: str) -> list[str]:
            """The depths at which a value as shown is the largest."""
            most = max((self.fact(depth, name) for depth in self.bottles.depths), key=lambda fact: fact.number).shown_exactly
            return [labels[depth.id] for depth in self.bottles.depths if self.fact(depth, name).shown_exactly == most]

        best = largest("daily_net_production")
        lowest = min(self.fact(depth, "daily_net_production").number for depth in self.bottles.depths)
        least = [labels[depth.id] for depth in self.bottles.depths if self.fact(depth, "daily_net_production").number == lowest]
        used = [at for at in largest("daily_respiration") if at not in best] if self._used_apart() else []
        draft = Draft(
            id="best_depth",
            prompt="Look at the chart of production over depth. At which of the measured depths is net production of a day the largest?",
            solution=f"The line of net production lies farthest to the right at {best[0]}.",
            hints=("Find the line that is named net production.", "Look for its point farthest to the right, and read the depth beside it."),
        )
        wrong = (
            (largest("daily_gross_production"), Wrong("", "bio.gross-net", "There gross production is the largest.")),
            (used, Wrong("", "bio.respired-net", "There respiration is the largest.")),
            (least, Wrong("", "clim.wrong-end", "There the line lies farthest to the left.")),
        )
        otherwise = "Find the line that is named net production, and follow it to its point farthest to the right."
        return reading(draft, tuple(labels.values()), best, wrong, self.catalogue, otherwise=otherwise)

    def _used_apart(self) -> bool:
        """Whether the chart shows at a glance where respiration is the largest."""
        rising = sorted(self.fact(depth, "daily_respiration").number for depth in self.bottles.depths)
        return rising[-1] > TIMES_APART * rising[-2]

    def gain_by_day(self) -> Made:
        """Where the light bottles gain oxygen, but the night uses up more than that."""
        labels = {depth.id: self.fact(depth, "depth").shown for depth in self.bottles.depths}
        gains = [depth for depth in self.bottles.depths if self.fact(depth, "light_change").number > 0]
        right = [labels[depth.id] for depth in gains if self.fact(depth, "daily_net_production").number < 0]
        if not right or len(right) == len(gains):
            return Rejected("gain_by_day", "no depth gains by day what a night more than uses up, beside others that keep a gain")
        draft = Draft(
            id="gain_by_day",
            prompt="Going by the means, at which depth do the light bottles gain oxygen, although the water there loses oxygen over a day and a night?",
            solution=f"At {right[0]} the light bottles lie above the line of no change, but net production of the day lies below zero: respiration goes on at night.",
            needs=Needs.BOTH,
            hints=("Use both charts: the change in the bottles, and production of a day over depth.", "First keep the depths at which the light bottles lie above the line of 0."),
        )
        kept = [labels[depth.id] for depth in gains if labels[depth.id] not in right]
        wrong = ((kept, Wrong("", "ps.respire-in-light", "Here a day and a night leave a gain too.")),)
        otherwise = "Here the light bottles lose oxygen too. Look for a gain in the one chart and a loss in the other."
        return reading(draft, tuple(labels.values()), right, wrong, self.catalogue, otherwise=otherwise)
