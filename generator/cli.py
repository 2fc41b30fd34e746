"""Words on the command line, one call, an exit code: 0 fine, 1 the content is wrong, 2 wrong usage, 70 our own bug."""

from __future__ import annotations

import io
import json
import os
import sys
import traceback
from pathlib import Path

import click

from generator.diagnostics import ContentErrors, Diagnostic, did_you_mean, few_of, report, shown_path

WRONG_CONTENT, WRONG_USAGE, OUR_BUG = 1, 2, 70
REFUSED = (PermissionError, NotADirectoryError, IsADirectoryError, FileExistsError)
"""What the system answers where a folder or a file is not as the command needs it."""
CONTENT = click.option("--content", type=click.Path(path_type=Path), help="Folder of records; by default content/.")
WORK = click.option("--work", type=click.Path(path_type=Path), help="Folder for what is made on the way; by default build/.")


@click.group(context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 100})
def studyguide() -> None:
    """Turn the records in content/ into a study site that works offline."""


@studyguide.command()
@CONTENT
def check(content: Path | None) -> None:
    """Tell everything that is wrong or doubtful in the content; write nothing."""
    from generator.build import check as checked

    folder, name = _content(content)
    library = checked(folder, name)
    _tell(library.warnings)
    questions = sum(len(asked) for asked in library.questions.values())
    click.echo(f"{_count(len(library.subjects), 'record')} checked, {_count(questions, 'question')} made.")


@studyguide.command()
@CONTENT
@click.option("--out", type=click.Path(path_type=Path), help="The site's own folder; by default site/.")
@WORK
def build(content: Path | None, out: Path | None, work: Path | None) -> None:
    """Build the site into a fresh folder, then put it in the place of the old one."""
    from generator.publish.site import build_site
    from generator.publish.swap import SiteRefused

    folder, _ = _content(content)
    try:
        published = build_site(_project(), content=folder, out=out, work=work)
    except SiteRefused as refused:
        raise click.UsageError(str(refused)) from refused
    _tell(published.warnings)
    click.echo(f"{_count(published.pages, 'page')} in {_shown(published.site)}. Open {_shown(published.site / 'index.html')}")


@studyguide.command()
@click.argument("record")
@click.option("--json", "as_json", is_flag=True, help="Print one JSON object.")
@CONTENT
def facts(record: str, as_json: bool, content: Path | None) -> None:
    """Print every number of RECORD (kind/name, or its name alone) with unit, working and sources."""
    from generator.build import facts_of, known_records

    folder, name = _content(content)
    known = known_records(folder)
    matches = [one for one in known if record in (one, one.partition("/")[2])]
    if len(matches) != 1:
        found = f"{record} is the name of several records" if matches else f"no record {record}"
        hint = f"say which: {', '.join(matches)}" if matches else _suggestion(record, known)
        raise click.UsageError(f"{found}; {hint}")
    found_facts = facts_of(folder, matches[0], name)
    if as_json:
        click.echo(_json({"record": matches[0], "facts": found_facts}))
        return
    if not found_facts:
        click.echo(f"{matches[0]} has no numbers of its own; its texts may name those of other records.")
    for fact_id, fact in found_facts.items():
        click.echo(f"{fact_id}: {fact['shown']}")
        for line in str(fact["working"]).splitlines():
            click.echo(f"    {line}")
        if fact["sources"]:
            click.echo(f"    source: {', '.join(fact['sources'])}")


@studyguide.command()
@CONTENT
def coverage(content: Path | None) -> None:
    """Show which records and questions serve each objective, and what is left open; also for the folder teacher/."""
    from generator.build import write_coverage
    from generator.course.coverage_text import table

    folder, name = _content(content)
    found, file = write_coverage(folder, folder.resolve().parent / "teacher", name)
    click.echo(f"{table(found)}\n\n{_count(len(found.gaps), 'gap')}. With every prompt in {_shown(file)}")


@studyguide.command()
@CONTENT
def guides(content: Path | None) -> None:
    """Write the marking guides of all written questions, with what is doubtful in them, as one file for the folder teacher/."""
    from generator.build import write_guides

    folder, name = _content(content)
    found, file = write_guides(folder, folder.resolve().parent / "teacher", name)
    doubts = sum(len(one.warnings) for one in found.questions)
    click.echo(f"{_count(len(found.questions), 'written question')}, {_count(doubts, 'doubt')}. All guides are in {_shown(file)}")


@studyguide.command()
@CONTENT
@click.option("--site", type=click.Path(path_type=Path), help="The built site that they are made from; by default site/.")
@click.option("--out", type=click.Path(path_type=Path), help="Where to put them; by default handouts/.")
@click.option("--booklets/--no-booklets", default=True, help="A booklet of each topic as PDF too, if there is a Chromium.  [default: booklets]")
@click.option("--answers/--no-answers", default=True, help="Answers at the end of a booklet.  [default: answers]")
def handouts(content: Path | None, site: Path | None, out: Path | None, booklets: bool, answers: bool) -> None:
    """Write each topic of the built site as one file that works alone, to send and to open on a phone, and as a booklet to print."""
    from generator.publish.booklet import NotPrinted, chromium
    from generator.publish.handout import PageMissing
    from generator.publish.handouts import write_handouts

    folder, name = _content(content)
    built, target = site or _project() / "site", out or _project() / "handouts"
    if not (built / "index.html").is_file():
        raise click.UsageError(f"no site in {_shown(built)}; run `studyguide build` first")
    program = chromium() if booklets else None
    if booklets and not program:
        click.echo("No Chromium found, which prints the booklets: set CHROMIUM to its path. The files for phones are written.", err=True)
    try:
        for given in write_handouts(folder, built, target, name, program, answers=answers):
            click.echo(f"{_shown(given.path)}: {given.size / 1e6:.2f} MB")
    except (PageMissing, NotPrinted) as refused:
        raise click.UsageError(str(refused)) from refused


@studyguide.command()
@click.argument("kind")
@click.argument("name")
@click.option("--from", "source", type=click.Path(path_type=Path, exists=True, dir_okay=False), help="A table of its numbers, saved as CSV.")
@click.option("--title", default="", help="Its title; by default the name in words.")
@CONTENT
def new(kind: str, name: str, source: Path | None, title: str, content: Path | None) -> None:
    """Write a commented record that builds as it is: KIND/NAME.yaml in the content folder."""
    from generator.course.new_record import NotCreated, create
    from generator.kinds import all_kinds

    folder, shown = _content(content)
    try:
        made = create(folder, all_kinds(), kind, name, title=title, source=source and (source, _shown(source)))
    except NotCreated as refused:
        raise click.UsageError(str(refused)) from refused
    for note in made.notes:
        click.echo(note, err=True)
    click.echo(f"{_shown(made.path)} is written. Next: add {made.id} to the `records:` of a topic in {shown}/course.yaml, then edit the record.")


@studyguide.command()
@click.option("--port", type=click.IntRange(1, 65535), default=8000, show_default=True, help="Where on this computer to serve it.")
@CONTENT
@WORK
def preview(port: int, content: Path | None, work: Path | None) -> None:
    """Serve the site on this computer and show each change as soon as a file is saved; Ctrl-C ends it."""
    from generator.publish.preview import serve
    from generator.publish.swap import SiteRefused

    folder, name = _content(content)
    try:
        serve(_project(), content=folder, work=work, port=port, name=name)
    except SiteRefused as refused:
        raise click.UsageError(str(refused)) from refused


def main() -> int:
    """Run the command line and return its exit code."""
    _print_what_can_be_printed()
    try:
        studyguide.main(standalone_mode=False, prog_name="studyguide")
        sys.stdout.flush()
    except ContentErrors as errors:
        click.echo(report(errors.diagnostics, written=False), err=True)
        return WRONG_CONTENT
    except click.ClickException as error:
        error.show()
        return WRONG_USAGE
    except (click.Abort, KeyboardInterrupt):
        click.echo("Stopped.", err=True)
        return 130
    except SystemExit:  # click's own answer to a reader that has seen enough, such as `head`
        return 0
    except BrokenPipeError:  # the same while flushing; without a place for the rest, Python would complain when it ends
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except REFUSED as refusal:
        click.echo(f"{refusal.filename}: expected a file or folder that can be read and written, found: {refusal.strerror}", err=True)
        return WRONG_USAGE
    except Exception:
        traceback.print_exc()
        click.echo("This is a fault of the generator, not of your content. Please report the lines above.", err=True)
        return OUR_BUG
    return 0


def _print_what_can_be_printed() -> None:
    """Let a terminal that knows no ² show ? instead of ending the run."""
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(errors="replace")


def _json(data: object) -> str:
    """JSON that survives any terminal: other than ASCII only where the output is Unicode."""
    unicode = (sys.stdout.encoding or "").lower().startswith("utf")
    return json.dumps(data, ensure_ascii=not unicode, allow_nan=False, indent=2)


def _project() -> Path:
    """The nearest folder at or above the current one that holds a mkdocs.yml."""
    project = _nearest_project()
    if project is None:
        raise click.UsageError(f"no mkdocs.yml in {Path.cwd()} or above it; change into the folder of the course")
    return project


def _nearest_project() -> Path | None:
    here = Path.cwd()
    return next((folder for folder in (here, *here.parents) if (folder / "mkdocs.yml").is_file()), None)


def _content(content: Path | None) -> tuple[Path, str]:
    """The content folder, and what messages call it."""
    folder = content or _project() / "content"
    if not folder.is_dir():
        raise click.UsageError(f"{folder} is not a folder; give the one that holds course.yaml with --content")
    return folder, shown_path(folder, _nearest_project() or Path.cwd())


def _shown(path: Path) -> str:
    """The path as seen from here, with / on every system."""
    try:
        return path.resolve().relative_to(Path.cwd()).as_posix() or "."
    except ValueError:
        return path.as_posix()


def _tell(warnings: tuple[Diagnostic, ...]) -> None:
    if warnings:
        click.echo(report(warnings), err=True)


def _suggestion(record: str, known: tuple[str, ...]) -> str:
    names = [*known, *(one.partition("/")[2] for one in known)]
    return did_you_mean(record, names, few_of(record, known, "records"))


def _count(number: int, noun: str) -> str:
    return f"{number} {noun}" if number == 1 else f"{number} {noun}s"


