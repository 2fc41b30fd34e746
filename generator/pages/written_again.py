"""The scripts with the calculations of written questions again, with other numbers; a page loads its own only when a student asks for it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from figures import DataTable

from generator.pages import figures
from generator.pages.course_pages import render
from generator.pages.data_script import data_script, script_name
from generator.pages.markup import prose
from generator.pages.part_guide import LINES_FOR_A_MARK, marks_in_words, number_box, teachers
from generator.pages.remembered import RememberedQuestion
from generator.pages.site import Site, shown_questions, written_uri
from generator.written.guide import Guided, PartGuide
from generator.written.variants import Variant, variants


def again_uri(question: str) -> str:
    """The script of a question, below the pages folder."""
    return f"assets/again/{script_name(question)}"


def again_scripts(site: Site) -> Mapping[str, bytes]:
    """The script of every question on the site that has sets of other numbers."""
    return {again_uri(guided.name): _script(site, guided) for guided in shown_questions(site) if drawn_for(site, guided)}


@RememberedQuestion
def drawn_for(site: Site, guided: Guided) -> tuple[Variant, ...]:
    """The sets of other numbers for the calculations of a question."""
    return variants(guided).drawn


@RememberedQuestion
def _script(site: Site, guided: Guided) -> bytes:
    """The sets by the lines of their HTML, each line that comes again and again held once."""
    lines: dict[str, int] = {}
    sets = [
        [lines.setdefault(line, len(lines)) for line in _set(site, one, place).splitlines()]
        for place, one in enumerate(drawn_for(site, guided), start=1)
    ]  # fmt: skip
    return data_script("studyAgain", guided.name, list(lines), sets)


def _set(site: Site, variant: Variant, place: int) -> str:
    """What is given and the parts, as HTML; drafts are kept under a name of its own, for each set has other numbers."""
    guided = variant.question
    return render(
        "written_again.html.j2", "", name=f"{guided.name}/again/{place}",
        stimulus=[f"<p>{prose(one)}</p>" if isinstance(one, str) else figures.data_table(one) for one in variant.stimulus],
        parts=[_part(site, guide, guided, place) for guide in guided.guides],
    )  # fmt: skip


def _part(site: Site, guide: PartGuide, guided: Guided, place: int) -> dict[str, Any]:
    return {
        "part": guide.part, "marks": marks_in_words(site, guide.part.marks), "prompt": prose(guide.prompt), "answer": number_box(guide, guided, f"{guided.name.replace('_', '-')}-again-{place}"),
        "ruled": range(LINES_FOR_A_MARK * guide.part.marks), "rules": guide.rules, "lines": guide.lines, "teachers": teachers(site, guide, written_uri(guided.name)),
    }  # fmt: skip
