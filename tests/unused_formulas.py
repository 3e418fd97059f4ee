"""Lists the formulas that nothing outside their own topic uses: python tests/unused_formulas.py.

A use is the formula's name in quotes, or its Python name, in a file of the kit, a workbook or a bank of questions. All of them can be looked up and
worked; those listed are waiting for a place in a workbook or in a design, and `WHY` says why somebody looks them up all the same.
"""

import importlib
import re
import sys
from pathlib import Path

from brimwork.formula import Formula
from brimwork.topics import topics

TOP = Path(__file__).parents[1]
WHY = {
    "time to drain a round bowl": "emptying a bowl for the winter", "time to drain a cone": "emptying a cone-shaped bowl",
    "pressure after a sudden widening": "why a widening does not give all the pressure back",
    "loss coefficient of a reducer": "a reducer in place of a step", "mark-up from margin": "turning a margin into the mark-up that a supplier names",
    "head at an opening": "the level over a drain that must carry a flow", "bore of an overflow pipe": "choosing the pipe, where the design checks one",
    "time to draw down over a V-notch": "measuring a flow with a notch", "leak through a narrow gap round a pipe": "how much a badly sealed pipe loses",
    "vapour pressure of saturated air": "one temperature, where the design takes the mean of two", "sunlight through the sky": "where hours of sunshine are known",
    "thickness of a falling stream": "a stream that is round and no sheet", "mean speed of a film": "how fast a film runs", "least flow that keeps a face wet": "a face that must not run dry",
    "capillary rise in a tube": "a slot or a tube that wicks", "capillary rise in a gap": "liner and stone that wick water over an edge",
    "head of a pressure": "a pump that is labelled in bar", "speed from flow and area": "any cross-section that is not round", "liner folded away round a circle": "a round pit",
    "swell from densities": "soil that was weighed", "active coefficient of earth pressure": "a wall that gives", "coefficient of earth pressure at rest": "a wall that does not give",
    "head lost at another flow": "one measured loss, another flow", "flow through a V-notch with corrected head": "small heads in a measuring notch",
    "flow error from a head error": "how well a reading must be taken", "flow with a velocity of approach": "a channel as narrow as its lip", "equivalent length of fittings": "tables in metres of pipe",
    "power at another turning speed": "a pump with a speed control", "duty flow of two equal pumps one after the other": "a lift that one pump cannot make",
    "wire-to-water efficiency": "judging a pump by a meter and a bucket", "cost of pumping for a year": "the same for a flow and a head", "power that a pump takes in": "what a pump needs before one is chosen",
    "rise of the water in a bend": "a rill that bends", "time to drain through a pipe": "emptying through a hose", "discharge coefficient by a bucket": "measuring an own outlet",
    "water on its way back after a time": "how fast the tank falls after a start", "resistance of a warm copper conductor": "a long cable under load", "bulk density from void fraction": "ordering by mass",
    "volume of a tapered pit": "a pit dug with sloping sides", "density of water by temperature": "how little it matters", "kinematic viscosity from viscosity and density": "tables that give the other one",
    "surface tension of water by temperature": "films in cold water", "pressure at which water boils": "the suction side of a pump", "time that a reserve lasts": "a reserve that is measured",
    "water that the reservoir must hold": "a first size from three volumes", "evaporation of open water by Penman": "a reservoir without stone over it, from the weather of a day",
}  # fmt: skip


def unused() -> list[tuple[str, str]]:
    """(topic, name) of every formula that nothing else mentions; one that another formula of its topic starts from is used."""
    kit = {path: path.read_text() for path in (TOP / "src" / "brimwork").rglob("*.py")}
    books = [path.read_text() for path in (TOP / "workbooks").glob("*.ipynb")]
    words = {path: set(re.findall(r"\w+", text)) for path, text in kit.items()}
    found = []
    for topic in topics():
        module = importlib.import_module(f"brimwork.topics.{topic}")
        own = kit[Path(module.__file__)]
        others = [path for path in kit if path != Path(module.__file__)]
        for variable, formula in vars(module).items():
            if isinstance(formula, Formula) and len(re.findall(rf"\b{variable}\b", own)) < 2:
                if not any(variable in words[path] or f'"{formula.name}"' in kit[path] for path in others):
                    if not any(formula.name in text for text in books):
                        found.append((topic, formula.name))
    return found


if __name__ == "__main__":
    rows = unused()
    for topic, name in rows:
        print(f"{topic:<20} {name}: {WHY.get(name, 'no reason given')}")
    print(f"{len(rows)} formulas that nothing else uses")
    sys.exit(any(name not in WHY for _, name in rows))
