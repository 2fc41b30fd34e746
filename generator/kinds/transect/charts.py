"""The chart of a transect: its profile with the stations, what is measured at each, and the air that crosses the crest."""

from __future__ import annotations

from figures import AirPath, DataTable, ProfileStation, TransectProfile

from generator.kind import Subject
from generator.kinds.transect.crossing import PART
from generator.kinds.transect.record import RainShadow, Station, TransectRecord
from generator.quantities.fact import Fact

READING = (
    "Follow the ground from left to right: each dot is a station, and its column below says how far along and how high it is.",
    "Compare the means of the year: as a rule, the higher the station the colder. Look for a station that breaks the rule.",
    "Compare the bars: they show the rain and snow of a year at each station.",
)
READING_AIR = (
    "Follow the air over the ground from 1 on. Where its line is dashed there is no cloud, and air cools fast on its way up.",
    "Above the dotted line there is cloud: condensing water warms the air, so on the thick line it cools more slowly.",
    "Behind the crest the air sinks and warms fast all the way: compare the last temperature with the first.",
)
NONE = "–"
COLUMNS = ("Station", "Distance (km)", "Height (m)", "Mean of the year (°C)", "Rain and snow of the year (mm)", "Lapse rate from the station before (K/km)")


def charts(subject: Subject[TransectRecord]) -> tuple[TransectProfile, ...]:
    """One profile."""
    record, facts = subject.record, subject.facts
    shadow = record.rain_shadow
    table = tuple(
        (station.label, *(_bare(facts.get(f"{station.id}.{name}")) for name in ("distance", "height", "annual_mean_temp", "annual_precip", "lapse_rate_from_previous")))
        for station in record.stations
    )
    reading = (*READING, *(READING_AIR if facts[f"{PART}.cloud_forms"].value else READING_AIR[:1])) if shadow else READING
    return (
        TransectProfile(
            name=f"{subject.name}.transect_profile", title=f"{record.title}: profile", description=_description(subject), reading=reading,
            table=DataTable(caption=f"{record.title}: stations along the line", columns=COLUMNS, rows=table),
            stations=tuple(_station(subject, station) for station in record.stations), air=_air(subject, shadow) if shadow else None,
        ),
    )  # fmt: skip


def _bare(fact: Fact | None) -> str:
    return fact.shown_bare if fact is not None and fact.value is not None else NONE


def _station(subject: Subject[TransectRecord], station: Station) -> ProfileStation:
    distance, height, temp = (subject.facts[f"{station.id}.{name}"] for name in ("distance", "height", "annual_mean_temp"))
    precip = subject.facts.get(f"{station.id}.annual_precip")
    return ProfileStation(
        label=station.label, distance_km=distance.number, height_m=height.number, distance_label=distance.shown_exactly,
        height_label=height.shown_exactly, temp_label=temp.shown_exactly, precip_mm=precip.number if precip else None,
        precip_label=precip.shown_exactly if precip else "",
    )  # fmt: skip


def _air(subject: Subject[TransectRecord], shadow: RainShadow) -> AirPath:
    places = {station.id: place for place, station in enumerate(subject.record.stations)}
    fact = {name: subject.facts[f"{PART}.{name}"] for name in ("cloud_forms", "cloud_base", "dry_lapse_rate", "moist_lapse_rate")}
    steps = ["temperature", *(["base_temperature"] if fact["cloud_forms"].value else []), "crest_temperature", "lee_temperature"]
    return AirPath(
        start=places[shadow.start], crest=places[shadow.crest], end=places[shadow.end],
        cloud_base_m=fact["cloud_base"].number if fact["cloud_forms"].value else None,
        dry_label=fact["dry_lapse_rate"].shown_exactly, moist_label=fact["moist_lapse_rate"].shown_exactly, cloud_label=fact["cloud_base"].shown_exactly,
        step_labels=tuple(subject.facts[f"{PART}.{name}"].shown_exactly for name in steps),
    )  # fmt: skip


def _description(subject: Subject[TransectRecord]) -> str:
    """What the profile shows, in words, with the numbers that decide."""
    record, facts = subject.record, subject.facts
    highest = max(record.stations, key=lambda station: facts[f"{station.id}.height"].number)
    first, last = record.stations[0], record.stations[-1]

    def of(station: Station, name: str) -> str:
        fact = facts.get(f"{station.id}.{name}")
        return fact.shown_exactly if fact else "not known"

    ends = f"The line runs from {first.label} at {of(first, 'height')} to {last.label} at {of(last, 'height')}, {of(last, 'distance')} away."
    top = f"Its highest station is {highest.label} at {of(highest, 'height')}, with a mean of {of(highest, 'annual_mean_temp')}."
    rain = [station for station in record.stations if f"{station.id}.annual_precip" in facts]
    words = [ends, top]
    if rain:
        wet, dry = (choose(rain, key=lambda station: facts[f"{station.id}.annual_precip"].number) for choose in (max, min))
        words.append(f"Most rain and snow falls at {wet.label}, {of(wet, 'annual_precip')} a year, and least at {dry.label}, {of(dry, 'annual_precip')}.")
    if record.rain_shadow:
        start, end = (facts[f"{PART}.{name}"].shown_exactly for name in ("temperature", "lee_temperature"))
        words.append(f"Air that sets out at {start} comes down on the lee side at {end}.")
    return " ".join(words)
