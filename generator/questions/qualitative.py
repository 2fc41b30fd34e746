"""Questions from what a record says in words: explanation chains, adaptations, actions and how one sees that they work, terms.

Their ids hold a hyphen, which no author's id can, so the two never meet.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass

from generator.questions.item_writing import flaws, starts, stems, told_by_its_row
from generator.questions.making import FEWEST_PAIRS, FEWEST_STEPS, MOST_STEPS, Draft, Wrong, as_option, choice, drawn, matching, ordering
from generator.questions.misconception import Catalogue
from generator.questions.question import Made, Matching, Needs, Pair, Question, Rejected
from generator.records.parts import Adaptation, Explanation, HumanImpact

MOST_PAIRS = 4
MOST_MATCHES = 2
"""Of one record: its author's own, then features, actions and words, in this order."""
FIRST_STEP = "Look for the step that waits for no other."
ORDER_HINTS = ("Find the last step first: which one is what is to be explained?", "Then ask of each step what must have happened just before it.")


FALSE_STEP_HINTS = ("Ask of each step: is it true that this happens?",)
STEP_HOLDS = "This step holds."


def next_step(text: str) -> str:
    """What to say where another step than the next was put behind this one."""
    return f"Which step can come only after “{text.rstrip('.')}”?"


@dataclass(frozen=True)
class Term:
    """A word of the subject and what it means."""

    id: str
    word: str
    means: str
    everyday: tuple[str, ...] = ()
    """Other words that say the same."""
    example: str | None = None
    """A case of it that no page tells."""


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
        """Those that come out fair and leave no doubt: of chains each false step or one order, of other sorts at most one.

        An author who writes matches (`matched` of them) knows best which features are worth it: these are not matched again.
        """
        sorts = (self._features(() if matched else adaptations), self._measured(people), self._terms(terms))
        found = (*self._chains(explanations), *map(_first_fair, sorts))
        asked = [item for item in found if item is not None]
        matches = [item for item in asked if isinstance(item, Matching)]
        return tuple(item for item in asked if item not in matches[max(0, MOST_MATCHES - matched) :])

    def _chains(self, explanations: Sequence[Explanation]) -> Sequence[Question]:
        """False steps as their author wrote them, doubts and all, for these are told; without any, an order that leaves none."""
        false = [item for item in self._false_steps(explanations) if isinstance(item, Question)]
        return false or _fair(self._orders(explanations))[:1]

    def _orders(self, explanations: Sequence[Explanation]) -> Iterator[Made]:
        """Only of a chain whose author retells it in another case, where each step waits for the one before."""
        for explanation in explanations:
            if not explanation.retold or explanation.retold.false_step or not FEWEST_STEPS <= len(explanation.retold.steps) <= MOST_STEPS:
                continue
            says = [self.filled(step) for step in explanation.retold.steps]
            draft = Draft(
                id=f"order-{explanation.id}", needs=Needs.KNOWLEDGE, solution=" ".join(says),
                prompt=f"Put the steps in order to explain {self.filled(explanation.retold.asks)}.", hints=ORDER_HINTS,
            )  # fmt: skip
            yield ordering(draft, says, starts_with=FIRST_STEP, leads_on=next_step, salt=self.salt)

    def _false_steps(self, explanations: Sequence[Explanation]) -> Iterator[Made]:
        """Of each chain whose author retells it with a step that students get wrong: which one that is."""
        for explanation in explanations:
            retold = explanation.retold
            if not retold or not retold.false_step or not retold.false_step.step <= len(retold.steps):
                continue
            says = [self.filled(step) for step in retold.steps]
            false, place = retold.false_step, retold.false_step.step - 1
            told = [as_option(self.filled(false.says) if n == place else step) for n, step in enumerate(says)]
            draft = Draft(
                id=f"false-step-{explanation.id}", needs=Needs.KNOWLEDGE, hints=FALSE_STEP_HINTS,
                prompt=f"A student explains {self.filled(retold.asks)}. One of the steps is wrong. Which one?",
                solution=f"{self.filled(false.because)} In its place: “{says[place]}”",
            )  # fmt: skip
            others = [step for n, step in enumerate(told) if n != place]
            whys = false.others or ("",) * len(others)
            wrong = [Wrong(step, "ans.sound-doubted", STEP_HOLDS, self.filled(why)) for step, why in zip(others, whys, strict=False)]
            yield choice(draft, told[place], wrong, self.catalogue, listed=told)

    def _features(self, adaptations: Sequence[Adaptation]) -> Iterator[Made]:
        """What would go wrong without each feature, which the page does not tell; what it is good for only where no adaptation says that."""
        lacking = [self._feature(one, one.without) for one in adaptations if one.without and not told_by_its_row(one)]
        hint = "Think one feature away at a time: which danger or shortage would that living thing meet?"
        yield from self._matching("features-match", "Match each living thing with what would go wrong for it without its feature.", hint, lacking)
        pairs = [] if any(one.without for one in adaptations) else [self._feature(one, one.benefit) for one in adaptations]
        yield from self._matching("benefits-match", "Match each feature with what it is good for.", "Say of each what would go wrong without it.", pairs)

    def _feature(self, adaptation: Adaptation, partner: str) -> Pair:
        who, works_by = as_option(self.filled(adaptation.who)), as_option(self.filled(adaptation.works_by))
        return Pair(f"{who}: {self.filled(adaptation.feature)}", as_option(self.filled(partner)), f"{works_by}.")

    def _measured(self, people: Sequence[HumanImpact]) -> Iterator[Made]:
        """Which measurement would show whether an action works, which the page does not tell."""
        pairs = [
            Pair(as_option(self.filled(action.do)), as_option(self.filled(action.shown_by)), f"{as_option(self.filled(action.works_by))}.")
            for impact in people for action in impact.actions if action.shown_by
        ]  # fmt: skip
        yield from self._matching(
            "measured-match", "Match each action with the measurement that would show whether it works.",
            "What does each action change first, and how could one see that change?", pairs, "each with how the action works",
        )  # fmt: skip

    def _terms(self, terms: Sequence[Term]) -> Iterator[Made]:
        """The page tells what a word means, so that is what the answer says; an example must be recognised, and one is left over."""
        item = "words-match"
        pairs = [Pair(as_option(term.word), as_option(term.example), _meaning(term)) for term in terms if term.example]
        if len(pairs) <= MOST_PAIRS:
            yield Rejected(item, f"{len(pairs)} of its words have an example, and {MOST_PAIRS + 1} are needed")
        else:
            yield from self._matching(item, "Match each word with the example that shows it.", "Say what each word means, then look for it in the examples; one of them is left over.", pairs, "each with what the word means")

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


def _meaning(term: Term) -> str:
    """The definition, and wordings that help a reader who does not know the term: no abbreviations, nor the term or the definition in other words."""
    def adds(words: str) -> bool:
        return not words.isupper() and not starts(words) & starts(term.word) and not (starts(words) and starts(words) <= starts(term.means))

    everyday = list(filter(adds, term.everyday))
    also = f" In other words: {', '.join(everyday)}." if everyday else ""
    return f"{as_option(term.means)}.{also}"


def _first_fair(sort: Iterator[Made]) -> Question | None:
    """The first that came out and leaves no doubt."""
    return next(iter(_fair(sort)), None)


def _fair(made: Iterable[Made]) -> list[Question]:
    """Those that came out and leave no doubt."""
    return [item for item in made if isinstance(item, Question) and not any(flaws(item))]
