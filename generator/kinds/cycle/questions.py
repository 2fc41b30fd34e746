"""Questions on a cycle, the first six that come out fair: its arithmetic, and the processes with their start and end forms."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from generator.kind import Subject, in_sentence
from generator.kinds.cycle.facts import fluxes_in, fluxes_out, is_refilled
from generator.kinds.cycle.record import CycleRecord, Flux, Reservoir
from generator.quantities.amount import Amount
from generator.quantities.fact import Fact
from generator.questions.making import Draft, Wrong, choice, choice_of_numbers, enough, number_entry
from generator.questions.misconception import Catalogue
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Needs, Rejected


def questions(subject: Subject[CycleRecord], catalogue: Catalogue) -> Sequence[Made]:
    """Questions on the reservoirs whose numbers are known best."""
    return _Cycle(subject, catalogue).questions()


NO_EXACT = "no reservoir has all its fluxes stated as single numbers"


class _Cycle:
    """The record that is asked about, with the parts that suit a question."""

    def __init__(self, subject: Subject[CycleRecord], catalogue: Catalogue) -> None:
        self.subject, self.record, self.facts, self.catalogue = subject, subject.record, subject.facts, catalogue
        self.busy = sorted(filter(self._is_exact, self.record.reservoirs), key=self._fluxes, reverse=True)
        """The reservoirs whose fluxes are all stated as single numbers; those with several on both sides come first."""

    def _fluxes(self, reservoir: Reservoir) -> int:
        return min(len(fluxes_in(self.record, reservoir.id)), len(fluxes_out(self.record, reservoir.id)))

    def _is_exact(self, reservoir: Reservoir) -> bool:
        """A range has no one right answer, so nobody is asked for the middle of it."""
        fluxes = (*fluxes_in(self.record, reservoir.id), *fluxes_out(self.record, reservoir.id))
        return bool(fluxes) and all(map(_is_single, fluxes))

    def fact(self, part: str, name: str) -> Fact:
        return self.facts[f"{part}.{name}"]

    def questions(self) -> tuple[Made, ...]:
        return enough(
            (
                self.outflow(), self.balance(), self.turnover_time(), self.human_share(), *self.processes(),
                self.inflow(), self.longest_stay(),
            )
        )  # fmt: skip

    def outflow(self) -> Made:
        if not self.busy:
            return Rejected("outflow", NO_EXACT)
        reservoir = self.busy[0]
        total, others = self.fact(reservoir.id, "outflow"), self.fact(reservoir.id, "inflow")
        fluxes = fluxes_out(self.record, reservoir.id)
        named = _listed(in_sentence(flux.label) for flux in fluxes)
        draft = Draft(
            id="outflow",
            prompt=f"How much flows out of “{reservoir.label}” in a year, all fluxes together?",
            solution=f"The arrows that start at the box are {named}: together {total.shown_exactly}.",
        )
        if not fluxes:
            return Rejected(draft.id, "no reservoir has fluxes on both sides")
        rates = {flux.symbol: self.fact(flux.id, "rate") for flux in fluxes}
        largest = max(fluxes, key=lambda flux: flux.rate.value or 0)
        given = rates | {"inflow": others, "outflow": total, "largest": rates[largest.symbol]}
        return number_entry(
            draft, total, given,
            (
                Mistake("nit.budget-add", "inflow + outflow", "adding the inflows as well"),
                Mistake("cyc.output-as-input", "inflow", "adding up the arrows that arrive"),
                Mistake("cyc.largest-only", "largest", f"counting {in_sentence(largest.label)} alone"),
                Mistake("cyc.largest-only", "outflow - largest", f"leaving out {in_sentence(largest.label)}"),
            ),
            self.catalogue, otherwise="Count only arrows that start at this box, and all of them.",
        )  # fmt: skip

    def inflow(self) -> Made:
        """As `outflow`, on another reservoir where there is one."""
        if not self.busy:
            return Rejected("inflow", NO_EXACT)
        reservoir = self.busy[min(1, len(self.busy) - 1)]
        total, fluxes = self.fact(reservoir.id, "inflow"), fluxes_in(self.record, reservoir.id)
        named = _listed(in_sentence(flux.label) for flux in fluxes)
        draft = Draft(
            id="inflow",
            prompt=f"How much flows into “{reservoir.label}” in a year, all fluxes together?",
            solution=f"The arrows that end at the box are {named}: together {total.shown_exactly}.",
        )
        if not fluxes:
            return Rejected(draft.id, "no reservoir has fluxes on both sides")
        given = {"inflow": total, "outflow": self.fact(reservoir.id, "outflow")}
        return number_entry(
            draft, total, given,
            (
                Mistake("nit.budget-add", "inflow + outflow", "adding the outflows as well"),
                Mistake("cyc.output-as-input", "outflow", "adding up the arrows that leave"),
                Mistake("carb.net-sign", "inflow - outflow", "taking the outflow off"),
            ),
            self.catalogue, otherwise="Count only arrows that end at this box, and all of them.",
        )  # fmt: skip

    def longest_stay(self) -> Made:
        """Which reservoir matter stays in longest; those that may hold it as long, within their ranges, are not offered."""
        def time(reservoir: Reservoir) -> Fact:
            return self.fact(reservoir.id, "turnover_time")

        timed = sorted((r for r in self.record.reservoirs if time(r).is_number and is_refilled(self.subject, r)), key=lambda r: time(r).number)
        if len(timed) < 3:
            return Rejected("longest_stay", "fewer than three reservoirs have a turnover time")
        longest = timed[-1]
        least, _ = self._ends_of_time(longest)
        shorter = [r.label for r in timed if self._ends_of_time(r)[1] < least]
        draft = Draft(
            id="longest_stay",
            prompt="In which of these reservoirs does matter stay longest on average? Compare stock and outflow.",
            solution=f"In “{longest.label}”: its stock is largest compared with its outflow, so it turns over in {time(longest).shown}.",
        )
        wrong = [Wrong(label, "carb.residence-inverse", "Its outflow is larger compared with its stock.") for label in shorter]
        return choice(draft, longest.label, wrong[:3], self.catalogue, salt=self.subject.id)

    def _ends_of_time(self, reservoir: Reservoir) -> tuple[float, float]:
        """The least and the most that stock over outflow can be within their stated ranges, in units of the record."""
        rates = [_ends(flux.rate) for flux in fluxes_out(self.record, reservoir.id)]
        (small, large), low, high = _ends(reservoir.stock), sum(low for low, _ in rates), sum(high for _, high in rates)
        return small / high, large / low if low else math.inf

    def balance(self) -> Made:
        if not self.busy:
            return Rejected("balance", NO_EXACT)
        unbalanced = [r for r in self.busy if self.fact(r.id, "balance").value not in (None, 0.0)]
        if not unbalanced:
            return Rejected("balance", "every budget is balanced")
        reservoir = next((r for r in unbalanced if r is not self.busy[0]), unbalanced[0])  # not to give away the first question
        balance = self.fact(reservoir.id, "balance")
        given = {"inflow": self.fact(reservoir.id, "inflow"), "outflow": self.fact(reservoir.id, "outflow")}
        draft = Draft(
            id="balance",
            prompt=(
                f"“{reservoir.label}” gains {given['inflow'].shown_exactly} and loses {given['outflow'].shown_exactly}. "
                "What is its balance? A growing stock has a positive balance."
            ),
            solution=f"Inflow minus outflow is {balance.shown_exactly}.",
        )
        return choice_of_numbers(
            draft, balance, given,
            (
                Mistake("carb.net-sign", "outflow - inflow", "taking inflow from outflow"),
                Mistake("nit.budget-add", "inflow + outflow", "adding inflow and outflow"),
                Mistake("carb.no-removal", "inflow", "giving the inflow alone"),
            ),
            self.catalogue,
        )  # fmt: skip

    def turnover_time(self) -> Made:
        exact = [r for r in self.busy if r.stock.low is None and self.fact(r.id, "turnover_time").is_number]
        if not exact:
            return Rejected("turnover_time", "no reservoir has a stock stated as one number and an outflow")
        reservoir = max(exact, key=lambda r: r.stock.value or 0)
        time, stock, outflow = (self.fact(reservoir.id, name) for name in ("turnover_time", "stock", "outflow"))
        draft = Draft(
            id="turnover_time",
            prompt=(
                f"“{reservoir.label}” holds {stock.shown_exactly}, and {outflow.shown_exactly} leave it. "
                "What is its turnover time, in years?"
            ),
            solution=f"Stock divided by outflow: {stock.shown_exactly} ÷ {outflow.shown_exactly} = {time.shown}.",
        )
        return number_entry(
            draft, time, {"stock": stock, "outflow": outflow, "inflow": self.fact(reservoir.id, "inflow")},
            (
                Mistake("carb.residence-inverse", "outflow / stock", "dividing the outflow by the stock"),
                Mistake("carb.residence-both", "stock / (inflow + outflow)", "dividing by inflow and outflow together"),
                Mistake("carb.residence-inverse", "stock * outflow", "multiplying stock and outflow"),
            ),
            self.catalogue, otherwise="Divide so that the unit comes out as years: amount ÷ amount per year.",
        )  # fmt: skip

    def human_share(self) -> Made:
        """On the largest flux with people behind it, compared with all that enters its reservoir from outside."""
        mixed = [
            process for process in dict.fromkeys(flux.process_id for flux in self.record.fluxes)
            if 0.0 < (self.fact(process, "human_share").value or 0.0) < 100.0
            and all(_is_single(flux) for flux in self.record.fluxes if flux.process_id == process)
        ]  # fmt: skip
        return self._share_of_process(mixed[0]) if mixed else self._share_of_inputs()

    def _share_of_process(self, process: str) -> Made:
        fluxes = [flux for flux in self.record.fluxes if flux.process_id == process]
        share = self.fact(process, "human_share")
        people = " + ".join(flux.symbol for flux in fluxes if flux.cause == "people")
        nature = " + ".join(flux.symbol for flux in fluxes if flux.cause == "nature")
        draft = Draft(
            id="human_share",
            prompt=f"What share of {in_sentence(fluxes[0].process or process)} do people cause, in percent?",
            solution=f"The fluxes that people cause, divided by all fluxes of the process: {share.shown}.",
        )
        return choice_of_numbers(
            draft, share, {flux.symbol: self.fact(flux.id, "rate") for flux in fluxes},
            (
                Mistake("cyc.share-of-rest", f"({people}) / ({nature})", "dividing by the natural fluxes alone"),
                Mistake("nit.complement", f"({nature}) / ({people} + {nature})", "giving the natural share"),
                Mistake("en.eff-fraction", f"({people}) / ({people} + {nature}) / 100", "leaving out the factor 100"),
            ),
            self.catalogue,
        )  # fmt: skip

    def _share_of_inputs(self) -> Made:
        outside = set(self.record.outside)
        entering = [flux for flux in self.record.fluxes if flux.start in outside]
        if any(flux.cause == "both" for flux in entering):
            return Rejected("human_share", "nature and people together drive a flux that enters from outside")
        people = [flux for flux in entering if flux.cause == "people"]
        if not people:
            return Rejected("human_share", "people cause no flux that enters from outside")
        draft = Draft(
            id="human_share",
            prompt=f"Which of these fluxes bring {self._matter()} in from outside because of people?",
            solution=f"{_listed(flux.label for flux in people)} {'come' if len(people) > 1 else 'comes'} from outside, and people are the cause.",
        )
        natural = [flux for flux in entering if flux.cause == "nature"]
        inner = [flux for flux in self.record.fluxes if flux.start not in outside and flux.end not in outside]
        leaving = [flux for flux in self.record.fluxes if flux.end in outside]
        wrong = [Wrong(_listed(f.label for f in natural[:2]), "cyc.natural-input", "These come from outside, but by nature.")] if natural else []
        wrong += [Wrong(_listed(f.label for f in inner[:2]), "cyc.inner-input", "These run between reservoirs inside the budget.")] if inner else []
        wrong += [Wrong(_listed(f.label for f in leaving[:2]), "cyc.output-as-input", "These leave the budget.")] if leaving else []
        return choice(draft, _listed(flux.label for flux in people), wrong, self.catalogue, salt=self.subject.id)

    def processes(self) -> tuple[Made, Made]:
        """Which process leads from one form to another, and which forms a process links."""
        known = [flux for flux in self.record.fluxes if flux.starts_as and flux.ends_as and flux.process and flux.done_by]
        different = {flux.process: flux for flux in reversed(known)}
        if len(different) < 3:
            because = "fewer than three processes state what they start and end with, and who does them"
            return Rejected("which_process", because), Rejected("which_forms", because)
        by_life = [flux for flux in different.values() if flux.cause == "nature"] or list(different.values())
        first, second = by_life[-1], by_life[0]
        same = {flux.process for flux in known if (flux.starts_as, flux.ends_as) == (first.starts_as, first.ends_as)}
        return self._which_process(first, different, same), self._which_forms(second, different)

    def _which_process(self, flux: Flux, different: dict[str | None, Flux], same: set[str | None]) -> Made:
        """`same` are the processes that would be a right answer too, the flux's own among them."""
        right = str(flux.process)
        draft = Draft(
            id="which_process",
            prompt=f"Which process turns {_form(flux.starts_as)} into {_form(flux.ends_as)}?",
            solution=f"{right.capitalize()} turns {_form(flux.starts_as)} into {_form(flux.ends_as)}. Done by: {flux.done_by}.",
            needs=Needs.KNOWLEDGE,
        )
        wrong = [
            Wrong(str(other.process).capitalize(), "nit.swap-process", f"{str(other.process).capitalize()} turns {_forms(other)}.")
            for other in different.values()
            if other.process not in same
        ]
        return choice(draft, right.capitalize(), wrong[:3], self.catalogue, salt=self.subject.id)

    def _which_forms(self, flux: Flux, different: dict[str | None, Flux]) -> Made:
        right = f"From {_form(flux.starts_as)} to {_form(flux.ends_as)}"
        draft = Draft(
            id="which_forms",
            prompt=f"{str(flux.process).capitalize()} by {flux.done_by}: from which form to which does {self._matter()} go?",
            solution=f"{str(flux.process).capitalize()} turns {_forms(flux)}.",
            needs=Needs.KNOWLEDGE,
        )
        turned = f"From {_form(flux.ends_as)} to {_form(flux.starts_as)}"
        wrong = [Wrong(turned, "cyc.reversed", "That is the way back.")]
        wrong += [
            Wrong(f"From {_form(other.starts_as)} to {_form(other.ends_as)}", "nit.swap-process", f"That is {other.process}.")
            for other in different.values()
            if other.process != flux.process
        ]
        return choice(draft, right, wrong[:3], self.catalogue, salt=self.subject.id)

    def _matter(self) -> str:
        names = {"C": "carbon", "N": "nitrogen", "P": "phosphorus", "S": "sulfur", "H2O": "water"}
        words = self.record.units.stock.replace("/", " ").split()
        return next((names[word] for word in words if word in names), "matter")


def _is_single(flux: Flux) -> bool:
    """Whether the rate is one known number, no range."""
    return flux.rate.value is not None and flux.rate.low is None


def _ends(amount: Amount) -> tuple[float, float]:
    """The ends of a range; a single number is both."""
    if amount.low is None or amount.high is None:
        return amount.value or 0.0, amount.value or 0.0
    return amount.low, amount.high


def _forms(flux: Flux) -> str:
    return f"{_form(flux.starts_as)} into {_form(flux.ends_as)}"


def _form(formula: str | None) -> str:
    return formula or ""


def _listed(words: Iterator[str] | Sequence[str]) -> str:
    words = list(words)
    if len(words) < 2:
        return "".join(words)
    lower = [words[0], *(word[:1].lower() + word[1:] for word in words[1:])]
    return f"{', '.join(lower[:-1])} and {lower[-1]}"
