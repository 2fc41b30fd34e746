"""Questions on a water: its light, its oxygen, its salt, and how it moves; each only where the record states enough."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from generator.kind import Subject
from generator.kinds.aquatic_biome import flow_questions as flow
from generator.kinds.aquatic_biome import light_questions as light
from generator.kinds.aquatic_biome import oxygen_questions as oxygen
from generator.kinds.aquatic_biome import water_claims
from generator.kinds.aquatic_biome.asked_water import AskedWater
from generator.kinds.aquatic_biome.record import AquaticBiomeRecord
from generator.questions.misconception import Catalogue
from generator.questions.question import Made, Rejected


def questions(subject: Subject[AquaticBiomeRecord], catalogue: Catalogue) -> Sequence[Made]:
    """Questions on the first station that the page shows, or else on the first for practice.

    How much of the oxygen is there is asked of the first station where that is worth a sum, and what the data show of the first
    two. No prompt states the answer to another question. Nothing is rejected: what a record does not state is not asked.
    """
    stations = [s for s in subject.record.stations if s.use != "paper"]
    asked = [AskedWater(subject, station, catalogue) for station in sorted(stations, key=lambda s: s.use != "page")]
    return [*_light(asked[0]), *_oxygen(asked), *_flow(asked[0])]


def _made(*candidates: Made) -> Iterator[Made]:
    return (one for one in candidates if not isinstance(one, Rejected))


def _light(water: AskedWater) -> Iterator[Made]:
    if water.station.light is None:
        return
    if water.has("secchi_depth"):
        yield light.murkier(water)
    drawn = water.station.use == "page"
    yield from _made(light.photic_depth(water), *([light.light_depth(water)] if drawn else []))
    if not water.is_lit_to_the_bottom:
        yield light.half_way(water)
    else:
        yield from _made(light.light_at_depth(water))
    yield from _made(light.plants_on_the_bottom(water), light.way_down(water), light.below_the_light(water))


def _oxygen(asked: Sequence[AskedWater]) -> Iterator[Made]:
    """Warmth is asked about in words only where no sum does it."""
    water, shown = asked[0], [one for one in asked if one.station.use == "page"]
    short = next((one for one in asked if one.is_short_of_oxygen or one.is_above_saturation), None)
    if short is not None:
        yield oxygen.oxygen_percent(short)
    loss = () if water.has("flushing_time") else (oxygen.capacity_loss(water),)
    read = (oxygen.warmest_for_oxygen(water),) if shown and not water.is_salty else ()
    of_warmth = list(_made(*loss, *read))
    yield from of_warmth or [oxygen.warm_water(water)]
    if shown:
        yield from _made(oxygen.capacity_order(shown), water_claims.data_shows(shown))
    if water.is_salty:
        yield oxygen.salt(water)
    elif not water.has("flushing_time"):
        yield oxygen.breathing(water)


def _flow(water: AskedWater) -> Iterator[Made]:
    if water.has("flushing_time"):
        yield flow.flushing_time(water)
    yield from _made(flow.cross_section(water), flow.travel_time(water), flow.drift(water))
