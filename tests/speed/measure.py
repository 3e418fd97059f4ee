"""How fast Brimwork is, as ratios within one run: python tests/speed/measure.py [--moves 100] [--quick] [--stock]

Prints a table: `import brimwork`, one formula call, arrays against the same expression written in NumPy by hand, what the kernel does for each
live picture of the workbooks; then, for the heaviest of these of each kind, slider to painted pixel in a real browser: on the page without code, in
JupyterLab, and with `interact` and a new matplotlib figure of the same content, over the server that `brimwork open` runs, and with --stock over one
without what is ours. Steps are moves by the arrow keys, eight there and eight back; jumps are clicks far along the track.
"""

from __future__ import annotations

import argparse
import ast
import json
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from typing import NamedTuple

sys.path.insert(0, str(Path(__file__).parents[1] / "browser"))

INTERACT = """%matplotlib inline
import matplotlib.pyplot as plt
from ipywidgets import FloatSlider, interact
from brimwork.drawing.records import Line, Mark, Polygon, Text
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook import live
made = []
live.Explorer.show = lambda explorer, after="": made.append(explorer)
{call}
explorer = made[0]
control = explorer.controls[0]
slider = control.slider
def draw(x):
    control.value = QUANTITIES["{letter}"].read(f"{{x:.6g}} {unit}")
    shown = explorer.figure().picture
    figure, all_axes = plt.subplots(1, len(shown.sheet.views), figsize=(7.2, 3), squeeze=False)
    for axes, view in zip(all_axes[0], shown.sheet.views):
        for record in view.records:
            if isinstance(record, Polygon):
                axes.fill(*zip(*record.points), alpha=0.3)
            elif isinstance(record, Line):
                axes.plot(*zip(*record.points))
            elif isinstance(record, Mark):
                axes.plot(*record.at, "o")
            elif isinstance(record, Text):
                axes.text(*record.at, record.text)
        axes.set_xlim(view.window[0], view.window[2]); axes.set_ylim(view.window[1], view.window[3])
    plt.show()
interact(draw, x=FloatSlider(min=slider.min, max=slider.max, step=slider.step, value=slider.value, readout=False));"""

# From a real key or pointer event to the frame after the one in which the new picture stands; an image counts once it is decoded.
WATCH = """() => {
  window.times = []; window.start = null;
  for (const event of ['keydown', 'pointerdown']) addEventListener(event, () => { window.start = performance.now(); window.waiting = true; }, true);
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

STANDS = "one => one.value ?? one.getAttribute('aria-valuenow')"
JUMPS = [0.1, 0.9, 0.25, 0.7, 0.5, 0.05, 0.8, 0.35, 0.62, 0.18, 0.95, 0.43, 0.75, 0.02, 0.57, 0.3, 0.85, 0.22, 0.66, 0.13]  # shares of the track
LIVE = ("explore", "start_and_stop", "follow_days")  # calls of workbooks that make a live picture


class Live(NamedTuple):
    """A call of a workbook that makes a live picture: where it stands, what it waits for, and its code without that wait."""

    book: str
    cell: int
    after: str
    code: str

    @property
    def kind(self) -> str:
        return self.code.split("\n")[1].partition("(")[0]


def live_calls() -> list[Live]:
    """Every call in a workbook that makes a live picture."""
    found = []
    for path in sorted((Path(__file__).parents[2] / "workbooks").glob("*.ipynb")):
        for number, cell in enumerate(json.loads(path.read_text(encoding="utf-8"))["cells"]):
            tree = ast.parse("".join(cell["source"])) if cell["cell_type"] == "code" else ast.Module([], [])
            for call in (node for node in ast.walk(tree) if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in LIVE):
                after = next((ast.literal_eval(given.value) for given in call.keywords if given.arg == "after"), "")
                call.keywords = [given for given in call.keywords if given.arg != "after"]
                found.append(Live(path.stem, number, after, f"from brimwork.notebook import {ast.unparse(call.func)}\n{ast.unparse(call)}"))
    return found


def explorer_of(code: str):
    """The explorer that a call shows, without showing it."""
    from brimwork.notebook import live

    made, shown = [], live.Explorer.show
    live.Explorer.show = lambda explorer, after="": made.append(explorer)
    try:
        exec(code, {})
    finally:
        live.Explorer.show = shown
    return made[0]


def kernel_side(code: str, rounds: int = 15) -> tuple[float, int, int]:
    """Processor time (s) from values to the text of the page, its bytes, and the records of the picture."""
    explorer = explorer_of(code)
    figure, least = explorer.figure(explorer.key), float("inf")
    for _ in range(rounds):
        begun = time.process_time()
        explorer.figure(explorer.key).html()
        least = min(least, time.process_time() - begun)
    return least, len(figure.html()), sum(len(view.records) for view in figure.picture.sheet.views)


def heaviest() -> list[Live]:
    """The live picture of each kind, of all workbooks, that takes the longest to draw."""
    longest: dict[str, tuple[float, Live]] = {}
    for live in live_calls():
        taken = kernel_side(live.code)[0]
        if taken > longest.get(live.kind, (0.0, live))[0]:
            longest[live.kind] = taken, live
    return [live for _, live in sorted(longest.values(), reverse=True)]


def quantile(times: list[float], share: float) -> float:
    return sorted(times)[min(int(share * len(times)), len(times) - 1)]


def slider(moves: int, swift: bool, most: int) -> list[dict]:
    """Slider to painted pixel, ms, for each picture: on the page without code, in JupyterLab, and `interact`, in turn, in one browser."""
    import lab
    import nbformat
    from playwright.sync_api import sync_playwright

    from brimwork.exercise import answers

    rows, pictures = [], heaviest()[:most]
    with tempfile.TemporaryDirectory() as folder, lab.server(Path(folder), swift) as address, sync_playwright() as playwright:
        for number, live in enumerate(pictures):
            control = explorer_of(live.code).controls[0]
            beside = INTERACT.format(call=live.code, letter=control.row.key, unit=control.row.here)
            for kind, code in (("ours", live.code), ("interact", beside)):
                book = nbformat.v4.new_notebook(cells=[nbformat.v4.new_code_cell(code)])
                book.metadata["kernelspec"] = {"name": "python3", "display_name": "Python 3", "language": "python"}
                nbformat.write(book, Path(folder) / f"{kind}{number}.ipynb")
            if live.after:
                answers.note(Path(folder) / "answers.json", live.after, "kept", "prediction")
        browser = playwright.chromium.launch(executable_path=lab.chromium(), args=lab.FLAGS)
        for number, live in enumerate(pictures):
            seconds, size, records = kernel_side(live.code)
            print(f"\nslider to painted pixel, {'as brimwork open runs it' if swift else 'stock server'} (ms, median / p95): {live.code.split(chr(10))[1]}")
            print(f"  of this in the kernel {seconds * 1e3:.1f} ms of processor time, for {records} records and {size} bytes")
            keys = keys_of(live.code)
            row = {"picture": live.code.split("\n")[1], "swift": swift}
            if swift:
                row["page"], row["page, jumps"] = moved(browser, live, f"{address.removesuffix('lab')}brimwork/page/{live.book}", moves, keys, len(JUMPS))
                told(row, "page", "page, jumps")
            row["lab"], row["lab, jumps"] = moved(browser, None, f"{address} ours{number}.ipynb", moves, keys, len(JUMPS))
            row["interact"], _ = moved(browser, None, f"{address} interact{number}.ipynb", max(moves // 4, 10), keys, 0)
            told(row, "lab", "lab, jumps", "interact")
            rows.append(row)
        browser.close()
    return rows


def told(row: dict, *kinds: str) -> None:
    for kind in kinds:
        if row[kind]:
            print(f"  {kind:<16} {statistics.median(row[kind]):6.1f} / {quantile(row[kind], 0.95):6.1f}   ({len(row[kind])} moves)", flush=True)


def keys_of(code: str) -> tuple[str, str]:
    """The arrow key that leads to where the slider has more room, and the one back."""
    slider = explorer_of(code).controls[0].slider
    return ("ArrowLeft", "ArrowRight") if slider.value > (slider.min + slider.max) / 2 else ("ArrowRight", "ArrowLeft")


def moved(browser, live: Live | None, where: str, moves: int, keys: tuple[str, str], jumps: int) -> tuple[list[float], list[float]]:
    """Times (ms) from event to paint: of steps by key, eight there and eight back, over and over, and of jumps by pointer. On a page, or in JupyterLab."""
    import lab

    page = browser.new_page(viewport={"width": 1300, "height": 1000}, extra_http_headers=lab.AUTHORIZED)
    if live:
        page.goto(where)
        page.wait_for_selector("body[data-alive]")
        handle = page.locator(f"[data-cell='{live.cell}']").get_by_role("slider").first
    else:
        lab.open_workbook(page, *where.split(" "))
        handle = page.get_by_role("slider").first
    page.wait_for_timeout(2500)
    page.evaluate(WATCH)
    handle.focus()
    handle.scroll_into_view_if_needed()
    track = handle.bounding_box()
    acts = [lambda move=move: page.keyboard.press(keys[move // 8 % 2]) for move in range(moves + 5)]
    acts += [lambda share=share: page.mouse.click(track["x"] + share * track["width"], track["y"] + track["height"] / 2) for share in JUMPS[:jumps]]
    times: list[float | None] = []
    for act in acts:
        stood, done = handle.evaluate(STANDS), page.evaluate("() => window.times.length")
        act()
        if handle.evaluate(STANDS) == stood:  # at the end of its track, or where it stood
            page.evaluate("() => { window.waiting = false; }")
            times.append(None)
            continue
        page.wait_for_function(f"() => window.times.length > {done}", timeout=10_000)
        times.append(page.evaluate("() => window.times.at(-1)"))
        page.wait_for_timeout(60)
    page.close()
    steps, far = ([time for time in part if time is not None] for part in (times[5 : moves + 5], times[moves + 5 :]))
    return steps, far


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
    from brimwork.design.follows.features import chain_of
    from brimwork.design.judged import checks
    from brimwork.design.typed import file

    design = file.load_design(Path(__file__).parents[2] / "workbooks" / "designs" / "library-bowl.toml")
    rows.append(("a whole design with all its checks", f"{each(lambda: checks.findings(chain_of(design)), 20) * 1e3:.2f} ms"))
    return rows


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--moves", type=int, default=100)
    options.add_argument("--quick", action="store_true", help="leave the browser out")
    options.add_argument("--stock", action="store_true", help="also over a server without what is ours")
    options.add_argument("--pictures", type=int, default=9, help="no more than so many, the heaviest first")
    options.add_argument("--slider", action="store_true", help="nothing but the sliders")
    options.add_argument("--json", type=Path, help="write the slider times there")
    chosen = options.parse_args()
    if not chosen.slider:
        tabled()
    if chosen.quick:
        return
    rows = [row for swift in ((True, False) if chosen.stock else (True,)) for row in slider(chosen.moves, swift, chosen.pictures)]
    if chosen.json:
        chosen.json.write_text(json.dumps(rows))


def tabled() -> None:
    for name, value in numbers():
        print(f"{name:<58} {value}")
    print("\nthe kernel's part of a slider's step, heaviest first (ms, bytes, records)")
    for (seconds, size, records), call in sorted(((kernel_side(code), code.split("\n")[1]) for code in {live.code for live in live_calls()}), reverse=True)[
        :10
    ]:
        print(f"  {seconds * 1e3:6.2f} {size:7d} {records:4d}  {call[:100]}")


if __name__ == "__main__":
    main()
