"""The command: what it prints, and that bad input ends with 2 and one message on standard error."""

import json
import os
import re
import shlex
import shutil
import subprocess
import sys

import pytest
from draws import usual_points

from brimwork import __version__, search, topics
from brimwork.cli import main
from brimwork.nomenclature import QUANTITIES
from brimwork.notebook import opening

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


def test_a_working_stands_in_the_units_that_were_typed(capsys):
    """By hand: 4 m needs no turning; 24 in are 2 ft, and a cubic foot each second is 448.83 US gal/min."""
    assert main([*LIP, *GOOD]) == 0
    assert "0.62 × 4 m × √" in (out := capsys.readouterr().out) and "÷" not in out
    assert main([*LIP, "b=24in", "H=0.5in", "C_d=0.62"]) == 0
    out = capsys.readouterr().out
    assert "b = 24 in ÷ 12 in/ft = 2 ft" in out and "448.831 (US gal/min)/(ft3/s)" in out and "÷ 1000" not in out
    assert main([*LIP, "b=24in", "H=12mm", "C_d=0.62"]) == 0
    assert "b = 609.6 mm" in capsys.readouterr().out, "of both systems: metric"


def test_work_outside_the_tested_range_answers_with_a_note(capsys):
    assert main([*LIP, "b=0.5m", "H=10mm", "C_d=0.62"]) == 0
    assert "note: H = 10.0 mm is below the tested range" in capsys.readouterr().out


def test_work_alone_lists_every_formula_with_its_meaning_under_its_topic(capsys):
    assert main(["work"]) == 0
    blocks = [block.splitlines() for block in capsys.readouterr().out.split("\n\n")]
    assert [block[0] for block in blocks[:-1]] == [search.about(topic) for topic in topics.topics()]
    assert [len(block) - 1 for block in blocks[:-1]] == [len(formulas) for formulas in topics.topics().values()]
    assert "  flow over a level lip                             from discharge coefficient, length of the lip, head over the lip" in sum(blocks, [])
    assert blocks[-1] == [f"{len(topics.formulas())} formulas. 'brimwork work \"NAME\"' says what one takes, 'brimwork work WORD' lists those about a word"]


def test_a_word_offers_the_formulas_about_it_those_named_by_it_first(capsys):
    assert main(["work", "weir"]) == 0
    out, err = capsys.readouterr()
    assert err == "" and out.startswith("'weir' in the name\n  weir coefficient ")
    assert out.index("flow by weir coefficient") < out.index("'weir' in what it takes") < out.index("flow over a round rim")
    assert "  flow over a level lip " in out, "a lip is called a weir at the head of its topic only"


@pytest.mark.parametrize("words, name", [
    ("pump", "duty flow"), ("Pumps", "duty flow"), ("C_d", "flow over a level lip"), ("pumping cost", "cost of pumping for a year"), ("MANNING", "speed by Manning"),
])  # fmt: skip
def test_words_are_searched_in_names_meanings_letters_and_topics(words, name):
    found = search.search(words)
    assert topics.find(name) in sum(found.values(), ())
    assert len(sum(found.values(), ())) < len(topics.formulas()) / 2


def test_names_that_begin_with_the_word_come_first():
    names = [formula.name for formula in search.search("pump")["in the name"]]
    assert names[0] == "pump curve from two label numbers" and names.index("head of two equal pumps side by side") > 0


def test_a_search_and_the_list_as_json_name_what_each_formula_gives_and_takes(capsys):
    assert main(["work", "weir", "--json"]) == 0
    first = json.loads(capsys.readouterr().out)["formulas"][0]
    assert first == {"under": "in the name", "formula": "weir coefficient", "gives": {"C_w": "weir coefficient"}, "takes": {"C_d": "discharge coefficient"}}
    assert main(["work", "--json"]) == 0
    assert [row["formula"] for row in json.loads(capsys.readouterr().out)["formulas"]] == [*topics.formulas()]


def test_a_formula_without_values_is_described(capsys):
    assert main(["work", "flow over a level lip"]) == 0
    out, err = capsys.readouterr()
    assert err == "" and "2/3·C_d·b·√(2·g)·H^(3/2)" in out and "gives  Q        flow" in out
    assert "b        length of the lip; usually 300 mm to 1200 mm (11.8 in to 47.2 in)" in out
    assert main(["work", "flow over a level lip", "--json"]) == 0
    assert [*json.loads(capsys.readouterr().out)["takes"]] == ["C_d", "b", "H"]


@pytest.mark.parametrize("name", topics.formulas())
def test_the_examples_that_are_shown_can_be_typed(name, capsys):
    main(["work", name])
    shown = [line.strip() for line in capsys.readouterr().out.partition("type, for example")[2].splitlines() if line.strip()]
    assert 1 <= len(shown) <= 2
    for line in shown:
        assert main(shlex.split(line)[1:]) == 0
        out, err = capsys.readouterr()
        assert err == "" and "usual range" not in out and "does not hold" not in out


def test_a_name_may_stand_without_quotes_and_switches_anywhere(capsys):
    assert main(["work", *"flow over a level lip".split(), *GOOD]) == 0
    plain = capsys.readouterr().out
    assert plain.startswith("flow over a level lip\n") and "0.655 m3/s" in plain
    assert main([*LIP, "--json", *GOOD]) == 0
    assert json.loads(capsys.readouterr().out)["result"]["letter"] == "Q"


def test_a_value_far_from_the_usual_is_worked_with_a_note(capsys):
    wild = [*LIP, "b=600mm", "H=10mm", "C_d=62"]
    assert main(wild) == 0
    out = capsys.readouterr().out
    assert "note: C_d = 62 lies far outside the usual range of the discharge coefficient, 0.58 to 0.66: check the number and its unit" in out
    assert out.count("usual range") == 1
    assert main([*wild, "--json"]) == 0
    assert any(note.startswith("C_d = 62 lies far outside") for note in json.loads(capsys.readouterr().out)["notes"])
    assert main(["work", "volume of a battered pit", "L=1m", "W=40in", "h=300mm", "m_b=300"]) == 0
    assert "m_b = 300 lies far outside the usual range of the batter, 0.1 to 1" in capsys.readouterr().out


def test_a_formula_used_outside_the_range_of_its_letter_says_nothing_of_it(capsys):
    assert main(["work", "friction factor of laminar flow", "Re=1200"]) == 0
    assert "usual range" not in capsys.readouterr().out, "laminar flow has lower Reynolds numbers than most"


@pytest.mark.parametrize("name", topics.formulas())
def test_every_formula_can_be_worked_from_the_command_line(name, capsys):
    point = usual_points(topics.find(name), 1)[0]
    assert main(["work", name, *(f"{letter}={QUANTITIES[letter].metric_text(value, 9)}" for letter, value in point.items())]) == 0
    out, err = capsys.readouterr()
    assert out.startswith(name) and err == "" and all(f"    {letter} " in out for letter in point)


BAD = {
    "wrong unit": ([*LIP, "b=4L", "H=0.2m", "C_d=0.62"], "b = 4L is a volume, but a length is wanted: type one such as b=700mm or b=27.6in"),
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
    "a word typed wrongly": (["work", "wier"], "no formula 'wier'. Nearest words: wire, weir."),
    "a name without its space": (["work", "dutyflow"], "Nearest: duty flow"),
    "a word and values": (["work", "weir", "b=3m"], "About that: weir coefficient, flow by weir coefficient"),
    "a space in a value": ([*LIP, "b=4", "m", "H=0.2m", "C_d=0.62"], 'so type "b=4 m"'),
    "a gallon for a length": ([*LIP, "b=4 gal", "H=0.2m", "C_d=0.62"], "is a volume (US or imperial gallons), but a length is wanted"),
    "two spaces in a value": ([*LIP, "b=4", "US", "ft", "H=0.2m"], 'so type "b=4 US ft"'),
    "no such verb": (["wrok"], "no verb 'wrok'. Nearest: work, mark. Type one of open, work"),
    "a formula for a verb": (["flow over a level lip"], 'type brimwork work "flow over a level lip"'),
    "no such option": (["work", "--colour"], "--colour"),
    "a port that cannot be": (["open", "--port", "99999"], "from 1024 to 65535, such as --port 8888"),
    "a port that is no number": (["open", "--port", "x"], "from 1024 to 65535"),
    "a privileged port": (["open", "--port", "80"], "from 1024 to 65535"),
    "no design": (["pack"], "design"),
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


@pytest.mark.parametrize("arguments, told", [
    ([*LIP, "b=4L", "--json"], "is a volume, but a length is wanted"), (["work", "wier", "--json"], "there is no formula 'wier'"), (["work", "--json", "--colour"], "--colour"),
])  # fmt: skip
def test_an_error_under_json_is_one_json_object_too(arguments, told, capsys):
    assert main(arguments) == 2
    out, err = capsys.readouterr()
    said = json.loads(out)
    assert [*said] == ["error"] and told in said["error"] and err == f"brimwork: {said['error']}\n"


def test_the_command_alone_says_what_to_do_first(capsys):
    assert main([]) == 2
    out, err = capsys.readouterr()
    assert out == "" and "brimwork open" in err and 'brimwork work "flow over a level lip" b=600mm H=12mm C_d=0.62' in err


def test_a_pack_with_failing_checks_ends_with_one_and_a_design_that_cannot_be_read_with_two(tmp_path, capsys):
    shutil.copy(opening.shipped() / "designs" / "library-bowl.toml", tmp_path)
    assert main(["pack", str(tmp_path / "library-bowl.toml")]) == 1
    out, err = capsys.readouterr()
    fails = re.search(r"(\d+) outside", out)[1]
    assert (
        err == f"brimwork: the pack is written, and {fails} checks are outside their limits or not met: it says what to change\n"
        and (tmp_path / "library-bowl.pdf").exists()
    )
    (tmp_path / "bad.toml").write_text("x = [")
    assert main(["pack", str(tmp_path / "bad.toml")]) == 2
    out, err = capsys.readouterr()
    assert out == "" and err.startswith("brimwork: the design could not be read, and no pack was written: ") and not (tmp_path / "bad.pdf").exists()


def test_where_only_ascii_can_be_written_nothing_ends_in_a_traceback():
    ran = subprocess.run([sys.executable, "-m", "brimwork", *LIP, *GOOD], capture_output=True, text=True, env={**os.environ, "PYTHONIOENCODING": "ascii"})
    assert ran.returncode == 0 and ran.stderr == "" and "0.655 m3/s" in ran.stdout


def test_the_command_runs_as_a_program_without_a_traceback():
    def run(*arguments):
        return subprocess.run([sys.executable, "-m", "brimwork", *arguments], capture_output=True, text=True)

    good, bad = run(*LIP, *GOOD), run("work", "depth in a straight pit", "V=60 gal", "L=1m", "W=1m")
    assert good.returncode == 0 and "0.655 m3/s" in good.stdout
    assert bad.returncode == 2 and bad.stdout == "" and "US gal" in bad.stderr and "Traceback" not in bad.stderr
    assert run("--version").stdout.strip() == f"brimwork {__version__}"


PRINTED_KEYS = ["source", "grade", "given", "printed", "here", "unit", "difference", "tolerance", "agrees"]


def test_prove_is_green_and_counts_every_formula(capsys):
    assert main(["prove"]) == 0
    out = capsys.readouterr().out
    published = sum(len(formula.published) for formula in topics.formulas().values())
    assert f"{len(topics.formulas())} formulas: " in out and f"{published} published values, {published} agree" in out
    assert "NOT PROVED" not in out and "    ! " not in out
    by_hand = [formula for formula in topics.formulas().values() if formula.by_hand]
    assert f"{len(by_hand)} formulas carry numbers worked by hand" in out and out.count("worked by hand: ") == sum(len(one.by_hand) for one in by_hand)
    assert main(["prove", "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert set(told) == {"formulas", "summary"} and len(told["formulas"]) == told["summary"]["formulas"] == len(topics.formulas())
    assert told["summary"]["published"] == told["summary"]["agreeing"] == published and sum(told["summary"]["status"].values()) == len(topics.formulas())
    for row in told["formulas"]:
        assert list(row) == ["formula", "topic", "status", "published", "unpublished", "by_hand", "faults"] and not row["faults"]
        assert all(list(one) == PRINTED_KEYS and one["agrees"] for one in row["published"])


def test_prove_of_one_formula_shows_its_steps_and_how_each_was_shown(capsys):
    assert main(["prove", "flow over a level lip"]) == 0
    out = capsys.readouterr().out
    for piece in ("1. free fall", "[law, not proved here]", "[taken: a modelling choice]", "[follows: by algebra]", "against A. K. Sarkar", "∫[0..H] v dz"):
        assert piece in out


def test_prove_of_one_formula_as_json_has_its_steps(capsys):
    """Sarkar Ex 5.9 prints 0.655 m3/s."""
    assert main(["prove", "flow over a level lip", "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["published"][0]["printed"] == 0.655 and told["published"][0]["unit"] == "m3/s" and told["status"] == "algebra"
    assert [list(step) for step in told["steps"]] == [["reason", "relation", "how"]] * 5 and told["steps"][-1]["how"] == "follows: by algebra"


def test_a_pack_under_the_name_of_something_else_is_refused(tmp_path, capsys):
    shutil.copy(opening.shipped() / "designs" / "library-bowl.toml", tmp_path / "bowl.toml")
    assert main(["pack", str(tmp_path / "bowl.toml"), "--to", str(tmp_path / "bowl.docx")]) == 2
    assert "ends in .pdf" in capsys.readouterr().err and not (tmp_path / "bowl.docx").exists()


def test_small_words_do_not_narrow_a_search(capsys):
    main(["work", "volume of a bowl"])
    first = capsys.readouterr().out.split("\n\n")[0]
    assert "water in a round bowl" in first and "pit" not in first and "tank" not in first


# --- what nobody foresaw ------------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "error, told",
    [
        (KeyError("depth\nand more"), "Please report this line.*KeyError .*depth.* in .*line [0-9]+, Brimwork .*Python"),
        (RecursionError("too deep"), "RecursionError .too deep."),
        (MemoryError(), "MemoryError"),
        (PermissionError(13, "Permission denied", "a.pdf"), "^brimwork: a.pdf: Permission denied: see that"),
        (ModuleNotFoundError("No module named 'typst'", name="typst"), "needs the library typst.*pip install typst"),
    ],
    ids=lambda value: type(value).__name__,
)
def test_the_unforeseen_is_one_plain_line_and_exit_two(capsys, monkeypatch, error, told):
    def fails(*_):
        raise error

    monkeypatch.setattr("brimwork.telling.description", fails)
    monkeypatch.setattr("brimwork.telling.description_as_json", fails)
    assert main(LIP) == 2
    out, line = capsys.readouterr()
    assert not out and line.count("\n") == 1 and "Traceback" not in line and re.search(told, line)
    assert main([*LIP, "--json"]) == 2
    assert json.loads(capsys.readouterr().out)["error"] in line


def test_a_contributor_can_have_the_traceback(monkeypatch):
    monkeypatch.setenv("BRIMWORK_TRACEBACK", "1")
    monkeypatch.setattr("brimwork.telling.description", lambda formula: {}["nothing"])
    with pytest.raises(KeyError):
        main(LIP)
