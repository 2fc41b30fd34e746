"""Biomes side by side: a line for each station that pages show, all of them on one map, and their years on one scale."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from figures import ClimateMultiples, ClimatePanel, DataTable, MapRegion, MapStation, TemperatureRainfallMap

from generator.kind import Comparison, ComparisonRow, Subject
from generator.kinds.biome.charts import READING_COLD, has_southern_summer
from generator.kinds.biome.record import BiomeRecord, Station
from generator.kinds.biome.scheme_facts import NO_REGION
from generator.quantities.fact import Fact
from generator.science.biome_regions import NAMES, outlines

COLUMNS = (
    ("Annual mean temperature", "annual_mean_temp"),
    ("Annual temperature range", "annual_temp_range"),
    ("Annual precipitation", "annual_precip"),
    ("Potential evapotranspiration", "potential_evapotranspiration"),
    ("Climate class", "climate_class"),
    ("Aridity class", "aridity_class"),
    ("Potential net primary production (dry matter)", "potential_npp"),
)


class _Place:
    """A station of a page, with its biome and its facts."""

    def __init__(self, subject: Subject[BiomeRecord], station: Station) -> None:
        self.subject, self.station = subject, station
        self.label = f"{subject.record.title}: {station.label}"

    def fact(self, name: str) -> Fact:
        return self.subject.facts[f"{self.station.id}.{name}"]


def compare(subjects: Sequence[Subject[BiomeRecord]]) -> Comparison:
    """All stations of all biomes, from the driest on."""
    places = sorted(_places(subjects), key=lambda place: (place.fact("annual_precip").number, place.label))
    rows = tuple(
        ComparisonRow(
            subject=place.subject.id, label=place.label, cells=tuple(place.fact(name) for _, name in COLUMNS)
        )
        for place in places
    )  # fmt: skip
    charts = (_map(places), _multiples(list(_places(subjects)))) if places else ()
    return Comparison(heads=tuple(head for head, _ in COLUMNS), rows=rows, charts=charts)


def _places(subjects: Sequence[Subject[BiomeRecord]]) -> Iterator[_Place]:
    return (
        _Place(subject, station) for subject in subjects for station in subject.record.stations if station.use == "page"
    )  # fmt: skip


def _map(places: Sequence[_Place]) -> TemperatureRainfallMap:
    stations = tuple(
        MapStation(
            id=place.station.id, label=place.station.label, annual_mean_temp_degc=place.fact("annual_mean_temp").number,
            annual_precip_mm=place.fact("annual_precip").number, region=_region(place),
        )
        for place in places
    )  # fmt: skip
    outside = [place.station.label for place in places if not _region(place)]
    driest, wettest = places[0], places[-1]
    spread = (
        f"From {driest.station.label} with {driest.fact('annual_precip').shown} and {driest.fact('annual_mean_temp').shown} "
        f"to {wettest.station.label} with {wettest.fact('annual_precip').shown} and {wettest.fact('annual_mean_temp').shown}. "
    )
    return TemperatureRainfallMap(
        name="biome.temperature_rainfall_map",
        title="Temperature and precipitation of all stations, on the map of biome regions",
        description=spread
        + (f"In no region: {', '.join(outside)}." if outside else "Every station lies in one of the regions.")
        + " Regions after Whittaker (1975), digitised by V. Stefan and S. Levin (2018), MIT licence.",
        reading=(
            "Go along the bottom axis to the annual mean temperature, and up the left axis to the annual precipitation.",
            "A point is a station. The outline around it is the region of climates that its biome is typical of.",
            "A point in no region is no mistake: real places lie there too.",
        ),
        table=DataTable(
            caption="Stations on the temperature-rainfall map",
            columns=("Station", "Annual mean temperature (°C)", "Annual precipitation (mm)", "Region"),
            rows=tuple(
                (
                    place.label, place.fact("annual_mean_temp").shown_number, place.fact("annual_precip").shown_number,
                    place.fact("region").shown,
                )
                for place in places
            ),
        ),
        regions=tuple(MapRegion(id=region, label=NAMES[region], outline=line) for region, line in outlines().items()),
        stations=stations,
    )  # fmt: skip


def _region(place: _Place) -> str:
    region = place.fact("region").shown
    return "" if region == NO_REGION else region


def _multiples(places: Sequence[_Place]) -> ClimateMultiples:
    def extreme(name: str, *, largest: bool) -> _Place:
        return (max if largest else min)(places, key=lambda place: place.fact(name).number)

    steady, swinging = extreme("annual_temp_range", largest=False), extreme("annual_temp_range", largest=True)
    return ClimateMultiples(
        name="biome.climate_multiples",
        title="The mean years of all stations on one scale",
        description=(
            f"The temperature of the year swings least at {steady.station.label} ({steady.fact('annual_temp_range').shown}) "
            f"and most at {swinging.station.label} ({swinging.fact('annual_temp_range').shown})."
        ),
        reading=(
            "Each small diagram is read like a single one: the line with dots on the left scale is temperature, the plain one on the right scale precipitation.",
            "All have the same scales, so heights can be compared from one to the next.",
            "Diagrams from south of the tropics begin in July, so that summer stands in the middle of each.",
            *[READING_COLD] * any(place.fact("months_below_freezing").value for place in places),
        ),
        table=DataTable(
            caption="Stations in the order of the small diagrams",
            columns=("Station", "Warmest month", "Coldest month", "Dry months", "Annual temperature range"),
            rows=tuple(
                (place.label, *(place.fact(name).shown for name in ("warmest_month", "coldest_month", "dry_months", "annual_temp_range")))
                for place in places
            ),
        ),
        panels=tuple(
            ClimatePanel(
                title=place.station.label,
                subtitle=f"{place.subject.record.title}\n{place.fact('annual_mean_temp').shown}, {place.fact('annual_precip').shown}",
                southern=has_southern_summer(place.station),
                monthly_mean_temp_degc=place.fact("monthly_mean_temp").series,
                monthly_precip_mm=place.fact("monthly_precip").series,
            )
            for place in places
        ),
    )
