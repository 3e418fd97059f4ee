"""Lifting by hand, in a team and in slings: what may be lifted, and the pull in each leg. No crane plan: an appointed person makes that.

The equation for one person covers a slow, two-handed lift on firm ground. Pushing, carrying, wet stone and bad ground are outside it.
"""

from __future__ import annotations

import math

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import sling_balance
from brimwork.sources import NIOSH_EXAMPLE, NIOSH_MANUAL, NIOSH_US, SLING_TABLE, UNATTRIBUTED
from brimwork.steps import Solve
from brimwork.units import InputError

_NIOSH_FIT = "T. R. Waters et al. (1993), to what most healthy workers lift without harm"
_PLAN = "Over the limit: a lighter load, two people with a plan, or a machine. A single person never lifts the vessel."
_REST = "k_twist*k_freq*k_grip"
_LIFT = "m_load_const*x_close/x_hand*(1 - c_vert*({height}))*(0.82 + x_travel/d_lift)*" + _REST
_US_LIFT = "m_us_const*x_us_close/x_hand*(1 - c_us_vert*({height}))*(0.82 + x_us_travel/d_lift)*" + _REST
_NEVER_OVER = ("x_travel < 0.180018*d_lift", "x_close < 1.0001*x_hand")  # so that no lift is allowed more than the best one
_US_NEVER_OVER = ("x_us_travel < 0.180018*d_lift", "x_us_close < 1.0001*x_hand")

# --- one person ---------------------------------------------------------------------------------------------------------------------

_NEAR = (
    Slip("m_load_const", "That is the limit of the best lift of all. Every distance and twist takes some off. Multiply by all the factors of this lift."),
    Slip("25", "A rule of thumb is no limit for this lift. Put its own distances in."),
)

lift_limit_below = Formula(
    name="recommended limit of a lift from below the knuckles",
    result="m_rwl",
    equals=_LIFT.format(height="z_knuckle - z_hand"),
    fitted=_NIOSH_FIT,
    by_hand=(
        ByHand(
            "x_hand=40 cm, z_hand=45 cm, d_lift=50 cm, k_twist=0.9, k_freq=0.85, k_grip=0.95",
            "23*25/40*(1 - 0.003*(75 - 45))*(0.82 + 4.5/50)*0.9*0.85*0.95",
            "8.65119 kg",
        ),
    ),
    published=(
        Published(
            "x_hand=25 cm, z_hand=55 cm, d_lift=95 cm, k_twist=1, k_freq=0.88, k_grip=0.95", "15.7 kg", 2e-3, NIOSH_EXAMPLE.at("12 kg from 55 cm, moved 95 cm")
        ),
    ),
    slips=(
        *_NEAR,
        Slip("m_load_const*x_close/x_hand*(1 - c_vert*z_knuckle)*(0.82 + x_travel/d_lift)*" + _REST, "You put the hands on the floor. Use their own height."),
        Slip("m_load_const*x_close/x_hand*(1 - c_vert*(z_knuckle - z_hand))*" + _REST, "You left out how far up or down the load moves."),
        Slip(
            "m_load_const*(1 - c_vert*(z_knuckle - z_hand))*(0.82 + x_travel/d_lift)*" + _REST,
            "You left out how far out the hands are. It counts most. Multiply by the nearest reach over this one.",
        ),
    ),
    where=("z_hand < 1.0001*z_knuckle", *_NEVER_OVER),
    ranges={"z_hand": ("0 cm", "74 cm"), "k_freq": ("0.75", "1")},
    remark=_PLAN,
)

lift_limit_above = Formula(
    name="recommended limit of a lift from above the knuckles",
    result="m_rwl",
    equals=_LIFT.format(height="z_hand - z_knuckle"),
    fitted=_NIOSH_FIT,
    by_hand=(
        ByHand(
            "x_hand=40 cm, z_hand=110 cm, d_lift=50 cm, k_twist=0.9, k_freq=0.88, k_grip=0.95",
            "23*25/40*(1 - 0.003*(110 - 75))*(0.82 + 4.5/50)*0.9*0.88*0.95",
            "8.80889 kg",
        ),
    ),
    unpublished="the same equation as from below the knuckles, which is checked, with the other sign of the distance",
    slips=_NEAR,
    where=("z_knuckle < 1.0001*z_hand", *_NEVER_OVER),
    ranges={"z_hand": ("76 cm", "150 cm"), "k_freq": ("0.75", "1")},
    remark=_PLAN,
)

_US_NEAR = (
    Slip("m_us_const", "That is the limit of the best lift of all. Every distance and twist takes some off. Multiply by all the factors of this lift."),
)
_US_REMARK = f"The form in inches and pounds has rounded constants of its own: it differs by 2 to 4 % from the metric one. {_PLAN}"
_US_RANGES = {"x_hand": ("10 in", "25 in"), "d_lift": ("10 in", "47 in"), "k_freq": ("0.75", "1")}

lift_limit_below_us = Formula(
    name="recommended limit of a lift from below the knuckles, US form",
    result="m_rwl",
    equals=_US_LIFT.format(height="z_us_knuckle - z_hand"),
    fitted=f"{_NIOSH_FIT}; {NIOSH_US.at('the equation in inches and pounds')}",
    published=(
        Published(
            "x_hand=20 in, z_hand=6 in, d_lift=16 in, k_twist=1, k_freq=1, k_grip=0.95",
            "18.4 lb",
            8e-3,
            UNATTRIBUTED.at("a NIOSH worksheet in inches: 20 in out, 6 in up, moved 16 in"),
            note="multipliers rounded to two figures there",
        ),
        Published(
            "x_hand=23 in, z_hand=15 in, d_lift=49 in, k_twist=1, k_freq=1, k_grip=0.95",
            "16.3 lb",
            0.02,
            NIOSH_MANUAL.at("example 1, where the lift begins"),
            note="multipliers rounded to two figures there",
        ),
    ),
    by_hand=(
        ByHand(
            "x_hand=16 in, z_hand=18 in, d_lift=20 in, k_twist=0.9, k_freq=0.85, k_grip=0.95",
            "51*10/16*(1 - 0.0075*(30 - 18))*(0.82 + 1.8/20)*0.9*0.85*0.95",
            "19.1831 lb",
        ),
    ),
    slips=(
        *_US_NEAR,
        Slip(_US_LIFT.format(height="z_us_knuckle"), "You put the hands on the floor. Use their own height."),
        Slip("m_us_const*x_us_close/x_hand*(1 - c_us_vert*(z_us_knuckle - z_hand))*" + _REST, "You left out how far up or down the load moves."),
        Slip(
            "m_us_const*(1 - c_us_vert*(z_us_knuckle - z_hand))*(0.82 + x_us_travel/d_lift)*" + _REST,
            "You left out how far out the hands are. It counts most. Multiply by the nearest reach over this one.",
        ),
    ),
    where=("z_hand < 1.0001*z_us_knuckle", *_US_NEVER_OVER),
    ranges={**_US_RANGES, "z_hand": ("0 in", "29 in")},
    remark=_US_REMARK,
)

lift_limit_above_us = Formula(
    name="recommended limit of a lift from above the knuckles, US form",
    result="m_rwl",
    equals=_US_LIFT.format(height="z_hand - z_us_knuckle"),
    fitted=lift_limit_below_us.fitted,
    published=(
        Published(
            "x_hand=23 in, z_hand=64 in, d_lift=49 in, k_twist=1, k_freq=1, k_grip=1",
            "14.5 lb",
            0.025,
            NIOSH_MANUAL.at("example 1, where the lift ends"),
            note="multipliers rounded to two figures there",
        ),
    ),
    by_hand=(
        ByHand(
            "x_hand=16 in, z_hand=44 in, d_lift=20 in, k_twist=0.9, k_freq=0.88, k_grip=0.95",
            "51*10/16*(1 - 0.0075*(44 - 30))*(0.82 + 1.8/20)*0.9*0.88*0.95",
            "19.5328 lb",
        ),
    ),
    slips=(
        *_US_NEAR,
        Slip(
            "m_us_const*x_us_close/x_hand*(1 - c_us_vert*z_hand)*(0.82 + x_us_travel/d_lift)*" + _REST,
            "You measured from the floor. Take how far the hands are from the height of the knuckles.",
        ),
    ),
    where=("z_us_knuckle < 1.0001*z_hand", *_US_NEVER_OVER),
    ranges={**_US_RANGES, "z_hand": ("31 in", "60 in")},
    remark=_US_REMARK,
)

lifting_index = Formula(
    name="lifting index",
    result="r_lift_index",
    equals="m_load/m_rwl",
    defined="the load over the recommended limit",
    published=(Published("m_load=12 kg, m_rwl=15.7 kg", "0.76", 0.01, NIOSH_EXAMPLE.at("12 kg from 55 cm, moved 95 cm")),),
    slips=(
        Slip("m_rwl/m_load", "Upside down: an index above 1 must mean too heavy."),
        Slip("m_load/m_load_const", "You compared with the limit of the best lift. Compare with the limit of this one."),
    ),
    ranges={"m_load": ("5 kg", "40 kg")},
    remark=_PLAN,
)

# --- slings -------------------------------------------------------------------------------------------------------------------------

_NO_CRANE_PLAN = "This is the pull alone. The choice of slings, anchors, machine and ground is a lifting plan: an appointed person or the hirer makes it."

sling_pull = Formula(
    name="pull in each leg of a sling",
    result="F_leg",
    equals="g*m_load/(N_leg*sin(alpha_leg))",
    steps=(sling_balance, Solve("solve for the pull")),
    published=(
        Published("m_load=1000 lb, N_leg=2, alpha_leg=60 deg", "577 lbf", 1e-3, SLING_TABLE.at("60 degrees: half the load times 1.155")),
        Published("m_load=1000 lb, N_leg=2, alpha_leg=45 deg", "707 lbf", 1e-3, SLING_TABLE.at("45 degrees: half the load times 1.414")),
        Published("m_load=1000 lb, N_leg=2, alpha_leg=30 deg", "1000 lbf", 1e-9, SLING_TABLE.at("30 degrees: half the load times 2")),
    ),
    slips=(
        Slip("g*m_load/N_leg", "You only shared the load. Sloping legs pull against each other as well."),
        Slip("g*m_load/(N_leg*cos(alpha_leg))", "The angle is from the level, so the part that lifts is the sine. Divide by the sine."),
        Slip("g*m_load/sin(alpha_leg)", "You gave one leg the whole load. Share it between the legs."),
        Slip("g*m_load*sin(alpha_leg)/N_leg", "You multiplied. The flatter the legs the harder they pull: divide."),
        Slip("m_load/(N_leg*sin(alpha_leg))", "That is a mass. A force is mass times gravity, in newtons."),
    ),
    where=("pi/6 < 1.0001*alpha_leg", "N_leg < 1.0001*2"),
    remark=f"Of three or four legs count two: a stiff load hangs on two of them. Never below 30 degrees. {_NO_CRANE_PLAN}",
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------

REACH, HIGHEST, FARTHEST = 0.63, 1.75, 1.75  # m; the equation ends here, NIOSH


def lift_limit(x_hand: float, z_hand: float, d_lift: float, k_twist: float = 1.0, k_freq: float = 1.0, k_grip: float = 1.0, us_form: bool = False) -> float:
    """Recommended limit (kg) of a lift with the hands x_hand (m) out and z_hand (m) up, moved d_lift (m) up or down.

    Hands nearer than 25 cm count as 25 cm, and a move under 25 cm as 25 cm; with `us_form`, 10 in, by the constants that are printed in inches
    and pounds. Never more than the load constant. Raises InputError beyond the reach of the equation.
    """
    if not (0 <= x_hand <= REACH and 0 <= z_hand <= HIGHEST and 0 <= d_lift <= FARTHEST):
        raise InputError(
            f"hands {x_hand:g} m out and {z_hand:g} m up, moved {d_lift:g} m: nobody should lift so. "
            f"Stand closer than {REACH:g} m, below {HIGHEST:g} m, or use a machine"
        )
    least, knuckle = (0.254, 0.762) if us_form else (0.25, 0.75)
    below, above = (lift_limit_below_us, lift_limit_above_us) if us_form else (lift_limit_below, lift_limit_above)
    form = below if z_hand <= knuckle else above
    return form(x_hand=max(x_hand, least), z_hand=z_hand, d_lift=max(d_lift, least), k_twist=k_twist, k_freq=k_freq, k_grip=k_grip)


def pull_in_slings(m_load: float, N_leg: int, alpha_leg: float, equalised: bool = False) -> float:
    """Pull (N) in each leg at alpha_leg (rad) from the level; of three or four legs two count, unless a gear `equalised` them. Raises InputError below 30 degrees or for other numbers of legs."""
    if N_leg not in (1, 2, 3, 4):
        raise InputError(f"a sling of {N_leg} legs is not reckoned here: one, two, three or four")
    if not math.radians(30) * (1 - 1e-12) <= alpha_leg <= math.pi / 2:
        raise InputError(f"legs at {math.degrees(alpha_leg):g} degrees from the level: never below 30, and at most 90. Use longer slings")
    counting = min(N_leg, 2)
    carried = m_load * counting / N_leg if equalised else m_load  # by the two legs that count
    return sling_pull(m_load=carried, N_leg=counting, alpha_leg=alpha_leg)
