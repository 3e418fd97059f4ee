"""Plays every item of the QTI 3.0 package of the question bank in a player that is not ours, in the real browser: right is scored 1, every known slip and a
nonsense number 0, and each shows its own sentence.

    npm install --prefix FOLDER @citolab/qti-components@7
    python tests/exchange/play.py FOLDER [SHOTS]

The player is Citolab's open web components, brought in by npm for this test only. Nothing is asked from outside; Chromium is needed.
"""

import io
import os
import sys
import zipfile
from pathlib import Path

from playwright.sync_api import sync_playwright

from brimwork.classroom import exchange, qti
from brimwork.exercise.choices import Choice, Sequence
from brimwork.units import convert

PAGE = """<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><title>play</title><script src="/player.js"></script></head>
<body><qti-item><item-container id="here"></item-container></qti-item></body></html>"""
FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"]
PLAY = """async ([xml, response]) => {
  const place = document.getElementById('here');
  place.itemXML = xml;
  for (let wait = 0; wait < 200; wait++) {
    await new Promise(go => setTimeout(go, 10));
    const item = place.shadowRoot?.querySelector('qti-assessment-item') || place.querySelector('qti-assessment-item') || document.querySelector('qti-assessment-item');
    if (item && item.updateResponseVariable && item.title === %s && item.variables?.length) {
      item.updateResponseVariable('RESPONSE', response);
      item.processResponse();
      await new Promise(go => setTimeout(go, 20));
      const value = name => item.variables.find(one => one.identifier === name)?.value;
      const shown = [...item.querySelectorAll('qti-modal-feedback')].filter(one => one.showStatus === 'on' || one.shadowRoot?.querySelector('dialog[open]'));
      return {score: value('SCORE'), feedback: value('FEEDBACK'), shown: shown.map(one => one.textContent.trim())};
    }
  }
  return null;
}"""


def responses(question) -> list[tuple[str, object, int]]:
    """What is answered, as the player takes it, with the score that it must earn: worked from the question, not from the item."""
    if isinstance(question, Choice):
        return [(f"choice {place + 1}", f"CHOICE-{place + 1}", int(place == question.right)) for place in range(len(question.options))]
    if isinstance(question, Sequence):
        right = [f"STEP-{place + 1}" for place in question.right]
        return [("in order", right, 1), ("turned round", right[::-1], 0)]
    band = question.band(question.answer)
    typed = [
        ("right", question.answer, 1),
        ("inside", question.answer + 0.9 * band, 1),
        ("outside", question.answer + 1.1 * band, 0),
        ("nonsense", question.answer * 37.1 + band, 0),
    ]
    typed += [(f"slip {place}", slip.number, 0) for place, slip in enumerate(question.slips, start=1)]
    return [(name, f"{convert(value, question.unit):.9g}", score) for name, value, score in typed]


def main() -> int:
    player = Path(sys.argv[1]) / "node_modules/@citolab/qti-components/cdn/index.global.js"
    shots = Path(sys.argv[2]) if len(sys.argv) > 2 else None
    questions = exchange.chosen([], 1)
    package = zipfile.ZipFile(io.BytesIO(qti.package(questions, qti.V30)))
    faults = played = 0
    with sync_playwright() as started:
        browser = started.chromium.launch(executable_path="/usr/bin/chromium", args=FLAGS)
        page = browser.new_page()
        asked = []
        page.route("**/*", lambda route: _answer(route, player, package, asked))
        page.goto("http://player.test/")
        for question in questions:
            xml = package.read(f"items/{qti.identifier(question)}.xml").decode()
            for name, response, score in responses(question):
                told = page.evaluate(PLAY % repr(question.code), [xml, response])
                played += 1
                if told is None or float(told["score"] or 0) != score or not told["feedback"] or not any(told["shown"]):
                    faults += 1
                    print(f"{question.code} {name} ({response}): wanted {score}, got {told}")
            if shots and question.code in ("T04.1", "T04.8", "T13.6"):
                page.screenshot(path=str(shots / f"{question.code}.png"))
        browser.close()
    outside = [url for url in asked if "player.test" not in url]
    print(
        f"{len(questions)} items played with {played} answers: {faults or 'no'} fault{'s' * (faults != 1)}; requests to the outside: {len(outside)} {outside[:3]}"
    )
    return 1 if faults or outside else 0


def _answer(route, player: Path, package: zipfile.ZipFile, asked: list[str]) -> None:
    url = route.request.url
    asked.append(url)
    if url.endswith("/player.js"):
        route.fulfill(body=player.read_text(encoding="utf-8"), content_type="text/javascript")
    elif url.endswith(".svg") and f"items/{os.path.basename(url)}" in package.namelist():
        route.fulfill(body=package.read(f"items/{os.path.basename(url)}"), content_type="image/svg+xml")
    else:
        route.fulfill(body=PAGE if url.endswith("player.test/") else "", content_type="text/html")


if __name__ == "__main__":
    sys.exit(main())
