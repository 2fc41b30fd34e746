"""The record files of a content folder."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from generator.records.folder import RecordFolder, read_folder

KINDS = ("biome", "cycle")
OTHERS = ("written", "course.yaml", "sources.yaml")


@pytest.fixture
def content(tmp_path: Path) -> Path:
    for name in ("biome/tundra.yaml", "biome/desert.yaml", "cycle/carbon.yaml", "written/a.yaml", "course.yaml"):
        put(tmp_path / "content", name)
    return tmp_path / "content"


def put(content: Path, name: str, text: str = "title: x\n") -> None:
    path = content / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")


def folder(content: Path) -> RecordFolder:
    return read_folder(content, KINDS, OTHERS)


def told(content: Path) -> list[tuple[str, str, str]]:
    return [(one.place.file, one.found, one.mend) for one in folder(content).problems]


def test_records_are_listed_by_kind_and_name(content: Path) -> None:
    found = folder(content)
    assert (("biome/desert", "biome/tundra", "cycle/carbon"), ()) == (found.ids, found.problems)


def test_file_is_called_by_its_path_from_the_content_folder(content: Path) -> None:
    assert "content/biome/desert.yaml" == folder(content).files[0].located.file


def test_broken_file_is_still_a_known_record(content: Path) -> None:
    put(content, "biome/desert.yaml", "title: [")
    assert "biome/desert" in folder(content).ids


@pytest.mark.parametrize(
    ("name", "known_as", "mend"),
    [
        ("Cold Steppe.yaml", "cold_steppe", "rename to cold_steppe.yaml"),
        ("steppe.yml", "steppe", "rename to steppe.yaml"),
        ("steppe.YAML", "steppe", "rename to steppe.yaml"),
        ("steppe.yaml.txt", "steppe", "rename to steppe.yaml"),
        ("2nd.yaml", "2nd", "rename it, beginning with a letter"),
    ],
)
def test_wrong_name_is_told_and_the_record_still_known(content: Path, name: str, known_as: str, mend: str) -> None:
    put(content, f"biome/{name}")
    assert [(f"content/biome/{name}", f'"{name}"', mend)] == told(content)
    assert f"biome/{known_as}" in folder(content).ids


def test_wrongly_named_double_does_not_hide_the_record(content: Path) -> None:
    put(content, "biome/Tundra.yaml", "title: other\n")
    assert ["x"] == [file.located.value["title"] for file in folder(content).files if file.id == "biome/tundra"]


@pytest.mark.parametrize("name", [".hidden.yaml", "~lock.yaml", "#tundra.yaml#", "notes.md", "pictures/steppe.png"])
def test_hidden_files_and_files_of_other_sorts_are_passed_over(content: Path, name: str) -> None:
    put(content, f"biome/{name}")
    assert [] == told(content)


def test_unknown_folder_is_told_with_the_kind_it_seems_to_mean(content: Path) -> None:
    put(content, "biomes/steppe.yaml")
    assert [("content/biomes", "an unknown folder", 'did you mean "biome"?')] == told(content)


def test_unknown_file_is_told(content: Path) -> None:
    put(content, "corse.yaml")
    put(content, "steppe.yaml")
    assert [
        ("content/corse.yaml", "an unknown one", 'did you mean "course.yaml"?'),
        ("content/steppe.yaml", "an unknown one", "move a record into the folder of its kind"),
    ] == told(content)


def test_records_in_a_folder_too_deep_are_told(content: Path) -> None:
    put(content, "biome/cold/steppe.yaml")
    assert [("content/biome/cold", "records in a folder of their own", "move them up into biome")] == told(content)


def test_folder_named_like_a_record_is_told_in_its_file(content: Path) -> None:
    (content / "biome/steppe.yaml").mkdir()
    steppe = next(file for file in folder(content).files if file.name == "steppe")
    assert ["a folder"] == [one.found for one in steppe.located.problems]


def test_link_to_itself_is_told(content: Path) -> None:
    (content / "biome/steppe.yaml").symlink_to("steppe.yaml")
    steppe = next(file for file in folder(content).files if file.name == "steppe")
    assert [(None, 1)] == [(steppe.located.value, len(steppe.located.problems))]


def test_folder_that_links_to_itself_is_told(content: Path) -> None:
    for path in (content / "cycle").iterdir():
        path.unlink()
    (content / "cycle").rmdir()
    (content / "cycle").symlink_to("cycle")
    assert ["content/cycle"] == [file for file, _, _ in told(content)]


def test_pipe_named_like_a_record_does_not_stop_the_run(content: Path) -> None:
    os.mkfifo(content / "biome/steppe.yaml")
    steppe = next(file for file in folder(content).files if file.name == "steppe")
    assert ["none that can be opened"] == [one.found for one in steppe.located.problems]


def test_name_that_is_not_unicode_can_be_printed(content: Path) -> None:
    path = os.fsencode(content / "biome") + b"/st\xe9ppe.yaml"
    Path(os.fsdecode(path)).write_text("title: x\n", encoding="utf-8")
    assert ["content/biome/st\ufffdppe.yaml"] == [file for file, _, _ in told(content)]


def test_missing_content_folder_is_told(tmp_path: Path) -> None:
    assert [("content", "none", "create it, or give its path")] == told(tmp_path / "content")


def test_kind_without_a_folder_has_no_records(tmp_path: Path) -> None:
    put(tmp_path / "content", "biome/tundra.yaml")
    assert ("biome/tundra",) == folder(tmp_path / "content").ids
