"""What makes a question unfair or easy to see through, as far as a program can tell: doubts for its author, no verdicts.

The rules follow the lists of Haladyna and Downing 1989 and of Haladyna, Downing and Rodriguez 2002; three options are enough after
Rodriguez 2005. The numbers in them are defaults of this project.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from generator.diagnostics import Severity, listed
from generator.questions.question import Choice, Matching, Ordering, Question, SeveralChoice
from generator.questions.supposed import SAID
from generator.records.asked import AskedQuestion
from generator.records.field_path import FieldPath
from generator.records.finding import Finding
from generator.records.parts import Adaptation, Explanation

LONGER, LONGER_BY = 1.3, 12
"""How many times as long as the mean wrong option, and by how many characters longer than the next, the right one may be."""
MOST_OPTIONS, FEWEST_OPTIONS = 5, 3
LONGEST_STEM = 45
"""Words of a prompt."""
FEWEST_ITEMS = 8
"""Below this many, chance alone explains where right answers stand and how long they are."""
CHANCE = 0.01
_ABSOLUTE = re.compile(r"\b(always|never|all(?! (?:day|night|year|twelve)\b)|none|only|every|must|completely|impossible|entirely)\b", re.IGNORECASE)
_HEDGE = re.compile(r"\b([Uu]sually|[Oo]ften|may|might|[Gg]enerally|tends?|[Mm]ostly|[Ss]ometimes)\b")
"""With a capital, May is a month."""
_NEGATIVE = re.compile(r"\b(not|except|least likely|never|false|incorrect|untrue)\b|n['’]t\b", re.IGNORECASE)
_OPINION = re.compile(r"\b(do you think|in your opinion|your view)\b", re.IGNORECASE)
_LINK = re.compile(
    r"^(?:So|Then|Therefore|Thus|Hence|Next|Later|Afterwards|Finally|And|But|Because of|As a result|In turn|They|Their|Its)\b|\b(?:this|these|those)\b",
    re.IGNORECASE,
)
_WORD = re.compile(r"[a-z]{5,}", re.IGNORECASE)
SHORTEST = 4
"""Letters by which two words are seen to be of one stem."""
_NUMBER = re.compile(r"[−-]?\d")


@dataclass(frozen=True)
class Flaw:
    """One doubt about one question, or about a set of them."""

    rule: str
    """By which an author can accept it."""
    question: str
    """Its id; empty for a set."""
    expected: str
    found: str
    mend: str


def flaws(item: Question) -> Iterator[Flaw]:
    """What is doubtful in one question."""
    for rule in _OF_ANY:
        yield from rule(item)
    if isinstance(item, Choice | SeveralChoice):
        for of_options in _OF_OPTIONS:
            yield from of_options(item)
    if isinstance(item, Matching):
        yield from _echoing_pairs(item)


def flaws_of_set(items: Sequence[Question]) -> Iterator[Flaw]:
    """What is doubtful in a set that one reader meets together: long right options, and a place where they gather."""
    choices = [item for item in items if isinstance(item, Choice)]
    in_words = [item for item in choices if not all(_NUMBER.match(option.text) for option in item.options)]
    longest = [item for item in in_words if max(item.options, key=lambda option: len(option.text)).right]
    guesses = sum(1 / len(item.options) for item in in_words)
    if len(in_words) >= FEWEST_ITEMS and len(longest) > guesses + 0.2 * len(in_words):
        found = f"in {len(longest)} of {len(in_words)} questions the right option is the longest"
        yield Flaw("longest_right", "", f"about {guesses:.0f}, as chance would have it", found, "lengthen wrong options, or shorten right ones")
    for place in range(MOST_OPTIONS):
        able = [item for item in in_words if len(item.options) > place]
        at = [item for item in able if item.options[place].right]
        if len(able) >= FEWEST_ITEMS and _chance(len(at), [1 / len(item.options) for item in able]) < CHANCE:
            found = f"in {len(at)} of {len(able)} questions the right option stands at place {place + 1}"
            yield Flaw("right_place", "", "right options at places that look drawn", found, "change the ids of some questions: the order is drawn from them")


def doubts_about(items: Sequence[Question], asked: Sequence[AskedQuestion]) -> Iterator[Finding]:
    """Everything doubtful in the questions of one record as warnings: at the question where an author wrote it, else at the title."""
    places: dict[str, FieldPath] = {one.id: ("questions", index, "ask") for index, one in enumerate(asked)}
    for flaw in (*(flaw for item in items for flaw in flaws(item)), *flaws_of_set(items)):
        of = f'question "{flaw.question}": ' if flaw.question and flaw.question not in places else ""
        yield Finding(
            path=places.get(flaw.question, ("title",)), expected=of + flaw.expected, found=flaw.found,
            mend=f"{flaw.mend}, or accept the warning with a reason", severity=Severity.WARNING, rule=flaw.rule,
        )  # fmt: skip


def false_steps_amiss(explanations: Sequence[Explanation]) -> Iterator[Finding]:
    """Where a step that students are to find takes the place of none, or stands among too few or too many."""
    for index, explanation in enumerate(explanations):
        retold, path = explanation.retold, ("explanations", index, "retold")
        if not retold or not retold.false_step:
            continue
        if not FEWEST_OPTIONS <= len(retold.steps) <= MOST_OPTIONS:
            yield Finding(path=(*path, "steps"), expected=f"{FEWEST_OPTIONS} to {MOST_OPTIONS} steps beside `false_step`", found=str(len(retold.steps)), mend="each step is an option: split one, or join two")
        if retold.false_step.others and len(retold.false_step.others) != len(retold.steps) - 1:
            yield Finding(path=(*path, "false_step", "others"), expected=f"a reason for each of the other {len(retold.steps) - 1} steps", found=str(len(retold.false_step.others)), mend="say of each step but the false one why it holds, in their order")
        if retold.false_step.step > len(retold.steps):
            yield Finding(path=(*path, "false_step", "step"), expected=f"the number of a step, 1 to {len(retold.steps)}", found=str(retold.false_step.step), mend="count the steps from 1")


def doubts_about_features(adaptations: Sequence[Adaptation]) -> Iterator[Finding]:
    """Where what would go wrong without a feature takes up a word of its row: the table would tell the pair."""
    for index, adaptation in enumerate(adaptations):
        if found := sorted(told_by_its_row(adaptation)):
            yield Finding(
                path=("adaptations", index, "without"), expected="none of the words of its row in the table", found=listed((f'"{stem}…"' for stem in found), "and"),
                mend="say it in other words: until then it is not matched", severity=Severity.WARNING, rule="told_by_table",
            )  # fmt: skip


def told_by_its_row(adaptation: Adaptation) -> set[str]:
    """The stems that a feature, or how it works and what it is good for, shares with what would go wrong without it."""
    row = (adaptation.who, adaptation.feature, adaptation.works_by, adaptation.benefit)
    return stems(adaptation.without or "") & set().union(*map(stems, row))


def _chance(hits: int, shares: Sequence[float]) -> float:
    """Of at least so many hits where each try has its own chance (a sum of unlike coins, added one by one)."""
    spread = [1.0]
    for share in shares:
        spread = [miss * (1 - share) + hit * share for miss, hit in zip((*spread, 0.0), (0.0, *spread), strict=True)]
    return sum(spread[hits:])


def _long_stem(item: Question) -> Iterator[Flaw]:
    words = len(item.prompt.removeprefix(SAID).split())
    if words > LONGEST_STEM:
        yield Flaw("long_prompt", item.id, f"at most {LONGEST_STEM} words", f"{words} words", "leave out what is not needed for the answer")


def _opinion(item: Question) -> Iterator[Flaw]:
    if found := _OPINION.search(item.prompt):
        yield Flaw("opinion", item.id, "a question with an answer", f'"{found[0]}"', "ask by which criterion")


def _negative(item: Question) -> Iterator[Flaw]:
    if isinstance(item, Choice | SeveralChoice) and (found := _NEGATIVE.search(item.prompt)):
        yield Flaw("negative_prompt", item.id, "a prompt without a negative", f'"{found[0]}"', "turn the prompt round: readers overlook a negative")


def _too_many(item: Choice | SeveralChoice) -> Iterator[Flaw]:
    number = len(item.options)
    if not FEWEST_OPTIONS <= number <= MOST_OPTIONS + 2 * isinstance(item, SeveralChoice):
        yield Flaw("options", item.id, f"{FEWEST_OPTIONS} to {MOST_OPTIONS} options", str(number), "three good ones suffice: drop the weakest, or add one")


def _longest(item: Choice | SeveralChoice) -> Iterator[Flaw]:
    right = [len(option.text) for option in item.options if option.right]
    wrong = [len(option.text) for option in item.options if not option.right]
    if len(right) == 1 and right[0] >= LONGER * sum(wrong) / len(wrong) and right[0] >= max(wrong) + LONGER_BY:
        found = f"it is longer than the next by {right[0] - max(wrong)} characters"
        yield Flaw("long_option", item.id, "a right option about as long as the others", found, "shorten it, or lengthen a wrong one")


def _absolute(item: Choice | SeveralChoice) -> Iterator[Flaw]:
    for option in item.options:
        if not option.right and (found := _ABSOLUTE.search(option.text)) and not any(_ABSOLUTE.search(o.text) for o in item.options if o.right):
            yield Flaw("absolute_word", item.id, "wrong options without words that give them away", f'"{found[0]}" in "{option.text}"', "leave the word out")
            return


def _hedged(item: Choice | SeveralChoice) -> Iterator[Flaw]:
    right = [found for option in item.options if option.right and (found := _HEDGE.search(option.text))]
    if right and not any(_HEDGE.search(option.text) for option in item.options if not option.right):
        yield Flaw("hedged_option", item.id, "hedges in wrong options too, or in none", f'"{right[0][0]}" in the right one alone', "leave it out, or hedge a wrong one")


def _echo(item: Choice | SeveralChoice) -> Iterator[Flaw]:
    """A word of the prompt that only the right option takes up."""
    asked = stems(item.prompt)
    right = set().union(*(stems(option.text) for option in item.options if option.right))
    wrong = set().union(*(stems(option.text) for option in item.options if not option.right))
    if found := sorted((asked & right) - wrong):
        words = listed((f'"{stem}…"' for stem in found), "and")
        yield Flaw("echo", item.id, "words of the prompt in several options or in none", f"{words} in the right one alone", "use another word in the prompt, or the same in a wrong option")


def _echoing_pairs(item: Matching) -> Iterator[Flaw]:
    """A word that a line shares with its own partner and with no other: the pair is found without knowing anything."""
    for pair in item.pairs:
        others = set().union(*(stems(partner) for partner in item.partners if partner != pair.partner))
        if found := sorted((stems(pair.text) & stems(pair.partner)) - others):
            words = listed((f'"{stem}…"' for stem in found), "and")
            yield Flaw("echo", item.id, "pairs without a word in common", f'{words} in both halves of "{pair.text}"', "say one of them in other words")


def _repeated_lead(item: Choice | SeveralChoice) -> Iterator[Flaw]:
    leads = {tuple(option.text.casefold().split()[:3]) for option in item.options}
    if len(leads) == 1 and all(len(option.text.split()) > 3 for option in item.options):
        yield Flaw("repeated_words", item.id, "what all options share in the prompt", f'"{" ".join(*leads)}" in each', "move these words into the prompt")


def _linked_steps(item: Question) -> Iterator[Flaw]:
    """A link or a word that points back puts a step behind others, whoever knows the subject or not."""
    for step in item.steps if isinstance(item, Ordering) else ():
        if found := _LINK.search(step.text):
            mend = "write each step so that it can be read by itself"
            yield Flaw("linked_step", item.id, "steps without words that give their order away", f'"{found[0].strip()}" in "{step.text}"', mend)


def stems(text: str) -> set[str]:
    """The first five letters of each longer word: rough, and enough to see an echo."""
    return {word[:5].casefold() for word in _WORD.findall(text)}


def starts(text: str) -> set[str]:
    """The first letters of each word, enough to see that windward has to do with wind."""
    return {word[:SHORTEST].casefold() for word in re.findall(rf"[^\W\d_]{{{SHORTEST},}}", text)}


def told_by(text: str, word: str) -> str:
    """The beginning of a word that a text holds, at the beginning of a word of its own or inside one, as phytoplankton holds plankton.

    >>> told_by("The side from which the wind comes", "windward"), told_by("A wall in a gale", "windward")
    ('wind', '')
    """
    return next((start for start in sorted(starts(word)) if start in text.casefold()), "")


_OF_ANY: tuple[Callable[[Question], Iterator[Flaw]], ...] = (_long_stem, _opinion, _negative, _linked_steps)
_OF_OPTIONS: tuple[Callable[[Choice | SeveralChoice], Iterator[Flaw]], ...] = (
    _too_many, _longest, _absolute, _hedged, _echo, _repeated_lead,
)  # fmt: skip
