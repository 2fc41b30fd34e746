"""The pyramid's chart: bars, words and table agree with the facts."""

from __future__ import annotations

from tests.kinds.pyramid.test_facts import pyramid
from tests.kinds.small_records import demo, kind


def test_bars_of_the_example_are_its_productions() -> None:
    """Source: arithmetic on the record."""
    chart, *_ = kind("pyramid").charts(demo("pyramid/sill_lake"))
    assert [("Phytoplankton", 5800), ("Zooplankton", 580), ("Perch", 50), ("Pike", 4)] == [(x.label, x.value) for x in chart.levels]


def test_description_names_both_ends_and_each_step() -> None:
    chart, *_ = kind("pyramid").charts(demo("pyramid/sill_lake"))
    for words in ("5800 kJ m⁻² yr⁻¹ in phytoplankton", "4 kJ m⁻² yr⁻¹ in pike", "10 % to zooplankton", "8.62 % to perch", "0.0690 %"):
        assert words in chart.description


def test_reading_explains_magnified_bars_only_where_there_are_some() -> None:
    energy, biomass = kind("pyramid").charts(demo("pyramid/sill_lake"))
    assert (True, False) == tuple("hatched" in " ".join(chart.reading) for chart in (energy, biomass))


def test_roles_go_on_beyond_the_names_that_everyone_knows() -> None:
    (chart,) = kind("pyramid").charts(pyramid(*(f"production: {10 - number}" for number in range(7))))
    assert len({level.role for level in chart.levels}) == 7


def test_level_without_production_has_no_chart() -> None:
    """A bar of no width would say that nothing is known less plainly than no bar."""
    assert () == kind("pyramid").charts(pyramid("production: 500", "production: 0"))


def test_biomass_has_a_pyramid_of_its_own_where_every_level_states_it() -> None:
    """Source: the record; nobody states how many phytoplankton cells there are, so there is no pyramid of numbers."""
    energy, biomass = kind("pyramid").charts(demo("pyramid/sill_lake"))
    assert ("sill_lake.energy_pyramid", "sill_lake.biomass_pyramid") == (energy.name, biomass.name)
    assert [6, 3.1, 2.2, 0.35] == [level.value for level in biomass.levels]
    assert [""] * 4 == [level.passed_on_label for level in biomass.levels]


def test_a_pyramid_that_stands_on_its_head_says_so() -> None:
    levels = ("production: 500, biomass: 2", "production: 50, biomass: 5")
    _, biomass = kind("pyramid").charts(pyramid(*levels))
    assert "not at the bottom" in biomass.description
