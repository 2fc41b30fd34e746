"""Questions on a pyramid: sums, of which each record has some, statements, readings, the way of energy and its shares."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

from generator.kind import Subject, in_sentence
from generator.kinds.pyramid.asking import Asking, off_a_tenth
from generator.kinds.pyramid.chart_questions import ChartQuestions
from generator.kinds.pyramid.further_questions import further_questions
from generator.kinds.pyramid.record import Level, PyramidRecord
from generator.kinds.pyramid.share_questions import ShareQuestions
from generator.kinds.pyramid.statement_questions import StatementQuestions
from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.units import unit
from generator.questions.making import Draft, Wrong, choice, drawn, number_entry
from generator.questions.misconception import Catalogue
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Needs, Rejected

FEWEST, MOST_SUMS, MOST_READINGS, WANTED = 6, 6, 2, 11
"""What every record should have; how many of some ten sums, which are alike from pyramid to pyramid, each asks, and so of readings;
with fewer than are wanted in all there are more sums."""
ALWAYS = ("mixed_units", "stored_below", "biomass_turnover_time", "primary_production_required", "supporting_area")
"""Sums that few records give rise to."""
FATES = ("eaten", "egested", "respired")
NET_SHARE = Expression("(gross_production - respiration) / gross_production")
GROWTH_SHARE = Expression("(eaten - egested - respired) / eaten")
UNEATEN_SHARE = Expression("(production - eaten) / (production - production_above)")
WHOLE_IS_FIXED = "The whole is all that is fixed: divide net production by that."
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
        about_energy[drawn((0, 1), subject.id, "energy")[0]], *((match,) if matched else ()), shares.lowered_share(),
        StatementQuestions(subject, catalogue).statements(), *ChartQuestions(subject, catalogue).readings(MOST_READINGS),
    ]  # fmt: skip
    others = [item for item in others if not isinstance(item, Rejected)]
    asked = {item.id: item for item in found if not isinstance(item, Rejected) and not (matched and item.id in OF_ONE_LEVEL)}
    if "growth_share" in asked:  # its first step is the other sum
        asked.pop("assimilation_efficiency", None)
    first = sorted(drawn(asked, subject.id, "sums"), key=lambda name: name not in ALWAYS)[: max(MOST_SUMS, WANTED - len(others))]
    made = (*(item for name, item in asked.items() if name in first), *others)
    return made if len(made) >= FEWEST else (*made, *(item for item in found if isinstance(item, Rejected)))


def sums(subject: Subject[PyramidRecord], catalogue: Catalogue) -> list[Made]:
    """All sums, with those that did not come out."""
    pyramid = _Pyramid(subject, catalogue)
    return [
        pyramid.net_share(), pyramid.growth_share(), pyramid.transfer_efficiency(), pyramid.uneaten_share(), pyramid.supporting_area(),
        ShareQuestions(subject, catalogue).times_the_top(), *further_questions(subject, catalogue, pyramid.growers),
    ]  # fmt: skip


class _Pyramid(Asking):
    """The sums, and what becomes of the energy."""

    def told(self, *productions: tuple[Level, Fact]) -> str:
        """The productions that a prompt rests on."""
        (one, made), (other, over) = productions
        return f"The production of {in_sentence(one.label)} is {made.shown_exactly}, that of {in_sentence(other.label)} {over.shown_exactly}. "

    @property
    def growers(self) -> set[str]:
        """The level whose production follows from a prompt, so that no other prompt may tell it."""
        level = self._balanced()
        return set() if level is None else {level.id}

    def _balanced(self) -> Level | None:
        """The lowest consumer of which all flows are known."""
        return next((x for x in self.record.levels[1:] if all(self.number(x, f) is not None for f in FATES)), None)

    def net_share(self) -> Made:
        producers = self.record.levels[0]
        gross, respired = self.fact(producers, "gross_production"), self.fact(producers, "respiration")
        if gross is None or respired is None:
            return Rejected("net_share", "the producers do not state gross production and respiration")
        if not gross.number:
            return Rejected("net_share", "nothing is fixed")
        given = {"gross_production": gross, "respiration": respired}
        right = self._share("net_share", "Net production, of what is fixed", NET_SHARE, given)
        fixed, lost = gross.shown_exactly, respired.shown_exactly
        draft = Draft(
            id="net_share",
            prompt=(
                f"Of {fixed} fixed in photosynthesis by {in_sentence(producers.label)}, {lost} is respired again. "
                "What percentage of the energy fixed is net production?"
            ),
            solution=f"Net production is what is left after the producers' own respiration: ({fixed} − {lost}) ÷ {fixed} = {right.shown}.",
            hints=("Producers respire part of what they fix. What is left is net production.", "(Fixed less respired) ÷ fixed = ?"),
        )
        return number_entry(
            draft, right, given,
            (
                Mistake("bio.respired-net", "respiration / gross_production", "giving the share that is respired", "Net production is the other part, what is left after respiration."),
                Mistake("cyc.share-of-rest", "(gross_production - respiration) / respiration", "dividing net production by respiration", WHOLE_IS_FIXED),
                Mistake("cyc.share-of-rest", "respiration / (gross_production - respiration)", "dividing respiration by net production", "Net production belongs above the line, and all that is fixed below it."),
                Mistake("en.eff-inverse", "gross_production / (gross_production - respiration)", "dividing what is fixed by net production"),
                Mistake("en.eff-fraction", "(gross_production - respiration) / gross_production / 100", "leaving out the factor 100"),
            ),
            self.catalogue, otherwise="What is left of what is fixed? And what is the whole here?",
        )  # fmt: skip

    def growth_share(self) -> Made:
        if (level := self._balanced()) is None:
            return Rejected("growth_share", "no level states what is eaten, egested and respired")
        given = {field: self.sure(level, field) for field in FATES}
        if not given["eaten"].number:
            return Rejected("growth_share", "nothing is eaten")
        right = self._share("growth_share", "Production, of what is eaten", GROWTH_SHARE, given)
        eaten, egested, respired = (fact.shown_exactly for fact in given.values())
        draft = Draft(
            id="growth_share",
            prompt=(
                f"Of {eaten} eaten by {in_sentence(level.label)}, {egested} is egested and {respired} respired. "
                "What percentage of what is eaten becomes growth and offspring?"
            ),
            solution=f"Both losses come off, and the whole is all that is eaten: ({eaten} − {egested} − {respired}) ÷ {eaten} = {right.shown}.",
            hints=(LOSSES, "(Eaten less egested less respired) ÷ eaten = ?"),
        )
        return number_entry(
            draft, right, given,
            (
                Mistake("bio.consumer", "(eaten - egested) / eaten", "taking off what is egested only", "That is the share taken up. Part of it is respired, so take that off as well."),
                Mistake("bio.consumer", "(eaten - respired) / eaten", "taking off what is respired only", "Faeces were eaten too, but never taken up, so take them off as well."),
                Mistake("cyc.wrong-whole", "(eaten - egested - respired) / (eaten - egested)", "dividing by what is taken up", "That is the production efficiency. Here the whole is all that is eaten."),
                Mistake("bio.consumer-added", "(egested + respired) / eaten", "giving the share of both losses"),
                Mistake("en.eff-fraction", "(eaten - egested - respired) / eaten / 100", "leaving out the factor 100"),
            ),
            self.catalogue, otherwise=LOSSES,
        )  # fmt: skip

    def _share(self, fact_id: str, name: str, expression: Expression, given: Mapping[str, Fact]) -> Fact:
        """A share of flows that the prompt tells."""
        return computed(fact_id, name, expression, given, unit("percent"), figures=self.sure(self.record.levels[-1], "transfer_efficiency").figures)

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
            self.catalogue, otherwise="Which of the two productions is the whole, and which is what has become of it?", likely=off_a_tenth(share),
        )  # fmt: skip

    def uneaten_share(self) -> Made:
        """Of what does not become production of the next level, how much is never eaten: what is lost before the mouth, and behind it."""
        for below, above in pairwise(self.record.levels):
            flows = {"production": self.fact(below, "production"), "eaten": self.fact(above, "eaten"), "production_above": self.fact(above, "production")}
            given = {name: fact for name, fact in flows.items() if fact is not None and fact.is_number}
            if len(given) == len(flows) and given["production"].number > given["eaten"].number > given["production_above"].number > 0:
                return self._uneaten_share(below, above, given)
        return Rejected("uneaten_share", "no level states what it eats beside what it and the level below build up")

    def _uneaten_share(self, below: Level, above: Level, given: Mapping[str, Fact]) -> Made:
        right = self._share("uneaten_share", "Never eaten, of what is not passed on", UNEATEN_SHARE, given)
        made, eaten, taken = (fact.shown_exactly for fact in given.values())
        upper = in_sentence(above.label)
        draft = Draft(
            id="uneaten_share",
            prompt=(
                f"Of {made} built up by {in_sentence(below.label)}, {eaten} is eaten by {upper}, and {taken} becomes their production. "
                "What percentage of all that is lost on the way was never eaten?"
            ),
            solution=(
                f"Never eaten: {made} − {eaten}. Not passed on: {made} − {taken}. The one divided by the other is {right.shown}. "
                f"The rest of the loss is eaten, but egested or respired by {upper}."
            ),
            hints=(
                "Energy is lost at two places: part is never eaten, and part is eaten but builds no body.",
                "(Built up below less eaten) ÷ (built up below less built up above) = ?",
            ),
        )
        return number_entry(
            draft, right, given,
            (
                Mistake("cyc.wrong-whole", "(production - eaten) / production", "dividing by all that the lower level builds up", "The whole here is only what is not passed on: take what becomes production of the upper level off."),
                Mistake("nit.complement", "(eaten - production_above) / (production - production_above)", "giving the share that is lost inside the eaters", "That part was eaten, and then egested or respired. Give the other part."),
                Mistake("en.passed-for-lost", "eaten / production", "giving the share that is eaten", "What is eaten is not what is left uneaten. Take it off what the lower level builds up."),
                Mistake("cyc.share-of-rest", "(production - eaten) / (eaten - production_above)", "dividing one loss by the other", "The whole is both losses together."),
                Mistake("en.eff-fraction", "(production - eaten) / (production - production_above) / 100", "leaving out the factor 100"),
            ),
            self.catalogue, otherwise="How much is never eaten? And how much is not passed on in all?",
        )  # fmt: skip

    def supporting_area(self) -> Made:
        top = self.record.top_consumer
        area = self.facts.get(f"{top.level}.supporting_area") if top else None
        if top is None or area is None:
            return Rejected("supporting_area", "the record states no need of a top consumer")
        need = self.facts[f"{top.level}.need"]
        flow = self.facts[f"{top.level}.{top.measured_as}"]
        label = next(level.label for level in self.record.levels if level.id == top.level)
        does, does_it = ("eat", "eats") if top.measured_as == "eaten" else ("build up", "builds up")
        per_metre = flow.unit is not None and "m2" in flow.unit.label.split("/")
        hectare = f" 1 ha is 10{shown.THIN}000 m²." if per_metre else ""
        divided = f"{need.shown_exactly} ÷ {flow.shown_exactly}"
        draft = Draft(
            id="supporting_area",
            prompt=(
                f"One animal of the level “{label}” must {does} {need.shown_exactly}. The whole level {does_it} {flow.shown_exactly}. "
                f"How large an area feeds one animal, in hectares?{hectare}"
            ),
            solution=(
                f"{divided} is an area in square metres; divided by 10{shown.THIN}000 it is {area.shown}."
                if per_metre
                else f"Need divided by flow: {divided} = {area.shown}."
            ),
        )
        slips = (
            Mistake("nit.area", "need / flow * 10000", "leaving the area in square metres", "One hectare holds 10\u202f000 of them: divide by that."),
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
            prompt=f"Some {in_sentence(level.label)} die of disease or age before {in_sentence(above.label)} can eat them. What finally happens to most of the energy in their bodies?",
            solution="Decomposers live on dead bodies. Most of the energy that they take up leaves as heat of their respiration; what they build up is eaten or decays in turn. Step by step all of it leaves as heat.",
            needs=Needs.KNOWLEDGE,
            hints=("Who lives on dead bodies?", "What do these do with the energy that they take up?"),
        )
        wrong = (
            Wrong("Plants take it up again together with the minerals", "en.recycled"),
            Wrong("It is destroyed bit by bit while the bodies decay", "en.destroyed"),
            Wrong(
                "It stays where the bodies lie, and gathers over the years", "carb.decay-soil",
                instead="Decomposers live on the bodies and release most of this energy as heat. Expect only a small part to stay in dead matter.",
            ),
        )
        return choice(draft, "Decomposers release it as heat when they respire", wrong, self.catalogue, salt=self.subject.id)

    def what_returns(self) -> Made:
        plants = in_sentence(self.record.levels[0].label)
        draft = Draft(
            id="what_returns",
            prompt=f"Suppose that no light fell on {plants} any more, while decomposers went on working. Could {plants} live on what decomposers set free?",
            solution="Matter goes round: decomposers set minerals and carbon dioxide free, but these hold no energy that plants could use. The energy leaves as heat of the decomposers, and no plant can make sugar with heat.",
            needs=Needs.KNOWLEDGE,
            hints=("What do green cells need to make sugar?", "Which of these things do decomposers set free, and which comes from elsewhere?"),
        )
        wrong = (
            Wrong("Yes: the minerals would bring them the energy that they need", "nit.energy-nutrient"),
            Wrong("Yes: the heat of the decomposers would take the place of light", "en.recycled"),
            Wrong("No: decomposers use up the minerals in the matter that they break down", "nit.decomposer-cleaner", instead="Decomposers set minerals and carbon dioxide free again. What is missing is energy, which only light brings."),
        )
        return choice(draft, "No: the minerals and carbon dioxide bring no energy for plants", wrong, self.catalogue, salt=self.subject.id)
