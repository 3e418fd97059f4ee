"""Starting: the first seconds after the pump starts, until the head over the rim and the water on its way back have settled."""

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Slip
from brimwork.sources import BERNOULLI
from brimwork.steps import Law, Ode, Solve, Step, Take

_BALANCE = "a balance of volumes: what comes in a time"
_SOLVED = "no printed example was found; the tests solve its differential equation with an independent library"
_UPSIDE_DOWN = "The two have changed places: a bigger pump takes less time."
_STEADY = BERNOULLI.at("section on steady flow")

time_to_the_rim = Formula(
    name="time until the vessel is full to its rim",
    result="t_full",
    equals="(V_pc + V_siph)/Q",
    steps=(
        Take("before water reaches the rim, the hose must be full, and the vessel where it has emptied itself down to the hose mouth", "V_w = V_pc + V_siph"),
        Take("a steady flow brings that in", "t_full = V_w/Q"),
        Step("put it in"),
    ),
    unpublished=_BALANCE,
    slips=(
        Slip("V_siph/Q", "You forgot the hose. It has run empty as well, unless a check valve keeps it full."),
        Slip("V_pc/Q", "You forgot the vessel. It has emptied itself down to the hose mouth."),
        Slip("Q/(V_pc + V_siph)", _UPSIDE_DOWN),
    ),
    rises=("V_pc", "V_siph"),
    falls=("Q",),
    remark="With a check valve both are nothing, and water runs at once. All that time the reservoir only gives and gets nothing back.",
)

rising_head = Formula(
    name="time in which the head over a rim rises",
    result="t_rise",
    equals="2/3*A_v*H_set/Q*(log(sqrt(1 + sqrt(k_H) + k_H)/(1 - sqrt(k_H))) - sqrt(3)*(atan((2*sqrt(k_H) + 1)/sqrt(3)) - pi/6))",
    steps=(
        Take("once it has settled, the rim passes all that comes; at a share of that head it passes less", "Q_rim = Q*k_H**(3/2)"),
        Law("continuity: what comes and does not leave raises the whole surface", "Derivative(t_rise, k_H) = A_v*H_set/(Q - Q_rim)", _STEADY),
        Ode("solve: at no head no time has gone", "", at=(("k_H = 0", "t_rise = 0"),)),
    ),
    where=("k_H < 1",),
    unpublished=_SOLVED,
    slips=(
        Slip(
            "k_H*A_v*H_set/Q",
            "You let nothing over the rim meanwhile. The higher it stands the more leaves, so it rises more and more slowly. Use the law that lets water go over the rim.",
        ),
        Slip(
            "A_v*H_set/Q*log(1/(1 - k_H))", "You let the flow over the rim go with the head itself. It goes with its power 3/2. Use the law with the power 3/2."
        ),
        Slip(
            "A_v*H_set/Q",
            "That fills the space up to the settled head, with nothing over the rim, and for all of it. Use the law that lets more and more water go over.",
        ),
    ),
    rises=("A_v", "H_set", "k_H"),
    falls=("Q",),
    remark="It never quite settles in theory. Nine tenths of the head are there after 1.7 times the time in which the pump sends as much as will stand above the rim.",
)

time_on_the_way = Formula(
    name="mean time on the way back",
    result="t_way",
    equals="(V_film + V_sheet + V_hold)/Q",
    steps=(
        Take("between the rim and the reservoir there is, once it has settled", "V_way = V_film + V_sheet + V_hold"),
        Take("a steady flow takes so long to pass it", "t_way = V_way/Q"),
        Step("put it in"),
    ),
    unpublished=_BALANCE,
    slips=(
        Slip("V_hold/Q", "You counted the stone alone. Film and falling sheet hold some as well. Add all three."),
        Slip("Q/(V_film + V_sheet + V_hold)", _UPSIDE_DOWN),
    ),
    rises=("V_film", "V_sheet", "V_hold"),
    falls=("Q",),
)

flow_that_comes_back = Formula(
    name="flow that comes back",
    result="Q_back",
    equals="V_way/t_way",
    defined="film and stone let out in proportion to what is in them; when all has settled it is the flow of the pump",
    by_hand=(ByHand("V_way=6 L, t_way=15 s", "6/15*60", "24 L/min"),),
    unpublished="a model, and our own choice: real stone lets the first water through late and the last of it for hours",
    slips=(Slip("V_way*t_way", "You multiplied. The longer water is on its way, the less comes out: divide."),),
    rises=("V_way",),
    falls=("t_way",),
)

water_on_the_way = Formula(
    name="water on its way back after a time",
    result="V_way",
    equals="Q*t_way*(1 - exp(-t_on/t_way))",
    steps=(
        flow_that_comes_back,
        Law("continuity: what comes and does not come out again stays", "Derivative(t_on, V_way) = 1/(Q - Q_back)", _STEADY),
        Ode("solve: at no time there is none", "t_on = t_way*log(Q*t_way/(Q*t_way - V_way))", at=(("V_way = 0", "t_on = 0"),)),
        Solve("solve for the water", of="t_on"),
    ),
    unpublished=_SOLVED,
    slips=(
        Slip("Q*t_on", "You let nothing come back meanwhile. Take off what has come back."),
        Slip("Q*t_way", "That is how much there is in the end. At first there is less."),
        Slip("Q*t_way*exp(-t_on/t_way)", "That is what is still missing. Take it off the whole."),
    ),
    rises=("Q", "t_way", "t_on"),
)
