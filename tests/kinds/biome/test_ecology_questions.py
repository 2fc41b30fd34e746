"""Questions on limits and other climates: one plainly right answer, wrong ones from named ideas, or none at all."""

from __future__ import annotations

import re

import pytest

from generator.questions.question import Choice, Question
from generator.science.biome_regions import NAMES, biome_region
from tests.kinds.biome.test_facts import biome
from tests.kinds.small_records import demo, library, made, rejected, subject

COLD = [-15, -13, -7, 1.5, 8.5, 14, 16.5, 14.5, 8.8, 2.5, -5.5, -12]
STATION = "{{id: {id}, use: {use}, monthly_mean_temp: {temp}, monthly_precip: {precip}}}"
BIOMES = sorted(name for name in library().subjects if name.startswith("biome/"))


def choice(question: object) -> Choice:
    assert isinstance(question, Choice)
    return question


def right(question: Question) -> str:
    return next(option.text for option in choice(question).options if option.right)


def by_idea(question: Question) -> dict[str, str]:
    return {option.misconception: option.text for option in choice(question).options if not option.right}


def at(temp: object, precip: object) -> object:
    return subject("biome", f"region: boreal_forest\nstations: [{STATION.format(id='here', use='page', temp=temp, precip=precip)}]\n")


@pytest.mark.parametrize(
    ("record", "limit", "change"),
    [("hot_desert", "precipitation", "gets warmer"), ("boreal_forest", "temperature", "more precipitation falls"), ("tundra", "temperature", "more precipitation falls")],
)
def test_more_of_what_does_not_limit_leaves_production_as_it_is(record: str, limit: str, change: str) -> None:
    question = made(demo(f"biome/{record}"))["limiting_factor"]
    assert f"As much as before, for {limit} sets the limit" == right(question)
    larger = {"precipitation": "temperature", "temperature": "precipitation"}[limit]
    assert (f"More, for {larger} allows more", True) == (by_idea(question)["bio.limit-larger"], change in question.prompt)


def test_limits_too_close_to_tell_are_not_asked_for() -> None:
    """The rain forest's two limits, 2590 and 2580 g/m2/yr, differ by less than a rounding would hide."""
    assert "limiting_factor" not in made(demo("biome/tropical_rain_forest"))
    of = biome([20] * 12, [180] * 12, latitude="")
    assert "temperature and precipitation allow about the same production" == rejected(of)["limiting_factor"]


ASKED = [name for name in BIOMES if "which_climate" in made(demo(name))]


def climate(prompt: str) -> tuple[float, float]:
    """Mean and precipitation of the other place, read out of the prompt."""
    told = prompt.replace("−", "-").replace("\u202f", "")
    degrees = [float(number) for number in re.findall(r"(-?[\d.]+)\s°C", told)]
    (rain,) = re.findall(r"([\d.]+)\smm", told)[:1]
    return degrees[0], float(rain)


@pytest.mark.parametrize("record", ASKED)
def test_other_climate_lies_in_the_region_that_is_right_and_well_off_its_borders(record: str) -> None:
    """One degree warmer or colder, a tenth wetter or drier, it lies there still; the region of the page's own biome is a wrong option."""
    of = demo(record)
    question = choice(made(of)["which_climate"])
    mean, total = climate(question.prompt)
    near = {biome_region(mean + step, total * times) for step in (-1, 0, 1) for times in (0.9, 1, 1.1)}
    assert [right(question)] == [NAMES[region] for region in near]
    assert NAMES[of.record.region] in by_idea(question).values()
    assert 3 == len(by_idea(question))


@pytest.mark.parametrize("record", ASKED)
def test_wrong_regions_are_told_where_the_map_does_show_them(record: str) -> None:
    """The middle of what the feedback says lies in the region of the option."""
    question = choice(made(demo(record))["which_climate"])
    mean, total = climate(question.prompt)
    for option in question.options:
        if not option.right:
            low, high, unit = re.search(r"about (-?[\d.]+) to (-?[\d.]+)\s(mm|°C)", option.feedback.replace("−", "-").replace("\u202f", "")).groups()
            middle = (float(low) + float(high)) / 2
            assert option.text == NAMES[biome_region(mean, middle) if unit == "mm" else biome_region(middle, total)]


def test_where_rain_leads_to_no_other_region_the_warmth_does() -> None:
    """At −10 °C the map shows tundra or nothing."""
    question = choice(made(demo("biome/tundra"))["which_climate"])
    assert "gets as much precipitation in a year as Lantern Bluff, 230 mm" in question.prompt
    assert "Tundra" == by_idea(question)["clim.rain-alone"]


def test_at_least_six_biomes_ask_for_another_climate() -> None:
    assert len(ASKED) >= 6


def test_station_in_the_region_of_another_biome_is_not_asked_about() -> None:
    """A mean of 20 °C with 1200 mm lies in the savanna, not in boreal forest."""
    outside = at([20] * 12, [100] * 12)
    assert "the map does not show Here in the region of its biome" == rejected(outside)["which_climate"]
    assert "which_climate" not in rejected(at(COLD, [48] * 12))


def test_climates_of_a_station_kept_for_papers_are_never_shown() -> None:
    stations = ", ".join(
        STATION.format(id=name, use=use, temp=temp, precip=[48] * 12) for name, use, temp in (("here", "page", COLD), ("secret", "paper", COLD[::-1]))
    )
    of = subject("biome", f"region: boreal_forest\nstations: [{stations}]\n")
    assert not any("Secret" in repr(question) for question in made(of).values())
