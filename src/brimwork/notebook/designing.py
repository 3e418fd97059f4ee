"""The design workbook: a design file as a form, with findings and drawings that follow every change; saving, loading, starting another."""

from __future__ import annotations

import hashlib
import json
import os
from contextlib import suppress
from itertools import count
from pathlib import Path

import ipywidgets as widgets
from IPython.display import display

from brimwork import files
from brimwork.design.follows.features import chain_of
from brimwork.design.typed import file
from brimwork.design.typed.asking import meant
from brimwork.design.typed.design import Design, blank_design
from brimwork.design.typed.kinds import KINDS
from brimwork.design.typed.merging import Conflict, merged
from brimwork.notebook.form import ALERT, HEADS, Form
from brimwork.notebook.keeping import Keeping, Left, all_kept, left_of, read_kept
from brimwork.notebook.pages import say
from brimwork.notebook.part import Part
from brimwork.notebook.practising import QUIET
from brimwork.notebook.results import drawings_shown, findings_shown, followed, found_in
from brimwork.notebook.unfolded import Unfolded
from brimwork.shown import escape
from brimwork.units import InputError

# The ten values of the quick check, for each kind of feature.
_PUMP = ("pipe.bore", "pump.shut_off_head", "pump.free_flow")
QUICK: dict[str, tuple[str, ...]] = {
    "overflowing vessel": ("vessel.rim_diameter", "vessel.height", "vessel.mass", "vessel.water", "vessel.foot_outside", "reservoir.block_length",
                           "reservoir.block_width", *_PUMP),
    "drilled stones": ("stones.diameters", "stones.heights", "stones.branch_lengths", "stones.branch_bore", "slab.length", "reservoir.block_length",
                       "reservoir.block_width", *_PUMP),
    "blade": ("blade.lip_width", "blade.lip_level", "blade.stone_level", "blade.trough_width", "blade.trough_depth", "reservoir.block_length",
              "reservoir.block_width", "pipe.bore", "pipe.length", "pump.curve"),
    "cascade": ("cascade.steps", "cascade.width", "cascade.step_fall", "cascade.tread", "cascade.top_level", "reservoir.block_length",
                "reservoir.block_width", *_PUMP),
}  # fmt: skip


class DesignView:
    """Boxes, findings and drawings of one design file. What is not saved is never left without asking once, and kept in a file beside it meanwhile."""

    def __init__(self, path: Path, kind: str = "", quick: bool = False):
        self.mine, self.unsaved, self.asked = str(path), False, ""  # the file it came from; what was asked about last
        self.quick, self.told, self.unkept, self.asking = quick, widgets.HTML(), widgets.HTML(), widgets.VBox([])
        self.leave = _button("Leave them", "go back to the file as it was saved", self.leave_changes)
        self.keeping = Keeping()
        self.base, self.design, left, more = _with_changes(path, kind)
        self.found = found_in(chain_of(self.design))
        self.file = widgets.Text(value=str(path), description="Design file", style={"description_width": "initial"}, layout={"width": "34em"})
        self.other = widgets.Dropdown(
            options=self._others(path.parent), description="Start from", style={"description_width": "initial"}, layout={"width": "34em"}
        )
        self.form = Form(self, QUICK[self.design.kind] if quick else ())
        self.place = widgets.VBox([self.form.widget])
        self._stands_in(self.mine, left, more)
        buttons = (
            _button("Save", "write the design to the file named", self.save),
            _button("Load", "read the file named", self.load),
            _button("Print", "write the pack to build from, as a PDF beside the design file", self.print),
        )
        files = widgets.HBox([self.file, *buttons], layout=_WRAPPED)
        start = widgets.HBox([self.other, _button("Start", "begin a new design from what is chosen", self.start)], layout=_WRAPPED)
        plain = f"The form of {path}, with a box for each value."
        self.widget = Part([files, *([] if quick else [start]), self.told, self.asking, self.unkept, self.place, Unfolded()], plain)

    @staticmethod
    def _others(folder: Path) -> list[tuple[str, str]]:
        """What a new design can start from: a blank of each kind, what stands here as another kind, or one of the files that lie there."""
        return [
            *((f"a blank: {kind}", f"blank {kind}") for kind in KINDS),
            *((f"what stands here, as: {kind}", f"turned {kind}") for kind in KINDS),
            *((f"a copy of {file.name}", str(file)) for file in sorted(folder.glob("[!.]*.toml"))),
            *((f"what was not saved of {Left(path, None, None).of}", f"kept {path}") for path in reversed(all_kept(folder))),
        ]

    def leave_changes(self) -> None:
        """Back to the file as it was saved."""

        def leave() -> None:
            saved = file.load_design(self.mine)
            self.keeping.drop()
            self.base = saved
            self._put(saved)

        if self._tell(leave, "As it was saved", self.mine):
            self._stands_in(self.mine)

    def show(self) -> None:
        display(self.widget)
        chain = chain_of(self.design)
        self.findings = display(findings_shown(chain, self.found), display_id=True)
        self.pictures = display(drawings_shown(chain), display_id=True)

    def redraw(self) -> None:
        chain = chain_of(self.design)
        self.found = found_in(chain)
        self.findings.update(findings_shown(chain, self.found))
        self.pictures.update(drawings_shown(chain))

    def change(self, key: str, text, basis: str = "yours") -> str:
        """One value changed: what that did to the findings. Raises InputError, and then nothing is changed."""
        before = self.found
        self._changed(self.design.having(key, text, basis))
        self.form.told()
        return followed(before, self.found)

    def head(self, key: str, words: str) -> None:
        """Title, note or region changed. Raises InputError, and then nothing is."""
        self._changed(self.design.headed(key, words))
        if key == "region":
            self.form.worded()

    def _changed(self, design: Design) -> None:
        self.design, self.unsaved, self.asked = design, True, ""
        self.told.value = "<p>Changed, not saved.</p>"
        self._keep()
        self.place.children = (self.form.widget,)
        self.redraw()

    def _keep(self) -> None:
        """Keep the changes until they are saved; where that cannot be, say so, and go on saying it."""
        self.keeping.keep(Path(self.mine), self.base, self.design)
        self.unkept.value = f"<p role='alert' style='color:{ALERT}'>{escape(self.keeping.trouble)}.</p>" if self.keeping.trouble else ""

    def save(self) -> None:
        name = self.file.value.strip()
        there = f"{name} is there already: press Save again to replace it, or name another file"
        if name and name != self.mine and os.path.exists(name) and self._first_time(f"save {name} {_print_of(name)}", there):
            return
        self._save(name, self.base if name == self.mine else None)

    def _save(self, name: str, base: Design | None) -> None:
        """Write the design; what was changed in the file meanwhile is taken over, or asked about where it was changed here too."""
        self.asking.children = ()
        before = self.design

        def write() -> None:
            self.base = file.save_design(before, _named(name), base)

        try:
            done = self._tell(write, "Saved")
        except Conflict as conflict:
            self._ask(name, base, conflict)
            return
        if not done:
            return
        self.keeping.drop()
        self.unkept.value = ""
        taken = self.base != before
        if taken:
            self._put(self.base)
        self._stands_in(name)
        again = (
            ""
            if self.quick
            else f" To open it another day, put its name into this cell, under the grey line: <code>mine = design({escape(json.dumps(name))})</code>."
        )
        too = " What somebody else had changed in the file since it was read is in it, and here, too." if taken and base is not None else ""
        self.told.value = f"<p role='status'>Saved: {escape(name)}.{too}{again}</p>"

    def _ask(self, name: str, base: Design, conflict: Conflict) -> None:
        """Show what was changed here and in the file, and write nothing before somebody has chosen for each value."""
        self.told.value = (
            f"<p role='alert'>Not saved yet. Since you opened {escape(name)}, somebody else has changed in it what you changed too. Choose what counts, value by"
            " value; all other changes of both of you are kept.</p>"
        )
        choices = {
            one.key: widgets.RadioButtons(
                options=[(f"yours: {one.mine}", True), (f"in the file: {one.theirs}", False)],
                value=None,
                description=_meant(one.key),
                style=QUIET,
                layout={"width": "auto"},
            )
            for one in conflict.both
        }

        def decide() -> None:
            if any(choice.value is None for choice in choices.values()):
                self.told.value = "<p role='alert'>Not saved yet: choose for each value first.</p>"
                return
            self.design, _ = merged(base, self.design, conflict.file, {key: choice.value for key, choice in choices.items()})
            self.base = conflict.file
            self._keep()
            self._put(self.design)
            self._save(name, conflict.file)

        self.asking.children = [*choices.values(), _button("Save so", "write the design with what was chosen", decide)]

    def load(self) -> None:
        name = self.file.value.strip()
        if self.unsaved and self._first_time(f"load {name}", "The last change is not saved: press Load again to leave it, or save it first"):
            return

        def read() -> None:
            if name == self.mine:
                file.load_design(_named(name))  # before anything is thrown away
                self.keeping.drop()
            base, design, left, more = _with_changes(Path(_named(name)))
            self.keeping.drop()
            self.keeping = Keeping()
            self.base = base
            self._put(design)
            self.told.value = f"<p role='status'>Loaded: {escape(name)}.</p>"
            self._stands_in(name, left, more)

        self._tell(read)

    def print(self) -> None:
        """The pack as a PDF beside the design file; the same one as the command writes."""
        from brimwork.pack.document import write_pack  # loads the printer, which nothing else here needs

        paper = Path(self.mine).with_suffix(".pdf")
        if os.path.exists(paper) and self._first_time(f"print {paper} {_print_of(paper)}", f"{paper} is there already: press Print again to replace it"):
            return
        self._tell(lambda: write_pack(self.design, paper, replace=True), "Printed", str(paper))

    def _stands_in(self, name: str, left: Left | None = None, more: int = 0) -> None:
        """The file that the design is of now; `left` when changes to it were kept that are not in it, and how many more of such there are."""
        self.mine, self.unsaved = name, bool(left)
        self.asking.children, self.unkept.value = (), ""
        if left:
            said = f"With the changes of {escape(left.of)}, which were not saved."
            others = " There are others: see 'what was not saved' in the list beside Start from." if more else ""
            self.told.value += f"<p role='status'>{said}{others}</p>"
            self.place.children = (*([self.leave] if os.path.exists(name) else []), self.form.widget)
            if self.keeping.may_take(left.path):
                self.keeping.take(left.path)
            else:
                self._keep()

    def start(self) -> None:
        chosen = self.other.value
        if self.unsaved and self._first_time(f"start {chosen}", "The last change is not saved: press Start again to leave it, or save it first"):
            return
        name, (way, _, kind) = _free_name(Path(self.mine).parent), chosen.partition(" ")

        def begin() -> None:
            design = _begun(way, kind, self.design, chosen)
            self.keeping.drop()
            self.base = None
            self._put(design)
            self._stands_in(name)
            self.file.value, self.unsaved = name, True
            self._keep()

        self._tell(begin, "Started, not saved yet")

    def _put(self, design: Design) -> None:
        """Another design: its boxes in place of the old ones."""
        self.design, old = design, self.form
        self.form = Form(self, QUICK[design.kind] if self.quick else ())
        self.place.children = (self.form.widget,)
        old.close()
        self.redraw()

    def _first_time(self, what: str, question: str) -> bool:
        """Ask about something that cannot be taken back; False when it was asked just before."""
        if self.asked == what:
            self.asked = ""
            return False
        self.asked = what
        self.told.value = f"<p role='alert'>{escape(question)}.</p>"
        return True

    def _tell(self, act, done: str = "", file: str = "") -> bool:
        try:
            act()
        except Conflict:
            raise
        except InputError as error:
            self.told.value = f"<p role='alert' style='color:{ALERT}'>{escape(str(error))}.</p>"
            return False
        if done:
            self.told.value = f"<p role='status'>{escape(done)}: {escape(file or self.file.value.strip())}.</p>"
        return True


_WRAPPED, _FITTING = widgets.Layout(flex_flow="row wrap"), widgets.Layout(width="max-content")


def _button(name: str, tip: str, act) -> widgets.Button:
    button = widgets.Button(description=name, tooltip=tip, layout=_FITTING)
    button.on_click(lambda _: act())
    return button


def _named(name: str) -> str:
    if not name:
        raise InputError("the design file has no name: type one in the box, such as designs/mine.toml")
    return name


def _print_of(name: str | Path) -> str:
    """Tells one content of a file from another, so that a question about one is not an answer for the next."""
    with suppress(OSError):
        return hashlib.sha256(files.read_bounded(Path(name), 50_000_000)).hexdigest()
    return ""


def _meant(key: str) -> str:
    """What a key of a design means, for a label."""
    return HEADS.get(key) or f"{meant(key)[:1].upper()}{meant(key)[1:]}" if key not in ("kind",) else "Kind of feature"


def _with_changes(path: Path, kind: str = "") -> tuple[Design | None, Design, Left | None, int]:
    """What a file holds, the design with the changes that were made since and never saved, those changes, and how many more there are. Raises InputError.

    With a `kind`, a blank design of that kind where there is no file and nothing was kept.
    """
    now = file.load_design(path) if os.path.lexists(path) or not kind and not all_kept(path.parent, path.stem) else None
    left = left_of(path, now)
    if left:
        return left[-1].base or now, left[-1].mine, left[-1], len(left) - 1
    return now, now or (blank_design(kind, path.stem) if kind else file.load_design(path)), None, 0


def _begun(way: str, kind: str, here: Design, chosen: str) -> Design:
    """What a new design starts from. Raises InputError."""
    if way == "blank":
        return blank_design(kind, "My design")
    if way == "turned":
        return here.turned(kind)
    return read_kept(Path(kind)).mine if way == "kept" else file.load_design(chosen)


def _free_name(folder: Path) -> str:
    """A file name in the folder that nothing has yet."""
    for number in count(1):
        name = folder / f"my-design{'' if number == 1 else f'-{number}'}.toml"
        if not os.path.lexists(name) and not all_kept(folder, name.stem):
            return str(name)


def design(path: str, kind: str = "") -> DesignView | None:
    """Open a design file: boxes for its values, findings and drawings that follow every change. Returns what is open, for `buying` and `compare`.

    With a `kind` ("overflowing vessel", "drilled stones", "blade", "cascade") and a file that is not there yet, a blank design of that kind.
    """
    return _open(lambda: DesignView(Path(path), kind))


def quick_check(path: str) -> None:
    """Ten values of a design in one list, with findings and drawings that follow; the rest is as the file says."""
    _open(lambda: DesignView(Path(path), quick=True))


def _open(make) -> DesignView | None:
    try:
        view = make()
    except InputError as error:
        display(say(error))
        return None
    view.show()
    return view
