"""Formulas as MathML: well formed, and saying the same as the plain notation and as the expression itself."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from generator.pages import mathml
from generator.quantities.expression import Expression
from generator.quantities.fact import Fact
from generator.quantities.notation import PlainText, write
from generator.quantities.working import Substitution
from generator.science import METHODS
from tests.kinds.small_records import library

NUMBERS = {"a": "3", "b": "5", "c": "7"}
SUPERSCRIPTS = str.maketrans({"²": " 2", "³": " 3"})
SIGNS = {"−": "-", "×": "*", "=": "=", "\u2061": "", ",": ","}


def leaves(markup: str) -> list[str]:
    """Numbers and words in the order in which they are read; a root sign is read as the plain notation writes it."""
    tree = ElementTree.fromstring(markup)
    read = (node for node in tree.iter() if node.tag in ("mn", "mi", "msqrt"))
    return ["sqrt" if node.tag == "msqrt" else (node.text or "").replace("\u00a0", " ") for node in read]


def in_one_line(node: ElementTree.Element) -> str:
    """MathML as a reader understands it: what stands one above the other holds together, all else follows the usual order of signs."""
    children = list(node)
    match node.tag:
        case "mfrac":
            return f"(({in_one_line(children[0])})/({in_one_line(children[1])}))"
        case "msup":
            return f"(({in_one_line(children[0])})**({in_one_line(children[1])}))"
        case "msqrt":
            return f"(({''.join(map(in_one_line, children))})**0.5)"
        case "mo":
            return SIGNS.get(node.text or "", node.text or "")
    return (node.text or "").replace("−", "-") + "".join(map(in_one_line, children))


def substitutions() -> list[Fact]:
    return [fact for subject in library().subjects.values() for fact in subject.facts.values() if isinstance(fact.working, Substitution)]


def atoms() -> st.SearchStrategy[str]:
    return st.sampled_from(["a", "b", "c", "2", "10"])


def sources() -> st.SearchStrategy[str]:
    """Expressions with every sign, bracketed so that the tree is what is drawn."""
    return st.recursive(
        atoms(),
        lambda inner: st.one_of(
            st.builds("({} {} {})".format, inner, st.sampled_from("+-*/"), inner),
            st.builds("(-{})".format, inner),
            st.builds("({} ** {})".format, atoms(), st.sampled_from(["2", "3"])),
        ),
        max_leaves=8,
    )


@given(sources())
def test_what_stands_there_has_the_value_of_the_expression(source: str) -> None:
    """The brackets are as many as the meaning needs: read in the usual order of signs, the typeset formula gives the same number."""
    expression = Expression(source)
    values = {name: float(NUMBERS[name]) for name in expression.names}
    try:
        expected = float(expression.evaluate(values))
    except ZeroDivisionError:
        assume(False)
    row = ElementTree.fromstring(mathml.put_in(expression, NUMBERS, {}, "R"))
    read = in_one_line(row).removesuffix("=R")
    assert expected == pytest.approx(eval(read, {"__builtins__": {}}))


@given(sources())
def test_plain_notation_has_the_same_words_in_the_same_order(source: str) -> None:
    expression = Expression(source)
    plain = re.findall(r"[\w.]+", write(expression, PlainText()).translate(SUPERSCRIPTS))
    assert plain == leaves(mathml.formula(expression))


def bare(text: str) -> str:
    return re.sub(r"[()\s=+×÷^,−⁻]", "", text).translate(str.maketrans("⁰¹²³⁴⁵⁶⁷⁸⁹", "0123456789"))


def test_workings_of_the_demo_say_the_same_in_both_notations() -> None:
    """Words, numbers and units agree once signs and brackets are taken away, and powers brought down."""
    checked = 0
    for fact in substitutions():
        work = fact.working
        assert isinstance(work, Substitution)
        for plain, typeset in (
            (work.formula, mathml.formula(work.expression)),
            (f"{work.put_in} = {fact.shown_exactly}", mathml.put_in(work.expression, work.stands_for, work.terms, fact.shown_exactly)),
        ):
            assert bare(plain) == bare("".join(leaves(typeset))), fact.id
            checked += 1
    assert checked > 50


def test_workings_of_the_demo_are_well_formed() -> None:
    for fact in substitutions():
        work = fact.working
        assert isinstance(work, Substitution)
        tree = ElementTree.fromstring(mathml.put_in(work.expression, work.stands_for, work.terms, fact.shown_exactly))
        assert ("math", "block") == (tree.tag, tree.get("display"))


def test_formula_lines_of_all_methods_are_well_formed() -> None:
    lines = [line for method in METHODS.values() for line in method.formula]
    assert {"math"} == {ElementTree.fromstring(mathml.line(line)).tag for line in lines}


@pytest.mark.parametrize("name", ["<b>", "A & B", '"', "]]>"])
def test_names_cannot_break_out(name: str) -> None:
    assert [name, "1"] == leaves(mathml.put_in(Expression("a"), {"a": name}, {}, "1"))


def test_mean_of_a_series_is_a_fraction_of_its_members() -> None:
    annual_mean = library().subjects["biome/temperate_grassland"].facts["harrow_plain.annual_mean_temp"].working
    assert isinstance(annual_mean, Substitution)
    tree = ElementTree.fromstring(mathml.put_in(annual_mean.expression, annual_mean.stands_for, annual_mean.terms, "x"))
    (fraction,) = tree.iter("mfrac")
    above, below = list(fraction)
    assert (12, "12") == (len(list(above.iter("mi"))), "".join(below.itertext()))
