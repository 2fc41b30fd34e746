"""The pipeline on a whole course: what follows from one number, what never reaches students, and what is not done twice."""

from __future__ import annotations

import html
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from generator import build
from generator.build import write_pages
from generator.course.library import RESERVED
from generator.diagnostics import ContentErrors
from generator.kinds import all_kinds
from generator.pages.site import comparison_uri
from generator.publish.site import build_site
from tests.content.patches import BIOME, CYCLE, ROOT, Patch, substitute, write_course
from tests.publish.site_tree import differences, tree

JUNE = ("[12, 10, 16, 26, 48, 66, 42,", "[12, 10, 16, 26, 48, 69, 42,")
"""June brings 69 mm instead of 66, the year 330 instead of 327."""
FOLLOWS = (
    ("description", 'alt="Mean temperature runs from −9 °C in January to 22 °C in July, 7.08 °C over the year. '
     'Precipitation runs from 10 mm in February to 66 mm in June, 327 mm in all.',
     'alt="Mean temperature runs from −9 °C in January to 22 °C in July, 7.08 °C over the year. '
     'Precipitation runs from 10 mm in February to 69 mm in June, 330 mm in all.'),
    ("data table", "June 19 66 July", "June 19 69 July"),
    ("fact", "Annual precipitation 327 mm", "Annual precipitation 330 mm"),
    ("working", "48 + 66 + 42", "48 + 69 + 42"),
    ("sentence", "but only 327 mm falls", "but only 330 mm falls"),
    ("solution", "66 mm ÷ 327 mm", "69 mm ÷ 330 mm"),
    ("prompt", "precipitation alone 586 g", "precipitation alone 590 g"),
    ("key", "20.2 % : right", "20.9 % : right"),
    ("what the key accepts", 'data-low="19.779', 'data-low="20.49'),
    ("a known wrong answer", "25.3 % : not right", "26.4 % : not right"),
)  # fmt: skip
"""What stands on the page before and after; June brings 66 of 327 mm, or 69 of 330 mm."""
GRASSLAND = "biome/temperate-grassland"
SCRIPTS = [f"assets/{folder}/biome/temperate-grassland.js" for folder in ("fresh", "practice")]
DRAWN_ANEW = [
    "biome.climate_multiples", "biome.climate_multiples.narrow", "biome.temperature_rainfall_map", "biome.temperature_rainfall_map.narrow",
    "temperate_grassland.chain.few_trees", "temperate_grassland.climate_diagram.harrow_plain", "temperate_grassland.climate_diagram.harrow_plain.narrow",
]  # fmt: skip
"""The charts that hold the year of this station: two that compare biomes, the steps of an explanation, and its own, wide and for a phone."""
HIDE_CYCLES = Patch({"course.yaml": [("[cycle/wend_hollow_nitrogen]", "[cycle/wend_hollow_nitrogen]\n    show: false")]})
PAPER_STATION = """
  - id: secret_flat
    name: Secret Flat
    latitude: 51.3
    elevation: 7
    use: paper
    monthly_mean_temp: [-9, -6, 0, 8, 14, 19, 23.77, 21, 15, 8, 0, -7]
    monthly_precip: [12, 10, 16, 26, 48, 66, 77.7, 34, 26, 20, 15, 12]

explanations:"""
NUMBERS_OF_PAPER_STATION = ["77.7", "23.77", "51.3", "362.7", "363 mm", "7.23 °C", "Secret Flat", "secret_flat", "secret-flat"]
"""As stated, and as they come out: the year's sum is 362.7 mm, its mean 86.77 / 12 = 7.23 °C."""


@pytest.fixture
def content(tmp_path: Path) -> Path:
    """The small course."""
    return write_course(tmp_path / "content")


@pytest.fixture(scope="module")
def drawn(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A work folder in which the charts of the small course have been drawn."""
    folder = tmp_path_factory.mktemp("drawn")
    write_pages(write_course(folder / "content"), folder / "work")
    return folder / "work"


@pytest.fixture
def work(drawn: Path, tmp_path: Path) -> Path:
    """A work folder after a run over the small course."""
    return Path(shutil.copytree(drawn, tmp_path / "work"))


def words_of(folder: Path) -> str:
    """All text of a folder that comes from the content: pages, charts, the index of the search."""
    files = [file for file in sorted(folder.rglob("*")) if file.is_file()]
    ours = [file for file in files if file.suffix in (".md", ".svg", ".html", ".json") or file.parent.name == "search"]
    return "\n".join(file.read_text("utf-8").replace("\u00a0", " ") for file in ours)


def told_of_paper_station(folder: Path) -> list[str]:
    """Names and numbers of the paper station that stand in a folder, and not as a part of a longer number."""
    words = words_of(folder)
    return [number for number in NUMBERS_OF_PAPER_STATION if re.search(rf"(?<![\d.]){re.escape(number)}(?!\d)", words)]


def plain(page: str) -> str:
    """A page without its tags, white space evened out."""
    return " ".join(html.unescape(re.sub(r"<[^>]*>", " ", page)).split())


# One number


def test_one_rainfall_number_changes_its_own_page_charts_comparison_and_front_page_only(content: Path, work: Path) -> None:
    before = tree(work / "pages")
    substitute(content / BIOME, *JUNE)
    written = write_pages(content, work)
    kept = [f"files/{name}.svg" for name in DRAWN_ANEW if "chain" not in name and not name.endswith(".narrow")]
    kept += [f"files/{name}.csv" for name in DRAWN_ANEW if name.endswith(("_map", "harrow_plain"))]  # the other table tells no amounts
    expected = sorted([*SCRIPTS, "biome/compared.md", f"{GRASSLAND}.md", *(f"charts/{name}.svg" for name in DRAWN_ANEW), *kept, "index.md"])
    assert expected == sorted(written.changed)
    after = tree(work / "pages")
    assert sorted(expected) == sorted(name for name in before | after if before.get(name) != after.get(name))


def test_one_rainfall_number_changes_everything_on_its_page_that_rests_on_it(content: Path, work: Path) -> None:
    page = work / "pages" / f"{GRASSLAND}.md"
    before = page.read_text("utf-8")
    substitute(content / BIOME, *JUNE)
    write_pages(content, work)
    after = page.read_text("utf-8")
    for part, old, new in FOLLOWS:
        found = [(old in text or old in plain(text), new in text or new in plain(text)) for text in (before, after)]
        assert [(True, False), (False, True)] == found, part


def test_one_rainfall_number_changes_the_drawing(content: Path, work: Path) -> None:
    chart = work / "pages" / "charts" / "temperate_grassland.climate_diagram.harrow_plain.svg"
    before = chart.read_text("utf-8")
    substitute(content / BIOME, *JUNE)
    write_pages(content, work)
    after = chart.read_text("utf-8")
    assert (["327 mm"], ["330 mm"]) == (re.findall(r">(3\d\d mm)<", before), re.findall(r">(3\d\d mm)<", after))
    lines = [set(re.findall(r' d="([^"]+)"', drawing)) for drawing in (before, after)]
    assert lines[0] - lines[1] and lines[1] - lines[0]


def test_a_claim_that_a_changed_number_makes_untrue_stops_the_build_and_keeps_the_pages(
    content: Path, work: Path
) -> None:
    before = tree(work)
    substitute(content / BIOME, JUNE[0], "[12, 10, 16, 26, 48, 166, 42,")
    with pytest.raises(ContentErrors, match=r"harrow_plain\.aridity_index < 0\.65, .* harrow_plain\.aridity_index is 0\.692"):
        write_pages(content, work)
    assert before == tree(work)


def test_one_rainfall_number_changes_only_that_page_the_comparison_the_front_page_and_the_search_of_the_site(
    content: Path, work: Path, tmp_path: Path
) -> None:
    project = tmp_path
    shutil.copy(ROOT / "mkdocs.yml", project)
    build_site(project, content=content, out=tmp_path / "before", work=work)
    substitute(content / BIOME, *JUNE)
    build_site(project, content=content, out=tmp_path / "after", work=work)
    pages = [name for name in differences(tmp_path / "before", tmp_path / "after") if not name.startswith(("search/", "files/"))]
    assert [*SCRIPTS, "biome/compared.html", f"{GRASSLAND}.html", "index.html"] == pages  # the front shows the route of all stations
    assert [] != [name for name in differences(tmp_path / "before", tmp_path / "after") if name.startswith("search/")]


# What students do not see


def test_nothing_of_a_station_for_class_tests_reaches_the_site(content: Path, work: Path, tmp_path: Path) -> None:
    shutil.copy(ROOT / "mkdocs.yml", tmp_path)
    substitute(content / BIOME, "\nexplanations:", PAPER_STATION)
    assert 362.7 == pytest.approx(build.facts_of(content, "biome/temperate_grassland")["secret_flat.annual_precip"]["value"])
    site = build_site(tmp_path, content=content, out=tmp_path / "site", work=work).site
    for folder in (work / "pages", site):
        assert [] == told_of_paper_station(folder)
        assert [] == [name for name in tree(folder) if "secret" in name]


def test_the_numbers_of_that_station_would_be_found_if_it_were_shown(content: Path, work: Path) -> None:
    """Guards the test above: each of its numbers does occur when the station is for pages."""
    substitute(content / BIOME, "\nexplanations:", PAPER_STATION.replace("use: paper", "use: page"))
    write_pages(content, work)
    assert NUMBERS_OF_PAPER_STATION == told_of_paper_station(work / "pages")


def test_a_topic_that_is_not_shown_leaves_no_trace(work: Path, tmp_path: Path) -> None:
    shutil.copy(ROOT / "mkdocs.yml", tmp_path)
    content = write_course(tmp_path / "content", HIDE_CYCLES)
    site = build_site(tmp_path, content=content, out=tmp_path / "site", work=work).site
    for folder in (work / "pages", site):
        assert [] == [name for name in tree(folder) if re.search("cycle|wend", name)]
        assert [] == re.findall(r"Wend Hollow|wend[_-]hollow|Cycles of matter|topics/cycles|Cycles compared", words_of(folder))


def test_a_topic_that_is_shown_again_comes_back_whole(work: Path, tmp_path: Path) -> None:
    before = tree(work / "pages")
    content = write_course(tmp_path / "content", HIDE_CYCLES)
    write_pages(content, work)
    assert before != tree(work / "pages")
    shutil.rmtree(content)
    write_pages(write_course(content), work)
    assert before == tree(work / "pages")


def test_no_record_can_take_the_place_of_a_page_of_its_kind() -> None:
    assert [] == [kind for kind in all_kinds() if Path(comparison_uri(kind)).stem not in RESERVED]


# Not twice


def test_a_second_run_over_the_same_content_writes_nothing(content: Path, work: Path) -> None:
    times = {path: path.stat().st_mtime_ns for path in work.rglob("*")}
    assert frozenset() == write_pages(content, work).changed
    assert times == {path: path.stat().st_mtime_ns for path in work.rglob("*")}


def test_only_the_charts_whose_numbers_changed_are_drawn_again(
    content: Path, work: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    drawings: list[str] = []
    monkeypatch.setattr(build, "_draw", lambda chart: drawings.append(chart.name) or "<svg/>")
    write_pages(content, work)
    assert [] == drawings
    substitute(content / BIOME, *JUNE)
    write_pages(content, work)
    assert sorted(DRAWN_ANEW) == sorted(drawings)


def test_a_page_that_someone_changed_or_added_is_put_right(content: Path, work: Path) -> None:
    before = tree(work / "pages")
    (work / "pages" / "index.md").write_text("changed")
    (work / "pages" / "stray.md").write_text("added")
    assert {"index.md", "stray.md"} == write_pages(content, work).changed
    assert before == tree(work / "pages")


def test_a_record_that_is_taken_away_takes_its_pages_along(content: Path, work: Path) -> None:
    (content / CYCLE).unlink()
    substitute(content / "course.yaml", "    records: [cycle/wend_hollow_nitrogen]\n", "")
    write_pages(content, work)
    assert [] == [name for name in tree(work / "pages") if "wend" in name or name.startswith("cycle")]
    assert not (work / "pages" / "cycle").exists()


def test_pictures_of_records_stand_beside_the_pages(work: Path, tmp_path: Path) -> None:
    line = "pictures: [{file: pictures/steppe.png, alt: Grass to the horizon, credit: Own drawing, purpose: A view of the plain}]\n"
    content = write_course(tmp_path / "content", Patch({BIOME: [("vocabulary: [biome", f"{line}vocabulary: [biome")]}))
    (content / "pictures").mkdir()
    (content / "pictures" / "steppe.png").write_bytes(b"a picture")
    assert {f"{GRASSLAND}.md", "pictures/pictures/steppe.png"} == write_pages(content, work).changed
    assert b"a picture" == (work / "pages" / "pictures" / "pictures" / "steppe.png").read_bytes()
    page = (work / "pages" / f"{GRASSLAND}.md").read_text("utf-8")
    assert '<img src="../pictures/pictures/steppe.png" alt="Grass to the horizon"' in page


def test_two_processes_with_other_hash_seeds_write_the_same_bytes(content: Path, tmp_path: Path) -> None:
    code = "import sys; from pathlib import Path; from generator.build import write_pages;"
    code += "write_pages(Path(sys.argv[1]), Path(sys.argv[2]))"
    for seed in ("0", "1"):
        environment = os.environ | {"PYTHONPATH": str(ROOT), "PYTHONHASHSEED": seed}
        subprocess.run([sys.executable, "-c", code, content, tmp_path / seed], env=environment, check=True, timeout=120)
    assert [] == differences(tmp_path / "0", tmp_path / "1")
    assert {"drawn", "pages"} == {path.name for path in (tmp_path / "0").iterdir()}
