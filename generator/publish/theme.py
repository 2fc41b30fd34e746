"""What Material is given beside mkdocs.yml, and what of it is left out of the site."""

from __future__ import annotations

import re
from importlib.resources import files
from pathlib import Path

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files

from figures.inline import chart_css, palette_css
from generator.pages.route import MARK
from generator.publish.search import WORKER_SCRIPT
from generator.publish.weight import ONLY_WITH, SCRIPTS, STYLES, deferred, joined_scripts, joined_styles

_LEFT_OUT = re.compile(
    r"charts/.*\.svg"  # stands in the pages
    r"|assets/[^/]+\.(css|js)"  # joined into few files
    r"|sitemap\.xml"  # holds dates and absolute links
    r"|assets/javascripts/lunr/.*"  # search in languages other than English
    r"|.*\.map"  # for readers of the theme's own source
)
_GENERATOR = re.compile(r'\s*<meta name="generator" content="[^"]*">')


def configure(config: MkDocsConfig) -> None:
    """Set what the site's promises need: links to files, no static pages with absolute links or dates, our styles, scripts and sign."""
    config.use_directory_urls = False
    config.theme.static_templates.clear()
    config.extra["generator"] = False
    if (Path(config.docs_dir) / MARK).exists():
        config.theme["logo"] = config.theme["favicon"] = MARK
    config.extra["polyfills"] = [WORKER_SCRIPT]
    config.extra_css = [STYLES, *config.extra_css]
    config.extra_javascript = [*map(deferred, [SCRIPTS, *ONLY_WITH]), *config.extra_javascript]


def adjust(found: Files, config: MkDocsConfig) -> Files:
    """The files of the site with ours added and those left out that no page needs."""
    for file in [file for file in found if _LEFT_OUT.fullmatch(file.src_uri)]:
        found.remove(file)
    ours, assets = files("generator.publish") / "assets", Path(config.docs_dir) / "assets"
    theme_styles, frame, theme_script = ((ours / name).read_text("utf-8") for name in ("theme.css", "frame.css", "theme.js"))
    for uri, content in {STYLES: joined_styles(assets, palette_css(), chart_css(), theme_styles, frame), **joined_scripts(assets, theme_script)}.items():
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
