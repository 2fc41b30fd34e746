"""Sums of written questions: what is accepted, what samples may name, and readings off a scale."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.quantities.fact import Fact
from generator.quantities.units import unit
from generator.written.calculation import Worked, work_out
from generator.written.materials import Materials
from generator.written.record import WrittenPart
from tests.kinds.small_records import library
from tests.written.small_question import CALCULATION, CARRYING, HEAD, READING, read, sound

MONTHS = """\
parts:
  - id: a
    command_word: calculate
    marks: 2
    needs: data
    prompt: Calculate the share.
    calculate:
      given: {rain: 'biome/temperate_grassland:harrow_plain.monthly_precip', year: 'biome/temperate_grassland:harrow_plain.annual_precip'}
      expression: %s
      unit: %s
    award: {setup: 1, answer: 1}
    samples: [{text: '{setup} = {answer}', earns: [setup, answer], comment: All.}, {text: '{tenth}', comment: Off.}, {text: '{ten_times}', comment: No.}]
"""


def worked(text: str) -> Worked:
    found = sound(text).guides[0].number
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("expression", "unit_label", "setup", "answer"),
    [
        ("sum_months(rain, 4, 6) / year", "percent", "(26 + 48 + 66) mm ÷ 327 mm", "42.8 %"),
        ("year / sum_months(rain, 12, 2)", "", "327 mm ÷ (12 + 12 + 10) mm", "9.62"),
        ("mean(rain)", "mm", "((12 + 10 + 16 + 26 + 48 + 66 + 42 + 34 + 26 + 20 + 15 + 12) mm ÷ 12)", "27.3 mm"),
        ("sum_months(rain, 4, 6) ** 2 / year", "mm", "((26 + 48 + 66) mm)² ÷ 327 mm", "59.9 mm"),
        ("max(rain) / count(rain)", "mm", "66 mm ÷ 12", "5.50 mm"),
    ],
)
def test_set_up_holds_the_numbers_of_a_series_with_their_unit(expression: str, unit_label: str, setup: str, answer: str) -> None:
    """Answers by hand from the twelve stated months."""
    found = worked(MONTHS % (expression, f"'{unit_label}'"))
    assert (setup, answer) == (found.setup, found.entry.answer)


def test_samples_name_set_up_answer_and_slips_so_that_nothing_is_typed_twice() -> None:
    text = CALCULATION.replace("text: All.", "text: '{setup} = {answer}'").replace("text: Part.", "text: '{slip.1.setup} = {slip.1}'").replace("comment: No.", "comment: 'Not {tenth} or {ten_times}.'")
    strong, slip, off = sound(text).guides[0].samples
    assert "4 kJ m⁻² yr⁻¹ ÷ 50 kJ m⁻² yr⁻¹ = 8 %" == strong.text
    assert "50 kJ m⁻² yr⁻¹ ÷ 4 kJ m⁻² yr⁻¹ = 1250 %" == slip.text
    assert "Not 0.8 % or 80 %." == off.comment


def test_samples_of_a_later_part_name_what_an_earlier_one_gave() -> None:
    later = CARRYING.replace("text: All.", "text: 'From {a.setup} = {a.answer} follows {answer}.'")
    assert "From 4 kJ m⁻² yr⁻¹ ÷ 50 kJ m⁻² yr⁻¹ = 8 % follows 92.0 %." == sound(f"{CALCULATION}\n{later}")["b"].samples[0].text


def test_texts_name_numbers_that_the_question_works_out_itself() -> None:
    head = f"numbers: {{june: {{given: {{rain: 'biome/temperate_grassland:harrow_plain.monthly_precip'}}, expression: 'sum_months(rain, 6, 6)', unit: mm, figures: 2}}}}\n{HEAD}"
    assert "66 mm in June." == sound(CALCULATION.replace("text: All.", "text: '{june} in June.'"), head)["a"].samples[0].text
    _, problems = read(CALCULATION, head.replace("sum_months(rain, 6, 6)", "rain / rain"))
    assert ["numbers.june.expression"] == [one.field for one in problems]


def test_a_later_part_works_with_the_unrounded_result_of_an_earlier_one() -> None:
    later = sound(f"{CALCULATION}\n{CARRYING}")["b"].worked
    assert later is not None
    assert ("1 − 8 %", "92.0 %", ("a",)) == (later.setup, later.entry.answer, sound(f"{CALCULATION}\n{CARRYING}")["b"].part.carries_on)


def test_a_reading_counts_within_half_the_distance_of_the_marks_with_its_unit() -> None:
    """310 m on a scale with a mark every 100 m."""
    (guide,) = sound(READING).guides
    found = worked(READING)
    assert [("answer", "Answer: 310 m")] == [(line.id, line.says) for line in guide.lines]
    assert [True, True, False, False] == [found.counts(number) for number in (260, 360, 259, 361)]
    assert ("A reading counts from 260 to 360 m: half the distance of the marks of the scale to either side.", "Without its unit, or with a wrong one, the answer earns no mark.") == guide.rules


def test_figures_are_marked_only_where_the_part_asks_for_them() -> None:
    assert not [rule for rule in sound(CALCULATION).guides[0].rules if "significant" in rule]
    asked = sound(CALCULATION.replace("unit: percent", "unit: percent\n      figures: 2"))["a"]
    assert asked.worked is not None and "8.0 %" == asked.worked.entry.answer
    assert [True] == [rule.startswith("2 significant figures are asked for. One more or one fewer is accepted") for rule in asked.rules if "figures are" in rule]


def test_the_rule_says_the_range_or_that_the_sum_comes_out_exactly() -> None:
    assert any("from 7.84 to 8.16 %" in rule for rule in sound(CALCULATION)["a"].rules)
    exact = sound(CALCULATION.replace("expression: part / whole", "expression: whole - part").replace("unit: percent", "unit: kJ/m2/yr"))["a"]
    assert any("The answer is 46 kJ m⁻² yr⁻¹: with the numbers as they are shown" in rule for rule in exact.rules)


amounts = st.floats(1, 9000).map(lambda number: Fact(id="x.y", name="X", value=number, unit=unit("mm")))


@given(amounts, amounts, st.sampled_from(["a - b", "a + b", "a / b", "a / (a + b)"]))
def test_the_range_holds_what_the_printed_numbers_give(a: Fact, b: Fact, expression: str) -> None:
    """Somebody who puts in the numbers as the set-up shows them is right, however much the difference of two large ones suffers."""
    part = WrittenPart.model_validate({
        "id": "p", "command_word": "calculate", "marks": 2, "needs": "data", "prompt": "Calculate.", "award": {"setup": 1, "answer": 1},
        "calculate": {"given": {"a": "k/r:a.x", "b": "k/r:b.x"}, "expression": expression, "unit": "mm" if "/" not in expression else ""},
    })  # fmt: skip
    printed_a, printed_b = (float(fact.shown_number.replace("\u202f", "")) for fact in (a, b))
    printed = {"a - b": printed_a - printed_b, "a + b": printed_a + printed_b, "a / b": printed_a / printed_b, "a / (a + b)": printed_a / (printed_a + printed_b)}
    assert part.calculate is not None
    found = work_out(part, part.calculate, Materials({"k/r:a.x": a, "k/r:b.x": b}, library().catalogue, lambda _: (), lambda *_: None), {})
    assert found.counts(printed[expression])
    assert found.counts(found.result.number)
