"""A third learner, whose head is elsewhere: units of one value, means, digits, parts counted twice. Is what comes of it taken for right, or blamed on another cause?

Run `python tests/elsewhere_learner.py [--seeds 3] [--from 11] [--us] [--part 0 --parts 4] [--show 20]`; the suite runs a small sample. It shares with the other two
only the means to pose a question, to work a text and to judge a diagnosis. Its families are written from what is seen in workshops, no counts from real classes.
"""

from __future__ import annotations

import argparse
import ast
import collections
import itertools
import random
from collections.abc import Iterator

import simulated_learner as simulated

from brimwork import system, units
from brimwork.dimensions import LENGTH, NUMBER
from brimwork.exercise import arithmetic, twins
from brimwork.exercise.diagnosis import diagnose
from brimwork.exercise.trees import one_replaced, replaced
from brimwork.exercise.written import Numeric
from brimwork.expression import DeclarationError
from brimwork.nomenclature import QUANTITIES

# What somebody makes of a unit without saying so: by a word that stands in it.
_UNITS = (
    ("US gal", (3.785, 1 / 3.785, 0.8327, 1.2009, 231, 7.48)),
    ("L", (3.785, 1 / 3.785, 1000, 0.001)),
    ("/min", (60, 1 / 60)),
    ("/h", (60, 1 / 60, 24)),
    ("/day", (24, 7, 1 / 365)),
    ("min", (60, 1 / 60)),
    ("day", (24, 1 / 7)),
    ("mm", (10, 0.1, 25.4, 1 / 25.4, 1000)),
    ("cm", (10, 0.1, 2.54, 100)),
    ("in", (12, 1 / 12, 2.54, 25.4)),
    ("ft", (12, 1 / 12, 0.3048, 1 / 3)),
    ("m", (100, 3.281, 0.3048)),
    ("kg", (2.2046, 0.4536, 1000)),
    ("lb", (2.2046, 0.4536, 16, 1 / 2000)),
    ("psi", (144, 6.895)),
    ("psf", (1 / 144,)),
    ("kPa", (1000, 1 / 6.895, 10)),
    ("deg", (57.2958, 1 / 57.2958)),
    ("%", (100, 0.01)),
)
_MEANS = ("({a} + {b})/2", "sqrt({a}*{b})", "2*{a}*{b}/({a} + {b})", "sqrt(({a}**2 + {b}**2)/2)", "max({a}, {b})", "min({a}, {b})")


def _of_units(tree: ast.expr, learner: simulated.Learner) -> Iterator[tuple[str, ast.expr]]:
    for name, given in learner.posed.given.items():
        for word, sizes in _UNITS:
            if given.unit.startswith(word) or word.startswith("/") and word in given.unit:
                for size in sizes:
                    yield "unit of one value", replaced(tree, {name: ast.BinOp(ast.Name(name), ast.Mult(), ast.Constant(size))})
                break


def _digits(tree: ast.expr, learner: simulated.Learner) -> Iterator[tuple[str, ast.expr]]:
    """17 read as 71 is seen, and 65 as 56 is a rough value: what lies between, such as 35 as 53."""
    for name, given in learner.posed.given.items():
        shown = units.convert(given.value, given.unit)
        text = f"{shown:.6g}"
        figures = [place for place, sign in enumerate(text) if sign.isdigit()]
        for a, b in itertools.pairwise(figures):
            swapped = text[:a] + text[b] + text[a + 1 : b] + text[a] + text[b + 1 :]
            if "e" not in text and swapped != text and shown and 1 / 3 < float(swapped) / shown < 3 and abs(float(swapped) / shown - 1) > 0.3:
                yield "digits turned round", replaced(tree, {name: ast.BinOp(ast.Name(name), ast.Mult(), ast.Constant(float(swapped) / shown))})


def _means(tree: ast.expr, learner: simulated.Learner) -> Iterator[tuple[str, ast.expr]]:
    """A mean of two values of one kind and one letter for both, where they differ enough for it to matter."""
    for a, b in itertools.combinations(learner.given, 2):
        if (
            learner.alike[a] == learner.alike[b]
            and a[0].lower() == b[0].lower()
            and learner.given[b]
            and not 0.75 < abs(learner.given[a] / learner.given[b]) < 1.33
        ):
            means = [ast.parse(mean.format(a=a, b=b), mode="eval").body for mean in _MEANS]
            put = [replaced(tree, {a: both, b: both}) for both in means]
            if not simulated.same(*(learner.elsewhere_of(ast.unparse(one)) for one in (put[0], tree))):  # values that are only added up have no other mean
                yield from (("one mean for two values", one) for one in put)


def _parts(tree: ast.expr, learner: simulated.Learner) -> Iterator[tuple[str, ast.expr]]:
    """Twice, half, four times or a quarter of any part; a power or a root of a value; a term counted twice; the larger of two for their sum; two terms forgotten."""
    for node in [node for node in ast.walk(tree) if isinstance(node, ast.expr)]:
        if isinstance(node, ast.BinOp | ast.Name) and not (isinstance(node, ast.Name) and node.id not in learner.given):
            for size in (2, 0.5, 4, 0.25):
                yield "a multiple of a part", one_replaced(tree, node, ast.BinOp(node, ast.Mult(), ast.Constant(size)))
            if isinstance(node, ast.Name) and learner.alike[node.id] == LENGTH:  # nobody squares a density
                for power in (2, 3, 0.5):
                    yield "another power of a value", one_replaced(tree, node, ast.BinOp(node, ast.Pow(), ast.Constant(power)))
        if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add | ast.Sub):
            for name in ("max", "min"):
                yield "the larger or smaller for a sum", one_replaced(tree, node, ast.Call(ast.Name(name), [node.left, node.right], []))
            yield "a product for a sum", one_replaced(tree, node, ast.BinOp(node.left, ast.Mult(), node.right))
            yield (
                "diagonal for a sum",
                one_replaced(tree, node, ast.parse(f"sqrt(({ast.unparse(node.left)})**2 + ({ast.unparse(node.right)})**2)", mode="eval").body),
            )
            if isinstance(node.left, ast.BinOp) and isinstance(node.left.op, ast.Add | ast.Sub):
                yield "two parts forgotten", one_replaced(tree, node, node.left.left)
                yield "two parts forgotten", one_replaced(tree, node, node.right)
        if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Mult | ast.Div) and _kind(node.left, learner) == _kind(node.right, learner) == NUMBER:
            yield "a sum for a product", one_replaced(tree, node, ast.BinOp(node.left, ast.Add(), node.right))
        if isinstance(node, ast.Name) and node.id in learner.constants and node.id == "g":
            for other in (1.62, 32.174, 1000, 1):
                yield "another g", one_replaced(tree, node, ast.Constant(other))


def _kind(node: ast.expr, learner: simulated.Learner) -> tuple | None:
    """What a part measures, or None where unlike things are put together."""
    kinds = {**arithmetic.DIMENSIONS, **learner.alike, **{name: QUANTITIES[name].dimension for name in learner.constants}}
    try:
        return arithmetic.dimension_of_typed(node, kinds)
    except (DeclarationError, ArithmeticError, ValueError, TypeError, KeyError):
        return None


def _whole(tree: ast.expr, learner: simulated.Learner) -> Iterator[tuple[str, ast.expr]]:
    """The first formula that comes to mind, where its unit fits: all values multiplied, those of one kind added up, two of them divided."""
    wanted = units.unit(learner.posed.unit).dimension
    yield from ((how, other) for how, other in _wholes(learner) if (kind := _kind(other, learner)) is not None and kind == wanted)


def _wholes(learner: simulated.Learner) -> Iterator[tuple[str, ast.expr]]:
    names = [*learner.given]
    yield "all multiplied", ast.parse("*".join(names), mode="eval").body
    for kind in set(learner.alike.values()):
        same = [name for name in names if learner.alike[name] == kind]
        if len(same) > 1:
            yield "all added up", ast.parse(" + ".join(same), mode="eval").body
            yield "the mean of all", ast.parse(f"({' + '.join(same)})/{len(same)}", mode="eval").body
    for a, b in itertools.permutations(names, 2):
        yield "two divided", ast.parse(f"{a}/{b}", mode="eval").body
        yield "two multiplied", ast.parse(f"{a}*{b}", mode="eval").body


FAMILIES = (_of_units, _digits, _means, _parts, _whole)


def methods(text: str, learner: simulated.Learner) -> Iterator[tuple[str, str]]:
    tree, seen = ast.parse(text, mode="eval").body, {text}
    for family in FAMILIES:
        for how, other in family(tree, learner):
            written = ast.unparse(other)
            if written not in seen:
                seen.add(written)
                yield how, written


def tried(questions, seeds, draw: random.Random | None = None, most: int = 0) -> Iterator[tuple[str, int, str, str, str, str, str]]:
    """Each wrong method: question, seed, how, its text, what was typed, judgement, and what was said. With `draw`, at most so many of each question.

    One that is the right method in other words, or that a declared slip already is, is left out; so is a number that nobody would hand in.
    """
    for declared in questions:
        declared = twins.here(declared) if isinstance(declared, Numeric) else declared
        text = simulated.right_text(declared)
        if not text:
            continue
        for seed in seeds:
            learner = simulated.Learner(declared, seed)
            right, answer = learner.elsewhere_of(text), learner.posed.answer
            slips = [learner.explained(slip.feedback) for slip in (declared.wrong if isinstance(declared, Numeric) else declared.slips)]
            every = [*methods(text, learner)]
            for how, method in draw.sample(every, min(most, len(every))) if draw else every:
                value, other = learner.work(method), learner.elsewhere_of(method)
                if value is None or not answer or not 1e-4 < abs(value / answer) < 1e4 or simulated.same(other, right):
                    continue
                if any(simulated.same(other, one) for slip in slips for one in slip):
                    continue
                typed = simulated.shown(value, learner.posed.unit)
                found = diagnose(learner.posed, typed)
                verdict = simulated.judged(learner, method, found)
                if how == "unit of one value" and found.kind == "input":
                    changed = [str(given) for name, given in learner.posed.given.items() if f"{name} *" in method]
                    named = any(said.startswith(f"{value} was put in") for said in found.causes for value in changed)
                    verdict = verdict.replace("falsely", "truly") if named else verdict
                yield simulated.name_of(declared), seed, how, method, typed, verdict, found.message
            if not learner.posed.varies:
                break


def main() -> int:
    options = argparse.ArgumentParser(description=__doc__)
    for name, value in (("seeds", 1), ("from", 11), ("part", 0), ("parts", 1), ("show", 0), ("most", 40)):
        options.add_argument(f"--{name}", type=int, default=value)
    options.add_argument("--us", action="store_true")
    chosen = options.parse_args()
    first = vars(chosen)["from"]
    counts: dict[str, collections.Counter] = collections.defaultdict(collections.Counter)
    examples = collections.defaultdict(list)
    with system.working_in(system.FEET if chosen.us else system.METRES):
        for row in tried(simulated.declared()[chosen.part :: chosen.parts], range(first, first + chosen.seeds), random.Random(first), chosen.most):
            counts["all"][row[5]] += 1
            counts[row[2]][row[5]] += 1
            examples[row[5]].append(row)
    for family, found in counts.items():
        print(f"{family}: {sum(found.values())}, " + ", ".join(f"{kind} {count}" for kind, count in found.most_common()))
    for row in examples["accepted"]:
        print("accepted", *row[:5], sep=" | ")
    for kind in ("told falsely", "asked falsely", "silent"):
        for row in random.Random(1).sample(examples[kind], min(chosen.show, len(examples[kind]))):
            print(kind, *row, sep=" | ")
    return 1 if examples["accepted"] else 0


if __name__ == "__main__":
    raise SystemExit(main())
