"""What Material is given beside mkdocs.yml, and what of it is left out of the site."""

from __future__ import annotations

import re
from importlib.resources import files
from pathlib import Path

from mkdocs.config.config_options import ExtraScriptValue
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files

from figures.inline import palette_css
from generator.publish.search import WORKER_SCRIPT

CHART_COLOURS = "assets/chart-colours.css"
THEME_STYLES = "assets/theme.css"
THEME_SCRIPT = "assets/theme.js"
_LEFT_OUT = re.compile(
    r"charts/.*\.svg"  # stands in the pages
    r"|sitemap\.xml"  # holds dates and absolute links
    r"|assets/javascripts/lunr/.*"  # search in languages other than English
    r"|.*\.map"  # for readers of the theme's own source
)
_GENERATOR = re.compile(r'\s*<meta name="generator" content="[^"]*">')


def configure(config: MkDocsConfig, pages: Path) -> None:
    """Set what the site's promises need: links to files, no static pages with absolute links or dates, our styles and
    scripts, and every style and script of `pages/assets/`, in the order of their names."""
    config.use_directory_urls = False
    config.theme.static_templates.clear()
    config.extra["generator"] = False
    config.extra["polyfills"] = [WORKER_SCRIPT]
    assets = pages / "assets"
    styles = [f"assets/{file.name}" for file in sorted(assets.glob("*.css"))]
    scripts = [f"assets/{file.name}" for file in sorted(assets.glob("*.js"))]
    config.extra_css = [CHART_COLOURS, THEME_STYLES, *styles, *config.extra_css]
    config.extra_javascript = [*map(_deferred, [THEME_SCRIPT, *scripts]), *config.extra_javascript]


def adjust(found: Files, config: MkDocsConfig) -> Files:
    """The files of the site with ours added and those left out that no page needs."""
    for file in [file for file in found if _LEFT_OUT.fullmatch(file.src_uri)]:
        found.remove(file)
    ours = files("generator.publish") / "assets"
    for uri, content in (
        (CHART_COLOURS, palette_css()),
        (THEME_STYLES, (ours / "theme.css").read_text("utf-8")),
        (THEME_SCRIPT, (ours / "theme.js").read_text("utf-8")),
    ):
        found.append(File.generated(config, uri, content=content))
    return found


def without_versions(html: str) -> str:
    """A page that does not name the versions of the programs that made it.

    Raises LookupError if the page does not name them in the way it is known to.
    """
    stripped, count = _GENERATOR.subn("", html)
    if count != 1:
        raise LookupError(f'expected one <meta name="generator"> in the page, found {count}')
    return stripped


def _deferred(path: str) -> ExtraScriptValue:
    script = ExtraScriptValue(path)
    script.defer = True
    return script
