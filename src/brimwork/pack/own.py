"""A printed file that the kit may replace without asking: one that it wrote itself, and that is still as it was written."""

from __future__ import annotations

import hashlib
import os
from pathlib import Path

from brimwork import files
from brimwork.shown import clipped
from brimwork.units import InputError

_MARK = b"\n%Brimwork "  # a comment behind the end of a PDF, with the checksum of all before it
_LARGEST = 200_000_000


def write_own(path: Path, pdf: bytes, otherwise: str, replace: bool = False) -> None:
    """Write a PDF; a file that is there is replaced only if the kit wrote it and nobody has changed it since, or with `replace`.

    `otherwise` says what to do where that is not so. Raises InputError, and then what is there stays.
    """
    marked = pdf + _MARK + hashlib.sha256(pdf).hexdigest().encode() + b"\n"
    shown = clipped(str(path), 300)
    try:
        was = files.read_bounded(path, _LARGEST) if os.path.lexists(path) and os.path.exists(path) else None
        if was is not None and not (replace and was[:4] in (b"%PDF", b"")) and not is_own(was):
            what = "is there already, and this kit did not write it as it is now" if was[:4] == b"%PDF" else "is there already and is not a PDF"
            raise InputError(f"{shown} {what}: {otherwise}")
        files.write_instead(path, was, marked)
    except OSError as error:
        raise InputError(f"{shown} cannot be written ({error.strerror}): {otherwise}") from None


def is_own(content: bytes) -> bool:
    """Whether the bytes of a file are a PDF of this kit, unchanged."""
    pdf, _, said = content.rpartition(_MARK)
    return bool(pdf) and said.strip() == hashlib.sha256(pdf).hexdigest().encode()
