"""Whether what a slip's sentence says of a number is so, over many sets of numbers. Run `python tests/sentences_over_sets.py [--sets 100]`; the suite draws a few.

A claim is a phrase, and between what the number of the slip over the right one must then lie: worked out by hand from what the phrase says, not from what the
formulas give. Phrases about something else than the result ("the area came out four times too big") are no claims about it.
"""

from __future__ import annotations

import argparse
import re
from collections.abc import Iterator

import simulated_learner as simulated

from brimwork.formula import Formula

LESS, MORE = (-1e9, 1 - 1e-9), (1 + 1e-9, 1e9)


def _about(ratio: float, by: float = 1e-6) -> tuple[float, float]:
    return ratio * (1 - by), ratio * (1 + by)


CLAIMS: tuple[tuple[str, tuple[float, float]], ...] = (
    # how many times
    (r"(?<!area came out )(?<!It is )\bfour times too (?:much|big)", _about(4)),
    (r"twice too big", _about(2)),
    (r"ten times too", _about(10)),
    (r"thousand times too much", _about(1000)),
    (r"boil sixteen times too small", _about(1 / 16)),
    (r"came out a third as long", (0.3, 0.35)),
    (r"half as much again", _about(2 / 3)),
    (r"bore is twice as wide", _about(0.5)),
    (r"lifts half as high", _about(2)),
    (r"(?<!Laid double it )reaches half as far", _about(2)),
    (r"edge of a triangle carries twice as much", _about(0.5)),
    (r"edge carries a third more", _about(0.75)),
    (r"distance from the load to the edge\. The triangle is three times as long", _about(1 / 3)),
    (r"for all four corners together", _about(4)),
    (r"a fifth less loss", (0.77, 0.83)),
    (r"fills about 79 %", _about(1 / 0.7854, 1e-3)),
    (r"The mean is two thirds of it", _about(1.5)),
    (r"The depth is two thirds of it|The mean is half of it", (1.5 - 1e-6, 2 + 1e-6)),
    (r"have their own, more than twice as much", (0, 0.5)),
    # which way
    (r"so it takes longer|it takes much longer|meanwhile: it takes longer", LESS),
    (r"costs more, not less|price must be higher than the cost|More has to be bought", LESS),
    (r"so the average is too big|so it holds less|tapers both ways holds less|fewer blocks will do|stone beside them holds less", MORE),
    (r"makes the tank smaller than the water it must hold", LESS),
    (r"The empty share makes the area smaller", MORE),
    (r"the level (?:moves|falls|falls by) more|so it stands higher|there is less room, so the level", LESS),
    (r"diagonal is shorter|Along the slope is shorter", MORE),
    (r"diagonal is longer|diagonal of a rectangle is longer|longer than the depth", LESS),
    (r"heap is bigger than the hole|heap is smaller than the hole|[Ll]oose (?:soil|material) takes (?:up )?more room", LESS),
    (r"takes up more room so\.|packs down, so order more|takes more loose stone than rolled", LESS),
    (r"must make the allowed load smaller", MORE),
    (r"arrive with speed, and passes more|near edge carries more", LESS),
    (r"of the head and passes less|far edge carries less|At this flow the pump gives less|As soon as water moves the pump gives less", MORE),
    (r"Real pumps take in more power than they give", LESS),
    (r"Slower turning moves less water", MORE),
    (r"[Mm]ore flow loses more head", LESS),
    (r"draws more current|power factor means more current|current is larger than the power alone needs", LESS),
    (r"[Ww]arm(?:er and| copper) resists more|Cold water is much more viscous", LESS),
    (r"At first there is less|Loss makes it less|makes the top-up smaller|It makes the rain less", MORE),
    (r"dig goes deeper by that much|wider rim drops more|so its drop is larger|Before it the water stands higher", LESS),
    (r"Only the solid share weighs, so it takes more|so it takes more of it: divide", LESS),
    (r"US gallon is smaller and weighs", MORE),
    (r"More depth also makes the water faster", LESS),
    (r"the mean of the two pressures is more", LESS),
    (r"Right at the edge the water is thinner, and so faster|thinner, 0.715 of that, and faster", LESS),
    (r"and so thinner than at the edge", MORE),
    (r"limit comes a little earlier", MORE),
    (r"so it rises more and more slowly|so the last of it takes much longer", LESS),
    (r"lets far less through|Warm water boils sooner|jet of that height carries less", MORE),
    (r"so the number of litres must be larger|Loose soil takes up more room than it did", LESS),
    (r"so there are fewer of them", MORE),
    (r"It counts as well|goes round as well|ballast holds less than it weighs", LESS),
    (r"weighs much more", LESS),
    (r"below its critical depth|At the edge the water is thinner than before it", MORE),
    (r"the tank fuller than it is", MORE),
)


def claims(sentence: str) -> Iterator[tuple[str, tuple[float, float]]]:
    """The claims that a sentence makes on the number of its slip over the right one."""
    return ((pattern, between) for pattern, between in CLAIMS if re.search(pattern, sentence))


def falsely_said(sets: int, questions=None) -> Iterator[tuple]:
    """Each claim that is not so: question, seed, ratio, sentence. Last comes how many were looked at."""
    looked = 0
    for question in questions or simulated.declared():
        slips = question.slips if isinstance(question, Formula) else question.wrong
        held = [(place, between, pattern) for place, slip in enumerate(slips) for pattern, between in claims(slip.feedback)]
        for seed in range(1, sets + 1) if held else ():
            posed = simulated.pose(question, seed)
            for place, (low, high), pattern in held:
                looked += 1
                ratio = posed.slips[place].number / posed.answer
                if not low <= ratio <= high:
                    yield simulated.name_of(question), seed, f"{ratio:.4g}", pattern, slips[place].feedback
            if not posed.varies:
                break
    yield (looked,)


def main() -> int:
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--sets", type=int, default=100)
    *found, (looked,) = falsely_said(options.parse_args().sets)
    for row in found:
        print(" | ".join(map(str, row)))
    print(f"{looked} claims looked at, {len(found)} not so")
    return 1 if found else 0


if __name__ == "__main__":
    raise SystemExit(main())
