"""Turns the SVG that matplotlib writes into ours: no style attributes, no idle groups or ids, two decimals."""

from __future__ import annotations

import re
from xml.etree import ElementTree

from figures.palette import LIGHT
from figures.svg import FAMILY, NAMESPACE, read_svg, write_svg

_DROPPED = ("metadata", "defs", "style", "title")
_DEFAULTS = {
    "stroke-dashoffset": "0", "stroke-linecap": "butt", "stroke-linejoin": "round", "font-style": "normal", "font-weight": "400",
}  # fmt: skip
_NUMBER = re.compile(r"-?\d+\.\d+(?:e-?\d+)?|-?\d+e-?\d+")
_GEOMETRY = ("d", "x", "y", "transform", "opacity", "fill-opacity", "stroke-width", "stroke-dasharray", "font-size")
_HALO = {"stroke": LIGHT["ground"], "stroke-width": "4", "paint-order": "stroke"}


def tidy(svg: str) -> str:
    """The same drawing as a flat list of paths and texts with presentation attributes.

    Style attributes would be refused by a strict security policy, so they become attributes. A group named `part:<name>`
    hands its name to its path as `data-part`; a group named `halo` gives its text an outline in the ground colour.
    """
    source = read_svg(svg)
    _, _, width, height = (_rounded(number) for number in source.attrib["viewBox"].split())
    root = ElementTree.Element("svg", {
        "xmlns": NAMESPACE, "viewBox": f"0 0 {width} {height}", "width": width, "height": height,
        "font-family": FAMILY, "stroke-linejoin": "round",
    })  # fmt: skip
    root.extend(_marks(source, ""))
    return write_svg(root)


def _marks(group: ElementTree.Element, name: str) -> list[ElementTree.Element]:
    marks = []
    for element in group:
        if element.tag == "g":
            marks += _marks(element, element.get("id", name))
        elif element.tag not in _DROPPED:
            marks.append(_mark(element, name))
    return marks


def _mark(element: ElementTree.Element, group: str) -> ElementTree.Element:
    attributes = {key: value for key, value in element.attrib.items() if key not in ("style", "id")}
    attributes |= _declarations(element.get("style", ""))
    if attributes.get("transform", "").startswith("rotate(-0"):
        del attributes["transform"]
    attributes.pop("font-family", None)
    if group.startswith("part:"):
        attributes["data-part"] = group.removeprefix("part:")
    if group == "halo":
        attributes |= _HALO
    for key in _GEOMETRY:
        if key in attributes:
            attributes[key] = _NUMBER.sub(lambda match: _rounded(match[0]), attributes[key].removesuffix("px"))
    if "d" in attributes:
        attributes["d"] = re.sub(r" ?([MLQCz]) ?", r"\1", " ".join(attributes["d"].split()))
    tidied = ElementTree.Element(element.tag, attributes)
    tidied.text = element.text
    return tidied


def _declarations(style: str) -> dict[str, str]:
    pairs = (part.partition(":") for part in style.split(";") if part.strip())
    declared = {name.strip(): value.strip() for name, _, value in pairs}
    return {name: value for name, value in declared.items() if _DEFAULTS.get(name) != value}


def _rounded(number: str) -> str:
    shown = f"{float(number):.2f}".rstrip("0").rstrip(".")
    return "0" if shown == "-0" else shown
