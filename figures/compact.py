"""A drawing said in fewer letters, for a page that carries it in its text; it looks the same."""

from __future__ import annotations

from collections import Counter
from xml.etree import ElementTree

from figures.path_data import shorter

_HALO = {"d", "fill", "stroke", "stroke-width"}


def compact(root: ElementTree.Element) -> None:
    """Shorten a flat drawing in place: paths in tenths of a unit, an outline and its shape in one, shared attributes of texts said once."""
    for element in root.iter():
        if "d" in element.attrib:
            element.set("d", shorter(element.attrib["d"], from_either_end="stroke-dasharray" not in element.attrib))
        if element.tag == "text":
            _shorten_text(element)
    _join_halos(root)
    _say_once(root)


def _shorten_text(text: ElementTree.Element) -> None:
    for name in ("x", "y"):
        if name in text.attrib:
            text.set(name, f"{float(text.attrib[name]):.1f}".removesuffix(".0"))
    if text.get("text-anchor") == "start":
        del text.attrib["text-anchor"]


def _join_halos(root: ElementTree.Element) -> None:
    """Make one of a shape and the outline that is drawn under it."""
    for halo, shape in zip(list(root), list(root)[1:], strict=False):
        is_halo = set(halo.attrib) == _HALO and halo.get("fill") == "none"
        if is_halo and halo.get("d") == shape.get("d") and not {"stroke", "opacity", "fill-opacity"} & set(shape.attrib):
            shape.attrib |= {"stroke": halo.attrib["stroke"], "stroke-width": halo.attrib["stroke-width"], "paint-order": "stroke"}
            root.remove(halo)


def _say_once(root: ElementTree.Element) -> None:
    texts = root.findall("text")
    marks = [element for element in root.iter() if element is not root]
    for name, bearers in (("font-size", texts), ("fill", marks)):
        if texts and all(name in bearer.attrib for bearer in bearers):
            ((shared, _),) = Counter(text.attrib[name] for text in texts).most_common(1)
            root.set(name, shared)
            for text in texts:
                if text.attrib[name] == shared:
                    del text.attrib[name]
