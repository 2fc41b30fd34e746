"""Every working of the demo course, done over by a reader who has the page alone: the numbers that stand there give the result that stands there.

The reader below knows nothing of the generator: a text is read as it is printed, with a table of units of its own.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from functools import cache

import pytest

from generator.build import check
from generator.kinds import all_kinds
from generator.pages.fresh import fresh_numbers
from generator.pages.site import Site
from generator.quantities.working import MonthTable, Substitution
from tests.kinds.small_records import CONTENT

RAISED = str.maketrans("⁻⁰¹²³⁴⁵⁶⁷⁸⁹", "-0123456789")
SUBSTANCES = {"C", "N", "P", "S", "CO₂", "CH₄", "O₂", "H₂O", "N₂O", "NH₃", "NH₄", "NO₃", "PO₄"}
SIZES = {
    # SI Brochure, 9th edition (2019), tables 2, 4, 7 and 8; a calorie of 4.184 J; a year of 365.25 days.
    "nm": 1e-9, "µm": 1e-6, "mm": 1e-3, "cm": 1e-2, "m": 1.0, "km": 1e3, "in": 0.0254, "ft": 0.3048, "ha": 1e4, "mL": 1e-6, "L": 1e-3,
    "µg": 1e-9, "mg": 1e-6, "g": 1e-3, "kg": 1.0, "t": 1e3, "kt": 1e6, "Mt": 1e9, "Gt": 1e12, "Gg": 1e6, "Tg": 1e9, "Pg": 1e12,
    "s": 1.0, "min": 60.0, "h": 3600.0, "d": 86400.0, "yr": 365.25 * 86400.0, "K": 1.0, "°C": 1.0, "J": 1.0, "kJ": 1e3, "MJ": 1e6, "GJ": 1e9,
    "cal": 4.184, "kcal": 4184.0, "W": 1.0, "Pa": 1.0, "hPa": 100.0, "µmol": 1e-6, "mmol": 1e-3, "mol": 1.0, "individuals": 1.0,
    "%": 0.01, "‰": 1e-3, "ppm": 1e-6, "ppb": 1e-9, **dict.fromkeys(SUBSTANCES, 1.0),
}  # fmt: skip
"""In metres, kilograms, seconds, joules, moles and kelvin; a degree Celsius counts as a step."""
CALLS = {"exp": math.exp, "sqrt": math.sqrt, "ln": math.log, "log": math.log, "min": min, "max": max, "abs": abs}
TOKEN = re.compile(
    r"(?P<number>\d[\d\u202f]*(?:\.\d+)?(?: × 10[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)?)|(?P<power>[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)|(?P<call>(?:" + "|".join(CALLS) + r")(?=\())"
    r"|(?P<unit>[A-Za-zµ°%‰][A-Za-z₀-₉]*(?:[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)?)|(?P<sign>[-+−×÷^(),])| +"
)  # fmt: skip
SIGNS = {"−": "-", "×": "*", "÷": "/", "^": "**"}


def as_read(text: str) -> float | None:
    """What a printed sum comes to, in the units of `SIZES`; None where there are words in it."""
    written, at = "", 0
    while at < len(text):
        found = TOKEN.match(text, at)
        if not found:
            return None
        at = found.end()
        match found.lastgroup:
            case "number":
                digits, _, power = found[0].replace("\u202f", "").partition(" × 10")
                written += f"{digits}e{power.translate(RAISED) or 0}"
            case "power":
                written += f"**{found[0].translate(RAISED)}"
            case "unit":
                name, power = re.fullmatch(r"(.*?)([⁻⁰¹²³⁴⁵⁶⁷⁸⁹]*)", found[0]).groups()
                if name not in SIZES:
                    return None
                written += f"*{SIZES[name]!r}**{power.translate(RAISED) or 1}"
            case "sign" | "call":
                written += SIGNS.get(found[0], found[0])
    try:
        return float(eval(bound(written), {"__builtins__": {}}, CALLS))
    except SyntaxError:
        return None


def bound(written: str) -> str:
    """A number and its unit belong together: 6 g ÷ 2 g is three, and not three grams squared."""
    return re.sub(r"(?<![\w.])[\d.]+e-?\d+(?:\*[\d.e-]+\*\*-?\d+)+", lambda found: f"({found[0]})", written)


def last_place(result: str) -> float:
    """What one more in the last figure would be; zeros that end a whole number are figures up to the third of it only."""
    digits, _, power = re.match(r"[\d.]+(?: × 10[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)?", result.replace("\u202f", "").lstrip("−"))[0].partition(" × 10")
    decimals = len(digits.partition(".")[2])
    filled = 0 if decimals else len(digits) - max(len(digits.rstrip("0")), min(3, len(digits)))
    return float(f"1e{filled - decimals + int(power.translate(RAISED) or 0)}")


def does_not_come_out(left: str, result: str) -> str:
    """What is wrong with a printed sum; empty where it comes out."""
    number, of = re.fullmatch(r"(−?\d[\d\u202f]*(?:\.\d+)?(?: × 10[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+)?) ?(.*)", result).groups()
    has_units = any(re.search(rf"(?<![\w]){re.escape(name)}(?![\w])", left) for name in SIZES)
    wanted, came, size = as_read(result if has_units else number), as_read(left), as_read(f"1 {of}") if has_units and of else 1.0
    assert wanted is not None and came is not None and size is not None, f"{left} = {result}"
    if abs(came - wanted) <= last_place(number) * size * (0.5 + 1e-6):
        return ""
    return f"{left} = {result}, comes to {came / size:.6g}"


@cache
def site() -> Site:
    return Site(library=check(CONTENT), kinds=all_kinds())


def workings() -> Iterator[tuple[str, str, str, str]]:
    """Where it stands, the sum as it is printed, the same with every series written out, and the result."""
    library = site().library
    for subject in library.subjects.values():
        asked = [item.fact for item in library.questions[subject.id] if item.fact]
        drawn = [one.right for made in fresh_numbers(site(), subject).values() for one in made]
        for fact in (*subject.facts.values(), *asked, *drawn):
            if isinstance(fact.worked, Substitution) and fact.is_number:
                *_, printed, result = ("", *fact.shown_working.split(" = "))
                yield f"{subject.id}:{fact.id}", printed, fact.worked.set_up, result
    for guided in library.written:
        for guide in guided.guides:
            if guide.worked and guide.worked.setup:
                yield f"{guided.name}, {guide.part.id}", guide.worked.setup, guide.worked.setup, guide.worked.entry.answer


def is_conversion(printed: str) -> bool:
    """A temperature counted from another zero: `17 °C = 290.15 K` needs more than the size of a degree."""
    return re.fullmatch(r"−?[\d.]+ °[CF]", printed) is not None


def test_shown_numbers_give_the_shown_result() -> None:
    found = list(dict.fromkeys(workings()))
    wrong = {}
    for place, printed, set_up, result in found:
        texts = [text for text in (printed, set_up) if not is_conversion(text) and as_read(text) is not None]
        for text in texts:
            if said := does_not_come_out(text, result):
                wrong[place] = said
    assert {} == wrong
    assert len(found) > 1000


def test_nearly_every_working_can_be_done_over() -> None:
    """Or the test above would hold of little: what is left out is a number taken from a list, or words."""
    found = list(dict.fromkeys(workings()))
    unread = [f"{place}: {set_up}" for place, _, set_up, _ in found if as_read(set_up) is None]
    assert [] == unread


def test_columns_add_up_to_what_is_said_below_them() -> None:
    tables = [
        (f"{subject.id}:{fact.id}", fact.working) for subject in site().library.subjects.values() for fact in subject.facts.values()
        if isinstance(fact.working, MonthTable) and fact.working.conclusion.startswith("the last column adds up to ")
    ]  # fmt: skip
    wrong = {}
    for place, table in tables:
        total = table.conclusion.removeprefix("the last column adds up to ")
        if said := does_not_come_out(" + ".join(table.columns[-1][1]), total):
            wrong[place] = said
    assert {} == wrong
    assert len(tables) > 50


@pytest.mark.parametrize(
    ("left", "result"),
    [
        ("4800 kg N ha⁻¹ ÷ 94 kg N ha⁻¹ yr⁻¹", "51.1 yr"), ("9.933 mg O₂ L⁻¹ − 9.410 mg O₂ L⁻¹", "0.523 mg O₂ L⁻¹"), ("(−9) + 4 + 22", "17 °C"),
        ("sqrt((3 mm)² + (4 mm)²) ÷ 2 m", "2.50 mm m⁻¹"), ("2.44 Gt CO₂ ÷ (2.58 × 10¹⁰ GJ)", "94.6 kg CO₂ GJ⁻¹"), ("62\u202f760 kJ yr⁻¹ ÷ 62.76 kJ m⁻² yr⁻¹", "0.100 ha"),
        ("exp(−2 m⁻¹ × 0.5 m)", "36.8 %"), ("1234 kg", "1230 kg"), ("0.1775 kg", "0.178 kg"), ("max(2 m, 30 dm)", "3"),
    ],
)  # fmt: skip
def test_reader_of_sums_reads_them(left: str, result: str) -> None:
    assert "dm" in left or "" == does_not_come_out(left, result)
    assert ("dm" in left) == (as_read(left) is None)


@pytest.mark.parametrize(
    ("left", "result"),
    [("227 Gt C yr⁻¹ − 222 Gt C yr⁻¹", "5.2 Gt C yr⁻¹"), ("126 kJ ÷ 1569 kJ", "8.00 %"), ("1236 kg", "1230 kg"), ("1.5 m × 3", "4.6 m"), ("1 d", "1.1 d")],
)
def test_reader_of_sums_tells_what_does_not_come_out(left: str, result: str) -> None:
    assert does_not_come_out(left, result)
