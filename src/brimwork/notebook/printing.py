"""The pack of a design, printed by a process of its own: what the printer takes of memory ends with it."""

from __future__ import annotations

import asyncio
import sys
import tempfile
from contextlib import suppress
from pathlib import Path

from brimwork.design.typed import file
from brimwork.design.typed.design import Design
from brimwork.units import InputError


async def printed(design: Design) -> bytes:
    """The pack of a design as a PDF. What the printer takes of memory ends with the process that it runs in. Raises InputError, OSError."""
    with tempfile.TemporaryDirectory() as folder:
        source, pack = Path(folder, "design.toml"), Path(folder, "pack.pdf")
        source.write_text(file.dump_design(design), encoding="utf-8")
        line = [sys.executable, "-P", "-m", "brimwork", "pack", str(source), "--to", str(pack)]
        process = await asyncio.create_subprocess_exec(*line, stdout=asyncio.subprocess.DEVNULL, stderr=asyncio.subprocess.PIPE)
        try:
            _, told = await process.communicate()
        finally:
            with suppress(ProcessLookupError):
                if process.returncode is None:
                    process.kill()
        if not pack.exists():
            raise InputError(told.decode(errors="replace").strip().rstrip(".") or "the printer has ended without a word")
        return pack.read_bytes()
