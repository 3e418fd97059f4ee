"""Formulas as text: order as written, brackets where they are needed, and text that other readers of mathematics accept."""

import ast
import math
import random
import re

import mpmath
import pytest
from draws import usual_points

from brimwork import expression, typeset, units
from brimwork.formula import Formula
from brimwork.nomenclature import QUANTITIES
from brimwork.topics import find, formulas
from brimwork.typeset import LATEX, PLAIN, put, quantity, relation, working, write_tree

FORMULAS = list(formulas().values())
every_formula = pytest.mark.parametrize("formula", FORMULAS, ids=lambda formula: formula.name)


@pytest.mark.parametrize(
    "text, plain, latex",
    [
        ("2/3*C_d*b", "2/3·C_d·b", r"\frac{2}{3}\,C_d\,b"),
        ("L*(b + h)", "L·(b + h)", r"L\,\left(b + h\right)"),
        ("L - (b - h)", "L - (b - h)", r"L - \left(b - h\right)"),
        ("L - b - h", "L - b - h", "L - b - h"),
        ("L/(b*h)", "L/(b·h)", r"\frac{L}{b\,h}"),
        ("L/b/h", "L/b/h", r"\frac{\frac{L}{b}}{h}"),
        ("L/b*h", "L/b·h", r"\frac{L}{b}\,h"),
        ("L*(b*h)", "L·(b·h)", r"L\,\left(b\,h\right)"),
        ("H**(3/2)", "H^(3/2)", "H^{3/2}"),
        ("H**1.5", "H^(3/2)", "H^{3/2}"),
        ("H**2.48", "H^2.48", "H^{2.48}"),
        ("(L*h)**2", "(L·h)^2", r"\left(L\,h\right)^{2}"),
        ("(H**2)**3", "(H^2)^3", r"\left(H^{2}\right)^{3}"),
        ("H**n_w", "H^n_w", "H^{n_w}"),
        ("-H**2", "-H^2", "-H^{2}"),
        ("(-H)**2", "(-H)^2", r"\left(-H\right)^{2}"),
        ("L + -h", "L + (-h)", r"L + \left(-h\right)"),
        ("L*-h", "L·(-h)", r"L\,\left(-h\right)"),
        ("-2*L*h", "-2·L·h", r"-2\,L\,h"),
        ("-(L + b)*h", "-(L + b)·h", r"-\left(L + b\right)\,h"),
        ("b + -2*L", "b + (-2·L)", r"b + \left(-2\,L\right)"),
        ("(-2*L)**2", "(-2·L)^2", r"\left(-2\,L\right)^{2}"),
        ("h*(-2*L)", "h·(-2·L)", r"h\,\left(-2\,L\right)"),
        ("sqrt(2*g)", "√(2·g)", r"\sqrt{2\,g}"),
        ("sqrt(g)", "√g", r"\sqrt{g}"),
        ("tan(theta/2)", "tan(theta/2)", r"\tan\left(\frac{\theta}{2}\right)"),
        ("log(L/h)", "ln(L/h)", r"\ln\left(\frac{L}{h}\right)"),
        ("log10(L/h)", "log10(L/h)", r"\log_{10}\left(\frac{L}{h}\right)"),
        ("acos(h/L)", "acos(h/L)", r"\arccos\left(\frac{h}{L}\right)"),
        ("b*2", "b·2", r"b \times 2"),
        ("4*pi", "4·π", r"4\,\pi"),
        ("1e-6*H", "1e-06·H", r"1 \times 10^{-6}\,H"),
        ("theta_c + d_rim", "theta_c + d_rim", r"\theta_c + d_{\mathrm{rim}}"),
        ("Integral(v, (z, 0, H))", "∫[0..H] v dz", r"\int_{0}^{H} v\,\mathrm{d}z"),
        ("Derivative(u, y)", "du/dy", r"\frac{\mathrm{d}u}{\mathrm{d}y}"),
    ],
)  # fmt: skip
def test_a_tree_is_written_in_order_with_the_brackets_it_needs(text, plain, latex):
    tree = expression.parse_expression(text, calculus=True)
    assert (write_tree(tree, PLAIN), write_tree(tree, LATEX)) == (plain, latex)


# --- plain text means what the tree means -------------------------------------------------------------------------------------------

LETTERS = ("b", "h", "H", "L", "n_w", "k_b")
FUNCTIONS = {name: getattr(mpmath, name) for name in expression.FUNCTIONS} | {"ln": mpmath.log, "pi": mpmath.pi, "mpf": mpmath.mpf}


def _random_text(draw: random.Random, depth: int) -> str:
    if depth == 0 or draw.random() < 0.15:
        return draw.choice((*LETTERS, "2", "0.5", "1e-3", "pi"))
    kind, part = draw.randrange(8), lambda: _random_text(draw, depth - 1)
    if kind == 0:
        return f"-({part()})"
    if kind == 1:
        return f"({part()})**{draw.choice(('2', '(3/2)', '(-1)', '0.5', '2.48', 'n_w', '(1/3)', '(b + 1)'))}"
    if kind == 2:
        return f"{draw.choice(('sqrt', 'sin', 'atan'))}({part()})"
    return f"({part()}) {draw.choice('+-*/')} ({part()})"


def _read_back(plain: str) -> str:
    """The line as Python: only the signs change, so Python's rules of precedence are the reader's."""
    python = plain.replace("·", "*").replace("×", "*").replace("^", "**").replace("π", "pi")
    return re.sub(r"√([\w.]+)", r"sqrt(\1)", python).replace("√(", "sqrt(")


def _number(python: str, values: dict[str, float]):
    """Eighty digits, so that an order of adding that rounds otherwise makes no difference; None where there is no value of usual size."""
    python = re.sub(r"(?<![\w.])(\d[\d.]*(?:e-?\d+)?)", r"mpf(\1)", python)
    with mpmath.workdps(80):
        try:
            number = eval(python, {"__builtins__": {}}, {**FUNCTIONS, **{name: mpmath.mpf(value) for name, value in values.items()}})
        except (ArithmeticError, ValueError):
            return None
        return complex(number) if 1e-25 < abs(number) < 1e25 else None


@pytest.mark.parametrize(
    "text, shown", [("2880000", r"2\,880\,000"), ("60000", r"60\,000"), ("1525", "1525"), ("0.000833333", "0.000833333"), ("12345.5", r"12\,345.5")]
)
def test_long_numbers_stand_in_threes_where_they_are_typeset(text, shown):
    assert typeset.LATEX.number(text) == shown and typeset.TYPST.number(text) == shown.replace(r"\,", " thin ") and typeset.PLAIN.number(text) == text


@pytest.mark.parametrize("put_in", [False, True], ids=["letters", "numbers put in"])
def test_plain_text_read_back_gives_the_same_number(put_in):
    draw, numbers = random.Random(7), 0
    for _ in range(3000):
        tree = expression.parse_expression(_random_text(draw, 4))
        values = {name: draw.choice((-1, 1)) * draw.choice((draw.uniform(0.1, 3), 2e-7)) for name in LETTERS}
        plain = write_tree(tree, PLAIN, (lambda key, values=values: repr(values[key])) if put_in else None)
        wanted, got = _number(ast.unparse(tree), values), _number(_read_back(plain), values)
        if wanted is not None and got is not None:
            numbers += 1
            assert got == pytest.approx(wanted, rel=1e-12), f"{ast.unparse(tree)} was written {plain}"
        else:
            assert wanted is got is None, f"{ast.unparse(tree)} was written {plain}"
    assert numbers > 1000


@every_formula
def test_the_plain_text_of_a_formula_gives_its_own_number_and_keeps_its_order(formula):
    plain = write_tree(formula.right, PLAIN)
    letters = [name for name in re.findall(r"[A-Za-z_]\w*", formula.equals.rpartition("=")[2]) if name in QUANTITIES]
    assert [name for name in re.findall(r"[A-Za-z_]\w*", plain) if name in QUANTITIES] == letters
    if not formula.implicit:
        point = usual_points(formula, 1)[0]
        again = _number(_read_back(plain), {**{name: QUANTITIES[name].constant for name in formula.constants}, **point})
        assert again == pytest.approx(formula(**point), rel=1e-12)


# --- LaTeX --------------------------------------------------------------------------------------------------------------------------


def _relations(formula: Formula) -> list[str]:
    steps = [step.relation for step in formula.steps if getattr(step, "relation", "")]
    return [relation(*expression.parse_relation(text)) for text in (formula.relation, *steps)]


def latex_of(formula: Formula) -> list[str]:
    """Every line of its derivation and of its working with numbers."""
    return _relations(formula) + working(formula.work(**usual_points(formula, 1)[0]))


def rows_of(line):
    """A line as the rows in which it stands, without what sets them under each other and without the sizes of brackets that are closed in another row."""
    inside = line.removeprefix(r"\begin{aligned}").removesuffix(r"\end{aligned}")
    assert (inside == line) == (r"\\" not in line), line
    return [re.sub(r"\\(Bigg|big)[lr]", "", row.replace("&", "", 1)) for row in inside.split(r"\\")]


@every_formula
def test_a_line_that_is_broken_says_the_same_in_its_rows(formula):
    """Joined again, the rows are the line as the walk writes it in one piece."""

    def bare(text):
        return re.sub(
            r"\\(left|right|quad|times|,|Biggl|Biggr|bigl|bigr)(?![a-z])|[{} &]|\\\\", "", text.replace(r"\begin{aligned}", "").replace(r"\end{aligned}", "")
        )

    left, right = expression.parse_relation(formula.relation)
    assert bare(relation(left, right)) == bare(f"{write_tree(left)} = {write_tree(right)}")


def test_only_wide_lines_are_broken_and_before_a_sign():
    narrow, wide = (find(name) for name in ("flow over a level lip", "time in which the head over a rim rises"))
    assert "aligned" not in relation(narrow.left, narrow.right)
    first, second = rows_of(relation(wide.left, wide.right))
    assert second.strip().startswith(r"\quad {} - \sqrt{3}") and first.count("(") == first.count(")") + 1
    assert "aligned" not in relation(wide.left, wide.right, PLAIN)


@every_formula
def test_latex_is_balanced(formula):
    """And another reader of LaTeX takes it: tests/browser/test_mathematics.py."""
    for line in latex_of(formula):
        depth = 0
        for character in line:
            depth += {"{": 1, "}": -1}.get(character, 0)
            assert depth >= 0, line
        assert depth == 0 and line.count(r"\left(") == line.count(r"\right)"), line
        rows_of(line)


# --- working ------------------------------------------------------------------------------------------------------------------------


@every_formula
@pytest.mark.parametrize("target", [PLAIN, LATEX], ids=["plain", "latex"])
def test_a_working_shows_every_value_with_its_unit_and_the_result(formula, target):
    worked = formula.work(**usual_points(formula, 1, seed=8)[0])
    lines = working(worked, target)
    assert lines[0] == relation(formula.left, formula.right, target)
    found = put(worked)
    assert lines[-1] == f"{target.letter(formula.result)} = {quantity(found.result, found.unit, target)}"
    assert units.read(f"{found.result} {found.unit}".strip(), found.unit, "it") == pytest.approx(worked.result, rel=6e-4, abs=1e-12)
    if not formula.implicit:
        assert {*found.given} == {*expression.letters(formula.right)}
        assert len(lines) == 3 + sum(one.turned for one in found.given.values())
        for one in found.given.values():
            assert quantity(one.put_in, one.put_in_unit, target) in lines[-2]


def test_a_working_of_the_level_lip_reads_as_a_person_would_write_it():
    worked = find("flow over a level lip").work(C_d=0.62, b=4.0, H=0.2)
    assert working(worked, PLAIN) == [
        "Q = 2/3·C_d·b·√(2·g)·H^(3/2)",
        "b = 4000 mm ÷ 1000 mm/m = 4 m",
        "H = 200 mm ÷ 1000 mm/m = 0.2 m",
        "Q = 2/3 × 0.62 × 4 m × √(2 × 9.80665 m/s2) × (0.2 m)^(3/2) × 60000 (L/min)/(m3/s)",
        "Q = 39290 L/min",
    ]


def test_a_negative_value_stands_in_brackets():
    worked = find("flow over a lip with corrected head and length").work(C_d=0.6, b=0.5, k_b=-0.001, H=0.05, k_h=0.001)
    assert "(0.5 m + (-0.001 m))" in working(worked, PLAIN)[-2]
    assert r"\left(0.5\,\mathrm{m} + \left(-0.001\,\mathrm{m}\right)\right)" in working(worked)[-2]


def test_angles_are_put_in_in_degrees():
    worked = find("pull in each leg of a sling").work(m_load=120.0, N_leg=2.0, alpha_leg=math.pi / 3)
    assert "sin(60 deg)" in working(worked, PLAIN)[-2] and r"60^\circ" in working(worked)[-2]


UNITS = [
    ("m3/s", r"\,\mathrm{m^{3}/s}"),
    ("m^0.5/s", r"\,\mathrm{m^{0.5}/s}"),
    ("m^(1/3)/s", r"\,\mathrm{m^{1/3}/s}"),
    ("Pa s", r"\,\mathrm{Pa\ s}"),
    ("", ""),
]


@pytest.mark.parametrize("unit, latex", UNITS)
def test_a_unit_is_set_upright_with_its_powers_raised(unit, latex):
    assert typeset.LATEX.unit(unit) == latex


def test_a_unit_with_a_third_as_its_power_reaches_print():
    assert typeset.TYPST.unit("m^(1/3)/s") == ' thin upright("m"^(1/3) "/s")'
