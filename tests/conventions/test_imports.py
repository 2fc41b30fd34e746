"""Imports point downwards, and what only checks or tells numbers loads neither the drawing library nor the site engine."""

from __future__ import annotations

import subprocess
import sys
import tomllib

import pytest
from importlinter.cli import EXIT_STATUS_SUCCESS, lint_imports

from tests.conventions.project import ROOT, modules, named

HEAVY = ("matplotlib", "mkdocs", "material")


def contracts() -> list[dict[str, object]]:
    """As pyproject.toml has them."""
    return tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["tool"]["importlinter"]["contracts"]


def test_import_contracts_are_kept(capsys: pytest.CaptureFixture[str]) -> None:
    outcome = lint_imports(config_filename=str(ROOT / "pyproject.toml"), no_cache=True)
    assert EXIT_STATUS_SUCCESS == outcome, capsys.readouterr().out


def test_layers_are_exhaustive_and_name_every_room() -> None:
    (layers,) = [contract for contract in contracts() if contract["type"] == "layers"]
    rooms = {name for layer in layers["layers"] for name in layer.split(" | ")}  # type is settled by the contract's own check
    assert layers["exhaustive"] is True
    assert {path.stem for path in (ROOT / "generator").iterdir() if path.suffix == ".py" or (path / "__init__.py").is_file()} - {"__init__"} == rooms


def test_every_room_but_the_two_is_kept_from_drawing_and_publishing() -> None:
    (forbidden,) = [c for c in contracts() if c["type"] == "forbidden" and set(HEAVY) <= set(c["forbidden_modules"])]
    (layers,) = [contract for contract in contracts() if contract["type"] == "layers"]
    rooms = {f"generator.{name}" for layer in layers["layers"] for name in layer.split(" | ")}
    assert rooms - {"generator.publish", "generator.cli", "generator.__main__"} == set(forbidden["source_modules"])


@pytest.mark.parametrize(("library", "rooms"), [("matplotlib", {"figures"}), ("mkdocs", {"generator/publish"}), ("material", {"generator/publish"})])
def test_heavy_libraries_are_named_in_one_room_only(library: str, rooms: set[str]) -> None:
    """A second look at what import-linter proves, by the plain words of the import lines."""
    begin = (f"import {library}", f"from {library}")
    found = {
        next((room for room in rooms if named(path).startswith(f"{room}/")), named(path))
        for path in modules("generator", "figures")
        for line in path.read_text("utf-8").splitlines()
        if line.strip().startswith(begin)
    }
    assert found <= rooms


@pytest.mark.parametrize("words", [["check"], ["facts", "sill_lake"], ["facts", "temperate_grassland", "--json"], ["--help"]])
def test_checking_and_telling_numbers_load_no_heavy_library(words: list[str]) -> None:
    program = (
        "import sys; from generator.cli import main; sys.argv = ['studyguide', *sys.argv[1:]]; code = main();"
        f"print(code, sorted(set({HEAVY!r}) & set(sys.modules)), file=sys.stderr)"
    )
    run = subprocess.run([sys.executable, "-c", program, *words], cwd=ROOT, capture_output=True, text=True, timeout=120, check=True)
    assert "0 []" == run.stderr.strip().splitlines()[-1]
