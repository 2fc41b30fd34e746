"""What is told about an investigation of production: contradictions, impossible readings, and what the spread hides."""

from __future__ import annotations

import pytest

from generator.diagnostics import Severity
from generator.records.checking import check
from generator.records.located import located
from tests.kinds.productivity.small_series import DEEP, DESIGN, GRAZED, GREW, TOP, bottles, harvest
from tests.kinds.small_records import HEAD, doubts, findings, kind


def told(text: str) -> list[tuple[object, str]]:
    return [(f.path, f.found) for f in findings("productivity", text)]


def doubted(text: str) -> list[tuple[str, str]]:
    found = doubts("productivity", text)
    assert {Severity.WARNING} >= {one.severity for one in found}
    assert all(one.expected and one.mend for one in found)
    return [(one.rule, one.found) for one in found]


def refused(text: str) -> list[tuple[str, str]]:
    """What the record's model says, with the field."""
    _, problems = check(located(f"{HEAD}{text}".encode(), "small.yaml"), kind("productivity").record)
    return [(problem.field, problem.expected) for problem in problems]


def test_a_record_has_one_of_the_two_methods() -> None:
    assert [((), "neither")] == told(DESIGN)
    assert [((), "both")] == told(bottles() + harvest(("", GREW)).removeprefix(DESIGN))


def test_a_record_without_cautions_is_refused() -> None:
    assert [("cautions", "this field")] == refused(bottles().replace("cautions: [Take care.]\n", ""))
    assert [("cautions", "at least one item")] == refused(bottles().replace("cautions: [Take care.]", "cautions: []"))


@pytest.mark.parametrize(
    ("old", "new", "field"),
    [
        ("incubation: 4", "incubation: 0", "bottles.incubation"), ("incubation: 4", "incubation: -4", "bottles.incubation"),
        ("light_hours: 10", "light_hours: 0", "bottles.light_hours"), ("light_hours: 10", "light_hours: 25", "bottles.light_hours"),
        ("[9, 9.4]", "[9, 94]", "bottles.depths[0].light[1]"), ("[9, 9.4]", "[]", "bottles.depths[0].light"), ("depth: 0", "depth: -1", "bottles.depths[0].depth"),
        ("light_hours: 10", "light_hours: 10\n  photosynthetic_quotient: 12", "bottles.photosynthetic_quotient"),
    ],
)  # fmt: skip
def test_impossible_numbers_of_bottles_are_refused(old: str, new: str, field: str) -> None:
    assert [field] == [where for where, _ in refused(bottles().replace(old, new, 1))]


@pytest.mark.parametrize(
    ("old", "new", "field"),
    [
        ("quadrat_area: 0.25", "quadrat_area: 0", "harvest.quadrat_area"), ("[30, 34]", "[30, -34]", "harvest.plots[0].harvests[1].dry_mass[1]"),
        ("[30, 34]", "[]", "harvest.plots[0].harvests[1].dry_mass"), ("day: 50", "day: -5", "harvest.plots[0].harvests[1].day"),
        ("quadrat_area: 0.25", "quadrat_area: 0.25\n  carbon_fraction: 45", "harvest.carbon_fraction"),
    ],
)  # fmt: skip
def test_impossible_numbers_of_harvests_are_refused(old: str, new: str, field: str) -> None:
    assert [field] == [where for where, _ in refused(harvest(("", GREW)).replace(old, new, 1))]


@pytest.mark.parametrize("depth", ["0", "4"])
def test_depths_go_down(depth: str) -> None:
    below = TOP | {"depth": "4"}
    assert [(("bottles", "depths", 1, "depth"), f"{depth} m")] == told(bottles(below, TOP | {"depth": depth}))
    assert [] == told(bottles(TOP, below))


@pytest.mark.parametrize("day", [50, 20])
def test_harvests_follow_each_other(day: int) -> None:
    cuts = (*GREW, (float(day), "[1]"))
    assert [(("harvest", "plots", 0, "harvests", 2, "day"), str(day))] == told(harvest(("", cuts)))


def test_one_harvest_is_no_production() -> None:
    assert [(("harvest", "plots", 0, "harvests"), "one")] == told(harvest(("", GREW[:1])))


def test_grazing_is_worked_out_from_one_pair() -> None:
    assert [(("harvest", "plots", 2, "grazing"), "another one")] == told(
        harvest(("grazing: open", GREW), ("grazing: kept_out", GREW), ("grazing: open", GREW))
    )


def test_names_of_the_whole_are_not_for_parts() -> None:
    assert [(("bottles", "depths", 0, "id"), '"water_column"')] == told(bottles().replace("id: d0", "id: water_column"))
    assert [(("harvest", "plots", 0, "id"), '"grazing"')] == told(harvest(("", GREW)).replace("id: p0", "id: grazing"))


def test_readings_that_tell_everything_apart_leave_no_doubt() -> None:
    assert [] == doubted(bottles())
    assert [] == doubted(harvest(("grazing: kept_out", GREW), ("grazing: open", GRAZED)))


def test_dark_bottles_that_gain_oxygen_are_doubted_with_the_numbers() -> None:
    ((rule, found),) = doubted(bottles({"dark": "[8.4, 8.6]"}))
    assert ("dark_above_initial", "8.50 ± 0.10 mg O₂ L⁻¹") == (rule, found)
    (one,) = doubts("productivity", bottles({"dark": "[8.4, 8.6]"}))
    assert ("dark bottles no higher than the initial ones, 8.10 ± 0.10 mg O₂ L⁻¹", ("bottles", "depths", 0, "dark")) == (one.expected, one.path)


def test_light_bottles_below_the_dark_ones_are_doubted() -> None:
    rules = [rule for rule, _ in doubted(bottles({"light": "[7.0, 7.2]"}))]
    assert ["light_below_dark"] == rules


def test_a_loss_in_the_light_is_no_mistake() -> None:
    """Below the compensation depth it is what happens; only where chance could explain it something is said."""
    assert [] == doubted(bottles(DEEP | {"light": "[5.7, 5.6]"}))


def test_a_single_reading_is_told_wherever_it_stands() -> None:
    assert [("single_reading", "one")] * 2 == doubted(bottles({"light": "[9.2]", "dark": "[7.5]"}))
    assert [("single_reading", "one")] == doubted(harvest(("", (GREW[0], (50.0, "[32]")))))


def test_a_difference_that_the_spread_hides_is_told_with_both_numbers() -> None:
    (one,) = doubts("productivity", bottles({"light": "[8.1, 8.3]"}))
    assert ("not_told_apart", "0.0250 mg O₂ L⁻¹ h⁻¹") == (one.rule, one.found)
    assert "net production per hour of more than twice its standard error, 0.0354 mg O₂ L⁻¹ h⁻¹" == one.expected
    assert [("not_told_apart", "0.0800 g m⁻² d⁻¹")] == doubted(harvest(("", (GREW[0], (50.0, "[11, 13]")))))


def test_what_grazers_ate_can_be_hidden_too() -> None:
    near = ((0.0, "[10, 12]"), (50.0, "[28, 34]"))
    assert [("not_told_apart", "0.08 g m⁻² d⁻¹")] == doubted(harvest(("grazing: kept_out", GREW), ("grazing: open", near)))


def test_more_growth_where_grazers_fed_is_doubted() -> None:
    assert "grazed_plot_grew_more" in [rule for rule, _ in doubted(harvest(("grazing: open", GREW), ("grazing: kept_out", GRAZED)))]


def test_a_slip_of_the_pen_shows_as_a_wide_spread() -> None:
    assert "wide_spread" in [rule for rule, _ in doubted(bottles({"light": "[9.2, 9.3, 19.2]"}))]
    assert "wide_spread" in [rule for rule, _ in doubted(harvest(("", (GREW[0], (50.0, "[3, 3, 3, 300]")))))]


def test_bottles_that_hang_into_the_night_are_doubted() -> None:
    assert [("incubation_into_the_night", "12.0 h")] == doubted(bottles(incubation="12"))
    assert [("incubation_into_the_night", "12.0 h")] == doubted(bottles(head="units: {incubation: min}\n", incubation="720"))


def test_a_harvest_after_the_peak_is_doubted() -> None:
    assert [("past_the_peak", "100.0 ± 4.0 g m⁻²")] == doubted(harvest(("", (*GREW, (90.0, "[24, 26]")))))


@pytest.mark.parametrize("text", [bottles({"initial": "[0]", "light": "[0]", "dark": "[0]"}), harvest(("", ((0.0, "[0]"), (1.0, "[0]"))))])
def test_nothing_at_all_is_told_without_a_crash(text: str) -> None:
    assert "single_reading" in [rule for rule, _ in doubted(text)]
