"""Questions of one's own, from a file beside the workbooks: read without running anything, held to the rules of the bank, told in words where something is wrong."""

import time

import pytest

from brimwork.classroom import classfile, handout
from brimwork.exercise import bank, own_questions
from brimwork.exercise.diagnosis import diagnose
from brimwork.notebook.further import Further
from brimwork.notebook.opening import shipped
from brimwork.units import InputError


@pytest.fixture(autouse=True)
def none_again(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    yield
    bank.use_own({})


def written(folder, text=own_questions.EXAMPLE):
    (folder / own_questions.OWN_FILE).write_text(text, encoding="utf-8")
    return folder / own_questions.OWN_FILE


def test_the_example_is_asked_drawn_and_told_its_slip(tmp_path):
    written(tmp_path)
    assert own_questions.take_from(tmp_path) == [] and own_questions.codes() == ["T13.501", "T10.501"]
    question = bank.pose("T13.501")
    assert question.answer == pytest.approx(0.015 / 24) and diagnose(question, "37.5 L/min").right  # 15 L in 24 s is 37.5 L a minute
    assert "A minute has 60 seconds" in diagnose(question, "0.625 L/min").text
    assert bank.pose("T13.501", 2).numbers != question.numbers
    assert bank.pose("T10.501").options[bank.pose("T10.501").right].startswith("Leave it off")
    own_questions.take_from(tmp_path / "elsewhere")
    with pytest.raises(InputError, match=r"T13\.501"):
        bank.pose("T13.501")


def test_all_kinds_are_read(tmp_path):
    more = """
[[slip]]
code = "T13.502"
text = "A bucket of 12 L fills in 20 s. Somebody works out the flow in a minute."
lines = [{ line = "Volume: 12 L.", holds = "This holds: it is given." }, { line = "In a minute: 12 x 20 = 240 L." }, { line = "Flow: 240 L/min.", holds = "This follows from the line before." }]
slip = 2
because = "A minute has three times 20 seconds, so the bucket fills three times."
mend = ["flow", "36 L/min", "240 L/min"]

[[order]]
code = "T13.503"
text = "Put these in order."
steps = ["switch off", "unplug", "lift the pump out"]
why = ["Switch off before you pull the plug.", "Unplug before a hand goes into the water."]

[[sentence]]
code = "T13.504"
text = "Why is the plug pulled first?"
model = "Electricity and water together can kill, so nothing is live when a hand goes in."
points = ["electricity near water can kill", "nothing is live"]
"""
    found = own_questions.read_questions(written(tmp_path, own_questions.EXAMPLE + more))
    assert {*found} == {"T13.501", "T10.501", "T13.502", "T13.503", "T13.504"}
    assert found["T13.502"].pose(1).mended.answer == pytest.approx(0.012 * 3 / 60)


def changed(old, new):
    assert old in own_questions.EXAMPLE
    return own_questions.EXAMPLE.replace(old, new)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("format = 2\n", "format = 1"),
        ("x = [", "this is not TOML"),
        ("format = 1\n[[essay]]\n", "no kind of question"),
        ("format = 1\nnumber = 3\n", "two brackets"),
        (changed('"T13.501"', '"T13.1"'), "from 500 on"),
        (changed('"T13.501"', '"T99.501"'), "no code for a question"),
        (changed('code = "T13.501"', ""), "question 1 of \\[\\[number\\]\\]: code is missing"),
        (changed('answer = "v/t"', 'answer = "v/t + v"'), "T13.501.*puts together"),
        (changed('answer = "v/t"', 'answer = "v/speed"'), "T13.501.*speed"),
        (changed('answer = "v/t"', 'answers = "v/t"'), "'answers' is no key.*Nearest: answer"),
        (changed('unit = "L/min"', 'unit = "L/fortnight"'), "T13.501.*fortnight"),
        (changed('unit = "L/min"', 'unit = "kg"'), "T13.501: the answer comes out in"),
        (changed('equals = "v/t/60"', 'equals = "v/t"'), "T13.501.*slip 1"),
        (changed("You gave litres a second. A minute has 60 seconds, so multiply by 60.", "no"), "T13.501: not a full sentence"),
        (changed('"T10.501"', '"T13.501"'), "stands twice"),
        (changed('text = "A bucket', 'text = "A\\u202ebucket'), "one line"),
        (changed('answer = "v/t"', "answer = true"), "answer is text in quotes"),
        (changed('given = { v = "15 L", t = "24 s" }', 'given = { v = "15 L", "__class__" = "24 s" }'), "T13.501"),
    ],
)
def test_what_is_wrong_is_told_with_file_and_question(tmp_path, text, told):
    with pytest.raises(InputError, match=f"(?s)questions.toml.*{told}|{told}"):
        own_questions.read_questions(written(tmp_path, text))


@pytest.mark.parametrize(
    "hostile",
    ["9**9**9", "v**99999", "(((v**6)**6)**6)**6/(((v**6)**6)**6)**6", "__import__('os').system('touch ran')", "v.__class__", "[1 for _ in v]", "(lambda: v)()",
     "1" * 400, "v/t if v else t", "exec('x')", "open('x')", "v" + "+v" * 150, "(" * 120 + "v" + ")" * 120, "10**400*v/t", "v//t", "v and t", "'v'*9"],
)  # fmt: skip
@pytest.mark.parametrize("place", ["answer", "text", "solution", "slip", "let", "where", "middle"])
def test_nothing_in_a_file_is_run_and_nothing_hangs(tmp_path, hostile, place):
    quoted = hostile.replace("'", "\\u0027")
    text = {
        "answer": changed('answer = "v/t"', f'answer = "{quoted}"'),
        "text": changed("A bucket of {v}", f"A bucket of {{v}} {{{quoted}|L}}"),
        "solution": changed("{v/t|L/min}", f"{{{quoted}|L/min}}"),
        "slip": changed('equals = "v/t/60"', f'equals = "{quoted}"'),
        "let": changed('answer = "v/t"', f'let = {{ w = "{quoted}" }}\nanswer = "w"'),
        "where": changed('answer = "v/t"', f'where = ["{quoted} < v"]\nanswer = "v/t"'),
        "middle": changed('answer = "v/t"', f'middle = ["way", "{quoted}", "L"]\nanswer = "v/t"'),
    }[place]
    begun = time.perf_counter()
    with pytest.raises(InputError):
        own_questions.read_questions(written(tmp_path, text))
    assert time.perf_counter() - begun < 5 and not (tmp_path / "ran").exists()


def test_a_file_that_is_too_large_or_holds_too_many_is_refused(tmp_path):
    with pytest.raises(InputError, match="larger than"):
        own_questions.read_questions(written(tmp_path, "#" * 600_000))
    choice = own_questions.EXAMPLE.partition("[[choice]]")[2]
    many = "".join(f"[[choice]]{choice.replace('T10.501', f'T10.{500 + number}')}" for number in range(201))
    with pytest.raises(InputError, match="more than 200"):
        own_questions.read_questions(written(tmp_path, f"format = 1\n{many}"))


def test_they_stand_in_the_lists_of_a_workbook_and_what_is_wrong_with_them_is_told(tmp_path):
    written(tmp_path)
    own_questions.take_from(tmp_path)
    further = Further(("T13.3", "T13.5"), None)
    assert "T13.501" in [code for _, code in further.chosen.options] and "T10.501" not in [code for _, code in further.chosen.options]
    further.chosen.value = "T13.501"
    assert "15 L" in further.shown.children[0].plain
    written(tmp_path, changed('answer = "v/t"', 'answer = "9**9**9"'))
    own_questions.take_from(tmp_path)
    told = " ".join(getattr(child, "value", "") or "" for child in Further(("T13.3",), None).widget.children)
    assert "questions.toml, question T13.501" in told


def test_a_class_asks_them_and_hands_them_out(tmp_path):
    written(tmp_path)
    (tmp_path / "roster.csv").write_text("code,name\nA01,Ada Rowan\n")
    (tmp_path / "class.toml").write_text('format = 1\ntitle = "Bucket"\n[questions]\n"T13.501" = 2\n')
    out = handout.hand_out(classfile.load_class(tmp_path / "class.toml"), shipped())
    assert (out.learners / "A01" / "questions.toml").read_text() == own_questions.EXAMPLE
    written(tmp_path, changed('unit = "L/min"', 'unit = "kg"'))
    with pytest.raises(InputError, match=r"questions\.toml, question T13\.501"):
        classfile.load_class(tmp_path / "class.toml")
