"""Questions on a pyramid: sums, of which each record has some, statements, readings, the way of energy and its shares."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from generator.kind import Subject, in_sentence
from generator.kinds.pyramid.asking import Asking
from generator.kinds.pyramid.chart_questions import ChartQuestions
from generator.kinds.pyramid.further_questions import further_questions
from generator.kinds.pyramid.record import Level, PyramidRecord
from generator.kinds.pyramid.share_questions import ShareQuestions
from generator.kinds.pyramid.statement_questions import StatementQuestions
from generator.quantities import shown
from generator.quantities.fact import Fact, computed
from generator.questions.making import Draft, Wrong, choice, choice_of_numbers, drawn, number_entry
from generator.questions.misconception import Catalogue
from generator.questions.mistake import Mistake, accepted, tolerance
from generator.questions.question import Interval, Made, Needs, Rejected
from generator.science import energy_flow
from generator.science.method import Method


FEWEST, MOST_SUMS, MOST_READINGS, WANTED = 6, 6, 2, 11
"""What every record should have; how many of some ten sums, which are alike from pyramid to pyramid, each asks, and so of readings;
with fewer than are wanted in all there are more sums."""
ALWAYS = ("kilojoules", "biomass_turnover_time", "primary_production_required", "supporting_area")
"""Sums that few records give rise to."""
LOSSES = "Where does energy go that is eaten, but builds no body?"
OF_ONE_LEVEL = ("assimilation_efficiency", "production_efficiency")
"""Sums that the match of a level's shares takes the place of."""


def questions(subject: Subject[PyramidRecord], catalogue: Catalogue) -> Sequence[Made]:
    """Questions on the levels that state enough; where too few come out, it is told why sums are left out."""
    pyramid, shares = _Pyramid(subject, catalogue), ShareQuestions(subject, catalogue)
    found, match = sums(subject, catalogue), shares.shares_match()
    matched = not isinstance(match, Rejected) and drawn((True, False), subject.id, "match")[0]
    about_energy = (pyramid.where_it_goes(), pyramid.what_returns())
    others = [
        about_energy[drawn((0, 1), subject.id, "energy")[0]], *((match,) if matched else ()), shares.energy_path(),
        StatementQuestions(subject, catalogue).statements(), *ChartQuestions(subject, catalogue).readings(MOST_READINGS),
    ]  # fmt: skip
    others = [item for item in others if not isinstance(item, Rejected)]
    asked = {item.id: item for item in found if not isinstance(item, Rejected) and not (matched and item.id in OF_ONE_LEVEL)}
    first = sorted(drawn(asked, subject.id, "sums"), key=lambda name: name not in ALWAYS)[: max(MOST_SUMS, WANTED - len(others))]
    made = (*(item for name, item in asked.items() if name in first), *others)
    return made if len(made) >= FEWEST else (*made, *(item for item in found if isinstance(item, Rejected)))


def sums(subject: Subject[PyramidRecord], catalogue: Catalogue) -> list[Made]:
    """All sums, with those that did not come out."""
    pyramid = _Pyramid(subject, catalogue)
    return [
        pyramid.net_production(), pyramid.consumer_production(), pyramid.transfer_efficiency(), pyramid.not_passed_on(), pyramid.supporting_area(),
        ShareQuestions(subject, catalogue).times_the_top(), *further_questions(subject, catalogue, pyramid.answers),
    ]  # fmt: skip


class _Pyramid(Asking):
    """The sums, and what becomes of the energy."""

    def told(self, *productions: tuple[Level, Fact]) -> str:
        """The productions that a prompt rests on."""
        (one, made), (other, over) = productions
        return f"The production of {in_sentence(one.label)} is {made.shown_exactly}, that of {in_sentence(other.label)} {over.shown_exactly}. "

    @property
    def answers(self) -> set[str]:
        """The ids of the facts that the first two questions ask for."""
        asked = (self.net_production(), self.consumer_production())
        return {item.fact.id for item in asked if not isinstance(item, Rejected) and item.fact}

    def net_production(self) -> Made:
        producers = self.record.levels[0]
        gross, respired = self.fact(producers, "gross_production"), self.fact(producers, "respiration")
        if gross is None or respired is None:
            return Rejected("net_production", "the producers do not state gross production and respiration")
        given = {"gross_production": gross, "respiration": respired}
        net = self._left(producers, "Net production", energy_flow.NET_PRODUCTION, given)
        draft = Draft(
            id="net_production",
            prompt=(
                f"Of {gross.shown_exactly} fixed in photosynthesis by {in_sentence(producers.label)}, {respired.shown_exactly} is respired. "
                "What is the net production?"
            ),
            solution=f"What is left after the plants' own respiration: {gross.shown_exactly} − {respired.shown_exactly} = {net.shown_exactly}.",
            hints=("Do plants keep all that they fix?", "Fixed less respired = ?"),
        )
        return choice_of_numbers(
            draft, net, given,
            (
                Mistake("bio.gross-net", "gross_production + respiration", "adding respiration to gross production"),
                Mistake("bio.gross-net", "gross_production", "giving gross production"),
                Mistake("bio.respired-net", "respiration", "giving what is respired"),
            ),
            self.catalogue,
        )  # fmt: skip

    def consumer_production(self) -> Made:
        fields = ("eaten", "egested", "respired")
        level = next((x for x in self.record.levels[1:] if all(self.fact(x, f) for f in fields)), None)
        if level is None:
            return Rejected("consumer_production", "no level states what is eaten, egested and respired")
        given = {field: self.sure(level, field) for field in fields}
        made = self._left(level, "Production", energy_flow.CONSUMER_PRODUCTION, given)
        draft = Draft(
            id="consumer_production",
            prompt=(
                f"Of {given['eaten'].shown_exactly} eaten by {in_sentence(level.label)}, {given['egested'].shown_exactly} is egested and "
                f"{given['respired'].shown_exactly} respired. How much is left for growth and offspring?"
            ),
            solution=f"{' − '.join(given[field].shown_exactly for field in fields)} = {made.shown_exactly}.",
            hints=(LOSSES, "Eaten less egested less respired = ?"),
        )
        return number_entry(
            draft, made, given,
            (
                Mistake("bio.consumer", "eaten - egested", "taking off what is egested only"),
                Mistake("bio.consumer", "eaten - respired", "taking off what is respired only"),
                Mistake("bio.consumer-added", "egested + respired", "adding up the two losses"),
            ),
            self.catalogue, otherwise=LOSSES,
        )  # fmt: skip

    def _left(self, level: Level, name: str, method: Method, given: Mapping[str, Fact]) -> Fact:
        """What is left of the flows that the prompt tells; a production that the record states has another working, or none."""
        known = self.sure(level, "production")
        assert known.unit is not None
        return computed(known.id, name, method.expression, given, known.unit, method=method.id, figures=known.figures)

    def transfer_efficiency(self) -> Made:
        index = len(self.record.levels) - 1
        level, below = self.record.levels[index], self.record.levels[index - 1]
        share, made, under = self.sure(level, "transfer_efficiency"), self.sure(level, "production"), self.sure(below, "production")
        draft = Draft(
            id="transfer_efficiency",
            prompt=(
                f"{self.told((below, under), (level, made))}What is the transfer efficiency from {in_sentence(below.label)} to "
                f"{in_sentence(level.label)}, production compared with production, in percent?"
            ),
            solution=f"What arrives divided by what was there: {made.shown_exactly} ÷ {under.shown_exactly} = {share.shown}.",
        )
        given = {"production": made, "production_below": under}
        skipped: tuple[Mistake, ...] = ()
        if index >= 2:
            given["two_below"] = self.sure(self.record.levels[index - 2], "production")
            skipped = (Mistake("en.eff-skip", "production / two_below", "dividing by the production two levels down"),)
        return number_entry(
            draft, share, given,
            (
                Mistake("en.eff-inverse", "production_below / production", "dividing the lower level by the upper one"),
                Mistake("en.eff-complement", "1 - production / production_below", "giving what is not passed on"),
                Mistake("en.eff-fraction", "production / production_below / 100", "leaving out the factor 100"),
                Mistake("en.always-ten", "0.1", "taking a tenth without dividing"),
                *skipped,
            ),
            self.catalogue, otherwise="Which of the two productions is the whole, and which is what has become of it?",
        )  # fmt: skip

    def not_passed_on(self) -> Made:
        bottom, above = self.record.levels[0], self.record.levels[1]
        lost, made, taken = self.sure(bottom, "not_passed_on"), self.sure(bottom, "production"), self.sure(above, "production")
        if accepted(lost.number, lost.figures, tolerance(lost)).meets(Interval(made.number, made.number)):
            return Rejected("not_passed_on", "so little passes on that rounding hides it")
        draft = Draft(
            id="not_passed_on",
            prompt=(
                f"{self.told((bottom, made), (above, taken))}How much of what {in_sentence(bottom.label)} build up is left uneaten, egested or "
                f"respired, all taken together, and does not become production of {in_sentence(above.label)}?"
            ),
            solution=(
                f"{made.shown_exactly} − {taken.shown_exactly} = {lost.shown_exactly}. It dies uneaten, or is eaten and then egested or respired."
            ),
            hints=("What has become of the part that does pass on?", "Production of the lower level less that of the upper one = ?"),
        )
        return number_entry(
            draft, lost, {"production": made, "production_above": taken},
            (
                Mistake("en.passed-for-lost", "production_above", "giving what does pass on"),
                Mistake("en.all-lost", "production", "counting all of it as lost"),
                Mistake("en.lose-ten", "0.1 * production", "taking a tenth as what is lost"),
                Mistake("en.always-ten", "0.9 * production", "taking nine tenths as what is lost"),
            ),
            self.catalogue, otherwise="What has become of the part that does pass on?",
        )  # fmt: skip

    def supporting_area(self) -> Made:
        top = self.record.top_consumer
        area = self.facts.get(f"{top.level}.supporting_area") if top else None
        if top is None or area is None:
            return Rejected("supporting_area", "the record states no need of a top consumer")
        need = self.facts[f"{top.level}.need"]
        flow = self.facts[f"{top.level}.{top.measured_as}"]
        label = next(level.label for level in self.record.levels if level.id == top.level)
        does = "eat" if top.measured_as == "eaten" else "build up"
        per_metre = flow.unit is not None and "m2" in flow.unit.label.split("/")
        hectare = f" 1 ha is 10{shown.THIN}000 m²." if per_metre else ""
        divided = f"{need.shown_exactly} ÷ {flow.shown_exactly}"
        draft = Draft(
            id="supporting_area",
            prompt=(
                f"Each of the {in_sentence(label)} has to {does} {need.shown_exactly}, and all of them together {does} {flow.shown_exactly}. "
                f"How many hectares does one animal need?{hectare}"
            ),
            solution=(
                f"{divided} is an area in square metres; divided by 10{shown.THIN}000 it is {area.shown}."
                if per_metre
                else f"Need divided by flow: {divided} = {area.shown}."
            ),
        )
        slips = (
            Mistake("nit.area", "need / flow * 10000", "leaving the area in square metres"),
            Mistake("nit.area", "need / flow * 100", "dividing by 100 only"),
        )
        unconverted = ", and leaving square metres as they are" if per_metre else ""
        return number_entry(
            draft, area, {"need": need, "flow": flow},
            (*(slips if per_metre else ()), Mistake("en.area-inverse", "flow / need", f"dividing the flow by the need{unconverted}")),
            self.catalogue, otherwise=f"How much does one {'square metre' if per_metre else 'unit of area'} yield in a year? How many of them does one animal need?",
        )  # fmt: skip

    def where_it_goes(self) -> Made:
        level, above = self.record.levels[-2], self.record.levels[-1]
        draft = Draft(
            id="where_it_goes",
            prompt=f"Some {in_sentence(level.label)} die of disease or age before {in_sentence(above.label)} can eat them. What becomes in the end of most of the energy in their bodies?",
            solution="Decomposers live on dead bodies and respire most of what they take up; what they build up is eaten or decays in turn. Step by step it leaves as heat.",
            needs=Needs.KNOWLEDGE,
            hints=("Who lives on dead bodies?", "What do these do with the energy that they take up?"),
        )
        wrong = (
            Wrong("Plants take it up again together with the minerals", "en.recycled"),
            Wrong("It is destroyed bit by bit while the bodies decay", "en.destroyed"),
            Wrong("It stays in the ground, and gathers from year to year", "carb.decay-soil"),
        )
        return choice(draft, "Decomposers respire it, and it leaves as heat", wrong, self.catalogue, salt=self.subject.id)

    def what_returns(self) -> Made:
        plants = in_sentence(self.record.levels[0].label)
        draft = Draft(
            id="what_returns",
            prompt=f"Suppose that no light fell on {plants} any more, while decomposers went on working. Could {plants} live on what decomposers set free?",
            solution="Matter goes round: decomposers set minerals and carbon dioxide free. Energy does not: it leaves as heat of the decomposers, and no plant can make sugar with heat.",
            needs=Needs.KNOWLEDGE,
            hints=("What do green cells need to make sugar?", "Which of these things do decomposers set free, and which comes from elsewhere?"),
        )
        wrong = (
            Wrong("Yes: the minerals would bring them energy as well", "nit.energy-nutrient"),
            Wrong("Yes: the heat of the decomposers would replace the light", "en.recycled"),
            Wrong("No: decomposers use up what they break down", "nit.decomposer-cleaner"),
        )
        return choice(draft, "No: those are minerals and carbon dioxide, without energy", wrong, self.catalogue, salt=self.subject.id)
