"""Water that moves. Sources: arithmetic on the records."""

from __future__ import annotations

import pytest

from generator.kinds.aquatic_biome import flow_questions as flow
from generator.questions.question import Rejected
from tests.kinds.aquatic_biome.asked import number, of_demo, small


def test_flushing_time_knows_seconds_and_hours() -> None:
    """42 000 000 / 55 s is 8.84 d."""
    answer, slips = number(flow.flushing_time(of_demo("estuary")[0]))
    assert ("8.84 d", {"wat.flushing-inverse", "wat.seconds"}) == (answer, set(slips.values()))


def test_flushing_of_an_estuary_counts_the_river_alone_and_says_so() -> None:
    estuary, lake = (flow.flushing_time(of_demo(name)[0]).prompt for name in ("estuary", "lake"))
    assert [True, False] == ["leave out the tides" in prompt for prompt in (estuary, lake)]


def test_feedback_on_a_time_in_days_does_not_speak_of_years() -> None:
    for slip in flow.flushing_time(of_demo("estuary")[0]).slips:
        assert "year" not in slip.feedback.casefold()


def test_cross_section_is_discharge_over_speed_with_its_unit() -> None:
    """0.55 / 0.8 = 0.6875 m²; 0.55 × 0.8 = 0.44; 0.8 / 0.55 = 1.45."""
    question = flow.cross_section(of_demo("stream")[0])
    answer, slips = number(question)
    assert ("0.688 m²", {"0.440 m²": "wat.discharge-times", "1.45 m²": "wat.discharge-inverse"}, True) == (answer, slips, question.asks_unit)


def test_kilometre_at_the_pace_of_the_stream() -> None:
    """1000 / 0.8 s = 20.8 min; 1250 s; 0.347 h; 1000 × 0.8 / 60 = 13.3."""
    answer, slips = number(flow.travel_time(of_demo("stream")[0]))
    assert ("20.8 min", {"1250 min": "wat.not-minutes", "0.347 min": "wat.not-minutes", "13.3 min": "wat.time-inverse"}) == (answer, slips)


def test_drift_of_a_day_in_kilometres() -> None:
    """0.15 × 86 400 m = 12.96 km; × 3600 s = 0.54 km; × 24 = 0.0036."""
    answer, slips = number(flow.drift(of_demo("open_sea")[0]))
    assert "13.0 km" == answer
    assert {"wat.metres", "wat.seconds-of-a-day"} == set(slips.values())


@pytest.mark.parametrize("fields", ["", "flow_speed: 0, discharge: 0", "discharge: 3", "flow_speed: 1, discharge: 3, salinity: 20"])
def test_water_that_stands_or_is_moved_by_tides_is_no_stream(fields: str) -> None:
    (water,) = small(fields)
    assert isinstance(flow.cross_section(water), Rejected) and isinstance(flow.travel_time(water), Rejected)


@pytest.mark.parametrize("fields", ["", "flow_speed: 0", "flow_speed: 1, discharge: 3"])
def test_nothing_drifts_without_a_current_or_where_a_river_tells_more(fields: str) -> None:
    assert isinstance(flow.drift(small(fields)[0]), Rejected)
