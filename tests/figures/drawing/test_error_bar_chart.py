"""Drawn means with error bars: to scale, bars as long as they should be, every reading a dot, words that keep apart."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
from playwright.sync_api import Browser

from figures import BarredMean, BarredSeries, ErrorBarChart
from figures.drawing.error_bar_chart import span
from tests.figures.drawn import corners, drawn, words
from tests.figures.specimens import TABLE
from tests.figures.test_no_overlap import page_of, violations

MARKS = (("soil", "diamond"), ("ink", "square"), ("plant", "circle"))
Given = tuple[float, float, float | None, tuple[float, ...]]


def chart(name: str, places: tuple[tuple[float, str], ...], *series: tuple[str, tuple[Given, ...]], joined: bool = False) -> ErrorBarChart:
    """Series as (label, means), each mean as (place, mean, half bar, readings)."""
    return ErrorBarChart(
        name=f"bars_{name.lower().replace(' ', '_')}", title=name, description="Means.", reading=(), table=TABLE,
        quantity="Change of dissolved oxygen since the start, mg L⁻¹", across="Depth at which the bottles hung", places=places, joined=joined,
        bars="Bars: mean ± two standard errors. Small dots: single readings.",
        series=tuple(
            BarredSeries(label=label, role=MARKS[number % 3][0], mark=MARKS[number % 3][1], means=tuple(BarredMean(*mean) for mean in means))
            for number, (label, means) in enumerate(series)
        ),
    )  # fmt: skip


LAKE = chart(
    "Lake", ((0.0, "0 m"), (1.0, "7 m")),
    ("light bottles", ((0, 0.46, 0.05, (0.42, 0.5)), (1, 0.02, 0.04, (0.0, 0.05)))),
    ("dark bottles", ((0, -0.2, 0.045, (-0.23, -0.17)), (1, -0.13, 0.04, (-0.15, -0.11)))),
)
PLAIN = chart(
    "Plain", ((0.0, "1 May"), (40.0, "10 June"), (80.0, "20 July")),
    ("Under nets", ((0, 42, 3.7, (39, 46)), (40, 118, 9.8, ()), (80, 210, 18, (188, 233)))),
    ("Open ground", ((0, 41.6, 3.5, ()), (40, 92, 9, ()), (80, 145, 14, ()))), joined=True,
)  # fmt: skip
RATES = chart(
    "Rates", ((0.0, "Gross production"), (1.0, "Respiration"), (2.0, "Net production")),
    ("Gross production", ((0, 0.055, 0.004, ()),)), ("Respiration", ((1, 0.017, 0.004, ()),)), ("Net production", ((2, 0.038, None, ()),)),
)  # fmt: skip
CROWDED = chart(
    "Crowded", tuple((float(day), f"{day} September") for day in (0, 1, 2, 60, 61)),
    *((f"A plot with a long name, number {n}", tuple((float(day), 10.0 * n + day, 4.0, (9.0 * n,)) for day in (0, 1, 2, 60, 61))) for n in range(7)), joined=True,
)  # fmt: skip
FAR = chart("Far from nothing", ((0.0, "0 m"),), ("start", ((0, 9.4, 0.02, (9.38, 9.43)),)), ("light", ((0, 9.9, 0.02, ()),)))
FLAT = chart("Flat", ((0.0, "0 m"),), ("start", ((0, 0.0, None, (0.0,)),)))
CHARTS = (LAKE, PLAIN, RATES, CROWDED, FAR, FLAT)


def middle(shape: list[tuple[float, float]]) -> tuple[float, float]:
    xs, ys = zip(*shape, strict=True)
    return (min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2


def test_means_are_to_scale_and_bars_twice_their_half() -> None:
    """The same number of pixels stands for a unit along marks and along bars."""
    light = [middle(shape) for shape in corners(LAKE, "mean light bottles")]
    dark = [middle(shape) for shape in corners(LAKE, "mean dark bottles")]
    scale = (dark[0][1] - light[0][1]) / 0.66
    assert light[1][1] - light[0][1] == pytest.approx(0.44 * scale, abs=0.1)
    lengths = [abs(a[1] - b[1]) for a, b in corners(LAKE, "bar light bottles")]
    assert [2 * 0.05 * scale, 2 * 0.04 * scale] == pytest.approx(lengths, abs=0.1)


def test_bars_are_centred_on_their_means() -> None:
    for (a, b), mark in zip(corners(LAKE, "bar dark bottles"), corners(LAKE, "mean dark bottles"), strict=True):
        assert middle([a, b]) == pytest.approx(middle(mark), abs=0.1)


def test_a_mean_without_an_error_has_no_bar() -> None:
    assert (1, [], 1) == (len(corners(RATES, "bar Respiration")), corners(RATES, "bar Net production"), len(corners(RATES, "mean Net production")))


def test_days_are_to_scale_and_joined() -> None:
    (line,) = corners(PLAIN, "line Under nets")
    assert line[1][0] - line[0][0] == pytest.approx(line[2][0] - line[1][0], abs=0.1)
    assert [] == corners(LAKE, "line light bottles")


def test_series_at_one_place_stand_apart_and_alone_stand_in_the_middle() -> None:
    light, dark = (middle(corners(LAKE, f"mean {sort} bottles")[0])[0] for sort in ("light", "dark"))
    assert dark - light > 20
    assert "light bottles" in words(LAKE)
    labels = [e for e in ElementTree.fromstring(drawn(RATES)).findall(".//{*}text") if e.text == "Respiration"]
    assert 1 == len(labels)
    assert middle(corners(RATES, "mean Respiration")[0])[0] == pytest.approx(float(labels[0].get("x") or re.findall(r"[\d.]+", labels[0].get("transform") or "")[0]), abs=1)


def test_axis_begins_at_nothing_unless_all_lies_far_above_it_and_then_says_so() -> None:
    assert "not at 0" not in words(PLAIN)
    assert "The axis begins at 9" in words(FAR)
    assert (0.0, 233) == span(PLAIN)
    assert (9.38, pytest.approx(9.92)) == span(FAR)


@pytest.mark.browser
@pytest.mark.parametrize("typeface", ["inherit", "DejaVu Sans"])
def test_text_keeps_apart(browser: Browser, typeface: str) -> None:
    assert [] == violations(browser, page_of(CHARTS, typeface), len(CHARTS))
