"""Questions that authors write: each comes out as it was meant."""

from __future__ import annotations

import pytest

from generator.quantities.amount import Amount
from generator.quantities.expression import Expression
from generator.quantities.fact import computed, stated
from generator.quantities.units import unit
from generator.questions.authored import HINT, READ_AGAIN, Authored
from generator.questions.authored_faults import faults
from generator.questions.misconception import Catalogue, Misconception
from generator.questions.question import ChartReading, Choice, Matching, Needs, NumberEntry, Ordering, Question, SeveralChoice
from generator.records.asked import AskedQuestions
from generator.records.checking import check
from generator.records.located import located

CATALOGUE = Catalogue({"t.slip": Misconception(id="t.slip", idea="An idea.", because="the reason.", instead="the remedy.")})
STOCK = stated("lake.stock", "Stock", Amount(value=40.0, written="40"), unit("t N"))
FLOW = stated("lake.outflow", "Outflow", Amount(value=8.0, written="8"), unit("t N/yr"))
TURNOVER = computed("lake.turnover_time", "Turnover time", Expression("stock / flow"), {"stock": STOCK, "flow": FLOW}, unit("yr"))
FACTS = {fact.id: fact for fact in (STOCK, FLOW, TURNOVER)} | {"cycle/far:sea.stock": STOCK}
CHOICE = "{id: q, ask: 'Why {lake.stock}?', needs: knowledge, answer: Right, because: So., wrong: [%s]}"
TWO_WRONG = "{text: Wrong, misconception: t.slip}, {text: Worse, misconception: t.slip, because: Not this.}"
NUMBER = "{id: q, ask: How much?, needs: both, because: So., number: {%s}, mistakes: [%s]}"
SLIP = "{%s, misconception: t.slip, how: slipping}"


def read(*texts: str) -> AskedQuestions:
    found, problems = check(located("".join(f"- {text}\n" for text in texts).encode(), "asked.yaml"), AskedQuestions)
    assert () == problems
    return found


def made(text: str) -> Question:
    asked = read(text)
    assert [] == list(faults(asked, FACTS))
    (question,) = Authored(FACTS, CATALOGUE, "concept/small").questions(asked)
    return question


def test_choice_has_its_options_with_feedback_and_its_facts_in_words() -> None:
    question = made(CHOICE % TWO_WRONG)
    assert isinstance(question, Choice)
    assert ("Why 40 t N?", Needs.KNOWLEDGE, "So.") == (question.prompt, question.needs, question.solution)
    assert {"Right": "So.", "Wrong": "The reason. The remedy.", "Worse": "Not this. The reason. The remedy."} == {o.text: o.feedback for o in question.options}
    assert ["Right"] == [option.text for option in question.options if option.right]


def test_typed_number_is_shown_as_written_and_knows_its_mistakes() -> None:
    question = made(NUMBER % ("value: 1.50, unit: kg N", SLIP % "value: 0.150"))
    assert isinstance(question, NumberEntry)
    assert ("1.50 kg N", "kg N", None, ["0.150 kg N"]) == (question.answer, question.unit, question.fact, [slip.shown for slip in question.slips])
    assert (question.accepted.low, question.accepted.high) == pytest.approx((1.47, 1.53))
    assert "You get this number by slipping. The reason. The remedy." == question.slips[0].feedback


def test_bare_number_has_no_unit() -> None:
    question = made(NUMBER % ("value: 12", ""))
    assert isinstance(question, NumberEntry)
    assert ("12", "", ()) == (question.answer, question.unit, question.slips)


def test_number_may_be_a_fact_with_its_working() -> None:
    question = made(NUMBER % ("fact: lake.turnover_time", SLIP % "value: 0.2"))
    assert isinstance(question, NumberEntry)
    assert ("5 yr", TURNOVER, ["0.2 yr"]) == (question.answer, question.fact, [slip.shown for slip in question.slips])


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


def test_several_right_options_have_reasons_of_their_own_or_that_of_the_question() -> None:
    text = f"{{id: q, ask: Which?, needs: data, because: So., answers: [{{text: '{{lake.stock}}', because: Big.}}, {{text: Deep}}], wrong: [{TWO_WRONG}]}}"
    question = made(text)
    assert isinstance(question, SeveralChoice)
    assert {"40 t N": "Big.", "Deep": "So."} == {option.text: option.feedback for option in question.options if option.right}


def test_steps_become_an_order_that_does_not_begin_right() -> None:
    question = made("{id: q, ask: In which order?, needs: knowledge, because: So., steps: [It rains., It runs., It sinks., It is gone.], hints: [Think.]}")
    assert isinstance(question, Ordering)
    assert (["It rains.", "It runs.", "It sinks.", "It is gone."], ("Think.",)) == ([step.text for step in question.steps], question.hints)
    assert question.start[0] != 0 and "It rains" in question.steps[0].leads_on


def test_pairs_are_matched_among_partners_of_which_some_fit_nothing() -> None:
    pairs = ", ".join(f"{{text: t{n}, partner: p{n}, because: b{n}.}}" for n in range(3))
    question = made(f"{{id: q, ask: Match., needs: knowledge, because: So., pairs: [{pairs}], others: [p9]}}")
    assert isinstance(question, Matching)
    assert ({"p0", "p1", "p2", "p9"}, "p1", "b1.") == ({*question.partners}, question.pairs[1].partner, question.pairs[1].because)


@pytest.mark.parametrize(("hint", "said"), [("", READ_AGAIN), (", hint: Look up.", "Look up.")])
def test_label_of_a_chart_is_picked_and_slips_of_reading_are_known(hint: str, said: str) -> None:
    text = f"{{id: q, ask: When?, needs: data, because: So., answer: May, labels: [April, May, June], wrong: [{{text: June, misconception: t.slip}}]{hint}}}"
    question = made(text)
    assert isinstance(question, ChartReading)
    assert (("May",), ("April", "May", "June"), said) == (question.right, question.labels, question.otherwise)
    assert [(("June",), "The reason. The remedy.")] == [(slip.labels, slip.feedback) for slip in question.slips]


def test_tied_labels_are_each_right() -> None:
    question = made("{id: q, ask: When?, needs: data, because: So., answers: [{text: May}, {text: June}], labels: [April, May, June]}")
    assert isinstance(question, ChartReading) and ("May", "June") == question.right


@pytest.mark.parametrize(
    "form",
    [
        f"answer: Right, wrong: [{TWO_WRONG}]", f"answers: [{{text: A}}, {{text: B}}], wrong: [{TWO_WRONG}]", "number: {value: 3}", "steps: [One, Two, Three, Four]",
        "pairs: [{text: A, partner: x, because: So.}, {text: B, partner: y, because: So.}, {text: C, partner: z, because: So.}]",
        "labels: [A, B, C], answer: A, wrong: [{text: B, misconception: t.slip}]",
    ],
)  # fmt: skip
def test_question_that_holds_its_own_data_says_so_in_every_form(form: str) -> None:
    assert made(f"{{id: q, ask: What?, needs: question, because: So., {form}}}").supposed
    assert not made(f"{{id: q, ask: What?, needs: data, because: So., {form}}}").supposed
