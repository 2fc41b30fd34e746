"""The command line as its users meet it: words in, exit code out, results and messages on streams of their own."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from generator import build, cli
from tests.content.patches import BIOME, CYCLE, PYRAMID, ROOT, Patch, write_course
from tests.publish.site_tree import tree

Outcome = tuple[int, str, str]
"""Exit code, standard output, standard error."""
Run = Callable[..., Outcome]
CHECKED = re.compile(r"3 records checked, [1-9]\d+ questions made\.\n")
WARM = Patch({BIOME: [("annual_mean_temp: [-10, 18]", "annual_mean_temp: [10, 18]")]})
BROKEN = Patch({BIOME: [("title: Temperate", 'title: "Temperate')]})


def make_project(folder: Path, patch: Patch = Patch()) -> Path:
    """A project folder: the small course beside this project's own mkdocs.yml."""
    folder.mkdir(parents=True)
    write_course(folder / "content", patch)
    (folder / "mkdocs.yml").write_bytes((ROOT / "mkdocs.yml").read_bytes())
    return folder


@pytest.fixture
def project(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A project, which is the current folder; its name has a space and letters beyond ASCII."""
    folder = make_project(tmp_path / "Müllers Kurs ß")
    monkeypatch.chdir(folder)
    return folder


@pytest.fixture
def run(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> Run:
    """`run("facts", "sill_lake")` as on the command line."""

    def run_words(*words: str | Path) -> Outcome:
        monkeypatch.setattr(sys, "argv", ["studyguide", *map(str, words)])
        code = cli.main()
        return code, *capsys.readouterr()

    return run_words


def in_a_process(
    *words: str, cwd: Path, encoding: str = "utf-8", stdout: int = subprocess.PIPE
) -> subprocess.CompletedProcess[str]:
    """As `python -m generator`, on a terminal of the given encoding."""
    return subprocess.run(
        [sys.executable, "-m", "generator", *words], cwd=cwd, stdout=stdout, stderr=subprocess.PIPE, encoding=encoding, timeout=60,
        env=os.environ | {"PYTHONPATH": str(ROOT), "PYTHONIOENCODING": encoding},
    )  # fmt: skip


# Exit codes and streams


def test_check_of_good_content_says_what_it_did(project: Path, run: Run) -> None:
    code, out, err = run("check")
    assert (0, "") == (code, err)
    assert CHECKED.fullmatch(out)


def test_warnings_stand_on_standard_error_and_do_not_fail(project: Path, run: Run) -> None:
    (project / "content").rename(project / "old")
    write_course(project / "content", WARM)
    code, out, err = run("check")
    assert 0 == code
    assert CHECKED.fullmatch(out)
    assert err.startswith("content/biome/temperate_grassland.yaml:19:24: warning: ")
    assert err.endswith("1 warning in 1 file.\n")


@pytest.mark.parametrize("words", [("check",), ("build",), ("facts", "temperate_grassland")])
def test_wrong_content_is_told_on_standard_error_and_ends_with_1(
    tmp_path: Path, run: Run, words: tuple[str, ...], monkeypatch: pytest.MonkeyPatch
) -> None:
    project = make_project(tmp_path / "project", BROKEN)
    monkeypatch.chdir(project)
    before = tree(project)
    message = (
        "content/biome/temperate_grassland.yaml:2:8: expected a closing quote, found none up to the end of the file\n"
        "    mend: end the text with the quote that it begins with\n1 problem in 1 file; nothing was written.\n"
    )
    assert (1, "", message) == run(*words)
    assert before == tree(project)


@pytest.mark.parametrize("words", [(), ("buidl",), ("check", "--nope"), ("facts",), ("facts", "a", "b")])
def test_wrong_usage_ends_with_2_and_says_how_to_get_help(project: Path, run: Run, words: tuple[str, ...]) -> None:
    code, out, err = run(*words)
    assert (2, "") == (code, out)
    assert err.startswith("Usage: studyguide") and "--help" in err


@pytest.mark.parametrize("words", [("--help",), ("-h",), ("check", "--help"), ("build", "-h"), ("facts", "--help")])
def test_help_is_a_result(project: Path, run: Run, words: tuple[str, ...]) -> None:
    code, out, err = run(*words)
    assert (0, "") == (code, err)
    assert out.startswith("Usage: studyguide")


def test_a_bug_of_ours_ends_with_70_and_a_traceback(project: Path, run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    def bug(*_: object) -> None:
        raise ZeroDivisionError("ours")

    monkeypatch.setattr(build, "load", bug)
    code, out, err = run("check")
    assert (70, "") == (code, out)
    assert err.startswith("Traceback") and "ZeroDivisionError: ours" in err
    assert err.endswith("This is a fault of the generator, not of your content. Please report the lines above.\n")


def test_a_run_that_is_interrupted_says_so_without_a_traceback(
    project: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    def interrupted(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(build, "load", interrupted)
    code, out, err = run("check")
    assert (130, "", "Stopped.") == (code, out, err.strip())


# Facts


def test_facts_are_printed_with_working_and_sources(project: Path, run: Run) -> None:
    code, out, err = run("facts", "pyramid/sill_lake")
    assert (0, "") == (code, err)
    assert out.startswith("phytoplankton.gross_production: 9400 kJ m⁻² yr⁻¹\n    9400 kJ m⁻² yr⁻¹ (stated in the record)\n")
    working = "top production ÷ producer production = 4 kJ m⁻² yr⁻¹ ÷ 5800 kJ m⁻² yr⁻¹ = 0.0690 %"
    assert out.endswith(f"overall_efficiency: 0.0690 %\n    {working}\n    source: LINDEMAN1942\n")


def test_a_name_alone_is_enough(project: Path, run: Run) -> None:
    assert run("facts", "sill_lake") == run("facts", "pyramid/sill_lake")


def test_an_unknown_record_gets_a_suggestion(project: Path, run: Run) -> None:
    code, out, err = run("facts", "biome/temperate_grasland")
    assert (2, "") == (code, out)
    assert err.endswith('no record biome/temperate_grasland; did you mean "biome/temperate_grassland"?\n')


def test_an_unknown_record_without_a_near_one_gets_the_list(project: Path, run: Run) -> None:
    known = "biome/temperate_grassland, cycle/wend_hollow_nitrogen and pyramid/sill_lake"
    assert run("facts", "zzz")[2].endswith(f"no record zzz; known records are {known}\n")


def test_a_name_of_two_records_has_to_say_which(project: Path, run: Run) -> None:
    (project / "content" / CYCLE).rename(project / "content" / "cycle" / "sill_lake.yaml")
    code, out, err = run("facts", "sill_lake")
    assert (2, "") == (code, out)
    assert err.endswith("sill_lake is the name of several records; say which: cycle/sill_lake, pyramid/sill_lake\n")
    assert 0 == run("facts", "cycle/sill_lake")[0]


def test_facts_of_one_record_do_not_need_the_others(project: Path, run: Run) -> None:
    (project / "content" / BIOME).write_bytes(b"\xff: [")
    (project / "content" / "course.yaml").unlink()
    (project / "content" / "vocabulary.yaml").write_text("words: 7")
    assert (0, "") == run("facts", "sill_lake")[::2]


def test_facts_load_nothing_that_draws_or_builds_sites(project: Path) -> None:
    code = "import sys; sys.argv[1:] = ['facts', 'sill_lake', '--json']; from generator.cli import main; main();"
    code += "print([m for m in ('matplotlib', 'mkdocs', 'material') if m in sys.modules], file=sys.stderr)"
    environment = os.environ | {"PYTHONPATH": str(ROOT)}
    done = subprocess.run([sys.executable, "-c", code], cwd=project, env=environment, capture_output=True, text=True, timeout=60)
    assert "[]\n" == done.stderr


# JSON


def json_of(run: Run, record: str) -> dict[str, Any]:
    code, out, err = run("facts", record, "--json")
    assert (0, "") == (code, err)
    return json.loads(out)


def test_json_has_the_agreed_shape(project: Path, run: Run) -> None:
    found = json_of(run, "temperate_grassland")
    assert ["record", "facts"] == list(found)
    assert "biome/temperate_grassland" == found["record"]
    keys = {fact_id: list(fact) for fact_id, fact in found["facts"].items()}
    assert {fact_id: ["value", "unit", "shown", "working", "method", "sources"] for fact_id in keys} == keys


def test_json_of_a_number(project: Path, run: Run) -> None:
    fact = json_of(run, "temperate_grassland")["facts"]["harrow_plain.annual_precip"]
    working = fact.pop("working")
    assert {"value": 327.0, "unit": "mm", "shown": "327 mm", "method": "annual_precip", "sources": []} == fact
    assert working.endswith(" = 12 + 10 + 16 + 26 + 48 + 66 + 42 + 34 + 26 + 20 + 15 + 12 = 327 mm")


def test_json_values_are_not_rounded(project: Path, run: Run) -> None:
    """The mean of the twelve months -9, -6, 0, 8, 14, 19, 22, 21, 15, 8, 0, -7 is 85/12."""
    fact = json_of(run, "temperate_grassland")["facts"]["harrow_plain.annual_mean_temp"]
    assert (pytest.approx(85 / 12, rel=1e-15), "7.08 °C") == (fact["value"], fact["shown"])


def test_json_of_lists_words_truths_and_what_is_not_defined(project: Path, run: Run) -> None:
    names = ("temperate_grassland", "wend_hollow_nitrogen", "sill_lake")
    biome, cycle, pyramid = (json_of(run, name)["facts"] for name in names)
    assert [12, 10, 16, 26, 48, 66, 42, 34, 26, 20, 15, 12] == biome["harrow_plain.monthly_precip"]["value"]
    assert ([7], None) == (biome["harrow_plain.warmest_month"]["value"], biome["harrow_plain.warmest_month"]["unit"])
    assert "dry sub-humid" == biome["harrow_plain.aridity_class"]["value"]
    assert True is cycle["nitrate.closes"]["value"]
    undefined = pyramid["phytoplankton.transfer_efficiency"]
    assert (None, "not defined: producers have no level below") == (undefined["value"], undefined["shown"])


def test_json_names_the_sources_of_method_and_record(project: Path, run: Run) -> None:
    facts = json_of(run, "temperate_grassland")["facts"]
    assert ["UNEP1992"] == facts["harrow_plain.aridity_index"]["sources"]
    assert ["RICKLEFS2008"] == facts["harrow_plain.in_usual_range"]["sources"]


def test_json_holds_only_what_json_knows(project: Path, run: Run) -> None:
    """Neither NaN nor Infinity, which Python would write and others refuse."""

    def refuse(constant: str) -> None:
        pytest.fail(f"{constant} in JSON")

    for record in ("temperate_grassland", "wend_hollow_nitrogen", "sill_lake"):
        json.loads(run("facts", record, "--json")[1], parse_constant=refuse)


# Folders


def test_the_project_is_found_from_a_folder_below_it(project: Path, run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(project / "content" / "biome")
    code, out, err = run("check")
    assert (0, "") == (code, err)
    assert CHECKED.fullmatch(out)


@pytest.mark.parametrize("words", [("check",), ("build",), ("facts", "sill_lake")])
def test_outside_a_project_the_usage_is_wrong(
    tmp_path: Path, run: Run, words: tuple[str, ...], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    code, out, err = run(*words)
    assert (2, "") == (code, out)
    assert err.endswith(f"no mkdocs.yml in {tmp_path} or above it; change into the folder of the course\n")


def test_content_may_stand_elsewhere_and_then_needs_no_project(
    tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    elsewhere = write_course(tmp_path / "Ein anderer Ordner é", BROKEN)
    (tmp_path / "here").mkdir()
    monkeypatch.chdir(tmp_path / "here")
    code, _, err = run("check", "--content", elsewhere)
    assert (1, True) == (code, err.startswith(f"{elsewhere}/biome/temperate_grassland.yaml:2:8: "))
    monkeypatch.chdir(tmp_path)
    assert run("check", "--content", elsewhere.name)[2].startswith(f"{elsewhere.name}/biome/temperate_grassland.yaml:2:8: ")
    assert 0 == run("facts", "sill_lake", "--content", elsewhere)[0]


@pytest.mark.parametrize("words", [("check",), ("build",), ("facts", "sill_lake")])
@pytest.mark.parametrize("content", ["nowhere", "mkdocs.yml"])
def test_content_that_is_no_folder_is_wrong_usage(
    project: Path, run: Run, words: tuple[str, ...], content: str
) -> None:
    code, out, err = run(*words, "--content", content)
    assert (2, "") == (code, out)
    assert err.endswith(f"{content} is not a folder; give the one that holds course.yaml with --content\n")


def test_a_build_says_where_the_site_is_and_leaves_nothing_else(project: Path, run: Run) -> None:
    code, out, err = run("build", "--out", "Seite ü", "--work", "on the way")
    assert (0, "") == (code, err)
    pages = len(list((project / "Seite ü").rglob("*.html")))
    assert f"{pages} pages in Seite ü. Open Seite ü/index.html\n" == out
    assert ["Seite ü", "content", "mkdocs.yml", "on the way"] == sorted(path.name for path in project.iterdir())


@pytest.mark.parametrize("option", ["--out", "--work"])
@pytest.mark.parametrize("target", ["file", "file/below"])
def test_a_file_in_the_place_of_a_folder_is_a_message_and_no_traceback(
    project: Path, run: Run, option: str, target: str
) -> None:
    (project / "file").write_text("mine")
    code, out, err = run("build", option, target)
    assert (2, "") == (code, out)
    assert "file" in err and "Traceback" not in err
    assert "mine" == (project / "file").read_text()
    assert not (project / "site").exists()


def test_a_folder_that_is_not_ours_is_not_replaced(project: Path, run: Run) -> None:
    (project / "photos").mkdir()
    (project / "photos" / "one.jpg").write_bytes(b"1")
    code, out, err = run("build", "--out", "photos")
    assert (2, "", "Traceback" in err) == (code, out, False)
    assert ["one.jpg"] == [path.name for path in (project / "photos").iterdir()]


def test_a_folder_in_the_place_of_a_record_is_told(project: Path, run: Run) -> None:
    (project / "content" / PYRAMID).unlink()
    (project / "content" / PYRAMID).mkdir()
    for words in (("check",), ("build",), ("facts", "sill_lake")):
        code, _, err = run(*words)
        assert (1, True) == (code, "content/pyramid/sill_lake.yaml:1:1: expected a file, found a folder" in err)


# Streams


@pytest.mark.parametrize("words", [("facts", "sill_lake"), ("facts", "sill_lake", "--json"), ("check",), ("--help",)])
def test_a_reader_that_stops_reading_is_no_fault(project: Path, words: tuple[str, ...]) -> None:
    reading, writing = os.pipe()
    os.close(reading)
    done = in_a_process(*words, cwd=project, stdout=writing)
    os.close(writing)
    assert (0, "") == (done.returncode, done.stderr)


def test_a_terminal_that_lacks_a_character_shows_a_question_mark(project: Path) -> None:
    """Latin 1 has ² and ¹, but no raised minus."""
    done = in_a_process("facts", "sill_lake", cwd=project, encoding="latin-1")
    assert (0, "") == (done.returncode, done.stderr)
    assert done.stdout.startswith("phytoplankton.gross_production: 9400 kJ m?² yr?¹\n")


def test_json_lacks_nothing_on_such_a_terminal(project: Path) -> None:
    done = in_a_process("facts", "sill_lake", "--json", cwd=project, encoding="latin-1")
    assert "4 kJ m⁻² yr⁻¹" == json.loads(done.stdout)["facts"]["pike.production"]["shown"]
