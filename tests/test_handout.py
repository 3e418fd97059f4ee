"""Setting an exercise: roster to files, other numbers for each learner, one source for sheet and key, and the class secret kept in its place."""

import csv
import io
import json
import os
import subprocess
import sys

import pytest

from brimwork.classroom import classfile, handout, learner_files, numbers
from brimwork.cli import main
from brimwork.exercise import answers
from brimwork.exercise.build import of_question
from brimwork.notebook import class_sheet as class_exercise
from brimwork.notebook.opening import shipped
from brimwork.tabular import cell
from brimwork.units import InputError

CLASS = """format = 1
title = "Overflow, week 4"
feedback = "at once"
[questions]
"T04.1" = 2
"T04.2" = { points = 2 }
"flow over a round rim" = { points = 3, on_the_way = "b" }
"""
THIRTY = "code,name\n" + "".join(f"A{i:02d},Learner {i}\n" for i in range(1, 31))


def made(folder, text=CLASS, roster=THIRTY):
    (folder / "week4.toml").write_text(text, encoding="utf-8")
    (folder / "roster.csv").write_bytes(roster if isinstance(roster, bytes) else roster.encode())
    return classfile.load_class(folder / "week4.toml")


def drawn(folder, **named):
    group = made(folder, **named)
    return group, numbers.draw(group, numbers.secret_of(folder, make=True))


# --- class file and roster ----------------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "roster",
    [
        b"\xef\xbb\xbfcode,name\nA1,D\xc3\xa9lia\nA2,\"Crane, Cleo\"\n",
        "code;name\r\nA1;Délia\r\nA2;Crane, Cleo\r\n".encode(),
        "\ufeffName\tCODE\tgroup\nDélia\ta1\tx\n\"Crane, Cleo\"\tA2\ty\n\n".encode("utf-16-le"),
        "code,name\nA1,Délia\nA2,\"Crane, Cleo\"\n".encode("cp1252"),
    ],
    ids=["mark, quoted comma", "semicolons, CRLF", "UTF-16, tabs, other order, lower case", "Windows letters"],
)  # fmt: skip
def test_a_roster_is_read_as_spreadsheets_save_it(tmp_path, roster):
    group = made(tmp_path, roster=roster)
    assert [(one.code, one.name) for one in group.learners] == [("A1", "Délia"), ("A2", "Crane, Cleo")]


@pytest.mark.parametrize(
    ("roster", "told"),
    [
        ("code,name\nA1,Ann\na1,Bea\n", "line 3: the code A1 is on line 2 too"),
        ("code,name\n,Ann\n", "line 2: '' is no learner code"),
        ("code,name\n../x,Ann\n", "no learner code"),
        ("code,name\nCON,Ann\n", "folder on every machine"),
        ("Ann,Bea\n", "must have code and name"),
        ("code,name\n", "no learners"),
        ("", "is empty"),
        ('code,name\nA1,"Ann\n', "quotation mark"),
        ("code,name\nA1\n", "needs code and name"),
        (b"PK\x03\x04\x00\x00", "no text file"),
    ],
)  # fmt: skip
def test_a_roster_that_cannot_be_is_refused_with_its_line(tmp_path, roster, told):
    with pytest.raises(InputError, match=told.replace("(", r"\(").replace(".", r"\.")):
        made(tmp_path, roster=roster)


@pytest.mark.parametrize(
    ("line", "told"),
    [
        ('feedbak = "after"', "'feedbak' is not a key"),
        ("tries = -1", "no number of tries"),
        ("tries = true", "whole number"),
        ('feedback = "loud"', "not one of at once, after, none"),
        ('roster = "/etc/passwd"', "in the folder of the class file"),
        ('roster = "../roster.csv"', "in the folder of the class file"),
        ("method = 2", "no share"),
    ],
)
def test_a_class_file_that_cannot_be_says_what_to_type(tmp_path, line, told):
    with pytest.raises(InputError, match=told):
        made(tmp_path, CLASS.replace('feedback = "at once"', line))


@pytest.mark.parametrize(
    ("question", "told"),
    [
        ('"T04.99" = 1', "no question or formula 'T04.99'"),
        ('"T04.1" = 0', "no number of points"),
        ('"t04.1" = 1\n"T04.1" = 1', "stands twice"),
        ('"T04.1" = { points = 1, on_the_way = "q" }', "no formula"),
        ('"flow over a round rim" = { on_the_way = "zz" }', "no 'zz' on the way"),
        ('"T04.9" = 1', "own words"),
    ],
)
def test_a_question_that_cannot_be_set_says_why(tmp_path, question, told):
    with pytest.raises(InputError, match=told):
        made(tmp_path, CLASS[: CLASS.index('"T04.1"')] + question + "\n")


# --- numbers ------------------------------------------------------------------------------------------------------------------------


def test_no_two_of_thirty_learners_have_the_same_numbers_and_all_are_fair(tmp_path):
    group, sets = drawn(tmp_path)
    for asked in group.questions:
        assert len({tuple(sets.of[one.code][asked.code].numbers.items()) for one in group.learners}) == 30
        for one in group.learners:
            assert not list(of_question(sets.of[one.code][asked.code].posed))
    assert len({sets.mark(group.title, one.code) for one in group.learners}) == 30


def test_numbers_follow_from_the_secret_and_stay_when_a_learner_joins(tmp_path):
    group, sets = drawn(tmp_path)
    again = numbers.draw(group, sets.secret)
    assert again.of == sets.of and numbers.draw(group, b"another" * 4).of != sets.of
    numbers.write_record(group, sets)
    more = made(tmp_path, roster="code,name\nB00,New\n" + "".join(f"A{i:02d},Learner {i}\n" for i in range(1, 31)))
    later = numbers.draw(more, sets.secret, numbers.read_record(more, sets.secret))
    assert {code: later.of[code] for code in sets.of} == sets.of and len(later.of) == 31


def test_a_question_with_too_few_sets_is_refused_with_the_reason(tmp_path):
    few = CLASS.replace('"T04.2"', '"T04.8"')
    with pytest.raises(InputError, match='"T04.8" has no numbers to change, and the class has 30 learners.*alike = true'):
        drawn(tmp_path, text=few)
    group, sets = drawn(tmp_path, text=few.replace("points = 2 }", "points = 2, alike = true }"))
    assert len({sets.of[one.code]["T04.8"].posed.options for one in group.learners}) == 1


def test_a_record_changed_by_hand_is_refused(tmp_path):
    group, sets = drawn(tmp_path)
    numbers.write_record(group, sets)
    path = numbers.record_of(group.path)
    path.write_text(path.read_text().replace("T04.1", "T04.5"))
    with pytest.raises(InputError, match="changed by hand"):
        numbers.read_record(group, sets.secret)


def test_questions_are_posed_again_on_numbers_as_they_were_written(tmp_path):
    group, sets = drawn(tmp_path)
    for of in sets.of.values():
        for issued in of.values():
            drawn_again = issued.asked.posed(issued.seed)
            assert issued.posed.answer == pytest.approx(drawn_again.answer, rel=1e-12) and issued.posed.text == drawn_again.text


# --- files --------------------------------------------------------------------------------------------------------------------------


@pytest.fixture(scope="module")
def written(tmp_path_factory):
    folder = tmp_path_factory.mktemp("class")
    group = made(folder, CLASS.replace("title", 'workbook = "overflow"\ntitle'), "code,name\n" + "".join(f"A{i:02d},Ann {i} Ét\n" for i in range(1, 5)))
    return group, handout.hand_out(group, shipped())


def test_every_learner_gets_a_workbook_and_a_sheet_with_their_numbers_only(written):
    from pypdf import PdfReader

    group, out = written
    for learner in group.learners:
        own = out.learners / learner.code
        assert sorted(path.name for path in own.iterdir()) == ["settings.toml", f"week4-{learner.code}.ipynb", f"week4-{learner.code}.pdf"]
        book = (own / f"week4-{learner.code}.ipynb").read_text()
        source = next("".join(cell["source"]) for cell in json.loads(book)["cells"] if "class_exercise(" in "".join(cell["source"]))
        exercise = learner_files.read_learner_file(source.split('"""')[1])
        assert {one.asked.code: one.numbers for one in exercise.questions} == {code: one.numbers for code, one in out.sets.of[learner.code].items()}
        sheet = " ".join(" ".join(page.extract_text() for page in PdfReader(own / f"week4-{learner.code}.pdf").pages).split())
        asked = " ".join(" ".join(issued.posed.text for issued in out.sets.of[learner.code].values()).split())
        for issued in out.sets.of[learner.code].values():
            assert all(text in sheet for text in issued.numbers.values())
            answer = issued.posed.typed(issued.posed.answer, 4)
            assert sheet.count(answer) == asked.count(answer), "no more often than another question may give this number by chance"


def test_the_lesson_goes_out_without_its_exit_check(written):
    group, out = written
    sources = ["".join(cell["source"]) for cell in json.loads(next(out.learners.rglob("*.ipynb")).read_text())["cells"]]
    assert not any(source.startswith("exit_check(") for source in sources) and any(source.startswith("predict(") for source in sources)


def test_the_mark_of_a_sheet_can_be_read_by_a_machine_and_ties_it_to_learner_and_set(written):
    import pypdf
    import zxingcpp  # an independent reader of ISO/IEC 18004

    numpy = pytest.importorskip("numpy")
    group, out = written
    code = group.learners[2].code
    path = out.learners / code / f"week4-{code}.pdf"
    drawn = subprocess.run(["pdftoppm", "-r", "100", "-gray", "-singlefile", str(path)], capture_output=True) if _has("pdftoppm") else None
    assert pypdf.PdfReader(path).pages
    if drawn is None:
        pytest.skip("pdftoppm is not on this machine")
    size, rest = drawn.stdout.split(b"\n", 3)[1], drawn.stdout.split(b"\n", 3)[3]
    wide, high = map(int, size.split())
    [found] = zxingcpp.read_barcodes(numpy.frombuffer(rest, dtype=numpy.uint8)[: wide * high].reshape(high, wide))
    assert found.text == f"BRIMWORK 1;{code};{out.sets.mark(group.title, code)};Overflow, week 4"


def _has(name):
    import shutil

    return shutil.which(name)


def test_the_key_has_every_answer_and_working(written):
    from pypdf import PdfReader

    group, out = written
    rows = list(csv.DictReader(io.StringIO((out.instructor / "key.csv").read_text(encoding="utf-8-sig"))))
    assert len(rows) == 4 * 3 and {row["code"] for row in rows} == {one.code for one in group.learners}
    printed = " ".join(" ".join(page.extract_text() for page in PdfReader(out.instructor / "key.pdf").pages).split())
    for row in rows:
        assert row["right"] in printed
    assert len(PdfReader(out.instructor / "overview.pdf").pages) == 1
    assert len(PdfReader(out.instructor / "all-sheets.pdf").pages) == 4


def test_the_secret_stays_with_the_instructor(written):
    group, out = written
    secret = numbers.secret_of(group.folder)
    assert secret.hex() not in group.path.read_text()
    for path in out.learners.rglob("*"):
        if path.is_file():
            assert not numbers.numbers_told(path.read_bytes(), secret)
    if os.name == "posix":
        assert (group.folder / numbers.SECRET).stat().st_mode & 0o077 == 0


def test_a_learners_file_that_would_carry_the_secret_is_refused(tmp_path):
    secret = numbers.secret_of(tmp_path, make=True)
    group = made(tmp_path, CLASS.replace("Overflow, week 4", secret.hex()), "code,name\nA1,Ann\n")
    with pytest.raises(InputError, match="would carry the class secret"):
        handout.hand_out(group, shipped())
    group = made(tmp_path, CLASS, "code,name\nA1,Ann\n")
    numbers.record_of(group.path).unlink()
    (tmp_path / "week4-for-learners").mkdir(exist_ok=True)
    (tmp_path / "week4-for-learners" / numbers.SECRET).write_text("x")
    with pytest.raises(InputError, match="would go out"):
        handout.hand_out(group, shipped())


def test_from_nothing_to_files_in_two_commands(tmp_path, capsys):
    assert main(["handout", "--begin", str(tmp_path / "own.toml")]) == 0
    assert main(["handout", str(tmp_path / "own.toml")]) == 0
    assert "for 4 learners" in capsys.readouterr().out
    assert main(["handout", "--begin", str(tmp_path / "own.toml")]) == 2 and main(["handout", str(tmp_path / "no.toml")]) == 2
    assert "--begin" in capsys.readouterr().err


@pytest.mark.parametrize("text", ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "＝1", " =1"])
def test_a_cell_is_never_a_formula(text):
    assert cell(text).startswith("'") and cell(-1.5) == "-1.5"


# --- in the workbook ----------------------------------------------------------------------------------------------------------------


def opened(folder, feedback="at once", tries=0):
    group = made(folder, CLASS.replace("at once", feedback).replace("[questions]", f"tries = {tries}\n[questions]"), "code,name\nA1,Ann\n")
    sets = numbers.draw(group, numbers.secret_of(folder, make=True))
    text = learner_files.as_text(learner_files.ExerciseInFile("A1", group.title, sets.mark(group.title, "A1"), feedback, tries, tuple(sets.of["A1"].values())))
    return class_exercise.ClassExercise(learner_files.read_learner_file(text), folder)


def answered(one, text):
    one.box.value = text
    one.keep()


def right(one):
    return one.question.typed(one.question.answer, 4)


def test_an_exercise_tells_at_once_keeps_and_hands_in(tmp_path):
    shown = opened(tmp_path)
    first = shown.exercises[0]
    answered(first, first.question.typed(first.question.slips[0].number))
    assert "You used the diameter as the edge" in first.feedback.value
    answered(first, right(first))
    assert "Right:" in first.feedback.value
    shown.exercises[2].middle.value = "1 m"
    answered(shown.exercises[2], right(shown.exercises[2]))
    shown.hand_in()
    held = json.loads((tmp_path / "hand-in-A1.json").read_text())
    assert held["hand_in"]["receipt"] == answers.receipt(held["answers"], "A1") and held["hand_in"]["receipt"] in shown.said.value
    assert held["hand_in"]["receipt"] != answers.receipt(held["answers"], "A2"), "the receipt depends on the learner"
    assert [entry["try"] for entry in held["answers"] if entry["exercise"] == "T04.1"] == [1, 2]
    assert held["answers"][0]["slip"] == 0 and held["answers"][0]["kit"] and held["answers"][2]["middle"] == "1 m"
    assert "No answer yet: question 2" in shown.said.value
    assert "Solution" not in " ".join(shown.exercises[0].rungs())


def test_an_exam_is_silent_until_it_is_handed_in_and_then_says_all(tmp_path):
    exam = opened(tmp_path, "after")
    for one in exam.exercises:
        answered(one, right(one))
        assert "Right" not in one.feedback.value and "Kept as answer 1" in one.feedback.value and not one.outcome.value
        assert one.hint not in one.buttons.children
    assert {entry["kind"] for entry in answers.load_answers(exam.record)} == {"kept"}, "the file does not tell either"
    exam.hand_in()
    assert all("Right:" in one.feedback.value and one.hint in one.buttons.children for one in exam.exercises)
    again = class_exercise.ClassExercise(exam.handed, tmp_path)
    assert all("Right:" in one.feedback.value for one in again.exercises), "a rerun still knows that it was handed in"


def test_an_exercise_without_feedback_stays_silent(tmp_path):
    quiet = opened(tmp_path, "none")
    answered(quiet.exercises[0], right(quiet.exercises[0]))
    quiet.hand_in()
    assert "Right" not in quiet.exercises[0].feedback.value and "Receipt" in quiet.said.value


def test_tries_are_counted_through_a_rerun(tmp_path):
    shown = opened(tmp_path, tries=2)
    answered(shown.exercises[0], "1 mm")
    again = class_exercise.ClassExercise(shown.handed, tmp_path)
    assert "Your last answer: 1\xa0mm" in again.exercises[0].kept.value
    answered(again.exercises[0], "2 mm")
    answered(again.exercises[0], "3 mm")
    assert "used up" in again.exercises[0].feedback.value
    assert [entry["answer"] for entry in answers.load_answers(shown.record)] == ["1 mm", "2 mm"]


def test_a_hand_in_never_replaces_another(tmp_path):
    shown = opened(tmp_path)
    for text in ("1 mm", "2 mm"):
        answered(shown.exercises[0], text)
        shown.hand_in()
        shown.hand_in()
    assert sorted(path.name for path in tmp_path.glob("hand-in*")) == ["hand-in-A1-2.json", "hand-in-A1.json"]


def test_lines_that_were_changed_are_refused(tmp_path):
    text = learner_files.as_text(opened(tmp_path).handed)
    for wrong in ("", text.replace("tries: 0", "tries: -1"), text.replace(" | ", " "), text + "\nimport os", "x" * 50_000):
        with pytest.raises(InputError, match="not as it was handed out"):
            learner_files.read_learner_file(wrong)


def test_the_command_runs_in_a_process_of_its_own(tmp_path):
    made(tmp_path, roster="code,name\nA1,Ann\n")
    ran = subprocess.run([sys.executable, "-m", "brimwork", "handout", str(tmp_path / "week4.toml")], capture_output=True, text=True)
    assert ran.returncode == 0 and "for 1 learner" in ran.stdout and not ran.stderr


def test_the_call_in_a_learners_workbook_is_a_function_and_runs(written):
    """In a process of its own, as a kernel would: a module of that name would stand in its way."""
    group, out = written
    cells = json.loads(next(out.learners.rglob("*.ipynb")).read_text())["cells"]
    source = next("".join(cell["source"]) for cell in cells if "class_exercise(" in "".join(cell["source"]))
    ran = subprocess.run([sys.executable, "-c", source], capture_output=True, text=True, cwd=out.instructor)
    assert ran.returncode == 0 and "Traceback" not in ran.stderr, ran.stderr


def test_no_call_of_a_workbook_has_the_name_of_a_file():
    from brimwork import notebook

    assert not {*notebook.__all__} & {*notebook._WHERE.values()}
