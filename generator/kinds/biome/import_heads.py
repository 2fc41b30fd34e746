"""What the first cells of a climate table mean: names of quantities, their units, and how to mend what cannot be told."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Iterator

from generator.diagnostics import Diagnostic, listed, nearest
from generator.records.tables import Head, Table, found_in, id_of, problem

TEMPERATURE = (
    "temperature", "mean_temperature", "mean_temp", "temp", "monthly_mean_temperature", "monthly_mean_temp", "mean_monthly_temperature",
    "average_temperature", "average_temp", "avg_temp", "mean_daily_temperature", "daily_mean_temperature", "daily_mean", "tmean", "tavg",
)  # fmt: skip
PRECIPITATION = (
    "precipitation", "precip", "rainfall", "rain", "monthly_precipitation", "monthly_precip", "mean_precipitation",
    "mean_monthly_precipitation", "average_precipitation", "total_precipitation", "monthly_rainfall", "mean_rainfall",
    "mean_monthly_rainfall", "average_rainfall", "total_rainfall", "prcp",
)  # fmt: skip
UNITS = {
    "temperature": {"degc": "degC", "°c": "degC", "c": "degC", "deg c": "degC", "degf": "degF", "°f": "degF", "f": "degF", "deg f": "degF"},
    "precipitation": {"mm": "mm", "cm": "cm", "in": "in", "inch": "in", "inches": "in"},
    "elevation": {"m": "m", "ft": "ft", "feet": "ft"},
}
EXAMPLES = {"temperature": "temperature (degC)", "precipitation": "precipitation (mm)", "elevation": "elevation (m)"}
NAMING = {
    "month": "name it month; in it stand January, Jan or 1, and so on",
    "temperature": "name it temperature, mean temperature or temp, with its unit: temperature (degC) or temperature (degF)",
    "precipitation": "name it precipitation, rainfall or rain, with its unit: precipitation (mm), (cm) or (in)",
}
NO_MEAN = re.compile(r"max|min|high|low|record|extreme")
"""What the name of a column says that is no mean."""
BASE_UNITS = {"temperature": "degC", "precipitation": "mm", "elevation": "m"}
TRACE = ("trace", "tr", "t")
"""Less rain than can be measured, as weather offices write it."""


def quantity_of(name: str) -> str:
    """The quantity that a name in the spelling of ids means, or nothing."""
    return "temperature" if name in TEMPERATURE else "precipitation" if name in PRECIPITATION else ""


def unit_of(quantity: str, label: str) -> str | None:
    """The unit of a quantity, as records write it, that a label means."""
    return UNITS[quantity].get(label.lower().replace("degrees", "deg"))


def with_unit(one: Head) -> Head:
    """The head of a column; a unit that stands behind a known name without brackets, as in `Temp °F` or `rain in mm`, is its unit."""
    words = _words(one)
    for length in (1, 2):
        unit = " ".join(words[-length:])
        for name in (id_of(" ".join(words[:-length])), id_of(" ".join(words[:-length]).removesuffix(" in"))):
            quantity = quantity_of(name) or (name if name in UNITS else "")
            if not one.unit and quantity and unit_of(quantity, unit):
                return Head(name, unit, one.cell)
    return one


def missing(table: Table, wanted: Iterable[str], there: Collection[str], what: str) -> Iterator[Diagnostic]:
    """What is wrong where a column or a row (`what`) is not there; a column that seems to be meant for it is named."""
    for name in (name for name in wanted if name not in there):
        alike = [one for one in table.heads if what == "column" and _alike(one, name)]
        means = [one for one in alike if not NO_MEAN.search(one.name)]
        cell, found = (means[0].cell, f"none, but {found_in(means[0].cell)}") if means else (table.heads[0].cell, "none")
        mend = NAMING[name]
        if alike and not means:
            found = f"none, only {listed((found_in(one.cell) for one in alike), 'and')}"
            mend = f"work out the mean of each month first, and {mend}"
        yield problem(cell, "", f"a {what} with {_article(name)}", mend, found)


def _alike(one: Head, name: str) -> bool:
    """Whether a column's name, or its unit, tells that it is meant for a quantity."""
    last = _words(one)[1:][-1:]
    unit = name in UNITS and any(unit_of(name, label) for label in (one.unit, *last))
    return unit or bool(nearest(name, [one.name, *one.name.split("_")]))


def _article(name: str) -> str:
    return {"month": "the months", "temperature": "the mean temperature"}.get(name, f"the {name}")


def _words(one: Head) -> list[str]:
    return [word for word in re.split(r"[\s_,/]+", one.cell.text) if word]
