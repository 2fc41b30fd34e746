"""Every page carries a policy that allows what the page is made of and nothing else."""

from __future__ import annotations

import pytest

from generator.publish.policy import inline_scripts, policy, refuse_scripts, with_policy

PAGE = """<!doctype html>
<html><head>
<meta charset="utf-8">
<script>alert('Hello, world.');</script>
<script src="a.js" defer></script>
<script id="__config" type="application/json">{"base": "."}</script>
</head><body></body></html>"""


def test_an_inline_script_is_allowed_by_its_hash() -> None:
    # An outside value: what OpenSSL prints for
    # `printf "alert('Hello, world.');" | openssl dgst -sha256 -binary | openssl base64`.
    assert "script-src 'self' 'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng=';" in policy(PAGE)


def test_scripts_from_files_and_data_need_no_hash() -> None:
    assert ["alert('Hello, world.');"] == inline_scripts(PAGE)


def test_the_same_script_twice_is_named_once() -> None:
    assert 1 == policy(PAGE + PAGE).count("sha256-")


def test_the_policy_stands_before_anything_that_loads_or_runs() -> None:
    page = with_policy(PAGE)
    assert page.index("Content-Security-Policy") < min(page.index("<script"), page.index("a.js"))


def test_the_character_set_stays_within_the_first_1024_bytes() -> None:
    # HTML Living Standard, 4.2.5.4 (from memory): the declaration must be within the first 1024 bytes.
    assert with_policy(PAGE).index('<meta charset="utf-8">') < 1024


@pytest.mark.parametrize(
    "directive",
    ["default-src 'self'", "object-src 'none'", "base-uri 'none'", "form-action 'none'", "connect-src 'self'"],
)
def test_nothing_but_the_sites_own_folder_is_allowed(directive: str) -> None:
    assert directive in policy(PAGE).split("; ")


def test_inline_scripts_are_allowed_by_hash_only() -> None:
    (scripts,) = [part for part in policy(PAGE).split("; ") if part.startswith("script-src")]
    assert "unsafe" not in scripts


def test_a_page_without_a_character_set_is_told() -> None:
    with pytest.raises(LookupError, match="charset"):
        with_policy("<html><head></head></html>")


def test_a_script_in_the_content_is_refused_with_its_page() -> None:
    with pytest.raises(ValueError, match=r"biome/x\.md: expected no inline script"):
        refuse_scripts("<p>a</p><script>alert(1)</script>", "biome/x.md")


def test_data_in_the_content_is_not_refused() -> None:
    assert refuse_scripts('<script type="application/json">{}</script>', "biome/x.md") is None
