"""Pages without controls: a worked example, a derivation, the check of the set-up. Each shows as markdown with formulas, and as plain text."""

from __future__ import annotations

import ast
import re
from collections.abc import Callable, Iterable, Sequence

from brimwork import system, topics, typeset
from brimwork.derivation import derived as verified
from brimwork.dimensions import BASE
from brimwork.drawing import image
from brimwork.drawing.pictures.steps_drawn import SKETCHED
from brimwork.drawing.records import Sheet
from brimwork.edition import __version__
from brimwork.exercise.blanks import in_whole_ones
from brimwork.formula import Formula, Published, origin
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook import given_values, progress
from brimwork.notebook.given_values import InCell
from brimwork.notebook.kept import words_here
from brimwork.shown import Markup, attribute, escape, markdown_read_here
from brimwork.topics.pumps import FEEBLE, IMPOSSIBLE, POSSIBLE, nameplate_check
from brimwork.units import InputError

HOW = {"algebra": "checked by algebra", "numbers": "checked numerically, to 30 digits"}
_KINDS = {"law": "law", "take": "we take", "formula": "formula"}


class Page:
    """Markdown for JupyterLab, plain text for everything else."""

    def __init__(self, markdown: str, plain: str):
        self.markdown, self.plain = markdown_read_here(markdown, words_here), words_here(plain)

    def _repr_mimebundle_(self, **_) -> dict[str, str]:
        return {"text/markdown": self.markdown, "text/plain": self.plain}


class Shown:
    """HTML with a plain text for those who see no HTML."""

    def __init__(self, html: Markup, plain: str):
        self.html, self.plain = html, plain

    def _repr_mimebundle_(self, **_) -> dict[str, str]:
        return {"text/html": self.html, "text/plain": self.plain}


def say(error: InputError) -> Shown:
    """What to do about a value that cannot be used, instead of a traceback."""
    said = f"{error}{'' if str(error).endswith(('.', '.)')) else '.'}"
    return Shown(Markup(f"<p role='alert'><strong>Please change something:</strong> {escape(said)}</p>"), f"Please change something: {said}")


def table(head: Sequence[str], rows: Iterable[Sequence[str]], caption: str = "", words: Callable[[str], str] = words_here) -> Markup:
    """A table of texts, the first of each row its name; a long one scrolls. Its `words` are those of the system in use, if nothing else is said."""
    heads = "".join(f"<th scope='col' style='text-align:left'>{escape(cell)}</th>" for cell in head)
    body = "".join(
        f"<tr><th scope='row' style='text-align:left;font-weight:normal'>{escape(words(first))}</th>{_cells(map(words, rest))}</tr>" for first, *rest in rows
    )
    titled = f"<caption style='text-align:left'><strong>{escape(caption)}</strong></caption>" if caption else ""
    role = f" tabindex='0' role='region' aria-label='{attribute(caption)}'" if caption else ""
    return Markup(f"<div style='overflow-x:auto'{role}><table>{titled}<thead><tr>{heads}</tr></thead><tbody>{body}</tbody></table></div>")


def _cells(cells: Iterable[str]) -> Markup:
    return Markup("".join(f"<td style='text-align:left'>{escape(cell)}</td>" for cell in cells))


def work(name: str, **values: InCell) -> Page | Shown:
    """One formula worked with your numbers, such as work("flow over a level lip", b="4 m", H="0.2 m", C_d="0.62").

    A value may be given in both systems, b="4 m or 13 ft", or be carried on from a sum above: q=...
    """
    try:
        formula = topics.find(name)
        worked = formula.work(**given_values.typed(formula, values))
    except InputError as error:
        return say(error)
    stated = given_values.stated(values)
    put = typeset.put(worked, stated)
    given_values.keep(formula.result, put.result, put.unit)
    lines_shown = [f"$$\n{line}\n$$" for line in typeset.working(worked, stated=stated)]
    plain = typeset.working(worked, typeset.PLAIN, stated=stated)
    name = formula.quantity.short_name
    result = f"{name[0].upper()}{name[1:]}: {given_values.result_shown(formula, put.result, put.unit)}"
    told = given_values.given_told(formula, worked.values, values, put.factors)
    if _heavy(formula):
        lines_shown = ["<details><summary>The formula, and the numbers put in</summary>", *lines_shown, "</details>"]
    rounded = in_whole_ones(formula, worked.result)
    notes = [f"*Note: {note}.*" for note in worked.notes]
    tested = [f"*Tested range: {'; '.join(map(str, formula.tested))}.*"] if formula.tested else []
    return Page(
        "\n\n".join([told, *lines_shown, f"**{result}.** {rounded}".rstrip(), *notes, *once(formula, f"Worked. {told}", *tested)]),
        "\n".join([told, *plain, f"{result} {rounded}".rstrip(), *(f"Note: {note}" for note in worked.notes)]),
    )


def once(formula: Formula, told: str, *more: str) -> list[str]:
    """What a formula rests on, as notes below a sum that begins with `told`: where a lesson has said the same already, it does not say it again."""
    return [note for note in (*more, checked(formula)) if progress.first_said(note, f"{formula.name}: {told}")]


def said_here(text: str) -> Page:
    """A few sentences, with what metric and what US readers are told side by side: said_here("Keep {0.6 m | 2 ft} back from the edge.")."""
    here = re.sub(r"\{([^|{}]+) \| ([^|{}]+)\}", r"\2" if system.current() == system.FEET else r"\1", text)
    return Page(here, here.replace("*", ""))


def checked(formula: Formula) -> str:
    """The line that says what the formula was checked against."""
    if not formula.published:
        by_hand = "; ".join(f"Worked by hand {'with numbers in other units' if _elsewhere(one.told) else one.told}" for one in formula.by_hand)
        return f"*Not checked against a printed value: {formula.unpublished}.{f' {by_hand}.' if by_hand else ''}*"
    told: dict[str, dict[str, None]] = {}  # what stands beside each source, once
    for printed in formula.published:
        source, beside = _compared(printed, formula)
        told.setdefault(source, {})[beside] = None
    return "*Checked against " + "; ".join(f"{source}: {'; '.join(values)}" for source, values in told.items()) + ".*"


def _compared(printed: Published, formula: Formula) -> tuple[str, str]:
    """Who printed a value, and what stands beside it here; where it is printed in units that a class has not chosen, how near they are."""
    check = printed.check(formula)
    if _elsewhere(f"{printed.given.replace('=', ' = ')} {printed.value}"):
        return printed.source.source.title, f"what it prints in other units comes out here too, within {max(abs(check.difference), 1e-4):.2%}"
    return str(printed.source), f"{printed.value} printed for {printed.given}, {check.got_text} here"


def _elsewhere(text: str) -> bool:
    """Whether a text speaks in units of the system that was not chosen."""
    return system.was_chosen() and bool(system.foreign(text.replace("=", " = "), system.current()))


def derive(name: str, reason: str = "") -> Page | Shown:
    """The derivation of a formula, folded under its plain reason: a drawing, every line of it in a row of its own with its reason, its letters and how it was checked.

    A formula that is heavy to look at is folded away with its steps.
    """
    try:
        formula = topics.find(name)
    except InputError as error:
        return say(error)
    steps, heavy, said = verified(formula), _heavy(formula), [reason] if reason else []
    here = (formula.result, *formula.inputs, *formula.constants)
    head = f"$$\n{typeset.relation(formula.left, formula.right)}\n$$\n\nwhere {_letters(here)}."
    plain = [*said, typeset.relation(formula.left, formula.right, typeset.PLAIN)]
    rows, named = [], {*here}
    for number, step in enumerate(steps, start=1):
        how = _KINDS.get(step.kind) or HOW[step.how]
        fresh = [key for key in _letters_in(step.left, step.right) if key not in named]
        named |= {*fresh}
        where = f"\n\nwhere {_letters(fresh)}." if fresh else ""
        reason = system.named_here(step.reason)
        rows.append(f"**{number}.** {reason[:1].upper()}{reason[1:]} *({how})*:\n\n$$\n{typeset.relation(step.left, step.right)}\n$${where}")
        plain.append(f"{number}. {reason}: {typeset.relation(step.left, step.right, typeset.PLAIN)} [{how}]")
    lines = f"{len(steps)} line{'' if len(steps) == 1 else 's'}"
    title = f"The formula, and how it is derived in {lines}" if heavy else f"How it is derived, in {lines}"
    drawn = SKETCHED.get(formula.name)
    folded = [
        f"<details><summary>{title}</summary>",
        *([head] if heavy else []),
        *([_sketch(drawn())] if drawn else []),
        *([_meant(steps)] if steps else [f"Fitted: {formula.fitted}."]),
        *rows,
        _whence(formula),
        "</details>",
    ]
    return Page("\n\n".join([*said, *([] if heavy else [head]), *folded]), "\n".join(plain))


def parts_of(name: str) -> Page | Shown:
    """The drawing that belongs to a formula, with what its letters mean: parts_of("water in transit")."""
    try:
        formula = topics.find(name)
    except InputError as error:
        return say(error)
    if formula.name not in SKETCHED:
        return say(InputError(f"'{formula.name}' has no such drawing: it is there for {', '.join(SKETCHED)}"))
    sheet = SKETCHED[formula.name]()
    return Page(f"{_sketch(sheet)}\n\n{_letters((formula.result, *formula.inputs))}.", f"{sheet.title}: {sheet.description}")


def _sketch(sheet: Sheet) -> Markup:
    return Markup(f"<figure style='margin:0;max-width:480px'>{image.element(sheet)}<figcaption>{escape(sheet.title)}</figcaption></figure>")


def _letters_in(*trees: ast.expr) -> tuple[str, ...]:
    """Every letter that stands in trees, those that a sum runs over too."""
    names = (node.id for tree in trees for node in ast.walk(tree) if isinstance(node, ast.Name))
    return tuple(dict.fromkeys(name for name in names if name in QUANTITIES))


def _letters(keys: Iterable[str]) -> str:
    """Letters with what they stand for."""
    return "; ".join(f"${typeset.LATEX.letter(key)}$ {system.named_here(QUANTITIES[key].name)}" for key in keys)


def _heavy(formula: Formula) -> bool:
    """Whether a formula has functions in it that a trade class has not met."""
    nodes = (node for side in (formula.left, formula.right) for node in ast.walk(side))
    return any(isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in _RARE for node in nodes)


_RARE = ("log", "atan", "asin", "acos", "tanh", "Integral")
_MEANT = {
    "law": "a *law* was found by trial, long ago, and is taken as it stands",
    "take": "*we take* marks a choice of ours: how we picture the thing, which you may argue about",
    "formula": "a *formula* has a derivation of its own",
    "step": "*checked* lines follow from those above them; a machine worked each one again",
}


def _meant(steps) -> str:
    """What the marks beside the lines mean, those that occur."""
    kinds = {step.kind for step in steps}
    return f"*Marks:* {'; '.join(said for kind, said in _MEANT.items() if kind in kinds)}."


def _whence(formula: Formula) -> str:
    source = system.named_here(origin(formula))
    if source == "derived from its own geometry":
        shaped = any(dict(zip(BASE, QUANTITIES[name].dimension))["m"] for name in (formula.result, *formula.inputs))
        return f"*It follows from {'the shape alone: lengths, areas and volumes' if shaped else 'what its letters mean'}, and no trial.*"
    return f"*{source[:1].upper()}{source[1:]}.*"


def label(flow: str, head: str, power: str) -> Page | Shown:
    """Whether a pump's label can be true, from its greatest flow and head and the power taken in: label("2400 L/min", head="2.4 m", power="40 W")."""
    try:
        flow, head = system.in_chosen(given_values.of_here(flow), 4), given_values.of_here(head)
        checked_label = nameplate_check(flow, QUANTITIES["H_0"].read(head), QUANTITIES["P_in"].read(power))
    except InputError as error:
        return say(error)
    verdict = f"Label {checked_label.verdict}"
    limits = f"up to {POSSIBLE:g} possible, over {IMPOSSIBLE:g} impossible, under {FEEBLE:g} feeble"
    why = f"The most that the water can receive, over the power taken in; the limits are our own choice: {limits}."
    return Page(f"**{verdict}.** {checked_label.sentence}\n\n*{why}*", f"{verdict}. {checked_label.sentence}")


def start() -> Page:
    """One plain line: whether this set-up can run the workbooks."""
    faults = []
    for package in ("sympy", "ipywidgets", "anywidget"):
        try:
            __import__(package)
        except ImportError:
            faults.append(f"the package {package} is missing: install it with 'pip install {package}'")
    line = "; ".join(faults) if faults else f"Everything is ready: Brimwork {__version__}, {len(topics.formulas())} formulas."
    return Page(f"**{line}**", line)
