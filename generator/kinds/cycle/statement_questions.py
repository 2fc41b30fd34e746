"""Statements on a cycle, of which some hold: to be checked against its diagram."""

from __future__ import annotations

from collections.abc import Container, Iterator
from itertools import combinations

from generator.kind import in_sentence
from generator.kinds.cycle.asking import Asking, ends, listed, named, plainly_less, summed, told
from generator.kinds.cycle.budget_facts import fluxes_out
from generator.kinds.cycle.record import Flux, Reservoir
from generator.quantities import shown
from generator.quantities.text import sentence
from generator.questions.claims import DO_NOT, HOLD, Claim, which_hold
from generator.questions.making import Draft, drawn
from generator.questions.question import Made, Needs

TIMES_APART = 1.2
BOTH_SIDES = "Add up the arrows that end at the box, then those that start there, and compare the two sums."
OF_ALL = "Divide this flux by all that leaves the box, and compare with 50 %."
CHECK = (
    "Take one statement at a time, and find the boxes that it names.",
    "An arrow starts where matter leaves and ends where it arrives; add up all arrows on one side of a box before you compare.",
)


class StatementQuestions(Asking):
    """Whether a statement holds follows from the numbers, wherever in their ranges these are."""

    def statements(self, told_elsewhere: Container[Reservoir | None] = (), outflows: bool = True) -> Made:
        """What another prompt tells to gain and lose is left out, and the outflows where another question compares them."""
        sorts = (
            (self._budgets(told_elsewhere), 2), (self._shares(), 2), (self._outflows() if outflows else (), 1), (self._passing(), 1), (self._inputs(), 1),
            (self._detours(), 1),
        )  # fmt: skip
        claims = [claim for sort, most in sorts for claim in drawn(sort, self.subject.id, "statements")[:most]]
        if len(claims) <= HOLD + DO_NOT:  # what a single look tells stands back
            claims += drawn(self._arrows(), self.subject.id, "statements")[:1]
        draft = Draft(
            id="statements", needs=Needs.DATA, hints=CHECK, prompt="Which of these statements hold? Check each against the diagram.",
            solution="",
        )  # fmt: skip
        return which_hold(draft, claims, self.catalogue, salt=self.subject.id)

    def _budgets(self, told_elsewhere: Container[Reservoir | None] = ()) -> Iterator[Claim]:
        for reservoir in (one for one in self.record.reservoirs if one not in told_elsewhere):
            label, into, out = sentence(named(reservoir.label)), self.inflow_ends(reservoir), self.outflow_ends(reservoir)
            inflow, outflow = (told(self.fact(reservoir.id, name)) for name in ("inflow", "outflow"))
            because = f"{label} gains {inflow} and loses {outflow}."
            if not into[1] or not out[1] or inflow == outflow:
                continue
            gains, loses = f"{label} gains more than it loses", f"{label} loses more than it gains"
            if plainly_less(out, into):
                yield Claim(gains, loses, because, "cyc.arrow-backwards", instead=BOTH_SIDES)
            elif plainly_less(into, out):
                yield Claim(loses, gains, because, "cyc.arrow-backwards", instead=BOTH_SIDES)

    def _outflows(self) -> Iterator[Claim]:
        """Two reservoirs of which the smaller one passes more on."""
        for pair in combinations(self.record.reservoirs, 2):
            small, large = sorted(pair, key=lambda reservoir: ends(reservoir.stock)[1])
            if not plainly_less(ends(small.stock), ends(large.stock)) or not plainly_less(self.outflow_ends(large), self.outflow_ends(small), TIMES_APART):
                continue
            flows = [f"{told(self.fact(one.id, 'outflow'))} leaves {named(one.label)}" for one in (small, large)]
            less, more = named(small.label), named(large.label)
            yield Claim(
                f"More {self.matter} leaves {less} in a year than leaves {more}", f"More {self.matter} leaves {more} in a year than leaves {less}",
                f"{flows[0]}, and {flows[1]}.", "cyc.stock-is-flow",
            )  # fmt: skip

    def _passing(self) -> Iterator[Claim]:
        """Reservoirs that pass on more in a year than they hold at a time."""
        for reservoir in self.record.reservoirs:
            if plainly_less(ends(reservoir.stock), self.outflow_ends(reservoir), TIMES_APART):
                stock, outflow = (told(self.fact(reservoir.id, name)) for name in ("stock", "outflow"))
                name = named(reservoir.label)
                yield Claim(
                    f"More {self.matter} leaves {name} in a year than it holds at a time", f"{sentence(name)} holds more {self.matter} at a time than leaves it in a year",
                    f"It holds {stock}, and {outflow} leaves it.", "cyc.stock-is-flow", instead="Compare the number in the box with the sum of the arrows that start there.",
                )  # fmt: skip

    def _inputs(self) -> Iterator[Claim]:
        outside = set(self.record.outside)
        entering = [flux for flux in self.record.fluxes if flux.start in outside and flux.end not in outside]
        people, nature = (summed(ends(flux.rate) for flux in entering if flux.cause == cause) for cause in ("people", "nature"))
        if any(flux.cause == "both" for flux in entering) or not people[1] or not nature[1]:
            return
        more_by_people = f"People bring more {self.matter} in from outside than nature does"
        more_by_nature = f"Nature brings more {self.matter} in from outside than people do"
        by = {cause: listed(told(self.fact(flux.id, "rate")) for flux in entering if flux.cause == cause) for cause in ("people", "nature")}
        because = f"People bring in {by['people']}, nature {by['nature']}."
        if plainly_less(nature, people):
            yield Claim(more_by_people, more_by_nature, because, "cyc.cause-overlooked")
        elif plainly_less(people, nature):
            yield Claim(more_by_nature, more_by_people, because, "cyc.cause-overlooked")

    def _arrows(self) -> Iterator[Claim]:
        """Ways that matter goes in one direction only."""
        linked = {(flux.start, flux.end): flux for flux in self.record.fluxes}
        for flux in linked.values():
            if (flux.end, flux.start) not in linked and flux.start != flux.end and not self._tells(flux):
                start, end = self.names[flux.start], self.names[flux.end]
                because = f"The arrow of {in_sentence(flux.label)} starts at {named(start)} and ends at {named(end)}."
                yield Claim(self._goes(start, end), self._goes(end, start), because, "cyc.arrow-backwards", seen=True)

    def _goes(self, start: str, end: str) -> str:
        return f"An arrow leads from {named(start)} to {named(end)}"

    def _tells(self, flux: Flux) -> bool:
        """Whether its name says already where it leads."""
        words = set(flux.label.casefold().split())
        return any(words & set(self.names[end].casefold().replace(",", "").split()) for end in (flux.start, flux.end))

    def _detours(self) -> Iterator[Claim]:
        """Two reservoirs that are linked by way of a third one only."""
        ids = {reservoir.id for reservoir in self.record.reservoirs}
        linked = {(flux.start, flux.end) for flux in self.record.fluxes}
        for start, end in sorted((a, b) for a in ids for b in ids if a != b and (a, b) not in linked):
            between = [self.names[one] for one in self.names if (start, one) in linked and (one, end) in linked]
            if between:
                ends_at = f"from {named(self.names[start])} to {named(self.names[end])}"
                through = f"a way of two arrows goes through {named(between[0])}" if len(between) == 1 else f"ways of two arrows go through {listed(named(one) for one in between)}"
                yield Claim(f"No arrow leads straight {ends_at}", f"An arrow leads straight {ends_at}", f"There is no such arrow; {through}.", "cyc.straight", seen=True)

    def _shares(self) -> Iterator[Claim]:
        """Where the largest flux is plainly more, or plainly less, than half of what leaves a reservoir."""
        for reservoir in self.record.reservoirs:
            fluxes = fluxes_out(self.record, reservoir.id)
            for flux in sorted(fluxes, key=lambda flux: ends(flux.rate)[1])[-1:] if len(fluxes) > 1 else ():
                rest = summed(ends(other.rate) for other in fluxes if other is not flux)
                of = f"half of what leaves {named(reservoir.label)} goes to {named(self.names[flux.end])}"
                if sum(other.end == flux.end for other in fluxes) > 1:
                    continue
                part, whole = self.fact(flux.id, "rate"), self.fact(reservoir.id, "outflow")
                if not (part.is_number and whole.is_number and whole.number):
                    continue
                is_range = part.low is not None or whole.low is not None
                share = "" if is_range else f": {shown.number(100 * part.number / whole.number)} %"
                because = f"{flux.label} takes {told(part)} of {told(whole)}{share}."
                more, less = f"More than {of}", f"Less than {of}"
                if plainly_less(rest, ends(flux.rate), TIMES_APART):
                    because += f" That is at least {ends(flux.rate)[0]:g}, and the other arrows carry at most {rest[1]:g}." if is_range else ""
                    yield Claim(more, less, because, "cyc.wrong-whole", instead=OF_ALL)
                elif plainly_less(ends(flux.rate), rest, TIMES_APART):
                    because += f" That is at most {ends(flux.rate)[1]:g}, and the other arrows carry at least {rest[0]:g}." if is_range else ""
                    yield Claim(less, more, because, "cyc.share-of-rest", instead=OF_ALL)
