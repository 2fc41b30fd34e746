"""Statements on waters hold by the numbers of the record, and say nothing where two numbers are alike."""

from __future__ import annotations

import pytest

from generator.kinds.aquatic_biome import water_claims
from generator.kinds.aquatic_biome.asked_water import AskedWater
from generator.questions.question import Rejected, SeveralChoice
from tests.kinds.aquatic_biome.asked import of_demo, small
from tests.kinds.small_records import library


def claims(stations: list[AskedWater]) -> dict[str, str]:
    return {claim.misconception: claim.holds for claim in water_claims._claims(*stations[:2])}


def test_lake_holds_less_below_though_it_could_hold_more() -> None:
    """9.4 of 9.08 mg/L above, 2.1 of 12.3 below; 2 to 21 °C and 4 to 8 °C; sampled at 22 m, light to 9.21 m, less than half of that."""
    assert {
        "wat.always-full": "More oxygen is dissolved near the surface than in the deep layer, although the water is warmer",
        "nit.complement": "In the deep layer less than half of the oxygen that could be dissolved is there",
        "wat.depth-swings": "Over the year the temperature changes less in the deep layer than near the surface",
        "wat.water-clear": "Even half way down to 22 m there is too little light for plants",
        "wat.secchi-light-gone": "A white disk is lost from sight well above the depth where 1 % of the light is left",
    } == claims(of_demo("lake"))


@pytest.mark.parametrize(
    ("name", "compared"),
    [
        ("lake", "Look at the charts and numbers of Halden Water."), ("estuary", "Compare Wendmouth Narrows with Wendmouth Bar."),
        ("reef", "Compare Lantern Bank before the flood and after the flood."), ("open_sea", "Look at the charts and numbers of Meridian Deep."),
        ("stream", "Compare Ashgill Beck in the upper reach and at the ford."),
    ],
)  # fmt: skip
def test_parts_and_times_of_one_water_are_not_compared_as_two_places(name: str, compared: str) -> None:
    assert water_claims.data_shows(of_demo(name)).prompt.startswith(compared)


def test_before_and_after_a_flood_no_water_floats_on_the_other() -> None:
    """At one place 35 g/kg are followed by 31: that tells what the water could hold, but the two never meet."""
    found = claims(of_demo("reef"))
    assert "At the same temperature, the water could hold more oxygen after the flood than before the flood" == found["wat.salt-holds-oxygen"]
    assert "wat.salt-floats" not in found


def test_salt_not_warmth_explains_what_an_estuary_could_hold() -> None:
    """The narrows are warmer by a degree and could still hold more, for they are fresher: 8 against 28 g/kg."""
    found = claims(of_demo("estuary"))
    assert "The water could hold more oxygen at Wendmouth Narrows than at Wendmouth Bar" == found["wat.salt-holds-oxygen"]
    assert "At the same temperature, the water would be denser at Wendmouth Bar than at Wendmouth Narrows" == found["wat.salt-floats"]
    assert "Half of the light is gone at a smaller depth at Wendmouth Narrows than at Wendmouth Bar" == found["wat.extinction-clear"]


def test_no_two_statements_turn_on_one_idea() -> None:
    """Both waters of the estuary have a disk; of two statements on disks one would give the other away."""
    ideas = [claim.misconception for claim in water_claims._claims(*of_demo("estuary"))]
    assert len(set(ideas)) == len(ideas)
    assert "wat.secchi-light-gone" in ideas


def test_slower_ford_carries_more_water() -> None:
    assert "More water passes at the ford, though it runs more slowly there" == claims(of_demo("stream"))["wat.speed-is-discharge"]
    assert "wat.light-linear" not in claims(of_demo("stream")), "a brook of 0.35 m has no second metre"


def test_waters_that_are_alike_are_not_compared() -> None:
    like = "light: {extinction: 0.5}, dissolved_oxygen: 9, yearly_temperature: {low: 4, high: 20}"
    assert {"wat.light-linear"} == set(claims(small(like, like)))
    assert isinstance(water_claims.data_shows(small(like, like)), Rejected)


def test_one_water_has_too_few_statements() -> None:
    assert isinstance(water_claims.data_shows(small("light: {secchi_depth: 2}, dissolved_oxygen: 5")), Rejected)


@pytest.mark.parametrize("name", ["lake", "stream", "estuary", "open_sea", "reef"])
def test_options_are_told_with_their_numbers(name: str) -> None:
    item = water_claims.data_shows(of_demo(name))
    assert isinstance(item, SeveralChoice)
    assert all(any(character.isdigit() for character in option.feedback) for option in item.options)
    assert {option.misconception for option in item.options if not option.right} <= set(library().catalogue)
