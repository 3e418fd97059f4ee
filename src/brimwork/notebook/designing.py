"""The design workbook: a design file as a form, with findings and drawings that follow every change; saving, loading, starting another."""

from __future__ import annotations

import json
from contextlib import suppress
from datetime import datetime
from pathlib import Path

import ipywidgets as widgets
from IPython.display import display

from brimwork.design.follows.features import chain_of
from brimwork.design.typed import file
from brimwork.design.typed.design import Design, blank_design
from brimwork.design.typed.kinds import KINDS
from brimwork.notebook.form import ALERT, Form
from brimwork.notebook.pages import say
from brimwork.notebook.part import Part
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
UNSAVED = ".unsaved.toml"


class DesignView:
    """Boxes, findings and drawings of one design file. What is not saved is never left without asking once, and kept in a file beside it meanwhile."""

    def __init__(self, path: Path, kind: str = "", quick: bool = False):
        self.mine, self.unsaved, self.asked = str(path), False, ""  # the file it came from; what was asked about last
        self.quick, self.told, self.leave = quick, widgets.HTML(), _button("Leave them", "go back to the file as it was saved", self.leave_changes)
        blank = kind and not path.exists() and not _kept(path).exists()
        self.design, at = (blank_design(kind, path.stem), "") if blank else _with_changes(path)
        self.found = found_in(chain_of(self.design))
        self.file = widgets.Text(value=str(path), description="Design file", style={"description_width": "initial"}, layout={"width": "34em"})
        self.other = widgets.Dropdown(
            options=self._others(path.parent), description="Start from", style={"description_width": "initial"}, layout={"width": "34em"}
        )
        self.form = Form(self, QUICK[self.design.kind] if quick else ())
        self.place = widgets.VBox([self.form.widget])
        self._stands_in(self.mine, at)
        buttons = (
            _button("Save", "write the design to the file named", self.save),
            _button("Load", "read the file named", self.load),
            _button("Print", "write the pack to build from, as a PDF beside the design file", self.print),
        )
        files = widgets.HBox([self.file, *buttons], layout=_WRAPPED)
        start = widgets.HBox([self.other, _button("Start", "begin a new design from what is chosen", self.start)], layout=_WRAPPED)
        plain = f"The form of {path}, with a box for each value."
        self.widget = Part([files, *([] if quick else [start]), self.told, self.place, Unfolded()], plain)

    @staticmethod
    def _others(folder: Path) -> list[tuple[str, str]]:
        """What a new design can start from: a blank of each kind, what stands here as another kind, or one of the files that lie there."""
        return [
            *((f"a blank: {kind}", f"blank {kind}") for kind in KINDS),
            *((f"what stands here, as: {kind}", f"turned {kind}") for kind in KINDS),
            *((f"a copy of {file.name}", str(file)) for file in sorted(folder.glob("[!.]*.toml"))),
            *((f"what was not saved of {file.name[1:].removesuffix(UNSAVED)}", str(file)) for file in sorted(folder.glob(f".*{UNSAVED}"))),
        ]

    def leave_changes(self) -> None:
        """Back to the file as it was saved."""
        if self._tell(lambda: self._put(file.load_design(self.mine)), "As it was saved", self.mine):
            self._drop_changes()
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
        with suppress(InputError):  # where nothing can be written, saving will say so
            file.save_design(design, _kept(Path(self.mine)))
        self.place.children = (self.form.widget,)
        self.redraw()

    def save(self) -> None:
        name = self.file.value.strip()
        if (
            name
            and name != self.mine
            and Path(name).exists()
            and self._first_time(name, f"{name} is there already: press Save again to replace it, or name another file")
        ):
            return
        if self._tell(lambda: file.save_design(self.design, _named(name)), "Saved"):
            self._drop_changes()
            self._stands_in(name)
            self._drop_changes()
            again = (
                ""
                if self.quick
                else f" To open it another day, put its name into this cell, under the grey line: <code>mine = design({escape(json.dumps(name))})</code>."
            )
            self.told.value = f"<p role='status'>Saved: {escape(name)}.{again}</p>"

    def load(self) -> None:
        name = self.file.value.strip()
        if self.unsaved and self._first_time(f"load {name}", "The last change is not saved: press Load again to leave it, or save it first"):
            return

        def read() -> None:
            if name == self.mine:
                self._drop_changes()
            design, at = _with_changes(Path(_named(name)))
            self._drop_changes()
            self._put(design)
            self.told.value = f"<p role='status'>Loaded: {escape(name)}.</p>"
            self._stands_in(name, at)

        self._tell(read)

    def print(self) -> None:
        """The pack as a PDF beside the design file; the same one as the command writes."""
        from brimwork.pack.document import write_pack  # loads the printer, which nothing else here needs

        paper = Path(self.mine).with_suffix(".pdf")
        if paper.exists() and self._first_time(f"print {paper}", f"{paper} is there already: press Print again to replace it"):
            return
        self._tell(lambda: write_pack(self.design, paper), "Printed", str(paper))

    def _stands_in(self, name: str, at: str = "") -> None:
        """The file that the design is of now; `at` when changes to it were kept that are not in it."""
        self.mine, self.unsaved = name, bool(at)
        if at:
            self.told.value += f"<p role='status'>With the changes of {escape(at)}, which were not saved.</p>"
            self.place.children = (*([self.leave] if Path(name).exists() else []), self.form.widget)

    def _drop_changes(self) -> None:
        """What is saved, or left on purpose, need not be kept."""
        _kept(Path(self.mine)).unlink(missing_ok=True)

    def start(self) -> None:
        chosen = self.other.value
        if self.unsaved and self._first_time(f"start {chosen}", "The last change is not saved: press Start again to leave it, or save it first"):
            return
        name, (way, _, kind) = _free_name(Path(self.mine).parent), chosen.partition(" ")

        def begin() -> None:
            self._put(blank_design(kind, "My design") if way == "blank" else self.design.turned(kind) if way == "turned" else file.load_design(chosen))
            self._drop_changes()
            self._stands_in(name)
            self.file.value, self.unsaved = name, True

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


def _kept(path: Path) -> Path:
    """The file of the changes to a design since it was last saved, in case nobody comes back to save them."""
    return path.with_name(f".{path.stem}{UNSAVED}")


def _with_changes(path: Path) -> tuple[Design, str]:
    """The design in a file, with the changes that were made since and never saved, and when that was. Raises InputError."""
    kept = _kept(path)
    with suppress(OSError, InputError):
        at = kept.stat().st_mtime
        if not path.exists() or at > path.stat().st_mtime:
            return file.load_design(kept), f"{datetime.fromtimestamp(at):%d %B %Y, %H:%M}"
    return file.load_design(path), ""


def _free_name(folder: Path) -> str:
    """A file name in the folder that nothing has yet."""
    names = (folder / f"my-design{'' if number == 1 else f'-{number}'}.toml" for number in range(1, 1000))
    return str(next(name for name in names if not name.exists() and not _kept(name).exists()))


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
