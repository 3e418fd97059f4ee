"""Puts small faults into the modules of an area and counts those that its tests do not notice: python tests/mutation/modules.py units [--draw 300].

A fault in a function is first put into it as it stands loaded, in a fork in which only the tests run that reach its lines (`in_place`). One in what runs
at import, and one that lived, is tried again in a fork that imports the module with the change and runs all tests named for it in `AREAS`, the quick ones
first. Each module gets a fault first that no test can miss, and each way one run without any. Survivors are printed with their line; those that change
nothing that can be seen stand in `may_live.py` with the reason.
"""

from __future__ import annotations

import argparse
import ast
import importlib.abc
import importlib.util
import os
import random
import sys
from pathlib import Path

import pytest
from hypothesis import settings

TESTS = Path(__file__).parents[1]
SOURCE = TESTS.parent / "src" / "brimwork"
sys.path[:0] = [str(Path(__file__).parent), str(TESTS)]

from in_place import in_fork, tried  # noqa: E402
from may_live import MODULES_MAY_LIVE  # noqa: E402
from mutants import Fault, in_module, swapped  # noqa: E402

AREAS = {
    "units": (("units", "unit_table", "dimensions", "spellings"), ("test_units_by_hand.py", "test_units.py")),
    "diagnosis": (
        (
            "exercise.diagnosis",
            "exercise.reading",
            "exercise.unit_slips",
            "exercise.arithmetic",
            "exercise.trees",
            "exercise.ways",
            "exercise.causes",
            "exercise.advice",
            "exercise.blanks",
            "exercise.hints",
        ),
        ("test_pieces.py", "test_exercise.py", "test_hints.py", "test_own_questions.py"),
    ),
    "checks": (
        (
            "design.typed.limits",
            "design.typed.criteria",
            "design.typed.asking",
            "design.typed.plausible",
            "design.follows.agreeing",
            "design.follows.measured",
            "design.follows.missing",
            "design.judged.grading",
            "design.judged.water_checks",
            "design.judged.load_checks",
            "design.judged.ground_checks",
            "design.judged.people_checks",
            "design.judged.computed_checks",
            "design.judged.contradictions",
            "design.judged.doubt",
            "design.judged.findings",
            "design.judged.checks",
            "design.judged.hanging",
        ),
        (
            "test_checks.py",
            "test_contradictions.py",
            "test_hanging.py",
            "test_plausible.py",
            "test_measured.py",
            "test_stones_and_blade.py",
            "test_cascade.py",
            "test_ground.py",
            "test_asking.py",
            "test_trade_facts.py",
        ),
    ),
}


class _Changed(importlib.abc.MetaPathFinder, importlib.abc.Loader):
    """Imports one module from a changed tree; all others as usual."""

    def __init__(self, name: str, code):
        self.name, self.code = name, code

    def find_spec(self, name, path=None, target=None):
        return importlib.util.spec_from_loader(name, self, origin=str(SOURCE / name)) if name == self.name else None

    def create_module(self, spec):
        return None

    def exec_module(self, module):
        exec(self.code, module.__dict__)


class _Quickest:
    """As a plugin: has the tests run in the order of their names in `order`."""

    def __init__(self, order: list[str]):
        self.order = {name: place for place, name in enumerate(order)}

    @pytest.hookimpl(trylast=True)
    def pytest_collection_modifyitems(self, items: list[pytest.Item]) -> None:
        items.sort(key=lambda item: self.order.get(item.nodeid, 0))


def _red(module: str, tree: ast.Module, tests: tuple[str, ...], order: list[str]) -> bool:
    """Whether the tests turn red with the module imported from that tree."""
    quiet = os.open(os.devnull, os.O_WRONLY)
    os.dup2(quiet, 1)
    os.dup2(quiet, 2)
    sys.dont_write_bytecode = True
    for loaded in [name for name in sys.modules if name.partition(".")[0] == "brimwork"]:
        del sys.modules[loaded]
    try:
        name = f"brimwork.{module}"
        path = SOURCE / (module.replace(".", "/") + ".py")
        sys.meta_path.insert(0, _Changed(name, compile(ast.fix_missing_locations(tree), str(path), "exec")))
        return pytest.main(["-x", "-q", "-p", "no:cacheprovider", "-n", "0", "-o", "addopts=", *tests], plugins=[_Quickest(order)]) != 0
    except BaseException:
        return True


def planted(tree: ast.Module) -> ast.Module:
    """The same source, which cannot be imported: the fault that must be noticed."""
    return ast.Module([*tree.body, *ast.parse("raise AssertionError('planted')").body], [])


def campaign(module: str, faults: list[Fault], tree: ast.Module, tests: tuple[str, ...]) -> list[int]:
    """The places of the faults that live."""
    path, whole = SOURCE / (module.replace(".", "/") + ".py"), tuple(str(TESTS / test) for test in tests)
    first = in_fork(lambda: tried(path, tree, faults, whole))
    if first is None or not first.ran or not all(one.passed for one in first.ran):
        red = [] if first is None else [one.name for one in first.ran if not one.passed]
        raise SystemExit(f"the tests for {module} are red without any fault in it: {', '.join(red[:5])}")
    order = [one.name for one in sorted(first.ran, key=lambda one: one.seconds)]
    seconds = sum(one.seconds for one in first.ran)
    print(f"{module}: {len(first.noticed)} of {len(faults)} noticed in place; {len(order)} tests take {seconds:.1f} s", file=sys.stderr, flush=True)
    patience = 30 + 3 * seconds

    def again(changed: ast.Module) -> bool:
        return in_fork(lambda: _red(module, changed, whole, order), patience) in (True, None)

    if again(tree) or not again(planted(tree)) or not first.planted:
        raise SystemExit(f"the gate for {module} does not judge: red without a fault, or green with one that nobody can miss")
    living = []
    for place in sorted({*range(len(faults))} - first.noticed):
        _, old, new = faults[place]
        if not again(swapped(tree, old, new)):
            living.append(place)
            print(f"{module}: lives: {faults[place][0]}", file=sys.stderr, flush=True)
    return living


def main() -> int:
    ask = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ask.add_argument("area", choices=AREAS)
    ask.add_argument("--draw", type=int, default=0, help="draw so many mutants of the whole area, instead of all")
    ask.add_argument("--seed", type=int, default=7, help="of the draw")
    ask.add_argument("--module", default="", help="only this module of the area")
    asked = ask.parse_args()
    settings.register_profile("patient", deadline=None, database=None, derandomize=True)  # a slow machine is no fault that was noticed
    settings.load_profile("patient")

    modules, tests = AREAS[asked.area]
    trees = {module: ast.parse((SOURCE / (module.replace(".", "/") + ".py")).read_text(encoding="utf-8")) for module in modules if asked.module in ("", module)}
    found = [(module, fault) for module, tree in trees.items() for fault in in_module(tree)]
    drawn = random.Random(asked.seed).sample(found, min(asked.draw, len(found))) if asked.draw else found
    living = []
    for module, tree in trees.items():
        faults = [fault for place, fault in drawn if place == module]
        lives = [f"{module} {faults[place][0]}" for place in campaign(module, faults, tree, tests)] if faults else []
        print(f"{module}: {len(faults)} mutants, {len(lives)} live", flush=True)
        living += lives
    for one in living:
        print(f"  {one}" + (f"   ({MODULES_MAY_LIVE[one]})" if one in MODULES_MAY_LIVE else ""))
    counted = [one for one in living if one not in MODULES_MAY_LIVE]
    print(
        f"{asked.area}: {len(drawn)} mutants of {len(found)}, seed {asked.seed}: {len(living)} live, {len(living) - len(counted)} of them with a reason; "
        f"{len(counted) / max(1, len(drawn)):.1%} without"
    )
    return int(len(counted) >= 0.05 * len(drawn))


if __name__ == "__main__":
    sys.exit(main())
