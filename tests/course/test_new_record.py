"""New records: a file for every kind that builds as it is, and tables of numbers turned into records or told cell by cell."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

from generator.build import check
from generator.course.new_record import Created, NotCreated, create, draft
from generator.diagnostics import ContentErrors
from generator.kinds import all_kinds
from generator.records.located import located
from generator.records.tables import table
from tests.content.patches import write_course

MONTHS = "Jan Feb Mar Apr May Jun Jul Aug Sep Oct Nov Dec".split()
CLIMATE = "month;temperature (degF);precipitation [in]\n" + "".join(f"{name};{50 + n},5;{n},25\n" for n, name in enumerate(MONTHS))
FLUXES = "from,to,rate (Gt C/yr),plus minus,process\nAir,Plants,113,8,photosynthesis\nPlants,Air,57,,respiration\nRock,Air,9.4,1.2,burning\n"
LEVELS = "level,production (kJ/m2/yr),biomass (g/m2)\nAlgae,8833,809\nGrazers,1478,37\nHunters,67,11\n"
BOTTLES = "depth (m),bottle,oxygen 1 (mg/L),oxygen 2 (mg/L),incubation (h),light hours\n0,initial,8,8.2,4,10\n0,light,9,9.4,4,10\n0,dark,7.4,7.6,4,10\n"


def values(kind: str, text: str) -> Any:
    """What the record drafted from a table says."""
    return located(draft(all_kinds()[kind], "A title", table(text.encode(), "t.csv"))[0].encode(), "r.yaml").value


def notes(kind: str, text: str) -> tuple[str, ...]:
    return draft(all_kinds()[kind], "A title", table(text.encode(), "t.csv"))[1]


def told(kind: str, text: str) -> list[str]:
    """What is wrong with a table: line, column, field, what was found."""
    with pytest.raises(ContentErrors) as raised:
        draft(all_kinds()[kind], "A title", table(text.encode(), "t.csv"))
    assert {"t.csv"} == {one.place.file for one in raised.value.diagnostics}
    assert all(one.mend for one in raised.value.diagnostics)
    return [f"{one.place.line}:{one.place.column} {one.field} / {one.found}" for one in raised.value.diagnostics]


@pytest.fixture
def content(tmp_path: Path) -> Path:
    return write_course(tmp_path / "content")


def made(content: Path, kind: str, name: str, **more: Any) -> Created:
    return create(content, all_kinds(), kind, name, **more)


@pytest.mark.parametrize("kind", list(all_kinds()))
def test_a_new_record_builds_as_it_is(content: Path, kind: str) -> None:
    """Nothing is left to say but that no topic lists it, and what its author has to write."""
    created = made(content, kind, "brand_new")
    library = check(content)
    assert {"not_in_course", "unwritten"} == {one.rule for one in library.warnings}
    assert "Brand new" == library.subjects[created.id].record.title
    assert library.questions[created.id]


@pytest.mark.parametrize("kind", list(all_kinds()))
def test_a_new_record_explains_itself(kind: str) -> None:
    text = draft(all_kinds()[kind], "A title")[0]
    assert all(line.count("#") for line in text.splitlines()[:1])
    assert sum("#" in line for line in text.splitlines()) >= 10
    assert "\t" not in text and text.endswith("\n") and "\n\n\n" not in text


@pytest.mark.parametrize("title", ["Plain", "12", "No: never", "It's #1", 'Say "no"', "true", "Über – alles", "a\\b", "[x]", "- x", "null"])
def test_any_title_survives(title: str) -> None:
    text = draft(all_kinds()["pyramid"], title)[0]
    assert title == located(text.encode(), "r.yaml").value["title"]


@pytest.mark.parametrize(
    ("kind", "name", "message"),
    [
        ("biom", "x", 'no kind biom; did you mean "biome"?'), ("biome", "My Plain.yaml", "write my_plain"), ("biome", "42", "write it like temperate_grassland"),
        ("biome", "../x", "write x"), ("biome", "compared", '"compared" is the name of a page'), ("biome", "temperate_grassland", "exists already"),
    ],
)  # fmt: skip
def test_kinds_and_names_that_cannot_be_are_refused_with_a_mend(content: Path, kind: str, name: str, message: str) -> None:
    before = sorted(content.rglob("*"))
    with pytest.raises(NotCreated) as raised:
        made(content, kind, name)
    assert message in str(raised.value)
    assert before == sorted(content.rglob("*"))


@pytest.mark.parametrize("title", ["{x}", "a\u200bb"])
def test_titles_that_would_not_build_are_refused(content: Path, title: str) -> None:
    with pytest.raises(NotCreated):
        made(content, "biome", "x", title=title)


def test_a_table_with_a_problem_writes_nothing(content: Path) -> None:
    source = content.parent / "t.csv"
    source.write_text(CLIMATE.replace("50,5", "wet"), "utf-8")
    before = sorted(content.rglob("*"))
    with pytest.raises(ContentErrors):
        made(content, "biome", "x", source=(source, "t.csv"))
    assert before == sorted(content.rglob("*"))


@pytest.mark.parametrize(("kind", "text"), [("biome", CLIMATE), ("cycle", FLUXES), ("pyramid", LEVELS), ("productivity", BOTTLES)])
def test_a_record_made_from_a_table_passes_the_check(content: Path, kind: str, text: str) -> None:
    source = content.parent / "t.csv"
    source.write_text(text, "utf-8")
    created = made(content, kind, "from_table", source=(source, "t.csv"))
    assert {"not_in_course", "unwritten", "question_left_out"} >= {one.rule for one in check(content).warnings}
    assert created.notes


# Climate


def test_a_table_of_months_keeps_its_numbers_and_units_as_stated() -> None:
    found = values("biome", CLIMATE)
    assert {"temperature": "degF", "precipitation": "in", "elevation": "m"} == found["units"]
    (station,) = found["stations"]
    assert [50.5 + n for n in range(12)] == station["monthly_mean_temp"]
    assert [n + 0.25 for n in range(12)] == station["monthly_precip"]
    assert "50.5" == station["monthly_mean_temp"][0].text


def test_columns_may_be_the_months() -> None:
    rows = "station,latitude,series," + ",".join(MONTHS) + ",Year\n"
    rows += "Port,-33.9,Mean temperature (°C)," + ",".join("12345678901"[:11]) + ",12,9\nPort,-33.9,rain (mm)," + ",".join(["5"] * 12) + ",60\n"
    (station,) = values("biome", rows)["stations"]
    assert ("port", "Port", -33.9) == (station["id"], station["name"], station["latitude"])
    assert ([1, 2, 3, 4, 5, 6, 7, 8, 9, 0, 1, 12], [5] * 12) == (station["monthly_mean_temp"], station["monthly_precip"])


def test_stations_of_one_table_are_told_apart() -> None:
    rows = "station,elevation (ft),month,temp (C),rain (cm)\n" + "".join(f"{s},{e},{m},{m},1\n" for s, e in (("A b", 30), ("C", 9)) for m in range(1, 13))
    found = values("biome", rows)
    assert [("a_b", 30), ("c", 9)] == [(station["id"], station["elevation"]) for station in found["stations"]]
    assert ("cm", "ft") == (found["units"]["precipitation"], found["units"]["elevation"])


def test_what_a_biome_has_no_place_for_is_told() -> None:
    text = CLIMATE.replace("[in]", "[in];max (degF);record low (degF)").replace("\n", ";1;2\n").replace(";record low (degF);1;2", ";record low (degF)")
    left = notes("biome", text + "Year;70;9;;\n")
    assert ['the column "max (degF)" was left out', 'the column "record low (degF)" was left out', 'the row "Year" was left out'] == [
        note.split(": ", 1)[1].split(":")[0] for note in left[1:4]
    ]


def test_everything_wrong_in_a_climate_table_is_told_at_once() -> None:
    text = CLIMATE.replace("Feb;51,5", "Feb;").replace("Mar;52,5;2,25", "Mar;warm;-2").replace("Apr", "Arp").replace("Nov", "Oct")
    assert [
        "3:5 stations[0].monthly_mean_temp[1] (February) / an empty cell", "4:1 month / none for April and November", '4:5 stations[0].monthly_mean_temp[2] (March) / the text "warm"',
        "4:10 stations[0].monthly_precip[2] (March) / -2", '5:1 month / "Arp"', "12:1 month / October again",
    ] == told("biome", text)  # fmt: skip


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        ("(degF)", "", '1:7 temperature / "temperature"'), ("[in]", "[furlong]", '1:26 precipitation / "precipitation [furlong]"'),
        ("temperature", "temprature", '1:7  / none, but "temprature (degF)"'), ("month", "when", "1:1  / none"),
    ],
)  # fmt: skip
def test_a_unit_is_never_guessed_and_a_column_never_left_out(old: str, new: str, expected: str) -> None:
    assert expected in told("biome", CLIMATE.replace(old, new, 1))


# Fluxes


def test_ends_that_are_left_and_reached_are_reservoirs_and_the_rest_is_outside() -> None:
    found = values("cycle", FLUXES)
    assert ({"stock": "Gt C", "flux": "Gt C/yr"}, ["rock"]) == (found["units"], found["outside"])
    assert [("air", "Air", "unknown"), ("plants", "Plants", "unknown")] == [(r["id"], r["name"], r["stock"]) for r in found["reservoirs"]]


def test_fluxes_keep_rate_and_uncertainty() -> None:
    photosynthesis, respiration, burning = values("cycle", FLUXES)["fluxes"]
    assert {"id": "photosynthesis", "from": "air", "to": "plants", "rate": {"value": 113, "plus_minus": 8}, "process": "photosynthesis"} == photosynthesis
    assert (57, "9.4") == (respiration["rate"], burning["rate"]["value"].text)


def test_fluxes_may_state_a_range_and_share_a_process() -> None:
    found = values("cycle", "from;to;low (mm/d);high (mm/d);process\na;b;1,5;2;rain\nb;a;1;3;rain\n")
    assert [("rain", {"low": 1.5, "high": 2}), ("rain_2", {"low": 1, "high": 3})] == [(f["id"], f["rate"]) for f in found["fluxes"]]
    assert "mm" == found["units"]["stock"]


def test_everything_wrong_in_a_flux_table_is_told_at_its_cell() -> None:
    text = "from,to,rate (Gt C/yr),cause\nair,plants,-3,nature\nplants,air,many,sun\nair,,2,people\n"
    assert [
        "2:12 fluxes[0].rate / -3", '3:12 fluxes[1].rate / the text "many"', '3:17 fluxes[1].cause / the text "sun"', "4:5 fluxes[2].to / an empty cell",
    ] == told("cycle", text)  # fmt: skip


def test_a_flux_that_leads_nowhere_is_told_at_its_cell() -> None:
    assert ['3:7 fluxes[1].to / "air" twice'] == told("cycle", "from,to,rate (Gt C/yr)\nair,sea,3\nair,  air,2\nsea,air,1\n")


@pytest.mark.parametrize("head", ["rate", "rate (Gt C)", "rate (Gt X/yr)", "speed (m/s)"])
def test_a_flux_needs_a_unit_with_time(head: str) -> None:
    assert told("cycle", f"from,to,{head}\na,b,1\n")


# Levels


def test_levels_keep_their_order_and_their_numbers() -> None:
    found = values("pyramid", LEVELS)
    assert {"energy_flow": "kJ/m2/yr", "biomass": "g/m2", "energy_content": "kJ/g"} == found["units"]
    assert [("algae", 8833, 809), ("grazers", 1478, 37), ("hunters", 67, 11)] == [(v["id"], v["production"], v["biomass"]) for v in found["levels"]]


def test_a_level_may_leave_out_what_is_not_known() -> None:
    found = values("pyramid", "level,net production (kcal/m2/yr),eaten (kcal/m2/yr)\nalgae,88,\nsnails,9,30\n")
    assert ["eaten" in level for level in found["levels"]] == [False, True]


@pytest.mark.parametrize(
    ("old", "new", "expected"),
    [
        ("1478", "x", '3:9 levels[1].production / the text "x"'), ("37", "-37", "3:14 levels[1].biomass / -37"),
        ("Hunters,67", "Hunters,", "4:1 levels[2] / neither"), ("kJ/m2/yr", "g", '1:7 production / "production (g)"'),
        ("biomass (g/m2)", "eaten (kcal/m2/yr)", '1:29 eaten / "eaten (kcal/m2/yr)"'), ("level", "who", "1:1  / none"),
        ("biomass (g/m2)", "transfer efficiency (%)", '1:29 transfer_efficiency / "transfer efficiency (%)"'),
        ("Hunters", "Algae", '4:1 levels[2].id / "algae" again (first at [0])'),
    ],
)  # fmt: skip
def test_what_is_wrong_with_levels_is_told_at_its_cell(old: str, new: str, expected: str) -> None:
    assert expected in told("pyramid", LEVELS.replace(old, new, 1))
