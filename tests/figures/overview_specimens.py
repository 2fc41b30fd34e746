"""Specs of charts that compare: maps, small multiples, turnover times, stocks through time; and of chains."""

from __future__ import annotations

import random
from collections.abc import Sequence

from figures import (
    ChainSequence, ClimateMultiples, ClimatePanel, MapRegion, MapStation, StockCurves, StockPanel, TemperatureRainfallMap, TurnoverChart,
    TurnoverTime,
)  # fmt: skip
from tests.figures.specimens import CLIMATES, TABLE


def climate_multiples(name: str, count: int, first: int = 0) -> ClimateMultiples:
    """`count` of the climates of `specimens`, over and over."""
    chosen = [CLIMATES[(first + number) % len(CLIMATES)] for number in range(count)]
    panels = tuple(
        ClimatePanel(
            title=climate.station, subtitle=f"{climate.mean_label}, {climate.total_label}", southern=climate.southern,
            monthly_mean_temp_degc=climate.monthly_mean_temp_degc, monthly_precip_mm=climate.monthly_precip_mm,
        )
        for climate in chosen
    )  # fmt: skip
    return ClimateMultiples(
        name=f"multiples_{name.lower().replace(' ', '_')}", title=f"Climates of {name}", description="Years.", reading=(), table=TABLE,
        panels=panels,
    )  # fmt: skip


MULTIPLES = (
    climate_multiples("Nearly all", 9), climate_multiples("Sixteen", 16), climate_multiples("One", 1), climate_multiples("Two", 2),
    climate_multiples("Warm", 2, first=4), climate_multiples("Monsoon and cape", 2, first=7),
)  # fmt: skip


def turnover(name: str, *times: tuple[str, str, float, tuple[float, float] | None]) -> TurnoverChart:
    """`times` as (cycle, label, years, range)."""
    return TurnoverChart(
        name=f"turnover_{name.lower().replace(' ', '_')}", title=f"Turnover in {name}", description="Times.", reading=(), table=TABLE,
        times=tuple(
            TurnoverTime(
                id=f"t{number}", label=label, cycle=cycle, years=years, value_label=f"{years:.3g} yr", range_years=reach
            )
            for number, (cycle, label, years, reach) in enumerate(times)
        ),
    )  # fmt: skip


TURNOVERS = (
    turnover(
        "Four cycles",
        ("Carbon, the Earth", "Atmosphere", 4.1, (3.5, 5)), ("Carbon, the Earth", "Land plants", 3.8, None),
        ("Carbon, the Earth", "Soil", 28, (20, 40)), ("Carbon, the Earth", "Deep ocean", 350, (200, 1000)),
        ("Carbon, the Earth", "Rock", 2e8, None), ("Water, the Earth", "Atmosphere", 0.025, (0.02, 0.03)),
        ("Water, the Earth", "Rivers", 0.05, None), ("Water, the Earth", "Ocean", 3200, None),
        ("Water, the Earth", "Ice sheets", 9000, (3000, 20000)), ("Nitrogen, Wend Hollow", "Ammonium in the soil of a beech wood", 0.055, None),
        ("Nitrogen, Wend Hollow", "Soil organic matter", 48, None), ("Nitrogen, the Earth", "Atmosphere", 1.5e7, None),
    ),
    turnover("One pond", ("", "Pond", 0.3, None)),
    turnover("Quick ones", ("Foam", "Bubble", 1e-7, None), ("Foam", "Cell", 2e-4, (1e-4, 1e-3))),
    turnover("All ages", *(("Ages", f"Store {n}", 10.0**n, (10.0**n / 3, 10.0**n * 3)) for n in range(-6, 11))),
    turnover("Long names", ("Deep", "A reservoir with a name so long that no side of its dot has room for the whole of it on one line", 3.0, (0.003, 5e6)),
             ("Deep", "Rock", 1e5, None)),
)  # fmt: skip

_SENTENCE = "Rain falls through the canopy and carries the nitrate that roots have not taken up down into the gravel, and so to the stream below."
_SHORT = ("Rain falls on bare ground.", "Nitrate sinks below the roots.", "The stream carries it away.")


def chain(name: str, *steps: str) -> ChainSequence:
    return ChainSequence(name=f"chain_{name}", title=f"Chain {name}", description="Cause to effect.", reading=(), table=TABLE, steps=steps)


CHAINS = (
    chain("short", *_SHORT), chain("four", *_SHORT, _SENTENCE), chain("long", *[_SENTENCE] * 6), chain("single", _SHORT[0]),
    chain("nine", *_SHORT * 3), chain("words", "Denitrification" * 4 + " ends.", *_SHORT, *_SHORT[:2]),
)  # fmt: skip

# Simplified outlines of the nine regions of Whittaker 1975, digitised by Stefan & Levin 2018 (doi:10.5281/zenodo.7145245, MIT licence)
# from Ricklefs 2008, fig. 5.5; (degC, cm).
_OUTLINES = {
    "Tundra": "-10.2,2 -14.7,5 -15.6,15 -10.6,37 -7.4,65 -4.1,108 -5.9,30 -6.6,19",
    "Boreal forest": "-4.1,108 0.3,165 4.4,201 3.1,156 2.5,76 0.5,45 -6.7,19 -5.7,37",
    "Temperate grassland/desert": "-10.2,2 5.6,32 17.9,53 14.1,0",
    "Woodland/shrubland": "-10.2,2 -6.3,20 2.5,48 7.4,77 13,105 19.1,126 17.9,53",
    "Temperate seasonal forest": "-0.7,38 1.3,53 2.3,71 3.2,161 4.3,180 7,199 10.6,214 19.2,235 19.1,126 12,101 3.7,54",
    "Temperate rain forest": "3.2,161 4.4,201 16.9,300 20.6,343 19.6,276 19.2,235 13.5,223 7.7,203 4.8,184",
    "Tropical rain forest": "20.6,343 24.1,433 25.1,444 26.7,412 28,330 28.5,281 27.7,271 24.1,247 19.2,235",
    "Tropical seasonal forest/savanna": "28.5,281 29.6,100 25.4,71 17.9,53 19,116 19.2,235 24.9,251",
    "Subtropical desert": "30,0 14.1,0 17.9,53 26,74 29.6,100",
}
REGIONS = tuple(
    MapRegion(
        id=label.lower().replace(" ", "_").replace("/", "_"), label=label,
        outline=tuple((float(t), 10 * float(p)) for t, p in (pair.split(",") for pair in corners.split())),
    )
    for label, corners in _OUTLINES.items()
)  # fmt: skip


def rainfall_map(name: str, regions: tuple[MapRegion, ...], *stations: tuple[str, float, float, str]) -> TemperatureRainfallMap:
    """`stations` as (label, temperature, precipitation, region)."""
    return TemperatureRainfallMap(
        name=f"map_{name.lower().replace(' ', '_')}", title=f"Map of {name}", description="Climates.", reading=(), table=TABLE, regions=regions,
        stations=tuple(
            MapStation(id=f"s{number}", label=label, annual_mean_temp_degc=temp, annual_precip_mm=precip, region=region)
            for number, (label, temp, precip, region) in enumerate(stations)
        ),
    )  # fmt: skip


_FEW = (
    ("Harrow Plain", 7.1, 327, "Temperate grassland/desert"), ("Maro Landing", 26.5, 3080, "Tropical rain forest"),
    ("Ice Narrows", -14.5, 139, ""), ("Cape Station", 16.2, 508, "Woodland/shrubland"), ("Kessa", 23.8, 41, "Subtropical desert"),
)  # fmt: skip
_PLACES = (
    ("Aldermoor", 9.8, 820), ("Birk Sound", 5.2, 2300), ("Caldra", 25.9, 1180), ("Dunmere", 10.4, 790), ("Eskfjord", -1.8, 520),
    ("Fenn", 9.9, 805), ("Galisha", 27.1, 960), ("Harrow Plain", 7.1, 327), ("Ice Narrows", -14.5, 139), ("Jorund", -6.0, 330),
    ("Kessa", 23.8, 41), ("Lom", 3.2, 610), ("Maro Landing", 26.5, 3080), ("Nettle Bay", 14.6, 690), ("Oster", 6.9, 402),
    ("Port Sarne", 16.2, 508), ("Quill", -9.6, 260), ("Rainmoor", 8.4, 1480), ("Sandreach", 19.5, 110), ("Tamba", 24.8, 2210),
    ("Upper Vell", 0.4, 1210), ("Veld Station", 18.4, 640), ("Wick", 9.2, 840), ("Xalli", 21.2, 1510), ("Yarrow", 12.2, 980),
)  # fmt: skip


def random_map(seed: int) -> TemperatureRainfallMap:
    """Twenty-five stations in clusters, as real ones lie."""
    chance = random.Random(seed)
    centres = [(chance.uniform(-12, 28), chance.uniform(50, 3000)) for _ in range(8)]
    stations = []
    for number in range(25):
        temp, precip = chance.choice(centres)
        place = round(temp + chance.gauss(0, 1.2), 1), round(max(precip + chance.gauss(0, 90), 1))
        stations.append((f"Station {number}", *place, chance.choice(("", "Tundra"))))
    return rainfall_map(f"Random {seed}", REGIONS, *stations)


MAPS = (
    rainfall_map("Few", REGIONS, *_FEW), rainfall_map("Many", REGIONS, *((*place, "" if place[0] in "Quill" else "x") for place in _PLACES)),
    rainfall_map("Empty", REGIONS), rainfall_map("No regions", (), *_FEW), rainfall_map("One", (), _FEW[0]),
    rainfall_map("Same place", REGIONS, *((f"Twin town number {n}", 9.9, 800, "Temperate seasonal forest") for n in range(6))),
)  # fmt: skip


def stock_panel(label: str, curve: Sequence[float], other: Sequence[float], ticks: Sequence[tuple[float, str]]) -> StockPanel:
    """Stocks at even times over ten years; labels are the last stocks."""
    lines = [tuple((10 * number / (len(line) - 1), stock) for number, stock in enumerate(line)) for line in (curve, other) if line]
    return StockPanel(
        label=label, curve=lines[0], other=lines[1] if other else (), ticks=tuple(ticks),
        end_label=f"with {curve[-1]:g}" if other else f"{curve[-1]:g}", other_end_label=f"without {other[-1]:g}" if other else "",
    )  # fmt: skip


def stock_curves(name: str, *panels: StockPanel) -> StockCurves:
    return StockCurves(
        name=f"stocks_{name.lower().replace(' ', '_')}", title=f"Stocks of {name}", description="Through ten years.", reading=(), table=TABLE,
        axis="Stock, kg N ha⁻¹", key=("with the change", "without it") if panels[0].other else ("", ""),
        year_ticks=((0.0, "0"), (5.0, "5"), (10.0, "10")), panels=panels,
    )  # fmt: skip


_HUNDREDS = ((0.0, "0"), (100.0, "100"), (200.0, "200"), (300.0, "300"))
_WIDE = ((1.33e9, "1.330 × 10⁹"), (1.34e9, "1.340 × 10⁹"), (1.35e9, "1.350 × 10⁹"))
STOCKS = (
    stock_curves("One rising", stock_panel("Air", (100, 150, 290), (), _HUNDREDS)),
    stock_curves("Two in full width", stock_panel("Air", (100, 150, 290), (100, 120, 130), _HUNDREDS), stock_panel("Sea", (10, 9, 8), (10, 20, 30), _HUNDREDS)),
    stock_curves(
        "Five", stock_panel("Soil organic matter with a very long name of its own", (100, 290), (100, 10), _HUNDREDS),
        stock_panel("Ends that meet", (100, 200), (100, 199), _HUNDREDS), stock_panel("Ends that meet at the top", (300, 300), (100, 299), _HUNDREDS),
        stock_panel("Ends that meet below", (100, 0), (300, 1), _HUNDREDS), stock_panel("Ocean", (1.331e9, 1.345e9), (1.331e9, 1.349e9), _WIDE),
    ),
)  # fmt: skip
