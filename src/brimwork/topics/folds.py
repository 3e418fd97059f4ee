"""Folds: what a flat liner has too much of in the corners of a box and round a circle, and how thick its pleats lie.

A flat sheet that goes down into a pit is wider, at every height up the side, than the pit is: the rest must be folded away. All of it is
geometry of a sheet that neither stretches nor creases hard; a stiff sheet stands off the side and takes more room.
"""

from brimwork.formula import Formula, Slip
from brimwork.steps import Step, Take

_OWN = "own geometry: the way round the flat liner less the way round the pit; the tests come to it another way"
_LIES_DOUBLE = "A pleat lies double: laid flat it reaches half as far as the liner that it takes up. Halve it."
_ON_THE_APRON = (
    "add it up over the depth; across the apron and the margin the folds stay as wide as at the edge of the pit, since the way round grows there too"
)
_SIDE_ALONE = "That is up the side alone. The folds run on across the apron and the margin."
_WIDEST = "You took the folds as wide all the way down as they are at the edge. They begin with nothing at the floor. Add the edges on both sides to the depth, but count the depth once."

# --- corners of a box ---------------------------------------------------------------------------------------------------------------

spare_in_a_corner = Formula(
    name="liner to spare in a corner",
    result="l_over",
    equals="2*z_f",
    steps=(
        Take("on the flat liner the line that comes to lie at a height goes round as far outside the floor", "l_sheet = 2*(L_in + 2*z_f) + 2*(W_in + 2*z_f)"),
        Take("the box itself is, at every height", "l_round = 2*(L_in + W_in)"),
        Take("four corners share the difference", "l_over = (l_sheet - l_round)/4"),
        Step("floor and length cancel", "l_over = 2*z_f"),
    ),
    unpublished=_OWN,
    slips=(
        Slip("z_f", "The line goes past the corner of the floor and comes back: the height counts twice."),
        Slip("8*z_f", "That is for all four corners together. One corner has a quarter of it. Divide by four."),
        Slip("4*z_f", "Only two sides meet in a corner, and each goes on by the height. Take the height twice."),
    ),
    ranges={"z_f": ("100 mm", "700 mm")},
    rises=("z_f",),
    remark="It does not depend on the size of the box. The deeper the pit, the bigger the fold.",
)

reach_of_a_corner_pleat = Formula(
    name="reach of a corner pleat",
    result="w_fold",
    equals="z_f/N_fold",
    steps=(
        spare_in_a_corner,
        Take("each of its folds lies double, so it takes up twice its reach", "w_fold = l_over/(2*N_fold)"),
        Step("put the spare liner in"),
    ),
    unpublished=_OWN,
    slips=(
        Slip("2*z_f/N_fold", _LIES_DOUBLE),
        Slip("z_f", "You laid it in one fold. More folds over each other reach less far."),
    ),
    ranges={"z_f": ("200 mm", "700 mm"), "N_fold": ("1", "3")},
    rises=("z_f",),
    falls=("N_fold",),
    remark="Lay both ends' pleats along the long sides if they would meet on the short ones: two reaches must fit a side. Fold all four to the same hand, "
    "keep the fold upright and its edge above the water, and never cut a pleat below the overflow.",
)

thickness_of_a_corner = Formula(
    name="thickness of a folded corner",
    result="t_fold",
    equals="(1 + 2*N_fold)*t_sheet",
    steps=(
        Take("the side is one layer, and each fold laid over it adds two", "n_lay = 1 + 2*N_fold"),
        Take("pressed flat they lie one on the other", "t_fold = n_lay*t_sheet"),
        Step("put the layers in"),
    ),
    unpublished="it follows from the shape alone: layers counted",
    slips=(
        Slip("2*N_fold*t_sheet", "You left out the side itself. It lies under the folds. Count it with them."),
        Slip("(1 + N_fold)*t_sheet", "A fold lies double: it adds two layers, not one."),
        Slip("t_sheet", "That is a single layer. The folds lie over it."),
    ),
    rises=("N_fold", "t_sheet"),
    remark="Pressed flat; a stiff sheet stands off by several times as much. Leave that room between the lining and the corner of the blocks.",
)

liner_in_a_corner = Formula(
    name="liner folded away in a corner",
    result="A_fold",
    equals="D*(D + 2*(w_apron + w_trim))",
    steps=(
        spare_in_a_corner,
        Take(_ON_THE_APRON, "A_fold = Integral(l_over, (z_f, 0, D)) + 2*D*(w_apron + w_trim)"),
        Step("integrate"),
    ),
    unpublished=_OWN,
    slips=(
        Slip("(D + w_apron + w_trim)**2", "You took the whole square of the corner. A part of it covers the corner of the apron: take that off."),
        Slip("D**2", _SIDE_ALONE),
        Slip("2*D*(D + w_apron + w_trim)", _WIDEST),
        Slip("4*D*(D + 2*(w_apron + w_trim))", "That is for all four corners together. Divide by four."),
    ),
    rises=("D", "w_apron", "w_trim"),
    remark="Bought, carried and folded away: four of these are the difference between the flat liner and the faces that it covers.",
)

# --- round a circle -----------------------------------------------------------------------------------------------------------------

spare_round_a_circle = Formula(
    name="liner to spare round a circle",
    result="l_over",
    equals="2*pi*z_f",
    steps=(
        Take("on the flat liner the line that comes to lie at a height goes round as far outside the floor", "l_sheet = pi*(d_t + 2*z_f)"),
        Take("the pit itself is, at every height", "l_round = pi*d_t"),
        Take("the difference has to be folded away", "l_over = l_sheet - l_round"),
        Step("the pit cancels", "l_over = 2*pi*z_f"),
    ),
    unpublished=_OWN,
    slips=(
        Slip("pi*z_f", "You added the height to the diameter once. It lies outside the floor at both ends."),
        Slip("8*z_f", "That is for a box with four corners. Round a circle it is two pi."),
        Slip("pi*d_t", "That is the way round the pit. Only what is to spare has to be folded. Use two pi times the height.", also_given=("d_t",)),
    ),
    ranges={"z_f": ("100 mm", "700 mm")},
    rises=("z_f",),
    remark="It does not depend on the size of the pit: a small round pit has as much to fold as a large one of the same depth.",
)

pleats_round_a_circle = Formula(
    name="pleats round a circle",
    result="N_pleat",
    equals="pi*z_f/w_fold",
    steps=(
        spare_round_a_circle,
        Take("each pleat lies double, so it takes up twice its reach", "N_pleat = l_over/(2*w_fold)"),
        Step("put the spare liner in"),
    ),
    unpublished=_OWN,
    slips=(
        Slip("2*pi*z_f/w_fold", _LIES_DOUBLE),
        Slip(
            "pi*d_t/w_fold",
            "You shared out the whole way round the pit. Only what is to spare is folded into pleats. Divide the liner to spare by twice the width of a pleat.",
            also_given=("d_t",),
        ),
        Slip(
            "pi*z_f/(2*w_fold)", "You halved twice. A pleat takes up two reaches of liner, and that is all. Divide pi times the height by the width of a pleat."
        ),
    ),
    ranges={"z_f": ("200 mm", "700 mm"), "w_fold": ("30 mm", "100 mm")},
    rises=("z_f",),
    falls=("w_fold",),
    remark="Take the full depth for z_f and round up. Make them even, all to the same hand, and flat: a few big folds are stiff, many small ones hold dirt.",
)

thickness_round_a_circle = Formula(
    name="mean thickness of the folds round a circle",
    result="t_fold",
    equals="(1 + 2*D/d_t)*t_sheet",
    steps=(
        Take("on the flat liner the line that comes to lie at the edge goes round", "l_sheet = pi*(d_t + 2*D)"),
        Take("the pit itself goes round less far", "l_round = pi*d_t"),
        Take("so many layers lie over each other in the mean", "n_lay = l_sheet/l_round"),
        Take("pressed flat, the folds take up room", "t_fold = n_lay*t_sheet"),
        Step("put the layers in"),
    ),
    unpublished=_OWN,
    slips=(
        Slip("(1 + D/d_t)*t_sheet", "The depth lies outside the floor at both ends of the diameter: count it twice."),
        Slip("2*D/d_t*t_sheet", "You left out the side itself. It lies under the folds. Count it with them."),
        Slip("(1 + 2*d_t/D)*t_sheet", "Upside down: the deeper the pit for its width, the more lies double."),
    ),
    rises=("D", "t_sheet"),
    falls=("d_t",),
    remark="A mean: three layers where a pleat lies, one between. Where the depth is more than the diameter, pleats must lie over each other.",
)

liner_round_a_circle = Formula(
    name="liner folded away round a circle",
    result="A_fold",
    equals="pi*D*(D + 2*(w_apron + w_trim))",
    steps=(
        spare_round_a_circle,
        Take(_ON_THE_APRON, "A_fold = Integral(l_over, (z_f, 0, D)) + 2*pi*D*(w_apron + w_trim)"),
        Step("integrate"),
    ),
    unpublished=_OWN,
    slips=(
        Slip("pi*(D + w_apron + w_trim)**2", "You kept what covers the apron. Only the rest is folded away. Take the area over the apron off."),
        Slip("pi*D**2", _SIDE_ALONE),
        Slip("2*pi*D*(D + w_apron + w_trim)", _WIDEST),
    ),
    rises=("D", "w_apron", "w_trim"),
    remark="For a liner trimmed round. As bought it is a square, whose corners lie outside the circle and are cut off last.",
)
