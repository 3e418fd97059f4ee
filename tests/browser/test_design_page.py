"""The page of a design in a real browser: begun from nothing, changed in boxes and from the drawing, by keyboard and on a narrow page, and there again after a restart."""

from pathlib import Path

import lab
import pytest

from brimwork.design.follows.features import chain_of
from brimwork.design.judged import checks
from brimwork.design.typed.file import load_design
from brimwork.notebook.books import shipped

WIDE = {"width": 1440, "height": 1000}


@pytest.fixture
def page(page):
    page.set_viewport_size(WIDE)
    return page


@pytest.fixture
def design(plain):
    """The page without code, as a builder has it."""
    plain.set_viewport_size(WIDE)
    plain.goto(f"{plain.start}page/design")
    plain.wait_for_selector("body[data-alive]")
    return plain


def in_jupyterlab(page, address):
    lab.open_workbook(page, address, "design.ipynb")
    return page


def started(page, kind="A bowl or pot that overflows", units="Metric"):
    page.get_by_label(units).check()
    page.get_by_role("button", name=f"Begin: {kind}").click()
    page.get_by_text("first questions answered").wait_for()


def example(page, name="library bowl"):
    page.get_by_role("button", name=name).click()
    page.locator(".bw-paper svg").wait_for()


def typed(page, label, text):
    """Type into a box, and wait for what it did."""
    seen = page.locator(".bw").get_attribute("data-answered")
    box = page.get_by_role("textbox", name=label, exact=True)
    box.fill(text)
    box.press("Enter")
    page.wait_for_function("seen => document.querySelector('.bw').dataset.answered !== seen", arg=seen)


ANSWERS = {
    "Length of the bed that you have": "5 ft", "Width of the bed that you have": "4 ft", "Across the rim": "22 in", "Height": "20 in", "Weight, empty": "130 lb",
    "Water that fills it to the rim": "18 US gal", "Across the foot": "15 in", "Length of one block": "27 in", "Width of one block": "16 in", "Height of one block": "17 in",
    "Most water the pump sends, by its label": "1000 US gal/h", "Highest lift, by its label": "8 ft", "Watts, by its label": "45 W", "Inside of the hose, across": "1 in",
}  # fmt: skip


def test_from_nothing_to_an_own_design_and_its_pack(page, address, served):
    started(in_jupyterlab(page, address), units="Feet")
    page.get_by_text("The drawing appears when these are known").wait_for()
    page.get_by_role("combobox", name="Who comes near the water?", exact=True).select_option("private")
    for label, text in ANSWERS.items():
        typed(page, label, text)
    page.get_by_text("All first questions are answered").wait_for()
    page.locator(".bw-paper svg").wait_for()
    assert page.locator(".bw-number b").first.inner_text().endswith("in")
    with page.expect_download() as picture:
        page.get_by_role("button", name="Save as PNG").click()
    png = Path(picture.value.path()).read_bytes()
    assert picture.value.suggested_filename.endswith("-section.png") and png[:8] == b"\x89PNG\r\n\x1a\n"
    assert int.from_bytes(png[16:20], "big") == 1920, "as wide as a projector shows"
    page.get_by_role("button", name="Save", exact=True).click()
    page.get_by_text("Saved: designs/my-design.toml").wait_for()
    page.get_by_role("button", name="Print", exact=True).click()
    link = page.get_by_role("link", name="Open my-design.pdf")
    link.wait_for()
    assert page.evaluate("async url => (await (await fetch(url)).text()).slice(0, 4)", link.get_attribute("href")) == "%PDF"
    assert (served[0] / "designs" / "my-design.pdf").exists()


def test_a_change_is_drawn_refused_undone_and_made_again(design):
    example(design)
    typed(design, "Across the rim", "30 in")
    design.locator(".bw-paper svg text", has_text="762").wait_for()
    assert "was" in design.locator(".bw-moved").first.inner_text()
    typed(design, "Across the rim", "30 kg")
    design.get_by_role("alert").filter(has_text="is a mass, but a length is wanted").wait_for()
    design.get_by_role("button", name="Undo", exact=True).click()
    design.locator(".bw-said", has_text="Taken back: 30 kg.").wait_for()
    design.get_by_role("button", name="Undo", exact=True).click()
    design.locator(".bw-paper svg text", has_text="780").wait_for()
    design.get_by_role("button", name="Redo", exact=True).click()
    design.locator(".bw-paper svg text", has_text="762").wait_for()


def test_what_a_change_says_stands_where_it_is_and_moves_nothing_below(design):
    example(design)
    design.locator(".bw-finding").first.wait_for()
    tops = set()
    for text in ("700 mm", "703 mm", "706 mm"):
        typed(design, "Across the rim", text)
        assert design.locator(".bw-moved").count() > 0
        tops.add(design.evaluate("() => document.querySelector('.bw-strip').offsetHeight"))
    typed(design, "Title", "Front path")
    assert design.locator(".bw-moved").count() == 0
    tops.add(design.evaluate("() => document.querySelector('.bw-strip').offsetHeight"))
    assert len(tops) == 1


def test_the_drawing_leads_to_its_box_by_mouse_and_by_keyboard_and_the_box_lights_its_place(design):
    example(design)
    design.locator(".bw-paper svg text", has_text="pit 1572").click()
    assert design.evaluate("() => document.activeElement.labels[0].textContent") == "Working space round the box"
    assert design.locator(".bw-lit text").text_content() == "pit 1572"
    shown = design.locator(".bw-paper [role=button][tabindex='0']")
    shown.focus()
    names = set()
    for _ in range(8):
        design.keyboard.press("ArrowRight")
        names.add(design.evaluate("() => document.activeElement.getAttribute('aria-label')"))
    assert len(names) == 8
    label = design.evaluate("() => document.activeElement.getAttribute('aria-label').replace(': change', '')")
    design.keyboard.press("Enter")
    assert design.evaluate("() => document.activeElement.labels[0].textContent") == label
    assert design.locator("[role=button] [role=button]").count() == 0


def test_a_finding_says_why_and_what_is_missing_is_one_button_away(design):
    example(design)
    design.get_by_role("button", name="why: Overturning of the full vessel").click()
    design.locator(".bw-hangs li").first.wait_for()
    design.locator(".bw-hangs").get_by_role("button", name="Across the foot").click()
    assert design.evaluate("() => document.activeElement.labels[0].textContent") == "Across the foot"
    design.get_by_role("button", name="answer: Services located").click()
    assert design.evaluate("() => document.activeElement.labels[0].textContent") == "Services located"


def test_tab_goes_from_box_to_box_and_where_a_number_is_from_is_asked_after_it_was_typed(design):
    started(design)
    rim = design.get_by_role("textbox", name="Across the rim", exact=True)
    rim.focus()
    design.keyboard.press("Tab")
    assert design.evaluate("() => document.activeElement.labels[0].textContent") == "Height"
    typed(design, "Across the rim", "640 mm")
    rim.focus()
    design.keyboard.press("Tab")
    assert design.evaluate("() => document.activeElement.getAttribute('aria-label')") == "Across the rim: where from?"
    design.get_by_role("button", name="Where each number is from").click()
    typed(design, "Height", "500 mm")
    rim.focus()
    design.keyboard.press("Tab")
    assert design.evaluate("() => document.activeElement.getAttribute('aria-label')") == "Across the rim: where from?"


def test_an_emptied_box_has_its_usual_value_again_and_a_button_beside_it_does_the_same(design):
    started(design)
    for label, text in (("Length of one block", "600 mm"), ("Width of one block", "400 mm"), ("Length of the slab under it", "500 mm")):
        typed(design, label, text)
    slab = design.get_by_role("textbox", name="Length of the slab under it")
    design.get_by_role("button", name="Length of the slab under it: take the usual 600 mm").click()
    usual = "slab => slab.value === '600 mm' && slab.closest('.bw-usual')"
    design.wait_for_function(usual, arg=slab.element_handle())
    typed(design, "Length of the slab under it", "500 mm")
    typed(design, "Length of the slab under it", "")
    design.wait_for_function(usual, arg=slab.element_handle())


def test_what_was_open_is_there_again_after_a_restart(page, address):
    started(in_jupyterlab(page, address))
    typed(page, "Across the rim", "640 mm")
    page.evaluate("() => window.jupyterapp.shell.currentWidget.sessionContext.session.kernel.restart()")
    page.evaluate("() => window.jupyterapp.commands.execute('notebook:run-all-cells').then(() => true)")
    page.wait_for_function("() => [...document.querySelectorAll('.bw input')].some(box => box.value === '640 mm')")
    lab.open_workbook(page, address, "quick-check.ipynb")
    page.wait_for_function("() => [...document.querySelectorAll('.bw input')].some(box => box.value === '640 mm')")


def test_every_letter_key_in_and_around_the_form_loses_nothing(page, address):
    import string

    example(in_jupyterlab(page, address))
    cells = page.evaluate("() => window.jupyterapp.shell.currentWidget.content.widgets.length")
    for place in (page.get_by_role("button", name="From above"), page.locator(".bw-side summary").first, page.locator(".bw-paper [role=button]").first):
        place.focus()
        for key in string.ascii_letters:
            page.keyboard.press(key)
            page.keyboard.press(key)
    assert page.evaluate("() => window.jupyterapp.shell.currentWidget.content.widgets.length") == cells
    assert page.locator(".bw-paper svg").is_visible() and page.get_by_role("textbox", name="Across the rim").input_value() == "780 mm"


@pytest.mark.parametrize("width", [1440, 1024, 620])
def test_the_page_fits_its_width_and_what_is_touched_is_large_enough(page, address, width):
    page.set_viewport_size({"width": width, "height": 900})
    example(in_jupyterlab(page, address))
    shape = page.locator(".bw").evaluate("one => [one.scrollWidth - one.clientWidth, getComputedStyle(one.querySelector('.bw-main')).display]")
    assert shape[0] <= 1 and shape[1] == ("grid" if width > 1000 else "block")
    small = page.locator(".bw :is(button, select, input, summary, a):visible").evaluate_all(
        "all => all.map(one => [one.textContent || one.id, one.getBoundingClientRect()]).filter(([, box]) => box.width < 24 || box.height < 24).map(([name]) => name)"
    )
    assert not small


def test_designs_opened_one_after_another_leave_nothing_in_the_page(page, address):
    example(in_jupyterlab(page, address))

    passing = {
        name: sum(one.grade == "pass" for one in checks.findings(chain_of(load_design(shipped() / "designs" / f"{name.replace(' ', '-')}.toml"))))
        for name in ("garden cascade", "library bowl")
    }
    assert len({*passing.values()}) == 2, "each is known by how many pass"

    def round_trip():
        for name, count in passing.items():
            page.get_by_role("button", name="My designs").click()
            page.get_by_role("button", name=name).click()
            page.locator(".bw-head h2", has_text=name.capitalize()).wait_for()
            page.locator(".bw-findings [data-group=pass] > summary", has_text=f"({count})").wait_for()  # drawn last

    def held():
        """Without JupyterLab's list of files, which looks at the folder every ten seconds, and may have seen it while it was being laid out."""
        return page.evaluate(
            """() => [[...document.querySelectorAll('*')].filter(one => !one.closest('.jp-DirListing')).length,
              [...window.jupyterapp.shell.currentWidget.sessionContext.session.kernel._comms.keys()].length]"""
        )

    round_trip()
    nodes, comms = held()
    for _ in range(6):
        round_trip()
    more, as_many = held()
    assert as_many == comms and more <= nodes + 40
