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
EVERYTHING_WRONG = """\
content/biome/temperate_grassland.yaml:19:24: warning: stations[0].monthly_mean_temp: expected the annual mean temperature to be from 10 to 18 °C, as RICKLEFS2008 gives for this biome, found 7.08 °C [outside_usual_range]
    mend: check the numbers, or accept the warning with a reason under `accepted_warnings:`
content/biome/temperate_grassland.yaml:28:107: explanations[0].chain[0].says: expected a fact of this record, found "harrow_plain.precip"
    mend: did you mean "harrow_plain.annual_precip"?
content/biome/temperate_grassland.yaml:56:35: misconceptions[1]: expected an entry of misconceptions.yaml, found "clim.one-yeer"
    mend: did you mean "clim.one-year"?
content/course.yaml:15:15: topics[2].records[0]: expected a record, found "pyramid/sill_lak"
    mend: did you mean "pyramid/sill_lake"?
content/cycle/wend_hollow_nitrogen.yaml:2:8: expected a closing quote, found none up to the end of the file
    mend: end the text with the quote that it begins with
content/cycles:1:1: expected a folder for a kind of record, found an unknown folder
    mend: did you mean "cycle"?
content/pyramid/sill_lake.yaml:36:15: levels[3].respired: expected a number, found the text "twelve"
    mend: write 12
content/sources.yaml:10:11: sources[RICKLEFS2008].read: expected text, abstract, secondary, memory or run, found the text "secondhand"
    mend: did you mean "secondary"?
content/vocabulary.yaml:3:17: words[biome].wort: expected a known field, found an unknown one
    mend: did you mean "word"?
8 problems and 1 warning in 7 files; nothing was written."""
QUOTED = re.compile(r'^content/(\S+?):(\d+):(\d+): .*, found ["{]([^"}]+)["}](?: again| twice|, kept .*)?$', re.M)
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
    assert len(CASES) >= 30
    assert [] == [case for case, told in zip(CASES, reports, strict=True) if not told]


def test_the_course_that_cases_start_from_has_nothing_wrong(tmp_path: Path) -> None:
    assert "" == told(write_course(tmp_path / "content"))


@pytest.mark.parametrize("case", CASES)
def test_every_place_shows_what_was_found_there(case: str, tmp_path: Path) -> None:
    """Line and column are looked up in the file itself, for every message that quotes the whole of what it found."""
    patch, expected = read_case(BAD / f"{case}.yaml")
    content = write_course(tmp_path / "content", patch)
    for file, line, column, found in QUOTED.findall(expected):
        if (content / file).is_file() and (line, column) != ("1", "1"):
            behind = (content / file).read_text("utf-8").splitlines()[int(line) - 1][int(column) - 1 :]
            assert re.match(rf"""["'{{]*([a-z_/]+:)?{re.escape(found)}""", behind), (file, line, column)


def test_an_accepted_warning_falls_silent(tmp_path: Path) -> None:
    reason = "accepted_warnings: [{warning: outside_usual_range, reason: A cold corner of the steppe.}]\nvocabulary: [biome"
    changes = [OUTSIDE_USUAL_RANGE, ("vocabulary: [biome", reason)]
    assert "" == told(write_course(tmp_path / "content", Patch({BIOME: changes})))


def test_everything_wrong_in_all_files_is_told_in_one_run_and_nothing_is_written(tmp_path: Path) -> None:
    """Seven files and folders with something wrong: all is told, in the order of files and lines, with a count, and no byte is touched."""
    patch = Patch(
        {
            "course.yaml": [("[pyramid/sill_lake]", "[pyramid/sill_lak]")],
            "vocabulary.yaml": [("{id: biome, word: biome,", "{id: biome, wort: biome,")],
            "sources.yaml": [("read: secondary", "read: secondhand")],
            BIOME: [OUTSIDE_USUAL_RANGE, ("clim.one-year]", "clim.one-yeer]"), ("{harrow_plain.annual_precip}", "{harrow_plain.precip}")],
            CYCLE: [("title: Nitrogen", 'title: "Nitrogen')],
            PYRAMID: [("egested: 960", "egested: 690"), ("respired: 12", "respired: twelve")],
        },
        add={"cycles/carbon.yaml": "title: Carbon\n"},
    )
    content, work = write_course(tmp_path / "content", patch), tmp_path / "build"
    before = tree(content)
    with pytest.raises(ContentErrors) as raised:
        write_pages(content, work)
    assert EVERYTHING_WRONG == str(raised.value)
    assert not work.exists()
    assert before == tree(content)
    assert ["content"] == [path.name for path in tmp_path.iterdir()]
