"""The design workbook: a design file as a form, with findings and drawings that follow every change; saving, loading, starting another."""

from __future__ import annotations

from html import escape
from pathlib import Path

import ipywidgets as widgets
from IPython.display import display

from brimwork.design import checks, inputs
from brimwork.design.chain import Chain
from brimwork.design.checks import Finding
from brimwork.design.features import NUMBERS, chain_of
from brimwork.design.fields import KINDS
from brimwork.design.inputs import Unknown
from brimwork.design.wording import graded, worded
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook.form import ALERT, Form
from brimwork.notebook.pages import Page, say
from brimwork.notebook.part import Part
from brimwork.notebook.results import MARKS, drawings_shown, findings_shown, followed
from brimwork.notebook.unfolded import Unfolded
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
    """Boxes, findings and drawings of one design file. What is not saved is never left without asking once."""

    def __init__(self, path: Path, kind: str = "", quick: bool = False):
        blank = kind and not path.exists()
        self.design = inputs.blank(kind, path.stem) if blank else inputs.load(path)
        self.quick, self.mine, self.unsaved, self.asked = quick, str(path), False, ""  # the file it came from; what was asked about last
        self.file = widgets.Text(value=str(path), description="Design file", style={"description_width": "initial"}, layout={"width": "34em"})
        self.other = widgets.Dropdown(
            options=self._others(path.parent), description="Start from", style={"description_width": "initial"}, layout={"width": "34em"}
        )
        self.told, self.found = widgets.HTML(), _found(chain_of(self.design))
        self.form = Form(self, QUICK[self.design.kind] if quick else ())
        self.place = widgets.VBox([self.form.widget])
        files = widgets.HBox([self.file, _button("Save", "write the design to the file named", self.save), _button("Load", "read the file named", self.load)])
        start = widgets.HBox([self.other, _button("Start", "begin a new design from what is chosen", self.start)])
        plain = f"The form of {path}, with a box for each value. It comes to life when the cell is run."
        self.widget = Part([files, *([] if quick else [start]), self.told, self.place, Unfolded()], plain)

    @staticmethod
    def _others(folder: Path) -> list[tuple[str, str]]:
        """What a new design can start from: a blank of each kind, or one of the files that lie there."""
        return [*((f"a blank: {kind}", f"blank {kind}") for kind in KINDS), *((f"a copy of {file.name}", str(file)) for file in sorted(folder.glob("*.toml")))]

    def show(self) -> None:
        display(self.widget)
        chain = chain_of(self.design)
        self.findings = display(findings_shown(chain, self.found), display_id=True)
        self.pictures = display(drawings_shown(chain), display_id=True)

    def redraw(self) -> None:
        chain = chain_of(self.design)
        self.found = _found(chain)
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

    def _changed(self, design: inputs.Design) -> None:
        self.design, self.unsaved, self.asked = design, True, ""
        self.told.value = "<p>Changed, not saved.</p>"
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
        if self._tell(lambda: inputs.save(self.design, _named(name)), "Saved"):
            self.mine, self.unsaved = name, False

    def load(self) -> None:
        name = self.file.value.strip()
        if self.unsaved and self._first_time(f"load {name}", "The last change is not saved: press Load again to leave it, or save it first"):
            return
        if self._tell(lambda: self._put(inputs.load(_named(name))), "Loaded"):
            self.mine, self.unsaved = name, False

    def start(self) -> None:
        chosen = self.other.value
        if self.unsaved and self._first_time(f"start {chosen}", "The last change is not saved: press Start again to leave it, or save it first"):
            return
        kind = chosen.removeprefix("blank ") if chosen.startswith("blank ") else ""
        name = _free_name(Path(self.mine).parent)

        def begin() -> None:
            self._put(inputs.blank(kind, "My design") if kind else inputs.load(chosen))
            self.file.value, self.mine, self.unsaved = name, name, True

        self._tell(begin, "Started, not saved yet")

    def _put(self, design: inputs.Design) -> None:
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

    def _tell(self, act, done: str) -> bool:
        try:
            act()
        except InputError as error:
            self.told.value = f"<p role='alert' style='color:{ALERT}'>{escape(str(error))}.</p>"
            return False
        self.told.value = f"<p role='status'>{done}: {escape(self.file.value.strip())}.</p>"
        return True


def _button(name: str, tip: str, act) -> widgets.Button:
    button = widgets.Button(description=name, tooltip=tip)
    button.on_click(lambda _: act())
    return button


def _named(name: str) -> str:
    if not name:
        raise InputError("the design file has no name: type one in the box, such as designs/mine.toml")
    return name


def _free_name(folder: Path) -> str:
    """A file name in the folder that nothing has yet."""
    names = (folder / f"my-design{'' if number == 1 else f'-{number}'}.toml" for number in range(1, 1000))
    return str(next(name for name in names if not name.exists()))


def design(path: str, kind: str = "") -> None:
    """Open a design file: boxes for its values, findings and drawings that follow every change.

    With a `kind` ("overflowing vessel", "drilled stones", "blade", "cascade") and a file that is not there yet, a blank design of that kind.
    """
    _open(lambda: DesignView(Path(path), kind))


def quick_check(path: str) -> None:
    """Ten values of a design in one list, with findings and drawings that follow; the rest is as the file says."""
    _open(lambda: DesignView(Path(path), quick=True))


def _open(make) -> None:
    try:
        view = make()
    except InputError as error:
        display(say(error))
        return
    view.show()


def compare(one: str, other: str) -> Page:
    """Two designs side by side: their key numbers, and every check that they grade differently."""
    try:
        designs = [inputs.load(path) for path in (one, other)]
    except InputError as error:
        return say(error)
    chains = [chain_of(each) for each in designs]
    rows = [(NUMBERS[name], *(_number_of(chain, name) for chain in chains)) for name in NUMBERS if any(name in chain.names() for chain in chains)]
    found_of = [{finding.id: finding for finding in reversed(_found(chain))} for chain in chains]  # of one name the graded one, which stands first
    for check in dict.fromkeys(finding.id for found in found_of for finding in found.values()):
        pair = [found.get(check) for found in found_of]
        if len({finding.grade for finding in pair}) > 1:
            rows.append((pair[0].title, *(f"{MARKS[finding.grade][0]} {finding.grade}: {finding.value}" for finding in pair)))
    head = ("", *(each.title for each in designs))
    table = "\n".join(["| " + " | ".join(row) + " |" for row in (head, ("---",) * 3, *rows)])
    return Page(table, "\n".join("; ".join(row) for row in (head, *rows)))


def _found(chain: Chain) -> list[Finding]:
    """All findings, in the words of the design's region."""
    return graded(checks.findings(chain), chain.design.region)


def _number_of(chain: Chain, name: str) -> str:
    if name not in chain.names():
        return "–"
    try:
        worked = chain.working(name)
    except (Unknown, InputError) as missing:
        return worded(checks.reason(missing), chain.design.region)
    row = QUANTITIES[worked.letter]
    return row.both(worked.result)
