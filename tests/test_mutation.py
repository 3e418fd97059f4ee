"""That the commands which put faults into formulas and modules really judge: planted faults are noticed, and one that nothing guards is said to live.

The whole campaigns take minutes and are run by hand: `python tests/mutation/formulas.py`, `python tests/mutation/modules.py units`.
"""

import ast
import mmap
import random
import sys
from dataclasses import replace
from pathlib import Path

import pytest

sys.path.insert(0, str(Path(__file__).parent / "mutation"))

import formulas as faults_in_formulas
import in_place as faults_in_place
import modules as faults_in_modules
from may_live import MAY_LIVE
from mutants import in_formula, in_module, swapped

from brimwork.by_hand import ByHand
from brimwork.formula import Formula
from brimwork.topics import find, formulas


@pytest.mark.parametrize(
    "name, planted, way",
    [
        ("flow over a level lip", "2/3*C_d*b*sqrt(g)*H**(3/2)", "printed"),
        ("flow over a level lip", "2/3*C_d*b*sqrt(2*g)*H**(5/2)", "dimensions"),
        ("depth of the pit", "t_st + h_bl + t_li + t_sand", "by hand"),
        ("flow out of a bore over its rim", "1.01*C_w*pi*d_bore*H**(3/2)", "derivation"),
        ("flow over a level lip", "C_d*b*sqrt(2*g)*H**(3/2)*2/3", "the same"),
    ],
)
def test_a_planted_fault_is_noticed_by_the_guard_that_should(name, planted, way):
    assert faults_in_formulas.fate(find(name), planted) == way


def test_a_fault_that_no_guard_can_see_lives():
    blind = Formula("a pit", "V", "L*W*h", fitted="nobody", unpublished="a test", by_hand=(ByHand("L=1 m, W=1 m, h=1 m", "1*1*1", "1 m3"),))
    assert faults_in_formulas.fate(blind, "L*W**2*h/L") == "lives"


def test_a_fault_drawn_in_one_formula_of_five_is_noticed():
    draw, living = random.Random(11), []
    for formula in draw.sample([*formulas().values()], len(formulas()) // 5):
        told, text = draw.choice([*faults_in_formulas.mutants(formula)])
        if faults_in_formulas.fate(formula, text) == "lives" and (formula.name, told) not in MAY_LIVE:
            living.append((formula.name, told))
    assert not living
    assert len(MAY_LIVE) < 10


def test_every_formula_has_faults_to_put_in_and_each_changes_its_text():
    for formula in formulas().values():
        texts = [text for _, text in faults_in_formulas.mutants(formula)]
        assert texts and len({*texts}) == len(texts) and formula.equals not in texts


def test_a_fault_changes_one_thing_and_leaves_the_tree_it_was_put_into():
    tree = ast.parse("2*H + 1", mode="eval").body
    told = {told: ast.unparse(swapped(tree, old, new)) for told, old, new in in_formula(tree)}
    assert told["2 * H + 1 -> 2 * H - 1"] == "2 * H - 1" and told["2 * H -> 2 / H"] == "2 / H + 1" and told["1 -> 1.01"] == "2 * H + 1.01"
    assert ast.unparse(tree) == "2 * H + 1"


def test_a_planted_fault_in_a_module_turns_its_tests_red_and_none_leaves_them_green():
    """On the root finder, whose tests take no time: a fault in a function, one in what runs at import, and none; all in one campaign."""
    roots = faults_in_modules.target("roots")
    refusal = next(fault for fault in roots.faults if "raise InputError" in fault[0])
    at_import = ("planted", roots.tree.body[-1], ast.Raise(ast.Name("KeyError", ast.Load())))
    faults = [refusal, ("none", roots.tree, roots.tree), at_import]
    assert faults_in_modules.campaign([replace(roots, faults=faults)], ("mutation/try_roots.py",)) == {"roots": [1]}


def test_a_fork_may_use_memory_beside_what_its_parent_has_and_not_without_end():
    with mmap.mmap(-1, faults_in_place.MEMORY):  # taken, and never written to
        assert faults_in_place.in_fork(lambda: len(bytearray(100_000_000)), seconds=5) == 100_000_000
        assert faults_in_place.in_fork(lambda: len(bytearray(2 * faults_in_place.MEMORY)), seconds=5) is None


def test_a_gate_whose_tests_never_reach_the_module_does_not_judge():
    receipts = replace(faults_in_modules.target("exercise.receipts"), faults=[])
    with pytest.raises(SystemExit, match="nobody can miss in exercise.receipts"):
        faults_in_modules.campaign([receipts], ("mutation/try_roots.py",))


def test_a_fault_leaves_every_place_of_the_tree_that_it_was_put_into():
    """A part that is left of an operator stands where the whole stood, in the new tree alone: else its function would be taken for another one."""
    whole = ast.parse("def f(a, b):\n    return not (\n        a\n        + b\n    )\n")
    before = ast.dump(whole, include_attributes=True)
    for _, old, new in in_module(whole):
        swapped(whole, old, new)
    assert ast.dump(whole, include_attributes=True) == before
