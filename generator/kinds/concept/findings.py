"""What does not fit together in a concept."""

from __future__ import annotations

from collections.abc import Iterator

from generator.kinds.concept.record import ConceptRecord
from generator.records.finding import Finding


def findings(record: ConceptRecord) -> Iterator[Finding]:
    """Rows of the table that do not fit its columns."""
    if record.table is None:
        return
    wanted = len(record.table.columns)
    for index, row in enumerate(record.table.rows):
        if len(row) != wanted:
            yield Finding(
                path=("table", "rows", index), expected=f"{wanted} cells, one for each column", found=str(len(row)),
                mend="add what is missing, or remove what is too much; put a cell that holds a comma in quotes",
            )  # fmt: skip
