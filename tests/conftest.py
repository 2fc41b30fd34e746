"""What tests of several rooms share: one Chromium for the whole run."""

from __future__ import annotations

import os
import shutil
from collections.abc import Iterator

import pytest
from hypothesis import settings
from playwright.sync_api import Browser, sync_playwright

settings.register_profile("unhurried", settings.get_profile("ci" if os.environ.get("CI") else "default"), deadline=None)
settings.load_profile("unhurried")  # how long an example takes hangs on what else the machine does

QUIET = (
    "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync",
)  # fmt: skip


def pytest_addoption(parser: pytest.Parser) -> None:
    """The option by which golden pages are made anew."""
    parser.addoption("--update-golden", action="store_true", help="write tests/golden/<kind>/page.md anew; read the difference before you keep it")


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    """A headless Chromium: the one that CHROMIUM names, or the system's. Without one, CI fails and others skip."""
    program = os.environ.get("CHROMIUM") or next(filter(None, map(shutil.which, ("chromium", "chromium-browser"))), None)
    if program is None:
        message = "no Chromium found: set CHROMIUM to its path; tests in the browser did not run"
        if os.environ.get("CI", "").lower() == "true":
            pytest.fail(message)
        pytest.skip(message)
    with sync_playwright() as playwright:
        chromium = playwright.chromium.launch(executable_path=program, args=list(QUIET))
        yield chromium
        chromium.close()
