"""Every number of an investigation of production, whichever method it used."""

from __future__ import annotations

from types import MappingProxyType

from generator.kinds.productivity.bottle_facts import bottle_facts
from generator.kinds.productivity.harvest_facts import harvest_facts
from generator.kinds.productivity.record import ProductivityRecord
from generator.quantities.fact import Fact, Facts
from generator.science import harvest, light_and_dark_bottles, replicates, water_column
from generator.science.method import Method

METHODS = MappingProxyType(
    {
        method.id: method
        for topic in (light_and_dark_bottles, water_column, harvest, replicates)
        for method in vars(topic).values()
        if isinstance(method, Method)
    }
)


def facts(record: ProductivityRecord) -> Facts:
    """All facts, in the order in which a page tells them; none where a record states neither bottles nor harvests."""
    found: list[Fact] = []
    if record.bottles:
        found += bottle_facts(record, record.bottles)
    if record.harvest:
        found += harvest_facts(record, record.harvest)
    return Facts(found)
