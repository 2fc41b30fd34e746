"""Charts of error bars, of rates and light over depth and of oxygen for tests: ordinary ones and extreme ones."""

from __future__ import annotations

import math

from figures import BarredMean, BarredSeries, ErrorBarChart, LightProfile, OxygenCurve, OxygenPoint, ProductionProfile, SaturationCurve
from tests.figures.specimens import TABLE

_MARKS = (
    ("soil", "diamond"), ("ink", "square"), ("plant", "circle"), ("heat", "open circle"), ("animal", "open square"), ("water", "open diamond"),
)  # fmt: skip
_Given = tuple[float, float, float | None, tuple[float, ...]]


def bars(name: str, places: tuple[tuple[float, str], ...], *series: tuple[str, tuple[_Given, ...]], joined: bool = False, to_scale: bool = True) -> ErrorBarChart:
    """Series as (label, means), each mean as (place, mean, half bar, readings)."""
    return ErrorBarChart(
        name=f"bars_{name.lower().replace(' ', '_')}", title=name, description="Means.", reading=(), table=TABLE,
        quantity="Change of dissolved oxygen since the start, mg L⁻¹", across="Depth at which the bottles hung", places=places, joined=joined, to_scale=to_scale,
        bars="Bars: mean ± two standard errors. Small dots: single readings.",
        series=tuple(
            BarredSeries(label=label, role=_MARKS[number][0], mark=_MARKS[number][1], means=tuple(BarredMean(*mean) for mean in means))
            for number, (label, means) in enumerate(series)
        ),
    )  # fmt: skip


BOTTLES = bars(
    "Lake", ((0.0, "0 m"), (7.0, "7 m")),
    ("light bottles", ((0, 0.46, 0.05, (0.42, 0.5)), (7, 0.02, 0.04, (0.0, 0.05)))),
    ("dark bottles", ((0, -0.2, 0.045, (-0.23, -0.17)), (7, -0.13, 0.04, (-0.15, -0.11)))),
)
DEPTHS = bars("Depths", ((0.0, "0 m"), (4.0, "4 m"), (6.0, "6 m")), ("light", ((0, 0.46, 0.05, ()), (4, 0.2, 0.04, ()), (6, 0.1, 0.04, ()))))
PLAIN = bars(
    "Plain", ((0.0, "1 May"), (40.0, "10 June"), (80.0, "20 July")),
    ("Under nets", ((0, 42, 3.7, (39, 46)), (40, 118, 9.8, ()), (80, 210, 18, (188, 233)))),
    ("Open ground", ((0, 41.6, 3.5, ()), (40, 92, 9, ()), (80, 145, 14, ()))), joined=True,
)  # fmt: skip
RATES = bars(
    "Rates", ((0.0, "Gross production"), (1.0, "Respiration"), (2.0, "Net production")),
    ("Gross production", ((0, 0.055, 0.004, ()),)), ("Respiration", ((1, 0.017, 0.004, ()),)), ("Net production", ((2, 0.038, None, ()),)), to_scale=False,
)  # fmt: skip
CROWDED_BARS = bars(
    "Crowded", tuple((float(day), f"{day} September") for day in (0, 1, 2, 60, 61)),
    *((f"A plot with a long name, number {n}", tuple((float(day), 10.0 * n + day, 4.0, (9.0 * n,)) for day in (0, 1, 2, 60, 61))) for n in range(6)), joined=True,
)  # fmt: skip
FAR = bars("Far from nothing", ((0.0, "0 m"),), ("start", ((0, 9.4, 0.02, (9.38, 9.43)),)), ("light", ((0, 9.9, 0.02, ()),)))
FLAT = bars("Flat", ((0.0, "0 m"),), ("start", ((0, 0.0, None, (0.0,)),)))
BARS = (BOTTLES, DEPTHS, PLAIN, RATES, CROWDED_BARS, FAR, FLAT)


_SORTS = (("Gross production", "plant", "circle"), ("Respiration", "heat", "square"), ("Net production", "animal", "diamond"))


def production(name: str, depths: list[float], gross: list[float], respired: list[float], crossing: float | None, error: float | None = 0.05) -> ProductionProfile:
    net = [made - used for made, used in zip(gross, respired, strict=True)]
    return ProductionProfile(
        name=f"production_{name.lower()}", title=name, description="Falls with depth.", reading=(), table=TABLE,
        quantity="Oxygen of a day and a night, mg L⁻¹ d⁻¹", compensation_m=crossing,
        compensation_label="" if crossing is None else f"{crossing:.3g} m", bars="Bars: ± two standard errors.",
        series=tuple(
            BarredSeries(label=label, role=role, mark=mark, means=tuple(BarredMean(z, value, error) for z, value in zip(depths, values, strict=True)))
            for (label, role, mark), values in zip(_SORTS, (gross, respired, net), strict=True)
        ),
    )  # fmt: skip


LAKE_BY_DEPTH = production("Lake", [0, 2, 4, 7, 10], [0.83, 0.9, 0.63, 0.19, 0.04], [0.4, 0.4, 0.36, 0.26, 0.22], 6.382)
POND = production("Pond", [0.1, 0.3], [40, 20], [10, 8], None)
CAVE = production("Cave", [5, 400], [0.001, 0], [0.3, 0.2], None, None)
EDGE = production("Edge", [0, 100], [2, 0.9], [1, 1], 99)
PRODUCTIONS = (LAKE_BY_DEPTH, POND, CAVE, EDGE)


def light(name: str, extinction: float, bottom: float, lowest: float) -> LightProfile:
    photic = math.log(100) / extinction
    depths = [lowest * number / 40 for number in range(41)]
    return LightProfile(
        name=f"light_{name.lower().replace(' ', '_')}", title=f"Light at {name}", description="Light fades.", reading=(), table=TABLE,
        station=name, place=f"{bottom:g} m deep", curve=tuple((z, 100 * math.exp(-extinction * z)) for z in depths),
        photic_depth_m=photic, photic_label=f"{photic:.3g} m", bottom_m=bottom, bottom_label=f"{bottom:g} m",
        bottom_light_label=f"{100 * math.exp(-extinction * bottom):.3g} %",
    )  # fmt: skip


LAKE_LIGHT = light("Deep Lake", 0.5, 24, 11.5)
REEF = light("Bright Reef", 0.09, 12, 12)
BAR = light("Murky Bar", 0.74, 9, 9)
CLOSE = light("Just Lit", 0.5, 9.3, 9.3)
SHALLOW = light("A Ditch with a Very Long Name that Runs on and on beyond any Reason or Need", 0.2, 0.08, 0.08)
MURKY = light("Mud", 40, 1, 0.14)
LIGHTS = (LAKE_LIGHT, REEF, BAR, CLOSE, SHALLOW, MURKY)


def saturation(temperature: float, salinity: float) -> float:
    """Near enough to the real thing for a drawing."""
    return (14.6 - 0.39 * temperature + 0.0047 * temperature**2) * (1 - 0.0055 * salinity)


def curve(name: str, *points: tuple[str, float, float], salinities: tuple[float, ...] = (0.2,)) -> OxygenCurve:
    return OxygenCurve(
        name=f"oxygen_{name.lower().replace(' ', '_')}", title=name, description="Oxygen falls.", reading=(), table=TABLE,
        curves=tuple(
            SaturationCurve(label=f"{'fresh' if s < 0.5 else 'brackish'} water, {s:g} g kg⁻¹", points=tuple((float(t), saturation(t, s)) for t in range(41)))
            for s in salinities
        ),
        points=tuple(
            OxygenPoint(
                label=label, temperature_degc=t, oxygen_mg_per_l=o, saturation_mg_per_l=saturation(t, salinities[0]),
                value_label=f"{o:g} mg L⁻¹, {100 * o / saturation(t, salinities[0]):.3g} %",
            )
            for label, t, o in points
        ),
    )  # fmt: skip


LAKE_OXYGEN = curve("Lake", ("Halden Water", 20, 9.4), ("Halden Water, deep layer", 6.5, 2.1))
ESTUARY = curve("Estuary", ("Wendmouth Narrows", 17, 7.4), ("Wendmouth Bar", 16, 8.0), salinities=(8, 28))
CORNERS = curve("Corners", ("Ice Hole", 0, 14.6), ("Bog", 0, 0), ("Hot Spring", 40, 6.4), ("Ooze below the Hot Spring", 40, 0.1))
SEA = curve("Sea", ("Reef at Noon in the Hottest Month", 31, 7.4), ("Deep", 3, 2.0), salinities=(0, 22, 38))
BLOOM = curve("Bloom", ("Pond in June at Noon", 26, 21.5))
CURVES = (LAKE_OXYGEN, ESTUARY, CORNERS, SEA, BLOOM)
