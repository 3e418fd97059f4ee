"""Files written whole or not at all: a killed program leaves the old file or the new one, never half of one."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path


def write_whole(path: Path, content: bytes) -> None:
    """Replace the file at `path` by `content`, keeping its permissions. Raises OSError, and then the old file is as it was."""
    handle, part = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        os.chmod(part, path.stat().st_mode & 0o777 if path.exists() else 0o644)
        os.replace(part, path)
    except BaseException:
        os.unlink(part)
        raise
