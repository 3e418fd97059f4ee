"""Measures: the plain sums and ratios by which a design is judged."""

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Slip

_RATIO = "a ratio, by definition"

wetted_flow = Formula(
    name="flow for a wetted edge",
    result="Q",
    equals="q*b",
    defined="every metre of edge gets the same share of the flow",
    by_hand=(ByHand("q=20 L/min per m, b=0.6 m", "20*0.6", "12 L/min"),),
    unpublished=_RATIO,
    slips=(Slip("q/b", "You divided. Each metre takes its share, so multiply by the length of the edge."),),
)

flow_per_edge = Formula(
    name="flow for each metre of edge",
    result="q",
    equals="Q/b",
    inverse_of=wetted_flow,
    unpublished=_RATIO,
    slips=(Slip("Q*b", "You multiplied. The flow is shared out over the length of the edge."),),
)

round_rim_length = Formula(
    name="length of a round rim",
    result="b",
    equals="pi*d_rim",
    defined="the length of a circle",
    by_hand=(ByHand("d_rim=700 mm", "3.14159265*700", "2199.11 mm"),),
    unpublished="the length of a circle (Archimedes, Measurement of a Circle, from memory)",
    slips=(
        Slip("d_rim", "That is the width across. Water leaves all the way round: take pi times the diameter."),
        Slip("2*pi*d_rim", "Two pi goes with the radius. With the diameter it is pi once. Multiply by pi alone."),
    ),
)

static_lift = Formula(
    name="static lift to a rim",
    result="z_s",
    equals="z_rim + H - z_low",
    defined="from the lowest water while running up to the water that stands over the rim",
    by_hand=(ByHand("z_rim=0.7 m, H=8 mm, z_low=-0.45 m", "0.7 + 0.008 - (-0.45)", "1.158 m"),),
    unpublished="a difference of levels",
    where=("z_low < z_rim",),
    slips=(
        Slip("z_rim + H", "You measured from the ground. The pump lifts from the lowest water in the reservoir."),
        Slip("z_rim + H + z_low", "The level below the datum is negative: taking it away makes the lift longer."),
    ),
)

flow_ratio = Formula(
    name="duty flow over required flow",
    result="r_duty",
    equals="Q_duty/Q_req",
    defined="what comes over what is wanted",
    by_hand=(ByHand("Q_duty=24 L/min, Q_req=20 L/min", "24/20", "1.2"),),
    unpublished=_RATIO,
    slips=(Slip("Q_req/Q_duty", "Upside down: over 1 must mean that enough water comes."),),
)

lift_share = Formula(
    name="static lift over shut-off head",
    result="r_lift",
    equals="z_s/H_0",
    defined="how much of the pump's greatest head the lift alone takes",
    by_hand=(ByHand("z_s=1.2 m, H_0=3.2 m", "1.2/3.2", "0.375"),),
    unpublished=_RATIO,
)

loss_share = Formula(
    name="share of the head lost on the way",
    result="r_loss",
    equals="(h_f + h_m)/(z_s + h_f + h_m)",
    defined="friction and fittings over the total head",
    by_hand=(ByHand("h_f=0.5 m, h_m=0.3 m, z_s=1.2 m", "(0.5 + 0.3)/(1.2 + 0.5 + 0.3)", "0.4"),),
    unpublished=_RATIO,
    slips=(Slip("h_f/(z_s + h_f + h_m)", "The fittings take their share too."),),
)

rim_error_share = Formula(
    name="rim out of level over head",
    result="r_level",
    equals="e_rim/H",
    defined="difference in level round the rim over the head of the level rim",
    by_hand=(ByHand("e_rim=1.2 mm, H=6 mm", "1.2/6", "0.2"),),
    unpublished=_RATIO,
    slips=(Slip("H/e_rim", "Upside down: over 1 must mean a rim that is far out of level."),),
)

kern_share = Formula(
    name="eccentricity over the edge of the kern",
    result="r_kern",
    equals="6*e_off/B_base",
    defined="the eccentricity over a sixth of the base, where one edge begins to lift",
    by_hand=(ByHand("e_off=40 mm, B_base=600 mm", "6*40/600", "0.4"),),
    unpublished=_RATIO,
    slips=(Slip("e_off/B_base", "The kern ends at a sixth of the base, not at the whole of it."),),
)

apron_share = Formula(
    name="apron over splash reach",
    result="r_apron",
    equals="w_apron/(k_splash*h_fall)",
    defined="width of the apron over the reach of splashes, which is taken as a share of the fall: common practice, no source",
    by_hand=(ByHand("w_apron=600 mm, k_splash=1.2, h_fall=400 mm", "600/(1.2*400)", "1.25"),),
    unpublished=_RATIO,
    slips=(Slip("k_splash*h_fall/w_apron", "Upside down: over 1 must mean an apron that is wide enough."),),
)
