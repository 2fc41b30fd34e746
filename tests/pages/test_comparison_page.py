"""Tables that set records side by side: where a unit stands, and what stands for a number that is not known."""

from __future__ import annotations

from dataclasses import replace

import pytest

from generator.kind import Comparison, ComparisonRow
from generator.kinds import all_kinds
from generator.pages.comparison_page import comparison_page
from generator.pages.site import Site
from generator.quantities.amount import Amount
from generator.quantities.fact import Fact, stated
from generator.quantities.units import unit
from tests.kinds.small_records import library
from tests.pages.rendered import plain, rendered

RECORD = "biome/temperate_grassland"
Cell = Fact | str


def fact(value: float | None, label: str | None, **more: float) -> Fact:
    written = "" if value is None else f"{value:g}"
    amount = Amount(value=None if value is None else float(value), written=written, **more)
    return stated("harrow_plain.annual_precip", "Fall", amount, None if label is None else unit(label))


def table(*columns: tuple[Cell, ...]) -> list[list[str]]:
    """Heads and lines of a comparison with these cells, the line's own name left out."""
    rows = tuple(ComparisonRow(subject=RECORD, label=f"Line {n}", cells=cells) for n, cells in enumerate(zip(*columns, strict=True)))
    kind = replace(
        all_kinds()["biome"],
        compare=lambda _: Comparison(heads=tuple(f"Head {n}" for n in range(len(columns))), rows=rows),
    )
    found = rendered(comparison_page(Site(library=library(), kinds=all_kinds()), kind)).find("table")
    assert found is not None
    return [[plain(cell.get_text()) for cell in row.find_all(["th", "td"])][1:] for row in found.find_all("tr")]


def test_unit_that_a_column_shares_stands_in_its_head_only() -> None:
    assert [["Head 0 (mm)"], ["12"], ["30"]] == table((fact(12, "mm"), fact(30, "mm")))


def test_units_that_differ_stand_in_the_cells() -> None:
    assert [["Head 0"], ["12 mm"], ["30 m"]] == table((fact(12, "mm"), fact(30, "m")))


def test_each_column_has_its_own_unit() -> None:
    assert [["Head 0 (mm)", "Head 1", "Head 2 (m)"], ["1", "2 mm", "3"], ["4", "5 m", "6"]] == table(
        (fact(1, "mm"), fact(4, "mm")), (fact(2, "mm"), fact(5, "m")), (fact(3, "m"), fact(6, "m"))
    )


def test_number_that_is_not_known_says_so_and_leaves_the_unit_to_the_others() -> None:
    assert [["Head 0 (mm)"], ["12"], ["not known"]] == table((fact(12, "mm"), fact(None, "m")))


@pytest.mark.parametrize("cells", [(fact(None, "mm"), fact(None, "mm")), ("4", "5"), (fact(2, ""), fact(3, ""))])
def test_column_without_a_unit_to_name_has_its_bare_head(cells: tuple[Cell, ...]) -> None:
    """Nothing known, no facts at all, numbers without a dimension."""
    assert ["Head 0"] == table(cells)[0]


def test_spread_and_range_stay_when_the_unit_goes_into_the_head() -> None:
    assert [["Head 0 (mm)"], ["12 ± 3"], ["10 to 20"]] == table((fact(12, "mm", plus_minus=3.0), fact(15, "mm", low=10.0, high=20.0)))


def test_a_number_without_a_dimension_beside_one_with_keeps_the_unit_in_the_cell() -> None:
    assert [["Head 0"], ["12 mm"], ["3"]] == table((fact(12, "mm"), fact(3, "")))


def test_a_comparison_says_which_numbers_are_invented() -> None:
    site = Site(library=library(), kinds=all_kinds())
    said = {name: [plain(one.get_text()) for one in rendered(comparison_page(site, all_kinds()[name])).select(".provenance")] for name in ("biome", "cycle")}
    assert ["The numbers on this page are invented for The Long Traverse."] == said["biome"]
    invented = [subject.record.title for subject in library().subjects.values() if subject.kind == "cycle" and subject.record.data == "invented" and subject.record.use == "page"]
    assert f"Numbers invented for The Long Traverse: {', '.join(invented)}." in said["cycle"][0]
    assert "Numbers from published works, which the pages of the records name: " in said["cycle"][0]


def test_lines_of_one_record_stand_under_its_name_which_they_do_not_repeat() -> None:
    page = rendered(comparison_page(Site(library=library(), kinds=all_kinds()), all_kinds()["cycle"]))
    lines = {plain(head.get_text()): [plain(row.get_text()) for row in group.select('[scope="row"]')] for group in page.select("tbody") for head in group.select('[scope="rowgroup"]')}
    cycles = [subject for subject in library().subjects.values() if subject.kind == "cycle" and subject.record.use == "page"]
    assert {cycle.record.title: [reservoir.label for reservoir in cycle.record.reservoirs] for cycle in cycles} == lines
