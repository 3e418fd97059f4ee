"""The sections of a topic workbook, without a browser: right answers, slips, unit slips, nothing typed, hostile text; and what is kept of them."""

import json
import re
from pathlib import Path

import pytest

from brimwork import topics
from brimwork.design.typed import file
from brimwork.exercise import answers
from brimwork.exercise.blanks import answered, rounded_up
from brimwork.exercise.pieces import worked
from brimwork.notebook import carrying, fading, lesson, own_numbers
from brimwork.notebook.answer_sheet import answers_printed
from brimwork.notebook.practising import exercise
from brimwork.units import InputError

HOSTILE = ("<img src=x onerror=alert(1)>", "9**9**9 m", "\u202e50 L/min", "1" * 400, "=cmd()", "١٢ mm", "nan L/min", "'; DROP")


def words(html):
    return re.sub("<[^>]*>", "", html.value).replace("\N{NO-BREAK SPACE}", " ")


@pytest.fixture
def book(tmp_path, monkeypatch):
    """A folder with the invented design, as a workbook has it."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "designs").mkdir()
    start = file.load_design(Path(__file__).parents[1] / "workbooks" / "designs" / "library-bowl.toml")
    file.save_design(start, tmp_path / "designs" / "library-bowl.toml")
    return tmp_path


def kept(book, name="answers.json"):
    return json.loads((book / name).read_text())["answers"]


def kinds(book):
    return [entry["kind"] for entry in kept(book)]


# --- recall, predict, look back -----------------------------------------------------------------------------------------------------


def test_questions_of_one_page_are_told_apart_by_number():
    together = lesson.Together(("T02.2", "T03.4", "T01.6"), 1, None)
    boxes = [one.box.description for one in together.exercises[:2]]
    assert boxes == ["Your answer 1, with its unit", "Your answer 2, with its unit"]
    assert [one.hint.description for one in together.exercises] == ["Hint 1", "Hint 2", "Hint 3"]
    assert together.exercises[2].radio.description == "Choose one for question 3"
    assert "40 L/min" in together.widget._repr_mimebundle_()["text/plain"], "readable without widgets"


def test_a_prediction_needs_a_choice_and_a_reason_and_tells_nothing_yet(book):
    predict = lesson.Prediction("T04.8", 1, "answers.json")
    predict.keep()
    assert "Choose one first" in words(predict.said)
    predict.radio.value = 0
    predict.why.value = "  "
    predict.keep()
    assert "Say why first" in words(predict.said) and not (book / "answers.json").exists()
    predict.why.value = "<b>because</b>"
    predict.keep()
    assert "You predict: About 42" in words(predict.said) and "root" not in words(predict.said)
    assert kept(book)[0]["middle"] == "<b>because</b>" and kinds(book) == ["slip"]


def test_looking_back_shows_the_last_prediction_and_what_is_so(book):
    back = lesson.LookBack("T04.8", "answers.json")
    back.compare()
    assert "No prediction of yours is kept" in words(back.said)
    predict = lesson.Prediction("T04.8", 1, "answers.json")
    for place, why in ((0, "<i>first</i>"), (predict.question.right, "deeper is faster")):
        predict.radio.value, predict.why.value = place, why
        predict.keep()
        back.compare()
        assert "<i>" not in back.said.value
    assert "✓" in words(back.said) and "deeper is faster" in words(back.said) and "2.83" in words(back.said)


def test_looking_back_at_a_file_that_somebody_broke_is_told(book):
    (book / "answers.json").write_text("damaged")
    back = lesson.LookBack("T04.8", "answers.json")
    back.compare()
    assert "role='alert'" in back.said.value and "damaged" in words(back.said)


@pytest.mark.parametrize("make", [
    lambda: lesson.Prediction("T04.1", 1, None), lambda: lesson.Mending("T04.1", None), lambda: lesson.Together(("T99.1",), 1, None),
    lambda: own_numbers.OwnNumbers("flow over a round rim", "v", 1, None), lambda: carrying.Carrying(("pipe.friction_law",), (), "a.toml", "b.toml", None),
])  # fmt: skip
def test_a_code_of_another_kind_is_told(make, book):
    with pytest.raises(InputError):
        make()


# --- explain, find the slip ---------------------------------------------------------------------------------------------------------


def test_a_sentence_is_kept_and_set_beside_a_model(book):
    own = exercise("T04.9", 1, "answers.json")
    own.check()
    assert "Nothing is written yet" in words(own.feedback)
    own.box.value = "word " * 60
    own.check()
    assert "make it shorter" in words(own.feedback) and not (book / "answers.json").exists()
    own.box.value = "Deeper\nand <script>faster</script> \u202e water."
    own.check()
    assert "A model sentence: Twice the head" in words(own.feedback) and "<script>" not in own.feedback.value and "\u202e" not in own.feedback.value
    assert kept(book)[0]["answer"] == "Deeper and <script>faster</script> \u202e water." and kinds(book) == ["told"]
    own.points[0].value = True
    assert "Not yet in yours: deeper water runs faster" in words(own.outcome)
    own.points[1].value = own.points[2].value = True
    assert "All its points" in words(own.outcome)


def test_a_slip_is_found_then_mended_or_the_part_is_skipped(book):
    part = lesson.Mending("T04.10", "answers.json")
    found = part.exercise
    found.radio.value = 1
    found.check()
    assert "shared out along the lip" in words(found.feedback) and found.mended not in found.place.children
    found.radio.value = 3
    found.check()
    assert "Now correct it" in words(found.place.children[1]) and found.mended in found.place.children
    for typed, told in (
        ("0.0202 mm", "still the number with the slip"),
        ("8.19", "unit is missing"),
        ("8.19 cm", "you typed cm"),
        ("3 mm", "do not know which slip"),
        ("8.19 mm", "Right"),
    ):
        found.mended.value = typed
        assert told in words(found.mended_said)
    part.turn()
    assert found.widget not in part.widget.children and part.skip.description == "Open this part again"
    part.turn()
    assert found.widget in part.widget.children
    assert kinds(book) == ["slip", "right", "slip", "no unit", "unit", "none", "right", "skipped"]


# --- worked and faded examples ------------------------------------------------------------------------------------------------------


def test_a_check_of_the_choice_leaves_what_was_mended():
    found = lesson.Mending("T04.10", None).exercise
    found.radio.value = 3
    found.check()
    found.mended.value = "8.19 mm"
    found.check()
    assert "Right" in words(found.mended_said)


def test_a_ledger_shows_each_line_with_its_units():
    page = fading.ledger("flow over a level lip", b="4 m", H="0.2 m", C_d="0.62")
    assert "m × m^0.5/s × m^1.5 × (L/min)/(m3/s) = L/min" in page.plain and "39290 L/min" in page.plain and page.markdown.count("\n| ") == 4
    assert "Ex 5.9" in page.markdown, "what it was checked against"
    small = fading.ledger("flow over a level lip", b="300 mm", H="9 mm", C_d="0.62")
    assert "below the tested range" in small.plain
    assert "Please change something" in fading.ledger("flow over a level lip", b="4", H="0.2 m", C_d="0.62").plain


def test_examples_fade_from_one_blank_to_three_and_lines_still_open_are_not_given_away():
    fade = fading.Fading("total dynamic head", 31, None)
    assert len(fade.examples[0].blanks) == 1
    fade.go_on()
    fade.go_on()
    assert [len(example.blanks) for example in fade.examples] == [1, 2, 3] and fade.next.disabled
    example = fade.examples[2]
    last = example.lines[3].value
    assert last.count("boxed") == 3 and "0.09" not in last
    for blank in example.blanks.values():
        key = example.worked.pieces[blank.place].key
        blank.box.value = f"{example.worked.found[key]:.4g} m"
    assert "boxed" not in "".join(line.value for line in example.lines) and "worked to its end" in words(example.help)


def test_a_blank_is_told_its_slip_no_diagnosis_or_what_it_carries_on(book):
    example = fading.Fading("flow over a level lip", 2, "answers.json")
    example.go_on()
    two = example.examples[1]
    power, flow = two.blanks[1], two.blanks[2]
    power.box.value = "0.0065 m^1.5"
    assert "left out the power" in words(power.said)
    wrong = two.worked.found["Q"] / two.worked.found["part_2"] * 0.0065
    flow.box.value = f"{wrong * 60e3:.4g} L/min"
    assert "your value in step 2" in words(flow.said)
    power.box.value = "0.00777 m^1.5"
    assert "do not know which slip" in words(power.said)
    for text in HOSTILE:
        power.box.value = text
        assert words(power.said) and "<img" not in power.said.value and "\u202e" not in power.said.value
    power.box.value = ""
    two.next_hint()
    assert "Step 2, hint 1 of 3" in words(two.help) and "times its square root" in words(two.help)
    assert {"way", "carried", "none", "unread"} <= {*kinds(book)}


# --- your numbers -------------------------------------------------------------------------------------------------------------------


def numbers(seed=4, record=None):
    """By hand: a rim 930 mm across is pi x 0.93 = 2.9217 m long; 1.79 x 2.9217 x 0.008^1.5 = 3.742 L/s = 224.5 L/min."""
    return own_numbers.OwnNumbers("flow over a round rim", "b", seed, record)


def test_an_estimate_comes_first():
    own = numbers()
    assert own.box not in own.place.children
    own.estimate.value = "50"
    assert "has no unit" in words(own.guess_said) and own.box not in own.place.children
    own.estimate.value = "50 kg"
    assert own.box not in own.place.children
    own.estimate.value = "50 L/min"
    assert own.box in own.place.children and "22" not in words(own.guess_said)


def test_estimate_value_on_the_way_and_answer_are_told_together(book):
    own = numbers(record="answers.json")
    own.estimate.value = "2000 L/min"
    own.box.value = "310 L/min"
    assert "Type the value on the way too" in words(own.feedback) and "far from your own estimate" in words(own.feedback)
    own.way_box.value = "930 mm"
    assert "left out π" in words(own.way_said)
    own.box.value = f"{224.53 / 3.14159:.2f} L/min"
    assert "follows rightly from your value on the way" in words(own.feedback) and "The question has 8.00 mm" in words(own.outcome)
    own.way_box.value = "2.92 m"
    own.box.value = "310 L/min"
    assert "value on the way is right, so look at what comes after" in words(own.feedback) and "do not know which slip" in words(own.feedback)
    own.box.value = "225 L/h"
    assert "you typed L/h" in words(own.feedback)
    own.box.value = "225 L/min"
    assert "Right: 225 L/min" in words(own.feedback) and "too far off to catch a slip" in words(own.feedback)
    assert kinds(book).count("estimate") == 1 and "right" in kinds(book)
    own.again.click()
    assert own.box.value == "" and own.box not in own.place.children and words(own.outcome) == ""


def test_a_plain_number_is_estimated_without_a_unit():
    own = own_numbers.OwnNumbers("tipping factor", "M_over", 1, None)
    assert own.estimate.description == "Rough estimate first"
    own.estimate.value = "3"
    own.box.value = "3.51"  # by hand: 4650 N x 0.4 m/2 = 930 N m, over 390 N x 0.68 m = 265.2 N m: 3.507
    assert "Right: 3.51" in words(own.feedback) and "near enough" in words(own.feedback)


def test_a_line_stays_in_the_units_of_the_job():
    """250 + 350 + 145 mm, by hand."""
    shown = fading.Fading("area of the liner", 2, None).examples[0].lines[0].value
    assert "= 745" in shown and "mathrm{m}" not in shown


def test_things_that_are_bought_whole_are_rounded_up_after_the_sum():
    """2970 lb and a quarter more, in bags of 35 lb, are 106.07 bags: 107 are bought, and 107 is not the answer to the line."""
    made = worked(topics.find("bags before rounding up"), {"m_net": 2970.0, "s_waste": 0.25, "m_bag": 35.0})
    place = len(made.pieces) - 1
    assert [answered(made, place, 1, text, {}).right for text in ("106.07", "106.1", "107", "106.5")] == [True, True, False, False]
    assert "106.07" in answered(made, place, 1, "106.07", {}).text and rounded_up(made) == "Rounded up: 107 bags."


def test_hostile_text_in_any_box_is_answered():
    own = numbers()
    own.estimate.value = "50 L/min"
    for text in HOSTILE:
        own.estimate.value = own.way_box.value = own.box.value = text
        for said in (own.guess_said, own.way_said, own.feedback, own.outcome):
            assert "<img" not in said.value and "\u202e" not in said.value


def test_help_goes_up_its_ladder_to_the_whole_solution():
    own = numbers()
    for _ in range(4):
        own.hint.click()
    assert "Hint 4 of 4" in words(own.help) and "225 L/min" in words(own.help)


# --- on site ------------------------------------------------------------------------------------------------------------------------


def site(keys=("vessel.rim_diameter", "vessel.rim_out_of_level", "pipe.fittings", "measured.flow")):
    return carrying.Carrying(keys, ("flow_wanted", "rim_head", "duty_flow"), carrying.MINE, carrying.START, "answers.json")


def test_values_are_carried_into_a_copy_of_the_design_and_the_change_is_told(book):
    own, start = site(), (book / carrying.START).read_bytes()
    own.carry()
    assert "Nothing is changed" in words(own.said) and not (book / carrying.MINE).exists()
    own.boxes["vessel.rim_diameter"].value, own.boxes["vessel.rim_out_of_level"].value = "700 mm", "1 mm"
    own.boxes["measured.flow"].value = "31 L/min"
    own.carry()
    assert "26.4 L/min" in words(own.said), "by hand: 0.2 L/s for each of pi x 0.7 m"
    assert "Rim out of level against the head: ! near the limit, now ✓ within the limit" in words(own.said) and "does not apply" not in words(own.said)
    mine = file.load_design(book / carrying.MINE)
    assert mine["vessel.rim_diameter"] == pytest.approx(0.7) and mine.values["measured.flow"].basis == "measured" and mine.title == "My design"
    assert (book / carrying.START).read_bytes() == start, "the invented design stays as it is"
    assert kept(book)[-1]["answer"].startswith("vessel.rim_diameter = 700 mm; vessel.rim_out_of_level = 1 mm")
    other = site(("pipe.fittings",))
    other.boxes["pipe.fittings"].value = "5"
    other.carry()
    assert file.load_design(book / carrying.MINE)["vessel.rim_diameter"] == pytest.approx(0.7), "what another workbook carried stays"
    other.boxes["pipe.fittings"].value = ""
    other.carry()
    assert "pipe.fittings" not in file.load_design(book / carrying.MINE).values and "needs" in words(other.said)


def test_a_wider_apron_is_told_as_a_longer_liner_and_more_stone(book):
    """By hand: 1236 mm inside, 440 mm deep, 100 mm to trim: 1.236 + 2 (0.44 + 0.6 + 0.1) = 3.516 m, and 0.1 m more of apron at both ends makes 3.716 m."""
    own = carrying.Carrying(("catch.apron",), ("liner_length", "stone_mass"), carrying.MINE, carrying.START, None)
    own.boxes["catch.apron"].value = "700 mm"
    own.carry()
    said = words(own.said)
    assert "length of the liner as cut" in said and "3.52 m" in said and "3.72 m" in said and "stone to order" in said


def test_a_check_that_fails_names_the_two_levels_that_are_meant(book):
    own = carrying.Carrying(("reservoir.static_level",), (), carrying.MINE, carrying.START, None)
    own.boxes["reservoir.static_level"].value = "340 mm"
    own.carry()
    assert re.search(r"Levels in order: .*running water below static water", words(own.said))


def test_a_value_that_was_changed_elsewhere_is_not_undone(book):
    """Another workbook, or an editor, writes the same design while the boxes stand open."""
    own, other = (carrying.Carrying(("vessel.rim_diameter", "vessel.height"), (), carrying.MINE, carrying.START, None) for _ in range(2))
    other.boxes["vessel.height"].value = "400 mm"
    other.carry()
    own.boxes["vessel.rim_diameter"].value = "700 mm"
    own.carry()
    design = file.load_design(carrying.MINE)
    assert (design["vessel.height"], design["vessel.rim_diameter"]) == pytest.approx((0.4, 0.7)) and own.boxes["vessel.height"].value == "400 mm"
    other.boxes["vessel.rim_diameter"].value = "650 mm"
    other.carry()
    assert "700 mm there, and 650 mm in your box" in words(other.said) and file.load_design(carrying.MINE)["vessel.rim_diameter"] == pytest.approx(0.7)
    other.carry()
    assert file.load_design(carrying.MINE)["vessel.rim_diameter"] == pytest.approx(0.65)


@pytest.mark.parametrize("text", ["3 kg", "700", "-5 mm", *HOSTILE[:5]])
def test_a_value_that_cannot_be_leaves_the_design_as_it_was(book, text):
    own = site()
    own.boxes["vessel.rim_diameter"].value = text
    own.carry()
    assert "Nothing is saved" in words(own.said) and "<img" not in own.said.value and not (book / carrying.MINE).exists()


# --- exit check ---------------------------------------------------------------------------------------------------------------------


def test_the_exit_check_keeps_how_sure_somebody_is_and_shows_the_receipt(book):
    last = lesson.Exit("Overflow", ("T04.1", "T04.3"), 1, "answers.json")
    last.finish()
    assert "Say first how sure" in words(last.said)
    last.sure.value = "sure"
    last.finish()
    assert "not all is right yet" in words(last.said)
    last.asked.exercises[0].box.value, last.asked.exercises[1].box.value = "2.43 mm", "3.95"  # by hand: 2.5^1.5 = 3.953
    last.finish()
    assert "Both are right, and you were sure" in words(last.said)
    assert f"Receipt {answers.receipt(answers.load_answers('answers.json'))}" in words(last.said)
    last.sure.value = "a guess"
    last.finish()
    assert "you may trust yourself more" in words(last.said)


def examined(codes=("T06.2", "T06.4")):
    return lesson.Exit("Water balance", codes, 1, "answers.json")


def right_answer(one):
    return one.question.typed(one.question.answer, 4) if hasattr(one.question, "answer") else ""


def finished(last, sure="sure"):
    """What the page says once Finish is pressed."""
    last.sure.value = sure
    last.finish()
    return words(last.said)


def sheet_of(book):
    from pypdf import PdfReader

    return " ".join(" ".join(page.extract_text() for page in PdfReader(book / "water-balance-answers.pdf").pages).split())


def offered(one):
    return [button.description for button in one.buttons.children]


def test_the_exit_check_offers_help_and_new_numbers_only_once_it_is_finished(book):
    last = examined()
    first = last.asked.exercises[0]
    assert [offered(one) for one in last.asked.exercises] == [[], []]
    first.box.value = "3 mm"
    assert offered(first) == []
    finished(last)
    assert offered(first) == ["Hint 1", "New numbers 1"]
    first.again.click()
    assert offered(first) == [] and first.box.value == "", "another check, without help again"
    assert examined().asked.exercises[0].box.value == "3 mm", "what was answered stands there another day"


def test_the_last_answer_counts_on_page_sheet_and_receipt(book):
    last = examined()
    for one in last.asked.exercises:
        one.box.value = right_answer(one)
        assert "Right" in words(one.feedback)
    last.asked.exercises[1].box.value = "16"
    said = finished(last)
    assert "You were sure, and not all is right yet." in said and "Both" not in said
    assert "3 entries" not in said and "4 entries, and 1 question right at the last try" in said
    last.print()
    assert said in words(last.said) and "Written beside this workbook: water-balance-answers.pdf" in words(last.said), "the verdict stays"
    sheet = sheet_of(book)
    assert "sure. You were sure, and not all is right yet." in sheet and "4 entries, and 1 question right at the last try" in sheet
    assert kept(book)[-1]["answer"].startswith("sure. You were sure, and not all is right yet.")
    receipt = answers.receipt(answers.load_answers("answers.json"))
    assert receipt in said and receipt in sheet


def test_an_answer_that_came_right_once_its_solution_was_shown_was_not_known(book):
    last = examined()
    first, second = last.asked.exercises
    second.box.value = right_answer(second)
    assert "Question 1 has no answer" in finished(last)
    for _ in range(4):
        first.hint.click()
    assert "Hint 4 of 4" in words(first.help) and first.question.typed(first.question.answer) in words(first.help)
    first.box.value = "16"
    assert "not all is right yet" in finished(last)
    first.box.value = right_answer(first)
    said = finished(last)
    assert "Question 1 came right only once the solution was shown" in said and "knew" not in said and "1 question right" in said
    last.print()
    assert "right, once the solution was shown" in sheet_of(book) and "Question 1 came right only once" in sheet_of(book)
    first.again.click()
    first.box.value = right_answer(first)
    assert "Both are right, and you were sure" in finished(last) and "2 questions right" in words(last.said)


def test_three_hints_leave_an_answer_known(book):
    last = examined()
    finished(last)
    for one in last.asked.exercises:
        for _ in range(3):
            one.hint.click()
        one.box.value = right_answer(one)
    assert "Both are right, and you were sure" in finished(last)


def test_a_choice_that_stands_there_is_taken_when_the_check_is_finished(book):
    last = lesson.Exit("Pipes and pumps", ("T05.5", "T05.6"), 1, "answers.json")
    number, choice = last.asked.exercises
    number.box.value = right_answer(number)
    choice.radio.value = choice.question.right
    assert "Both are right" in finished(last)
    choice.radio.value = next(place for place, _ in enumerate(choice.question.options) if place != choice.question.right)
    assert "not all is right yet" in finished(last)
    count = len(kept(book))
    finished(last)
    assert len(kept(book)) == count + 1, "nothing is taken twice"


def test_a_finished_check_stands_finished_another_day_with_its_answers_and_its_receipt(book):
    earlier = examined()
    for one in earlier.asked.exercises:
        one.box.value = right_answer(one)
    said, count = finished(earlier), len(kept(book))
    again = examined()
    assert words(again.said) == said and "you were sure" in said and again.sure.value == "sure"
    assert [one.box.value for one in again.asked.exercises] == [one.box.value for one in earlier.asked.exercises]
    assert len(kept(book)) == count, "nothing is kept twice"


def test_an_estimate_is_said_as_it_was_read(book):
    own = numbers()
    own.estimate.value = "50,5 L/min"
    assert "Kept: 50.5 L/min" in words(own.guess_said) and own.guess == pytest.approx(50.5 / 60e3)


def test_a_sheet_to_print_has_the_last_answers_and_the_receipt(book):
    from pypdf import PdfReader

    last = lesson.Exit("Overflow", ("T04.1", "T04.3"), 1, "answers.json")
    last.print()
    assert "no answers" in words(last.said)
    for text in (*HOSTILE, "2.43 mm"):
        last.asked.exercises[0].box.value = text
    own = exercise("T04.9", 1, "answers.json")
    own.box.value = '#panic("x") $ \\ "quoted" *bold*'
    own.check()
    last.print()
    read = " ".join(page.extract_text() for page in PdfReader(book / "overflow-answers.pdf").pages)
    assert "2.43 mm" in read and "#panic" in read and answers.receipt(answers.load_answers("answers.json")) in read.replace("\n", "")
    assert "= " not in answers_printed("A", kept(book)).splitlines()[0]


def test_a_file_that_is_no_sheet_is_never_written_over(book):
    last = lesson.Exit("Overflow", ("T04.1", "T04.3"), 1, "answers.json")
    last.asked.exercises[0].box.value = "2.43 mm"
    (book / "overflow-answers.pdf").write_text("my own notes")
    last.print()
    assert "is not a PDF" in words(last.said) and (book / "overflow-answers.pdf").read_text() == "my own notes"
