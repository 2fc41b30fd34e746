"""What does not fit together in a concept."""

from __future__ import annotations

from generator.kinds.concept.findings import findings
from generator.kinds.concept.record import ConceptRecord
from generator.records.checking import check
from generator.records.located import located
from tests.kinds.concept.test_record import HEAD, QUESTIONS, SECTIONS


def found(table: str) -> list[tuple[object, str, str]]:
    record, problems = check(located(f"{HEAD}{SECTIONS}{QUESTIONS}{table}".encode(), "small.yaml"), ConceptRecord)
    assert () == problems
    return [(one.path, one.expected, one.found) for one in findings(record)]


def test_row_that_does_not_fit_the_columns_is_told() -> None:
    table = "table: {caption: C, columns: [a, b], rows: [[1st, x], [2nd], [3rd, x, y]]}\n"
    assert [(("table", "rows", 1), "2 cells, one for each column", "1"), (("table", "rows", 2), "2 cells, one for each column", "3")] == found(table)


def test_table_may_be_left_out() -> None:
    assert [] == found("")
