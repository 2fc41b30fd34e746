"""Questions that ask for an order of fluxes or of reservoirs: only orders that nothing can be said against."""

from __future__ import annotations

from itertools import permutations, pairwise

import pytest

from generator.questions.question import Ordering
from tests.kinds.small_records import demo, made, subject

CYCLES = ["global_carbon", "global_nitrogen", "phosphorus", "water", "wend_hollow_nitrogen"]
ROUND = """
units: {{stock: Gt C, flux: Gt C/yr}}
outside: [x, y]
reservoirs: [{{id: air, stock: {air}}}, {{id: plants, stock: {plants}}}, {{id: soil, stock: {soil}}}, {{id: rock, stock: {rock}}}]
fluxes:
  - {{id: growth, from: air, to: plants, rate: 4}}
  - {{id: litter, from: plants, to: soil, rate: 4}}
  - {{id: sinking, from: soil, to: rock, rate: 4}}
  - {{id: fire, from: rock, to: air, rate: 4}}
{more}
"""


def around(more: str = "", **stocks: object) -> str:
    return ROUND.format(**({"air": 4, "plants": 40, "soil": 400, "rock": 4000} | stocks), more=more)


def steps(question: object) -> list[str]:
    assert isinstance(question, Ordering)
    return [step.text for step in question.steps]


@pytest.mark.parametrize("record", CYCLES)
def test_way_can_be_walked_in_no_other_order(record: str) -> None:
    """Source: every order of the fluxes, tried one by one."""
    of = demo(f"cycle/{record}")
    asked = steps(made(of)["way"])
    fluxes = {flux.label: flux for flux in of.record.fluxes}
    start = fluxes[asked[0]].start

    def walked(order: tuple[str, ...]) -> bool:
        return fluxes[order[0]].start == start and all(fluxes[one].end == fluxes[other].start for one, other in pairwise(order))

    assert [tuple(asked)] == [order for order in permutations(asked) if walked(order)]


def test_way_round_is_told_as_one() -> None:
    question = made(subject("cycle", around()))["way"]
    assert len(steps(question)) == 4
    start = question.prompt.removeprefix("Follow the arrows from ").split(" back to ")[0]
    assert f"back to {start}," in question.prompt


def test_way_does_not_begin_where_two_loops_could_change_places() -> None:
    """From the air either loop can be walked first; from the sea or the soil there is one order only."""
    text = """
units: {stock: Gt C, flux: Gt C/yr}
reservoirs: [{id: air, stock: 4}, {id: sea, stock: 4}, {id: soil, stock: 4}]
fluxes:
  - {id: a, from: air, to: sea, rate: 1}
  - {id: b, from: sea, to: air, rate: 1}
  - {id: c, from: air, to: soil, rate: 1}
  - {id: d, from: soil, to: air, rate: 1}
"""
    assert steps(made(subject("cycle", text))["way"])[0] in ("B", "D")


def test_feedback_fits_where_two_fluxes_of_the_way_start_at_one_box() -> None:
    """From the air water comes back by way of the land; by way of the sea, where it began, the round is closed."""
    question = made(demo("cycle/water"))["way"]
    assert isinstance(question, Ordering)
    said = {step.text: step.leads_on for step in question.steps}
    assert "After “Land rain” the way comes back to this box, so that one comes first; “Ocean rain” leads on." in said["Ocean evaporation"]
    assert "“Evapotranspiration” ends at the atmosphere: look for the flux that starts there." == said["Evapotranspiration"]


def test_reservoirs_stand_in_order_of_stock_over_outflow() -> None:
    """Source: arithmetic on the record: 1, 10, 100 and 200 years, the last of 4000 by 20 a year, so that a small stock outlasts a large one."""
    assert ["Air", "Plants", "Rock", "Soil"] == steps(made(subject("cycle", around("  - {id: dust, from: rock, to: air, rate: 76}")))["stays"])


def test_order_that_the_sizes_of_the_stocks_tell_is_not_asked_for() -> None:
    """Source: arithmetic on the record: 1, 10, 100 and 1000 years of 4, 40, 400 and 4000; of the valley as well the times rise with the stocks."""
    assert "stays" not in made(subject("cycle", around()))
    assert "stays" not in made(demo("cycle/wend_hollow_nitrogen"))


@pytest.mark.parametrize("stocks", [{"soil": 50}, {"soil": "{low: 50, high: 5000}"}, {"soil": "unknown"}, {"air": 0}])
def test_times_that_are_not_plainly_apart_are_asked_for_in_another_way(stocks: dict[str, object]) -> None:
    """Source: arithmetic: 50 is less than 1.5 times 40; a range up to 5000 reaches beyond 4000; of nothing nothing lasts."""
    assert "stays" not in made(subject("cycle", around(**stocks)))


def test_order_takes_the_place_of_the_ratio_of_two_stays() -> None:
    assert {"stays", "times_as_long"} & set(made(demo("cycle/global_carbon"))) == {"stays"}
    assert {"stays", "times_as_long"} & set(made(demo("cycle/wend_hollow_nitrogen"))) == {"times_as_long"}


def test_stay_is_asked_for_as_a_ratio_where_no_order_is() -> None:
    """Source: arithmetic on the shown numbers, 300 000 ÷ 113 000 and 12 700 ÷ 486 000 years: 102 to 1."""
    water = made(demo("cycle/water"))
    assert "102" in water["times_as_long"].answer
