"""Hints for written answers: one engine in the browser, one table of answers, the hints that a teacher would give to each."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
import yaml
from playwright.sync_api import Browser, Page

from generator.kinds import all_kinds
from generator.pages.asset_files import assets
from generator.pages.site import Site
from generator.pages.written_page import VAGUE_WORDS, coaching_script
from generator.written.coaching import task_of
from tests.kinds.small_records import library

pytestmark = pytest.mark.browser
TABLE = yaml.safe_load((Path(__file__).parent / "coaching_sentences.yaml").read_text("utf-8"))
NONE = [(part["task"], text) for part in TABLE for text in part["none"]]
ASKS = [(part["task"], row["text"], row["hints"]) for part in TABLE for row in part["asks"]]
RULES = ("parts", "echo", "data", "comparison", "links", "direction", "vague", "pronoun", "unit", "terms", "sentences")
JUDGING = re.compile(r"\b(?:right|wrong|correct\w*|incorrect\w*|good|well done|scores?|marks?|bad|mistakes?|errors?|grades?|points?|fail\w*)\b|[✓✗◐%]", re.IGNORECASE)
EXPLAIN = ASKS[0][0]


@pytest.fixture(scope="module")
def coach(browser: Browser) -> Iterator[Page]:
    page = browser.new_page()
    page.set_content("<!doctype html><title>Coach</title>")
    page.add_script_tag(content=assets()["assets/coaching.js"].decode())
    page.add_script_tag(content=coaching_script(Site(library=library(), kinds=all_kinds()))[VAGUE_WORDS].decode())
    yield page
    page.close()


def hints(coach: Page, cases: list[tuple[dict[str, Any], str]]) -> list[list[dict[str, str]]]:
    return coach.evaluate("cases => cases.map(([task, text]) => studyCoaching.hints(text, task))", [list(case) for case in cases])


def test_each_answer_gets_the_hints_that_a_teacher_would_give(coach: Page) -> None:
    found = hints(coach, [(task, text) for task, text, _ in ASKS])
    shown = [[[hint["rule"], hint["quote"]] for hint in one] for one in found]
    assert [] == [(text, [row[:2] for row in rows], is_) for (_, text, rows), is_ in zip(ASKS, shown, strict=True) if [row[:2] for row in rows] != is_]
    for (_, text, rows), one in zip(ASKS, found, strict=True):
        assert [] == [(text, row[2], hint["says"]) for row, hint in zip(rows, one, strict=True) if len(row) > 2 and row[2] not in hint["says"]]


def test_precise_answers_get_none(coach: Page) -> None:
    found = hints(coach, NONE)
    assert [] == [(text, [(hint["rule"], hint["quote"]) for hint in one]) for (_, text), one in zip(NONE, found, strict=True) if one]


def test_the_table_is_long_enough_and_names_every_rule() -> None:
    assert len(NONE) >= 60 and len(NONE) + len(ASKS) >= 170
    assert set(RULES) == {row[0] for _, _, rows in ASKS for row in rows}
    texts = [text for _, text in NONE] + [text for _, text, _ in ASKS]
    assert len(texts) == len(set(texts))


def test_no_hint_judges(coach: Page) -> None:
    """What is quoted of the answer does not count. The one sentence that stands beside hints says that it is no mark."""
    said = [hint["says"] for one in hints(coach, [(task, text) for task, text, _ in ASKS]) for hint in one]
    said += [f"You wrote “that”. {word.ask}" for word in library().vague_words]
    assert len(said) > 200
    assert [] == [says for says in said if JUDGING.search(re.sub(r"“[^”]*”", "", says))]
    assert coach.evaluate("studyCoaching.standing") == (
        "This is not a mark. The page cannot tell whether your science is right. Compare with the guide or ask your teacher."
    )


def test_a_hint_is_short_and_quotes_the_student_s_own_words(coach: Page) -> None:
    for (_, text, _), found in zip(ASKS, hints(coach, [(task, text) for task, text, _ in ASKS]), strict=True):
        assert len(found) <= 6
        for hint in found:
            assert hint["quote"] in text and hint["quote"] in hint["says"]
            assert hint["quote"] or hint["rule"] == "terms"
            assert len(hint["says"].split()) <= 40, hint["says"]


def test_hints_stand_in_one_order_and_come_out_the_same_each_time(coach: Page) -> None:
    cases = [(task, text) for task, text, _ in ASKS]
    found = hints(coach, cases)
    assert found == hints(coach, cases)
    order = [[RULES.index(hint["rule"]) for hint in one] for one in found]
    assert order == [sorted(one) for one in order]


def test_a_wordy_answer_full_of_doubts_gets_six_hints_at_most(coach: Page) -> None:
    task = EXPLAIN | {"data": True, "asked": 9, "terms": [{"term": "leaching", "also": []}]}
    (found,) = hints(coach, [(task, "It affects the polluted environment and the chemicals change. They are bad for stuff.")])
    assert ["parts", "data", "links", "direction", "vague", "vague"] == [hint["rule"] for hint in found]


def test_the_file_of_the_course_alone_says_what_is_vague(browser: Browser) -> None:
    page = browser.new_page()
    page.add_script_tag(content=assets()["assets/coaching.js"].decode())
    text = "The zorb does it because of light. Nitrate is a zorb, so it is named."

    def asked(words: list[dict[str, Any]]) -> list[tuple[str, str]]:
        page.evaluate("words => studyCoachingWords(words)", words)
        return [(hint["quote"], hint["says"]) for hint in hints(page, [(EXPLAIN, text)])[0] if hint["rule"] == "vague"]

    assert [] == [hint for hint in hints(page, [(EXPLAIN, text)])[0] if hint["rule"] == "vague"]
    assert [("zorb", "You wrote “zorb”. Which?")] == asked([{"words": ["zorb"], "ask": "Which?", "unless": ["nitr*"]}])
    assert [("The zorb", "You wrote “The zorb”. Which?")] == asked([{"words": ["zorb"], "ask": "What?"}, {"words": ["the zorb"], "ask": "Which?"}])[:1]
    assert [] == asked([{"words": ["zorb"], "ask": "Which?", "topics": ["energy"]}])
    assert 1 == len(asked([{"words": ["zorb"], "ask": "Which?", "topics": ["energy", "biomes"]}]))
    page.close()


def test_every_vague_spelling_of_the_course_is_asked_about(coach: Page) -> None:
    """By itself, with nothing around that would make it precise, the very spelling is quoted and its own question asked."""
    task = EXPLAIN | {"fewest": 1, "command": "define"}
    pairs = [(one, word) for one in library().vague_words for word in one.words]
    found = hints(coach, [(task, word) for _, word in pairs])
    assert [] == [
        (word, said) for (one, word), said in zip(pairs, found, strict=True)
        if [("vague", word, f"You wrote “{word}”. {one.ask}")] != [(hint["rule"], hint["quote"], hint["says"]) for hint in said if hint["rule"] == "vague"]
    ]  # fmt: skip


def sampled(coach: Page) -> list[tuple[int, int, list[str]]]:
    """Ideas earned, marks of the part and rules of the hints, for each sample answer in words: from record to hint."""
    words = library().vocabulary.values()
    parts = [(guided, guide) for guided in library().written for guide in guided.guides if guide.worked is None]
    cases = [(guide.part.marks, task_of(guide, guided.question.topic, library().command_words[guide.part.command_word], words), sample) for guided, guide in parts for sample in guide.samples]
    numbers = re.compile(r"\{[^}]*\}")  # facts stand as numbers with their units
    found = hints(coach, [(task, numbers.sub("12 mm", sample.text)) for _, task, sample in cases])
    return [(len(sample.earns), marks, [hint["rule"] for hint in one]) for (marks, _, sample), one in zip(cases, found, strict=True)]


def test_answers_that_earn_all_marks_are_mostly_left_alone(coach: Page) -> None:
    """Samples of the course were written and marked without regard to hints. A term that could be used is an offer, no doubt."""
    full = [set(rules) - {"terms"} for earned, marks, rules in sampled(coach) if earned >= marks]
    assert len(full) >= 15
    assert len([rules for rules in full if rules]) <= len(full) / 3


def test_answers_that_earn_nothing_are_mostly_asked_about(coach: Page) -> None:
    none = [rules for earned, _, rules in sampled(coach) if not earned]
    assert len(none) >= 15
    assert len([rules for rules in none if rules]) >= len(none) / 2


HOSTILE = {
    "one letter": "a" * 10_000, "no spaces": "it.they,this;" * 770, "vague words": "chemical " * 1_100, "long phrases": "bad for the " * 830,
    "emoji": "🌍🐟👩‍🔬" * 1_200, "punctuation": ".,;:!?-–—“”()[]{}" * 600, "right to left": "التلوث يؤثر على البيئة " * 430, "digits": "7 " * 5_000,
    "a sum": "12 + " * 2_000, "divisions": "1 ÷ " * 2_500, "one number": "9" * 10_000, "points": "1." * 5_000, "commas": "1,2 " * 2_500, "quotes": "'" * 10_000,
    "hyphens": "a-" * 5_000, "lines": "\n" * 10_000, "white space": " " * 10_000, "lone surrogates": "\ud800a " * 3_300, "markup": "<script>alert(1)</script> " * 400,
    "braces": "$&${x}\\1 " * 1_250, "changes": "it changes because " * 520, "from": "from 1 changes " * 660, "so": "so many as that " * 620, "nulls": "\0it is\0" * 1_400,
    "in brackets": "(1)" * 3_300, "combined": "é" * 5_000,
}  # fmt: skip
PROSE = "Rain washes nitrate out of the soil, so 12 kg reach the stream. It rises in winter, because roots take up less. "
QUICKEST = """cases => {
    const times = cases.map(() => Infinity)
    for (let round = 0; round < 6; round += 1) {
        cases.forEach(([task, text], n) => {
            const start = performance.now()
            studyCoaching.hints(text, task)
            times[n] = Math.min(times[n], performance.now() - start)
        })
    }
    return times
}"""
TIMES_PROSE = 20
"""A text that takes time by the square of its length takes some hundred times as long as prose; a busy machine makes it a few."""


@pytest.mark.parametrize("rules", ["explain", "compare", "predict", "state"])
def test_hostile_text_neither_throws_nor_takes_long(coach: Page, rules: str) -> None:
    """Against prose of the same length in the same run."""
    task = EXPLAIN | {"command": rules, "data": True, "asked": 3, "terms": [{"term": "leaching", "also": ["washing out"]}]}
    floor, *times = coach.evaluate(QUICKEST, [[task, text] for text in ((PROSE * 100)[:10_000], *HOSTILE.values())])
    assert {} == {name: time for name, time in zip(HOSTILE, times, strict=True) if time > TIMES_PROSE * floor}


@pytest.mark.parametrize("text", ["", "   ", "\n\n", "...", "?!", "😀", "—", "\u200b", "()", "-"])
def test_text_without_words_gets_no_hint(coach: Page, text: str) -> None:
    assert [[]] == hints(coach, [(EXPLAIN | {"data": True, "asked": 2, "terms": [{"term": "leaching", "also": []}]}, text)])


def test_a_bare_task_is_enough(coach: Page) -> None:
    assert [[]] == hints(coach, [({"command": "explain", "prompt": ""}, "Ice floats, because it is less dense than water.")])


def test_a_page_asks_about_what_was_written_and_says_that_it_is_no_mark(built_site: Path, opened: Callable[..., Page]) -> None:
    page = opened(f"{built_site.as_uri()}/written/plain-without-trees.html")
    part = page.locator('written-part[data-part="c"]')
    told = part.locator(".hints-told")
    part.locator("textarea").fill("It is dry, so trees do not like it.")
    part.get_by_role("button", name="Hints on my words").click()
    told.get_by_text("You wrote “is dry”.").wait_for()
    assert told.inner_text().endswith(page.evaluate("studyCoaching.standing"))
