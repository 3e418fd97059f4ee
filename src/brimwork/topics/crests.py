"""Crests: flow and head on a crest so broad that the water settles on it, as on a thick stone lip."""

from brimwork.conditions import TestedRange
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import flow_on_a_crest, specific_energy
from brimwork.sources import ELGER, SWMM_MANUAL
from brimwork.steps import Eliminate, Optimum, Step, Take

broad_crest = Formula(
    name="flow over a broad crest",
    result="Q",
    equals="(2/3)**(3/2)*sqrt(g)*b*H**(3/2)",
    steps=(
        specific_energy,
        flow_on_a_crest,
        Step("the energy that the depth leaves over makes the speed", "v = sqrt(2*g*(E_s - y_c))"),
        Eliminate("put that speed into the flow", out=("v",), relation="q = y_c*sqrt(2*g*(E_s - y_c))"),
        Optimum(
            "no depth makes no flow, and all depth no speed; in between most of it passes, where the slope of the flow is nought",
            of="q",
            kind="max",
            relation="y_c = 2/3*E_s",
        ),
        Step("put that depth in: a third of the energy is left for the speed", "q = 2/3*E_s*sqrt(2*g*E_s/3)"),
        Step("take the energy together: it stands once in front and once under the root", "q = (2/3)**(3/2)*sqrt(g)*E_s**(3/2)"),
        Take("upstream the water is nearly at rest, so its energy is the head over the crest", "E_s = H"),
        Take("every metre of the crest passes the same", "Q = b*q"),
        Step("put both in"),
    ),
    tested=(TestedRange("H", "61 mm", "", SWMM_MANUAL.at("Table 6-3, where it begins")),),
    published=(Published("b=1 m, H=1 m, g=9.81 m/s2", "1.7053 m3/s", 5e-4, ELGER.at("Eq. 15.30, 0.385 sqrt(2 g)")),),
    slips=(
        Slip(
            "2/3*b*sqrt(2*g)*H**(3/2)",
            "That is a thin edge without its coefficient. On a broad crest the water settles at two thirds of the head and passes less. Use two thirds of the head for depth and speed.",
        ),
        Slip("b*sqrt(g)*H**(3/2)", "You took the whole head as depth on the crest. Two thirds of it are depth, one third makes the speed."),
    ),
    ranges={"H": ("6 mm", "30 mm")},
    rises=("b", "H"),
)

head_at_broad_crest = Formula(
    name="head at a broad crest",
    result="H",
    equals="3/2*(Q/(sqrt(g)*b))**(2/3)",
    inverse_of=broad_crest,
    tested=broad_crest.tested,
    published=(Published("Q=1.7053 m3/s, b=1 m, g=9.81 m/s2", "1 m", 5e-4, ELGER.at("Eq. 15.30, turned round")),),
    slips=(Slip("(Q/(sqrt(g)*b))**(2/3)", "That is the depth on the crest. The head upstream is half as much again."),),
    ranges={"Q": ("24 L/min", "120 L/min"), "b": ("300 mm", "1200 mm")},
    rises=("Q",),
    falls=("b",),
)
