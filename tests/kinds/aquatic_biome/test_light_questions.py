"""Light: right answers and slips worked out by hand from the laws of light in water, and what is not asked where it would be trivial."""

from __future__ import annotations

import pytest

from generator.kinds.aquatic_biome import light_questions as light
from generator.questions.question import ChartReading, Choice, Rejected
from tests.kinds.aquatic_biome.asked import number, of_demo, order, read, small


def right(item: object) -> str:
    assert isinstance(item, Choice), item
    return next(option.text for option in item.options if option.right)


def test_photic_depth_knows_the_usual_slips() -> None:
    """Source: arithmetic on the lake: 0.5 / 4.605, 4.605 × 0.5, 1 / 0.5, 100 / 0.5, and the Secchi depth."""
    answer, slips = number(light.photic_depth(of_demo("lake")[0]))
    assert ("9.21 m", {"0.109 m", "2.30 m", "2.00 m", "200 m", "3.40 m"}) == (answer, set(slips))


def test_photic_depth_that_the_water_does_not_have_is_not_asked_for() -> None:
    assert isinstance(light.photic_depth(of_demo("stream")[0]), Rejected)


def test_rise_of_the_extinction_is_told_from_the_fall_of_the_disk() -> None:
    """Source: arithmetic on the lake: 3.4 / 2.0 is 1.7, a rise by 70 %; 1 - 2.0 / 3.4 is 41.2 %, and 2.0 / 3.4 58.8 %."""
    answer, slips = number(light.murkier(of_demo("lake")[0]))
    assert ("70.0 %", {"41.2 %": "wat.disk-for-extinction", "170 %": "num.times-for-rise", "58.8 %": "wat.secchi-times"}) == (answer, slips)


@pytest.mark.parametrize("extinction", [0.05, 0.5, 5])
def test_half_the_photic_depth_has_ten_percent_whatever_the_water(extinction: float) -> None:
    assert "About 10 %" == right(light.half_way(small(f"depth: 400, light: {{extinction: {extinction}}}")[0]))


@pytest.mark.parametrize(
    ("fields", "case", "answer", "found"),
    [
        ("depth: 5, light: {extinction: 0.5}", "the extinction coefficient of light is 1.2 m⁻¹", "No: ", "3.84 m"),
        ("depth: 50, light: {extinction: 0.5}", "the extinction coefficient of light is 0.082 m⁻¹", "Yes: ", "56.2 m"),
        ("depth: 24, light: {secchi_depth: 3.4}", "a white disk is lost from sight at 9.9 m", "Yes: ", "26.8 m"),
        ("depth: 5, light: {secchi_depth: 3.4}", "a white disk is lost from sight at 1.5 m", "No: ", "4.06 m"),
    ],
)  # fmt: skip
def test_plants_on_the_bottom_are_asked_about_in_water_that_turns_the_answer_of_the_page(fields: str, case: str, answer: str, found: str) -> None:
    """Source: arithmetic, 4.605 / 1.2, 4.605 / 0.082, 4.605 · 9.9 / 1.7 and 4.605 · 1.5 / 1.7; as the waters are, 1 % is left at 9.21 m."""
    question = light.plants_on_the_bottom(small(fields)[0])
    assert question.supposed and case in question.prompt and "9.21 m" not in question.prompt
    assert right(question).startswith(answer) and found in question.solution


@pytest.mark.parametrize("name", ["stream", "open_sea"])
def test_bottom_of_a_brook_and_of_the_deep_sea_leave_no_doubt(name: str) -> None:
    assert isinstance(light.plants_on_the_bottom(of_demo(name)[0]), Rejected)


@pytest.mark.parametrize("depth", [5, 50])
def test_right_verdict_on_the_bottom_has_a_rival_with_a_wrong_reason(depth: float) -> None:
    question = light.plants_on_the_bottom(small(f"depth: {depth}, light: {{extinction: 0.5}}")[0])
    verdict = right(question)[:3]
    assert [2, 2] == [sum(option.text.startswith(word) for option in question.options) for word in ("Yes:", "No:")]
    assert any(option.text.startswith(verdict) for option in question.options if not option.right)


def test_straight_line_is_no_option_where_it_would_fall_below_nothing() -> None:
    question = light.light_at_depth(small("depth: 12, light: {extinction: 0.5}")[0])
    assert isinstance(question, Choice)
    assert 3 <= len(question.options) <= 5 and all(not option.text.startswith("−") for option in question.options)


def test_light_is_asked_for_at_a_depth_that_neither_chart_nor_table_names() -> None:
    """Reef, 0.09 per metre, 12 m: its table goes in steps of 2 m. exp(-0.09 · 5) = 63.8 %; a straight line to 1 % at 51.2 m has 90.3 % there."""
    question = light.light_at_depth(of_demo("reef")[0])
    assert "How much is left 5 m down" in question.prompt and "63.8 %" == right(question)
    assert {"36.2 %", "90.3 %"} <= {option.text for option in question.options}


def test_light_in_a_brook_is_asked_for_in_a_deeper_pool() -> None:
    """0.6 per metre: exp(-0.6 · 0.8) = 61.9 %, and the brook itself is 0.35 m deep."""
    question = light.light_at_depth(of_demo("stream")[0])
    assert "0.8 m down in a pool as clear as that" in question.prompt and "61.9 %" == right(question)


def test_light_is_read_off_where_the_curve_falls_plainly_below_a_round_part() -> None:
    """Lake, 0.5 per metre: 13.5 % at 4 m and 5.0 % at 6 m; a straight line to 1 % at 9.21 m has 10 % at 8.4 m; 10 % are lost by 0.2 m."""
    answer, slips = read(light.light_depth(of_demo("lake")[0]))
    assert (("6 m",), "num.not-reached", "wat.light-linear", "wat.light-complement") == (answer, slips["4 m"], slips["10 m"], slips["2 m"])


def test_whoever_takes_what_is_lost_for_what_is_left_is_told_how_much_is_left() -> None:
    """At 2 m of Halden Water exp(-0.5 · 2) is left, 36.8 %: 63.2 % are lost."""
    item = light.light_depth(of_demo("lake")[0])
    assert isinstance(item, ChartReading)
    (told,) = (slip.feedback for slip in item.slips if slip.labels == ("2 m",))
    assert "more than 10 % is lost: 36.8 % is still left there" in told


def test_whoever_takes_what_is_lost_for_what_is_left_is_told_so_at_the_depth_before_as_well() -> None:
    """Of 0.04 per metre, 44.9 % are left at 20 m, so 55.1 % are lost there, the first time more than 25 %; 20.2 % are left at 40 m."""
    answer, slips = read(light.light_depth(of_demo("open_sea")[0]))
    assert (("40 m",), "wat.light-complement") == (answer, slips["20 m"])


def test_hot_vents_belong_to_the_sea_and_not_to_a_lake() -> None:
    lake, sea = (light.below_the_light(of_demo(name)[0]).solution for name in ("lake", "open_sea"))
    assert "hot vents" in sea and "hot vents" not in lake


def test_number_of_the_part_looked_for_on_the_axis_of_depth_is_a_known_slip() -> None:
    """Of 0.1 per metre, 13.5 % are left at 20 m and 5.0 % at 30 m; a straight line to 1 % at 46 m has 10 % at 42 m."""
    answer, slips = read(light.light_depth(small("depth: 500, light: {extinction: 0.1}")[0]))
    assert (("30 m",), "wat.axes-swapped", "wat.light-linear") == (answer, slips["10 m"], slips["50 m"])


def test_brook_without_a_plain_fall_of_light_is_not_read() -> None:
    """From 100 to 81 % over the whole depth no round part is passed plainly."""
    assert isinstance(light.light_depth(of_demo("stream")[0]), Rejected)


def test_stone_passes_half_the_light_the_disk_nine_tenths_and_the_photic_depth() -> None:
    """Lake: ln 2 / 0.5 = 1.39 m, the disk at 3.4 m, ln 10 / 0.5 = 4.61 m, 9.21 m, the bottom at 24 m."""
    assert [
        "Where half of the light is left", "Where a white disk is lost from sight", "Where nine tenths of the light is gone",
        "Where plants can only just stay alive", "The bottom",
    ] == order(light.way_down(of_demo("lake")[0]))  # fmt: skip


@pytest.mark.parametrize("fields", ["light: {extinction: 0.5}, depth: 50", "light: {secchi_depth: 3.4}, depth: 5"])
def test_stone_is_not_asked_about_without_a_disk_or_in_shallow_water(fields: str) -> None:
    assert isinstance(light.way_down(small(fields)[0]), Rejected)


def test_life_below_the_light_is_asked_about_in_deep_water_alone() -> None:
    assert "In the lit water near the surface, by algae" == right(light.below_the_light(of_demo("open_sea")[0]))
    assert isinstance(light.below_the_light(of_demo("estuary")[0]), Rejected)
    assert isinstance(light.below_the_light(of_demo("reef")[0]), Rejected)
