"""Everything that is relied on inside MkDocs and Material, beyond what they document, named in one place.

When one of these fails after an upgrade, the sentence says which part of the site stands on it.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from mkdocs import livereload, utils
from mkdocs.structure.files import File
from mkdocs.theme import Theme

from generator.publish.theme import without_versions

MATERIAL = Path(utils.get_theme_dir("material"))

RELIED_ON = {
    "the header search reads the variable of our index script": ("bundle.*.min.js", "__index"),
    "under file:// the theme loads the index as a script": ("bundle.*.min.js", "search/search_index.js"),
    "a query is message type 2, which our worker script rewrites": ("bundle.*.min.js", "type:2"),
    "the index is sent as message type 0, to which our worker script adds the entries": ("bundle.*.min.js", "type:0,data:{config:"),
    "the search has a worker of its own, which our worker script starts late": ("bundle.*.min.js", "new Worker("),
    "the theme's labels for navigation and search are labels of check boxes": ("bundle.*.min.js", "data-md-toggle="),
    "the theme opens every <details> before printing, which our print styles undo": ("bundle.*.min.js", "beforeprint"),
}
ATTRIBUTES = {
    "the preview stops watching pages that we write ourselves": (livereload.LiveReloadServer, "unwatch"),
    "our styles are files that exist in memory only": (File, "generated"),
    "pages with absolute links are not built": (Theme("material"), "static_templates"),
}


@pytest.mark.parametrize("reason", RELIED_ON)
def test_the_theme_holds_what_is_relied_on(reason: str) -> None:
    pattern, text = RELIED_ON[reason]
    (script,) = (MATERIAL / "assets" / "javascripts").glob(pattern)
    assert text in script.read_text("utf-8"), f"Material changed: {reason}"


@pytest.mark.parametrize("reason", ATTRIBUTES)
def test_the_engine_has_what_is_relied_on(reason: str) -> None:
    owner, name = ATTRIBUTES[reason]
    assert hasattr(owner, name), f"MkDocs changed: {reason}"


def test_the_versions_of_the_programs_are_taken_out() -> None:
    page = '<head>\n<meta name="generator" content="mkdocs-1.6.1, mkdocs-material-9.8.2">\n</head>'
    assert "<head>\n</head>" == without_versions(page)


def test_a_page_that_names_versions_in_another_way_is_told() -> None:
    with pytest.raises(LookupError, match="found 0"):
        without_versions("<head></head>")
