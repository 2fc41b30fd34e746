"""Questions from what a record says in words: explanation chains, adaptations, actions and their drawbacks, terms.

Their ids hold a hyphen, which no author's id can, so the two never meet.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from generator.questions.item_writing import flaws, stems
from generator.questions.making import FEWEST_PAIRS, FEWEST_STEPS, MOST_STEPS, Draft, Wrong, as_option, choice, drawn, matching, ordering
from generator.questions.misconception import Catalogue
from generator.questions.question import Made, Matching, Needs, Pair, Question
from generator.records.parts import Adaptation, Explanation, HumanImpact

MOST_PAIRS = 4
SHORTEST = 4
"""Letters by which two words are seen to be of one stem."""
MOST_MATCHES = 2
"""Of one record: its author's own, then features, actions and words, in this order."""
FIRST_STEP = "Look for the step that waits for no other."
ORDER_HINTS = ("Find the end first: which step is what is to be explained?", "Then ask of each step what must have happened just before it.")


def next_step(text: str) -> str:
    """What to say where another step than the next was put behind this one."""
    return f"Which step can only happen after this one: “{text.rstrip('.')}”?"


@dataclass(frozen=True)
class Term:
    """A word of the subject and what it means."""

    id: str
    word: str
    means: str
    everyday: tuple[str, ...] = ()
    """Words by which students would look for it."""


@dataclass(frozen=True)
class Qualitative:
    """What the questions of one record are made with."""

    catalogue: Catalogue
    salt: str
    """The record's id, from which every order is drawn."""
    filled: Callable[[str], str]
    """Puts facts into a text."""

    def questions(
        self, explanations: Sequence[Explanation], adaptations: Sequence[Adaptation], people: Sequence[HumanImpact], terms: Sequence[Term],
        matched: int = 0,
    ) -> tuple[Question, ...]:  # fmt: skip
        """Those that come out fair and leave no doubt, at most one of each sort, so that none of them grows stale.

        An author who writes matches (`matched` of them) knows best which features are worth it: these are not matched again.
        """
        order = _first_fair(self._orders(explanations))
        unordered = [one for one in explanations if order is None or order.id != f"order-{one.id}"]
        sorts = (self._next_steps(unordered), self._benefits(() if matched else adaptations), self._drawbacks(people), self._terms(terms))
        found = (order, *map(_first_fair, sorts))
        asked = [item for item in found if item is not None]
        matches = [item for item in asked if isinstance(item, Matching)]
        return tuple(item for item in asked if item not in matches[max(0, MOST_MATCHES - matched) :])

    def _orders(self, explanations: Sequence[Explanation]) -> Iterator[Made]:
        """Only of a chain whose author says that each step waits for the one before."""
        for explanation in explanations:
            if explanation.joined != "step_by_step" or not FEWEST_STEPS <= len(explanation.chain) <= MOST_STEPS:
                continue
            says = [self.filled(idea.says) for idea in explanation.chain]
            draft = Draft(
                id=f"order-{explanation.id}", needs=Needs.KNOWLEDGE, solution=" ".join(says),
                prompt=f"Put the steps in order to explain {self.filled(explanation.asks)}.", hints=ORDER_HINTS,
            )  # fmt: skip
            yield ordering(draft, says, starts_with=FIRST_STEP, leads_on=next_step, salt=self.salt)

    def _next_steps(self, explanations: Sequence[Explanation]) -> Iterator[Made]:
        """What follows straight from the first step; the other options come later in the same chain, so all speak of one thing.

        Only of a chain whose author says that each step waits for the one before: of another a later idea may follow as well.
        """
        for explanation in drawn(explanations, self.salt, "next"):
            if explanation.joined != "step_by_step" or len(explanation.chain) < FEWEST_STEPS:
                continue
            first, follows, *later = (self.filled(idea.says) for idea in explanation.chain)
            item = f"next-{explanation.id}"
            draft = Draft(
                id=item, needs=Needs.KNOWLEDGE, solution=f"{first} {follows}",
                prompt=f"A student begins to explain {self.filled(explanation.asks)}: “{first}” Which sentence comes next?",
                hints=("Which of them needs nothing else to have happened before?",),
            )  # fmt: skip
            wrong = [Wrong(said, "ans.step-skipped", f"Before this comes: “{before}”") for before, said in pairwise([follows, *later])]
            yield choice(draft, follows, wrong[:3], self.catalogue, salt=self.salt)

    def _benefits(self, adaptations: Sequence[Adaptation]) -> Iterator[Made]:
        pairs = [
            Pair(f"{as_option(self.filled(one.who))}: {self.filled(one.feature)}", as_option(self.filled(one.benefit)), f"{as_option(self.filled(one.works_by))}.")
            for one in adaptations
        ]  # fmt: skip
        yield from self._matching("benefits-match", "Match each feature with what it is good for.", "Say of each what would go wrong without it.", pairs)

    def _drawbacks(self, people: Sequence[HumanImpact]) -> Iterator[Made]:
        pairs = [
            Pair(as_option(self.filled(action.do)), as_option(self.filled(action.drawback)), self.filled(action.because or f"{as_option(action.works_by)}; ask what that costs, and whom."))
            for impact in people for action in impact.actions
        ]  # fmt: skip
        yield from self._matching("drawbacks-match", "Each action has its price. Match each with its drawback.", "Ask of each action who pays, who loses, and what it cannot do.", pairs)

    def _terms(self, terms: Sequence[Term]) -> Iterator[Made]:
        """A meaning that holds a part of the word would give it away; everyday words say why a pair belongs together."""
        said = [(term, _everyday(term)) for term in terms if not _starts(term.word) & _starts(term.means)]
        pairs = [Pair(as_option(term.word), as_option(term.means), f"In everyday words: {', '.join(words)}.") for term, words in said if words]
        if len(pairs) > MOST_PAIRS:
            yield from self._matching("words-match", "Match each word with its meaning.", "Begin with the words that you are sure of; one meaning is left over.", pairs, "each in other words")

    def _matching(self, item: str, prompt: str, hint: str, pairs: Sequence[Pair], said: str = "each with its reason") -> Iterator[Made]:
        """Up to four pairs whose halves share no word, and where there is another pair its partner, which fits none of them.

        `said` tells what the line beside each pair holds.
        """
        unlike = [p for n, p in enumerate(pairs) if all(p.text != q.text and p.partner.casefold() != q.partner.casefold() for q in pairs[:n])]
        found = drawn(unlike, self.salt, item)
        fair = [pair for pair in found if not stems(pair.text) & stems(pair.partner)]
        if len(fair) < FEWEST_PAIRS:
            return
        left = [pair for pair in found if pair not in fair]
        asked = fair[:MOST_PAIRS] if left else fair[: max(FEWEST_PAIRS, min(MOST_PAIRS, len(fair) - 1))]
        others = [pair.partner for pair in found if pair not in asked][:1]
        draft = Draft(
            id=item, prompt=prompt, needs=Needs.KNOWLEDGE, hints=(hint,),
            solution=f"{'One of the answers fits none of the lines. ' if others else ''}The pairs stand below, {said}.",
        )  # fmt: skip
        yield matching(draft, asked, others, salt=self.salt)


def _starts(text: str) -> set[str]:
    """The first letters of each word, enough to see that windward has to do with wind."""
    return {word[:SHORTEST].casefold() for word in re.findall(rf"[^\W\d_]{{{SHORTEST},}}", text)}


def _everyday(term: Term) -> tuple[str, ...]:
    """Wordings that help a reader who does not know the term: neither abbreviations nor the term itself in longer words."""
    return tuple(words for words in term.everyday if not words.isupper() and not _starts(words) & _starts(term.word))


def _first_fair(sort: Iterator[Made]) -> Question | None:
    """The first that came out and leaves no doubt."""
    return next((item for item in sort if isinstance(item, Question) and not any(flaws(item))), None)
