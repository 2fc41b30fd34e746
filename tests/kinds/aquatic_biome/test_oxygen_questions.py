"""Oxygen and salt: right answers and slips worked out by hand, readings off the saturation curve, and orders that it forces."""

from __future__ import annotations

import pytest

from generator.kinds.aquatic_biome import oxygen_questions as oxygen
from generator.questions.question import Choice, NumberEntry, Rejected
from generator.science.dissolved_oxygen import OXYGEN_SATURATION
from tests.kinds.aquatic_biome.asked import number, of_demo, order, read, small


def test_oxygen_percent_knows_the_usual_slips() -> None:
    """Source: arithmetic; at 20 °C water can hold 9.08 mg/L, four times 2.27."""
    answer, slips = number(oxygen.oxygen_percent(small("dissolved_oxygen: 2.27")[0]))
    assert ("25.0 %", {"400 %", "0.250 %", "75.0 %"}) == (answer, set(slips))


def test_no_oxygen_at_all_is_still_a_fair_question() -> None:
    question = oxygen.oxygen_percent(small("dissolved_oxygen: 0")[0])
    assert isinstance(question, NumberEntry)
    assert question.accepted.low == question.accepted.high == 0


def test_loss_by_warming_is_measured_from_the_coldest_water() -> None:
    """Source: arithmetic on the stream: from 14.17 to 10.50 mg/L are 25.9 %; of the latter 34.9 %, and 74.1 % are left."""
    answer, slips = number(oxygen.capacity_loss(of_demo("stream")[0]))
    assert ("26.1 %", {"35.2 %": "carb.pct-base", "73.9 %": "nit.complement", "0.261 %": "carb.pct-whole"}) == (answer, slips)


@pytest.mark.parametrize("fields", ["", "temperature: 26, yearly_temperature: {low: 25, high: 27}"])
def test_loss_that_is_unknown_or_small_is_not_asked_for(fields: str) -> None:
    assert isinstance(oxygen.capacity_loss(small(fields)[0]), Rejected)


def test_highest_temperature_for_so_much_oxygen_is_read_off_the_curve() -> None:
    """Fresh water holds 8.26 mg/L at 25 °C and 7.56 at 30 °C (Benson and Krause, in the tables of Standard Methods; from memory)."""
    item = oxygen.warmest_for_oxygen(of_demo("stream")[0])
    right, slips = read(item)
    assert "can such water hold 8 mg L⁻¹ of oxygen or more" in item.prompt
    assert (("25 °C",), "num.not-reached", "wat.warm-holds-more", "num.past-first") == (right, slips["30 °C"], slips["40 °C"], slips["0 °C"])


def test_warm_water_is_asked_for_the_reason_because_the_chart_shows_that_it_holds_less() -> None:
    """Reef: 25.5 to 29.5 °C."""
    item = oxygen.warm_water(of_demo("reef")[0])
    assert isinstance(item, Choice)
    assert item.prompt.startswith("Over the year the water at Lantern Bank is at 25.5 to 29.5 °C.")
    assert {"wat.used-is-capacity", "wat.no-room", "wat.summer-air"} == {option.misconception for option in item.options if not option.right}


def test_density_and_oxygen_both_have_to_be_known_of_fresh_water_that_runs_into_salt_water() -> None:
    item = oxygen.salt(of_demo("estuary")[0])
    assert isinstance(item, Choice)
    assert "It floats on top, and could hold more than the salt water" == next(option.text for option in item.options if option.right)
    assert [2, 2] == [sum(words in option.text for option in item.options) for words in ("could hold more", "floats")]


def test_salt_water_must_be_colder_to_hold_as_much_oxygen_as_fresh_water() -> None:
    """Fresh water of 25 °C holds 8.3 mg/L, sea water of 15 °C 8.1, so it must be a little colder than that (tables of Benson and Krause; from memory)."""
    right, wrong = read(oxygen.salt_on_the_curves(of_demo("reef")[0]))
    assert (("14 °C",), "wat.oxygen-constant", "wat.salt-holds-oxygen") == (right, wrong["25 °C"], wrong["30 °C"])


def test_without_a_dot_on_the_chart_its_curve_is_not_read() -> None:
    assert isinstance(oxygen.warmest_for_oxygen(small("")[0]), Rejected)


def test_colder_fresh_waters_come_first_and_sea_water_later_than_its_warmth_would_have_it() -> None:
    """From 1 °C to 20 °C; 16 °C, with 9.86 mg/L, is too near to 13 °C, with 10.5. Sea water of 15 °C holds 8.1 mg/L (tables of Benson and Krause; from memory)."""
    found = order(oxygen.capacity_order(of_demo("stream")))
    assert ["1 °C", "9.5 °C", "13 °C", "20 °C", "15 °C"] == [text.rpartition(" at ")[2] for text in found]
    assert "Sea water at 15 °C" == found[-1]


def test_sea_water_holds_about_a_fifth_less_as_the_prompt_says() -> None:
    """Between 0 and 30 °C; source: tables of Benson and Krause, 14.6 and 11.5 mg/L at 0 °C, 7.6 and 6.2 at 30 °C; from memory."""
    for temp in (273.15, 303.15):
        fresh, sea = (OXYGEN_SATURATION.compute(absolute_temperature=temp, salinity=salinity) for salinity in (0.0, oxygen.SEA))
        assert 0.17 < 1 - sea / fresh < 0.23


@pytest.mark.parametrize("name", ["estuary", "reef", "open_sea"])
def test_waters_of_different_salt_are_not_ordered_by_warmth(name: str) -> None:
    assert isinstance(oxygen.capacity_order(of_demo(name)), Rejected)


def test_one_water_at_one_temperature_is_no_order() -> None:
    assert isinstance(oxygen.capacity_order(small("")), Rejected)
