"""Text of records as HTML: inert whatever it holds, formulas set properly, numbers kept beside their units."""

from __future__ import annotations

import html
import re

import pytest
from bs4 import BeautifulSoup
from hypothesis import given
from hypothesis import strategies as st
from markdown import Markdown
from markdown_it import MarkdownIt

from generator.pages.markup import NO_BREAK, escaped, fact_anchor, number, prose, with_facts
from generator.quantities.amount import Amount
from generator.quantities.fact import Fact, stated
from generator.quantities.text import Reference
from generator.quantities.units import unit

HOSTILE = (
    "<script>alert(1)</script>", "[here](javascript:alert(1))", "![x](x.svg)", "`code`", "a | b", "*a* and _b_ and __c__", "~~gone~~",
    "{: .x onclick=alert(1) }", "{{ 1 }}", "# no heading", "- no list", "1. no list", "1986.", "+", "---", "===", "> no quote", "\\*", "&lt;b&gt;",
    "<!-- -->", '" onmouseover="x', "a\n\n    b", "[TOC]", "[^1]", "<https://x.example>", "a\u2028# b", "a\x0b- b", "]]>", "&#35; &amp;",
)  # fmt: skip


def seen(fragment: str) -> str:
    """What a reader sees of HTML."""
    return BeautifulSoup(fragment, "html.parser").get_text()


@pytest.mark.parametrize(
    ("written", "shown"),
    [
        ("NH4+", "NH<sub>4</sub><sup>+</sup>"),
        ("NO3-", "NO<sub>3</sub><sup>−</sup>"),
        ("SO42-", "SO<sub>4</sub><sup>2−</sup>"),
        ("HPO42-", "HPO<sub>4</sub><sup>2−</sup>"),
        ("H2PO4-", "H<sub>2</sub>PO<sub>4</sub><sup>−</sup>"),
        ("Ca2+", "Ca<sup>2+</sup>"),
        ("Fe3+", "Fe<sup>3+</sup>"),
        ("H+", "H<sup>+</sup>"),
        ("H3O+", "H<sub>3</sub>O<sup>+</sup>"),
        ("OH-", "OH<sup>−</sup>"),
        ("CO2", "CO<sub>2</sub>"),
        ("CO2e", "CO<sub>2</sub>e"),
        ("N2O", "N<sub>2</sub>O"),
        ("CaCO3", "CaCO<sub>3</sub>"),
        ("C6H12O6", "C<sub>6</sub>H<sub>12</sub>O<sub>6</sub>"),
        ("Ca(NO3)2", "Ca(NO<sub>3</sub>)<sub>2</sub>"),
        ("C3 and C4 plants", "C<sub>3</sub> and C<sub>4</sub> plants"),
        ("(NH4+)", "(NH<sub>4</sub><sup>+</sup>)"),
        ("NO2/NO3-", "NO<sub>2</sub>/NO<sub>3</sub><sup>−</sup>"),
        ("CO2-rich", "CO<sub>2</sub>-rich"),
        ("NO3-N", "NO<sub>3</sub>-N"),
    ],
)
def test_formulas_get_index_and_charge(written: str, shown: str) -> None:
    """Source: common practice; how these substances are written."""
    assert shown == prose(written)


@pytest.mark.parametrize(
    "text",
    [
        "July", "CO", "NO", "In 2 years", "No 5", "I", "N-fixing", "N- and P-poor soils", "COP26", "CFC11", "H1N1", "C14", "K2", "PM10", "pH 7",
        "HS 2", "Na", "Cl", "NH4x", "xCO2", "Section C2 of a map", "grade C-", "U235",
    ],
)  # fmt: skip
def test_what_only_looks_like_a_formula_stays(text: str) -> None:
    assert "<su" not in prose(text)


@pytest.mark.parametrize("text", ["327 mm", "5800 kJ m⁻² yr⁻¹", "12 kg N ha⁻¹ yr⁻¹", "7.08 °C", "10.0 %", "2 h", "4 ± 3 kg N ha⁻¹ yr⁻¹"])
def test_a_number_keeps_its_unit_on_its_line(text: str) -> None:
    assert not re.search(r"\d [A-Za-z°%µ]", prose(text))
    assert text == prose(text).replace(NO_BREAK, " ")


@pytest.mark.parametrize(
    "text", ["9.4 ± 0.5 Gt C yr⁻¹", "94.5 kg CO₂ GJ⁻¹", "0.0602 ± 0.0018 mg O₂ L⁻¹ h⁻¹", "mg O₂ L⁻¹", "(Gt C)", "kJ m⁻² yr⁻¹"]
)
def test_value_uncertainty_and_unit_are_not_parted_by_a_line_break(text: str) -> None:
    """Nor a unit alone, as in the head of a column."""
    assert text.replace(" ", NO_BREAK) == prose(text)


@pytest.mark.parametrize("text", ["In 2 places", "5 animals", "3 months", "2 more", "7 Kings"])
def test_a_number_before_a_word_may_stand_at_the_end_of_a_line(text: str) -> None:
    assert text == prose(text)


def test_groups_of_digits_are_not_parted_by_a_line_break() -> None:
    assert "38\u202f000" in prose("One pike needs 38\u202f000 kJ")


def test_a_series_breaks_behind_its_commas_only() -> None:
    assert f"22.5, 22.3, 1{NO_BREAK}234{NO_BREAK}°C" == number("22.5, 22.3, 1 234 °C")


def test_a_long_text_of_the_file_comes_out_on_one_line() -> None:
    assert "a b c" == prose("  a\n  b\t c\n")


@pytest.mark.parametrize("text", HOSTILE)
def test_text_is_seen_as_it_was_written(text: str) -> None:
    assert " ".join(re.split(r"[ \t\r\n\x0b]+", text)).strip(" ") == seen(prose(text))


@pytest.mark.parametrize("text", HOSTILE)
@pytest.mark.parametrize("begin", ["", "# ", "- ", "1. ", "**", "*"])
def test_neither_markdown_parser_finds_markup_in_a_text(text: str, begin: str) -> None:
    """Each parser must give just the tags that the page itself asks for around the text."""
    end = begin if begin.startswith("*") else ""
    plain, ours = f"{begin}word{end}", f"{begin}{prose(text)}{end}"
    ours_of = {"bare": MarkdownIt("commonmark").enable("table").render, "site": Markdown(extensions=["tables", "attr_list", "md_in_html"]).convert}
    for name, render in ours_of.items():
        tags = [(tag.name, dict(tag.attrs)) for tag in BeautifulSoup(render(ours), "html.parser").find_all()]
        assert [(tag.name, dict(tag.attrs)) for tag in BeautifulSoup(render(plain), "html.parser").find_all()] == tags, name


@given(st.text(max_size=60))
def test_no_text_makes_an_element_of_its_own(text: str) -> None:
    soup = BeautifulSoup(MarkdownIt("commonmark").enable("table").render(f"- {prose(text)}"), "html.parser")
    assert {tag.name for tag in soup.find_all()} <= {"ul", "li", "sub", "sup"}


@given(st.text(max_size=40))
def test_attributes_hold_any_text(text: str) -> None:
    soup = BeautifulSoup(f'<img alt="{escaped(text)}">', "html.parser")
    assert [["alt"]] == [list(tag.attrs) for tag in soup.find_all()]


def test_value_of_a_table_is_kept_on_one_line() -> None:
    assert f"4{NO_BREAK}±{NO_BREAK}13{NO_BREAK}&lt;" == number("4 ± 13 <")


def test_value_in_words_may_break_but_not_before_a_unit() -> None:
    """On a phone a climate class with its reading is wider than the page."""
    assert f"ET (no month above 10{NO_BREAK}°C, too cold)" == number("ET (no month above 10 °C, too cold)")


@pytest.mark.parametrize("text", HOSTILE)
def test_value_that_a_name_is_part_of_stays_what_it_is(text: str) -> None:
    """As the species of a food web that are left without food."""
    for parse in (Markdown(extensions=["attr_list", "tables"]).convert, MarkdownIt().render):
        soup = BeautifulSoup(parse(f"Left: {number(f'x {text}')}."), "html.parser")
        assert ["p"] == [tag.name for tag in soup.find_all()]
        assert "".join(f"Left: x {text}.".split()) == "".join(soup.get_text().replace(NO_BREAK, "").split())


def test_anchor_of_a_fact_is_plain() -> None:
    assert "fact-harrow-plain-annual-precip" == fact_anchor("harrow_plain.annual_precip")


def fact(key: str) -> Fact:
    """What a look-up gives: 12 mm for every key."""
    return stated(key, "Rain", Amount(value=12.0, written="12"), unit("mm"))


def address(reference: Reference) -> str:
    return "" if reference.fact.startswith("hidden") else f"#{reference.fact}"


def test_facts_in_a_text_become_links() -> None:
    assert f'Only <a class="fact" href="#a.rain">12{NO_BREAK}mm</a>, &#60;so&#62;.' == with_facts("Only {a.rain}, <so>.", fact, address)


def test_fact_without_an_address_is_shown_without_a_link() -> None:
    assert f"Only 12{NO_BREAK}mm fall." == with_facts("Only {hidden.rain} fall.", fact, address)


def test_the_same_fact_twice_is_put_in_twice() -> None:
    assert 2 == with_facts("{a.rain} and {a.rain}", fact, address).count("</a>")


@pytest.mark.parametrize("text", ["{a.rain}", "{a.rain}{a.rain}", "x{a.rain}y", " {a.rain} ", "a\n{a.rain}\nb"])
def test_spaces_around_a_fact_stay_as_they_are(text: str) -> None:
    expected = " ".join(text.replace("{a.rain}", "12\x00mm").split(" ")).replace("\n", " ").strip(" ")
    assert expected.replace("\x00", NO_BREAK) == html.unescape(seen(with_facts(text, fact, address)))
