"""Properties and edges of generator/science/climate_class.py; outside values are in test_checks.py."""

from __future__ import annotations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from generator.science.climate_class import CLASSES, OLDER_COLD_LIMIT, SUMMER, WINTER, class_and_path, climate_class, reading

tenths = st.integers(-400, 350).map(lambda n: n / 10)
temperatures = st.lists(tenths, min_size=12, max_size=12)
precipitations = st.lists(st.integers(0, 400).map(float), min_size=12, max_size=12)


@given(temperatures, precipitations)
def test_every_climate_has_one_of_thirty_classes(temp: list[float], precip: list[float]) -> None:
    """Whatever the year is like, the path ends in a known class, and the class can be read."""
    assert climate_class(temp, precip) in CLASSES
    assert reading(climate_class(temp, precip), min(temp))


@given(temperatures, precipitations)
def test_half_a_year_later_it_is_the_same_climate(temp: list[float], precip: list[float]) -> None:
    """Summer is where it is warm: a climate moved to the other side of the equator keeps its class."""
    assume(sum(temp[m] for m in SUMMER) != sum(temp[m] for m in WINTER))
    assert climate_class(temp, precip) == climate_class(temp[6:] + temp[:6], precip[6:] + precip[:6])


@given(temperatures, precipitations, st.permutations(range(6)))
def test_order_of_the_months_in_a_half_year_does_not_matter(
    temp: list[float], precip: list[float], order: list[int]
) -> None:
    """Only halves of the year are looked at."""

    def turned(values: list[float]) -> list[float]:
        after = list(values)
        for place, taken in zip(SUMMER, order, strict=True):
            after[place] = values[SUMMER[taken]]
        return after

    assert climate_class(temp, precip) == climate_class(turned(temp), turned(precip))


@given(temperatures, precipitations, st.integers(2, 9))
def test_more_rain_in_the_same_months_makes_no_place_dry(temp: list[float], precip: list[float], times: int) -> None:
    """Dry is a matter of the total, once it is known when the rain falls."""
    assume(not climate_class(temp, precip).startswith("B"))
    assert not climate_class(temp, [times * month for month in precip]).startswith("B")


@given(temperatures, precipitations)
def test_degrees_fahrenheit_there_and_back_change_nothing(temp: list[float], precip: list[float]) -> None:
    """The last digits that a conversion disturbs decide no class."""
    there_and_back = [((t * 9 / 5 + 32) - 32) * 5 / 9 for t in temp]
    assert climate_class(temp, precip) == climate_class(there_and_back, [p / 25.4 * 25.4 for p in precip])


@given(temperatures, precipitations)
def test_older_limit_only_turns_cold_into_mild(temp: list[float], precip: list[float]) -> None:
    """The two limits differ where the coldest month lies between them, and there in the first letter only."""
    now, before = climate_class(temp, precip), climate_class(temp, precip, OLDER_COLD_LIMIT)
    if now != before:
        assert ("D", "C") == (now[0], before[0])
        assert -3 < min(temp) <= 0
        assert now[1:] == before[1:]


@given(temperatures, precipitations)
def test_path_answers_each_question_by_its_own_numbers(temp: list[float], precip: list[float]) -> None:
    """The questions are those of the class: dry if and only if its question was answered yes, and so on down."""
    letters, path = class_and_path(temp, precip)
    answers = {question.asks.partition(":")[0]: question.holds for question in path}
    assert letters.startswith("B") == answers["Dry (B)"]
    assert letters.startswith("A") == answers.get("Hot all year (A)", False)
    assert letters.startswith("C") == answers.get("Mild winters (C), not cold ones (D)", False)
    assert (letters == "ET") == answers.get("Tundra (ET), not ice (EF)", False)
    assert (letters in ("BWh", "BSh")) == answers.get("Hot (h), not cool (k)", False)


FLAT = [10.0] * 12
RISING = [0.0, 2, 8, 14, 18, 21, 23, 22, 18, 12, 6, 2]


@pytest.mark.parametrize(("warmest", "expected"), [(10.0, "ET"), (10.1, "Cfc"), (0.0, "EF"), (0.1, "ET")])
def test_warmest_month_on_a_limit_belongs_to_the_colder_class(warmest: float, expected: str) -> None:
    temp = [warmest] + [min(warmest, 5.0)] * 11 if warmest > 5 else [warmest] + [-5.0] * 11
    assert expected == climate_class(temp, [200.0] * 12)


@pytest.mark.parametrize(("coldest", "expected"), [(18.0, "Af"), (17.9, "Cfa"), (0.1, "Cfa"), (0.0, "Dfa"), (-3.0, "Dfa")])
def test_coldest_month_parts_the_groups(coldest: float, expected: str) -> None:
    assert expected == climate_class([coldest] + [23.0] * 11, [200.0] * 12)


def test_older_limit_lies_three_degrees_lower_and_counts_as_cold() -> None:
    assert ["Dfa", "Cfa"] == [climate_class([t] + [23.0] * 11, [200.0] * 12, OLDER_COLD_LIMIT) for t in (-3.0, -2.9)]


@pytest.mark.parametrize(("winter", "expected"), [(-38.0, "Dfc"), (-38.1, "Dfd")])
def test_very_cold_begins_below_38_degrees_of_frost(winter: float, expected: str) -> None:
    assert expected == climate_class([winter] + [5.0] * 8 + [12.0] * 3, [200.0] * 12)


@pytest.mark.parametrize(("months", "expected"), [(3, "Cfc"), (4, "Cfb")])
def test_four_months_of_ten_degrees_make_a_warm_summer(months: int, expected: str) -> None:
    assert expected == climate_class([11.0] + [10.0] * (months - 1) + [9.9] * (12 - months), [200.0] * 12)


@pytest.mark.parametrize(("each", "expected"), [(22.4, "BWh"), (22.5, "BSh"), (44.9, "BSh"), (45.0, "Aw")])
def test_half_the_limit_of_dryness_parts_desert_from_steppe(each: float, expected: str) -> None:
    """With 20 °C and even rain the limit is 540 mm: 45 mm in each month."""
    assert expected == climate_class([20.0] * 12, [each] * 12)


@pytest.mark.parametrize(
    ("summer", "winter", "limit"), [(70, 30, 20 * 20 + 280), (69, 31, 20 * 20 + 140), (31, 69, 20 * 20 + 140), (30, 70, 20 * 20)]
)
def test_seventy_percent_in_one_half_of_the_year_move_the_limit(summer: int, winter: int, limit: int) -> None:
    """Exactly 70 % counts; the limit is told in the path."""
    precip = [summer / 6 if month in SUMMER else winter / 6 for month in range(12)]
    temp = [25.0 if month in SUMMER else 15.0 for month in range(12)]
    asked = next(question for question in class_and_path(temp, precip)[1] if question.asks.startswith("Dry (B)"))
    assert limit == pytest.approx(asked.right)


def test_frozen_pole_is_ice_and_not_desert() -> None:
    """A negative limit of dryness cannot be undercut, however little falls."""
    assert "EF" == climate_class([-50.0] * 12, [0.0] * 12)


def test_no_rain_is_desert_where_the_limit_is_above_zero() -> None:
    assert ["BWh", "BWk"] == [climate_class([temp] * 12, [0.0] * 12) for temp in (25.0, 10.0)]
    assert not any("70 %" in question.asks for question in class_and_path([25.0] * 12, [0.0] * 12)[1])


def test_twelve_equal_months_take_april_to_september_as_summer() -> None:
    """A tie between the halves of the year is settled the same way everywhere."""
    path = class_and_path(FLAT, [200.0] * 12)[1]
    assert path[0].asks.startswith("Summer half-year")
    assert path[0].holds


def test_dry_summer_and_dry_winter_at_once_go_by_the_wettest_month() -> None:
    winter_wet, summer_wet = [300.0, 1, 1, 20, 9, 250, 60, 60, 60, 60, 60, 60], [60.0, 1, 1, 20, 9, 250, 60, 60, 60, 60, 60, 30]
    assert ["Dsa", "Dwa"] == [climate_class(RISING, precip) for precip in (winter_wet, summer_wet)]


@pytest.mark.parametrize(("mean", "expected"), [(18.0, "BWh"), (17.9, "BWk"), (18.9, "BWh")])
def test_deserts_are_hot_from_a_mean_of_18_degrees(mean: float, expected: str) -> None:
    assert expected == climate_class([mean - 5] * 6 + [mean + 5] * 6, [1.0] * 12)


@pytest.mark.parametrize(("driest", "expected"), [(60.0, "Af"), (59.9, "Am"), (0.0, "Am")])
def test_sixty_millimetres_in_the_driest_month_make_it_wet_all_year(driest: float, expected: str) -> None:
    assert expected == climate_class([25.0] * 12, [driest] + [300.0] * 11)


@pytest.mark.parametrize(("driest", "expected"), [(20.0, "Am"), (19.95, "Aw"), (19.0, "Aw")])
def test_short_dry_season_is_made_up_for_by_a_wet_year(driest: float, expected: str) -> None:
    """2000 mm a year: 100 less a 25th of it is 20 mm."""
    assert expected == climate_class([25.0] * 12, [driest] + [(2000 - driest) / 11] * 11)


def test_only_one_dry_half_of_the_year_is_not_weighed_against_the_other() -> None:
    """A dry summer with a wet month in it stays a dry summer as long as the winter is not dry too, and the other way round."""
    dry_summer = [60.0, 90, 100, 10, 80, 200, 80, 80, 80, 90, 80, 70]
    dry_winter = [5.0, 200, 80, 60, 60, 60, 60, 60, 60, 80, 80, 80]
    assert ["Dsa", "Dwa"] == [climate_class(RISING, precip) for precip in (dry_summer, dry_winter)]


@pytest.mark.parametrize(("driest", "wettest", "expected"), [(39.9, 200, "s"), (40.0, 200, "f"), (20.0, 60.1, "s"), (20.0, 60, "f")])
def test_dry_summer_is_below_40_millimetres_and_below_a_third_of_the_wettest_winter_month(
    driest: float, wettest: float, expected: str
) -> None:
    precip = [wettest, *[60.0] * 5, driest, *[60.0] * 5]
    assert f"D{expected}a" == climate_class(RISING, precip)


@pytest.mark.parametrize(("driest", "expected"), [(19.9, "w"), (20.0, "f")])
def test_dry_winter_is_below_a_tenth_of_the_wettest_summer_month(driest: float, expected: str) -> None:
    precip = [driest, *[60.0] * 5, 200.0, *[60.0] * 5]
    assert f"D{expected}a" == climate_class(RISING, precip)


def test_two_wettest_months_alike_leave_the_summer_dry() -> None:
    assert "Dsa" == climate_class(RISING, [250.0, 1, 1, 20, 9, 250, 60, 60, 60, 60, 60, 60])


def test_question_of_dryness_says_what_its_limit_is_made_of() -> None:
    """The extra for a wet summer is written out, and left out where there is none."""
    temp = [25.0 if month in SUMMER else 15.0 for month in range(12)]
    wet_summer = [90.0 if month in SUMMER else 10.0 for month in range(12)]
    paths = (class_and_path(temp, precip)[1] for precip in (wet_summer, [100 - p for p in wet_summer]))
    asked = [question.asks for path in paths for question in path if question.asks.startswith("Dry (B)")]
    assert [
        "Dry (B): does less precipitation fall than the limit, 20 × the annual mean temperature + 280?",
        "Dry (B): does less precipitation fall than the limit, 20 × the annual mean temperature?",
    ] == asked


def test_rounding_does_not_make_a_wet_place_dry() -> None:
    """Twelve times 28.3333… is 340, the limit at 10 °C, though the sum of the floats is not."""
    assert "ET" == climate_class(FLAT, [340 / 12] * 12)


@pytest.mark.parametrize(
    ("letters", "coldest", "expected"),
    [
        ("BSk", -9.0, "dry steppe, cold winters"),
        ("BWk", 13.8, "desert, mild winters"),
        ("BWk", 0.0, "desert, cold winters"),
        ("Csa", 9.5, "mild winters, hot and dry summers"),
        ("Cwb", 12.0, "mild and dry winters, warm summers"),
        ("Dfd", -42.0, "very cold winters, short, cool summers, no dry season"),
        ("ET", -20.0, "no month above 10 °C, too cold for trees"),
    ],
)
def test_letters_are_read_in_plain_words(letters: str, coldest: float, expected: str) -> None:
    assert expected == reading(letters, coldest)


def test_each_class_has_a_reading_of_its_own() -> None:
    readings = {reading(letters, -5.0) for letters in CLASSES}
    assert len(CLASSES) == len(readings) == 30


@pytest.mark.parametrize("letters", ["", "X", "Cfd", "BXk", "Csx", "Dfaa"])
def test_unknown_letters_are_refused(letters: str) -> None:
    with pytest.raises(ValueError, match="expected a climate class, found"):
        reading(letters, 0.0)


def test_negative_precipitation_is_refused() -> None:
    with pytest.raises(ValueError, match="monthly_precip: expected values from 0 to inf, found -1 in month 3"):
        climate_class(FLAT, [1.0, 1.0, -1.0] + [1.0] * 9)
