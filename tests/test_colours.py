"""Colours of drawings and pages: words at 4.5:1 and lines at 3:1 on every ground they stand on (WCAG 2.1, 1.4.3 and 1.4.11), series apart for every eye.

The colours are read off the drawings themselves, so that a new one is judged too, on white paper and as a dark page turns them; what pages colour
themselves is judged on the grounds of both themes of the JupyterLab that is installed.
"""

import re
from functools import cache
from itertools import combinations, product
from pathlib import Path

import pytest
from colorspacious import cspace_convert
from jupyterlab.commands import get_app_dir
from matplotlib import colormaps
from matplotlib.colors import to_hex
from test_drawing import shown

import brimwork
from brimwork.design.follows.features import chain_of
from brimwork.design.typed.file import load_design
from brimwork.drawing import plotted, records, svg
from brimwork.drawing.design import drawings
from brimwork.drawing.layout import Dot, Stroke, Words, layout
from brimwork.drawing.pictures import pictured
from brimwork.drawing.records import BROWN, FILLS, GREY, INK, NIGHT, STYLES, WATER, Sheet

ROOT = Path(__file__).parents[1]
PAPER = "#ffffff"
DECORATION = {STYLES["grid"][1]}  # lines that only help to read off: the numbers stand beside them
SERIES = (BROWN, WATER, records.ACCENT, NIGHT, GREY)  # colours that may tell one series from another
DEFICIENCIES = ("protanomaly", "deuteranomaly", "tritanomaly")


def rgb(colour):
    """Red, green and blue from 0 to 1."""
    return tuple(int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5))


def luminance(colour):
    """Relative luminance, WCAG 2.1."""
    return sum(share * (c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4) for share, c in zip((0.2126, 0.7152, 0.0722), rgb(colour)))


def contrast(a, b):
    """Contrast ratio, WCAG 2.1."""
    low, high = sorted((luminance(a), luminance(b)))
    return (high + 0.05) / (low + 0.05)


def seen(colour, kind):
    """A colour as an eye with one kind of colour blindness in full sees it (Machado and others, 2009), as far as a screen can show that."""
    return cspace_convert(rgb(colour), {"name": "sRGB1+CVD", "cvd_type": kind, "severity": 100}, "sRGB1").clip(0, 1) if kind else rgb(colour)


def separation(colours):
    """The least difference (CAM02-UCS) between two of the colours, to the usual eye and with each kind of colour blindness."""
    placed = [[cspace_convert(seen(colour, kind), "sRGB1", "CAM02-UCS") for colour in colours] for kind in (None, *DEFICIENCIES)]
    return min(float(((a - b) ** 2).sum() ** 0.5) for one in placed for a, b in combinations(one, 2))


@cache
def sheets():
    """Every picture of a formula, and every drawing of the designs that are shipped."""
    made = [shown(name, 0.5)[2].sheet for name in pictured()]
    for path in sorted((ROOT / "workbooks" / "designs").glob("*.toml")):
        made += [sheet for _, sheet in drawings(chain_of(load_design(path))) if isinstance(sheet, Sheet)]
    return made


def hatchings():
    """Name: the colour under a hatching and those of its strokes and dots."""
    found = {}
    for name, (_, _, body) in svg._HATCHINGS.items():
        ground = re.search(r'<rect [^>]*fill="(#\w{6})"', body)
        found[name] = (ground[1] if ground else PAPER, {c for c in re.findall(r"#\w{6}", body) if not ground or c != ground[1]})
    return found


def grounds():
    """Colours that lines and words stand on: the pale fills. A dark fill is itself a mark."""
    fills = {name: colour for name, colour in FILLS.items() if colour} | {name: under for name, (under, _) in hatchings().items()}
    return {name: colour for name, colour in fills.items() if contrast(colour, PAPER) < 3}


def marks():
    """Colours of lines, dark fills, arrow heads and dots."""
    lines = {colour for _, colour, _ in STYLES.values() if colour != "none"} - DECORATION
    dots = {mark.colour for sheet in sheets() for _, every in layout(sheet) for mark in every if isinstance(mark, Dot)}
    return lines | dots | {colour for colour in svg._COLOURS.values() if contrast(colour, PAPER) >= 3}


def lettering():
    return {mark.colour for sheet in sheets() for _, every in layout(sheet) for mark in every if isinstance(mark, Words)}


def test_contrast_is_computed_as_the_standard_and_two_programs_have_it():
    """21:1 for black on white is the end of the scale (WCAG 2.1, definition of contrast ratio); 4.45 (cut, not rounded) is what axe-core 4.12 says of these two greys."""
    assert contrast("#000000", "#ffffff") == pytest.approx(21)
    assert contrast("#6d6d6d", "#eeeeee") == pytest.approx(4.455, abs=0.005)
    for colour in (WATER, "#C94F12", "#786574", "#dfe8ff"):  # the luminance of the CIE, by a library for colours
        assert luminance(colour) == pytest.approx(cspace_convert(rgb(colour), "sRGB1", "XYZ100")[1] / 100, abs=2e-3)


def test_every_colour_of_a_drawing_is_one_that_is_judged_here():
    judged = {*grounds().values(), *marks(), *lettering(), *DECORATION, PAPER}.union(*(strokes for _, strokes in hatchings().values()))
    for sheet in sheets():
        assert {*re.findall(r"#[0-9a-fA-F]{6}\b", svg.write_svg(sheet))} <= judged, sheet.title


def test_words_stand_out_from_the_white_that_is_drawn_round_them():
    """Words inside a view carry a white edge of 0.45 mm on every side; those without stand on the bare paper beside the views."""
    for colour in lettering():
        assert contrast(colour, PAPER) >= 4.5, colour
    for sheet in sheets():
        for view, every in layout(sheet):
            assert view is None or all(word.halo for word in every if isinstance(word, Words)), sheet.title
        assert svg.write_svg(sheet).count(f'<rect width="{sheet.width:g}" height="{sheet.height:g}" fill="{PAPER}"/>') == 1, "what is saved has white paper"


def test_lines_and_marks_stand_out_from_every_ground():
    for colour, (name, ground) in product(marks() | lettering(), grounds().items()):
        assert contrast(colour, ground) >= 3, f"{colour} on {name} {ground}: {contrast(colour, ground):.2f}"


SHOWS_DRAWINGS = ("part.py", "page/look.css", "design_page.css")  # of the notebook: lessons in JupyterLab, pages without code, the page of a design


def in_the_dark(colour):
    """A colour as a dark page turns it: the filter of the pages, by the formulas of Filter Effects Module Level 1, sections 8.2 and 8.5 (from memory)."""
    ways = {
        found
        for name in SHOWS_DRAWINGS
        for found in re.findall(r"filter: invert\((\.\d+)\) hue-rotate\((\d+)deg\)", (ROOT / "src/brimwork/notebook" / name).read_text())
    }
    [(share, turn)] = ways
    assert turn == "180", "half a turn: the cosine is -1, the sine nothing"
    inverted = [float(share) + one * (1 - 2 * float(share)) for one in rgb(colour)]
    grey = sum(part * one for part, one in zip((0.213, 0.715, 0.072), inverted))
    return "#" + "".join(f"{round(255 * min(max(2 * grey - one, 0), 1)):02x}" for one in inverted)


def test_a_dark_page_has_dark_drawings_that_can_be_read():
    """White turns to 1 - 0.88 = 0.12 of white; then words keep 4.5:1 on that ground, and lines and hatchings 3:1 on what they stand on."""
    assert in_the_dark(PAPER) == "#1f1f1f"  # 0.12 x 255 = 30.6
    assert all(contrast(in_the_dark(colour), in_the_dark(PAPER)) >= 4.5 for colour in lettering())
    for colour, ground in (*product(marks() | lettering(), grounds().values()), *((one, under) for under, strokes in hatchings().values() for one in strokes)):
        assert contrast(in_the_dark(colour), in_the_dark(ground)) >= 3, f"{colour} on {ground}"


def test_hatchings_stand_out_from_what_is_under_them_and_are_the_same_in_both_writers():
    for name, (under, strokes) in hatchings().items():
        assert strokes and all(contrast(stroke, under) >= 3 for stroke in strokes), name
        ground = plotted._HATCHES[name][0]
        assert (PAPER if ground == "none" else ground) == under


def test_the_colours_of_series_stay_apart_with_every_kind_of_colour_blindness():
    """The limit of 25 is a choice of this project. What it refuses: the ten default colours of matplotlib, of which two nearly fall together.

    29.5 and 1.6 were measured before these tests, by other code with the same library.
    """
    assert separation(SERIES) >= 25
    assert separation(["#450F1B", "#386BFC", "#C94F12", "#070989", "#786574"]) == pytest.approx(29.5, abs=0.05)
    assert separation([to_hex(colour) for colour in colormaps["tab10"].colors]) == pytest.approx(1.6, abs=0.05)
    assert separation([WATER, "#3d7a00", "#a86a00"]) < 25, "green beside brown"


def test_every_curve_of_a_chart_has_a_colour_of_the_series_and_a_dash_of_its_own():
    charts = 0
    for sheet in sheets():
        for view, every in layout(sheet):
            strokes = [mark for mark in every if isinstance(mark, Stroke)]
            if view is None or not any(stroke.style == "axis" for stroke in strokes):
                continue
            curves = {stroke.style for stroke in strokes if len(stroke.points) > 8}
            charts += 1
            assert {STYLES[style][1] for style in curves} <= {*SERIES, INK}, sheet.title
            assert len({STYLES[style][2] for style in curves}) == len(curves), f"{sheet.title}: two curves differ by colour alone"
    assert charts > 50


def theme(name):
    """The colours of a theme of JupyterLab by the names of its variables."""
    css = (Path(get_app_dir()) / "themes" / "@jupyterlab" / f"theme-{name}-extension" / "index.css").read_text(encoding="utf-8")
    found = {}
    for variable, value in re.findall(r"(--jp-[\w-]+): *([^;}]+)", css):
        colour = re.search(r"#[0-9a-fA-F]{6}\b|#[0-9a-fA-F]{3}\b", value)
        if colour or value in ("white", "black"):
            text = colour[0] if colour else {"white": "#fff", "black": "#000"}[value]
            found[variable] = text if len(text) == 7 else "#" + "".join(2 * c for c in text[1:])
    return found


def said_by_pages():
    """Every colour that code of the workbooks gives to what it shows, as CSS."""
    texts = [path.read_text(encoding="utf-8") for kind in ("*.py", "*.js") for path in (Path(brimwork.__file__).parent / "notebook").glob(kind)]
    return {
        found
        for text in texts
        for found in re.findall(r"color-mix\([^()]*\([^()]*\)[^()]*\)|(?<!, )var\(--jp-[^()]*\)|(?<![\w&#(,] )(?<![\w&#(,])#[0-9a-fA-F]{6}\b", text)
    }


def resolved(css, colours):
    """A colour of a page in a theme; mixed with the colour of text where it says so."""
    if mixed := re.fullmatch(r"color-mix\(in srgb, (var\(.*\)) (\d+)%, currentcolor\)", css):
        share, ink = int(mixed[2]) / 100, colours["--jp-content-font-color0"]
        return "#" + "".join(f"{round(255 * (share * a + (1 - share) * b)):02x}" for a, b in zip(rgb(resolved(mixed[1], colours)), rgb(ink)))
    if variable := re.fullmatch(r"var\((--jp-[\w-]+)(?:, (#\w{6}))?\)", css):
        return colours[variable[1]]
    return css


@pytest.mark.parametrize("name", ["light", "dark"])
def test_what_pages_colour_can_be_read_on_the_grounds_of_both_themes(name):
    colours = theme(name)
    for css in said_by_pages():
        if "font-color" in css:
            continue  # the theme's own ink
        least = 3 if "brand" in css else 4.5  # the thumb of a slider is no text
        for ground in ("--jp-layout-color0", "--jp-layout-color1"):
            assert contrast(resolved(css, colours), colours[ground]) >= least, f"{css} on {ground}"
    assert len(said_by_pages()) >= 2


def test_the_red_of_the_dark_theme_alone_would_not_do():
    colours = theme("dark")
    assert contrast(colours["--jp-error-color1"], colours["--jp-layout-color1"]) < 4.5
