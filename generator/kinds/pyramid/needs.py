"""What a single animal and what a catch need: the area that feeds it, the plant growth behind it."""

from __future__ import annotations

import re
from collections.abc import Iterator

from generator.kinds.pyramid.flows import DRY_MATTER, Flows, energy_per_carbon, in_energy_of
from generator.kinds.pyramid.record import Catch, PyramidRecord, Taken, TopConsumer
from generator.quantities.amount import Amount
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed, stated
from generator.quantities.units import Unit, unit
from generator.records.fields import stated_amount
from generator.science import energy_flow, production_required

HECTARE, PERCENT = unit("ha"), unit("percent")


def supporting_area(record: PyramidRecord, flows: Flows, top: TopConsumer) -> Iterator[Fact]:
    """The area by the convention that the record states, then by the two that books use; each name says which it is.

    The need counted as food against all production of the level below, and as production against that of its own level,
    differ by just the transfer efficiency between the two.
    """
    index = [level.id for level in record.levels].index(top.level)
    as_eaten = top.measured_as == "eaten"
    need = in_energy_of(
        stated(f"{top.level}.need", "Need of one animal in a year", stated_amount(top.needs.value), unit(top.needs.unit)), flows.conversion
    )
    yield need
    ways = [("supporting_area", flows.of[top.level]["eaten"] if as_eaten else flows.production[index], f"what its level {'eats' if as_eaten else 'produces'}")]
    if index:
        ways.append(("supporting_area_as_food", flows.production[index - 1], "all that the level below produces"))
    if as_eaten:
        ways.append(("supporting_area_as_production", flows.production[index], "what its level produces"))
    method = energy_flow.SUPPORTING_AREA
    for name, flow, compared in ways:
        title = f"Supporting area of one animal (need compared with {compared})"
        given = {"need": need, "flow": flow}
        yield computed(f"{top.level}.{name}", title, method.expression, given, HECTARE, method=method.id, figures=flows.figures)


def production_behind(record: PyramidRecord, flows: Flows, catch: Catch) -> Iterator[Fact]:
    """Of each part of the catch, then of all of it, and its share of the producers' net production."""
    parts: dict[str, Fact] = {}
    method = production_required.PRIMARY_PRODUCTION_REQUIRED
    carbon = carbon_unit(record.units.catch)
    assumed = {
        "fresh_mass_per_carbon": stated(
            "catch.fresh_mass_per_carbon", "Fresh mass for each gram of carbon", stated_amount(catch.fresh_mass_per_carbon), unit("g/g C")
        ),
        "transfer_efficiency": stated("catch.transfer_efficiency", "Transfer efficiency assumed", stated_amount(catch.transfer_efficiency), unit("")),
    }
    yield from assumed.values()
    for taken in catch.taken:
        of_level = _of_level(record, taken)
        yield from of_level.values()
        given = assumed | of_level
        parts[taken.level] = computed(
            f"{taken.level}.primary_production_required", "Primary production required for the catch", method.expression, given, carbon,
            method=method.id, figures=flows.figures,
        )  # fmt: skip
        yield parts[taken.level]
    total = computed(
        "primary_production_required", "Primary production required for the whole catch", Expression(" + ".join(parts)), parts, carbon,
        method=method.id, figures=flows.figures,
    )  # fmt: skip
    yield total
    yield _share(record, flows, total)


def _of_level(record: PyramidRecord, taken: Taken) -> dict[str, Fact]:
    """What is caught of one level, and where that level stands."""
    place = [level.id for level in record.levels].index(taken.level) + 1
    at = stated_amount(taken.trophic_level) if taken.trophic_level is not None else Amount(value=float(place), written=str(place))
    return {
        "catch": stated(f"{taken.level}.catch", "Catch in a year, fresh mass", taken.amount, unit(record.units.catch)),
        "trophic_level": stated(f"{taken.level}.catch_level", "Trophic level of the catch", at, unit("")),
    }


def _share(record: PyramidRecord, flows: Flows, total: Fact) -> Fact:
    method, name = production_required.PRIMARY_PRODUCTION_SHARE, "Share of the net primary production that the catch rests on"
    factor = energy_per_carbon(record)
    if factor is None or not unit(record.units.catch).same_kind(DRY_MATTER):
        why = "the record states no energy for a gram of carbon" if factor is None else "the catch is not stated for an area"
        return Fact(id=method.id, name=name, value=None, unit=PERCENT, method=method.id, undefined_because=f"not known: {why}")
    given = {"primary_production_required": total, "energy_per_carbon": factor, "net_production": flows.production[0]}
    return computed(method.id, name, method.expression, given, PERCENT, method=method.id, figures=flows.figures)


def carbon_unit(label: str) -> Unit:
    """The unit of the same mass as carbon: `t C/yr` of `t/yr`."""
    return unit(re.sub(r"^\s*([A-Za-z]+)", r"\1 C", label))
