"""The drawn food web: boxes at the height of their level, arrows that end at the eater, shapes that tell without colour."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from figures import FoodWebDiagram
from figures.drawing import draw
from tests.figures.drawn import drawn
from tests.figures.web_specimens import LAKE, WEBS, WITHOUT_PIKE, random_web, web

AT_RANDOM = [random_web(seed) for seed in range(6)]
EACH_OTHER = WEBS[4]
each_web = pytest.mark.parametrize("chart", [*WEBS, *AT_RANDOM], ids=lambda chart: chart.name)
Box = tuple[float, float, float, float]


def paths(chart: FoodWebDiagram, kind: str) -> dict[str, ElementTree.Element]:
    found = ElementTree.fromstring(drawn(chart)).findall(".//{*}path")
    return {part.removeprefix(f"{kind} "): path for path in found if (part := path.get("data-part", "")).startswith(f"{kind} ")}


def points(path: ElementTree.Element) -> list[tuple[float, float]]:
    numbers = [float(number) for number in re.findall(r"-?[\d.]+", path.get("d"))]
    return list(zip(numbers[::2], numbers[1::2], strict=True))


def box(path: ElementTree.Element) -> Box:
    xs, ys = zip(*points(path), strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def boxes(chart: FoodWebDiagram) -> dict[str, Box]:
    return {name: box(path) for name, path in paths(chart, "box").items()}


def texts(chart: FoodWebDiagram) -> list[str]:
    return [element.text for element in ElementTree.fromstring(drawn(chart)).findall(".//{*}text")]


@each_web
def test_height_is_in_proportion_to_the_level(chart: FoodWebDiagram):
    middle = {name: (top + bottom) / 2 for name, (_, top, _, bottom) in boxes(chart).items()}
    lowest = min(chart.species, key=lambda one: one.level)
    rises = {one.id: (middle[lowest.id] - middle[one.id], one.level - lowest.level) for one in chart.species}
    per_level = max(rise / levels for rise, levels in rises.values() if levels) if any(levels for _, levels in rises.values()) else 0
    assert {name: pytest.approx(levels * per_level, abs=0.02) for name, (_, levels) in rises.items()} == {n: rise for n, (rise, _) in rises.items()}


@each_web
def test_no_box_lies_on_another_or_leaves_the_canvas(chart: FoodWebDiagram):
    width = float(ElementTree.fromstring(drawn(chart)).get("viewBox").split()[2])
    found = list(boxes(chart).values())
    assert len(chart.species) == len(found)
    for number, (left, top, right, bottom) in enumerate(found):
        assert 40 < left and right < width
        assert not any(left < r and x < right and top < b and y < bottom for x, y, r, b in found[:number])


@each_web
def test_every_link_has_an_arrow_from_the_eaten_to_the_eater(chart: FoodWebDiagram):
    """It begins at the edge of the food's box and ends a head's length before the eater's."""
    found, drawn_boxes = paths(chart, "arrow"), boxes(chart)
    assert [f"{link.food} {link.eater}" for link in chart.links] == list(found)
    for link in chart.links:
        start, *_, end = points(found[f"{link.food} {link.eater}"])
        assert near(drawn_boxes[link.food], start) <= 1.2
        assert near(drawn_boxes[link.eater], end) <= 16


def near(found: Box, point: tuple[float, float]) -> float:
    """How far a point lies from the edge of a box or inside it."""
    left, top, right, bottom = found
    outside = max(left - point[0], point[0] - right, top - point[1], point[1] - bottom)
    return abs(outside)


def test_arrows_are_as_wide_as_the_share():
    widths = {name: float(path.get("stroke-width")) for name, path in paths(LAKE, "arrow").items()}
    assert (5.0, 4.5, 1.2) == (
        widths["Dead matter Midge larvae"], widths["Phytoplankton Zooplankton"], widths["Dead matter Zooplankton"]
    )  # fmt: skip
    assert {"a tenth of the eater’s food", "half of it", "all of it"} <= set(texts(LAKE))


def test_arrows_of_unknown_shares_are_all_alike_and_the_key_says_nothing_of_width():
    chain = WEBS[2]
    assert {"1.8"} == {path.get("stroke-width") for path in paths(chain, "arrow").values()}
    assert not any("food" in text for text in texts(chain))


def test_key_says_which_way_arrows_point():
    for chart in WEBS:
        assert "An arrow points from the eaten to the eater: that is the way the energy goes." in texts(chart)


def test_kinds_of_feeding_differ_in_shape():
    """Producers have four corners, dead matter eight, consumers round ends."""
    found = paths(LAKE, "box")
    corners = {name: len(set(points(path))) for name, path in found.items() if "Q" not in path.get("d") and "C" not in path.get("d")}
    assert {"Phytoplankton": 4, "Pondweed": 4, "Dead matter": 8} == corners


def test_species_that_is_gone_and_its_links_are_dashed():
    found = paths(WITHOUT_PIKE, "arrow")
    assert {"Perch Pike", "Roach Pike", "Pike Pike"} == {name for name, path in found.items() if path.get("stroke-dasharray")}
    assert {"gone", "gone, with its links"} <= set(texts(WITHOUT_PIKE))
    assert "gone, with its links" not in texts(LAKE)


def test_two_that_eat_each_other_have_arrows_beside_each_other():
    found = paths(EACH_OTHER, "arrow")
    there, back = (points(found[name]) for name in ("Copepods Fish larvae", "Fish larvae Copepods"))
    assert abs(there[0][0] - back[-1][0]) > 10 or abs(there[0][1] - back[-1][1]) > 10


@pytest.mark.parametrize("chart", [LAKE, AT_RANDOM[0]], ids=lambda chart: chart.name)
def test_equal_specs_draw_equal_bytes(chart: FoodWebDiagram):
    assert draw(chart) == draw(chart)


def test_web_without_species_and_link_to_nobody_are_refused():
    with pytest.raises(ValueError, match="expected links between species that are there"):
        draw(web("nothing", {}, {}))
    with pytest.raises(ValueError, match="expected links between species that are there"):
        draw(web("a stranger", {"Owls": 2.0}, {"Owls": {"Voles": None}}))
