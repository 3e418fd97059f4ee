"""Random and mutated input by the ten thousand: argument lists, designs, answers files and notebooks. By hand: python tests/campaigns/fuzz.py [--share 1.0] [--seed 1]

Counted are: a traceback or an exception that is no plain refusal, an answer after more than two seconds of processor time, an element on a page that is
not ours, and a quantity that was read as something else than pint reads. All four have to be 0. `tests/test_campaigns.py` plants faults to see that they are found.
"""

# ruff: noqa: B023  whatever is chosen is called at once

from __future__ import annotations

import argparse
import asyncio
import contextlib
import copy
import io
import json
import os
import random
import sys
import tempfile
import time
import traceback
import warnings
from collections import Counter
from fractions import Fraction
from html.parser import HTMLParser
from pathlib import Path
from types import SimpleNamespace

sys.path.insert(0, str(Path(__file__).parents[1]))

from brimwork import cli, unit_table, units
from brimwork.classroom import intake
from brimwork.design.follows.features import chain_of
from brimwork.design.typed.file import dump_design, parse_design, save_design
from brimwork.exercise import answers
from brimwork.notebook import opening, reopened
from brimwork.notebook.comparing import compare
from brimwork.notebook.pages import say
from brimwork.notebook.results import drawings_shown, findings_shown, found_in
from brimwork.notebook.shopping import buying
from brimwork.topics import formulas
from brimwork.units import InputError

ARGUMENTS, DESIGNS, FILES = 100_000, 20_000, 10_000
LONGEST = 2.0  # s of processor time
MARK = "<img src=x onerror=taken()>"
HOSTILE = (
    MARK, "<script>taken()</script>", "\"><svg onload=taken()>", "'><b>", "$x^2$", "\\(y\\)", "a|b", "&lt;i&gt;", "#eval(\"1\")", "]#panic[", "*b*", "`c`", "[d](javascript:taken())",
    "\u202e\u0661", "\x00", "\ud800", "\n\n# head", "9" * 5000, "9" * 4300, "1e309", "1e-309", "-0", "nan", "inf", "1_0", "0x10", "", " ", "é" * 500, "ا" * 60, "\U0001f986",
    "%s%n{0}", "../../etc/passwd", "~nobody-here", "/dev/zero", "/dev/stdin", "~", "a" * 300, "=", "==", "-", "--", "--json", "--to", "-h", "1e90 cur", "5.7e8 mm", "10000", "0", "0 mm", "-1 m", "1/0 in",
)  # fmt: skip
OURS = {
    "section", "h2", "p", "details", "summary", "strong", "div", "pre", "small", "table", "caption", "thead", "tbody", "tr", "th", "td", "figure", "figcaption",
    "img", "span", "em", "br", "ul", "li", "code",
}  # fmt: skip
NAMED = {"style", "aria-live", "data-name", "scope", "tabindex", "role", "aria-label", "src", "alt", "width", "height"}


class Found:
    """What went wrong, by kind, with the first few cases of each."""

    def __init__(self) -> None:
        self.count, self.cases, self.done, self.slowest = Counter(), {}, Counter(), Counter()

    def fault(self, kind: str, case: object, told: str = "") -> None:
        self.count[kind] += 1
        if len(self.cases.setdefault(kind, [])) < 8:
            self.cases[kind].append((repr(case)[:600], told[-1500:]))

    @contextlib.contextmanager
    def watching(self, what: str, case: object):
        begun = time.process_time()
        try:
            yield
        except Exception:
            self.fault("traceback", (what, case), traceback.format_exc())
        seconds = time.process_time() - begun
        self.done[what] += 1
        self.slowest[what] = max(self.slowest[what], seconds)
        if seconds > LONGEST:
            self.fault("over two seconds", (what, case), f"{seconds:.1f} s")


class Elements(HTMLParser):
    """Whether a page has an element or an attribute that is not ours."""

    def __init__(self) -> None:
        super().__init__()
        self.foreign: list[str] = []

    def handle_starttag(self, tag, attrs) -> None:
        if tag not in OURS or any(name not in NAMED for name, _ in attrs):
            self.foreign.append(f"<{tag} {attrs}>"[:200])
        if tag == "img" and not dict(attrs).get("src", "").startswith("data:image/svg+xml;base64,"):
            self.foreign.append(f"<img {attrs}>"[:200])


def foreign(html: str) -> list[str]:
    reader = Elements()
    reader.feed(html)
    reader.close()
    return reader.foreign


def mutated(text: str, draw: random.Random) -> str:
    """A text with one to four pieces changed: cut, doubled, swapped, replaced by something hostile."""
    for _ in range(draw.randint(1, 4)):
        at, to = sorted(draw.randrange(len(text) + 1) for _ in range(2))
        to = min(to, at + draw.choice((1, 1, 3, 20, 200)))
        text = draw.choice((
            lambda: text[:at] + text[to:], lambda: text[:at] + draw.choice(HOSTILE) + text[to:], lambda: text[:to] + text[at:],
            lambda: text[:at] + chr(draw.choice((draw.randrange(32, 127), draw.randrange(0x20, 0x2FFF), 10, 34, 39))) + text[to:],
        ))()  # fmt: skip
    return text


# --- argument lists -----------------------------------------------------------------------------------------------------------------


def quantity(draw: random.Random) -> str:
    number = draw.choice(
        (
            f"{draw.uniform(0, 1000):.{draw.randint(0, 4)}f}",
            str(draw.randint(-3, 5000)),
            f"{draw.randint(0, 9)}/{draw.randint(0, 9)}",
            f"{draw.random():.2e}",
            "1,5",
            "1 1/2",
        )
    )
    return f"{number}{draw.choice(('', ' ', '  '))}{draw.choice((*unit_table.UNITS, '', 'x', 'gal', 'foot'))}"


def argument_list(draw: random.Random, folder: Path) -> list[str]:
    formula = draw.choice(tuple(formulas().values()))
    letters = [f"{letter}={quantity(draw) if draw.random() < 0.5 else formula_value(formula, letter, draw)}" for letter in formula.inputs]
    lists = (
        ["work", formula.name, *letters], ["work", formula.name, *letters, "--json"], ["work", draw.choice(formula.name.split())], ["prove", draw.choice(HOSTILE)],
        ["pack", str(folder / draw.choice(("bowl.toml", "absent.toml", "pipe", "", "closed/x.toml"))), *draw.choice(([], ["--json"], ["--date", draw.choice(HOSTILE)]))],
        ["handout", draw.choice(HOSTILE)], ["mark", draw.choice(HOSTILE)], ["open", str(folder / "bowl.toml"), "--port", draw.choice(HOSTILE)], [draw.choice(HOSTILE)], [],
    )  # fmt: skip
    made = draw.choices(lists, weights=(40, 15, 10, 3, 1, 3, 3, 3, 3, 1))[0]
    for _ in range(draw.choice((0, 0, 1, 1, 2, 3))):
        at = draw.randrange(len(made) + 1)
        made = draw.choice((
            lambda: made[:at] + [draw.choice(HOSTILE)] + made[at:], lambda: made[:at] + made[at + 1 :], lambda: made[:at] + made[at - 1 :],
            lambda: [mutated(one, draw) if place == at else one for place, one in enumerate(made)],
        ))()  # fmt: skip
    return [one.replace("\x00", "") for one in made]  # no shell can pass that


def formula_value(formula, letter: str, draw: random.Random) -> str:
    from brimwork.nomenclature import QUANTITIES

    low, high, _ = formula.range(letter)
    return QUANTITIES[letter].metric_text(draw.choice((draw.uniform(low, high), low, high, 0.0, -high, high * 1e6)), None)


def bounded(ask, most: int = 50):
    """The reader of hand-ins, which begins a process of its own, for the first files; after that it answers that it broke off."""
    asked = iter(range(most))
    return lambda self, *given: ask(self, *given) if next(asked, None) is not None else {"reason": "the reader broke off at this file"}


def argument_lists(found: Found, times: int, seed: int, folder: Path) -> None:
    opening._run_until_stopped = lambda *_: 0  # a list that is right starts a server
    opening.lay_out = lambda *_: []
    opening.running(folder)  # what that takes in is loaded before anything is timed
    intake.Reader.ask = bounded(intake.Reader.ask)
    draw = random.Random(seed)
    for _ in range(times):
        given = argument_list(draw, folder)
        if given[:1] == ["prove"] and all(not one.strip("-") or one.startswith("--j") for one in given[1:]):
            continue  # all derivations again, which takes its time
        out, err = io.StringIO(), io.StringIO()
        with found.watching("argument lists", given), contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
            try:
                code = cli.main(list(given))
            except SystemExit as ended:  # --help and --version
                code = ended.code or 0
            said = out.getvalue() + err.getvalue()
            if code not in (0, 2) and not (code == 1 and given[:1] in (["pack"], ["mark"], ["prove"])):
                found.fault("exit code", given, f"{code}: {said}")
            if "Traceback" in said or "that should not" in said:
                found.fault("traceback", given, said)
            if code == 2 and not err.getvalue().strip():
                found.fault("refused without a word", given)
        if given[:1] == ["work"]:
            for text in given:
                read_as_pint_does(found, text.partition("=")[2] or text)


def read_as_pint_does(found: Found, text: str) -> None:
    """What our reader takes, pint takes for the same."""
    try:
        reading = units.parse(text)
    except InputError:
        return
    value = by_pint(text, reading.unit)
    if value is None:
        return
    if abs(value - reading.value) > 1e-9 * max(abs(value), abs(reading.value), 1e-300):
        found.fault("read otherwise than by pint", text, f"{reading.value} and {value}")
    found.done["quantities compared with pint"] += 1


def by_pint(text: str, unit: str) -> float | None:
    """What the text says by Python's own fractions and pint's units, where it is a number with a unit that the tests have mapped to pint."""
    from test_units import ALL_PINT, REGISTRY

    head = text.strip().removesuffix(unit)
    if unit not in ALL_PINT or head == text.strip() and unit:
        return None
    sign = -1 if head.strip().startswith("-") else 1
    try:
        number = sign * float(sum(Fraction(part) for part in head.strip().lstrip("+-").replace("-", " ").split()))
    except ValueError:
        return None
    return REGISTRY.Quantity(number, REGISTRY.parse_units(ALL_PINT[unit])).to_base_units().magnitude


# --- designs ------------------------------------------------------------------------------------------------------------------------


def designs(found: Found, times: int, seed: int, folder: Path) -> None:
    from datetime import date

    from brimwork.pack.document import document

    draw = random.Random(seed)
    shipped = [path.read_text(encoding="utf-8") for path in sorted((opening.shipped() / "designs").glob("*.toml"))]
    taken = 0
    for number in range(times):
        text = design_text(draw.choice(shipped), draw)
        with found.watching("designs read", text):
            try:
                design = parse_design(text)
            except InputError as error:
                if number % 10 == 0 and (wrong := foreign(say(error).html)):
                    found.fault("injection", text, str(wrong))
                if len(str(error)) > 2000:
                    found.fault("a message without an end", text, str(error))
                continue
        taken += 1
        with found.watching("designs judged", text):
            chain = chain_of(design)
            html = findings_shown(chain, found_in(chain)).html
            if wrong := foreign(html):
                found.fault("injection", text, str(wrong))
        if taken % 5 == 0:
            with found.watching("designs drawn", text):
                pages = (drawings_shown(chain).html, buying(design).html, compare(design, design).html)
                if wrong := [one for page in pages for one in foreign(page)]:
                    found.fault("injection", text, str(wrong))
        if taken % 10 == 0:
            with found.watching("designs written for print", text):
                source = document(design, date(2026, 5, 31), folder)
                if wrong := loose(source):
                    found.fault("injection", text, wrong)
        if taken % 5 == 0:
            with found.watching("designs saved", text):
                save_design(design, folder / "saved.toml")
                if parse_design(dump_design(design)) != design:
                    found.fault("saved otherwise", text)
    found.done["designs accepted"] = taken


def design_text(text: str, draw: random.Random) -> str:
    """A design with values replaced where they stand, so that many are still read; or its text mutated."""
    if draw.random() < 0.3:
        return mutated(text, draw)
    lines = text.splitlines()
    places = [at for at, line in enumerate(lines) if " = " in line and not line.startswith(("format", "#"))]
    for at in draw.sample(places, draw.choice((1, 1, 2, 5))):
        name, _, value = lines[at].partition(" = ")
        hostile = json.dumps(draw.choice(HOSTILE), ensure_ascii=draw.random() < 0.5)
        lines[at] = f"{name} = " + draw.choice((
            lambda: hostile, lambda: json.dumps(quantity(draw)), lambda: str(draw.choice((0, 1, -1, 1e9, 10**9, 0.5, 3))), lambda: "".join(draw.choice((mark, str(draw.randint(0, 9)))) if mark.isdigit() else mark for mark in value),
            lambda: f'[{", ".join([hostile] * draw.choice((1, 3, 10_000)))}]', lambda: '{ value = ' + value + ', basis = "read" }',
        ))()  # fmt: skip
    if draw.random() < 0.3:
        lines = [f"title = {json.dumps(draw.choice(HOSTILE)[:100])}" if line.startswith("title") else line for line in lines]
    return "\n".join(lines)


def loose(source: str) -> str:
    """A hostile text that stands in a Typst document outside of the quotes of a string."""
    outside, inside, escaped = [], False, False
    for sign in source:
        if inside:
            inside, escaped = escaped or sign != '"', not escaped and sign == "\\"
        else:
            outside.append(sign)
            inside = sign == '"'
    rest = "".join(outside)
    return next((text for text in (MARK, "taken()", "]#panic[", "javascript:") if text in rest), "")


# --- answers files and notebooks ----------------------------------------------------------------------------------------------------


def damaged(raw: bytes, draw: random.Random) -> bytes:
    for _ in range(draw.randint(1, 4)):
        at, to = sorted(draw.randrange(len(raw) + 1) for _ in range(2))
        to = min(to, at + draw.choice((1, 4, 40, 4000)))
        raw = draw.choice((lambda: raw[:at], lambda: raw[:at] + raw[to:], lambda: raw[:at] + draw.randbytes(to - at) + raw[to:], lambda: raw[:to] + raw[at:],
                           lambda: raw[:at] + b"[" * 3000 + raw[to:], lambda: raw[:at] + draw.choice(HOSTILE).encode(errors="replace") + raw[to:]))()  # fmt: skip
    return raw


def answers_files(found: Found, times: int, seed: int, folder: Path) -> None:
    draw = random.Random(seed)
    place = folder / "answers"
    place.mkdir(exist_ok=True)
    whole = place / "answers.json"
    for number in range(12):
        answers.note(whole, f"T{number}", f"my answer {number}", "estimate")
    raw = whole.read_bytes()
    for path in place.iterdir():
        path.unlink()
    for number in range(times):
        bad = damaged(raw, draw)
        path = place / f"a{number}.json"
        path.write_bytes(bad)
        with found.watching("answers files", bad):
            with contextlib.suppress(InputError):
                answers.load_answers(path)
            try:
                answers.note(path, "after", "an answer after that", "estimate")
            except InputError:
                if path.read_bytes() != bad:
                    found.fault("lost", bad, "refused, and changed all the same")
            else:
                held = b"".join(one.read_bytes() for one in place.iterdir())
                if bad not in held and any(b"my answer %d" % place_ in bad and b"my answer %d" % place_ not in held for place_ in range(12)):
                    found.fault("lost", bad, "an answer that stood in the file stands nowhere now")
                if b"an answer after that" not in held:
                    found.fault("lost", bad, "the new answer")
        for one in place.iterdir():
            one.unlink()


def notebooks(found: Found, times: int, seed: int, folder: Path) -> None:
    from jupyter_server.services.contents.largefilemanager import AsyncLargeFileManager
    from tornado.web import HTTPError

    os.environ["JUPYTER_DATA_DIR"] = str(folder / "data")

    async def listed():
        return []

    contents = AsyncLargeFileManager(root_dir=str(folder))
    reopened.put_reopened_on(SimpleNamespace(contents_manager=contents, session_manager=SimpleNamespace(list_sessions=listed)))
    draw = random.Random(seed)
    book = json.loads((opening.shipped() / "quick-check.ipynb").read_text(encoding="utf-8"))
    book["metadata"]["widgets"] = {
        reopened.STATE: {"version_major": 2, "version_minor": 0, "state": {"a" * 32: {"model_module": "anywidget", "state": {"_esm": "taken()"}}}}
    }
    raw = json.dumps(book).encode()

    async def one(bad: bytes) -> None:
        (folder / "handed-in.ipynb").write_bytes(bad)
        with found.watching("notebooks", bad):
            try:
                model = await contents.get("handed-in.ipynb", type="notebook")
            except HTTPError:
                return
            if "widgets" in model["content"]["metadata"]:
                found.fault("injection", bad, "saved state left the server")
            try:
                await contents.save({"type": "notebook", "format": "json", "content": copy.deepcopy(model["content"])}, "handed-in.ipynb")
            except HTTPError:
                if (folder / "handed-in.ipynb").read_bytes() != bad:
                    found.fault("lost", bad, "refused, and changed all the same")
            else:
                if b"taken()" in bad and b"taken()" not in (folder / "handed-in.ipynb").read_bytes() and b'"widgets"' in bad and b'"nbformat": 4' in bad:
                    found.fault("lost", bad, "saved state of the author")

    async def all_of_them() -> None:
        import logging

        logging.disable(logging.CRITICAL)
        warnings.simplefilter("ignore")
        for _ in range(times):
            await one(damaged(raw, draw) if draw.random() < 0.3 else shaken(book, draw))

    asyncio.run(all_of_them())


def shaken(book: dict, draw: random.Random) -> bytes:
    """A notebook that is still JSON, with parts of it replaced by something else."""
    book = copy.deepcopy(book)
    for _ in range(draw.randint(1, 4)):
        node = book
        while True:
            keys = list(node) if isinstance(node, dict) else list(range(len(node)))
            if not keys:
                break
            key = draw.choice(keys)
            if isinstance(node[key], dict | list) and node[key] and draw.random() < 0.8:
                node = node[key]
                continue
            node[key] = draw.choice((None, 3, "words", [], {}, [1], {"a": 1}, MARK, True))
            break
    return json.dumps(book).encode()


def run(share: float, seed: int, only: str = "") -> Found:
    found = Found()
    with tempfile.TemporaryDirectory() as place, contextlib.chdir(place):
        folder = Path(place)
        (folder / "bowl.toml").write_bytes((opening.shipped() / "designs" / "library-bowl.toml").read_bytes())
        (folder / "closed").mkdir()
        with contextlib.suppress(AttributeError, OSError):
            os.mkfifo(folder / "pipe")
        for name, act, times in (
            ("arguments", argument_lists, ARGUMENTS), ("designs", designs, DESIGNS), ("answers", answers_files, FILES), ("notebooks", notebooks, FILES),
        ):  # fmt: skip
            if not only or only == name:
                act(found, round(times * share), seed, folder)
    return found


def main() -> int:
    reader = argparse.ArgumentParser(description=__doc__)
    reader.add_argument("--share", type=float, default=1.0, help="of the full number of cases")
    reader.add_argument("--seed", type=int, default=1)
    reader.add_argument("--only", default="", choices=("", "arguments", "designs", "answers", "notebooks"))
    chosen = reader.parse_args()
    found = run(chosen.share, chosen.seed, chosen.only)
    for what, times in found.done.items():
        print(f"{times:8} {what}" + (f", the slowest {found.slowest[what]:.2f} s" if what in found.slowest else ""))
    for kind, cases in found.cases.items():
        print(f"\n{found.count[kind]} x {kind}")
        for case, told in cases:
            print(f"  {case}\n    {told}")
    print(f"\nfaults: {found.count.total()}")
    return 1 if found.count else 0


if __name__ == "__main__":
    raise SystemExit(main())
