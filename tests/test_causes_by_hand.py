"""The trees behind a question, worked by hand: expressions and their kinds, constants with a unit, the wrong ways with their numbers, and what to do instead."""

import ast
import math
from fractions import Fraction

import pytest

from brimwork.dimensions import LENGTH, MASS, NUMBER, TIME, VOLUME
from brimwork.exercise.advice import advised, bids
from brimwork.exercise.arithmetic import Constants, alone, dimension_of_typed, dimension_typed, fill, hole_texts, holes, names, value_typed, whole
from brimwork.exercise.causes import Cause, WayOfWorking, written
from brimwork.exercise.question import KnownWay, Question
from brimwork.exercise.ways import Way
from brimwork.exercise.written import Numeric, Wrong
from brimwork.expression import DeclarationError
from brimwork.roots import solve


def tree(text: str) -> ast.expr:
    return ast.parse(text, mode="eval").body


# --- expressions --------------------------------------------------------------------------------------------------------------------


def test_names_are_the_given_values_and_neither_units_nor_functions():
    assert names("a*sqrt(b) + 3*inch - g*pi") == {"a", "b"} and names("2.5") == set()


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("a +", "'a +' is not an expression"), ("a.real", "Attribute has no place"), ("f(a)", "Call has no place"), ("min(a, key=b)", "keyword has no place"),
        ("a.f(b)", "Call has no place"), ("True", "Constant has no place"), ("'a'", "Constant has no place"), ("a @ b", "MatMult has no place"), ("+a", "UAdd has no place"),
        ("a if b else c", "IfExp has no place"), ("[a]", "List has no place"),
    ],
)  # fmt: skip
def test_only_arithmetic_is_an_expression(text, told):
    with pytest.raises(DeclarationError, match=told.replace("+", r"\+")):
        names(text)


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("3*inch", 0.0762), ("a*b", 6.0), ("-a", -2.0), ("b**2", 9.0), ("max(a, b) - min(a, b) + abs(-a)", 3.0), ("sqrt(a*8)", 4.0), ("g", 9.80665),
        # a count is rounded to nine places first, lest the last bit buys a bag
        ("ceil(2.0000000003)", 2.0), ("ceil(2.000000003)", 3.0), ("floor(2.9999999997)", 3.0), ("floor(2.999999997)", 2.0),
    ],
)  # fmt: skip
def test_an_expression_is_worked_in_si(text, number):
    assert value_typed(text, {"a": 2.0, "b": 3.0}) == pytest.approx(number, rel=1e-12)


@pytest.mark.parametrize(
    ("text", "told"),
    [("c", "'c' is not defined; it is neither given nor a word for a unit"), ("1/(a - a)", "has no value here"), ("sqrt(-a)", "has no value here"), ("(-a)**0.5", "has no value here"),
     ("1e308*1e308", "has no finite value here")],
)  # fmt: skip
def test_what_has_no_number_is_told(text, told):
    with pytest.raises(DeclarationError, match=told):
        value_typed(text, {"a": 2.0})


def test_a_number_alone_is_one_however_it_is_written():
    assert [alone(one) for one in (3, 0.5, "3", "-3", "0.5", "a", "-a", "2*3", "-(2*3)")] == [3.0, 0.5, 3.0, -3.0, 0.5, None, None, None, None]
    assert isinstance(alone(3), float) and isinstance(alone("3"), float)


AREA = LENGTH**2


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("a*b", AREA), ("a/t", LENGTH / TIME), ("a + b", LENGTH), ("-a", LENGTH), ("a**2", AREA), ("a**(3/2)", LENGTH ** Fraction(3, 2)), ("a**(2/3)", LENGTH ** Fraction(2, 3)),
        ("sqrt(a*b)", LENGTH), ("min(a, b)", LENGTH), ("abs(a)", LENGTH), ("exp(a/b)", NUMBER), ("ceil(n)", NUMBER), ("n**n", NUMBER), ("2**n", NUMBER), ("3*inch", LENGTH), ("pi", NUMBER),
        ("g", LENGTH / TIME**2),
    ],
)  # fmt: skip
def test_an_expression_has_the_kind_of_its_parts(text, kind):
    assert dimension_typed(text, {"a": LENGTH, "b": LENGTH, "t": TIME, "n": NUMBER}) == kind


@pytest.mark.parametrize(
    ("text", "told"),
    [("a + t", "puts together m and s"), ("max(a, b, t)", "puts together m and s"), ("exp(a)", "puts together a pure number and m"), ("a**n", "puts together a pure number and m"),
     ("2**a", "puts together a pure number and m"), ("a*c", "'c' is neither given nor a word for a unit")],
)  # fmt: skip
def test_unlike_things_are_not_put_together(text, told):
    with pytest.raises(DeclarationError, match=told):
        dimension_typed(text, {"a": LENGTH, "b": LENGTH, "t": TIME, "n": NUMBER})


def test_a_tree_has_a_kind_by_its_names_alone():
    assert dimension_of_typed(tree("a*b"), {"a": LENGTH, "b": TIME}) == LENGTH * TIME
    with pytest.raises(DeclarationError, match="'inch' is neither given"):
        dimension_of_typed(tree("3*inch"), {})


def test_holes_are_filled_with_what_is_shown_or_worked_out():
    """A circle of 25 mm is 78.5398 mm round."""
    given, shown = {"d": 0.025, "n": 4.0}, {"d": "1 in wide"}
    assert fill("{d}, {pi*d|mm}, {pi*d|mm|5}, {d|mm}, {2*n}, {n*n|}", given, shown) == "1 in wide, 78.5 mm, 78.540 mm, 25.0 mm, 8.00, 16.0"
    assert hole_texts("{d} and {pi*d|mm} or {a + b|mm|4}") == ["d", "pi*d", "a + b"] and holes("{d} and {pi*d|mm} or {a + b|mm|4}") == {"d", "a", "b"}


# --- constants with a unit ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("answer", "folded", "texts"),
    [
        ("x*1000*kg/m**3", "x * constant_1", {"constant_1": "1000 kg/m3"}),
        ("x*5*kg/(4*m**3)", "x * constant_1", {"constant_1": "1.25 kg/m3"}),
        ("2*kW*hour*x/day", "x * constant_1", {"constant_1": "2 kW h/day"}),
        ("x*5*litre/minute/m", "x * constant_1", {"constant_1": "5 L/min/m"}),
        ("x/(3*mm)", "x / 3 / mm", {}),  # no unit above the line: nothing that a person would call a constant
        ("x*kg", "x * kg", {}),
        ("x*3", "x * 3", {}),
        ("3*inch + x", "constant_1 + x", {"constant_1": "3 in"}),
        ("-(3*inch)*sqrt(3*inch*x)", "-constant_1 * sqrt(x * constant_1)", {"constant_1": "3 in"}),
        ("3*inch*x + 2*kg*x - 3*inch", "x * constant_1 + x * constant_2 - constant_1", {"constant_1": "3 in", "constant_2": "2 kg"}),
        ("(3*inch)**2", "constant_1 ** 2", {"constant_1": "3 in"}),
        ("x*3*m**2", "x * constant_1", {"constant_1": "3 m2"}),
        ("x*3*m**n", "x * 3 * m ** n", {}),  # what is raised to something given is no word for a unit
    ],
)
def test_a_number_with_its_unit_is_one_constant(answer, folded, texts):
    constants = Constants()
    found, on_the_way = whole(answer, {}, {"x"}, constants)
    assert ast.unparse(found) == folded and constants.texts == texts and on_the_way == ()


def test_a_constant_has_its_value_and_its_kind():
    constants = Constants()
    whole("x*1000*kg/m**3 + 3*inch", {}, {"x"}, constants)
    assert constants.values == pytest.approx({"constant_1": 1000.0, "constant_2": 0.0762})
    assert constants.dimensions == {"constant_1": MASS / VOLUME, "constant_2": LENGTH}


def test_a_number_with_a_unit_is_left_as_it_is_where_nothing_is_given():
    assert ast.unparse(whole("3*inch", {}, set(), Constants())[0]) == "3 * inch"
    assert ast.unparse(whole("3*inch*sqrt(2)", {}, set(), Constants())[0]) == "3 * inch * sqrt(2)"


def test_numbers_on_the_way_are_put_in_and_stand_as_trees_of_their_own():
    found, on_the_way = whole("v*t", {"A": "pi/4*d**2", "v": "Q/A"}, {"Q", "d", "t"}, Constants())
    assert [ast.unparse(part) for part in on_the_way] == ["pi * d ** 2 / 4", "Q * 4 / pi / d ** 2"] or value(found, Q=3.0, d=2.0, t=math.pi) == 3.0
    assert value(found, Q=3.0, d=2.0, t=math.pi) == pytest.approx(3.0)  # a circle of 2 m is pi m2
    assert [value(part, Q=3.0, d=2.0) for part in on_the_way] == pytest.approx([math.pi, 3.0 / math.pi])


def value(node: ast.expr, **given: float) -> float:
    return eval(compile(ast.fix_missing_locations(ast.Expression(node)), "<test>", "eval"), {"pi": math.pi, **given})


# --- wrong ways with their numbers --------------------------------------------------------------------------------------------------

SIZES = {"m": 1.0, "mm": 1e-3, "m2": 1.0, "mm2": 1e-6, "L/min": 1e-3 / 60, "m/s": 1.0, "s": 1.0, "": 1.0, "%": 0.01, "deg": math.pi / 180, "kg": 1.0, "N": 1.0}
KINDS = {"m": LENGTH, "mm": LENGTH, "m2": AREA, "mm2": AREA, "L/min": VOLUME / TIME, "m/s": LENGTH / TIME, "s": TIME, "": NUMBER, "%": NUMBER, "deg": NUMBER, "kg": MASS,
         "N": MASS * LENGTH / TIME**2}  # fmt: skip


def working(text: str, unit: str, given: dict[str, tuple[float, str]], **more) -> WayOfWorking:
    """A working with given values as they are shown: `a=(12, "L/min")`."""
    values = {name: number * SIZES[shown] for name, (number, shown) in given.items()}
    kinds = {name: KINDS[shown] for name, (_, shown) in given.items()}
    return WayOfWorking(
        tree(text), {"g": 9.80665, **values}, {"g": LENGTH / TIME**2, **kinds}, {name: shown for name, (_, shown) in given.items()}, unit, ast.unparse, **more
    )


def told(of: WayOfWorking, far: bool = False) -> dict[str, list[float]]:
    """Numbers of each sentence, but for what every tree has many of."""
    said: dict[str, list[float]] = {}
    for cause in of.causes:
        if cause.far == far and cause.way.kind not in ("doubled", "point", "cut"):
            said.setdefault(cause.way.sentence(ast.unparse), []).append(cause.number)
    return said


# 12 L/min through 100 mm2: 2e-4 m3/s over 1e-4 m2 is 2 m/s.
HOSE = {"Q": (12.0, "L/min"), "A": (100.0, "mm2")}


def test_a_value_that_is_left_out_leaves_its_unit_in_si_or_as_shown():
    said = told(working("Q/A", "m/s", HOSE))
    assert said["You left out A: divide by it."] == pytest.approx([2e-4, 200.0])  # over 1 m2, over 1 mm2
    assert said["You left out Q: multiply by it."] == pytest.approx([1e4, 1 / 6])  # 1 m3/s, 1 L/min = 1/60000 m3/s, over 1e-4
    assert said["You multiplied by A: divide by it."] == pytest.approx([2e-8, 2e-4 * 1e-4 / 1e-12])
    assert said["The sign is turned round: look at which way you count."] == pytest.approx([-2.0])
    assert said["You turned the whole upside down: divide the other way round."] == pytest.approx([0.5])
    assert "That is only Q, as it was given: work on from it." not in said  # the same as A left out
    assert told(working("Q/A", "m/s", HOSE), far=True) == {}


def test_a_number_tells_what_it_measures_but_where_unlike_things_were_put_together():
    causes = {(cause.way.sentence(ast.unparse), f"{cause.number:.3g}"): cause for cause in working("Q/A", "m/s", HOSE).causes}
    assert causes["You left out A: divide by it.", "0.0002"].dimension == VOLUME / TIME
    assert causes["You left out A: divide by it.", "200"].dimension is None
    assert causes["You turned the whole upside down: divide the other way round.", "0.5"].dimension == TIME / LENGTH


def test_a_value_in_the_unit_of_si_gives_one_number():
    assert told(working("Q/A", "m/s", {"Q": (12.0, "L/min"), "A": (1e-4, "m2")}))["You left out A: divide by it."] == pytest.approx([2e-4])


def test_where_the_numbers_go_in_as_they_stand_nobody_is_thought_to_work_in_si():
    """40 mm times 3 is 120 mm: whoever leaves out the 40 mm comes to 3 mm, and only in drawing numbers to 3 m."""
    given = {"a": (40.0, "mm"), "n": (3.0, "")}
    near, far = told(working("a*n", "mm", given)), told(working("a*n", "mm", given), far=True)
    assert near["You left out a: multiply by it."] == pytest.approx([3e-3]) and far["You left out a: multiply by it."] == pytest.approx([3.0])
    assert near["You left out n: multiply by it."] == pytest.approx([0.040]) and "You left out n: multiply by it." not in far
    assert near["You divided by n: multiply by it."] == pytest.approx([0.04 / 3])
    assert working("a*n", "mm", given).as_they_stand and working("a*n", "m", {"a": (4.0, "m"), "n": (3.0, "")}).as_they_stand
    assert not working("a*n", "m", given).as_they_stand and not working("Q/A", "m/s", HOSE).as_they_stand
    assert working("n*g", "m/s", {"n": (3.0, "")}).as_they_stand is False  # g has a unit, and so goes in as metres
    assert working("n*pi", "", {"n": (3.0, "")}, words=frozenset({"pi"})).as_they_stand
    assert not working("sqrt(n)", "", {"n": (-3.0, "")}).as_they_stand
    for right, shown in ((1e6, 2.0), (4e6, 3.0)):  # a root that has a number in one of the two ways alone
        assert not working("sqrt(a - b)", "m", {"a": (shown, "m2"), "b": (right, "mm2")}).as_they_stand
        assert not working("sqrt(b - a)", "m", {"a": (shown, "m2"), "b": (right, "mm2")}).as_they_stand


def test_an_angle_that_is_left_out_leaves_one_degree():
    said = told(working("a*w", "m", {"a": (2.0, "m"), "w": (30.0, "deg")}))
    assert said["You left out w: multiply by it."] == pytest.approx([2.0 * math.pi / 180])
    assert said["You left out a: multiply by it."] == pytest.approx([math.pi / 6])


def test_a_plain_number_and_a_share_leave_nothing():
    said = told(working("a*n*p", "m", {"a": (2.0, "m"), "n": (3.0, ""), "p": (50.0, "%")}))
    assert said["You left out p: multiply by it."] == pytest.approx([6.0]) and said["You left out n: multiply by it."] == pytest.approx([1.0])


def test_a_result_on_both_sides_is_solved_for_each_wrong_way():
    """x = a/x is 3 m for 9 m2; with a left out 1 m, with a divided by 1/3 m; what such a number measures nobody knows."""

    def solved(right):
        return solve(lambda x: x - right(x), 0.01, 100.0)

    of = working("a/x", "m", {"a": (9.0, "m2")}, solved=solved, result="x")
    said = told(of)
    assert said["You left out a: multiply by it."] == pytest.approx([1.0]) and said["You divided by a: multiply by it."] == pytest.approx([1 / 3])
    assert {cause.dimension for cause in of.causes} == {None} and not of.as_they_stand


def test_a_way_that_comes_to_the_same_is_not_named_twice_nor_beside_the_right_one():
    said = told(working("a + b", "m", {"a": (2.0, "m"), "b": (3.0, "m")}))
    assert said == (
        {
            "You left out a: count it too.": [3.0],
            "You left out b: count it too.": [2.0],
            "You took off b: add it.": [-1.0],
            "You multiplied a by b: this is a sum.": [6.0],
            "The sign is turned round: look at which way you count.": [-5.0],
            "You used b in the place of a: put a there.": [6.0],
            "You used a in the place of b: put b there.": [4.0],
        }
    )  # a and b changed over are the same sum, and only a is b left out


def test_a_sum_that_is_left_out_is_told_by_the_value_in_it():
    said = told(working("a*(1 + n)", "m", {"a": (2.0, "m"), "n": (0.5, "")}))
    assert said["You left out n: count it too."] == [2.0] and "You left out 1 + n: multiply by it." not in said
    other = told(working("a*(b + c)", "m2", {"a": (2.0, "m"), "b": (3.0, "m"), "c": (4.0, "m")}))
    assert other["You left out b + c: multiply by it."] == [2.0] and "That is only a, as it was given: work on from it." not in other


def test_a_side_that_was_cut_off_is_only_thought_of_where_nothing_else_is():
    """6/3 + 2: the division upside down, or its upper side lost, or 2 put into it; one side alone, or a product for it, is said already."""
    of = working("a/t + b", "m/s", {"a": (6.0, "m"), "t": (3.0, "s"), "b": (2.0, "m/s")})
    cut = [cause for cause in of.causes if cause.way.kind == "cut"]
    assert sorted(cause.number for cause in cut) == pytest.approx([3 / 6 + 2, (6 + 2) / 3, 3 + 2, (1 / 3 + 2) * 6]) and all(cause.far for cause in cut)
    assert not [cause for cause in working("a/t", "m/s", {"a": (6.0, "m"), "t": (3.0, "s")}).causes if cause.way.kind == "cut"]


def test_what_has_no_finite_number_is_no_way():
    said = told(working("sqrt(a - b)", "m", {"a": (3.0, "m2"), "b": (2.0, "m2")}))
    assert "You took a from b: take b from a." not in said and said["You left out b: take it off."] == pytest.approx([math.sqrt(3)])
    assert "You left out a: add it." not in said
    of = working("a", "m", {"a": (1.0, "m")})
    numbers = {"1/0": None, "1e308*1e308": None, "(-8.0)**0.5": None, "sqrt(0 - 1)": None, "2 + 2": 4.0, "a": 7.0, "nothing": None}
    for text, number in numbers.items():
        if text != "nothing":
            assert of.number(compile(text, "<test>", "eval"), {"a": 7.0}) == number


def test_where_the_right_working_has_no_number_a_way_is_told_apart_by_another_point():
    """b is so near to a that a little aside it is more: then only the ways have a number there."""
    said = told(working("sqrt(a - b)", "m", {"a": (2.02, "m2"), "b": (2.0, "m2")}))
    assert said["You left out b: take it off."] == pytest.approx([math.sqrt(2.02)]) and said["You added b: take it off."] == pytest.approx([math.sqrt(4.02)])


def test_two_workings_are_told_apart_near_the_values_given():
    """Near one metre each of them the root has no number, and nobody would see that a by c is c by a."""
    said = told(working("sqrt(a*c - 2*b)", "m", {"a": (9.0, "m"), "c": (1.0, "m"), "b": (1.0, "m2")}))
    assert "You put a and c each in the place of the other: swap them." not in said and said["You used a in the place of c: put c there."] == pytest.approx(
        [math.sqrt(79)]
    )


def test_a_number_that_is_only_there_in_one_unit_is_given_alone():
    """c - a x b under a root: with b left out a is taken by 1 m, or by 1 mm."""
    metres = {"a": (5.0, "m"), "b": (1.5, "mm")}
    small = told(working("sqrt(c - a*b)", "m", {**metres, "c": (0.01, "m2")}))
    assert small["You left out b: multiply by it."] == pytest.approx([math.sqrt(0.01 - 5 * 0.001)])
    large = told(working("sqrt(a*b - c)", "m", {**metres, "c": (0.006, "m2")}))
    assert large["You left out b: multiply by it."] == pytest.approx([math.sqrt(5 - 0.006)])


def test_the_whole_upside_down_is_not_named_beside_the_fraction():
    said = told(working("a*b/t", "m/s", {"a": (6.0, "m"), "b": (3.0, "m"), "t": (2.0, "s")}))
    assert said["You turned the fraction upside down: divide a * b by t."] == pytest.approx([1 / 9]) and not [one for one in said if "the whole upside" in one]


def test_only_what_the_working_uses_is_used():
    of = working("Q/A", "m/s", {**HOSE, "t": (3.0, "s")})
    assert of.used == {"Q", "A"} and "t" in of.shown and working("n*g", "m/s", {"n": (3.0, "")}).used == {"n"}
    only = next(cause for cause in of.causes if cause.way.sentence(ast.unparse) == "That is only t, as it was given: work on from it.")
    assert only.number == 3.0 and only.dimension == TIME and not only.way.likely
    assert only.typed_as(TIME) and not only.typed_as(LENGTH)  # a given value keeps its own unit


def test_any_other_number_may_be_typed_with_the_unit_asked_for():
    def of(kind, measures):
        return Cause(1.0, lambda: measures, Way(tree("a"), kind, "that."))

    assert of("left out", LENGTH).typed_as(TIME) and of("left out", None).typed_as(TIME)
    assert of("part", TIME).typed_as(TIME) and not of("part", LENGTH).typed_as(TIME) and not of("part", None).typed_as(TIME)


def test_a_shortcut_is_a_way_and_nobody_is_asked_about_one_without_a_sentence():
    shortcuts = ((tree("a + t"), "you added: divide."), (tree("a*t*t"), ""))
    found = [cause for cause in working("a/t", "m/s", {"a": (6.0, "m"), "t": (3.0, "s")}, shortcuts=shortcuts).causes if cause.way.kind == "shortcut"]
    assert [(cause.number, cause.far, cause.way.text, cause.dimension) for cause in found] == [
        (9.0, False, "you added: divide.", None),
        (54.0, True, "that is a shortcut which does not hold here: work it out in full.", LENGTH * TIME**2),
    ]


def test_a_line_on_the_way_is_a_part():
    of = working("a*b*n", "m2", {"a": (6.0, "m"), "b": (3.0, "m"), "n": (2.0, "")}, on_the_way=(tree("a*a*n"),))
    assert told(of)["That is only a * a * n: it is one part of the way, so go on from there."] == [72.0]


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("a + b", "(a + b)"),
        ("a - b", "(a - b)"),
        ("a*b", "a·b"),
        ("a", "a"),
        (" + ".join(["a"] * 12), f"({' + '.join(['a'] * 12)})"),
        (" + ".join(["a"] * 13), "one part of it"),
    ],
)
def test_a_part_is_written_out_where_it_is_short(text, said):
    """Twelve letters with eleven signs between are 45 characters, thirteen are 49."""
    assert written(tree(text), None) == said


def test_a_part_of_just_the_longest_is_still_written_out():
    assert written(tree("a" * 48), lambda name: name) == "a" * 48 and written(tree("a" * 49), lambda name: name) == "one part of it"
    assert written(tree("[a]"), None) == "one part of it" and written(tree("a*b"), {"a": "2 m", "b": "3 m"}.get) == "2 m × 3 m"


# --- what to do instead -------------------------------------------------------------------------------------------------------------


def asked(answer: str, *slips: str, given: dict[str, str] | None = None, unit: str = "m2", **let) -> Question:
    given = given or {"a": "6 m", "b": "3 m"}
    text = "How much is it for " + " and ".join(f"{{{name}}}" for name in given) + "?"
    return Numeric("X", text, answer, unit, tuple(Wrong(slip, "You went wrong.") for slip in slips), ("Work.",), given, let=let).pose(1)


def advice(question: Question, place: int = 0) -> str:
    return advised(question, question.slips[place])


def test_a_sentence_that_bids_is_left_alone():
    assert bids("You forgot it. Add it.") and bids("That is too much: so take it off.") and not bids("You addressed it.") and not bids("You forgot it.")
    question = asked("a*b", "a*b*b")
    assert advised(question, KnownWay(6.0, "You left out b. Do not guess: measure it.")) == "You left out b. Do not guess: measure it."


@pytest.mark.parametrize(
    ("answer", "slip", "said"),
    [
        ("a*b", "a*m", "You went wrong. Multiply by 3 m."),
        ("a*b", "1.0000005*a*m", "You went wrong. Multiply by 3 m."),
        ("a*b", "1.000002*a*m", "You went wrong."),  # another number
        ("a*b", "a*m*m/b*m", "You went wrong. Multiply by 3 m."),
        ("a*b", "7*a*b", "You went wrong."),
        ("a*b/2", "a*b", "You went wrong. Divide by 2."),
        ("a*b*3/4", "a*b", "You went wrong. Multiply by 3/4."),
        ("a*b*3/4", "a*b*4/3", "You went wrong."),  # a number upside down is seldom
        ("a*b - 2*a*m", "a*b", "You went wrong. Take 6 m × 2 m off."),
        ("a*b - 2*m**2", "2*m**2 - a*b", "You went wrong."),  # the advice has two parts
        ("(a + b)**2", "(a + b)*m", "You went wrong. Square (6 m + 3 m)."),
        ("a/b", "b/a*m**2", "You went wrong."),  # of the whole upside down the sentence says itself what to do
        ("a*a", "b*a", "You went wrong."),  # another value in its place is no part left out
    ],
)
def test_where_a_slip_is_a_way_of_the_tree_that_says_what_to_do(answer, slip, said):
    assert advice(asked(answer, slip)) == said


def test_a_slip_is_a_way_of_the_tree_to_a_millionth():
    for length, as_near in ("999999", True), ("999998.995", False):
        question = asked("a*b", "7*a*b", given={"a": f"{length} m", "b": "3 m"})
        assert (advised(question, KnownWay(1e6, "You went wrong.")) == "You went wrong. Multiply by 3 m.") == as_near


def test_one_given_value_alone_is_no_part_left_out():
    assert advice(asked("a*b*c", "a*m*m", given={"a": "6 m", "b": "3 m", "c": "5 m"}, unit="m3")) == "You went wrong."


def test_a_part_that_has_no_short_name_is_not_named():
    given = {"n": "2", "a": "6 m", "b": "3 m"}
    assert advice(asked(f"({' + '.join(['a + b'] * 5)})*n", "n*m", given=given, unit="m")) == "You went wrong."
    assert advice(asked("n + 2", "n", given={"n": "5"}, unit="")) == "You went wrong."


def test_what_stands_upside_down_or_changed_places_is_turned_round():
    question = asked("a*b", "7*a*b")
    for sentence, more in (
        ("Upside down it is.", " Turn it round."),
        ("They changed places.", " Turn it round."),
        ("It is upside down.", ""),
        ("You went wrong.", ""),
    ):
        assert advised(question, KnownWay(126.0, sentence)) == sentence + more
