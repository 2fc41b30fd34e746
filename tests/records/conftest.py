"""A small kind of record, only for these tests: records/ knows none of the real ones."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

import pytest
import yaml
from pydantic import AfterValidator, Field

from generator.records.fields import (
    Bounds,
    Id,
    Many,
    Number,
    Series12,
    Some,
    SourceKey,
    StatedAmount,
    Text,
    different,
    monthly,
)
from generator.records.parts import Adaptation, Part
from generator.records.record import Record

HERE = Path(__file__).parent


class Station(Part):
    id: Id
    name: Text
    latitude: Annotated[Number, AfterValidator(Bounds(-90, 90, "degrees", "check the digits; south is negative"))]
    elevation: StatedAmount | None = None
    use: Literal["page", "practice", "paper"] = "page"
    coastal: bool = False
    monthly_mean_temp: Series12
    monthly_precip: monthly(Bounds(0, unit="mm", mend="precipitation is never negative"))


class Flow(Part):
    id: Id
    source: Id = Field(alias="from")
    rate: Annotated[StatedAmount, AfterValidator(Bounds(0))]


class Soil(Part):
    type: Text
    nutrients_held_in: Text = "nothing"
    why: Text


class Range(Part):
    annual_mean_temp: Many[Number]
    annual_precip: Many[Number]
    source: SourceKey


class Found(Part):
    latitudes: Many[Number]
    where: Text


class Place(Record):
    region: Id
    stations: Annotated[Some[Station], different()]
    flows: Many[Flow] = ()
    soil: Soil | None = None
    disturbance: Many[Text] = ()
    adaptations: Many[Adaptation] = ()
    usual_range: Many[Range] = ()
    found: Found | None = None


class AnyRecord(Record, extra="allow"):
    """The shared fields, and whatever else a file has."""


@pytest.fixture(scope="session")
def place_record() -> type[Record]:
    """The model of the tests' own kind of record."""
    return Place


@pytest.fixture(scope="session")
def any_record() -> type[Record]:
    """The model of what records of all kinds share."""
    return AnyRecord


@pytest.fixture(scope="session", params=["fast", "plain"])
def parser(request: pytest.FixtureRequest) -> type:
    """Each of PyYAML's two parsers."""
    return {"fast": yaml.CSafeLoader, "plain": yaml.SafeLoader}[request.param]


@pytest.fixture(scope="session")
def good_records() -> dict[str, bytes]:
    """The three records that are the format's contract, by name."""
    return {path.stem: path.read_bytes() for path in sorted((HERE / "good").glob("*.yaml"))}
