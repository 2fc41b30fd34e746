"""Marking guides as one file for the teacher, to read and to print: outside the site, and complete in itself."""

from __future__ import annotations

from typing import Any

from generator.course.guide_review import Review, Reviewed
from generator.pages import figures, markup
from generator.pages.course_pages import render
from generator.pages.site import Site
from generator.records.parts import SORTS
from generator.written.guide import PartGuide
from generator.written.record import SampleAnswer, Stimulus
from generator.written.variants import Variant

NOT_NAMED = "sort not named"


def guides_sheet(site: Site, review: Review) -> str:
    """The whole file as HTML."""
    course = site.library.course
    return render(
        "guides.html.j2", "", review=review, questions=[_question(site, one) for one in review.questions], sorts=_sorts(review.sorts), says=SORTS,
        marks=sum(one.guided.question.marks for one in review.questions), minutes=_rounded(sum(one.minutes for one in review.questions)),
        marks_word=course.marks_word, per_mark=f"{course.marking_rules.minutes_per_mark:g}",
    )  # fmt: skip


def _question(site: Site, one: Reviewed) -> dict[str, Any]:
    question = one.guided.question
    return {
        "one": one, "title": question.title, "marks": question.marks, "minutes": _rounded(one.minutes), "sorts": _sorts(one.sorts),
        "stimulus": [_stimulus(site, one, entry) for entry in question.stimulus], "parts": [_part(site, guide) for guide in one.guided.guides],
        "sets": [(_given(variant), variant.question.guides) for variant in one.drawn],
    }  # fmt: skip


def _given(variant: Variant) -> list[str]:
    """What students are given with other numbers."""
    return [f"<p>{markup.prose(one)}</p>" if isinstance(one, str) else figures.data_table(one) for one in variant.stimulus]


def _part(site: Site, guide: PartGuide) -> dict[str, Any]:
    part = guide.part
    return {
        "guide": guide, "part": part, "word": site.library.command_words[part.command_word].word, "minutes": _rounded(guide.minutes),
        "slips": guide.worked.entry.slips if guide.worked else (), "samples": [_sample(guide, sample) for sample in guide.samples],
    }  # fmt: skip


def _sample(guide: PartGuide, sample: SampleAnswer) -> tuple[SampleAnswer, str]:
    """The sample with what it earns, by the ids of the guide's lines."""
    earned = [line.id for line in guide.lines if line.id in sample.earns]
    return sample, ", ".join(earned) or "nothing"


def _stimulus(site: Site, of: Reviewed, stimulus: Stimulus) -> str:
    """A paragraph; a chart by its title and its table, for the drawing stands on the site."""
    if stimulus.text:
        return f"<p>{markup.prose(of.guided.materials.filled(stimulus.text))}</p>"
    record, _, name = (stimulus.chart or stimulus.table or "").partition("#")
    chart = site.charts_of(record)[name]
    what = "Diagram" if stimulus.chart else "Table"
    return f"<figure>\n<figcaption>{what}: {markup.prose(chart.title)}. {markup.prose(chart.description)}</figcaption>\n{figures.data_table(chart.table)}\n</figure>"


def _sorts(counts: Any) -> list[tuple[str, int]]:
    """In the order of `SORTS`."""
    order = (*SORTS, "")
    return [(sort or NOT_NAMED, counts[sort]) for sort in order if counts.get(sort)]


def _rounded(minutes: float) -> str:
    return f"{round(minutes)}"
