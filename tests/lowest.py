"""Brimwork with the lowest version of each library that it allows: everything is imported, every formula proved, a pack printed.

python tests/lowest.py FOLDER makes an environment in that folder and tries it there.
"""

import re
import subprocess
import sys
import tomllib
import venv
from pathlib import Path

ROOT = Path(__file__).parents[1]
IMPORTS = """
import importlib, pkgutil, brimwork
for module in pkgutil.walk_packages(brimwork.__path__, "brimwork."):
    if not module.name.endswith("__main__"):
        importlib.import_module(module.name)
"""


def lowest() -> list[str]:
    wanted = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]["dependencies"]
    return [re.sub(r">=([^,]+).*", r"==\1", one) for one in wanted]


def run(*command: str | Path, fine: tuple[int, ...] = (0,)) -> None:
    ran = subprocess.run(command, capture_output=True, text=True)
    if ran.returncode not in fine:
        sys.exit(f"with {', '.join(lowest())}:\n{' '.join(map(str, command))}\n{ran.stdout[-2000:]}{ran.stderr[-2000:]}")


def main(folder: Path) -> None:
    venv.create(folder, with_pip=True)
    python = folder / ("Scripts" if sys.platform == "win32" else "bin") / "python"
    run(python, "-m", "pip", "install", "-q", "-e", ROOT, *lowest())
    run(python, "-c", IMPORTS)
    run(python, "-m", "brimwork", "prove")
    run(python, "-m", "brimwork", "pack", ROOT / "workbooks/designs/library-bowl.toml", "--to", folder / "pack.pdf", fine=(1,))  # this bowl fails on purpose
    print(f"With the lowest versions allowed everything is imported, proved and printed: {', '.join(lowest())}")


if __name__ == "__main__":
    main(Path(sys.argv[1]))
