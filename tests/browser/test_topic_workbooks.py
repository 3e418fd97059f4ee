"""Two topic workbooks from their first section to the last, by keyboard, in real JupyterLab: wrong and right answers, and what the page says back.

Expected numbers are worked here by hand, with g = 9.80665 m/s2.
"""

import json
import math
import os
import re

import lab

G = 9.80665
SECTIONS = ("1 Recall", "2 Predict", "3 Explore", "4 Explain", "5 Derive and work", "6 Faded example", "7 Find the slip", "8 Your numbers", "9 On site",
            "10 Exit check")  # fmt: skip
_UNNAMED = """() => [...document.querySelectorAll('.jp-OutputArea-output :is(input, textarea, select, button)')]
  .filter(one => !(one.labels?.length || one.getAttribute('aria-label') || one.textContent.trim() || one.title)).map(one => one.outerHTML)"""


class Book:
    """A workbook that is open; each section is the output of the cell with that call."""

    def __init__(self, page, address, name):
        lab.open_workbook(page, address, f"{name}.ipynb")
        self.page, self.name = page, name

    def part(self, call):
        """What the first call of that kind shows."""
        called = self.page.locator(".jp-InputArea-editor", has_text=call)
        return Section(self.page.locator(".jp-CodeCell").filter(has=called).first)

    def file(self, path, **options):
        return self.page.evaluate(
            "([path, options]) => window.jupyterapp.serviceManager.contents.get(path, {content: true, ...options}).then(file => file.content)", [path, options]
        )

    def shot(self):
        """Pictures of the whole page in a light and a dark theme, for somebody to look at: BRIMWORK_LOOK names a folder."""
        if folder := os.environ.get("BRIMWORK_LOOK"):
            for theme in ("JupyterLab Dark", "JupyterLab Light"):
                self.page.evaluate("theme => window.jupyterapp.commands.execute('apputils:change-theme', {theme})", theme)
                self.page.wait_for_function("dark => document.body.dataset.jpThemeLight === (dark ? 'false' : 'true')", arg="Dark" in theme)
                self.page.locator(".jp-NotebookPanel").screenshot(path=f"{folder}/{self.name}-{theme.split()[1].lower()}.png")


class Section:
    def __init__(self, cell):
        self.cell = cell

    @property
    def text(self):
        """All that it says; numbers keep their units by spaces that do not break."""
        return self.cell.inner_text().replace("\u00a0", " ")

    def type(self, label, text):
        box = self.cell.get_by_label(label)
        box.fill(text)
        box.press("Enter")

    def press(self, name):
        """Press a button once the kernel has taken what was typed: a box that waits for its turn may be overtaken by a button."""
        for _ in range(2):
            self.cell.page.evaluate("() => window.jupyterapp.shell.currentWidget.sessionContext.session.kernel.requestKernelInfo().then(() => true)")
        self.cell.get_by_role("button", name=name, exact=True).press("Enter")

    def choose(self, text, place=0):
        self.cell.get_by_role("radio", name=text).nth(place).press("Space")

    def says(self, text, role="status"):
        self.cell.get_by_role(role).filter(has_text=text).first.wait_for()

    def answered(self, label, *told):
        """Type answers one after another, each with what must be said to it."""
        for text, said in told:
            self.type(label, text)
            self.says(said)


def comes_early(book):
    """The first thing to do, within 250 words of text and the first six cells."""
    cells = book.page.locator(".jp-Cell")
    first = cells.evaluate_all("cells => cells.findIndex(cell => cell.querySelector('.jp-OutputArea input'))")
    assert 0 < first < 6
    assert len(" ".join(cells.nth(place).inner_text() for place in range(first)).split()) <= 250


def given(section, start):
    """The values of a question on a formula, by letter and as they stand there, from the line on that begins with its number."""
    asked = re.search(rf"^{re.escape(start)} .*? Find ", section.text, re.MULTILINE | re.DOTALL)[0]  # 0.93. has a 3. in it, too
    return {letter: float(value) for letter, value in re.findall(r"(\w+) = (\d+(?:\.\d+)?)", asked)}


def usable(values):
    """Litres of A_b n_v (h_static - h_min)."""
    return values["A_b"] * values["n_v"] * (values["h_static"] - values["h_min"])


def pit(values):
    """Litres of a pit with leaning sides, by hand: core, four wedges, four corners."""
    length, width, deep, lean = values["L"] / 1e3, values["W"] / 1e3, values["h"] / 1e3, values["m_b"]
    return 1e3 * (length * width * deep + lean * (length + width) * deep**2 + 4 / 3 * lean**2 * deep**3)


def predict_before_any_picture(book, code, option):
    """Nothing is shown until a prediction is kept."""
    first = book.part(f'after="{code}"')
    assert "once you have kept your prediction" in first.text and first.cell.locator("figure").count() == 0
    predict = book.part(f'predict("{code}")')
    predict.press("Keep my prediction")
    predict.says("Choose one first", "alert")
    predict.choose(option)
    predict.press("Keep my prediction")
    predict.says("Say why first", "alert")
    predict.type("Because", "it goes <b>with</b> the size")
    predict.press("Keep my prediction")
    predict.says(f"You predict: {option}")
    first.cell.locator("figure").wait_for()
    return first


def explain_and_look_back(book, code, told, sentence, explain):
    back = book.part(f'look_back("{code}")')
    back.press("Compare with my prediction")
    back.says("it goes <b>with</b> the size")
    back.says(told)
    own = book.part(f'explain("{explain}")')
    own.press("Keep and compare")
    own.says("Nothing is written yet", "alert")
    own.cell.get_by_label("Your sentence").fill("x" * 250)
    own.press("Keep and compare")
    own.says("make it shorter", "alert")
    own.cell.get_by_label("Your sentence").fill(sentence)
    own.press("Keep and compare")
    own.says("A model sentence")
    for place in range(3):
        own.cell.get_by_role("checkbox").nth(place).press("Space")
    own.says("All its points are in yours")


def begun(book, code):
    """The exit check on the numbers of a learner, whose code is typed only in the first workbook of a folder, and all that it says."""
    check, asked = book.part("exit_check("), "Your learner code, or a short name of your own"
    check.cell.get_by_label(asked).or_(check.cell.get_by_text("These are the numbers of")).first.wait_for()
    if check.cell.get_by_label(asked).count():
        check.type(asked, "no code!")
        check.says("no learner code", "alert")
        check.type(asked, code)
    check.says(f"These are the numbers of {code}")
    return check, check.text


def finish(book, title, sure, said):
    check = book.part("exit_check(")
    check.press("Finish and show my receipt")
    check.says("Say first how sure you are", "alert")
    check.choose(sure, -1)
    check.press("Finish and show my receipt")
    check.says(said)
    check.says("Receipt")
    shown = re.search(r"Receipt ([a-z]+ [a-z]+ \d{4})", check.text)[1]
    check.press("Make a sheet to print")
    check.says("Written beside this workbook")
    assert check.cell.get_by_role("link", name=f"{title}-answers.pdf").get_attribute("href").startswith("data:application/pdf;base64,JVBER")
    assert book.file(f"{title}-answers.pdf", type="file", format="base64").startswith("JVBER"), "a PDF"
    return shown


def whole(book):
    """All sections stand there in order, nothing went wrong, everything that takes input has a name."""
    headings = [re.sub(r"\W*$", "", text) for text in book.page.locator(".jp-MarkdownOutput h2").all_inner_texts()]
    assert tuple(headings[:10]) == SECTIONS
    assert book.page.get_by_text("Traceback").count() == 0
    assert book.page.evaluate(_UNNAMED) == []
    too_wide = book.page.locator(".jp-OutputArea-output").evaluate_all(
        "all => all.filter(one => one.scrollWidth > one.clientWidth + 2).map(one => one.innerText)"
    )
    assert too_wide == []
    book.shot()


def test_overflow_from_first_to_last_section(page, address):
    book = Book(page, address, "overflow")
    comes_early(book)
    recall = book.part("recall(")
    above = usable(given(recall, "1."))
    recall.answered("Your answer 1, with its unit", (f"{1.2 * above:.1f} L", "a little high"), (f"{above:.1f} L", "Right:"))
    recall.answered("Your answer 2, with its unit", ("3 kg", "is measured in L"), (f"{pit(given(recall, '2.')):.1f} L", "Right:"))

    explore = predict_before_any_picture(book, "T04.8", "About 60 litres a minute.")
    explore.type("H, head over the lip", "6 mm")
    explore.cell.locator("figcaption").filter(has_text="20.4 L/min").wait_for()  # 2/3 0.62 0.4 sqrt(2 g) 0.006^1.5 = 0.340 L/s
    with page.expect_download() as saved:
        explore.cell.get_by_role("button", name="Save as PNG").press("Enter")
    assert saved.value.suggested_filename == "flow-over-a-level-lip.png"
    book.part("puzzle(").answered("Your answer, with its unit", ("800 mm", "twice is not enough"), (f"{400 * 2**1.5:.0f} mm", "Right:"))
    explain_and_look_back(book, "T04.8", "It is so: About 85 litres a minute.", "Deeper & <i>faster</i> water.", "T04.9")

    book.part("derive(").cell.locator("summary").first.press("Enter")
    page.get_by_text("free fall: the speed grows with the root of the way down").first.wait_for()
    assert "39290 L/min" in book.part("ledger(").text

    fade, root = book.part("fade("), math.sqrt(2 * G)
    flow = 2 / 3 * 0.6 * 0.7 * root * 0.018**1.5 * 60e3
    fade.answered("Step 3: Q", (f"{1.5 * flow:.0f} L/min", "speed of the deepest layer"), (f"{flow:.0f} L/h", "you typed L/h"), (f"{flow:.0f} L/min", "Right:"))
    fade.says("This example is worked to its end")
    fade.press("Next example, one more blank")
    fade.answered("Step 2: H^(3/2)", ("0.0065 m^1.5", "left out the power"))
    rest = 2 / 3 * 0.6 * 0.98 * root * 60e3
    fade.type_last = fade.cell.get_by_label("Step 3: Q").nth(1)
    fade.type_last.fill(f"{rest * 0.0065:.0f} L/min")
    fade.type_last.press("Enter")
    fade.says("worked rightly from your value in step 2")
    fade.type("Step 2: H^(3/2)", f"{0.0065**1.5:.6f} m^1.5")
    fade.type_last.fill(f"{rest * 0.0065**1.5:.1f} L/min")
    fade.type_last.press("Enter")
    fade.press("Next example, one more blank")
    fade.press("Hint, three blanks")
    fade.says("Step 1, hint 1 of 3")
    fade.answered("Step 1: √(2·g)", ("19.6 m^0.5/s", "left out the root"), ("17 m^0.5/s", "I do not know which slip"), ("4.43 m^0.5/s", "Right:"))

    slip = book.part("find_slip(")
    slip.choose("Flow: 40 litres")
    slip.press("Check")
    slip.says("The flow holds")
    slip.choose("Head: 0.000741 to the power 3/2")
    slip.press("Check")
    slip.says("To undo the power 3/2")
    by_hand_of_slip = (40 / 60e3 / 0.5 / 1.8) ** (2 / 3) * 1e3
    slip.press("Skip this part")
    slip.press("Open this part again")
    slip.answered("Mended: the head over the lip", ("0.0202 mm", "still the number with the slip"), (f"{by_hand_of_slip:.2f} mm", "Right:"))

    numbers, edge = book.part("your_numbers("), math.pi * 0.93
    numbers.type("Rough estimate first", "200")
    numbers.says("has no unit", "alert")
    numbers.type("Rough estimate first", "200 L/min")
    numbers.says("Kept: 200 L/min. Now work it out")
    numbers.answered("On the way: b", ("930 mm", "left out π"))
    flow = 1.79 * edge * 0.008**1.5 * 60e3
    numbers.answered("Your answer, with its unit", (f"{flow / math.pi:.2f} L/min", "follows rightly from your value on the way"))
    numbers.says("The question has 8.00 mm")
    numbers.answered("On the way: b", (f"{edge * 1e3:.0f} mm", "Right:"))
    numbers.answered("Your answer, with its unit", (f"{flow:.1f} L/min", "Right:"))
    numbers.says("near enough to catch a slip")
    assert numbers.cell.locator("figure svg[aria-label='What your number would lead to']").count() == 1

    other = book.part('practise("T04.2"')
    flow = 1.7 * math.pi * 0.72 * 0.005**1.5 * 3.6e6
    other.answered(
        "Your answer, with its unit", ("77 gal", "US or imperial"), (f"{flow / math.pi:.0f} L/h", "Water goes over all round"), (f"{flow:.0f} L/h", "Right:")
    )

    site = book.part("on_site(")
    site.press("Put into my design")
    site.says("Nothing is changed", "alert")
    site.type("Difference in level round the rim", "3 kg")
    site.press("Put into my design")
    site.says("Nothing is saved", "alert")
    site.type("Difference in level round the rim", "1 mm")
    site.press("Put into my design")
    site.says("Saved in designs/my-design.toml")
    assert "Rim out of level against the head: ! near the limit, now ✓ within the limit" in site.text
    assert 'rim_out_of_level = "1 mm"' in book.file("designs/my-design.toml", type="file", format="text")

    check, text = begun(book, "A07")
    flow, rim, wanted = (
        float(found) for found in re.search(r"([\d.]+) L/h runs evenly .*? ([\d.]+) m across.*?wants ([\d.]+) times", text, re.DOTALL).groups()
    )
    by_hand = (flow / 3.6e6 / (1.7 * math.pi * rim)) ** (2 / 3) * 1e3
    check.answered("Your answer 1, with its unit", (f"{by_hand:.3g} mm", "Right:"))
    check.answered("Your answer 2", (f"{wanted:g}", "You let the flow rise as the head does"), (f"{wanted**1.5:.3g}", "Right:"))
    receipt = finish(book, "overflow", "sure", "Both are right, and you were sure")
    whole(book)
    kept = json.loads(book.file("answers.json", type="file", format="text"))["answers"]
    assert {entry["kind"] for entry in kept} >= {"right", "slip", "unit", "carried", "none", "unread", "told", "estimate", "skipped", "carried over", "sure"}
    assert re.fullmatch(r"[a-z]+ [a-z]+ [0-9]{4}", receipt)

    count, again = len(kept), Book(page, address, "overflow")  # the kernel is gone; all that was answered is not
    assert again.part("predict(").cell.get_by_role("radio", name="About 60 litres a minute.").is_checked()
    assert again.part('after="T04.8"').cell.locator("figure").count() == 1
    assert again.part("find_slip(").cell.get_by_label("Mended: the head over the lip").input_value() == f"{by_hand_of_slip:.2f} mm"
    again.part("your_numbers(").says("near enough to catch a slip")
    assert again.part("explain(").cell.get_by_label("Your sentence").input_value() == "Deeper & <i>faster</i> water."
    again.part("exit_check(").says("Both are right, and you were sure")
    line = again.part("so_far(").text
    assert "1 Recall 2 of 3" in line and "2 Predict ✓" in line and "10 Exit check ✓" in line and "Go on with 1 Recall" in line
    assert len(json.loads(again.file("answers.json", type="file", format="text"))["answers"]) == count
    again.shot()


def test_pipes_and_pumps_from_first_to_last_section(page, address):
    book = Book(page, address, "pipes")
    comes_early(book)
    recall = book.part("recall(")
    rim = given(recall, "1.")
    over = rim["C_w"] * math.pi * rim["d_rim"] / 1e3 * (rim["H"] / 1e3) ** 1.5 * 60e3
    recall.answered("Your answer 1, with its unit", (f"{over / math.pi:.3g} L/min", "Water leaves all the way round"), (f"{over:.3g} L/min", "Right:"))
    recall.answered("Your answer 2, with its unit", ("3 kg", "is measured in L"), (f"{usable(given(recall, '2.')):.3g} L", "Right:"))
    recall.answered("Your answer 3, with its unit", (f"{pit(given(recall, '3.')):.1f} L", "Right:"))

    explore = predict_before_any_picture(book, "T05.7", "It grows about 1.3 times.")
    explore.type("d_pipe, true inside diameter", "19 mm")
    lost = 8 * 0.027 * 6 * (20 / 60e3) ** 2 / (math.pi**2 * G * 0.019**5)
    explore.cell.locator("figcaption").filter(has_text=f"{lost:.3f} m").wait_for()
    book.part("puzzle(").answered("Your answer, with its unit", ("180 L/min", "take the root"), (f"{20 * 9**0.5:.1f} L/min", "Right:"))
    explain_and_look_back(book, "T05.7", "It is so: ", "Faster, and nearer the wall.", "T05.8")
    again = 4 + (0.0315 * 89 / 0.05 + 2.36) * (0.006 / (math.pi / 4 * 0.05**2)) ** 2 / (2 * 9.81)  # the printed example by hand, with its own g
    assert f"{again:.2f} m here" in book.part("ledger(").text

    fade = book.part("fade(")
    head = lambda z, q, d, f, length, k: (z, *(part * (q / 60e3 / (math.pi / 4 * d * d)) ** 2 / (2 * G) for part in (f * length / d, k)))  # noqa: E731
    lift, hose, fittings = head(0.95, 103, 0.038, 0.025, 6.5, 3.5)
    fade.answered("Step 4: H_t", (f"{hose + fittings:.3f} m", "only the rubbing loss"), (f"{lift + hose + fittings:.3f} m", "Right:"))
    fade.press("Next example, one more blank")
    lift, hose, fittings = head(0.4, 40, 0.04, 0.025, 10.5, 5.5)
    fade.answered("Step 3: h_m", (f"{2 * fittings:.4f} m", "The 2 is missing"))
    last = fade.cell.get_by_label("Step 4: H_t").nth(1)
    last.fill(f"{lift + hose + 2 * fittings:.3f} m")
    last.press("Enter")
    fade.says("worked rightly from your value in step 3")
    fade.answered("Step 3: h_m", (f"{fittings:.4f} m", "Right:"))
    last.fill(f"{lift + hose + fittings:.3f} m")
    last.press("Enter")
    fade.press("Next example, one more blank")
    fade.press("Hint, three blanks")
    fade.says("Step 2, hint 1 of 3")

    slip = book.part("find_slip(")
    for option, told in (("Speed: 0.0005", "The speed holds"), ("Head: 0.212", "the lift is added")):
        slip.choose(option)
        slip.press("Check")
        slip.says(told)
    by_hand = sum(head(0.9, 30, 0.025, 0.025, 4, 4.7))
    slip.answered("Mended: the head that the pump must give", ("0.461 m", "still the number with the slip"), (f"{by_hand:.2f} m", "Right:"))

    numbers, (lift, hose, fittings) = book.part("your_numbers("), head(0.7, 78, 0.025, 0.026, 8, 6.5)
    speed = 78 / 60e3 / (math.pi / 4 * 0.025**2)
    numbers.type("Rough estimate first", "20 m")
    numbers.answered("On the way: v", (f"{speed / 4:.3f} m/s", "too big by four"))
    numbers.answered(
        "Your answer, with its unit", (f"{lift + (hose + fittings) / 16:.3f} m", "follows rightly"), (f"{lift / 2:.3f} m", "nothing would come out")
    )
    numbers.answered("On the way: v", (f"{speed:.2f} m/s", "Right:"))
    numbers.answered("Your answer, with its unit", (f"{lift + hose + fittings:.2f} m", "Right:"))
    numbers.says("would send 78.0 L/min through this hose")
    numbers.says("too far off to catch a slip")

    meeting = book.part('practise("T05.4"')
    duty = 2000 * math.sqrt((3 - 1.3) / (3 + 0.45 * (2000 / 800) ** 2))
    meeting.answered("Your answer, with its unit", ("2000 L/h", "greatest flow off the label"), (f"{duty:.0f} L/h", "They agree"))

    site = book.part("on_site(")
    site.type("True inside diameter of the hose", "19 mm")
    site.type("Flow measured with a bucket at the outlet", "31 L/min")
    site.press("Put into my design")
    site.says("Saved in designs/my-design.toml")
    assert "head that the pump must give at that flow" in site.text and "31.0 L/min" in site.text
    assert 'flow = {value = "31 L/min", basis = "measured"}' in book.file("designs/my-design.toml", type="file", format="text")

    check, text = begun(book, "A07")
    flow, head, power = (float(found) for found in re.search(r"claims ([\d.]+) L/s at most, ([\d.]+) m at most, and ([\d.]+) W", text).groups())
    ratio = 2 / (3 * math.sqrt(3)) * 1000 * G * flow / 1000 * head / power
    check.answered("Your answer 1", (f"{ratio / 0.3849:.1f}", "They never occur together"))
    check.choose("From the ground")
    check.press("Check 2")
    check.says("The water stands below the ground")
    finish(book, "pipes-and-pumps", "a guess", "Not all is right yet, and you saw that")
    check.answered("Your answer 1", (f"{ratio:.2f}", "Right:"))
    whole(book)
