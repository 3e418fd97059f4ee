"""Marking a class: marks equal a key worked by hand, simulated slips are the slips that are reported, twice gives the same bytes, odd files are said to a person."""

import csv
import io
import json
import math
import zipfile

import pytest
import simulated_class as simulated

from brimwork.classroom import classfile, intake, marking, numbers, slips, writing
from brimwork.classroom.marking import AFTER_SHOWN
from brimwork.cli import main
from brimwork.units import InputError

QUESTIONS = '"T04.1" = 2\n"T05.1" = 2\n"flow over a round rim" = { points = 4, on_the_way = "b" }\n'


def school(folder, questions=QUESTIONS, learners=30, extra=""):
    folder.mkdir(exist_ok=True)
    (folder / "week4.toml").write_text(f'format = 1\ntitle = "Overflow, week 4"\n{extra}\n[questions]\n{questions}')
    (folder / "roster.csv").write_text("code,name\n" + "".join(f"A{i:02d},Ann {i}\n" for i in range(1, learners + 1)))
    group = classfile.load_class(folder / "week4.toml")
    (folder / numbers.SECRET).write_text("5a" * 32)  # always the same: of some secrets two learners share an answer to three figures
    sets = numbers.draw(group, numbers.secret_of(folder))
    numbers.write_record(group, sets)
    (folder / "in").mkdir(exist_ok=True)
    return group, sets


def marked(folder, group, sets):
    return marking.mark(group, sets, intake.take_in(folder / "in"))


def give(folder, name, raw):
    path = folder / "in" / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(raw)


def given(group, sets, code, entries):
    return simulated.handed_in(group, sets, code, entries)


def rows(path):
    return list(csv.DictReader(io.StringIO(path.read_text(encoding="utf-8-sig"))))


# --- against a key worked by hand ---------------------------------------------------------------------------------------------------


def by_hand(code, given):
    """Head on a round rim by Q = C pi d H^(3/2); speed in a pipe by Q = v pi d^2 / 4; worked here from the text of the numbers alone."""
    scale = {
        "mm": 1e-3,
        "m": 1.0,
        "L/h": 1 / 3.6e6,
        "m^0.5/s": 1.0,
        "US gal/h": 231 * 0.0254**3 / 3600,
        "US gal/min": 231 * 0.0254**3 / 60,
        "in": 0.0254,
        "L/min": 1 / 6e4,
        "L/s": 1e-3,
    }
    value = {name: float(text.split(" ", 1)[0]) * scale[text.split(" ", 1)[1]] for name, text in given.items()}
    if code == "T04.1":
        return f"{(value['Q'] / (value['C'] * math.pi * value['D'])) ** (2 / 3) * 1e3:.3g} mm"
    if code == "T05.1":
        return f"{value['Q'] / (math.pi / 4 * value['d'] ** 2) / 0.3048:.3g} ft/s"
    return f"{value['C_w'] * math.pi * value['d_rim'] * value['H'] ** 1.5 * 6e4:.3g} L/min"


def test_marks_equal_a_key_worked_by_hand(tmp_path):
    """Ten learners, three questions: each is right, or wrong by a factor, as decided before the kit saw it."""
    group, sets = school(tmp_path, learners=10)
    expected = {}
    for number, learner in enumerate(group.learners):
        entries = []
        for place, (code, issued) in enumerate(sets.of[learner.code].items()):
            right = (number + place) % 3 != 0
            text, _, unit = by_hand(code, issued.numbers).partition(" ")
            entries.append(simulated.entry(issued, f"{float(text) * (1 if right else 1.31):.3g} {unit}", at=place))
            expected[learner.code, code] = issued.asked.points if right else 0
        give(tmp_path, f"{learner.code}.json", given(group, sets, learner.code, entries))
    marks = marked(tmp_path, group, sets)
    assert {(code, name): mark.points for code, one in marks.of.items() for name, mark in one.marks.items()} == expected and len(expected) == 30


def test_the_slips_that_a_class_was_simulated_with_are_the_slips_that_are_reported(tmp_path):
    group, sets = school(tmp_path)
    plan = {"T04.1": [0] * 9 + [1] * 6 + [2] * 3, "T05.1": [0] * 7, "flow over a round rim": [2] * 5}
    for number, learner in enumerate(group.learners):
        chosen = {code: kinds[number] for code, kinds in plan.items() if number < len(kinds)}
        give(tmp_path, f"{learner.code}.json", simulated.whole(group, sets, learner.code, slips=chosen))
    marks = marked(tmp_path, group, sets)
    table = {(row.question, row.slip): row for row in slips.slips_table(marks) if row.slip is not None}
    assert {key: row.count for key, row in table.items()} == {
        ("T04.1", 0): 9, ("T04.1", 1): 6, ("T04.1", 2): 3, ("T05.1", 0): 7, ("flow over a round rim", 2): 5,
    }  # fmt: skip
    assert table["T04.1", 2].shown == "under 5" and table["T04.1", 0].shown == "9"
    notes = slips.notes(marks)
    assert [(note.question, note.count) for note in notes] == [("T04.1", "9"), ("T05.1", "7"), ("T04.1", "6")]
    assert sum(int(minutes.split()[0]) for minutes, _ in notes[0].lines) == 5
    handed_out = {tuple(issued.numbers.values()) for of in sets.of.values() for issued in of.values()}
    assert not any(all(text in line for text in numbers) for numbers in handed_out for _, line in notes[0].lines[:1])


# --- points -------------------------------------------------------------------------------------------------------------------------


def one(tmp_path, entries, extra="", code="A01"):
    group, sets = school(tmp_path, learners=3, extra=extra)
    give(tmp_path, "hand-in.json", given(group, sets, code, entries(sets.of[code])))
    return marked(tmp_path, group, sets).of[code]


def test_a_right_value_on_the_way_earns_the_method(tmp_path):
    """Half of four points: the rim is pi d, and the flow is typed a third too large."""

    def entries(issued):
        question = issued["flow over a round rim"].posed
        rim = math.pi * question.given["d_rim"].value
        return [simulated.entry(issued["flow over a round rim"], question.typed(question.answer * 1.33), middle=f"{rim * 1000:.4g} mm")]

    mark = one(tmp_path, entries).marks["flow over a round rim"]
    assert (mark.points, mark.of) == (2, 4) and "method" in mark.why


def test_an_error_is_carried_forward(tmp_path):
    """The rim is taken as d; the flow follows rightly from that: the slip is made once, and the way after it is paid."""

    def entries(issued):
        question = issued["flow over a round rim"].posed
        wrong = question.given["d_rim"].value * 2
        return [simulated.entry(issued["flow over a round rim"], question.typed(question.answer * 2 / math.pi), middle=f"{wrong * 1000:.4g} mm")]

    mark = one(tmp_path, entries, extra="method = 0.75").marks["flow over a round rim"]
    assert mark.found == "carried" and mark.points == 3


@pytest.mark.parametrize("called", [b"mound of a flow from a bore", b"boil of a flow from a bore"])
def test_a_right_answer_under_the_former_name_of_a_formula_earns_its_points(tmp_path, called):
    group, sets = school(tmp_path, '"boil of a flow from a bore" = 3\n', 1)
    give(tmp_path, "a.json", simulated.whole(group, sets, "A01", slips={}).replace(b"mound of a flow from a bore", called))
    marks = marked(tmp_path, group, sets).of["A01"].marks
    assert [mark.points for mark in marks.values()] == [3]


def test_the_last_try_counts_and_tries_are_counted(tmp_path):
    mark = one(tmp_path, lambda issued: [simulated.entry(issued["T04.1"], text) for text in ("1 mm", "2", simulated.answer(issued["T04.1"]))]).marks["T04.1"]
    assert (mark.points, mark.tries, [row[4] for row in mark.log]) == (2, 3, [mark.log[0][4], "no unit", "right"])


def test_tries_beyond_the_limit_are_listed_and_do_not_count(tmp_path):
    mark = one(tmp_path, lambda issued: [simulated.entry(issued["T04.1"], text) for text in ("1 mm", simulated.answer(issued["T04.1"]))], "tries = 1").marks[
        "T04.1"
    ]
    assert (mark.points, mark.tries, mark.said) == (0, 2, "1 mm") and "beyond" in mark.log[1][5]


def test_an_answer_after_the_solution_was_shown_earns_nothing_and_says_so(tmp_path):
    def entries(issued):
        return [simulated.entry(issued["T04.1"], "", kind="solution shown"), simulated.entry(issued["T04.1"], simulated.answer(issued["T04.1"]))]

    mark = one(tmp_path, entries).marks["T04.1"]
    assert (mark.points, mark.found) == (0, AFTER_SHOWN)


# --- odd files: said to a person, never held against anyone ---------------------------------------------------------------------------


def test_a_doctored_file_is_worked_out_again_and_flagged(tmp_path):
    group, sets = school(tmp_path, learners=3)
    raw = simulated.whole(group, sets, "A01", slips={"T04.1": 0, "T05.1": 0})
    give(tmp_path, "A01.json", raw.replace(b'"kind": "slip"', b'"kind": "right"'))
    held = json.loads(simulated.whole(group, sets, "A02", slips={}))
    held["answers"][0]["numbers"] = {"Q": "1 L/h", "D": "1 m", "C": "1.7 m^0.5/s"}
    give(tmp_path, "A02.json", json.dumps(held).encode())
    marks = marked(tmp_path, group, sets)
    assert marks.of["A01"].marks["T04.1"].points == 0
    assert any("receipt does not fit" in note for note in marks.of["A01"].notes) and any("says right" in note for note in marks.of["A01"].notes)
    assert any("other numbers" in note for note in marks.of["A02"].notes) and marks.of["A02"].marks["T04.1"].points == 2


def test_a_receipt_that_was_made_again_does_not_help(tmp_path):
    """Whoever edits the kind and makes a new receipt has a receipt that fits, and the same marks."""
    group, sets = school(tmp_path, learners=3)
    entries = [simulated.entry(sets.of["A01"]["T04.1"], simulated.answer(sets.of["A01"]["T04.1"], 0))]
    entries[0]["kind"] = "right"
    give(tmp_path, "A01.json", given(group, sets, "A01", entries))
    marked_one = marked(tmp_path, group, sets).of["A01"]
    assert marked_one.points == 0 and any("says right" in note for note in marked_one.notes)


def test_a_copied_file_and_another_learners_numbers_are_flagged_and_not_accused(tmp_path):
    group, sets = school(tmp_path)
    give(tmp_path, "A01.json", simulated.whole(group, sets, "A01", slips={}))
    held = json.loads(simulated.whole(group, sets, "A01", slips={}))
    held["hand_in"]["learner"] = "A02"
    give(tmp_path, "A02.json", json.dumps(held).encode())
    marks = marked(tmp_path, group, sets)
    assert marks.of["A02"].points == 0 and marks.of["A01"].points == 8
    notes = " ".join(marks.of["A02"].notes)
    assert "same answers, made at the same moments, were handed in by A01" in notes and "fit those of A01: have a look" in notes and "mark of the set" in notes
    assert not any(word in notes.lower() for word in ("cheat", "copied", "fraud", "plagiar"))
    assert any("handed in by A02" in note for note in marks.of["A01"].notes), "both are named: nobody knows who had it first"


def test_several_hand_ins_of_one_learner_are_all_listed_and_the_last_complete_one_counts(tmp_path):
    group, sets = school(tmp_path, learners=3)
    give(tmp_path, "b/old.json", simulated.whole(group, sets, "A01", seed=1, slips={"T04.1": 0}))
    give(tmp_path, "a/new.json", simulated.whole(group, sets, "A01", seed=200, slips={}))
    part = [simulated.entry(sets.of["A01"]["T04.1"], "1 mm", at=3000)]
    give(tmp_path, "c/part.json", given(group, sets, "A01", part))
    found = marked(tmp_path, group, sets).of["A01"]
    assert found.source == "a/new.json" and found.points == 8
    assert any("handed in 3 times" in note and "b/old.json" in note and "c/part.json" in note for note in found.notes)


# --- every way in -------------------------------------------------------------------------------------------------------------------


def test_notebooks_paper_and_archives_in_any_mix_and_naming(tmp_path):
    group, sets = school(tmp_path, learners=6)
    right = {code: {name: simulated.answer(issued) for name, issued in sets.of[code].items()} for code in sets.of}
    lines = "\n".join(f"answer {name}: {text}" for name, text in right["A01"].items())
    cells = [
        {"cell_type": "markdown", "source": ["text\n", f"```\nlearner: A01\n{lines}\n```"]},
        {"cell_type": "code", "source": "answer T04.1:", "outputs": [{"text": "x" * 1000}]},
    ]
    give(tmp_path, "Untitled7 (final) (2).ipynb", json.dumps({"cells": cells}).encode())
    table = "code;question;said\n" + "".join(f"{code};{name};{text}\n" for code in ("A02", "A03") for name, text in right[code].items())
    give(tmp_path, "from paper.csv", table.encode())
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w") as opened:
        opened.writestr("x/y/whatever.json", simulated.whole(group, sets, "A04", slips={}))
        opened.writestr("A05_assignsubmission/answers.txt", simulated.whole(group, sets, "A05", slips={}))
    give(tmp_path, "all of Tuesday", made.getvalue())
    marks = marked(tmp_path, group, sets)
    assert {code: one.points for code, one in marks.of.items()} == {"A01": 8, "A02": 8, "A03": 8, "A04": 8, "A05": 8, "A06": 0} and marks.unread == []
    whole = tmp_path / "all.zip"
    with zipfile.ZipFile(whole, "w") as opened:
        for path in (tmp_path / "in").rglob("*.json"):
            opened.write(path, path.name)
        opened.writestr("one.json", simulated.whole(group, sets, "A06", slips={}))
    assert marking.mark(group, sets, intake.take_in(whole)).of["A06"].points == 8


def test_a_duplicate_answer_line_is_flagged_and_the_last_filled_in_counts(tmp_path):
    group, sets = school(tmp_path, learners=2)
    text = simulated.answer(sets.of["A01"]["T04.1"])
    cells = [{"source": "learner: a01\nanswer T04.1: 1 mm"}, {"source": f"# answer T04.1: {text}"}, {"source": "answer T04.1:   "}]
    give(tmp_path, "n.ipynb", json.dumps({"cells": cells}).encode())
    found = marked(tmp_path, group, sets).of["A01"]
    assert found.marks["T04.1"].points == 2 and any("more than one answer line" in note for note in found.notes)


def test_a_workbook_as_it_was_handed_out_is_marked_when_its_answer_lines_are_filled_in(tmp_path):
    from brimwork.classroom import learner_files
    from brimwork.notebook.opening import shipped

    group, sets = school(tmp_path, learners=2)
    mark = sets.mark(group.title, "A01")
    book = json.loads(learner_files.workbook(group, "A01", sets.of["A01"], mark, shipped()))
    question = sets.of["A01"]["flow over a round rim"].posed
    for cell in book["cells"]:
        for code, issued in sets.of["A01"].items():
            text = simulated.answer(issued) if code != question.code else question.typed(question.answer * 1.4)
            cell["source"] = (
                cell["source"]
                .replace(f"\nanswer {code}: ", f"\nanswer {code}: {text}")
                .replace(f"\nway {code}: ", f"\nway {code}: {question.middle.number * 1000:.4g} mm")
            )
    give(tmp_path, "my workbook.ipynb", json.dumps(book).encode())
    found = marked(tmp_path, group, sets).of["A01"]
    assert found.points == 2 + 2 + 2 and not found.notes, "and half of four for the right value on the way"


# --- what is written ----------------------------------------------------------------------------------------------------------------


def filled(tmp_path):
    group, sets = school(tmp_path)
    for number, learner in enumerate(group.learners[:-1]):
        give(tmp_path, f"{learner.code}.json", simulated.whole(group, sets, learner.code, seed=number))
    give(tmp_path, "broken.json", b"{")
    return group, sets


def contents(folder):
    return {path.relative_to(folder): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_marking_twice_gives_the_same_bytes(tmp_path, capsys):
    filled(tmp_path)
    before = contents(tmp_path / "in")
    line = ["mark", str(tmp_path / "in"), "--of", str(tmp_path / "week4.toml")]
    assert main([*line, "--to", str(tmp_path / "one")]) == 1 and main([*line, "--to", str(tmp_path / "two")]) == 1
    assert main([*line, "--to", str(tmp_path / "one")]) == 1
    assert contents(tmp_path / "one") == contents(tmp_path / "two") and contents(tmp_path / "in") == before
    out, err = capsys.readouterr()
    assert "29 of 30 learners marked" in out and "1 file could not be read" in err


def test_the_marks_table_is_ours_and_its_columns_can_be_chosen(tmp_path):
    filled(tmp_path)
    line = ["mark", str(tmp_path / "in"), "--of", str(tmp_path / "week4.toml")]
    main(line)
    assert list(rows(tmp_path / "in-marks" / "marks.csv")[0]) == ["code", "question", "said", "tries", "points", "of", "found"]
    main([*line, "--columns", "code, points", "--to", str(tmp_path / "own")])
    assert list(rows(tmp_path / "own" / "marks.csv")[0]) == ["code", "points"]
    assert main([*line, "--columns", "surname"]) == 2
    total = {row["code"]: float(row["points"]) for row in rows(tmp_path / "in-marks" / "totals.csv")}
    parts = {}
    for row in rows(tmp_path / "in-marks" / "marks.csv"):
        parts[row["code"]] = parts.get(row["code"], 0) + float(row["points"])
    assert total == pytest.approx(parts)


def test_a_file_changed_by_hand_is_not_replaced(tmp_path, capsys):
    filled(tmp_path)
    line = ["mark", str(tmp_path / "in"), "--of", str(tmp_path / "week4.toml")]
    main(line)
    path = tmp_path / "in-marks" / "marks.csv"
    path.write_bytes(path.read_bytes() + b"my remark\r\n")
    assert main(line) == 2 and path.read_bytes().endswith(b"my remark\r\n")
    assert "changed by hand" in capsys.readouterr().err
    assert main([*line, "--to", str(tmp_path / "in" / "inside")]) == 2


def test_the_log_explains_every_mark(tmp_path):
    group, sets = filled(tmp_path)
    main(["mark", str(tmp_path / "in"), "--of", str(tmp_path / "week4.toml")])
    log = rows(tmp_path / "in-marks" / "log.csv")
    assert {(row["code"], row["question"]) for row in log} == {(one.code, asked.code) for one in group.learners for asked in group.questions}
    for row in log:
        if row["file"]:
            assert len(row["sha256"]) == 64 and row["right"] and row["why"] and row["numbers"] and row["within"]


def test_a_page_names_the_slip_and_works_the_own_numbers(tmp_path):
    group, sets = school(tmp_path, learners=3)
    give(tmp_path, "A01.json", simulated.whole(group, sets, "A01", slips={"T04.1": 0}))
    writing.write_feedback(marked(tmp_path, group, sets), tmp_path / "out")
    page = (tmp_path / "out" / "pages" / "A01.html").read_text(encoding="utf-8")
    question = sets.of["A01"]["T04.1"].posed
    assert "You used the diameter as the edge" in page and question.typed(question.answer, 4) in page and "6 of 8 points" in page
    assert "Ann" not in page, "a code in place of the name"
    assert "Nothing from you was there" in (tmp_path / "out" / "pages" / "A02.html").read_text(encoding="utf-8")


def test_a_class_without_its_secret_cannot_be_marked(tmp_path):
    group, _ = filled(tmp_path)
    (tmp_path / numbers.SECRET).unlink()
    assert main(["mark", str(tmp_path / "in"), "--of", str(tmp_path / "week4.toml")]) == 2
    with pytest.raises(InputError, match="put back the one"):
        numbers.secret_of(tmp_path)


def test_every_kind_of_answer_has_words_for_tables():
    from brimwork.exercise.diagnosis import KINDS_OF_ANSWER

    for kind in {*KINDS_OF_ANSWER} - {"slip", "told", "right"}:
        assert slips.said_of_slip(kind) != kind, kind
