"""The closed answer of a question: solution, working, and a line of feedback for every answer that can be given.

The script reads its verdicts from these lines, so what it says and what stands on paper are the same.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from generator.pages.markup import escaped, prose
from generator.pages.workings import working
from generator.quantities.text import sentence
from generator.questions.question import (
    ChartReading,
    Choice,
    Interval,
    LabelSlip,
    Matching,
    NumberEntry,
    Option,
    Ordering,
    Question,
    SeveralChoice,
    Slip,
)


@dataclass(frozen=True)
class FollowedUp:
    """A number that follows rightly from a wrong one of an earlier part, and so counts."""

    accepted: Interval
    shown: str
    says: str


def answers(item: Question, followed_up: Sequence[FollowedUp] = ()) -> str:
    """The answer as a closed part of the page, outside the search."""
    lines = list(_lines(item))
    lines[-1:-1] = [(_ends(one.accepted), True, one.shown, one.says) for one in followed_up]
    feedback = "\n".join(_line(*parts, solution=item.solution) for parts in lines)
    said = f"<p>{prose(item.solution)}</p>" if item.solution else ""
    shown = working(item.fact) if item.fact and item.fact.working else ""
    solution = "\n".join(part for part in (said, shown) if part)
    return (
        f'<details class="answer" data-search-exclude>\n<summary>Answer and working</summary>\n<div>\n'
        f'{solution}\n<ul class="feedback">\n{feedback}\n</ul>\n</div>\n</details>'
    )


def _lines(item: Question) -> Iterator[tuple[dict[str, str], bool, str, str]]:
    """Of each answer: what the script knows it by, whether it is right, the answer, and what it is told."""
    match item:
        case Choice() | SeveralChoice():
            for index, option in enumerate(item.options):
                yield ({"option": str(index), **_blamed(option)}, option.right, option.text, option.feedback)
        case NumberEntry():
            yield (_ends(item.accepted), True, item.answer, item.right_feedback)
            for slip in item.slips:
                yield ({**_ends(slip.accepted), **_blamed(slip)}, False, slip.shown, slip.feedback)
            yield ({}, False, "Any other number", item.otherwise)
        case Ordering():
            yield ({"after": "all"}, True, "In this order", item.solution)
            yield ({"after": "start"}, False, "Another first step", item.starts_with)
            for index, step in enumerate(item.steps[:-1]):
                yield ({"after": str(index)}, False, f"Another step after “{step.text.rstrip('.')}”", step.leads_on)
        case Matching():
            for row, pair in enumerate(item.pairs):
                keys = {"row": str(row), "partner": str(item.partners.index(pair.partner))}
                yield (keys, True, f"{pair.text.rstrip('.')} → {pair.partner}", pair.because)
        case ChartReading():
            yield ({"labels": _json(item.right)}, True, " or ".join(item.right), item.solution)
            for slip in item.slips:
                keys = {"labels": _json(slip.labels), **_blamed(slip)}
                yield (keys, False, ", ".join(slip.labels), slip.feedback)
            yield ({}, False, "Any other answer", item.otherwise)


def _json(labels: tuple[str, ...]) -> str:
    """Labels as scripts read them, whatever signs they hold."""
    return json.dumps(labels, ensure_ascii=False)


def _ends(accepted: Interval) -> dict[str, str]:
    return {"low": repr(accepted.low), "high": repr(accepted.high)}


def _blamed(wrong: Option | Slip | LabelSlip) -> dict[str, str]:
    """Whose idea leads to a wrong answer, and what the script tells a reader who was sure of it first."""
    return {"slip": wrong.misconception, "sure": wrong.refutation}


def _line(keys: dict[str, str], right: bool, answer: str, says: str, *, solution: str) -> str:
    """What the solution above has said is not said again, but kept for the script."""
    data = "".join(f' data-{key}="{escaped(value)}"' for key, value in keys.items() if value)
    verdict = "right" if right else "not right"
    joined = f" {sentence(verdict)}" if answer.endswith(".") else f": {verdict}"
    hidden = " hidden" if says == solution else ""
    return (
        f'<li{data} data-right="{"true" if right else "false"}"><strong>{prose(answer)}</strong>{joined}. '
        f'<span class="says"{hidden}>{prose(says)}</span></li>'
    )
