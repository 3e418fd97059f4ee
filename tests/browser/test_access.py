"""Every workbook serves those who do not see it, see it badly, or have only the file: an accessibility scan by axe-core of each as a page without code, of one of
each kind in JupyterLab too, where both have the same outputs; and copies that nobody trusts yet.
"""

import json

import lab
import pytest
from axe_playwright_python.sync_playwright import Axe

from brimwork.notebook import books

THEMES = ("JupyterLab Light", "JupyterLab Dark")
WITHOUT_CODE = sorted(books.books().keys() - books.WITH_CODE)
IN_JUPYTERLAB = ("python.ipynb", "design.ipynb", "overflow.ipynb", "quick-check.ipynb")  # one of each kind of page
IN_THE_DARK = IN_JUPYTERLAB[1:]  # their colours are judged in both themes by test_colours too
OF_DESIGNS = ("design", "quick-check")
GRAVE = ("serious", "critical")
# Every fold is open, those of outputs too that JupyterLab sets once more, and every picture is seen.
_ALL_OPEN = """() => { document.querySelectorAll('.jp-OutputArea details:not([open])').forEach(fold => fold.open = true);
  return [...document.querySelectorAll('.jp-OutputArea img')].every(image => image.checkVisibility()); }"""
_ALL_SHOWN = """() => document.querySelectorAll('.jp-OutputArea figure').length ===
  JSON.stringify(window.jupyterapp.shell.currentWidget.context.model.toJSON()).split('<figure').length - 1"""
# Every figure that the notebook holds stands in the page, and none is drawn in the page any more: each is an image at rest.
_AT_REST = """() => { const figures = [...document.querySelectorAll(".jp-OutputArea figure:not(.bw-paper)")];
  return figures.every(figure => figure.querySelector('img')) && figures.length >=
    JSON.stringify(window.jupyterapp.shell.currentWidget.context.model.toJSON()).split('<figure').length - 1; }"""
_PAINTED = """async () => { await Promise.allSettled(document.getAnimations().filter(one => one.effect.getComputedTiming().endTime < 1e9).map(one => one.finished));
  await new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done))); }"""
_WATER = """image => { const canvas = document.createElement('canvas'); canvas.width = image.width; canvas.height = image.height;
  const pen = canvas.getContext('2d'); pen.drawImage(image, 0, 0, image.width, image.height);
  const all = pen.getImageData(0, 0, image.width, image.height).data; let count = 0;
  for (let i = 0; i < all.length; i += 4) if (Math.abs(all[i] - 0xdf) + Math.abs(all[i+1] - 0xe8) + Math.abs(all[i+2] - 0xff) < 6) count++;
  return count / image.width / image.height; }"""
# A formula of one colour is made one small text in it: each of its letters stands in boxes of its own, most of what there is in a page, and has the contrast of all.
_FORMULAS = """() => { for (const formula of document.querySelectorAll('.katex-html')) {
  const looks = [...formula.querySelectorAll('span')].map(part => getComputedStyle(part)).map(look => [look.color, look.backgroundColor, look.opacity].join());
  if (new Set(looks).size < 2) { formula.textContent = formula.textContent; formula.style.fontSize = '0.5em'; } } }"""
_TOO_WIDE = "drawings => drawings.filter(drawing => drawing.getBoundingClientRect().right > innerWidth).length"


def scanned(page, where=None, rules=None):
    """What axe-core finds grave, all `rules` or some; and how many elements each rule passed: all of those about pictures, one at most of the others."""
    only = {"runOnly": rules} if rules else {}
    page.evaluate(_FORMULAS)
    # The places are told by their markup; to tell all that passes takes as long again.
    found = Axe().run(page, where, {"resultTypes": ["violations"], "selectors": False, **only}).response
    seen = Axe().run(page, where, {"resultTypes": ["passes"], "selectors": False, "runOnly": ["image-alt", "svg-img-alt"]}).response
    wrong = [f"{rule['impact']}: {rule['id']}: {node['html'][:300]}" for rule in found["violations"] if rule["impact"] in GRAVE for node in rule["nodes"]]
    return wrong, {rule["id"]: len(rule["nodes"]) for rule in [*found["passes"], *seen["passes"]]}


def scan(page, theme, rules=None):
    """The same of the outputs in a theme, every fold open, and how many pictures they have."""
    page.evaluate("theme => window.jupyterapp.commands.execute('apputils:change-theme', {theme})", theme)
    page.wait_for_function("dark => document.body.dataset.jpThemeLight === (dark ? 'false' : 'true')", arg="Dark" in theme)
    tall = page.add_style_tag(content="body { height: 100vh }")  # JupyterLab's body has no height and hides what overflows it: axe would take all for hidden
    page.wait_for_function(_AT_REST, polling=lab.OFTEN)
    page.wait_for_function(_ALL_OPEN, polling=lab.OFTEN)
    page.evaluate(_PAINTED)
    pictures = page.locator(".jp-OutputArea img").count()
    wrong, passed = scanned(page, {"include": [[".jp-OutputArea-output"]]}, rules)
    tall.evaluate("tag => tag.remove()")
    return wrong, passed, pictures


def disturb(page, where=".jp-OutputArea"):
    """Bad input in the first boxes, so that what is said to it is scanned too."""
    for box in page.locator(f"{where} input[type=text]:visible").all()[:3]:
        box.fill("banana")
        box.press("Enter")
    page.get_by_role("alert").or_(page.get_by_role("status")).locator("visible=true").first.wait_for()


@pytest.mark.parametrize("name", IN_JUPYTERLAB)
def test_a_workbook_runs_draws_within_its_page_and_axe_finds_nothing_grave(page, address, name):
    lab.open_workbook(page, address, name)
    assert page.locator(".jp-RenderedText[data-mime-type='application/vnd.jupyter.stderr']").count() == 0
    assert page.get_by_text("Traceback").count() == 0
    assert page.locator("figure img, figure svg").evaluate_all(_TOO_WIDE) == 0
    if name.removesuffix(".ipynb") in OF_DESIGNS:
        bowl(page)
    if page.locator(".jp-OutputArea input[type=text]").count():
        disturb(page)
    for theme, rules in zip(THEMES, (None, ["color-contrast", "image-alt"]) if name in IN_THE_DARK else (None,)):  # a theme changes nothing but colours
        wrong, passed, pictures = scan(page, theme, rules)
        assert not wrong, f"{theme}\n" + "\n".join(wrong)
        assert passed["color-contrast"], "text is seen"
        assert passed.get("image-alt", 0) == pictures == page.locator(".jp-OutputArea img").count(), "every picture is seen, with words"


def bowl(page):
    """On a page of designs: one that is shipped, with its form, findings and drawing."""
    page.get_by_role("button", name="library bowl").click()
    page.get_by_role("textbox", name="Across the rim").wait_for()


def opened(plain, name, wide):
    plain.set_viewport_size({"width": wide, "height": 900})
    plain.goto(f"{plain.start}page/{name}")
    plain.wait_for_selector("body[data-alive]")
    if name in OF_DESIGNS:
        bowl(plain)


@pytest.mark.parametrize("name", WITHOUT_CODE)
def test_axe_finds_nothing_grave_on_a_page_without_code(plain, name):
    opened(plain, name, 1024)
    if name != "capstone" and plain.locator("main input[type=text]:visible").count():  # whose boxes are answered once a button is pressed
        disturb(plain, "main")
    plain.evaluate("() => document.querySelectorAll('main details').forEach(fold => fold.open = true)")
    plain.evaluate(_PAINTED)
    assert plain.get_by_text("Traceback").count() == 0
    assert plain.locator("figure img, figure svg").evaluate_all(_TOO_WIDE) == 0
    pictures = plain.locator("img:visible, svg[role=img]:visible").count()
    wrong, passed = scanned(plain)
    assert not wrong, "\n".join(wrong)
    assert passed["color-contrast"], "text is seen"
    assert passed.get("image-alt", 0) + passed.get("svg-img-alt", 0) == pictures, "every picture is seen, with words"


_NOT_RINGED = """() => [...document.querySelectorAll('main :is(a, button, input, select, textarea, summary)')].filter(one => one.checkVisibility() && !one.disabled).filter(one => {
  one.focus({focusVisible: true});
  const look = getComputedStyle(one), wide = parseFloat(look.outlineWidth), out = Math.max(wide + parseFloat(look.outlineOffset), 0), ring = one.getBoundingClientRect();
  if (look.outlineStyle === 'none' || wide < 2) return true;
  for (let row = one.parentElement; row !== document.body; row = row.parentElement) {
    const room = row.getBoundingClientRect();
    if (getComputedStyle(row).overflowY !== 'visible' && (ring.top - out < room.top - 1 || ring.left - out < room.left - 1 || ring.right + out > room.right + 1)) return true;
  } return false; }).map(one => one.outerHTML.slice(0, 200))"""


@pytest.mark.parametrize("wide", [1024, 390])
@pytest.mark.parametrize("name", ["pipes", "quick-check", "design"])
def test_what_has_the_focus_is_ringed_and_no_row_cuts_the_ring(plain, name, wide):
    opened(plain, name, wide)
    plain.locator("main :is(button, input, summary)").nth(8).wait_for()
    assert plain.evaluate(_NOT_RINGED) == []


def test_the_scan_reports_a_picture_without_words_a_slider_without_a_name_and_pale_text(page, address):
    lab.open_workbook(page, address, "00-start.ipynb")
    page.locator(".jp-OutputArea-output").first.evaluate(
        """output => output.insertAdjacentHTML('beforeend', '<img src="data:,"><input type="range"><p style="color:#999;background:#fff">pale</p>')"""
    )
    wrong, _, _ = scan(page, THEMES[0])
    assert {line.split(": ")[1] for line in wrong} == {"image-alt", "label", "color-contrast"}


def test_what_jupyterlab_said_while_nobody_looked_stops_no_later_test(page, address):
    lab.open_workbook(page, address, "00-start.ipynb")
    page.evaluate("() => void window.jupyterapp.commands.execute('help:about')")
    page.locator(".jp-Dialog").wait_for()
    with pytest.warns(UserWarning, match="JupyterLab said: Version"):
        lab.open_workbook(page, address, "00-start.ipynb")


def untrusted_copy(page, name):
    """Save the workbook that is open, and a copy with a cell more: its signature fits no longer, as after a download. Returns the name of the copy."""
    lab.save(page)
    page.evaluate(
        """async ([name, copy]) => { const files = window.jupyterapp.serviceManager.contents, book = await files.get(name, {content: true});
          book.content.cells.push({cell_type: 'code', source: '# copied', metadata: {}, outputs: [], execution_count: null});
          await files.save(copy, {type: 'file', format: 'text', content: JSON.stringify(book.content)}); }""",
        [name, f"copy-{name}"],
    )
    return f"copy-{name}"


def shown_without_running(page, address, name):
    """The workbook opened, nothing run, no cell trusted: each picture as (description, caption, share of it that is water)."""
    lab.open_workbook(page, address, name, run=False)
    page.wait_for_function(_ALL_SHOWN, polling=lab.OFTEN)
    trust = page.evaluate("() => window.jupyterapp.shell.currentWidget.content.widgets.map(cell => cell.model.trusted)")
    assert True not in trust[1:], "nobody has trusted this copy"
    assert page.locator(".jp-OutputArea figure svg").count() == 0, "JupyterLab strips what it does not trust"
    shown = []
    for figure in page.locator(".jp-OutputArea figure:has(figcaption)").all():
        image = figure.locator("img")
        image.evaluate("image => image.decode()")
        shown.append((image.get_attribute("alt"), figure.locator("figcaption").inner_text().replace("\u00a0", " "), image.evaluate(_WATER)))
    return shown


def test_a_downloaded_copy_shows_the_last_live_picture_with_description_and_numbers(page, address, served):
    lab.open_overflow(page, address, served[0])
    page.get_by_role("slider", name="head over the lip, from 6 to 20 mm").first.press("End")
    page.wait_for_function("() => document.querySelector('figure figcaption').textContent.replaceAll('\\u00a0', ' ').includes('lip 20 mm')")
    page.locator("figure").first.locator("img").wait_for()
    page.wait_for_function(_AT_REST, polling=lab.OFTEN)
    figures = page.locator("figure:has(figcaption)").count()
    shown = shown_without_running(page, address, untrusted_copy(page, "overflow.ipynb"))
    assert len(shown) == figures > 1
    description, caption, water = shown[0]
    assert "head over the lip 20 mm" in caption and len(description) > 40 and description not in caption, "it says the shape"
    assert water > 0.05, "the picture itself is there"
    page.locator("figure summary").first.click()
    assert page.locator("figure").first.locator("tbody tr").count() >= 5


@pytest.mark.parametrize("name", ["reservoir.ipynb", "loads.ipynb"])
def test_a_workbook_as_it_is_shipped_shows_its_pictures_before_anything_runs(page, address, served, name):
    """With a cell more, so that it does not come to life by itself. Pictures that wait for a prediction are not there yet."""
    book = json.loads((served[0] / name).read_text(encoding="utf-8"))
    book["cells"].append({"cell_type": "code", "source": "# copied", "metadata": {}, "outputs": [], "execution_count": None})
    (served[0] / f"copy-{name}").write_text(json.dumps(book), encoding="utf-8")
    shown = shown_without_running(page, address, f"copy-{name}")
    assert len(shown) >= 4
    for description, caption, _ in shown:
        assert len(description) > 40 and description not in caption
