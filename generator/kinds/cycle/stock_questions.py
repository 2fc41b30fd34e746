"""Questions on what a stock does while its flows stay or change: it follows the difference of the two, not the inflow."""

from __future__ import annotations

from generator.kinds.cycle.asking import Asking, named
from generator.kinds.cycle.budget_facts import fluxes_in, fluxes_out
from generator.quantities import shown
from generator.quantities.amount import Amount
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, as_shown, computed, stated
from generator.quantities.text import sentence
from generator.quantities.units import unit
from generator.quantities.working import Rule, RulePath
from generator.questions.making import Draft, Wrong, choice, number_entry
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Rejected

HALF_WAY = Expression("(inflow + outflow) / 2")
GAIN = Expression("years * (inflow - outflow)")
YEARLY = Expression("(outflow - inflow) / stock")
SHORTEST = Expression("least_stock / most_outflow")
YEARS = "10"
NO_GROWTH = "no stock grows by fluxes that are all stated as single numbers"


class StockQuestions(Asking):
    """Asked of a stock that grows, one that people feed where there is one."""

    def falling_inflow(self) -> Made:
        """The inflow falls, but stays above the outflow: the stock goes on growing."""
        if (reservoir := self.growing()) is None:
            return Rejected("falling_inflow", NO_GROWTH)
        inflow, outflow = self.fact(reservoir.id, "inflow"), self.fact(reservoir.id, "outflow")
        assert inflow.unit is not None
        lower = computed("", "Lower inflow", HALF_WAY, {"inflow": inflow, "outflow": outflow}, inflow.unit, figures=inflow.figures)
        number = shown.without_zeros(lower.shown_number, shown.decimals(inflow.shown_number))
        less = inflow.unit.after(number)
        rule = Rule("Is the lower inflow still larger than the outflow?", f"{less} > {outflow.shown_exactly}", True)
        then = Fact(id="", name="What the stock does", value="it grows", working=RulePath((rule,)))
        draft = Draft(
            id="falling_inflow",
            prompt=f"Suppose the inflow of {named(reservoir.label)} falls to {less}, all its inflows taken together, while its outflow stays as in the diagram. What does its stock do?",
            solution=f"{less} in is still more than {outflow.shown_exactly} out, so the stock grows, only by less each year.",
            hints=("Add up what flows out, and compare the new inflow with that, not with the old inflow.", "Say first whether more comes in than goes out, then whether the difference is larger or smaller than before."),
        )
        if not as_shown(outflow).number < shown.read(number) < as_shown(inflow).number:
            return Rejected(draft.id, "inflow and outflow look alike when they are rounded")
        wrong = (
            Wrong("It shrinks, for less flows in than before", "cyc.stock-mirrors-flow"),
            Wrong("It stays as it is, for inflow and outflow are both steady now", "cyc.steady-flows"),
            Wrong("That depends on how large the stock is", "cyc.stock-needed"),
        )
        return choice(draft, "It goes on growing, but more slowly", wrong, self.catalogue, fact=then, salt=self.subject.id)

    def after_years(self) -> Made:
        """By how much a stock grows while inflow and outflow stay just as they are."""
        if (reservoir := self.growing()) is None:
            return Rejected("after_years", NO_GROWTH)
        inflow, outflow = self.fact(reservoir.id, "inflow"), self.fact(reservoir.id, "outflow")
        years = stated("years", "Years", Amount(value=float(YEARS), written=YEARS), unit("yr"))
        given = {"years": years, "inflow": inflow, "outflow": outflow}
        gain = computed("gain", "Gain", GAIN, given, unit(self.record.units.stock), figures=inflow.figures)
        draft = Draft(
            id="after_years",
            prompt=(
                f"{sentence(named(reservoir.label))} gains {inflow.shown_exactly} and loses {outflow.shown_exactly}. By how much does its stock grow in "
                f"{YEARS} years while inflow and outflow stay unchanged?"
            ),
            solution=(
                f"Steady flows do not mean a steady stock: it gains {self.fact(reservoir.id, 'balance').shown_exactly}, "
                f"which is {gain.shown_exactly} in {YEARS} years."
            ),
        )
        return number_entry(
            draft, gain, given | {"balance": self.fact(reservoir.id, "balance")},
            (
                Mistake("cyc.steady-flows", "0 * inflow", "taking steady flows for a steady stock"),
                Mistake("cyc.one-year", "inflow - outflow", "counting a single year"),
                Mistake("carb.no-removal", "years * inflow", "leaving out what flows out"),
                Mistake("nit.budget-add", "years * (inflow + outflow)", "adding inflow and outflow"),
            ),
            self.catalogue, otherwise="What does the stock gain in one year? And in each of the others?", kept=(years.id,),
        )  # fmt: skip

    def yearly_share(self) -> Made:
        """By what part of itself a stock shrinks in a year; where one grows, `after_years` asks for the same difference."""
        if (reservoir := self.shrinking()) is None:
            return Rejected("yearly_share", "no stock grows or shrinks by fluxes that are all stated as single numbers")
        given = {name: self.fact(reservoir.id, name) for name in ("stock", "inflow", "outflow")}
        right = computed("yearly_share", "Loss of a year, of the stock", YEARLY, given, unit("percent/yr"), figures=given["outflow"].figures)
        stock, inflow, outflow = (fact.shown_exactly for fact in given.values())
        draft = Draft(
            id="yearly_share",
            prompt=f"{sentence(named(reservoir.label))} holds {stock}. In a year it gains {inflow} and loses {outflow}. By what percentage of its stock does it shrink in a year?",
            solution=f"What is lost on balance, of what is there: ({outflow} − {inflow}) ÷ {stock} = {right.shown}.",
            hints=("How much less is there after a year? Of which whole is that a part?", "(Outflow less inflow) ÷ stock = ?"),
        )
        return number_entry(
            draft, right, given,
            (
                Mistake("cyc.outflow-is-loss", "outflow / stock", "leaving out what flows in"),
                Mistake("nit.budget-add", "(inflow + outflow) / stock", "adding inflow and outflow"),
                Mistake("carb.pct-whole", "(outflow - inflow) / stock / 100", "leaving out the factor 100"),
            ),
            self.catalogue, otherwise="How much less is there after a year? Of which whole is that a part?",
        )  # fmt: skip

    def shortest_time(self) -> Made:
        """The least turnover time of a reservoir of which stock and outflow are known as ranges only."""
        ranged = [r for r in self.record.reservoirs if self._is_range(r.id, "stock") and self._is_range(r.id, "outflow") and fluxes_in(self.record, r.id)]
        if not ranged:
            return Rejected("shortest_time", "no reservoir has a range of stock and a range of outflow")
        reservoir = min(ranged, key=lambda r: len(fluxes_out(self.record, r.id)))
        stock, outflow = self.fact(reservoir.id, "stock"), self.fact(reservoir.id, "outflow")
        given = {
            "least_stock": _end("least_stock", "Least stock", stock, stock.low), "most_stock": _end("most_stock", "Most stock", stock, stock.high),
            "least_outflow": _end("least_outflow", "Least outflow", outflow, outflow.low), "most_outflow": _end("most_outflow", "Most outflow", outflow, outflow.high),
        }  # fmt: skip
        time = computed("", "Shortest turnover time", SHORTEST, given, unit("yr"), figures=stock.figures)
        draft = Draft(
            id="shortest_time",
            prompt=(
                f"{sentence(named(reservoir.label))} holds between {given['least_stock'].shown_exactly} and {given['most_stock'].shown_exactly}; "
                f"between {given['least_outflow'].shown_exactly} and {given['most_outflow'].shown_exactly} leaves it. "
                "What is the shortest that its turnover time can be?"
            ),
            solution=(
                "It turns over fastest if least is there and most flows out: "
                f"{given['least_stock'].shown_exactly} ÷ {given['most_outflow'].shown_exactly} = {time.shown}."
            ),
        )
        return number_entry(
            draft, time, given,
            (
                Mistake("cyc.range-ends", "least_stock / least_outflow", "taking the least of both ranges"),
                Mistake("cyc.range-ends", "most_stock / most_outflow", "taking the most of both ranges"),
                Mistake("cyc.range-ends", "most_stock / least_outflow", "looking for the longest time", "The time is shortest where least is there and most flows out."),
                Mistake("carb.residence-inverse", "most_outflow / least_stock", "dividing the outflow by the stock"),
            ),
            self.catalogue, otherwise="Which end of the stock, and which end of the outflow, makes the stock turn over fastest?",
        )  # fmt: skip

    def _is_range(self, part: str, name: str) -> bool:
        fact = self.fact(part, name)
        return fact.is_number and fact.low is not None and fact.high is not None and fact.low > 0


def _end(fact_id: str, name: str, fact: Fact, end: float | None) -> Fact:
    """One end of a range as a number of its own, with the digits that the record gives it."""
    assert end is not None
    return Fact(id=fact_id, name=name, value=float(end), unit=fact.unit, figures=fact.figures, written=str(getattr(end, "text", "")))
