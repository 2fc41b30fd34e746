"""Written questions on the site: each with its plan, its samples to mark and its guide; their list; and what command words ask for."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from generator.course.course_file import Topic
from generator.diagnostics import listed
from generator.pages import figures, markup
from generator.pages.course_pages import render
from generator.pages.data_script import data_script
from generator.pages.page import Page, link
from generator.pages.part_guide import LINES_FOR_A_MARK, marks_in_words, number_box, teachers
from generator.pages.site import COMMAND_WORDS, VOCABULARY, WRITTEN, Site, command_word_anchor, part_anchor, shown_questions, topic_uri, word_anchor, written_uri
from generator.pages.written_again import again_uri, drawn_for
from generator.records.parts import SORTS
from generator.written.coaching import bank_of, outline_of, task_of
from generator.written.guide import Guided, PartGuide
from generator.written.record import SampleAnswer, Stimulus

VAGUE_WORDS = "assets/written/vague-words.js"
QUICK = 2
"""Marks up to which a part counts as quick, where all that it needs is in the data; else only what is worth one mark."""
NEEDS = {
    "data": "the data in front of you", "knowledge": "what you have learned", "both": "the data in front of you and what you have learned",
}  # fmt: skip


@dataclass(frozen=True)
class _Sample:
    """A sample answer as the page shows it."""

    text: str
    comment: str
    earns: str
    """Ids of the ideas that it earns, as a list in JSON."""
    earned: tuple[str, ...]
    """The same in words."""
    marks: int


def written_pages(site: Site) -> list[Page]:
    """The list, each question of a shown topic, and the command words; nothing where the course has no written questions."""
    shown = tuple(shown_questions(site))
    return [_index(site, shown), *(_question(site, guided) for guided in shown), _command_words(site)] if shown else []


def _topic(site: Site, guided: Guided) -> Topic:
    return next(topic for topic in site.library.course.topics if topic.id == guided.question.topic)


def _index(site: Site, shown: tuple[Guided, ...]) -> Page:
    lines = [(guided.question.title, written_uri(guided.name), _topic(site, guided).title, marks_in_words(site, guided.question.marks), _shown_minutes(_minutes(guided))) for guided in shown]
    body = render("written_index.md.j2", WRITTEN, lines=lines, command_words=COMMAND_WORDS)
    return Page(uri=WRITTEN, title="Written questions", description="Written questions with samples to mark and marking guides.", body=body)


def _question(site: Site, guided: Guided) -> Page:
    uri, question = written_uri(guided.name), guided.question
    topic = _topic(site, guided)
    words = site.library.command_words
    place = [one.name for one in shown_questions(site)].index(guided.name)
    parts = [_part(site, guide, guided, place) for guide in guided.guides]
    quick = [part.id for part in question.parts if part.marks == 1 or (part.marks <= QUICK and part.needs == "data")]
    slow = [part.id for part in question.parts if part.id not in quick]
    body = render(
        "written.md.j2", uri, question=question, topic=topic, topic_address=topic_uri(topic.id), marks=marks_in_words(site, question.marks),
        name=guided.name, minutes=_shown_minutes(_minutes(guided)), whole_minutes=round(_minutes(guided)), stimulus=[_stimulus(site, one, uri) for one in question.stimulus], parts=parts, quick=quick,
        slow=slow, words=words, word_link=lambda word: link(uri, f"{COMMAND_WORDS}#{command_word_anchor(word)}"), needs=NEEDS,
        sorts={sort: f"{sort} ({means})" for sort, means in SORTS.items()}, coaching_words=link(uri, VAGUE_WORDS), again=_again(site, guided, uri),
    )  # fmt: skip
    return Page(uri=uri, title=question.title, description=f"A written question for {marks_in_words(site, question.marks)}: {topic.title}.", body=body)


def _again(site: Site, guided: Guided, page: str) -> dict[str, Any] | None:
    """What offers the calculations with other numbers; nothing where none could be drawn."""
    drawn = drawn_for(site, guided)
    if not drawn:
        return None
    return {"address": link(page, again_uri(guided.name)), "parts": listed([guide.part.id for guide in drawn[0].question.guides], "and"), "sets": len(drawn)}


def _part(site: Site, guide: PartGuide, guided: Guided, place: int) -> dict[str, Any]:
    part, page = guide.part, written_uri(guided.name)
    verb, vocabulary = site.library.command_words[part.command_word], site.library.vocabulary.values()
    return {
        "part": part, "prompt": _with_facts(site, part.prompt, page), "marks": marks_in_words(site, part.marks), "minutes": _shown_minutes(guide.minutes),
        "lines": guide.lines, "rules": guide.rules, "anchor": part_anchor(part.id), "rule": part.award.rule or "parts", "answer": number_box(guide, guided), "samples": [_sample(site, guide, sample, page) for sample in guide.samples],
        "has_setup": guide.worked is not None, "ruled": range(LINES_FOR_A_MARK * part.marks), "cautions": part.cautions,
        "outline": outline_of(verb, place), "bank": [(term.word, link(page, f"{VOCABULARY}#{word_anchor(term.id)}")) for term in bank_of(guide, vocabulary)],
        "task": json.dumps(task_of(guide, guided.question.topic, verb, vocabulary), ensure_ascii=False), "teachers": teachers(site, guide, page),
    }  # fmt: skip


def _sample(site: Site, guide: PartGuide, sample: SampleAnswer, page: str) -> _Sample:
    earned = [line for line in guide.lines if line.id in sample.earns]
    marks = min(sum(line.marks for line in earned), guide.part.marks)
    whole = guide.part.award.rule != "all" or len(earned) == len(guide.lines)
    return _Sample(
        _with_facts(site, sample.text, page), _with_facts(site, sample.comment, page), json.dumps(sample.earns), tuple(line.says for line in earned),
        (guide.part.marks if guide.part.award.rule == "all" else marks) if whole and earned else 0,
    )  # fmt: skip


def _stimulus(site: Site, stimulus: Stimulus, page: str) -> str:
    """A paragraph, a chart with its table, or the table alone, as HTML."""
    if stimulus.text:
        return f"<p>{_with_facts(site, stimulus.text, page)}</p>"
    record, _, name = (stimulus.chart or stimulus.table or "").partition("#")
    chart = site.charts_of(record)[name]
    if stimulus.chart:
        return figures.asked_figure(chart, page)
    return f'<figure class="table">\n{figures.data_table(chart.table)}\n<figcaption>{markup.prose(chart.title)}</figcaption>\n</figure>'


def _with_facts(site: Site, text: str, page: str) -> str:
    """Facts stand as numbers, without links: a link would lead to workings that tell the answer."""
    return markup.with_facts(text, lambda key: site.library.subjects[key.partition(":")[0]].facts[key.partition(":")[2]], lambda _: "")


def _minutes(guided: Guided) -> float:
    return sum(guide.minutes for guide in guided.guides)


def _shown_minutes(exact: float) -> str:
    minutes = round(exact)
    return f"{minutes} minute{'' if minutes == 1 else 's'}"


def _command_words(site: Site) -> Page:
    words = sorted(site.library.command_words.values(), key=lambda word: word.word.casefold())
    body = render("command_words.md.j2", COMMAND_WORDS, words=words, anchor=command_word_anchor, index=WRITTEN)
    return Page(uri=COMMAND_WORDS, title="Command words", description="What the verbs of written questions ask for, with a model and a near miss.", body=body)


def coaching_script(site: Site) -> Mapping[str, bytes]:
    """The vague words of the course, as hints on written answers need them; nothing where there are no written questions."""
    words = [word.model_dump(mode="json", exclude_defaults=True) for word in site.library.vague_words]
    return {VAGUE_WORDS: data_script("studyCoachingWords", words)} if any(shown_questions(site)) else {}


def written_navigation(site: Site) -> list[dict[str, Any]]:
    """The entry of the navigation, or none."""
    shown = tuple(shown_questions(site))
    questions: list[dict[str, Any]] = [{markup.escaped(guided.question.title): written_uri(guided.name)} for guided in shown]
    return [{"Written questions": [WRITTEN, *questions, {"Command words": COMMAND_WORDS}]}] if shown else []


