"""Air that crosses a crest, step by step: dry up to the cloud base, in cloud up to the crest, dry down to the other side."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from generator.kinds.transect.record import RainShadow, TransectRecord
from generator.quantities.amount import Amount
from generator.quantities.fact import Fact, computed, in_unit, stated
from generator.quantities.units import Unit, unit
from generator.quantities.working import Rule, RulePath
from generator.records.fields import stated_amount
from generator.science import lapse_rates
from generator.science.method import Method

M, DEGC, K, K_PER_KM, HPA = unit("m"), unit("degC"), unit("K"), unit("K/km"), unit("hPa")
PART = "air"
"""What the ids of these facts begin with; no station may be called so."""
BEYOND = "not defined: the formula is not for air as cold or as warm as this"
NO_CLOUD = "not defined: no cloud forms below the crest"


class Crossing:
    """One crossing with the heights of its three stations."""

    def __init__(self, record: TransectRecord, shadow: RainShadow, stations: Mapping[str, Mapping[str, Fact]], figures: int) -> None:
        self.record, self.shadow, self.figures = record, shadow, figures
        self.start, self.crest, self.end = (stations[name]["height"] for name in (shadow.start, shadow.crest, shadow.end))

    def facts(self) -> Iterator[Fact]:
        """In the order of the way."""
        temperature = self.reading("temperature", "Air temperature at the start", self.shadow.temperature)
        yield temperature
        *steps, base = self.cloud_base(temperature)
        yield from (*steps, base)
        cloud = base.number < self.crest.number
        rule = Rule("Does the cloud base lie below the crest?", f"{base.shown_exactly} < {self.crest.shown_exactly}", cloud)
        yield Fact(id=f"{PART}.cloud_forms", name="Cloud forms below the crest", value=cloud, working=RulePath((rule,)))
        dry = self.dry_lapse_rate()
        yield dry
        yield from self.in_cloud(temperature, base, dry) if cloud else self.without_cloud(temperature, dry, rule)

    def in_cloud(self, temperature: Fact, base: Fact, dry: Fact) -> Iterator[Fact]:
        at_base = self.carried("base_temperature", "Air temperature at the cloud base", temperature, dry, base, self.start)
        yield at_base
        *steps, moist = self.moist_lapse_rate(base, at_base)
        yield from (*steps, moist)
        at_crest = self.carried("crest_temperature", "Air temperature at the crest", at_base, moist, self.crest, base)
        yield at_crest
        yield self.carried("lee_temperature", "Air temperature on the lee side", at_crest, dry, self.end, self.crest)
        given = {"dry_lapse_rate": dry, "moist_lapse_rate": moist, "crest": self.crest, "cloud_base": base}
        yield self.made("warming", "Warmer than at the start, at the same height", lapse_rates.FOEHN_WARMING, given, K)

    def without_cloud(self, temperature: Fact, dry: Fact, rule: Rule) -> Iterator[Fact]:
        """Up and down at one rate: the air comes back as it was."""
        method = lapse_rates.TEMPERATURE_AT_HEIGHT.id
        yield Fact(id=f"{PART}.base_temperature", name="Air temperature at the cloud base", value=None, unit=DEGC, method=method, undefined_because=NO_CLOUD)
        name, moist = "Moist adiabatic lapse rate", lapse_rates.MOIST_ADIABATIC_LAPSE_RATE.id
        yield Fact(id=f"{PART}.moist_lapse_rate", name=name, value=None, unit=K_PER_KM, method=moist, undefined_because=NO_CLOUD)
        at_crest = self.carried("crest_temperature", "Air temperature at the crest", temperature, dry, self.crest, self.start)
        yield at_crest
        yield self.carried("lee_temperature", "Air temperature on the lee side", at_crest, dry, self.end, self.crest)
        yield Fact(
            id=f"{PART}.warming", name="Warmer than at the start, at the same height", value=0.0, unit=K, working=RulePath((rule,)),
            method=lapse_rates.FOEHN_WARMING.id, written="0",
        )  # fmt: skip

    def cloud_base(self, temperature: Fact) -> Iterator[Fact]:
        """The dew point, and what follows; or just what the record states."""
        fact_id, name = f"{PART}.cloud_base", "Cloud base"
        if self.shadow.cloud_base is not None:
            height = stated_amount(self.shadow.cloud_base)
            yield in_unit(stated(fact_id, name, height, unit(self.record.units.height), figures=self.figures), M)
            return
        dew_point = self.reading("dew_point", "Dew point at the start", self.shadow.dew_point)
        yield dew_point
        rise = self.constant("rise_per_kelvin", "Rise for each kelvin", f"{lapse_rates.RISE_PER_KELVIN:g}", "m/K")
        given = {"height": self.start, "rise_per_kelvin": rise, "temperature": temperature, "dew_point": dew_point}
        yield self.made("cloud_base", name, lapse_rates.CLOUD_BASE, given, M)

    def dry_lapse_rate(self) -> Fact:
        fact_id, name = f"{PART}.dry_lapse_rate", "Dry adiabatic lapse rate"
        if self.shadow.dry_lapse_rate is not None:
            return stated(fact_id, name, stated_amount(self.shadow.dry_lapse_rate), K_PER_KM, figures=self.figures)
        given = {
            "gravity": self.constant("gravity", "Acceleration of free fall", f"{lapse_rates.GRAVITY:g}", "m/s2"),
            "heat_capacity": self.constant("heat_capacity", "Heat capacity of dry air", f"{lapse_rates.HEAT_CAPACITY:g}", "J/kg/K"),
        }
        return self.made("dry_lapse_rate", name, lapse_rates.DRY_ADIABATIC_LAPSE_RATE, given, K_PER_KM)

    def moist_lapse_rate(self, base: Fact, at_base: Fact) -> Iterator[Fact]:
        """The pressure at the cloud base, and what follows; or just what the record states."""
        fact_id, name, method = f"{PART}.moist_lapse_rate", "Moist adiabatic lapse rate", lapse_rates.MOIST_ADIABATIC_LAPSE_RATE
        if self.shadow.moist_lapse_rate is not None:
            yield stated(fact_id, name, stated_amount(self.shadow.moist_lapse_rate), K_PER_KM, figures=self.figures)
            return
        pressure = computed(
            f"{PART}.base_pressure", "Air pressure at the cloud base, standard atmosphere", lapse_rates.STANDARD_PRESSURE.expression, {"height": base},
            HPA, method=lapse_rates.STANDARD_PRESSURE.id, figures=self.figures, bare=True,
        )  # fmt: skip
        yield pressure
        if not lapse_rates.COLDEST <= at_base.number <= lapse_rates.WARMEST:
            yield Fact(id=fact_id, name=name, value=None, unit=K_PER_KM, method=method.id, undefined_because=BEYOND)
            return
        saturated = Rule("Is the air at the cloud base saturated?", f"{at_base.shown_exactly}, {pressure.shown_exactly}", True)
        yield Fact(
            id=fact_id, name=name, value=lapse_rates.moist_adiabatic_lapse_rate(at_base.number, pressure.number), unit=K_PER_KM,
            working=RulePath((saturated,)), method=method.id, figures=self.figures,
        )  # fmt: skip

    def carried(self, name: str, title: str, before: Fact, rate: Fact, height: Fact, height_before: Fact) -> Fact:
        given = {"temperature_before": before, "lapse_rate": rate, "height": height, "height_before": height_before}
        return self.made(name, title, lapse_rates.TEMPERATURE_AT_HEIGHT, given, DEGC)

    def made(self, name: str, title: str, method: Method, given: Mapping[str, Fact], of: Unit) -> Fact:
        return computed(f"{PART}.{name}", title, method.expression, given, of, method=method.id, figures=self.figures)

    def reading(self, name: str, title: str, number: float) -> Fact:
        fact = stated(f"{PART}.{name}", title, stated_amount(number), unit(self.record.units.temperature), figures=self.figures)
        return in_unit(fact, DEGC)

    def constant(self, name: str, title: str, written: str, label: str) -> Fact:
        return stated(f"{PART}.{name}", title, Amount(value=float(written), written=written), unit(label))
