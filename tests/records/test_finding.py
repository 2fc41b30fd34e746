"""Problems in the sense of a record, and warnings that its author accepts."""

from __future__ import annotations

from generator.diagnostics import Diagnostic, Place, Severity
from generator.records.finding import Finding, located_finding, without_accepted
from generator.records.located import Located, located
from generator.records.parts import AcceptedWarning

TEXT = b"""\
stations:
  - id: ebb
    rain: [1, 2]
    note: 'It''s {ebb.rain}'
accepted_warnings:
  - {warning: outside_range, reason: a cold year}
"""


def file() -> Located:
    return located(TEXT, "f")


def finding(severity: Severity = Severity.WARNING, rule: str = "outside_range", **more: object) -> Diagnostic:
    words = {"path": ("stations", 0, "rain", 1), "expected": "more", "found": "2", "mend": "check"} | more
    return located_finding(file(), Finding(severity=severity, rule=rule, **words))


def accepted(*names: str) -> list[AcceptedWarning]:
    return [AcceptedWarning(warning=name, reason="seen") for name in names]


def test_finding_is_told_at_its_value() -> None:
    assert (
        "f:3:15: warning: stations[0].rain[1] (February): expected more, found 2 [outside_range]\n    mend: check"
        == str(finding(note="February"))
    )


def test_finding_can_point_at_the_name_of_a_field() -> None:
    assert Place("f", 3, 5) == finding(path=("stations", 0, "rain"), at_key=True).place


def test_finding_can_point_into_a_text() -> None:
    assert Place("f", 4, 18) == finding(path=("stations", 0, "note"), fragment="{ebb.rain}").place


def test_finding_about_something_missing_stands_where_it_would_be() -> None:
    assert Place("f", 2, 5) == finding(path=("stations", 0, "latitude")).place


def test_accepted_warning_falls_silent() -> None:
    assert () == without_accepted(file(), accepted("outside_range"), [finding()])


def test_error_cannot_be_accepted() -> None:
    error = finding(Severity.ERROR, rule="outside_range")
    idle = without_accepted(file(), accepted("outside_range"), [error])
    assert (True, 2) == (error in idle, len(idle))


def test_other_warnings_stay() -> None:
    other = finding(rule="budget_open")
    assert (other,) == without_accepted(file(), accepted("outside_range"), [finding(), other])


def test_acceptance_of_nothing_is_a_warning() -> None:
    told = without_accepted(file(), accepted("outside_range"), [])
    assert [
        "f:6:15: warning: accepted_warnings[0].warning: expected a warning that this record gives, "
        'found "outside_range", which it does not give [nothing_to_accept]\n'
        "    mend: remove it: nothing to accept any more"
    ] == [str(one) for one in told]


def test_accepted_warning_is_not_offered_again() -> None:
    told = without_accepted(file(), accepted("outside_range", "outside_rang"), [finding()])
    assert ["remove it: nothing to accept any more"] == [one.mend for one in told]


def test_misspelt_acceptance_names_the_warning_that_it_means() -> None:
    told = without_accepted(file(), accepted("outside_rang"), [finding()])
    assert {"check", 'did you mean "outside_range"?'} == {one.mend for one in told}
