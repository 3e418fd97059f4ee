"""How fast Brimwork is, as ratios within one run: python tests/speed/measure.py [--moves 100] [--quick]

Prints a table: slider to painted pixel in a real browser beside `interact` with a new matplotlib figure of the same content (both over the
server that `brimwork open` runs), `import brimwork`, one formula call, arrays against the same expression written in NumPy by hand.
"""

from __future__ import annotations

import argparse
import json
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "browser"))

OURS = """from brimwork.notebook import explore
explore("{name}", {letters})"""
INTERACT = """%matplotlib inline
import numpy as np, matplotlib.pyplot as plt
from ipywidgets import interact, FloatSlider
from brimwork.drawing.pictures import picture
from brimwork.drawing.records import Line, Polygon
from brimwork import topics
formula = topics.find("{name}")
given = {given}
def draw(x):
    shown = picture(formula, dict(given, {over}=x / 1000), "{over}")
    figure, axes = plt.subplots(1, 2, figsize=(7.2, 3))
    for axis, view in zip(axes, shown.sheet.views):
        for record in view.records:
            if isinstance(record, Polygon):
                axis.fill(*zip(*record.points), alpha=0.3)
            elif isinstance(record, Line):
                axis.plot(*zip(*record.points))
        axis.set_xlim(view.window[0], view.window[2]); axis.set_ylim(view.window[1], view.window[3])
    plt.show()
interact(draw, x=FloatSlider(min={low}, max={high}, step={step}, value={value}, readout=False));"""

# From a real key event to the frame after the one in which the new picture stands; an image counts once it is decoded.
WATCH = """() => {
  window.times = []; window.start = null;
  addEventListener('keydown', () => { window.start = performance.now(); window.waiting = true; }, true);
  const painted = () => requestAnimationFrame(() => { const c = new MessageChannel(); c.port1.onmessage = () => {
      if (window.waiting) { window.waiting = false; window.times.push(performance.now() - window.start); } }; c.port2.postMessage(0); });
  new MutationObserver(changes => {
    for (const change of changes) for (const node of change.addedNodes) {
      if (!node.querySelectorAll || !window.waiting) continue;
      const image = node.matches('img') ? node : node.querySelector('img');
      if (image) image.decode().then(painted, painted);
      else if (node.matches('figure, svg') || node.querySelector('figure, svg[aria-label]')) painted();
    }
  }).observe(document.body, {childList: true, subtree: true});
}"""

PICTURES = (
    {"name": "flow over a level lip", "letters": '"H", "b", "C_d", H="12 mm", b="600 mm", C_d="0.62"', "given": {"H": 0.012, "b": 0.6, "C_d": 0.62}, "over": "H",
     "low": 6, "high": 20, "step": 0.5, "value": 12},
    {"name": "volume of a battered pit", "letters": '"h", "m_b", "L", L="1200 mm", W="900 mm", h="500 mm", m_b="0.35"',
     "given": {"h": 0.5, "m_b": 0.35, "L": 1.2, "W": 0.9}, "over": "h", "low": 100, "high": 900, "step": 10, "value": 500},
)  # fmt: skip


def quantile(times: list[float], share: float) -> float:
    return sorted(times)[min(int(share * len(times)), len(times) - 1)]


def slider(moves: int, swift: bool) -> list[dict]:
    """Slider to painted pixel, ms, for each picture: ours and `interact`, in turn, in one browser."""
    import lab
    import nbformat
    from playwright.sync_api import sync_playwright

    rows = []
    with tempfile.TemporaryDirectory() as folder, lab.server(Path(folder), swift) as address, sync_playwright() as playwright:
        for number, values in enumerate(PICTURES):
            for kind, code in (("ours", OURS), ("interact", INTERACT)):
                book = nbformat.v4.new_notebook(cells=[nbformat.v4.new_code_cell(code.format(**values))])
                book.metadata["kernelspec"] = {"name": "python3", "display_name": "Python 3", "language": "python"}
                nbformat.write(book, Path(folder) / f"{kind}{number}.ipynb")
        browser = playwright.chromium.launch(executable_path=lab.chromium(), args=lab.FLAGS)
        for number, values in enumerate(PICTURES):
            row = {"picture": values["name"], "swift": swift}
            for kind in ("ours", "interact"):
                row[kind] = moved(browser, address, f"{kind}{number}.ipynb", moves if kind == "ours" else max(moves // 3, 10))
            rows.append(row)
        browser.close()
    return rows


def moved(browser, address: str, name: str, moves: int) -> list[float]:
    import lab

    page = browser.new_page(viewport={"width": 1300, "height": 1000})
    lab.open_workbook(page, address, name)
    page.wait_for_timeout(1500)
    page.evaluate(WATCH)
    handle = page.locator(".noUi-handle").first
    handle.focus()
    for move in range(moves + 5):
        page.keyboard.press("ArrowRight" if move // 8 % 2 == 0 else "ArrowLeft")
        page.wait_for_function(f"() => window.times.length > {move}", timeout=10_000)
        page.wait_for_timeout(60)
    times = page.evaluate("() => window.times")[5:]
    page.close()
    return times


def importing() -> float:
    """`import brimwork` in a new process, seconds beyond an empty Python; the least of seven."""

    def least(code: str) -> float:
        times = []
        for _ in range(7):
            begun = time.perf_counter()
            subprocess.run([sys.executable, "-c", code], check=True)
            times.append(time.perf_counter() - begun)
        return min(times)

    return least("import brimwork, brimwork.topics; brimwork.topics.formulas()") - least("pass")


def each(call, count: int) -> float:
    """Seconds for one call, the least of seven rounds."""
    best = float("inf")
    for _ in range(7):
        begun = time.perf_counter()
        for _ in range(count):
            call()
        best = min(best, (time.perf_counter() - begun) / count)
    return best


def numbers() -> list[tuple[str, str]]:
    import math

    import numpy

    from brimwork import topics

    formula = topics.find("flow over a level lip")
    rows = [("import brimwork with all formulas, dimensions checked", f"{importing() * 1e3:.0f} ms")]
    rows.append(("one formula call, checked", f"{each(lambda: formula(b=0.6, H=0.012, C_d=0.62), 20_000) * 1e6:.2f} us"))

    def by_hand(b, H, C_d, g=9.80665):
        return 2 / 3 * C_d * b * math.sqrt(2 * g) * H ** (3 / 2)

    rows.append(("the same as a function by hand, unchecked", f"{each(lambda: by_hand(b=0.6, H=0.012, C_d=0.62), 20_000) * 1e6:.2f} us"))
    head = numpy.linspace(0.001, 0.03, 1_000_000)
    ours = each(lambda: formula.array(b=0.6, H=head, C_d=0.62), 3)
    bare = each(lambda: 2 / 3 * 0.62 * 0.6 * numpy.sqrt(2 * 9.80665) * head ** (3 / 2), 3)
    rows.append(("a million elements", f"{ours * 1e3:.1f} ms, {ours / bare:.2f} x the same expression in NumPy"))
    from brimwork.design import checks, inputs
    from brimwork.design.features import chain_of

    design = inputs.load(Path(__file__).parents[2] / "workbooks" / "designs" / "library-bowl.toml")
    rows.append(("a whole design with all its checks", f"{each(lambda: checks.findings(chain_of(design)), 20) * 1e3:.2f} ms"))
    return rows


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--moves", type=int, default=100)
    options.add_argument("--quick", action="store_true", help="leave the browser out")
    options.add_argument("--json", type=Path, help="write the slider times there")
    chosen = options.parse_args()
    for name, value in numbers():
        print(f"{name:<58} {value}")
    if chosen.quick:
        return
    rows = [row for swift in (True, False) for row in slider(chosen.moves, swift)]
    for row in rows:
        print(f"\nslider to painted pixel, {row['picture']}, {'as brimwork open runs it' if row['swift'] else 'stock server'} (ms, median / p95)")
        middle = {kind: (statistics.median(row[kind]), quantile(row[kind], 0.95)) for kind in ("ours", "interact")}
        for kind, (median, late) in middle.items():
            print(f"  {kind:<10} {median:6.1f} / {late:6.1f}   ({len(row[kind])} moves)")
        print(f"  ratio      {middle['interact'][0] / middle['ours'][0]:6.1f} / {middle['interact'][1] / middle['ours'][1]:6.1f}")
    if chosen.json:
        chosen.json.write_text(json.dumps(rows))


if __name__ == "__main__":
    main()
