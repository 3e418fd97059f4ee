"""The form of a design: every value in a box of its own with its basis, in steps. The boxes of a step are made when it is opened."""

from __future__ import annotations

from typing import Protocol

import ipywidgets as widgets
from ipywidgets.widgets.widget_description import DescriptionStyle
from ipywidgets.widgets.widget_string import HTMLStyle, TextStyle

from brimwork.design.typed.design import Design
from brimwork.design.typed.fields import BASES, REGIONS, SECTIONS, sections
from brimwork.design.typed.limits import Bounds
from brimwork.design.typed.reading import Corners, Curve, Date, Dates, OneOf, Several
from brimwork.design.typed.wording import spoken, worded
from brimwork.notebook.folds import Folds
from brimwork.shown import escape
from brimwork.units import InputError

# The theme's own red, mixed with the colour of its text, so that it can be read on light and dark.
ALERT = "color-mix(in srgb, var(--jp-error-color1, #b3261e) 70%, currentcolor)"
UNKNOWN = "don't know yet"
HEADS = {"title": "Title", "region": "Region", "note": "Note"}
# Step of the form: the sections in it, or single keys of a section that belong to it rather than to their section's step.
FORM_STEPS: dict[str, tuple[str, ...]] = {
    "Brief": ("title", "region", "note", "site.use", "site.unattended", "site.open_water", "site.legionella"),
    "Site": ("site",),
    "Feature": ("vessel", "stones", "blade", "cascade", "slab", "flow"),
    "Reservoir": ("reservoir", "levels", "overflow_pipe", "climate"),
    "Pump and pipe": ("pump", "pipe"),
    "Ground": ("ground", "site.soil_bearing", "site.footing_distance", "site.footing_depth", "site.pit_sides", "site.ground_water", "site.frost_depth"),
    "Lining and stone": ("lining", "catch"),
    "Supply": ("supply",),
    "Handling": tuple(f"site.{key}" for key in SECTIONS["site"] if key.startswith(("lift_", "sling_")) or key in ("gate", "widest_item")),
    "Cost": ("site.budget", "site.cost", "buying", "prices", "costing"),
    "Programme": ("programme",),
    "Questions to answer": ("answers",),
    "Measured on site": ("measured",),
    "Assumptions and limits": ("assumptions", "limits"),
}


class Open(Protocol):
    """The open design, as its form sees it."""

    design: Design
    form: Form

    def change(self, key: str, text, basis: str = "yours") -> str:
        """One value changed: what that did to the findings. Raises InputError."""

    def head(self, key: str, words: str) -> None:
        """Title, note or region changed. Raises InputError."""


def keys_of(step: str, kind: str) -> list[str]:
    """The keys of a step for a kind of feature, in the order of the design file; those of the head first."""
    single = {key for entries in FORM_STEPS.values() for key in entries if "." in key}
    found = [entry for entry in FORM_STEPS[step] if entry in HEADS]
    for section, fields in sections(kind).items():
        keys = (f"{section}.{name}" for name in fields)
        found += [key for key in keys if (key in FORM_STEPS[step] if key in single else section in FORM_STEPS[step])]
    return found


# One look for all boxes: shared by them, because the page opens faster with few of them.
_TYPED, _CHOSEN = TextStyle(description_width="29em"), DescriptionStyle(description_width="29em")
_NARROW, _WIDE = widgets.Layout(width="45em", max_width="100%"), widgets.Layout(width="47em", max_width="100%")
_BASIS, _BASIS_NAME = widgets.Layout(width="16em"), DescriptionStyle(description_width="3em")
_ROW = widgets.Layout(flex_flow="row wrap")
_SAID, _SAID_STYLE = widgets.Layout(), HTMLStyle()
# A long name takes two lines; titles of steps stand at the left.
_STYLE = """<style>.brimwork-form .widget-label { white-space: normal; overflow: visible; height: auto; line-height: 1.25; align-self: center;
  flex-shrink: 1; min-width: 7em }
.brimwork-form .brimwork-basis .widget-label { min-width: 3em }
.brimwork-form .widget-inline-hbox { max-width: 100% }
.brimwork-form .widget-inline-hbox :is(input, select) { min-width: 9em }
.brimwork-form .widget-hbox { overflow: visible }
.brimwork-fold.jupyter-button { text-align: left }</style>"""


def _label(text: str) -> str:
    return text[:1].upper() + text[1:]


class ValueEntry:
    """The box of one value, its basis beside it. An empty box means that nobody knows yet."""

    def __init__(self, view: Open, key: str):
        self.view, self.key, self.showing = view, key, False
        section, _, name = key.partition(".")
        self.field = SECTIONS[section][name]
        wide = isinstance(self.field, Several | Dates | Curve | Corners) or isinstance(self.field, OneOf) and max(map(len, self.field.options)) > 20
        looks = {"layout": _WIDE if wide else _NARROW} | self._words()
        if isinstance(self.field, OneOf):
            self.box = widgets.Dropdown(style=_CHOSEN, **looks)
        else:
            self.box = widgets.Text(continuous_update=False, style=_TYPED, **looks)
        name = spoken(self.field.name, self.view.design.region)
        self.basis = widgets.Dropdown(options=BASES, description="basis", tooltip=f"what the {name} rests on", layout=_BASIS, style=_BASIS_NAME)
        self.basis.add_class("brimwork-basis")
        self.message = widgets.HTML(layout=_SAID, style=_SAID_STYLE)
        self.widget = widgets.HBox([self.box, self.basis, self.message], layout=_ROW)
        self.show()
        self.box.observe(self._changed, "value")
        self.basis.observe(self._rests, "value")

    def _words(self) -> dict[str, object]:
        """Name of the box, and what it offers, in the words of the region."""
        label = _label(spoken(self.field.name, self.view.design.region))
        name: dict[str, object] = {"description": label, "tooltip": label}
        if not isinstance(self.field, OneOf):
            return name | {"placeholder": self._empty()}
        return name | {"options": [(self._empty(), ""), *((spoken(option, self.view.design.region), option) for option in self.field.options)]}

    def worded(self) -> None:
        """Put the words of another region beside and into the box."""
        self.showing = True
        try:
            for what, words in self._words().items():
                setattr(self.box, what, words)
        finally:
            self.showing = False
        self.show()

    def _empty(self) -> str:
        return self.field.hint(self.view.design.region) or UNKNOWN

    def show(self) -> None:
        """Put what the design says into the boxes."""
        given, self.showing = self.view.design.values.get(self.key), True
        try:
            if given is None:
                self.box.value = ""
            else:
                self.box.value = self._typed(given.text)
            self.basis.value, self.basis.disabled = given.basis if given else "yours", given is None
            self.message.value = ""
        finally:
            self.showing = False

    def _typed(self, text) -> str:
        """What the file says as one would type it into the box."""
        if isinstance(self.field, Several | Dates):
            return ", ".join(map(str, text))
        if isinstance(self.field, Curve | Corners):
            return "; ".join(" at ".join(map(str, pair)) for pair in text)
        return str(text)

    def _changed(self, change) -> None:
        if not self.showing:
            self._take(change["new"].strip(), "yours")

    def _rests(self, change) -> None:
        if not self.showing:
            self._take(self.box.value.strip(), change["new"])

    def _take(self, text: str, basis: str) -> None:
        try:
            followed = self.view.change(self.key, self._parsed(text), basis)
        except InputError as error:
            self.message.value = f"<span role='alert' style='color:{ALERT}'>{escape(self._plainly(error))}. The last good value still counts.</span>"
        else:
            self.view.form.hush()
            self.show()
            self.message.value = f"<span role='status'>{escape(followed)}</span>"

    def _plainly(self, error: InputError) -> str:
        """What was refused, for someone who looks at a box and not at the file."""
        said = str(error).replace(f"write {self.key} = ", "type ")
        return _label(said.replace(f"{self.key} = ", "").replace(self.key, self.field.name))

    def _parsed(self, text: str):
        """What the file would say: text, number, list, or None for nothing known."""
        if text in ("", UNKNOWN, self._empty()):
            return None
        if isinstance(self.field, Several | Dates):
            return [part.strip() for part in text.split(",")]
        if isinstance(self.field, Curve | Corners):
            return [[side.strip() for side in pair.split(" at ")] for pair in text.split(";")]
        if isinstance(self.field, OneOf | Bounds | Date) or self.field.unit:
            return text
        value = self.field.read(text, self.key)  # a plain number stands in the file without quotes
        return int(value) if value == int(value) else value


class HeadEntry:
    """The box of a title, a note or the region."""

    def __init__(self, view: Open, key: str):
        self.view, self.key, self.showing = view, key, False
        if key == "region":
            self.box = widgets.Dropdown(options=REGIONS, description=HEADS[key], style=_CHOSEN, layout=_NARROW)
        else:
            self.box = widgets.Text(description=HEADS[key], continuous_update=False, style=_TYPED, layout=_WIDE)
        self.message = widgets.HTML(layout=_SAID, style=_SAID_STYLE)
        self.widget = widgets.HBox([self.box, self.message], layout=_ROW)
        self.show()
        self.box.observe(self._changed, "value")

    def show(self) -> None:
        self.showing = True
        try:
            self.box.value, self.message.value = getattr(self.view.design, self.key), ""
        finally:
            self.showing = False

    def _changed(self, change) -> None:
        if self.showing:
            return
        try:
            self.view.head(self.key, change["new"])
        except InputError as error:
            self.message.value = f"<span role='alert' style='color:{ALERT}'>{escape(str(error))}. The last good one still counts.</span>"
        else:
            self.message.value = ""


class Form:
    """The steps of a design's kind as parts to unfold, or just the few boxes that were asked for."""

    def __init__(self, view: Open, only: tuple[str, ...] = ()):
        self.view = view
        self.entries: dict = {}
        if only:
            self.steps = {}
            self.widget = self._boxes(only)
            return
        self.steps = {step: keys for step in FORM_STEPS if (keys := keys_of(step, view.design.kind))}
        self.widget = Folds(len(self.steps))
        self.told()
        self.widget.observe(self._opened, "selected_index")
        self.widget.selected_index = list(self.steps).index("Feature")

    def _boxes(self, keys) -> widgets.VBox:
        self.entries |= {key: (HeadEntry if key in HEADS else ValueEntry)(self.view, key) for key in keys}
        boxes = widgets.VBox([widgets.HTML(_STYLE), *(self.entries[key].widget for key in keys)])
        boxes.add_class("brimwork-form")
        return boxes

    def _opened(self, change) -> None:
        """Make the boxes of a step that is opened for the first time."""
        at = change["new"]
        if at is not None and not self.widget.parts[at].children:
            self.widget.parts[at].children = (self._boxes(list(self.steps.values())[at]),)

    def worded(self) -> None:
        """Put the words of another region into all boxes and titles."""
        for entry in self.entries.values():
            if isinstance(entry, ValueEntry):
                entry.worded()
        self.told()

    def told(self) -> None:
        """Say in the title of every step how much of it is known."""
        if not self.steps:
            return
        values = self.view.design.values
        known = {step: [sum(key in values for key in keys), sum("." in key for key in keys)] for step, keys in self.steps.items()}
        region = self.view.design.region
        titles = [f"{worded(step, region)}: {some} of {all_} known" if all_ else worded(step, region) for step, (some, all_) in known.items()]
        if tuple(titles) != tuple(self.widget.titles):
            self.widget.titles = titles

    def hush(self) -> None:
        """Take away what was said beside the boxes about an earlier change; what is wrong in a box stays said."""
        for entry in self.entries.values():
            if "role='status'" in entry.message.value:
                entry.message.value = ""

    def close(self) -> None:
        """Take the boxes out of the page and out of the kernel."""
        _close(self.widget)


def _close(widget: widgets.Widget) -> None:
    for child in getattr(widget, "children", ()):
        _close(child)
    widget.close()
