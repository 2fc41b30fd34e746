"""The drawn production profile: depth downwards, to scale, the compensation depth where the lines cross, words that keep apart."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser

from figures import BarredMean, BarredSeries, ProductionProfile
from tests.figures.drawn import corners, words
from tests.figures.specimens import TABLE
from tests.figures.test_no_overlap import page_of, violations

SORTS = (("Gross production", "plant", "circle"), ("Respiration", "heat", "square"), ("Net production", "animal", "diamond"))


def profile(name: str, depths: list[float], gross: list[float], respired: list[float], crossing: float | None, error: float | None = 0.05) -> ProductionProfile:
    net = [made - used for made, used in zip(gross, respired, strict=True)]
    return ProductionProfile(
        name=f"profile_{name.lower()}", title=name, description="Falls with depth.", reading=(), table=TABLE,
        quantity="Oxygen of a day and a night, mg L⁻¹ d⁻¹", compensation_m=crossing,
        compensation_label="" if crossing is None else f"{crossing:.3g} m", bars="Bars: ± two standard errors.",
        series=tuple(
            BarredSeries(label=label, role=role, mark=mark, means=tuple(BarredMean(z, value, error) for z, value in zip(depths, values, strict=True)))
            for (label, role, mark), values in zip(SORTS, (gross, respired, net), strict=True)
        ),
    )  # fmt: skip


LAKE = profile("Lake", [0, 2, 4, 7, 10], [0.83, 0.9, 0.63, 0.19, 0.04], [0.4, 0.4, 0.36, 0.26, 0.22], 6.382)
POND = profile("Pond", [0.1, 0.3], [40, 20], [10, 8], None)
CAVE = profile("Cave", [5, 400], [0.001, 0], [0.3, 0.2], None, None)
EDGE = profile("Edge", [0, 100], [2, 0.9], [1, 1], 99)
PROFILES = (LAKE, POND, CAVE, EDGE)


def test_lines_are_to_scale_in_both_directions() -> None:
    (line,), ((zero, top), (_, bottom)) = corners(LAKE, "line Gross production"), corners(LAKE, "zero")[0]
    across, down = (line[0][0] - zero) / 0.83, (bottom - top) / 10.6
    expected = [(zero + across * value, top + down * depth) for depth, value in zip([0, 2, 4, 7, 10], [0.83, 0.9, 0.63, 0.19, 0.04], strict=True)]
    assert [pytest.approx(point, abs=0.1) for point in expected] == line


def test_bars_reach_to_both_sides_of_their_means() -> None:
    (line,), bars = corners(LAKE, "line Respiration"), corners(LAKE, "bar Respiration")
    assert [pytest.approx(x, abs=0.1) for x, _ in line] == [(a[0] + b[0]) / 2 for a, b in bars]
    assert [] == corners(CAVE, "bar Respiration")


def test_compensation_depth_lies_where_the_lines_cross_and_where_nothing_is_left_over() -> None:
    ((_, y), _) = corners(LAKE, "compensation depth")[0]
    (net,), ((zero, _), _) = corners(LAKE, "line Net production"), corners(LAKE, "zero")[0]
    (x0, y0), (x1, y1) = net[2], net[3]
    assert y == pytest.approx(y0 + (zero - x0) / (x1 - x0) * (y1 - y0), abs=0.3)
    assert "compensation depth 6.38 m" in words(LAKE)


def test_without_losses_nothing_is_hatched_and_without_a_crossing_nothing_dashed() -> None:
    assert ("Hatched" in words(LAKE), "Hatched" in words(POND)) == (True, False)
    assert [] == corners(POND, "compensation depth")


@pytest.mark.browser
@pytest.mark.parametrize("typeface", ["inherit", "DejaVu Sans"])
def test_text_keeps_apart(browser: Browser, typeface: str) -> None:
    assert [] == violations(browser, page_of(PROFILES, typeface), len(PROFILES))
