"""The drawn flux diagram: widths in proportion, an honest key, people told from nature, nothing on top of anything."""

from __future__ import annotations

import math
import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from figures import FluxDiagram
from figures.drawing.flux_arrows import THINNEST, UNKNOWN, WIDEST, shaft_widths
from figures.drawing.flux_diagram import arranged
from figures.drawing.flux_layout import faults
from figures.palette import LIGHT
from tests.figures.drawn import drawn
from tests.figures.specimens import FLUX_DIAGRAMS, WEND_HOLLOW, flux_diagram, random_flux_diagram

NARROW = [chart.narrowed() for chart in FLUX_DIAGRAMS]
HALVES = flux_diagram(
    "Halves", [("Peat of the wet half", "640 t C ha⁻¹", False, (0, 1)), ("Peat of the drained half", "420 t C ha⁻¹", False, (2, 1)), *((end, "", True, None) for end in ("plants", "air", "ditch"))],
    [
        ("plants", "Peat of the wet half", 1.4, "Dead plants, wet half", False), ("Peat of the wet half", "air", 1.0, "Decay, wet half", False), ("Peat of the wet half", "ditch", 0.2, "Washed out, wet half", False),
        ("plants", "Peat of the drained half", 1.7, "Dead plants, drained half", False), ("Peat of the drained half", "air", 7.3, "Decay, drained half", True), ("Peat of the drained half", "ditch", 0.4, "Washed out, drained half", False),
    ],
)  # fmt: skip
TWO = [("Ice", "5 kg", False, (0, 0)), ("Water", "9 kg", False, (1, 0))]


def parts(chart: FluxDiagram) -> dict[str, ElementTree.Element]:
    root = ElementTree.fromstring(drawn(chart))
    return {e.get("data-part").removeprefix("arrow "): e for e in root.findall(".//{*}path") if e.get("data-part")}


def drawn_paths(chart: FluxDiagram) -> list[ElementTree.Element]:
    return ElementTree.fromstring(drawn(chart)).findall(".//{*}path")


def texts(chart: FluxDiagram) -> list[str]:
    return [element.text for element in ElementTree.fromstring(drawn(chart)).findall(".//{*}text")]


def drawn_width(element: ElementTree.Element) -> float:
    """A line's stroke, or the distance between the two corners at the tail of an outline."""
    if element.get("stroke-width") or element.get("fill") == "none":
        return float(element.get("stroke-width", 1))
    points = [tuple(map(float, point.split())) for point in re.findall(r"[-\d.]+ [-\d.]+", element.get("d"))]
    return math.dist(points[0], points[-1])


def sides(chart: FluxDiagram) -> dict[str, set[str]]:
    """On which sides of the boxes that it exchanges with each end outside stands."""
    layout = arranged(chart)
    heights = {box.box.id: box.y for box in layout.boxes}
    found: dict[str, set[str]] = {}
    for placed in layout.arrows:
        end, arrow = placed.course.outside, placed.demand.arrow
        if end is not None:
            (inside,) = {arrow.start, arrow.end} & set(heights)
            found.setdefault(end.box.id, set()).add("above" if end.y < heights[inside] else "below")
    return found


@pytest.mark.parametrize("chart", [HALVES, HALVES.narrowed()], ids=["wide", "narrow"])
def test_an_end_outside_stands_on_one_side_of_all_boxes_of_a_row(chart: FluxDiagram):
    assert {"plants": 1, "air": 1, "ditch": 1} == {end: len(found) for end, found in sides(chart).items()}


@pytest.mark.parametrize("chart", [HALVES, HALVES.narrowed()], ids=["wide", "narrow"])
def test_air_stands_above_what_it_exchanges_with_and_a_ditch_below(chart: FluxDiagram):
    lies = {"air": "above", "ditch": "below"}
    natural = replace(chart, boxes=tuple(replace(box, lies=lies.get(box.id, "")) for box in chart.boxes))
    assert {"air": {"above"}, "ditch": {"below"}} == {end: found for end, found in sides(natural).items() if end in lies}


@pytest.mark.parametrize("chart", [WEND_HOLLOW, *(random_flux_diagram(seed) for seed in (0, 5, 6))], ids=lambda chart: chart.name)
def test_drawn_widths_are_in_proportion_to_the_fluxes_down_to_the_stated_thinnest(chart: FluxDiagram):
    largest = max(arrow.rate for arrow in chart.arrows)
    expected = {arrow.id: pytest.approx(max(THINNEST, WIDEST * arrow.rate / largest), abs=0.03) for arrow in chart.arrows}
    assert expected == {identifier: drawn_width(element) for identifier, element in parts(chart).items()}


def test_small_and_large_fluxes_have_the_same_full_ink():
    """A pale wide arrow would look weaker than a dark thin one."""
    rates = [("Ice", "Water", 100, "melting", False), ("Water", "Ice", 3, "freezing", False)]
    large, small = (parts(flux_diagram("x", TWO, rates))[f"flux_{number}"] for number in (0, 1))
    assert LIGHT["plant"] == large.get("fill") == small.get("stroke")
    assert {None} == {element.get(name) for element in (large, small) for name in ("opacity", "fill-opacity", "stroke-opacity")}


def test_a_flux_that_nobody_knows_is_hollow_and_the_key_says_so():
    rates = [("Ice", "Water", 100, "melting", False), ("Water", "Ice", None, "freezing", False)]
    known, unknown = (flux_diagram("x", TWO, rates[:count]) for count in (1, 2))
    shafts = parts(unknown)
    assert (LIGHT["plant"], LIGHT["ground"]) == (shafts["flux_0"].get("fill"), shafts["flux_1"].get("fill"))
    assert UNKNOWN == pytest.approx(drawn_width(shafts["flux_1"]), abs=0.03)
    assert "hollow: the rate is not known, so the width says nothing" in texts(unknown)
    assert not any("hollow" in text for text in texts(known))


def test_a_flux_that_nobody_knows_is_no_small_one():
    chart = flux_diagram("x", TWO, [("Ice", "Water", 100, "melting", False), ("Water", "Ice", None, "freezing", True)])
    assert not any("drawn this thin" in text for text in texts(chart))
    outlines = [path for path in drawn_paths(chart) if path.get("stroke") == LIGHT["heat"] and path.get("fill") == "none"]
    assert outlines and all(path.get("stroke-dasharray") for path in outlines)  # whole where nature drives it


@given(st.lists(st.none() | st.floats(0, 1e9), max_size=8))
def test_widths_never_leave_their_bounds(rates: list[float | None]):
    arrows = flux_diagram("x", TWO, [("Ice", "Water", rate, "melting", False) for rate in rates]).arrows
    assert all(THINNEST <= width <= WIDEST + 1e-9 for width in shaft_widths(arrows).values())


def test_the_key_shows_round_widths_with_the_unit():
    assert {"10", "50", "100 kg N ha⁻¹ yr⁻¹"} <= set(texts(WEND_HOLLOW))


def test_the_key_owns_up_to_arrows_that_are_drawn_too_wide():
    note = next(text for text in texts(WEND_HOLLOW) if "drawn this thin" in text)
    assert "all fluxes below 5.5 kg N ha⁻¹ yr⁻¹ are drawn this thin: less could not be seen" == note
    assert 5.5 == pytest.approx(THINNEST * 95 / WIDEST, abs=0.05)  # 95: the largest flux of the valley
    assert not any("drawn this thin" in text for text in texts(flux_diagram("x", TWO, [("Ice", "Water", 5, "melting", False)])))


def test_no_round_width_of_the_key_looks_like_the_one_of_what_is_drawn_too_wide():
    """A tenth of the largest is hardly wider than the thinnest shaft: shown only where no arrow is drawn too wide."""
    fluxes = [("Ice", "Water", 142, "melting", False), ("Water", "Ice", 20, "freezing", False)]
    thin = flux_diagram("x", TWO, [*fluxes, ("Water", "Ice", 1, "sinking", False)])
    assert {"50", "100 kg N ha⁻¹ yr⁻¹"} <= set(texts(thin))
    assert ("10" in texts(flux_diagram("x", TWO, fluxes)), "10" in texts(thin)) == (True, False)


def test_arrows_by_people_are_told_by_pattern_as_well_as_colour():
    plain, people = (flux_diagram("x", TWO, [("Ice", "Water", 5, "melting", by_people)]) for by_people in (False, True))
    assert drawn(people).count(LIGHT["heat"]) > 0 == drawn(plain).count(LIGHT["heat"])
    assert {"by nature", "people take part"} <= set(texts(people))
    gaps = [e for e in drawn_paths(people) if e.get("d").count("M") > 5]
    assert gaps and {LIGHT["ground"]} == {e.get("stroke") for e in gaps}


def test_thin_arrows_by_people_are_dashed():
    rates = [("Ice", "Water", 100, "melting", False), ("Water", "Ice", 1, "freezing", True)]
    shafts = parts(flux_diagram("x", TWO, rates))
    assert "flux_1" in shafts and shafts["flux_1"].get("stroke-dasharray")


@pytest.mark.parametrize("chart", [*FLUX_DIAGRAMS, *NARROW], ids=lambda chart: chart.name)
def test_every_box_and_every_label_is_said(chart: FluxDiagram):
    said = " ".join(texts(chart))
    used = {end for arrow in chart.arrows for end in (arrow.start, arrow.end)}
    for words in [box.label for box in chart.boxes if not box.outside or box.id in used] + [arrow.label for arrow in chart.arrows]:
        assert words in said, words


def test_boxes_stand_where_they_were_put():
    said = ElementTree.fromstring(drawn(WEND_HOLLOW)).findall(".//{*}text")
    places = {element.text: (float(element.get("x")), float(element.get("y"))) for element in said}
    plants, ammonium, nitrate, soil = (places[line] for line in ("Living plants", "Ammonium", "Nitrate in soil", "Soil organic"))
    assert plants[0] == soil[0] == (ammonium[0] + nitrate[0]) / 2
    assert ammonium[0] < plants[0] < nitrate[0]
    assert plants[1] < ammonium[1] < soil[1]


@pytest.mark.parametrize("start, end, problem", (
    ("Ice", "Ice", "the flux flux_0 starts and ends at Ice"), ("Ice", "Fire", "the flux flux_0 names an unknown box: Fire"),
))  # fmt: skip
def test_a_flux_that_goes_nowhere_is_refused(start: str, end: str, problem: str):
    with pytest.raises(ValueError, match=problem):
        drawn(flux_diagram("x", TWO, [(start, end, 1, "melting", False)]))


def test_where_labels_find_no_room_arrows_carry_letters_with_their_rates_and_are_listed():
    process = "a process with so long a name " * 8
    arrows = [(*pair, 1 + n, process.strip(), False) for n, pair in enumerate([("Ice", "Water"), ("Water", "Ice")] * 2)]
    said = texts(flux_diagram("x", TWO, arrows))
    assert all(2 == said.count(letter) for letter in "abcd")
    assert all(1 == said.count(f"{rate}") for rate in (1, 2, 3, 4))
    assert " ".join(f"{process.strip()} {rate}" for rate in (1, 2, 3, 4)) in " ".join(t for t in said if not t.isdigit() and t not in "abcd")


@pytest.mark.parametrize("chart", NARROW, ids=lambda chart: chart.name)
def test_on_a_narrow_sheet_every_arrow_is_told_by_its_label_or_by_a_letter_with_its_rate(chart: FluxDiagram):
    layout = arranged(chart)
    for number, arrow in enumerate(layout.arrows):
        said = " ".join(arrow.form.lines)
        assert said == (f"{'abcdefghijklmnopqrstuvwxyz'[number]} {arrow.demand.arrow.rate_label}" if layout.lettered else arrow.demand.arrow.label)


def test_few_arrows_keep_their_words_on_a_narrow_sheet():
    few, many = (flux_diagram("x", TWO, [("Ice", "Water", 5, "melting", False)] * count).narrowed() for count in (1, 7))
    assert [False, True] == [arranged(chart).lettered for chart in (few, many)]


@pytest.mark.parametrize("narrow, width", ((False, 700), (True, 400)))
@settings(max_examples=8, deadline=None)
@given(seed=st.integers(100, 10_000))
def test_no_two_things_share_a_place(narrow: bool, width: float, seed: int):
    layout = arranged(replace(random_flux_diagram(seed), narrow=narrow))
    assert 0 == faults(layout.arrows, layout.boxes, width)[0]
