"""The form in which charts stand in pages: themed, named, and free of ids that could meet others."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest

from figures import palette
from figures.inline import chart_css, inline_svg, palette_css
from tests.figures.drawn import drawn
from tests.figures.overview_specimens import CHAINS, MAPS, MULTIPLES, TURNOVERS
from tests.figures.specimens import CLIMATES, FLUX_DIAGRAMS, PYRAMIDS
from tests.figures.water_specimens import BARS, CURVES, LIGHTS, PRODUCTIONS
from tests.figures.web_specimens import NOT_CROWDED

SPECIMENS = (*CLIMATES, *PYRAMIDS, *FLUX_DIAGRAMS, *CHAINS, *MAPS, *MULTIPLES, *TURNOVERS, *NOT_CROWDED, *BARS, *PRODUCTIONS, *LIGHTS, *CURVES)


def small(inner: str) -> str:
    return f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9" width="9" height="9">{inner}</svg>'


def inlined(svg: str, title: str = "A title", description: str = "A description.") -> str:
    return inline_svg(svg, prefix="c1", title=title, description=description)


@pytest.mark.parametrize("chart", SPECIMENS, ids=lambda chart: chart.name)
def test_no_colour_literal_is_left_in_any_chart(chart):
    inline = inlined(drawn(chart))
    assert [] == re.findall(r"#[0-9a-fA-F]{3,8}\b|rgb|hsl", inline)
    assert "var(--chart-ink)" in inline


@pytest.mark.parametrize("chart", SPECIMENS, ids=lambda chart: chart.name)
def test_text_stays_text_and_is_eleven_pixels_high_at_the_least_width_of_a_chart(chart):
    """A page shows charts no narrower than 560 px; there they scroll."""
    root = ElementTree.fromstring(drawn(chart))
    texts, scale = root.findall(".//{*}text"), 560 / float(root.get("width"))
    assert texts
    assert all(float(text.get("font-size")) * scale >= 11 and text.text.strip() for text in texts)


@pytest.mark.parametrize("chart", (CLIMATES[0], PYRAMIDS[0], FLUX_DIAGRAMS[0]), ids=lambda chart: chart.name)
def test_a_strict_security_policy_finds_nothing_to_refuse(chart):
    inline = inlined(drawn(chart))
    assert not re.search(r"\sstyle=|<style|<script|href=|url\(", inline)


def test_the_element_is_one_named_and_described_image_without_fixed_size():
    root = ElementTree.fromstring(inlined(drawn(CLIMATES[0])))
    assert {"role": "img", "aria-labelledby": "c1-title", "aria-describedby": "c1-desc"}.items() <= root.attrib.items()
    assert [("title", "c1-title", "A title"), ("desc", "c1-desc", "A description.")] == [
        (child.tag.split("}")[-1], child.get("id"), child.text) for child in list(root)[:2]
    ]
    assert root.get("viewBox") and not {"width", "height"} & set(root.keys())


def test_no_blank_line_and_no_prolog_so_that_markdown_takes_it_as_one_block():
    inline = inlined(drawn(FLUX_DIAGRAMS[0]), description="Two\n\nparagraphs.")
    assert inline.startswith("<svg ")
    assert "\n\n" not in inline
    assert "Two paragraphs." in inline


def test_title_and_description_are_escaped():
    inline = inlined(drawn(PYRAMIDS[0]), title='a < b & "c"', description="</desc><script>")
    assert "<title id=\"c1-title\">a &lt; b &amp; \"c\"</title>" in inline
    assert "&lt;/desc&gt;&lt;script&gt;" in inline


def test_ids_and_all_references_to_them_get_the_prefix():
    inline = inlined(small('<path id="p" d="M0 0"/><g clip-path="url(#p)"><use href="#p"/></g>'))
    assert 'id="c1-p"' in inline and "url(#c1-p)" in inline and 'href="#c1-p"' in inline


@pytest.mark.parametrize("left_over", (
    '<path fill="#1f77b4"/>', '<path stroke="#000"/>', '<path fill="red"/>', '<path fill="rgb(1,2,3)"/>',
    '<path style="fill: #1f77b4"/>', '<path style="stroke: red"/>', "<style>path {fill: #1f77b4}</style>",
    '<stop stop-color="#abcdef"/>', '<path fill="#1b1f2380"/>',
))  # fmt: skip
def test_a_colour_that_is_not_in_the_palette_is_refused(left_over: str):
    with pytest.raises(ValueError, match="colour outside the palette"):
        inlined(small(left_over))


@pytest.mark.parametrize("role", palette.LIGHT)
def test_every_palette_colour_is_replaced_in_attributes_and_in_styles(role: str):
    colour = palette.LIGHT[role]
    inline = inlined(small(f'<path fill="{colour}" stroke="{colour.upper()}"/><path style="fill: {colour}; stroke: none"/>'))
    assert 3 == inline.count(f"var(--chart-{role})")


def test_what_is_not_svg_is_refused():
    for text in ("", "<svg", "<html/>"):
        with pytest.raises(ValueError, match="SVG|<svg>"):
            inlined(text)


def test_forced_colours_set_every_role_to_the_readers_own_colours_after_all_schemes():
    forced = palette_css().split("@media screen and (forced-colors: active)")[1]
    named = dict(re.findall(r"(--chart-[a-z]+): (\w+);", forced))
    assert {f"--chart-{role}" for role in palette.LIGHT} == set(named)
    assert {"Canvas", "CanvasText", "GrayText"} == set(named.values())
    assert ["--chart-ground"] == [name for name, colour in named.items() if colour == "Canvas"]


def test_the_style_sheet_sets_every_role_for_both_schemes_and_the_light_set_for_paper():
    css = palette_css()
    default, slate, paper = re.split(r'\[data-md-color-scheme="slate"\]|@media print', css.split("@media screen and (forced")[0])
    for colours, rule in ((palette.LIGHT, default), (palette.DARK, slate), (palette.LIGHT, paper)):
        assert {f"--chart-{role}": colour for role, colour in colours.items()} == dict(
            re.findall(r"(--chart-[a-z]+): (#[0-9a-f]{6});", rule)
        )


def test_what_drawings_share_is_told_by_the_styles_and_not_by_each():
    shared = dict(re.findall(r"([\w-]+): ([^;]+);", chart_css()))
    drawing = ElementTree.fromstring(drawn(CLIMATES[0]))
    assert shared == {name: drawing.get(name) for name in ("font-family", "stroke-linejoin")}
    assert not set(shared) & set(ElementTree.fromstring(inlined(drawn(CLIMATES[0]))).keys())
