"""What is not fair in questions that authors write is told at its place."""

from __future__ import annotations

import pytest

from generator.diagnostics import Severity
from generator.quantities.amount import Amount
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed, stated
from generator.quantities.units import unit
from generator.questions.authored_faults import FORMS, faults
from generator.records.asked import AskedQuestions
from generator.records.checking import check
from generator.records.located import located

STOCK = stated("lake.stock", "Stock", Amount(value=40.0, written="40"), unit("t N"))
FLOW = stated("lake.outflow", "Outflow", Amount(value=8.0, written="8"), unit("t N/yr"))
TURNOVER = computed("lake.turnover_time", "Turnover time", Expression("stock / flow"), {"stock": STOCK, "flow": FLOW}, unit("yr"))
UNKNOWN = Fact(id="lake.depth", name="Depth", value=None, unit=unit("m"), undefined_because="not known")
YEAR = Fact(id="lake.rain", name="Rain", value=tuple(map(float, range(12))), unit=unit("mm"))
FACTS = {fact.id: fact for fact in (STOCK, FLOW, TURNOVER, UNKNOWN, YEAR)} | {"cycle/far:sea.stock": STOCK}
CHOICE = "{id: q, ask: 'Why {lake.stock}?', needs: knowledge, answer: Right, because: So., wrong: [%s]}"
TWO_WRONG = "{text: Wrong, misconception: t.slip}, {text: Worse, misconception: t.slip, because: Not this.}"
NUMBER = "{id: q, ask: How much?, needs: both, because: So., number: {%s}, mistakes: [%s]}"
SLIP = "{%s, misconception: t.slip, how: slipping}"


def read(*texts: str) -> AskedQuestions:
    found, problems = check(located("".join(f"- {text}\n" for text in texts).encode(), "asked.yaml"), AskedQuestions)
    assert () == problems
    return found


def told(*texts: str, taken: tuple[str, ...] = ()) -> list[tuple[object, str, str]]:
    return [(one.path, one.expected, one.found) for one in faults(read(*texts), FACTS, taken)]


@pytest.mark.parametrize(
    ("fields", "found"), [("", "none of them"), (", answer: A, number: {value: 1}", "`answer` and `number`")],
)  # fmt: skip
def test_question_without_a_form_or_with_two_is_told(fields: str, found: str) -> None:
    expected = (("questions", 0), "one of `answer`, `answers`, `number`, `steps` or `pairs`", found)
    assert [expected] == told(f"{{id: q, ask: What?, needs: data, because: So.{fields}}}")


def test_fields_of_the_other_sort_are_told() -> None:
    choice = f"{{id: q, ask: What?, needs: data, because: So., answer: A, hint: H, wrong: [{TWO_WRONG}], mistakes: [{SLIP % 'value: 1'}]}}"
    number = f"{{id: r, ask: What?, needs: data, because: So., number: {{value: 1}}, wrong: [{TWO_WRONG}]}}"
    assert [("questions", 0, "mistakes"), ("questions", 0, "hint"), ("questions", 1, "wrong")] == [path for path, _, _ in told(choice, number)]


@pytest.mark.parametrize(("wrong", "path", "found"), [("", (), "none"), ("{text: B, misconception: t.slip}", ("wrong",), "one")])
def test_fewer_than_two_wrong_options_are_told(wrong: str, path: tuple[str, ...], found: str) -> None:
    assert [(("questions", 0, *path), "two wrong options or more", found)] == told(CHOICE % wrong)


def test_options_that_say_the_same_are_told_each_at_its_place() -> None:
    wrong = "{text: right., misconception: t.slip}, {text: '40  t N', misconception: t.slip}, {text: '{lake.stock}', misconception: t.slip}"
    expected = "an option that says something else"
    assert [
        (("questions", 0, "wrong", 0, "text"), expected, '"right." again'), (("questions", 0, "wrong", 2, "text"), expected, '"{lake.stock}" again'),
    ] == told(CHOICE % wrong)  # fmt: skip


@pytest.mark.parametrize("text", ["All of the above", "none of these", "Both of them"])
def test_option_that_points_at_others_is_told(text: str) -> None:
    """Source: item-writing rules of Haladyna, Downing and Rodriguez 2002."""
    wrong = f"{{text: Wrong, misconception: t.slip}}, {{text: {text}, misconception: t.slip}}"
    assert [("questions", 0, "wrong", 1, "text")] == [path for path, _, _ in told(CHOICE % wrong)]


@pytest.mark.parametrize(("number", "found"), [("", "neither"), ("value: 1, fact: lake.stock", "both")])
def test_number_is_either_typed_or_a_fact(number: str, found: str) -> None:
    assert [(("questions", 0, "number"), "either `value` or `fact`", found)] == told(NUMBER % (number, ""))


def test_mistake_is_either_typed_or_a_fact() -> None:
    text = "{id: q, ask: What?, needs: data, because: So., number: {value: 1}, mistakes: [{misconception: t.slip, how: slipping}]}"
    assert [(("questions", 0, "mistakes", 0), "either `value` or `fact`", "neither")] == told(text)


def test_unit_beside_a_fact_is_told() -> None:
    assert [(("questions", 0, "number", "unit"), "no unit beside a fact", '"t"')] == told(NUMBER % ("fact: lake.stock, unit: t", ""))


def test_unknown_unit_is_told() -> None:
    assert [(("questions", 0, "number", "unit"), "a unit", '"ton"')] == told(NUMBER % ("value: 2, unit: ton", SLIP % "value: 2"))


@pytest.mark.parametrize(("fact", "found"), [("lake.depth", "lake.depth: not known"), ("lake.rain", "lake.rain: a series")])
def test_fact_that_is_not_one_number_is_told_as_answer_and_as_mistake(fact: str, found: str) -> None:
    places = [path for path, _, what in told(NUMBER % (f"fact: {fact}", SLIP % f"fact: {fact}")) if what == found]
    assert [("questions", 0, "number", "fact"), ("questions", 0, "mistakes", 0, "fact")] == places


def test_fact_that_is_not_there_is_left_to_the_check_of_names() -> None:
    assert [] == told(NUMBER % ("fact: lake.dept", SLIP % "fact: cycle/far:none"))


def test_mistakes_that_cannot_be_told_apart_are_told() -> None:
    mistakes = ", ".join(SLIP % f"value: {value}" for value in ("10.1", "20", "20.2", "30"))
    assert [
        (("questions", 0, "mistakes", 0), "a number that cannot be taken for the right one, 10.0", "10.1"),
        (("questions", 0, "mistakes", 2), "a number that cannot be taken for another mistake, 20.0", "20.2"),
    ] == told(NUMBER % ("value: 10", mistakes))


def test_id_of_a_generated_question_is_told() -> None:
    expected = "an id that no question made from the numbers of the record has"
    assert [(("questions", 0, "id"), expected, '"q"')] == told(CHOICE % TWO_WRONG, taken=("q", "r"))


def test_ids_that_stand_twice_are_told() -> None:
    text = CHOICE % TWO_WRONG
    _, problems = check(located(f"- {text}\n- {text}\n".encode(), "asked.yaml"), AskedQuestions)
    assert ['"q" again (first at [0])'] == [one.found for one in problems]


@pytest.mark.parametrize(("beside", "form"), [("others: [A]", "steps: [A, B, C, D]"), ("labels: [A]", "number: {value: 1}")])
def test_field_of_another_form_says_where_it_belongs(beside: str, form: str) -> None:
    (found,) = faults(read(f"{{id: q, ask: What?, needs: data, because: So., {form}, {beside}}}"), FACTS)
    field = beside.partition(":")[0]
    owners = [owner for owner, fields in FORMS.items() if field in fields]
    assert ("questions", 0, field) == found.path and all(f"`{owner}:`" in found.expected for owner in owners)


def test_hint_of_a_choice_is_told() -> None:
    assert [("questions", 0, "hint")] == [path for path, _, _ in told(CHOICE.replace("because", "hint: H, because") % TWO_WRONG)]


ASKED = "{id: q, ask: What?, needs: data, because: So., %s}"


@pytest.mark.parametrize("number", [3, 8])
def test_order_of_too_few_or_too_many_steps_is_told(number: int) -> None:
    steps = ", ".join(f"Step {n}." for n in range(number))
    assert [(("questions", 0, "steps"), "4 to 7 steps", str(number))] == told(ASKED % f"steps: [{steps}]")


def test_steps_partners_and_labels_that_say_the_same_are_told() -> None:
    pair = "{text: %s, partner: %s, because: So.}"
    pairs = ", ".join(pair % one for one in (("a", "A"), ("A.", "B"), ("c", "C")))
    assert [("questions", 0, "steps", 3)] == [path for path, _, _ in told(ASKED % "steps: [One., Two., Three., one]")]
    places = [path for path, _, _ in told(ASKED % f"pairs: [{pairs}], others: [b]")]
    assert [("questions", 0, "pairs", 1, "text"), ("questions", 0, "others", 0)] == places
    assert [("questions", 0, "labels", 2)] == [path for path, _, _ in told(ASKED % "answer: A, labels: [A, B, b]")]


def test_fewer_than_three_pairs_are_told() -> None:
    pairs = ", ".join(f"{{text: t{n}, partner: p{n}, because: So.}}" for n in range(2))
    assert [(("questions", 0, "pairs"), "3 pairs or more", "2")] == told(ASKED % f"pairs: [{pairs}]")


def test_answer_and_slips_must_be_labels() -> None:
    text = ASKED % "answer: May, labels: [April, June], wrong: [{text: July, misconception: t.slip}]"
    assert [(("questions", 0, "answer"), '"May"'), (("questions", 0, "wrong", 0, "text"), '"July"')] == [(path, found) for path, _, found in told(text)]


def test_labels_that_are_all_right_are_told() -> None:
    assert [("questions", 0, "labels")] == [path for path, _, _ in told(ASKED % "answers: [{text: A}, {text: B}], labels: [A, B]")]


def test_several_with_one_right_option_is_told() -> None:
    assert [(("questions", 0, "answers"), "two right options or more", "one")] == told(ASKED % f"answers: [{{text: A}}], wrong: [{TWO_WRONG}]")


@pytest.mark.parametrize("field", ["steps: [Water slows, because stems stand there., It drops mud., Mud stays.]", "answer: A, hints: [Bacteria need oxygen, but find none in mud.]"])
def test_text_that_a_comma_has_cut_in_two_is_a_warning(field: str) -> None:
    found = [one for one in faults(read(ASKED % field), FACTS) if one.rule == "torn_text"]
    assert [Severity.WARNING] == [one.severity for one in found]
    assert "put the text in quotes" in found[0].mend
