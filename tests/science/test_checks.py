"""Every outside value in generator/science/checks, and what must be true of the methods and sources as a whole."""

from __future__ import annotations

import ast
from pathlib import Path
from typing import Any

import pytest
import yaml

import generator.science
from generator.science import METHODS

SCIENCE = Path(generator.science.__file__).parent
SOURCED = {"published", "library", "secondary"}
STATUSES = SOURCED | {"common practice", "from memory", "derived"}
FORMULA_FUNCTIONS = {"sin", "tan", "arccos", "sum", "mean", "max", "min", "exp", "ln", "log", "sqrt", "abs"}

FILES = {path.stem: yaml.safe_load(path.read_text("utf-8")) for path in sorted((SCIENCE / "checks").glob("*.yaml"))}
SOURCES = yaml.safe_load((SCIENCE / "sources.yaml").read_text("utf-8"))
CHECKS = [
    pytest.param(stem, check, id=f"{stem}: {check['name']}") for stem, file in FILES.items() for check in file["checks"]
]


def outcome(method: str, given: dict[str, Any]) -> Any:
    """The computed value; a division by zero is the method's way of saying undefined."""
    try:
        return METHODS[method].compute(**given)
    except ZeroDivisionError:
        return None


def holds_float(value: Any) -> bool:
    return isinstance(value, float) or (isinstance(value, list) and any(isinstance(item, float) for item in value))


@pytest.mark.parametrize(("method", "check"), CHECKS)
def test_method_agrees_with_outside_value(method: str, check: dict[str, Any]) -> None:
    """The method gives the expected value: within the stated tolerance where one is stated, else exactly."""
    found = outcome(method, check["given"])
    if check.get("compare") == "sum":
        found = sum(found)
    if isinstance(found, tuple):
        found = list(found)
    expected = check["expected"]
    if tolerance := check.get("tolerance"):
        expected = pytest.approx(expected, rel=tolerance.get("relative", 0.0), abs=tolerance.get("absolute", 0.0))
    assert expected == found


@pytest.mark.parametrize(("method", "check"), CHECKS)
def test_check_says_where_it_comes_from(method: str, check: dict[str, Any]) -> None:
    """A check has a source and a known status; a number has a tolerance with its reason; nothing else has one."""
    known = {"name", "given", "expected", "compare", "tolerance", "because", "source", "cites", "status"}
    assert set() == set(check) - known
    assert check["source"].strip()
    assert check["status"] in STATUSES
    assert ("tolerance" in check) == ("because" in check)
    assert set(check.get("tolerance", {})) <= {"relative", "absolute"}
    if holds_float(check["expected"]):
        assert "tolerance" in check
    if check["status"] in SOURCED:
        assert check["cites"] in SOURCES
    elif "cites" in check:
        assert check["cites"] in SOURCES


def test_every_method_has_its_checks() -> None:
    """Each method has a file of checks under its id, and no file is left over."""
    assert sorted(METHODS) == sorted(FILES)
    assert [stem for stem in FILES] == [file["method"] for file in FILES.values()]


@pytest.mark.parametrize("stem", sorted(FILES))
def test_method_is_held_against_something_outside(stem: str) -> None:
    """At least one check of a method is more than arithmetic of its own formula."""
    assert any(check["status"] != "derived" for check in FILES[stem]["checks"])
    names = [check["name"] for check in FILES[stem]["checks"]]
    assert len(names) == len(set(names))


def test_hundreds_of_values_have_a_source_that_was_seen() -> None:
    """Neither worked back, nor remembered, nor only what everybody does."""
    sourced = [check for file in FILES.values() for check in file["checks"] if check["status"] in SOURCED]
    assert len(sourced) >= 600


def test_every_source_is_used() -> None:
    """The bibliography holds what methods and checks cite, and nothing else."""
    cited = {key for method in METHODS.values() for key in method.sources}
    cited |= {check["cites"] for file in FILES.values() for check in file["checks"] if "cites" in check}
    assert sorted(cited) == sorted(SOURCES)


@pytest.mark.parametrize("key", sorted(SOURCES))
def test_source_is_complete(key: str) -> None:
    """A source names authors, year, title and place, and says how it was read."""
    source = SOURCES[key]
    assert {"authors", "year", "title", "where", "read"} == set(source) - {"doi"}
    assert source["read"] in {"text", "abstract", "secondary", "memory", "run"}
    assert all(source[field] for field in ("authors", "title", "where"))


@pytest.mark.parametrize("method", METHODS.values(), ids=METHODS)
def test_formula_speaks_of_its_symbols(method: generator.science.Method) -> None:
    """Each formula line is `symbol = expression`, and its names are exactly the symbols that are explained."""
    names: set[str] = set()
    for line in method.formula:
        symbol, _, right = line.partition(" = ")
        assert symbol.isidentifier()
        names.add(symbol)
        calls = {node.func.id for node in ast.walk(ast.parse(right)) if isinstance(node, ast.Call)}
        assert calls <= FORMULA_FUNCTIONS
        names |= {node.id for node in ast.walk(ast.parse(right)) if isinstance(node, ast.Name)} - calls
    assert names == {symbol for symbol, _, _ in method.symbols}
    assert all(meaning for _, meaning, _ in method.symbols)


@pytest.mark.parametrize("method", METHODS.values(), ids=METHODS)
def test_method_explains_itself(method: generator.science.Method) -> None:
    """A method has a name, a formula or a rule, and says where it does not hold."""
    assert method.name
    assert method.formula or method.rule
    assert method.limits.endswith(".")
