"""Every kind, and every record of the project's own content, keeps what the rooms above and below rely on."""

from __future__ import annotations

import json
import math
import re
from pathlib import Path
from typing import Any

import pytest

from generator.build import plain_fact
from generator.kind import Kind, Subject
from generator.kinds import all_kinds
from generator.quantities.fact import Fact
from generator.questions.question import Choice, Matching, NumberEntry, Ordering, SeveralChoice, Question
from generator.science import METHODS
from tests.conventions.kind_contract import FILES, GOLDEN, TESTS, lacks
from tests.conventions.project import ROOT
from tests.kinds.small_records import library

FACT_ID = re.compile(r"[a-z][a-z0-9]*(?:_[a-z0-9]+)*(?:\.[a-z][a-z0-9]*(?:_[a-z0-9]+)*)?")
SUBJECTS = sorted(library().subjects)
FEWEST_QUESTIONS, FEWEST_WITH_A_REASON = 6, 3
MINUS_AND_POWERS = str.maketrans("−⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "--0123456789")

each_kind = pytest.mark.parametrize("kind", all_kinds().values(), ids=lambda kind: kind.name)
each_record = pytest.mark.parametrize("record", SUBJECTS)
COMPUTED = [record for record in SUBJECTS if all_kinds()[record.partition("/")[0]].computes]
each_computed_record = pytest.mark.parametrize("record", COMPUTED)
each_asking_record = pytest.mark.parametrize("record", [record for record in COMPUTED if library().subjects[record].record.use == "page"])
each_record_without_numbers = pytest.mark.parametrize("record", sorted(set(SUBJECTS) - set(COMPUTED)))


def subject(record: str) -> Subject[Any]:
    return library().subjects[record]


def kind_of(record: str) -> Kind[Any]:
    return all_kinds()[subject(record).kind]


def facts(record: str) -> list[Fact]:
    return list(subject(record).facts.values())


def questions(record: str) -> tuple[Question, ...]:
    return library().questions[record]


def numbers(fact: Fact) -> list[float]:
    return [fact.number] if fact.is_number else list(fact.series) if fact.is_series else []


@each_kind
def test_kind_lacks_nothing(kind: Kind[Any]) -> None:
    assert [] == lacks(ROOT, kind.name, kind.computes)


def test_new_folder_is_told_all_that_it_lacks(tmp_path: Path) -> None:
    (tmp_path / "generator/kinds/soil").mkdir(parents=True)
    (tmp_path / "generator/kinds/soil/record.py").touch()
    told = lacks(tmp_path, "soil")
    assert len(FILES) - 1 + len(TESTS) + len(GOLDEN) + 2 == len(told)
    assert "generator/kinds/soil/facts.py is missing" in told
    assert "content/soil/ has no record" in told
    assert "generator/kinds/soil/record.py is missing" not in told


def test_every_folder_of_kinds_is_found() -> None:
    folders = {path.name for path in (ROOT / "generator/kinds").iterdir() if (path / "__init__.py").is_file()}
    assert folders == set(all_kinds())


@each_kind
def test_kind_goes_by_its_folder(kind: Kind[Any]) -> None:
    assert (kind.name, ROOT / "generator/kinds" / kind.name) == (kind.folder.name, kind.folder)
    assert kind.title


@each_kind
def test_methods_of_a_kind_are_those_of_the_science(kind: Kind[Any]) -> None:
    assert dict(kind.methods) == {name: METHODS[name] for name in kind.methods}


@each_record_without_numbers
def test_kind_that_computes_nothing_has_no_numbers_and_asks_its_authors_questions(record: str) -> None:
    kind, of = kind_of(record), subject(record)
    made = (kind.charts(of), kind.questions(of, library().catalogue), kind.compare([of]).heads)
    assert ({}, {}, (), (), ()) == (dict(kind.facts(of.record)), kind.parts(of.record), *made)
    assert [question.id for question in questions(record) if "-" not in question.id] == [asked.id for asked in of.record.questions]
    assert questions(record)


@each_computed_record
def test_parts_name_what_facts_are_about(record: str) -> None:
    """What belongs to no part stands for the whole record, or for a process; it must not be the larger share."""
    parts = kind_of(record).parts(subject(record).record)
    without = [fact.id for fact in facts(record) if fact.id.partition(".")[0] not in parts]
    assert parts
    assert 2 * len(without) < len(facts(record))


@each_record
def test_fact_ids_have_their_form(record: str) -> None:
    assert [] == [fact.id for fact in facts(record) if not FACT_ID.fullmatch(fact.id)]


@each_record
def test_numbers_have_units_and_names(record: str) -> None:
    assert [] == [fact.id for fact in facts(record) if numbers(fact) and fact.unit is None]
    assert [] == [fact.id for fact in facts(record) if not fact.name[:1].isupper()]


@each_record
def test_values_are_finite_numbers_or_null_with_a_reason(record: str) -> None:
    assert [] == [fact.id for fact in facts(record) if not all(map(math.isfinite, numbers(fact)))]
    assert [] == [fact.id for fact in facts(record) if (fact.value is None) != bool(fact.undefined_because)]


@each_record
def test_methods_that_facts_name_are_known_to_their_kind(record: str) -> None:
    assert [] == [fact.id for fact in facts(record) if fact.method and fact.method not in kind_of(record).methods]


@each_record
def test_what_is_computed_shows_its_working(record: str) -> None:
    assert [] == [fact.id for fact in facts(record) if fact.method and fact.value is not None and fact.working is None]
    assert [] == [fact.id for fact in facts(record) if not fact.shown_working.strip()]


@each_record
def test_what_the_record_states_is_shown_as_written(record: str) -> None:
    """A number without a working must come from the record, so it has the author's own digits or a stated range."""
    bare = [fact for fact in facts(record) if numbers(fact) and fact.working is None]
    assert [] == [fact.id for fact in bare if not fact.written and fact.low is None]


@each_record
def test_facts_are_plain_data(record: str) -> None:
    plain = {fact.id: plain_fact(fact, kind_of(record).methods) for fact in facts(record)}
    assert plain == json.loads(json.dumps(plain, allow_nan=False))


@each_record
def test_sources_of_facts_stand_in_the_bibliography(record: str) -> None:
    methods = kind_of(record).methods
    named = {key for fact in facts(record) for key in (*fact.sources, *(methods[fact.method].sources if fact.method else ()))}
    assert set() == named - set(library().sources)


@each_computed_record
def test_charts_have_words_and_numbers(record: str) -> None:
    charts = kind_of(record).charts(subject(record))
    assert charts
    for chart in (*charts, *kind_of(record).practice_charts(subject(record))):
        assert all((chart.title, chart.description, chart.reading, chart.table.rows)), chart.name
        assert re.fullmatch(r"[a-z0-9_.]+", chart.name), chart.name
        assert any(character.isdigit() for character in chart.description), chart.name


@each_computed_record
def test_charts_for_practice_are_made_where_a_part_is_for_practice(record: str) -> None:
    kept = {part for part, of in kind_of(record).parts(subject(record).record).items() if of.use == "practice"}
    named = {chart.name.rpartition(".")[2] for chart in kind_of(record).practice_charts(subject(record))}
    assert named <= kept and (named or not kept)


def test_chart_names_are_unique_on_the_site() -> None:
    names = [chart.name for record in SUBJECTS for made in (kind_of(record).charts, kind_of(record).practice_charts) for chart in made(subject(record))]
    assert len(set(names)) == len(names)


@each_asking_record
def test_enough_questions_of_both_types(record: str) -> None:
    """Fewer, or only one type, where the record itself gives a reason; a reason that nothing needs is not taken."""
    reasons = [accepted.reason for accepted in subject(record).record.accepted_warnings if accepted.warning == "question_left_out"]
    assert len(questions(record)) >= (FEWEST_WITH_A_REASON if reasons else FEWEST_QUESTIONS)
    assert reasons or {Choice, NumberEntry} <= {type(question) for question in questions(record)}
    assert [] == [warning for warning in library().warnings if f"/{record}." in warning.place.file]


@each_record
def test_question_ids_are_unique_within_the_record(record: str) -> None:
    ids = [question.id for question in questions(record)]
    assert len(set(ids)) == len(ids)


@each_record
def test_prompts_are_whole_sentences_and_solutions_say_something(record: str) -> None:
    assert [] == [question.id for question in questions(record) if not question.prompt.endswith(("?", "."))]
    assert [] == [question.id for question in questions(record) if len(question.solution.split()) < 4]
    assert [] == [question.id for question in questions(record) if re.search(r"\bNone\b|[{}]", question.prompt + question.solution)]


@each_record
def test_every_answer_has_feedback(record: str) -> None:
    for question in questions(record):
        if isinstance(question, Choice):
            assert all(option.feedback.strip() for option in question.options), question.id
        if isinstance(question, NumberEntry):
            assert question.right_feedback.strip() and question.otherwise.strip(), question.id
            assert all(slip.feedback.strip() for slip in question.slips), question.id
        if isinstance(question, Ordering):
            assert question.starts_with and all(step.leads_on.strip() for step in question.steps[:-1]), question.id
        if isinstance(question, Matching):
            assert all(pair.because.strip() for pair in question.pairs), question.id


@each_record
def test_wrong_answers_name_misconceptions_of_the_catalogue(record: str) -> None:
    for question in questions(record):
        if isinstance(question, Ordering | Matching):
            continue  # what is wrong there is a place, and its feedback says why
        wrong = question.options if isinstance(question, Choice | SeveralChoice) else question.slips
        named = [answer.misconception for answer in wrong if not getattr(answer, "right", False)]
        assert named, question.id
        assert [] == [name for name in named if name not in library().catalogue]


@each_record
def test_options_are_three_or_more_and_all_different(record: str) -> None:
    for question in questions(record):
        if isinstance(question, Choice):
            texts = [" ".join(option.text.casefold().split()) for option in question.options]
            assert 3 <= len(texts) == len(set(texts)), question.id


@each_record
def test_no_option_points_at_other_options(record: str) -> None:
    """Source: item-writing rules of Haladyna, Downing and Rodriguez 2002."""
    pattern = re.compile(r"\b(?:all|none) of (?:the above|these)\b|\bboth a and b\b", re.IGNORECASE)
    assert [] == [o.text for q in questions(record) if isinstance(q, Choice) for o in q.options if pattern.search(o.text)]


@each_record
def test_options_of_numbers_stand_in_rising_order(record: str) -> None:
    for question in questions(record):
        if isinstance(question, Choice) and question.fact is not None and question.fact.is_number:
            values = [_leading_number(option.text) for option in question.options]
            assert sorted(values) == values, question.id


@pytest.mark.parametrize(
    ("text", "number"),
    [("51.1 yr", 51.1), ("−4.00 kg", -4.0), ("38\u202f000 ha", 38000.0), ("5.51 × 10¹⁴ yr", 5.51e14), ("−1.20 × 10⁻⁵", -1.2e-5)],
)
def test_numbers_are_read_as_they_are_shown(text: str, number: float) -> None:
    """Guards the tests of options and answers."""
    assert number == _leading_number(text)


def _leading_number(text: str) -> float:
    found = re.match(r"([−\d.\u202f]+)(?: × 10([⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+))?", text)
    assert found is not None, text
    digits, power = (part.translate(MINUS_AND_POWERS).replace("\u202f", "") for part in (found[1], found[2] or "0"))
    return float(f"{digits}e{power}")


@each_record
def test_a_typed_number_is_never_right_and_wrong_at_once(record: str) -> None:
    for question in questions(record):
        if isinstance(question, NumberEntry):
            ranges = [question.accepted, *(slip.accepted for slip in question.slips)]
            assert not any(a.meets(b) for n, a in enumerate(ranges) for b in ranges[:n]), question.id


@each_record
def test_the_answer_as_shown_is_accepted(record: str) -> None:
    for question in questions(record):
        if isinstance(question, NumberEntry):
            assert question.accepted.low <= _leading_number(question.answer) <= question.accepted.high, question.id
            for slip in question.slips:
                assert slip.accepted.low <= _leading_number(slip.shown) <= slip.accepted.high, question.id
