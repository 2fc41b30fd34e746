"""Records with something broken in them: never an exception, always a record or an error with a place in the file."""

from __future__ import annotations

import re

import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from generator.diagnostics import Severity
from generator.records.checking import check
from generator.records.located import located
from generator.records.record import Record

SIGNS = [
    b":",
    b"- ",
    b"[",
    b"]",
    b"{",
    b"}",
    b"'",
    b'"',
    b"\t",
    b"\n",
    b"\r\n",
    b"#",
    b"&a ",
    b"*a",
    b"!t ",
    b"---\n",
    b"%",
    b"|",
    b">",
]
SIGNS += [
    b"\\",
    b"\x00",
    b"\xff",
    b"\xc2\xa0",
    b"\xe2\x80\x9c",
    b"\xe2\x80\xa8",
    b"\xef\xbb\xbf",
    b"? ",
    b", ",
    b" ",
    b"true",
    b"1e999",
]
CHANGES = st.lists(
    st.tuples(
        st.sampled_from(
            ["flip", "cut", "line_out", "line_twice", "lines_swapped", "insert", "insert", "tokens_swapped", "bytes"]
        ),
        st.integers(0, 10_000),
        st.integers(0, 10_000),
        st.sampled_from(SIGNS),
    ),
    min_size=1,
    max_size=4,
)


def changed(data: bytes, sort: str, first: int, second: int, sign: bytes) -> bytes:
    """The data with one change of the sort, at places that the two numbers choose."""
    at = first % (len(data) + 1)
    if sort == "flip":
        return data[:at] + bytes(byte ^ (1 << second % 8) for byte in data[at : at + 1]) + data[at + 1 :]
    if sort == "cut":
        return data[:at] + data[at + second % 30 :]
    if sort == "insert":
        return data[:at] + sign + data[at:]
    if sort == "bytes":
        return data[:at] + second.to_bytes(2, "big") + data[at:]
    parts = re.split(rb"(?<=\n)", data) if sort.startswith("line") else re.split(rb"(?<=[ \n])", data)
    i, j = first % len(parts), second % len(parts)
    if sort == "line_out":
        del parts[i]
    elif sort == "line_twice":
        parts.insert(j, parts[i])
    else:
        parts[i], parts[j] = parts[j], parts[i]
    return b"".join(parts)


def broken(data: bytes, changes: list[tuple[str, int, int, bytes]]) -> bytes:
    for change in changes:
        data = changed(data, *change)
    return data


def holds(data: bytes, model: type[Record], parser: type) -> tuple[object, ...]:
    record, diagnostics = check(located(data, "f", parser), model)
    assert (record is None) == any(one.severity is Severity.ERROR for one in diagnostics)
    lines = re.split(r"\r\n|\r|\n", data.decode("utf-8-sig", errors="replace"))
    for one in diagnostics:
        assert 1 <= one.place.line <= len(lines), one
        assert 1 <= one.place.column <= len(lines[one.place.line - 1]) + 1, one
        assert one.expected and one.found and one.mend
        assert str(one).isprintable() or str(one).replace("\n    mend: ", "").isprintable(), one
    return record, diagnostics


@settings(deadline=None, max_examples=150)
@given(changes=CHANGES)
def test_broken_biome_is_a_record_or_told(
    good_records: dict[str, bytes], place_record: type[Record], changes: list[tuple[str, int, int, bytes]]
) -> None:
    holds(broken(good_records["temperate_grassland"], changes), place_record, yaml.CSafeLoader)


@settings(deadline=None, max_examples=100)
@given(name=st.sampled_from(["sill_lake", "wend_hollow_nitrogen"]), changes=CHANGES)
def test_broken_record_of_any_kind_is_a_record_or_told(
    good_records: dict[str, bytes], any_record: type[Record], name: str, changes: list[tuple[str, int, int, bytes]]
) -> None:
    holds(broken(good_records[name], changes), any_record, yaml.CSafeLoader)


@settings(deadline=None, max_examples=60)
@given(changes=CHANGES)
def test_both_parsers_say_the_same_of_a_broken_record(
    good_records: dict[str, bytes], place_record: type[Record], changes: list[tuple[str, int, int, bytes]]
) -> None:
    data = broken(good_records["temperate_grassland"], changes)
    assert holds(data, place_record, yaml.CSafeLoader) == holds(data, place_record, yaml.SafeLoader)


@settings(deadline=None, max_examples=100)
@given(data=st.binary(max_size=200))
def test_any_bytes_are_a_record_or_told(place_record: type[Record], data: bytes) -> None:
    holds(data, place_record, yaml.CSafeLoader)


@settings(deadline=None, max_examples=100)
@given(parts=st.lists(st.sampled_from([*SIGNS, b"title", b": ", b"\n  ", b"a", b"\n"]), max_size=25))
def test_any_yaml_like_text_is_told_alike_by_both_parsers(place_record: type[Record], parts: list[bytes]) -> None:
    data = b"".join(parts)
    assert holds(data, place_record, yaml.CSafeLoader) == holds(data, place_record, yaml.SafeLoader)
