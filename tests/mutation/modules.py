"""Puts small faults into a module of the kit and counts those that its tests do not notice: python tests/mutation/modules.py units [--cores 2].

Each mutant is a fork of this process that imports the module with one change and runs the tests named for it in `AREAS`, the quick ones first.
The tests themselves, and all libraries, are loaded from disk as they are. Survivors are printed with their line; those that change nothing that
can be seen stand in `may_live.py` with the reason.
"""

from __future__ import annotations

import argparse
import ast
import importlib.abc
import importlib.util
import os
import random
import resource
import sys
import tempfile
import time
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

TESTS = Path(__file__).parents[1]
SOURCE = TESTS.parent / "src" / "brimwork"
sys.path[:0] = [str(Path(__file__).parent), str(TESTS)]

from may_live import MODULES_MAY_LIVE  # noqa: E402
from mutants import Fault, in_module, swapped  # noqa: E402

AREAS = {
    "units": (("units", "unit_table", "dimensions", "spellings"), ("test_units_by_hand.py", "test_units.py")),
    "diagnosis": (
        ("exercise.diagnosis", "exercise.unit_slips", "exercise.arithmetic"),
        ("test_pieces.py", "test_told_truly.py", "test_exercise.py", "test_diagnosis_quality.py", "test_hostile_answers.py"),
    ),
    "checks": (
        ("design.judged.grading", "design.judged.computed_checks", "design.judged.water_checks", "design.typed.limits"),
        ("test_checks.py", "test_stones_and_blade.py", "test_cascade.py"),
    ),
}
PATIENCE = 60  # seconds of processor time: a mutant that never ends is noticed, one on a busy machine is waited for


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


def fates(module: str, tree: ast.Module, faults: list[Fault], tests: tuple[str, ...], cores: int) -> Iterator[tuple[int, bool]]:
    """(which fault, whether the tests turn red or do not end with it), as each is known; `cores` forks at a time."""
    waiting, running = list(enumerate(faults)), {}
    while waiting or running:
        while waiting and len(running) < cores:
            place, (_, old, new) = waiting.pop(0)
            child = os.fork()
            if child == 0:
                resource.setrlimit(resource.RLIMIT_CPU, (PATIENCE, PATIENCE))
                os._exit(_red(module, swapped(tree, old, new), tests))
            running[child] = place
        for child, place in list(running.items()):
            done, how = os.waitpid(child, os.WNOHANG)
            if done:
                del running[child]
                yield place, how != 0
        time.sleep(0.02)


def _red(module: str, tree: ast.Module, tests: tuple[str, ...]) -> int:
    import hypothesis
    import pytest

    hypothesis.settings.register_profile("patient", deadline=None, database=None)  # a slow machine is no fault that was noticed
    hypothesis.settings.load_profile("patient")
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
        return int(pytest.main(["-x", "-q", "-p", "no:cacheprovider", *(str(TESTS / test) for test in tests)]) != 0)
    except BaseException:
        return 1


def campaign(module: str, tests: tuple[str, ...], cores: int, share: float) -> tuple[Counter, list[str]]:
    """Counts of what was noticed, and what lives, of one module; `share` draws that part of its mutants."""
    tree = ast.parse((SOURCE / (module.replace(".", "/") + ".py")).read_text())
    found = list(in_module(tree))
    if share < 1:
        found = random.Random(7).sample(found, max(1, round(share * len(found))))
    if dict(fates(module, tree, [("", tree, tree)], tests, 1))[0]:
        raise SystemExit(f"the tests for {module} are red without any fault in it")
    counts, living = Counter(), []
    for place, dead in fates(module, tree, found, tests, cores):
        counts["noticed" if dead else "lives"] += 1
        if not dead:
            living.append((place, f"{module} {found[place][0]}"))
        if counts.total() % 25 == 0:
            print(f"{module}: {counts.total()} of {len(found)}, {counts['lives']} live", file=sys.stderr, flush=True)
    return counts, [told for _, told in sorted(living)]


def main() -> int:
    ask = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ask.add_argument("area", choices=AREAS)
    ask.add_argument("--cores", type=int, default=1)
    ask.add_argument("--share", type=float, default=1.0, help="draw only this part of the mutants")
    ask.add_argument("--module", default="", help="only this module of the area")
    asked = ask.parse_args()
    os.environ["HYPOTHESIS_STORAGE_DIRECTORY"] = tempfile.mkdtemp()
    import hypothesis  # noqa: F401
    import pint  # noqa: F401
    import pytest  # noqa: F401

    modules, tests = AREAS[asked.area]
    total, living = Counter(), []
    for module in modules:
        if asked.module in ("", module):
            counts, lives = campaign(module, tests, asked.cores, asked.share)
            total += counts
            living += lives
    for one in living:
        print(f"  {one}" + (f"   ({MODULES_MAY_LIVE[one]})" if one in MODULES_MAY_LIVE else ""))
    print(f"{asked.area}: {total.total()} mutants, {total['lives']} live, {total['lives'] / max(1, total.total()):.1%}")
    return int(total["lives"] >= 0.05 * total.total())


if __name__ == "__main__":
    sys.exit(main())
