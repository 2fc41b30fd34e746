"""Climate tables: what is understood, what is said of it, and one message for one mistake."""

from __future__ import annotations

import pytest

from generator.kinds.biome.import_table import import_table
from generator.records.tables import Imported, table

NAMES = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split()
FRENCH = "janvier février mars avril mai juin juillet août septembre octobre novembre décembre".split()


def rows(heads: str, months: list[str] = NAMES, cells: str = "{at},{at}", end: str = "") -> str:
    return heads + "\n" + "".join(f"{name},{cells.format(at=at)}\n" for at, name in enumerate(months)) + end


def imported(text: str) -> Imported:
    return import_table(table(text.encode(), "evora.csv"))


def told(text: str) -> list[str]:
    return [f"{one.place.line}:{one.place.column} {one.expected} / {one.found} / {one.mend}" for one in imported(text).problems]


@pytest.mark.parametrize(
    ("heads", "units"),
    [
        ("Month,Temp °F,Rain in", ("degF", "in")), ("month,tavg_degC,rainfall_mm", ("degC", "mm")), ("month,Temperature in °C,rain (inches)", ("degC", "in")),
        ("month,mean daily temperature (C),total rainfall (cm)", ("degC", "cm")), ("month,temp deg F,rain/mm", ("degF", "mm")),
    ],
)  # fmt: skip
def test_a_unit_may_stand_behind_a_known_name_without_brackets(heads: str, units: tuple[str, str]) -> None:
    found = imported(rows(heads))
    assert ((), units) == (found.problems, (found.fields["units"]["temperature"], found.fields["units"]["precipitation"]))


def test_a_column_that_is_meant_is_named_with_the_names_and_units_that_are_known() -> None:
    mend = "name it temperature, mean temperature or temp, with its unit: temperature (degC) or temperature (degF)"
    assert [f'1:7 a column with the mean temperature / none, but "Avg °F" / {mend}'] == told(rows("Month,Avg °F,Rain (in)"))


def test_a_maximum_is_not_taken_for_a_mean() -> None:
    (one,) = told(rows("Month,Max temp (°F),Min temp (°F),Rain (in)", cells="9,1,2"))
    assert 'none, only "Max temp (°F)" and "Min temp (°F)" / work out the mean of each month first' in one


def test_what_was_read_converted_and_left_out_is_said() -> None:
    found = imported(rows("month,temp (°F),rain (in),max (°F)", cells="{at},1,9", end="Year,9,9,9\n"))
    assert (
        'evora.csv: read "month", "temp (°F)" and "rain (in)" from 13 rows.',
        'evora.csv:1:27: the column "max (°F)" was left out: a biome record has no place for it',
        'evora.csv:14:1: the row "Year" was left out: the program sums the months up itself',
        "The record keeps temperature in degF and precipitation in inches, as in the table; the page shows degC and mm, with the conversion.",
    ) == found.notes


def test_the_note_on_rows_held_by_columns_of_months() -> None:
    text = f"what,{','.join(NAMES)},Year\ntemp °C,{'1,' * 12}1\nrain (mm),{'2,' * 12}24\nsun (h),{'3,' * 12}36\n"
    assert (
        'evora.csv:1:54: the column "Year" was left out: the program sums the months up itself',
        'evora.csv:2:1: read the row "temp °C", a value for each month', 'evora.csv:3:1: read the row "rain (mm)", a value for each month',
        'evora.csv:4:1: the row "sun (h)" was left out: a biome record has no place for it',
    ) == imported(text).notes  # fmt: skip


def test_a_station_is_called_after_the_file_and_this_is_said_unless_a_column_names_it() -> None:
    found = imported(rows("month,temp (C),rain (mm)"))
    assert ("evora", "Evora") == (found.fields["stations"][0]["id"], found.fields["stations"][0]["name"])
    assert 'The station is called "Evora", after the file' in found.next[0]
    named = imported(rows("month,temp (C),rain (mm),station", cells="1,2,Beja"))
    assert ("Beja", 1) == (named.fields["stations"][0]["name"], len(named.next))


@pytest.mark.parametrize("trace", ["trace", "T", "Tr"])
def test_a_trace_of_rain_is_read_as_0_with_a_note(trace: str) -> None:
    found = imported(rows("month,temp (C),rain (mm)").replace("Jul,6,6", f"Jul,6,{trace}"))
    assert ((), "0") == (found.problems, found.fields["stations"][0]["monthly_precip"][6])
    assert f'evora.csv:8:7: "{trace}" was read as 0: less than can be measured' in found.notes


def test_months_of_another_language_are_told_once() -> None:
    mend = "write January, Jan or 1; all months in English or as numbers"
    assert [f'2:1 a month / "janvier" and 11 more like it / {mend}'] == told(rows("month,temp (C),rain (mm)", FRENCH))


def test_a_table_without_a_column_of_months_is_told_once() -> None:
    assert ["1:1 a column with the months / none / name it month; in it stand January, Jan or 1, and so on"] == told(rows("mois,temp (C),rain (mm)", FRENCH))


def test_columns_of_another_language_are_told_once() -> None:
    text = f"what,{','.join(FRENCH[:2])}\ntemp (C),1,2\nrain (mm),1,2\n"
    assert ['1:6 columns named after months / "janvier" / name them January, Jan or 1, and so on to December'] == told(text)


def test_missing_months_are_told_once_where_their_rows_should_stand() -> None:
    months = [name for name in NAMES if name not in ("Apr", "Nov")]
    assert ["4:1 12 months for Evora / none for April and November / add a row for each that is missing"] == told(rows("month,temp (C),rain (mm)", months))


def test_a_month_that_cannot_be_read_is_not_told_as_missing_too() -> None:
    assert ['5:1 a month / "Arp" / write January, Jan or 1'] == told(rows("month,temp (C),rain (mm)").replace("Apr", "Arp"))


def test_a_missing_column_of_a_month_is_told_once() -> None:
    text = f"what,{','.join(NAMES[:11])}\ntemp °C,{'1,' * 10}1\nrain (mm),{'2,' * 10}2\n"
    assert ["1:46 a column for each month / none for December / add what is missing; a month is called January, Jan or 1"] == told(text)


def test_what_stands_twice_is_told_once() -> None:
    mend = "remove one, or tell stations apart in a column named station"
    assert [f"14:1 each month once / December again / {mend}"] == told(rows("month,temp (C),rain (mm)", [*NAMES, "Dec"]))
    text = f"what,{','.join(NAMES)}\n" + f"temp °C,{'1,' * 11}1\n" * 2 + f"rain (mm),{'2,' * 11}2\n"
    assert [f"3:1 each quantity once for Evora / the temperature again / {mend}"] == told(text)


def test_a_station_without_a_row_of_rain_is_told() -> None:
    text = f"station,what,{','.join(NAMES)}\n" + "".join(f"{s},{q},{'1,' * 11}1\n" for s, q in (("A", "temp °C"), ("A", "rain (mm)"), ("B", "temp °C")))
    assert ["4:1 a row of precipitation for B / none / add the row"] == told(text)
