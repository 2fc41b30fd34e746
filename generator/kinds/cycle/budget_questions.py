"""Questions on the arithmetic of a cycle's budgets."""

from __future__ import annotations

from collections.abc import Sequence

from generator.diagnostics import listed
from generator.kind import in_sentence
from generator.kinds.cycle.asking import NO_EXACT, Asking, named
from generator.kinds.cycle.budget_facts import fluxes_in, fluxes_out, is_refilled, significant_figures
from generator.kinds.cycle.record import Flux, Reservoir
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.text import sentence
from generator.quantities.units import unit
from generator.questions.making import Draft, number_entry
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Rejected

MOST_OF_A_SUM = 0.9
"""A flux that is more of a sum leaves nothing to add up."""


class BudgetQuestions(Asking):
    """Inflow, outflow, balance and turnover."""

    def _largest(self) -> Reservoir | None:
        """Whose turnover time is asked for."""
        exact = [one for one in self.busy if one.stock.low is None and self.fact(one.id, "turnover_time").is_number]
        return max(exact, key=lambda one: one.stock.value or 0, default=None)

    def _is_steady(self, reservoir: Reservoir) -> bool:
        """Whether inflow and outflow look alike."""
        return self.fact(reservoir.id, "inflow").shown_exactly == self.fact(reservoir.id, "outflow").shown_exactly

    def told(self) -> tuple[Reservoir | None, ...]:
        """Those of which a prompt tells what they gain and lose."""
        return (self.growing() or self.shrinking(),)

    def untold(self) -> list[Reservoir]:
        """Those whose outflow no other prompt tells, and is made up of several fluxes that count."""
        told = (*self.told(), self._largest())
        return [one for one in self.busy if one not in told and self._is_a_sum(one) and not self._is_steady(one)]

    def _is_a_sum(self, reservoir: Reservoir) -> bool:
        rates = [flux.rate.value or 0.0 for flux in fluxes_out(self.record, reservoir.id)]
        return sum(rates) > 0 and max(rates) < MOST_OF_A_SUM * sum(rates)

    def outflow(self) -> Made:
        """Of a reservoir whose outflow no other prompt tells, where there is one, and that does not gain as much as it loses."""
        if not self.busy:
            return Rejected("outflow", NO_EXACT)
        if not any(fluxes_out(self.record, one.id) for one in self.busy):
            return Rejected("outflow", "no reservoir has fluxes on both sides")
        open_ = [one for one in self.busy if fluxes_out(self.record, one.id) and not self._is_steady(one)]
        if not open_:
            return Rejected("outflow", "as much flows in as out, so that whoever adds up the wrong arrows is right")
        reservoir = ([one for one in open_ if one in self.untold()] or open_)[0]
        total, others = self.fact(reservoir.id, "outflow"), self.fact(reservoir.id, "inflow")
        fluxes = fluxes_out(self.record, reservoir.id)
        draft = Draft(
            id="outflow",
            prompt=f"How much flows out of {named(reservoir.label)} in a year, all fluxes together?",
            solution=self._added_up("start at", fluxes, total),
        )
        rates = {flux.symbol: self.fact(flux.id, "rate") for flux in fluxes}
        largest = max(fluxes, key=lambda flux: flux.rate.value or 0)
        given = rates | {"inflow": others, "outflow": total, "largest": rates[largest.symbol]}
        return number_entry(
            draft, total, given,
            (
                Mistake("nit.budget-add", "inflow + outflow", "adding the inflows as well"),
                Mistake("cyc.output-as-input", "inflow", "adding up the arrows that arrive"),
                Mistake("cyc.largest-only", "largest", f"counting “{largest.label}” alone"),
                Mistake("cyc.largest-only", "outflow - largest", f"leaving out “{largest.label}”"),
            ),
            self.catalogue, otherwise="Which arrows start at this box? All of them count, and no others.",
        )  # fmt: skip

    def inflow(self) -> Made:
        """As `outflow`, on another reservoir where there is one."""
        if not self.busy:
            return Rejected("inflow", NO_EXACT)
        reservoir = self.busy[min(1, len(self.busy) - 1)]
        if self._is_steady(reservoir):
            return Rejected("inflow", "it gains what it loses, which another question asks for or tells")
        total, fluxes = self.fact(reservoir.id, "inflow"), fluxes_in(self.record, reservoir.id)
        draft = Draft(
            id="inflow",
            prompt=f"How much flows into {named(reservoir.label)} in a year, all fluxes together?",
            solution=self._added_up("end at", fluxes, total),
        )
        if not fluxes:
            return Rejected(draft.id, "no reservoir has fluxes on both sides")
        if len(fluxes) == 1:
            return Rejected(draft.id, "a single flux enters, which leaves nothing to add up")
        rates = {flux.symbol: self.fact(flux.id, "rate") for flux in fluxes}
        given = rates | {"inflow": total, "outflow": self.fact(reservoir.id, "outflow")}
        return number_entry(
            draft, total, given,
            (
                Mistake("nit.budget-add", "inflow + outflow", "adding the outflows as well"),
                Mistake("cyc.output-as-input", "outflow", "adding up the arrows that leave"),
                Mistake("cyc.gain-for-inflow", "inflow - outflow", "taking the outflow off"),
            ),
            self.catalogue, otherwise="Which arrows end at this box? All of them count, and no others.",
        )  # fmt: skip

    def _added_up(self, where: str, fluxes: Sequence[Flux], total: Fact) -> str:
        """The sum behind an inflow or outflow, with the names of its arrows."""
        names = listed((f"“{flux.label}”" for flux in fluxes), "and")
        rates = " + ".join(self.fact(flux.id, "rate").shown_exactly for flux in fluxes)
        if len(fluxes) == 1:
            return f"The only arrow to {where} the box is {names}: {total.shown_exactly}."
        return f"{len(fluxes)} arrows {where} the box: {names}. {rates} = {total.shown_exactly}."

    def times_as_long(self) -> Made:
        """How many times as long matter stays in one reservoir as in another, both small beside the largest stock."""
        item = "times_as_long"
        timed = sorted((r for r in self.busy if r.stock.value and r.stock.low is None and is_refilled(self.subject, r)), key=lambda r: r.stock.value or 0.0)
        if len(timed) < 3:
            return Rejected(item, "fewer than three reservoirs have a stock and an outflow stated as single numbers")
        short, long = sorted(timed[:2], key=lambda r: self.fact(r.id, "turnover_time").number)
        given = {
            "stock": self.fact(long.id, "stock"), "outflow": self.fact(long.id, "outflow"),
            "other_stock": self.fact(short.id, "stock"), "other_outflow": self.fact(short.id, "outflow"),
        }  # fmt: skip
        right = computed(
            item, f"Stay in {in_sentence(long.label)} over stay in {in_sentence(short.label)}",
            Expression("(stock / outflow) / (other_stock / other_outflow)"), given, unit("1"), figures=significant_figures(self.record),
        )  # fmt: skip
        draft = Draft(
            id=item,
            prompt=f"On average, how many times as long does {self.matter} stay in {named(long.label)} as in {named(short.label)}? Take stocks and outflows from the diagram.",
            solution=f"In {named(long.label)}: {self._divided(long)}. In {named(short.label)}: {self._divided(short)}. One divided by the other is about {right.shown}.",
            hints=("A time comes from a stock and what leaves it in a year, all arrows together.", "Work out the turnover time of each box. Then divide the longer by the shorter."),
        )
        return number_entry(
            draft, right, given,
            (
                Mistake("cyc.large-stays-long", "stock / other_stock", "dividing the stocks and leaving out what flows"),
                Mistake("cyc.flow-decides", "other_outflow / outflow", "dividing the outflows and leaving out what is stored"),
                Mistake("carb.residence-times", "(stock * outflow) / (other_stock * other_outflow)", "multiplying each stock and its outflow"),
            ),
            self.catalogue, otherwise="Divide each stock by all that flows out of it; only then compare the two times.",
        )  # fmt: skip

    def _divided(self, reservoir: Reservoir) -> str:
        """The sum behind a turnover time."""
        stock, outflow, time = (self.fact(reservoir.id, name) for name in ("stock", "outflow", "turnover_time"))
        return f"{stock.shown_exactly} ÷ {outflow.shown_exactly} = {time.shown}"

    def turnover_time(self) -> Made:
        if (reservoir := self._largest()) is None:
            return Rejected("turnover_time", "no reservoir has a stock stated as one number and an outflow")
        time, stock, outflow = (self.fact(reservoir.id, name) for name in ("turnover_time", "stock", "outflow"))
        draft = Draft(
            id="turnover_time",
            prompt=(
                f"{sentence(named(reservoir.label))} holds {stock.shown_exactly}, and {outflow.shown_exactly} leaves it. "
                "What is its turnover time?"
            ),
            solution=f"Stock divided by outflow: {stock.shown_exactly} ÷ {outflow.shown_exactly} = {time.shown}.",
        )
        return number_entry(
            draft, time, {"stock": stock, "outflow": outflow, "inflow": self.fact(reservoir.id, "inflow")},
            (
                Mistake("carb.residence-inverse", "outflow / stock", "dividing the outflow by the stock"),
                Mistake("carb.residence-both", "stock / (inflow + outflow)", "dividing by inflow and outflow together"),
                Mistake("carb.residence-times", "stock * outflow", "multiplying stock and outflow"),
            ),
            self.catalogue, otherwise="The answer is a time. Which of the two numbers has to stand above the line, so that only years are left?", asks_unit=True,
        )  # fmt: skip

    def share_of_outflow(self) -> Made:
        """Which part of what leaves a reservoir takes one of its ways, not the widest."""
        several = {reservoir.id: len(fluxes_out(self.record, reservoir.id)) for reservoir in self.busy}
        able = [one for one in (*self.busy[1:], *self.busy[:1]) if several[one.id] > (2 if one is self.busy[0] else 1) and self._is_a_sum(one)]
        if not able:
            return Rejected("share_of_outflow", "no reservoir but the first has several outflows that are stated as single numbers, and that one has not three")
        fluxes = fluxes_out(self.record, able[0].id)
        flux = sorted(fluxes, key=lambda flux: flux.rate.value or 0.0)[-2]
        rest = " + ".join(other.symbol for other in fluxes if other is not flux)
        given = {one.symbol: self.fact(one.id, "rate") for one in fluxes}
        right = computed(
            "share_of_outflow", f"Share of {in_sentence(flux.label)}", Expression(f"{flux.symbol} / ({flux.symbol} + {rest})"), given, unit("percent"),
            figures=significant_figures(self.record),
        )  # fmt: skip
        draft = Draft(
            id="share_of_outflow",
            prompt=f"In the diagram, what percentage of all that leaves {named(able[0].label)} does {in_sentence(flux.label)} carry away?",
            solution=f"{given[flux.symbol].shown_exactly} of {self.fact(able[0].id, 'outflow').shown_exactly}: {right.shown}.",
        )
        return number_entry(
            draft, right, given,
            (
                Mistake("cyc.share-of-rest", f"{flux.symbol} / ({rest})", "dividing by the other outflows alone"),
                Mistake("nit.complement", f"({rest}) / ({flux.symbol} + {rest})", "giving what the others carry away"),
                Mistake("en.eff-fraction", f"{flux.symbol} / ({flux.symbol} + {rest}) / 100", "leaving out the factor 100"),
            ),
            self.catalogue, otherwise="What is the whole here: another arrow, or all that start at the box?",
        )  # fmt: skip
