"""Orders of a year's turning points and of its water: only what stands out, and what cannot be told without the diagram."""

from __future__ import annotations

import pytest

from generator.kinds.biome import climate_orders as orders
from generator.questions.question import Rejected
from tests.kinds.biome.asked import of_demo, order, small


def test_turning_points_follow_the_diagram() -> None:
    """Mediterranean: coldest in January, 4 K from May to June, longest days in June, dry from May to September, 95 mm in December."""
    assert [
        "It is coldest", "The dry months begin, by the rule of the diagram", "The days are longest", "The first humid month after the dry ones", "The most precipitation falls",
    ] == order(orders.year_order(of_demo("mediterranean_shrubland")))  # fmt: skip


def test_turning_points_of_the_south_begin_in_july() -> None:
    """Amber Head is coldest in July, dry from October to March and wettest in June, and cools most, by 3.3 K, from March to April."""
    found = order(orders.year_order(of_demo("mediterranean_shrubland", 1)))
    dated = {
        "It is coldest": 7, "The dry months begin, by the rule of the diagram": 10, "The days are longest": 12, "The least precipitation falls": 13,
        "The steepest fall of temperature begins": 15, "The first humid month after the dry ones": 16, "The most precipitation falls": 18,
    }  # fmt: skip
    assert found == sorted(found, key=lambda text: dated[text])


def test_no_two_turning_points_share_a_month() -> None:
    """Deciduous forest: July is warmest and wettest, which is one turning point."""
    asked = of_demo("temperate_deciduous_forest")
    at = {text: month for text, month in (*orders.telling(asked), *orders.seasonal(asked)) if month is not None}
    assert 7 == at["It is warmest, and the most precipitation falls"]
    assert not {"It is warmest", "The most precipitation falls"} & set(at)
    assert len(order(orders.year_order(asked))) == len({at[text] for text in order(orders.year_order(asked))})


TELLING = ("precipitation falls", "dry months", "after the dry ones", "of temperature begins")
"""In the texts of turning points that no knowledge of the seasons dates."""


@pytest.mark.parametrize("name", ["tundra", "boreal_forest", "savanna", "temperate_rain_forest"])
def test_order_of_the_seasons_alone_does_not_tell_the_order_of_the_year(name: str) -> None:
    found = order(orders.year_order(of_demo(name)))
    assert 2 <= sum(any(words in text for words in TELLING) and "warmest" not in text for text in found)


def test_year_whose_rain_dates_nothing_is_not_put_in_order() -> None:
    """Two months share the least; the wettest is the warmest; the steps of the temperature are alike."""
    temp = [-9, -6, -3, 0, 3, 6, 9, 6, 3, 0, -3, -6]
    rain = [40, 40, 50, 55, 60, 65, 70, 65, 60, 55, 50, 45]
    assert "the order of its year can be told without the diagram" == getattr(orders.year_order(small(temp, rain)), "because", None)


@pytest.mark.parametrize("name", ["alpine", "tropical_rain_forest"])
def test_steady_year_has_too_few_turning_points(name: str) -> None:
    assert isinstance(orders.year_order(of_demo(name)), Rejected)


def test_amounts_of_water_stand_in_order_and_plainly_apart() -> None:
    """Savanna: 1547 mm could evaporate, 920 fall, 752 evaporate, 168 run off; 795 mm lacking is too near to 920."""
    assert ["What could evaporate", "Precipitation", "What does evaporate", "What runs off or seeps away"] == order(orders.water_order(of_demo("savanna")))


@pytest.mark.parametrize("name", ["tundra", "hot_desert", "alpine"])
def test_amounts_that_are_not_apart_or_not_known_are_not_ordered(name: str) -> None:
    assert isinstance(orders.water_order(of_demo(name)), Rejected)
