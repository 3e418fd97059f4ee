"""Faults put into functions that stand loaded already, each in a fork in which only the tests run that reach its lines, the quick ones first.

A fault in what runs at import cannot be put in so; nor is one in a function that ran at import known to live, since tables may have been made by it before
it was changed. Both are tried again by `modules`, with everything imported anew.
"""

from __future__ import annotations

import ast
import copy
import functools
import gc
import inspect
import os
import pickle
import resource
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path
from types import CodeType, FunctionType
from typing import Any

import pytest
from _pytest.runner import runtestprotocol
from mutants import Fault, swapped

MEMORY = 3_000_000_000  # bytes over what the process has already: a fault that piles up without end is noticed before the machine is full
_AT_ONCE = ("<listcomp>", "<dictcomp>", "<setcomp>", "<genexpr>")


@dataclass(frozen=True)
class Target:
    """A module, its source as a tree, and the faults to put into it."""

    module: str
    path: Path
    tree: ast.Module
    faults: list[Fault]

    def code(self, tree: ast.Module) -> CodeType:
        return compile(ast.fix_missing_locations(tree), str(self.path), "exec", dont_inherit=True)


@dataclass
class Ran:
    """A test without any fault: how long it took, and which lines it ran of each file."""

    name: str
    seconds: float = 0.0
    passed: bool = True
    lines: dict[str, set[int]] = field(default_factory=dict)


@dataclass
class Told:
    """What came of it: the tests without any fault; by module the places of the faults that live, of those to be tried again, and whether one was noticed
    that nobody can miss."""

    ran: list[Ran] = field(default_factory=list)
    living: dict[str, list[int]] = field(default_factory=dict)
    again: dict[str, list[int]] = field(default_factory=dict)
    planted: dict[str, bool] = field(default_factory=dict)


def in_fork(work: Callable[[], Any], seconds: float = 0.0) -> Any:
    """What `work` gives, worked out in a fork whose end leaves nothing behind; None where it does not end in `seconds` of processor time, or ends badly."""
    reading, writing = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(reading)
        with suppress(BaseException):
            if seconds:
                limit(seconds)
            made = pickle.dumps(work())
            with os.fdopen(writing, "wb") as pipe:
                pipe.write(made)
        os._exit(0)
    os.close(writing)
    with os.fdopen(reading, "rb") as pipe:
        got = pipe.read()
    os.waitpid(child, 0)
    return pickle.loads(got) if got else None


def limit(seconds: float) -> None:
    """Let this process end after so much more processor time (s), or when it needs MEMORY more than it has: a fork has all that its parent had."""
    whole = int(time.process_time() + seconds) + 1
    most = resource.getpagesize() * int(Path("/proc/self/statm").read_text().split()[0]) + MEMORY
    resource.setrlimit(resource.RLIMIT_CPU, (whole, whole))
    resource.setrlimit(resource.RLIMIT_AS, (most, most))


def changed(old: CodeType, new: CodeType) -> list[tuple[CodeType, CodeType]] | None:
    """The functions in which two ways of a file differ, each with its other way; None where what runs at import differs."""
    pairs = [(one, other) for one, other in zip(_inner(old), _inner(new))]
    if _own(old) != _own(new) or len(_inner(old)) != len(_inner(new)):
        return None
    found: list[tuple[CodeType, CodeType]] = []
    for one, other in pairs:
        if one == other:
            continue
        if one.co_name in _AT_ONCE:
            return None
        deeper = [(one, other)] if one.co_flags & inspect.CO_OPTIMIZED else changed(one, other)
        if deeper is None:
            return None
        found += deeper
    return found


def _inner(code: CodeType) -> list[CodeType]:
    return [one for one in code.co_consts if isinstance(one, CodeType)]


def _own(code: CodeType) -> tuple:
    """What a piece of code does itself, without the functions in it."""
    return code.co_code, code.co_names, [(type(one), repr(one)) if not isinstance(one, CodeType) else None for one in code.co_consts]


def with_inner(old: CodeType, new: CodeType) -> Iterator[tuple[CodeType, CodeType]]:
    """A function and those in it, each with its other way: one that was made before is changed too."""
    yield old, new
    if len(_inner(old)) == len(_inner(new)):
        for one, other in zip(_inner(old), _inner(new)):
            yield from with_inner(one, other)


class Session:
    """As a plugin: has pytest collect, and then tries faults in place of running the tests once."""

    def __init__(self, targets: list[Target]):
        self.targets, self.told, self._red = targets, Told(), False
        self.paths = {str(target.path) for target in targets}
        self.at_import: dict[str, set[int]] = {}  # lines of functions that ran before any test did

    def pytest_runtestloop(self, session: pytest.Session) -> bool:
        sys.settrace(None)
        self.items = session.items
        self.functions: dict[CodeType, list[FunctionType]] = {}
        self.caches = [one for one in gc.get_objects() if isinstance(one, functools._lru_cache_wrapper)]
        for one in gc.get_objects():
            if isinstance(one, FunctionType) and one.__code__.co_filename in self.paths:
                self.functions.setdefault(one.__code__, []).append(one)
        # what these keep would hide which test runs which line
        self.own = [one for one in self.caches if isinstance(one.__wrapped__, FunctionType) and one.__wrapped__.__code__.co_filename in self.paths]
        gc.freeze()
        self.told.ran = in_fork(self._green) or []
        if self.told.ran and all(one.passed for one in self.told.ran):
            for target in self.targets:
                self._try_all(target)
        return True

    def _try_all(self, target: Target) -> None:
        covered = {line for one in self.told.ran for line in one.lines.get(str(target.path), ())}
        self.told.planted[target.module] = not covered or self._dies(target, _broken(target.tree), covered)
        living = self.told.living[target.module] = list[int]()
        again = self.told.again[target.module] = list[int]()
        for place, (_, old, new) in enumerate(target.faults):
            lines = _statement(target.tree, old)
            tree = swapped(target.tree, old, new)
            if not changed(target.code(target.tree), target.code(tree)):
                again.append(place)
            elif not lines & covered or not self._dies(target, tree, lines):
                (again if lines & self.at_import.get(str(target.path), set()) else living).append(place)
        print(f"{target.module}: {len(target.faults)} in place, {len(living)} live, {len(again)} to be tried again", file=sys.stderr, flush=True)

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        self._red = self._red or report.failed

    def watch(self, lines: dict[str, set[int]]) -> None:
        """Note from now on which lines of functions run."""

        def line(frame, event, _):
            lines.setdefault(frame.f_code.co_filename, set()).add(frame.f_lineno)
            return line

        def call(frame, event, _):
            return line(frame, event, None) if frame.f_code.co_filename in self.paths and frame.f_code.co_flags & inspect.CO_OPTIMIZED else None

        sys.settrace(call)

    def _green(self) -> list[Ran]:
        """Every test as it is, with functions that note which of their statements run: far quicker than to trace them."""
        here: dict[str, set[int]] = {}
        for target in self.targets:
            noted = here[str(target.path)] = set()
            if loaded := sys.modules.get(f"brimwork.{target.module}"):
                vars(loaded)[_NOTE] = noted.add
            self._put_in(changed(target.code(target.tree), target.code(_noting(target.tree))) or [])
        ran = []
        for item, after in zip(self.items, [*self.items[1:], None]):
            for cache in self.own:
                cache.cache_clear()
            self._red, begun = False, time.process_time()
            runtestprotocol(item, log=True, nextitem=after)
            ran.append(Ran(item.nodeid, time.process_time() - begun, not self._red, {path: {*lines} for path, lines in here.items() if lines}))
            for lines in here.values():
                lines.clear()
        return ran

    def _put_in(self, pairs: list[tuple[CodeType, CodeType]]) -> None:
        for old, new in (both for pair in pairs for both in with_inner(*pair)):
            for function in self.functions.get(old, ()):
                with suppress(ValueError):  # it no longer uses a name of the function round it
                    function.__code__ = new

    def _dies(self, target: Target, tree: ast.Module, lines: set[int]) -> bool:
        """Whether a test that reaches these lines turns red, or does not end, with the functions of that tree."""
        pairs = changed(target.code(target.tree), target.code(tree)) or []
        chosen = sorted((one.seconds, place) for place, one in enumerate(self.told.ran) if one.lines.get(str(target.path), set()) & lines)
        patience = 5 + 3 * sum(seconds for seconds, _ in chosen)
        return in_fork(lambda: self._try(pairs, [place for _, place in chosen]), patience) in ("red", None)

    def _try(self, pairs: list[tuple[CodeType, CodeType]], chosen: list[int]) -> str:
        for cache in self.caches:
            cache.cache_clear()
        self._put_in(pairs)
        for place, after in zip(chosen, [*chosen[1:], None]):
            runtestprotocol(self.items[place], log=True, nextitem=None if after is None else self.items[after])
            if self._red:
                return "red"
        return "green"


_NOTE = "__note__"


def _noting(tree: ast.Module) -> ast.Module:
    """The same source, in whose functions each statement notes its line before it runs."""

    def note(node: ast.stmt | ast.expr) -> ast.Call:
        return ast.copy_location(ast.Call(ast.Name(_NOTE, ast.Load()), [ast.Constant(node.lineno)], []), node)

    class Noting(ast.NodeTransformer):
        inside = False

        def visit_FunctionDef(self, node: ast.FunctionDef) -> ast.FunctionDef:
            before, self.inside = self.inside, True
            node.body = self._noted(node.body)
            self.inside = before
            return node

        def visit_Lambda(self, node: ast.Lambda) -> ast.Lambda:
            node.body = ast.copy_location(ast.BoolOp(ast.Or(), [note(node.body), self.visit(node.body)]), node.body)
            return node

        def generic_visit(self, node: ast.AST) -> ast.AST:
            for name, value in ast.iter_fields(node):
                if self.inside and isinstance(value, list) and value and isinstance(value[0], ast.stmt):
                    setattr(node, name, self._noted(value))
                elif isinstance(value, list):
                    setattr(node, name, [self.visit(part) if isinstance(part, ast.AST) else part for part in value])
                elif isinstance(value, ast.AST):
                    setattr(node, name, self.visit(value))
            return node

        def _noted(self, body: list[ast.stmt]) -> list[ast.stmt]:
            return [part for statement in body for part in (ast.copy_location(ast.Expr(note(statement)), statement), self.visit(statement))]

    return Noting().visit(copy.deepcopy(tree))


def _broken(tree: ast.Module) -> ast.Module:
    """The same source, each of its functions refusing whatever it is asked: the fault that must be noticed."""

    class Breaking(ast.NodeTransformer):
        def visit_FunctionDef(self, node: ast.FunctionDef) -> ast.FunctionDef:
            if any(isinstance(part, ast.Name) and part.id == "super" for part in ast.walk(node)):
                return node  # without it the class round it would be made otherwise
            body: list[ast.stmt] = [ast.parse("raise AssertionError('planted')").body[0]]
            return ast.copy_location(ast.FunctionDef(node.name, node.args, body, node.decorator_list, node.returns), node)

    return Breaking().visit(copy.deepcopy(tree))


def _statement(tree: ast.Module, place: ast.AST) -> set[int]:
    """The first lines of the statements and functions without a name in which a place stands, and its own lines."""
    at = getattr(place, "lineno", 1)
    around = [node for node in ast.walk(tree) if isinstance(node, ast.stmt | ast.Lambda) and node.lineno <= at <= (node.end_lineno or at)]
    inner = min((node for node in around if isinstance(node, ast.stmt)), key=lambda node: (node.end_lineno or at) - node.lineno, default=None)
    own = {*range(at, (getattr(place, "end_lineno", None) or at) + 1)}
    return own | {inner.lineno if inner else at} | {node.body.lineno for node in around if isinstance(node, ast.Lambda)}


def tried(targets: list[Target], tests: tuple[str, ...]) -> Told:
    """Tries the faults with everything loaded: to be run in a fork of its own, see `in_fork`."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
    session = Session(targets)
    session.watch(session.at_import)
    pytest.main(["-q", "-s", "-p", "no:cacheprovider", "-n", "0", "-o", "addopts=", *tests], plugins=[session])
    return session.told
