"""Charts of investigations: means and bars from facts, every reading a dot, and what is said of them."""

from __future__ import annotations

import pytest
from figures import BarredSeries, ErrorBarChart, ProductionProfile

from generator.kind import Subject
from generator.kinds.productivity.charts import charts
from tests.kinds.productivity.small_series import DEEP, GRAZED, GREW, TOP, bottles, harvest, of
from tests.kinds.small_records import demo


def of_sort(subject: Subject, sort: type) -> ErrorBarChart | ProductionProfile:
    (found,) = [chart for chart in charts(subject) if type(chart) is sort and not chart.name.endswith("readings")]
    return found


def readings(subject: Subject) -> ErrorBarChart:
    (found,) = [chart for chart in charts(subject) if chart.name.endswith("readings")]
    assert isinstance(found, ErrorBarChart)
    return found


def means(series: BarredSeries) -> list[float]:
    return [mean.mean for mean in series.means]


def test_bottles_show_what_changed_since_the_start_with_two_standard_errors() -> None:
    """Source: arithmetic, 9.2 - 8.1 and 7.5 - 8.1; twice sqrt(0.2² + 0.1²) and sqrt(0.1² + 0.1²)."""
    light, dark = readings(of(bottles())).series
    assert ([pytest.approx(1.1)], [pytest.approx(-0.6)]) == (means(light), means(dark))
    assert (pytest.approx(2 * 0.05**0.5), pytest.approx(2 * 0.02**0.5)) == (light.means[0].error, dark.means[0].error)


def test_every_bottle_is_a_dot() -> None:
    light, dark = readings(of(bottles())).series
    assert (pytest.approx((0.9, 1.3)), pytest.approx((-0.7, -0.5))) == (light.means[0].readings, dark.means[0].readings)


def test_bottles_hang_at_their_depths_and_not_only_one_after_the_other() -> None:
    chart = readings(of(bottles(TOP, DEEP, DEEP | {"depth": "5"})))
    assert ((0.0, 4.0, 5.0), True) == (tuple(at for at, _ in chart.places), chart.to_scale)
    assert [[0.0, 4.0, 5.0]] * 2 == [[mean.at for mean in series.means] for series in chart.series]


def test_chart_says_what_its_bars_are() -> None:
    assert "± two standard errors" in readings(of(bottles())).bars
    assert "No bars" in readings(of(bottles({"initial": "[8]", "light": "[9]", "dark": "[7]"}))).bars
    assert None is readings(of(bottles({"light": "[9]"}))).series[0].means[0].error


def test_several_depths_have_a_profile_of_the_day_with_the_compensation_depth() -> None:
    chart = of_sort(of(bottles(TOP, DEEP)), ProductionProfile)
    assert isinstance(chart, ProductionProfile)
    assert [[4.25, 1.0], [3.6, 3.6], [0.65, -2.6]] == [pytest.approx(means(series)) for series in chart.series]
    assert [[0.0, 4.0]] * 3 == [[mean.at for mean in series.means] for series in chart.series]
    assert (pytest.approx(0.8), "0.800 m") == (chart.compensation_m, chart.compensation_label)
    assert "As much is made as used at 0.800 m" in chart.description
    assert any("where these two lines cross" in step for step in chart.reading)


def test_profile_without_a_compensation_depth_says_why() -> None:
    chart = of_sort(of(bottles(TOP, TOP | {"depth": "4"})), ProductionProfile)
    assert isinstance(chart, ProductionProfile)
    assert (None, "") == (chart.compensation_m, chart.compensation_label)
    assert "not reached" in chart.description
    assert not any("cross" in step for step in chart.reading)


def test_single_depth_has_its_rates_side_by_side() -> None:
    chart = of_sort(of(bottles()), ErrorBarChart)
    assert isinstance(chart, ErrorBarChart)
    assert [0.425, 0.15, 0.275] == pytest.approx([mean for series in chart.series for mean in means(series)])
    assert ["Gross production", "Respiration", "Net production"] == [label for _, label in chart.places]


def test_harvests_stand_at_their_days() -> None:
    chart = of_sort(of(harvest(("grazing: kept_out", GREW), ("grazing: open", GRAZED))), ErrorBarChart)
    assert isinstance(chart, ErrorBarChart)
    assert [(0.0, "Day 0"), (50.0, "Day 50")] == list(chart.places)
    assert [[44, 128], [44, 84]] == [pytest.approx(means(series)) for series in chart.series]
    assert (120, 136) == pytest.approx(chart.series[0].means[1].readings)
    assert chart.joined and any("grazers ate" in step for step in chart.reading)


def test_more_plots_than_marks_are_still_drawn() -> None:
    chart = of_sort(of(harvest(*[("", GREW)] * 8)), ErrorBarChart)
    assert isinstance(chart, ErrorBarChart)
    assert 8 == len(chart.series)


@pytest.mark.parametrize("record", ["productivity/halden_water_bottles", "productivity/harrow_plain_harvest"])
def test_tables_have_the_numbers_as_shown(record: str) -> None:
    subject = demo(record)
    shown = {fact.shown_number for fact in subject.facts.values()} | {fact.shown_bare for fact in subject.facts.values()}
    for chart in charts(subject):
        numbers = [cell for row in chart.table.rows for cell in row[1:] if cell[-1].isdigit() and not cell[0].isalpha()]
        assert numbers and set(numbers) <= shown, chart.name
