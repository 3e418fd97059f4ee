"""The design workbook: every value of a design file in a box of its own, findings and drawings that follow, saving and loading."""

from __future__ import annotations

from html import escape
from pathlib import Path

import ipywidgets as widgets
from IPython.display import display

from brimwork import typeset
from brimwork.design import checks, inputs
from brimwork.design.chain import Chain, Found
from brimwork.design.checks import Finding
from brimwork.design.features import NUMBERS, chain_of
from brimwork.design.fields import SECTIONS, Bounds, Choice, Curve, Several, sections
from brimwork.design.inputs import Unknown
from brimwork.drawing import svg
from brimwork.drawing.design import drawings
from brimwork.drawing.records import Sheet
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook.pages import Page, say
from brimwork.units import InputError

_ALERT = "var(--jp-error-color1, #b3261e)"  # the theme's own, so that it can be read on light and dark
_SHOWN = {"fail": ("✗", _ALERT), "marginal": ("!", "inherit"), "not shown": ("?", "inherit"), "pass": ("✓", "inherit"), "does not apply": ("–", "inherit")}
UNKNOWN = "don't know yet"


class Shown:
    """HTML with a plain text for those who see no HTML."""

    def __init__(self, html: str, plain: str):
        self.html, self.plain = html, plain

    def _repr_mimebundle_(self, **_) -> dict[str, str]:
        return {"text/html": self.html, "text/plain": self.plain}


class Entry:
    """The box of one value. An empty box means that nobody knows yet."""

    def __init__(self, view: DesignView, key: str):
        self.view, self.key = view, key
        section, _, name = key.partition(".")
        self.field = SECTIONS[section][name]
        label = f"{self.field.name[:1].upper()}{self.field.name[1:]}"
        wide = {"width": "44em"}
        if isinstance(self.field, Choice):
            self.box = widgets.Dropdown(options=[UNKNOWN, *self.field.options], description=label, style={"description_width": "30em"}, layout=wide)
        else:
            self.box = widgets.Text(description=label, placeholder=UNKNOWN, continuous_update=False, style={"description_width": "30em"}, layout=wide)
        self.message = widgets.HTML()
        self.widget = widgets.HBox([self.box, self.message])
        self.show()
        self.box.observe(self._changed, "value")

    def show(self) -> None:
        """Put what the design says into the box."""
        given = self.view.design.values.get(self.key)
        if given is None:
            self.box.value = UNKNOWN if isinstance(self.field, Choice) else ""
        else:
            self.box.value = given.text if isinstance(self.field, Choice) else self._text(given)
        self.message.value = f"<em>{escape(given.basis)}</em>" if given and given.basis != "yours" else ""

    def _text(self, given) -> str:
        if isinstance(self.field, Several | Curve):
            return self.field.write(given.value)
        return str(given.text)

    def _changed(self, change) -> None:
        if self.view.loading:
            return
        text = change["new"].strip()
        try:
            self.view.change(self.key, self._parsed(text))
        except InputError as error:
            self.message.value = f"<span role='alert' style='color:{_ALERT}'>{escape(str(error))}. The last good value still counts.</span>"
        else:
            self.message.value = ""

    def _parsed(self, text: str):
        """What the file would say: text, number, list, or None for nothing known."""
        if text in ("", UNKNOWN):
            return None
        if isinstance(self.field, Choice):
            return text
        if isinstance(self.field, Several):
            return [part.strip() for part in text.split(",")]
        if isinstance(self.field, Curve):
            return [[side.strip() for side in pair.split(" at ")] for pair in text.split(";")]
        if isinstance(self.field, Bounds):
            return text
        if not self.field.unit:  # a plain number stands in the file without quotes
            value = self.field.read(text, self.key)
            return int(value) if value == int(value) else value
        return text


class DesignView:
    """Boxes, findings and drawings of one design file."""

    def __init__(self, path: Path, kind: str = "", only: tuple[str, ...] = ()):
        self.only, self.mine, self.asked = only, str(path), ""  # the file it came from; the file asked about
        blank = kind and not path.exists()
        self.design, self.loading = inputs.blank(kind, path.stem) if blank else inputs.load(path), False
        self.parts = widgets.VBox([self._boxes()])
        self.file = widgets.Text(value=str(path), description="Design file", style={"description_width": "initial"}, layout={"width": "34em"})
        self.told = widgets.HTML()
        buttons = []
        for name, tip, act in (("Save", "write the design to the file named", self.save), ("Load", "read the design from the file named", self.load)):
            button = widgets.Button(description=name, tooltip=tip)
            button.on_click(lambda _, act=act: act())
            buttons.append(button)
        self.widget = widgets.VBox([widgets.HBox([self.file, *buttons]), self.told, self.parts])

    def _boxes(self) -> widgets.Widget:
        """Boxes for the sections of the design's kind, the feature's own part open; or just the few that were asked for."""
        parts = sections(self.design.kind)
        if self.only:
            self.entries = {key: Entry(self, key) for key in self.only}
            return widgets.VBox([entry.widget for entry in self.entries.values()])
        self.entries = {f"{section}.{key}": Entry(self, f"{section}.{key}") for section, fields in parts.items() for key in fields}
        boxes = [widgets.VBox([self.entries[f"{section}.{key}"].widget for key in fields]) for section, fields in parts.items()]
        return widgets.Accordion(children=boxes, titles=tuple(section.replace("_", " ").capitalize() for section in parts), selected_index=1)

    def show(self) -> None:
        display(self.widget)
        chain = chain_of(self.design)
        self.findings = display(findings_shown(chain), display_id=True)
        self.pictures = display(drawings_shown(chain), display_id=True)

    def redraw(self) -> None:
        chain = chain_of(self.design)
        self.findings.update(findings_shown(chain))
        self.pictures.update(drawings_shown(chain))

    def change(self, key: str, text) -> None:
        self.design = self.design.having(key, text)
        self.told.value = "<p>Changed, not saved.</p>"
        self.redraw()

    def save(self) -> None:
        name = self.file.value.strip()
        if Path(name).exists() and name not in (self.mine, self.asked):
            self.asked = name
            self.told.value = f"<p role='alert'>{escape(name)} is there already: press Save again to replace it, or name another file.</p>"
            return
        self._tell(lambda: inputs.save(self.design, name), "Saved")
        self.mine = name

    def load(self) -> None:
        def read() -> None:
            before, self.design = self.design.kind, inputs.load(self.file.value.strip())
            self.mine = self.file.value.strip()
            if self.design.kind != before:
                self.parts.children = (self._boxes(),)
            self.loading = True
            try:
                for entry in self.entries.values():
                    entry.show()
            finally:
                self.loading = False
            self.redraw()

        self._tell(read, "Loaded")

    def _tell(self, act, done: str) -> None:
        try:
            act()
        except InputError as error:
            self.told.value = f"<p role='alert' style='color:{_ALERT}'>{escape(str(error))}.</p>"
        else:
            self.told.value = f"<p role='status'>{done}: {escape(self.file.value.strip())}.</p>"


def findings_shown(chain: Chain) -> Shown:
    """All findings, fails first, each with its working folded behind it."""
    found = checks.findings(chain)
    counts = ", ".join(f"{sum(f.grade == grade for f in found)} {grade}" for grade in checks.GRADES if any(f.grade == grade for f in found))
    rows = "".join(_graded_html(chain, grade, [finding for finding in found if finding.grade == grade]) for grade in checks.GRADES)
    html = f"<section style='max-width:720px'><h3>Findings</h3><p aria-live='polite'>{counts}. Nothing here is approval: local codes and licensed practice come first.</p>{rows}</section>"
    plain = "\n".join([f"Findings: {counts}", *(f"{finding.grade}: {finding.title}: {finding.value}" for finding in found)])
    return Shown(html, plain)


def _graded_html(chain: Chain, grade: str, found: list[Finding]) -> str:
    """Fails and marginals in the open; the others folded, for nobody reads seventy lines."""
    rows = "".join(_finding_html(chain, finding) for finding in found)
    if grade in ("fail", "marginal") or not found:
        return rows
    mark, colour = _SHOWN[grade]
    return (
        f"<details><summary><strong style='color:{colour}'>{mark} {len(found)} {grade}</strong></summary><div style='margin-left:1.5em'>{rows}</div></details>"
    )


def _finding_html(chain: Chain, finding: Finding) -> str:
    mark, colour = _SHOWN[finding.grade]
    body = [f"<p>Limit: {escape(finding.limit)}. Basis: {escape(finding.basis)}.</p>" if finding.limit else f"<p>Basis: {escape(finding.basis)}.</p>"]
    body += [f"<p>{escape(finding.note)}</p>"] if finding.note else []
    body += [f"<p><strong>What to change:</strong> {escape(finding.remedy)}.</p>"] if finding.remedy else []
    lines = [line for name in finding.results for line in _working_lines(chain, name)]
    body += [f"<pre style='white-space:pre-wrap'>{escape(chr(10).join(lines))}</pre>"] if lines else []
    return (
        f"<details><summary><strong style='color:{colour}'>{mark} {finding.grade}</strong> "
        f"{escape(finding.title)}: {escape(finding.value)}</summary>{''.join(body)}</details>"
    )


def _working_lines(chain: Chain, name: str) -> list[str]:
    try:
        worked = chain.working(name)
    except (Unknown, InputError):
        return []
    if isinstance(worked, Found):
        row = QUANTITIES[worked.letter]
        return [f"{row.short_name}: {row.both(worked.result)}, {worked.how}"]
    return [f"{worked.formula.name}: {worked.formula.quantity.both(worked.result)}", *(f"    {line}" for line in typeset.working(worked, typeset.PLAIN)[:-1])]


def drawings_shown(chain: Chain) -> Shown:
    """Section and duty chart with their descriptions, or what each still needs."""
    html, plain = [], []
    for number, (name, sheet) in enumerate(drawings(chain)):
        if isinstance(sheet, Sheet):
            html.append(
                f"<figure style='margin:0 0 1em;max-width:720px'>{svg.write(sheet, f'dv{number}')}<figcaption>{escape(sheet.description)}</figcaption></figure>"
            )
            plain.append(sheet.description)
        else:
            html.append(f"<p>The {name} is not shown: {escape(sheet)}.</p>")
            plain.append(f"The {name} is not shown: {sheet}.")
    return Shown("".join(html), "\n".join(plain))


def design(path: str, kind: str = "") -> None:
    """Open a design file: boxes for its values, findings and drawings that follow every change.

    With a `kind` ("overflowing vessel", "drilled stones", "blade", "cascade") and a file that is not there yet, a blank design of that kind.
    """
    try:
        view = DesignView(Path(path), kind)
    except InputError as error:
        display(say(error))
        return
    view.show()


TEN = (
    "vessel.rim_diameter", "vessel.height", "vessel.mass", "vessel.water", "vessel.foot_outside", "reservoir.block_length", "reservoir.block_width",
    "pipe.bore", "pump.shut_off_head", "pump.free_flow",
)  # fmt: skip


def quick_check(path: str) -> None:
    """Ten values of a design in one list, with findings and drawings that follow; the rest is as the file says."""
    try:
        view = DesignView(Path(path), only=TEN)
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
    graded = [{finding.id: finding for finding in checks.findings(chain)} for chain in chains]
    for check in dict.fromkeys(finding.id for found in graded for finding in found.values()):
        pair = [found.get(check) for found in graded]
        if len({finding.grade for finding in pair}) > 1:
            rows.append((pair[0].title, *(f"{_SHOWN[finding.grade][0]} {finding.grade}: {finding.value}" for finding in pair)))
    head = ("", *(each.title for each in designs))
    table = "\n".join(["| " + " | ".join(row) + " |" for row in (head, ("---",) * 3, *rows)])
    return Page(table, "\n".join("; ".join(row) for row in (head, *rows)))


def _number_of(chain: Chain, name: str) -> str:
    if name not in chain.names():
        return "–"
    try:
        worked = chain.working(name)
    except Unknown as missing:
        return f"needs {checks.asked(missing)}"
    except InputError as refused:
        return str(refused)
    row = QUANTITIES[worked.letter if isinstance(worked, Found) else worked.formula.result]
    return row.both(worked.result)
