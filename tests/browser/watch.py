"""A browser page under watch: what it complains of, and which requests leave the site."""

from __future__ import annotations

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

RULES = {
    "runOnly": {"type": "tag", "values": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]},
    "resultTypes": ["violations"],
}


class Watch:
    """Notes from before the first address is opened until the page is closed."""

    def __init__(self, page: Page, site_url: str) -> None:
        self.page = page
        self._site_url = site_url
        self.complaints: list[str] = []
        self.strangers: list[str] = []
        page.on("console", lambda said: self._complain(said.type, said.text, said.location.get("url", "")))
        page.on("pageerror", lambda error: self.complaints.append(f"uncaught: {error}"))
        page.on("requestfailed", lambda request: self._fail(request.url, request.failure or ""))
        page.on("response", lambda answer: self._answer(answer.status, answer.url))
        page.on("request", lambda request: self._request(request.url))

    def open(self, name: str, *, settled: bool = True) -> Page:
        """Open a page of the site by its path, and wait until it asks for nothing more (the search loads last)."""
        self.page.goto(f"{self._site_url}/{name}", wait_until="networkidle" if settled else "load")
        return self.page

    def _complain(self, kind: str, text: str, url: str) -> None:
        if kind in ("error", "warning"):
            self.complaints.append(f"{kind}: {text} ({url})")

    def _fail(self, url: str, why: str) -> None:
        """The sign on the browser's tab may still be on its way when the next page is opened, which cuts it off: that is no complaint."""
        if why != "net::ERR_ABORTED":
            self.complaints.append(f"failed: {url} {why}")

    def _answer(self, status: int, url: str) -> None:
        if status >= 400:
            self.complaints.append(f"status {status}: {url}")

    def _request(self, url: str) -> None:
        if not url.startswith((f"{self._site_url}/", "blob:", "data:")):
            self.strangers.append(url)


def violations(page: Page) -> list[str]:
    """What axe finds on a page as it stands, one line an element: rule, impact, element, first reason."""
    found = Axe().run(page, options=RULES).response["violations"]
    return [
        f"{rule['id']} ({rule['impact']}): {node['html'][:160]} | {node['failureSummary'].splitlines()[1:2]}"
        for rule in found for node in rule["nodes"]
    ]  # fmt: skip
