"""Questions that ask for an order: the way of matter along the arrows, and reservoirs by how long their stocks last."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice, pairwise

from generator.kinds.cycle.asking import Asking, ends, named, plainly_less
from generator.kinds.cycle.record import Flux, Reservoir
from generator.quantities.fact import Fact
from generator.questions.making import FEWEST_STEPS, Draft, drawn, ordering
from generator.questions.question import Made, Needs, Rejected

LONGEST_WAY = 6
MOST_WAYS = 2000
"""Of a cycle in which everything is linked with everything; no more are looked at."""
TIMES_APART = 1.5
"""Times that differ by less are not asked to be put in order."""
NO_WAY = f"no way along {FEWEST_STEPS} arrows or more can be walked in one order only"
TOO_FEW = f"fewer than {FEWEST_STEPS} reservoirs have stocks that last for times that are plainly apart"
AS_STOCKS = "the stocks run out in the order of their sizes, so that no outflow is needed"
KEEP = " Where two start at one box, take first the flux after which the others lead back to that box."

Way = tuple[Flux, ...]


class OrderQuestions(Asking):
    """Only orders that are forced: by the ends of the arrows, or by numbers that are plainly apart."""

    def way(self) -> Made:
        """The fluxes that matter takes one after the other."""
        ways = [way for way in islice(self._ways(), MOST_WAYS) if len(walks(way)) == 1]
        if not ways:
            return Rejected("way", NO_WAY)
        way = max(drawn(ways, self.subject.id, "way"), key=self._worth_walking)
        start, end = named(self.names[way[0].start]), named(self.names[way[-1].end])
        boxes = " → ".join([self.names[way[0].start], *(self.names[flux.end] for flux in way)])
        round_ = "back to" if start == end else "to"
        draft = Draft(
            id="way", needs=Needs.DATA,
            prompt=f"Follow the arrows from {start} {round_} {end}, along each of these fluxes once. In which order do you pass them?",
            solution=f"Each arrow starts where the one before ends: {boxes}.",
            hints=(
                f"Begin at {start}: which of these fluxes starts there?",
                f"See where its arrow ends, and go on with the flux that starts at that box.{KEEP if _repeated(way) else ''}",
            ),
        )  # fmt: skip
        said = {flux.label: self._goes_on(way, at) for at, flux in enumerate(way)}
        return ordering(
            draft, [flux.label for flux in way], starts_with=f"The way begins at {start}: {_which(way, way[0].start)}",
            leads_on=said.__getitem__, salt=self.subject.id,
        )  # fmt: skip

    def _goes_on(self, way: Way, at: int) -> str:
        """What to say of another flux behind this one; at a fork one that starts at the right box may have been taken too early."""
        box = way[at].end
        return f"“{way[at].label}” ends at {named(self.names[box])}: {_which(way[at + 1 :], box)}"

    def _ways(self) -> Iterator[Way]:
        """Every way along the arrows that takes none of them twice and no two of one name."""
        def longer(way: Way) -> Iterator[Way]:
            if len(way) >= FEWEST_STEPS:
                yield way
            if len(way) < LONGEST_WAY:
                labels = {flux.label for flux in way}
                for flux in self.record.fluxes:
                    if flux.start == way[-1].end and flux.label not in labels:
                        yield from longer((*way, flux))

        for first in self.record.fluxes:
            yield from longer((first,))

    def _worth_walking(self, way: Way) -> tuple[bool, int, int]:
        """A way from a source to where matter leaves tells most, or one round; then one that meets no box twice, about five arrows long."""
        outside, start, end = set(self.record.outside), way[0].start, way[-1].end
        fed = {flux.end for flux in self.record.fluxes} - outside
        whole = start not in outside if start == end else start not in fed and end in outside
        return whole, -_repeated(way), -abs(len(way) - 5)

    def stays(self) -> Made:
        """Reservoirs by stock over outflow; left out where the ranges do not let them be told apart."""
        timed = [reservoir for reservoir in self.record.reservoirs if self._time(reservoir).is_number and ends(reservoir.stock)[1] > 0]
        rising = sorted(timed, key=lambda reservoir: self._time(reservoir).number)
        apart = all(plainly_less(self.time_ends(one), self.time_ends(other), TIMES_APART) for one, other in pairwise(rising))
        if len(rising) < FEWEST_STEPS or not apart:
            return Rejected("stays", TOO_FEW)
        if rising == sorted(timed, key=lambda reservoir: ends(reservoir.stock)[1]):
            return Rejected("stays", AS_STOCKS)
        times = {reservoir.label: self._time(reservoir).shown for reservoir in rising}
        draft = Draft(
            id="stays", needs=Needs.BOTH,
            prompt="Suppose that nothing flows into these stocks any more, while each goes on losing as much a year as it does now. In which order do they run out? Begin with the one that runs out first.",
            solution=f"Stock divided by outflow: {'; '.join(f'{label} {time}' for label, time in times.items())}.",
            hints=(
                "A large stock does not last if much of it leaves in a year.",
                "Divide the stock of each by what flows out of it in a year, all arrows together, and begin with the smallest result.",
            ),
        )  # fmt: skip
        return ordering(
            draft, [reservoir.label for reservoir in rising], starts_with="Look for a small stock from which much flows out in a year.",
            leads_on=lambda label: f"“{label}” would last for {times[label]}. Divide the other stocks by their outflows: which result comes next?",
            salt=self.subject.id,
        )  # fmt: skip

    def _time(self, reservoir: Reservoir) -> Fact:
        return self.fact(reservoir.id, "turnover_time")


def _which(left: Way, box: str) -> str:
    """How to go on from a box with the fluxes that are left, in the order of the way."""
    from_here = [flux for flux in left if flux.start == box]
    if len(from_here) < 2:
        return "look for the flux that starts there."
    first, last = from_here[0], from_here[-1]
    return f"“{first.label}” and “{last.label}” both start there. After “{first.label}” the way comes back to this box, so that one comes first; “{last.label}” leads on."


def _repeated(way: Way) -> int:
    """How many boxes the way meets again, but for its start where it leads round."""
    met = [way[0].start, *(flux.end for flux in way)]
    return len(met) - len(set(met)) - (met[0] == met[-1])


def walks(way: Sequence[Flux]) -> list[Way]:
    """The orders in which these fluxes can be walked from the start of the first one."""
    def longer(walk: Way, left: Way) -> Iterator[Way]:
        if not left:
            yield walk
        for flux in left:
            if flux.start == (walk[-1].end if walk else way[0].start):
                yield from longer((*walk, flux), tuple(other for other in left if other is not flux))

    return list(longer((), tuple(way)))
