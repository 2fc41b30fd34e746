"""Questions from what a record says in words: only where the record forces one answer, and each with its feedback."""

from __future__ import annotations

import pytest

from generator.questions.misconception import Catalogue, Misconception
from generator.questions.qualitative import Qualitative, Term
from generator.questions.question import Choice, Matching, Ordering, Question
from generator.records.parts import Action, Adaptation, Explanation, HumanImpact, Idea

CATALOGUE = Catalogue({
    key: Misconception(id=key, idea="It is so.", because="it is not.", instead="it is otherwise.")
    for key in ("ans.step-skipped",)
})  # fmt: skip
TERMS = tuple(Term(f"w{n}", f"word{n}", f"meaning {n}", (f"thing {n}",)) for n in range(5))
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


OTHER = chain("ordered", "Snow falls.", "It lies for months.", "Spring warms it.", "It melts.", joined="step_by_step")
"""A chain that is put in order, so that another one may ask for its next step."""


def test_what_comes_next_is_told_from_later_steps_of_the_same_chain() -> None:
    item = made(explanations=(OTHER, chain("leak", *FOUR, joined="step_by_step")))["next-leak"]
    assert isinstance(item, Choice)
    assert "“Rain falls on 327 mm.”" in item.prompt
    assert ["Water runs off the field."] == [option.text for option in item.options if option.right]
    assert {*FOUR[2:]} == {option.text for option in item.options if not option.right}
    assert {"ans.step-skipped"} == {option.misconception for option in item.options if not option.right}
    assert any(option.feedback.startswith("Before this comes: “It carries nitrate along.”") for option in item.options)


@pytest.mark.parametrize("joined", ["together", "in_order"])
def test_next_step_is_not_asked_where_a_later_one_may_follow_too(joined: str) -> None:
    assert "next-leak" not in made(explanations=(OTHER, chain("leak", *FOUR, joined=joined)))


def test_chain_that_is_put_in_order_does_not_ask_for_its_next_step_as_well() -> None:
    assert {"order-leak"} == {*made(explanations=(chain("leak", *FOUR, joined="step_by_step"),))}


def test_question_that_leaves_a_doubt_gives_way_to_the_next() -> None:
    """The first chain names its second step in what it asks, so that an echo tells the answer."""
    ideas = tuple(Idea(id=f"i_{n}", says=text) for n, text in enumerate(("It rains.", "A puddle forms.", "It dries.", "Dust is left.")))
    told = Explanation(id="told", asks="why a puddle lies there", joined="step_by_step", chain=ideas)
    items = made(explanations=(OTHER, told))
    assert "next-told" not in items
    assert "next-leak" in made(explanations=(OTHER, told, chain("leak", *FOUR, joined="step_by_step")))


def test_features_match_benefits_with_one_benefit_left_over_where_there_are_more() -> None:
    item = made(adaptations=tuple(adaptation(n) for n in range(5)))["benefits-match"]
    assert isinstance(item, Matching)
    assert (4, 5) == (len(item.pairs), len(item.partners))
    assert "One of the answers fits none of the lines." in item.solution


def test_two_features_with_one_benefit_do_not_stand_together() -> None:
    item = made(adaptations=(*(adaptation(n) for n in range(3)), adaptation(3, benefit="gain 1")))["benefits-match"]
    assert isinstance(item, Matching)
    assert 3 == len(item.partners)


def test_every_order_and_match_has_a_hint_that_is_no_answer() -> None:
    impact = HumanImpact(problem="p", cause="c", effect="e", actions=tuple(Action(do=f"do {n}", works_by=f"way {n}", drawback=f"price {n}") for n in range(4)))
    items = made(explanations=(chain("leak", *FOUR, joined="step_by_step"),), people=(impact,), terms=TERMS)
    assert {"order-leak", "drawbacks-match", "words-match"} <= set(items)
    said = " ".join(hint for item in items.values() for hint in item.hints)
    assert all(item.hints for item in items.values())
    assert not any(text in said for text in (*FOUR, "price", "meaning 0"))


def test_two_pairs_are_too_few_to_match() -> None:
    assert "benefits-match" not in made(adaptations=tuple(adaptation(n) for n in range(2)))


def test_actions_of_all_problems_match_their_drawbacks() -> None:
    actions = [Action(do=f"do {n}", works_by=f"way {n}", drawback=f"price {n}") for n in range(3)]
    people = (HumanImpact(problem="p", cause="c", effect="e", actions=(actions[0],)), HumanImpact(problem="q", cause="c", effect="e", actions=tuple(actions[1:])))
    item = made(people=people)["drawbacks-match"]
    assert isinstance(item, Matching)
    assert {("Do 0", "Price 0"), ("Do 1", "Price 1"), ("Do 2", "Price 2")} == {(pair.text, pair.partner) for pair in item.pairs}


def test_a_pair_of_action_and_drawback_says_why_it_belongs_together_or_asks() -> None:
    actions = tuple(Action(do=f"do {n}", works_by=f"way {n}", drawback=f"price {n}", because=f"Reason {n}." if n else None) for n in range(3))
    item = made(people=(HumanImpact(problem="p", cause="c", effect="e", actions=actions),))["drawbacks-match"]
    assert isinstance(item, Matching)
    assert {"Do 0": "Way 0; ask what that costs, and whom.", "Do 1": "Reason 1.", "Do 2": "Reason 2."} == {pair.text: pair.because for pair in item.pairs}


def test_a_meaning_that_holds_its_word_is_not_asked() -> None:
    item = made(terms=(*TERMS, Term("peat", "peat", "peaty ground", ("bog soil",)), Term("silt", "silt", "fine grains")))["words-match"]
    assert isinstance(item, Matching)
    assert not {"Peaty ground", "Fine grains"} & {*item.partners}
    assert all(pair.because.startswith("In everyday words: thing ") for pair in item.pairs)


@pytest.mark.parametrize(("word", "means"), [("windward", "on the side of the wind"), ("growing time", "when plants grow")])
def test_a_meaning_that_holds_a_part_of_its_word_is_not_asked(word: str, means: str) -> None:
    item = made(terms=(*TERMS, Term("told", word, means, ("a thing",))))["words-match"]
    assert isinstance(item, Matching)
    assert word.capitalize() not in [pair.text for pair in item.pairs]


def test_reason_is_neither_an_abbreviation_nor_the_word_again() -> None:
    terms = (*TERMS[:4], Term("gross", "gross production", "all that is fixed", ("GPP", "gross yield", "everything made")))
    item = made(terms=terms)["words-match"]
    assert isinstance(item, Matching)
    assert {"GPP", "yield"} & {word for pair in item.pairs for word in pair.because.replace(",", "").split()} == set()
    assert "words-match" not in made(terms=(*TERMS[:4], Term("gross", "gross production", "all that is fixed", ("GPP", "gross yield"))))


def test_words_need_a_spare_meaning() -> None:
    assert "words-match" not in made(terms=TERMS[:4])


def test_the_same_record_gives_the_same_questions_and_another_another_order() -> None:
    given = {"explanations": (), "adaptations": tuple(adaptation(n) for n in range(5)), "people": (), "terms": ()}
    other = Qualitative(CATALOGUE, "biome/elsewhere", MAKER.filled)
    assert MAKER.questions(**given) == MAKER.questions(**given)
    assert MAKER.questions(**given) != other.questions(**given)


def test_a_record_has_two_matches_at_most_and_words_stand_back() -> None:
    impact = HumanImpact(problem="p", cause="c", effect="e", actions=tuple(Action(do=f"do {n}", works_by=f"way {n}", drawback=f"price {n}") for n in range(3)))
    assert {"benefits-match", "drawbacks-match"} == {*made(adaptations=tuple(adaptation(n) for n in range(3)), people=(impact,), terms=TERMS)}
    assert {"drawbacks-match", "words-match"} == {*made(people=(impact,), terms=TERMS)}


def test_matches_of_the_author_count_and_take_the_place_of_features() -> None:
    impact = HumanImpact(problem="p", cause="c", effect="e", actions=tuple(Action(do=f"do {n}", works_by=f"way {n}", drawback=f"price {n}") for n in range(3)))
    given = {"adaptations": tuple(adaptation(n) for n in range(3)), "people": (impact,), "terms": TERMS, "explanations": ()}
    assert {"drawbacks-match"} == {item.id for item in MAKER.questions(**given, matched=1)}
    assert () == MAKER.questions(**given, matched=2)


def test_order_with_a_step_that_points_back_is_not_asked() -> None:
    linked = chain("leak", FOUR[0], "So water runs off the field.", *FOUR[2:], joined="step_by_step")
    assert "order-leak" not in made(explanations=(linked,))


def test_pairs_with_a_word_in_common_are_not_asked_but_may_be_the_spare_partner() -> None:
    fair = tuple(adaptation(n) for n in range(3))
    telling = Adaptation(who="cactus", feature="swelling stem", works_by="It swells.", benefit="the stem is swelling with water")
    item = made(adaptations=(*fair, telling))["benefits-match"]
    assert isinstance(item, Matching)
    assert 3 == len(item.pairs) and "The stem is swelling with water" in item.partners
