"""What a formula takes in Python: numbers, texts with a unit, pint quantities, arrays; a unit is converted or refused, never dropped."""

import inspect
import math
import pydoc
import warnings

import numpy
import pandas
import pytest
from of_pint import REGISTRY as UREG

from brimwork.topics import find, formulas
from brimwork.units import InputError

LIP = find("flow over a level lip")
# Q = 2/3 C_d b sqrt(2 g) H^1.5 for 0.62, 0.6 m and 20 mm, worked by hand: 2/3 x 0.62 x 0.6 x 4.428690 x 0.002828427
BY_HAND = 2 / 3 * 0.62 * 0.6 * math.sqrt(2 * 9.80665) * 0.02**1.5


@pytest.fixture(autouse=True)
def no_warning_goes_by():
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        yield


@pytest.mark.parametrize(
    "H", [0.02, "20 mm", UREG.Quantity(20, "mm"), UREG.Quantity(2, "cm"), UREG.Quantity(20 / 25.4, "inch"), numpy.float32(0.02), numpy.array(0.02)], ids=repr
)
def test_twenty_millimetres_are_twenty_millimetres_however_they_are_given(H):
    answer = LIP(C_d=0.62, b=0.6, H=H)
    assert getattr(answer, "magnitude", answer) == pytest.approx(BY_HAND, rel=1e-7)
    assert LIP.work(C_d="62 %", b="60 cm", H=H).result == pytest.approx(BY_HAND, rel=1e-7)


def test_a_pint_quantity_gives_one_of_the_same_registry():
    answer = LIP(C_d=0.62, b=UREG.Quantity(2, "ft"), H=UREG.Quantity([10, 20], "mm"))
    assert answer.to("US_liquid_gallon / minute").magnitude[1] == pytest.approx(BY_HAND * 0.6096 / 0.6 * 60 / 0.003785411784, rel=1e-12)
    assert answer._REGISTRY is UREG
    listed = LIP(C_d=0.62, b=0.6, H=[UREG.Quantity(1, "cm"), UREG.Quantity(20, "mm")])
    assert listed[1].to("m^3/s").magnitude == pytest.approx(BY_HAND, rel=1e-12)
    assert LIP.array(C_d=0.62, b=0.6, H=UREG.Quantity([20.0], "mm"))[0].magnitude == pytest.approx(BY_HAND, rel=1e-12)


@pytest.mark.parametrize(
    "letter, value, told",
    [
        ("H", UREG.Quantity(20, "kg"), "is a mass, but a length is wanted"),
        ("H", UREG.Quantity([20, 30], "kg"), "is a mass, but a length is wanted"),
        ("H", [UREG.Quantity(20, "mm"), UREG.Quantity(20, "s")], "is a time, but a length is wanted"),
        ("H", UREG.Quantity(20, "degF"), "is a temperature"),
        ("H", UREG.Quantity(20, "candela"), "another kind of quantity"),
        ("H", UREG.Quantity(20, ""), "is a plain number, but a length"),
        ("C_d", UREG.Quantity(62, "deg"), "is an angle, but a plain number is wanted"),
        ("H", "20 kg", "is a mass, but a length is wanted"),
        ("H", "20", "has no unit"),
        ("H", ["20 mm", "20 kg"], "is a mass"),
        ("H", type("Foreign", (), {"unit": "mm", "__float__": lambda self: 20.0})(), "carries a unit of its own kind"),
        ("H", object(), "is not a number"),
        ("H", True, "is yes or no, not a number"),
        ("H", [0.01, True], "is yes or no"),
        ("H", [0.01, None], "H = None is not a number"),
    ],
    ids=lambda value: str(value).partition(" at 0x")[0],
)
def test_another_dimension_is_refused_in_words(letter, value, told):
    with pytest.raises(InputError, match=told) as refusal:
        LIP(**{"C_d": 0.62, "b": 0.6, "H": 0.02, letter: value})
    assert letter in str(refusal.value)
    with pytest.raises(InputError, match=told):
        LIP.array(**{"C_d": 0.62, "b": 0.6, "H": 0.02, letter: value})


def test_angles_and_powers_with_fractions_come_through_pint():
    notch = find("flow through a V-notch")
    by_number = notch(C_d=0.6, theta=math.radians(60), H=0.1)
    assert notch(C_d=0.6, theta=UREG.Quantity(60, "deg"), H=0.1).magnitude == pytest.approx(by_number, rel=1e-12)
    rim = find("flow over a round rim")
    assert rim(C_w=UREG.Quantity(1.7, "m**0.5/s"), d_rim=0.8, H=0.003).magnitude == pytest.approx(rim(C_w=1.7, d_rim=0.8, H=0.003), rel=1e-12)


def test_a_column_of_a_table_is_worked_and_one_with_a_gap_is_refused():
    table = pandas.DataFrame({"H": [0.01, 0.02], "gap": [0.01, None]})
    assert LIP(C_d=0.62, b=0.6, H=table["H"])[1] == pytest.approx(BY_HAND, rel=1e-12)
    with pytest.raises(InputError, match="nan is not a number"):
        LIP(C_d=0.62, b=0.6, H=table["gap"])


def test_work_takes_one_number_at_a_time():
    with pytest.raises(InputError, match="H is an array"):
        LIP.work(C_d=0.62, b=0.6, H=[0.01, 0.02])


@pytest.mark.parametrize("formula", formulas().values(), ids=lambda formula: formula.name)
def test_help_signature_and_repr_are_short_and_true(formula):
    shown = inspect.signature(formula)
    assert tuple(shown.parameters) == (*formula.inputs, *formula.constants)
    assert {name for name, one in shown.parameters.items() if one.default is not one.empty} == set(formula.constants)
    assert repr(formula) == f"<Formula '{formula.name}': {formula.relation}>" and "\n" not in repr(formula)
    told = pydoc.plain(pydoc.render_doc(formula))
    assert all(f" {name} " in told for name in (formula.result, *shown.parameters)) and len(told.splitlines()) < 60
    assert "derived" in told or "fitted" in told or "definition" in told or "turned round" in told
