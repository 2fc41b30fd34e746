"""Work that carries a wrong result on is marked by the same expression, and not followed where that would be unfair or absurd."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.course.course_file import MarkingRules
from generator.written.carried_on import carried_on
from generator.written.guide import Guided
from tests.kinds.small_records import library
from tests.written.small_question import AROUND, CALCULATION, CARRYING, CHAIN, READING, read, sound

BAY = next(guided for guided in library().written if guided.name == "energy_in_a_bay")
"""Its part c divides the result of part b, 360 kJ, by that of part a, 2600 kJ."""


def two_parts() -> Guided:
    return sound(f"{CALCULATION}\n{CARRYING}")


def test_wrong_then_consistent_work_has_its_own_set_up_answer_and_range() -> None:
    """Part a added what is respired: 4300 + 1700 = 6000 kJ. Then 360 of 6000 is 6 %, by hand."""
    followed = carried_on(BAY, "c", {"a": 6000}).worked
    assert followed is not None
    assert ("360 kJ m⁻² yr⁻¹ ÷ 6000 kJ m⁻² yr⁻¹", "6 %") == (followed.setup, followed.entry.answer)
    assert (True, False) == (followed.counts(6.1), followed.counts(13.8))


def test_several_wrong_results_are_carried_on_together() -> None:
    """1190 of 6000 is 19.8 %, by hand."""
    followed = carried_on(BAY, "c", {"a": 6000, "b": 1190}).worked
    assert followed is not None and "19.8 %" == followed.entry.answer


def test_the_right_results_lead_to_the_key() -> None:
    followed, key = carried_on(BAY, "c", {"a": 2600, "b": 360}).worked, BAY["c"].worked
    assert followed is not None and key is not None and followed.entry.answer == key.entry.answer


@pytest.mark.parametrize(
    ("wrong", "because"),
    [
        ({"b": 5000}, "192 % cannot be: a part is no more than its whole."), ({"b": -30}, "−1.15 % cannot be: the answer has another sign."),
        ({"b": 100}, "With 100 kJ m⁻² yr⁻¹ the step is easier than it was."), ({"b": 0}, "With 0 kJ m⁻² yr⁻¹ the step is easier than it was."),
        ({"a": 1}, "With 1 kJ m⁻² yr⁻¹ the step is easier than it was."), ({"a": 0}, "With this number there is no answer."),
        ({"a": 360}, "With 360 kJ m⁻² yr⁻¹ twice the step is easier than it was."),
    ],
)
def test_what_makes_it_easier_or_absurd_is_not_followed(wrong: dict[str, float], because: str) -> None:
    found = carried_on(BAY, "c", wrong)
    assert (None, because) == (found.worked, found.because)


def test_a_school_may_follow_nothing_up() -> None:
    found, _ = read(f"{CALCULATION}\n{CARRYING}", around=replace(AROUND, rules=MarkingRules(follow_through=False)))
    assert found is not None
    assert (None, "The course does not follow wrong results up.") == (carried_on(found, "b", {"a": 20}).worked, carried_on(found, "b", {"a": 20}).because)


def test_results_between_follow_in_their_turn() -> None:
    """20 % leaves 80 %, and of 80 % 20 % are left again."""
    third = CARRYING.replace("id: b", "id: c").replace("part:a", "part:b")
    followed = carried_on(sound(f"{CALCULATION}\n{CARRYING}\n{third}"), "c", {"a": 20}).worked
    assert followed is not None
    assert ("1 − 80.0 %", "20.0 %") == (followed.setup, followed.entry.answer)


def test_nothing_left_where_something_must_be_is_absurd() -> None:
    """Twice 8 % less the whole is −84 %; with 50 % it is nothing."""
    found = carried_on(sound(f"{CALCULATION}\n{CARRYING.replace('expression: 1 - share', 'expression: 2 * share - 1')}"), "b", {"a": 50})
    assert (None, "0 % cannot be: the answer has another sign.") == (found.worked, found.because)


def test_a_wrong_reading_is_carried_on_too() -> None:
    """Who reads 250 m in place of 310 m has 0.25 km."""
    later = CARRYING.replace("{share: 'part:a'}", "{height: 'part:a'}").replace("expression: 1 - share", "expression: height").replace("unit: percent", "unit: km")
    text = f"{READING}{later}".replace("slips: [{expression: share, misconception: carb.pct-whole, how: giving the share itself}]", "slips: []")
    followed = carried_on(sound(text), "b", {"a": 250}).worked
    assert followed is not None
    assert ("250 m", "0.250 km") == (followed.setup, followed.entry.answer)


def test_a_part_without_such_a_number_is_refused() -> None:
    with pytest.raises(ValueError, match="part a carries on no number of z"):
        carried_on(two_parts(), "a", {"z": 1})
    with pytest.raises(ValueError, match="part a carries on no number"):
        carried_on(sound(CHAIN), "a", {"a": 1})


@given(st.floats(11, 89).map(lambda share: float(f"{share:.3g}")))
def test_the_guide_s_own_rule_marks_every_consistent_answer(share: float) -> None:
    followed = carried_on(QUESTION, "b", {"a": share})
    assert followed.worked is None or followed.worked.counts(100 - share)


QUESTION = two_parts()
