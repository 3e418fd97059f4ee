"""Every line of mathematics that pages can show is taken by KaTeX, which sets it there."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1]))

from test_typeset import FORMULAS, latex_of  # noqa: E402

# How many lines were set, and those of which KaTeX could not read all: it leaves them as text, or writes what it does not know in red.
_SET = """async ([where, lines]) => { const { typeset } = await import(where), all = document.createElement("div");
  for (const line of lines) all.appendChild(document.createElement("p")).textContent = "$$" + line + "$$";
  typeset(all);
  return [...all.children].filter(one => one.querySelectorAll(".katex").length !== 1 || one.querySelector(".katex-error, [style*='204, 0, 0']")).map(one => one.innerText); }"""


def test_every_line_of_every_formula_is_set_and_a_wrong_one_is_told(plain):
    plain.goto(plain.start)
    lines = [line for formula in FORMULAS for line in latex_of(formula)]
    assert len(lines) > 1500
    assert plain.evaluate(_SET, [f"{plain.start}static/math.js", lines]) == []
    wrong = [r"\frac{1}{2", r"\nonsense", r"\frac{1}"]
    assert len(plain.evaluate(_SET, [f"{plain.start}static/math.js", [*wrong, r"\frac{1}{2}"]])) == len(wrong)
