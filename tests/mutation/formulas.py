"""Puts small faults into every formula and counts those that its own guards do not notice: python tests/mutation/formulas.py [WORDS] [--cores 2].

A formula's guards are what stands in its declaration: dimensions, printed values, numbers worked by hand, and the derivation. A mutant that none
of them refuses lives. Those that may live are in `may_live.py`, each with its reason; the command ends with exit 1 when others do, or when one
listed there no longer lives.
"""

from __future__ import annotations

import argparse
import ast
import dataclasses
import math
import sys
from collections import Counter
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

sys.path[:0] = [str(Path(__file__).parent), str(Path(__file__).parents[1])]

from draws import usual_points  # noqa: E402
from may_live import MAY_LIVE  # noqa: E402
from mutants import in_formula, swapped  # noqa: E402

from brimwork.derivation import NotProved, derived  # noqa: E402
from brimwork.expression import DeclarationError  # noqa: E402
from brimwork.formula import Formula  # noqa: E402
from brimwork.topics import formulas  # noqa: E402
from brimwork.units import InputError  # noqa: E402

WAYS = ("dimensions", "printed", "by hand", "derivation", "the same", "lives")


def mutants(formula: Formula) -> Iterator[tuple[str, str]]:
    """(what was changed, the changed text) for both sides of the formula."""
    sides = [("right", formula.right)] + ([("left", formula.left)] if formula.implicit else [])
    seen = {formula.equals}
    for side, tree in sides:
        for told, old, new in in_formula(tree):
            text = ast.unparse(ast.fix_missing_locations(swapped(tree, old, new)))
            if formula.implicit:
                other = ast.unparse(formula.left if side == "right" else formula.right)
                text = f"{other} = {text}" if side == "right" else f"{text} = {other}"
            if text not in seen:
                seen.add(text)
                yield told, text


def fate(formula: Formula, text: str) -> str:
    """What notices the change, one of WAYS: the guards in the order of their cost."""
    try:
        mutant = dataclasses.replace(formula, equals=text)
    except (DeclarationError, OverflowError, ZeroDivisionError):
        return "dimensions"
    for way, guards in (("printed", formula.published), ("by hand", getattr(formula, "by_hand", ()))):
        if not all(_passes(guard, mutant) for guard in guards):
            return way
    if _the_same(formula, mutant):
        return "the same"
    try:
        derived(mutant)
    except (NotProved, DeclarationError, ArithmeticError, TypeError, ValueError):
        return "derivation"
    return "lives"


def _passes(guard, mutant: Formula) -> bool:
    try:
        return guard.check(mutant).agrees
    except (InputError, ArithmeticError, ValueError):
        return False


def _the_same(formula: Formula, mutant: Formula) -> bool:
    """No fault at all: the same numbers at twenty points, as where a factor 1 was dropped."""
    for point in usual_points(formula, 20, seed=9):
        try:
            if not math.isclose(formula(**point), mutant(**mutant.only(point)), rel_tol=1e-12):
                return False
        except InputError:
            return False
    return True


def campaign(formula: Formula) -> list[tuple[str, str, str]]:
    """(way, what was changed, text) for every mutant of a formula."""
    return [(fate(formula, text), told, text) for told, text in mutants(formula)]


def _campaign(name: str) -> tuple[str, list[tuple[str, str, str]]]:
    return name, campaign(formulas()[name])


def main() -> int:
    ask = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ask.add_argument("words", nargs="*", help="only formulas whose name has these words")
    ask.add_argument("--cores", type=int, default=1)
    asked = ask.parse_args()
    names = [name for name in formulas() if all(word in name for word in asked.words)]
    ways, living = Counter(), []
    with ProcessPoolExecutor(asked.cores) as pool:
        for count, (name, found) in enumerate(pool.map(_campaign, names), start=1):
            ways.update(way for way, _, _ in found)
            living += [(name, told) for way, told, _ in found if way == "lives"]
            if sys.stderr.isatty() or count % 50 == 0:
                print(f"{count} of {len(names)} formulas, {ways.total()} mutants, {len(living)} live", file=sys.stderr)
    unlisted = [one for one in living if one not in MAY_LIVE]
    dead = [one for one in MAY_LIVE if one[0] in names and one not in living]
    print(f"{ways.total()} mutants of {len(names)} formulas: " + ", ".join(f"{ways[way]} {way}" for way in WAYS if ways[way]))
    for name, told in living:
        print(f"  {name}: {told}" + (f"   ({MAY_LIVE[name, told]})" if (name, told) in MAY_LIVE else ""))
    for name, told in dead:
        print(f"  listed in may_live.py, but noticed: {name}: {told}")
    return 1 if unlisted or dead else 0


if __name__ == "__main__":
    sys.exit(main())
