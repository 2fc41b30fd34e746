"""Wrong files and what is said of them, word for word: `bad/<name>.yaml`, `bad/<name>.txt`; a new rule, a new pair."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.diagnostics import Diagnostic, in_order, report
from generator.records.checking import check
from generator.records.located import located
from generator.records.record import Record

BAD = Path(__file__).parent / "bad"
NAMES = sorted(path.stem for path in BAD.glob("*.yaml"))


def told(name: str, model: type[Record], parser: type) -> tuple[Diagnostic, ...]:
    record, diagnostics = check(located((BAD / f"{name}.yaml").read_bytes(), f"{name}.yaml", parser), model)
    assert record is None
    return diagnostics


def expected_text(name: str) -> str:
    return (BAD / f"{name}.txt").read_text(encoding="utf-8")


@pytest.mark.parametrize("name", NAMES)
def test_wrong_file_gives_its_messages_with_either_parser(name: str, place_record: type[Record], parser: type) -> None:
    """Each wrong file is told in exactly the words beside it, whichever parser PyYAML was built with."""
    assert expected_text(name) == report(told(name, place_record, parser), written=False) + "\n"


def test_there_are_pairs_for_thirty_kinds_of_wrong_content() -> None:
    """Every wrong file has its messages, every text of messages its file, and there are enough of them."""
    assert NAMES == sorted(path.stem for path in BAD.glob("*.txt"))
    assert len(NAMES) >= 30


def test_everything_wrong_in_several_files_is_told_in_one_run(place_record: type[Record], parser: type) -> None:
    """The messages of all files come one after the other, by file and line, and the last line counts them."""
    names = ["duplicate_fields", "latin1", "several_sorts", "unclosed_quote"]
    together = in_order(one for name in reversed(names) for one in told(name, place_record, parser))
    messages = "".join(expected_text(name).rpartition("\n")[0].rpartition("\n")[0] + "\n" for name in names)
    assert messages + "8 problems in 4 files; nothing was written." == report(together, written=False)


def test_no_message_speaks_of_python_or_its_libraries() -> None:
    """An author reads of text, numbers, lists and fields, never of types of the language or of a library's page."""
    texts = "\n".join(expected_text(name) for name in NAMES).lower()
    foreign = [
        "pydantic",
        "input should",
        "str)",
        "dict",
        "tuple",
        "nonetype",
        "traceback",
        "block mapping",
        "token",
        "scalar",
    ]
    assert [] == [word for word in foreign if word in texts]
