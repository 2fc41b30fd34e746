"""The charts of an aquatic biome: light with depth for each station that states its light, and oxygen against temperature."""

from __future__ import annotations

import math
from collections.abc import Sequence

from figures import Chart, DataTable, LightProfile, OxygenCurve, OxygenPoint, SaturationCurve

from generator.kind import Subject
from generator.kinds.aquatic_biome.facts import SALT
from generator.kinds.aquatic_biome.record import AquaticBiomeRecord, Station
from generator.quantities import shown
from generator.quantities.fact import Fact, Facts
from generator.quantities.units import convert, unit
from generator.records.fields import Use
from generator.science.dissolved_oxygen import OXYGEN_SATURATION, VALID_TEMPERATURES
from generator.science.light_in_water import LIGHT_AT_DEPTH
from generator.science.salinity import salinity_class

READING = (
    "Start at the top: the thick line is the surface, where all the light that enters the water is still there, 100 %.",
    "Go down the left axis to a depth, then right to the curve, then up: there stands what part of the light is left.",
    "Look how it bends: each metre takes the same part of what is left, so the first metres take most.",
    "Find the dashed line, where 1 % is left: above it there is light enough for photosynthesis to keep plants alive.",
    "Compare it with the bottom: where the bottom lies deeper, plants cannot grow on it; where there is no dashed line, they can.",
)
READING_OXYGEN = (
    "Follow the curve from left to right: the warmer the water, the less oxygen it can hold in balance with the air.",
    "Find a dot: it shows how warm a water was and how much oxygen was in it.",
    "Go up the dotted line from the dot: it ends at what that water could hold; the longer the line, the more oxygen has been used up.",
    "Compare the curves: the upper one is for the freshest water, those below for saltier water. Salt leaves less room for oxygen.",
)
SALT_APART = 5.0
"""Salinities [g/kg] that are closer than this share a curve: the eye could not tell two apart."""
BEYOND = 2.0
"""A bottom deeper than this many photic depths is not drawn, or the lit water would be too small to read."""
MOST_DEPTHS = 8.0
"""An axis that ends deeper than this many depths of a profile's lit water would leave too little of it."""
CURVE_POINTS = 60
LEAST_SHARE = 0.001
"""Light [%] below which the chart says so in words."""


def charts(subject: Subject[AquaticBiomeRecord]) -> tuple[Chart, ...]:
    """A light profile a station of the page, and one oxygen curve with all of them."""
    measured = [station for station in _used(subject, "page") if _is_measured(station, subject.facts)]
    profiles = _light_profiles(subject, "page")
    return (*profiles, _oxygen_curve(subject, measured)) if measured else profiles


def practice_charts(subject: Subject[AquaticBiomeRecord]) -> tuple[Chart, ...]:
    """A light profile and an oxygen curve of its own for each station that is kept for practice."""
    measured = [station for station in _used(subject, "practice") if _is_measured(station, subject.facts)]
    return (*_light_profiles(subject, "practice"), *(_oxygen_curve(subject, [station], alone=True) for station in measured))


def _used(subject: Subject[AquaticBiomeRecord], use: Use) -> list[Station]:
    return [station for station in subject.record.stations if station.use == use]


def _light_profiles(subject: Subject[AquaticBiomeRecord], use: Use) -> tuple[LightProfile, ...]:
    lit = [station for station in _used(subject, use) if station.light is not None]
    axis = common_axis([(fact(subject.facts, one, "depth"), fact(subject.facts, one, "photic_depth")) for one in lit]) if use == "page" else 0.0
    return tuple(_light_profile(subject.name, station, subject.facts, axis) for station in lit)


def _is_measured(station: Station, facts: Facts) -> bool:
    share = facts.get(f"{station.id}.oxygen_saturation_percent")
    return share is not None and share.value is not None


def _oxygen_curve(subject: Subject[AquaticBiomeRecord], stations: Sequence[Station], alone: bool = False) -> OxygenCurve:
    """All of the stations in one picture, or a single one under its own name."""

    def fact(station: Station, part: str) -> Fact:
        return subject.facts[f"{station.id}.{part}"]

    curves = _curves([fact(station, "salinity") for station in stations])
    names = ("temperature", "salinity", "dissolved_oxygen", "oxygen_saturation", "oxygen_saturation_percent")
    return OxygenCurve(
        name=f"{subject.name}.oxygen_curve" + (f".{stations[0].id}" if alone else ""),
        title=f"{stations[0].label if alone else subject.record.title}: oxygen and temperature",
        description=("" if len(curves) == 1 else "The warmer and the saltier water is, the less oxygen it can hold. ")
        + " ".join(
            f"{station.label}: {fact(station, 'dissolved_oxygen').shown} of oxygen at {fact(station, 'temperature').shown}, "
            f"{fact(station, 'oxygen_saturation_percent').shown} of the {fact(station, 'oxygen_saturation').shown} that it could hold."
            for station in stations
        ),
        reading=READING_OXYGEN if len(curves) > 1 else READING_OXYGEN[:-1],
        table=DataTable(
            caption="Oxygen measured and oxygen saturation",
            columns=("Water", "Temperature (°C)", "Salinity (g kg⁻¹)", "Oxygen (mg L⁻¹)", "Saturation (mg L⁻¹)", "Part of saturation (%)"),
            rows=tuple((station.label, *(fact(station, name).shown_number for name in names)) for station in stations),
        ),
        curves=curves,
        points=tuple(
            OxygenPoint(
                label=station.label, temperature_degc=fact(station, "temperature").number,
                oxygen_mg_per_l=fact(station, "dissolved_oxygen").number, saturation_mg_per_l=fact(station, "oxygen_saturation").number,
                value_label=f"{fact(station, 'dissolved_oxygen').shown}, {fact(station, 'oxygen_saturation_percent').shown}",
            )
            for station in stations
        ),
    )  # fmt: skip


def _curves(salts: Sequence[Fact]) -> tuple[SaturationCurve, ...]:
    """What the freshest and the saltiest of the waters can hold, where they differ; beside salt ones, what fresh water can."""
    freshest, saltiest = min(salts, key=lambda salt: salt.number), max(salts, key=lambda salt: salt.number)
    own = (freshest, saltiest) if saltiest.number - freshest.number >= SALT_APART else salts[:1]
    found = [(f"{salinity_class(salt.number)}, {salt.shown}", salt.number) for salt in own]
    if freshest.number >= SALT_APART:
        found.insert(0, (f"{salinity_class(0)}, {SALT.after('0')}", 0.0))
    return tuple(SaturationCurve(label=label, points=_saturations(salinity)) for label, salinity in found)


def _saturations(salinity: float) -> tuple[tuple[float, float], ...]:
    """Temperature [degC] and saturation [mg/L] of water of one salinity, degree by degree."""
    low, high = (int(end) for end in VALID_TEMPERATURES)
    zero = convert(0.0, unit("degC"), unit("K"))
    return tuple((float(t), OXYGEN_SATURATION.compute(absolute_temperature=t + zero, salinity=salinity)) for t in range(low, high + 1))


def _light_profile(name: str, station: Station, facts: Facts, axis: float) -> LightProfile:
    extinction, photic, depth, left = (fact(facts, station, part) for part in ("extinction", "photic_depth", "depth", "light_at_bottom"))
    lowest = min(depth.number, axis) or lowest_drawn(depth, photic)
    return LightProfile(
        name=f"{name}.light_profile.{station.id}",
        title=f"Light with depth at {station.label}",
        description=_description(extinction, photic, depth, left),
        reading=READING,
        table=DataTable(
            caption=f"Light left at {station.label}",
            columns=("Depth (m)", "Light left (% of what enters the water)"),
            rows=tuple((shown.number(z), shown.number(share(extinction, z))) for z in table_depths(lowest)),
        ),
        station=station.label,
        place=f"{depth.shown} deep, extinction coefficient {extinction.shown}",
        curve=tuple((z, share(extinction, z)) for z in (lowest * n / CURVE_POINTS for n in range(CURVE_POINTS + 1))),
        photic_depth_m=photic.number,
        photic_label=photic.shown_exactly,
        bottom_m=depth.number,
        bottom_label=depth.shown_exactly,
        bottom_light_label=brief_share(left),
        axis_m=axis,
    )


def fact(facts: Facts, station: Station, part: str) -> Fact:
    """A fact of a station."""
    return facts[f"{station.id}.{part}"]


def common_axis(waters: Sequence[tuple[Fact, Fact]]) -> float:
    """Down to where [m] profiles of these depths and photic depths are drawn, to be compared; 0 where one would be too small to read."""
    axis = max((lowest_drawn(depth, photic) for depth, photic in waters), default=0.0)
    readable = all(min(depth.number, photic.number) * MOST_DEPTHS >= axis for depth, photic in waters)
    return axis if readable and len(waters) > 1 else 0.0


def lowest_drawn(depth: Fact, photic: Fact) -> float:
    """Down to where [m] a light profile is drawn: the bottom, or somewhat below the photic depth."""
    return depth.number if depth.number <= BEYOND * photic.number else 1.25 * photic.number


def share(extinction: Fact, depth: float) -> float:
    """Light [%] at a depth [m]."""
    return 100 * float(LIGHT_AT_DEPTH.compute(extinction=extinction.number, depth=depth))


def table_depths(lowest: float) -> tuple[float, ...]:
    """Round depths [m] from the surface down to `lowest`, five to ten of them.

    >>> table_depths(11.5)
    (0.0, 2.0, 4.0, 6.0, 8.0, 10.0)
    """
    power = 10.0 ** math.floor(math.log10(lowest / 4))
    step = max(s * power for s in (1, 2, 5) if s * power <= lowest / 4)
    return tuple(step * number for number in range(int(lowest / step + 1e-9) + 1))


def brief_share(left: Fact) -> str:
    """What is left at the bottom, in words where it is next to nothing."""
    return left.shown_exactly if _is_told(left) else "next to no light"


def _is_told(left: Fact) -> bool:
    return left.is_number and left.number >= LEAST_SHARE


def _description(extinction: Fact, photic: Fact, depth: Fact, left: Fact) -> str:
    """What the profile shows, in words, with the numbers that decide."""
    reaches = photic.number >= depth.number
    ends = f"At the bottom, at {depth.shown}, {brief_share(left)} is {'still left' if reaches else 'left'}."
    half = shown.number(math.log(2) / extinction.number)
    return (
        f"Light fades with depth, by half every {half} m (extinction coefficient {extinction.shown}). "
        f"One percent of it {'would only be' if photic.number > depth.number else 'is'} left at {photic.shown_exactly}. {ends}"
    )
