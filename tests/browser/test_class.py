"""The instructor's workbook and a learner's from start to finish in real JupyterLab: choose, set, answer as a learner, hand in, mark, look at the slips."""

import json
import os
import re
import shutil

import lab
from test_topic_workbooks import Book

from brimwork.classroom import classfile, numbers


def shot(page, name):
    if folder := os.environ.get("BRIMWORK_LOOK"):
        page.screenshot(path=f"{folder}/{name}.png")


def test_an_exercise_is_set_worked_handed_in_and_marked(page, address, served):
    folder = served[0]
    teach = Book(page, address, "teach")
    choose = teach.part("choose_questions()")
    for code in ("T04.1", "T04.2"):
        choose.cell.get_by_label("Topic").select_option(label="T04 Overflow")
        choose.cell.get_by_label("Question").select_option(index=int(code[-1]) - 1)
        choose.press("Take this question")
        choose.says(f"{code}.")
    choose.press("Preview variants")
    choose.cell.get_by_text("Key:").first.wait_for()
    choose.press("Try it as a learner")
    choose.cell.get_by_label("Your answer, with its unit").wait_for()
    form = teach.part("set_exercise()")
    form.press("Write everything to hand out")
    form.says("has no title", "alert")
    form.type("Title, such as Overflow, week 4", "Overflow, week 4")
    form.cell.get_by_label("Learners, a line each: code, name").fill("A01, Ada Rowan\nA02, Ben Sorrel")
    form.press("Write everything to hand out")
    form.says("2 learners")
    shot(page, "teach-set")

    place = folder / "classes" / "overflow-week-4"
    group = classfile.load_class(place / "class.toml")
    sets = numbers.read_record(group, numbers.secret_of(place))
    shutil.copy(place / "class-for-learners" / "A01" / "class-A01.ipynb", folder / "class-A01.ipynb")
    lab.open_workbook(page, address, "class-A01.ipynb")
    own = Book.__new__(Book)
    own.page, own.name = page, "class-A01"
    part = own.part("class_exercise(")
    first, second = (issued.posed for issued in sets.of["A01"].values())
    part.type("Your answer 1, with its unit", first.typed(first.slips[0].number))
    part.press("Keep answer 1")
    part.says("You used the diameter as the edge")
    part.type("Your answer 1, with its unit", first.typed(first.answer))
    part.press("Keep answer 1")
    part.says("Right:")
    part.type("Your answer 2, with its unit", second.typed(second.slips[0].number))
    part.press("Keep answer 2")
    part.press("Make the file to hand in")
    part.says("Hand in the file hand-in-A01.json")
    receipt = re.search(r"Receipt: ([a-z]+ [a-z]+ \d{4})", part.cell.inner_text())[1]
    shot(page, "learner")
    assert json.loads((folder / "hand-in-A01.json").read_text())["hand_in"]["receipt"] == receipt

    shutil.copy(folder / "hand-in-A01.json", place / "handed-in" / "whatever (1).txt")
    lab.open_workbook(page, address, "teach.ipynb")
    marks = teach.part("mark_hand_ins()")
    marks.type("Folder or zip of what was handed in", "classes/overflow-week-4/handed-in")
    marks.press("Mark")
    marks.says("1 of 2 learners marked")
    shot(page, "teach-marked")
    totals = (place / "handed-in-marks" / "totals.csv").read_text(encoding="utf-8-sig").splitlines()
    assert totals[1] == "A01,2,4,yes" and totals[2].startswith("A02,0,4")
    plan = teach.part("write_course()")
    plan.press("Write course, sheets, keys and slides")
    plan.cell.get_by_text("Open course/course.html").wait_for(timeout=120_000)
