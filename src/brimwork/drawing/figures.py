"""The pictures in figures/, made by code: python -m brimwork.drawing.figures FOLDER. The same bytes every time."""

from __future__ import annotations

import sys
from pathlib import Path

from brimwork import topics
from brimwork.drawing import svg
from brimwork.drawing.pictures import picture
from brimwork.nomenclature import read_values

# file: (formula, values, letter of the curve)
_FIGURES = {
    "lip.svg": ("flow over a level lip", "H=12 mm, b=600 mm, C_d=0.62", "H"),
    "rim.svg": ("flow ratio of a rim out of level", "H=3 mm, e_rim=2 mm", "e_rim"),
    "pit.svg": ("volume of a battered pit", "L=1200 mm, W=900 mm, h=600 mm, m_b=0.35", "h"),
}


def figures() -> dict[str, str]:
    """Every stored figure by file name."""
    made = {}
    for name, (formula, values, over) in _FIGURES.items():
        shown = picture(topics.find(formula), read_values(values), over)
        made[name] = svg.write_svg(shown.sheet, Path(name).stem, scale_to_page=False) + "\n"
    return made


if __name__ == "__main__":
    for name, text in figures().items():
        Path(sys.argv[1], name).write_text(text, encoding="utf-8")
