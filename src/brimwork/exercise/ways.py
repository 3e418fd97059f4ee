"""Wrong ways with a working, found from its own tree: what is left out, turned round, swapped, put to another power, or stopped at half-way.

A way is a tree with words; it knows nothing of numbers. Where a given value is left out or turned, its unit stands in its place, so that the number is
that of somebody who goes on as if nothing had happened: a learner who works in SI leaves out so many metres, one who works in millimetres so many of those.
"""

from __future__ import annotations

import ast
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import combinations

from brimwork.exercise.trees import ONE, factors, one_replaced, product, replaced, terms, total
from brimwork.expression import exact

UNIT = "unit_of_"  # what stands for one unit of a given value
TURNED = {
    "sin": ("cos", "tan"),
    "cos": ("sin",),
    "tan": ("sin",),
    "asin": ("acos",),
    "acos": ("asin",),
    "log": ("log10",),
    "log10": ("log",),
    "ceil": ("floor",),
}
_CALLED = {"sin": "the sine", "cos": "the cosine", "tan": "the tangent", "log": "the natural logarithm", "log10": "the logarithm to base ten", "asin": "the arc sine",
           "acos": "the arc cosine"}  # fmt: skip

_Said = Callable[[ast.expr], str]


@dataclass(frozen=True)
class Way:
    """A wrong way: its tree, its kind, what to say of it (a text with places for parts), and those parts.

    `likely`: many people do this, so it may be told as a fact where nothing else fits; the others are only ever asked about. `far`: so far-fetched that
    nobody is asked about it; but numbers by which it would pass for right are not drawn.
    """

    tree: ast.expr
    kind: str
    text: str
    parts: tuple[ast.expr, ...] = ()
    likely: bool = True
    far: bool = False

    def sentence(self, said: _Said) -> str:
        """A full sentence for the learner, and what to do. A letter has its name the first time."""
        text = self.text
        for place, part in enumerate(self.parts):
            whole, hole = said(part), f"{{{place}}}"
            text = text.replace(hole, whole, 1).replace(hole, whole.partition(" (")[0] if isinstance(part, ast.Name) else whole)
        return text[0].upper() + text[1:]


@dataclass(frozen=True)
class Names:
    """What the names in a tree are: given values with their kind of unit (any value that can be compared), plain numbers among them, and words for units."""

    kinds: dict[str, object]
    plain: frozenset[str]
    words: frozenset[str]
    used: frozenset[str]
    angles: frozenset[str] = frozenset()

    def given(self, node: ast.AST) -> set[str]:
        return {part.id for part in ast.walk(node) if isinstance(part, ast.Name) and part.id in self.kinds}


def ways(tree: ast.expr, names: Names, on_the_way: tuple[ast.expr, ...] = ()) -> Iterator[Way]:
    """Every wrong way with a working, the likelier ones first; `on_the_way` holds parts of it that have a line of their own."""
    yield from _within(tree, names, lambda part: part)
    yield from _whole(tree, names)
    yield from _parts(tree, names, on_the_way)
    yield from _exchanged(tree, names)
    yield from _of_values(tree, names)
    yield from _rounded(tree)
    yield from _cut(tree, names)


# --- one place in the tree ----------------------------------------------------------------------------------------------------------


def _within(node: ast.expr, names: Names, put: Callable[[ast.expr], ast.expr]) -> Iterator[Way]:
    """Ways that change one place; `put` sets a part back into the whole."""
    match node:
        case ast.BinOp(op=ast.Add() | ast.Sub()) | ast.UnaryOp():
            members = list(terms(node))
            if names.given(node):
                yield from (_at(way, put) for way in _of_sum(members, names))
            for place, (term, added) in enumerate(members):
                yield from _within(term, names, _set_term(put, members, place, added))
        case ast.BinOp(op=ast.Mult() | ast.Div()):
            parts = list(factors(node))
            if names.given(node):
                yield from (_at(way, put) for way in _of_product(parts, names))
            for place, (factor, over) in enumerate(parts):
                yield from _within(factor, names, _set_factor(put, parts, place, over))
        case ast.BinOp(left=base, op=ast.Pow(), right=power):
            if names.given(base):
                yield from (_at(way, put) for way in _of_power(base, power, names))
            yield from _within(base, names, lambda new: put(ast.BinOp(new, ast.Pow(), power)))
        case ast.Call(func=func, args=arguments):
            if names.given(node):
                yield from (_at(way, put) for way in _of_call(func, arguments, names))
            for place, argument in enumerate(arguments):
                yield from _within(argument, names, _set_argument(put, func, arguments, place))


def _set_term(put: Callable[[ast.expr], ast.expr], members: list[tuple[ast.expr, bool]], place: int, added: bool) -> Callable[[ast.expr], ast.expr]:
    return lambda new: put(total([*members[:place], (new, added), *members[place + 1 :]]))


def _set_argument(put: Callable[[ast.expr], ast.expr], func: ast.expr, arguments: list[ast.expr], place: int) -> Callable[[ast.expr], ast.expr]:
    return lambda new: put(ast.Call(func, [*arguments[:place], new, *arguments[place + 1 :]], []))


def _set_factor(put: Callable[[ast.expr], ast.expr], members: list[tuple[ast.expr, bool]], place: int, over: bool) -> Callable[[ast.expr], ast.expr]:
    return lambda new: put(product([*members[:place], (new, over), *members[place + 1 :]]))


def _at(way: Way, put: Callable[[ast.expr], ast.expr]) -> Way:
    return Way(put(way.tree), way.kind, way.text, way.parts, way.likely, way.far)


def _unit_of(node: ast.expr, names: Names) -> ast.expr:
    """What stands in the place of a part that is left out of a product: one unit of it, where it is a given value."""
    return ast.Name(UNIT + node.id, ast.Load()) if isinstance(node, ast.Name) and node.id in names.kinds and node.id not in names.plain else ONE


def _of_sum(members: list[tuple[ast.expr, bool]], names: Names) -> Iterator[Way]:
    one_sign = len({added for _, added in members}) == 1
    for place, (term, added) in enumerate(members):
        do = "count it too" if one_sign else "add it" if added else "take it off"
        rest = [*members[:place], *members[place + 1 :]]
        yield Way(total(rest), "left out", f"you left out {{0}}: {do}.", (term,))
        if len(rest) == 1 and added and not one_sign:
            ((other, _),) = rest
            yield Way(other, "left out", "you worked with {0} alone: take it from {1}.", (other, term))
    for place, (term, added) in enumerate(members):
        if place or len(members) > 2:
            turned = [*members[:place], (term, not added), *members[place + 1 :]]
            yield Way(total(turned), "turned round", "you took off {0}: add it." if added else "you added {0}: take it off.", (term,))
    if len(members) == 2 and not one_sign:
        more, less = (term for term, _ in sorted(members, key=lambda member: not member[1]))
        yield Way(total([(less, True), (more, False)]), "turned round", "you took {0} from {1}: take {1} from {0}.", (more, less))
    if len(members) == 2 and all(isinstance(term, ast.Name) for term, _ in members):
        yield Way(
            product([(term, True) for term, _ in members]), "turned round", "you multiplied {0} by {1}: this is a sum.", tuple(t for t, _ in members), False
        )


def _of_product(members: list[tuple[ast.expr, bool]], names: Names) -> Iterator[Way]:
    numbers = [(share, over) for factor, over in members if (share := exact(factor)) is not None]
    others = [(factor, over) for factor, over in members if exact(factor) is None and not _words_only(factor, names)]
    for factor, over in others:
        rest = [(f, o) for f, o in members if f is not factor]
        unit = _unit_of(factor, names)
        yield Way(product([*rest, (unit, over)]), "left out", f"you left out {{0}}: {'multiply' if over else 'divide'} by it.", (factor,))
        if names.given(factor) or isinstance(factor, ast.Name):
            done, do = ("divided by", "multiply by it") if over else ("multiplied by", "divide by it")
            undone = product([*rest, (factor, not over), (ast.BinOp(unit, ast.Pow(), ast.Constant(2)), over)])
            yield Way(undone, "turned round", f"you {done} {{0}}: {do}.", (factor,))
    if numbers:
        size = _size(numbers)
        rest = [(f, o) for f, o in members if exact(f) is None]
        if size != 1:
            number = _constant(size)
            yield Way(
                product(rest),
                "left out",
                f"you left out the {_shown(size)}: {'multiply by it' if size.numerator != 1 else f'divide by {size.denominator}'}.",
                (number,),
            )
            yield Way(
                product([*rest, (number, False)]),
                "turned round",
                f"you put the {_shown(size)} in upside down: {'multiply' if size > 1 else 'divide'} once.",
                (number,),
                False,
            )
            if size.numerator > 1 and size.denominator > 1 and max(size.numerator, size.denominator) < 20:
                yield Way(product([*rest, (ast.Constant(size.numerator), True)]), "left out", f"you left out the {size.denominator}: divide by it.", (), False)
                yield Way(
                    product([*rest, (ast.Constant(size.denominator), False)]), "left out", f"you left out the {size.numerator}: multiply by it.", (), False
                )
            circle = [f for f, _ in others if isinstance(f, ast.Name) and f.id == "pi"]
            if circle and size.numerator == 1:
                plain = [(f, o) for f, o in rest if f is not circle[0]]
                yield Way(product(plain), "left out", f"you left out pi and the {size.denominator}: an area of a circle needs both.", (), False)
    for factor, over in others:
        summed, rest = list(terms(factor)), [(f, o) for f, o in members if f is not factor]
        if over and len(summed) > 1 and names.given(factor):
            for at in (0, len(summed) - 1):
                loose = [(product([*rest, (term, True)]) if place == at else term, added) for place, (term, added) in enumerate(summed)]
                yield Way(total(loose), "brackets", "you forgot the brackets round {0}: work that out first.", (factor,), likely=False)
    upper, under = [(f, o) for f, o in others if o], [(f, o) for f, o in others if not o]
    if any(names.given(f) for f, _ in under) and any(names.given(f) for f, _ in upper) and len(upper) + len(under) > 2:
        turned = product([*((f, not o) for f, o in others), *((f, o) for f, o in members if exact(f) is not None or _words_only(f, names))])
        below = product([(f, not o) for f, o in under])
        yield Way(turned, "turned round", "you turned the fraction upside down: divide {0} by {1}.", (product(upper), below))


def _words_only(node: ast.expr, names: Names) -> bool:
    held = {part.id for part in ast.walk(node) if isinstance(part, ast.Name)}
    return bool(held) and held <= names.words


def _size(numbers: list[tuple[Fraction, bool]]) -> Fraction:
    size = Fraction(1)
    for number, over in numbers:
        size = size * number if over else size / number
    return size


def _constant(size: Fraction) -> ast.expr:
    return ast.Constant(float(size)) if size.denominator != 1 else ast.Constant(size.numerator)


def _shown(size: Fraction) -> str:
    """A plain number in words: "1/4", "0.385", "1000"."""
    if size.numerator == 1 and size.denominator in (2, 3):
        return {2: "half", 3: "third"}[size.denominator]
    return str(size) if size.denominator == 1 or max(abs(size.numerator), size.denominator) < 20 else f"{float(size):.4g}"


def _of_power(base: ast.expr, power: ast.expr, names: Names) -> Iterator[Way]:
    size = exact(power)
    if size is None or size == 0:
        return
    unit = _unit_of(base, names)

    def at(new: Fraction) -> ast.expr:
        """The base to another power, with the unit of a given value to make up for it."""
        raised = base if new == 1 else ast.BinOp(base, ast.Pow(), ast.BinOp(ast.Constant(new.numerator), ast.Div(), ast.Constant(new.denominator)))
        return raised if unit is ONE else ast.BinOp(raised, ast.Mult(), ast.BinOp(unit, ast.Pow(), ast.Constant(float(size - new))))

    do = {2: "square it", 3: "take it three times", 4: "square it twice", Fraction(1, 2): "take the root"}.get(size, f"take it to the power {size}")
    yield Way(at(Fraction(1)), "power", f"you left out the power of {{0}}: {do}.", (base,))
    if abs(size) != 1:
        yield Way(at(1 / size), "power", f"you turned the power of {{0}} upside down: it is {size}, not {1 / size}.", (base,))
    multiplied = ast.BinOp(base, ast.Mult(), power)
    made_up = multiplied if unit is ONE else ast.BinOp(multiplied, ast.Mult(), ast.BinOp(unit, ast.Pow(), ast.Constant(float(size - 1))))
    yield Way(made_up, "power", f"you multiplied {{0}} by {size}: that is a power, so {do}.", (base,))
    whole: dict[Fraction, tuple[int, ...]] = {Fraction(2): (3,), Fraction(3): (2,), Fraction(4): (2, 3), Fraction(5): (4, 2)}
    for other in (Fraction(2), Fraction(1, 2)) if size.denominator > 1 else map(Fraction, whole.get(size, ())):
        if other not in (1, 1 / size, size):
            yield Way(at(other), "power", f"you took {{0}} to the power {other}: {do}.", (base,), likely=False)


def _of_call(func: ast.expr, arguments: list[ast.expr], names: Names) -> Iterator[Way]:
    name, inside = getattr(func, "id", ""), arguments[0]
    if name == "sqrt":
        yield Way(inside, "power", "you left out the root of {0}: take it.", (inside,))
        yield Way(ast.BinOp(inside, ast.Div(), ast.Constant(2)), "power", "you halved {0}: take its root.", (inside,))
        yield Way(ast.BinOp(inside, ast.Pow(), ast.Constant(2)), "power", "you squared {0}: take its root.", (inside,))
    if name in _CALLED:
        take = f"take {_CALLED[name]}"
        for other in TURNED[name]:
            new = ast.Call(ast.Name(other, ast.Load()), arguments, [])
            yield Way(new, "function", f"you took {_CALLED[other]} of {{0}}: {take}.", (inside,), likely=name != "log")
        unit = _unit_of(inside, names)
        bare = inside if unit is ONE else ast.BinOp(inside, ast.Div(), unit)
        yield Way(bare, "function", f"you left out {_CALLED[name].removeprefix('the ')}: {take} of {{0}}.", (inside,), likely=False)


# --- the whole ----------------------------------------------------------------------------------------------------------------------


def _whole(tree: ast.expr, names: Names) -> Iterator[Way]:
    if any(not over and names.given(factor) for factor, over in factors(tree)):
        yield Way(ast.BinOp(ONE, ast.Div(), tree), "turned round", "you turned the whole upside down: divide the other way round.")
    yield Way(ast.UnaryOp(ast.USub(), tree), "sign", "the sign is turned round: look at which way you count.")


def _parts(tree: ast.expr, names: Names, on_the_way: tuple[ast.expr, ...]) -> Iterator[Way]:
    """One part given as the whole: a given value, or a line on the way."""
    for name in names.kinds:
        yield Way(
            ast.Name(name, ast.Load()), "part", "that is only {0}, as it was given: work on from it.", (ast.Name(name, ast.Load()),), likely=name in names.used
        )
    seen = {ast.unparse(tree)}
    for part in (*on_the_way, *_inner(tree, names)):
        if len(names.given(part)) > 1 and (text := ast.unparse(part)) not in seen:
            seen.add(text)
            yield Way(part, "part", "that is only {0}: it is one part of the way, so go on from there.", (part,))


def _inner(node: ast.expr, names: Names) -> Iterator[ast.expr]:
    """Parts of a tree that a person would write down: terms, factors that are sums, what stands in a root or a power."""
    match node:
        case ast.BinOp(op=ast.Add() | ast.Sub()) | ast.UnaryOp():
            for term, _ in terms(node):
                yield term
                yield from _inner(term, names)
        case ast.BinOp(op=ast.Mult() | ast.Div()):
            members = list(factors(node))
            for side in (True, False):
                yield product([(factor, True) for factor, over in members if over is side])
            yield from (product(members[:count]) for count in range(2, len(members)))
            for factor, _ in members:
                yield factor
                yield from _inner(factor, names)
        case ast.BinOp(left=base, op=ast.Pow()):
            yield base
            yield from _inner(base, names)
        case ast.Call(args=arguments):
            for argument in arguments:
                yield argument
                yield from _inner(argument, names)


# --- the values ---------------------------------------------------------------------------------------------------------------------


def _exchanged(tree: ast.expr, names: Names) -> Iterator[Way]:
    """Two values of one kind in each other's place, and one in the place of the other."""
    for a, b in combinations(names.kinds, 2):
        if names.kinds[a] != names.kinds[b]:
            continue
        one, other, far = ast.Name(a, ast.Load()), ast.Name(b, ast.Load()), (a in names.angles) != (b in names.angles)
        if a in names.used and b in names.used:
            swapped = "you put {0} and {1} each in the place of the other: swap them."
            yield Way(replaced(tree, {a: other, b: one}), "swapped", swapped, (one, other), far=far)
        for old, new in ((one, other), (other, one)):
            if old.id in names.used:
                text, likely = "you used {1} in the place of {0}: put {0} there.", new.id not in names.used
                yield Way(replaced(tree, {old.id: new}), "swapped", text, (old, new), likely, far)
                places = [part for part in ast.walk(tree) if isinstance(part, ast.Name) and part.id == old.id]
                if len(places) > 1:
                    yield from (Way(one_replaced(tree, place, new), "swapped", text, (old, new), False, far) for place in places)


def _of_values(tree: ast.expr, names: Names) -> Iterator[Way]:
    for name in (name for name in names.kinds if name in names.used):
        old = ast.Name(name, ast.Load())
        if sum(isinstance(part, ast.Name) and part.id == name for part in ast.walk(tree)) > 1:
            for new in (ast.Constant(0), *([ONE] if name in names.plain else [])):
                yield Way(replaced(tree, {name: new}), "left out", "you left out {0}: it counts in each place where it stands.", (old,))
        for divisor, text in ((2, "half of {0}: put in the whole of it"), (4, "a quarter of {0}: put in the whole of it")):
            less, more = (ast.BinOp(old, op, ast.Constant(divisor)) for op in (ast.Div(), ast.Mult()))
            yield Way(replaced(tree, {name: less}), "doubled", f"you put in {text}.", (old,), likely=False)
            yield Way(
                replaced(tree, {name: more}), "doubled", f"you put in {{0}} {'twice' if divisor == 2 else 'four times'}: it counts once.", (old,), likely=False
            )
        for tens in (10, 100, 1000):
            for op, size in ((ast.Mult(), "large"), (ast.Div(), "small")):
                moved = ast.BinOp(old, op, ast.Constant(tens))
                yield Way(
                    replaced(tree, {name: moved}), "point", f"you put in {{0}} {tens} times too {size}: check its unit and its point.", (old,), likely=False
                )


def _rounded(tree: ast.expr) -> Iterator[Way]:
    """A round number for g or pi: near enough to be no wrong method, too far to be right."""
    held = {part.id for part in ast.walk(tree) if isinstance(part, ast.Name)}
    for name, number, text in (("pi", 3, "you took 3 for pi: take 3.14."), ("g", 10, "you took a round number for g: take it to three figures.")):
        if name in held:
            yield Way(replaced(tree, {name: ast.Constant(number)}), "rounded", text, likely=False)


_OTHER = {ast.Add: ast.Sub, ast.Sub: ast.Add, ast.Mult: ast.Div, ast.Div: ast.Mult}


def _cut(tree: ast.expr, names: Names) -> Iterator[Way]:
    """One thing that is seldom done, but must not pass for right.

    A whole side of a sum, a product or a fraction never written down; both sides changed over; the other sign between them.
    """
    for node in ast.walk(tree):
        if isinstance(node, ast.BinOp) and not isinstance(node.op, ast.Pow) and names.given(node):
            other = _OTHER[type(node.op)]()
            turned = (ast.BinOp(node.right, node.op, node.left),) if isinstance(node.op, ast.Sub | ast.Div) else ()
            for new in (node.left, node.right, *turned, ast.BinOp(node.left, other, node.right), *_spread(node)):
                yield Way(one_replaced(tree, node, new), "cut", "one side of {0} is missing or turned round: work it out once more.", (node,), False, True)


def _spread(node: ast.BinOp) -> Iterator[ast.expr]:
    """a*b + c worked as a*(b + c): what belongs to one term is put on the whole sum."""
    if isinstance(node.op, ast.Add | ast.Sub):
        for term, other in ((node.left, node.right), (node.right, node.left)):
            parts = list(factors(term))
            for place, (factor, over) in enumerate(parts if len(parts) > 1 else ()):
                rest = product([*parts[:place], *parts[place + 1 :]])
                yield product([(ast.BinOp(rest, node.op, other) if term is node.left else ast.BinOp(other, node.op, rest), True), (factor, over)])
