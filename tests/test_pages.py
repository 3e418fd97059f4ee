"""Pages without controls: what they say, and that bad input is told and never ends in a traceback."""

import pytest

from brimwork.notebook import label


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
    ("2400 L/min", "2.4 m", "0 W", "change one of them"),
])  # fmt: skip
def test_a_label_that_cannot_be_read_is_told_what_to_change(flow, head, power, told):
    said = plain(label(flow, head=head, power=power))
    assert said.startswith("Please change something") and told in said
