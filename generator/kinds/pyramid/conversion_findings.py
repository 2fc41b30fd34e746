"""What does not fit in the conversions and the catch of a pyramid: units, missing factors, levels that are not there."""

from __future__ import annotations

from collections.abc import Iterator

from generator.diagnostics import Severity, did_you_mean, listed
from generator.kinds.pyramid.flows import CARBON, DRY_MATTER, ENERGY
from generator.kinds.pyramid.record import PyramidRecord
from generator.quantities.units import Unit, UnitError, unit
from generator.records.field_path import FieldPath
from generator.records.finding import Finding

FACTORS = ("energy_per_carbon", "carbon_per_dry_matter", "energy_per_dry_matter")
CATCHES = (DRY_MATTER, unit("t/yr"))


def conversion_findings(record: PyramidRecord) -> Iterator[Finding]:
    """Units that do not fit, and factors that are missing or said twice."""
    flow, told = record.units.energy_flow, record.conversions
    source, why = _read(flow)
    if source is None or not any(source.same_kind(kind) for kind in (ENERGY, CARBON, DRY_MATTER)):
        mend = why or f"write {ENERGY.label}, or g C/m2/yr or g/m2/yr with conversions"
        yield _wrong(("units", "energy_flow"), f"a unit such as {ENERGY.label}", flow, mend)
    elif missing := _missing(record, source):
        yield _wrong(("units", "energy_flow"), f"a unit such as {ENERGY.label}", flow, f"write {ENERGY.label}, or {_add(missing)}")
    if told and told.to is not None:
        to, why = _read(told.to)
        if to is None or not to.same_kind(ENERGY):
            yield _wrong(("conversions", "to"), f"a unit such as {ENERGY.label}", told.to, why or f"write {ENERGY.label}")
    if told and told.energy_per_dry_matter is not None and told.carbon_per_dry_matter is not None:
        yield Finding(
            path=("conversions", "energy_per_dry_matter"), expected="energy_per_dry_matter or carbon_per_dry_matter", found="both",
            mend="remove one: dry matter is turned into energy in one way",
        )  # fmt: skip


def _missing(record: PyramidRecord, source: Unit) -> str:
    """The factor without which flows in this unit are no energy."""
    told = record.conversions
    per_carbon = bool(told and told.energy_per_carbon is not None)
    if source.same_kind(CARBON) and not per_carbon:
        return "energy_per_carbon"
    by_carbon = per_carbon and told is not None and told.carbon_per_dry_matter is not None
    if source.same_kind(DRY_MATTER) and not by_carbon and not (told and told.energy_per_dry_matter is not None):
        return "energy_per_dry_matter"
    return ""


def _add(missing: str) -> str:
    example = {"energy_per_carbon": "45}, in kJ for each g of carbon", "energy_per_dry_matter": "20}, in kJ for each g of dry matter"}
    return f"add conversions: {{{missing}: {example[missing]}"


def conversion_doubts(record: PyramidRecord) -> Iterator[Finding]:
    """Factors that convert nothing."""
    told = record.conversions
    source, _ = _read(record.units.energy_flow)
    if told is None or source is None:
        return
    dry = source.same_kind(DRY_MATTER)
    by_carbon = dry and told.carbon_per_dry_matter is not None
    used = {
        "energy_per_carbon": source.same_kind(CARBON) or by_carbon or record.catch is not None,
        "carbon_per_dry_matter": dry, "energy_per_dry_matter": dry,
    }  # fmt: skip
    for field in FACTORS:
        number = getattr(told, field)
        if number is not None and not used[field]:
            yield Finding(
                path=("conversions", field), expected=f"a factor for flows in {source.shown}", found=f"{number:g}, which nothing uses",
                severity=Severity.WARNING, rule="unused_factor", mend="remove it, or state the flows in the unit that it is for",
            )  # fmt: skip


def catch_findings(record: PyramidRecord) -> Iterator[Finding]:
    """A catch of levels that are not there, or in a unit that is none of mass a year."""
    if record.catch is None:
        return
    levels = [level.id for level in record.levels]
    for index, taken in enumerate(record.catch.taken):
        if taken.level not in levels:
            yield Finding(
                path=("catch", "taken", index, "level"), expected="the id of a level", found=f'"{taken.level}"',
                mend=did_you_mean(taken.level, levels, f"write one of {listed(levels)}"),
            )  # fmt: skip
    label = record.units.catch
    found, why = _read(label)
    if found is None or not any(found.same_kind(kind) for kind in CATCHES):
        expected = "a unit such as g/m2/yr, kg/ha/yr or t/yr"
        yield _wrong(("units", "catch"), expected, label, why or "a catch is fresh mass in a year, from an area or in all")


def _read(label: str) -> tuple[Unit | None, str]:
    try:
        return unit(label), ""
    except UnitError as error:
        return None, str(error)


def _wrong(path: FieldPath, expected: str, found: str, mend: str) -> Finding:
    return Finding(path=path, expected=expected, found=f'"{found}"', mend=mend)
