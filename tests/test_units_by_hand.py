"""What quantities are called, and how numbers are written, at the ends where a small mistake would not be seen elsewhere; all by hand."""

import math
from fractions import Fraction

import pytest

from brimwork.dimensions import Dimension, dimension_of, kind
from brimwork.spellings import nearest
from brimwork.units import InputError, number, parse, powers, read

CALLED = {
    "m": "a length", "m2": "an area", "L": "a volume", "s": "a time", "m/s": "a speed", "m/s2": "an acceleration", "L/min": "a flow",
    "m2/s": "a flow for each length of edge, or a kinematic viscosity", "kg": "a mass", "kg/m": "a mass for each length", "kg/m2": "a mass for each area",
    "kg/m3": "a density", "N": "a force", "N/m": "a force for each length, or a surface tension", "Pa": "a pressure", "Pa/m": "a pressure for each length",
    "Pa*s": "a dynamic viscosity", "J": "an energy, or a turning moment", "W": "a power", "W/m2": "a power for each area", "A": "a current", "V": "a voltage",
    "ohm": "a resistance", "ohm/km": "a resistance for each length", "degC": "a temperature", "cur": "an amount of money",
}  # fmt: skip


@pytest.mark.parametrize(("unit", "called"), CALLED.items())
def test_a_quantity_is_called_what_a_person_calls_it(unit, called):
    assert kind(parse(f"1 {unit}").dimension) == called


@pytest.mark.parametrize(
    ("value", "digits", "text"),
    [
        (0.0, None, "0"), (math.inf, None, "inf"), (1e9, None, "1e9"), (999_999_000.0, None, "999999000"), (1e-4, None, "0.0001"), (9.9e-5, None, "9.9e-5"),
        (1.5e9, 2, "1.5e9"), (1e10, 2, "1.0e10"), (1234.5678, 3, "1230"), (12.0, 3, "12.0"), (-0.25, None, "-0.25"), (100.0, None, "100"),
    ],
)  # fmt: skip
def test_a_number_is_plain_where_it_can_be_read_and_a_power_of_ten_beyond(value, digits, text):
    assert number(value, digits) == text


def test_nothing_is_the_same_in_all_units_but_not_for_a_temperature():
    assert read("0", "mm") == 0.0 and read("0", "L/min") == 0.0
    with pytest.raises(InputError, match="no unit"):
        read("0", "degC")


@pytest.mark.parametrize(("text", "kelvin"), [("20 C", 293.15), ("68 F", 293.15), ("-5 C", 268.15)])
def test_degrees_are_read_as_they_are_said_where_a_temperature_is_wanted(text, kelvin):
    assert read(text, "degC") == pytest.approx(kelvin)


def test_the_nearest_words_are_named_three_at_most_and_none_that_is_far():
    words = ("friction head", "fitting head", "total head", "head at a brink", "void fraction")
    assert nearest("frictoin head", words).startswith(" Nearest: friction head")
    assert nearest("zzzz", words) == "" and nearest("VOID FRACTION", words) == " Nearest: void fraction."
    assert nearest("head", [f"head {i}" for i in range(9)]).count("head") == 3


@pytest.mark.parametrize("wanted", ["%", "deg"])
def test_a_bare_number_is_no_percentage_and_no_angle(wanted):
    """3 could be 3 % or three times the whole, three degrees or three radians."""
    with pytest.raises(InputError, match="3 has no unit"):
        read("3", wanted)


def test_of_two_doubtful_words_one_is_asked_about_at_a_time():
    with pytest.raises(InputError, match="type 'US gal/gal' or 'imp gal/gal'"):
        parse("5 gal/gal")


@pytest.mark.parametrize(("given", "wanted"), [("3 deg", "%"), ("3 %", "deg"), ("3 deg", ""), ("3 kg", "m")])
def test_an_angle_is_no_share_and_no_plain_number_and_a_mass_no_length(given, wanted):
    with pytest.raises(InputError):
        read(given, wanted)


def test_a_word_too_long_to_be_one_has_no_near_ones_and_the_message_stays_whole():
    """By hand: difflib calls two words of eight letters near that share four, and takes half the letters of both as the least that counts."""
    word = "n" * 200
    assert nearest(word, (word[:-1],)) == f" Nearest: {word[:-1]}." and nearest(word + "n", (word,)) == "" == nearest("x" * 500, ("x" * 499,))
    assert nearest("abcdwxyz", ("abcdefgh",)) == " Nearest: abcdefgh." and nearest("abcvwxyz", ("abcdefgh",)) == ""


def test_a_number_where_a_temperature_is_wanted_is_told_and_no_fault():
    with pytest.raises(InputError, match=r"the air: 20\.0 is not text: type a number and a unit"):
        read(20.0, "degC", "the air")


def test_a_value_without_its_unit_is_offered_in_both_units_as_one_types_it():
    with pytest.raises(InputError, match=r"type it with one, such as Q=5L/min or Q=5US gal/min$"):
        read("5", "L/min", what="the flow", also="US gal/min", way=lambda text: f"Q={text.replace(' ', '', 1)}")
    with pytest.raises(InputError, match=r"type it with one, such as the flow = 5 L/min$"):
        read("5", "L/min", what="the flow")


def test_of_units_that_are_near_three_are_named():
    """cft shares two letters of three with ft, kft, cfs and cSt; the first three count."""
    with pytest.raises(InputError, match=r"\(nearest: ft, kft, cfs\)"):
        parse("5 cft")


def test_a_dimension_is_written_with_what_stands_over_and_under_the_line():
    s, m = dimension_of(s=1), dimension_of(m=1)
    assert [str(one) for one in (Dimension(-power for power in s), m / s, m, dimension_of())] == ["1/s", "m/s", "m", "a pure number"]


def test_a_unit_taken_apart_has_each_name_with_its_power():
    assert powers("lb ft/s2") == [("lb", 1), ("ft", 1), ("s", -2)] and powers("m^0.5/s") == [("m", Fraction(1, 2)), ("s", -1)]


def test_a_minute_is_offered_only_where_it_makes_the_unit_that_is_wanted():
    with pytest.raises(InputError, match=r"\(m is a metre; for a minute type L/min\)$"):
        read("5 L/m", "L/min", what="the flow")
    with pytest.raises(InputError, match=r"type one such as the flow = 25 L/min$"):
        read("5 kg/m", "L/min", what="the flow")


def test_what_nobody_has_a_word_for_is_told_by_its_units():
    assert kind(dimension_of(kg=2, s=-1)) == "a quantity in kg2/s"
