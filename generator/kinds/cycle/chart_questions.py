"""Questions whose answer is picked by its label on the diagram of a cycle, or on the chart of a scenario."""

from __future__ import annotations

from collections.abc import Sequence

from generator.kind import in_sentence
from generator.kinds.cycle.asking import Asking, ends, named, plainly_less, told
from generator.kinds.cycle.model import followed, stocks_at
from generator.kinds.cycle.process_questions import ProcessQuestions
from generator.kinds.cycle.record import Flux, Reservoir, Scenario
from generator.kinds.cycle.scenario_charts import STILL
from generator.quantities.text import sentence
from generator.questions.making import Draft, Wrong, drawn, first_made, reading
from generator.questions.question import Made, Needs, Rejected

TIMES_APART = 1.3
"""A difference must be so many times the next one to be called the largest by eye."""
CAUSES_APART = "Pick out the arrows by their cause first: broken ones are driven by people."
CAUSES = f"{CAUSES_APART.removesuffix('.')}, alone or together with nature."


class ChartQuestions(Asking):
    """Each is asked only where the data leave one answer."""

    def readings(self, most: int) -> tuple[Made, ...]:
        """So many of those that come out, drawn so that records differ in what they ask."""
        sorts = (self.largest_by_people(), self.natural_input(), self.largest_outflow(), first_made(self.scenario_gain(), self.scenario_most()))
        made = {item.id: item for item in sorts if not isinstance(item, Rejected)}
        return tuple(made[name] for name in drawn(made, self.subject.id, "readings")[:most])

    def largest_by_people(self) -> Made:
        people = [flux for flux in self.record.fluxes if flux.cause == "people"]
        if len(people) < 2 or (right := largest_of(people)) is None:
            return Rejected("largest_by_people", "there is no one flux that is the largest of several caused by people")
        if not isinstance(ProcessQuestions(self.subject, self.catalogue).brought_in(), Rejected):
            return Rejected("largest_by_people", "what people bring in is added up in another question, which tells its parts")
        alone = " alone" if any(flux.cause == "both" for flux in self.record.fluxes) else ""
        apart = "The table says where nature takes part: leave those fluxes out, and compare the numbers of the rest." if alone else "Compare the numbers at these arrows, and leave the others out."
        draft = Draft(
            id="largest_by_people", needs=Needs.DATA,
            prompt=f"Which is the largest flux caused by people{alone}?",
            solution=f"Of the fluxes caused by people{alone}, {in_sentence(right.label)} is the largest: {self.fact(right.id, 'rate').shown}.",
            hints=(CAUSES if alone else CAUSES_APART, apart),
        )  # fmt: skip
        larger = [flux for flux in self.record.fluxes if ends(flux.rate)[1] > ends(right.rate)[0] and flux.cause != "people"]
        wrong = (
            ([flux.label for flux in larger if flux.cause == "both"], Wrong("", "cyc.cause-overlooked", "This flux is driven by nature and people together.", "A broken arrow can mean that too; the table tells which fluxes people cause alone.")),
            ([flux.label for flux in larger if flux.cause == "nature"], Wrong("", "cyc.widest-arrow", "This flux is larger, but nature drives it.")),
            ([flux.label for flux in people if flux is not right], Wrong("", "cyc.first-of-its-sort", f"This flux is caused by people{alone}, but another of theirs is larger.")),
        )
        return self._picked_flux(draft, right, wrong, draft.hints[0])

    def natural_input(self) -> Made:
        """What would still come in from outside without the one flux that people bring in; of several, `brought_in` asks.

        Where people cause nothing else, `inputs` asks for all that comes in.
        """
        outside = set(self.record.outside)
        entering = [flux for flux in self.record.fluxes if flux.start in outside and flux.end not in outside]
        natural = [flux for flux in entering if flux.cause == "nature"]
        people = [flux for flux in entering if flux.cause == "people"]
        others = any(flux.cause == "people" for flux in self.record.fluxes if flux not in people)
        if len(entering) > len(natural) + len(people) or len(people) != 1 or not others or (right := largest_of(natural)) is None:
            return Rejected("natural_input", "people do not bring in one flux from outside, beside what nature brings, and cause another")
        asks = "Which flux would still bring" if len(natural) == 1 else "Which would be the largest flux that still brings"
        draft = Draft(
            id="natural_input", needs=Needs.BOTH,
            prompt=f"Suppose people brought no more {self.matter} in. {asks} some in from outside?",
            solution=f"{right.label} comes from outside and is caused by nature: {self.fact(right.id, 'rate').shown}.",
            hints=("Dashed boxes lie outside: look for arrows that start there.", "Of these arrows leave out the broken ones, which are driven by people."),
        )  # fmt: skip
        wrong = (
            ([flux.label for flux in people], Wrong("", "cyc.cause-overlooked", "People bring this in, so it would stop.")),
            ([flux.label for flux in self.record.fluxes if flux.start not in outside and flux.end not in outside], Wrong("", "cyc.inner-input")),
            ([flux.label for flux in self.record.fluxes if flux.end in outside], Wrong("", "cyc.output-as-input")),
        )
        return self._picked_flux(draft, right, wrong, "Look for an arrow that starts at a dashed box, and at its cause.")

    def _picked_flux(self, draft: Draft, right: Flux, wrong: Sequence[tuple[Sequence[str], Wrong]], otherwise: str) -> Made:
        return reading(draft, [flux.label for flux in self.record.fluxes], [right.label], wrong, self.catalogue, otherwise=otherwise, fact=self.fact(right.id, "rate"))

    def largest_outflow(self) -> Made:
        """Where it is not the largest reservoir that passes most on."""
        rising = sorted(self.record.reservoirs, key=lambda reservoir: self.outflow_ends(reservoir)[1])
        stocked = sorted((one for one in rising if one.stock.value is not None), key=lambda reservoir: ends(reservoir.stock)[1])
        if len(rising) < 3 or not stocked or rising[-1] is stocked[-1] or not all(plainly_less(self.outflow_ends(one), self.outflow_ends(rising[-1])) for one in rising[:-1]):
            return Rejected("largest_outflow", "the reservoir that passes most on cannot be told, or is the largest of all")
        right = rising[-1]
        outflow, largest = self.fact(right.id, "outflow"), self.fact(stocked[-1].id, "outflow")
        next_ = "" if rising[-2] is stocked[-1] else f"{sentence(named(rising[-2].label))} comes next, with {told(self.fact(rising[-2].id, 'outflow'))}. "
        draft = Draft(
            id="largest_outflow", needs=Needs.DATA,
            prompt="Out of which reservoir does most flow in a year, all its arrows together?",
            solution=f"{sentence(named(right.label))} gives off {told(outflow)}. {next_}The largest stock, {named(stocked[-1].label)}, gives off {told(largest)}.",
            hints=("The number in a box is a stock. What flows stands beside the arrows.", "For each box add up the arrows that start at it, and compare the sums."),
        )  # fmt: skip
        widest = largest_of(self.record.fluxes)
        alone = [r.label for r in self.record.reservoirs if widest is not None and r.id == widest.start]
        wrong = (
            ([stocked[-1].label], Wrong("", "cyc.stock-is-flow", "This is the largest stock.")),
            (alone, Wrong("", "cyc.largest-only", "The widest arrow starts here, but the arrows that start at another box carry more together.")),
        )
        labels = [reservoir.label for reservoir in self.record.reservoirs]
        return reading(draft, labels, [right.label], wrong, self.catalogue, otherwise="From this one less flows out. Add up the arrows that start at each box.", fact=outflow)

    def scenario_gain(self) -> Made:
        """Which stock the change leaves farthest above, where it leaves others below; several may be above, one of them plainly most."""
        for scenario in self.record.scenarios:
            shares, without = self._shares(scenario), self._unchanged(scenario)
            rising = sorted(shares, key=lambda reservoir: shares[reservoir] * without[reservoir.id])
            lower = [r.label for r in shares if shares[r] < -STILL]
            if not lower or shares[rising[-1]] <= STILL:
                continue
            most, next_ = (shares[r] * without[r.id] for r in (rising[-1], rising[-2]))
            if most < TIMES_APART * next_:
                continue
            right, most_of = rising[-1].label, "" if next_ <= 0 else "farthest "
            asks = "which stock ends farthest above what" if most_of else "which stock is larger than"
            draft = Draft(
                id="scenario_gain", needs=Needs.DATA,
                prompt=f"Look at the chart “{scenario.name}”. After {scenario.years:.10g} years, {asks} it would be without the change?",
                solution=f"The full line ends {most_of}above the broken one in the panel of “{right}”.{self._why(scenario, rising[-1])}",
                hints=("Find out first which line is with the change: the key says it.", "Look at the right ends of both lines, panel by panel, and read the scale."),
            )  # fmt: skip
            wrong = ((lower, Wrong("", "cyc.other-line", "Here the line with the change ends below the other one.")),)
            counts = "What counts is how far the line with the change ends above the other one, and not how much a stock rises" if most_of else "This stock gains nothing by the change"
            otherwise = f"{counts}. Look for the panel in which the full line ends {most_of}above the broken one."
            return reading(draft, [r.label for r in shares], [right], wrong, self.catalogue, otherwise=otherwise)
        return Rejected("scenario_gain", "no scenario leaves one stock plainly farthest above and others below")

    def _why(self, scenario: Scenario, reservoir: Reservoir) -> str:
        """What a change of its own arrows does to a stock; nothing where the change reaches it by way of others."""
        fluxes = {flux.id: flux for flux in self.record.fluxes}
        less = [change.flux for change in scenario.change if (change.times is not None and change.times < 1) or change.rate == 0]
        more = [change.flux for change in scenario.change if change.times is not None and change.times > 1]
        kept = [fluxes[name].label for name in less if name and fluxes[name].start == reservoir.id]
        brought = [fluxes[name].label for name in more if name and fluxes[name].end == reservoir.id]
        why = [f"“{label}” takes less out of it than before" for label in kept] + [f"“{label}” brings more into it than before" for label in brought]
        return f" {'; '.join(why)}, so more {self.matter} is left there." if why else ""

    def scenario_most(self) -> Made:
        """Which stock the change moves by the largest share, where another one moves by a larger amount."""
        for scenario in self.record.scenarios:
            shares = self._shares(scenario)
            rising = sorted(shares, key=lambda reservoir: abs(shares[reservoir]))
            if len(rising) < 3 or abs(shares[rising[-1]]) < max(STILL, TIMES_APART * abs(shares[rising[-2]])):
                continue
            right, largest = rising[-1], max(shares, key=lambda r: abs(shares[r]) * self._unchanged(scenario)[r.id])
            draft = Draft(
                id="scenario_most", needs=Needs.DATA,
                prompt=f"Look at the chart “{scenario.name}”. Which stock does the change move by the largest share of itself in {scenario.years:.10g} years?",
                solution=f"{right.label}: compared with the line without the change, the distance between the two ends is the largest there.",
                hints=("Read the numbers at the ends of both lines, panel by panel.", "Divide the distance between the two ends by the end of the broken line."),
            )  # fmt: skip
            wrong = (([largest.label], Wrong("", "cyc.absolute-change", "This stock moves by the largest amount.")),)
            otherwise = "Compare the distance between the two ends with the stock without the change, panel by panel."
            return reading(draft, [r.label for r in shares], [right.label], wrong, self.catalogue, otherwise=otherwise)
        return Rejected("scenario_most", "no scenario moves one stock by a much larger share than all others")

    def _shares(self, scenario: Scenario) -> dict[Reservoir, float]:
        """What the change adds to each stock by the end, as a share of what it would be without; empty without a change."""
        if not scenario.change:
            return {}
        changed, unchanged = stocks_at(self.record, scenario, scenario.years), self._unchanged(scenario)
        return {r: changed[r.id] / unchanged[r.id] - 1 for r in followed(self.record) if unchanged[r.id] > 0}

    def _unchanged(self, scenario: Scenario) -> dict[str, float]:
        return stocks_at(self.record, scenario, scenario.years, changed=False)


def largest_of(fluxes: Sequence[Flux]) -> Flux | None:
    """The flux that is the largest wherever in their ranges all of them are; none where that cannot be told."""
    rising = sorted(fluxes, key=lambda flux: ends(flux.rate)[1])
    return rising[-1] if rising and all(plainly_less(ends(flux.rate), ends(rising[-1].rate)) for flux in rising[:-1]) else None
