"""What `import brimwork` gives: formulas to find, work and draw; designs to load, read and change. All of it lazily, from the modules where it lives."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import fields, is_dataclass
from functools import cached_property
from pathlib import Path
from typing import Any, TypeVar

from brimwork import accepting, topics, units
from brimwork.design.follows.chain import Chain
from brimwork.design.follows.features import chain_of
from brimwork.design.typed.design import Design, field_of
from brimwork.design.typed.file import load_design, save_design
from brimwork.design.typed.reading import Field
from brimwork.drawing import image, svg
from brimwork.drawing.design import drawings
from brimwork.drawing.pictures import picture
from brimwork.drawing.records import Sheet
from brimwork.formula import Formula
from brimwork.needing import needed
from brimwork.pack.document import write_pack
from brimwork.report import Judgement, Result, design_as_json, judgements_of, results_of
from brimwork.search import search
from brimwork.spellings import nearest
from brimwork.units import InputError

_Row = TypeVar("_Row", Result, Judgement)


class Svg(str):
    """A drawing as SVG text; a notebook shows it as a picture. Save it with `Path("name.svg").write_text(drawing)`."""

    shown = ""

    @classmethod
    def of(cls, sheet: Sheet) -> Svg:
        """The SVG of a sheet, at its size on paper."""
        made = cls(svg.write_svg(sheet, scale_to_page=False))
        made.shown = image.element(sheet)
        return made

    def _repr_html_(self) -> str:
        return self.shown

    def __repr__(self) -> str:
        return f"<Svg of {len(self)} characters>"


def matching(words: str) -> list[Formula]:
    """The formulas that have to do with some words, those first that have them in their name; empty where there is none.

    >>> import brimwork
    >>> brimwork.matching("level lip")[0]
    <Formula 'flow over a level lip': Q = 2/3*C_d*b*sqrt(2*g)*H**(3/2)>
    """
    return [formula for formulas in search(words).values() for formula in formulas]


def drawn(formula: Formula | str, over: str = "", **values: Any) -> Svg:
    """The picture of a formula at some values, with its curve over the letter `over` (the first letter if none is named), as SVG.

    Values are taken as in a call. Raises InputError like a call, and for a letter that the formula does not take.

    >>> import brimwork
    >>> brimwork.drawn("flow over a level lip", over="H", b="600 mm", H="12 mm", C_d=0.62)[:5]
    '<svg '
    """
    one = topics.find(formula) if isinstance(formula, str) else formula
    worked = one.work(**values)
    if over and over not in one.inputs:
        raise one.unknown_letter(over)
    return Svg.of(picture(one, one.only(accepting.plain(values)), over or worked.formula.inputs[0]).sheet)


def as_table(rows: Iterable[Any], frame: bool = False) -> Any:
    """Results, findings or steps of a derivation as a list of dicts; with `frame` as a pandas data frame. Raises InputError without pandas.

    A pair of limits becomes two columns: "passes" is "passes_from" and "passes_to".

    >>> import brimwork
    >>> steps = brimwork.steps_of(brimwork.find("flow over a level lip"))
    >>> [row["how"] for row in brimwork.as_table(steps)]
    ['law, not proved here', 'taken: a modelling choice', 'follows: by algebra', 'follows: by algebra', 'follows: by algebra']
    """
    table = [_flat(row) for row in rows]
    if not frame:
        return table
    with needed("pandas", "a data frame"):
        import pandas
    return pandas.DataFrame(table)


def _flat(row: Any) -> dict[str, Any]:
    if not is_dataclass(row) or isinstance(row, type):
        raise InputError(f"{row!r} is no row of a table: give the results or findings of a feature, or the steps of a formula")
    flat: dict[str, Any] = {}
    for field in fields(row):
        value = getattr(row, field.name)
        if field.name in ("passes", "marginal"):
            flat[f"{field.name}_from"], flat[f"{field.name}_to"] = value or (None, None)
        else:
            flat[field.name] = value
    return flat


def _as_typed(key: str, value: Any) -> Any:
    """A pint quantity as text that a design can hold, in the unit of its field; anything else as it is. Raises InputError for another dimension."""
    if not accepting.is_pint(value):
        return value
    section, _, name = key.partition(".")
    field = field_of(section, name)
    if accepting.is_array(value):
        raise InputError(f"{key} = {value} holds more than one: a design has one value for each key")
    if not isinstance(field, Field):
        raise InputError(f"{key} = {value} is a quantity, but no number is wanted: give text, as it stands in a design file")
    unit = units.unit(field.unit)
    wanted = "rad" if field.unit == "deg" else ""
    number = accepting.in_si(key, value, unit.dimension, wanted, f'({field.name}): give one such as "{field.suggested()}"')
    return f"{units.convert(float(number), field.unit)!r} {field.unit}".strip()


class Feature:
    """One design of a water feature: what it comes to, how it is judged, its drawings. A change gives a new feature; none is changed in place.

    >>> import brimwork
    >>> bowl = brimwork.Feature.load("designs/library-bowl.toml")
    >>> bowl.title, bowl.kind, bowl.region
    ('Library bowl', 'overflowing vessel', 'UK')
    >>> head = bowl.result("rim_head")
    >>> head.name, head.unit
    ('head over the rim at that flow', 'm')
    >>> 0.001 < head.value < 0.010
    True
    >>> sorted({finding.grade for finding in bowl.findings} - {"marginal"})
    ['does not apply', 'fail', 'not shown', 'pass']
    """

    def __init__(self, design: Design) -> None:
        self._design = design

    @classmethod
    def load(cls, path: str | Path) -> Feature:
        """The feature of a design file. Raises InputError that names the file and what to change in it."""
        return cls(load_design(path))

    def save(self, path: str | Path) -> None:
        """Write the design file, whole or not at all; comments in a design of its kind that is there are kept. Raises InputError."""
        save_design(self._design, path)

    def having(self, key: str, value: Any) -> Feature:
        """The same feature with one value of the design file changed; None takes it out. Raises InputError.

        The value is what stands in the file (text with a unit, a plain number where none is needed) or a pint quantity.

        >>> import brimwork
        >>> bowl = brimwork.Feature.load("designs/library-bowl.toml")
        >>> wider = bowl.having("vessel.rim_diameter", "900 mm")
        >>> round(wider.result("rim_length").value, 4)  # m, pi x 0.9
        2.8274
        """
        return Feature(self._design.having(key, _as_typed(key, value)))

    title = property(lambda self: self._design.title, doc="The title of the design.")
    kind = property(lambda self: self._design.kind, doc="The kind of feature, such as 'overflowing vessel'.")
    region = property(lambda self: self._design.region, doc="'UK' or 'US': the words and units that findings are told in.")

    @cached_property
    def results(self) -> list[Result]:
        """Every number of the design, in SI, with its working; one that cannot be worked out says why."""
        return results_of(self._chain)

    @cached_property
    def findings(self) -> list[Judgement]:
        """Every check with its grade, number and limits, fails first."""
        return judgements_of(self._chain)

    def result(self, code: str) -> Result:
        """One result by its code. Raises InputError with the nearest codes."""
        return self._coded(self.results, code, "result")

    def finding(self, code: str) -> Judgement:
        """One check by its code; of two for different kinds of feature the one that applies. Raises InputError with the nearest codes."""
        return self._coded(sorted(self.findings, key=lambda one: one.grade != "does not apply"), code, "check")

    @property
    def drawings(self) -> list[str]:
        """The names of the drawings of this kind of feature."""
        return [name for name, _ in self._drawn]

    def draw(self, name: str) -> Svg:
        """A drawing by its name, as SVG. Raises InputError for another name, and for a drawing that cannot be made, with what it needs.

        >>> import brimwork
        >>> brimwork.Feature.load("designs/library-bowl.toml").draw("section")[:5]
        '<svg '
        """
        made = dict(self._drawn)
        if name not in made:
            raise InputError(f"there is no drawing '{name}'.{nearest(name, made)} There are: {', '.join(made)}")
        sheet = made[name]
        if not isinstance(sheet, Sheet):
            raise InputError(f"the drawing '{name}' cannot be made: {sheet}")
        return Svg.of(sheet)

    def as_json(self) -> dict[str, Any]:
        """Values, results and findings as plain data, the same as `brimwork pack DESIGN --json` prints."""
        return design_as_json(self._design)

    def write_pack(self, path: str | Path, replace: bool = False) -> None:
        """Print the design pack as a PDF; one that is there and was changed since is replaced only with `replace`. Raises InputError where it cannot be written."""
        write_pack(self._design, Path(path), replace=replace)

    @cached_property
    def _chain(self) -> Chain:
        return chain_of(self._design)

    @cached_property
    def _drawn(self) -> list[tuple[str, Sheet | str]]:
        return drawings(self._chain)

    @staticmethod
    def _coded(rows: list[_Row], code: str, what: str) -> _Row:
        by_code = {row.code: row for row in rows}
        if code not in by_code:
            raise InputError(f"there is no {what} '{code}'.{nearest(code, by_code)}")
        return by_code[code]

    def __repr__(self) -> str:
        return f"<Feature '{self.title}': {self.kind}>"
