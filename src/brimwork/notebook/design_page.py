"""The page of a design: one screen with drawing, boxes, key numbers and findings, which its script draws and the kernel works out. One widget, whatever is open."""

from __future__ import annotations

import asyncio
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import anywidget

from brimwork import files
from brimwork.design.typed.asking import without_keys
from brimwork.design.typed.design import Design
from brimwork.design.typed.fields import SECTIONS
from brimwork.design.typed.starting import FOLLOW, usual_of
from brimwork.design.typed.uneven import uneven
from brimwork.notebook import own_prices
from brimwork.notebook import page_boxes as boxes
from brimwork.notebook import page_parts as parts
from brimwork.notebook.boxes import typed_for, unit_offered
from brimwork.notebook.form import HEADS, idle, name_of
from brimwork.notebook.opened import OpenDesign, begin_design, look_at, remember
from brimwork.notebook.printing import printed
from brimwork.notebook.results import drawings_shown, findings_shown
from brimwork.notebook.saving import SAVES
from brimwork.notebook.shelf import DESIGNS, EXAMPLES, file_name, own_designs
from brimwork.shown import Markup, clipped, escape
from brimwork.units import InputError


class DesignPage(anywidget.AnyWidget):
    """What a workbook shows of a design that is open, or, where none is, the way to one. `design` and `followers` are those of what is open."""

    _esm = SAVES + Path(__file__).with_name("design_page.js").read_text(encoding="utf-8")
    _css = Path(__file__).with_name("design_page.css")

    def __init__(self, opened: OpenDesign | None, full: bool = True):
        super().__init__()
        self.opened, self.full, self.view, self.narrow, self.other = opened, full, "section", False, ""
        self.followers: list[Callable[[], None]] = []
        self.working: set[asyncio.Task] = set()
        self.after: list[Callable[[], None]] = []
        self.before: dict[str, tuple[str, str]] = {}
        self.listed, self.viewed = parts.Listed(), None  # the findings and the view that the page has
        self._known: tuple[Any, dict[str, tuple[str, str]]] = (None, {})
        if opened:
            opened.later = self.after.append
        self.acts: dict[str, Callable[[dict], Any]] = {
            "ready": self._ready, "change": self._change, "basis": self._basis, "usual": self._usual, "undo": self._undo, "redo": self._redo, "view": self._view, "depth": self._depth,
            "why": self._why, "save": self._save, "designs": self._designs, "start": self._start, "example": self._example, "open": self._open_file,
            "leave": self._leave, "turn": self._turn, "choose": self._choose, "print": self._print, "beside": self._beside, "prices out": self._prices_out,
            "prices in": self._prices_in, "findings": self._findings,
        }  # fmt: skip
        self.on_msg(self._asked)

    def _numbers(self) -> dict[str, tuple[str, str]]:
        """The key numbers of what is open, worked out once for each design."""
        if self._known[0] is not self.here.chain:
            self._known = self.here.chain, parts.key_numbers(self.here.chain)
        return self._known[1]

    @property
    def here(self) -> OpenDesign:
        """What is open. Raises InputError where nothing is."""
        if self.opened is None:
            raise InputError("no design is open yet: begin one, or open one, on the page above")
        return self.opened

    @property
    def design(self) -> Design:
        """The design that is open. Raises InputError where none is."""
        return self.here.design

    def close(self) -> None:
        for task in self.working:
            task.cancel()
        super().close()

    def _repr_mimebundle_(self, **named) -> Any:
        """The page; for those who see no widgets, or before anything has run, findings and drawings as they were when it was shown."""
        if self.opened is None:
            plain = "The page of a design: begin with a few questions, open a design of your own, or look at an example."
            html = Markup(f"<p>{escape(plain)}</p>")
        else:
            found, drawn = findings_shown(self.opened.chain, self.opened.found), drawings_shown(self.opened.chain)
            html, plain = Markup(f"{found.html}{drawn.html}"), f"{found.plain}\n{drawn.plain}"
        made = super()._repr_mimebundle_(**named)
        alive = made[0] if isinstance(made, tuple) else made or {}
        return {**alive, "text/html": f"<p><em>Run this cell to bring it to life: Run, Run All Cells.</em></p>{html}", "text/plain": plain}

    # --- from the page

    def _asked(self, _, message: Any, buffers: list) -> None:
        """One wish of the page. A value that cannot be used is told beside its box; nothing else is changed by it."""
        if not isinstance(message, dict) or message.get("do") not in self.acts:
            return
        serial = {"n": message["n"]} if isinstance(message.get("n"), int) else {}
        try:
            answer = self.acts[message["do"]](message)
        except InputError as error:
            key, text = str(message.get("key", "")), str(message.get("text", ""))
            answer = {
                "refused": {
                    "key": key,
                    "words": self._plainly(str(error), key),
                    "offer": unit_offered(key, text, self.design.region) if self.opened else "",
                    **({"text": text} if message["do"] == "change" else {}),
                }
            }
        except OSError as error:
            answer = {"said": {"words": f"That cannot be done ({error.strerror or error}).", "alert": True}}
        if answer is not None:
            self._answer(answer, serial)
        trouble = self.opened.trouble if self.opened else ""
        while self.after:  # what can wait until it is painted
            self.after.pop(0)()
        if self.opened and self.opened.trouble != trouble:
            self.send({"said": {"words": self.opened.trouble, "alert": bool(self.opened.trouble)}})

    def _answer(self, answer: dict, serial: dict) -> None:
        """What is seen first leaves first, without a drawing that the page has already; the findings, many long lines, follow."""
        if "view" in answer:
            if "did" in answer and "form" not in answer and answer["view"] == self.viewed:
                del answer["view"]
            else:
                self.viewed = answer["view"]
        self.send({**answer, **serial})
        if "tally" in answer:
            time.sleep(0.001)  # what was sent leaves by another thread, which waits for this one
            self.send({"findings": self.listed.part(self.here, whole="form" in answer), **serial})

    def _findings(self, message: dict) -> dict | None:
        return {"findings": self.listed.part(self.opened, whole=True)} if self.opened else None

    def _plainly(self, said: str, key: str) -> str:
        """What was refused, for someone who looks at a box and not at a file."""
        section, _, name = key.partition(".")
        if section in SECTIONS and name in SECTIONS[section]:
            region = self.opened.design.region if self.opened else "UK"
            still = " The last good value still counts." if self.opened and self.opened.design.given(key) else ""
            said = said.replace(f"write {key} = ", "type ").replace(f"{key} = ", "").replace(key, parts.within(name_of(key, region)))
            return f"{said[:1].upper()}{without_keys(said[1:])}.{still}"
        said = without_keys(said)
        return f"{said if '.toml' in said.partition(' ')[0] else said[:1].upper() + said[1:]}."  # a file keeps its name

    def _ready(self, message: dict) -> dict:
        self.narrow = bool(message.get("narrow"))
        return self._all()

    def _all(self) -> dict:
        """Everything that the page shows."""
        if self.opened is None:
            return {"start": parts.ways_part(self.opened is not None), "said": {"words": "", "alert": False}}
        opened = self.opened
        return {
            "start": None,
            "bases": boxes.ALL_BASES,
            "views": parts.views_part(opened),
            "form": boxes.form_part(opened, self.full),
            "full": self.full,
            "examples": list(EXAMPLES),
            "own": [{"path": path, "words": words} for path, words, _ in own_designs() if path != opened.mine],
            **self._moving(),
        }

    def _moving(self) -> dict:
        """What may be different after any change."""
        opened = self.here
        return {
            "head": {
                "title": opened.design.title,
                "file": opened.mine,
                "kind": opened.design.kind,
                "region": opened.design.region,
                "state": parts.kept_words(opened),
                "undo": self._what(opened.done[-1].what) if opened.done else "",
                "last": opened.done[-1].number if opened.done else 0,
                "redo": self._what(opened.undone[-1].what) if opened.undone else "",
                "saved": opened.unsaved and Path(opened.mine).exists(),
            },
            "answered": boxes.answered_part(opened.design),
            "numbers": parts.numbers_part(self._numbers(), self.before),
            "tally": parts.tally_part(opened),
            "view": parts.view_part(opened, self.view, self.narrow, self.other),
            "said": {"words": opened.trouble or opened.said.words, "alert": bool(opened.trouble) or opened.said.alert},
            "choices": [{"key": one.key, "name": self._what(one.key), "mine": one.mine, "theirs": one.theirs} for one in opened.asking.both]
            if opened.asking
            else [],
        }

    def _what(self, what: str) -> str:
        """A change in words: the name of its box."""
        section, _, name = what.partition(".")
        known = section in SECTIONS and name in SECTIONS[section]
        return parts.within(HEADS.get(what) or (name_of(what, self.design.region) if known else what))

    # --- changes

    def _then(self, act: Callable[[], None], key: str = "") -> dict:
        """What the page shows after a change, and what that did."""
        opened = self.here
        before, found, numbers = opened.design, opened.found, self._numbers()
        opened.said.words, opened.said.alert = "", False
        act()
        after = opened.design
        if after is before:
            return {
                "entries": [boxes.entry(key, after)] if key else [],
                "said": {"words": opened.said.words or "Nothing is different.", "alert": opened.said.alert},
            }
        self.before = numbers
        for tell in self.followers:
            tell()
        keys = {one for one in {*before.values, *after.values} if before.values.get(one) != after.values.get(one)}
        keys |= {*uneven(before), *uneven(after)}
        keys |= {one for one in FOLLOW[after.kind] if usual_of(before, one) != usual_of(after, one)}  # what their boxes offer
        keys |= idle(before) ^ idle(after)
        keys |= {head for head in HEADS if getattr(before, head) != getattr(after, head)}
        whole = before.region != after.region or before.kind != after.kind
        shape = (
            {"form": boxes.form_part(opened, self.full), "views": parts.views_part(opened)}
            if whole
            else {"entries": [boxes.entry(one, after) for one in keys | ({key} if key else set())]}
        )
        out = uneven(after).get(key, "")
        told = f"{out[:1].upper()}{out[1:]}." if out else parts.turned(found, opened.found, after.region)
        moving = self._moving()
        return {**moving, **shape, "did": {"key": key, "words": told}, "said": moving["said"] if moving["said"]["words"] else {"words": told, "alert": False}}

    def _change(self, message: dict) -> dict | None:
        key, text = str(message.get("key", "")), str(message.get("text", ""))
        if self.opened is None:
            return None
        if key in HEADS:
            return self._then(lambda: self.here.head(key, text), key)
        value = typed_for(key, text, self.design.region)
        return self._then(lambda: self.here.change(key, value), key)

    def _basis(self, message: dict) -> dict | None:
        key, basis = str(message.get("key", "")), str(message.get("basis", ""))
        given = self.design.values.get(key)
        if given is None or basis not in boxes.ALL_BASES:
            return None
        return self._then(lambda: self.here.change(key, given.text, basis), key)

    def _usual(self, message: dict) -> dict:
        key = str(message.get("key", ""))
        return self._then(lambda: self.here.usual(key), key)

    def _undo(self, message: dict) -> dict:
        return self._then(lambda: self._say(self.here.undo(), "Taken back"))

    def _redo(self, message: dict) -> dict:
        return self._then(lambda: self._say(self.here.redo(), "Made again"))

    def _say(self, what: str, words: str) -> None:
        if what:
            self.here.said.words = f"{words}: {self._what(what)}."

    # --- what is shown

    def _view(self, message: dict) -> dict | None:
        name = str(message.get("name", self.view))
        if self.opened is None or name not in {**parts.DRAWINGS, **parts.TABLES}:
            return None
        self.view, self.narrow = name, bool(message.get("narrow", self.narrow))
        return {"view": parts.view_part(self.opened, self.view, self.narrow, self.other)}

    def _beside(self, message: dict) -> dict:
        """The design to compare with: one of the user's own, or an example."""
        self.other = self._known_file(str(message.get("path", "")))
        return {"view": parts.view_part(self.here, "compare", self.narrow, self.other)}

    def _depth(self, message: dict) -> dict | None:
        self.full = bool(message.get("full"))
        return {"form": boxes.form_part(self.opened, self.full), "full": self.full} if self.opened else None

    def _why(self, message: dict) -> dict | None:
        if self.opened is None:
            return None
        found, design = str(message.get("id", "")), self.design
        self._later(self._hangs(found, design))
        return {"why": parts.why_part(self.opened, found)}

    async def _hangs(self, found: str, design) -> None:
        await asyncio.sleep(0.05)  # the working is painted first
        self.send({"hangs": {"id": found, "on": parts.hangs_part(design, found)}})

    def _later(self, work) -> None:
        task = asyncio.ensure_future(work)
        self.working.add(task)
        task.add_done_callback(self.working.discard)

    # --- files

    def _save(self, message: dict) -> dict | None:
        if self.opened is None:
            return None
        name = str(message.get("name", "")).strip()
        self.opened.save(str(DESIGNS / f"{file_name(name)}.toml") if name else "")
        self._told()
        return {**self._moving(), "form": boxes.form_part(self.opened, self.full)}

    def _choose(self, message: dict) -> dict | None:
        if self.opened is None or not isinstance(message.get("keep"), dict):
            return None
        self.opened.decide({str(key): bool(mine) for key, mine in message["keep"].items()})
        self._told()
        return {**self._moving(), "form": boxes.form_part(self.opened, self.full)}

    def _told(self) -> None:
        for tell in self.followers:
            tell()

    def _designs(self, message: dict) -> dict:
        return {"start": parts.ways_part(self.opened is not None)}

    def _known_file(self, path: str) -> str:
        """A design that the page has offered, and no other file. Raises InputError."""
        offered = {one for one, *_ in own_designs()} | {str(DESIGNS / f"{name}.toml") for name in EXAMPLES}
        if path not in offered:
            raise InputError(f"{clipped(path)} is none of the designs here: choose one of the list")
        return path

    def _put(self, opened: OpenDesign, full: bool) -> dict:
        """Another design in place of the one that was open; nothing of the old one stays in page or kernel."""
        if self.opened is not None:
            self.opened.close()
        self.opened, self.full, self.view = opened, full, "section"
        self.before, opened.later = {}, self.after.append
        remember(opened)
        self._told()
        return self._all()

    def _may(self, what: str) -> bool:
        return self.opened is None or self.opened.may_leave(what)

    def _refused(self) -> dict:
        assert self.opened
        return {"said": {"words": self.opened.said.words, "alert": True}}

    def _start(self, message: dict) -> dict:
        kind, region = str(message.get("kind", "")), str(message.get("region", "UK"))
        return self._put(begin_design(kind, region), full=False) if self._may(f"start {kind}") else self._refused()

    def _example(self, message: dict) -> dict:
        name = str(message.get("name", ""))
        if name not in EXAMPLES:
            raise InputError(f"there is no example '{clipped(name)}': choose one of the list")
        return self._put(look_at(name), full=True) if self._may(f"example {name}") else self._refused()

    def _open_file(self, message: dict) -> dict:
        path = self._known_file(str(message.get("path", "")))
        return self._put(OpenDesign(Path(path)), full=self.full) if self._may(f"open {path}") else self._refused()

    def _leave(self, message: dict) -> dict:
        return self._then(self.here.leave_changes)

    def _turn(self, message: dict) -> dict:
        """What stands here as another kind of feature; undo takes it back."""
        kind = str(message.get("kind", ""))
        return self._then(lambda: self.here.turn(kind))

    # --- prices

    def _prices_out(self, message: dict) -> dict:
        return {"said": {"words": own_prices.write_prices(self.here), "alert": False}}

    def _prices_in(self, message: dict) -> dict:
        design = own_prices.with_prices(self.here)
        return self._then(lambda: self.here.put(design, f"prices of {own_prices.list_of(self.here).name}"))

    # --- print

    def _print(self, message: dict) -> dict | None:
        if self.opened is None:
            return None
        paper = Path(self.here.mine).with_suffix(".pdf")
        self._later(self._printing(self.design, paper))
        return {"said": {"words": "Printing ...", "alert": False}}

    async def _printing(self, design, paper: Path) -> None:
        """The pack, printed by a process of its own, beside the design file and for a link in the page."""
        try:
            pdf = await printed(design)
            files.write_whole(paper, pdf)
        except InputError as error:
            self.send({"said": {"words": f"{error}.", "alert": True}})
        except OSError as error:
            self.send({"said": {"words": f"Nothing is printed ({error.strerror or error}).", "alert": True}})
        else:
            self.send({"printed": {"name": paper.name, "path": str(paper)}, "said": {"words": f"Printed: {paper}.", "alert": False}}, [pdf])
