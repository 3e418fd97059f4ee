"""A weak student goes through a workbook in the real browser, from its first section to its last, and comes back to it another time.

Each box gets one wrong and one right answer, each button is pressed, a wrong prediction is kept, sentences are written, sliders go to both ends. What is right
comes from the bank. What must not happen is noted, section by section: a right answer refused, a wrong one taken, an answer that is lost when one comes back,
words that run into others or out of the page, an error.

    python tests/browser/walk.py [NAME ...] [--look FOLDER] [--units US] [--wide 390]    (default: every lesson, and the capstone)

With --look the folder gets a picture of each section, answered, and contact sheets of them.
"""

from __future__ import annotations

import argparse
import re
import sys
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any, NamedTuple

if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).parent))

import lab

from brimwork import system, topics, units
from brimwork.exercise import bank, personal
from brimwork.exercise.blanks import blank
from brimwork.exercise.choices import Choice, Sequence, Telling
from brimwork.exercise.diagnosis import diagnose
from brimwork.exercise.pieces import worked
from brimwork.exercise.question import Question, ask
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook import books, contents, fading, lesson
from brimwork.notebook.boxes import SECTIONS
from brimwork.notebook.carrying import label_of
from brimwork.notebook.own_numbers import _on_the_way
from brimwork.notebook.settings import take_settings

LEARNER = "A07"
ALIVE = "body[data-alive]"
SOON, PRINTED = 90_000, 180_000  # ms that the page of a machine with much to do may take to answer, and to print
_CAPTION_APART = "(cell, was) => cell.querySelector('figcaption').innerText !== was"

# Pairs of words, boxes and buttons that lie over each other, and what is cut off or leaves the page.
_LAID_BADLY = """cell => { const found = [], seen = [...cell.querySelectorAll('p, label, button, input, select, textarea, figcaption, summary, li, td, th, .widget-label, img, svg[role=img]')]
  .filter(one => one.checkVisibility() && one.getBoundingClientRect().width > 1).map(one => [one, one.getBoundingClientRect()]);
  const says = one => (one.innerText || one.value || one.alt || one.tagName).trim().slice(0, 60);
  for (let a = 0; a < seen.length; a++) for (let b = a + 1; b < seen.length; b++) { const [x, r] = seen[a], [y, s] = seen[b];
    if (x.contains(y) || y.contains(x)) continue;
    if (Math.min(r.right, s.right) - Math.max(r.left, s.left) > 4 && Math.min(r.bottom, s.bottom) - Math.max(r.top, s.top) > 4) found.push(`'${says(x)}' lies over '${says(y)}'`); }
  for (const [one, r] of seen) { if (r.right > innerWidth + 1 && !(innerWidth < 640 && one.closest('figure, table'))) found.push(`'${says(one)}' leaves the page`);
    if (/^(BUTTON|LABEL|P)$/.test(one.tagName) && (one.scrollWidth > one.clientWidth + 2 || one.scrollHeight > one.clientHeight + 6) && getComputedStyle(one).overflow !== 'visible') found.push(`'${says(one)}' is cut off`); }
  return found; }"""
# On a narrow page pictures and formulas keep their size and are moved sideways.
_SCROLLED = """cell => innerWidth < 640 ? [] : [...cell.querySelectorAll('table, .katex-display, figure, figure > *')].filter(one => one.checkVisibility() &&
  (one.getBoundingClientRect().right > innerWidth + 1 || one.scrollWidth > one.clientWidth + 2 || one.getBoundingClientRect().width > cell.clientWidth + 2))
  .map(one => `${one.tagName.toLowerCase()} ${one.innerText?.slice(0, 50) ?? ''} is wider than the page`)"""
_KEPT = """cell => [...cell.querySelectorAll('input, select, textarea')].filter(one => one.checkVisibility() && one.type !== 'range').map(one =>
  one.type === 'radio' || one.type === 'checkbox' ? `${one.parentElement.innerText.trim().slice(0, 40)}: ${one.checked}` :
  one.tagName === 'SELECT' ? one.selectedOptions[0]?.text ?? '' : one.value)"""


class Answers(NamedTuple):
    """A wrong and a right answer to a question with a number, and what the page says to the wrong one."""

    wrong: str
    right: str
    said: str


def answers_to(posed: Question) -> Answers:
    """The number of its first slip, or one that is half as much again; and the right one, both as a learner types them."""
    right = posed.typed(posed.answer, 4)
    tries = [posed.typed(slip.number, 4) for slip in posed.slips] + [posed.typed(posed.answer * 1.5, 4), posed.typed(posed.answer + 7, 4)]
    wrong = next(text for text in tries if not diagnose(posed, text).right)
    return Answers(wrong, right, diagnose(posed, wrong).text)


def another(value: str, example: str) -> str:
    """A value that can be, and that does not stand in the box yet: the example, or a tenth less."""
    read = units.parse(example)
    return example if example != value else f"{read.number * 0.9:.4g} {read.unit}".strip()


class Walk:
    """One workbook, open as a page without code over `folder`; what is met is kept in `met`, each with the section it was met in."""

    def __init__(self, page, folder: Path, start: str, name: str):
        self.page, self.folder, self.start, self.name = page, folder, start, name
        self.met: list[str] = []
        self.section, self.told, self.pressed = "0", 0, 0
        self.shots: list[Path] = []
        page.on("pageerror", lambda error: self.note(f"the page's script: {error}"))

    def note(self, what: str) -> None:
        self.met.append(f"{self.name}, section {self.section}: {' '.join(what.split())}")

    def open(self) -> None:
        self.page.goto(f"{self.start}page/{self.name}")
        self.page.wait_for_selector(ALIVE)

    # --- a cell, and what stands in it

    def cells(self) -> Iterator[tuple[Any, contents.Call]]:
        """Every call of the workbook with the place where it shows something."""
        calls, sources = iter(contents.calls(self.name)), books.books()[self.name].cells
        for place, cell in enumerate(sources):
            for line in re.findall(r"^(\w+)\(", cell.source, re.MULTILINE) if cell.runs else ():
                call = next(calls)
                assert call.name == line
                yield self.page.locator(f'[data-cell="{place}"]'), call

    def says(self, cell, words: str, what: str, within: int = 0) -> bool:
        """Whether the page comes to say this soon, or within so many ms."""
        try:
            cell.get_by_text(words, exact=False).locator("visible=true").first.wait_for(timeout=within or SOON)
            return True
        except Exception:
            self.note(
                f"{what}: the page never says '{words[:90]}'; it says '{' / '.join(cell.get_by_role('status').or_(cell.get_by_role('alert')).all_inner_texts())[-300:]}'"
            )
            return False

    def press(self, cell, name: str, nth: int = 0) -> None:
        try:
            cell.get_by_role("button", name=name, exact=True).nth(nth).click(timeout=SOON)
            self.pressed += 1
        except Exception:
            self.note(f"the button '{name}' cannot be pressed")

    def type(self, box, text: str) -> None:
        try:
            box.fill(text, timeout=SOON)
            box.press("Enter")
        except Exception:
            self.note(f"no box takes '{text}'")

    def told_apart(self, cell, box, posed: Question, what: str) -> None:
        """A wrong and then a right answer into a box, and what must be said to each."""
        told = answers_to(posed)
        rights = cell.get_by_text("Right:")
        self.type(box, told.wrong)
        if not self.says(cell, told.said.split("  ")[0][:70].strip(), f"{what}, wrong answer {told.wrong}"):
            return
        before = rights.count()  # of the other questions of this cell: this one stands at a wrong answer
        self.type(box, told.right)
        try:
            rights.nth(before).wait_for(timeout=SOON)
        except Exception:
            self.note(f"{what}: the right answer {told.right} is not taken: {' / '.join(cell.get_by_role('status').all_inner_texts())[-300:]}")

    # --- questions

    def ask(self, cell, posed, number: str = "", help_too: bool = True) -> None:
        {Question: self.numeric, Choice: self.choice, Sequence: self.order, Telling: self.sentence}[type(posed)](cell, posed, number, help_too)

    def numeric(self, cell, posed: Question, number: str, help_too: bool) -> None:
        self.says(cell, " ".join(posed.text.split())[:60], "the question")
        name = f"Your answer{number}{'' if posed.label or not posed.unit else ', with its unit'}"
        box = cell.get_by_role("textbox", name=name, exact=True)
        self.type(box, "banana")
        self.says(cell, "I could not read that", "a word in place of a number")
        if help_too:
            self.press(cell, f"Hint{number}")
            self.says(cell, "Hint 1 of", "the first hint")
        self.told_apart(cell, box, posed, f"question {posed.code}")
        if help_too and posed.varies:
            self.press(cell, f"New numbers{number}")
            again = bank.pose(posed.code, posed.seed + 1)
            if self.says(cell, " ".join(again.text.split())[:200], "fresh numbers"):
                self.told_apart(cell, box, again, f"question {posed.code} on fresh numbers")

    def choice(self, cell, posed: Choice, number: str, help_too: bool) -> None:
        wrong = (posed.right + 1) % len(posed.options)
        self.press(cell, f"Check{number}")
        self.says(cell, "Choose one first", "nothing chosen")
        for place in (wrong, posed.right):
            found = diagnose(posed, str(place + 1))
            cell.get_by_role("radio", name=posed.options[place], exact=True).first.check()
            self.press(cell, f"Check{number}")
            self.says(cell, found.text[:70], f"choice {posed.code}, {'right' if found.right else 'wrong'}")
            if help_too and not found.right:
                self.press(cell, f"Hint{number}")
                self.says(cell, "Hint 1 of", "the first hint")
        if posed.mended:
            box = cell.get_by_role("textbox", name=f"Mended: the {posed.mended.name}, with its unit", exact=True)
            self.told_apart(cell, box, posed.mended, f"{posed.code} mended")

    def pick(self, chosen, begins: str) -> None:
        """Choose from a list by the beginning of a line, whose spaces do not break."""
        lines = [one.replace("\N{NO-BREAK SPACE}", " ") for one in chosen.locator("option").all_text_contents()]
        place = next((place for place, one in enumerate(lines) if one.startswith(begins)), None)
        if place is None:
            return self.note(f"'{begins}' is not in the list")
        chosen.select_option(index=place)

    def order(self, cell, posed: Sequence, number: str, help_too: bool, skip: int = 0) -> None:
        """`skip` lists stand before those of the question."""
        self.press(cell, f"Check{number}")
        self.says(cell, "Give every step one place", "no order yet")
        for order in (posed.right[::-1], posed.right):
            for place, item in enumerate(order):
                self.pick(cell.locator("select").nth(place + skip), posed.items[item])
            self.press(cell, f"Check{number}")
            found = diagnose(posed, " ".join(str(item + 1) for item in order))
            self.says(cell, found.message[:60], f"order {posed.code}")

    def sentence(self, cell, posed: Telling, number: str, help_too: bool) -> None:
        self.press(cell, "Keep and compare")
        self.says(cell, "Nothing is written yet", "an empty sentence")
        cell.get_by_role("textbox", name="Your sentence").fill("Because it grows faster than I thought & so on.")
        self.press(cell, "Keep and compare")
        self.says(cell, "A model sentence", "a sentence")
        cell.get_by_role("checkbox").nth(len(posed.points) - 1).wait_for()
        for box in cell.get_by_role("checkbox").all():
            box.check()
        self.says(cell, "All its points are in yours", "all points")
        self.press(cell, "Hint")

    # --- sections

    def recall(self, cell, call) -> None:
        names, seed = lesson._recalled(call.words, str(call.named.get("before", "")), 0, str(self.folder / "answers.json"))
        for number, name in enumerate(names, start=1):
            self.ask(cell, bank.pose(name, seed), f" {number}")

    def predict(self, cell, call) -> None:
        posed = bank.pose(call.words[0], 1)
        self.press(cell, "Keep my prediction")
        self.says(cell, "Choose one first", "nothing chosen")
        cell.get_by_role("radio", name=posed.options[(posed.right + 1) % len(posed.options)], exact=True).check()
        self.press(cell, "Keep my prediction")
        self.says(cell, "Say why first", "no reason")
        self.type(cell.get_by_role("textbox", name="Because"), "it looks like that")
        self.press(cell, "Keep my prediction")
        self.says(cell, "You predict:", "a prediction")

    def look_back(self, cell, call) -> None:
        posed = bank.pose(call.words[0], 1)
        self.press(cell, "Compare with my prediction")
        self.says(cell, f"It is so: {posed.options[posed.right]}"[:60], "after a wrong prediction")

    def explore(self, cell, call) -> None:
        """Each box refuses a word, and takes another value; each slider goes to both ends; both buttons save."""
        letters = call.words if call.name in ("start_and_stop", "follow_days") else call.words[1:] or topics.find(call.words[0]).inputs[: fading.MOST_BLANKS]
        caption = cell.locator("figcaption")
        try:
            caption.wait_for(timeout=SOON)
        except Exception:
            return self.note(f"{call.words}: no picture appears")
        for letter in letters:
            box = cell.get_by_role("textbox", name=f"{letter}, {QUANTITIES[letter].plain_name}", exact=True)
            slider = cell.get_by_role("slider").nth(letters.index(letter))
            first, stood = box.input_value(), slider.input_value()
            self.type(box, "banana")
            self.says(box.locator("xpath=ancestor::*[contains(@class, 'widget-hbox')][1]"), "Still shown:", f"a word for {letter}")
            for key, end in (("End", "max"), ("Home", "min")):
                if slider.evaluate("(one, end) => Math.abs(one.value - one[end]) < one.step / 2", end):
                    continue  # it stands there
                was = caption.inner_text()
                slider.press(key)
                self.comes(cell, _CAPTION_APART, was, f"{letter} at its {'upper' if key == 'End' else 'lower'} end ({box.input_value()}): nothing changes")
            self.type(box, first)
            self.comes(slider, "(one, stood) => one.value === stood", stood, f"{letter} was {first}: its slider does not come back to {stood}")
            if box.input_value() != first:
                self.note(f"{letter} was {first} and is shown as {box.input_value()}")
        for name in ("Save as SVG", "Save as PNG"):
            self.saves(cell, name)

    def comes(self, place, holds: str, given: str, otherwise: str) -> None:
        """Wait until something holds of a place that stays, whatever is drawn anew in it."""
        try:
            self.page.wait_for_function(f"([one, given]) => ({holds})(one, given)", arg=[place.element_handle(), given], timeout=SOON)
        except Exception:
            alerts = " / ".join(place.get_by_role("alert").all_inner_texts())
            self.note(f"{otherwise}. {alerts}")

    def saves(self, cell, name: str) -> None:
        try:
            with self.page.expect_download(timeout=SOON) as saved:
                cell.get_by_role("button", name=name).first.click()
            self.pressed += 1
            if not Path(saved.value.path()).stat().st_size > 1000:
                self.note(f"'{name}' saves next to nothing")
        except Exception:
            self.note(f"'{name}' saves nothing")

    def shown(self, cell, call) -> None:
        """What is only read: its folds open, and a drawing in it can be saved."""
        for fold in cell.locator("summary").all():
            fold.click()
        for name in ("Save as SVG", "Save as PNG") if cell.locator("figure").count() else ():
            self.saves(cell, name)
        if cell.get_by_text("Please change something").count():
            self.note(f"{call.words}: {cell.inner_text()[:200]}")

    def fade(self, cell, call) -> None:
        formula, seed = topics.find(call.words[0]), int(call.named.get("seed", 1))
        count = len(worked(formula, formula.only({k: v.value for k, v in ask(formula, seed).given.items()})).pieces)
        seen: dict[int, int] = {}
        for blanks in range(1, min(fading.MOST_BLANKS, count) + 1):
            question = ask(formula, seed + blanks - 1)
            found = worked(formula, formula.only({name: value.value for name, value in question.given.items()}))
            self.press(cell, f"Hint, {fading._COUNTS[blanks]}")
            self.says(cell, "hint 1 of", "the hint of a line")
            for place in range(count - blanks, count):
                box = cell.get_by_role("textbox", name=re.compile(rf"^Step {place + 1}: ")).nth(seen.get(place, 0))
                seen[place] = seen.get(place, 0) + 1
                self.told_apart(cell, box, blank(found, place, question.seed), f"{_COUNT[blanks]}, step {place + 1}")
            if blanks < min(fading.MOST_BLANKS, count):
                self.press(cell, "Next example, one more blank")
                self.says(cell, f"{fading._COUNTS[blanks + 1].capitalize()}.", "the next example")
        try:
            cell.get_by_text("This example is worked to its end").nth(min(fading.MOST_BLANKS, count) - 1).wait_for(timeout=SOON)
        except Exception:
            self.note("an example is not said to be worked to its end")

    def find_slip(self, cell, call) -> None:
        self.press(cell, "Skip this part")
        self.press(cell, "Open this part again")
        self.ask(cell, bank.pose(call.words[0], 1))

    def your_numbers(self, cell, call) -> None:
        seed = int(call.named.get("seed", 1))
        posed = bank.pose(topics.find(call.words[0]).name, seed)
        found, step = _on_the_way(call.words[0], str(call.named.get("way", "")), posed.letters)
        rough = cell.get_by_role("textbox", name="Rough estimate first")
        self.type(rough, "banana")
        self.says(cell, "banana", "a word in place of an estimate")
        self.type(rough, posed.typed(posed.answer * 1.4, 2))
        self.says(cell, "Kept:", "an estimate")
        self.told_apart(cell, cell.get_by_role("textbox", name=re.compile("^On the way: ")).first, blank(found, step, seed), "the value on the way")
        name = f"Your answer{'' if posed.label or not posed.unit else ', with its unit'}"
        self.told_apart(cell, cell.get_by_role("textbox", name=name, exact=True), posed, "the answer on one's own numbers")
        self.press(cell, "Hint")

    def practise(self, cell, call) -> None:
        self.ask(cell, bank.pose(call.words[0], int(call.named.get("seed", 1))))

    def on_site(self, cell, call) -> None:
        boxes = []
        for key in call.words:
            part, _, field = key.partition(".")
            named = SECTIONS[part][field]
            boxes.append((cell.get_by_role("textbox", name=label_of(named), exact=True), named))
        before = boxes[0][0].input_value()
        self.type(boxes[0][0], "banana")
        self.press(cell, "Put into my design")
        self.says(cell, "Nothing is saved", "a word in place of a value")
        self.type(boxes[0][0], before)
        for box, field in boxes:
            self.type(box, another(box.input_value(), field.suggested("US" if system.current() == system.FEET else "UK")))
        self.press(cell, "Put into my design")
        self.says(cell, "Saved in", "values for the design")

    def exit_check(self, cell, call) -> None:
        code = cell.get_by_role("textbox", name="Your learner code, or a short name of your own")
        if code.count():
            self.type(code, "no code!")
            self.says(cell, "is no learner code", "a code that is none")
            self.type(code, LEARNER)
        self.says(cell, f"These are the numbers of {LEARNER}", "a learner code")
        self.press(cell, "Finish and show my receipt")
        self.says(cell, "Say first how sure you are", "nothing said of how sure one is")
        for number, name in enumerate(call.words[1:], start=1):
            self.ask(cell, bank.pose(name, personal.own_seed(LEARNER, name)), f" {number}", help_too=False)
        cell.get_by_role("radio", name="fairly sure").check()
        self.press(cell, "Finish and show my receipt")
        self.says(cell, "and you were sure", "all right and fairly sure")
        self.press(cell, "Make a sheet to print")
        self.says(cell, "Written beside", "the sheet", PRINTED)

    def more_questions(self, cell, call) -> None:
        chosen = cell.locator("select").first
        for code in call.words:
            self.pick(chosen, f"{code}: ")
            posed = bank.pose(code, 1)
            if self.says(cell, " ".join(posed.text.split())[:60], f"{code} chosen"):
                if isinstance(posed, Sequence):
                    self.order(cell, posed, "", True, skip=1)
                else:
                    self.ask(cell, posed)

    def outcomes(self, cell, call) -> None:
        self.press(cell, "Count again")
        if cell.locator("tbody tr").count() != 2 * len(call.words):
            self.note("not every outcome is listed")

    def brief_met(self, cell, call) -> None:
        self.press(cell, "Hold my design against the brief")
        self.says(cell, "rows of the brief are met", "the brief")
        self.press(cell, "Print my pack")
        self.says(cell, "Printed:", "the pack", PRINTED)

    # --- all of it

    def through(self) -> None:
        """Every section in its order."""
        acts: dict[str, Callable] = {"start_and_stop": self.explore, "follow_days": self.explore, "puzzle": self.practise, "explain": self.practise}
        for cell, call in self.cells():
            self.section = str(call.section)
            try:
                acts.get(call.name, getattr(self, call.name, self.shown))(cell, call)
            except Exception as error:
                self.note(f"{call.name}{call.words}: {type(error).__name__} {str(error)[:200]}")

    def looked_at(self) -> None:
        """What is cut off, too wide, or lies over something else."""
        for cell, call in self.cells():
            self.section = str(call.section)
            for one in (*cell.evaluate(_LAID_BADLY), *cell.evaluate(_SCROLLED)):
                self.note(f"{call.name}: {one}")
        for word in re.findall(r"Traceback|Something went wrong here|\bundefined\b|\bNaN\b", self.page.inner_text("main")):
            self.note(f"the page shows '{word}'")

    def standing(self) -> dict[str, list[str]]:
        """What stands in the boxes, call by call; where one looks around nothing is kept."""
        return {
            f"{call.section} {call.name} {' '.join(call.words[:1])}": cell.evaluate(_KEPT)
            for cell, call in self.cells()
            if call.name not in ("explore", "start_and_stop", "follow_days", "more_questions")
        }

    def come_back(self) -> None:
        """The page loaded again, by another kernel: every box says what it said, and every verdict stands there."""
        before = self.standing()
        verdicts = {key: cell.get_by_role("status").count() for (cell, call), key in zip(self.cells(), range(999))}
        self.page.reload()
        self.page.wait_for_selector(ALIVE)
        after = self.standing()
        for key, boxes in before.items():
            self.section = key.partition(" ")[0]
            if after.get(key) != boxes:
                lost = [one for one in boxes if one not in after.get(key, [])]
                self.note(
                    f"{key}: after coming back {lost[:4] or 'the order of boxes'} is gone; there stands {[one for one in after.get(key, []) if one not in boxes][:4]}"
                )
        for (cell, call), key in zip(self.cells(), range(999)):
            self.section = str(call.section)
            if (
                call.name not in ("explore", "more_questions", "on_site", "brief_met", "start_and_stop", "follow_days")
                and verdicts[key]
                and not cell.get_by_role("status").count()
            ):
                self.note(f"{call.name}: what was said to the answers is gone")
        self.section = "0"
        if self.name in contents.ORDER and not re.search(r"Every question here is answered|Go on with", self.page.inner_text("main")):
            self.note("the line at the top does not say where to go on")

    def pictures(self, look: Path) -> None:
        """A picture of each section, from its heading to the next."""
        tops = self.page.locator("main h1, main h2").evaluate_all("all => all.map(one => [one.innerText, one.getBoundingClientRect().top + scrollY])")
        ends = [top for _, top in tops[1:]] + [self.page.evaluate("() => document.documentElement.scrollHeight")]
        for number, ((_, top), end) in enumerate(zip(tops, ends)):
            path = look / f"{self.name}-{number:02d}.png"
            wide = self.page.viewport_size["width"]
            self.page.screenshot(path=path, full_page=True, clip={"x": 0, "y": max(top - 8, 0), "width": min(wide, 1040), "height": max(end - top, 20)})
            self.shots.append(path)


_COUNT = ("no blanks", "one blank", "two blanks", "three blanks")
PART = (1040, 1500)  # dots of a page that a part of a contact sheet shows


def contact_sheets(shots: list[Path], look: Path, name: str) -> list[Path]:
    """The pictures of all sections one after another, two strips beside each other on a sheet."""
    from PIL import Image  # comes with matplotlib

    wide, tall = PART
    strips = []
    whole = [Image.open(shot) for shot in shots]
    long = Image.new("RGB", (wide, sum(one.height + 14 for one in whole)), "#888888")
    at = 0
    for one in whole:
        long.paste(one, (0, at))
        at += one.height + 14
    for top in range(0, long.height, tall):
        strips.append(long.crop((0, top, wide, min(top + tall, long.height))))
    made = []
    for number in range(0, len(strips), 2):
        sheet = Image.new("RGB", (2 * wide + 20, tall), "#ffffff")
        for place, strip in enumerate(strips[number : number + 2]):
            sheet.paste(strip, (place * (wide + 20), 0))
        path = look / f"sheet-{name}-{number // 2:02d}.png"
        sheet.save(path)
        made.append(path)
    return made


def walk(page, folder: Path, start: str, name: str, look: Path | None = None) -> Walk:
    """Go through one workbook and come back to it."""
    take_settings(folder)
    going = Walk(page, folder, start, name)
    going.open()
    going.through()
    going.looked_at()
    if look:
        going.pictures(look)
        contact_sheets(going.shots, look, name)
    going.come_back()
    return going


def main() -> int:
    from playwright.sync_api import sync_playwright

    given = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    given.add_argument("names", nargs="*", default=[*contents.COURSE])
    given.add_argument("--look", type=Path)
    given.add_argument("--units", choices=system.SYSTEMS, default=system.METRES)
    given.add_argument("--wide", type=int, default=1024)
    asked = given.parse_args()
    if asked.look:
        asked.look.mkdir(parents=True, exist_ok=True)
    found = 0
    with tempfile.TemporaryDirectory() as folder, lab.server(Path(folder)) as address, sync_playwright() as playwright:
        Path(folder, system.SETTINGS).write_bytes(system.settings(asked.units))
        browser = playwright.chromium.launch(executable_path=lab.chromium(), args=lab.FLAGS)
        context = browser.new_context(viewport={"width": asked.wide, "height": 900}, extra_http_headers=lab.AUTHORIZED)
        for name in asked.names:
            page = context.new_page()
            page.set_default_timeout(SOON)
            going = walk(page, Path(folder), address.removesuffix("lab") + "brimwork/", name, asked.look)
            page.close()
            print(f"{name}: {going.pressed} buttons pressed, {len(going.met)} things met", *going.met, sep="\n  ", flush=True)
            found += len(going.met)
        browser.close()
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
