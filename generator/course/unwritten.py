"""Texts of a record that still are as `studyguide new` wrote them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from generator.course.references import texts_in
from generator.course.template import placeholders
from generator.diagnostics import Severity
from generator.kind import Kind
from generator.records.finding import Finding
from generator.records.wording import excerpt

UNWRITTEN = "unwritten"


def unwritten(kind: Kind[Any], record: Any) -> Iterator[Finding]:
    """A warning for each text in which one of the kind's placeholders stands; `record` is the record as read."""
    for path, text in texts_in(record):
        left = next((one for one in placeholders(kind) if _stands(one, text)), None)
        if left is not None:
            yield Finding(
                path=path, expected="a text by its author", found=f'"{excerpt(left)}", as a new record has it',
                mend="put a text of your own in its place", severity=Severity.WARNING, rule=UNWRITTEN, fragment=left,
            )  # fmt: skip


def _stands(placeholder: str, text: str) -> bool:
    """Whole sentences may stand among others; words without a full stop must be all there is, for they may be another's words too."""
    whole = " ".join(text.split())
    return placeholder in whole if placeholder.endswith((".", "?")) else placeholder == whole
