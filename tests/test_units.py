"""Units: the closed table against pint, reading, writing, and what must be refused."""

import math
import random
import time
from fractions import Fraction

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from of_pint import REGISTRY

from brimwork import dimensions, spellings, unit_table, units
from brimwork.units import InputError, convert, parse, read, write

PINT = {
    "m": "meter", "um": "micrometer", "mm": "millimeter", "cm": "centimeter", "km": "kilometer", "in": "inch", "ft": "foot", "kft": "kilofoot", "yd": "yard", "mile": "mile",
    "L": "liter", "mL": "milliliter", "US gal": "gallon", "imp gal": "imperial_gallon",
    "US quart": "quart", "US pint": "pint", "US fl oz": "fluid_ounce", "imp quart": "imperial_quart", "imp pint": "imperial_pint", "imp fl oz": "imperial_fluid_ounce",
    "s": "second", "min": "minute", "h": "hour", "day": "day",
    "kg": "kilogram", "g": "gram", "t": "metric_ton", "lb": "pound", "oz": "ounce", "stone": "stone", "short ton": "short_ton",
    "N": "newton", "mN": "millinewton", "kN": "kilonewton", "lbf": "force_pound",
    "Pa": "pascal", "kPa": "kilopascal", "MPa": "megapascal", "bar": "bar", "psi": "psi", "psf": "force_pound/foot**2",
    "J": "joule", "Wh": "watt_hour", "kWh": "kilowatt_hour", "W": "watt", "kW": "kilowatt", "hp": "horsepower",
    "A": "ampere", "mA": "milliampere", "V": "volt", "mV": "millivolt", "ohm": "ohm",
    "cP": "centipoise", "cSt": "centistokes", "K": "kelvin", "rad": "radian", "deg": "degree", "%": "percent", "cur": "currency",
    "degC": "degree_Celsius", "degF": "degree_Fahrenheit",
}  # fmt: skip
PINT_SHORTHANDS = {
    "lpm": "liter/minute",
    "lps": "liter/second",
    "lph": "liter/hour",
    "cfs": "foot**3/second",
    "mph": "mile/hour",
    "USgpm": "gallon/minute",
    "USgph": "gallon/hour",
    "impgpm": "imperial_gallon/minute",
    "impgph": "imperial_gallon/hour",
}
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
ALL_PINT = {**PINT, **PINT_SHORTHANDS, **PINT_COMPOUNDS}
PLAIN_UNITS = [*unit_table.UNITS, *PINT_SHORTHANDS, *PINT_COMPOUNDS]


def test_every_row_is_mapped_to_pint():
    assert set(PINT) == {*unit_table.UNITS, *unit_table.OFFSET_UNITS}
    assert set(PINT_SHORTHANDS) == set(spellings.SHORTHANDS)


@pytest.mark.parametrize("name", ALL_PINT)
def test_a_unit_agrees_with_pint(name):
    theirs = REGISTRY.Quantity(37.5, REGISTRY.parse_units(ALL_PINT[name])).to_base_units()
    ours = parse(f"37.5 {name}")
    assert ours.value == pytest.approx(theirs.magnitude, rel=1e-12)
    letters = ("[mass]", "[length]", "[time]", "[temperature]", "[current]", "[money]")
    assert tuple(float(power) for power in ours.dimension) == tuple(pytest.approx(float(theirs.dimensionality.get(letter, 0))) for letter in letters)


@pytest.mark.parametrize("spelling, name", spellings.SPELLINGS.items())
def test_a_spelling_reads_as_its_row(spelling, name):
    assert parse(f"3 {spelling}").value == parse(f"3 {name}").value


@given(st.sampled_from(PLAIN_UNITS), st.floats(1e-90, 1e90), st.sampled_from([1, -1]))
def test_what_is_written_reads_back(name, size, sign):
    assume(name != "K" or sign > 0)  # nothing is below 0 K
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
        ("half inch", 0.0127),
        ("three-quarter inch", 0.01905),
        ("half an inch", 0.0127),
        ("2 ft 9 in", 33 * 0.0254),
        ("-2 ft 9 in", -33 * 0.0254),
        ("5 lb 4 oz", 84 * 0.45359237 / 16),  # 16 ounces avoirdupois in a pound, 14 pounds in a stone: NIST SP 811, B.8
        ("3lb4oz", 52 * 0.45359237 / 16),
        ("6 pounds 1/2 ounce", 96.5 * 0.45359237 / 16),
        ("11 stone 4 lb", 158 * 0.45359237),
        ("2'9\"", 33 * 0.0254),
        ("2 ft 9 1/2 in", 33.5 * 0.0254),
        ("1-1/2 in", 0.0381),
        ("1–1/2 in", 0.0381),
        ("-1-1/2 in", -0.0381),
        ("1⅜ in", 1.375 * 0.0254),
        ("5''", 5 * 0.0254),
        ("5′", 5 * 0.3048),
        ("5'", 5 * 0.3048),
        ("5'6\"", 66 * 0.0254),
        ("5′ 6″", 66 * 0.0254),
        ("5'6''", 66 * 0.0254),
        ("5'-6 1/2\"", 66.5 * 0.0254),
        ("5'-6-1/2\"", 66.5 * 0.0254),
        ("5 ft 6 in", 66 * 0.0254),
        ("5 ft. 6 in.", 66 * 0.0254),
        ("9 ft2", 9 * 0.3048**2),
        ("9 ft3", 9 * 0.3048**3),
        ("9 foot2", 9 * 0.3048**2),
        ("3 sq ft", 3 * 0.3048**2),
        ("3 sq. in.", 3 * 0.0254**2),
        ("3 cubic yards", 3 * 0.9144**3),
        ("3 cu ft/min", 3 * 0.3048**3 / 60),
        ("20 deg C", 293.15),
        ("20 degrees Celsius", 293.15),
        ("-5 °C", 268.15),
        ("0 K", 0.0),
        ("10 US GPM", 10 * 231 * 0.0254**3 / 60),
        ("10 imp. gph", 10 * 4.54609e-3 / 3600),
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
        ("8 oz", 0.5 * 0.45359237),
        ("8 oz/yd2", 0.5 * 0.45359237 / 0.9144**2),
        ("2 stone", 28 * 0.45359237),
        ("2 US pints", 231 * 0.0254**3 / 4),
        ("3 U.S. qt/min", 231 * 0.0254**3 * 0.75 / 60),
        ("4 imperial pints", 4.54609e-3 / 2),
        ("2 uk quarts", 4.54609e-3 / 2),
        ("16 US fl. oz", 231 * 0.0254**3 / 8),
        ("20 imp fluid ounces", 4.54609e-3 / 8),
        ("5 m³/s", 5.0),
        ("7", 7.0),
    ],
)
def test_a_quantity_is_read_as_people_write_it(text, si):
    assert parse(text).value == pytest.approx(si, rel=1e-14)


def test_a_power_of_a_dimension_is_exact():
    assert units.unit("m^0.5/s").dimension == dimensions.Dimension(map(Fraction, ("0", "1/2", "-1", "0", "0", "0")))
    assert str(units.unit("kg/m3").dimension) == "kg/m3" and str(dimensions.NUMBER) == "a pure number"


REFUSED = {
    "10 gal": "US gal",
    "10 gpm": "US gal/min",
    "10 gph": "imp gal/h",
    "2 gallons": "imp gal",
    "4 pints": "US or imperial pints: type 'US pint' or 'imp pint'",
    "3 qt": "type 'US quart' or 'imp quart'",
    "12 fl. oz": "type 'US fl oz' or 'imp fl oz'",
    "3 stone/ton": "type 'stone/t' or 'stone/short ton'",
    "12 fluid ounces": "US or imperial fluid ounces: type",
    "2 ton": "short ton",
    "1,250 mm": "two ways, because of the comma: type 1250 mm or 1.250 mm, with a point",
    "12,5 mm": "type 12.5 mm, with a point",
    "634,0": "type 634.0, with a point",
    "-0,125 m": "type -0.125 m, with a point",
    "1250,125 m": "type 1250.125 m, with a point",
    "1,250,000 mm": "type one number with a point",
    "1,250.5 mm": "type one number with a point",
    "1.250,5 mm": "type one number with a point",
    "2 weeks": "time in weeks is not known here: type it in days",
    "1 Month": "time in months is not known here: type it in days",
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
    "1 m^99": "not a unit this reader knows: type a number and a unit",
    "1 kWh^99": "not a unit this reader knows: type a number and a unit",
    "1 um^-99": "not a unit this reader knows: type a number and a unit",
    "1e99 kWh^9 kWh^9 kWh^9 kWh^9 kWh^9": "too large",
    "1 um^9 um^9 um^9 um^9 um^9 um^9": "too small",
    "1e999 m": "type a number and a unit",
    "3 furlongs": "'furlongs' is not a unit this reader knows: type a number and a unit",
    "3 MM": "nearest: mm",
    "3 litrs": "nearest: L",
    "5 m m m m m m m": "not a unit this reader knows",
    "": "nothing was typed: type a number and a unit",
    "  ": "nothing was typed",
    "mm": "type a number and a unit",
    "25 mm 30": "more than one number",
    "25 mm x 30 mm": "more than one number",
    "5 m.m": "'m.m' is not a unit",
    "3/0 in": "divides by zero",
    "1.5/2 in": "cannot start with",
    "2 ft -9 in": "more than one number",
    "1 - 1/2 in": "more than one number",
    "5 ft 6": "with both units, such as 2 ft 9 in",
    "5 lb 6": "type pounds and ounces with both units, such as 5 lb 4 oz",
    "5 lb 17 oz": "fewer than 16 ounces, such as 5 lb 4 oz",
    "5.5 stone 4 lb": "type whole stone and fewer than 14 pounds",
    "5 kg 300 g": "has more than one number in it",
    "2 ft 3 lb": "has more than one number in it",
    "1 US pint/pint": "type 'US pint/US pint' or 'US pint/imp pint'",
    "1 US fl oz/fl oz": "type 'US fl oz/US fl oz' or 'US fl oz/imp fl oz'",
    "5'6": "with both units, such as 2 ft 9 in",
    "5'6'": "is not a unit",
    "5'''": "is not a unit",
    "1e400 m": "'1e400 m' is too large to be meant",
    "-1E+400 m": "too large to be meant",
    "1e-400 m": "too small to be meant",
    "1234567890123 m": "more digits than can be meant",
    "0.333333333333333333333 m": "more digits than can be meant",
    "20C": "type degC for a temperature, as in 20 degC",
    "68 F": "type degF for a temperature, as in 68 degF",
    "9 kg/m s2": "two ways: type kg/m/s2 or kg s2/m",
    "9 W/m2 K": "two ways: type W/m2/K or W K/m2",
    "9 /s m": "cannot start with",
    "9 kg/(m s2)": "a / before each unit below the line, as in kg/m/s2",
    "10 GPH": "type 'US gal/h' or 'imp gal/h'",
    "10 gal/min": "type 'US gal/min' or 'imp gal/min'",
    "-5 K": "colder than anything",
    "-460 degF": "colder than anything",
    "20 degC/m": "use K",
    "-300 degC": "colder than anything",
    "1_000 mm": "type a number and a unit",
    "0x10 mm": "'x10 mm' is not a unit",
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
        ("25 L", "mm", "H = 25 L is a volume", "a length is wanted", "H = 25 mm"),
        ("25", "mm", "H = 25 has no unit", "a length is wanted", "H = 25 mm"),
        ("25 mm", "", "H = 25 mm is a length", "a plain number is wanted", "H = 0.5"),
        ("90 %", "deg", "H = 90 % is a percentage", "an angle is wanted", "deg"),
        ("0.6", "deg", "0.6 has no unit", "type it with one", "0.6 deg"),
        ("0.6 deg", "", "0.6 deg is an angle", "a plain number is wanted", "H = 0.5"),
        ("10 gpm", "L/min", "gpm", "US or imperial", "US gal/min"),
        ("3 gal", "mm", "H = 3 gal is a volume (US or imperial gallons)", "a length is wanted", "H = 25 mm"),
        ("3 gal/min", "mm", "H = 3 gal/min is a flow (US or imperial gallons)", "a length is wanted", "H = 25 mm"),
        ("3 gal", "L", "can be read two ways", "US or imperial gallons", "'US gal' or 'imp gal'"),
        ("2 tons", "L", "is a mass (tons of 1000 kg or of 2000 lb)", "a volume is wanted", "25 L"),
        ("3 furlongs", "mm", "'furlongs' is not a unit", "a length is wanted", "H = 25 mm"),
        ("1e400 m", "mm", "too large to be meant", "a length is wanted", "H = 25 mm"),
        ("20 C", "mm", "'C' alone is not a unit", "degC for a temperature", "20 degC"),
        ("20 mm", "degC", "is a length", "a temperature is wanted", "25 degC"),
        ("20", "degC", "no unit", "a temperature is wanted", "20 degC"),
        ("-5 K", "degC", "colder than anything", "-459.67 degF", "15 degC"),
        ("-300 C", "degC", "colder than anything", "-273.15 degC", "15 degC"),
        ("40 l/m", "L/min", "is an area", "a flow is wanted", "for a minute type l/min"),
        ("100 kg", "N", "is a mass", "a force is wanted", "(100 kg weighs 981 N)"),  # 100 x 9.80665 by hand
        ("20 pounds", "N", "is a mass", "a force is wanted", "(20 pounds weighs 20.0 lbf)"),
        ("20 lbf", "kg", "is a force", "a mass is wanted", "(20 lbf is the weight of 20.0 lb)"),
        ("0.3 $/kWh", "cur/kWh", "the sign $", "not a unit", "as in 20 cur or 0.30 cur/kWh"),
        ("£20", "cur", "the sign £", "not a unit", "as in 20 cur or 0.30 cur/kWh"),
        ("0.3 USD/kWh", "cur/kWh", "'USD'", "not a unit", "as in 20 cur or 0.30 cur/kWh"),
        ("9 m", "m^0.5/s", "is a length", "a quantity in m^0.5/s is wanted", "H = 25 m^0.5/s"),
    ],
)
def test_a_refusal_says_what_was_given_what_was_wanted_and_what_to_type(text, wanted, given, asked, to_type):
    with pytest.raises(InputError) as refusal:
        read(text, wanted, "H")
    message = str(refusal.value)
    assert message.startswith("H") and given in message and asked in message and to_type in message


@pytest.mark.parametrize(
    "text, kelvin", [("20C", 293.15), ("20 C", 293.15), ("20 °C", 293.15), ("68F", 293.15), ("68 °F", 293.15), ("-5 C", 268.15), ("293 K", 293.0)]
)
def test_where_a_temperature_is_wanted_the_bare_letter_of_a_scale_is_read(text, kelvin):
    assert read(text, "degC") == pytest.approx(kelvin, rel=1e-12)


def test_an_example_and_another_unit_can_be_given_for_messages():
    with pytest.raises(InputError, match="type one such as b=750mm or b=30in"):
        read("4 L", "mm", "b", example="b=750mm or b=30in")
    with pytest.raises(InputError, match="b = 4 mm or b = 4 in"):
        read("4", "mm", "b", also="in")


@pytest.mark.parametrize(
    "text, plain",
    [("5,85 mm", "5.85 mm"), (" 1,09", " 1.09"), ("634,0", "634.0"), ("0,125 m", "0.125 m"), ("-12,3456 m", "-12.3456 m"), ("1250,125 m", "1250.125 m")],
)
def test_a_comma_that_no_group_of_thousands_can_have_is_a_decimal_sign(text, plain):
    assert units.with_point(text) == plain


@pytest.mark.parametrize(
    "text", ["1,250 mm", "12,500", "999,999 L", "1,250,5", "1,250.5 mm", "1.250,5", "5,5,5 m", "25 mm", "3, 4 m", ",5 m", "x1,5 m", "5," + "1" * 99]
)
def test_a_comma_with_two_readings_or_none_is_left_as_it_is(text):
    assert units.with_point(text) == text


@pytest.mark.parametrize("wanted", ["mm", "L/min", "deg", "kg", ""])
def test_nothing_is_the_same_in_every_unit_and_needs_none(wanted):
    assert read("0", wanted, "x") == read(" 0.0 ", wanted, "x") == 0


def test_zero_degrees_need_their_scale():
    with pytest.raises(InputError, match="0 degC"):
        read("0", "degC", "x")


def test_a_unit_of_time_is_not_taken_for_one_of_length_because_it_is_spelt_alike():
    with pytest.raises(InputError) as refusal:
        read("3 week", "day", "t")
    assert "ft" not in str(refusal.value) and "14 days" in str(refusal.value)


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
_UNITS = [
    *unit_table.UNITS,
    *unit_table.OFFSET_UNITS,
    *spellings.SPELLINGS,
    *spellings.AMBIGUOUS,
    *spellings.SHORTHANDS,
    "gl",
    "mmm",
    "μm",
    "°C",
    "m²",
    "qwerty" * 5,
]
_UNITS += ["sq ft", "cu. yd", "US GPM", "deg C", "in.", "6''", "C"]
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


@given(st.text(max_size=70), st.sampled_from(["degC", "mm", "", "%"]))
def test_any_text_is_read_or_refused_whatever_is_wanted(text, wanted):
    try:
        assert math.isfinite(read(text, wanted, "x", "x = 1 mm"))
    except InputError as refusal:
        assert len(str(refusal)) < 400


@pytest.mark.parametrize("text", ("2 ft 30 in", "2.5 ft 9 in", "2 ft 12 in"))
def test_feet_and_inches_that_are_mixed_oddly_are_refused(text):
    with pytest.raises(InputError, match="whole feet and fewer than 12 inches"):
        parse(text)


@pytest.mark.parametrize(
    ("text", "litres"), (("1\u202f200 L", 1200), ("1\u2009200\u2009000 L", 1_200_000), ("1\u00a0200.5 L", 1200.5), ("12\u2009L", 12), ("5\u00a01/2 L", 5.5))
)
def test_digits_in_groups_of_three_set_apart_by_a_thin_space_are_one_number(text, litres):
    """As the SI Brochure writes them (9th edition, 5.4.4: groups of three, with thin spaces)."""
    assert units.read(text, "L", "x") == pytest.approx(litres / 1000, rel=1e-12)


@pytest.mark.parametrize("text", ("1 200 L", "1\u202f20 L", "1234\u202f567 L", "1.5\u202f200 L"))
def test_what_may_be_two_numbers_is_refused(text):
    with pytest.raises(InputError):
        units.read(text, "L", "x")


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("3 gal", "3 US gal"),
        ("40 gpm", "40 US gal/min"),
        ("3 pints", "3 US pint"),
        ("12 fl. oz", "12 US fl oz"),
        ("2 qt/h per ft", "2 US quart/h per ft"),
        *((text, text) for text in ("3 imperial gallons", "3 imp. pints", "5 U.S. gal", "5 UK gallons", "3 US fl oz", "2 tons", "12 ft2", "a gallery")),
    ],
)
def test_in_the_us_a_bare_measure_is_that_of_the_us_and_any_other_stands(typed, meant):
    assert spellings.meant_in_the_us(typed) == meant
    assert typed == "a gallery" or typed == "2 tons" or parse(meant).value > 0
