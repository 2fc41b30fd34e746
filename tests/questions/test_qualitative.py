"""Questions from what a record says in words: only where the record forces one answer, and each with its feedback."""

from __future__ import annotations

from dataclasses import replace

import pytest

from generator.questions.misconception import Catalogue, Misconception
from generator.questions.qualitative import Qualitative, Term
from generator.questions.question import Choice, Matching, Ordering, Question
from generator.records.parts import Action, Adaptation, Explanation, FalseStep, HumanImpact, Idea, Retold

CATALOGUE = Catalogue({
    key: Misconception(id=key, idea="It is so.", because="it is not.", instead="it is otherwise.")
    for key in ("ans.sound-doubted",)
})  # fmt: skip
TERMS = tuple(Term(f"w{n}", f"word{n}", f"meaning {n}", (f"thing {n}",), f"case {n}") for n in range(5))
MAKER = Qualitative(CATALOGUE, "biome/somewhere", lambda text: text.replace("{rain}", "327 mm"))


def chain(name: str, *says: str, asks: str = "") -> Explanation:
    """A chain whose author retells it in these steps."""
    return Explanation(id=name, asks=f"why {name} is", chain=(Idea(id="idea", says="It is so."),), retold=Retold(asks=asks or f"why another {name} is", steps=says))


def adaptation(n: int, works_by: str = "", benefit: str = "", without: str | None = None) -> Adaptation:
    return Adaptation(who=f"plant {n}", feature=f"feature {n}", works_by=works_by or f"mechanism {n} does it", benefit=benefit or f"gain {n}", without=without)


def made(**given: tuple) -> dict[str, Question]:
    parts = {"explanations": (), "adaptations": (), "people": (), "terms": ()} | given
    return {item.id: item for item in MAKER.questions(**parts)}


def action(n: int) -> Action:
    return Action(do=f"do {n}", works_by=f"way {n}", drawback=f"price {n}", shown_by=f"count {n}")


FOUR = ("Rain falls on {rain}.", "Water runs off the field.", "It carries nitrate along.", "The stream receives nitrate.")


def test_a_chain_becomes_an_order_only_in_the_steps_of_another_case() -> None:
    on_the_page = Explanation(id="leak", asks="why it is", chain=tuple(Idea(id=f"step_{n}", says=text) for n, text in enumerate(FOUR)))
    assert {} == made(explanations=(on_the_page,))
    item = made(explanations=(chain("leak", *FOUR),))["order-leak"]
    assert isinstance(item, Ordering)
    assert "Put the steps in order to explain why another leak is." == item.prompt
    assert ("Rain falls on 327 mm.", *FOUR[1:]) == tuple(step.text for step in item.steps)
    assert item.start[0] != 0


@pytest.mark.parametrize("number", [3, 8])
def test_too_short_and_too_long_chains_are_not_ordered(number: int) -> None:
    steps = [f"Step {n} happens." for n in range(number)]
    assert not any(isinstance(item, Ordering) for item in made(explanations=(chain("leak", *steps),)).values())


def retold_wrongly(name: str, *steps: str, step: int = 2, says: str = "Nitrate sinks into rock.", asks: str = "") -> Explanation:
    """A chain that is retold with a false step."""
    told = Retold(asks=asks or f"why another {name} is", steps=steps, false_step=FalseStep(step=step, says=says, because="Nitrate stays in the water."))
    return Explanation(id=name, asks=f"why {name} is", chain=(Idea(id="idea", says="It is so."),), retold=told)


def test_false_step_stands_among_the_others_in_their_order() -> None:
    item = made(explanations=(retold_wrongly("leak", *FOUR),))["false-step-leak"]
    assert isinstance(item, Choice)
    assert ["Rain falls on 327 mm", "Nitrate sinks into rock", "It carries nitrate along", "The stream receives nitrate"] == [option.text for option in item.options]
    assert ["Nitrate sinks into rock"] == [option.text for option in item.options if option.right]
    assert "Nitrate stays in the water. In its place: “Water runs off the field.”" == item.solution
    assert {"ans.sound-doubted"} == {option.misconception for option in item.options if not option.right}


def test_every_other_step_is_said_to_hold() -> None:
    item = made(explanations=(retold_wrongly("leak", *FOUR),))["false-step-leak"]
    assert isinstance(item, Choice)
    assert 3 == sum(option.feedback.startswith("This step holds.") for option in item.options)


def test_every_chain_with_a_false_step_is_asked_and_none_is_put_in_order_beside_it() -> None:
    chains = (retold_wrongly("leak", *FOUR), retold_wrongly("flood", *FOUR), chain("thaw", "Snow falls.", "It lies for months.", "Spring warms it.", "It melts."))
    assert {"false-step-leak", "false-step-flood"} == {*made(explanations=chains)}
    assert {"order-thaw"} == {*made(explanations=chains[2:])}


def test_order_that_leaves_a_doubt_gives_way_to_the_next() -> None:
    """The first chain links its second step to what came before, which tells the order."""
    told = chain("told", "It rains.", "Then a puddle forms.", "It dries.", "Dust is left.")
    assert {"order-leak"} == {*made(explanations=(told, chain("leak", *FOUR)))}


def test_features_match_benefits_with_one_benefit_left_over_where_there_are_more() -> None:
    item = made(adaptations=tuple(adaptation(n) for n in range(5)))["benefits-match"]
    assert isinstance(item, Matching)
    assert (4, 5) == (len(item.pairs), len(item.partners))
    assert "One of the answers fits none of the lines." in item.solution


def test_features_match_what_would_go_wrong_without_them_where_that_is_said() -> None:
    """The page shows how a feature works and what it is good for, so that is what the answer tells, not what is asked."""
    items = made(adaptations=tuple(adaptation(n, without=f"loss {n}") for n in range(4)))
    item = items["features-match"]
    assert isinstance(item, Matching) and "benefits-match" not in items
    assert (3, 4) == (len(item.pairs), len(item.partners))
    assert {(f"Plant {n}: feature {n}", f"Loss {n}", f"Mechanism {n} does it.") for n in range(4)} >= {(pair.text, pair.partner, pair.because) for pair in item.pairs}


def test_what_goes_wrong_in_words_of_the_table_is_not_matched() -> None:
    """Of four one says how the feature works, and three are left; of three too few, and benefits could be copied from the page."""
    telling = adaptation(3, without="the mechanism fails")
    fair = tuple(adaptation(n, without=f"loss {n}") for n in range(3))
    assert 3 == len(made(adaptations=(*fair, telling))["features-match"].partners)
    assert {} == made(adaptations=(*fair[:2], telling))


def test_two_features_with_one_benefit_do_not_stand_together() -> None:
    item = made(adaptations=(*(adaptation(n) for n in range(3)), adaptation(3, benefit="gain 1")))["benefits-match"]
    assert isinstance(item, Matching)
    assert 3 == len(item.partners)


def test_every_order_and_match_has_a_hint_that_is_no_answer() -> None:
    impact = HumanImpact(problem="p", cause="c", effect="e", actions=tuple(action(n) for n in range(4)))
    items = made(explanations=(chain("leak", *FOUR),), people=(impact,), terms=TERMS)
    assert {"order-leak", "measured-match", "words-match"} <= set(items)
    said = " ".join(hint for item in items.values() for hint in item.hints)
    assert all(item.hints for item in items.values())
    assert not any(text in said for text in (*FOUR, "Count", "Case 0"))


def test_two_pairs_are_too_few_to_match() -> None:
    assert "benefits-match" not in made(adaptations=tuple(adaptation(n) for n in range(2)))


def test_actions_of_all_problems_are_matched_with_what_would_show_that_they_work() -> None:
    """The page shows how each works, so that is what the answer tells, not what is asked."""
    actions = [action(n) for n in range(3)]
    people = (HumanImpact(problem="p", cause="c", effect="e", actions=(actions[0],)), HumanImpact(problem="q", cause="c", effect="e", actions=tuple(actions[1:])))
    item = made(people=people)["measured-match"]
    assert isinstance(item, Matching)
    assert {(f"Do {n}", f"Count {n}", f"Way {n}.") for n in range(3)} == {(pair.text, pair.partner, pair.because) for pair in item.pairs}


def test_action_of_which_nothing_is_measured_is_not_matched() -> None:
    people = (HumanImpact(problem="p", cause="c", effect="e", actions=(action(0), action(1), Action(do="do 2", works_by="way 2", drawback="price 2"))),)
    assert "measured-match" not in made(people=people)


def test_words_are_matched_with_examples_and_told_by_what_they_mean() -> None:
    item = made(terms=TERMS)["words-match"]
    assert isinstance(item, Matching)
    assert (4, {f"Case {n}" for n in range(5)}) == (len(item.pairs), {*item.partners})
    told = {(f"Word{n}", f"Case {n}", f"Meaning {n}. In other words: thing {n}.") for n in range(5)}
    assert {(pair.text, pair.partner, pair.because) for pair in item.pairs} < told


def test_a_word_without_an_example_is_not_asked() -> None:
    item = made(terms=(*TERMS, Term("silt", "silt", "fine grains", ("mud",))))["words-match"]
    assert isinstance(item, Matching)
    assert "Silt" not in [pair.text for pair in item.pairs]


@pytest.mark.parametrize(
    ("everyday", "told"), [((), "All that is fixed."), (("GPP", "gross yield"), "All that is fixed."), (("what is fixed",), "All that is fixed. In other words: what is fixed."), (("fixed",), "All that is fixed."), (("GPP", "the lot"), "All that is fixed. In other words: the lot.")]
)
def test_everyday_words_are_neither_an_abbreviation_nor_the_word_or_its_meaning_again(everyday: tuple[str, ...], told: str) -> None:
    terms = tuple(replace(one, word=f"gross {one.word}", means="all that is fixed", everyday=everyday) for one in TERMS)
    item = made(terms=terms)["words-match"]
    assert isinstance(item, Matching)
    assert {told} == {pair.because for pair in item.pairs}


def test_words_need_a_spare_example() -> None:
    unasked = replace(TERMS[4], example=None)
    assert "words-match" not in made(terms=TERMS[:4])
    assert "words-match" not in made(terms=(*TERMS[:4], unasked))


def test_the_same_record_gives_the_same_questions_and_another_another_order() -> None:
    given = {"explanations": (), "adaptations": tuple(adaptation(n) for n in range(5)), "people": (), "terms": ()}
    other = Qualitative(CATALOGUE, "biome/elsewhere", MAKER.filled)
    assert MAKER.questions(**given) == MAKER.questions(**given)
    assert MAKER.questions(**given) != other.questions(**given)


def test_a_record_has_two_matches_at_most_and_words_stand_back() -> None:
    impact = HumanImpact(problem="p", cause="c", effect="e", actions=tuple(action(n) for n in range(3)))
    assert {"benefits-match", "measured-match"} == {*made(adaptations=tuple(adaptation(n) for n in range(3)), people=(impact,), terms=TERMS)}
    assert {"measured-match", "words-match"} == {*made(people=(impact,), terms=TERMS)}


def test_matches_of_the_author_count_and_take_the_place_of_features() -> None:
    impact = HumanImpact(problem="p", cause="c", effect="e", actions=tuple(action(n) for n in range(3)))
    given = {"adaptations": tuple(adaptation(n) for n in range(3)), "people": (impact,), "terms": TERMS, "explanations": ()}
    assert {"measured-match"} == {item.id for item in MAKER.questions(**given, matched=1)}
    assert () == MAKER.questions(**given, matched=2)


def test_order_with_a_step_that_points_back_is_not_asked() -> None:
    linked = chain("leak", FOUR[0], "So water runs off the field.", *FOUR[2:])
    assert "order-leak" not in made(explanations=(linked,))


def test_pairs_with_a_word_in_common_are_not_asked_but_may_be_the_spare_partner() -> None:
    fair = tuple(adaptation(n) for n in range(3))
    telling = Adaptation(who="cactus", feature="swelling stem", works_by="It swells.", benefit="the stem is swelling with water")
    item = made(adaptations=(*fair, telling))["benefits-match"]
    assert isinstance(item, Matching)
    assert 3 == len(item.pairs) and "The stem is swelling with water" in item.partners
