"""Pages of records: each fact once, schemes folded away but one, and what must be said beside the numbers."""

from __future__ import annotations

import pytest
from bs4 import BeautifulSoup, Tag

from generator.kinds import all_kinds
from generator.pages.markup import NO_BREAK, fact_anchor
from tests.kinds.small_records import demo, library
from tests.pages.rendered import demo_pages, plain, rendered, seen

BIOMES = sorted(name for name, subject in library().subjects.items() if subject.kind == "biome")
SCHEMES = ("aridity_class", "life_zone", "biotemperature", "region", "limiting_factor")


def page(record: str) -> BeautifulSoup:
    return rendered(demo_pages()[f"{record.replace('_', '-')}.md"])


def entry(record: str, fact: str) -> Tag:
    found = page(record).find(id=fact_anchor(fact))
    assert isinstance(found, Tag)
    return found


@pytest.mark.parametrize("record", BIOMES)
def test_each_fact_of_a_shown_station_stands_on_the_page_once(record: str) -> None:
    """Folding facts into groups loses none and doubles none."""
    subject = demo(record)
    shown = {station.id for station in subject.record.stations if station.use == "page"}
    expected = sorted(fact_anchor(name) for name in subject.facts if name.partition(".")[0] in shown)
    anchors = [str(tag["id"]) for tag in page(record).find_all(id=True)]
    assert expected == sorted(anchor for anchor in anchors if anchor in expected)


@pytest.mark.parametrize("scheme", SCHEMES)
def test_other_schemes_are_folded_away(scheme: str) -> None:
    folded = entry("biome/temperate_grassland", f"harrow_plain.{scheme}").find_parent("details", class_="folded")
    assert folded is not None
    assert "Other ways to class this climate" == folded.summary.get_text()


def test_climate_class_is_shown_openly_with_its_reading() -> None:
    found = entry("biome/temperate_grassland", "harrow_plain.climate_class")
    assert found.find_parent("details") is None
    assert "BSk (dry steppe, cold winters)" in plain(found.summary.get_text())


def test_disagreement_stands_before_the_numbers_and_links_to_the_working() -> None:
    told = next(item for item in page("biome/alpine").find_all("li") if "Schemes disagree whether forest" in item.get_text())
    assert ["#fact-high-saddle-life-zone", "#fact-high-saddle-region", "#fact-high-saddle-climate-class"] == [
        f"#{str(link['href']).partition('#')[2]}" for link in told.find_all("a")
    ]
    assert told.find_next(class_="facts") is not None


def test_page_without_a_remark_has_no_heading_for_one() -> None:
    subject = demo("biome/tropical_rain_forest")
    assert [] == list(all_kinds()["biome"].remarks(subject, "maro_landing"))
    assert "Read these numbers with care" not in seen(page(subject.id))


def test_the_same_number_of_two_stations_is_one_line_that_opens_to_both_workings() -> None:
    shown = page("biome/mediterranean_shrubland")
    both = [shown.find(id=fact_anchor(f"{station}.annual_precip")) for station in ("cape_sorrel", "amber_head")]
    line = both[0].find_parent("details", class_="working")
    assert line is both[1].find_parent("details", class_="working")
    assert f"Annual precipitation Cape Sorrel 533{NO_BREAK}mm Amber Head 516{NO_BREAK}mm" == line.summary.get_text()
    assert [f"Cape Sorrel: 533{NO_BREAK}mm", f"Amber Head: 516{NO_BREAK}mm"] == [one.strong.get_text() for one in both]
    assert all(one.find("math") for one in both)
    assert 1 == line.get_text().count("Method:")


def test_a_method_is_told_at_length_once_and_other_numbers_lead_there() -> None:
    found = [line for line in page("productivity/halden_water_bottles").select("details.working") if line.find("a", string="Standard error of a mean")]
    first, *others = found
    assert others and "Counts chance only" in first.get_text()
    for line in others:
        assert f"#{first['id']}" == line.find("a", string="Rule and limits above")["href"]


def test_short_words_on_a_method_are_told_again() -> None:
    told = [found.get_text() for found in page("cycle/wend_hollow_nitrogen").select("details.working") if "Share caused by people" in found.get_text()]
    assert len(told) > 1 and all("Undefined where the process moves nothing." in one for one in told)


def test_series_that_never_changes_is_told_by_one_number() -> None:
    soil = entry("biome/tropical_rain_forest", "maro_landing.monthly_soil_water")
    assert f"100{NO_BREAK}mm" == soil.find(class_="fact-value").get_text()


def test_working_that_a_question_names_is_marked_so_that_paper_prints_it() -> None:
    """Other workings stay folded on paper, and a question could not be answered from it."""
    found = entry("biome/boreal_forest", "spruce_halt.monthly_soil_water")
    assert ["working", "asked"] == found["class"]
    named = [one.get_text() for one in page("biome/boreal_forest").select("legend") if "Soil water at the end of each month" in one.get_text()]
    assert named
    assert ["working"] == entry("biome/boreal_forest", "spruce_halt.monthly_pet")["class"]


def test_paper_has_the_labels_of_a_short_list_to_pick_from() -> None:
    """`Which of these depths` cannot be answered from a list that does not open; the months of a year need none."""
    short = page("aquatic_biome/lake").select("self-check[data-type=label]")
    assert short
    for question in short:
        offered = [plain(option.get_text()) for option in question.select("option[value]")][1:]
        assert f"One of: {'; '.join(offered)}." == plain(question.select("p.picks.paper-only")[0].get_text())
    months = [one for one in page("biome/savanna").select("self-check[data-type=label]") if len(one.select("option")) == 13]
    assert months and not [one for question in months for one in question.select("p.picks")]


@pytest.mark.parametrize(
    ("record", "fact", "shown"),
    [
        ("cycle/global_nitrogen", "fixation.human_share", f"50.8{NO_BREAK}%"),
        ("biome/tundra", "lantern_bluff.growing_season_months", "July and August"),
    ],
)
def test_what_a_question_asks_for_waits_until_its_line_is_opened(record: str, fact: str, shown: str) -> None:
    """Not so the largest of some, which is picked by its label: a number hidden among others would tell it."""
    kept = [line for line in page(record).select(".facts > details") if line.select(".when-open")]
    assert [fact_anchor(fact)] == [line["id"] for line in kept]
    waits, value = kept[0].select(".till-open, .when-open")
    assert ("a question asks for it", shown) == (waits.get_text(), value.get_text())
