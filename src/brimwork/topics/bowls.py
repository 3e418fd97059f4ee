"""Draining of bowls and cones through an opening at their lowest point: the surface shrinks as it falls, so the last of it goes fast."""

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import emptying, surface_in_a_bowl
from brimwork.sources import SCHASCHKE, UNATTRIBUTED
from brimwork.steps import Ode, Take

_START = ("H_2 = H_1", "t_drain = 0")
_FLOW = Take("at each head the opening passes its own flow", "Q = C_d*A_o*sqrt(2*g*H_2)")
_NO_CD = "You left out the discharge coefficient. The stream narrows behind the opening, so less comes than the plain theory says."
_UPRIGHT = "That is a tank with upright sides and the first surface. This one narrows as it empties. Use the volume of its own shape between the two levels."

bowl_drains = Formula(
    name="time to drain a round bowl",
    result="t_drain",
    equals="pi*(4/3*R_s*(H_1**(3/2) - H_2**(3/2)) - 2/5*(H_1**(5/2) - H_2**(5/2)))/(C_d*A_o*sqrt(2*g))",
    steps=(
        _FLOW,
        surface_in_a_bowl,
        emptying,
        Ode("solve: at the first head no time has gone", "", at=(_START,)),
    ),
    where=("H_2 < H_1", "H_1 < 1.0001*R_s"),
    published=(
        Published(
            "R_s=2 m, H_1=1.5 m, H_2=0 m, C_d=0.6, A_o=19.634954 cm2, g=9.81 m/s2",
            "2285.001 s",
            5e-4,
            SCHASCHKE.at("Worked example 6.4"),
            note="opening of 50 mm; the notebook takes 1.333 for four thirds",
        ),
        Published(
            "R_s=1 m, H_1=1 m, H_2=0 m, C_d=0.62, A_o=44.178647 cm2, g=9.81 m/s2",
            "242 s",
            2e-3,
            UNATTRIBUTED.at("a half ball of 2 m across, opening of 75 mm"),
        ),
    ),
    slips=(
        Slip("2*pi*(2*R_s*H_1 - H_1**2)*(sqrt(H_1) - sqrt(H_2))/(C_d*A_o*sqrt(2*g))", _UPRIGHT),
        Slip("pi*(4/3*R_s*(H_1**(3/2) - H_2**(3/2)) - 2/5*(H_1**(5/2) - H_2**(5/2)))/(A_o*sqrt(2*g))", _NO_CD),
    ),
    ranges={"H_1": ("150 mm", "290 mm"), "H_2": ("10 mm", "100 mm")},
    rises=("R_s", "H_1"),
    falls=("C_d", "A_o", "H_2"),
    remark="For a bowl that is part of a sphere, with the opening at its lowest point and nothing running in.",
)

cone_drains = Formula(
    name="time to drain a cone",
    result="t_drain",
    equals="pi*d_rim**2*(H_1**(5/2) - H_2**(5/2))/(10*D**2*C_d*A_o*sqrt(2*g))",
    steps=(
        _FLOW,
        Take("the water stands in a circle that shrinks in proportion to its height", "A_tank = pi/4*(d_rim*H_2/D)**2"),
        emptying,
        Ode("solve: at the first head no time has gone", "", at=(_START,)),
    ),
    by_hand=(
        ByHand(
            "d_rim=600 mm, D=300 mm, H_1=250 mm, H_2=50 mm, C_d=0.6, A_o=4 cm2",
            "3.14159265*0.6**2*(0.25**2.5 - 0.05**2.5)/(10*0.3**2*0.6*0.0004*sqrt(2*9.80665))",
            "36.2856 s",
        ),
    ),
    unpublished="no printed numbers were found; the tests solve its differential equation with an independent library",
    where=("H_2 < H_1", "H_1 < 1.0001*D"),
    slips=(
        Slip("pi*d_rim**2*(sqrt(H_1) - sqrt(H_2))/(2*C_d*A_o*sqrt(2*g))", _UPRIGHT),
        Slip("pi*d_rim**2*(H_1**(5/2) - H_2**(5/2))/(10*D**2*A_o*sqrt(2*g))", _NO_CD),
    ),
    ranges={"H_1": ("150 mm", "250 mm"), "H_2": ("10 mm", "100 mm"), "D": ("260 mm", "600 mm")},
    rises=("d_rim", "H_1"),
    falls=("D", "C_d", "A_o", "H_2"),
    remark="For a cone that runs down to a point, with the opening there. A full cone empties in a fifth of the time of an upright tank of its rim and depth.",
)
