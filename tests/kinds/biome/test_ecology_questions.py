"""Questions on limits, nutrients and climates: one plainly right answer, wrong ones from named ideas, or none at all."""

from __future__ import annotations

import pytest

from generator.kinds.biome.ecology_questions import nutrients
from generator.questions.question import Choice, Question, Rejected
from generator.science.biome_regions import biome_region
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


def with_practice(temp: object, precip: object, region: str = "boreal_forest", head: str = "") -> object:
    stations = ", ".join(
        (STATION.format(id="here", use="page", temp=COLD, precip=[48] * 12), STATION.format(id="there", use="practice", temp=temp, precip=precip))
    )
    return subject("biome", f"{head}region: {region}\nstations: [{stations}]\n")


@pytest.mark.parametrize(
    ("record", "limit"),
    [("hot_desert", "The precipitation"), ("boreal_forest", "The temperature"), ("tundra", "The temperature")],
)
def test_smaller_of_two_limits_is_right_and_the_larger_a_wrong_option(record: str, limit: str) -> None:
    question = made(demo(f"biome/{record}"))["limiting_factor"]
    assert right(question).startswith(limit)
    larger = {"The precipitation": "The temperature", "The temperature": "The precipitation"}[limit]
    assert by_idea(question)["bio.limit-larger"].startswith(larger)


def test_limits_too_close_to_tell_are_not_asked_for() -> None:
    """The rain forest's two limits, 2590 and 2580 g/m2/yr, differ by less than a rounding would hide."""
    assert "limiting_factor" not in made(demo("biome/tropical_rain_forest"))
    of = biome([20] * 12, [180] * 12, latitude="")
    assert "temperature and precipitation allow about the same production" == rejected(of)["limiting_factor"]


def test_facts_in_texts_are_put_in_and_those_of_other_records_reject_the_question() -> None:
    text = "soil: {{type: thin, nutrients_held_in: moss, why: 'it has {fact}'}}\n"
    assert "It has 7.08 °C" == right(made(biome(head=text.format(fact="{here.annual_mean_temp}")))["nutrients"])
    far = biome(head=text.format(fact="{biome/tundra:lantern_bluff.annual_mean_temp}"))
    assert Rejected("nutrients", "its texts name facts of other records") == nutrients(far, library().catalogue)


def test_reasons_of_the_record_stand_in_for_the_general_ones_and_the_feedback_goes_deeper() -> None:
    soil = "soil: {type: thin, nutrients_held_in: moss, why: it lasts, deeper: cold slows decay, wrong: [{text: it rots, misconception: nit.decay-stores, because: Not here.}, {text: it rains, misconception: nit.leach-adds}]}\n"
    question = made(biome(head=soil))["nutrients"]
    assert {"nit.decay-stores", "nit.leach-adds"} == set(by_idea(question))
    assert "Cold slows decay." == question.solution
    assert next(option for option in question.options if option.text == "It rots").feedback.startswith("Not here. ")


@pytest.mark.parametrize("record", BIOMES)
def test_place_of_the_nutrients_is_given_and_its_reason_asked_for(record: str) -> None:
    of = demo(record)
    question = made(of)["nutrients"]
    assert of.record.soil.nutrients_held_in in question.prompt
    assert of.record.soil.why.casefold() == right(question).casefold()
    assert 3 == len(by_idea(question))


@pytest.mark.parametrize("record", [name for name in BIOMES if "which_climate" in made(demo(name))])
def test_only_the_right_climate_lies_in_the_region_of_the_biome_and_in_its_usual_range(record: str) -> None:
    of = demo(record)
    points = {option.text: option.right for option in choice(made(of)["which_climate"]).options}
    for text, is_right in points.items():
        mean, total = (float(part.split()[0].replace("−", "-").replace("\u202f", "")) for part in text.split(" and "))
        assert is_right == (biome_region(mean, total) == of.record.region)
        for usual in of.record.usual_range if not is_right else ():
            low, high = usual.annual_mean_temp
            dry, wet = usual.annual_precip
            assert not (low <= mean <= high and dry <= total <= wet)
    assert (4, 2, 2) == (len(points), len({p.split(" and ")[0] for p in points}), len({p.split(" and ")[1] for p in points}))


def test_at_least_six_biomes_ask_for_their_climate() -> None:
    assert len([name for name in BIOMES if "which_climate" in made(demo(name))]) >= 6


def test_station_in_the_region_of_another_biome_is_not_asked_about() -> None:
    """A mean of 20 °C with 1200 mm lies in the savanna, not in boreal forest."""
    outside = with_practice([20] * 12, [100] * 12)
    assert "which_climate" not in set(made(outside)) - set(rejected(outside))
    assert "which_climate" in made(with_practice(COLD, [48] * 12))


def test_range_that_takes_in_the_whole_map_leaves_no_wrong_climate() -> None:
    everything = "usual_range: [{annual_mean_temp: [-60, 40], annual_precip: [0, 9000], source: RICKLEFS2008}]\n"
    of = with_practice(COLD, [48] * 12, head=everything)
    assert "which_climate" not in set(made(of)) - set(rejected(of))


def test_climates_of_a_station_kept_for_papers_are_never_shown() -> None:
    stations = ", ".join(
        STATION.format(id=name, use=use, temp=temp, precip=[48] * 12) for name, use, temp in (("here", "page", COLD), ("secret", "paper", COLD[::-1]))
    )
    of = subject("biome", f"region: boreal_forest\nstations: [{stations}]\n")
    assert not any("Secret" in repr(question) for question in made(of).values())
