"""`studyguide guides` on the command line."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.test_cli import BROKEN, Run, make_project, project, run

__all__ = ["project", "run"]  # the fixtures of this module's tests
QUESTION = """\
title: Pike
topic: energy
stimulus: [{text: Look at the pike.}]
parts:
  - {id: a, command_word: state, marks: 1, needs: knowledge, prompt: State what pike eat., ideas: [{id: food, says: Perch.}], award: {rule: each}}
"""


def test_guides_are_written_for_teachers_and_doubts_are_counted(project: Path, run: Run) -> None:
    topic = next(line.split("id: ")[1].strip() for line in (project / "content/course.yaml").read_text("utf-8").splitlines() if "- id: " in line)
    (project / "content" / "written").mkdir(exist_ok=True)
    (project / "content" / "written" / "pike.yaml").write_text(QUESTION.replace("energy", topic), "utf-8")
    (project / "content" / "command_words.yaml").write_text(
        "command_words: [{id: state, word: State, asks: a word, not_enough: a hint, ideas: one, marks: [1, 1], model: Perch., near_miss: Fish.}]\n", "utf-8"
    )
    code, out, err = run("guides")
    assert (0, "") == (code, err)
    assert "1 written question, 2 doubts. All guides are in teacher/guides.html\n" == out
    assert "Perch." in (project / "teacher" / "guides.html").read_text("utf-8")


def test_guides_of_the_same_content_have_the_same_bytes(project: Path, run: Run) -> None:
    outputs = []
    for _ in range(2):
        outputs.append((run("guides"), (project / "teacher" / "guides.html").read_bytes()))
    assert outputs[0] == outputs[1]


def test_wrong_content_is_told_and_no_guides_written(tmp_path: Path, run: Run, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = make_project(tmp_path / "project", BROKEN)
    monkeypatch.chdir(folder)
    code, out, err = run("guides")
    assert (1, "", True) == (code, out, "expected a closing quote" in err)
    assert not (folder / "teacher").exists()
