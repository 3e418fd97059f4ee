"""The instructor's workbook by its forms: from questions to a class set and marked; and the course page with its sheets."""

import re
from html.parser import HTMLParser

import pytest
import simulated_class as simulated

from brimwork import system
from brimwork.classroom import classfile, course, numbers
from brimwork.exercise import bank
from brimwork.notebook import teaching


@pytest.fixture
def place(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(teaching, "CHOSEN", teaching._Chosen())
    teaching.form_to_mark.cache_clear()
    return tmp_path


def words(widget):
    return " ".join(re.sub(r"<[^>]+>", " ", widget.value).split())


def chosen(*codes):
    form = teaching.Choosing()
    for code in codes:
        form.topic.value = code.partition(".")[0]
        form.question.value = code
        form.take()
    return form


def set_to(learners, **values):
    form = teaching.Setting()
    form.title.value, form.learners.value = values.pop("title", "Overflow, week 4"), learners
    for name, value in values.items():
        getattr(form, name).value = value
    form.make()
    return form


def test_questions_are_chosen_previewed_and_tried(place):
    form = chosen("T04.1", "T05.1", "T04.1")
    assert teaching.CHOSEN.codes == ["T04.1", "T05.1"] and "Chosen: T04.1, T05.1" in words(form.said)
    assert "go from flow to head" not in words(form.outcomes) or form.topic.value == "T04"
    listed = [code for _, code in form.question.options]
    assert listed == sorted(listed, key=lambda code: int(code.partition(".")[2])) and len(listed) > 3
    form.question.value = listed[1]
    assert " ".join(bank.pose(listed[1], 1).text.split())[-40:] in words(form.whole)
    form.question.value = "T04.1"
    form.preview()
    assert len(form.shown.children) == 3 and "Key:" in words(form.shown.children[0])
    form.trial()
    form.drop()
    assert teaching.CHOSEN.codes == ["T04.1"]
    assert not any(code == "T04.9" for _, code in form.question.options), "own words are not for a machine"


def test_a_class_is_set_and_marked_by_forms(place):
    chosen("T04.1", "T05.1")
    form = set_to("A01, Ada Rowan\nA02; Ben Sorrel\nA03 Cleo\n", feedback="after")
    assert "3 learners" in words(form.said), words(form.said)
    folder = place / "classes" / "overflow-week-4"
    group = classfile.load_class(folder / "class.toml")
    assert [one.name for one in group.learners] == ["Ada Rowan", "Ben Sorrel", "Cleo"] and group.feedback == "after"
    sets = numbers.read_record(group, numbers.secret_of(folder))
    for code in ("A01", "A02"):
        (folder / "handed-in" / f"{code}.json").write_bytes(simulated.whole(group, sets, code, slips={}))
    (folder / "handed-in" / "bad.json").write_text("{")
    teaching.form_to_mark().mark()
    assert "2 of 3 learners marked" in words(teaching.form_to_mark().said)
    assert "Could not be read: 1" in words(teaching.form_to_mark().shown) and "under 5" in words(teaching.form_to_mark().shown)
    assert (folder / "handed-in-marks" / "pages" / "A01.html").exists()


def test_a_class_that_was_set_is_not_written_over(place):
    chosen("T04.1")
    assert "1 learner" in words(set_to("A01, Ada").said)
    assert "there already and says something else" in words(set_to("A01, Bea").said)
    assert "1 learner" in words(set_to("A01, Ada").said), "the same again is no harm"


@pytest.mark.parametrize(
    ("learners", "title", "told"),
    [("", "x", "no learners"), ("A01, Ada", "", "no title"), ("A01, Ada\nA01, Bea", "y", "is on line 2 too"), ("<b>, Ada", "z", "no learner code")],
)
def test_what_cannot_be_set_is_told(place, learners, title, told):
    chosen("T04.1")
    form = set_to(learners, title=title)
    assert told in words(form.said) and "<b>" not in form.said.value
    assert title or not (place / "classes").exists(), "no folder without a name"


def test_what_was_refused_is_set_once_it_is_put_right_under_the_same_title(place):
    chosen("T04.1", "T01.12")
    form = set_to("A01, Ada\nA01, Bea")
    assert "is on line 2 too" in words(form.said)
    form.learners.value = "A01, Ada\nA02, Bea"
    form.make()
    assert "T01.12 has no numbers to change" in words(form.said) and form.alike.description in words(form.said), words(form.said)
    form.alike.value, form.due.value = True, "Friday"
    form.make()
    assert "2 learners" in words(form.said), words(form.said)
    group = classfile.load_class(place / "classes" / "overflow-week-4" / "class.toml")
    assert group.due == "Friday" and [(asked.code, asked.alike) for asked in group.questions] == [("T04.1", False), ("T01.12", True)]
    form.make()
    assert "2 learners" in words(form.said), "the same again is no harm"
    form.due.value = "Monday"
    form.make()
    assert "there already and says something else" in words(form.said), "it was handed out"


def test_a_file_of_a_class_that_somebody_has_changed_is_not_written_over(place):
    chosen("T04.1")
    form = set_to("A01, Ada\nA01, Bea")
    roster = place / "classes" / "overflow-week-4" / "roster.csv"
    roster.write_text("code,name\nB01,Cleo\n")
    before, form.due.value = (roster.parent / "class.toml").read_bytes(), "Friday"
    form.make()
    assert "roster.csv is there already" in words(form.said) and (roster.parent / "class.toml").read_bytes() == before, "both are written, or none"
    assert roster.read_text() == "code,name\nB01,Cleo\n"


def test_a_form_has_the_paper_of_the_units_that_were_chosen(place):
    assert teaching.Setting().region.value == "UK"
    system.use(system.FEET)
    assert teaching.Setting().region.value == "US"


def test_nothing_chosen_and_no_folder_are_told(place):
    assert "no question is chosen" in words(set_to("A01, Ada").said)
    teaching.form_to_mark().folder.value = "nowhere/handed-in"
    teaching.form_to_mark().mark()
    assert "nowhere/handed-in is not there: type the folder or zip" in words(teaching.form_to_mark().said)
    teaching.form_to_mark().folder.value = "a" * 300
    teaching.form_to_mark().mark()
    assert "is not there: type the folder or zip" in words(teaching.form_to_mark().said)
    teaching.form_to_mark().folder.value = "nowhere/handed-in"
    (place / "nowhere" / "handed-in").mkdir(parents=True)
    teaching.form_to_mark().mark()
    assert "there is no class file" in words(teaching.form_to_mark().said)


# --- course -------------------------------------------------------------------------------------------------------------------------


def test_twelve_weeks_take_in_every_topic_of_the_bank_and_their_links_lead_somewhere(tmp_path):
    from pypdf import PdfReader

    names = course.write_course_pages(tmp_path / "course")
    assert sum(2 if " and " in week.number else 1 for week in course.WEEKS) == 12
    assert {code for week in course.WEEKS for code in week.topics} == {code.partition(".")[0] for code in bank.questions()} == {*course.TOPICS}

    class Links(HTMLParser):
        found, places = [], []

        def handle_starttag(self, tag, attributes):
            named = dict(attributes)
            assert tag != "script" and not named.get("src")
            self.found += [named["href"]] if "href" in named else []
            self.places += [named["id"]] if "id" in named else []

    links, slides = Links(), Links()
    links.feed((tmp_path / "course" / "course.html").read_text(encoding="utf-8"))
    slides.feed((tmp_path / "course" / "slides.html").read_text(encoding="utf-8"))
    for link in links.found:
        file, _, place = link.partition("#")
        assert file in names and (not place or place in slides.places), link
    for code in ("T03", "T04", "T12"):
        sheet, key = (
            " ".join(" ".join(page.extract_text() for page in PdfReader(tmp_path / "course" / f"{code}-{kind}.pdf").pages).split()) for kind in ("sheet", "key")
        )
        for issued in course.questions_of_course(code):
            assert issued.asked.code in sheet and issued.asked.code in key
            question = issued.posed
            if hasattr(question, "answer") and len(question.typed(question.answer, 4)) > 5:
                assert question.typed(question.answer, 4) in key and question.typed(question.answer, 4) not in sheet


@pytest.mark.parametrize("code", course.TOPICS)
def test_a_sheet_speaks_of_no_picture_that_is_not_on_it(code):
    posed = [issued.posed for issued in course.questions_of_course(code)]
    assert posed and not [one.text for one in posed if "the picture" in one.text and not getattr(one, "sheet", None)]


def test_the_workbooks_of_the_course_are_there():
    from brimwork.notebook.opening import shipped

    assert {name for topic in course.TOPICS.values() for name in topic.workbooks} <= {path.stem for path in shipped().glob("*.ipynb")}
