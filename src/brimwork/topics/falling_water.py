"""Falling water: what an outlet throws up, and how water leaves an edge, falls and lands."""

from brimwork.formula import Eliminate, Formula, Slip, Solve
from brimwork.laws import area_of_an_outlet, continuity_at_an_outlet, fall_from_rest, rise_of_a_stream

# --- upwards: boil ------------------------------------------------------------------------------------------------------------------

_BOIL_PARTS = "the speed out of a bore and the height of a jet are each checked; no printed boil was found"

boil_of_a_flow = Formula(
    name="boil of a flow from a bore",
    result="h_boil",
    equals="8*Q**2/(pi**2*g*d_out**4)",
    steps=(
        area_of_an_outlet,
        continuity_at_an_outlet,
        rise_of_a_stream,
        Eliminate("put area and speed in", out=("A_o", "v")),
    ),
    unpublished=_BOIL_PARTS,
    slips=(
        Slip("Q**2/(2*pi**2*g*d_out**4)", "You took the bore for the radius: the area came out four times too big, and the boil sixteen times too small."),
        Slip("16*Q**2/(pi**2*g*d_out**4)", "The 2 is missing: velocity head is speed squared over two g."),
        Slip("4*Q/(pi*d_out**2)/(2*g)", "The speed is squared: half the speed gives a quarter of the boil."),
    ),
    ranges={"d_out": ("20 mm", "60 mm"), "Q": ("15 L/min", "40 L/min")},
    remark="Friction with the water around lowers it a little: the true boil is not higher than this. High domes spit: droplets drift and, where water is warm and "
    "stands, may carry Legionella, so keep a boil low, the water clean, and follow local health guidance.",
)

bore_for_a_boil = Formula(
    name="outlet bore for a boil",
    result="d_out",
    equals="sqrt(4*Q/(pi*sqrt(2*g*h_boil)))",
    inverse_of=boil_of_a_flow,
    unpublished=_BOIL_PARTS,
    slips=(
        Slip("sqrt(Q/(pi*sqrt(2*g*h_boil)))", "That is the radius. The bore is twice as wide."),
        Slip("sqrt(4*Q/(pi*sqrt(g*h_boil)))", "The 2 is missing: speed is the root of two g h."),
        Slip("4*Q/(pi*sqrt(2*g*h_boil))", "That is the bore squared. Take the root."),
        Slip("sqrt(4*Q/(pi*2*g*h_boil))", "You used the square of the speed. Take the root of two g h before you divide the flow by it."),
    ),
    ranges={"Q": ("15 L/min", "40 L/min"), "h_boil": ("5 mm", "60 mm")},
    remark="A wider mouth, or a flared end, calms a boil without a smaller flow.",
)

# --- downwards: fall ----------------------------------------------------------------------------------------------------------------

time_of_fall = Formula(
    name="time of fall",
    result="t_fall",
    equals="sqrt(2*h_fall/g)",
    steps=(fall_from_rest, Solve("solve for the time", of="h_fall")),
    unpublished="free fall; the throw that follows from it is checked",
    slips=(
        Slip("sqrt(h_fall/g)", "The 2 is missing: in free fall the way is half of g times the time squared."),
        Slip("2*h_fall/g", "The root is missing: the way grows with the square of the time."),
        Slip("sqrt(2*g*h_fall)", "That is the speed at the bottom, in metres a second. The time is that speed over g."),
    ),
)
