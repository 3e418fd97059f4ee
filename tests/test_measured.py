"""What was measured on site is believed as far as it can be true, and says so where it differs from the rest of the design."""

from pathlib import Path

import pytest

from brimwork.design.follows.features import chain_of
from brimwork.design.judged.checks import findings
from brimwork.design.typed import file

BOWL = file.load_design(Path(__file__).parents[1] / "workbooks" / "designs" / "library-bowl.toml")


def changed(**values):
    design = BOWL
    for key, text in values.items():
        design = design.having(f"measured.{key}", text, "measured")
    return design


def said(design, key):
    return [found for found in findings(chain_of(design)) if found.id.startswith(f"measured.{key}") or found.id.startswith(f"vessel.{key}")]


def graded(design, check):
    return next(found for found in findings(chain_of(design)) if found.id == check)


@pytest.mark.parametrize(
    ("key", "text", "why"),
    [
        ("flow", "70 L/min", "60.0 L/min"),  # the label's most, with nothing to lift
        # 30 L/min lifted 0.85 m take 998 x 9.81 x 0.0005 x 0.85 = 4.2 W: 0.018 A at 230 V, nothing lost
        ("current", "0.011 A", "power of the water"),
        ("start_drop", "390 mm", "380 mm"),
        ("filled", "600 L", "no blocks"),  # 1.236 m x 0.836 m x 0.38 m = 393 L
        ("rim_levels", ["0 mm"], "8"),
    ],
)
def test_what_cannot_have_been_measured_is_asked_about(key, text, why):
    (found,) = [one for one in said(changed(**{key: text}), key) if "not believed" in one.note]
    assert found.grade == "marginal" and why in found.value and "measure again" in found.remedy


@pytest.mark.parametrize(("key", "text"), [("flow", "25 L/min"), ("current", "0.2 A"), ("start_drop", "17 mm"), ("filled", "345 L")])
def test_what_can_have_been_measured_is_believed_without_a_word(key, text):
    assert not said(changed(**{key: text}), key)


@pytest.mark.parametrize(("key", "text"), [("flow", "55 L/min"), ("current", "0.5 A"), ("start_drop", "60 mm"), ("filled", "250 L")])
def test_what_differs_from_the_model_says_so_and_counts(key, text):
    (found,) = said(changed(**{key: text}), key)
    assert found.grade == "marginal" and "what was measured counts" in found.note


def test_one_point_of_a_rim_makes_no_check_pass():
    """A single level has no range: nothing is out of level, and nobody has looked."""
    bad = BOWL.having("vessel.rim_out_of_level", "4 mm")
    assert graded(bad, "C07").grade == "fail"
    one = bad.having("measured.rim_levels", ["0 mm"], "measured")
    assert graded(one, "C07").grade == "fail"
    assert graded(bad.having("measured.rim_levels", ["0 mm", "0.5 mm"] * 4, "measured"), "C07").grade == "pass"
    assert graded(one.having("vessel.rim_out_of_level", None), "C07").grade == "not shown"


def test_the_water_that_filled_it_counts_before_the_void_fraction():
    """250 L in 0.96 m2 up to 380 mm are 0.685 of the blocks' plan; usable are the 230 mm over the lowest level: 250 x 230/380 L."""
    chain = chain_of(changed(filled="250 L"))
    assert chain.static_volume == pytest.approx(0.250)
    assert chain.usable == pytest.approx(0.250 * 230 / 380)
    assert chain.days < chain_of(BOWL).days
