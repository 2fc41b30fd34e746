"""Questions on what stocks do once something changes, or as far as ranges tell: which grow, which shrink, where they settle."""

from __future__ import annotations

import math

from generator.kinds.cycle.asking import Asking, Ends, ends, named, plainly_less, summed
from generator.kinds.cycle.budget_facts import fluxes_in, fluxes_out, significant_figures
from generator.kinds.cycle.record import Flux, Reservoir
from generator.quantities import shown
from generator.quantities.amount import Amount
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed, stated
from generator.quantities.text import sentence
from generator.quantities.units import unit
from generator.questions.fresh import DRAWS, fresh_fact
from generator.questions.making import Draft, Wrong, choice, drawn, matching, number_entry
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Needs, Pair, Rejected
from generator.questions.supposed import SAID

GROWS, SHRINKS, STAYS = 1, -1, 0
SAYS = {GROWS: "Its stock grows", SHRINKS: "Its stock shrinks", STAYS: "Its stock stays as it is"}
SETTLES = Expression("stock * inflow / outflow")
MORE = 1.25
"""How many times the inflow grows before a number is drawn."""
SHORTEST, LONGEST = 0.5, 1000.0
"""Turnover times [yr] of stocks of which it is sensible to ask where they settle."""
FIGURES = 2


class ChangeQuestions(Asking):
    """Asked only where numbers, wherever in their ranges they lie, leave one answer."""

    def if_stopped(self) -> Made:
        """What three stocks do when one flux stops: it takes the sums of both sides, and not the ends of the arrow alone.

        A flux that a scenario of the page changes is left out, and one that would empty a stock within a year.
        """
        told = {change.flux for scenario in self.record.scenarios for change in scenario.change}
        fluxes = [flux for flux in drawn(self.record.fluxes, self.subject.id, "if_stopped") if flux.id not in told and flux.rate.value]
        found = [(flux, picked) for flux in fluxes if (picked := self._picked(flux))]
        if not found:
            return Rejected("if_stopped", "no flux would leave one stock growing, one shrinking and one as it is")
        flux, picked = max(found, key=lambda one: sum(then != _by_arrow(one[0], reservoir) for then, reservoir in one[1].items()))
        draft = Draft(
            id="if_stopped", needs=Needs.DATA,
            prompt=f"Suppose that the flux “{flux.label}” stopped, and that all others went on as in the diagram. Match each reservoir with what its stock does then.",
            solution=f"Without this flux {'; '.join(self._budget(reservoir, flux) for reservoir in picked.values())}.",
            hints=(
                "Leave this arrow out. Then add up, for each box, the arrows that end there and those that start there.",
                "A stock grows where more comes in than goes out, whether or not the flux that stopped was one of its own.",
            ),
        )  # fmt: skip
        pairs = [Pair(reservoir.label, SAYS[then], f"Without this flux {self._budget(reservoir, flux)}.") for then, reservoir in picked.items()]
        return matching(draft, pairs, salt=self.subject.id)

    def _picked(self, flux: Flux) -> dict[int, Reservoir]:
        """For each direction a reservoir, best one for which the ends of the arrow alone would tell another; empty where one is missing, or none has lost a flux."""
        then = {reservoir.id: self._direction(reservoir, flux) for reservoir in self.record.reservoirs}
        picked = {}
        for direction in (GROWS, SHRINKS, STAYS):
            able = [reservoir for reservoir in self.record.reservoirs if then[reservoir.id] == direction]
            if not able:
                return {}
            picked[direction] = min(able, key=lambda reservoir: _by_arrow(flux, reservoir) == direction)
        return picked if {flux.start, flux.end} & {reservoir.id for reservoir in picked.values()} else {}

    def _without(self, reservoir: Reservoir, stopped: Flux) -> tuple[Ends, Ends]:
        """What flows in and out once a flux has stopped."""
        into, out = (
            [ends(flux.rate) for flux in fluxes if flux is not stopped]
            for fluxes in (fluxes_in(self.record, reservoir.id), fluxes_out(self.record, reservoir.id))
        )  # fmt: skip
        return summed(into), summed(out)

    def _direction(self, reservoir: Reservoir, stopped: Flux) -> int | None:
        """Of the stock once a flux has stopped; None where it cannot be told, or where the stock would be gone within a year."""
        into, out = self._without(reservoir, stopped)
        if reservoir.stock.value is not None and not out[1] - into[0] < ends(reservoir.stock)[0]:
            return None
        if plainly_less(out, into) and not math.isclose(out[1], into[0]):
            return GROWS
        if plainly_less(into, out) and not math.isclose(into[1], out[0]):
            return SHRINKS
        is_single = into[0] == into[1] and out[0] == out[1]
        return STAYS if is_single and math.isclose(into[0], out[0]) else None

    def _budget(self, reservoir: Reservoir, stopped: Flux) -> str:
        gains, loses = (self._range(one) for one in self._without(reservoir, stopped))
        return f"{named(reservoir.label)} gains {gains} and loses {loses}"

    def _range(self, of: Ends) -> str:
        least, most = (shown.without_zeros(shown.number(end, max(significant_figures(self.record), shown.whole_digits(end) + 1)), 0) for end in of)
        return unit(self.record.units.flux).after(least if math.isclose(*of) else f"{least} to {most}")

    def range_balance(self) -> Made:
        """Whether a stock grows, where the ranges of what it gains and loses overlap; drawn, since the page tells the range of the difference."""
        for reservoir in self.record.reservoirs:
            into, out = self.inflow_ends(reservoir), self.outflow_ends(reservoir)
            if all(0 < low < high < math.inf for low, high in (into, out)) and into[0] < out[1] and out[0] < into[1]:
                for attempt in range(DRAWS):
                    if found := self._drawn_ends((*into, *out), f"{self.subject.id}/range_balance/{attempt}"):
                        return self._range_balance(reservoir, found)
        return Rejected("range_balance", "no reservoir gains and loses within ranges that overlap")

    def _drawn_ends(self, all_ends: tuple[float, ...], salt: str) -> tuple[str, ...]:
        """Four ends as numbers for which each of the wrong reasons is true in itself; empty where the draw is none."""
        of = unit(self.record.units.flux)
        facts = [stated(f"end_{n}", "End", Amount(value=end, written=f"{shown.read(shown.number(end, FIGURES)):g}"), of) for n, end in enumerate(all_ends)]
        fresh = [new for fact in facts if (new := fresh_fact(fact, f"{salt}/{fact.id}"))]
        if len(fresh) < len(facts):
            return ()
        least_in, most_in, least_out, most_out = (fact.number for fact in fresh)
        is_range = least_out < least_in < most_in < most_out
        return tuple(fact.shown_number for fact in fresh) if is_range and least_in + most_in > 1.1 * (least_out + most_out) else ()

    def _range_balance(self, reservoir: Reservoir, found: tuple[str, ...]) -> Made:
        of, name = unit(self.record.units.flux), named(reservoir.label)
        least_in, most_in, least_out, most_out = found
        draft = Draft(
            id="range_balance", needs=Needs.DATA, supposed=True,
            prompt=f"{SAID} {sentence(name)} gains {least_in} to {of.after(most_in)} and loses {least_out} to {of.after(most_out)}. Nobody knows more exactly. What can be said of its stock?",
            solution=f"If it gains {most_in} and loses {least_out}, the stock grows. If it gains {least_in} and loses {most_out}, it shrinks. Both are possible.",
            hints=("Try the most that it can gain with the least that it can lose.", "Then try the least that it can gain with the most that it can lose."),
        )  # fmt: skip
        wrong = (
            Wrong("It grows, for the middle of its gains is larger", "cyc.range-middle"),
            Wrong("It shrinks, for the most that it loses is larger", "cyc.range-middle", "It may also lose much less than that, and gain more."),
            Wrong("It stays as it is, for the two ranges overlap", "cyc.range-overlap"),
        )
        return choice(draft, "It cannot be told, for the two ranges overlap", wrong, self.catalogue, salt=self.subject.id)

    def new_steady(self) -> Made:
        """Where a stock settles whose inflow has grown for good, if its outflow follows it in proportion; its numbers are chosen."""
        timed = {}
        for reservoir in self.record.reservoirs:
            fluxes, stock, outflow = fluxes_out(self.record, reservoir.id), _middle(ends(reservoir.stock)), _middle(self.outflow_ends(reservoir))
            follows = bool(fluxes) and not any(flux.constant for flux in fluxes) and reservoir.stock.value is not None
            if follows and fluxes_in(self.record, reservoir.id) and 0 < outflow < math.inf and SHORTEST <= stock / outflow <= LONGEST:
                timed[reservoir.id] = stock / outflow
        if not timed:
            return Rejected("new_steady", "no stock of which stock and outflow are known follows its inflow within a few hundred years")
        reservoir = next(one for one in self.record.reservoirs if one.id == min(timed, key=lambda name: timed[name]))
        return self._settles(reservoir, _middle(ends(reservoir.stock)), _middle(self.outflow_ends(reservoir)))

    def _settles(self, reservoir: Reservoir, stock: float, outflow: float) -> Made:
        amounts = {"stock": (stock, self.record.units.stock), "inflow": (MORE * outflow, self.record.units.flux), "outflow": (outflow, self.record.units.flux)}
        given = {name: _stated(name, value, label) for name, (value, label) in amounts.items()}
        right = computed("new_steady", "Stock at which it settles", SETTLES, given, unit(self.record.units.stock), figures=3)
        holds, more, out = (fact.shown_exactly for fact in given.values())
        draft = Draft(
            id="new_steady",
            prompt=(
                f"{sentence(named(reservoir.label))} holds {holds}, and {out} flows through it. The inflow rises to {more} for good; "
                "the outflow stays in proportion to the stock. At what stock does it settle?"
            ),
            solution=(
                f"The stock grows until as much leaves as comes in: {more}. For that the stock must be larger in the same proportion as the flow: "
                f"{holds} × {more} ÷ {out} = {right.shown}."
            ),
            hints=("A stock settles where as much leaves as comes in. How large must the outflow become?", "Old stock × new inflow ÷ old outflow = ?"),
        )
        return number_entry(
            draft, right, given,
            (
                Mistake("cyc.steady-flows", "stock", "leaving the stock as it is", "More comes in than leaves at first, so the stock grows until the outflow has caught up."),
                Mistake("cyc.one-year", "stock + (inflow - outflow)", "adding a whole year's gain at the first rate", "The gain gets less as the stock grows, and goes on until as much leaves as comes in."),
                Mistake("carb.residence-inverse", "stock * outflow / inflow", "putting the old flow above the line", "That way round more inflow would make the stock smaller. Put the new flow above the line."),
            ),
            self.catalogue, otherwise="How large must the outflow become? And what stock gives such an outflow?",
        )  # fmt: skip


def _by_arrow(flux: Flux, reservoir: Reservoir) -> int:
    """What the ends of the arrow that stops would make one think."""
    return GROWS if flux.start == reservoir.id else SHRINKS if flux.end == reservoir.id else STAYS


def _middle(of: Ends) -> float:
    return (of[0] + of[1]) / 2


def _stated(name: str, value: float, label: str) -> Fact:
    """A number that is chosen, with few figures."""
    written = f"{shown.read(shown.number(value, FIGURES + 1)):.10g}"
    return stated(name, name.capitalize(), Amount(value=float(written), written=written), unit(label))
