"""Water in transit: what is up in the feature while the pump runs, the drop of the level on the start, and whether it fits when it comes back."""

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Slip
from brimwork.laws import area_of_a_circle, area_of_a_pipe
from brimwork.steps import Step, Take

_BALANCE = "a balance of volumes: what goes up is missing below"
_THIN = "area times thickness, by definition"

surface_of_a_round_vessel = Formula(
    name="water surface of a round vessel",
    result="A_v",
    equals="pi/4*d_rim**2",
    steps=(
        area_of_a_circle,
        Take("at the top the circle is as wide as the rim", "d_z = d_rim"),
        Take("the surface is that circle", "A_v = A_z"),
        Step("put the diameter in"),
    ),
    unpublished="the area of a circle",
    slips=(
        Slip("pi*d_rim**2", "You took the diameter for the radius: the surface came out four times too big."),
        Slip("pi*d_rim", "That is the length of the rim. The surface goes with the square of the diameter. Take a quarter of pi times the diameter squared."),
    ),
)

water_over_the_rim = Formula(
    name="water that stands above the rim",
    result="V_rim",
    equals="A_v*H",
    defined="while it runs, the whole surface stands above the rim by the head",
    by_hand=(ByHand("A_v=0.4 m2, H=5 mm", "0.4*5", "2 L"),),
    unpublished=_THIN,
    slips=(
        Slip(
            "A_v*(H + z_mouth)",
            "Down to the hose mouth is the siphon's part. Above the rim stands the head alone. Use the head alone.",
            also_given=("z_mouth",),
        ),
    ),
    ranges={"H": ("2 mm", "8 mm")},
)

water_siphoned_back = Formula(
    name="water that siphons back",
    result="V_siph",
    equals="A_v*z_mouth",
    defined="without a check valve the vessel empties down to the hose mouth each time the pump stops",
    by_hand=(ByHand("A_v=0.35 m2, z_mouth=30 mm", "0.35*30", "10.5 L"),),
    unpublished="area times depth, by definition",
    slips=(
        Slip(
            "A_v*H",
            "That is the water above the rim. The siphon takes what stands between the rim and the hose mouth. Put in the height down to the hose mouth.",
            also_given=("H",),
        ),
    ),
    remark="With a check valve, or a mouth above the water, this is nothing. A hose fed into the bottom of a vessel empties the whole of it.",
)

water_in_the_film = Formula(
    name="water in the film on the face",
    result="V_film",
    equals="A_side*delta",
    defined="wet face times thickness of the film",
    by_hand=(ByHand("A_side=1.2 m2, delta=0.25 mm", "1.2*0.25", "0.3 L"),),
    unpublished=_THIN,
    slips=(
        Slip(
            "A_side*H",
            "You used the head over the rim. Down the face the water runs faster, and its film is thinner. Put in the thickness of the film.",
            also_given=("H",),
        ),
    ),
)

water_in_the_sheet = Formula(
    name="water in the falling sheet",
    result="V_sheet",
    equals="Q*t_fall",
    steps=(
        Take("a drop that leaves the edge is in the air for the time of fall, and the pump goes on sending", "V_w = Q*t_fall"),
        Take("all of that is still falling when the drop lands", "V_sheet = V_w"),
        Step("put it in"),
    ),
    unpublished="flow times time, by definition",
    slips=(Slip("Q*h_fall", "Flow times height is no volume. Multiply by the time of fall.", also_given=("h_fall",)),),
)

water_in_the_pipe = Formula(
    name="water in a pipe",
    result="V_pc",
    equals="pi/4*d_pipe**2*L_pipe",
    steps=(area_of_a_pipe, Take("a full pipe holds its cross-section times its length", "V_pc = A_pipe*L_pipe"), Step("put the cross-section in")),
    unpublished="it follows from the shape alone: a cylinder",
    slips=(
        Slip("pi*d_pipe**2*L_pipe", "You took the bore for the radius: four times too much came out."),
        Slip("pi/4*d_pipe*L_pipe", "The bore is squared in the area of a circle."),
    ),
    ranges={"d_pipe": ("13 mm", "50 mm")},
)

water_in_the_stone = Formula(
    name="water on its way through the stone",
    result="V_hold",
    equals="A_run*t_st*n_hold",
    defined="the running water fills a small share of the stone layer; 2 to 5 % is our own choice",
    by_hand=(ByHand("A_run=2.5 m2, t_st=80 mm, n_hold=0.03", "2.5*80*0.03", "6 L"),),
    unpublished=_THIN,
    slips=(
        Slip(
            "A_run*t_st*n_s",
            "You filled all the gaps with water. It only runs through them: a few per cent of the layer. Multiply by the share that is held.",
            also_given=("n_s",),
        ),
        Slip("A_run*t_st", "You counted the whole layer as water. It fills a few per cent of it."),
    ),
)

water_in_transit = Formula(
    name="water in transit",
    result="V_tr",
    equals="V_rim + V_siph + V_film + V_sheet + V_pc + V_hold",
    defined="all that is up in the feature while the pump runs, and comes back when it stops",
    close="0.1 L",
    by_hand=(ByHand("V_rim=3.2 L, V_siph=12.5 L, V_film=0.4 L, V_sheet=0.7 L, V_pc=5.1 L, V_hold=6.1 L", "3.2 + 12.5 + 0.4 + 0.7 + 5.1 + 6.1", "28 L"),),
    unpublished=_BALANCE,
    slips=(
        Slip("V_rim + V_film + V_sheet + V_pc + V_hold", "You forgot what siphons back through the hose. Without a check valve it is often the biggest part."),
        Slip("V_rim", "Only a part of it stands above the rim. Film, sheet, pipe, stone and siphon come on top. Add them all."),
    ),
    remark="Put 0 for a part that the feature does not have.",
)

drop_on_start = Formula(
    name="drop of the level on start",
    result="z_r",
    equals="V_tr/(A_b*n_v)",
    steps=(
        Take("the blocks leave the void share of their plan to the water", "A_w = A_b*n_v"),
        Take("what goes up into the feature is missing in the reservoir: the level falls by it over the water area", "z_r = V_tr/A_w"),
        Step("put the water area in"),
    ),
    unpublished=_BALANCE,
    slips=(
        Slip("V_tr/A_b", "You divided by the plan area. The water only stands in the empty share, so the level falls more."),
        Slip("V_tr*n_v/A_b", "You multiplied by the void fraction. It makes the area smaller, and so the drop bigger."),
        Slip(
            "H",
            "The reservoir does not fall by the head over the rim: its area is not that of the vessel, and there is more in transit. Share the water in transit over the area and void of the blocks.",
            also_given=("H",),
        ),
    ),
    remark="Predict it, then measure it on the first start: the best free test of the whole sum. A much bigger drop means a leak or a forgotten part.",
)

room_up_to_the_overflow = Formula(
    name="room from the running level up to the overflow",
    result="V_free",
    equals="A_b*n_v*(h_over - h_run)",
    steps=(
        Take("the blocks leave the void share of their plan to the water", "A_w = A_b*n_v"),
        Take("from the running level up to the overflow there is room in the water area", "V_free = A_w*(h_over - h_run)"),
        Step("put the water area in"),
    ),
    where=("h_run < h_over",),
    unpublished=_BALANCE,
    slips=(
        Slip("A_b*(h_over - h_run)", "You used the whole plan area. The empty share of the blocks is what has room: multiply by their void fraction."),
        Slip("A_b*n_v*h_over", "That is all the water up to the overflow. Only the space above the running level is free."),
        Slip(
            "A_b*n_v*h_run", "That is the water under the running level. The room that is left stands above it. Use the height from there up to the overflow."
        ),
    ),
    rises=("A_b", "n_v", "h_over"),
    falls=("h_run",),
)

drain_back_ratio = Formula(
    name="drain-back ratio",
    result="r_back",
    equals="A_b*n_v*(h_over - h_run)/V_tr",
    steps=(
        Take("the blocks leave the void share of their plan to the water", "A_w = A_b*n_v"),
        Take("from the running level up to the overflow there is room in the water area", "V_free = A_w*(h_over - h_run)"),
        Take("compare it with what comes back", "r_back = V_free/V_tr"),
        Step("put it in"),
    ),
    where=("h_run < h_over",),
    unpublished=_BALANCE,
    slips=(
        Slip("A_b*(h_over - h_run)/V_tr", "You used the whole plan area. The empty share of the blocks is what has room: multiply by their void fraction."),
        Slip("V_tr/(A_b*n_v*(h_over - h_run))", "Upside down: over 1 must mean that all of it fits."),
        Slip("A_b*n_v*h_over/V_tr", "Only the space above the running level is free."),
    ),
    remark="Below 1, water runs to waste at every stop, and the reservoir is short of it at the next start.",
)
