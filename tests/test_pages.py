"""Pages without controls: what they say, and that bad input is told and never ends in a traceback."""

import pytest

from brimwork.notebook import label, ledger, work


def plain(page):
    return page._repr_mimebundle_()["text/plain"]


def test_a_label_in_litres_a_minute_for_litres_an_hour_is_caught_and_explained():
    """By hand: 0.3849 x 998.2 x 9.80665 x 0.04 m3/s x 2.4 m / 40 W = 9.04; over 60, 0.151."""
    said = plain(label("2400 L/min", head="2.4 m", power="40 W"))
    assert said.startswith("Label impossible.") and "puts 9 times the power" in said and "read as 2400 L/h it is 0.15, which is possible" in said


def test_the_same_label_in_litres_an_hour_is_possible():
    assert plain(label("2400 L/h", head="2.4 m", power="40 W")).startswith("Label possible.")


@pytest.mark.parametrize("flow, head, power, told", [
    ("550 gal/min", "2 m", "40 W", "US or imperial"),
    ("2400 L/min", "2.4", "40 W", "has no unit"),
    ("2400 L/min", "2.4 m", "banana", "does not start with a number"),
    ("2400 L/min", "2.4 m", "0 W", "it divides by P_in"),
])  # fmt: skip
def test_a_label_that_cannot_be_read_is_told_what_to_change(flow, head, power, told):
    said = plain(label(flow, head=head, power=power))
    assert said.startswith("Please change something") and told in said


def test_values_that_are_missing_are_asked_for_as_a_cell_takes_them():
    said = plain(work("flow over a round rim", H="3 mm"))
    asked = said.partition("type, for example, ")[2].rstrip(".")
    given = eval(f"dict({asked})")
    assert set(given) == {"C_w", "d_rim"}
    assert plain(work("flow over a round rim", H="3 mm", **given)).startswith("Given: weir coefficient")


@pytest.mark.parametrize(
    "values, told",
    [({"b": "4", "H": "3 mm", "C_d": "0.62"}, 'such as b="4 mm" or b="4 in"'), ({"b": 4, "H": "3 mm", "C_d": "0.62"}, 'b="4 mm"'),
     ({"b": "foo", "H": "3 mm", "C_d": "0.62"}, 'type one such as b="700 mm"'), ({"b": "1,250 m", "H": "3 mm", "C_d": "0.62"}, "two ways"),
     ({"b": "4 m", "h": "3 mm"}, "takes no letter 'h'. Nearest: H"), ({"b": "4 m", "bb": "3 mm"}, "there is no letter 'bb'. Nearest: b")],
)  # fmt: skip
def test_a_value_that_cannot_be_used_is_told_as_a_cell_takes_it(values, told):
    for page in (work, ledger):
        said = plain(page("flow over a level lip", **values))
        assert said.startswith("Please change something") and told in said and not said.endswith("..")


def test_a_decimal_comma_is_read_and_shown_with_a_point():
    """By hand: 2/3 x 0.62 x 4 m x sqrt(2 x 9.80665) x 0.2^1.5 = 0.65489 m3/s, times 60 000."""
    said = plain(work("flow over a level lip", b="4 m", H="0,2 m", C_d="0,62"))
    assert "0.62 × 4 m" in said and "(0.2 m)^(3/2)" in said and "39290 L/min" in said


def test_what_a_formula_was_checked_against_comes_with_the_values_it_was_printed_for():
    checked = work("water that an edge holds back", l_c="2.73 mm", theta_c="60 deg", a_edge="90 deg").markdown
    assert "5.45 mm printed for sigma=72.736 mN/m, rho=998.206 kg/m3, theta_c=180 deg, a_edge=0 deg, 5.452 mm here" in checked.replace(
        "\N{NO-BREAK SPACE}", " "
    )
