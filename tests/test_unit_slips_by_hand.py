"""Which units are mixed up, and what a number would be had one been taken for another: worked by hand."""

from types import SimpleNamespace

import pytest

from brimwork.exercise.question import GivenValue
from brimwork.exercise.unit_slips import Taken, as_they_stand, mixed_up, of_an_input, taken
from brimwork.units import InputError


@pytest.mark.parametrize(
    ("unit", "others"),
    [
        ("mm", ("cm", "m", "in", "ft")), ("N/m2", ("kPa", "bar", "psi", "psf")), ("deg", ("rad",)), ("rad", ("deg",)), ("", ("%",)), ("%", ("",)), ("kg/m", ()),
        ("m3/min", ("m3/s", "m3/h", "m3/day", "L/min", "US gal/min", "imp gal/min")), ("m3/min per m", ("m3/s per m", "m3/h per m", "m3/day per m", "L/min per m", "US gal/min per ft")),
    ],
)  # fmt: skip
def test_one_thing_about_a_unit_is_mixed_up_at_a_time(unit, others):
    assert mixed_up(unit) == others


def test_a_unit_is_in_use_by_whatever_name():
    assert Taken("", "N/m2", 1.0).of(("mm", "Pa")) and not Taken("", "Pa", 1.0).of(("kPa",)) and not Taken("", "Pa", 1.0).of(())
    assert not Taken("", "kg", 1.0).of(("m",)) and not Taken("", "degC", 1.0).of(("K",))  # of one size each, and not the same


def test_a_unit_taken_for_another_is_told_and_asked():
    minute = Taken("L/min", "L/s", 1.0)
    assert minute.sentence == "you typed L/min, where the number is in L/s. Change the unit, or the number: 1 L/min is 0.0167 L/s"
    assert minute.question == "is your number in L/s, and not in L/min?"
    assert Taken("", "%", 1.0).sentence == "you typed no unit, where the number is in %. Change the unit, or the number: 1 is 100 %"
    assert Taken("%", "", 1.0).sentence == "you typed %, where the number is in plain numbers. Change the unit, or the number: 1 % is 0.0100"
    assert (
        Taken("", "%", 1.0).question == "is your number in %, and not in plain numbers?"
        and Taken("%", "", 1.0).question == "is your number in plain numbers, and not in %?"
    )


def test_a_number_is_taken_in_units_that_the_question_has_to_do_with():
    """12 L/min are 0.2 L/s; as 12 m3/min they would be 0.2 m3/s, as 12 US gallons 12 x 3.785411784 L in a minute."""
    metric = {one.meant: one.value for one in taken(12e-3 / 60, "L/min", ("m/s", "mm2"))}
    assert metric == pytest.approx({"L/s": 0.012, "L/h": 12e-3 / 3600, "L/day": 12e-3 / 86400, "m3/min": 0.2})
    both = {one.meant: one.value for one in taken(12e-3 / 60, "L/min", ("m/s", "ft2"))}
    assert both.keys() - metric.keys() == {"US gal/min", "imp gal/min"} and both["US gal/min"] == pytest.approx(12 * 3.785411784e-3 / 60)
    assert {one.meant for one in taken(0.3, "ft", ("m",))} == {"mm", "cm", "m", "in"}  # what was typed counts too


def question(again, answer=2.0, **given: tuple[float, str]):
    return SimpleNamespace(given={name: GivenValue(value, unit) for name, (value, unit) in given.items()}, again=again, answer=answer)


HOSE = {"Q": (12e-3 / 60, "L/min"), "A": (100e-6, "mm2")}  # 2 m/s


def test_a_given_value_may_have_been_put_in_with_another_unit():
    asked = question(lambda given: given["Q"] / given["A"], **HOSE)
    assert list(of_an_input(asked, ("m/s", "L/min", "mm2"))) == [
        (pytest.approx(120.0), "12 L/min was put in as 12 L/s"), (pytest.approx(2000.0), "12 L/min was put in as 12 m3/min"), (pytest.approx(2e-6), "100 mm2 was put in as 100 m2")]  # fmt: skip
    assert (pytest.approx(0.02), "100 mm2 was put in as 100 cm2") in list(of_an_input(asked, ("m/s", "cm2")))


def test_on_the_way_to_si_lie_no_gallons():
    asked = question(lambda given: given["Q"], Q=(3.785411784e-3 / 60, "US gal/min"))
    assert [said for _, said in of_an_input(asked, ("m3/s",))] == ["1 US gal/min was put in as 1 m3/min"]


def test_a_share_may_have_been_put_in_as_a_number():
    asked = question(lambda given: given["p"], p=(0.5, "%"))
    assert list(of_an_input(asked, ("m",))) == [(50.0, "50 % was put in as the plain number 50")]


def test_what_cannot_be_worked_with_a_unit_is_passed_over():
    def again(given):
        if given["Q"] == pytest.approx(0.012):
            raise InputError("too much")
        return given["Q"] / given["A"]

    assert [said for _, said in of_an_input(question(again, **HOSE), ("m/s",))] == ["12 L/min was put in as 12 m3/min", "100 mm2 was put in as 100 m2"]


def test_where_all_numbers_go_in_as_they_stand_no_unit_was_missed():
    def three(given):
        return 3 * given["a"]

    asked = question(three, 0.12, a=(0.04, "mm"))
    assert as_they_stand(asked, "mm") is True and as_they_stand(asked, "m") is False
    assert list(of_an_input(asked, ("mm", "m"))) == [] and len(list(of_an_input(asked, ("m", "mm")))) == 1
    two = question(lambda given: given["a"] + given["b"], 4.0, a=(3.0, "m"), b=(0.001, "mm"))
    assert as_they_stand(two, "m") is False  # one kind of quantity in two units
    assert as_they_stand(question(lambda given: given["a"] * given["b"], 12.0, a=(3.0, "m"), b=(4.0, "m")), "m2") is True
    assert as_they_stand(question(lambda given: given["a"] * given["b"], 12.0, a=(3.0, "m"), b=(4.0, "")), "m") is True
    assert as_they_stand(question(lambda given: 2.0), "m") is False  # nothing is given
    assert as_they_stand(question(lambda given: 1 / 0, 1.0, a=(3.0, "m")), "m") is False


def test_as_they_stand_they_give_the_right_number_to_a_millionth():
    for off, same in ((0.995e-6, True), (1.005e-6, False)):
        assert as_they_stand(question(lambda given, off=off: given["a"] + off, 1.0, a=(1.0, "m")), "m") is same
