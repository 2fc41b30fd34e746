"""Styles and scripts of the pages."""

from __future__ import annotations

import re

from generator.pages.asset_files import assets


def test_assets_are_styles_and_scripts_in_a_fixed_order() -> None:
    assert list(assets()) == sorted(assets())
    assert {".css", ".js"} == {path[path.rindex(".") :] for path in assets()}


def test_assets_ask_for_nothing_outside() -> None:
    """Offline: no address of another host, no import of a font."""
    found = {path: re.findall(rb"(?:https?:)?//[a-z0-9.-]+\.[a-z]{2,}|@import|url\((?!['\"]?data:)", data) for path, data in assets().items()}
    assert {} == {path: hits for path, hits in found.items() if hits}
