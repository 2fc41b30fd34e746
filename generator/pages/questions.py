"""A question as HTML: complete without a script, and marked by one where there is one.

The feedback to every answer stands in the closed solution; the script only finds the line that fits what was answered.
"""

from __future__ import annotations

from generator.pages.markup import escaped, prose
from generator.pages.workings import working
from generator.questions.question import Choice, Needs, NumberEntry, Question

_NEEDS = {
    Needs.DATA: "Answer from the data on this page.",
    Needs.KNOWLEDGE: "Answer from what you have learned.",
    Needs.BOTH: "Use the data on this page and what you have learned.",
}


def question(item: Question, record: str, position: int) -> str:
    """One question as a block of HTML without blank lines."""
    name = f"{record}/{item.id}"
    field = f"q-{item.id.replace('_', '-')}"
    body = _choice(item, field) if isinstance(item, Choice) else _number(item, field) if isinstance(item, NumberEntry) else ""
    return (
        f'<div class="check" id="{field}">\n<self-check data-question="{escaped(name)}">\n<form>\n<fieldset>\n'
        f'<legend><span class="check-number">Question {position}.</span> {prose(item.prompt)}</legend>\n'
        f'<p class="needs">{_NEEDS[item.needs]}</p>\n{body}\n</fieldset>\n'
        f'<output role="status"></output>\n</form>\n{_solution(item)}\n</self-check>\n</div>'
    )


def _choice(item: Choice, field: str) -> str:
    return "\n".join(
        f'<label class="option"><input type="radio" name="{field}" value="{index}"> <span>{prose(option.text)}</span></label>'
        for index, option in enumerate(item.options)
    )


def _number(item: NumberEntry, field: str) -> str:
    unit = f' <span class="unit" id="{field}-unit">{prose(item.unit)}</span>' if item.unit else ""
    described = f"{field}-unit {field}-forms" if item.unit else f"{field}-forms"
    return (
        f'<p class="entry"><label for="{field}-box">Your answer</label> '
        f'<input type="text" inputmode="decimal" autocomplete="off" size="12" id="{field}-box" aria-describedby="{described}">{unit}</p>\n'
        f'<p class="forms" id="{field}-forms">Write it like 1234.5, 1234,5 or 1.2e3.</p>'
    )


def _solution(item: Question) -> str:
    lines = _choice_lines(item) if isinstance(item, Choice) else _number_lines(item) if isinstance(item, NumberEntry) else []
    feedback = "\n".join(lines)
    shown = f"\n{working(item.fact)}" if item.fact and item.fact.working else ""
    return (
        f'<details class="answer">\n<summary>Answer and working</summary>\n<div data-search-exclude>\n'
        f'<p>{prose(item.solution)}</p>{shown}\n<ul class="feedback">\n{feedback}\n</ul>\n</div>\n</details>'
    )


def _choice_lines(item: Choice) -> list[str]:
    return [
        f'<li data-option="{index}" data-right="{_truth(option.right)}"><strong>{prose(option.text)}</strong>: '
        f'{"right" if option.right else "not right"}. <span class="says">{prose(option.feedback)}</span></li>'
        for index, option in enumerate(item.options)
    ]


def _number_lines(item: NumberEntry) -> list[str]:
    right = (
        f'<li data-low="{item.accepted.low!r}" data-high="{item.accepted.high!r}" data-right="true"><strong>{prose(item.answer)}</strong>: '
        f'right. <span class="says">{prose(item.right_feedback)}</span></li>'
    )
    wrong = [
        f'<li data-low="{slip.accepted.low!r}" data-high="{slip.accepted.high!r}" data-right="false"><strong>{prose(slip.shown)}</strong>: '
        f'not right. <span class="says">{prose(slip.feedback)}</span></li>'
        for slip in item.slips
    ]
    other = f'<li data-right="false"><strong>Any other number</strong>: not right. <span class="says">{prose(item.otherwise)}</span></li>'
    return [right, *wrong, other]


def _truth(value: bool) -> str:
    return "true" if value else "false"
