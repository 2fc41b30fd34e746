"""`studyguide new` on the command line: a record made, a table read, nothing overwritten."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from generator.kinds import all_kinds
from tests.content.patches import substitute
from tests.publish.site_tree import tree
from tests.test_cli import Run, project, run

__all__ = ["project", "run"]  # the fixtures of this module's tests
CLIMATE = "month;temperature (°C);rain (mm)\n" + "".join(f"{month};{month},5;{10 * month}\n" for month in range(1, 13))


def test_new_says_where_the_record_is_and_what_comes_next(project: Path, run: Run) -> None:
    code, out, err = run("new", "biome", "cork_oak_land", "--title", "Land of the cork oak")
    assert (0, "") == (code, err)
    assert out == (
        "content/biome/cork_oak_land.yaml is written. Next: add biome/cork_oak_land to the `records:` of a topic in content/course.yaml, "
        "then edit the record.\n"
    )
    assert "title: Land of the cork oak\n" in (project / "content" / "biome" / "cork_oak_land.yaml").read_text("utf-8")


@pytest.mark.parametrize("kind", list(all_kinds()))
def test_a_new_record_is_on_the_site_once_a_topic_lists_it(project: Path, run: Run, kind: str) -> None:
    run("new", kind, "brand_new")
    substitute(project / "content" / "course.yaml", "[pyramid/sill_lake]", f"[pyramid/sill_lake, {kind}/brand_new]")
    code, _, err = run("build")
    assert (0, {"unwritten"}) == (code, set(re.findall(r"\[(\w+)\]$", err, re.MULTILINE)))
    assert (project / "site" / kind.replace("_", "-") / "brand-new.html").is_file()


def test_a_table_becomes_a_record(project: Path, run: Run) -> None:
    (project / "klima ü.csv").write_text(CLIMATE, "utf-8-sig")
    code, out, err = run("new", "biome", "steppe", "--from", "klima ü.csv")
    assert (0, True) == (code, out.startswith("content/biome/steppe.yaml is written."))
    assert [
        'klima ü.csv: read "month", "temperature (°C)" and "rain (mm)" from 12 rows.',
        "Decimal commas were read as points.",
        "The record says `data: measured`: write invented or published there if that is where the numbers come from.",
        'The station is called "Klima ü", after the file: change its id and its name, or name it in a column station.',
        "Write what you know of the biome: region, summary, and latitude where it is missing.",
    ] == err.splitlines()
    assert "monthly_mean_temp: [1.5, 2.5, 3.5, " in (project / "content" / "biome" / "steppe.yaml").read_text("utf-8")
    assert 0 == run("check")[0]


def test_a_wrong_table_is_told_by_cell_and_nothing_written(project: Path, run: Run) -> None:
    (project / "t.csv").write_text(CLIMATE.replace("3,5", "warm"), "utf-8")
    before = tree(project)
    message = (
        't.csv:4:3: stations[0].monthly_mean_temp[2] (March): expected a number, found the text "warm"\n'
        "    mend: write a number in digits, with a point for decimals\n1 problem in 1 file; nothing was written.\n"
    )
    assert (1, "", message) == run("new", "biome", "steppe", "--from", "t.csv")
    assert before == tree(project)


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (("biom", "x"), 'no kind biom; did you mean "biome"?'), (("rock", "x"), "no kind rock; known kinds are "),
        (("biome", "Steppe"), 'found "Steppe"; write steppe'), (("biome", "temperate_grassland"), "biome/temperate_grassland exists already"),
        (("biome", "x", "--from", "none.csv"), "none.csv"), (("biome",), "NAME"),
    ],
)  # fmt: skip
def test_wrong_words_end_with_2_and_change_nothing(project: Path, run: Run, words: tuple[str, ...], message: str) -> None:
    before = tree(project)
    code, out, err = run("new", *words)
    assert (2, "", True) == (code, out, message in err)
    assert before == tree(project)
