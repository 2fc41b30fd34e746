"""Heights and seasons of the Walter-Lieth diagram."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from figures.drawing.walter_lieth import at, precipitation_height, seasons, vertices, year_round

# Rounded typical normals, from memory; a test vector, not a citation for the town's climate.
ROME_TEMP = (7.5, 8.2, 10.2, 12.6, 17.2, 21.1, 24.1, 24.5, 20.8, 16.4, 11.4, 8.4)
ROME_PRECIP = (67, 73, 58, 81, 53, 34, 19, 37, 73, 113, 115, 81)
MONTHLY_TEMP = st.lists(st.floats(-40, 40).map(lambda t: round(t, 1)), min_size=12, max_size=12)
MONTHLY_PRECIP = st.lists(st.integers(0, 1200), min_size=12, max_size=12)


# Walter & Lieth 1960-67, Klimadiagramm-Weltatlas: 10 degC as high as 20 mm, a tenth of the scale above 100 mm;
# the heights are arithmetic on that rule.
@pytest.mark.parametrize("precip_mm, height", ((0, 0), (20, 10), (60, 30), (100, 50), (120, 51), (300, 60), (1130, 101.5)))
def test_precipitation_stands_as_high_as_the_scale_says(precip_mm: float, height: float):
    assert height == pytest.approx(precipitation_height(precip_mm))


def test_a_southern_year_starts_in_july():
    assert [7, 8, 9, 10, 11, 12, 1, 2, 3, 4, 5, 6] == [value for _, value in year_round(range(1, 13), southern=True)[1:-1]]


def test_the_curve_meets_itself_half_way_between_december_and_january():
    line = year_round([10] + [0] * 10 + [20], southern=False)
    assert (0.0, 15.0) == line[0]
    assert (12.0, 15.0) == line[-1]


def test_curves_cross_where_straight_lines_between_mid_months_do():
    # 20 mm (height 10) under 18 degC in April, 60 mm (height 30) over 22 degC in May: 8 short, then 8 over, so half way.
    temp, precip = [18.0] * 4 + [22.0] * 8, [20] * 4 + [60] * 8
    (_, end, dry), *_ = [stretch for stretch in seasons(vertices(temp, precip, False)) if stretch[0] < 4 <= stretch[1]]
    assert dry
    assert 4.0 == pytest.approx(end)


def test_the_dry_season_of_rome_runs_from_late_may_to_late_august():
    # By hand: 53 - 19 s = 2 (17.2 + 3.9 s) gives 0.694030 of a month after mid-May, and likewise 0.276498 after mid-August.
    [(start, end)] = [(start, end) for start, end, dry in seasons(vertices(ROME_TEMP, ROME_PRECIP, False)) if dry]
    assert (4.5 + 0.694030, 7.5 + 0.276498) == pytest.approx((start, end), abs=1e-6)


def test_the_precipitation_curve_bends_where_it_passes_one_hundred_mm():
    # 80 to 180 mm: 100 mm is passed after a fifth of the month, at the height of 50 degC.
    points = vertices([0.0] * 12, [80] * 6 + [180] * 6, False)
    assert any(month == pytest.approx(5.7) and height == pytest.approx(50) for month, _, height in points)


@pytest.mark.parametrize("temp, precip, expected", (
    ([30.0] * 12, [0] * 12, [(0.0, 12.0, True)]), ([-30.0] * 12, [0] * 12, [(0.0, 12.0, False)]),
    ([10.0] * 12, [20] * 12, [(0.0, 12.0, False)]),
))  # fmt: skip
def test_even_years_are_one_season(temp: list[float], precip: list[int], expected: list[tuple]):
    assert expected == seasons(vertices(temp, precip, False))


@given(temp=MONTHLY_TEMP, precip=MONTHLY_PRECIP, southern=st.booleans())
def test_seasons_fill_the_year_without_gaps_and_months_agree_with_the_dry_month_rule(temp, precip, southern):
    points = vertices(temp, precip, southern)
    stretches = seasons(points)
    assert (0.0, 12.0) == (stretches[0][0], stretches[-1][1])
    assert all(before[1] == after[0] and before[2] != after[2] for before, after in pairwise(stretches))
    order = [*range(6, 12), *range(6)] if southern else range(12)
    for place, month in enumerate(order):
        if abs(precip[month] - 2 * temp[month]) > 0.01 and precip[month] <= 100:  # Bagnouls & Gaussen 1953: dry if P < 2 T
            assert (precip[month] < 2 * temp[month]) == next(dry for start, end, dry in stretches if start <= place + 0.5 <= end)


@given(temp=MONTHLY_TEMP, precip=MONTHLY_PRECIP)
def test_mid_months_stand_at_their_own_values(temp, precip):
    points = vertices(temp, precip, False)
    for month in range(12):
        assert (temp[month], precipitation_height(precip[month])) == pytest.approx(at(points, month + 0.5), abs=1e-6)
