"""Data as a script: pages opened from a folder may load scripts, but no other files."""

from __future__ import annotations

import json


def data_script(function: str, *arguments: object) -> bytes:
    """A script that hands data to a function of a page; nothing in it can end the element that it might stand in."""
    written = ",".join(json.dumps(one, ensure_ascii=False, separators=(",", ":")) for one in arguments).replace("</", "<\\/")
    return f"{function}({written})\n".encode()


def script_name(record: str) -> str:
    """The file of a record's script in its folder, spelled as its page is."""
    return f"{record.replace('_', '-')}.js"
