"""A question as HTML: complete without a script and on paper, and marked by a script where there is one."""

from __future__ import annotations

from collections.abc import Sequence

from generator.pages.answers import FollowedUp, answers
from generator.pages.markup import escaped, prose
from generator.questions.question import ChartReading, Choice, Matching, Needs, NumberEntry, Ordering, Question, SeveralChoice

_NEEDS = {
    Needs.DATA: "Answer from the data on this page.",
    Needs.KNOWLEDGE: "Answer from what you have learned.",
    Needs.BOTH: "Use the data on this page and what you have learned.",
    Needs.MAP: "Use what the question tells, and the map that it names.",
}
_NEEDS_OF_TEXT = _NEEDS | {
    Needs.DATA: "Answer from what this page says.",
    Needs.BOTH: "Use what this page says and what you have learned.",
}
"""On a page whose record has no data."""
_SUPPOSED = "Work from what the question tells, not from the page."
_SUPPOSED_KNOWN = "Work from what the question tells, and from what you have learned."
_EXAMPLE_UNITS = ("kg", "s", "mol")
PRINTED = 10
"""Labels of a list that paper prints; longer ones are the months of a year or every name of a chart, and stand there."""
_IN_WORDS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight")


def question(item: Question, record: str, position: int, fresh: str = "", *, has_data: bool = True) -> str:
    """One question as a block of HTML without blank lines; `fresh` is the address of the script with other numbers for it.

    `has_data` says whether its page has any that it could send the reader to.
    """
    field = field_id(item)
    kind, body = _fields(item, field)
    head = f'<span class="check-number">Question {position}.</span> {prose(item.prompt)}'
    needs = _supposed(item) if item.supposed else (_NEEDS if has_data else _NEEDS_OF_TEXT)[item.needs]
    asked = f'<p class="needs" data-search-exclude>{needs}</p>\n{body}'
    numbers = f' data-fresh="{escaped(fresh)}"' if fresh else ""
    return _block(field, f'data-type="{kind}" data-question="{escaped(f"{record}/{item.id}")}"{numbers}', head, asked, f"{_hints(item)}{answers(item)}")


def answer_box(item: NumberEntry, name: str, field: str, followed_up: Sequence[FollowedUp] = ()) -> str:
    """Where the result of a written calculation is typed: marked as a question is, under a name of its own, without its prompt."""
    return _block(field, f'data-type="number" data-question="{escaped(name)}"', "Your result", _number(item, field), answers(item, followed_up))


def _block(field: str, data: str, head: str, asked: str, behind: str) -> str:
    return (
        f'<div class="check" id="{field}">\n<self-check {data}>\n<form>\n<fieldset>\n<legend>{head}</legend>\n{asked}\n</fieldset>\n'
        f'<output role="status"></output>\n</form>\n{behind}\n</self-check>\n</div>'
    )


def _supposed(item: Question) -> str:
    return _SUPPOSED_KNOWN if item.needs is Needs.BOTH else _SUPPOSED


def field_id(item: Question) -> str:
    """The id of a question's block on its page."""
    return f"q-{item.id.replace('_', '-')}"


def item_type(item: Question) -> str:
    """The name of the item type, by which scripts know it."""
    return _fields(item, field_id(item))[0]


def _fields(item: Question, field: str) -> tuple[str, str]:
    """The name of the item type, by which the script marks it, and what the reader answers in."""
    match item:
        case Choice():
            return "choice", _options(item, field, "radio")
        case SeveralChoice():
            wanted = sum(option.right for option in item.options)
            return "several", f'<p class="wanted">Pick {_IN_WORDS[wanted]}.</p>\n{_options(item, field, "checkbox")}'
        case NumberEntry():
            return "number", _number(item, field)
        case Ordering():
            return "order", _order(item)
        case Matching():
            return "match", f'<p class="wanted">Each answer fits one line at most.</p>\n{_match(item, field)}'
        case ChartReading():
            return "label", _label(item, field)
    raise TypeError(f"{item.id}: no fields are known for {type(item).__name__}")


def _options(item: Choice | SeveralChoice, field: str, kind: str) -> str:
    return "\n".join(
        f'<label class="option"><input type="{kind}" name="{field}" value="{index}"> <span>{prose(option.text)}</span></label>'
        for index, option in enumerate(item.options)
    )


def _number(item: NumberEntry, field: str) -> str:
    beside = item.unit and not item.asks_unit
    unit = f' <span class="unit" id="{field}-unit">{prose(item.unit)}</span>' if beside else ""
    described = f"{field}-unit {field}-forms" if beside else f"{field}-forms"
    with_unit = ", with its unit" if item.asks_unit else ""
    behind = f"\N{NO-BREAK SPACE}{_example_unit(item.unit)}" if item.asks_unit else ""
    point, comma, power = (f"{number}{behind}" for number in ("1234.5", "1234,5", "1.2e3"))
    return (
        f'<p class="entry" data-search-exclude><label for="{field}-box">Your answer{with_unit}</label> '
        f'<input type="text" inputmode="{"text" if item.asks_unit else "decimal"}" autocomplete="off" size="{18 if item.asks_unit else 12}" '
        f'id="{field}-box" data-unit="{escaped(item.unit)}"{" data-asks-unit" if item.asks_unit else ""} aria-describedby="{described}">{unit}</p>\n'
        f'<p class="forms" id="{field}-forms" data-search-exclude>Write it like {point}, {comma} or {power}.</p>'
    )


def _example_unit(unit: str) -> str:
    """A unit that the answer does not have: it shows where a unit goes, not which one."""
    return next((one for one in _EXAMPLE_UNITS if one[-1] not in unit), _EXAMPLE_UNITS[0])


def _order(item: Ordering) -> str:
    """Steps in their drawn order; without a script, and on paper, a place for the number stands before each."""
    rows = "\n".join(
        f'<li data-step="{step}"><span class="place" aria-hidden="true">&#160;</span><span class="step">{prose(item.steps[step].text)}</span></li>'
        for step in item.start
    )
    return f'<ol class="steps">\n{rows}\n</ol>'


def _match(item: Matching, field: str) -> str:
    letters = [chr(ord("A") + index) for index in range(len(item.partners))]
    picks = "".join(f'<option value="{index}">{letter}</option>' for index, letter in enumerate(letters))
    rows = "\n".join(
        f'<li><select id="{field}-{row}" data-row="{row}" data-search-exclude><option value="">?</option>{picks}</select> '
        f'<label for="{field}-{row}">{prose(pair.text)}</label></li>'
        for row, pair in enumerate(item.pairs)
    )
    partners = "\n".join(f"<li>{prose(partner)}</li>" for partner in item.partners)
    return f'<ul class="rows">\n{rows}\n</ul>\n<ol class="partners" type="A">\n{partners}\n</ol>'


def _label(item: ChartReading, field: str) -> str:
    """A list to pick from; paper, which cannot open it, has a short one in a line."""
    printed = f'\n<p class="picks paper-only">One of: {"; ".join(prose(label) for label in item.labels)}.</p>' if len(item.labels) <= PRINTED else ""
    picks = "".join(_pick(label) for label in item.labels)
    return (
        f'<p class="entry" data-search-exclude><label for="{field}-pick">Your answer</label> '
        f'<select id="{field}-pick"><option value="">pick one</option>{picks}</select></p>{printed}'
    )


def _pick(label: str) -> str:
    """One of a list; what it shows is what it stands for, unless it is set in another way than it is written."""
    shown = prose(label)
    return f"<option>{shown}</option>" if shown == label else f'<option value="{escaped(label)}">{shown}</option>'


def _hints(item: Question) -> str:
    """Hints inside each other, so that each is only reached through the one before."""
    inner = ""
    for place, hint in reversed(list(enumerate(item.hints, start=1))):
        head = "Hint" if len(item.hints) == 1 else f"Hint {place} of {len(item.hints)}"
        inner = f'<details class="hint">\n<summary>{head}</summary>\n<p>{prose(hint)}</p>\n{inner}</details>\n'
    return f'<div class="hints" data-search-exclude>\n{inner}</div>\n' if inner else ""
