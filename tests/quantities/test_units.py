"""Units: what each label means, which labels mean nothing here, and conversions against outside values."""

from __future__ import annotations

import math

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.quantities import units
from generator.quantities.units import SUBSTANCES, UNITS, UnitError, convert, is_reading, number_in, shown_unit, unit

PINT = pint.UnitRegistry(cache_folder=None)
"""An independent reference: pint with the definitions that it brings along."""
IN_PINT = {"kt": "kilotonne", "um": "micrometer", "ug": "microgram", "umol": "micromole", "deg": "degree"}
"""Other names there; pint's own `kt` is the knot."""
NOT_IN_PINT = {"individuals", "ppb"}
"""A count has no unit in pint; pint has no parts per billion."""

FACTORS = [
    # SI prefixes: NIST SP 330 (2019), as quoted in a secondary table of it.
    ("nm", "m", 1e-9), ("um", "m", 1e-6), ("mm", "m", 1e-3), ("cm", "m", 1e-2), ("km", "m", 1e3),
    ("ng", "g", 1e-9), ("ug", "g", 1e-6), ("mg", "g", 1e-3), ("kg", "g", 1e3),
    ("Gg", "g", 1e9), ("Tg", "g", 1e12), ("Pg", "g", 1e15),
    ("kJ", "J", 1e3), ("MJ", "J", 1e6), ("GJ", "J", 1e9), ("hPa", "Pa", 1e2),
    ("umol", "mol", 1e-6), ("mmol", "mol", 1e-3),
    # Minute, hour, day, hectare, litre, tonne: SI Brochure, 8th edition as updated in 2014, table 6 (bipm.org).
    ("min", "s", 60.0), ("h", "s", 3600.0), ("d", "s", 86400.0), ("ha", "m2", 1e4),
    ("L", "m3", 1e-3), ("mL", "m3", 1e-6), ("t", "kg", 1e3),
    # The tonne with the same prefixes.
    ("kt", "t", 1e3), ("Mt", "t", 1e6), ("Gt", "t", 1e9), ("Gt", "Pg", 1.0), ("Mt", "Tg", 1.0), ("kt", "Gg", 1.0),
    # International yard and pound agreement of 1959 (from memory): 1 yd = 0.9144 m exactly, so 1 ft = 0.3048 m, 1 in = 25.4 mm.
    ("in", "mm", 25.4), ("ft", "m", 0.9144 / 3),
    # Thermochemical calorie: NIST SP 811, as quoted in a reprint of its conversion factors.
    ("cal", "J", 4.184), ("kcal", "kJ", 4.184),
    # Julian year, 365.25 d of 86 400 s: IAU Style Manual, Recommendations concerning units, as quoted in encyclopaedias.
    ("yr", "d", 365.25), ("yr", "s", 31557600.0),
    # Definitions of the SI: W = J/s, Pa = N/m2 = J/m3 (common practice).
    ("W", "J/s", 1.0), ("Pa", "J/m3", 1.0),
    # Per cent, per mille, parts per million and (short scale) billion: common practice.
    ("percent", "", 1e-2), ("permille", "", 1e-3), ("ppm", "", 1e-6), ("ppb", "", 1e-9),
    # Derived with the factors above, and printed by pint 0.26: t/ha is 100 g/m2.
    ("t/ha", "g/m2", 100.0), ("kJ/m2/yr", "W/m2", 1000 / 31557600),
]  # fmt: skip


@pytest.mark.parametrize(("source", "target", "factor"), FACTORS, ids=lambda value: str(value))
def test_factor_is_the_one_of_the_outside_source(source: str, target: str, factor: float) -> None:
    assert pytest.approx(factor, rel=1e-12) == convert(1.0, unit(source), unit(target))


@pytest.mark.parametrize(
    ("degrees", "celsius"),
    # Common practice: water freezes at 32 degF and boils at 212 degF; the two scales meet at -40. The last: mean of R's `nottem`.
    [(32.0, 0.0), (212.0, 100.0), (-40.0, -40.0), (49.03958, 9.466433)],
)
def test_fahrenheit_reading_is_turned_into_celsius(degrees: float, celsius: float) -> None:
    """The formula is (F - 32) / 1.8: common practice; FAO's conversion tables (X5738E, appendix A) subtract 32 and take 5/9."""
    converted = convert(degrees, unit("degF"), unit("degC"))
    assert pytest.approx((degrees - 32) / 1.8, abs=1e-9) == converted
    assert pytest.approx(celsius, abs=1e-6) == converted


def test_celsius_begins_at_273_15_kelvin() -> None:
    """The SI defines t/degC = T/K - 273.15 (common practice)."""
    assert pytest.approx(273.15) == convert(0.0, unit("degC"), unit("K"))


@pytest.mark.parametrize("name", [name for name in UNITS if name not in NOT_IN_PINT])
def test_unit_means_what_pint_means_by_it(name: str) -> None:
    """Each unit, 3 of it, in SI base units, by pint's own definitions and by ours."""
    ours = unit(name).quantity(3.0).to_base_units()
    theirs = PINT.Quantity(3.0, IN_PINT.get(name, name)).to_base_units()
    to_grams = 1e3 if dict(theirs.dimensionality).get("[mass]") else 1.0
    to_degrees = 180 / math.pi if name == "deg" else 1.0
    assert pytest.approx(theirs.magnitude * to_grams * to_degrees, rel=1e-12) == ours.magnitude


def test_every_unit_has_a_word_for_listeners() -> None:
    assert [] == [name for name in UNITS if not unit(name).spoken]


@pytest.mark.parametrize(
    ("label", "shown"),
    [
        ("kJ/m2/yr", "kJ m⁻² yr⁻¹"), ("kg N/ha", "kg N ha⁻¹"), ("g m-2", "g m⁻²"), ("m²", "m²"), ("yr⁻¹", "yr⁻¹"),
        ("1/yr", "yr⁻¹"), ("kJ m-2 yr-1", "kJ m⁻² yr⁻¹"), ("kJ·m⁻²·yr⁻¹", "kJ m⁻² yr⁻¹"), ("m^-2", "m⁻²"), ("m**2", "m²"),
        ("degC", "°C"), ("°C", "°C"), ("%", "%"), ("permille", "‰"), ("um", "µm"), ("t CO2", "t CO₂"), ("t CO₂", "t CO₂"),
        ("kg C/kg N", "kg C kg⁻¹ N"), ("a", "yr"), ("", ""), ("1", ""), ("m3 CO2", "m³ CO₂"), ("kg m−3", "kg m⁻³"),
    ],
)  # fmt: skip
def test_label_is_shown_in_one_spelling(label: str, shown: str) -> None:
    assert shown == unit(label).shown


@pytest.mark.parametrize("micro", ["\u00b5", "\u03bc", "u"])
def test_both_micro_signs_and_the_letter_are_read(micro: str) -> None:
    assert unit("um").factors == unit(f"{micro}m").factors


@pytest.mark.parametrize(
    ("label", "spoken"),
    [
        ("kJ/m2/yr", "kilojoules per square metre per year"), ("kg N/ha", "kilograms of N per hectare"),
        ("1/yr", "per year"), ("m3", "cubic metres"), ("degC/km", "degrees Celsius per kilometre"), ("1/ft", "per foot"),
    ],
)  # fmt: skip
def test_label_is_spoken_in_words(label: str, spoken: str) -> None:
    assert spoken == unit(label).spoken


FACTOR = st.builds(
    lambda name, power: name if power == 1 else f"{name}{power}", st.sampled_from(UNITS), st.sampled_from([1, 2, 3, -1, -2, -3])
)


@given(st.lists(FACTOR, min_size=1, max_size=4).map(" ".join))
def test_what_is_shown_is_read_back_as_the_same_unit(label: str) -> None:
    assert unit(label).factors == unit(unit(label).shown).factors


@given(st.sampled_from(["kg", "Gt", "mol", "ppm"]), st.sampled_from(SUBSTANCES), st.sampled_from(["", "/ha", "/m2/yr"]))
def test_substance_is_read_back_too(name: str, substance: str, rest: str) -> None:
    label = f"{name} {substance}{rest}"
    assert unit(label).factors == unit(unit(label).shown).factors


@pytest.mark.parametrize(
    "label",
    [
        "C", "N", "ton", "month", "mo", "coulomb", "newton", "short_ton", "1e3 kg", "2.5e-3 m", "mm month", "Cal", "farad",
        "kg/", "/m", "/", "m//s", "m0", "m10", "m2³", "kg/N", "C kg", "g C C", "ha N", "g/m2 C", "kJ C", "yr P", "KG", "kg*m",
        "kJ/(m2 yr)", "m 1", "2/yr", "dimensionless", "__class__", "m\x00", "gC", "GtC", "m" * 61, "kg " * 30, "\u212b",
    ],
)  # fmt: skip
def test_foreign_label_is_refused(label: str) -> None:
    with pytest.raises(UnitError):
        unit(label)


@pytest.mark.parametrize(
    ("label", "words"),
    [
        ("ton", "'ton' is not a unit that is known here: write t for the tonne"), ("month", "months differ in length"),
        ("C", "degC for degrees Celsius, or g C for carbon"), ("l", "write L for the litre"), ("kg/N", "as in kg N"),
        ("ha N", "behind a mass, an amount, a volume or a share"),
    ],
)  # fmt: skip
def test_refusal_says_what_to_write(label: str, words: str) -> None:
    with pytest.raises(UnitError) as refused:
        unit(label)
    assert words in str(refused.value)


@given(st.text(max_size=70))
def test_any_text_is_a_unit_or_refused(text: str) -> None:
    """No other error gets out, whatever is written where a unit belongs."""
    try:
        assert isinstance(unit(text).shown, str)
    except UnitError as refused:
        assert str(refused)


def test_kilogram_of_nitrogen_is_no_force() -> None:
    """In pint's own definitions `kg N` would be kilogram times newton."""
    assert not unit("kg N").same_kind(unit("kg m/s2"))
    assert {"[mass]": 1, "[N_label]": 1} == dict(unit("kg N").pint.dimensionality)


@given(st.sampled_from(SUBSTANCES), st.sampled_from(SUBSTANCES))
def test_substances_never_convert_into_each_other(one: str, other: str) -> None:
    assert (one == other) == unit(f"kg {one}").same_kind(unit(f"t {other}"))


def test_mass_of_a_substance_is_not_a_bare_mass() -> None:
    with pytest.raises(UnitError, match="kg C cannot be turned into kg"):
        convert(1.0, unit("kg C"), unit("kg"))


@given(st.floats(-1e9, 1e9), st.sampled_from([("t C/ha", "g C/m2"), ("degF", "degC"), ("in", "mm"), ("kcal", "J")]))
def test_conversion_there_and_back_gives_the_number(number: float, pair: tuple[str, str]) -> None:
    here, there = map(unit, pair)
    assert pytest.approx(number, rel=1e-9, abs=1e-6) == convert(convert(number, here, there), there, here)


@pytest.mark.parametrize("number", [math.nan, math.inf, -math.inf, 1e308])
def test_conversion_never_gives_a_number_that_is_not_finite(number: float) -> None:
    with pytest.raises(UnitError, match="not a finite number"):
        convert(number, unit("Gt"), unit("ng"))


def test_degree_beside_another_unit_is_a_step() -> None:
    """A lapse rate of 6.5 degC/km is 6.5 K/km (common practice), and loses no 273.15 on its way."""
    assert pytest.approx(0.0065) == convert(6.5, unit("degC/km"), unit("K/m"))
    assert not is_reading(unit("degC/km").quantity(6.5) * unit("km").quantity(2.0))


@pytest.mark.parametrize(("label", "reading"), [("degC", True), ("degF", True), ("K", False), ("mm", False), ("", False)])
def test_readings_are_those_with_a_zero_of_their_own(label: str, reading: bool) -> None:
    assert reading == is_reading(unit(label).quantity(1.0))


def test_bare_number_is_no_reading() -> None:
    assert not is_reading(1.0)


def test_number_in_a_unit_is_converted() -> None:
    assert pytest.approx(10.0) == number_in(unit("percent"), 0.1)
    assert pytest.approx(25.4) == number_in(unit("mm"), unit("in").quantity(1.0))


def test_difference_of_readings_is_a_number_of_kelvin_and_no_reading() -> None:
    """10 degC less 4 degC is 6 K; as a reading it would come out as -267.15 degC."""
    difference = unit("degC").quantity(10.0) - unit("degC").quantity(4.0)
    assert pytest.approx(6.0) == number_in(unit("K"), difference)
    with pytest.raises(UnitError, match="found a difference of temperatures, which is given in K"):
        number_in(unit("degC"), difference)


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (True, "a single number"), ("dry", "a single number"), (unit("mm").quantity([1.0, 2.0]), "a single number"),
        (unit("K").quantity(1.0), "expected a value in mm, found K"), (1.0, "expected a value in mm, found a bare number"),
        (unit("mm").quantity(math.nan), "not a finite number"),
    ],
)  # fmt: skip
def test_what_is_no_number_of_the_unit_is_refused(value: object, words: str) -> None:
    with pytest.raises(UnitError, match=words):
        number_in(unit("mm"), value)


def test_unit_of_a_calculation_is_shown_in_our_words() -> None:
    flow, stock = unit("kg N/ha/yr").quantity(1.0), unit("kg N/ha").quantity(1.0)
    assert "kg N ha⁻¹ yr⁻¹" == shown_unit(flow)
    assert "yr" == shown_unit(stock / flow)
    assert "t ha⁻¹" == shown_unit(unit("t").quantity(1.0) / unit("ha").quantity(1.0))
    assert "mm^0.5 t" == shown_unit(unit("t").quantity(1.0) * unit("mm").quantity(4.0) ** 0.5)
    assert "g CO₂ m⁻²" == shown_unit(unit("g CO2").quantity(1.0) / unit("m2").quantity(1.0))
    assert "K" == shown_unit(unit("degC").quantity(3.0) - unit("degC").quantity(1.0))


def test_angle_stands_close_to_its_sign() -> None:
    assert ("46.5°", "7 °C", "3") == (unit("deg").after("46.5"), unit("degC").after("7"), unit("").after("3"))


def test_definitions_hold_nothing_that_labels_cannot_say() -> None:
    """Every unit of the language is defined, and C, N, P, S mean no unit of electricity, force or the like."""
    assert [] == [name for name in SUBSTANCES if name in UNITS]
    assert not any(name in units._REGISTRY for name in ("coulomb", "month", "ton", "farad", "C", "N"))


def test_substance_below_the_line_cancels_with_the_one_above() -> None:
    volume = unit("m3/kg N").quantity(2.0) * unit("kg N").quantity(3.0)
    assert 6.0 == number_in(unit("m3"), volume)
