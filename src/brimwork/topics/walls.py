"""The wall of a full vessel: the pull round it, and the share of its strength that this takes.

A wall that gives way drops the vessel's water and its pieces. Frost, cracks and holes are not in these numbers: water that freezes in a closed vessel
breaks any wall.
"""

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import halves_of_a_ring, pressure_on_a_wall
from brimwork.sources import GERE
from brimwork.steps import Solve

_NOT_HERE = "Not for frost, for cracks, or round a hole. Pottery breaks where it has a flaw: keep far below its strength."

hoop_stress = Formula(
    name="hoop stress in the wall of a full vessel",
    result="sigma_hoop",
    equals="rho*g*h_full*R_wall/t_wall",
    steps=(pressure_on_a_wall, halves_of_a_ring, Solve("solve for the stress")),
    where=("t_wall < R_wall",),
    published=(
        Published(
            "rho=1000 kg/m3, g=9.81 m/s2, h_full=22.2 m, R_wall=1.1 m, t_wall=20 mm",
            "12 MPa",
            3e-3,
            GERE.at("problem on a standpipe, open at the top and 2.2 m across"),
            note="asked the other way round: 12 MPa are reached under 22.2 m of water",
        ),
    ),
    slips=(
        Slip(
            "rho*g*h_full*2*R_wall/t_wall",
            "You put the diameter in the place of the radius: two sides of the wall share what the water presses across it. Put in the radius.",
        ),
        Slip("rho*g*h_full*R_wall/(2*t_wall)", "That is the pull along a closed pipe, from end to end. Round the wall it is twice that."),
        Slip("rho*h_full*R_wall/t_wall", "Density times height is a mass over an area. Multiply by gravity to have a pressure."),
        Slip("rho*g*h_full*t_wall/R_wall", "Upside down: a thicker wall must carry less for each part of it, and a wider vessel more."),
        Slip(
            "rho*g*h_full",
            "That is the pressure of the water. The wall is thinner than the vessel is wide, so its pull is many times that. Multiply by the radius over the thickness.",
        ),
    ),
    rises=("h_full", "R_wall"),
    falls=("t_wall",),
    remark=(
        "At the bottom, as if the foot did not hold the wall together: on the safe side. It is the mean through the wall; the inner face is pulled more, "
        f"by 5 % where the wall is a tenth as thick as the radius and by 11 % at a fifth. {_NOT_HERE}"
    ),
)

wall_share = Formula(
    name="share of the strength of a vessel's wall",
    result="u_wall",
    equals="sigma_hoop/f_tens",
    defined="the pull round the wall, compared with what tears it",
    by_hand=(ByHand("sigma_hoop=140 kPa, f_tens=3.5 MPa", "0.14/3.5", "0.04"),),
    unpublished="a ratio, by definition",
    slips=(Slip("f_tens/sigma_hoop", "Upside down: over 1 must mean that the wall tears."),),
    rises=("sigma_hoop",),
    falls=("f_tens",),
    remark=_NOT_HERE,
)
