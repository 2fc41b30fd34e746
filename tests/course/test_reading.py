"""Reading grade: the published formula, how a text is taken apart for it, and which sentences are told."""

from __future__ import annotations

import pytest
import yaml

from generator.course.reading import FEWEST_WORDS, MARGIN, PASSAGE, Count, counted, hard_to_read, sentences

CAT = "The cat sat on the mat. It was a warm day and the sun was bright."
PLATYPUS = "The Australian platypus is seemingly a hybrid of a mammal and reptilian creature."
HARD = "Agricultural intensification accelerates eutrophication of neighbouring ecosystems, particularly in unprotected agricultural catchments."
PLAIN = "The rain that falls on the hill in the spring runs down to the lake in a day."


def test_formula_on_counts_worked_out_by_hand() -> None:
    """Source: derived from the formula of Kincaid et al. 1975: 16 words, 2 sentences, 16 syllables; 19, 3 and 39."""
    assert (-0.67, 11.101053) == (pytest.approx(Count(16, 2, 16).grade), pytest.approx(Count(19, 3, 39).grade, abs=1e-6))


def test_formula_on_a_published_sentence() -> None:
    """Source: the encyclopedia article on the readability tests gives 13 words, 24 syllables and grade 11.3 (status: secondary)."""
    assert 11.3 == round(Count(13, 1, 24).grade, 1)


def test_formula_on_a_published_book() -> None:
    """Source: the same article, Green Eggs and Ham: 5.7 words a sentence, 1.02 syllables a word, grade -1.3 (status: secondary)."""
    assert -1.3 == round(Count(5700, 1000, 5814).grade, 1)


def test_lowest_grade_is_that_of_one_word_of_one_syllable() -> None:
    """Source: the same article, -3.40."""
    assert -3.4 == pytest.approx(counted("Go!").grade)


def test_text_is_counted_for_the_formula() -> None:
    assert Count(16, 2, 16) == counted(CAT)


def test_published_sentence_is_counted_as_published() -> None:
    """Source: as above."""
    assert Count(13, 1, 24) == counted(PLATYPUS)


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("One. Two? Three!", ["One.", "Two?", "Three!"]),
        ("It fell by 3.5 mm. {a.b} fell.", ["It fell by 3.5 mm.", "{a.b} fell."]),
        ("Some, e.g. N2 and grass etc. dry out.", ["Some, e.g. N2 and grass etc. dry out."]),
        ("He said: “So it is.” Then he left.", ["He said: “So it is.", "Then he left."]),
        ("A heading\n\nA text\nover two lines", ["A heading", "A text\nover two lines"]),
        ("no sentence", ["no sentence"]),
        ("... – !", []),
        ("", []),
    ],
)
def test_sentences(text: str, found: list[str]) -> None:
    assert found == sentences(text)


def test_fact_is_one_word_of_one_syllable() -> None:
    assert counted("It is 5 here.") == counted("It is {biome/temperate_grassland:harrow_plain.potential_evapotranspiration} here.")


@pytest.mark.parametrize("text", ["", "...", "{", "\n\n", "{}"])
def test_text_without_words_or_nearly_so_has_a_grade(text: str) -> None:
    assert counted(text).grade <= 0


def told(record: str, grade: float = 9) -> list[tuple[object, str]]:
    return [(one.path, one.fragment) for one in hard_to_read(yaml.safe_load(record), grade)]


def test_hardest_sentence_of_a_text_is_told_once_with_its_counts() -> None:
    found = list(hard_to_read({"summary": f"{PLAIN} {HARD} {PLAIN}"}, 9))
    assert [(("summary",), HARD, "hard_to_read")] == [(one.path, one.fragment, one.rule) for one in found]
    assert f"one of grade {counted(HARD).grade:.1f} ({counted(HARD).words} words, {counted(HARD).syllables} syllables)" == found[0].found


def test_each_text_is_told() -> None:
    record = f"explanations: [{{chain: [{{says: '{HARD}'}}, {{says: '{PLAIN}'}}, {{says: '{HARD}'}}]}}]"
    assert [("explanations", 0, "chain", 0, "says"), ("explanations", 0, "chain", 2, "says")] == [path for path, _ in told(record)]


def test_threshold_is_the_grade_of_the_course_and_the_margin() -> None:
    grade = round(counted(HARD).grade, 1)
    assert ([], 1) == (told(f"summary: {HARD}", grade - MARGIN), len(told(f"summary: {HARD}", grade - MARGIN - 0.1)))


def test_short_sentences_are_never_told() -> None:
    words = ["eutrophication"] * (FEWEST_WORDS - 1)
    assert ([], 1) == (told(f"summary: {' '.join(words)}."), len(told(f"summary: {' '.join([*words, words[0]])}.")))


@pytest.mark.parametrize("field", ["holds_if", "credit", "not_enough", "units", "file"])
def test_what_students_do_not_read_is_not_judged(field: str) -> None:
    assert [] == told(f"{field}: '{HARD}'")


def test_passage_above_the_grade_is_told_at_its_hardest_sentence_even_if_no_sentence_is_far_above() -> None:
    middling = "The water of the river is carried to the estuary, where green algae grow."
    assert 5 < counted(middling).grade < 5 + MARGIN
    many = -(-PASSAGE // counted(middling).words)
    enough, few = [f"{{says: '{middling}'}}"] * many, [f"{{says: '{middling}'}}"] * (many - 1)
    assert [(("chain", 0, "says"), middling)] == told(f"chain: [{', '.join(enough)}]", 5)
    assert [] == told(f"chain: [{', '.join(few)}]", 5)
