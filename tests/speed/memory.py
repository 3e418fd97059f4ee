"""What long use leaves behind: python tests/speed/memory.py [--pages overflow,design] [--moves 3000 --changes 500 --loads 30 --prints 20] (needs Chromium).

For each page without code: the memory of its kernel, the heap of its script, nodes of the page and open comms, when it is alive, after a tenth of its use,
and after all of it. Nothing may grow from the second to the third by more than GROWS; the command ends with 1 where something does.
"""

from __future__ import annotations

import argparse
import json
import os
import sys
import tempfile
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

sys.path.insert(0, str(Path(__file__).parents[1] / "browser"))

import lab
from playwright.sync_api import Page, sync_playwright

from brimwork.exercise import answers

GROWS = {"kernel MB": 8.0, "heap MB": 2.0, "nodes": 150.0, "comms": 0.0}  # what may come and go with what is shown just then
EXAMPLES = ("library bowl", "garden cascade")
PREDICTED = {"overflow": "T04.8", "pipes": "T05.7"}  # the pictures of these wait for a prediction
# A slider is moved step by step up and down its track, as fast as a hand moves it.
_MOVED = """async ([slider, moves]) => { for (let move = 0; move < moves; move++) {
  const last = Math.round((slider.max - slider.min) / slider.step), at = Math.abs(((move + 3) % (2 * last)) - last);
  slider.valueAsNumber = Number(slider.min) + at * slider.step; slider.dispatchEvent(new Event('input')); await new Promise(done => setTimeout(done, 20)); }
  await new Promise(done => setTimeout(done, 1500)); }"""
_CHANGED = """async ([label, changes]) => { const page = document.querySelector('.bw');
  for (let change = 0; change < changes; change++) { const before = page.dataset.painted;
    const box = [...document.querySelectorAll('.bw-row')].find(row => row.querySelector('label').textContent === label).querySelector('input');
    box.focus(); box.value = `${600 + (change * 7) % 300} mm`; box.dispatchEvent(new KeyboardEvent('keydown', {key: 'Enter', bubbles: true}));
    while (page.dataset.painted === before) await new Promise(done => setTimeout(done, 4)); } }"""


class Use(NamedTuple):
    """Something that is done over and over on a page: its name, how often, and how it is done so many times."""

    name: str
    times: int
    act: Callable[[Page, int], None]


def moved(page: Page, times: int) -> None:
    page.evaluate(_MOVED, [page.get_by_role("slider").first.element_handle(), times])


def changed(page: Page, times: int) -> None:
    page.evaluate(_CHANGED, ["Across the rim", times])


def loaded(page: Page, times: int) -> None:
    for time in range(times):
        name = EXAMPLES[(times - time - 1) % 2]
        page.get_by_role("button", name="My designs").click()
        page.get_by_role("button", name=name).first.click()
        page.locator(".bw-head h2", has_text=name.capitalize()).wait_for()


def printed(page: Page, times: int) -> None:
    for _ in range(times):
        before = page.locator(".bw-head .bw-link").get_attribute("href") if page.locator(".bw-head .bw-link").count() else ""
        page.get_by_role("button", name="Print", exact=True).click()
        page.wait_for_function("before => (document.querySelector('.bw-head .bw-link')?.getAttribute('href') ?? '') !== before", arg=before)


def kernels(folder: Path) -> dict[int, int]:
    """The processor time so far of each kernel that works in a folder, by its process."""
    found = {}
    for process in Path("/proc").glob("[0-9]*"):
        try:
            if os.readlink(process / "cwd") == str(folder) and b"ipykernel_launcher" in (process / "cmdline").read_bytes():
                found[int(process.name)] = sum(map(int, (process / "stat").read_text().rpartition(")")[2].split()[11:13]))
        except OSError:
            continue
    return found


class Watched:
    """A page whose comms are counted as they are told along its line."""

    def __init__(self, browser, start: str, folder: Path, name: str):
        self.folder, self.comms = folder, set[str]()
        self.page = browser.new_page(viewport={"width": 1300, "height": 1000}, extra_http_headers=lab.AUTHORIZED)
        self.page.set_default_timeout(60_000)
        self.page.on("websocket", lambda line: (line.on("framereceived", self._heard), line.on("framesent", self._heard)))
        self.page.goto(f"{start}page/{name}")
        self.page.wait_for_selector("body[data-alive]")
        self.page.wait_for_timeout(1500)
        self.session = self.page.context.new_cdp_session(self.page)
        self.session.send("Performance.enable")
        self.kernel = 0

    def _heard(self, text: str | bytes) -> None:
        message = json.loads(text)
        if message.get("type") == "comm_open":
            self.comms.add(message["content"]["comm_id"])
        elif message.get("type") == "comm_close":
            self.comms.discard(message["content"]["comm_id"])

    def works(self, use: Callable[[], None]) -> None:
        """Find the kernel that works for this page: the one that is busy meanwhile."""
        before = kernels(self.folder)
        use()
        self.kernel = max(after := kernels(self.folder), key=lambda one: after[one] - before.get(one, 0))

    def held(self) -> dict[str, float]:
        self.page.wait_for_timeout(600)
        for _ in range(2):
            self.session.send("HeapProfiler.collectGarbage")
        told = {one["name"]: one["value"] for one in self.session.send("Performance.getMetrics")["metrics"]}
        status = Path(f"/proc/{self.kernel}/status").read_text() if self.kernel else "VmRSS: 0 kB"
        resident = next(int(line.split()[1]) for line in status.splitlines() if line.startswith("VmRSS"))
        return {"kernel MB": resident / 1024, "heap MB": told["JSHeapUsedSize"] / 2**20, "nodes": told["Nodes"], "comms": float(len(self.comms))}


def used(watched: Watched, page: str, uses: list[Use]) -> list[str]:
    """Each use of a page, printed as one row; what has grown."""
    grown = []
    for use in uses:
        watched.works(lambda use=use: use.act(watched.page, max(use.times // 10, 2)))
        first = watched.held()
        use.act(watched.page, use.times - max(use.times // 10, 2))
        last = watched.held()
        print(f"{page:<14}{use.times:>5} {use.name:<9}" + "".join(f"{first[name]:>12.1f} > {last[name]:<10.1f}" for name in GROWS), flush=True)
        grown += [f"{page}, {use.name}: {name} {first[name]:.1f} to {last[name]:.1f}" for name, most in GROWS.items() if last[name] - first[name] > most]
    return grown


def main() -> None:
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--pages", default="overflow,pipes,reservoir,design,quick-check")
    for name, usual in (("moves", 3000), ("changes", 500), ("loads", 30), ("prints", 20)):
        options.add_argument(f"--{name}", type=int, default=usual)
    chosen = options.parse_args()
    begun = [Use("loads", chosen.loads, loaded), Use("changes", chosen.changes, changed), Use("prints", chosen.prints, printed)]
    grown = []
    with tempfile.TemporaryDirectory() as name, lab.server(Path(name)) as address, sync_playwright() as playwright:
        folder, start = Path(name).resolve(), f"{address.removesuffix('lab')}brimwork/"
        for code in PREDICTED.values():
            answers.note(folder / "answers.json", code, "kept", "prediction")
        browser = playwright.chromium.launch(executable_path=lab.chromium(), args=[*lab.FLAGS, "--enable-precise-memory-info"])
        print(f"{'page':<14}{'use':<15}" + "".join(f"{one:>25}" for one in GROWS) + "   (after a tenth of the use > after all of it)")
        for page in chosen.pages.split(","):
            watched = Watched(browser, start, folder, page)
            uses = begun if page in ("design", "quick-check") else [Use("moves", chosen.moves, moved)]
            if uses is begun and watched.page.get_by_text("Or look at an example").is_visible():
                watched.page.get_by_role("button", name=EXAMPLES[0]).first.click()
            grown += used(watched, page, [use for use in uses if use.times])
            watched.page.close()
        browser.close()
    print("\n".join(["grown:", *grown]) if grown else "nothing has grown")
    sys.exit(bool(grown))


if __name__ == "__main__":
    main()
