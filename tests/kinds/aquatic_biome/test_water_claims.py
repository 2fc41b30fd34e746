"""Statements on waters hold by the numbers of the record, and say nothing where two numbers are alike."""

from __future__ import annotations

import pytest

from generator.kinds.aquatic_biome import water_claims
from generator.questions.question import Rejected, SeveralChoice
from tests.kinds.aquatic_biome.asked import of_demo, small
from tests.kinds.small_records import library


def claims(stations: object) -> dict[str, str]:
    return {claim.misconception: claim.holds for claim in water_claims._claims(stations)}


def test_lake_holds_less_below_though_it_could_hold_more() -> None:
    """9.4 of 9.08 mg/L above, 2.1 of 12.3 below; 2 to 21 °C and 4 to 8 °C; sampled at 22 m, light to 9.21 m."""
    assert {
        "wat.warm-holds-more": "The water at Halden Water (deep layer) could hold more oxygen than that at Halden Water",
        "wat.always-full": "Measured against what the water could hold, there is less oxygen at Halden Water (deep layer) than at Halden Water",
        "wat.depth-swings": "Over the year the temperature changes less at Halden Water (deep layer) than at Halden Water",
        "wat.water-clear": "Halden Water (deep layer) lies below the light that plants need",
        "wat.secchi-light-gone": "At Halden Water 1 % of the light is left deeper than the eye can see a white disk",
    } == claims(of_demo("lake"))


def test_salt_not_warmth_explains_what_an_estuary_could_hold() -> None:
    """The narrows are warmer by a degree and could still hold more, for they are fresher: 8 against 28 g/kg."""
    found = claims(of_demo("estuary"))
    assert "The water at Wendmouth Narrows could hold more oxygen than that at Wendmouth Bar" == found["wat.salt-holds-oxygen"]
    assert "If both were equally warm, the water of Wendmouth Bar would sink below that of Wendmouth Narrows" == found["wat.salt-floats"]
    assert "A metre of water takes more of the light at Wendmouth Narrows than at Wendmouth Bar" == found["wat.extinction-clear"]


def test_no_two_statements_turn_on_one_idea() -> None:
    """Both waters of the estuary have a disk; of two statements on disks one would give the other away."""
    ideas = [claim.misconception for claim in water_claims._claims(of_demo("estuary"))]
    assert len(set(ideas)) == len(ideas)
    assert "wat.secchi-light-gone" in ideas


def test_slower_ford_carries_more_water() -> None:
    assert "More water passes Ashgill Beck (the ford), though it runs more slowly there" == claims(of_demo("stream"))["wat.speed-is-discharge"]
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
