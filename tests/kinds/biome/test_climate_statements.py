"""Statements, orders and dry months: each option right or wrong by the numbers of the record, and none where they do not decide."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.kinds.biome import climate_statements as statements
from generator.quantities.shown import MONTHS
from generator.questions.item_writing import flaws
from generator.questions.question import Choice, Rejected, SeveralChoice
from tests.kinds.biome.asked import STEADY, WARM, asked, of_demo, right_and_wrong, small
from tests.kinds.biome.test_facts import SOUTH, biome

HIDDEN = {"clim.one-year", "clim.month-hides-days"}
"""Behind statements on single days and years, which no diagram of means can show; of a place one is drawn."""
EVEN = [70, 65, 80, 85, 92, 95, 98, 92, 82, 75, 80, 76]


def all_said(station: object) -> tuple[set[str], dict[str, str]]:
    """Every statement that can be made of a station, right ones and wrong ones by their idea."""
    makers = ("_warmth_and_rain", "_season_of_rain", "_driest", "_wettest", "_spread", "_nights", "_days_and_years", "_growth")
    found = [one for maker in makers for one in getattr(statements, maker)(station)]
    return {one.text for one in found if isinstance(one, statements.Sound)}, {one.misconception: one.text for one in found if isinstance(one, statements.Wrong)}


def test_statements_on_a_dry_summer_hold_by_its_numbers() -> None:
    """448 of 533 mm from October to March; July, the warmest, has 1 mm, January 88."""
    right, wrong = all_said(small())
    assert {
        "Less precipitation falls in July than in January", "Over two thirds of the year's precipitation falls from October to March",
        "The month with the least precipitation is dry: the precipitation line runs below the temperature line",
    } == right  # fmt: skip
    assert {"clim.warm-is-wet", "clim.even-rain", "clim.mean-hides"} == set(wrong) - HIDDEN
    assert 1 == len(HIDDEN & set(wrong))


def test_statements_on_frost_and_summer_rain_hold_by_its_numbers() -> None:
    """Grassland: seven months of 5 °C or more, nine without frost; June is wettest, July warmest; 42 mm in July, 12 in January."""
    right, wrong = all_said(of_demo("temperate_grassland"))
    assert "A mean of 5 °C, enough for most plants to grow, is reached in 7 months" in right
    assert "A mean of 5 °C, enough for most plants to grow, is reached in 9 months" == wrong["clim.thaw-is-growth"]
    assert "Less precipitation falls in July than in January" == wrong["clim.warm-is-dry"]
    assert {"clim.least-is-dry", "clim.warm-is-wet"} <= set(wrong)


def test_month_that_is_warmest_and_wettest_is_told_as_such() -> None:
    right, wrong = all_said(small(precip=EVEN))
    assert {"The wettest month is also the warmest", "The month with the least precipitation brings over half as much as the one with the most"} <= right
    assert "clim.warm-is-wet" not in wrong


def test_steady_wet_year_has_statements_of_its_own() -> None:
    right, wrong = all_said(small(STEADY, [210, 225, 300, 330, 270, 190, 165, 170, 205, 290, 335, 260], "latitude: 1"))
    assert {"The monthly means of temperature lie within 1.5 °C of each other", "Each month brings more than 100 mm"} == right
    assert {"clim.least-is-dry"} == set(wrong) - HIDDEN


def test_desert_is_dry_in_its_wettest_month_too() -> None:
    assert "Even the month with the most precipitation is dry: the precipitation line runs below the temperature line" in all_said(of_demo("hot_desert"))[0]


def test_where_nothing_ever_falls_no_month_is_called_wet() -> None:
    assert not {*HIDDEN, "clim.even-rain", "clim.warm-is-wet"} & set(all_said(small(precip=[0] * 12))[1])


@pytest.mark.parametrize("name", ["alpine", "hot_desert", "savanna", "tundra", "tropical_rain_forest", "temperate_deciduous_forest"])
def test_two_statements_hold_and_none_gives_another_away(name: str) -> None:
    """No two are about the same: months of growth are told once, and evenness not beside unevenness."""
    right, wrong = right_and_wrong(statements.diagram_shows(of_demo(name)))
    assert 2 == len(right) and 2 <= len(wrong) <= 3
    assert 1 >= sum("5 °C" in text for text in (*right, *wrong.values()))
    assert 1 >= sum("evenly" in text or "over twice" in text or "third" in text or "half" in text for text in (*right, *wrong.values()))


def test_flat_year_leaves_too_little_to_say() -> None:
    assert isinstance(statements.diagram_shows(small([20] * 12, [90] * 12)), Rejected)


def test_dry_months_are_told_from_the_driest_month() -> None:
    question = statements.dry_months(of_demo("temperate_grassland"))
    assert isinstance(question, Choice)
    assert ["July to September"] == [option.text for option in question.options if option.right]
    assert "February" in [option.text for option in question.options]


def test_season_of_the_other_hemisphere_is_a_wrong_option() -> None:
    """Six months from January to March are July to September."""
    south = asked(biome(SOUTH, latitude="latitude: -46.5", precip="[42, 34, 26, 20, 15, 12, 12, 10, 16, 26, 48, 66]"))
    question = statements.dry_months(south)
    assert isinstance(question, Choice)
    assert ["January to March"] == [option.text for option in question.options if option.right]
    assert ["July to September"] == [option.text for option in question.options if option.misconception == "clim.hemisphere"]


@pytest.mark.parametrize("precip", [[200] * 12, [0] * 12, [0, 200] * 6])
def test_dry_months_are_not_asked_for_where_all_none_or_scattered_ones_are(precip: list[float]) -> None:
    assert isinstance(statements.dry_months(small(WARM, precip)), Rejected)


def test_how_dry_a_place_is_is_asked_where_its_rain_alone_misleads() -> None:
    """576 mm are plenty in the boreal forest, 920 mm too little in the savanna; of 2950 mm nobody doubts."""
    wet, dry = (statements.why_dry(of_demo(name)) for name in ("boreal_forest", "savanna"))
    assert ["at least as much falls", "less falls"] == [question.solution.partition(": ")[2].partition(" there")[0] for question in (wet, dry)]
    assert isinstance(statements.why_dry(of_demo("tropical_rain_forest")), Rejected)
    assert isinstance(statements.why_dry(of_demo("tundra")), Rejected)


def holds(text: str, temp: list[float], rain: list[float]) -> bool | None:
    """Whether a statement is true of these months, worked out from its words alone; None where no diagram of means can tell."""
    months = [MONTHS.index(word) for word in re.findall("|".join(MONTHS), text)]
    if any(words in text for words in ("stays above", "Next year", "rainiest day", "more days with")):
        return None
    if text.startswith("The wettest month"):
        return rain[temp.index(max(temp))] == max(rain)
    if text.startswith("Less precipitation"):
        return rain[months[0]] < rain[months[1]]
    if text.startswith("Even the month with the most"):
        month = rain.index(max(rain))
        return rain[month] < 2 * temp[month]
    if "dry: the precipitation line" in text:
        return all(rain[month] < 2 * temp[month] for month in range(12) if rain[month] == min(rain))
    if found := re.search(r"(Over two thirds|About half) of", text):
        part = sum(rain[(months[0] + step) % 12] for step in range(6)) / sum(rain)
        return part > 2 / 3 if found[1] == "Over two thirds" else 0.4 <= part <= 0.6
    if found := re.search(r"reached in (\d+) months", text):
        return int(found[1]) == sum(one >= 5 for one in temp)
    checks = {
        "over twice as much": max(rain) > 2 * min(rain), "over half as much": 2 * min(rain) > max(rain), "spread evenly": max(rain) <= 1.25 * min(rain),
        "more than 100 mm": min(rain) > 100, "lie within": max(temp) - min(temp) < float((re.search(r"within ([\d.]+) °C", text) or ["", "0"])[1]),
    }  # fmt: skip
    (verdict,) = [verdict for words, verdict in checks.items() if words in text]
    return verdict


YEARS = st.tuples(st.floats(-20, 28), st.floats(0, 20), st.lists(st.floats(-1, 1), min_size=12, max_size=12), st.lists(st.integers(0, 300), min_size=12, max_size=12))


@settings(max_examples=60, deadline=None)
@given(YEARS)
def test_statements_on_any_year_are_true_or_false_by_its_months(year: tuple[float, float, list[float], list[int]]) -> None:
    mean, swing, noise, rain = year
    temp = [round(mean + swing * (1 - abs(month - 6) / 3) + noise[month], 1) for month in range(12)]
    item = statements.diagram_shows(small(temp, rain))
    if isinstance(item, SeveralChoice):
        assert [] == list(flaws(item))
        for option in item.options:
            assert holds(option.text, temp, [float(one) for one in rain]) in ((True,) if option.right else (False, None)), option.text


@pytest.mark.parametrize(("record", "month", "told"), [
    ("mediterranean_shrubland", "July", "Least falls then, and July is dry, but not alone. A month is dry if"), ("temperate_grassland", "February", "That is when least precipitation falls."),
])  # fmt: skip
def test_month_with_least_is_called_dry_only_where_it_is(record: str, month: str, told: str) -> None:
    options = {option.text: option.feedback for option in statements.dry_months(of_demo(record)).options}
    assert options[month].startswith(told)
