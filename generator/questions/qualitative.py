"""Questions from what a record says in words: explanation chains, adaptations, actions and their drawbacks, terms.

Their ids hold a hyphen, which no author's id can, so the two never meet.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from generator.questions.making import FEWEST_PAIRS, FEWEST_STEPS, MOST_STEPS, Draft, Wrong, as_option, choice, drawn, matching, ordering
from generator.questions.misconception import Catalogue
from generator.questions.question import Made, Needs, Pair, Question
from generator.records.parts import Adaptation, Explanation, HumanImpact, Idea

MOST_PAIRS = 4
FIRST_STEP = "Look for the step that waits for no other."
MOST_LIKE = 2.2
"""Longest option over shortest: beyond that its length tells which one is right."""


def next_step(text: str) -> str:
    """What to say where another step than the next was put behind this one."""
    return f"Which step can only happen after this one: “{text.rstrip('.')}”?"


@dataclass(frozen=True)
class Term:
    """A word of the subject and what it means."""

    id: str
    word: str
    means: str


@dataclass(frozen=True)
class Qualitative:
    """What the questions of one record are made with."""

    catalogue: Catalogue
    salt: str
    """The record's id, from which every order is drawn."""
    filled: Callable[[str], str]
    """Puts facts into a text."""

    def questions(
        self, explanations: Sequence[Explanation], adaptations: Sequence[Adaptation], people: Sequence[HumanImpact], terms: Sequence[Term]
    ) -> tuple[Question, ...]:
        """Those that come out fair, at most one of each sort, so that none of them grows stale."""
        sorts = (
            self._orders(explanations), self._missing_steps(explanations), self._credits(explanations), self._mechanisms(adaptations),
            self._benefits(adaptations), self._drawbacks(people), self._terms(terms),
        )  # fmt: skip
        found = (next((item for item in sort if isinstance(item, Question)), None) for sort in sorts)
        return tuple(item for item in found if item is not None)

    def _orders(self, explanations: Sequence[Explanation]) -> Iterator[Made]:
        """Only of a chain whose author says that each step waits for the one before."""
        for explanation in explanations:
            if explanation.joined != "step_by_step" or not FEWEST_STEPS <= len(explanation.chain) <= MOST_STEPS:
                continue
            says = [self.filled(idea.says) for idea in explanation.chain]
            draft = Draft(
                id=f"order-{explanation.id}", needs=Needs.KNOWLEDGE, solution=" ".join(says),
                prompt=f"Put the steps in order to explain {self.filled(explanation.asks)}.",
            )  # fmt: skip
            yield ordering(draft, says, starts_with=FIRST_STEP, leads_on=next_step, salt=self.salt)

    def _missing_steps(self, explanations: Sequence[Explanation]) -> Iterator[Made]:
        """The link between two ideas; the other options are true, but belong to other explanations."""
        for explanation in explanations:
            others = [one for one in explanations if one is not explanation]
            if explanation.joined == "together" or len(explanation.chain) < 3:
                continue
            before, link, after = (self.filled(idea.says) for idea in explanation.chain[:3])
            item = f"link-{explanation.id}"
            draft = Draft(
                id=item, needs=Needs.KNOWLEDGE, solution=f"{before} {link} {after}",
                prompt=f"A student explains {self.filled(explanation.asks)}, but leaves out a step: “{before} … {after}” Which sentence closes the gap?",
            )  # fmt: skip
            wrong = [
                Wrong(said, "ans.other-question", f"This belongs to another question: {self.filled(other.asks)}.")
                for other in others for said in self._alike(link, other.chain)[:1]
            ]  # fmt: skip
            yield choice(draft, link, drawn(wrong, self.salt, item)[:3], self.catalogue, salt=self.salt)

    def _alike(self, link: str, ideas: Sequence[Idea]) -> list[str]:
        """The sentences of a chain that are about as long as the link."""
        return [said for idea in ideas if _alike(said := self.filled(idea.says), link)]

    def _credits(self, explanations: Sequence[Explanation]) -> Iterator[Made]:
        """Which answer would earn credit: a mechanism among everyday words."""
        for explanation in drawn(explanations, self.salt, "credit"):
            right = next((text for idea in explanation.chain[1:] for text in idea.accept), None)
            vague = [text for idea in explanation.chain for text in idea.not_enough]
            if right is None:
                continue
            draft = Draft(
                id=f"credit-{explanation.id}", needs=Needs.KNOWLEDGE,
                prompt=f"Students were asked to explain {self.filled(explanation.asks)}. Which of these says what happens and how, and so earns credit?",
                solution=f"“{as_option(self.filled(right))}” names what acts on what.",
            )  # fmt: skip
            near = [Wrong(as_option(self.filled(text)), "ans.vague", "This is not enough.") for text in vague if _alike(text, right)]
            yield choice(draft, as_option(self.filled(right)), near[:3], self.catalogue, salt=self.salt)

    def _mechanisms(self, adaptations: Sequence[Adaptation]) -> Iterator[Made]:
        for one in drawn(adaptations, self.salt, "works"):
            right = as_option(self.filled(one.works_by))
            draft = Draft(
                id="adaptation-works", needs=Needs.KNOWLEDGE, solution=f"{right}. What it is good for: {self.filled(one.benefit)}.",
                prompt=f"{as_option(self.filled(one.who))}: {self.filled(one.feature)}. How does this feature work?",
            )  # fmt: skip
            wrong = [
                Wrong(as_option(self.filled(other.works_by)), "adapt.mixed", f"That is how another feature works: {self.filled(other.feature)}.")
                for other in adaptations if other is not one and _alike(other.works_by, one.works_by)
            ]  # fmt: skip
            purpose = Wrong("It appeared because it was needed", "adapt.purpose")
            yield choice(draft, right, [*wrong[:2], purpose], self.catalogue, salt=self.salt)

    def _benefits(self, adaptations: Sequence[Adaptation]) -> Iterator[Made]:
        pairs = [
            Pair(f"{as_option(self.filled(one.who))}: {self.filled(one.feature)}", as_option(self.filled(one.benefit)), f"{as_option(self.filled(one.works_by))}.")
            for one in adaptations
        ]  # fmt: skip
        yield from self._matching("benefits-match", "Match each feature with what it is good for.", pairs)

    def _drawbacks(self, people: Sequence[HumanImpact]) -> Iterator[Made]:
        pairs = [
            Pair(as_option(self.filled(action.do)), as_option(self.filled(action.drawback)), f"Think what it takes, or takes away: it works so: {self.filled(action.works_by)}.")
            for impact in people for action in impact.actions
        ]  # fmt: skip
        yield from self._matching("drawbacks-match", "Each action has its price. Match each with its drawback.", pairs)

    def _terms(self, terms: Sequence[Term]) -> Iterator[Made]:
        """A meaning that holds the word itself would give it away."""
        fair = [term for term in terms if term.word.casefold().split()[0][:6] not in term.means.casefold()]
        pairs = [Pair(as_option(term.word), as_option(term.means), "Look the word up among the words of this page.") for term in fair]
        yield from self._matching("words-match", "Match each word with its meaning.", pairs)

    def _matching(self, item: str, prompt: str, pairs: Sequence[Pair]) -> Iterator[Made]:
        """Up to four pairs, and where there are more one partner that fits none."""
        unlike = [p for n, p in enumerate(pairs) if all(p.text != q.text and p.partner.casefold() != q.partner.casefold() for q in pairs[:n])]
        picked = drawn(unlike, self.salt, item)[: MOST_PAIRS + 1]
        if len(picked) < FEWEST_PAIRS:
            return
        asked = picked[:-1] if len(picked) > FEWEST_PAIRS else picked
        others = [pair.partner for pair in picked[len(asked) :]]
        draft = Draft(
            id=item, prompt=prompt, needs=Needs.KNOWLEDGE,
            solution=f"{'One of the answers fits none of the lines. ' if others else ''}The pairs stand below, each with its reason.",
        )  # fmt: skip
        yield matching(draft, asked, others, salt=self.salt)


def _alike(one: str, other: str) -> bool:
    short, long = sorted((len(one), len(other)))
    return long <= MOST_LIKE * short
