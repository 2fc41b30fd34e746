"""A file against a model."""

from __future__ import annotations

from typing import Annotated, Literal, Self

from pydantic import AfterValidator, Field, model_validator

from generator.diagnostics import Diagnostic
from generator.records.checking import check
from generator.records.expectation import Inner, expected, several
from generator.records.fields import Id, Many, Number, StatedAmount, Text
from generator.records.located import located
from generator.records.parts import Part
from generator.records.record import Record


class Pond(Part):
    sort: Literal["pond"]
    depth: StatedAmount


class Stream(Part):
    sort: Literal["stream"]
    flow: StatedAmount


class Waters(Part):
    waters: Many[Annotated[Pond | Stream, Field(discriminator="sort")]] = ()
    note: Text = "none"


def odd(value: str) -> str:
    if len(value) % 2:
        return value
    raise expected("an odd number of letters", "add one")


class Bed(Part):
    top: Number
    bottom: Number

    @model_validator(mode="after")
    def is_thick(self) -> Self:
        if self.bottom <= self.top:
            refusal = expected(f"more than top ({self.top.text})", "exchange the two", found=self.bottom.text)
            raise several([Inner(("bottom",), self.bottom, refusal)])
        return self


class Rates(Part):
    rate: Number
    rates: Many[Number] = ()


class Pair(Part):
    ponds: Annotated[Many[Pond], Field(min_length=2)]


class Odd(Part):
    words: dict[Id, Annotated[Text, AfterValidator(odd)]]


def told(text: str, model: type) -> list[str]:
    return [str(one) for one in check(located(text.encode(), "f"), model)[1]]


def short(text: str, model: type) -> list[tuple[str, str]]:
    return [(one.field, one.mend) for one in check(located(text.encode(), "f"), model)[1]]


def test_good_file_becomes_a_record(good_records: dict[str, bytes], place_record: type[Record]) -> None:
    record, diagnostics = check(located(good_records["temperate_grassland"], "f"), place_record)
    assert () == diagnostics
    assert ("Temperate grassland", 327.0) == (record.title, sum(record.stations[0].monthly_precip))


def test_record_keeps_numbers_as_written(good_records: dict[str, bytes], place_record: type[Record]) -> None:
    record, _ = check(located(good_records["temperate_grassland"], "f"), place_record)
    assert ("46.5", "310") == (record.stations[0].latitude.text, record.stations[0].elevation.written)


def test_all_examples_have_the_shared_fields(good_records: dict[str, bytes], any_record: type[Record]) -> None:
    checked = {name: check(located(data, name), any_record) for name, data in good_records.items()}
    assert dict.fromkeys(good_records, ()) == {name: diagnostics for name, (_, diagnostics) in checked.items()}
    assert ["few_trees", "few_pike", "stream_nitrate"] == [
        checked[name][0].explanations[0].id for name in ("temperate_grassland", "sill_lake", "wend_hollow_nitrogen")
    ]


def test_validator_of_a_kind_speaks_for_itself() -> None:
    assert ['f:1:12: words.a: expected an odd number of letters, found the text "mud!"\n    mend: add one'] == told(
        "words: {a: mud!, b: sand!}", Odd
    )


def test_comparison_of_two_fields_points_at_the_one_that_is_wrong() -> None:
    assert ["f:1:20: bottom: expected more than top (5.0), found 3\n    mend: exchange the two"] == told(
        "{top: 5.0, bottom: 3}", Bed
    )


def test_wrong_name_is_told_at_the_name() -> None:
    assert [
        'f:1:17: words.B b: expected an id in small letters, digits and _, found the text "B b"\n    mend: write b_b'
    ] == told("words: {a: mud, B b: mud}", Odd)


def test_choice_of_groups_is_told_on_the_path_of_the_file() -> None:
    text = "waters: [{sort: pond, depth: deep}, {sort: streem, flow: 1}, {sort: stream, flow: 1, flo: 2}, {flow: 1}]"
    assert ["waters[0].depth", "waters[1]", "waters[2].flo", "waters[3]"] == [field for field, _ in short(text, Waters)]


def test_unknown_name_near_a_missing_one_is_told_once() -> None:
    assert [("waters[0].dept", 'did you mean "depth"?')] == short("waters: [{sort: pond, dept: 1}]", Waters)


def test_unknown_name_seems_to_mean_a_field_that_is_not_there_yet() -> None:
    assert [("rat", 'did you mean "rates"?')] == short("{rate: 1, rat: [2]}", Rates)


def test_length_of_a_list_is_told_only_where_its_items_are_right() -> None:
    assert ["ponds[1].depth"] == [field for field, _ in short("ponds: [{sort: pond, depth: 1}, {sort: pond}]", Pair)]
    assert [("ponds", "add what is missing")] == short("ponds: [{sort: pond, depth: 1}]", Pair)


def test_unknown_name_is_compared_with_the_fields_of_its_own_group() -> None:
    assert [("waters[0].note", "remove it, or use flow"), ("waters[0].flow", 'add "flow: ..." to waters[0]')] == sorted(
        short("waters: [{sort: stream, note: 1}]", Waters), reverse=True
    )


def test_what_a_problem_of_the_text_stands_for_is_not_told_again(place_record: type[Record]) -> None:
    text = "title: @Sea\ndata: invented\nsummary: x\nregion: coast\nstations: [\n"
    assert ["f:1:8", "f:5:11"] == [one.partition(": ")[0] for one in told(text, place_record)]


def test_file_that_cannot_be_read_is_told_as_it_is(place_record: type[Record]) -> None:
    record, diagnostics = check(located(b"", "f"), place_record)
    assert (None, ["an empty file"]) == (record, [one.found for one in diagnostics])


def test_any_type_can_be_checked() -> None:
    """Course files need not be records."""
    words, diagnostics = check(located(b"biome: A large region.\nhumus: Dark matter of soil.\n", "f"), dict[Id, Text])
    assert ({"biome": "A large region.", "humus": "Dark matter of soil."}, ()) == (words, diagnostics)


def test_diagnostics_come_in_the_order_of_the_file(place_record: type[Record]) -> None:
    _, diagnostics = check(located(b"zeta: 1\ntitle: 2\ndata: 3\n", "f"), place_record)
    assert sorted(diagnostics, key=lambda one: one.place) == list(diagnostics)
    assert {Diagnostic} == {type(one) for one in diagnostics}
