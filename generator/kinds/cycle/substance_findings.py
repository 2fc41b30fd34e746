"""What does not fit in the conversions, ratios and fuels of a cycle."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.diagnostics import did_you_mean, listed
from generator.kind import NUMBERS
from generator.kinds.cycle.record import PPM, Conversion, CycleRecord
from generator.kinds.cycle.substance_facts import substance_of, with_substance
from generator.quantities.units import Unit, UnitError, unit
from generator.records.field_path import FieldPath
from generator.records.finding import Finding
from generator.science.substances import atoms, shared_atoms


def substance_findings(record: CycleRecord) -> Iterator[Finding]:
    """Quantities that are not there, substances that share nothing, units that do not fit, parts of one name."""
    known = _quantities(record)
    yield from _airborne(record)
    yield from _fuels(record)
    yield from _names(record)
    if not known:
        return
    seen: set[tuple[str, str]] = set()
    for c, conversion in enumerate(record.conversions):
        path: FieldPath = ("conversions", c)
        if (conversion.of, conversion.substance) in seen:
            yield Finding(path=path, expected="each conversion once", found=f'"{conversion.of}" as {conversion.substance} again', mend="remove it")
        seen.add((conversion.of, conversion.substance))
        if conversion.of in known:
            yield from _conversion(conversion, known[conversion.of], path)
        else:
            yield _unknown((*path, "of"), conversion.of, known)
    yield from _ratios(record, known)


def _quantities(record: CycleRecord) -> dict[str, Unit]:
    """The units of all stocks and flows, by the ids of their facts."""
    try:
        stock, flow = unit(record.units.stock), unit(record.units.flux)
    except UnitError:
        return {}  # told elsewhere, and then nothing here can be compared
    found = {f"{reservoir.id}.stock": stock for reservoir in record.reservoirs}
    found |= {f"{r.id}.{name}": flow for r in record.reservoirs for name in ("inflow", "outflow", "balance")}
    found |= {f"{reservoir.id}.change": flow for reservoir in record.reservoirs if reservoir.change is not None}
    return found | {f"{flux.id}.rate": flow for flux in record.fluxes}


def _unknown(path: FieldPath, named: str, known: Mapping[str, Unit]) -> Finding:
    mend = did_you_mean(named, known, "write a reservoir's stock, change, inflow, outflow or balance, or a flux's rate")
    return Finding(path=path, expected="a stock or a flow of this cycle", found=f'"{named}"', mend=mend)


def _conversion(conversion: Conversion, of: Unit, path: FieldPath) -> Iterator[Finding]:
    old = substance_of(of)
    if conversion.substance == PPM:
        if not any(of.same_kind(unit(label)) for label in ("Gt C", "Gt C/yr")):
            yield Finding(
                path=(*path, "as"), expected="ppm of carbon in the whole air only, as in Gt C or Gt C/yr", found=of.label,
                mend="choose a quantity in one of these units",
            )  # fmt: skip
        if conversion.unit is not None:
            yield Finding(path=(*path, "unit"), expected="no unit beside ppm", found=conversion.unit, mend="remove it", at_key=True)
        return
    try:
        shared_atoms(old or "none", conversion.substance)
    except ValueError:
        yield Finding(
            path=(*path, "as"), expected=f"a substance that holds the same element as {old or 'the unit, which names none'}",
            found=conversion.substance, mend="an element can only be counted in substances that it is part of",
        )  # fmt: skip
        return
    if conversion.unit is not None and not unit(conversion.unit).same_kind(with_substance(of, conversion.substance)):
        yield Finding(
            path=(*path, "unit"), expected=f"a unit such as {with_substance(of, conversion.substance).label}", found=conversion.unit,
            mend="write the same sort of unit with the other substance in it",
        )  # fmt: skip


def _ratios(record: CycleRecord, known: Mapping[str, Unit]) -> Iterator[Finding]:
    stated = {f"{NUMBERS}.{number.id}": unit(number.unit) for number in record.numbers}
    for r, ratio in enumerate(record.ratios):
        path: FieldPath = ("ratios", r)
        both = {**known, **stated}
        wrong = [_unknown((*path, field), key, both) for field, key in (("of", ratio.of), ("to", ratio.to)) if key not in both]
        yield from wrong
        if wrong:
            continue
        of, to = both[ratio.of], both[ratio.to]
        elements = [substance_of(one) for one in (of, to)]
        if not all(len(element) == 1 for element in elements) or not with_substance(of, "C").same_kind(with_substance(to, "C")):
            yield Finding(
                path=path, expected="two elements in like units, such as Tg N and Tg P", found=f"{of.label} and {to.label}",
                mend="choose two stocks or two flows, each with an element in its unit",
            )  # fmt: skip


def _airborne(record: CycleRecord) -> Iterator[Finding]:
    if (about := record.airborne_fraction) is None:
        return
    changing = {reservoir.id for reservoir in record.reservoirs if reservoir.change is not None}
    fluxes = {flux.id for flux in record.fluxes}
    if about.air not in changing:
        yield Finding(
            path=("airborne_fraction", "air"), expected="the id of a reservoir with a stated change", found=f'"{about.air}"',
            mend=did_you_mean(about.air, changing, "state its `change:`, measured apart from the fluxes"),
        )  # fmt: skip
    for e, emission in enumerate(about.emissions):
        if emission not in fluxes:
            yield Finding(
                path=("airborne_fraction", "emissions", e), expected="the id of a flux", found=f'"{emission}"',
                mend=did_you_mean(emission, fluxes, f"write one of {listed(sorted(fluxes))}"),
            )  # fmt: skip


def _fuels(record: CycleRecord) -> Iterator[Finding]:
    for f, fuel in enumerate(record.fuels):
        path: FieldPath = ("fuels", f)
        if (fuel.fuel is None) == (fuel.formula is None):
            yield Finding(
                path=path, expected="either `fuel` or `formula`", found="neither" if fuel.fuel is None else "both",
                mend="name an ordinary fuel, or give the formula of a pure compound",
            )  # fmt: skip
        if fuel.formula is not None:
            yield from _formula(fuel.formula, (*path, "formula"))
        if not unit(fuel.unit).same_kind(unit("t")):
            yield Finding(path=(*path, "unit"), expected="a unit of mass, such as t or Gt", found=f'"{fuel.unit}"', mend="state how much fuel by its mass")


def _formula(formula: str, path: FieldPath) -> Iterator[Finding]:
    try:
        holds_carbon = "C" in atoms(formula)
    except ValueError as error:
        yield Finding(path=path, expected="a formula without brackets, such as CH4", found=f'"{formula}"', mend=f"{error}")
        return
    if not holds_carbon:
        mend = "what holds no carbon gives no carbon dioxide: leave it out"
        yield Finding(path=path, expected="a compound of carbon", found=f'"{formula}"', mend=mend)


def _names(record: CycleRecord) -> Iterator[Finding]:
    """Ids of facts begin with the ids of parts, so no two parts may share one."""
    taken = {part.id for part in (*record.reservoirs, *record.fluxes)}
    for field, parts in (("scenarios", record.scenarios), ("ratios", record.ratios), ("fuels", record.fuels)):
        for p, part in enumerate(parts):
            if part.id in taken:
                yield Finding(
                    path=(field, p, "id"), expected="an id that no reservoir, flux, scenario, ratio or other fuel has", found=f'"{part.id}"',
                    mend="choose another id: facts are called after it",
                )  # fmt: skip
            taken.add(part.id)
