"""What is said where a name is not known."""

from __future__ import annotations

from generator.diagnostics import few_of

RECORDS = [f"biome/{name}" for name in ("alpine", "boreal_forest", "hot_desert", "savanna", "temperate_rain_forest", "tropical_rain_forest", "tundra")]


def test_a_few_names_are_all_listed() -> None:
    assert "known records are biome/alpine, biome/boreal_forest and biome/hot_desert" == few_of("zzz", RECORDS[:3], "records")


def test_of_many_names_only_the_nearest_few_are_listed_and_all_counted() -> None:
    expected = "there are 7 records, the nearest of them biome/boreal_forest, biome/tropical_rain_forest and biome/temperate_rain_forest"
    assert expected == few_of("rain_forests", RECORDS, "records")


def test_where_there_is_nothing_this_is_said() -> None:
    assert "there are no topics" == few_of("x", [], "topics")
