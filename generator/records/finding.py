"""What a kind finds wrong with the sense of a record, told at its place; accepted warnings fall silent."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from generator.diagnostics import Diagnostic, Severity, did_you_mean, in_order
from generator.records.field_path import FieldPath, pointed
from generator.records.located import Located
from generator.records.parts import AcceptedWarning

IDLE_ACCEPTANCE = "nothing_to_accept"


@dataclass(frozen=True, kw_only=True)
class Finding:
    """A problem of a record that is well formed."""

    path: FieldPath
    """Where; for something that is missing, where it would stand."""
    expected: str
    found: str
    mend: str
    severity: Severity = Severity.ERROR
    rule: str = ""
    """The snake_case name by which the record can accept a warning; errors have none."""
    fragment: str = ""
    """The piece of the text at the path that is meant."""
    after: int = 0
    """How many characters of the text stand before the place from which the fragment is looked for."""
    note: str = ""
    """Put behind the field's name: `February`."""
    at_key: bool = False
    """Whether the field's name is meant, not its value."""


def located_finding(located: Located, finding: Finding) -> Diagnostic:
    """The finding as a diagnostic at its place in the file."""
    if finding.fragment:
        place = located.place_in_text(finding.path, finding.fragment, finding.after)
    else:
        place = located.key_place(finding.path) if finding.at_key else located.place(finding.path)
    field = pointed(finding.path, finding.note)
    return Diagnostic(place, field, finding.expected, finding.found, finding.mend, finding.severity, finding.rule)


def without_accepted(
    located: Located, accepted: Sequence[AcceptedWarning], diagnostics: Iterable[Diagnostic]
) -> tuple[Diagnostic, ...]:
    """All diagnostics of one record less the accepted warnings; an acceptance of nothing is a warning itself.

    Call it once per record, when everything that can be said about the record has been said.
    """
    diagnostics = list(diagnostics)
    rules = {one.rule for one in diagnostics if one.severity is Severity.WARNING and one.rule}
    names = {one.warning for one in accepted}
    idle = [_idle(located, at, one, rules - names) for at, one in enumerate(accepted) if one.warning not in rules]
    left = [one for one in diagnostics if one.severity is Severity.ERROR or one.rule not in names]
    return in_order([*left, *idle])


def _idle(located: Located, at: int, one: AcceptedWarning, open_rules: set[str]) -> Diagnostic:
    mend = did_you_mean(one.warning, open_rules, "remove it: nothing to accept any more")
    return located_finding(
        located,
        Finding(
            path=("accepted_warnings", at, "warning"),
            expected="a warning that this record gives",
            found=f'"{one.warning}", which it does not give',
            mend=mend,
            severity=Severity.WARNING,
            rule=IDLE_ACCEPTANCE,
        ),
    )
