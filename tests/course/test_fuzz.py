"""Whole courses with something changed at random: never an exception but the report; what passes can be written."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from unittest import mock

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from generator import build
from generator.diagnostics import ContentErrors
from tests.content.patches import BIOME, COURSE, CYCLE, PYRAMID, write_course

FILES = [BIOME, CYCLE, PYRAMID, BIOME, CYCLE, PYRAMID, "course.yaml", "vocabulary.yaml", "sources.yaml"]
"""Records come up twice as often."""
NUMBERS = "0 -0 1 -1 3 12.50 40 -40 1e-300 1e300 -1e300 1e999 1e15 1e-15 nan .inf -.inf unknown ½ 007 1,5".split()
NUMBERS += ["{low: 0, high: 0}", "{low: 1, high: 1e9}", "{value: 5, plus_minus: 0}", "{value: 0, plus_minus: 3}", "{value: nan}"]
WORDS = "in import class lambda and sum inflow index paper practice nitrate plants air harrow_plain leaching true null".split()
WORDS += "[] {} - { } é 💧 {a.b} {leaching.rate} <b>x</b> </script> \" ' N2 7 | `x` *x*".split()
WORDS += ["a b", "a: b", "[1, 2]", "\u200b", "\u202e"]
NUMBER = re.compile(r"(?<![\w.])-?\d+(?:\.\d+)?(?![\w.])")
TWELVE = re.compile(r"\[(?:-?\d+, ){11}-?\d+\]")
TOKEN = re.compile(r"[\w./-]+")
FIELD = re.compile(r", \w+: (?:\{[^{}]*\}|\[[^\[\]]*\]|[^,{}\[\]\n]+)(?=[,}])|^ +\w+: [^\n]*\n", re.M)
ITEM = re.compile(r"^( +- \{id: )(\w+)([^\n]*\n)", re.M)
SORTS = ["line_out", "line_twice", "lines_swapped", "number", "number", "all_year", "token", "tokens_swapped", "field_out", "items"]
CHANGES = st.lists(
    st.tuples(
        st.sampled_from(FILES), st.sampled_from(SORTS), st.integers(0, 10_000), st.integers(0, 10_000),
        st.sampled_from(NUMBERS), st.sampled_from(WORDS),
    ),
    min_size=1,
    max_size=3,
)  # fmt: skip


def changed(text: str, sort: str, first: int, second: int, number: str, word: str) -> str:
    """The text with one change of the sort, at places that the two integers choose; as it is where nothing fits."""
    if sort.startswith("line"):
        lines = text.splitlines(keepends=True)
        i, j = first % len(lines), second % len(lines)
        if sort == "lines_swapped":
            lines[i], lines[j] = lines[j], lines[i]
        else:
            lines[i : i + 1] = [] if sort == "line_out" else [lines[i]] * 2
        return "".join(lines)
    pattern = {"number": NUMBER, "all_year": TWELVE, "field_out": FIELD, "items": ITEM}.get(sort, TOKEN)
    found = list(pattern.finditer(text))
    if not found:
        return text
    place = found[first % len(found)]
    if sort == "tokens_swapped":
        a, b = sorted((place, found[second % len(found)]), key=lambda match: match.start())
        return text if a is b else f"{text[: a.start()]}{b[0]}{text[a.end() : b.start()]}{a[0]}{text[b.end() :]}"
    new = {"number": number, "all_year": f"[{', '.join([number] * 12)}]", "token": word, "field_out": ""}.get(sort)
    if new is None:
        new = place[0] + "".join(f"{place[1]}{place[2]}_{number}{place[3]}" for number in range(second % 60))
    return text[: place.start()] + new + text[place.end() :]


@contextmanager
def without_drawing() -> Iterator[None]:
    """Charts are composed and described, but no picture is made of them."""
    with mock.patch.object(build, "_draw", lambda chart: f"<svg>{chart.fingerprint()}</svg>"):
        yield


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the small course in `content`."""
    made = tmp_path_factory.mktemp("fuzz")
    write_course(made / "content")
    return made


def holds(folder: Path, texts: dict[str, str]) -> None:
    for name, text in texts.items():
        (folder / "content" / name).write_text(text, "utf-8")
    try:
        with without_drawing():
            build.write_pages(folder / "content", folder / "work")
    except ContentErrors as errors:
        assert any(one.severity == "error" for one in errors.diagnostics)
        assert str(errors).endswith("; nothing was written.")
        return
    library = build.check(folder / "content")
    for subject in library.subjects.values():
        plain = build.facts_of(folder / "content", subject.id)
        json.dumps(plain, allow_nan=False)
    given = "".join(texts.values())
    for page in (folder / "work" / "pages").rglob("*.md"):
        words = re.sub(r"<[^>]*>", " ", page.read_text("utf-8"))
        assert [] == [word for word in re.findall(r"\b(?:nan|NaN|inf|None|Fact)\b", words) if word not in given], page.name


@settings(deadline=None, max_examples=60, derandomize=True, database=None)
@given(changes=CHANGES)
def test_a_course_with_changes_is_told_or_written(
    folder: Path, changes: list[tuple[str, str, int, int, str, str]]
) -> None:
    texts = {name: (COURSE / name).read_text("utf-8") for name in FILES}
    for name, *change in changes:
        texts[name] = changed(texts[name], *change)
    holds(folder, texts)


@pytest.mark.parametrize("name", [BIOME, CYCLE, PYRAMID])
@pytest.mark.parametrize("number", ["0", "1", "40", "-40", "1e24", "1e-15", "unknown"])
def test_a_record_whose_numbers_are_all_the_same_is_told_or_written(folder: Path, name: str, number: str) -> None:
    """Zero everywhere, a year without seasons, the largest and the smallest numbers that are let through."""
    texts = {other: (COURSE / other).read_text("utf-8") for other in FILES}
    lines = texts[name].splitlines(keepends=True)
    kept = [line if line.startswith(("title", "summary", "figures")) else NUMBER.sub(number, line) for line in lines]
    holds(folder, texts | {name: "".join(kept)})
