"""Questions made from facts: each either comes out fair, or comes out rejected with the reason."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

from generator.quantities.fact import Fact
from generator.quantities.text import sentence
from generator.quantities.working import Substitution
from generator.questions.misconception import Catalogue
from generator.questions.mistake import Mistake, accepted, comes_out, of_rounding, options, slips, tolerance
from generator.questions.question import (
    ChartReading,
    Choice,
    Interval,
    LabelSlip,
    Made,
    Matching,
    Needs,
    NumberEntry,
    Option,
    Ordering,
    Pair,
    Rejected,
    SeveralChoice,
    Step,
)

T = TypeVar("T")
_CALL = re.compile(r"\b[a-z]+\(")
FEWEST_DISTRACTORS = 2
FEWEST_SOUND = 2
FEWEST_STEPS, MOST_STEPS = 4, 7
"""An order of three is guessed too easily, one of eight is a puzzle. Source: a default of this project."""
FEWEST_PAIRS = 3
DOES_NOT_COME_OUT = "its rounded numbers do not give the result"
ONE_NAME = "two of the things that it is about have one name"


@dataclass(frozen=True, kw_only=True)
class Draft:
    """What every question is asked with."""

    id: str
    prompt: str
    solution: str
    needs: Needs = Needs.DATA
    hints: tuple[str, ...] = ()
    """From a nudge to nearly all of the way; a sum without any gets its own."""
    supposed: bool = False
    """Whether its numbers are drawn or chosen, not the record's."""


@dataclass(frozen=True)
class Wrong:
    """A wrong option in words, and the wrong idea that leads to it."""

    text: str
    misconception: str
    because: str = ""
    """What to say first, about this very option; the catalogue's correction follows."""
    instead: str = ""
    """What to say in place of the catalogue's correction, where that would not fit this option."""


@dataclass(frozen=True)
class Sound:
    """A right option in words, and why it is right."""

    text: str
    because: str


def as_option(text: str) -> str:
    """With a capital letter and no full stop, as an option stands."""
    return sentence(text).rstrip(".")


def enough(candidates: Sequence[Made], wanted: int = 6) -> tuple[Made, ...]:
    """The first questions that came out, as many as are wanted; with fewer, those that did not are told as well."""
    made = [item for item in candidates if not isinstance(item, Rejected)][:wanted]
    return tuple(made) if len(made) == wanted else (*made, *(item for item in candidates if isinstance(item, Rejected)))


def first_made(*candidates: Made) -> Made:
    """The first that came out, or else why the last one did not."""
    return next((item for item in candidates if not isinstance(item, Rejected)), candidates[-1])


def number_entry(
    draft: Draft, right: Fact, given: Mapping[str, Fact], mistakes: Iterable[Mistake], catalogue: Catalogue, *, otherwise: str,
    asks_unit: bool = False, kept: tuple[str, ...] = (), parts: tuple[str, ...] = (), likely: Interval | None = None, within: Interval | None = None,
) -> NumberEntry | Rejected:  # fmt: skip
    """A number to type; known mistakes are recognised and answered. `otherwise` is the hint to any other number.

    `kept`, `parts` and `likely` say what fresh numbers must respect, as `Reckoned` has it. `within` is the accepted range, where its author has
    seen to it that the numbers as shown give a result in it.
    """
    if not right.is_number:
        return Rejected(draft.id, f"{right.name.lower()} is {right.shown}")
    if within is None and not comes_out(right):
        return Rejected(draft.id, DOES_NOT_COME_OUT)
    mistakes = tuple(mistakes)
    solution = f"{draft.solution}{of_rounding(right)}"
    return NumberEntry(
        id=draft.id, prompt=draft.prompt, needs=draft.needs, solution=solution, fact=right, hints=draft.hints or _steps(right, otherwise),
        unit=right.unit.shown if right.unit else "", answer=right.shown_exactly,
        accepted=within or accepted(right.number, right.figures, tolerance(right)), right_feedback=solution,
        slips=slips(right, given, mistakes, catalogue), otherwise=otherwise, asks_unit=asks_unit and right.unit is not None,
        given=given, mistakes=mistakes, supposed=draft.supposed, kept=kept, parts=parts, likely=likely,
    )  # fmt: skip


def _steps(right: Fact, nudge: str) -> tuple[str, ...]:
    """What to think of, then the formula; no numbers, so that both hold for fresh ones too.

    A function such as `max(…)` is a program's way to write; the nudge says it in words.
    """
    formula = right.working.formula if isinstance(right.working, Substitution) else ""
    return (nudge, f"{formula} = ?") if formula and not _CALL.search(formula) else (nudge,)


def choice_of_numbers(
    draft: Draft, right: Fact, given: Mapping[str, Fact], mistakes: Iterable[Mistake], catalogue: Catalogue, *,
    kept: tuple[str, ...] = (), likely: Interval | None = None,
) -> Choice | Rejected:  # fmt: skip
    """A choice whose wrong options are the right expression gone wrong; `kept` and `likely` as of `Reckoned`."""
    if not right.is_number:
        return Rejected(draft.id, f"{right.name.lower()} is {right.shown}")
    if not comes_out(right):
        return Rejected(draft.id, DOES_NOT_COME_OUT)
    mistakes = tuple(mistakes)
    found = options(right, given, mistakes, catalogue, draft.solution)
    if len(found) <= FEWEST_DISTRACTORS:
        return Rejected(draft.id, "with these numbers the usual mistakes give the right answer, or the same wrong one")
    return Choice(
        id=draft.id, prompt=draft.prompt, needs=draft.needs, solution=draft.solution, fact=right, hints=draft.hints, options=found,
        given=given, mistakes=mistakes, supposed=draft.supposed, kept=kept, likely=likely,
    )  # fmt: skip


def choice(
    draft: Draft, right: str, wrong: Sequence[Wrong], catalogue: Catalogue, *, fact: Fact | None = None, salt: str = "",
    listed: Sequence[str] = (),
) -> Choice | Rejected:  # fmt: skip
    """A choice in words; wrong options that repeat another are dropped. Their order is that of `listed`, or else drawn from the ids."""
    found = _options(draft, [Sound(right, draft.solution)], wrong, catalogue, salt)
    if listed:
        found = tuple(sorted(found, key=lambda option: listed.index(option.text)))
    if len(found) <= FEWEST_DISTRACTORS:
        return Rejected(draft.id, "too few different wrong options are left")
    return Choice(
        id=draft.id, prompt=draft.prompt, needs=draft.needs, solution=draft.solution, fact=fact, hints=draft.hints, supposed=draft.supposed, options=found
    )  # fmt: skip


def several(
    draft: Draft, right: Sequence[Sound], wrong: Sequence[Wrong], catalogue: Catalogue, *, fact: Fact | None = None, salt: str = ""
) -> SeveralChoice | Rejected:
    """A choice of all options that hold, two or more; wrong ones that repeat another are dropped, and the order is drawn from the ids."""
    found = _options(draft, right, wrong, catalogue, salt)
    sound = sum(option.right for option in found)
    if sound < FEWEST_SOUND or len(found) - sound < FEWEST_DISTRACTORS:
        return Rejected(draft.id, f"expected {FEWEST_SOUND} right options and {FEWEST_DISTRACTORS} wrong ones, found {sound} and {len(found) - sound}")
    return SeveralChoice(
        id=draft.id, prompt=draft.prompt, needs=draft.needs, solution=draft.solution, fact=fact, hints=draft.hints, supposed=draft.supposed, options=found
    )  # fmt: skip


def _options(draft: Draft, right: Sequence[Sound], wrong: Sequence[Wrong], catalogue: Catalogue, salt: str) -> tuple[Option, ...]:
    kept = {option.text.casefold(): Option(text=option.text, feedback=option.because, right=True) for option in right}
    for option in wrong:
        said = catalogue[option.misconception].answers(option.because, option.instead)
        kept.setdefault(option.text.casefold(), Option(text=option.text, **said))
    return tuple(sorted(kept.values(), key=lambda option: _lot(salt, draft.id, option.text)))


def ordering(draft: Draft, texts: Sequence[str], *, starts_with: str, leads_on: Callable[[str], str], salt: str = "") -> Ordering | Rejected:
    """Steps to put in order, given in the right one; `leads_on` is what to say where another than the next was put behind a step."""
    if _repeats(texts):
        return Rejected(draft.id, ONE_NAME)
    steps = (*(Step(text, leads_on(text)) for text in texts[:-1]), Step(texts[-1], ""))
    return Ordering(
        id=draft.id, prompt=draft.prompt, needs=draft.needs, solution=draft.solution, hints=draft.hints, supposed=draft.supposed, steps=steps,
        start=_mixed(len(texts), salt, draft.id), starts_with=starts_with,
    )  # fmt: skip


def matching(draft: Draft, pairs: Sequence[Pair], others: Sequence[str] = (), *, salt: str = "") -> Matching | Rejected:
    """Pairs to find; `others` are partners that fit nothing, so that the last one is no gift."""
    if _repeats([pair.text for pair in pairs]) or _repeats([*(pair.partner for pair in pairs), *others]):
        return Rejected(draft.id, ONE_NAME)
    return Matching(
        id=draft.id, prompt=draft.prompt, needs=draft.needs, solution=draft.solution, hints=draft.hints, supposed=draft.supposed, pairs=tuple(pairs),
        partners=tuple(drawn([*(pair.partner for pair in pairs), *others], salt, draft.id, "listed")),
    )  # fmt: skip


def reading(
    draft: Draft, labels: Sequence[str], right: Sequence[str], wrong: Sequence[tuple[Sequence[str], Wrong]], catalogue: Catalogue, *,
    otherwise: str, fact: Fact | None = None,
) -> ChartReading | Rejected:  # fmt: skip
    """An answer that is picked by its label on a chart; `wrong` are the labels to which known slips of reading lead.

    A label that is right, or that an earlier slip leads to, is dropped from a slip. Where every label is right nothing is asked.
    """
    if len(right) == len(labels):
        return Rejected(draft.id, "every answer would be right")
    if _repeats(labels):
        return Rejected(draft.id, ONE_NAME)
    taken, slips = set(right), []
    for found, slip in wrong:
        kept = tuple(label for label in found if label not in taken)
        taken |= set(kept)
        if kept:
            slips.append(LabelSlip(labels=kept, **catalogue[slip.misconception].answers(slip.because, slip.instead)))
    return ChartReading(
        id=draft.id, prompt=draft.prompt, needs=draft.needs, solution=draft.solution, fact=fact, hints=draft.hints, supposed=draft.supposed,
        labels=tuple(labels), right=tuple(right), slips=tuple(slips), otherwise=otherwise,
    )  # fmt: skip


def _repeats(texts: Sequence[str]) -> bool:
    return len({text.casefold() for text in texts}) < len(texts)


def drawn(things: Iterable[T], *salt: str) -> list[T]:
    """The things in an order that is drawn once and for all: the same for the same words and salt, on every machine."""
    return sorted(things, key=lambda thing: _lot(*salt, str(thing)))


def _mixed(count: int, *salt: str) -> tuple[int, ...]:
    """A drawn order that neither is the right one nor begins with the right step, and is not the right one backwards."""
    places = drawn(range(count), *salt)
    while places[0] == 0:
        places = [*places[1:], places[0]]
    if places == sorted(places, reverse=True):
        places = [*places[1::2], *places[::2]]
    return tuple(places)


def _lot(*parts: str) -> str:
    """A fixed random draw: the same for the same words, on every machine."""
    return hashlib.sha256("\n".join(parts).encode()).hexdigest()
