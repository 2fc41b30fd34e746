"""Reading SVG text into an element tree and writing it back with one element a line, always in the same form."""

from __future__ import annotations

from xml.etree import ElementTree
from xml.sax.saxutils import escape

NAMESPACE = "http://www.w3.org/2000/svg"
FAMILY = "system-ui, -apple-system, 'Segoe UI', Roboto, Helvetica, Arial, sans-serif"
"""The typefaces of the reader's own system; nothing is loaded."""
_XLINK_HREF = "{http://www.w3.org/1999/xlink}href"


def read_svg(text: str) -> ElementTree.Element:
    """The root of an SVG document, its element names freed from their namespace; comments fall away.

    Raises
    ------
    ValueError
        If the text is not well-formed XML, or not an SVG document.
    """
    try:
        root = ElementTree.fromstring(text)
    except ElementTree.ParseError as error:
        raise ValueError(f"not well-formed SVG: {error}") from error
    for element in root.iter():
        element.tag = element.tag.removeprefix(f"{{{NAMESPACE}}}")
        if _XLINK_HREF in element.attrib:
            element.set("href", element.attrib.pop(_XLINK_HREF))
    if root.tag != "svg":
        raise ValueError(f"expected an <svg> root, found <{root.tag}>")
    return root


def write_svg(element: ElementTree.Element) -> str:
    """The tree as text that ends in a line break; no blank lines, no indents inside text."""
    return "\n".join(_lines(element)) + "\n"


def _lines(element: ElementTree.Element) -> list[str]:
    attributes = "".join(f' {name}="{_attribute(value)}"' for name, value in element.attrib.items())
    text = escape((element.text or "").strip())
    children = [line for child in element for line in _lines(child)]
    if children:
        return [f"<{element.tag}{attributes}>{text}", *children, f"</{element.tag}>"]
    if text:
        return [f"<{element.tag}{attributes}>{text}</{element.tag}>"]
    return [f"<{element.tag}{attributes}/>"]


def _attribute(value: str) -> str:
    return escape(" ".join(value.split()), {'"': "&quot;"})
