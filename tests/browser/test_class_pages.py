"""Pages that a class is given, each opened as a file: an accessibility scan by axe-core over feedback, slips, course and slides, at the width of a screen and of a phone."""

import sys
from pathlib import Path

import pytest
from axe_playwright_python.sync_playwright import Axe

sys.path.insert(0, str(Path(__file__).parents[1]))
import simulated_class  # noqa: E402

from brimwork.classroom import classfile, course, intake, marking, numbers, writing  # noqa: E402

CLASS = 'format = 1\ntitle = "Overflow & pipes, week 4"\n[questions]\n"T04.1" = 2\n"T05.1" = 2\n"T04.8" = { points = 1, alike = true }\n'
LEARNERS = 8


@pytest.fixture(scope="module")
def pages(tmp_path_factory):
    """Every page of a class of eight, one of whom handed nothing in, and of the course."""
    place = tmp_path_factory.mktemp("class")
    (place / "c.toml").write_text(CLASS)
    (place / "roster.csv").write_text("code,name\n" + "".join(f"A{number:02d},x\n" for number in range(LEARNERS)))
    group = classfile.load_class(place / "c.toml")
    secret = numbers.secret_of(place, make=True)
    sets = numbers.draw(group, secret, numbers.read_record(group, secret))
    numbers.write_record(group, sets)
    (place / "in").mkdir()
    for learner in group.learners[1:]:
        (place / "in" / f"{learner.code}.json").write_bytes(simulated_class.whole(group, sets, learner.code, slips={"T04.1": 0, "T05.1": None, "T04.8": 0}))
    writing.write_feedback(marking.mark(group, sets, intake.take_in(place / "in")), place / "out")
    (place / "out" / "course.html").write_bytes(course.course_page())
    (place / "out" / "slides.html").write_bytes(course.slides())
    return sorted((place / "out").rglob("*.html"))


@pytest.mark.parametrize("width", [1280, 390])
def test_axe_finds_nothing_grave_on_the_pages_of_a_class(browser, pages, width):
    assert len(pages) == LEARNERS + 3
    page, passed = browser.new_page(viewport={"width": width, "height": 900}), set()
    try:
        for path in pages:
            page.goto(path.as_uri())
            found = Axe().run(page, options={"resultTypes": ["violations"]}).response
            grave = [(rule["id"], node["html"][:200]) for rule in found["violations"] if rule["impact"] in ("serious", "critical") for node in rule["nodes"]]
            assert not grave, (path.name, grave)
            passed |= {rule["id"] for rule in found["passes"]}
            assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), f"{path.name} is wider than the window"
        assert {"color-contrast", "document-title", "html-has-lang"} <= passed
        page.set_content("<html><body><p style='color:#ccc'>pale</p><img src='x.png'></body></html>")
        planted = {rule["id"] for rule in Axe().run(page).response["violations"]}
        assert {"color-contrast", "image-alt"} <= planted, "a page that is not accessible is found"
    finally:
        page.close()
