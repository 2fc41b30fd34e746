"""Explanation chains: as a list whose facts lead to their working, and as a drawing to copy or print."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from figures import ChainSequence, DataTable

from generator.course.library import Library
from generator.kind import Subject
from generator.pages.figures import drawing
from generator.quantities.text import filled, sentence
from generator.records.parts import Explanation


def chain(library: Library, subject: Subject[Any], explanation: Explanation, page: str, text: Callable[[str], str]) -> str:
    """A chain as HTML without blank lines; `text` turns a sentence of the record into HTML."""
    steps = "\n".join(f"<li>{text(idea.says)}</li>" for idea in explanation.chain)
    if explanation.joined == "together":
        return f'<p>These reasons work together:</p>\n<ul class="reasons" id="{chain_anchor(explanation.id)}">\n{steps}\n</ul>'
    chart = chain_chart(library, subject, explanation)
    return (
        f'<ol class="chain" id="{chain_anchor(explanation.id)}">\n{steps}\n</ol>\n<details class="drawn">\n<summary>The same as a drawing</summary>\n'
        f"{drawing(chart, page)}\n</details>"
    )


def chain_anchor(explanation: str) -> str:
    """The id of a chain on its page."""
    return f"chain-{explanation.replace('_', '-')}"


def chain_charts(library: Library, subject: Subject[Any]) -> Iterator[ChainSequence]:
    """The drawings of a record's chains; reasons that work together have no order to draw."""
    in_order = (explanation for explanation in subject.record.explanations if explanation.joined != "together")
    return (chain_chart(library, subject, explanation) for explanation in in_order)


def chain_chart(library: Library, subject: Subject[Any], explanation: Explanation) -> ChainSequence:
    """A chain as a drawn sequence."""
    facts = library.facts_for(subject)
    steps = tuple(" ".join(filled(idea.says, facts).split()) for idea in explanation.chain)
    asks = sentence(explanation.asks)
    return ChainSequence(
        name=f"{subject.name}.chain.{explanation.id}",
        title=asks,
        description=f"{len(steps)} steps, each leading to the next. It ends: {steps[-1]}" if len(steps) > 1 else f"One step: {steps[0]}",
        reading=("Follow the arrows: each step is the cause of the next.",),
        table=DataTable(
            caption=asks, columns=("Step", "What happens"), rows=tuple((str(n), step) for n, step in enumerate(steps, start=1))
        ),
        steps=steps,
    )  # fmt: skip
