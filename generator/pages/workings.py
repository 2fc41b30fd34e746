"""A fact's working as HTML: formula and numbers, a table by month or of other values, a path of rules, or a list."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from figures import DataTable

from generator.kind import Kind
from generator.pages import mathml
from generator.pages.figures import data_table
from generator.pages.markup import escaped, number, prose, stopped
from generator.quantities.fact import Fact
from generator.quantities.text import sentence
from generator.quantities.working import Listing, MonthTable, RulePath, Substitution, ValueTable

SOON_READ = 120
"""Letters of a method's words that are as quickly read again as found."""


def working(fact: Fact) -> str:
    """The working of a computed fact, without blank lines; a sentence for a stated one."""
    match fact.worked:
        case Substitution() as by_expression:
            return _substitution(by_expression, fact.shown_exactly)
        case MonthTable() as table:
            return _month_table(table, fact.name)
        case ValueTable() as values:
            return _value_table(values, fact.name, fact.shown_exactly)
        case RulePath() as path:
            return _rule_path(path, fact.shown_exactly)
        case Listing() as listing:
            return _listing(listing, fact.shown_exactly)
    if fact.value is None:
        return f"<p>{prose(fact.undefined_because or 'not known')}</p>"
    if fact.is_series:
        head = f"{fact.name} ({fact.unit.shown})" if fact.unit else fact.name
        return _month_table(MonthTable(((head, fact.shown_members),), "Stated in the record."), fact.name)
    return "<p>Stated in the record.</p>"


def method_note(
    facts: Sequence[Fact], kind: Kind[Any], sources: Mapping[str, str], address: Callable[[str], str], told: str = ""
) -> str:
    """Method, limits and sources of facts that come about alike, in a line or two.

    `sources` gives the link of each source's key, `address` the place of each method's entry, by its id. `told` is the place on
    the page where another fact tells the same method, which is then not told at length again.
    """
    fact = facts[0]
    method = kind.methods.get(fact.method)
    lines = []
    if method:
        rule = f" {prose(method.rule)}" if method.rule else ""
        named = f'<a href="{escaped(address(method.id))}">{prose(method.name)}</a>'
        stop = "" if method.name.endswith("?") else "."
        words = f"{rule} {prose(method.limits)}"
        if told and len(words) > SOON_READ:
            words = f' <a href="#{told}">Rule and limits above</a>.'
        lines.append(f"<p><strong>Method:</strong> {named}{stop}{words}</p>")
    if method and not isinstance(fact.working, Substitution):
        lines += [_scrolled(mathml.line(line)) for line in method.formula]
    keys = dict.fromkeys([*(key for one in facts for key in one.sources), *(method.sources if method else ())])
    if keys:
        links = ", ".join(sources.get(key, escaped(key)) for key in keys)
        head = "Source" if len(keys) == 1 else "Sources"
        lines.append(f"<p><strong>{head}:</strong> {links}</p>")
    return "\n".join(lines)


def _substitution(found: Substitution, result: str) -> str:
    lines = [mathml.formula(found.expression), mathml.put_in(found.expression, found.stands_for, found.terms, result)]
    note = "<p>The formula was fitted to numbers without their units, so it is used without them.</p>" if found.bare else ""
    return "\n".join(_scrolled(line) for line in lines) + (f"\n{note}" if note else "")


def _scrolled(formula: str) -> str:
    """A formula that scrolls in itself where it is wider than the page, by keyboard too."""
    return f'<div class="formula" tabindex="0" role="group" aria-label="Formula">{formula}</div>'


def _month_table(table: MonthTable, caption: str) -> str:
    heads = ("Month", *(sentence(head) for head, _ in table.columns))
    by_month = DataTable(caption=f"{caption}, month by month", columns=heads, rows=table.rows)
    return f"{data_table(by_month)}\n{_concluded(table.conclusion)}"


def _value_table(table: ValueTable, caption: str, result: str) -> str:
    numbers = data_table(DataTable(caption=caption, columns=table.columns, rows=table.rows))
    return f"{numbers}\n{_concluded(table.conclusion)}\n<p>Result: <strong>{number(result)}</strong></p>"


def _concluded(conclusion: str) -> str:
    return f"<p>{prose(stopped(sentence(conclusion)))}</p>"


def _rule_path(path: RulePath, result: str) -> str:
    steps = "\n".join(
        f"<li>{prose(rule.asks)} <span>{prose(rule.numbers)}</span>: <strong>{'yes' if rule.holds else 'no'}</strong></li>"
        for rule in path.rules
    )
    listed = f'<ol class="rules">\n{steps}\n</ol>\n' if steps else ""
    return f"{listed}<p>Result: <strong>{number(result)}</strong></p>"


def _listing(listing: Listing, result: str) -> str:
    lines = "\n".join(f"<li>{prose(line)}</li>" for line in listing.lines or ("none",))
    return f"<p>{prose(listing.heading)}:</p>\n<ul>\n{lines}\n</ul>\n<p>Result: <strong>{number(result)}</strong></p>"
