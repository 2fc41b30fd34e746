"""Records with other numbers in their files: the right number is found, everything follows, and contradictions and the real Earth are left alone."""

from __future__ import annotations

from dataclasses import replace

import pytest

from generator.course.rewritten import Rewriting
from generator.kinds import all_kinds
from generator.quantities.fact import Fact
from generator.written.materials import Unchangeable
from tests.kinds.small_records import files, library

REWRITING = Rewriting(files(), library().subjects, all_kinds())
FIELDS, BAY = "cycle/two_fields_nitrogen", "pyramid/tillet_bay"


def stated(record: str, name: str, written: str) -> Fact:
    values = tuple(map(float, written.split()))
    return replace(library().subjects[record].facts[name], value=values if len(values) > 1 else values[0], written=written)


def test_a_number_is_put_in_its_own_place_though_others_are_equal_and_all_that_rests_on_it_follows() -> None:
    """Both fields get 80; only the bare one's fertiliser changes, and with it what comes in there."""
    made = REWRITING(FIELDS, {"fertiliser_bare.rate": stated(FIELDS, "fertiliser_bare.rate", "95")})
    assert made is not None
    assert [95, 80] == [made.facts[f"fertiliser_{field}.rate"].number for field in ("bare", "sown")]
    assert [95 + 45, 80 + 45] == [made.facts[f"{field}.inflow"].number for field in ("bare", "sown")]
    assert "95" == next(row[3] for row in made.table("flux_diagram").rows if row[0] == "Fertiliser, bare field")


def test_a_series_and_the_digits_it_was_written_with_are_put_in_as_a_whole() -> None:
    written = "250 210 165 45 5 0 0 0 4 25 110 215"
    made = REWRITING("biome/savanna", {"dry_fig_camp.monthly_precip": stated("biome/savanna", "dry_fig_camp.monthly_precip", written)})
    assert made is not None and sum(map(int, written.split())) == made.facts["dry_fig_camp.annual_precip"].number
    assert "250" == made.table("climate_diagram.dry_fig_camp").rows[0][2]


def test_a_record_that_would_contradict_itself_is_none_and_may_be_had_without_the_other_number() -> None:
    """What zooplankton eats is 510 egested, 830 respired and 360 built up; without the last, the rest of 2000 is built up."""
    eaten = {"zooplankton.eaten": stated(BAY, "zooplankton.eaten", "2000")}
    assert REWRITING(BAY, eaten) is None
    made = REWRITING(BAY, {**eaten, "zooplankton.production": None})
    assert made is not None and 2000 - 510 - 830 == made.facts["zooplankton.production"].number


def test_what_was_in_no_doubt_before_is_told() -> None:
    """A budget that closed to the unit, and does not any more."""
    made, as_it_is = (REWRITING(FIELDS, {"leaching_bare.rate": stated(FIELDS, "leaching_bare.rate", written)}) for written in ("60", "42"))
    assert made is not None and as_it_is is not None
    assert [False, True] == [made.is_sound(), as_it_is.is_sound()]


@pytest.mark.parametrize(
    ("record", "name", "because"),
    [("cycle/global_carbon", "atmosphere.stock", "comes from nature"), (FIELDS, "bare.inflow", "not stated")],
)  # fmt: skip
def test_why_a_number_cannot_be_another_is_said(record: str, name: str, because: str) -> None:
    with pytest.raises(Unchangeable, match=because):
        REWRITING(record, {name: library().subjects[record].facts[name]})
