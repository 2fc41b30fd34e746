"""What README, DEVELOPERS and pyproject.toml must say."""

from __future__ import annotations

import re
import tomllib
from pathlib import Path

import pytest

from generator.build import check
from generator.cli import studyguide
from generator.course.course_file import CourseFile
from generator.kinds import all_kinds
from generator.questions.question import ChartReading, Choice, Matching, NumberEntry, Ordering, SeveralChoice
from generator.records.checking import check as checked
from generator.records.located import located
from tests.content.patches import substitute, write_course
from tests.conventions.project import ROOT

BUILD = "python3 -m venv .venv && .venv/bin/pip install -q . && .venv/bin/studyguide build"
TEST = "python3 -m venv .venv && .venv/bin/pip install -q '.[test]' && .venv/bin/pytest"


def read(name: str) -> str:
    return (ROOT / name).read_text("utf-8")


@pytest.mark.parametrize("command", [BUILD, TEST])
def test_readme_has_each_command_word_for_word_on_a_line_of_its_own(command: str) -> None:
    assert command in read("README.md").splitlines()


def test_readme_has_the_windows_spellings_beside_them() -> None:
    assert [r".venv\Scripts\studyguide build", r".venv\Scripts\pytest"] == [
        end for end in (r".venv\Scripts\studyguide build", r".venv\Scripts\pytest") if any(line.endswith(end) for line in read("README.md").splitlines())
    ]


def test_readme_says_which_commands_take_which_option() -> None:
    rows = re.findall(r"^\| `(--\w+)[^`]*` \| ([^|]+) \|", read("README.md"), re.MULTILINE)
    everywhere = ", ".join(f"`{name}`" for name in studyguide.commands)
    said = {(option, name) for option, names in rows for name in re.findall(r"`(\w+)`", names.replace("every command", everywhere))}
    known = {(option, name) for name, command in studyguide.commands.items() for one in command.params for option in one.opts if option.startswith("--")}
    assert known == said


def test_the_entries_that_readme_shows_are_read(tmp_path: Path) -> None:
    course, concept, forms, misconception, source = re.findall(r"^```yaml\n(.*?)^```", read("README.md"), re.MULTILINE | re.DOTALL)[:5]
    _, problems = checked(located(course.encode(), "course.yaml"), CourseFile)
    assert () == problems
    content = write_course(tmp_path / "content")
    for name, entry in (("misconceptions.yaml", misconception), ("sources.yaml", source)):
        (content / name).write_text((content / name).read_text("utf-8").rstrip() + "\n" + entry, "utf-8")
    (content / "concept").mkdir()
    (content / "concept" / "tides.yaml").write_text(concept + forms, "utf-8")
    substitute(content / "course.yaml", "[pyramid/sill_lake]", "[pyramid/sill_lake, concept/tides]")
    library = check(content)
    assert "MARLOW2031" in library.sources
    types = {type(question) for question in library.questions["concept/tides"]}
    assert types >= {Choice, SeveralChoice, NumberEntry, ChartReading, Ordering, Matching}


def test_continuous_integration_runs_the_test_command_word_for_word() -> None:
    assert TEST in read(".ci/run").splitlines()


def test_continuous_integration_makes_missing_browsers_a_failure() -> None:
    assert "export CI=true" in read(".ci/run").splitlines()


@pytest.mark.parametrize("name", list(all_kinds()))
def test_developers_guide_names_every_kind(name: str) -> None:
    (line,) = [line for line in read("DEVELOPERS.md").splitlines() if line.startswith("The kinds so far:")]
    assert f"`{name}`" in line


def test_developers_guide_says_how_to_add_a_kind() -> None:
    heading = re.search(r"^## Add a kind$(.*?)(?=^## |\Z)", read("DEVELOPERS.md"), re.MULTILINE | re.DOTALL | re.IGNORECASE)
    assert heading is not None
    for file in ("record.py", "facts.py", "charts.py", "questions.py", "compare.py", "page.md.j2", "compare.md.j2"):
        assert file in heading[1]


def project() -> dict[str, object]:
    return tomllib.loads(read("pyproject.toml"))["project"]


def test_every_dependency_has_an_upper_bound() -> None:
    """Exact, or with a lower and an upper end."""
    wanted = [*project()["dependencies"], *(one for extra in project()["optional-dependencies"].values() for one in extra)]
    assert wanted
    assert [] == [one for one in wanted if "==" not in one and not (">=" in one and "<" in one)]


def test_build_system_is_bounded_too() -> None:
    requires = tomllib.loads(read("pyproject.toml"))["build-system"]["requires"]
    assert [] == [one for one in requires if "<" not in one]


def test_every_runtime_dependency_has_its_reason_in_the_developers_guide() -> None:
    names = [re.split(r"[<>=\[]", one)[0] for one in project()["dependencies"]]
    assert [] == [name for name in names if name not in read("DEVELOPERS.md")]


def test_package_holds_what_is_not_python() -> None:
    """Units, sources, templates, styles and scripts must travel with the wheel, which takes whole packages."""
    found = tomllib.loads(read("pyproject.toml"))["tool"]["hatch"]["build"]["targets"]["wheel"]
    assert {"packages": ["generator", "figures"]} == found
