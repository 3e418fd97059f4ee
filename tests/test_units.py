"""Units: the closed table against pint, reading, writing, and what must be refused."""

import math
import random
import time
from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from brimwork import units
from brimwork.units import InputError, convert, parse, read, write

PINT = {
    "m": "meter", "um": "micrometer", "mm": "millimeter", "cm": "centimeter", "km": "kilometer", "in": "inch", "ft": "foot", "kft": "kilofoot", "yd": "yard",
    "L": "liter", "mL": "milliliter", "US gal": "gallon", "imp gal": "imperial_gallon",
    "s": "second", "min": "minute", "h": "hour", "day": "day",
    "kg": "kilogram", "g": "gram", "t": "metric_ton", "lb": "pound", "short ton": "short_ton",
    "N": "newton", "mN": "millinewton", "kN": "kilonewton", "lbf": "force_pound",
    "Pa": "pascal", "kPa": "kilopascal", "MPa": "megapascal", "bar": "bar", "psi": "psi", "psf": "force_pound/foot**2",
    "J": "joule", "kWh": "kilowatt_hour", "W": "watt", "kW": "kilowatt", "hp": "horsepower",
    "A": "ampere", "mA": "milliampere", "V": "volt", "mV": "millivolt", "ohm": "ohm",
    "cP": "centipoise", "cSt": "centistokes", "K": "kelvin", "rad": "radian", "deg": "degree", "%": "percent", "cur": "currency",
    "degC": "degree_Celsius", "degF": "degree_Fahrenheit",
}  # fmt: skip
PINT_SHORTHANDS = {"lpm": "liter/minute", "lps": "liter/second", "lph": "liter/hour", "cfs": "foot**3/second"}
PINT_COMPOUNDS = {
    "m3/s": "meter**3/second",
    "L/s per m": "liter/second/meter",
    "L/min per m": "liter/minute/meter",
    "m^0.5/s": "meter**0.5/second",
    "ft^(1/3)/s": "foot**(1/3)/second",
    "US gal/min per ft": "gallon/minute/foot",
    "imp gal/h": "imperial_gallon/hour",
    "kg/m3": "kilogram/meter**3",
    "Pa s": "pascal*second",
    "mN/m": "millinewton/meter",
    "lb/ft^3": "pound/foot**3",
    "kW*h/day": "kilowatt*hour/day",
    "m²": "meter**2",
}
REGISTRY = pint.UnitRegistry()
REGISTRY.define("currency = [money]")  # pint has no money of its own; this shows only that ours mixes with nothing else
ALL_PINT = {**PINT, **PINT_SHORTHANDS, **PINT_COMPOUNDS}
PLAIN_UNITS = [*units.UNITS, *PINT_SHORTHANDS, *PINT_COMPOUNDS]


def test_every_row_is_mapped_to_pint():
    assert set(PINT) == {*units.UNITS, *units.OFFSET_UNITS}
    assert set(PINT_SHORTHANDS) == set(units._SHORTHANDS)


@pytest.mark.parametrize("name", ALL_PINT)
def test_a_unit_agrees_with_pint(name):
    theirs = REGISTRY.Quantity(37.5, REGISTRY.parse_units(ALL_PINT[name])).to_base_units()
    ours = parse(f"37.5 {name}")
    assert ours.value == pytest.approx(theirs.magnitude, rel=1e-12)
    letters = ("[mass]", "[length]", "[time]", "[temperature]", "[current]", "[money]")
    assert tuple(float(power) for power in ours.dimension) == tuple(pytest.approx(float(theirs.dimensionality.get(letter, 0))) for letter in letters)


@pytest.mark.parametrize("spelling, name", units._SPELLINGS.items())
def test_a_spelling_reads_as_its_row(spelling, name):
    assert parse(f"3 {spelling}").value == parse(f"3 {name}").value


@given(st.sampled_from(PLAIN_UNITS), st.floats(1e-90, 1e90), st.sampled_from([1, -1]))
def test_what_is_written_reads_back(name, size, sign):
    factor = units.unit(name).factor
    value = sign * size * factor
    assert read(write(value, name, 15), name) == pytest.approx(value, rel=1e-13)
    assert read(write(value, name), name) == pytest.approx(value, rel=0.0051)
    assert convert(value, name) == pytest.approx(sign * size, rel=1e-13)


@given(st.sampled_from(["degC", "degF"]), st.floats(-200, 2000))
def test_temperatures_with_an_offset_read_back(scale, number):
    kelvin = parse(f"{number:.6f} {scale}").value
    assert convert(kelvin, scale) == pytest.approx(number, abs=1e-5)


@pytest.mark.parametrize(
    "text, si",
    [
        ("25 mm", 0.025),
        ("25mm", 0.025),
        ("+25 mm", 0.025),
        ("-25 mm", -0.025),
        (".5 m", 0.5),
        ("1e-3 m", 0.001),
        ("3/4 in", 0.01905),
        ("1 1/2 in", 0.0381),
        ("½ in", 0.0127),
        ("1½ in", 0.0381),
        ("2 ft 9 in", 33 * 0.0254),
        ("-2 ft 9 in", -33 * 0.0254),
        ("2'9\"", 33 * 0.0254),
        ("2 ft 9 1/2 in", 33.5 * 0.0254),
        ("0 ft 3 in", 3 * 0.0254),
        ("-0 ft 3 in", -3 * 0.0254),
        ("12.5 L/s per m", 0.0125),
        ("20 degC", 293.15),
        ("20 °C", 293.15),
        ("-40 degF", 233.15),
        ("32 degF", 273.15),
        ("90°", math.pi / 2),
        ("95 %", 0.95),
        ("1 U.S. gallon", 231 * 0.0254**3),
        ("1 imperial gallon", 4.54609e-3),
        ("3 short tons", 6000 * 0.45359237),
        ("5 m³/s", 5.0),
        ("7", 7.0),
    ],
)
def test_a_quantity_is_read_as_people_write_it(text, si):
    assert parse(text).value == pytest.approx(si, rel=1e-14)


def test_a_power_of_a_dimension_is_exact():
    assert units.unit("m^0.5/s").dimension == units.Dimension(map(Fraction, ("0", "1/2", "-1", "0", "0", "0")))
    assert str(units.unit("kg/m3").dimension) == "kg/m3" and str(units.NUMBER) == "a pure number"


REFUSED = {
    "10 gal": "US gal",
    "10 gpm": "US gal/min",
    "10 gph": "imp gal/h",
    "2 gallons": "imp gal",
    "2 ton": "short ton",
    "1,250 mm": "with a point",
    "12,5 mm": "with a point",
    "1" * 61: "at most 60",
    "1 " + "m" * 600: "at most 60",
    "nan": "digits and a unit",
    "NaN m": "digits and a unit",
    "inf m": "digits and a unit",
    "-Infinity": "digits and a unit",
    "٣ mm": "plain alphabet",
    "１２ mm": "plain alphabet",
    "1\n2 mm": "plain alphabet",
    "9**9**9": "type a number and a unit",
    "1 m^99": "type one such as",
    "1 kWh^99": "type one such as",
    "1 um^-99": "type one such as",
    "1e99 kWh^9 kWh^9 kWh^9 kWh^9 kWh^9": "too large",
    "1 um^9 um^9 um^9 um^9 um^9 um^9": "too small",
    "1e999 m": "type a number and a unit",
    "3 furlongs": "Type one such as",
    "3 MM": "Nearest: mm",
    "3 litrs": "Nearest: L",
    "5 m m m m m m m": "type one such as",
    "": "type a number and a unit",
    "mm": "type a number and a unit",
    "25 mm 30": "type one such as",
    "3/0 in": "divides by zero",
    "1.5/2 in": "cannot start with",
    "2 ft -9 in": "type one such as",
    "20 degC/m": "use K",
    "-300 degC": "colder than anything",
    "1_000 mm": "type a number and a unit",
    "0x10 mm": "Type one such as",
    "__import__('os')": "type a number and a unit",
}


@pytest.mark.parametrize("text, told", REFUSED.items(), ids=[text[:12] for text in REFUSED])
def test_a_text_that_is_no_quantity_is_refused_with_what_to_type(text, told):
    with pytest.raises(InputError) as refusal:
        parse(text)
    assert told in str(refusal.value)


@pytest.mark.parametrize("thing", [None, 25, 2.5, b"25 mm", ["25 mm"]])
def test_what_is_not_text_is_refused(thing):
    with pytest.raises(InputError, match="is not text"):
        parse(thing)


@pytest.mark.parametrize(
    "text, wanted, given, asked, to_type",
    [
        ("25 L", "mm", "25 L is in m3", "is measured in m", "type it in mm"),
        ("25", "mm", "H = 25 has no unit", "type it with one", "H = 25 mm"),
        ("25 mm", "", "25 mm is in m", "a pure number", "plain numbers"),
        ("90 %", "deg", "90 % is not an angle", "H is an angle", "deg"),
        ("0.6", "deg", "0.6 has no unit", "type it with one", "0.6 deg"),
        ("0.6 deg", "", "0.6 deg is an angle", "a pure number", "plain numbers"),
        ("10 gpm", "L/min", "gpm", "US or imperial", "US gal/min"),
    ],
)
def test_a_refusal_says_what_was_given_what_was_wanted_and_what_to_type(text, wanted, given, asked, to_type):
    with pytest.raises(InputError) as refusal:
        read(text, wanted, "H")
    message = str(refusal.value)
    assert "H" in message and given in message and asked in message and to_type in message


def test_a_share_may_be_typed_as_a_percentage():
    assert read("62 %", "") == pytest.approx(0.62)


@pytest.mark.parametrize(
    "value, digits, text",
    [(1234.0, 3, "1230"), (0.5, None, "0.5"), (0.012345678, None, "0.0123457"), (1e-7, 3, "1.00e-7"), (5e12, None, "5e12"), (0.0, 3, "0")],
)
def test_a_number_is_written_plainly_and_without_a_thousands_comma(value, digits, text):
    assert units.number(value, digits) == text


# --- hostile text -------------------------------------------------------------------------------------------------------------------

_NUMBERS = [
    "1",
    "0",
    "-3",
    "1.5",
    "1e99",
    "1e-99",
    "1 1/2",
    "3/0",
    "1,250",
    "nan",
    "-inf",
    "9**9**9",
    "٣",
    "½",
    ".",
    "999999999999",
    "0x1F",
    "1_0",
    "--1",
    "1e",
]
_UNITS = [*units.UNITS, *units.OFFSET_UNITS, *units._SPELLINGS, *units._AMBIGUOUS, *units._SHORTHANDS, "gl", "mmm", "μm", "°C", "m²", "qwerty" * 5]
_JOINS = [
    " ",
    "",
    "/",
    "*",
    " per ",
    "^",
    "**",
    "^-9.999 ",
    "^(2)",
    "^99",
    "2",
    "-1",
    "(",
    ")",
    ";",
    "\t",
    "\x00",
    "{",
    "'",
    '"',
    "\\",
    "$(x)",
    "%s",
    "\ud800",
    "e9",
    " 9 in",
]


def _hostile(draw: random.Random, kind: int) -> str:
    if kind == 0:
        return "".join(chr(draw.randrange(0x110000)) for _ in range(draw.randrange(20)))
    if kind == 1:
        return "".join(chr(draw.randrange(32, 127)) for _ in range(draw.randrange(62)))
    if kind == 2:
        return "".join(draw.choice("0123456789.,eE+-/ ½'\"ftinm^*%") for _ in range(draw.randrange(61)))
    return draw.choice(_NUMBERS) + "".join(draw.choice((" ", draw.choice(_JOINS))) + draw.choice(_UNITS) for _ in range(draw.randrange(8)))


def test_no_text_does_worse_than_a_refusal_and_none_takes_long():
    draw, slowest, understood = random.Random(6), 0.0, 0
    for count in range(100_000):
        text = _hostile(draw, count % 4)
        begun = time.perf_counter()
        try:
            understood += math.isfinite(parse(text).value)
        except InputError:
            pass
        slowest = max(slowest, time.perf_counter() - begun)
    assert slowest < 0.5
    assert understood > 2_000  # the strings are not all rubbish


@given(st.text(max_size=70))
def test_any_text_is_read_or_refused(text):
    try:
        assert math.isfinite(parse(text).value)
    except InputError as refusal:
        assert len(str(refusal)) < 400


@pytest.mark.parametrize("text", ("2 ft 30 in", "2.5 ft 9 in", "2 ft 12 in"))
def test_feet_and_inches_that_are_mixed_oddly_are_refused(text):
    with pytest.raises(InputError, match="whole feet and fewer than 12 inches"):
        parse(text)
