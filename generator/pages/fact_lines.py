"""Facts as lines of a page, each of which opens to its working; the same number of several parts is one line."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from generator.kind import Kind
from generator.pages import markup, workings
from generator.quantities.fact import Fact


@dataclass
class FactLines:
    """What a page has told of methods so far; one is made for each page, and used from its top to its end."""

    kind: Kind[Any]
    sources: Mapping[str, str]
    """The link of each source, by its key."""
    method: Callable[[str], str]
    """The place of each method's entry, by its id."""
    is_asked: Callable[[Fact], bool]
    """Whether a question names the fact, so that paper must show its working."""
    is_key: Callable[[Fact], bool]
    """Whether the fact is the answer to a question of the page, so that its value waits until the line is opened."""
    _told_at: dict[str, str] = field(default_factory=dict)

    def written(self, facts: Iterable[Fact], labels: Mapping[str, str] | None = None) -> str:
        """The lines in order. With labels of parts, what parts have in common is one line, in which each is named."""
        groups: dict[tuple[str, ...], list[Fact]] = {}
        for fact in facts:
            groups.setdefault((name_of(fact), fact.method) if labels else (fact.id,), []).append(fact)
        lines = [line for group in groups.values() for line in self._lines(group, labels or {})]
        return f'<div class="facts">\n{chr(10).join(lines)}\n</div>' if lines else ""

    def _lines(self, facts: Sequence[Fact], labels: Mapping[str, str]) -> list[str]:
        """One line, or one for each where there is nothing to open."""
        if all(fact.working is None and not fact.is_series for fact in facts):
            return [f'<p class="stated" id="{markup.fact_anchor(fact.id)}">{self._head([fact], labels)}</p>' for fact in facts]
        asked = " asked" if self.is_asked(facts[0]) else ""
        anchor = markup.fact_anchor(facts[0].id)
        first = self._told_at.setdefault(facts[0].method or anchor, anchor)
        note = workings.method_note(facts, self.kind, self.sources, self.method, first if first != anchor else "")
        shown = [workings.working(facts[0])] if len(facts) == 1 else [self._of_part(fact, labels) for fact in facts]
        body = "\n".join(part for part in (*shown, note) if part)
        place = f' id="{anchor}"' if len(facts) == 1 else ""
        return [
            f'<details class="working{asked}"{place}>\n<summary>{self._head(facts, labels)}</summary>\n'
            f"<div data-search-exclude>\n{body}\n</div>\n</details>"
        ]  # fmt: skip

    def _of_part(self, fact: Fact, labels: Mapping[str, str]) -> str:
        head = f"<p><strong>{markup.prose(labels[part_of(fact)])}: {_brief(fact)}</strong></p>"
        return f'<div id="{markup.fact_anchor(fact.id)}">\n{head}\n{workings.working(fact)}\n</div>'

    def _head(self, facts: Sequence[Fact], labels: Mapping[str, str]) -> str:
        stated = f' <span class="fact-note">{self._stated_by(facts[0])}</span>' if _is_stated(facts[0]) else ""
        values = []
        for fact in facts:
            of_part = f'<span class="fact-note">{markup.prose(labels[part_of(fact)])}</span> ' if labels else ""
            kept = fact.working is not None and self.is_key(fact)
            note = f'<span class="fact-note till-open">{of_part}a question asks for it</span>' if kept else ""
            values.append(f'{note}<span class="fact-value{" when-open" if kept else ""}">{of_part}{_brief(fact)}</span>')
        return f'<span class="fact-name">{markup.prose(facts[0].name)}{stated}</span> {" ".join(values)}'

    def _stated_by(self, fact: Fact) -> str:
        return ", ".join(self.sources.get(key, markup.escaped(key)) for key in fact.sources) or "stated"


def part_of(fact: Fact) -> str:
    """The id of the part that a fact is about."""
    return fact.id.partition(".")[0]


def name_of(fact: Fact) -> str:
    """A fact's id without its part."""
    return fact.id.partition(".")[2]


def _is_stated(fact: Fact) -> bool:
    return fact.working is None and fact.value is not None


def _brief(fact: Fact) -> str:
    """The value for a line: of a series its smallest and largest member; of an undefined fact the reason."""
    if fact.value is None:
        return f"<em>{markup.prose(fact.shown)}</em>"
    if not fact.is_series:
        return markup.number(fact.shown)
    members, values = fact.shown_members, fact.series
    low, high = members[values.index(min(values))], members[values.index(max(values))]
    if low == high:
        return markup.number(fact.unit.after(low) if fact.unit else low)
    return markup.number(fact.unit.after(f"{low} to {high}") if fact.unit else f"{low} to {high}")
