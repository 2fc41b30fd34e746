"""The content security policy of every page: the browser itself refuses whatever is not in the site's folder."""

from __future__ import annotations

import base64
import hashlib
import re

CHARSET = '<meta charset="utf-8">'
_SCRIPT = re.compile(r"<script(?P<attributes>[^>]*)>(?P<source>.*?)</script>", re.DOTALL | re.IGNORECASE)
_DATA = re.compile(r"\btype\s*=\s*[\"']?application/(ld\+)?json", re.IGNORECASE)
_ELSEWHERE = re.compile(r"\bsrc\s*=", re.IGNORECASE)


def with_policy(html: str) -> str:
    """A whole page with its policy right after the character set, before anything that loads or runs.

    Raises LookupError if the page has no place for it.
    """
    if html.count(CHARSET) != 1:
        raise LookupError(f"expected {CHARSET} once in the page, found it {html.count(CHARSET)} times")
    return html.replace(CHARSET, f'{CHARSET}\n<meta http-equiv="Content-Security-Policy" content="{policy(html)}">', 1)


def policy(html: str) -> str:
    """The policy of a page: its own folder only, and of inline scripts just those that it holds now, by hash.

    `style-src` allows inline styles since charts carry some; `worker-src blob:` is how search runs without a server.
    Reporting and frame-ancestors have no effect in a page and are left out.
    Source, from memory: Content Security Policy Level 3 (W3C), 2.3.1 source lists, 3.3 the meta element, 6.1 fetch
    directives; that it lets the theme work and stops what it should is tested in a browser.
    """
    return (
        f"default-src 'self'; script-src 'self' {_hashes(html)}; style-src 'self' 'unsafe-inline'; img-src 'self' data:; "
        "connect-src 'self'; worker-src 'self' blob:; object-src 'none'; base-uri 'none'; form-action 'none'"
    )


def policy_of_one_file(html: str) -> str:
    """The policy of a page that is alone: nothing is loaded from anywhere, and only the scripts that it holds now run."""
    return f"default-src 'none'; script-src {_hashes(html)}; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'"


def inline_scripts(html: str) -> list[str]:
    """The sources of all scripts that stand in the page itself and would run; data blocks do not run."""
    return [
        found["source"]
        for found in _SCRIPT.finditer(html)
        if not _ELSEWHERE.search(found["attributes"]) and not _DATA.search(found["attributes"])
    ]


def refuse_scripts(html: str, page: str) -> None:
    """Raise ValueError if the content of a page holds a script that would run: the policy would bless it by its hash."""
    if scripts := inline_scripts(html):
        raise ValueError(f"{page}: expected no inline script in the content, found {scripts[0][:60]!r}; use assets/")


def _hashes(html: str) -> str:
    return " ".join(dict.fromkeys(f"'sha256-{_digest(source)}'" for source in inline_scripts(html)))


def _digest(source: str) -> str:
    return base64.b64encode(hashlib.sha256(source.encode()).digest()).decode()
