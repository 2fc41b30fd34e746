"""Questions that authors write: each comes out as it was meant, and what is not fair is told at its place."""

from __future__ import annotations

import pytest

from generator.quantities.amount import Amount
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed, stated
from generator.quantities.units import unit
from generator.questions.authored import HINT, Authored, faults
from generator.questions.misconception import Catalogue, Misconception
from generator.questions.question import Choice, Needs, NumberEntry
from generator.records.asked import AskedQuestions
from generator.records.checking import check
from generator.records.located import located

CATALOGUE = Catalogue({"t.slip": Misconception(id="t.slip", idea="An idea.", correction="The correction.")})
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


def made(text: str) -> Choice | NumberEntry:
    asked = read(text)
    assert [] == list(faults(asked, FACTS))
    (question,) = Authored(FACTS, CATALOGUE, "concept/small").questions(asked)
    return question


def told(*texts: str, taken: tuple[str, ...] = ()) -> list[tuple[object, str, str]]:
    return [(one.path, one.expected, one.found) for one in faults(read(*texts), FACTS, taken)]


def test_choice_has_its_options_with_feedback_and_its_facts_in_words() -> None:
    question = made(CHOICE % TWO_WRONG)
    assert isinstance(question, Choice)
    assert ("Why 40 t N?", Needs.KNOWLEDGE, "So.") == (question.prompt, question.needs, question.solution)
    assert {"Right": "So.", "Wrong": "The correction.", "Worse": "Not this. The correction."} == {o.text: o.feedback for o in question.options}
    assert ["Right"] == [option.text for option in question.options if option.right]


def test_typed_number_is_shown_as_written_and_knows_its_mistakes() -> None:
    question = made(NUMBER % ("value: 1.50, unit: kg N", SLIP % "value: 0.150"))
    assert isinstance(question, NumberEntry)
    assert ("1.50 kg N", "kg N", None, ["0.150 kg N"]) == (question.answer, question.unit, question.fact, [slip.shown for slip in question.slips])
    assert (question.accepted.low, question.accepted.high) == pytest.approx((1.47, 1.53))
    assert "You get this number by slipping. The correction." == question.slips[0].feedback


def test_bare_number_has_no_unit() -> None:
    question = made(NUMBER % ("value: 12", ""))
    assert isinstance(question, NumberEntry)
    assert ("12", "", ()) == (question.answer, question.unit, question.slips)


def test_number_may_be_a_fact_with_its_working() -> None:
    question = made(NUMBER % ("fact: lake.turnover_time", SLIP % "value: 0.2"))
    assert isinstance(question, NumberEntry)
    assert ("5.00 yr", TURNOVER, ["0.2 yr"]) == (question.answer, question.fact, [slip.shown for slip in question.slips])


def test_mistake_may_be_a_fact_of_another_record_in_another_unit() -> None:
    """Of the same kind of unit it is converted, 40 t = 40 000 kg; of another kind it is the bare number."""
    converted = made(NUMBER % ("value: 7, unit: kg N", SLIP % "fact: cycle/far:sea.stock"))
    bare = made(NUMBER % ("fact: lake.turnover_time", SLIP % "fact: lake.stock"))
    assert isinstance(converted, NumberEntry) and isinstance(bare, NumberEntry)
    assert (["40\u202f000 kg N"], ["40.0 yr"]) == ([s.shown for s in converted.slips], [s.shown for s in bare.slips])


@pytest.mark.parametrize(("hint", "said"), [("", HINT), (", hint: Divide.", "Divide.")])
def test_other_numbers_are_answered_with_the_hint_or_a_general_one(hint: str, said: str) -> None:
    question = made(f"{{id: q, ask: How much?, needs: data, because: So., number: {{value: 3}}{hint}}}")
    assert isinstance(question, NumberEntry)
    assert said == question.otherwise


def test_order_of_options_is_the_same_each_time() -> None:
    assert made(CHOICE % TWO_WRONG) == made(CHOICE % TWO_WRONG)


@pytest.mark.parametrize(
    ("fields", "found"), [("", "neither"), (", answer: A, number: {value: 1}", "both")],
)  # fmt: skip
def test_question_that_is_neither_choice_nor_number_or_both_is_told(fields: str, found: str) -> None:
    expected = (("questions", 0), "either `answer`, for a choice, or `number`", found)
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


@pytest.mark.parametrize("key", ["lake.stock", "cycle/far:sea.stock", "lake_2"])
def test_fact_may_be_named_with_and_without_its_record(key: str) -> None:
    assert key == read(NUMBER % (f"fact: '{key}'", ""))[0].number.fact


def test_fact_in_braces_is_told_how_to_write() -> None:
    text = NUMBER % ("fact: '{lake.stock}'", "")
    _, problems = check(located(f"- {text}\n".encode(), "asked.yaml"), AskedQuestions)
    assert ["write lake.stock"] == [one.mend for one in problems]


def test_fact_that_is_a_sum_is_asked_for_exactly_as_in_generated_questions() -> None:
    given = {"stock": STOCK, "lost": stated("lake.lost", "Lost", Amount(value=3.0, written="3"), unit("t N"))}
    left = computed("lake.left", "Left", Expression("stock - lost"), given, unit("t N"))
    (question,) = Authored({"lake.left": left}, CATALOGUE, "concept/small").questions(read(NUMBER % ("fact: lake.left", "")))
    assert isinstance(question, NumberEntry)
    assert (37.0, 37.0) == (question.accepted.low, question.accepted.high)
