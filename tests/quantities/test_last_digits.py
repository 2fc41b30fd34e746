"""Last digits: a sum ends where its terms do, and a share of whole numbers has no zeros that carry nothing."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from generator.quantities.expression import Expression
from generator.quantities.fact import Fact, computed
from generator.quantities.units import unit
from generator.quantities.working import Substitution

MM, K = unit("mm"), unit("K")


def fact(value: Any, label: str = "mm", **more: Any) -> Fact:
    return Fact(id="site.x", name="Depth", value=value, unit=unit(label), **more)


def work_out(source: str, label: str, **given_facts: Fact) -> Fact:
    return computed("site.y", "Result", Expression(source), given_facts, unit(label))


def in_between(value: Any, label: str = "mm", **more: Any) -> Fact:
    """A fact that was worked out, by no sum: its digits were rounded off."""
    return fact(value, label, working=Substitution(Expression("a * b"), ()), **more)


def stated_as(*texts: str) -> dict[str, Fact]:
    return {name: fact(float(text), written=text) for name, text in zip("abc", texts, strict=False)}


@pytest.mark.parametrize(
    ("source", "given_facts", "text"),
    [
        # Of stated numbers all that is left stands there, with zeros to the place of the roughest of them.
        ("a + b", stated_as("50", "0.0"), "50 mm"), ("a - b", stated_as("226.80", "221.8"), "5.0 mm"), ("a - b", stated_as("30", "2.5"), "27.5 mm"),
        ("a + b", stated_as("100.25", "0.75"), "101.00 mm"), ("a - b", stated_as("300", "1.0"), "299 mm"), ("a - b", stated_as("0", "9.4"), "−9.4 mm"),
        ("a - b", stated_as("18000", "240"), "17 760 mm"), ("sum(a)", {"a": fact((12.0, 10.5, 16.5), written="12 10.5 16.5")}, "39 mm"),
        ("max(a) - min(a)", {"a": fact((-29.0, 17.5), written="-29 17.5")}, "46.5 mm"), ("a + b", {"a": fact(20.0, low=12.0, high=28.0), "b": fact(5.0, written="5")}, "25 mm"),
        # With a number that was rounded it ends where the roughest does (common practice), and with three figures in any case.
        ("a - b", {"a": in_between(1.5166), "b": in_between(1.1974)}, "0.32 mm"), ("a + b", {"a": in_between(2.1)} | {"b": fact(1.8, written="1.8")}, "3.9 mm"),
        ("a - b", {"a": in_between(9.41), "b": in_between(9.4062)}, "0.004 mm"), ("sum(a)", {"a": in_between((85.85, 77.99, 55.31))}, "219 mm"),
        ("min(a, b)", {"a": in_between(1371.2), "b": in_between(966.4)}, "966 mm"), ("max(a, b)", {"a": in_between(1371.2), "b": in_between(966.4)}, "1370 mm"),
        ("a + b", {"a": in_between(12012.0), "b": in_between(333.0)}, "12 300 mm"),
    ],
)  # fmt: skip
def test_sum_is_shown_to_the_last_digit_that_its_terms_have(source: str, given_facts: dict[str, Fact], text: str) -> None:
    assert text == work_out(source, "mm", **given_facts).shown


def test_sum_of_sums_is_shown_as_of_their_terms() -> None:
    inflow, outflow = work_out("a + b", "mm", **stated_as("142", "84.8")), work_out("a + b", "mm", **stated_as("142", "79.8"))
    assert "226.8 mm − 221.8 mm = 5.0 mm" == work_out("a - b", "mm", a=inflow, b=outflow).shown_working.partition(" = ")[2]


def test_number_in_another_unit_keeps_its_significant_figures() -> None:
    assert "290.15 K" == computed("s.k", "Temperature", Expression("t"), {"t": fact(17.0, "degC", written="17")}, K, figures=5).shown
    assert "1500 m" == work_out("a + b", "m", a=fact(1.0, "km", written="1"), b=fact(499.6, "m", written="499.6")).shown


@pytest.mark.parametrize(
    ("source", "given_facts", "text"),
    [
        # Of stated whole numbers no zeros that carry nothing; where something was rounded off, or a number has decimals, three figures.
        ("a / b", stated_as("4", "50"), "8 %"), ("a / b", stated_as("8", "7"), "114 %"), ("a / b", stated_as("1", "3"), "33.3 %"), ("a / b", stated_as("42", "125"), "33.6 %"),
        ("(a - b) / a", stated_as("2400", "960"), "60 %"), ("a / (a + b)", stated_as("1", "7"), "12.5 %"), ("a / b", stated_as("1", "800"), "0.125 %"),
        ("a / b", stated_as("4.0", "50"), "8.00 %"), ("a / b", stated_as("1", "1600"), "0.0625 %"), ("a / b", stated_as("10001", "20000"), "50.0 %"),
        ("a / b", {"a": in_between(4.0)} | {"b": fact(50.0, written="50")}, "8.00 %"), ("a * b / c", stated_as("2", "2", "50"), "8.00 %"),
    ],
)  # fmt: skip
def test_share_of_whole_numbers_has_no_zeros_that_carry_nothing(source: str, given_facts: dict[str, Fact], text: str) -> None:
    unit_of = {name: replace(one, unit=unit("")) for name, one in given_facts.items()}
    assert text == work_out(source, "percent", **unit_of).shown


def test_figures_that_are_asked_for_are_shown() -> None:
    """A prompt that wants two figures wants them of a share of whole numbers, and of a difference, too."""
    share = computed("s.x", "Share", Expression("a / b"), {name: replace(one, unit=unit("")) for name, one in stated_as("4", "50").items()}, unit("percent"), figures=2)
    gain = computed("s.x", "Gain", Expression("a - b"), stated_as("9.4", "8.2"), MM, figures=3)
    assert ["8 %", "1.2 mm"] == [one.shown for one in (share, gain)]
    assert ["8.0 %", "1.20 mm"] == [replace(one, asked_figures=True).shown for one in (share, gain)]
