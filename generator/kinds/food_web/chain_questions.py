"""Questions on chains of a web: which rows of species are chains, in which order a chain is passed, and who eats from one food."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise, permutations

from generator.diagnostics import listed
from generator.kinds.food_web.asking import IN_WORDS, Asking
from generator.kinds.food_web.record import Species
from generator.questions.making import FEWEST_STEPS, Draft, Sound, Wrong, drawn, ordering, several
from generator.questions.question import Made, Needs, Rejected
from generator.science.food_webs import food_chains

LONGEST = 6
"""Species of a chain that is to be put in order."""
MOST_CHAINS = 200
"""Of a web with very many; no more are looked at."""
ROW = 3
"""Species of a row that may be a chain."""
MOST_RIVALS = 3
Chain = tuple[str, ...]


class ChainQuestions(Asking):
    """What the arrows bear out, and nothing besides."""

    def chain_order(self) -> Made:
        """A chain shorter than the longest one, whose length another question asks for; only one order fits its arrows.

        Best one that no explanation of the page goes through.
        """
        found = {chain for chain in self._chains() if FEWEST_STEPS <= len(chain) <= LONGEST and len(chain) <= self.facts["longest_chain"].number}
        longest_first = sorted(drawn(found, self.subject.id, "chain_order"), key=lambda one: (self._is_told(one), -len(one)))[:MOST_CHAINS]
        chain = next((one for one in longest_first if sum(map(self._is_chain, permutations(one))) == 1), None)
        if chain is None:
            return Rejected("chain_order", f"no chain of {FEWEST_STEPS} species or more is shorter than the longest and fits the arrows in one order")
        draft = Draft(
            id="chain_order", needs=Needs.DATA,
            prompt="These form one food chain of the web. In which order does energy pass through them, from the bottom up?",
            solution=f"{self.arrows(chain)}: each arrow points from the eaten to the eater.",
            hints=("Begin with the one that eats nothing: no arrow ends there.", "From each box follow an arrow to one of the boxes that are left."),
        )  # fmt: skip
        return ordering(
            draft, [self.labels[name] for name in chain], starts_with="Begin with a producer, or with dead matter: no arrow ends there.",
            leads_on=lambda label: f"Which of the others does an arrow from “{label}” lead to?", salt=self.subject.id,
        )  # fmt: skip

    def _is_told(self, chain: Chain) -> bool:
        """Whether one explanation names all animals of the chain."""
        texts = (" ".join(idea.says for idea in one.chain).casefold() for one in self.record.explanations)
        return any(all(self.names[name].casefold() in text for name in chain[1:]) for text in texts)

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
