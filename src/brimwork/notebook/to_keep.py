"""A link in a page to a file that a workbook has written, to open or to keep: the file itself travels with it."""

from __future__ import annotations

import base64
from pathlib import Path

from brimwork import files
from brimwork.shown import Markup, attribute, escape

LARGEST_TO_KEEP = 5_000_000
_KINDS = {".pdf": "application/pdf", ".json": "application/json", ".svg": "image/svg+xml", ".toml": "application/toml"}


def link_to(path: str | Path, words: str = "") -> Markup:
    """A link by the name of a file, which saves it; only the name where it cannot be read."""
    path = Path(path)
    try:
        content = base64.b64encode(files.read_bounded(path, LARGEST_TO_KEEP)).decode()
    except (OSError, ValueError):
        return escape(path.name)
    href = attribute(f"data:{_KINDS[path.suffix]};base64,{content}")
    return Markup(f"<a href='{href}' download='{attribute(path.name)}'>{escape(words or path.name)}</a>")
