"""The site in its place is the old one or the new one, and never somebody else's folder."""

from __future__ import annotations

import os
import subprocess
import sys
import textwrap
from pathlib import Path

import pytest

from generator.publish import swap
from generator.publish.swap import MARKER, SiteRefused, replacing

ROOT = Path(__file__).parents[2]


def build(target: Path, text: str) -> None:
    with replacing(target) as fresh:
        (fresh / "index.html").write_text(text)


def shown(target: Path) -> str:
    return (target / "index.html").read_text()


def names(folder: Path) -> list[str]:
    return sorted(entry.name for entry in folder.iterdir())


def killed(target: Path, where: str, text: str = "new") -> None:
    """Build in a process that ends without any clean-up at the given point, as one that was killed does."""
    script = f"""
        import os, pathlib
        from generator.publish import swap
        real = os.rename
        def rename(source, goal):
            if {where!r} == "before " + pathlib.Path(goal).name:
                os._exit(9)
            real(source, goal)
        def remove(folder, real=swap.remove):
            if {where!r} == "removing" and folder.name.endswith(".old") and folder.exists():
                (folder / "index.html").unlink()
                os._exit(9)
            real(folder)
        os.rename, swap.remove = rename, remove
        with swap.replacing(pathlib.Path({str(target)!r})) as fresh:
            (fresh / "index.html").write_text({text!r})
            if {where!r} == "building":
                os._exit(9)
    """
    done = subprocess.run([sys.executable, "-c", textwrap.dedent(script)], cwd=ROOT)
    assert 9 == done.returncode


def test_a_first_site_is_put_in_its_place_with_nothing_left_beside_it(tmp_path: Path) -> None:
    build(tmp_path / "site", "first")
    assert ["site"] == names(tmp_path)
    assert [MARKER, "index.html"] == names(tmp_path / "site")


def test_a_new_site_replaces_every_file_of_the_old_one(tmp_path: Path) -> None:
    with replacing(tmp_path / "site") as fresh:
        (fresh / "old.html").write_text("old")
    build(tmp_path / "site", "new")
    assert [MARKER, "index.html"] == names(tmp_path / "site")
    assert ["site"] == names(tmp_path)


def test_a_build_that_fails_leaves_the_old_site_and_no_other_trace(tmp_path: Path) -> None:
    build(tmp_path / "site", "old")
    with pytest.raises(RuntimeError, match="stop"), replacing(tmp_path / "site") as fresh:
        (fresh / "index.html").write_text("half")
        raise RuntimeError("stop")
    assert "old" == shown(tmp_path / "site")
    assert ["site"] == names(tmp_path)


def test_the_old_site_is_shown_while_the_new_one_is_built(tmp_path: Path) -> None:
    build(tmp_path / "site", "old")
    with replacing(tmp_path / "site") as fresh:
        (fresh / "index.html").write_text("new")
        assert "old" == shown(tmp_path / "site")
    assert "new" == shown(tmp_path / "site")


@pytest.mark.parametrize(
    ("where", "meanwhile"),
    [
        ("building", "old"),
        ("before .site.old", "old"),
        ("before site", None),
        ("removing", "new"),
    ],
)
def test_a_killed_run_is_put_right_by_the_next(tmp_path: Path, where: str, meanwhile: str | None) -> None:
    site = tmp_path / "site"
    build(site, "old")
    killed(site, where)
    assert meanwhile == (shown(site) if site.exists() else None)
    build(site, "next")
    assert "next" == shown(site)
    assert ["site"] == names(tmp_path)


def test_a_site_lost_between_two_renames_is_back_even_if_the_next_build_fails(tmp_path: Path) -> None:
    site = tmp_path / "site"
    build(site, "old")
    killed(site, "before site")
    with pytest.raises(RuntimeError), replacing(site):
        raise RuntimeError
    assert "old" == shown(site)
    assert ["site"] == names(tmp_path)


def test_a_first_build_that_was_killed_leaves_no_half_site(tmp_path: Path) -> None:
    killed(tmp_path / "site", "building")
    assert not (tmp_path / "site").exists()
    build(tmp_path / "site", "next")
    assert ["site"] == names(tmp_path)


def test_a_rename_that_fails_brings_the_old_site_back(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    site, real = tmp_path / "site", os.rename
    build(site, "old")

    def rename(source: Path, goal: Path) -> None:
        if Path(source).name == ".site.new":
            raise PermissionError(13, "Permission denied", str(source))
        real(source, goal)

    monkeypatch.setattr(swap.os, "rename", rename)
    with pytest.raises(SiteRefused, match="cannot be written"):
        build(site, "new")
    assert "old" == shown(site)
    assert ["site"] == names(tmp_path)


def test_a_folder_of_documents_is_refused_and_untouched(tmp_path: Path) -> None:
    documents = tmp_path / "Documents"
    documents.mkdir()
    (documents / "letter.odt").write_text("Dear parents")
    with pytest.raises(SiteRefused, match="studyguide did not write them"):
        build(documents, "new")
    assert ["letter.odt"] == names(documents)
    assert ["Documents"] == names(tmp_path)


@pytest.mark.parametrize("leftover", [".site.old", ".site.new"])
def test_a_foreign_folder_with_the_name_of_a_leftover_is_refused_and_untouched(tmp_path: Path, leftover: str) -> None:
    (tmp_path / leftover).mkdir()
    (tmp_path / leftover / "letter.odt").write_text("Dear parents")
    (tmp_path / "site").mkdir()
    with pytest.raises(SiteRefused, match="in the way"):
        build(tmp_path / "site", "new")
    assert ["letter.odt"] == names(tmp_path / leftover)


def test_an_empty_folder_is_taken(tmp_path: Path) -> None:
    (tmp_path / "site").mkdir()
    build(tmp_path / "site", "new")
    assert "new" == shown(tmp_path / "site")


def test_a_file_in_the_place_of_the_site_is_refused(tmp_path: Path) -> None:
    (tmp_path / "site").write_text("a file")
    with pytest.raises(SiteRefused, match="found a file"):
        build(tmp_path / "site", "new")
    assert "a file" == (tmp_path / "site").read_text()


def test_a_file_above_the_site_is_refused(tmp_path: Path) -> None:
    (tmp_path / "above").write_text("a file")
    with pytest.raises(SiteRefused, match="cannot be written"):
        build(tmp_path / "above" / "site", "new")
    assert "a file" == (tmp_path / "above").read_text()


def test_missing_folders_above_the_site_are_made(tmp_path: Path) -> None:
    build(tmp_path / "a" / "b" / "site", "new")
    assert "new" == shown(tmp_path / "a" / "b" / "site")


def test_a_symbolic_link_stays_and_the_folder_behind_it_is_replaced(tmp_path: Path) -> None:
    real = tmp_path / "server" / "guide"
    real.mkdir(parents=True)
    (tmp_path / "site").symlink_to(real, target_is_directory=True)
    build(tmp_path / "site", "new")
    assert (tmp_path / "site").is_symlink()
    assert "new" == shown(real)
    assert ["guide"] == names(tmp_path / "server")


def test_a_symbolic_link_to_a_folder_of_documents_is_refused(tmp_path: Path) -> None:
    documents = tmp_path / "Documents"
    documents.mkdir()
    (documents / "letter.odt").write_text("Dear parents")
    (tmp_path / "site").symlink_to(documents, target_is_directory=True)
    with pytest.raises(SiteRefused):
        build(tmp_path / "site", "new")
    assert ["letter.odt"] == names(documents)


def test_a_link_inside_the_old_site_is_removed_without_what_it_points_to(tmp_path: Path) -> None:
    (tmp_path / "kept").mkdir()
    (tmp_path / "kept" / "letter.odt").write_text("Dear parents")
    build(tmp_path / "site", "old")
    (tmp_path / "site" / "link").symlink_to(tmp_path / "kept", target_is_directory=True)
    build(tmp_path / "site", "new")
    assert ["letter.odt"] == names(tmp_path / "kept")


def test_two_builds_of_one_site_at_a_time_are_refused(tmp_path: Path) -> None:
    with replacing(tmp_path / "site") as fresh:
        (fresh / "index.html").write_text("first")
        with pytest.raises(SiteRefused, match="another build"):
            build(tmp_path / "site", "second")
    assert "first" == shown(tmp_path / "site")
    assert ["site"] == names(tmp_path)


def test_the_site_gets_the_permissions_of_any_new_folder(tmp_path: Path) -> None:
    (tmp_path / "any").mkdir()
    build(tmp_path / "site", "new")
    assert (tmp_path / "any").stat().st_mode == (tmp_path / "site").stat().st_mode
