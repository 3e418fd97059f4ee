"""Declaring, calling, solving: what a formula refuses when it is declared and when it is called, and that one number equals many."""

import dataclasses
import math
import re
import time

import numpy
import pytest
import scipy.optimize
from draws import usual_points

from brimwork.by_hand import ByHand
from brimwork.conditions import TestedRange
from brimwork.expression import DeclarationError, parse_expression
from brimwork.formula import Formula, Published, PublishedCheck, Slip
from brimwork.nomenclature import LETTERS, QUANTITIES, read_values, wrong_row
from brimwork.quantity import BOX, CELL, COMMAND, Quantity
from brimwork.roots import solve
from brimwork.sources import Source
from brimwork.topics import find, formulas
from brimwork.units import InputError, NoValue

FORMULAS = list(formulas().values())
LIP = find("flow over a level lip")
SOURCE = Source("invented for this test", "memory").at("p. 1")


def declared(equals="L*W*h", **changes) -> Formula:
    by_hand = (ByHand("L=2 m, W=3 m, h=4 m", "2*3*4", "24 m3"),)
    return Formula(**{"name": "a pit for testing", "result": "V", "equals": equals, "fitted": "nobody", "unpublished": "a test", "by_hand": by_hand, **changes})


# --- declarations -------------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "changes, told",
    [
        ({"equals": "L*W"}, "do not balance"),
        ({"equals": "L*W*h + L*W"}, "cannot be added"),
        ({"equals": "L*W*h*sin(h)"}, "takes a pure number"),
        ({"equals": "L*W*h**m_b"}, "needs pure numbers"),
        ({"equals": "L*W*depth"}, "'depth' is not in the nomenclature"),
        ({"result": "volume"}, "'volume' is not in the nomenclature"),
        ({"unpublished": ""}, "published value"),
        ({"by_hand": ()}, "numbers worked by hand"),
        ({"fitted": ""}, "needs steps"),
        ({"equals": "V = L*W*h"}, "between"),
        ({"equals": "V = L*W = h", "between": ("L", "W")}, "one '='"),
        ({"equals": "L*W*"}, "not an expression"),
        ({"rises": ("Q",)}, "'Q' is not such a letter"),
        ({"rises": ("L",), "falls": ("L",)}, "each once"),
    ],
)
def test_a_wrong_declaration_is_refused_by_name(changes, told):
    with pytest.raises(DeclarationError) as refusal:
        declared(**changes)
    assert "a pit for testing" in str(refusal.value) and told in str(refusal.value)


@pytest.mark.parametrize(
    "text",
    [
        "open(L)",
        "max(L, W)",
        "abs(L)",
        "sqrt(L, W)",
        "sqrt(x=L)",
        "L.real",
        "L < W",
        "L == W",
        "'L'",
        "b'L'",
        "lambda: L",
        "L if W else h",
        "[L]",
        "L[0]",
        "L and W",
        "not L",
        "+L",
        "~L",
        "L // W",
        "L % W",
        "L @ W",
        "L << 2",
        "1j",
        "True",
        "None",
        "(L := W)",
        "f'{L}'",
        "__import__('os')",
        "Integral(L, (L, 0, 1))",
        "Derivative(L, W)",
        "(L, W)",
        "L; W",
    ],
)
def test_syntax_without_a_place_in_a_formula_is_refused(text):
    with pytest.raises(DeclarationError, match="has no place in a formula|is not an expression|is not a number|is not in the nomenclature"):
        parse_expression(text)


# --- calls --------------------------------------------------------------------------------------------------------------------------

GOOD = {"C_d": 0.62, "b": 4.0, "H": 0.2}


@pytest.mark.parametrize(
    "changes, told",
    [
        ({"H": -0.2}, "negative"),
        ({"H": math.nan}, "not a number that can be used"),
        ({"H": math.inf}, "not a number that can be used"),
        ({"H": 10**400}, "not a number that can be used"),
        ({"H": "25 kg"}, "is a mass, but a length is wanted"),
        ({"H": None}, "is not a number"),
        ({"H": 1j}, "is not a number"),
        ({"H": [0.1, -0.2]}, "negative"),
        ({"H": [[0.1], [0.2, 0.3]]}, "is not all numbers"),
        ({"H": numpy.array([0.1, 0.2 + 1j])}, "is not all numbers"),
        ({"H": numpy.ma.array([0.1, 0.2], mask=[False, True])}, "masked"),
        ({"g": -9.81}, "negative"),
        ({"g": math.nan}, "not a number that can be used"),
        ({"C_dd": 1.0}, "Nearest: C_d"),
        ({"Q": 1.0}, "Q is what it gives"),
    ],
)
def test_a_value_that_cannot_be_used_is_refused(changes, told):
    with pytest.raises(InputError) as refusal:
        LIP(**{**GOOD, **changes})
    assert told in str(refusal.value)


def test_a_missing_value_is_asked_for_with_its_name_and_an_example():
    with pytest.raises(InputError, match=r"still needs H \(head over the lip.*type, for example, H=\"\d+ mm\""):
        LIP(C_d=0.62, b=4.0)


@pytest.mark.parametrize("name", ["capillary length", "velocity head of approach"])
@pytest.mark.parametrize("bad", [-1.0, math.inf, math.nan])
def test_no_letter_may_be_bad_even_where_the_arithmetic_would_go_through(name, bad):
    formula = find(name)
    for letter in (*formula.inputs, *formula.constants):
        with pytest.raises(InputError, match=letter):
            formula(**{**usual_points(formula, 1)[0], letter: bad})


def test_values_without_a_result_are_refused():
    with pytest.raises(InputError, match="has no value for .*P = 0 mm"):
        find("discharge coefficient by height of the lip")(C_0=0.6, C_1=0.08, H=0.01, P=0.0)


def test_values_that_give_a_number_where_the_formula_is_not_meant_are_told_so():
    with pytest.raises(InputError, match=r"does not hold for H = 4 mm, e_rim = 7.7 mm: it is for e_rim < \(3\*pi/4\)\*\*\(2/3\)\*H"):
        find("flow ratio of a rim out of level")(H=0.004, e_rim=0.0077)
    with pytest.raises(InputError, match="has no value for H = 4 mm, e_rim = 9 mm"):
        find("flow ratio of a rim out of level")(H=0.004, e_rim=0.009)


def test_more_water_than_a_bowl_holds_has_no_depth_in_it():
    with pytest.raises(InputError, match="has no value for"):
        find("depth in a cone-shaped bowl")(V=1.1, d_floor=0.0, d_rim=2.0, D=1.0)


def test_a_difference_that_rounds_to_nothing_has_one_sign():
    assert [PublishedCheck(None, 1.0, 1.0 + share, True).percent for share in (-4e-6, 4e-6, -0.0001, 0.0151)] == ["+0.00%", "+0.00%", "-0.01%", "+1.51%"]


def test_values_that_break_a_condition_are_refused_with_it():
    with pytest.raises(InputError, match="it is for z_s < 0.95.H_0, so look again at z_s .static lift. and H_0 .shut-off head."):
        find("duty flow")(H_0=1.0, z_s=3.0, Q_max=1e-3, h_loss=1.0, Q_1=1e-3)


def test_a_letter_in_the_wrong_case_is_told_the_right_one_and_what_each_letter_is():
    with pytest.raises(
        InputError, match=r"no letter 'h'\. Nearest: H\. It takes C_d \(discharge coefficient\), b \(length of the lip\), H \(head over the lip\)"
    ):
        raise find("flow over a level lip").unknown_letter("h")


def test_values_with_a_decimal_comma_are_told_from_values_parted_by_one():
    assert read_values("C_d=0,62, H=1,5 mm,b=4 m") == {"C_d": 0.62, "H": pytest.approx(0.0015), "b": 4.0}


@pytest.mark.parametrize(
    "place, example, bare",
    [(BOX, "type one such as 700 mm or 27.6 in", "such as 4 mm or 4 in"), (COMMAND, "such as b=700mm or b=27.6in", "such as b=4mm or b=4in"),
     (CELL, 'such as b="700 mm" or b="27.6 in"', 'such as b="4 mm" or b="4 in"')],
)  # fmt: skip
def test_a_refusal_shows_a_value_as_it_is_typed_at_that_place(place, example, bare):
    row = QUANTITIES["b"]
    for text, told in (("foo", example), ("4", bare), ("-4 m", example.partition(" or ")[0])):
        with pytest.raises(InputError) as refusal:
            row.read(text, place)
        assert told in str(refusal.value)


def test_what_a_box_is_told_to_type_is_taken_by_the_box():
    for row in QUANTITIES.values():
        for example in row.examples(BOX).split(" or "):
            row.read(example)  # a refusal names the letter


@pytest.mark.parametrize(
    "text, told",
    [
        ("b=4 m, b=3 m", "given twice"),
        ("bb=4 m", "Nearest: b"),
        ("q_MAX=4 L/min", "Nearest: Q_max"),
        ("Q_max=4 gal/h", r"Q_max is the pump's maximum flow, at zero head\.\)"),
        ("H=-4 mm", "but the head over the lip cannot be below zero"),
        ("b", "type one such as H=25mm"),
        ("b=", "type one such as H=25mm"),
        ("b=-4 m", "negative"),
        ("b=1,250 mm", "two ways, because of the comma"),
        ("b=4 m,5", "'5' is not a letter with a value"),
        ("g=-9.81 m/s2", "negative"),
        ("b=4 L", "is a volume, but a length is wanted"),
    ],
)
def test_values_that_cannot_be_read_are_refused(text, told):
    with pytest.raises(InputError, match=told):
        read_values(text)


# --- arrays -------------------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.name)
def test_an_array_gives_the_same_as_one_number_at_a_time(formula):
    points = usual_points(formula, 40)
    together = formula.array(**{name: numpy.array([point[name] for point in points]) for name in formula.inputs})
    alone = [formula(**point) for point in points]
    numpy.testing.assert_allclose(together, alone, rtol=1e-14)


def test_arrays_broadcast_and_whole_numbers_count_as_numbers():
    grid = LIP.array(C_d=0.62, b=numpy.array([[1], [2]]), H=[0.1, 0.2, 0.3])
    assert grid.shape == (2, 3) and grid.dtype == numpy.float64
    assert grid[1, 2] == pytest.approx(LIP(C_d=0.62, b=2, H=0.3), rel=1e-15)
    assert LIP.array(C_d=0.62, b=1.0, H=numpy.array([])).shape == (0,)


@pytest.mark.parametrize("name", ["flow over a level lip", "flow over a lip from a channel"])
@pytest.mark.parametrize(
    "bad, told",
    [
        ([0.1, -0.2], "-200 mm|-0.2.*negative"),
        ([0.1, math.nan], "nan"),
        ([0.1, math.inf], "inf"),
        (["a", "b"], "'a' does not start with a number"),
        ([1, 2, 3], "fit together"),
    ],
)
def test_an_array_with_one_bad_point_is_refused(name, bad, told):
    formula = find(name)
    point = {letter: numpy.full(2, value) for letter, value in usual_points(formula, 1)[0].items()}
    with pytest.raises(InputError, match=told):
        formula.array(**{**point, "H": bad})


def test_an_array_call_names_missing_and_unknown_letters():
    with pytest.raises(InputError, match="still needs b"):
        LIP.array(C_d=0.62, H=[0.1])
    with pytest.raises(InputError, match="still needs"):
        LIP.array()
    with pytest.raises(InputError, match="takes no letter 'HH'"):
        LIP.array(C_d=0.62, b=1.0, HH=[0.1])


# --- solving ------------------------------------------------------------------------------------------------------------------------

FUNCTIONS = {
    "a line": (lambda x: 3 * x - 1, 0.0, 5.0),
    "a cubic": (lambda x: x**3 - 2 * x - 5, 2.0, 3.0),
    "a steep power": (lambda x: x**19 - 1e-3, 0.0, 4.0),
    "a flat root of high order": (lambda x: (x - 1) ** 9, 0.0, 3.0),
    "an exponential": (lambda x: math.exp(x) - 1e6, -10.0, 50.0),
    "a logarithm": (lambda x: math.log(x) + 20, 1e-15, 1.0),
    "a wave": (lambda x: math.cos(x) - x, 0.0, 2.0),
    "a pole-like bend": (lambda x: 1 / (x + 1e-6) - 1e3, 0.0, 1.0),
    "an arctangent": (lambda x: math.atan(1e4 * (x - 0.3)), -1.0, 1.0),
    "a tiny scale": (lambda x: 1e-200 * (x * x - 2), 0.0, 2.0),
    "ends the other way round": (lambda x: x * x - 2, 2.0, 0.0),
    "Colebrook": (lambda f: 1 / math.sqrt(f) + 2 * math.log10(1e-4 / 3.7 + 2.51 / (1e5 * math.sqrt(f))), 0.008, 0.1),
}


@pytest.mark.parametrize("name", FUNCTIONS)
def test_the_root_finder_agrees_with_brentq(name):
    function, low, high = FUNCTIONS[name]
    theirs = scipy.optimize.brentq(function, low, high, xtol=1e-15, rtol=1e-15, maxiter=2000)
    assert solve(function, low, high) == pytest.approx(theirs, rel=1e-12)


def test_the_root_finder_needs_far_fewer_calls_than_halving():
    """Halving to the last figure takes more than 50 calls a root; only the flat root, where no curve helps, may take as many."""
    calls = []
    for name, (function, low, high) in FUNCTIONS.items():
        if "high order" not in name:
            solve(lambda x, function=function: calls.append(x) or function(x), low, high)
    assert len(calls) < 25 * (len(FUNCTIONS) - 1)


def test_a_root_at_an_end_is_found_and_ends_of_the_same_sign_are_refused():
    assert solve(lambda x: x - 2, 2.0, 5.0) == 2.0 and solve(lambda x: x - 5, 2.0, 5.0) == 5.0
    with pytest.raises(InputError, match="no value between the limits"):
        solve(lambda x: x * x + 1, -1.0, 1.0)
    with pytest.raises(InputError, match="no value between the limits"):
        solve(lambda x: math.nan, -1.0, 1.0)


# --- what stands beside a formula ---------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "values, note",
    [
        ({"L": 1, "W": 1, "h": 0.5}, ""),
        ({"L": 1, "W": 1, "h": 1}, ""),  # the limits belong to the range; whole numbers too
        ({"L": 1, "W": 1, "h": 0.1}, "h = 100 mm is below the tested range (300 mm to 1000 mm)"),
        ({"L": 1, "W": 1, "h": 2}, "h = 2000 mm is above the tested range"),
        ({"L": 5, "W": 1, "h": 0.5}, "L/W = 5.00 is above the tested range (up to 3)"),
    ],
)
def test_a_result_outside_a_tested_range_is_given_with_a_note(values, note):
    pit = declared(tested=(TestedRange("h", "300 mm", "1000 mm", SOURCE), TestedRange("L/W", "", "3", SOURCE)))
    worked = pit.work(**values)
    assert worked.result == pytest.approx(math.prod(values.values()))
    assert (note in worked.notes[0] and "extrapolation" in worked.notes[0]) if note else worked.notes == []


def test_a_condition_that_does_not_hold_leaves_no_plain_number():
    pit = declared(where=("h < L",))
    assert pit(L=2.0, W=1.0, h=2.0) == 4.0, "the limit itself belongs to it"
    for ask in (pit, pit.work, pit.array):
        with pytest.raises(InputError, match=r"it is for h < L, so look again at h \(depth\) and L \(length of the floor\)"):
            ask(L=1.0, W=1.0, h=2.0)
    with pytest.raises(InputError, match="h < L"):
        pit.array(L=[3.0, 1.0], W=1.0, h=2.0)


@pytest.mark.parametrize(
    "name, given",
    [
        ("least pressure under an offset load", "F_w=9.6 kN, B_base=1.2 m, L_base=0.8 m, e_off=0.61 m"),
        ("greatest pressure under partial contact", "F_w=9.6 kN, B_base=1.2 m, L_base=0.8 m, e_off=0.61 m"),
        ("friction factor by Colebrook", "Re=1200, k_s=0.002 mm, d_pipe=20 mm"),
        ("friction factor of laminar flow", "Re=50000"),
        ("pull in each leg of a sling", "m_load=100 kg, N_leg=2, alpha_leg=20 deg"),
        ("pull in each leg of a sling", "m_load=100 kg, N_leg=4, alpha_leg=60 deg"),
    ],
)
def test_what_must_never_be_a_plain_number_is_refused(name, given):
    with pytest.raises(InputError, match="it is for"):
        find(name)(**read_values(given))


@pytest.mark.parametrize(
    "name, zero",
    [("Reynolds number in a pipe", "nu"), ("time to fill", "Q"), ("flow over a lip with end contractions", "H"), ("capillary rise in a gap", "w_gap")],
)
def test_a_zero_by_which_a_formula_divides_is_named(name, zero):
    formula = find(name)
    values = {letter: formula.range(letter)[1] for letter in formula.inputs} | {zero: 0.0}
    if name == "flow over a lip with end contractions":  # its tested range divides by the head, the formula does not
        assert formula.work(**values).result == 0 and any("has no value here" in note for note in formula.work(**values).notes)
        return
    with pytest.raises(InputError, match=rf"it divides by {zero} \(.*\), so give more than zero"):
        formula(**values)


def test_a_published_value_may_need_formulas_worked_before():
    floor = declared(name="half the width", result="W", equals="L/2", by_hand=(ByHand("L=2 m", "2/2", "1 m"),))
    right = Published("L=2 m, h=1 m", "2 m3", 1e-9, SOURCE, after=(floor,))
    wrong = Published("L=2 m, h=1 m", "2.1 m3", 0.01, SOURCE, after=(floor,))
    assert right.check(declared()).agrees and right.check(declared()).difference == 0
    assert not wrong.check(declared()).agrees and wrong.check(declared()).difference == pytest.approx(-0.1 / 2.1)


def test_a_published_value_may_use_its_own_gravity():
    check = Published("b=1 m, H=1 m, C_d=0.6, g=1 m/s2", "0.565685 m3/s", 1e-5, SOURCE).check(LIP)  # 0.4 times the root of 2
    assert check.agrees


def test_a_slip_gives_the_number_of_the_wrong_way():
    assert Slip("L*W", "That is the floor.").number({"L": 2.0, "W": 3.0, "h": 4.0}) == 6.0


def test_importing_the_formulas_stays_quick():
    begun = time.perf_counter()
    for formula in FORMULAS:
        dataclasses.replace(formula)
    assert time.perf_counter() - begun < 0.02 * len(FORMULAS)


# --- nomenclature -------------------------------------------------------------------------------------------------------------------


def test_a_row_of_the_nomenclature_reads_its_own_example():
    for row in QUANTITIES.values():
        value = row.read(row.example)
        assert (value == pytest.approx(row.constant, rel=1e-5)) if row.value else row.range[0] <= value <= row.range[1] * (1 + 1e-5), row.key
        for text in (row.metric_text(value, 6), row.us_text(value, 6)):
            assert row.read(text) == pytest.approx(value, rel=1e-5), row.key


def test_a_usual_range_runs_upward_in_steps():
    for row in QUANTITIES.values():
        if not row.value:
            low, high, step = row.range
            assert low < high and 0 < step <= high - low, row.key


def test_a_wrong_declaration_is_told_with_its_file_and_line():
    source = "from brimwork.formula import Formula\nFormula(name='bad one', result='C_lab', equals='N_team*t_site*c_lab', defined='x')\n"
    with pytest.raises(DeclarationError) as refusal:
        exec(compile(source, "/somewhere/topics/cost.py", "exec"), {})
    assert refusal.value.told.startswith("cost.py, line 2: formula 'bad one': it needs a published value")


def test_a_letter_whose_unit_cannot_be_read_is_named(monkeypatch):
    monkeypatch.setitem(QUANTITIES, "k_test", Quantity("k_test", "a letter for testing", "1/m"))
    with pytest.raises(DeclarationError, match="the row of the letter 'k_test': '1/m' is not a unit"):
        declared("L*W*h*exp(-k_test*h)")


@pytest.mark.parametrize(
    ("rows", "told"),
    [
        (("cubit", "how long an arm is", "m", "mm", "in"), ""),
        (("cubit", "how long an arm is", "m", "mm", "hands"), "the letter cubit, 'how long an arm is', in letters/: 'hands' is not a unit"),
        (("cubit", "how long an arm is", "m", "kg", "in"), "in letters/: kg is no unit for what is measured in m"),
        (("H", "how long an arm is", "m", "mm", "in"), "the letter H stands twice in letters/, as '.*' and as 'how long an arm is': use the first"),
    ],
)
def test_a_row_of_a_letter_that_is_wrong_is_told_with_what_to_do(rows, told):
    assert wrong_row() == ""
    assert re.search(told or "^$", wrong_row([*LETTERS, Quantity(*rows)]))


@pytest.mark.parametrize(
    ("name", "given", "said"),
    [
        (
            "flow ratio of a rim out of level",
            {"H": "10 mm", "e_rim": "30 mm"},
            "it is for rim out of level below 17.7 mm, and not for 30.0 mm",
        ),  # (3 pi/4)^(2/3) = 1.770
        (
            "pull in each leg of a sling",
            {"m_load": "100 kg", "N_leg": 2, "alpha_leg": "2 deg"},
            "it is for angle of the legs from the level at 30.0 deg or more, and not for 2.00 deg",
        ),
        (
            "pull in each leg of a sling",
            {"m_load": "100 kg", "N_leg": 4, "alpha_leg": "60 deg"},
            "it is for legs of the sling that carry at 2.00 or less, and not for 4.00",
        ),
        (
            "flow out of a bore over its rim",
            {"d_bore": "100 mm", "H": "50 mm", "C_w": "1.7 m^0.5/s"},
            "it is for head over the lip below 37.0 mm, and not for 50.0 mm",
        ),
        (
            "duty flow",
            {"z_s": "2 m", "H_0": "2 m", "Q_max": "40 L/min", "h_loss": "1 m", "Q_1": "20 L/min"},
            "it is for static lift below 1.90 m, and not for 2.00 m",
        ),
    ],
)
def test_a_condition_that_does_not_hold_is_told_without_letters_with_the_number_that_it_asks_for(name, given, said):
    with pytest.raises(NoValue) as refused:
        find(name)(**given)
    assert said in refused.value.words


def test_whole_millimetres_are_never_rounded_away():
    """1074 + 2 x 200 = 1474: a tape reads it, and so does who adds it up again."""
    assert [QUANTITIES["L_dig"].text_here(value) for value in (1.474, 0.9996, 0.1234, 12.3456)] == ["1474 mm", "1000 mm", "123 mm", "12346 mm"]
