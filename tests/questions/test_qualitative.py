"""Questions from what a record says in words: only where the record forces one answer, and each with its feedback."""

from __future__ import annotations

import pytest

from generator.questions.misconception import Catalogue, Misconception
from generator.questions.qualitative import Qualitative, Term
from generator.questions.question import Choice, Matching, Ordering, Question
from generator.records.parts import Action, Adaptation, Explanation, HumanImpact, Idea

CATALOGUE = Catalogue({
    key: Misconception(id=key, idea="Some think so.", correction="It does not hold.")
    for key in ("ans.other-question", "ans.vague", "adapt.mixed", "adapt.purpose")
})  # fmt: skip
MAKER = Qualitative(CATALOGUE, "biome/somewhere", lambda text: text.replace("{rain}", "327 mm"))


def chain(name: str, *says: str, joined: str = "in_order", accept: tuple[str, ...] = (), vague: tuple[str, ...] = ()) -> Explanation:
    ideas = tuple(Idea(id=f"step_{n}", says=text, accept=accept, not_enough=vague) for n, text in enumerate(says))
    return Explanation(id=name, asks=f"why {name} is", joined=joined, chain=ideas)


def adaptation(n: int, works_by: str = "", benefit: str = "") -> Adaptation:
    return Adaptation(who=f"plant {n}", feature=f"feature {n}", works_by=works_by or f"mechanism {n} does it", benefit=benefit or f"gain {n}")


def made(**given: tuple) -> dict[str, Question]:
    parts = {"explanations": (), "adaptations": (), "people": (), "terms": ()} | given
    return {item.id: item for item in MAKER.questions(**parts)}


FOUR = ("Rain falls on {rain}.", "Water runs off the field.", "It carries nitrate along.", "The stream receives nitrate.")


def test_only_a_chain_of_steps_becomes_an_order() -> None:
    assert "order-leak" not in made(explanations=(chain("leak", *FOUR),))
    item = made(explanations=(chain("leak", *FOUR, joined="step_by_step"),))["order-leak"]
    assert isinstance(item, Ordering)
    assert ("Rain falls on 327 mm.", *FOUR[1:]) == tuple(step.text for step in item.steps)
    assert item.start[0] != 0


@pytest.mark.parametrize("number", [3, 8])
def test_too_short_and_too_long_chains_are_not_ordered(number: int) -> None:
    steps = [f"Step {n} happens." for n in range(number)]
    assert not any(isinstance(item, Ordering) for item in made(explanations=(chain("leak", *steps, joined="step_by_step"),)).values())


def test_a_missing_step_is_offered_among_steps_of_other_explanations() -> None:
    others = [chain(f"other_{n}", f"Something else {n} goes on.", f"And then this {n}.", f"At last that {n}.") for n in range(2)]
    item = made(explanations=(chain("leak", *FOUR), *others))["link-leak"]
    assert isinstance(item, Choice)
    assert ["Water runs off the field."] == [option.text for option in item.options if option.right]
    assert "Rain falls on 327 mm. … It carries nitrate along." in item.prompt
    assert {"ans.other-question"} == {option.misconception for option in item.options if not option.right}
    assert any("This belongs to another question: why other_0 is." in option.feedback for option in item.options)


def test_reasons_that_work_together_have_no_missing_step() -> None:
    others = [chain(f"other_{n}", f"Something else {n} goes on.", f"And then this {n}.", f"At last that {n}.") for n in range(2)]
    assert "link-leak" not in made(explanations=(chain("leak", *FOUR, joined="together"), *others))


def test_credit_is_told_from_everyday_words_of_about_the_same_length() -> None:
    explanation = chain("leak", *FOUR, accept=("water carries nitrate off",), vague=("it is bad for water", "nitrate is pollution", "x", "y" * 90))
    item = made(explanations=(explanation,))["credit-leak"]
    assert isinstance(item, Choice)
    assert {"Water carries nitrate off", "It is bad for water", "Nitrate is pollution"} == {option.text for option in item.options}


def test_how_a_feature_works_is_told_from_other_features_and_from_purpose() -> None:
    item = made(adaptations=tuple(adaptation(n) for n in range(3)))["adaptation-works"]
    assert isinstance(item, Choice)
    assert {"adapt.mixed", "adapt.purpose"} == {option.misconception for option in item.options if not option.right}
    assert all(option.feedback for option in item.options)


def test_features_match_benefits_with_one_benefit_left_over_where_there_are_more() -> None:
    item = made(adaptations=tuple(adaptation(n) for n in range(5)))["benefits-match"]
    assert isinstance(item, Matching)
    assert (4, 5) == (len(item.pairs), len(item.partners))
    assert "One of the answers fits none of the lines." in item.solution


def test_two_features_with_one_benefit_do_not_stand_together() -> None:
    item = made(adaptations=(*(adaptation(n) for n in range(3)), adaptation(3, benefit="gain 1")))["benefits-match"]
    assert isinstance(item, Matching)
    assert 3 == len(item.partners)


def test_two_pairs_are_too_few_to_match() -> None:
    assert "benefits-match" not in made(adaptations=tuple(adaptation(n) for n in range(2)))


def test_actions_of_all_problems_match_their_drawbacks() -> None:
    actions = [Action(do=f"do {n}", works_by=f"way {n}", drawback=f"price {n}") for n in range(3)]
    people = (HumanImpact(problem="p", cause="c", effect="e", actions=(actions[0],)), HumanImpact(problem="q", cause="c", effect="e", actions=tuple(actions[1:])))
    item = made(people=people)["drawbacks-match"]
    assert isinstance(item, Matching)
    assert {("Do 0", "Price 0"), ("Do 1", "Price 1"), ("Do 2", "Price 2")} == {(pair.text, pair.partner) for pair in item.pairs}


def test_a_meaning_that_holds_its_word_is_not_asked() -> None:
    terms = tuple(Term(f"w{n}", f"word{n}", f"meaning {n}") for n in range(3))
    item = made(terms=(*terms, Term("peat", "peat", "peaty ground")))["words-match"]
    assert isinstance(item, Matching)
    assert "Peaty ground" not in item.partners


def test_the_same_record_gives_the_same_questions_and_another_another_order() -> None:
    given = {"explanations": (), "adaptations": tuple(adaptation(n) for n in range(5)), "people": (), "terms": ()}
    other = Qualitative(CATALOGUE, "biome/elsewhere", MAKER.filled)
    assert MAKER.questions(**given) == MAKER.questions(**given)
    assert MAKER.questions(**given) != other.questions(**given)
