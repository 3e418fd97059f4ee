"""The command: what it prints, and that bad input ends with 2 and one message on standard error."""

import json
import subprocess
import sys

import pytest
from draws import usual_points

from brimwork import __version__, topics
from brimwork.cli import main
from brimwork.nomenclature import QUANTITIES

LIP = ["work", "flow over a level lip"]
GOOD = ["b=4m", "H=0.2m", "C_d=0.62"]


def test_work_shows_formula_numbers_result_in_both_systems_range_and_source(capsys):
    assert main([*LIP, *GOOD]) == 0
    out, err = capsys.readouterr()
    assert err == ""
    for piece in (
        "2/3·C_d·b·√(2·g)·H^(3/2)",
        "2/3 × 0.62 × 4 m",
        "m3/s",
        "US gal/min",
        "tested range: H from 30 mm",
        "checked against: A. K. Sarkar",
        "Torricelli",
    ):
        assert piece in out


def test_work_as_json_gives_the_published_flow_and_names_its_source(capsys):
    """Sarkar Ex 5.9: 0.655 m3/s, three figures."""
    assert main([*LIP, *GOOD, "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["result"]["value"] == pytest.approx(0.655, rel=5e-4) and told["result"]["unit"] == "m3/s"
    assert "Sarkar" in told["published"][0]["source"] and abs(told["published"][0]["difference"]) <= told["published"][0]["tolerance"]
    assert told["inputs"]["H"]["value"] == 0.2 and told["inputs"]["g"]["value"] == 9.80665


def test_work_takes_either_unit_system_and_any_spelling_of_the_name(capsys):
    assert main(["work", "FLOW_over_a_level_lip", "b=13 ft 1.48 in", "H=7 7/8 in", "C_d=62 %", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["result"]["value"] == pytest.approx(0.655, rel=2e-3)


def test_work_outside_the_tested_range_answers_with_a_note(capsys):
    assert main([*LIP, "b=0.5m", "H=10mm", "C_d=0.62"]) == 0
    assert "note: H = 10.0 mm is below the tested range" in capsys.readouterr().out


def test_work_alone_lists_every_formula_under_its_topic(capsys):
    assert main(["work"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert {line for line in lines if not line.startswith(" ")} == {*topics.topics()}
    assert len(lines) == len(topics.topics()) + len(topics.formulas())


@pytest.mark.parametrize("name", topics.formulas())
def test_every_formula_can_be_worked_from_the_command_line(name, capsys):
    point = usual_points(topics.find(name), 1)[0]
    assert main(["work", name, *(f"{letter}={QUANTITIES[letter].metric_text(value, 9)}" for letter, value in point.items())]) == 0
    out, err = capsys.readouterr()
    assert out.startswith(name) and err == "" and all(f"    {letter} " in out for letter in point)


BAD = {
    "wrong unit": ([*LIP, "b=4L", "H=0.2m", "C_d=0.62"], "b = 4L is a volume, but a length is wanted: type one such as b=700mm or b=28in"),
    "no unit": ([*LIP, "b=4", "H=0.2m", "C_d=0.62"], "has no unit"),
    "negative length": ([*LIP, "b=-4m", "H=0.2m", "C_d=0.62"], "negative"),
    "not a number": ([*LIP, "b=4m", "H=nan m", "C_d=0.62"], "not a number that can be used"),
    "infinite": ([*LIP, "b=4m", "H=inf m", "C_d=0.62"], "not a number that can be used"),
    "bare gallon": (["work", "depth in a straight pit", "V=60 gal", "L=1m", "W=1m"], "US gal"),
    "comma": ([*LIP, "b=1,250mm", "H=0.2m", "C_d=0.62"], "comma"),
    "unknown formula": (["work", "flow over a levle lip"], "Nearest: flow over a level lip"),
    "unknown letter": ([*LIP, "bb=4m", "H=0.2m", "C_d=0.62"], "Nearest: b"),
    "the result given": ([*LIP, *GOOD, "Q=1L/s"], "Q is what it gives"),
    "value missing": ([*LIP, "b=4m", "C_d=0.62"], "still needs H (head over the lip"),
    "value twice": ([*LIP, *GOOD, "b=3m"], "given twice"),
    "no equals sign": ([*LIP, "b", "4m"], "type one such as H=25mm"),
    "no formula of that name to prove": (["prove", "flow over a levle lip"], "Nearest: flow over a level lip"),
    "too long": ([*LIP, "b=" + "1" * 5000, "H=0.2m", "C_d=0.62"], "at most 60"),
    "not plain": ([*LIP, "b=٣m", "H=0.2m", "C_d=0.62"], "plain alphabet"),
}


@pytest.mark.parametrize("case", BAD)
def test_bad_input_ends_with_two_and_one_message(case, capsys):
    arguments, told = BAD[case]
    assert main(arguments) == 2
    out, err = capsys.readouterr()
    assert out == "" and err.startswith("brimwork: ") and told in err and "Traceback" not in err and err.count("\n") == 1


@pytest.mark.parametrize("arguments", [[], ["wrok"], ["work", "--colour"]])
def test_a_wrong_command_line_ends_with_two(arguments, capsys):
    with pytest.raises(SystemExit) as end:
        main(arguments)
    assert end.value.code == 2 and capsys.readouterr().out == ""


def test_the_command_runs_as_a_program_without_a_traceback():
    def run(*arguments):
        return subprocess.run([sys.executable, "-m", "brimwork", *arguments], capture_output=True, text=True)

    good, bad = run(*LIP, *GOOD), run(*LIP, "b=4 gal", "H=0.2m", "C_d=0.62")
    assert good.returncode == 0 and "0.655 m3/s" in good.stdout
    assert bad.returncode == 2 and bad.stdout == "" and "US gal" in bad.stderr and "Traceback" not in bad.stderr
    assert run("--version").stdout.strip() == f"brimwork {__version__}"


def test_prove_is_green_and_counts_every_formula(capsys):
    assert main(["prove"]) == 0
    out = capsys.readouterr().out
    published = sum(len(formula.published) for formula in topics.formulas().values())
    assert f"{len(topics.formulas())} formulas: " in out and f"{published} published values, {published} agree" in out
    assert "NOT PROVED" not in out and "    ! " not in out


def test_prove_of_one_formula_shows_its_steps_and_how_each_was_shown(capsys):
    assert main(["prove", "flow over a level lip"]) == 0
    out = capsys.readouterr().out
    for piece in ("1. free fall", "[law, not proved here]", "[taken: a modelling choice]", "[follows: by algebra]", "against A. K. Sarkar", "∫[0..H] v dz"):
        assert piece in out
