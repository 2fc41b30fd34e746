"""The page of methods: signs and units as printed, without breaking what a program has to read."""

from __future__ import annotations

import re

import pytest

from generator.pages.methods_page import signed
from generator.pages.site import METHODS
from tests.pages.rendered import demo_pages, rendered


@pytest.mark.parametrize(
    ("written", "printed"),
    [
        ("-70 degrees", "−70 degrees"),
        ("Saturated air at -20 degC and 700 hPa", "Saturated air at −20 °C and 700 hPa"),
        ("a month below zero, 16.9 - (-23.4)", "a month below zero, 16.9 − (−23.4)"),
        ("the index 100 (P/PET - 1) = -97.7", "the index 100 (P/PET − 1) = −97.7"),
        ("classify(T, P, -34)", "classify(T, P, -34)"),
        ("classify(MonthlyClimate(temp, latitude=-1.8))", "classify(MonthlyClimate(temp, latitude=-1.8))"),
        ("interp(z, [4, 7], [0.26, -0.07])", "interp(z, [4, 7], [0.26, -0.07])"),
        ("tol=1e-12", "tol=1e-12"),
        ("pages 100-120 of a well-known work", "pages 100-120 of a well-known work"),
    ],
)
def test_minus_is_printed_where_nothing_has_to_run(written: str, printed: str) -> None:
    assert printed == signed(written)


def test_no_symbol_is_measured_in_its_own_name_or_as_given() -> None:
    """`stock: what the reservoir holds, in stock` tells nobody anything."""
    lines = [one.get_text() for one in rendered(demo_pages()[METHODS]).select("ul.symbols li")]
    assert len(lines) > 100
    assert [] == [line for line in lines if re.search(r", in (as given|stock|rad)\b", line)]


def test_limits_that_methods_share_are_said_once() -> None:
    limits = [one.parent for one in rendered(demo_pages()[METHODS]).find_all("strong", string="Limits:")]
    said = [one.get_text() for one in limits]
    links = [one.a for one in limits if one.get_text().startswith("Limits: as for ")]
    assert len(links) > 5
    assert len(said) - len(links) == len({text for text in said if not text.startswith("Limits: as for ")})
    places = {one["id"] for one in rendered(demo_pages()[METHODS]).select("div[id]")}
    assert {link["href"][1:] for link in links} <= places
