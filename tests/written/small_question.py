"""A written question of a few lines about the demo course, and what it is read against."""

from __future__ import annotations

from generator.course.written_questions import Around, read_written
from generator.diagnostics import Diagnostic, Severity
from generator.kinds import all_kinds
from generator.records.folder import RecordFile
from generator.records.located import located
from generator.written.guide import Guided
from tests.kinds.small_records import files, library

AROUND = Around(
    subjects=library().subjects, kinds=all_kinds(), records=tuple(library().subjects), topics=("biomes",),
    command_words=library().command_words, catalogue=library().catalogue, files=files(),
)  # fmt: skip
HEAD = "title: A title\ntopic: biomes\nstimulus: [{text: Look at the share of the trees.}]\n"
SAMPLES = "samples: [{text: All., earns: [%s], comment: All.}, {text: Part., earns: [], comment: Off.}, {text: None., comment: No.}]"
CALCULATION = """\
parts:
  - id: a
    command_word: calculate
    marks: 2
    needs: data
    prompt: Calculate the share.
    calculate:
      given: {part: 'pyramid/sill_lake:pike.production', whole: 'pyramid/sill_lake:perch.production'}
      expression: part / whole
      unit: percent
      slips: [{expression: whole / part, misconception: carb.pct-whole, how: turning it round}]
    award: {setup: 1, answer: 1}
    """ + SAMPLES % "setup"
CARRYING = """\
  - id: b
    command_word: calculate
    marks: 2
    needs: data
    prompt: Calculate what is left of the share.
    calculate:
      given: {share: 'part:a'}
      expression: 1 - share
      unit: percent
      slips: [{expression: share, misconception: carb.pct-whole, how: giving the share itself}]
    award: {setup: 1, answer: 1}
    """ + SAMPLES % "setup"
"""A second part, which takes up the result of `CALCULATION`."""
READING = """\
parts:
  - id: a
    command_word: identify
    marks: 1
    needs: data
    prompt: Read off the elevation.
    read: {fact: 'biome/temperate_grassland:harrow_plain.elevation', gridline: 100}
    award: {answer: 1}
"""
CHAIN = """\
parts:
  - id: a
    command_word: explain
    marks: 3
    needs: both
    prompt: Explain why few trees grow on Harrow Plain.
    ideas: {from: 'biome/temperate_grassland#few_trees'}
    award: {rule: each}
    """ + SAMPLES % "demand"


def read(text: str, head: str = HEAD, around: Around = AROUND) -> tuple[Guided | None, tuple[Diagnostic, ...]]:
    """The question of a file, and what is wrong with it."""
    return read_written(RecordFile("written", "small", located(f"{head}{text}\n".encode(), "small.yaml")), around)


def sound(text: str, head: str = HEAD) -> Guided:
    """The question of a file in which nothing is wrong; it may be doubtful."""
    found, problems = read(text, head)
    assert [] == [one for one in problems if one.severity is Severity.ERROR] and found is not None
    return found


def told(text: str, head: str = HEAD) -> list[tuple[str, str, str]]:
    """Field, what was expected and what was found, of everything that is wrong."""
    return [(one.field, one.expected, one.found) for one in read(text, head)[1] if one.severity is Severity.ERROR]


def doubted(text: str, head: str = HEAD) -> list[tuple[str, str]]:
    """Field and name of every warning."""
    return [(one.field, one.rule) for one in read(text, head)[1] if one.severity is Severity.WARNING]
