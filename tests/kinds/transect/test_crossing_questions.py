"""Air over a crest, step by step. Sources: arithmetic on the records."""

from __future__ import annotations

from generator.kinds.transect import crossing_questions as crossing
from generator.questions.question import Choice, Made, Rejected
from tests.kinds.transect.asked import number, of_demo, order, small
from tests.kinds.transect.test_facts import RIDGE

AIR = "temperature: 20, cloud_base: 800, dry_lapse_rate: 10, moist_lapse_rate: 6"


def asked(air: str) -> dict[str, Made]:
    return {item.id: item for item in crossing.crossing(small(*RIDGE, air=air))}


def test_steps_know_the_wrong_lapse_rate() -> None:
    """From day to day 2 degC cooler than 20, and cloud 220 m higher than 800, to whole hundreds: 18 and 1000, 16 and 1200, 14 and 1500; 1700 m for the warming.

    18 - 10 x 1; 16 - 10 x 1.2 - 6 x 1.8; 14 - 10 x 1.5 - 6 x 1.5 + 10 x 3; (10 - 6) x 1.3. Slips: 18 - 6, 18 + 10, and 18 - 10 once, which is right here;
    16 - 10 x 3, 16 - 6 x 3, 16 - 12 - 6 x 3, 16 + 22.8; -10 + 6 x 3, 14, -10 - 30; 4 x 3, 10 x 1.3, 16 x 1.3.
    """
    found = {name: number(item) for name, item in asked(AIR).items() if name in ("base_temperature", "crest_temperature", "lee_temperature", "warming")}
    assert ["8.00 °C", "−6.80 °C", "20.0 °C", "5.20 K"] == [answer for answer, _ in found.values()]
    assert [{"12.0", "28.0"}, {"−14.0", "−2.00", "38.8"}, {"8.0", "14.0", "−40.0"}, {"12.0", "13.0", "20.8"}] == [set(slips) for _, slips in found.values()]


def test_steps_are_asked_of_a_day_whose_results_the_page_does_not_tell() -> None:
    """The page of the demo record tells 8.34, −1.77 and 17.5 °C for its own day."""
    line = of_demo("coastal_range")
    found = {item.id: item for item in crossing.crossing(line)}
    for name in ("base_temperature", "crest_temperature", "lee_temperature"):
        assert line.air(name).shown != found[name].answer
        assert line.air("temperature").shown not in found[name].prompt


def test_cloud_base_that_is_asked_for_is_told_in_no_prompt() -> None:
    found = {item.id: item for item in crossing.crossing(of_demo("coastal_range"))}
    assert "400 m" == found["cloud_base"].answer
    assert [] == [name for name, item in found.items() if "400" in item.prompt]


def test_cloud_base_counted_from_where_the_air_sets_out_is_known_as_a_slip() -> None:
    """3 K x 125 m = 375 m above the 25 m from which the air rises."""
    slips = {slip.shown: slip.misconception for slip in crossing.cloud_base(of_demo("coastal_range")).slips}
    assert "clim.cloud-from-sea" == slips["375 m"]


def test_stated_cloud_base_is_not_asked_for() -> None:
    assert "cloud_base" not in asked(AIR)


def test_warming_is_asked_of_the_other_day_too() -> None:
    """The page tells the warming of its own day, with cloud from 800 m."""
    prompt = asked(AIR)["warming"].prompt
    assert "1700 m" in prompt
    assert "800 m" not in prompt


def test_each_prompt_tells_the_heights_that_its_step_needs_and_no_other() -> None:
    prompts = {name: item.prompt for name, item in asked(AIR).items() if not isinstance(item, Rejected)}
    assert ["3000 m" in prompts[name] for name in ("base_temperature", "crest_temperature", "lee_temperature")] == [False, True, True]
    assert ["sinks to" in prompts[name] for name in ("base_temperature", "crest_temperature", "lee_temperature")] == [False, False, True]


def test_without_cloud_only_the_reason_is_asked_for() -> None:
    assert {"why_dry"} == set(asked("temperature: 20, cloud_base: 4000"))


def test_without_cloud_height_alone_decides_on_both_sides_of_the_crest() -> None:
    """Source: the record, 2280, 1480, 640, 310 and 25 m; Lichen Shelf, 1390 m, is too near to Larch Gate."""
    assert [
        "It crosses Kestrel Pass", "It sinks past Larch Gate", "It rises past Moss Stair", "It comes down to Harrow Plain", "It sets out from Drummel Sound",
    ] == order(crossing.without_cloud(of_demo("coastal_range")))  # fmt: skip


def test_line_with_few_heights_is_not_put_in_order() -> None:
    assert isinstance(asked(AIR)["without_cloud"], Rejected)


def test_wind_from_the_other_side_dries_the_slope_that_is_wettest_now() -> None:
    """Source: the record: 3420 mm fall at Lichen Shelf, and 245 mm at Sage Wells, the least behind the crest."""
    item = crossing.why_dry(of_demo("coastal_range"))
    assert isinstance(item, Choice) and "beyond Harrow Plain" in item.prompt
    (right,) = [option.text for option in item.options if option.right]
    assert right.startswith("Lichen Shelf: sinking air would get warmer")
    assert {"clim.wind-blocked": "Sage Wells"}.items() <= {option.misconception: option.text.partition(":")[0] for option in item.options}.items()
