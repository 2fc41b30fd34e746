"""Turns a drawn chart into the form that stands inside a page: colours by CSS custom property, named and described."""

from __future__ import annotations

import re
from xml.etree import ElementTree

from figures import palette
from figures.compact import compact
from figures.svg import FAMILY, read_svg, write_svg

_COLOUR_ATTRIBUTES = ("fill", "stroke", "color", "stop-color", "flood-color", "lighting-color")
_NOT_A_COLOUR = re.compile(r"none|inherit|currentColor|context-(fill|stroke)|url\(#[^)]+\)|var\(--chart-[a-z]+\)")
_HEX = re.compile(r"#(?:[0-9a-fA-F]{8}|[0-9a-fA-F]{6}|[0-9a-fA-F]{3,4})\b")
_LITERAL = re.compile(r"(?<!url\()#[0-9a-fA-F]{3,8}\b|\b(?:rgba?|hsla?|hwb|lab|lch|oklab|oklch|color)\(")
_SHARED = {"font-family": FAMILY, "stroke-linejoin": "round"}
"""What all drawings have in common, told once by `chart_css`."""
_ROLES = {colour: role for role, colour in palette.LIGHT.items()}


def inline_svg(svg: str, *, prefix: str, title: str, description: str) -> str:
    """The chart as an `<svg>` element for a page, without blank lines, size or prolog, in few letters.

    `prefix` goes before every id, so that two charts on a page share none; `title` and `description` become what a
    screen reader says. Palette colours turn into `var(--chart-<role>)` and so follow the page's colour scheme.

    Raises
    ------
    ValueError
        If the text is not SVG, or a colour is left over that is not in the light palette.
    """
    root = read_svg(svg)
    for name in ("width", "height", "version", *_SHARED):
        root.attrib.pop(name, None)
    _prefix_ids(root, prefix)
    for element in root.iter():
        _replace_colours(element)
    compact(root)
    root.attrib |= {"role": "img", "aria-labelledby": f"{prefix}-title", "aria-describedby": f"{prefix}-desc"}
    root.insert(0, _named("title", f"{prefix}-title", title))
    root.insert(1, _named("desc", f"{prefix}-desc", description))
    return write_svg(root)


def chart_css() -> str:
    """What every drawing in a page shares."""
    return f"figure.chart svg {{ {' '.join(f'{name}: {value};' for name, value in _SHARED.items())} }}\n"


def palette_css() -> str:
    """The custom properties of both colour schemes; paper always gets the light set, forced colours the reader's own."""
    light, dark, forced = map(_declarations, (palette.LIGHT, palette.DARK, palette.FORCED))
    return (
        f':root,\n[data-md-color-scheme="default"] {{\n{light}}}\n'
        f'[data-md-color-scheme="slate"] {{\n{dark}}}\n'
        f"@media print {{\n:root,\n[data-md-color-scheme] {{\n{light}}}\n}}\n"
        f"@media screen and (forced-colors: active) {{\n:root,\n[data-md-color-scheme] {{\n{forced}}}\n}}\n"
    )


def _declarations(colours: dict[str, str]) -> str:
    return "".join(f"  {palette.variable(role)}: {colour};\n" for role, colour in colours.items())


def _named(tag: str, identifier: str, text: str) -> ElementTree.Element:
    element = ElementTree.Element(tag, {"id": identifier})
    element.text = re.sub(r"[ \t\r\n]+", " ", text)
    return element


def _prefix_ids(root: ElementTree.Element, prefix: str) -> None:
    for element in root.iter():
        for name, value in element.attrib.items():
            if name == "id":
                element.set(name, f"{prefix}-{value}")
            elif name == "href" and value.startswith("#"):
                element.set(name, f"#{prefix}-{value[1:]}")
            else:
                element.set(name, re.sub(r"url\(#", f"url(#{prefix}-", value))


def _replace_colours(element: ElementTree.Element) -> None:
    for name, value in element.attrib.items():
        if name in _COLOUR_ATTRIBUTES:
            replaced = _replaced(value)
            if not _NOT_A_COLOUR.fullmatch(replaced):
                raise ValueError(f'colour outside the palette: {name}="{value}" in <{element.tag}>')
            element.set(name, replaced)
        elif name == "style":
            element.set(name, _replaced_style(value, element.tag))
    if element.tag == "style" and (left := _LITERAL.search(_replaced(element.text or ""))):
        raise ValueError(f"colour outside the palette: {left[0]} in <style>")
    if element.tag == "style":
        element.text = _replaced(element.text or "")


def _replaced_style(style: str, tag: str) -> str:
    declarations = []
    for declaration in filter(None, (part.strip() for part in style.split(";"))):
        name, _, value = (part.strip() for part in declaration.partition(":"))
        replaced = _replaced(value)
        if name in _COLOUR_ATTRIBUTES and not _NOT_A_COLOUR.fullmatch(replaced) or _LITERAL.search(replaced):
            raise ValueError(f"colour outside the palette: {declaration} in <{tag}>")
        declarations.append(f"{name}: {replaced}")
    return "; ".join(declarations)


def _replaced(value: str) -> str:
    def by_role(match: re.Match[str]) -> str:
        role = _ROLES.get(match[0].lower())
        return match[0] if role is None else f"var({palette.variable(role)})"

    return _HEX.sub(by_role, value.strip())
