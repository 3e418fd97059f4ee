"""The workbooks in real JupyterLab in headless Chromium: cells run, a control is moved by keyboard, number and drawing change, bad input is told."""

import json
import re
from base64 import b64decode

import lab
import pytest


def figure(page):
    """The first live picture once it rests: its sentence and the curve's marked point."""
    shown = page.locator("figure").first
    shown.locator("img").wait_for()
    drawn = b64decode(shown.locator("img").get_attribute("src").partition("base64,")[2]).decode()
    return shown.locator("figcaption").text_content(), re.findall(r'<circle cx="([^"]+)" cy="([^"]+)"', drawn)[-1]


def rests_with(page, text):
    """Wait until the first live picture is at rest with that in its sentence; a kernel that is behind shows a step between for a moment."""
    page.wait_for_function(
        "text => { const shown = document.querySelector('figure'); return shown.querySelector('img') && shown.querySelector('figcaption').textContent.includes(text); }",
        arg=text,
    )


def test_a_slider_moved_by_keyboard_changes_number_sentence_and_drawing(page, address):
    lab.open_workbook(page, address, "overflow.ipynb")
    sentence, point = figure(page)
    assert "86.6 L/min" in sentence
    box = page.get_by_label("H, head over the lip").first
    page.get_by_role("slider", name="head over the lip, from 6 to 20 mm").first.focus()
    for _ in range(4):
        page.keyboard.press("ArrowRight")
    rests_with(page, "lip 14 mm")
    after, moved = figure(page)
    assert box.input_value() == "14 mm"
    assert re.search(r"Flow (\S+) L/min", after)[1] == "109"  # 2/3 x 0.62 x 0.6 x sqrt(2 g) x 0.014^1.5 = 1.820 L/s by hand
    assert moved != point


def test_a_slider_moves_its_picture_without_waiting_for_the_kernel(page, address):
    lab.open_workbook(page, address, "overflow.ipynb")
    slider = page.get_by_role("slider", name="head over the lip, from 6 to 20 mm").first
    slider.press("ArrowRight")
    lab.drawn_ahead(slider, 4)
    asleep = "import pathlib, time\nwhile not pathlib.Path('wake').exists(): time.sleep(0.05)"
    page.evaluate("code => { window.jupyterapp.shell.currentWidget.sessionContext.session.kernel.requestExecute({code}); }", asleep)
    for _ in range(3):
        slider.press("ArrowRight")
    assert "head over the lip 14 mm" in page.locator("figcaption").first.inner_text(), "the kernel sleeps"
    page.evaluate("() => window.jupyterapp.serviceManager.contents.save('wake', {type: 'file', format: 'text', content: ''})")


def test_picture_and_sliders_agree_in_whatever_order_they_are_moved(page, address):
    """Steps drawn ahead beside a value that has changed since must not stay in the page."""
    lab.open_workbook(page, address, "overflow.ipynb")
    head = page.get_by_role("slider", name="head over the lip, from 6 to 20 mm").first
    length = page.get_by_role("slider", name="length of the lip, from 300 to 1200 mm").first
    page.locator("figure summary").first.click()
    lab.drawn_ahead(head, 1)
    for turn in range(12):
        head.press(("ArrowRight", "ArrowRight", "ArrowLeft", "PageUp")[turn % 4])
        length.press(("ArrowLeft", "PageDown", "ArrowRight")[turn % 3])
        head.press("ArrowLeft")
        said = f"length of the lip {length.input_value()} mm, head over the lip {head.input_value()} mm"
        page.wait_for_function("said => document.querySelector('figcaption').textContent.includes(said)", arg=said)
        page.wait_for_timeout(60 * turn)  # some in the midst of drawing ahead, some at rest
        assert said in page.locator("figcaption").first.inner_text(), "it stays so"
    rests_with(page, said)
    assert page.locator("figure tbody").first.is_visible(), "numbers once unfolded stay so"


def test_a_number_typed_in_another_unit_is_taken_and_a_bad_one_is_told(page, address):
    lab.open_workbook(page, address, "overflow.ipynb")
    box = page.get_by_label("H, head over the lip").first
    box.fill("1/2 in")
    box.press("Enter")
    page.wait_for_function("() => document.querySelector('figure figcaption').textContent.includes('12.7 mm')")
    for bad, told in (("12", "has no unit"), ("3 kg", "is a mass"), ("-4 mm", "cannot be below zero"), ("banana", "does not start with a number")):
        box.fill(bad)
        box.press("Enter")
        page.get_by_role("alert").filter(has_text=told).first.wait_for()
    assert "12.7 mm" in figure(page)[0], "the last good picture stays"


def test_the_design_workbook_takes_a_change_follows_it_saves_and_reads_it_again(page, address):
    def redrawn(text):
        page.wait_for_function("text => [...document.querySelectorAll('section p, figcaption')].some(e => e.textContent.includes(text))", arg=text)

    def told(text):
        page.get_by_role("status").filter(has_text=text).first.wait_for()

    lab.open_workbook(page, address, "design.ipynb")
    redrawn("5 fail")
    for folded in ("not shown", "Numbers of the plan"):
        page.locator("summary", has_text=folded).first.click()
    rim = page.get_by_label("Diameter of the rim")
    rim.fill("30 in")
    rim.press("Enter")
    redrawn("a vessel 762 mm across")
    unfolded = page.locator("details[open] > summary").all_inner_texts()
    assert len(unfolded) == 2 and unfolded[0].endswith("not shown") and unfolded[1] == "Numbers of the plan", "what was unfolded stays so"
    rim.fill("30 kg")
    rim.press("Enter")
    page.get_by_role("alert").filter(has_text="is a mass, but a length is wanted").wait_for()
    rim.fill("")
    rim.press("Enter")
    page.get_by_text("(vessel.rim_diameter)").first.wait_for(state="attached")  # folded under "not shown"
    rim.fill("700 mm")
    rim.press("Enter")
    redrawn("a vessel 700 mm across")
    name = page.get_by_label("Design file")
    name.fill("designs/mine.toml")
    name.press("Enter")
    page.get_by_role("button", name="Save", exact=True).click()
    told("Saved: designs/mine.toml")
    for file, across in (("designs/library-bowl.toml", "780"), ("designs/mine.toml", "700")):
        name.fill(file)
        name.press("Enter")
        page.get_by_role("button", name="Load", exact=True).click()
        told(f"Loaded: {file}")
        redrawn(f"a vessel {across} mm across")
        assert rim.input_value() == f"{across} mm"
    name.fill("designs/absent.toml")
    name.press("Enter")
    page.get_by_role("button", name="Load", exact=True).click()
    page.get_by_role("alert").filter(has_text="cannot be read").wait_for()


@pytest.mark.parametrize(
    ("name", "label", "drawn"),
    [
        ("school-columns", "Diameters of the drilled stones", "3 drilled stones"),
        ("terrace-blade", "Width of the lip", "a sheet falls 750 mm"),
        ("garden-cascade", "Number of steps", "3 falls of 150 mm"),
    ],
)
def test_another_kind_of_feature_brings_its_own_boxes_findings_and_section(page, address, name, label, drawn):
    lab.open_workbook(page, address, "design.ipynb")
    file = page.get_by_label("Design file")
    file.fill(f"designs/{name}.toml")
    file.press("Enter")
    page.get_by_role("button", name="Load", exact=True).click()
    page.wait_for_function("text => [...document.querySelectorAll('figcaption')].some(e => e.textContent.includes(text))", arg=drawn)
    page.get_by_label(label).wait_for()
    assert page.get_by_label("Diameter of the rim").count() == 0
    assert page.get_by_text("Traceback").count() == 0


def test_a_workbook_opened_without_its_kernel_comes_back_and_one_that_was_changed_says_what_to_do(page, address, served):
    """What a kernel has made is gone with it: words stand where boxes were. While the kernel lives, boxes come back by themselves."""
    lab.open_workbook(page, address, "overflow.ipynb")
    lab.save(page)
    path = served[0] / "overflow.ipynb"
    for kernel in ("lives", "is gone", "is gone, and the code was changed"):
        if kernel != "lives":
            page.evaluate("() => window.jupyterapp.shell.currentWidget.sessionContext.shutdown()")
        if "changed" in kernel:
            book = json.loads(path.read_text())
            [cell for cell in book["cells"] if cell["cell_type"] == "code"][-1]["source"] += "\n# mine"
            path.write_text(json.dumps(book))
        page.goto(f"{address}/tree/overflow.ipynb?reset")
        page.wait_for_function("() => window.jupyterapp?.shell.currentWidget?.context?.isReady")
        if "changed" not in kernel:
            page.get_by_role("slider").first.wait_for()
            continue
        page.get_by_text("Run this cell to bring it to life").first.wait_for()
        assert page.get_by_text("model not found").count() == 0


def test_a_terminal_has_the_command_in_the_folder_of_the_workbooks(page, address):
    lab.open_workbook(page, address, "00-start.ipynb", run=False)
    page.evaluate("() => window.jupyterapp.commands.execute('terminal:create-new')")
    page.wait_for_function("() => window.jupyterapp.shell.currentWidget.content.session?.connectionStatus === 'connected'")
    page.locator(".jp-Terminal textarea").focus()
    page.keyboard.type("brimwork pack designs/quick-check.toml\n")
    page.wait_for_function(
        """() => window.jupyterapp.serviceManager.contents.get('designs', {content: true})
             .then(folder => folder.content.some(file => file.name === 'quick-check.pdf'))""",
        polling=lab.OFTEN,
    )


def test_a_form_and_its_long_answers_fit_a_narrow_page(page, address):
    page.set_viewport_size({"width": 900, "height": 5000})
    lab.open_workbook(page, address, "design.ipynb")
    rim = page.get_by_label("Diameter of the rim")
    rim.wait_for()
    assert rim.evaluate("box => box.getBoundingClientRect().width") > 90, "ten figures and a unit can be read"
    row = rim.locator("xpath=ancestor::*[contains(@class, 'widget-hbox')][last()]")
    assert row.evaluate("row => row.scrollWidth <= row.clientWidth + 1"), "no scrollbar of its own"
    lab.open_workbook(page, address, "lining.ipynb")
    page.get_by_text("Search for pipes and cables").first.click()
    assert page.get_by_role("radio", name="Search for pipes and cables").first.is_checked()


def test_questions_of_each_kind_are_answered_by_keyboard_and_kept(page, address):
    """Number with a hint, choice by radio button, order by lists; the answers file stands in the workbook's folder."""
    page.goto(f"{address}?reset")
    page.wait_for_function("() => window.jupyterapp?.serviceManager")
    cell = "from brimwork.notebook import practise\nfor code in ('T04.5', 'T04.7', 'T12.6'):\n    practise(code, record='answers.json')"
    content = {"cells": [{"cell_type": "code", "source": cell, "metadata": {}, "outputs": [], "execution_count": None}], "nbformat": 4, "nbformat_minor": 5}
    content["metadata"] = {"kernelspec": {"name": "python3", "display_name": "Python 3", "language": "python"}}
    page.evaluate(
        "content => window.jupyterapp.serviceManager.contents.save('practice.ipynb', {type: 'notebook', format: 'json', content})",
        content,
    )
    lab.open_workbook(page, address, "practice.ipynb")
    status = page.get_by_role("status")
    answer = page.get_by_label("Your answer, with its unit").first
    answer.fill("73.5 mm")
    answer.press("Enter")
    status.filter(has_text="You left out the 2").first.wait_for()
    page.get_by_role("button", name="Hint", exact=True).first.press("Enter")
    status.filter(has_text="Hint 3 of 4").first.wait_for()
    page.get_by_role("radio").nth(1).check()
    page.get_by_role("button", name="Check", exact=True).nth(0).press("Enter")
    status.filter(has_text="pi x 0.600").first.wait_for()
    for place, step in zip(("First", "Second", "Third"), ("search for services", "dig", "lay the duct")):
        page.get_by_label(place, exact=True).select_option(label=step)
    page.get_by_role("button", name="Check", exact=True).nth(1).press("Enter")
    page.get_by_role("alert").filter(has_text="Give every step one place").wait_for()
    kept = page.evaluate(
        "() => window.jupyterapp.serviceManager.contents.get('answers.json', {type: 'file', format: 'text', content: true}).then(file => file.content)"
    )
    assert '"kind": "slip"' in kept and '"kind": "right"' in kept and "T04.7" in kept
