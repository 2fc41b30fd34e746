"""Every number of a cycle: its budgets, its model through time, its matter as other substances, and fuel that is burned."""

from __future__ import annotations

from types import MappingProxyType

from generator.kinds.cycle.budget_facts import budget_facts
from generator.kinds.cycle.fuel_facts import fuel_facts
from generator.kinds.cycle.model_facts import model_facts
from generator.kinds.cycle.record import CycleRecord
from generator.kinds.cycle.substance_facts import airborne_fact, conversion_facts, ratio_facts
from generator.quantities.fact import Facts
from generator.science import airborne, box_model, budgets, combustion, substances

METHODS = MappingProxyType(
    {
        method.id: method
        for method in (
            budgets.BALANCE, budgets.TURNOVER_TIME, budgets.CLOSES, budgets.HUMAN_SHARE, box_model.STEADY_STATE,
            box_model.STOCKS_AFTER, box_model.ADJUSTMENT_TIME, substances.AS_SUBSTANCE, substances.ATOM_RATIO, substances.MASS_RATIO,
            airborne.CARBON_AS_PPM, airborne.AIRBORNE_FRACTION, combustion.FUEL_ENERGY, combustion.FUEL_CARBON,
            combustion.COMPOUND_CARBON, combustion.EMISSION_FACTOR,
        )
    }
)  # fmt: skip


def facts(record: CycleRecord) -> Facts:
    """All facts: what others are made from comes first."""
    found = {fact.id: fact for fact in budget_facts(record)}
    found |= {fact.id: fact for fact in model_facts(record, found)}
    found |= {fact.id: fact for fact in conversion_facts(record, found)}
    found |= {fact.id: fact for fact in ratio_facts(record, found)}
    found |= {fact.id: fact for fact in airborne_fact(record, found)}
    found |= {fact.id: fact for fact in fuel_facts(record, found)}
    return Facts(found.values())
