"""What a page says beside the numbers: schemes that disagree, formulas out of their depth, stations unlike their biome."""

from __future__ import annotations

import pytest

from generator.kinds.biome.schemes import SCHEMES, disagreements, remarks, says_dry, says_forest
from generator.quantities.fact import Fact
from generator.quantities.text import filled
from generator.science.biome_regions import NAMES
from generator.science.climate_class import CLASSES
from generator.science.life_zones import ZONES
from tests.kinds.biome.test_facts import biome
from tests.kinds.biome.test_water_facts import BARROW
from tests.kinds.small_records import demo


def facts_of(classes: dict[str, str], temp: float = 11.0) -> dict[str, Fact]:
    """A station with these classes, whatever climate would have them."""
    found = {f"here.{name}": Fact(id=f"here.{name}", name=name, value=value) for name, value in classes.items()}
    for name, value in (("monthly_mean_temp", temp), ("monthly_precip", 100.0)):
        found[f"here.{name}"] = Fact(id=f"here.{name}", name=name, value=(value,) * 12)
    return found


AGREED = {"climate_class": "Cfb", "aridity_class": "humid", "life_zone": "cool temperate moist forest", "region": NAMES["temperate_seasonal_forest"]}


def said(record: str, station: str) -> list[str]:
    subject = demo(record)
    return [filled(remark, subject.facts) for remark in remarks(subject, station)]


def test_schemes_that_agree_are_passed_over() -> None:
    assert () == disagreements(facts_of(AGREED), "here")


@pytest.mark.parametrize("scheme", SCHEMES)
def test_one_scheme_against_the_others_is_named_alone(scheme: str) -> None:
    """Each scheme in turn calls dry what the others call moist."""
    dry = {"climate_class": "BSk", "aridity_class": "semi-arid", "life_zone": "cool temperate steppe", "region": NAMES["temperate_grassland_desert"]}
    sentence = disagreements(facts_of(AGREED | {scheme: dry[scheme]}), "here")[0]
    yes, no = sentence.split(" No: ")
    assert sentence.startswith("Schemes disagree whether it is dry here. Yes: ")
    assert [scheme] == [name for name in SCHEMES if f"{{here.{name}}}" in yes]
    assert set(SCHEMES) - {scheme} == {name for name in SCHEMES if f"{{here.{name}}}" in no}


def test_cold_mountain_is_forest_by_its_mean_and_treeless_by_its_warmest_month() -> None:
    """High Saddle has about 4 °C all year round: enough warmth for a boreal life zone, no month of 10 °C."""
    forest = next(remark for remark in said("biome/alpine", "high_saddle") if "forest could grow" in remark)
    assert "Yes: the life zone, boreal rain forest; the temperature-rainfall map, Temperate seasonal forest." in forest
    assert "No: the climate class, ET (no month above 10 °C, too cold for trees)." in forest


def test_older_limit_is_told_where_it_would_change_the_class() -> None:
    told = said("biome/temperate_deciduous_forest", "linden_ford")
    assert any("By them the climate class here is Cfa, not Dfa." in remark for remark in told)
    assert not any("Older maps" in remark for remark in said("biome/boreal_forest", "spruce_halt"))


def test_formula_that_fails_in_the_cold_is_told_with_its_number() -> None:
    subject = biome(BARROW, latitude="latitude: 71.3")
    told = [filled(remark, subject.facts) for remark in remarks(subject, "here")]
    assert any(f"{subject.facts['here.potential_evapotranspiration'].shown} is far too much" in remark for remark in told)
    assert any("The water balance does not follow snow" in remark for remark in told)


def test_mild_station_needs_no_caution() -> None:
    subject = biome([12] * 12, [80] * 12)
    assert [] == [remark for remark in remarks(subject, "here") if "snow" in remark or "too much" in remark]


def test_without_latitude_nothing_is_said_of_what_is_not_known() -> None:
    subject = biome(BARROW, latitude="")
    assert [] == [remark for remark in remarks(subject, "here") if "snow" in remark or "too much" in remark]


def test_station_unlike_its_biome_is_told_on_the_page() -> None:
    subject = biome([12] * 12, [80] * 12, head="usual_class: [{classes: [BW, ET], source: RICKLEFS2008}]\n")
    assert (
        "The works that this page cites name other climate classes for this biome (BW or ET) than "
        "Cfb (mild winters, warm summers, no dry season)."
    ) in [filled(remark, subject.facts) for remark in remarks(subject, "here")]


def test_every_class_of_every_scheme_can_be_asked() -> None:
    values = {
        "climate_class": CLASSES, "region": [*NAMES.values(), "no region"],
        "aridity_class": ["hyper-arid", "arid", "semi-arid", "dry sub-humid", "humid", "cold", "None"],
        "life_zone": [f"{belt} {zone}" for belt, zones in ZONES.items() for _, zone in zones],
    }  # fmt: skip
    asked = {(scheme, value): (says_dry(scheme, value), says_forest(scheme, value)) for scheme in SCHEMES for value in values[scheme]}
    silent = {(scheme, value) for (scheme, value), answers in asked.items() if answers == (None, None)}
    assert {
        ("aridity_class", "cold"), ("aridity_class", "None"), ("region", "no region"),
        ("region", NAMES["woodland_shrubland"]), ("region", NAMES["tropical_seasonal_forest_savanna"]),
    } == silent  # fmt: skip


@pytest.mark.parametrize(
    ("scheme", "value", "dry", "forest"),
    [
        ("climate_class", "BSk", True, False), ("climate_class", "ET", False, False), ("climate_class", "Aw", False, None),
        ("climate_class", "Dfc", False, True), ("aridity_class", "dry sub-humid", True, None), ("aridity_class", "humid", False, None),
        ("life_zone", "polar desert", None, False), ("life_zone", "tropical very dry forest", True, True),
        ("life_zone", "subtropical thorn woodland", True, None), ("life_zone", "subpolar rain tundra", False, False),
        ("region", NAMES["subtropical_desert"], True, False), ("region", NAMES["tundra"], None, False),
        ("region", NAMES["boreal_forest"], False, True),
    ],
)  # fmt: skip
def test_class_says_what_it_says_of_drought_and_forest(scheme: str, value: str, dry: bool | None, forest: bool | None) -> None:
    assert (dry, forest) == (says_dry(scheme, value), says_forest(scheme, value))
