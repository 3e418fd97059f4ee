"""Wrong ways with a working, kind by kind: their numbers by hand, which are told as a fact, and what stands for one unit of what was left out."""

import ast
import math

import pytest

from brimwork.exercise.ways import UNIT, Names, Way, ways

A, B, C, D = 5.0, 3.0, 2.0, 7.0
LONG, SHORT = "a length", "a time"


def tree(text: str) -> ast.expr:
    return ast.parse(text, mode="eval").body


def names(text: str, kinds: dict[str, str] | None = None, **more) -> Names:
    """Given values are the letters a to d, each of a kind of its own where nothing else is said."""
    found = {part.id for part in ast.walk(tree(text)) if isinstance(part, ast.Name)}
    kinds = kinds or {name: name for name in sorted(found & set("abcd"))}
    return Names(
        kinds, frozenset(more.get("plain", ())), frozenset(more.get("words", ())), frozenset(more.get("used", kinds)), frozenset(more.get("angles", ()))
    )


def worth(way: Way, unit: float = 1.0, **values: float) -> float:
    named = {part.id: unit for part in ast.walk(way.tree) if isinstance(part, ast.Name) and part.id.startswith(UNIT)}
    space = {
        "max": max,
        "min": min,
        **{name: getattr(math, name) for name in ("sqrt", "sin", "cos", "tan", "asin", "acos", "atan", "log", "log10", "ceil", "pi")},
        "inch": 0.0254,
        "g": 9.8,
        "a": A,
        "b": B,
        "c": C,
        "d": D,
    }
    return eval(compile(ast.fix_missing_locations(ast.Expression(way.tree)), "<test>", "eval"), {}, {**space, **named, **values})


def of_kind(kind: str, text: str, on_the_way: tuple[str, ...] = (), **more) -> dict[str, float]:
    found = ways(tree(text), more.pop("named", None) or names(text, **more), tuple(map(tree, on_the_way)))
    return {way.sentence(ast.unparse): worth(way) for way in found if way.kind == kind}


def likely(text: str, **more) -> set[str]:
    """Sentences of what many people do, which may be told as a fact."""
    return {way.sentence(ast.unparse) for way in ways(tree(text), names(text, **more)) if way.likely and not way.far}


# --- powers and functions -----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("a**(-1)", {"You left out the power of a: take it to the power -1.": 5.0, "You multiplied a by -1: that is a power, so take it to the power -1.": -5.0}),
        ("a**4", {"You left out the power of a: square it twice.": 5.0, "You turned the power of a upside down: it is 4, not 1/4.": 5**0.25,
                  "You multiplied a by 4: that is a power, so square it twice.": 20.0, "You took a to the power 2: square it twice.": 25.0, "You took a to the power 3: square it twice.": 125.0}),
        ("a**5", {"You left out the power of a: take it to the power 5.": 5.0, "You turned the power of a upside down: it is 5, not 1/5.": 5**0.2,
                  "You multiplied a by 5: that is a power, so take it to the power 5.": 25.0, "You took a to the power 4: take it to the power 5.": 625.0,
                  "You took a to the power 2: take it to the power 5.": 25.0}),
        ("a**6", {"You left out the power of a: take it to the power 6.": 5.0, "You turned the power of a upside down: it is 6, not 1/6.": 5 ** (1 / 6),
                  "You multiplied a by 6: that is a power, so take it to the power 6.": 30.0}),
        ("a**0", {}), ("a**b", {}),
    ],
)  # fmt: skip
def test_the_ways_with_a_power(text, told):
    assert of_kind("power", text, named=names("a")) == pytest.approx(told)


@pytest.mark.parametrize("text", ["a**2", "a**3", "a**4", "a**5", "a**(1/2)", "a**(3/2)", "a**(-1)", "a**(-2)"])
def test_a_power_is_wrong_by_as_much_in_every_unit(text):
    """Whoever works in millimetres comes to the same figures as who works in metres on as many of those."""
    size = eval(text.removeprefix("a**"))
    found = [way for way in ways(tree(text), names(text)) if way.kind == "power"]
    assert len(found) >= 2
    for way in found:
        assert worth(way, 1e-3, a=A * 1e-3) / (1e-3) ** size == pytest.approx(worth(way))
        assert worth(way, 1.0, a=A) == worth(way)


def test_a_plain_number_has_no_unit_to_make_up_for():
    for text in ("a**2", "a*b", "a**(3/2)"):
        for way in ways(tree(text), names(text, plain=("a", "b"))):
            assert UNIT not in ast.unparse(way.tree)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("cos(a)", {"You took the sine of a: take the cosine.": math.sin(0.5), "You left out cosine: take the cosine of a.": 0.5}),
        ("tan(a)", {"You took the sine of a: take the tangent.": math.sin(0.5), "You left out tangent: take the tangent of a.": 0.5}),
        ("asin(a)", {"You took the arc cosine of a: take the arc sine.": math.acos(0.5), "You left out arc sine: take the arc sine of a.": 0.5}),
        ("acos(a)", {"You took the arc sine of a: take the arc cosine.": math.asin(0.5), "You left out arc cosine: take the arc cosine of a.": 0.5}),
        ("log10(a)", {"You took the natural logarithm of a: take the logarithm to base ten.": math.log(0.5), "You left out logarithm to base ten: take the logarithm to base ten of a.": 0.5}),
        ("ceil(a)", {}), ("atan(a)", {}), ("sin(2)*a", {}),
    ],
)  # fmt: skip
def test_the_ways_with_a_function(text, told):
    found = {way.sentence(ast.unparse): worth(way, a=0.5) for way in ways(tree(text), names(text, plain=("a",))) if way.kind == "function"}
    assert found == pytest.approx(told)


def test_a_function_of_a_given_value_that_is_left_out_leaves_a_plain_number():
    (bare,) = [way for way in ways(tree("tan(a)"), names("tan(a)")) if "left out tangent" in way.text]
    assert worth(bare, 0.5, a=0.25) == 0.5 and not bare.likely


def test_what_stands_in_a_root_a_power_or_a_function_is_gone_through():
    assert of_kind("left out", "sqrt(a + b)") == {"You left out a: count it too.": math.sqrt(3), "You left out b: count it too.": math.sqrt(5)}
    assert of_kind("left out", "(a + b)**2") == {"You left out a: count it too.": 9.0, "You left out b: count it too.": 25.0}


def test_one_place_in_many_is_changed_and_the_others_stay():
    assert (
        of_kind("left out", "a*b*(c + d)")["You left out d: count it too."] == 30.0
        and of_kind("left out", "a + b + c*d")["You left out d: multiply by it."] == 10.0
    )
    assert of_kind("left out", "max(a, b*c, d)") == {"You left out b: multiply by it.": 7.0, "You left out c: multiply by it.": 7.0}
    assert of_kind("left out", "max(b, a*c)") == {"You left out a: multiply by it.": 3.0, "You left out c: multiply by it.": 5.0}
    assert of_kind("left out", "min(d, b*c, a)") == {"You left out b: multiply by it.": 2.0, "You left out c: multiply by it.": 3.0}


def test_a_round_number_is_taken_for_pi_or_g():
    found = {way.sentence(ast.unparse): (worth(way), way.likely) for way in ways(tree("pi*g*a"), names("a")) if way.kind == "rounded"}
    assert found == {
        "You took 3 for pi: take 3.14.": (3 * 9.8 * A, False),
        "You took a round number for g: take it to three figures.": (math.pi * 10 * A, False),
    }
    assert of_kind("rounded", "a*b") == {}


# --- sums and products --------------------------------------------------------------------------------------------------------------


def test_only_two_values_that_are_added_are_taken_for_a_product():
    assert (
        "You multiplied a by b: this is a sum." in of_kind("turned round", "a + b")
        and of_kind("turned round", "a + b")["You multiplied a by b: this is a sum."] == 15.0
    )
    assert not [said for text in ("a + 2*b", "a + b + c", "a + b*c") for said in of_kind("turned round", text) if "multiplied a by" in said]


def test_a_plain_number_in_a_sum_is_left_out_too():
    assert of_kind("left out", "a + 2") == {"You left out a: count it too.": 2.0, "You left out 2: count it too.": 5.0}
    assert of_kind("left out", "b - a") == {
        "You left out b: add it.": -5.0,
        "You worked with a alone: take it from b.": 5.0,
        "You left out a: take it off.": 3.0,
    }
    assert of_kind("left out", "-a + b + c") == {"You left out a: take it off.": 5.0, "You left out b: add it.": -3.0, "You left out c: add it.": -2.0}
    assert of_kind("left out", "-a") == {"You left out a: count it too.": 0.0}
    assert of_kind("left out", "-a + b") == {
        "You left out a: take it off.": 3.0,
        "You left out b: add it.": -5.0,
        "You worked with a alone: take it from b.": 5.0,
    }


@pytest.mark.parametrize(
    ("text", "said", "number"),
    [
        ("a/3", "You left out the third: divide by 3.", 5.0), ("a*1000", "You left out the 1000: multiply by it.", 5.0), ("a*0.385", "You left out the 0.385: multiply by it.", 5.0),
        ("a*19/18", "You left out the 19/18: multiply by it.", 5.0), ("a*21/20", "You left out the 1.05: multiply by it.", 5.0), ("a*19/20", "You left out the 0.95: multiply by it.", 5.0),
        ("a*12500", "You left out the 12500: multiply by it.", 5.0), ("a*41/2", "You left out the 20.5: multiply by it.", 5.0), ("a*3/2", "You left out the 3/2: multiply by it.", 5.0),
        ("a*3/2", "You left out the 2: divide by it.", 15.0), ("a*2**3", "You left out 2 ** 3: multiply by it.", 5.0),
        ("a*2/3", "You left out the 3: divide by it.", 10.0), ("a*2/3", "You left out the 2: multiply by it.", 5 / 3), ("a*19/18", "You left out the 18: divide by it.", 95.0),
    ],
)  # fmt: skip
def test_a_plain_number_is_named_as_it_is_said(text, said, number):
    assert of_kind("left out", text)[said] == pytest.approx(number)


def test_a_number_of_large_parts_is_not_taken_apart():
    assert set(of_kind("left out", "a*21/20")) == {"You left out a: multiply by it.", "You left out the 1.05: multiply by it."}
    assert set(of_kind("left out", "a*20/19")) == {"You left out a: multiply by it.", "You left out the 1.053: multiply by it."}
    assert set(of_kind("left out", "a*3/2*2/3")) == {"You left out a: multiply by it."}  # one in all: nothing is left out with it
    assert set(of_kind("left out", "a*2")) == {"You left out a: multiply by it.", "You left out the 2: multiply by it."}
    assert set(of_kind("left out", "pi*a*3/4")) == {"You left out a: multiply by it.", "You left out pi: multiply by it.", "You left out the 3/4: multiply by it.", "You left out the 4: divide by it.",
                                                    "You left out the 3: multiply by it."}  # fmt: skip


def test_units_are_no_values_to_leave_out():
    found = [way.sentence(ast.unparse) for way in ways(tree("a*inch*b"), names("a*inch*b", words=("inch",))) if way.kind in ("left out", "turned round")]
    assert found == [
        "You left out a: multiply by it.",
        "You divided by a: multiply by it.",
        "You left out b: multiply by it.",
        "You divided by b: multiply by it.",
    ]


def test_what_is_worked_out_of_numbers_alone_is_left_out_and_not_turned():
    found = {*of_kind("left out", "a*sqrt(2)"), *of_kind("turned round", "a*sqrt(2)")}
    assert "You left out sqrt(2): multiply by it." in found and "You divided by sqrt(2): multiply by it." not in found


@pytest.mark.parametrize(
    ("text", "turned"),
    [
        ("a/b", {"You turned the whole upside down: divide the other way round.": 0.6}), ("a*b", {}), ("a*2", {}), ("a/2", {}), ("a", {}),
        ("a/b/c", {"You turned the fraction upside down: divide a by b * c.": 6 / 5, "You turned the whole upside down: divide the other way round.": 6 / 5}),
        ("2*a*b/c", {"You turned the fraction upside down: divide a * b by c.": 4 / 15, "You turned the whole upside down: divide the other way round.": 1 / 15}),
        ("pi*a/b", {"You turned the fraction upside down: divide pi * a by b.": 3 / (5 * math.pi), "You turned the whole upside down: divide the other way round.": 3 / (5 * math.pi)}),
        ("a*b/sqrt(2)", {}),
        ("a*b/c/sqrt(2)", {"You turned the fraction upside down: divide a * b by c * sqrt(2).": 2 * 2**0.5 / 15, "You turned the whole upside down: divide the other way round.": 2 * 2**0.5 / 15}),
        ("pi/b/c", {"You turned the whole upside down: divide the other way round.": 6 / math.pi}),  # what stands above is no value given
    ],
)  # fmt: skip
def test_a_fraction_is_turned_upside_down(text, turned):
    assert {said: number for said, number in of_kind("turned round", text).items() if "upside" in said and " in upside" not in said} == pytest.approx(turned)


def test_a_word_for_a_unit_stays_where_a_fraction_is_turned_upside_down():
    told = of_kind("turned round", "a*b*inch/c", words=("inch",))
    assert told["You turned the fraction upside down: divide a * b by c."] == pytest.approx(2 / 15 * 0.0254)


def test_brackets_are_forgotten_round_a_sum_that_is_multiplied():
    assert of_kind("brackets", "2*(a + b)") == {"You forgot the brackets round a + b: work that out first.": 11.0}  # or 13, by which term is multiplied
    assert of_kind("brackets", "a + b") == {} == of_kind("brackets", "a/(b + c)") == of_kind("brackets", "a*(2 + 3)")
    assert of_kind("brackets", "a*(2 + sqrt(3))") == {} and of_kind("turned round", "a*(b + c)")["You divided by b + c: multiply by it."] == 1.0
    loose = [worth(way) for way in ways(tree("a*(b + c + d)"), names("a*(b + c + d)")) if way.kind == "brackets"]
    assert loose == [5 * 3 + 2 + 7, 3 + 2 + 5 * 7]  # the first term is multiplied alone, or the last


# --- the whole, and its values ------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("a*b/c/d", {"a * b": 15.0, "c * d": 14.0, "a * b / c": 7.5}), ("a*b + c*d", {"a * b": 15.0, "c * d": 14.0}), ("sqrt(a*b)", {"a * b": 15.0}), ("(a + b)**2", {"a + b": 8.0}),
        ("-(a*b) + c", {"a * b": 15.0}), ("a*b", {}), ("a*b*c", {"a * b": 15.0}), ("(a + b)*(c + d)", {"a + b": 8.0, "c + d": 9.0}), ("2*a/c", {}),
        ("a/(b + c)", {"b + c": 5.0}), ("a/b/c", {"b * c": 6.0, "a / b": 5 / 3}), ("a/c*b", {"a * b": 15.0, "a / c": 2.5}),
    ],
)  # fmt: skip
def test_a_part_is_given_for_the_whole(text, parts):
    found = of_kind("part", text)
    given = {
        f"That is only {name}, as it was given: work on from it.": number
        for name, number in (("a", A), ("b", B), ("c", C), ("d", D))
        if name in text.replace("sqrt", "")
    }
    assert found == pytest.approx(given | {f"That is only {part}: it is one part of the way, so go on from there.": number for part, number in parts.items()})
    assert text != "a*b/c/d" or [*found][len(given) :] == [f"That is only {part}: it is one part of the way, so go on from there." for part in parts]


def test_a_line_on_the_way_is_given_for_the_whole_once():
    found = [
        way.sentence(ast.unparse)
        for way in ways(tree("a*b + c"), names("a*b + c"), (tree("a*b"), tree("b*c"), tree("a*2"), tree("a*b + c")))
        if way.kind == "part"
    ]
    assert found[3:] == [f"That is only {part}: it is one part of the way, so go on from there." for part in ("a * b", "b * c")]


def test_values_of_one_kind_are_changed_over():
    kinds = {"a": LONG, "b": LONG, "c": SHORT, "d": LONG}
    found = {
        way.sentence(ast.unparse): (worth(way), way.likely, way.far)
        for way in ways(tree("a*a - b + c"), names("a", kinds, used="abc"))
        if way.kind == "swapped"
    }
    assert {said: one for said, one in found.items() if " b in the place of a" not in said} == {
        "You put a and b each in the place of the other: swap them.": (9 - 5 + 2, True, False),
        "You used a in the place of b: put b there.": (25 - 5 + 2, False, False),
        "You used d in the place of a: put a there.": (5 * 7 - 3 + 2, False, False),  # in the second place alone; in both it is 49
        "You used d in the place of b: put b there.": (25 - 7 + 2, True, False),  # what the working has no use for is likely
    }
    every = [
        worth(way)
        for way in ways(tree("a*a - b + c"), names("a", kinds, used="abc"))
        if way.text.startswith("you used") and [part.id for part in way.parts] == ["a", "d"]
    ]
    assert sorted(every) == [34.0, 34.0, 48.0]


def test_what_the_working_has_no_use_for_is_not_changed_over():
    for kinds in ({"a": LONG, "b": LONG}, {"b": LONG, "a": LONG}):
        assert of_kind("swapped", "b - c", named=names("b", kinds, used="b")) == {"You used a in the place of b: put b there.": 3.0}


def test_an_angle_and_a_plain_number_are_seldom_changed_over():
    far = {
        way.sentence(ast.unparse): way.far for way in ways(tree("a*b + c"), names("a", dict.fromkeys("abc", "a number"), angles="a")) if way.kind == "swapped"
    }
    assert {said for said, there in far.items() if there} == {said for said in far if "a and" in said or "place of a:" in said or "used a in" in said} != set()
    assert not far["You put b and c each in the place of the other: swap them."] and not far["You used b in the place of c: put c there."]


def test_a_value_is_doubled_or_halved_or_its_point_is_moved():
    assert of_kind("doubled", "a + 1") == {
        "You put in half of a: put in the whole of it.": 3.5, "You put in a twice: it counts once.": 11.0, "You put in a quarter of a: put in the whole of it.": 2.25,
        "You put in a four times: it counts once.": 21.0}  # fmt: skip
    assert of_kind("point", "a + 1") == {
        f"You put in a {tens} times too {size}: check its unit and its point.": number + 1
        for tens, large, small in ((10, 50.0, 0.5), (100, 500.0, 0.05), (1000, 5000.0, 0.005))
        for size, number in (("large", large), ("small", small))
    }
    assert of_kind("doubled", "a", kinds={"a": LONG, "b": LONG}, used="a") == of_kind("doubled", "a")
    assert of_kind("doubled", "b", kinds={"a": LONG, "b": LONG}, used="b") == of_kind("doubled", "b")  # what is not used is not changed


@pytest.mark.parametrize(
    ("text", "numbers"),
    [
        # a side lost, both changed over, the other sign, and what belongs to one term put on the whole
        ("a*b - c", [15, 2, 2 - 15, 17, (3 - 2) * 5, (5 - 2) * 3, 5 - 2, 3 - 2, 5 / 3 - 2]),
        ("c - a*b", [2, 15, 15 - 2, 17, (2 - 3) * 5, (2 - 5) * 3, 2 - 5, 2 - 3, 2 - 5 / 3]),
        ("a/b - c", [5 / 3, 2, 2 - 5 / 3, 5 / 3 + 2, (1 / 3 - 2) * 5, (5 - 2) / 3, 5 - 2, 3 - 2, 3 / 5 - 2, 15 - 2]),
        ("a**2", []), ("2*3 + 4", []),
    ],
)  # fmt: skip
def test_one_side_is_cut_off_or_turned(text, numbers):
    found = [way for way in ways(tree(text), names(text)) if way.kind == "cut"]
    assert sorted(map(worth, found)) == pytest.approx(sorted(map(float, numbers))) and all(way.far and not way.likely for way in found)


# --- what may be told as a fact -----------------------------------------------------------------------------------------------------


def test_what_many_people_do_may_be_told_as_a_fact():
    assert likely("3*a/4 + b") == {
        "You left out 3 * a / 4: count it too.", "You left out b: count it too.", "You took off b: add it.", "You left out a: multiply by it.", "You divided by a: multiply by it.",
        "You left out the 3/4: multiply by it.", "The sign is turned round: look at which way you count.", "That is only a, as it was given: work on from it.",
        "That is only b, as it was given: work on from it.",
    }  # fmt: skip
    assert "You multiplied a by b: this is a sum." not in likely("a + b") and "You left out pi and the 4: an area of a circle needs both." not in likely(
        "pi*a**2/4"
    )
    assert "You took the sine of a: take the cosine." in likely(
        "cos(a)"
    ) and "You took the logarithm to base ten of a: take the natural logarithm." not in likely("log(a)")
    assert "You took a to the power 3: square it." not in likely("a**2") and "You multiplied a by 2: that is a power, so square it." in likely("a**2")
    assert "That is only b, as it was given: work on from it." not in likely("a", kinds={"a": LONG, "b": SHORT}, used="a")


def test_a_name_is_told_in_full_the_first_time_alone():
    way = Way(tree("a"), "swapped", "you put {0} and {1} each in the place of {0}: swap {1}.", (tree("a"), tree("b + c")))
    assert way.sentence(lambda part: f"{ast.unparse(part)} (it)") == "You put a (it) and b + c (it) each in the place of a: swap b + c (it)."
