"""Pages made light on the wire: styles and scripts in few files, scripts only where they have something to do, no indents.

Each file is a request, and a browser that has the file already asks all the same whether it has changed.
"""

from __future__ import annotations

import re
from pathlib import Path

from mkdocs.config.config_options import ExtraScriptValue

STYLES = "assets/site.css"
SCRIPTS = "assets/site.js"
"""What every page may need."""
ONLY_WITH = {
    "assets/practice.js": ("practice-desk", "practice-record", "practice-due"),
    "assets/written.js": ("written-again", "written-part", "written-sheet"),
}
"""Scripts that have nothing to do on a page without one of these elements."""
_PARTS = {
    "assets/practice.js": re.compile(r"study-practice"),
    "assets/written.js": re.compile(r"coaching|drafts|marking|written-\w+"),
}
_SIGN = re.compile(r'(<(?:label|div) class="md-(?:header|footer)__button md-icon"[^>]*>)\s*<svg\b.*?</svg>\s*', re.DOTALL)
_KEPT = r"<(?P<kept>pre|textarea|script|style)\b.*?</(?P=kept)>"
_BREAK = re.compile(rf"{_KEPT}|[ \t\r]*\n\s*", re.DOTALL | re.ASCII)


def joined_scripts(folder: Path, *before: str) -> dict[str, str]:
    """The scripts of a folder as few files, by their path in the site, in the order of their names; others come first of all."""
    parts: dict[str, list[str]] = {SCRIPTS: [*before], **{uri: [] for uri in ONLY_WITH}}
    for file in sorted(folder.glob("*.js")):
        uri = next((uri for uri, names in _PARTS.items() if names.fullmatch(file.stem)), SCRIPTS)
        parts[uri].append(file.read_text("utf-8"))
    return {uri: "\n;".join(texts) for uri, texts in parts.items()}  # a file may end without a semicolon and the next begin with a bracket


def joined_styles(folder: Path, *before: str) -> str:
    """The styles of a folder, in the order of their names, behind others."""
    return "\n".join([*before, *(file.read_text("utf-8") for file in sorted(folder.glob("*.css")))])


def deferred(path: str) -> ExtraScriptValue:
    """A script that runs when the page has been read."""
    script = ExtraScriptValue(path)
    script.defer = True
    return script


def without_idle_scripts(html: str) -> str:
    """A page without the scripts that would find nothing to do in it.

    Raises LookupError if the page does not load them in the way it is known to.
    """
    for uri, elements in ONLY_WITH.items():
        if not any(f"<{element}" in html for element in elements):
            html, count = re.subn(rf'\s*<script src="[^"]*{re.escape(uri)}" defer></script>', "", html)
            if count != 1:
                raise LookupError(f"expected one <script> for {uri} in the page, found {count}")
    return html


def without_unseen_signs(html: str) -> str:
    """A page without the theme's drawings in header and footer, in whose place `frame.css` sets words."""
    return _SIGN.sub(r"\1", html)


def without_indents(html: str) -> str:
    """A page whose lines begin at the margin, none of them blank; what shows its white space keeps it."""
    return _BREAK.sub(lambda found: found[0] if found["kept"] else "\n", html)
