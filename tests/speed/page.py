"""How long the page of a design takes from Enter in a box to the painted drawing, in a real browser: python tests/speed/page.py (needs Chromium)."""

from __future__ import annotations

import statistics
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "browser"))

import lab
from playwright.sync_api import sync_playwright

TIMES = 60
# A box is filled and Enter pressed; the time runs until the frame after the one in which the page has put in what came.
_EDITED = """async ([label, values]) => { const taken = [], page = document.querySelector('.bw');
  const box = [...document.querySelectorAll('.bw-row')].find(row => row.querySelector('label').textContent === label).querySelector('input');
  for (const value of values) { const before = page.dataset.painted, start = performance.now(); box.focus(); box.value = value;
    box.dispatchEvent(new KeyboardEvent('keydown', {key: 'Enter', bubbles: true}));
    await new Promise(done => { const look = () => page.dataset.painted === before ? setTimeout(look, 1) : requestAnimationFrame(() => requestAnimationFrame(done)); look(); });
    taken.push(performance.now() - start); await new Promise(done => setTimeout(done, 150)); }
  return taken; }"""
EXAMPLES = {"library bowl": ("Across the rim", 700), "garden cascade": ("Width of the steps", 450), "terrace blade": ("Width of the lip", 800)}


def measured(page, name: str, label: str, first: int) -> str:
    page.get_by_role("button", name="My designs").click() if page.get_by_role("button", name="My designs").is_visible() else None
    page.get_by_role("button", name=name).click()
    page.get_by_role("textbox", name=label, exact=True).wait_for()
    taken = sorted(page.evaluate(_EDITED, [label, [f"{first + 3 * number} mm" for number in range(TIMES)]])[2:])
    return f"{name}: edit to painted, median {statistics.median(taken):.0f} ms, p95 {taken[int(0.95 * len(taken))]:.0f} ms, most {taken[-1]:.0f} ms"


def main() -> None:
    with tempfile.TemporaryDirectory() as folder, lab.server(Path(folder)) as address, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=lab.chromium(), args=lab.FLAGS)
        page = browser.new_page(viewport={"width": 1440, "height": 900}, extra_http_headers=lab.AUTHORIZED)
        page.goto(f"{address.removesuffix('lab')}brimwork/page/design")
        page.get_by_text("Begin with your own").wait_for()
        for name, (label, first) in EXAMPLES.items():
            print(measured(page, name, label, first))
        browser.close()


if __name__ == "__main__":
    main()
