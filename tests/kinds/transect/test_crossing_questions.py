"""Air over a crest, step by step. Sources: arithmetic on the records."""

from __future__ import annotations

from generator.kinds.transect import crossing_questions as crossing
from generator.questions.question import Made, Rejected
from tests.kinds.transect.asked import number, of_demo, order, small
from tests.kinds.transect.test_facts import RIDGE

AIR = "temperature: 20, cloud_base: 800, dry_lapse_rate: 10, moist_lapse_rate: 6"


def asked(air: str) -> dict[str, Made]:
    return {item.id: item for item in crossing.crossing(small(*RIDGE, air=air))}


def test_steps_know_the_wrong_lapse_rate() -> None:
    """20 - 10 x 0.8, then - 6 x 2.2, then + 10 x 3; dry all the way up -10, moist all the way 2, moist down 16.8."""
    found = {name: number(item) for name, item in asked(AIR).items() if name in ("base_temperature", "crest_temperature", "lee_temperature", "warming")}
    assert ["12.0 °C", "−1.20 °C", "28.8 °C", "8.80 K"] == [answer for answer, _ in found.values()]
    assert [{"15.2", "28.0", "10.0"}, {"−10.0", "2.00", "−6.00", "41.2"}, {"16.8", "20.0", "−31.2"}, {"12.0", "22.0", "35.2"}] == [set(slips) for _, slips in found.values()]


def test_cloud_base_that_is_asked_for_is_told_in_no_prompt() -> None:
    found = {item.id: item for item in crossing.crossing(of_demo("coastal_range"))}
    assert "400 m" == found["cloud_base"].answer
    assert [] == [name for name, item in found.items() if "400" in item.prompt]


def test_cloud_base_counted_from_where_the_air_sets_out_is_known_as_a_slip() -> None:
    """3 K x 125 m = 375 m above the 25 m from which the air rises."""
    slips = {slip.shown: slip.misconception for slip in crossing.cloud_base(of_demo("coastal_range")).slips}
    assert "clim.cloud-from-sea" == slips["375 m"]


def test_stated_cloud_base_is_told_and_not_asked_for() -> None:
    assert "cloud_base" not in asked(AIR)
    assert "800 m" in asked(AIR)["crest_temperature"].prompt


def test_each_prompt_tells_the_heights_that_its_step_needs_and_no_other() -> None:
    prompts = {name: item.prompt for name, item in asked(AIR).items()}
    assert ["3000 m" in prompts[name] for name in ("base_temperature", "crest_temperature", "lee_temperature")] == [False, True, True]
    assert ["sinks to" in prompts[name] for name in ("base_temperature", "crest_temperature", "lee_temperature")] == [False, False, True]


def test_without_cloud_only_the_reason_is_asked_for() -> None:
    assert {"why_dry"} == set(asked("temperature: 20, cloud_base: 4000"))


def test_air_is_coldest_at_the_crest_and_warmest_behind_it() -> None:
    assert ["It crosses the crest", "Cloud begins in it", "It sets out", "It has come down behind the crest"] == order(asked(AIR)["air_order"])


def test_stages_that_are_about_as_warm_are_not_ordered() -> None:
    """Cloud from 50 m on: it begins at 19.5 °C, half a kelvin below the start."""
    assert isinstance(asked(AIR.replace("800", "50"))["air_order"], Rejected)
