"""How a station is spoken of, and what is known of it."""

from __future__ import annotations

import pytest

from tests.kinds.aquatic_biome.asked import of_demo, small


def test_what_stands_behind_a_comma_is_put_in_brackets() -> None:
    assert ["Halden Water", "Halden Water (deep layer)"] == [water.place for water in of_demo("lake")]


@pytest.mark.parametrize(
    ("name", "water"),
    [
        ("lake", "in the deep layer of Halden Water"), ("stream", "at the ford of Ashgill Beck"), ("reef", "of Lantern Bank after the flood"),
        ("open_sea", "of Meridian Deep at 800 m"), ("estuary", "of Wendmouth Bar"),
    ],
)  # fmt: skip
def test_water_of_a_part_is_told_as_a_sentence_goes_on(name: str, water: str) -> None:
    assert water == of_demo(name)[1].water


@pytest.mark.parametrize(("oxygen", "short", "above"), [(8.0, True, False), (9.08, False, False), (10.2, False, True)])
def test_oxygen_is_clearly_short_or_above_from_ten_percent_on(oxygen: float, short: bool, above: bool) -> None:
    """At 20 °C fresh water holds 9.08 mg/L."""
    (water,) = small(f"dissolved_oxygen: {oxygen}")
    assert (short, above) == (water.is_short_of_oxygen, water.is_above_saturation)


def test_nothing_is_known_that_is_not_stated() -> None:
    (water,) = small("")
    assert not water.has("photic_depth") and not water.has("temperature", "dissolved_oxygen") and not water.is_lit_to_the_bottom
