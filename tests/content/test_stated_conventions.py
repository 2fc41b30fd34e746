"""Where ecologists count in more than one way, every question of the demo course says which way is meant."""

from __future__ import annotations

import re

import pytest

from tests.kinds.small_records import library

STATED = {
    "biome .*/annual_mean_temp": "from January to December .* all months counted alike",
    "biome .*/aridity_index": "by Thornthwaite's formula .* The aridity index is a ratio of the two, large where the climate is humid",
    "biome .*/dry_months": r"by the rule of the climate diagram \(precipitation in mm below twice the temperature in °C\)",
    "biome .*/diagram_shows": "does the climate diagram show to be true",
    "biome .*/growing_begins": "By rule, a month counts as growing season if its mean is at least 5 °C",
    "biome .*/limiting_factor": "By a model, temperature alone .* precipitation alone",
    "biome .*/lack_of_water": "Use the table “Soil water at the end of each month” among the numbers of this page",
    "biome .*/which_climate": "(the same annual mean as|its annual mean is) .* In which region of the map on the page “Biomes compared” does it lie",
    "aquatic_biome .*/murkier": "The extinction coefficient of light is 1.7 ÷ this depth",
    "aquatic_biome .*/photic_depth": "Where 1 % of the light is left, extinction × depth = 4.605",
    "aquatic_biome .*/plants_on_the_bottom": "Plants need about 1 % of the light; where that is left, extinction × depth = 4.605",
    "aquatic_biome .*/capacity_loss": "How many percent less can it hold at its warmest",
    "aquatic_biome .*/warmest_for_oxygen": "[Ii]n balance with the air",
    "aquatic_biome .*/flushing_time": "until as much water has come in as it holds",
    "cycle .*/new_steady": "the outflow stays in proportion to the stock",
    "cycle .*/conversion": "Molar masses: |Use the factor of carbon budgets: ",
    "food_web .*/gone_.*": "Going by the arrows alone",
    "food_web .*/level": "each food counted by its share",
    "food_web .*/longest_chain.*": "How many arrows are there in the longest food chain",
    "productivity .*_harvest/net_production": "if what died or was eaten in between is not counted",
    "productivity .*/carbon": r"for each mole of carbon that is fixed, [\d.]+ moles of oxygen are made",
    "productivity .*_bottles/gross_production": "in light and .* in dark bottles. Respiration is taken to be the same in both",
    "productivity .*/respiration": "as a positive number",
    "pyramid .*/biomass_turnover_time": r"Count 365\.25 days to the year",
    "pyramid .*/mixed_units": r"1 kcal is 4\.184 kJ",
    "pyramid .*/primary_production_required": "at trophic level .* holds 1 g of carbon, and .* of the production passes each step",
    "pyramid .*/production_efficiency": "the share of what is taken up that is built up",
    "pyramid .*/supporting_area": "One animal of the level .* must (eat|build up) .* The whole level (eats|builds up)",
    "pyramid .*/transfer_efficiency": "production compared with production",
    "transect .*/freezing_height": "If it went on getting colder by",
    "transect .*/cloud_base": "For each kelvin between the two it must rise 125 m before cloud forms",
    "transect .*/(lapse_rate.*|whole_line)": "positive where it gets colder with height",
}  # fmt: skip
"""Which questions, as kind, record and id, and what their prompts must say."""
PROMPTS = {f"{name.replace('/', ' ', 1)}/{question.id}": question.prompt for name, asked in library().questions.items() for question in asked}


@pytest.mark.parametrize("pattern", STATED)
def test_convention_is_stated_in_the_prompt(pattern: str) -> None:
    prompts = {asked: prompt for asked, prompt in PROMPTS.items() if re.fullmatch(pattern, asked)}
    assert prompts
    assert {} == {asked: prompt for asked, prompt in prompts.items() if not re.search(STATED[pattern], prompt)}


def test_no_question_asks_for_a_climate_class_a_life_zone_or_a_first_dry_month() -> None:
    """Their limits differ from author to author, so they are told on the page and asked nowhere."""
    asked = re.compile("köppen|climate class|life zone|first dry month", re.IGNORECASE)
    assert [] == [name for name, prompt in PROMPTS.items() if asked.search(prompt)]
