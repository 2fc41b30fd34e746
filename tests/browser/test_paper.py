"""Pages as Chromium prints them on A4, read with a library of its own: where a sheet begins, and how large its letters are."""

from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pypdfium2
import pytest
from playwright.sync_api import Page, expect
from pypdfium2 import raw

from tests.kinds.small_records import library

pytestmark = pytest.mark.browser
TOPICS = [topic.id.replace("_", "-") for topic in library().course.topics if topic.show]
PARTS = ("The core ideas", "Formulas and units", "Words to cover and recall")
SMALLEST = 7.9
"""Points; a letter is 8 pt high, less what Chromium rounds off."""
RAISED = 6
"""Points of what is raised or lowered, as the digits of a formula are."""


@pytest.fixture
def printed(built_site: Path, opened: Callable[..., Page]) -> Callable[[str], pypdfium2.PdfDocument]:
    """A page of the site as its reader's browser prints it."""

    def on_paper(path: str) -> pypdfium2.PdfDocument:
        return pypdfium2.PdfDocument(opened(f"{built_site.as_uri()}/{path}").pdf(format="A4"))

    return on_paper


def sheets(pdf: pypdfium2.PdfDocument) -> list[str]:
    """The text of each sheet."""
    return [sheet.get_textpage().get_text_range().replace("\r\n", "\n") for sheet in pdf]


def sizes(pdf: pypdfium2.PdfDocument) -> list[tuple[str, float]]:
    """Each character with its size in points, as it stands on the sheet."""
    found = []
    for text in (sheet.get_textpage() for sheet in pdf):
        for place in range(text.count_chars()):
            turned = raw.FS_MATRIX()
            raw.FPDFText_GetMatrix(text.raw, place, turned)
            size = raw.FPDFText_GetFontSize(text.raw, place) * (turned.c**2 + turned.d**2) ** 0.5
            found.append((chr(raw.FPDFText_GetUnicode(text.raw, place)), size))
    return found


@pytest.mark.parametrize("topic", TOPICS)
def test_core_ideas_are_one_sheet_and_each_further_part_begins_its_own(printed: Callable[[str], pypdfium2.PdfDocument], topic: str) -> None:
    parts = [[line for line in text.split("\n") if line in PARTS] for text in sheets(printed(f"topics/{topic}/on-one-page.html"))]
    assert [["The core ideas"]] == parts[:1]
    assert parts[1] in (["Formulas and units"], ["Words to cover and recall"])
    assert all(len(names) <= 1 for names in parts)


def test_command_words_are_one_sheet_for_the_desk(printed: Callable[[str], pypdfium2.PdfDocument]) -> None:
    assert 1 == len(printed("written/command-words.html"))


@pytest.mark.parametrize(
    "path",
    [
        "index.html", "methods.html", "words.html", "sources.html", "my-record.html", "biome/compared.html", "cycle/compared.html", "food-web/compared.html",
        "biome/mediterranean-shrubland.html", "aquatic-biome/reef.html", "concept/why-seasons.html", "cycle/global-carbon.html", "food-web/sill-lake-web.html",
        "productivity/halden-water-bottles.html", "pyramid/tillet-bay.html", "transect/coastal-range.html", "topics/energy/index.html", "topics/energy/on-one-page.html",
        "topics/biomes/on-one-page.html", "written/index.html", "written/command-words.html", "written/crabs-and-cordgrass.html",
    ],
)  # fmt: skip
def test_no_letter_on_paper_is_smaller_than_8_pt(printed: Callable[[str], pypdfium2.PdfDocument], path: str) -> None:
    small = [(sign, size) for sign, size in sizes(printed(path)) if size < SMALLEST and not sign.isspace()]
    assert [] == [(sign, size) for sign, size in small if sign.isalpha() or size < RAISED]


def test_records_side_by_side_stand_whole_on_the_long_side(printed: Callable[[str], pypdfium2.PdfDocument]) -> None:
    pdf = printed("cycle/compared.html")
    wide = [place for place, sheet in enumerate(pdf) if sheet.get_width() > sheet.get_height()]
    assert wide
    assert ["Budget", "closes"] == re.findall(r"Budget|closes", sheets(pdf)[wide[0]])  # the last column's head


def test_methods_say_that_they_were_checked_and_not_against_what(printed: Callable[[str], pypdfium2.PdfDocument]) -> None:
    pdf = printed("methods.html")
    text = "".join(sheets(pdf))
    assert len(re.findall(r"Checked against \d+ value", text)) > 100
    assert "output of a program" not in text
    assert len(pdf) < 20


def test_computed_numbers_come_out_with_the_answers_only(printed: Callable[[str], pypdfium2.PdfDocument]) -> None:
    lines = ["Elevation stated", "October 58 138 45", "Aridity index", "Answer and working"]  # the second is of the table that a question sends to
    without, told = ("".join(sheets(printed(f"biome/savanna.html{asked}"))) for asked in ("", "?answers"))
    assert lines[:2] == [line for line in lines if line in without]
    assert lines == [line for line in lines if line in told]


def test_two_buttons_print_a_page_without_answers_and_with_them(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/biome/savanna.html")
    page.evaluate("window.print = () => { window.told = document.body.classList.contains('with-answers'); dispatchEvent(new Event('afterprint')) }")
    for name, told in {"with answers": True, "without answers": False}.items():
        page.get_by_role("button", name=name, exact=True).click()
        assert told == page.evaluate("window.told")
        assert not page.evaluate("document.body.classList.contains('with-answers')"), "what was printed once is not asked for the next time"
    page.emulate_media(media="print")
    expect(page.get_by_role("button", name="with answers", exact=True)).not_to_be_visible()


@pytest.mark.parametrize("name", ["index.html", "methods.html", "written/a-drained-moss.html"])
def test_a_page_without_answers_of_its_own_has_no_such_buttons(built_site: Path, opened: Callable[..., Page], name: str) -> None:
    page = opened(f"{built_site.as_uri()}/{name}")
    expect(page.get_by_role("button", name="with answers", exact=True)).to_have_count(0)


def test_a_sum_has_squares_to_work_it_out_on_and_a_choice_has_none(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/biome/savanna.html")
    height = "entry => getComputedStyle(entry, '::before').height"
    page.emulate_media(media="print")
    sums = page.locator("self-check[data-type=number] .entry")
    assert sums.count() > 1
    assert {"20 mm"} == {f"{float(one.evaluate(height).removesuffix('px')) * 25.4 / 96:.0f} mm" for one in sums.all()}
    assert {"auto"} == {one.evaluate(height) for one in page.locator("self-check:not([data-type=number]) .entry").all()}
    page.emulate_media(media="screen")
    assert {"auto"} == {one.evaluate(height) for one in sums.all()}


def test_lines_of_a_written_part_stay_on_one_sheet_and_no_rule_stands_between_parts(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/written/late-fires.html")
    page.emulate_media(media="print")
    assert {"avoid"} == set(page.locator(".ruled-space").evaluate_all("all => all.map(one => getComputedStyle(one).breakInside)"))
    assert {"0px"} == set(page.locator("article > h2").evaluate_all("all => all.map(one => getComputedStyle(one).borderTopWidth)"))
    expect(page.locator("details.asked").first).to_be_hidden()


def test_a_scenario_has_one_table_on_paper(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/cycle/water.html")
    tables = page.locator("details.chart-data:has(+ .scenario)")
    assert 2 == tables.count() == page.locator(".scenario").count()
    expect(tables.first).to_be_visible()
    page.emulate_media(media="print")
    assert [] == [one for one in tables.all() if one.is_visible()]
    expect(page.locator(".scenario").first).to_be_visible()
    expect(page.locator("details.chart-data").first).to_be_visible()


def test_paths_of_a_food_web_are_folded_on_the_screen_and_in_columns_on_paper(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/food-web/sill-lake-web.html")
    paths = page.locator(".paths").first
    expect(paths).to_be_hidden()
    page.get_by_text("The paths to each of the others").first.click()
    expect(paths).to_be_visible()
    page.emulate_media(media="print")
    expect(paths).to_have_css("column-count", "2")


def test_what_only_a_screen_can_do_is_left_out(printed: Callable[[str], pypdfium2.PdfDocument]) -> None:
    assert "this device" not in sheets(printed("practice.html"))[0]
    assert "to print" not in "".join(sheets(printed("topics/biomes/index.html")) + sheets(printed("written/index.html")))
