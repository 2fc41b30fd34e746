"""What every chart has besides its drawing: a name, a title, a description in words and the numbers as a table."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass, fields, replace
from typing import ClassVar, Self


@dataclass(frozen=True, kw_only=True)
class DataTable:
    """The numbers of a chart, ready to print; every row has as many cells as there are columns."""

    caption: str
    columns: tuple[str, ...]
    """Column heads, with units."""
    rows: tuple[tuple[str, ...], ...]
    """The first cell of a row names the row."""

    def __post_init__(self) -> None:
        for row in self.rows:
            if len(row) != len(self.columns):
                raise ValueError(f"{self.caption}: expected {len(self.columns)} cells, found {len(row)}: {row}")


@dataclass(frozen=True, kw_only=True)
class Chart:
    """Base of all chart specs. Two equal specs draw the same bytes."""

    name: str
    """Unique on the site and safe as a file name, e.g. `temperate_grassland.climate_diagram.harrow_plain`."""
    title: str
    """What the chart is, in a few words; read out first."""
    description: str
    """What it shows, in one or two sentences with the decisive numbers and units; read out second."""
    reading: tuple[str, ...]
    """Steps that teach how to read this chart."""
    table: DataTable
    narrow: bool = False
    """Whether to draw it for the width of a phone."""
    HAS_NARROW: ClassVar[bool] = False
    """Whether this shape of chart knows a second drawing for the width of a phone."""
    FITS_A_PHONE: ClassVar[bool] = False
    """Whether its only drawing is as narrow as a phone; a shape with neither would scroll in itself there."""

    def narrowed(self) -> Self | None:
        """The same chart for the width of a phone, under a name of its own, if there is such a drawing."""
        return replace(self, name=f"{self.name}.narrow", narrow=True) if self.HAS_NARROW and not self.narrow else None

    def fingerprint(self) -> str:
        """A hash of everything that the drawing depends on, stable between processes."""
        parts = [type(self).__qualname__, *(f"{f.name}={getattr(self, f.name)!r}" for f in fields(self))]
        return hashlib.sha256("\n".join(parts).encode()).hexdigest()
