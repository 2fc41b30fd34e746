"""The pages that hold the course together: what is shown of it, and what is kept back."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest

from generator.build import check
from generator.kinds import all_kinds
from generator.pages.course_pages import navigation
from generator.pages.page import Page
from generator.pages.site import Site
from generator.pages.written_page import written_navigation
from tests.kinds.small_records import CONTENT
from tests.pages.rendered import demo_pages, pages_of, rendered, seen

GRASSLAND = "biome/temperate_grassland.yaml"
SECRET = "Whistle Ridge"


def changed(folder: Path, *changes: tuple[str, str, str]) -> Site:
    """The project's own content with texts of files replaced, each of which must stand there once."""
    content = folder / "content"
    shutil.copytree(CONTENT, content)
    for name, old, new in changes:
        text = (content / name).read_text("utf-8")
        assert 1 == text.count(old)
        (content / name).write_text(text.replace(old, new), "utf-8")
    return Site(library=check(content), kinds=all_kinds())


def all_text(pages: dict[str, Page]) -> str:
    return "\n".join(page.text for page in pages.values())


def hidden_topic(folder: Path) -> Site:
    """The course without the topic of energy, of which another record names a number."""
    return changed(
        folder,
        ("course.yaml", "show: true ", "show: false "),
        (GRASSLAND, "soil dries out,", "soil dries out, unlike Sill Lake with {pyramid/sill_lake:pike.production},"),
    )


def test_navigation_follows_the_taught_order(tmp_path: Path) -> None:
    site = changed(tmp_path, ("course.yaml", "title: Energy flow", "title: Flow of energy"))
    titles = [next(iter(entry)) for entry in navigation(site)]
    assert ["Home", *(topic.title for topic in site.library.course.topics), "Practice", "Look up"] == titles
    assert ["Biomes and climate", "Cycles of matter", "Flow of energy"] == titles[1:4]


def test_every_page_is_in_the_navigation_once(tmp_path: Path) -> None:
    site = changed(tmp_path)
    found = str(navigation(site, written_navigation(site)))
    assert [] == [uri for uri in demo_pages() if found.count(f"'{uri}'") != 1]


def test_topic_that_is_not_taught_yet_has_no_page_and_no_link(tmp_path: Path) -> None:
    site = hidden_topic(tmp_path)
    pages = pages_of(site.library)
    assert [] == [uri for uri in pages if "pyramid" in uri or "energy" in uri]
    assert "Energy flow" not in str(navigation(site)) + all_text(pages)
    assert "pyramid/" not in all_text(pages)


def test_number_of_a_hidden_record_is_shown_without_a_link(tmp_path: Path) -> None:
    page = rendered(pages_of(hidden_topic(tmp_path).library)["biome/temperate-grassland.md"])
    assert "unlike Sill Lake with 4 kJ m⁻² yr⁻¹," in seen(page)


def test_number_of_another_record_leads_to_its_working(tmp_path: Path) -> None:
    site = changed(tmp_path, (GRASSLAND, "soil dries out,", "soil dries out, unlike {pyramid/sill_lake:pike.production},"))
    page = rendered(pages_of(site.library)["biome/temperate-grassland.md"])
    assert page.find("a", href="../pyramid/sill-lake.html#fact-pike-production") is not None


@pytest.mark.parametrize("use", ["paper", "practice"])
def test_station_that_the_page_does_not_show_is_nowhere(tmp_path: Path, use: str) -> None:
    """A station for papers and one for practice have neither chart nor numbers on any page; only questions speak of one for practice."""
    months = "monthly_mean_temp: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12], monthly_precip: [40, 41, 42, 43, 44, 45, 46, 47, 48, 49, 50, 51]"
    station = f"stations:\n  - {{id: whistle_ridge, name: {SECRET}, use: {use}, {months}}}\n"
    text = all_text(pages_of(changed(tmp_path, (GRASSLAND, "stations:\n", station)).library))
    if use == "practice":
        asked = re.findall(r"<self-check .*?</self-check>", text, re.DOTALL)
        assert any(SECRET in one for one in asked)
        text = re.sub(r"<self-check .*?</self-check>", "", text, flags=re.DOTALL)
    assert not any(word in text for word in (SECRET, "whistle", "46, 47, 48"))


def test_record_in_no_topic_has_no_page(tmp_path: Path) -> None:
    site = changed(tmp_path, ("course.yaml", "cycle/wend_hollow_nitrogen, ", ""))
    assert [] == [uri for uri in pages_of(site.library) if "wend" in uri]


@pytest.mark.parametrize("use", ["practice", "paper"])
def test_record_that_has_no_page_is_nowhere(tmp_path: Path, use: str) -> None:
    """Neither on a page nor among the charts, where no written question shows a part of it."""
    pond = f"title: {SECRET}\nuse: {use}\ndata: invented\nsummary: A pond.\nunits: {{energy_flow: kJ/m2/yr}}\nlevels: [{{id: algae, production: 900}}, {{id: fleas, production: 90}}]\n"
    content = tmp_path / "content"
    shutil.copytree(CONTENT, content)
    (content / "pyramid" / "whistle_pond.yaml").write_text(pond, "utf-8")
    site = Site(library=check(content), kinds=all_kinds())
    assert "pyramid/whistle_pond" in site.library.subjects and () == site.library.warnings
    assert not any(word in all_text(pages_of(site.library)) for word in (SECRET, "whistle"))
    assert [] == [chart.name for chart in site.charts if "whistle" in chart.name]


def test_record_without_an_optional_part_has_no_empty_section(tmp_path: Path) -> None:
    site = changed(tmp_path, (GRASSLAND, "misconceptions: [clim.desert-hot, clim.one-year]", ""), (GRASSLAND, "disturbance: [fire, grazing]", ""))
    page = rendered(pages_of(site.library)["biome/temperate-grassland.md"])
    assert "Common mistakes" not in seen(page) and "Disturbance" not in seen(page)


def test_an_organisation_is_cited_by_its_whole_name() -> None:
    cited = seen(rendered(demo_pages()["methods.md"]))
    assert ("National Oceanic and Atmospheric Administration and others 1976" in cited, "National Oceanic and others" in cited) == (True, False)


def test_numbers_from_memory_are_said_to_await_comparison_where_it_is_said_that_they_are_published() -> None:
    carbon, water = (seen(rendered(demo_pages()[f"{name}.md"])) for name in ("cycle/global-carbon", "concept/why-seasons"))
    assert ("still await comparison" in carbon, "still await comparison" in water) == (True, False)


def test_questions_of_a_record_without_data_are_not_asked_on_the_data() -> None:
    bare, rich = (demo_pages()[f"{name}.md"].text for name in ("concept/answering-questions", "cycle/water"))
    assert ("Check yourself on the data" in bare, "Check yourself on the data" in rich) == (False, True)


def test_a_cell_of_a_comparison_that_is_not_known_says_so() -> None:
    assert "<td>not known</td>" in demo_pages()["productivity/compared.md"].text.replace(' class="number"', "")
