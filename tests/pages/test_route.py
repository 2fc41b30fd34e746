"""The route: stations from south to north with their precipitation, on the pages of their records and at the front."""

from __future__ import annotations

import re

import pytest
from bs4 import BeautifulSoup

from generator.kinds import all_kinds
from generator.pages.route import BARS, LEAST, MARK, STYLE, route, route_style, stations, strip
from generator.pages.site import HOME, Site
from tests.kinds.small_records import library
from tests.pages.rendered import demo_pages, rendered


def site() -> Site:
    return Site(library=library(), kinds=all_kinds())


def place(tag: object, name: str) -> float:
    found = re.search(rf"--{name}: ([\d.]+)%", str(tag))
    assert found
    return float(found[1])


def test_stations_stand_from_south_to_north_and_their_bars_are_true_to_each_other() -> None:
    found = route(site())
    assert found
    latitudes = [stop.latitude for stop in found.stops]
    assert sorted(latitudes) == latitudes
    across = [found.across(latitude) for latitude in latitudes]
    assert 0 < across[0] < across[-1] < 100
    for stop in found.stops:
        assert stop.rain * 100 == pytest.approx(found.up(stop) * max(one.rain for one in found.stops))


def test_only_stations_of_pages_are_on_it() -> None:
    found = route(site())
    shown = {of.label for subject in site().subjects for of in site().kinds[subject.kind].parts(subject.record).values() if of.use == "page"}
    assert found and {stop.name for stop in found.stops} <= shown


def test_a_record_s_page_picks_out_its_own_stations_with_their_precipitation() -> None:
    line = rendered(demo_pages()["biome/temperate-grassland.md"]).select_one(".route")
    assert line
    assert ["Harrow Plain, 327\u00a0mm in a year"] == [one.get_text() for one in line.select(".named")]
    assert 1 == len(line.select("i"))
    assert place(line.select_one("i"), "x") == place(line.select_one(".named"), "x")
    assert "Harrow Plain, 46.5°, 327 mm in a year" in str(line["aria-label"])


def test_a_record_without_stations_has_none() -> None:
    assert "" == strip(route(site()), library().subjects["cycle/water"])
    assert not rendered(demo_pages()["cycle/water.md"]).select(".route")


def test_a_course_of_few_stations_has_none() -> None:
    few = library().subjects["biome/savanna"]
    course = library().course.model_copy(update={"topics": (library().course.topics[1],)})
    small = Site(library=library().__class__(**{**vars(library()), "course": course}), kinds=all_kinds())
    assert None is route(small)
    assert "" == strip(None, few) == stations(None, HOME)
    assert {} == route_style(None)


def test_the_front_page_says_that_a_bar_is_longer_than_its_station_s_precipitation() -> None:
    """Salt Ladder: 35 of 2950 mm, 1.2 % of the highest bar."""
    found, page = route(site()), rendered(demo_pages()[HOME])
    assert found and LEAST > min(map(found.up, found.stops))
    caption = page.select_one(".route-caption")
    assert caption and "is drawn longer" in caption.get_text()


def test_the_front_page_names_every_station_with_its_record() -> None:
    found, page = route(site()), rendered(demo_pages()[HOME])
    assert found
    assert [stop.name for stop in found.stops] == [one.get_text() for one in page.select(".stations a")]


def test_the_header_draws_a_line_for_each_station() -> None:
    found = route(site())
    style = route_style(found)[STYLE].decode()
    assert found and len(found.stops) == lines(style, "route").count("M")
    assert not re.search(r"url\(\"(?!data:)", style)


def lines(style: str, name: str) -> str:
    """The path of a mask that the style hands to the pages."""
    found = re.search(rf"--{name}: url\(\"[^\"]* d='([^']+)'", style)
    assert found
    return found[1]


def test_the_squares_behind_the_bars_stand_at_round_latitudes_and_precipitation() -> None:
    found = route(site())
    assert found
    path = lines(route_style(found)[STYLE].decode(), "squares")
    south, north, most = found.scale
    latitudes = [south + float(x) / 100 * (north - south) for x in re.findall(r"M([\d.]+) 0V20", path)]
    assert latitudes == pytest.approx([latitude for latitude in range(-90, 91, 10) if south <= latitude <= north], abs=0.02)
    rains = [(1 - float(y) / 20) * most for y in re.findall(r"M0 ([\d.]+)H100", path)]
    assert rains == pytest.approx([rain for rain in range(1000, 12000, 1000) if rain <= most], abs=2)


def test_the_front_page_says_how_large_a_square_is() -> None:
    caption = rendered(demo_pages()[HOME]).select_one(".route-caption")
    assert caption and "A square is 10° wide and 1000\u00a0mm high." in caption.get_text()


def test_the_sign_of_the_site_shows_the_wettest_station_of_each_stretch() -> None:
    found = route(site())
    assert found
    drawn = BeautifulSoup(route_style(found)[MARK], "html.parser")
    bars = [float(up) for up in re.findall(r"20v-([\d.]+)", str(drawn.select("path")[0]["d"]))]
    south, north, most = found.scale
    width = (north - south) / BARS
    stretches = [[stop.rain for stop in found.stops if south + n * width <= stop.latitude < south + (n + 1) * width] for n in range(BARS)]
    assert [max(rain) * 17 / most for rain in stretches if rain] == pytest.approx(bars, abs=0.05)
    assert max(bars) == 17
