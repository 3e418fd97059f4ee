"""Which module may import which, and which libraries load when; imports inside functions count too."""

import ast
import re
import subprocess
import sys
from functools import cache
from pathlib import Path

import pytest

import brimwork

SOURCE = Path(brimwork.__file__).parent
LAYERS = """
    edition files tabular tape dimensions unit_table shown spellings units needing system
    quantity letters nomenclature accepting facing sources
    expression conditions roots steps by_hand formula
    unit_sizes coherent typeset derivation laws tables cables topics search prove telling
    design drawing exercise pack classroom notebook
    report door class_verbs cli __main__
""".split()
FORBIDDEN = {("design", "exercise"), ("drawing", "exercise")}  # besides the order of the layers
ONLY_IN = {
    "sympy": {"derivation"},
    "ipywidgets": {"notebook"},
    "anywidget": {"notebook"},
    "IPython": {"notebook"},
    "pint": {"notebook"},
    "typst": {"pack", "classroom", "notebook"},
    "segno": {"classroom", "notebook"},
}
NEVER_AT_IMPORT = {"numpy", "scipy", "matplotlib", "rectpack"}
FILES = sorted(SOURCE.rglob("*.py"))
every_file = pytest.mark.parametrize("file", FILES, ids=lambda file: str(file.relative_to(SOURCE)))


def _layer(file: Path) -> str:
    return file.relative_to(SOURCE).parts[0].removesuffix(".py")


@cache
def _parsed(file: Path) -> ast.Module:
    return ast.parse(file.read_text())


@cache
def _imports(tree: ast.AST) -> frozenset[str]:
    """Full names of the modules imported anywhere in `tree`; names taken from a package count as its modules."""
    names: set[str] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            names |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, "imports are written in full"
            names |= {f"{node.module}.{alias.name}" for alias in node.names} if node.module == "brimwork" else {node.module}
    return frozenset(names)


def _own(file: Path) -> set[str]:
    """The layers and topics of Brimwork that a file imports, such as "units" or "topics.volume"."""
    found = {name.removeprefix("brimwork.") for name in _imports(_parsed(file)) if name.startswith("brimwork.")}
    return found - {"__version__"}


def _at_import(tree: ast.Module) -> set[str]:
    """What importing the file imports: everything but the bodies of functions and what only type checkers see."""
    found, waiting = set(), [tree]
    while waiting:
        node = waiting.pop()
        if isinstance(node, ast.Import | ast.ImportFrom):
            found |= {name.partition(".")[0] for name in _imports(node)}
        elif isinstance(node, ast.If) and ast.unparse(node.test) == "TYPE_CHECKING":
            waiting += node.orelse
        elif not isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef | ast.Lambda | ast.expr):
            waiting += ast.iter_child_nodes(node)
    return found


def test_every_file_belongs_to_a_layer():
    assert {_layer(file) for file in FILES} - {"__init__"} <= {*LAYERS}


@every_file
def test_a_module_imports_only_from_its_own_layer_and_those_before_it(file):
    layer = _layer(file)
    if layer == "__init__":
        assert not _at_import(_parsed(file)) & {"brimwork"}, "a public name is loaded when somebody asks for it"
        return
    for name in _own(file):
        other = name.partition(".")[0]
        assert other in LAYERS, f"{name} is in no layer"
        assert LAYERS.index(other) <= LAYERS.index(layer), f"{layer} imports {other}, which comes after it"
        assert (layer, other) not in FORBIDDEN, f"{layer} does not know {other}"


ROOMS = ("typed", "follows", "done", "judged")  # of design/, in the order in which a value goes through them


def _module(file: Path) -> str:
    return ".".join(("brimwork", *file.relative_to(SOURCE).with_suffix("").parts)).removesuffix(".__init__")


def _circle(arrows: dict[str, set[str]]) -> list[str]:
    """Modules that import each other in a circle, one after the other; empty where there is none."""
    done: set[str] = set()

    def walk(at: str, way: list[str]) -> list[str]:
        if at in way:
            return [*way[way.index(at) :], at]
        for other in sorted(arrows.get(at, set()) - done):
            if found := walk(other, [*way, at]):
                return found
        done.add(at)
        return []

    return next(filter(None, (walk(start, []) for start in sorted(arrows))), [])


def _arrows() -> dict[str, set[str]]:
    """Which file imports which: inside functions and for types only, too."""
    known = {_module(file) for file in FILES}
    found = {}
    for file in FILES:
        names: set[str] = set()
        for node in ast.walk(_parsed(file)):
            if isinstance(node, ast.Import):
                names |= {alias.name for alias in node.names}
            elif isinstance(node, ast.ImportFrom):
                names |= {f"{node.module}.{alias.name}" if f"{node.module}.{alias.name}" in known else f"{node.module}" for alias in node.names}
        found[_module(file)] = (names & known) - {_module(file)}
    return found


def test_no_files_import_each_other_in_a_circle():
    assert _circle(_arrows()) == []


def test_a_circle_of_imports_is_found():
    assert _circle({"a": {"b"}, "b": {"c", "d"}, "c": set(), "d": {"b"}}) == ["b", "d", "b"]
    assert _circle({"a": {"b", "c"}, "b": {"c"}, "c": set()}) == []


@pytest.mark.parametrize("file", sorted((SOURCE / "design").rglob("[!_]*.py")), ids=lambda file: str(file.relative_to(SOURCE)))
def test_a_value_goes_through_the_rooms_of_a_design_in_one_direction(file):
    room = file.relative_to(SOURCE / "design").parts[0]
    for name in _own(file):
        if name.startswith("design."):
            assert ROOMS.index(name.split(".")[1]) <= ROOMS.index(room), f"{room} imports {name}"


@pytest.mark.parametrize("file", sorted((SOURCE / "topics").glob("*.py")), ids=lambda file: file.name)
def test_topics_do_not_import_each_other(file):
    assert not {name for name in _own(file) if name.startswith("topics")}


@every_file
def test_libraries_stay_where_they_belong(file):
    tree = _parsed(file)
    used = {name.partition(".")[0] for name in _imports(tree)}
    for library, layers in ONLY_IN.items():
        assert library not in used or _layer(file) in layers, f"{library} is only for {', '.join(layers)}"
    late = NEVER_AT_IMPORT | ({"sympy"} if _layer(file) != "derivation" else set())
    assert not late & _at_import(tree), "imported where it is used, not when the file is"


@pytest.mark.parametrize("statement", ["import brimwork", "import brimwork.topics; brimwork.topics.formulas()", "import brimwork.cli"])
def test_importing_brimwork_loads_no_heavy_library(statement):
    script = f"import sys; {statement}; print(*sorted({{'numpy', 'scipy', 'sympy', 'pint', 'matplotlib', 'IPython', 'ipywidgets'}} & sys.modules.keys()))"
    ran = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True, check=True)
    assert ran.stdout.split() == []


_PYTHON = re.compile(r'\[sys\.executable, "(?!-P")')


def test_no_process_of_ours_loads_a_module_from_the_folder_that_it_works_in():
    """Somebody else's file may lie there, under the name of a module: -P leaves the folder out (Python's command line)."""
    assert [str(file.relative_to(SOURCE)) for file in FILES if _PYTHON.search(file.read_text(encoding="utf-8"))] == []
    assert _PYTHON.search('[sys.executable, "-m", "brimwork"]') and not _PYTHON.search('[sys.executable, "-P", "-m", "brimwork"]')


def test_the_reader_of_imports_sees_what_is_hidden_in_a_function():
    tree = ast.parse("import json\ndef f():\n    from numpy import array\nclass C:\n    import scipy.optimize\n")
    assert _imports(tree) == {"json", "numpy", "scipy.optimize"}
    assert _at_import(tree) == {"json", "scipy"}


BY_FOLDER = {"QUESTIONS", "DRAWN"}  # what every file of a folder has, because the folder is listed


def _named(tree: ast.Module) -> set[str]:
    """Public names that a file gives at its top level."""
    found: set[str] = set()
    for node in tree.body:
        if isinstance(node, ast.FunctionDef | ast.ClassDef):
            found.add(node.name)
        elif isinstance(node, ast.Assign | ast.AnnAssign):
            targets = node.targets if isinstance(node, ast.Assign) else [node.target]
            found |= {part.id for target in targets for part in ast.walk(target) if isinstance(part, ast.Name)}
    return {name for name in found if not name.startswith("_")}


def _twice(named: dict[str, set[str]]) -> dict[str, list[str]]:
    """Names that stand in two files or more, with the files."""
    where: dict[str, list[str]] = {}
    for file, names in named.items():
        for name in names - BY_FOLDER:
            where.setdefault(name, []).append(file)
    return {name: sorted(files) for name, files in where.items() if len(files) > 1}


def test_one_name_is_one_thing():
    """A public name stands in one file; what only its own file uses begins with an underscore."""
    assert _twice({_module(file): _named(_parsed(file)) for file in FILES}) == {}


def test_a_name_that_stands_twice_is_found():
    one, other = ast.parse("A = 1\ndef f(): pass\n_b = 2"), ast.parse("class f: pass\n_b = 3\nC: int = 4")
    assert _twice({"one": _named(one), "other": _named(other)}) == {"f": ["one", "other"]}


LONGEST = 400  # lines of a file; a longer one is split by subject, or has its reason here
LONGER: dict[str, str] = {}


@every_file
def test_a_file_can_be_read_at_one_sitting(file):
    lines, name = len(file.read_text(encoding="utf-8").splitlines()), str(file.relative_to(SOURCE))
    assert lines <= LONGEST or LONGER.get(name), f"{name} has {lines} lines: split it by subject"
    assert lines > LONGEST or name not in LONGER, f"{name} is short again: take it off the list"
