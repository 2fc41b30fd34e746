"""The computations of environmental science, each with its Method; `METHODS` holds all of them by id."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from generator.science import (
    airborne,
    aridity,
    biome_regions,
    box_model,
    budgets,
    climate,
    climate_class,
    combustion,
    day_length,
    dissolved_oxygen,
    energy_conversions,
    energy_flow,
    evapotranspiration,
    food_web_effects,
    food_webs,
    harvest,
    lapse_rates,
    life_zones,
    light_and_dark_bottles,
    light_in_water,
    plant_production,
    production_required,
    pyramid_shape,
    replicates,
    salinity,
    substances,
    water_balance,
    water_column,
    water_exchange,
)
from generator.science.method import Method

__all__ = ["METHODS", "Method"]

_TOPICS = (
    airborne, aridity, biome_regions, box_model, budgets, climate, climate_class, combustion, day_length, dissolved_oxygen,
    energy_conversions, energy_flow, evapotranspiration, food_web_effects, food_webs, harvest, lapse_rates, life_zones,
    light_and_dark_bottles, light_in_water, plant_production, production_required, pyramid_shape, replicates, salinity,
    substances, water_balance, water_column, water_exchange,
)  # fmt: skip

METHODS: Mapping[str, Method] = MappingProxyType(
    {
        method.id: method
        for method in sorted(
            (value for topic in _TOPICS for value in vars(topic).values() if isinstance(value, Method)),
            key=lambda method: method.id,
        )
    }
)
"""Every method of the topics above, sorted by id."""
