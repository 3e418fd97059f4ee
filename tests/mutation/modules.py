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
import re
import sys
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import settings

TESTS = Path(__file__).parents[1]
SOURCE = TESTS.parent / "src" / "brimwork"
sys.path[:0] = [str(Path(__file__).parent), str(TESTS)]

from in_place import Target, Told, in_fork, tried  # noqa: E402
from may_live import MODULES_MAY_LIVE  # noqa: E402
from mutants import in_module, swapped  # noqa: E402

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
        ),
        (
            "test_diagnosis_by_hand.py",
            "test_told_by_hand.py",
            "test_ways_by_hand.py",
            "test_causes_by_hand.py",
            "test_unit_slips_by_hand.py",
            "test_fair_spellings.py",
        ),
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
            "test_checks_by_hand.py",
            "test_judged_by_hand.py",
            "test_grading_by_hand.py",
            "test_findings_by_hand.py",
            "test_agreeing_by_hand.py",
            "test_hanging_by_hand.py",
            "test_contradictions.py",
            "test_hanging.py",
            "test_plausible.py",
            "test_measured.py",
        ),
    ),
}


_LINE = re.compile(r" line \d+:")


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


def target(module: str) -> Target:
    """A module with all faults that it can be given."""
    path = SOURCE / (module.replace(".", "/") + ".py")
    tree = ast.parse(path.read_text(encoding="utf-8"))
    return Target(module, path, tree, list(in_module(tree)))


def planted(tree: ast.Module) -> ast.Module:
    """The same source, which cannot be imported: the fault that must be noticed."""
    return ast.Module([*tree.body, *ast.parse("raise AssertionError('planted')").body], [])


def campaign(targets: list[Target], tests: tuple[str, ...], in_place: bool = False) -> dict[str, list[int]]:
    """The places of the faults that live, by module; with `in_place` of those that were not noticed at the first try, which is quick."""
    whole = tuple(str(TESTS / test) for test in tests)
    told = in_fork(lambda: tried(targets, whole)) or Told()
    if not told.ran or not all(one.passed for one in told.ran):
        raise SystemExit(f"the tests are red without any fault: {', '.join([one.name for one in told.ran if not one.passed][:5])}")
    order, seconds = [one.name for one in sorted(told.ran, key=lambda one: one.seconds)], sum(one.seconds for one in told.ran)
    print(f"{len(order)} tests take {seconds:.1f} s", file=sys.stderr, flush=True)

    def again(target: Target, changed: ast.Module) -> bool:
        return in_fork(lambda: _red(target.module, changed, whole, order), 30 + 3 * seconds) in (True, None)

    if not in_place and again(targets[0], targets[0].tree):
        raise SystemExit(f"the gate does not judge: red with {targets[0].module} as it is")
    blind = [target.module for target in targets if not told.planted[target.module] or not (in_place or again(target, planted(target.tree)))]
    if blind:
        raise SystemExit(f"the gate does not judge: green with a fault that nobody can miss in {', '.join(blind)}")
    living: dict[str, list[int]] = {}
    for target in targets:
        more = [place for place in told.again[target.module] if in_place or not again(target, swapped(target.tree, *target.faults[place][1:]))]
        living[target.module] = sorted([*told.living[target.module], *more])
        print(f"{target.module}: {len(target.faults)} mutants, {len(living[target.module])} live", flush=True)
    return living


def main() -> int:
    ask = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ask.add_argument("area", choices=AREAS)
    ask.add_argument("--draw", type=int, default=0, help="draw so many mutants of the whole area, instead of all")
    ask.add_argument("--seed", type=int, default=7, help="of the draw")
    ask.add_argument("--module", default="", help="only this module of the area")
    ask.add_argument("--in-place", action="store_true", help="only the first try, which is quick: what it lists may still be noticed by the second")
    asked = ask.parse_args()
    settings.register_profile("patient", deadline=None, database=None, derandomize=True)  # a slow machine is no fault that was noticed
    settings.load_profile("patient")

    modules, tests = AREAS[asked.area]
    whole = [target(module) for module in modules if asked.module in ("", module)]
    found = [(one.module, fault) for one in whole for fault in one.faults]
    drawn = random.Random(asked.seed).sample(found, min(asked.draw, len(found))) if asked.draw else found
    targets = [replace(one, faults=[fault for module, fault in drawn if module == one.module]) for one in whole]
    lives = campaign([one for one in targets if one.faults], tests, asked.in_place)
    living = [f"{one.module} {one.faults[place][0]}" for one in targets for place in lives.get(one.module, ())]
    reasons = {one: MODULES_MAY_LIVE.get(_LINE.sub(":", one), "") for one in living}  # lines move
    for one, why in reasons.items():
        print(f"  {one}" + (f"   ({why})" if why else ""))
    counted = [one for one in living if not reasons[one]]
    print(
        f"{asked.area}: {len(drawn)} mutants of {len(found)}, seed {asked.seed}: {len(living)} live, {len(living) - len(counted)} of them with a reason; "
        f"{len(counted) / max(1, len(drawn)):.1%} without"
    )
    return int(len(counted) >= 0.05 * len(drawn))


if __name__ == "__main__":
    sys.exit(main())
