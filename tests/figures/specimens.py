"""Chart specs for tests: ordinary ones, extreme ones, and flux diagrams made at random from a seed."""

from __future__ import annotations

import random
from collections.abc import Sequence

from figures import Box, ClimateDiagram, DataTable, TrophicPyramid, FluxArrow, FluxDiagram, PyramidLevel

TABLE = DataTable(caption="Values", columns=("name", "value"), rows=(("a", "1"),))


def climate(
    station: str, temp_degc: Sequence[float], precip_mm: Sequence[float], *, southern: bool = False, place: str = "46.5° N, 310 m"
) -> ClimateDiagram:
    return ClimateDiagram(
        name=f"climate_{station.lower().replace(' ', '_')}", title=f"Climate of {station}", description="A mean year.",
        reading=(), table=TABLE, station=station, place=place, southern=southern,
        monthly_mean_temp_degc=tuple(temp_degc), monthly_precip_mm=tuple(precip_mm),
        mean_label=f"{sum(temp_degc) / 12:.1f} °C".replace("-", "−"), total_label=f"{sum(precip_mm):.0f} mm",
    )  # fmt: skip


CLIMATES = (
    climate("Harrow Plain", [-9, -6, 0, 8, 14, 19, 22, 21, 15, 8, 0, -7], [12, 10, 16, 26, 48, 66, 42, 34, 26, 20, 15, 12]),
    climate("Ice Narrows", [-30, -31, -29, -22, -10, -1, 3, 1, -6, -15, -24, -28], [6, 5, 6, 7, 9, 14, 22, 25, 18, 12, 8, 7]),
    climate("All Frozen", [-30] * 6 + [-5] * 6, [10] * 12),
    climate("Maro Landing", [26.5] * 12, [300, 250, 400, 500, 350, 200, 120, 90, 110, 180, 260, 320]),
    climate("Rainless", [14, 16, 20, 25, 29, 32, 33, 33, 30, 26, 20, 15], [0] * 12),
    climate("Even", [10] * 12, [20] * 12),
    climate("Freezing Dry", [0] * 12, [0] * 12),
    climate("Great Monsoon", [24, 25, 28, 30, 31, 28, 26, 26, 27, 27, 26, 24],
            [8, 20, 60, 150, 400, 1500, 1130, 900, 500, 240, 60, 12]),
    climate(
        "A Cape with a Very Long Name indeed", [21, 21, 20, 17, 15, 13, 12, 13, 14, 16, 18, 20],
        [15, 17, 20, 41, 69, 93, 82, 77, 40, 30, 14, 17], southern=True, place="33.9° S, 46 m above the sea, on the western coast",
    ),
)  # fmt: skip


def pyramid(name: str, *levels: tuple[str, float], quantity: str = "Production", unit: str = "kJ m⁻² yr⁻¹") -> TrophicPyramid:
    """Levels as (label, value) from producers up; shares are passed on in pyramids of production only."""
    roles = ("producers", "primary consumers", "secondary consumers", "tertiary consumers", "quaternary consumers", "top consumers")
    made, below = [], None
    for role, (label, value) in zip(roles, levels, strict=False):
        made.append(PyramidLevel(
            id=label.lower().replace(" ", "_"), label=label, role=role, value=value, value_label=f"{value:g} {unit}",
            passed_on_label="" if below is None or quantity != "Production" else f"{100 * value / below:.3g} %",
        ))  # fmt: skip
        below = value
    return TrophicPyramid(
        name=f"pyramid_{name.lower().replace(' ', '_')}", title=f"Pyramid of {name}", description="Falls by level.", reading=(),
        table=TABLE, levels=tuple(made), quantity=f"{quantity}, {unit}",
    )  # fmt: skip


PYRAMIDS = (
    pyramid("Sill Lake", ("Phytoplankton", 5800), ("Zooplankton", 580), ("Perch", 50), ("Pike", 4)),
    pyramid(
        "Long Names", ("Algae and eelgrass with everything else that is green", 8833), ("Snails, caddis larvae and turtles", 1478),
        ("Small fish", 67), ("Large fish", 6),
    ),
    pyramid("Steep", ("Grass", 24000), ("Voles", 2400), ("Weasels", 2), ("Owls", 0.001)),
    pyramid("Six Levels", ("A", 24000), ("B", 12400), ("C", 9000), ("D", 500), ("E", 30), ("F", 2)),
    pyramid("Two Levels", ("Grass", 100), ("Cattle", 10)),
    pyramid("Gentle", ("Algae", 100), ("Snails", 95), ("Fish", 90)),
    pyramid("Gap", ("Forest", 1e6), ("Deer", 5), ("Lynx", 1)),
    pyramid("Sarne Bay", ("Phytoplankton", 4), ("Zooplankton and bottom animals", 21), ("Fish", 3), quantity="Biomass", unit="g m⁻²"),
    pyramid("Wood", ("Oaks", 0.02), ("Leaf-eating insects", 150), ("Spiders and beetles", 120), ("Tits", 0.004), quantity="Number", unit="m⁻²"),
    pyramid("Many decades", ("Algae", 52000), ("Mites", 310), ("Beetles", 1.5), ("Shrews", 0.0007), quantity="Number", unit="m⁻²"),
    pyramid("Hollow", ("Oaks", 900), ("Moths", 0.001), ("Flies", 800), ("Wasps", 2), ("Tits", 1e-9), quantity="Number", unit="m⁻²"),
    pyramid("Upside down", ("A", 1e-6), ("B", 1e-3), ("C", 1), ("D", 1e3), ("E", 1e6), quantity="Number", unit="m⁻²"),
)


def flux_diagram(
    name: str, boxes: Sequence[tuple[str, str, bool, tuple[float, float] | None]], arrows: Sequence[tuple[str, str, float, str, bool]],
    unit: str = "kg N ha⁻¹ yr⁻¹",
) -> FluxDiagram:  # fmt: skip
    """`boxes` as (label, stock, outside, at), `arrows` as (start, end, rate, process, by people); labels are the ids."""
    return FluxDiagram(
        name=f"fluxes_{name.lower().replace(' ', '_')}", title=f"Fluxes of {name}", description="What flows where.", reading=(),
        table=TABLE, unit_label=unit,
        boxes=tuple(Box(id=label, label=label, stock_label=stock, outside=outside, at=at) for label, stock, outside, at in boxes),
        arrows=tuple(
            FluxArrow(id=f"flux_{number}", start=start, end=end, rate=rate, label=f"{process} {shown}", rate_label=shown, by_people=by_people)
            for number, (start, end, rate, process, by_people) in enumerate(arrows)
            for shown in ["not known" if rate is None else f"{rate:g}"]
        ),
    )  # fmt: skip


_ENDS = tuple((name, "", True, None) for name in ("air", "stream", "store", "timber"))
_HOLLOW = (
    ("air", "Living plants", 12, "fixation", False), ("air", "Soil organic matter", 3, "fixation", False),
    ("air", "Nitrate in soil", 2, "fixation", False), ("air", "Nitrate in soil", 5, "deposition", True),
    ("store", "Ammonium in soil", 20, "fertilising", True), ("Living plants", "Soil organic matter", 95, "litter fall", False),
    ("Soil organic matter", "Ammonium in soil", 92, "ammonification", False),
    ("Ammonium in soil", "Nitrate in soil", 70, "nitrification", False),
    ("Ammonium in soil", "Living plants", 42, "assimilation", False), ("Nitrate in soil", "Living plants", 45, "assimilation", False),
    ("Nitrate in soil", "air", 14, "denitrification", False), ("Nitrate in soil", "stream", 18, "leaching", False),
    ("Soil organic matter", "stream", 2, "erosion", False), ("Living plants", "timber", 4, "harvest", True),
)  # fmt: skip
_HOLLOW_STOCKS = (
    ("Living plants", "210 kg N ha⁻¹", (1, 0)), ("Soil organic matter", "4 800 kg N ha⁻¹", (1, 2)),
    ("Ammonium in soil", "6 kg N ha⁻¹", (0, 1)), ("Nitrate in soil", "12 to 24 kg N ha⁻¹", (2, 1)),
)  # fmt: skip
WEND_HOLLOW = flux_diagram("Wend Hollow", [*((n, s, False, at) for n, s, at in _HOLLOW_STOCKS), *_ENDS], _HOLLOW)
_CARBON = (
    ("Air", "Land plants", 120, "photosynthesis", False), ("Land plants", "Air", 60, "respiration", False),
    ("Land plants", "Soil", 60, "litter fall", False), ("Soil", "Air", 59, "decay", False), ("Air", "Sea", 80, "dissolving", False),
    ("Sea", "Air", 78, "escaping", False), ("Rock", "Air", 0.1, "volcanoes", False), ("Rock", "Air", 9.5, "burning fuel", True),
    ("Sea", "Rock", 0.2, "burial", False), ("Soil", "Sea", 0.9, "rivers", False), ("Land plants", "Air", 1.1, "clearing", True),
)  # fmt: skip
FLUX_DIAGRAMS = (
    WEND_HOLLOW,
    flux_diagram("Wend Hollow unplaced", [*((n, s, False, None) for n, s, _ in _HOLLOW_STOCKS), *_ENDS], _HOLLOW),
    flux_diagram("Carbon", [(n, "1 000 Gt C", False, None) for n in ("Air", "Land plants", "Soil", "Sea", "Rock")], _CARBON, "Gt C yr⁻¹"),
    flux_diagram("One box", [("Lake", "5 kg", False, None), ("river", "", True, None)],
                 [("river", "Lake", 3, "inflow", False), ("Lake", "river", 3, "outflow", False)]),
    flux_diagram("Nothing flows", [("Ice", "5 kg", False, None), ("Rock", "9 kg", False, None)],
                 [("Ice", "Rock", 0, "melting", False)]),
    flux_diagram("Nobody knows", [("Ice", "5 kg", False, None), ("sea", "", True, None)],
                 [("sea", "Ice", None, "snowfall", False), ("Ice", "sea", None, "melting", False), ("Ice", "sea", 7, "mining", True),
                  ("Ice", "sea", None, "towing away", True)]),
    flux_diagram("Still", [("Ice", "5 kg", False, None)], []),
    flux_diagram("Same place", [("Ice", "5 kg", False, (0, 0)), ("Water", "9 kg", False, (0.1, 0.1))],
                 [("Ice", "Water", 5, "melting", False)]),
    flux_diagram("Column", [(n, "9 kg", False, (0, row)) for row, n in enumerate(("Litter", "Humus", "Groundwater"))],
                 [("Litter", "Humus", 9, "decay", False), ("Humus", "Groundwater", 1e-3, "leaching", False),
                  ("Humus", "Litter", 4, "digging over", True)]),
    flux_diagram("Both outside", [("Lake", "5 kg", False, None), ("sky", "", True, None), ("sea", "", True, None)],
                 [("sky", "Lake", 3, "rain", False), ("sky", "sea", 30, "rain", False)]),
)  # fmt: skip

LONG_LABELS = flux_diagram("Long Labels", [("Ice", "5 kg", False, (0, 0)), ("Water", "9 kg", False, (1, 0))], [
    (*pair, 1 + n, ("a process with so long a name " * 8).strip(), False) for n, pair in enumerate([("Ice", "Water"), ("Water", "Ice")] * 2)
], "million tonnes of carbon as carbon dioxide per square kilometre and year")  # fmt: skip
CROWDED = flux_diagram("Crowd", [(f"Store {n}", "12 345 Gt C", False, None) for n in range(9)], [
    (f"Store {n % 9}", f"Store {(n + 1 + n // 9) % 9}", 1 + n, "denitrification", n % 3 == 0) for n in range(20)
], "Gt C yr⁻¹")  # fmt: skip

GRID = flux_diagram("Grid", [
    *((f"Store {column}{row}", "12 345 Gt C", False, (column, row)) for row in range(3) for column in range(4)), ("air", "", True, None),
], [
    *(("air", f"Store {column}{row}", 3, "rain", False) for row in range(3) for column in range(4)),
    *((f"Store {column}{row}", f"Store {column + 1}{row}", 2, "leaching", True) for row in range(3) for column in range(3)),
], "Gt C yr⁻¹")  # fmt: skip

_PROCESSES = ("fixation", "denitrification", "litter fall", "burning of fuel", "rain", "weathering of rock", "uptake by roots", "grazing")
_RESERVOIRS = ("Living plants", "Soil", "Deep ocean water", "Sediment", "Lake", "Groundwater", "Animals", "Dead wood", "Peat")


def random_flux_diagram(seed: int) -> FluxDiagram:
    """Two to seven reservoirs, up to three ends outside and up to sixteen fluxes, all reservoirs joined."""
    chance = random.Random(seed)
    reservoirs = chance.sample(_RESERVOIRS, chance.randint(2, 7))
    ends = chance.sample(("air", "stream", "open sea", "harvest store"), chance.randint(0, 3))
    pairs = [(chance.choice(reservoirs[:n]), reservoirs[n]) for n in range(1, len(reservoirs))]
    pairs += [(end, chance.choice(reservoirs))[:: chance.choice((1, -1))] for end in ends]
    while len(pairs) < chance.randint(len(pairs), 16):
        start, end = chance.sample([*reservoirs, *ends], 2)
        if {start, end} - set(ends):
            pairs.append((start, end))
    arrows = [
        (start, end, float(f"{10 ** chance.uniform(-1, 2):.2g}"), chance.choice(_PROCESSES), chance.random() < 0.3) for start, end in pairs
    ]
    boxes = [(name, f"{chance.randint(1, 9999)} Gt C", False, None) for name in reservoirs]
    return flux_diagram(f"Random {seed}", [*boxes, *((name, "", True, None) for name in ends)], arrows, "Gt C yr⁻¹")
