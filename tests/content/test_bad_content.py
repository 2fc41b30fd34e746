"""Whole content folders with something wrong in them, and what is said, word for word: `bad/<case>.yaml` is a patch of the
small course and the report; a new rule is a new case."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from generator.build import check, write_pages
from generator.diagnostics import ContentErrors, report
from tests.content.patches import BIOME, CYCLE, PYRAMID, Patch, read_case, write_course
from tests.publish.site_tree import tree

BAD = Path(__file__).parent / "bad"
CASES = sorted(path.stem for path in BAD.glob("*.yaml"))
OUTSIDE_USUAL_RANGE = ("annual_mean_temp: [-10, 18]", "annual_mean_temp: [10, 18]")


def told(content: Path) -> str:
    """The report on a content folder: of what is wrong, or of what is doubtful."""
    try:
        return report(check(content).warnings)
    except ContentErrors as errors:
        return str(errors)


@pytest.mark.parametrize("case", CASES)
def test_wrong_content_gives_exactly_its_messages(case: str, tmp_path: Path) -> None:
    patch, expected = read_case(BAD / f"{case}.yaml")
    assert expected == told(write_course(tmp_path / "content", patch))


def test_there_are_cases_of_thirty_kinds_and_none_of_them_is_silent() -> None:
    reports = [read_case(BAD / f"{case}.yaml")[1] for case in CASES]
    assert len(set(reports)) == len(CASES) >= 30
    assert [] == [case for case, told in zip(CASES, reports, strict=True) if not told]


def test_the_course_that_cases_start_from_has_nothing_wrong(tmp_path: Path) -> None:
    assert "" == told(write_course(tmp_path / "content"))


@pytest.mark.parametrize("case", CASES)
def test_every_place_shows_what_was_found_there(case: str, tmp_path: Path) -> None:
    """Line and column are counted here again, in the file itself, for every message that quotes what it found."""
    patch, expected = read_case(BAD / f"{case}.yaml")
    content = write_course(tmp_path / "content", patch)
    quoted = re.findall(r'^content/(\S+?):(\d+):(\d+): .*, found (?:"([^"]+)"|(\{[^}]+\}))', expected, re.M)
    for file, line, column, word, braces in quoted:
        if (content / file).is_file() and word not in ("index", Path(file).name):
            behind = (content / file).read_text("utf-8").splitlines()[int(line) - 1][int(column) - 1 :]
            assert behind.lstrip("{\"'").startswith((word or braces).lstrip("{")), (file, line, column)


def test_an_accepted_warning_falls_silent(tmp_path: Path) -> None:
    reason = "accepted_warnings: [{warning: outside_usual_range, reason: A cold corner of the steppe.}]\nvocabulary: [biome"
    changes = [OUTSIDE_USUAL_RANGE, ("vocabulary: [biome", reason)]
    assert "" == told(write_course(tmp_path / "content", Patch({BIOME: changes})))


def test_everything_wrong_in_all_files_is_told_in_one_run_and_nothing_is_written(tmp_path: Path) -> None:
    """One wrong thing in each of seven files: all are told, in the order of files and lines, with a count, and no byte is touched."""
    patch = Patch(
        {
            "course.yaml": [("[pyramid/sill_lake]", "[pyramid/sill_lak]")],
            "vocabulary.yaml": [("{id: biome, word: biome,", "{id: biome, wort: biome,")],
            "sources.yaml": [("read: secondary", "read: secondhand")],
            BIOME: [OUTSIDE_USUAL_RANGE, ("clim.one-year]", "clim.one-yeer]"), ("{harrow_plain.annual_precip}", "{harrow_plain.precip}")],
            CYCLE: [("title: Nitrogen", 'title: "Nitrogen')],
            PYRAMID: [("egested: 960", "egested: 690"), ("respired: 12", "respired: twelve")],
        },
        add={"cycle/Carbon.yml": "title: Carbon\n"},
    )
    content, work = write_course(tmp_path / "content", patch), tmp_path / "build"
    before = tree(content)
    with pytest.raises(ContentErrors) as raised:
        write_pages(content, work)
    assert EVERYTHING_WRONG == str(raised.value).splitlines()[::2]
    assert not work.exists()
    assert before == tree(content)
    assert ["content"] == [path.name for path in tmp_path.iterdir()]


EVERYTHING_WRONG: list[str] = []
