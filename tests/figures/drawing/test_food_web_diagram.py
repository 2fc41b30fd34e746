"""The drawn food web: boxes at the height of their level, arrows that end at the eater, shapes that tell without colour."""

from __future__ import annotations

import math
import re
from dataclasses import replace
from xml.etree import ElementTree

import numpy as np
import pytest

from figures import FoodWebDiagram
from figures.drawing import draw
from figures.palette import LIGHT
from tests.figures.drawn import drawn
from tests.figures.web_specimens import LAKE, WEBS, WITHOUT_PIKE, random_web, web

AT_RANDOM = [random_web(seed) for seed in range(6)]
EACH_OTHER = WEBS[4]
NARROW = [chart.narrowed() for chart in (*WEBS, *AT_RANDOM[1:4], AT_RANDOM[5])]
each_drawing = pytest.mark.parametrize("chart", [*WEBS, *AT_RANDOM, *NARROW], ids=lambda chart: chart.name)
STEPPED, TANGLED = WEBS[-1].narrowed(), AT_RANDOM[5].narrowed()
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


@pytest.mark.parametrize("chart", [*WEBS, *AT_RANDOM, LAKE.narrowed(), WITHOUT_PIKE.narrowed()], ids=lambda chart: chart.name)
def test_height_is_in_proportion_to_the_level(chart: FoodWebDiagram):
    middle = {name: (top + bottom) / 2 for name, (_, top, _, bottom) in boxes(chart).items()}
    lowest = min(chart.species, key=lambda one: one.level)
    rises = {one.id: (middle[lowest.id] - middle[one.id], one.level - lowest.level) for one in chart.species}
    per_level = max(rise / levels for rise, levels in rises.values() if levels) if any(levels for _, levels in rises.values()) else 0
    assert {name: pytest.approx(levels * per_level, abs=0.02) for name, (_, levels) in rises.items()} == {n: rise for n, (rise, _) in rises.items()}


@each_drawing
def test_no_box_lies_on_another_or_leaves_the_canvas(chart: FoodWebDiagram):
    width = float(ElementTree.fromstring(drawn(chart)).get("viewBox").split()[2])
    found = list(boxes(chart).values())
    assert len(chart.species) == len(found)
    for number, (left, top, right, bottom) in enumerate(found):
        assert (20 if chart.narrow else 40) < left and right < width
        assert not any(left < r and x < right and top < b and y < bottom for x, y, r, b in found[:number])


@each_drawing
def test_every_link_has_an_arrow_from_the_eaten_to_the_eater(chart: FoodWebDiagram):
    """It begins at the edge of the food's box and ends a head's length before the eater's."""
    found, drawn_boxes = paths(chart, "arrow"), boxes(chart)
    assert [f"{link.food} {link.eater}" for link in chart.links] == list(found)
    for link in chart.links:
        start, *_, end = points(found[f"{link.food} {link.eater}"])
        assert near(drawn_boxes[link.food], start) <= 1.2
        assert near(drawn_boxes[link.eater], end) <= 16


@pytest.mark.parametrize("chart", NARROW, ids=lambda chart: chart.name)
def test_a_narrow_web_is_400_px_wide_unless_a_single_name_is_wider(chart: FoodWebDiagram):
    width = float(ElementTree.fromstring(drawn(chart)).get("viewBox").split()[2])
    assert 400 == width or any(len(word) > 20 for one in chart.species for word in one.label.split())


def test_a_row_too_wide_for_a_narrow_sheet_stands_in_steps_around_its_line_and_the_key_says_so():
    heights = sorted({(top + bottom) / 2 for name, (_, top, _, bottom) in boxes(STEPPED).items() if name != "Deer"})
    (line,) = (float(text.get("y")) - 4.7 for text in ElementTree.fromstring(drawn(STEPPED)).findall(".//{*}text") if text.text == "1")
    assert 3 == len(heights)
    assert sum(heights) / 3 == pytest.approx(line, abs=0.1)
    assert "Boxes that find no room side by side stand" in " ".join(texts(STEPPED))
    assert "Boxes that find no room side by side stand" not in " ".join(texts(LAKE.narrowed()))


@each_drawing
def test_no_arrow_runs_off_the_canvas(chart: FoodWebDiagram):
    width = float(ElementTree.fromstring(drawn(chart)).get("viewBox").split()[2])
    loops = {f"{one.id} {one.id}" for one in chart.species}
    ways = {name: points(path) for name, path in paths(chart, "arrow").items() if name not in loops}
    middles = {name: (way[0][0] + 3 * way[1][0] + 3 * way[2][0] + way[3][0]) / 8 for name, way in ways.items()}
    assert {} == {name: x for name, x in middles.items() if not 0 < x < width}


@pytest.mark.parametrize("chart", [one for one in (*WEBS, *AT_RANDOM, *NARROW) if one not in (STEPPED, TANGLED)], ids=lambda chart: chart.name)
def test_no_arrow_runs_behind_a_box_that_is_not_its_own(chart: FoodWebDiagram):
    """All but nine boxes of one row, and two dozen arrows between twelve species, where these are to fit on a phone."""
    assert [] == behind(chart)


def behind(chart: FoodWebDiagram) -> list[str]:
    """The arrows that a foreign box covers a part of."""
    found = []
    for name, path in paths(chart, "arrow").items():
        ends = next({link.food, link.eater} for link in chart.links if name == f"{link.food} {link.eater}")
        a, b, c, d = (np.array(point) for point in points(path)[:4])
        shares = np.linspace(0, 1, 200)[:, None]
        way = (1 - shares) ** 3 * a + 3 * shares * (1 - shares) ** 2 * b + 3 * shares**2 * (1 - shares) * c + shares**3 * d
        for other, (left, top, right, bottom) in boxes(chart).items():
            covered = (way > (left, top)).all(axis=1) & (way < (right, bottom)).all(axis=1)
            found += [f"{name} behind {other}"] * (other not in ends and bool(covered.any()))
    return found


def test_notes_of_other_drawings_change_no_place():
    """The same web with other notes, each of which has room in both."""
    notes = {one.id: (one.note, other.note) for one, other in zip(LAKE.species, WITHOUT_PIKE.species, strict=True)}
    one, other = (replace(web, species=tuple(replace(s, room_for=notes[s.id]) for s in web.species)) for web in (LAKE, WITHOUT_PIKE))
    assert boxes(one) == boxes(other)
    assert [path.get("d") for path in paths(one, "arrow").values()] == [path.get("d") for path in paths(other, "arrow").values()]


def test_what_holds_at_first_only_has_a_hollow_mark_and_the_key_says_so():
    first = replace(WITHOUT_PIKE, every_path="every path of up to two arrows", species=tuple(replace(s, change="falls at first") if s.change == "falls" else s for s in WITHOUT_PIKE.species))
    fills = {name: path.get("fill") for name, path in paths(first, "mark").items()}
    assert {LIGHT["ink"]} == {fill for name, fill in fills.items() if "first" not in name}
    assert {LIGHT["ground"]} == {fill for name, fill in fills.items() if "first" in name}
    assert ({"every path of up to two arrows says so", "only the shortest paths say so"}, {"every path says so"}) == tuple(
        {text for text in texts(chart) if text.endswith("say so") or text.endswith("says so")} for chart in (first, WITHOUT_PIKE)
    )  # fmt: skip


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


@each_drawing
def test_no_head_lies_under_its_box(chart: FoodWebDiagram):
    """A head's tip touches its box; its other corners stand outside."""
    drawn_boxes, heads = boxes(chart), paths(chart, "head")
    hidden = []
    for link in (link for link in chart.links if link.food != link.eater):
        left, top, right, bottom = drawn_boxes[link.eater]
        corners = points(heads[f"{link.food} {link.eater}"])
        hidden += [link for x, y in corners if left + 0.1 < x < right - 0.1 and top + 0.1 < y < bottom - 0.1]
    assert [] == hidden


@each_drawing
def test_no_arrow_is_cut_within_14_px_of_its_ends(chart: FoodWebDiagram):
    cut = [
        (part.removeprefix("gap "), points(path))
        for path in ElementTree.fromstring(drawn(chart)).findall(".//{*}path") if (part := path.get("data-part", "")).startswith("gap ")
    ]  # fmt: skip
    arrows = {name: points(path) for name, path in paths(chart, "arrow").items()}
    near = [(name, gap[len(gap) // 2]) for name, gap in cut for end in (arrows[name][0], arrows[name][-1]) if math.dist(gap[len(gap) // 2], end) < 14]
    assert [] == near


def test_arrows_that_cross_have_gaps():
    assert paths(AT_RANDOM[5], "gap")
