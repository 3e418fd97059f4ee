"""Lifting by hand, in a team and in slings: what may be lifted, and the pull in each leg. No crane plan: an appointed person makes that.

The equation for one person covers a slow, two-handed lift on firm ground. Pushing, carrying, wet stone and bad ground are outside it.
"""

from __future__ import annotations

import math

from brimwork.formula import Formula, Published, Slip
from brimwork.laws import sling_balance
from brimwork.sources import NIOSH_EXAMPLE, SLING_TABLE
from brimwork.steps import Solve
from brimwork.units import InputError

_NIOSH_FIT = "T. R. Waters et al. (1993), to what most healthy workers lift without harm"
_PLAN = "Over the limit: a lighter load, two people with a plan, or a machine. A single person never lifts the vessel."
_REST = "k_twist*k_freq*k_grip"
_LIFT = "m_load_const*x_close/x_hand*(1 - c_vert*({height}))*(0.82 + x_travel/d_lift)*" + _REST

# --- one person ---------------------------------------------------------------------------------------------------------------------

_NEAR = (
    Slip("m_load_const", "That is the limit of the best lift of all. Every distance and twist takes some off."),
    Slip("25", "A rule of thumb is no limit for this lift. Put its own distances in."),
)

lift_limit_below = Formula(
    name="recommended limit of a lift from below the knuckles",
    result="m_rwl",
    equals=_LIFT.format(height="z_knuckle - z_hand"),
    fitted=_NIOSH_FIT,
    published=(
        Published(
            "x_hand=25 cm, z_hand=55 cm, d_lift=95 cm, k_twist=1, k_freq=0.88, k_grip=0.95", "15.7 kg", 2e-3, NIOSH_EXAMPLE.at("12 kg from 55 cm, moved 95 cm")
        ),
    ),
    slips=(
        *_NEAR,
        Slip("m_load_const*x_close/x_hand*(1 - c_vert*z_knuckle)*(0.82 + x_travel/d_lift)*" + _REST, "You put the hands on the floor. Use their own height."),
        Slip("m_load_const*x_close/x_hand*(1 - c_vert*(z_knuckle - z_hand))*" + _REST, "You left out how far up or down the load moves."),
        Slip("m_load_const*(1 - c_vert*(z_knuckle - z_hand))*(0.82 + x_travel/d_lift)*" + _REST, "You left out how far out the hands are. It counts most."),
    ),
    where=("z_hand < z_knuckle",),
    ranges={"z_hand": ("0 cm", "74 cm"), "k_freq": ("0.75", "1")},
    remark=_PLAN,
)

lift_limit_above = Formula(
    name="recommended limit of a lift from above the knuckles",
    result="m_rwl",
    equals=_LIFT.format(height="z_hand - z_knuckle"),
    fitted=_NIOSH_FIT,
    unpublished="the same equation as from below the knuckles, which is checked, with the other sign of the distance",
    slips=_NEAR,
    where=("z_knuckle < z_hand",),
    ranges={"z_hand": ("76 cm", "150 cm"), "k_freq": ("0.75", "1")},
    remark=_PLAN,
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
        Slip("g*m_load/(N_leg*cos(alpha_leg))", "The angle is from the level, so the part that lifts is the sine."),
        Slip("g*m_load/sin(alpha_leg)", "You gave one leg the whole load. Share it between the legs."),
        Slip("g*m_load*sin(alpha_leg)/N_leg", "You multiplied. The flatter the legs the harder they pull: divide."),
        Slip("m_load/(N_leg*sin(alpha_leg))", "That is a mass. A force is mass times gravity, in newtons."),
    ),
    remark=f"Of three or four legs count two: a stiff load hangs on two of them. Never below 30 degrees. {_NO_CRANE_PLAN}",
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------

REACH, HIGHEST, FARTHEST = 0.63, 1.75, 1.75  # m; the equation ends here, NIOSH
_TEAM = {1: 1.0, 2: 2 / 3, 3: 1 / 2}  # share of the single limits together; common practice, no source


def lift_limit(x_hand: float, z_hand: float, d_lift: float, k_twist: float = 1.0, k_freq: float = 1.0, k_grip: float = 1.0) -> float:
    """Recommended limit (kg) of a lift with the hands x_hand (m) out and z_hand (m) up, moved d_lift (m) up or down.

    Hands nearer than 25 cm count as 25 cm, and a move under 25 cm as 25 cm. Raises InputError beyond the reach of the equation.
    """
    if not (0 <= x_hand <= REACH and 0 <= z_hand <= HIGHEST and 0 <= d_lift <= FARTHEST):
        raise InputError(
            f"hands {x_hand:g} m out and {z_hand:g} m up, moved {d_lift:g} m: nobody should lift so. "
            f"Stand closer than {REACH:g} m, below {HIGHEST:g} m, or use a machine"
        )
    form = lift_limit_below if z_hand <= 0.75 else lift_limit_above
    return form(x_hand=max(x_hand, 0.25), z_hand=z_hand, d_lift=max(d_lift, 0.25), k_twist=k_twist, k_freq=k_freq, k_grip=k_grip)


def twist_factor(theta_twist: float) -> float:
    """Factor for turning theta_twist (rad) out of straight ahead. Raises InputError beyond 135 degrees."""
    if not 0 <= theta_twist <= math.radians(135):
        raise InputError(f"a twist of {math.degrees(theta_twist):g} degrees is beyond the equation's 135: move the feet, not the back")
    return 1 - 0.0032 * math.degrees(theta_twist)


def team_limit(single: float, people: int) -> float:
    """What `people`, each able to lift `single` (kg), may lift together: two thirds of the sum for two, half for three. Common practice, no source.

    Raises InputError for more than three: use a machine.
    """
    if people not in _TEAM:
        raise InputError(f"{people} people cannot be reckoned with: one, two or three; for more, use a hoist, a balance or skates")
    return single * people * _TEAM[people]


def pull_in_slings(m_load: float, N_leg: int, alpha_leg: float) -> float:
    """Pull (N) in each leg at alpha_leg (rad) from the level; of three or four legs two count. Raises InputError below 30 degrees or for other numbers of legs."""
    if N_leg not in (1, 2, 3, 4):
        raise InputError(f"a sling of {N_leg} legs is not reckoned here: one, two, three or four")
    if not math.radians(30) * (1 - 1e-12) <= alpha_leg <= math.pi / 2:
        raise InputError(f"legs at {math.degrees(alpha_leg):g} degrees from the level: never below 30, and at most 90. Use longer slings")
    return sling_pull(m_load=m_load, N_leg=min(N_leg, 2), alpha_leg=alpha_leg)
