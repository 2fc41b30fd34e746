"""Every number of a series of bottles: depth by depth, then for the whole column of water."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from generator.kind import in_sentence
from generator.kinds.productivity.record import Bottles, Depth, ProductivityRecord
from generator.kinds.productivity.samples import Sample, made, sample, told_apart, within
from generator.quantities import shown
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed, stated
from generator.quantities.units import Unit, unit
from generator.quantities.working import ValueTable
from generator.records.fields import stated_amount
from generator.science import light_and_dark_bottles as bottles
from generator.science import replicates, water_column
from generator.science.method import Method
from generator.science.substances import molar_mass

COLUMN = "water_column"
"""The part that facts of the whole column are about, where there are bottles at several depths."""
M, H, PER_DAY, OXYGEN, RATE, DAILY = (unit(label) for label in ("m", "h", "h/d", "mg O2/L", "mg O2/L/h", "mg O2/L/d"))
AREA_RATE, AREA_DAILY, CARBON_AREA, CARBON_VOLUME, NONE = (unit(label) for label in ("g O2/m2/h", "g O2/m2/d", "g C/m2/d", "mg C/L/d", ""))
DAY = Fact(id="hours_of_a_day", name="Hours of a day", value=24.0, unit=PER_DAY, written="24")
MOLAR = {
    name: Fact(id=name, name=title, value=molar_mass(formula), unit=unit(f"g {formula}/mol"), written=f"{molar_mass(formula):g}")
    for name, title, formula in (("molar_mass_carbon", "Molar mass of carbon", "C"), ("molar_mass_oxygen", "Molar mass of oxygen gas", "O2"))
}
NO_LOSS = "not reached: at every depth a day leaves a gain"
NO_GAIN = "not defined: a day leaves a gain neither at the uppermost depth nor above a loss"
ERRORS = {"gross_production": "gross_error", "net_production": "net_error", "respiration": "respiration_error"}
"""What the standard error of each rate is called."""
Named = dict[str, Fact]


def bottle_facts(record: ProductivityRecord, series: Bottles) -> Iterator[Fact]:
    """What all depths share, each depth, and the column where there are several depths."""
    yield from _Series(record, series).facts()


class _Series:
    """The bottles with what all of them share."""

    def __init__(self, record: ProductivityRecord, series: Bottles) -> None:
        self.series, self.figures = series, record.figures or shown.FIGURES
        incubation = self._stated("incubation", "Time of incubation", series.incubation, unit(record.units.incubation))
        if record.units.incubation != "h":
            incubation = computed("incubation", incubation.name, Expression("incubation"), {"incubation": incubation}, H, figures=self.figures)
        self.shared: Named = {"incubation": incubation}
        for name, title, number, of in (
            ("light_hours", "Hours of light in a day", series.light_hours, PER_DAY),
            ("photosynthetic_quotient", "Photosynthetic quotient, by convention", series.photosynthetic_quotient, NONE),
            ("respiratory_quotient", "Respiratory quotient, by convention", series.respiratory_quotient, NONE),
        ):
            self.shared[name] = self._stated(name, title, number, of)

    def facts(self) -> Iterator[Fact]:
        yield from self.shared.values()
        found = [self.depth(depth) for depth in self.series.depths]
        for depth, named in zip(self.series.depths, found, strict=True):
            if len(found) == 1:
                named |= self.carbon(depth.id, named["daily_gross_production"], named["daily_respiration"], CARBON_VOLUME)
            yield from named.values()
        if len(found) > 1:
            yield from self.column(found).values()

    def _stated(self, fact_id: str, title: str, number: float, of: Unit) -> Fact:
        return stated(fact_id, title, stated_amount(number), of, figures=self.figures)

    def depth(self, depth: Depth) -> Named:
        """All facts of a depth by their names."""
        found: Named = {"depth": self._stated(f"{depth.id}.depth", "Depth", depth.depth, M)}
        at: dict[str, Sample] = {}
        for sort, title, readings in (
            ("initial", "Oxygen at the start", depth.initial), ("light", "Oxygen in the light bottles", depth.light),
            ("dark", "Oxygen in the dark bottles", depth.dark),
        ):  # fmt: skip
            ids = (f"{depth.id}.{sort}_oxygen", f"{depth.id}.{sort}_spread", f"{depth.id}.{sort}_error")
            at[sort] = sample(ids, title, readings, OXYGEN, self.figures)
            found |= zip((f"{sort}_oxygen", f"{sort}_spread", f"{sort}_error"), at[sort].facts, strict=True)
        found |= self.changes(depth.id, at)
        found |= self.rates(depth.id, at)
        return found | self.day(depth.id, "daily_", found, self.net_error_of_a_day(depth.id, at), DAILY)

    def changes(self, part: str, at: dict[str, Sample]) -> Named:
        """What the oxygen in light and in dark bottles changed by since the start; a loss is below zero."""
        found: Named = {}
        for sort in ("light", "dark"):
            title = f"Change in the {sort} bottles"
            errors = {"first_error": at[sort].error, "second_error": at["initial"].error}
            method = replicates.STANDARD_ERROR_OF_DIFFERENCE
            error = self._made(part, f"{sort}_change_error", f"Standard error of the {in_sentence(title)}", method, errors, OXYGEN)
            ends = {"end": at[sort].mean, "start": at["initial"].mean}
            change = computed(f"{part}.{sort}_change", title, Expression("end - start"), ends, OXYGEN, figures=self.figures)
            found |= {f"{sort}_change": within(change, error), f"{sort}_change_error": error}
        return found

    def rates(self, part: str, at: dict[str, Sample]) -> Named:
        """Gross production, net production and respiration per hour, each with its standard error."""
        found: Named = {}
        for name, title, method, first, second in (
            ("gross_production", "Gross production per hour, light less dark", bottles.BOTTLE_GROSS_PRODUCTION, "light", "dark"),
            ("net_production", "Net production per hour, light less initial", bottles.BOTTLE_NET_PRODUCTION, "light", "initial"),
            ("respiration", "Respiration per hour, initial less dark", bottles.BOTTLE_RESPIRATION, "initial", "dark"),
        ):
            errors = {"first_error": at[first].error, "second_error": at[second].error, "duration": self.shared["incubation"]}
            given = {first: at[first].mean, second: at[second].mean, "incubation": self.shared["incubation"]}
            of_error = f"Standard error of {in_sentence(title.partition(',')[0])}"
            error = self._made(part, ERRORS[name], of_error, replicates.STANDARD_ERROR_OF_RATE, errors, RATE)
            found |= {name: within(self._made(part, name, title, method, given, RATE), error), ERRORS[name]: error}
        told = told_apart(f"{part}.net_told_apart", "Net production told apart from zero", found["net_production"], found["net_error"])
        return found | {"net_told_apart": told}

    def net_error_of_a_day(self, part: str, at: dict[str, Sample]) -> Fact:
        given = {f"{sort}_error": one.error for sort, one in at.items()}
        given |= {"light_hours": self.shared["light_hours"], "hours_of_a_day": DAY, "incubation": self.shared["incubation"]}
        return self._made(part, "daily_net_error", "Standard error of the net production of a day", bottles.DAILY_NET_ERROR, given, DAILY)

    def day(self, part: str, prefix: str, rates: Named, net_error: Fact, of: Unit) -> Named:
        """The three of a day and a night with their errors: gross production has the hours of light, respiration all hours."""
        light = self.shared["light_hours"]
        gross = self._made(
            part, f"{prefix}gross_production", "Gross production of a day", bottles.DAILY_GROSS_PRODUCTION,
            {"gross_production": rates["gross_production"], "light_hours": light}, of,
        )  # fmt: skip
        respired = self._made(
            part, f"{prefix}respiration", "Respiration of a day and a night", bottles.DAILY_RESPIRATION,
            {"respiration": rates["respiration"], "hours_of_a_day": DAY}, of,
        )  # fmt: skip
        both = {"daily_gross_production": gross, "daily_respiration": respired}
        net = self._made(part, f"{prefix}net_production", "Net production of a day and a night", bottles.DAILY_NET_PRODUCTION, both, of)
        gross_error = self._over_hours(f"{part}.{prefix}gross_error", gross.name, rates["gross_error"], light, of)
        respiration_error = self._over_hours(f"{part}.{prefix}respiration_error", respired.name, rates["respiration_error"], DAY, of)
        return {
            f"{prefix}gross_production": within(gross, gross_error), f"{prefix}gross_error": gross_error,
            f"{prefix}respiration": within(respired, respiration_error), f"{prefix}respiration_error": respiration_error,
            f"{prefix}net_production": within(net, net_error), f"{prefix}net_error": net_error,
        }  # fmt: skip

    def _over_hours(self, fact_id: str, title: str, error: Fact, hours: Fact, of: Unit) -> Fact:
        given = {"standard_error": error, "hours": hours}
        return computed(fact_id, f"Standard error of the {in_sentence(title)}", Expression("standard_error * hours"), given, of, figures=self.figures)

    def _made(self, part: str, name: str, title: str, method: Method, given: Named, of: Unit) -> Fact:
        return made(f"{part}.{name}", title, method, given, of, self.figures)

    def carbon(self, part: str, gross: Fact, respired: Fact, of: Unit) -> Named:
        """What a day fixes, respires and leaves over, as carbon."""
        by_light = {"oxygen": gross, "photosynthetic_quotient": self.shared["photosynthetic_quotient"]} | MOLAR
        by_all = {"oxygen": respired, "respiratory_quotient": self.shared["respiratory_quotient"]} | MOLAR
        fixed = self._made(part, "gross_carbon", "Carbon fixed in a day", bottles.CARBON_FROM_OXYGEN, by_light, of)
        lost = self._made(part, "respired_carbon", "Carbon respired in a day", bottles.CARBON_OF_RESPIRATION, by_all, of)
        both = {"gross_carbon": fixed, "respired_carbon": lost}
        return both | {"net_carbon": self._made(part, "net_carbon", "Net production of a day as carbon", bottles.NET_CARBON, both, of)}

    def column(self, at: Sequence[Named]) -> Named:
        """The sums over depth, the day that they make, the compensation depth and the carbon."""
        gross, gross_error = self.summed(at, "gross_rate", "Gross production per hour", "gross_production")
        respired, respiration_error = self.summed(at, "respiration_rate", "Respiration per hour", "respiration")
        rates = {"gross_production": gross, "gross_error": gross_error, "respiration": respired, "respiration_error": respiration_error}
        net_error = self.summed_errors(at, "net_error", "Standard error of the net production of a day and a night", "daily_net_error", AREA_DAILY)
        day = self.day(COLUMN, "", rates, net_error, AREA_DAILY)
        told = told_apart(f"{COLUMN}.net_told_apart", "Net production told apart from zero", day["net_production"], net_error)
        sums = {"gross_rate": gross, "gross_rate_error": gross_error, "respiration_rate": respired, "respiration_rate_error": respiration_error}
        found = sums | day | {"net_told_apart": told, "compensation_depth": self.compensation_depth(at)}
        return found | self.carbon(COLUMN, day["gross_production"], day["respiration"], CARBON_AREA)

    def summed(self, at: Sequence[Named], name: str, title: str, rate: str) -> tuple[Fact, Fact]:
        """A rate of all depths as one below a square metre, with its standard error; 1 mg/L is 1 g/m3."""
        depths, values = self._depths(at), [named[rate] for named in at]
        value = water_column.column_sum(depths, [fact.number for fact in values])
        rows = []
        for (above, below), (upper, lower) in zip(pairwise(named["depth"] for named in at), pairwise(values), strict=True):
            thickness = below.number - above.number
            layer = thickness * (upper.number + lower.number) / 2
            rows.append((
                f"{above.shown_number} to {below.shown_number}", shown.number(thickness, self.figures), upper.shown_exactly, lower.shown_exactly,
                shown.number(layer, self.figures),
            ))  # fmt: skip
        heads = ("Layer (m)", "Thickness (m)", "At its top", "At its bottom", f"Thickness × mean ({AREA_RATE.shown})")
        says = "1 mg L⁻¹ is 1 g m⁻³, so the last column can be added up"
        fact = Fact(
            id=f"{COLUMN}.{name}", name=f"{title}, summed over depth", value=value, unit=AREA_RATE, working=ValueTable(heads, tuple(rows), says),
            method=water_column.COLUMN_SUM.id, figures=self.figures,
        )  # fmt: skip
        found = self.summed_errors(at, f"{name}_error", f"Standard error of {in_sentence(title)}, summed over depth", ERRORS[rate], AREA_RATE)
        return within(fact, found), found

    def summed_errors(self, at: Sequence[Named], name: str, title: str, error: str, of: Unit) -> Fact:
        errors, method = [named[error] for named in at], water_column.COLUMN_ERROR.id
        unknown = next((fact for fact in errors if not fact.is_number), None)
        if unknown is not None:
            return Fact(id=f"{COLUMN}.{name}", name=title, value=None, unit=of, method=method, undefined_because=unknown.undefined_because)
        depths = self._depths(at)
        value = water_column.column_error(depths, [fact.number for fact in errors])
        rows = tuple(
            (named["depth"].shown_number, shown.number(weight, self.figures), fact.shown_exactly, shown.number(weight * fact.number, self.figures))
            for named, weight, fact in zip(at, water_column.layer_weights(depths), errors, strict=True)
        )
        heads = ("Depth (m)", "Stands for (m)", "Standard error", f"Product ({of.shown})")
        says = "square the products, add them up, and take the root"
        working = ValueTable(heads, rows, says)
        return Fact(id=f"{COLUMN}.{name}", name=title, value=value, unit=of, working=working, method=method, figures=self.figures)

    def compensation_depth(self, at: Sequence[Named]) -> Fact:
        """Between the first depth with a gain above one with a loss."""
        method, name = water_column.COMPENSATION_DEPTH, f"{COLUMN}.compensation_depth"
        title = "Compensation depth, where a day leaves nothing over"
        for upper, lower in pairwise(at):
            if upper["daily_net_production"].number > 0 >= lower["daily_net_production"].number:
                given = {
                    "upper_depth": upper["depth"], "lower_depth": lower["depth"], "upper_net": upper["daily_net_production"],
                    "lower_net": lower["daily_net_production"],
                }  # fmt: skip
                return made(name, title, method, given, M, self.figures)
        gains = all(named["daily_net_production"].number > 0 for named in at)
        return Fact(id=name, name=title, value=None, unit=M, method=method.id, undefined_because=NO_LOSS if gains else NO_GAIN)

    def _depths(self, at: Sequence[Named]) -> list[float]:
        return [named["depth"].number for named in at]
