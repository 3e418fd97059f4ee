"""Whatever came from a file or a person is words where it is shown. The source is read: a string with markup in it may only be filled with what
`brimwork.shown` has escaped, with numbers, and with markup of our own; and nothing else reaches a page."""

import ast
import re
from functools import cache
from pathlib import Path

import pytest

import brimwork
from brimwork.shown import attribute, escape, in_markdown

SOURCE = Path(brimwork.__file__).parent
FILES = [file for file in sorted(SOURCE.rglob("*.py")) if file.name != "shown.py" and "pack" not in file.parts]
ESCAPING = {"escape", "attribute", "in_markdown", "Markup", "read_here"}
NUMBERS = {"len", "int", "round", "id", "float"}
MARKED = re.compile(r"</?[a-zA-Z!]|&#?\w+;")
FIGURES = re.compile(r"[-+]?[\d.]*[gfed]$")
PAGES = {"HTML", "HTMLMath"}  # widgets that show markup


@cache
def tree(file: Path) -> ast.Module:
    made = ast.parse(file.read_text(encoding="utf-8"))
    for node in ast.walk(made):
        for child in ast.iter_child_nodes(node):
            child.parent = node
    return made


@cache
def own_markup() -> set[str]:
    """Names of functions, parameters and attributes that the source declares as Markup."""
    found = set()
    for file in FILES:
        for node in ast.walk(tree(file)):
            if isinstance(node, ast.FunctionDef) and node.returns is not None and ast.unparse(node.returns) == "Markup":
                found.add(node.name)
            if isinstance(node, ast.AnnAssign) and ast.unparse(node.annotation) in ("Markup", "int") and isinstance(node.target, ast.Attribute):
                found.add(node.target.attr)
    return found


@cache
def takes_markup(file: Path) -> set[str]:
    """What a file calls whose first argument is Markup; `self` does not count."""
    found = set(PAGES) | {"Markup", "read_here"} | ({"Shown"} if "notebook" in file.parts or SOURCE not in file.parents else set())
    taken = [node.module for node in ast.walk(tree(file)) if isinstance(node, ast.ImportFrom)]
    for other in {file, *(one for one in FILES if ".".join(["brimwork", *one.relative_to(SOURCE).with_suffix("").parts]) in taken)}:
        for node in ast.walk(tree(other)):
            if isinstance(node, ast.FunctionDef):
                first = next((one for one in node.args.args if one.arg != "self"), None)
                if first is not None and first.annotation is not None and ast.unparse(first.annotation) == "Markup":
                    found.add(node.name)
    return found - {"__init__"}


@cache
def pages_of(file: Path) -> set[str]:
    """Names of what shows markup: `self.said = widgets.HTML()`."""
    found = set()
    for node in ast.walk(tree(file)):
        if isinstance(node, ast.Assign):
            for target in node.targets:
                pairs = zip(target.elts, node.value.elts) if isinstance(target, ast.Tuple) and isinstance(node.value, ast.Tuple) else [(target, node.value)]
                for name, value in pairs:
                    if any(isinstance(part, ast.Attribute) and part.attr in PAGES for part in ast.walk(value)) and "Part(" not in ast.unparse(value):
                        found |= {one.attr for one in ast.walk(name) if isinstance(one, ast.Attribute)}
    return found


@cache
def shows_markup() -> set[str]:
    return set().union(*map(pages_of, FILES))


def called(node: ast.Call) -> str:
    return node.func.attr if isinstance(node.func, ast.Attribute) else node.func.id if isinstance(node.func, ast.Name) else ""


def around(node: ast.AST) -> list[ast.AST]:
    """The functions round a node, the nearest first, and then the module."""
    found = []
    while hasattr(node, "parent"):
        node = node.parent
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda | ast.Module):
            found.append(node)
    return found


def fit(node: ast.AST, seen: frozenset = frozenset()) -> bool:
    """Whether an expression can only be markup of our own, escaped words or a number."""
    match node:
        case ast.Constant():
            return True
        case ast.JoinedStr():
            return all(fit(value, seen) for value in node.values)
        case ast.FormattedValue():
            figures = node.format_spec is not None and FIGURES.fullmatch(ast.literal_eval(ast.unparse(node.format_spec).removeprefix("f")))
            return bool(figures) or fit(node.value, seen)
        case ast.Call():
            if not node.args and isinstance(node.func, ast.Subscript):
                return True  # list[str]()
            if called(node) == "Markup":
                return fit(node.args[0], seen)
            if called(node) == "join":
                return fit(node.func.value, seen) and fit(node.args[0], seen)
            return called(node) in ESCAPING | NUMBERS | own_markup()
        case ast.GeneratorExp() | ast.ListComp():
            return fit(node.elt, seen)
        case ast.List() | ast.Tuple():
            return all(fit(one, seen) for one in node.elts)
        case ast.Starred():
            return fit(node.value, seen)
        case ast.Attribute(attr="value", value=ast.Attribute(attr=name)) if name in shows_markup():
            return True
        case ast.IfExp():
            return fit(node.body, seen) and fit(node.orelse, seen)
        case ast.BoolOp():
            return all(fit(one, seen) for one in node.values)
        case ast.BinOp(op=ast.Mod(), left=ast.Constant(value=str(form))):
            return all(FIGURES.fullmatch(one) for one in re.findall("%([^%]*?[a-z])", form))
        case ast.BinOp():
            return fit(node.left, seen) and fit(node.right, seen)
        case ast.Subscript():
            return fit(node.value, seen)
        case ast.Attribute():
            return node.attr.isupper() or node.attr in own_markup()
        case ast.Name():
            return node.id.strip("_").isupper() or named(node, seen)
    return False


def named(node: ast.Name, seen: frozenset) -> bool:
    """Whether all that a name is ever given is fit: as a parameter, in a loop, by assignment."""
    if node.id in seen:
        return True
    seen = seen | {node.id}
    outer = node
    while hasattr(outer, "parent"):  # a variable of a comprehension
        outer = outer.parent
        for part in getattr(outer, "generators", ()):
            if node.id in {name.id for name in ast.walk(part.target) if isinstance(name, ast.Name)}:
                return fit_in_loop(part, node.id, seen)
    for place in around(node):
        if not isinstance(place, ast.Module):
            for one in [*place.args.posonlyargs, *place.args.args, *place.args.kwonlyargs]:
                if one.arg == node.id:
                    return one.annotation is not None and ast.unparse(one.annotation).split(" ")[0] in ("Markup", "int", "float")
        given = list(givens(place, node.id))
        if given:
            return all(value is not None and fit(value, seen) for value in given)
    return False


def fit_in_loop(loop, name: str, seen: frozenset) -> bool:
    """Whether what a loop gives a name is fit: what it counts, or what it goes through."""
    if isinstance(loop.target, ast.Name):
        return fit(loop.iter, seen)
    counted = isinstance(loop.iter, ast.Call) and called(loop.iter) == "enumerate"
    return counted and isinstance(loop.target.elts[0], ast.Name) and loop.target.elts[0].id == name


def givens(place: ast.AST, name: str):
    """The expressions that a name is given in a function or module; None for one that cannot be followed."""
    for node in ast.walk(place):
        targets = node.targets if isinstance(node, ast.Assign) else [node.target] if isinstance(node, ast.AugAssign | ast.AnnAssign | ast.NamedExpr) else []
        for target in targets:
            if isinstance(target, ast.Name) and target.id == name:
                yield node.value
            elif isinstance(target, ast.Tuple):
                for at, one in enumerate(target.elts):
                    part = one.value if isinstance(one, ast.Starred) else one
                    if isinstance(part, ast.Name) and part.id == name:
                        yield node.value.elts[at] if isinstance(node.value, ast.Tuple) and len(node.value.elts) == len(target.elts) else node.value
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr in ("append", "extend", "insert"):
            if isinstance(node.func.value, ast.Name) and node.func.value.id == name:
                yield node.args[-1]
        if isinstance(node, ast.For) and name in {one.id for one in ast.walk(node.target) if isinstance(one, ast.Name)}:
            yield node.iter if isinstance(node.target, ast.Name) else ast.Constant(0) if fit_in_loop(node, name, frozenset()) else None


def marked(node: ast.AST) -> bool:
    """Whether a string is written with markup in it."""
    return any(isinstance(part, ast.Constant) and isinstance(part.value, str) and MARKED.search(part.value) for part in getattr(node, "values", ()))


def faults(file: Path) -> list[str]:
    found = []
    for node in ast.walk(tree(file)):
        if isinstance(node, ast.JoinedStr) and marked(node) and "__repr__" not in {getattr(place, "name", "") for place in around(node)}:
            wrong = [part for part in node.values if not fit(part)]
            before = {id(part): node.values[at - 1] for at, part in enumerate(node.values) if at}
            inside = [
                part
                for part in node.values
                if isinstance(part, ast.FormattedValue)
                and isinstance(part.value, ast.Call)
                and called(part.value) == "escape"
                and isinstance(before.get(id(part)), ast.Constant)
                and re.search(r"=\s*['\"][^'\"<>]*$", before[id(part)].value)
            ]
            found += [f"line {node.lineno}: {ast.unparse(part)}" for part in wrong] + [f"line {node.lineno}: attribute() inside quotes" for _ in inside]
        if isinstance(node, ast.Call) and called(node) in takes_markup(file) and node.args and not fit(node.args[0]):
            found.append(f"line {node.lineno}: {ast.unparse(node)}")
        if isinstance(node, ast.Assign | ast.AugAssign):
            targets = node.targets if isinstance(node, ast.Assign) else [node.target]
            shows = [
                t
                for t in targets
                if isinstance(t, ast.Attribute) and t.attr == "value" and isinstance(t.value, ast.Attribute) and t.value.attr in pages_of(file)
            ]
            found += [f"line {node.lineno}: {ast.unparse(node)}" for _ in shows if not fit(node.value)]
        if isinstance(node, ast.ImportFrom) and node.module == "html":
            found.append(f"line {node.lineno}: brimwork.shown is the only way")
        if isinstance(node, ast.Dict):
            pairs = zip(node.keys, node.values)
            found += [
                f"line {node.lineno}: text/html"
                for key, value in pairs
                if isinstance(key, ast.Constant) and key.value == "text/html" and not (fit(value) or ast.unparse(value) in ("self.html", "self.html()"))
            ]
    return found


@pytest.mark.parametrize("file", FILES, ids=lambda file: str(file.relative_to(SOURCE)))
def test_a_string_with_markup_is_filled_only_with_what_was_escaped(file):
    assert not faults(file), "use brimwork.shown: escape() in an element, attribute() in quotes; mark what returns markup of our own '-> Markup'"


@pytest.mark.parametrize(
    "line",
    [
        "said = f'<p>{name}</p>'",
        "self.said = widgets.HTML()\nself.said.value = name",
        "self.said = widgets.HTML()\nself.said.value = f'<p>{escape(a)}</p>' + name",
        "widgets.HTML(name)",
        "Shown(''.join(names), '')",
        "Markup(name)",
        "def f(name: str):\n    head = name\n    return f'<b>{head}</b>'",
        "def f(names):\n    return f'<b>{\"\".join(n for n in names)}</b>'",
        "f\"<a title='{escape(name)}'>\"",
        "from html import escape",
        "{'text/html': name}",
    ],
)
def test_the_reader_of_the_source_finds_a_planted_fault(line, tmp_path):
    planted = tmp_path / "planted.py"
    planted.write_text(line)
    assert faults(planted)


HOSTILE = "<img src=x onerror=alert(1)> & &lt; a|b $x^2$ \\(y\\) `c` **d** [e](javascript:f) <!-- \u202eg \x07"


def test_words_come_out_as_words():
    from html.parser import HTMLParser

    class Reader(HTMLParser):
        def __init__(self):
            super().__init__()
            self.tags, self.words = [], []

        def handle_starttag(self, tag, attrs):
            self.tags.append((tag, attrs))

        def handle_data(self, data):
            self.words.append(data)

    for written in (escape(HOSTILE), in_markdown(HOSTILE)):
        reader = Reader()
        reader.feed(f"<p>{written}</p>")
        reader.close()
        assert {tag for tag, _ in reader.tags} <= {"p", "span"} and not any(attrs for _, attrs in reader.tags)
        assert "".join(reader.words) == HOSTILE.replace("\u202e", " ").replace("\x07", " ")
        assert not re.search(r"[$\\][^<]", "".join(f"{word}|" for word in reader.words).replace("$|", "").replace("\\|", "")), "no formula begins"
    reader = Reader()
    reader.feed(f"<p title='{attribute(HOSTILE)}' id=\"{attribute(HOSTILE)}\">")
    [(_, attrs)] = reader.tags
    assert [value for _, value in attrs] == [HOSTILE.replace("\u202e", " ").replace("\x07", " ")] * 2
