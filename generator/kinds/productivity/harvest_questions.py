"""Questions on harvests: biomass, net and gross production, energy, what was eaten, dry mass, quadrats."""

from __future__ import annotations

from collections.abc import Iterator

from generator.kind import Subject, in_sentence
from generator.kinds.productivity.harvest_facts import GRAZING
from generator.kinds.productivity.record import Harvest, Plot, ProductivityRecord
from generator.kinds.productivity.replicate_questions import ReplicateQuestions, only_made
from generator.kinds.productivity.statement_questions import StatementQuestions
from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.units import unit
from generator.questions.making import Draft, Wrong, choice, number_entry, ordering
from generator.questions.misconception import Catalogue
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Needs

PERCENT, PER_HECTARE, EATEN = unit("percent"), unit("MJ/ha"), unit("kg/ha/d")
OF_A_HECTARE = f"A hectare is 100 m × 100 m, so it has 10{shown.THIN}000 m²: multiply by that."
LOOK_UP = "from the numbers on this page"


class HarvestQuestions(ReplicateQuestions):
    """The first plot, and another one for net production, so that no prompt gives the answer to another question."""

    def __init__(self, subject: Subject[ProductivityRecord], harvest: Harvest, catalogue: Catalogue) -> None:
        super().__init__(subject, catalogue)
        self.harvest, self.plot, self.other = harvest, harvest.plots[0], harvest.plots[-1]
        self.first, self.last = self.plot.harvests[0], self.plot.harvests[-1]

    def fact(self, name: str, plot: Plot | None = None) -> Fact:
        return self.facts[f"{(plot or self.plot).id}.{name}"]

    def questions(self) -> Iterator[Made]:
        yield self.biomass()
        yield self.net_production()
        known = next((plot for plot in self.harvest.plots if self.fact("gross_production", plot).is_number), None)
        if known is not None:
            yield self.respired_share(known)
        yield self.stock_or_rate()
        yield self.why_dry()
        yield self.energy()
        if f"{GRAZING}.eaten" in self.facts:
            yield self.eaten()
        yield self.where_to_cut()
        yield self.from_quadrat_to_rate()
        yield from only_made(StatementQuestions(self.subject, self.catalogue).on_harvests(self.harvest))
        yield self.why_replicates("one quadrat had been cut in each plot on each day", "several quadrats in each plot", "the balance")
        error = self.fact(f"error_{self.last.id}")
        if error.is_number and error.number > 0:
            what = f"dry mass of the quadrats ({in_sentence(self.plot.label)}, {in_sentence(self.last.label)})"
            yield self.standard_error(what, self.fact(f"spread_{self.last.id}"), error, len(self.last.dry_mass))
            yield self.told_apart("the biomass of two plots", self.fact(f"area_error_{self.last.id}"))

    def net_of(self, plot: Plot) -> str:
        """Net production as a prompt gives it: where it answers another question, it is to be looked up."""
        net = self.fact("net_production", plot)
        return f"take net production {LOOK_UP}." if plot is self.other else f"net production was {net.shown_exactly}."

    def biomass(self) -> Made:
        mass, area, found = self.fact(f"dry_mass_{self.first.id}"), self.facts["quadrat_area"], self.fact(f"biomass_{self.first.id}")
        draft = Draft(
            id="biomass",
            prompt=(
                f"{self.plot.label} on {in_sentence(self.first.label)} the mean dry mass from a quadrat of {area.shown_exactly} is {mass.shown_exactly}. "
                "How much is that on one square metre?"
            ),
            solution=f"{mass.shown_exactly} ÷ {area.shown_exactly} = {found.shown_exactly}.",
        )
        return number_entry(
            draft, found, {"mass": mass, "area": area},
            (
                Mistake("bio.quadrat", "mass", "taking the quadrat for a square metre"),
                Mistake("bio.quadrat-times", "mass * area", "multiplying by the area"),
                Mistake("bio.quadrat-side", "mass / sqrt(area)", "dividing by the side of the frame"),
            ),
            self.catalogue, kept=(area.id,), otherwise="How many such quadrats make a square metre?",
        )  # fmt: skip

    def net_production(self) -> Made:
        plot = self.other
        first, last = plot.harvests[0], plot.harvests[-1]
        net, days = self.fact("net_production", plot), self.fact("duration", plot)
        earlier, later = self.fact(f"biomass_{first.id}", plot), self.fact(f"biomass_{last.id}", plot)
        start = f"take its biomass at the first harvest {LOOK_UP}" if plot is self.plot else f"at the first harvest the biomass was {earlier.shown_exactly}"
        draft = Draft(
            id="net_production",
            prompt=(
                f"{plot.label}: {start}. At the last, {days.shown_exactly} later, it was {later.shown_exactly}. "
                "What net production per day do the two harvests show, if what died or was eaten in between is not counted?"
            ),
            solution=f"What was gained, divided by the time: ({later.shown_exactly} − {earlier.shown_exactly}) ÷ {days.shown_exactly} = {net.shown_exactly}.",
        )
        return number_entry(
            draft, net, {"earlier": earlier, "later": later, "days": days},
            (
                Mistake("bio.stock-rate", "later / days", "dividing the last biomass by the days", "Some of it stood there already at the first harvest. Take that off before you divide."),
                Mistake("inv.no-time", "later - earlier", "leaving out the time"),
                Mistake("inv.start-less-end", "(earlier - later) / days", "taking the start less the end"),
                Mistake("bio.both-added", "(later + earlier) / days", "adding the two harvests"),
            ),
            self.catalogue, kept=(days.id,), asks_unit=True, otherwise="How much was gained, and in how many days?",
        )  # fmt: skip

    def respired_share(self, plot: Plot) -> Made:
        """Of gross production, which has to be found first."""
        respired, net = (self.fact(name, plot) for name in ("respiration", "net_production"))
        given = {"respired": respired, "net": net}
        right = computed("respired_share", "Respired, of gross production", Expression("respired / (net + respired)"), given, PERCENT, figures=net.figures)
        draft = Draft(
            id="respired_share",
            prompt=f"{plot.label}: {self.net_of(plot)} The plants respired {respired.shown_exactly}. What percentage of their gross production did they respire?",
            solution=f"Gross production is what is left and what was respired: {respired.shown_exactly} ÷ ({net.shown_exactly} + {respired.shown_exactly}) = {right.shown}.",
            hints=("Net production is what is left after respiration. How much was made in all?", "Respired ÷ (net production + respired) = ?"),
        )
        return number_entry(
            draft, right, given,
            (
                Mistake("bio.gross-net", "respired / net", "dividing by net production", "The whole is gross production: net production and what was respired together."),
                Mistake("nit.complement", "net / (net + respired)", "giving the share that is left", "That is net production. Give the part that was respired."),
                Mistake("ps.sign", "respired / (net - respired)", "taking respiration off net production"),
                Mistake("en.eff-fraction", "respired / (net + respired) / 100", "leaving out the factor 100"),
            ),
            self.catalogue, otherwise="How much was made in all, before the plants respired?",
        )  # fmt: skip

    def stock_or_rate(self) -> Made:
        draft = Draft(
            id="stock_or_rate",
            prompt="A wood holds 30 kg of dry matter on a square metre, a meadow 0.6 kg. Which of them has the larger net production?",
            solution="Biomass is what is there. Production is what is added in a time, and that is not told: it takes two harvests to find it.",
            needs=Needs.KNOWLEDGE,
            hints=("In which unit is net production given, and in which are these numbers?", "What would have to be measured besides, to know what each of them adds?"),
        )
        wrong = (
            Wrong("The wood, for it holds fifty times as much as the meadow", "bio.stock-rate"),
            Wrong("The wood, if both were dried before they were weighed", "bio.stock-rate", "Drying matters, but it makes no rate of a mass."),
            Wrong("The meadow, for where little stands more can be added", "bio.stock-limits"),
        )
        return choice(draft, "These numbers do not show what either of them adds", wrong, self.catalogue, salt=self.subject.id)

    def why_dry(self) -> Made:
        draft = Draft(
            id="why_dry",
            prompt="Lot A was cut after rain: it weighs 200 g when fresh, and 80 % of that is water. Lot B was cut in a dry week: it weighs 150 g, and 70 % is water. Which lot has more dry matter?",
            solution="What is left without the water is dry matter, which photosynthesis has built up: 20 % of 200 g is 40 g, and 30 % of 150 g is 45 g.",
            supposed=True,
            hints=("What is left of each lot when all its water is gone?", "Take the water off 100 %: that share of the fresh mass is dry."),
        )
        wrong = (
            Wrong("Lot A: 160 g against 105 g", "bio.wet-dry", "", "That much is water. Dry matter is what is left without it."),
            Wrong("Lot A: 200 g against 150 g", "bio.water-weighs-nothing", "", "That is the fresh mass, and most of it is water, which evaporates when the plants are dried."),
            Wrong("Lot A: 40 g against 30 g", "bio.wet-dry", "", "Each lot has its own share of water: of lot B 30 % is dry."),
        )
        return choice(draft, "Lot B: 45 g against 40 g", wrong, self.catalogue, salt=self.subject.id)

    def energy(self) -> Made:
        """On a hectare in the whole time, so that area, time and energy each take a step."""
        dry, content, days = self.fact("net_production"), self.facts["energy_content"], self.fact("duration")
        given = {"dry": dry, "content": content, "days": days}
        found = computed("energy_of_hectare", "Energy stored on a hectare", Expression("dry * content * days"), given, PER_HECTARE, figures=dry.figures)
        draft = Draft(
            id="energy",
            prompt=(
                f"{self.plot.label}: {self.net_of(self.plot)} One gram of dry matter holds {content.shown_number} kJ. "
                f"How many megajoules do the plants of one hectare store in new dry matter in {days.shown_exactly}?"
            ),
            solution=f"{dry.shown_exactly} × {content.shown_exactly} × {days.shown_exactly} is in kJ m⁻². A hectare has 10{shown.THIN}000 m², and 1 MJ is 1000 kJ: {found.shown_exactly}.",
            hints=("How much energy is stored on one square metre in a day? And in all the days?", f"One hectare is 10{shown.THIN}000 m², and one megajoule 1000 kJ."),
        )
        return number_entry(
            draft, found, given,
            (
                Mistake("bio.energy-divided", "dry / content * days * 10", "dividing by the energy of a gram"),
                Mistake("inv.no-time", "dry * content * 10", "leaving out the days", "That is stored in one day. Multiply by the number of days."),
                Mistake("nit.area", "dry * content * days / 10000", "staying with one square metre", f"That is stored on 1 m². A hectare has 10{shown.THIN}000 of them."),
                Mistake("nit.area", "dry * content * days / 100", "multiplying by 100 for the hectare", OF_A_HECTARE),
            ),
            self.catalogue, kept=(content.id, days.id), otherwise="How much energy is in one gram? And how many grams grew on a hectare in all these days?",
        )  # fmt: skip

    def eaten(self) -> Made:
        """On a hectare in a day, from what was gained; the page tells what is eaten on a square metre."""
        plots = {plot.grazing: plot for plot in self.harvest.plots if plot.grazing}
        without, grazed = (self.fact("gain", plots[sort]) for sort in ("kept_out", "open"))
        days = self.fact("duration", plots["open"])
        given = {"without": without, "grazed": grazed, "days": days}
        found = computed("eaten_of_hectare", "Eaten on a hectare in a day", Expression("(without - grazed) / days"), given, EATEN, figures=without.figures)
        draft = Draft(
            id="eaten",
            prompt=(
                f"In {days.shown_exactly} biomass grew by {without.shown_exactly} where animals were kept out and by {grazed.shown_exactly} where they fed. "
                "If plants grew equally fast in both plots, how many kilograms did animals eat on one hectare in a day?"
            ),
            solution=(
                f"What grew where nothing was eaten less what was found where animals fed, in a day: ({without.shown_exactly} − {grazed.shown_exactly}) ÷ {days.shown_exactly}, in g m⁻² d⁻¹. "
                f"A hectare has 10{shown.THIN}000 m², and 1 kg is 1000 g: {found.shown_exactly}."
            ),
            hints=("The two plots differ in one thing: whether animals can reach the plants.", f"(Where they cannot, less where they can) ÷ days; then a hectare is 10{shown.THIN}000 m² and 1 kg is 1000 g."),
        )
        return number_entry(
            draft, found, given,
            (
                Mistake("bio.eaten-is-left", "grazed / days", "taking what was left over where animals fed"),
                Mistake("bio.eaten-is-all", "without / days", "taking all that grew where nothing was eaten"),
                Mistake("bio.eaten-added", "(without + grazed) / days", "adding the two plots"),
                Mistake("inv.no-time", "(without - grazed) * 10", "leaving out the days", "That was eaten in all the days. Divide by their number."),
                Mistake("nit.area", "(without - grazed) / days / 10", "staying with grams on a square metre", f"A hectare has 10{shown.THIN}000 m², and 1 kg is 1000 g."),
                Mistake("nit.area", "(without - grazed) / days / 100", "multiplying by 100 for the hectare", OF_A_HECTARE),
            ),
            self.catalogue, kept=(days.id,), otherwise="How much was eaten on a square metre in a day? How much is that on a hectare?",
        )  # fmt: skip

    def where_to_cut(self) -> Made:
        draft = Draft(
            id="where_to_cut",
            prompt="To make six quadrats agree better, a student lays the frame down wherever the plants look average. What does that do to the mean?",
            solution="Whoever chooses by eye favours some plants without noticing, so the mean of what was picked can be off. Places drawn by chance make it stand for the plot, even if they agree less.",
            needs=Needs.KNOWLEDGE,
            hints=("What is the mean of the six to stand for?", "Does every plant of the plot have the same chance to be cut?"),
        )
        wrong = (
            Wrong("It comes nearer to that of the plot: a trained eye finds what is typical", "inv.by-eye"),
            Wrong("It comes nearer to that of the plot: quadrats that agree have little error", "inv.mean-has-no-error", "", "Readings can agree, and all be off in the same way. A mean does not take away an error that all share: let chance draw the places."),
            Wrong("It stays as it is: six quadrats have one mean, wherever they lie", "inv.by-eye", "", "Another six quadrats have another mean. Those that are picked by eye are not the ones that chance would give."),
        )
        return choice(draft, "It can be off from that of the plot, though its quadrats agree well", wrong, self.catalogue, salt=self.subject.id)

    def from_quadrat_to_rate(self) -> Made:
        """Each step needs what the one before it gives, as its unit shows."""
        area = self.facts["quadrat_area"].shown_exactly
        reasons = {
            "Cut": "What is cut is fresh: it holds water, and how much changes with rain and time of day.",
            "Dry": "Now the water is gone, but nobody knows yet how much is left.",
            "Weigh each lot": f"These are masses in grams, one for each quadrat of {area}. The plot has one biomass, for 1 m².",
            "Divide the mean of the lots by the area of the frame": "This is all that stands there, in g m⁻². Part of it was there at the first harvest already.",
            "Subtract the first harvest, in g m⁻²": "This is what was gained, still in g m⁻². A production is for a time.",
            "Divide by the number of days": "",
        }
        draft = Draft(
            id="from_quadrat_to_rate",
            prompt="How do the quadrats of the last harvest lead to net production, in g m⁻² d⁻¹? Put the steps in order.",
            solution="Fresh plants hold changing amounts of water, a frame is no square metre, and biomass is no rate: so cut, dry, weigh, take the mean for 1 m², compare, divide by the time.",
            needs=Needs.KNOWLEDGE,
            hints=("Work in the field comes first, then work in the laboratory, then sums.", "Which unit does each sum need, and which does it give?"),
        )
        return ordering(draft, list(reasons), starts_with="Start in the field, where the plants still stand.", leads_on=reasons.__getitem__, salt=self.subject.id)
