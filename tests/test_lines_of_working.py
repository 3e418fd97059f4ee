"""Every line of a worked or faded example, in both systems: what is printed is what a calculator gives, and what pint gives with the units as printed.

pint is an outside library of units: https://pint.readthedocs.io.
"""

import ast
import json
import math
import re
from fractions import Fraction
from pathlib import Path

import pytest
from of_pint import REGISTRY

from brimwork import coherent, system, topics, typeset
from brimwork.exercise.pieces import worked
from brimwork.exercise.question import ask, in_words
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook import fading, given_values

LESSONS = sorted(path for path in (Path(__file__).parents[1] / "workbooks").glob("*.ipynb") if path.stem not in ("python", "00-start"))
in_both = pytest.mark.parametrize("wanted", system.SYSTEMS)


def of_pint(text):
    """A unit as printed, for pint: "US gal" is its gallon, "lb ft/s2" lb*ft/s**2."""
    plain = text.replace("US gal", "gallon").replace(" per ", "/").replace("psf", "lbf/ft**2").replace("kft", "kilofoot").replace("%", "percent")
    plain = re.sub(r"([A-Za-z])\^?(\(\d/\d\)|-?\d[\d.]*)", lambda m: f"{m[1]}**{m[2]}", plain).replace(" ", "*")
    return REGISTRY.Quantity(1, plain) if plain else 1


class WithUnits(typeset.Plain):
    """A line as an expression of Python over quantities of pint."""

    times, divided, plus, minus, equals = "*", "@", "+", "-", " = "

    def unit(self, text):
        return f"*u({text!r})" if text else ""

    def ratio(self, over, under):
        return f"*(u({over!r})/u({under!r}))" if under else self.unit(over)

    def letter(self, key):
        return key

    def brackets(self, text):
        return f"({text})"

    def product(self, left, right, numbers):
        return f"{left}*{right}"

    def fraction(self, over, under):
        return f"({over})/({under})", typeset.PRODUCT

    def power(self, base, exponent):
        return f"({base})**({exponent})"

    def root(self, inside):
        return f"({inside})**0.5"

    def call(self, name, argument):
        return f"{name}({argument})"


class Bare(WithUnits):
    """The same with the numbers alone, as they are keyed into a calculator; its sine takes degrees."""

    def unit(self, text):
        return "*one_degree" if text == "deg" else ""

    def ratio(self, over, under):
        return ""

    def call(self, name, argument):
        return f"{name}({argument.replace('one_degree', 'degree')})"


def function(name):
    def worked_out(value):
        plain = value.to("").magnitude if isinstance(value, REGISTRY.Quantity) else value
        return getattr(math, name)(plain)

    return worked_out


FUNCTIONS = {name: function(name) for name in ("sin", "cos", "tan", "asin", "acos", "atan", "exp", "log", "log10")} | {
    "π": math.pi,
    "pi": math.pi,
    "u": of_pint,
}


def comes_to(text, extra=None):
    """The line worked by Python; a factor that divides does so with its units."""
    text = re.sub(r"@([\d.e+-]+(?:\*\(u\('[^']*'\)/u\('[^']*'\)\)|\*u\('[^']*'\))?)", r"/(\1)", text)
    return eval(re.sub(r"(?<![\w.])(\d+)/(\d+)(?=\*)", r"(\1/\2)", text), {"degree": math.pi / 180, "one_degree": 1, **FUNCTIONS, **(extra or {})})


def printed_well(number, value):
    """Whether `value` rounds to the number as it is printed."""
    mantissa = re.sub(r"e.*", "", number).lstrip("-")
    decimals = len(mantissa.partition(".")[2])
    exponent = int(number.partition("e")[2] or 0)
    figures = len(mantissa.replace(".", "").lstrip("0"))
    last = 10.0 ** (exponent - decimals) if "." in number or figures <= 4 else 10.0 ** (figures - 4 + exponent)
    return abs(float(number) - value) <= 0.5001 * last + 3e-6 * abs(value)


def in_unit(value, unit):
    if isinstance(value, REGISTRY.Quantity):
        base, wanted = value.to_base_units(), REGISTRY.Quantity(of_pint(unit)).to_base_units()
        assert all(abs(power) < 1e-9 for power in (base / wanted).dimensionality.values()), (value, unit)
        return base.magnitude / wanted.magnitude
    return math.degrees(value) if unit == "deg" else 100 * value if unit == "%" else value


def check(found, wanted):
    for one in found.given.values():
        if one.turned:
            assert not system.foreign(f"{one.number} {one.unit} and {one.put_in} {one.put_in_unit}", wanted)
            if one.factor:
                text = f"{one.number}{WithUnits().unit(one.unit)}{typeset.by(one.factor, WithUnits())}"
                assert in_unit(comes_to(text), one.put_in_unit) == pytest.approx(float(one.put_in), rel=6e-6)
                bare = f"{one.number}{typeset.by(one.factor, Bare())}"
                assert comes_to(bare) == pytest.approx(float(one.put_in), rel=6e-6)
    for piece in found.pieces:
        line = f"{found.put_in(piece, typeset.PLAIN)} = {found.value(piece.key, typeset.PLAIN)}"
        unit, number = found.unit(piece), found.shown[piece.key]
        assert not system.foreign(line, wanted), line
        value = in_unit(comes_to(found.put_in(piece, WithUnits())), unit)
        assert printed_well(number, value), (line, value)
        keyed = comes_to(found.put_in(piece, Bare()))
        keyed = math.degrees(keyed) if unit == "deg" and isinstance(piece.tree, ast.Call) else keyed
        assert printed_well(number, keyed), (line, keyed)


FITTED = ("evaporation of open water by Penman", "heat lost to the sky")  # their constants are fitted to numbers of SI


@in_both
@pytest.mark.parametrize("name", [name for name, formula in topics.formulas().items() if not formula.implicit and name not in FITTED])
def test_the_lines_of_every_formula(name, wanted):
    formula = topics.find(name)
    with system.working_in(wanted):
        try:
            question = ask(formula, 1)
        except ValueError:
            pytest.skip("asks no question by itself")
        check(worked(formula, formula.only({key: one.value for key, one in question.given.items()})), wanted)


def calls(path):
    for cell in json.loads(path.read_text())["cells"]:
        source = "".join(cell["source"])
        if cell["cell_type"] == "code":
            for node in ast.walk(ast.parse(re.sub(r"^%.*", "", source, flags=re.M))):
                if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in ("ledger", "work", "fade"):
                    yield node.func.id, [ast.literal_eval(one) for one in node.args], {one.arg: ast.literal_eval(one.value) for one in node.keywords}


@in_both
@pytest.mark.parametrize("path", LESSONS, ids=lambda path: path.stem)
def test_the_worked_and_faded_examples_of_a_lesson(path, wanted):
    with system.working_in(wanted):
        for kind, (name, *_), values in calls(path):
            formula = topics.find(name)
            if kind == "fade":
                fade = fading.Fading(name, values.get("seed", 1), None)
                while not fade.next.disabled:
                    fade.go_on()
                for example in fade.examples:
                    check(example.worked, wanted)
                    for own in example.blanks.values():
                        unit = example.worked.unit(example.worked.pieces[own.place])
                        assert own.box.description.endswith(f", in {in_words(unit)}") or not unit
                continue
            taken = given_values.typed(formula, values)
            for letter, text in values.items():
                if not given_values.from_above(letter, text) and system.foreign(f"takes {text}", wanted):
                    assert " or " in str(text), f"{path.stem}: {name}, {letter}: a round value in the other system too, as in '800 mm or 30 in'"
            told = given_values.given_told(formula, taken, values)
            assert not system.foreign(told, wanted)
            page = (fading.ledger if kind == "ledger" else __import__("brimwork.notebook", fromlist=["work"]).work)(name, **values)
            shown = page.plain.partition("\nNote")[0]
            assert not system.foreign(shown, wanted), shown
            assert shown.startswith("Given: ")
            if not formula.implicit:
                check(worked(formula, taken, given_values.stated(values)), wanted)


def test_conversions_against_printed_ones():
    """One US gallon is 231 in3; a cubic foot holds 7.4805 US gal; 1 lbf gives 1 lb 32.1740 ft/s2; 1 psi is 144 psf (NIST Special Publication 811, Appendix B)."""
    assert coherent.factor_between("in3", "US gal", float(Fraction(1, 231))).number == "231"
    with system.working_in(system.FEET):
        formula = topics.find("pressure on the block tops")
        given = dict(m_v="330 lb", V_v="16 US gal", m_slab="99 lb", A_c="310 in2", rho_bulk="97 lb/ft3", t_st="2.4 in", rho="62.3 lb/ft3")
        found = worked(formula, {name: QUANTITIES[name].read(text) for name, text in given.items()})
        said = "\n".join(found.line(piece) for piece in found.pieces)
    by_hand = (330 + 62.3 * 16 / 7.4805 + 99) / 310 + 97 * 0.2 / 144  # pounds over square inches, and a layer of 0.2 ft
    assert float(found.shown["p_c"]) == pytest.approx(by_hand, rel=1e-3) and "32.174 (lb ft/s2)/lbf" in said and "144 psf/psi" in said
