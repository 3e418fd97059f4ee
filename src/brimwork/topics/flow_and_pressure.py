"""Flow and pressure: what a column of water presses, and what passes through an area at a speed."""

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Published, Slip
from brimwork.sources import CENGEL, NEWTON_LAWS, OPENSTAX
from brimwork.steps import Law, Step, Take

pressure_of_a_head = Formula(
    name="pressure of a head of water",
    result="p_col",
    equals="rho*g*h_col",
    steps=(
        Law("weight is mass times gravity", "F_col = g*rho*A_col*h_col", NEWTON_LAWS.at("law II")),
        Take("pressure is force over area", "p_col = F_col/A_col"),
        Step("the area cancels: a wide column presses no harder than a narrow one"),
    ),
    published=(Published("rho=1000 kg/m3, h_col=40.8 m, g=9.81 m/s2", "400 kPa", 1e-3, CENGEL.at("Ex 5-5: water from a hose, turned round")),),
    by_hand=(ByHand("rho=1000 kg/m3, h_col=2.5 m", "1000*9.80665*2.5/1000", "24.5166 kPa"),),
    slips=(
        Slip("rho*h_col", "You left out gravity: density is mass, and pressure comes from weight."),
        Slip("g*h_col", "You left out the density: a cubic metre of water weighs a thousand kilograms."),
    ),
    rises=("rho", "h_col"),
    remark="Over the pressure of the air. It counts the height alone, not the shape or the amount of the water.",
)

head_of_a_pressure = Formula(
    name="head of a pressure",
    result="h_col",
    equals="p_col/(rho*g)",
    inverse_of=pressure_of_a_head,
    published=(Published("p_col=400 kPa, rho=1000 kg/m3, g=9.81 m/s2", "40.8 m", 1e-3, CENGEL.at("Ex 5-5: water from a hose")),),
    slips=(
        Slip("p_col/g", "You left out the density: divide by the weight of a cubic metre."),
        Slip("p_col*rho*g", "You multiplied. A head is a pressure over the weight of a cubic metre. Divide by density and g."),
    ),
    rises=("p_col",),
    falls=("rho",),
)

flow_through_an_area = Formula(
    name="flow from area and speed",
    result="Q",
    equals="A_flow*v",
    steps=(
        Take("what passes in a time fills so much of the stream", "V = A_flow*v*t_fill"),
        Take("flow is volume over time", "Q = V/t_fill"),
        Step("the time cancels"),
    ),
    published=(
        Published("A_flow=2.544690 cm2, v=1.96 m/s", "0.5 L/s", 3e-3, OPENSTAX.at("module m42205, example, turned round"), note="a hose of 0.9 cm radius"),
    ),
    by_hand=(ByHand("A_flow=3 cm2, v=0.8 m/s", "3/10000*0.8*1000*60", "14.4 L/min"),),
    slips=(
        Slip("A_flow/v", "You divided. A faster stream carries more."),
        Slip("v/A_flow", "A wider stream carries more: multiply."),
    ),
    rises=("A_flow", "v"),
    remark="With the mean speed. A float shows the speed of the surface, which in a channel is a little more than the mean.",
)

speed_from_flow_and_area = Formula(
    name="speed from flow and area",
    result="v",
    equals="Q/A_flow",
    inverse_of=flow_through_an_area,
    published=(
        Published("Q=0.5 L/s, A_flow=2.544690 cm2", "1.96 m/s", 3e-3, OPENSTAX.at("module m42205, example"), note="a hose of 0.9 cm radius"),
        Published("Q=0.5 L/s, A_flow=0.19634954 cm2", "25.5 m/s", 2e-3, OPENSTAX.at("module m42205, example"), note="a nozzle of 0.25 cm radius"),
    ),
    slips=(Slip("Q*A_flow", "You multiplied. The same flow moves slower through a wider opening."),),
    rises=("Q",),
    falls=("A_flow",),
)
