"""Builds the script of pages without code from `src/brimwork/notebook/page/source`; needs Node with npm, which brings what `package-lock.json` names.

python tests/build_page.py
"""

import hashlib
import shutil
import subprocess
import tempfile
from pathlib import Path

HERE = Path(__file__).parents[1] / "src" / "brimwork" / "notebook" / "page"


def build(place: Path) -> None:
    shutil.copytree(HERE / "source", place / "source", dirs_exist_ok=True)
    npm = shutil.which("npm") or "npm"
    if not (place / "source" / "node_modules").exists():
        subprocess.run([npm, "ci", "--no-audit", "--no-fund"], cwd=place / "source", check=True)
        subprocess.run(["node", "install.js"], cwd=place / "source" / "node_modules" / "esbuild", check=True)  # npm runs no scripts of others here
    subprocess.run([npm, "run", "build"], cwd=place / "source", check=True)
    for name in ("page.js", "math.js"):
        digest = hashlib.sha256((HERE / "source" / name).read_bytes()).hexdigest()[:16]
        made = place / "built" / name
        made.write_text(f"/* built from {digest} */\n{made.read_text(encoding='utf-8')}", encoding="utf-8")
    shutil.rmtree(HERE / "built", ignore_errors=True)
    shutil.copytree(place / "built", HERE / "built")


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as place:
        build(Path(place))
