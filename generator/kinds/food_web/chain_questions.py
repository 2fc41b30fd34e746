"""Questions on chains of a web: which rows of species are chains, how many lead from one species to another, and who eats from one food."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from generator.diagnostics import listed
from generator.kinds.food_web.asking import IN_WORDS, Asking
from generator.kinds.food_web.facts import count
from generator.kinds.food_web.record import Species
from generator.quantities.working import Listing
from generator.questions.making import Draft, Sound, Wrong, drawn, number_entry, several
from generator.questions.mistake import Mistake
from generator.questions.question import Made, Needs, Rejected
from generator.science.food_webs import CHAIN_LENGTH, food_chains

FEWEST_CHAINS, MOST_COUNTED = 3, 6
"""Chains between two species that are to be counted."""
IN_LETTERS = {3: "Three", 4: "Four", 5: "Five", 6: "Six"}
ROW = 3
"""Species of a row that may be a chain."""
MOST_RIVALS = 3
Chain = tuple[str, ...]


class ChainQuestions(Asking):
    """What the arrows bear out, and nothing besides."""

    def chains_between(self) -> Made:
        """How many chains lead from one species at the bottom to one above it, where the usual slips give other numbers."""
        able = []
        for bottom in (one for one in self.record.species if not one.eats):
            for end in self.record.species:
                found = [chain for chain in food_chains(self.record.eats, end.id) if chain[0] == bottom.id and len(chain) > ROW - 1]
                if FEWEST_CHAINS <= len(found) <= MOST_COUNTED:
                    able.append((len(found), bottom, end, tuple(found)))
        if not able:
            return Rejected("chains_between", f"no two species are joined by {FEWEST_CHAINS} to {MOST_COUNTED} chains")
        most = max(number for number, *_ in able)
        _, bottom, end, found = drawn([one for one in able if one[0] == most], self.subject.id, "chains_between")[0]
        return self._chains_between(bottom, end, found)

    def _chains_between(self, bottom: Species, end: Species, found: Sequence[Chain]) -> Made:
        start, top = self.names[bottom.id], self.names[end.id]
        right = count("chains_between", f"Food chains from {start} to {top}", len(found), Listing("The chains", tuple(map(self.arrows, found))), CHAIN_LENGTH.id)
        foods = [food for food in self.record.eats[end.id] if food != end.id]
        numbers = {"foods": len(foods), "eaters": len(self.eaters(bottom.id)), "every": len(list(food_chains(self.record.eats, end.id)))}
        draft = Draft(
            id="chains_between", needs=Needs.DATA,
            prompt=f"How many different food chains of this web lead from {start} to {top}? Two chains differ if they do not pass through the same species.",
            solution=f"{IN_LETTERS.get(len(found), str(len(found)))} chains: {'; '.join(map(self.arrows, found))}.",
            hints=(f"Begin at “{bottom.label}”, and follow every arrow that leads away from it.", f"Wherever a way forks, count each branch that reaches “{end.label}”."),
        )  # fmt: skip
        return number_entry(
            draft, right, {"right": right} | {name: count(name, name, number, Listing("", ()), CHAIN_LENGTH.id) for name, number in numbers.items()},
            (
                Mistake("web.all-arrows", "foods", f"counting only the species from which a last step leads to {top}", "More than one chain can come by the same last step, and some come from elsewhere. Follow each way from the start."),
                Mistake("web.one-chain", "eaters", f"counting the arrows that start at {start}", "A chain can fork farther up. Follow each branch to the end."),
                Mistake("web.any-chain", "every", f"counting all chains that end at {top}", f"Some of them begin elsewhere. Count only those from {start}."),
            ),
            self.catalogue, otherwise=f"Write down each way from {start} to {top}, arrow by arrow. Where a way forks, each branch is a chain of its own.",
        )  # fmt: skip

    def _chains(self) -> Iterator[Chain]:
        for name in self.record.eats:
            yield from (tuple(chain) for chain in food_chains(self.record.eats, name))

    def _is_chain(self, row: Chain) -> bool:
        return not self.record.eats[row[0]] and self._follows_arrows(row)

    def _follows_arrows(self, row: Chain) -> bool:
        return all(self.is_eaten_by(food, eater) for food, eater in pairwise(row))

    def chains(self) -> Made:
        """Rows of three species, two of them chains, the others read backwards, with a link left out, or with two eaters side by side."""
        found = [chain for chain in self._chains() if len(chain) >= ROW]
        longer = {chain[: ROW + 1] for chain in found if len(chain) > ROW}
        three = drawn({chain[:ROW] for chain in found}, self.subject.id, "chains")
        backwards = [row[::-1] for row in three[2:] if not self._follows_arrows(row[::-1])]
        skipping = [(*chain[:at], *chain[at + 1 : ROW + 1]) for chain in longer for at in (1, 2)]
        beside = [(food, one, other) for food in self.record.eats if not self.record.eats[food] for one in self.eaters(food) for other in self.eaters(food) if one != other]
        wrong = []
        for rows, idea, because in (
            (backwards, "en.arrow-eats", "This row runs from the eater to the eaten."), (skipping, "web.skipped-link", "Two neighbours of this row have no arrow between them."),
            (beside, "web.side-by-side", "The last two eat from the same food, but not each other."),
        ):  # fmt: skip
            fit = [row for row in drawn(set(rows), self.subject.id, "chains", idea) if not self._follows_arrows(row) and len(set(row)) == ROW]
            wrong += [Wrong(self.arrows(row), idea, because) for row in fit[:1]]
        draft = Draft(
            id="chains", needs=Needs.DATA,
            prompt="Which two of these rows are food chains of this web? Here → stands for “is eaten by”.",
            solution=f"{listed((self.arrows(row) for row in three[:2]), 'and')}: each step is an arrow of the diagram.",
            hints=("Take one step of a row at a time, and look for its arrow in the diagram.", "An arrow of the diagram points from the eaten to the eater."),
        )  # fmt: skip
        return several(draft, [Sound(self.arrows(row), "Each step is an arrow of the diagram.") for row in three[:2]], wrong, self.catalogue, salt=self.subject.id)

    def rivals(self) -> Made:
        """Of a species that shares its food with several others."""
        asked = {one: [other for other in self.record.species if other is not one and self._shared(one, other)] for one in self.record.species}
        able = [one for one, sharing in asked.items() if 2 <= len(sharing) <= MOST_RIVALS]
        if not able:
            return Rejected("rivals", "no species shares its food with two or three others")
        one = drawn(able, self.subject.id, "rivals")[0]
        others = [other for other in self.record.species if other is not one and other not in asked[one] and other.eats]
        name = self.names[one.id]
        draft = Draft(
            id="rivals", needs=Needs.DATA,
            prompt=f"Which {IN_WORDS[len(asked[one])]} of these compete with {name} for food in this web?",
            solution=f"Arrows from the food of {name} also end at {listed((f'“{other.label}”' for other in asked[one]), 'and')}.",
            hints=(f"First find out what {name} eat: look for arrows that end there.", "Then see where else arrows from the same food end."),
        )  # fmt: skip
        right = [Sound(other.label, f"Both eat {self._shared(one, other)}.") for other in asked[one]]
        wrong = [Wrong(other.label, *self._instead(one, other)) for other in self._tempting(one, drawn(others, self.subject.id, "rivals"))]
        return several(draft, right, wrong, self.catalogue, salt=self.subject.id)

    def _tempting(self, one: Species, others: Sequence[Species]) -> Sequence[Species]:
        """Up to three wrong answers, of which one eats the species, and more only where there is no other: few take its hunters for rivals."""
        hunters = [other for other in others if self.is_eaten_by(one.id, other.id)]
        apart = [other for other in others if other not in hunters]
        return [*apart[:2], *hunters, *apart[2:]][:3]

    def _shared(self, one: Species, other: Species) -> str:
        both = [food for food in self.record.eats[one.id] if food in self.record.eats[other.id]]
        return listed((self.names[food] for food in both), "and") if both else ""

    def _instead(self, one: Species, other: Species) -> tuple[str, str]:
        """The wrong idea, and what the other does in place of sharing a food."""
        name = self.names[one.id]
        if self.is_eaten_by(one.id, other.id):
            return "web.enemy-is-rival", f"An arrow leads from “{one.label}” to “{other.label}”: here {name} are the food."
        return "web.no-shared-food", f"Their food is {self.foods_of(other)}, and no arrow from there leads to {name}."
