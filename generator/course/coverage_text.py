"""Coverage to read: as a table for the terminal, and as Markdown for the teacher's folder."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Iterator

from generator.course.coverage import Coverage, CoveredTopic, Serving
from generator.quantities.text import sentence

WIDTH = 100
"""Columns of the table in the terminal."""


def table(coverage: Coverage) -> str:
    """Topic by topic: each objective, the records that serve it, and their questions; the gaps stand last."""
    width = max((len(serving.record) for serving in coverage.servings), default=0)
    lines = []
    for covered in coverage.topics:
        lines += [f"{covered.topic.title} ({_status(covered)})"]
        for one in covered.objectives:
            lines += _wrapped(f"{one.objective.id}: {one.objective.says}", "  ", "    ")
            for serving in one.served_by:
                lines += _wrapped(_counted(serving), f"    {serving.record:{width}}  ", " " * (width + 6))
        lines += [""]
    lines += ["Gaps", *(f"  {gap}" for gap in coverage.gaps)] if coverage.gaps else ["No gaps."]
    return "\n".join(lines)


def markdown(coverage: Coverage) -> str:
    """The same as a document, with the prompt of every question."""
    lines = [f"# Coverage of {_cell(coverage.title)}", "", "Written by `studyguide coverage`; for teachers only.", "", "## Gaps", ""]
    lines += [f"- {_cell(gap)}" for gap in coverage.gaps] or ["None."]
    for covered in coverage.topics:
        lines += ["", f"## {_cell(covered.topic.title)}", "", f"{sentence(_status(covered))}.", ""]
        lines += _objectives(covered)
    lines += ["", "## Questions", ""]
    lines += ["| Record | Question | Prompt | Rests on |", "| --- | --- | --- | --- |"]
    lines += [
        f"| `{serving.record}` | `{question.id}` | {_cell(question.prompt)} | {question.needs} |"
        for serving in coverage.servings
        for question in serving.questions
    ]
    return "\n".join([*lines, ""])


def _objectives(covered: CoveredTopic) -> Iterator[str]:
    if not covered.objectives:
        return
    yield from ("| Objective | Record | Questions |", "| --- | --- | --- |")
    for one in covered.objectives:
        name = f"{_cell(one.objective.says)} (`{one.objective.id}`)"
        for serving in one.served_by:
            yield f"| {name} | {_cell(serving.title)} (`{serving.record}`) | {_cell(_counted(serving))} |"
        if not one.served_by:
            yield f"| {name} | **none** | **none** |"


def _status(covered: CoveredTopic) -> str:
    tests = f"tested in {', '.join(covered.tests)}" if covered.tests else "in no test"
    return tests if covered.topic.show else f"{tests}; not shown to students yet"


def _counted(serving: Serving) -> str:
    if not serving.questions:
        return "no question"
    number = len(serving.questions)
    return f"{number} question{'' if number == 1 else 's'}: {', '.join(question.id for question in serving.questions)}"


def _wrapped(text: str, first: str, rest: str) -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent=first, subsequent_indent=rest, break_long_words=False, break_on_hyphens=False)


def _cell(text: str) -> str:
    """Text that means only itself in a cell of a Markdown table."""
    return re.sub(r"([\\`*_\[\]<>|#])", r"\\\1", " ".join(text.split()))

