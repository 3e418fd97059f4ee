"""Water balance: what is in transit, what is lost and gained in a day, and how long the water lasts."""

from brimwork.formula import Formula, Published, Slip, Solve, Step, Take
from brimwork.laws import area_of_a_circle, area_of_a_pipe
from brimwork.sources import RAIN_CATCHMENT

_BALANCE = "a balance of volumes: what was there, what comes and what goes"
_THIN = "area times thickness, by definition"
_PLAN_ONLY = "You used the whole plan area. The water stands in the empty share of the blocks only: multiply by their void fraction."
_DAYS_UPSIDE_DOWN = "The two have changed places: a bigger loss must leave fewer days."

# --- in transit ---------------------------------------------------------------------------------------------------------------------

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
        Slip("pi*d_rim", "That is the length of the rim. The surface goes with the square of the diameter."),
    ),
)

water_over_the_rim = Formula(
    name="water that stands above the rim",
    result="V_rim",
    equals="A_v*H",
    defined="while it runs, the whole surface stands above the rim by the head",
    unpublished=_THIN,
    slips=(Slip("A_v*(H + z_mouth)", "Down to the tube mouth is the siphon's part. Above the rim stands the head alone.", also_given=("z_mouth",)),),
    ranges={"H": ("2 mm", "8 mm")},
)

water_siphoned_back = Formula(
    name="water that siphons back",
    result="V_siph",
    equals="A_v*z_mouth",
    defined="without a check valve the vessel empties down to the tube mouth each time the pump stops",
    unpublished="area times depth, by definition",
    slips=(Slip("A_v*H", "That is the water above the rim. The siphon takes what stands between the rim and the tube mouth.", also_given=("H",)),),
    remark="With a check valve, or a mouth above the water, this is nothing. A tube fed into the bottom of a vessel empties the whole of it.",
)

water_in_the_film = Formula(
    name="water in the film on the face",
    result="V_film",
    equals="A_side*delta",
    defined="wet face times thickness of the film",
    unpublished=_THIN,
    slips=(Slip("A_side*H", "You used the head over the rim. Down the face the water runs faster, and its film is thinner.", also_given=("H",)),),
)

water_in_the_sheet = Formula(
    name="water in the falling sheet",
    result="V_sheet",
    equals="Q*t_fall",
    steps=(
        Take("a drop that leaves the edge is in the air for the time of fall, in which the pump sends", "V_w = Q*t_fall"),
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
    unpublished="own geometry: a cylinder",
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
    defined="the running water fills a small share of the stone layer; 2 to 5 % is judgement",
    unpublished=_THIN,
    slips=(
        Slip("A_run*t_st*n_s", "You filled all the gaps with water. It only runs through them: a few per cent of the layer.", also_given=("n_s",)),
        Slip("A_run*t_st", "You counted the whole layer as water. It fills a few per cent of it."),
    ),
)

water_in_transit = Formula(
    name="water in transit",
    result="V_tr",
    equals="V_rim + V_siph + V_film + V_sheet + V_pc + V_hold",
    defined="all that is up in the feature while the pump runs, and comes back when it stops",
    unpublished=_BALANCE,
    slips=(
        Slip("V_rim + V_film + V_sheet + V_pc + V_hold", "You forgot what siphons back through the tube. Without a check valve it is often the biggest part."),
        Slip("V_rim", "Only a part of it stands above the rim. Film, sheet, pipe, stone and siphon come on top."),
    ),
    remark="Put 0 for a part that the feature does not have.",
)

drop_on_start = Formula(
    name="drop of the level on start",
    result="z_r",
    equals="V_tr/(A_b*n_v)",
    steps=(
        Take("each unit of level holds", "A_w = A_b*n_v"),
        Take("what goes up into the feature is missing in the reservoir: the level falls by it over the water area", "z_r = V_tr/A_w"),
        Step("put the water area in"),
    ),
    unpublished=_BALANCE,
    slips=(
        Slip("V_tr/A_b", "You divided by the plan area. The water only stands in the empty share, so the level falls more."),
        Slip("V_tr*n_v/A_b", "You multiplied by the void fraction. It makes the area smaller, and so the drop bigger."),
        Slip("H", "The reservoir does not fall by the head over the rim: its area is not that of the vessel, and there is more in transit.", also_given=("H",)),
    ),
    remark="Predict it, then measure it on the first start: the best free test of the whole sum. A much bigger drop means a leak or a forgotten part.",
)

drain_back_ratio = Formula(
    name="drain-back ratio",
    result="r_back",
    equals="A_b*n_v*(h_over - h_run)/V_tr",
    steps=(
        Take("each unit of level holds", "A_w = A_b*n_v"),
        Take("from the running level up to the overflow there is room for", "V_free = A_w*(h_over - h_run)"),
        Take("compare it with what comes back", "r_back = V_free/V_tr"),
        Step("put it in"),
    ),
    where=("h_run < h_over",),
    unpublished=_BALANCE,
    slips=(
        Slip("A_b*(h_over - h_run)/V_tr", _PLAN_ONLY),
        Slip("V_tr/(A_b*n_v*(h_over - h_run))", "Upside down: over 1 must mean that all of it fits."),
        Slip("A_b*n_v*h_over/V_tr", "Only the space above the running level is free."),
    ),
    remark="Below 1, water runs to waste at every stop, and the reservoir is short of it at the next start.",
)

# --- loss ---------------------------------------------------------------------------------------------------------------------------

evaporation_of_a_wet_surface = Formula(
    name="evaporation of a wet surface",
    result="E_w",
    equals="K_E*E_0",
    steps=(Take("the coefficient compares the wet surface with the reference", "K_E = E_w/E_0"), Solve("solve for the evaporation", of="K_E")),
    unpublished="the coefficient's own definition",
    slips=(
        Slip("E_0/K_E", "You divided. A coefficient over 1 must make it more."),
        Slip("E_0", "That is for grass. Open water and wet stone have a coefficient of their own."),
    ),
)

daily_loss = Formula(
    name="loss of water",
    result="Q_loss",
    equals="K_E*E_0*A_wet + Q_splash",
    steps=(
        evaporation_of_a_wet_surface,
        Take("every wet surface that is open to the air dries by as much, and what is thrown out comes on top", "Q_loss = E_w*A_wet + Q_splash"),
        Step("put the evaporation in"),
    ),
    unpublished=_BALANCE,
    slips=(
        Slip(
            "K_E*E_0*A_b + Q_splash", "You used the size of the hidden tank. Water dries from wet faces open to the air, so use that area.", also_given=("A_b",)
        ),
        Slip("K_E*E_0*A_wet", "You left out the splash. On a windy day it can be as much as dries."),
        Slip("E_0*A_wet + Q_splash", "You left out the coefficient: the reference is for grass."),
        Slip("K_E*E_0*(A_wet + Q_splash)", "Splash is a volume, not an area: add it to what dries."),
    ),
    remark="A millimetre off a square metre is a litre.",
)

days_without_top_up = Formula(
    name="days without top-up",
    result="t_dry",
    equals="(V_use - V_tr)/(K_E*E_0*A_wet + Q_splash)",
    steps=(
        daily_loss,
        Take("of the usable water, what is in transit is not there to lose", "V_res = V_use - V_tr"),
        Take("it is gone when the loss has taken it", "t_dry = V_res/Q_loss"),
        Step("put both in"),
    ),
    where=("V_tr < V_use",),
    unpublished=_BALANCE,
    slips=(
        Slip(
            "V_use/(K_E*E_0*A_wet + Q_splash)", "You forgot the water in transit. When the pump starts, some water leaves the tank and stays up in the feature."
        ),
        Slip("(V_use - V_tr)/(K_E*E_0*A_wet)", "You left out the splash. On a windy day it can be as much as dries."),
        Slip(
            "(V_use - V_tr)/(K_E*E_0*A_b + Q_splash)",
            "You used the size of the hidden tank. Water dries from wet faces open to the air, so use that area.",
            ("A_b",),
        ),
        Slip("(V_use + V_dead - V_tr)/(K_E*E_0*A_wet + Q_splash)", "You counted water below the pump inlet. The pump cannot reach it.", ("V_dead",)),
        Slip("(K_E*E_0*A_wet + Q_splash)/(V_use - V_tr)", _DAYS_UPSIDE_DOWN),
    ),
    ranges={"V_use": ("80 L", "400 L"), "V_tr": ("5 L", "30 L")},
)

time_a_reserve_lasts = Formula(
    name="time that a reserve lasts",
    result="t_dry",
    equals="V_res/Q_loss",
    defined="it is gone when the loss has taken it",
    unpublished=_BALANCE,
    slips=(Slip("Q_loss/V_res", _DAYS_UPSIDE_DOWN),),
)

daily_share = Formula(
    name="share of the usable water lost in a day",
    result="r_day",
    equals="Q_loss/V_use",
    defined="loss over what the pump can draw on",
    unpublished=_BALANCE,
    slips=(Slip("V_use/Q_loss", "Upside down: that is how long the water would last."),),
)

water_to_hold = Formula(
    name="water that the reservoir must hold",
    result="V_w",
    equals="V_dead + V_tr + V_res",
    defined="dead water below the pump's limit, what goes up into the feature, and the reserve for the days without top-up",
    unpublished=_BALANCE,
    slips=(
        Slip("V_dead + V_res", "When the pump starts, some water leaves the tank and stays up in the feature. Leave room for it."),
        Slip("V_tr + V_res", "The pump cannot draw the lowest water. It must be there all the same."),
        Slip("V_dead + V_tr", "That would run low on the first dry day: add the reserve."),
        Slip("V_dead + V_res - V_tr", "What goes up must be in the reservoir first: add it."),
    ),
)

# --- rain and top-up ----------------------------------------------------------------------------------------------------------------

rain_on_a_catch = Formula(
    name="rain on a catch",
    result="V_rain",
    equals="k_run*A_catch*h_rain",
    steps=(
        Take("on the plan of the catch falls", "V_w = A_catch*h_rain"),
        Take("of which a share runs to the reservoir, the rest dries or strays", "V_rain = k_run*V_w"),
        Step("multiply"),
    ),
    published=(Published("k_run=1, A_catch=1000 ft2, h_rain=1 in", "623 US gal", 1e-3, RAIN_CATCHMENT.at("1000 ft2 x 1 in")),),
    slips=(
        Slip("A_catch*h_rain", "You took all of the rain. A part of it wets the stone and dries, or runs elsewhere."),
        Slip("A_catch*h_rain/k_run", "You divided by the share. It makes the rain less."),
    ),
)

storm_over_the_brim = Formula(
    name="storm water for the overflow",
    result="V_spill",
    equals="k_run*A_catch*h_rain - V_free",
    steps=(rain_on_a_catch, Take("the free space takes its part, the rest must go out", "V_spill = V_rain - V_free"), Step("put the rain in")),
    where=("V_free < k_run*A_catch*h_rain",),
    unpublished=_BALANCE,
    slips=(
        Slip("k_run*A_catch*h_rain", "You forgot the free space below the overflow: it takes its part."),
        Slip("k_run*A_catch*h_rain + V_free", "Free space takes rain in. Take it off."),
    ),
    ranges={"h_rain": ("30 mm", "80 mm"), "A_catch": ("2 m2", "6 m2"), "V_free": ("10 L", "60 L")},
)

top_up = Formula(
    name="top-up for a time",
    result="V_top",
    equals="t_gap*(E_w*A_wet + Q_splash - k_run*A_catch*R_day)",
    steps=(
        Take("each day takes what dries and what is thrown out", "Q_loss = E_w*A_wet + Q_splash"),
        Take("and the mean rain gives some of it back", "V_top = t_gap*(Q_loss - k_run*A_catch*R_day)"),
        Step("put the loss in"),
    ),
    where=("k_run*A_catch*R_day < 0.9*(E_w*A_wet + Q_splash)",),
    unpublished=_BALANCE,
    slips=(
        Slip(
            "t_gap*(E_w*A_b + Q_splash - k_run*A_catch*R_day)",
            "You used the size of the hidden tank. Water dries from wet faces open to the air, so use that area.",
            ("A_b",),
        ),
        Slip("t_gap*(E_w*A_wet + Q_splash + k_run*A_catch*R_day)", "Rain refills the tank, so it makes the top-up smaller. Check the sign in front of it."),
        Slip("t_gap*(E_w*A_wet - k_run*A_catch*R_day)", "You left out the splash. On a windy day it can be as much as dries."),
        Slip("t_gap*(E_w*A_wet + Q_splash)", "You left out the rain, which gives some of it back."),
    ),
    ranges={"E_w": ("3 mm/day", "8 mm/day"), "A_catch": ("0.9 m2", "3 m2")},
    remark="Counts on mean rain. Where it rains more than is lost, nothing is to be added and the rest leaves by the overflow. "
    "Lift the hose out after filling, or fill through an air gap: a hose left under water can draw dirty water back into the mains.",
)

# --- what is treated ----------------------------------------------------------------------------------------------------------------

water_in_a_filled_vessel = Formula(
    name="water in a vessel with foam and pebbles",
    result="V_v",
    equals="V_in - V_f - (1 - n_por)*V_p",
    steps=(
        Take("the pebbles themselves, without their gaps, take up", "V_solid = (1 - n_por)*V_p"),
        Take("the water has what foam and pebbles leave", "V_v = V_in - V_f - V_solid"),
        Step("put the pebbles in"),
    ),
    where=("V_f + V_p < V_in",),
    unpublished="own geometry: what is left",
    slips=(
        Slip("V_in - V_f - V_p", "The gaps between the pebbles are full of water. Take off their solid share only."),
        Slip("V_in", "Foam and pebbles take up room too."),
        Slip("V_in - V_f - n_por*V_p", "You took off the gaps. They hold water: take off the stones."),
    ),
    ranges={"V_in": ("100 L", "250 L"), "V_f": ("10 L", "60 L"), "V_p": ("10 L", "40 L")},
)

treatment_volume = Formula(
    name="treatment volume",
    result="V_treat",
    equals="A_b*n_v*h_static + V_v",
    steps=(
        Take("with the pump off the reservoir holds", "V_w = A_b*n_v*h_static"),
        Take("all that goes round is that and the water in the vessel", "V_treat = V_w + V_v"),
        Step("put it in"),
    ),
    unpublished=_BALANCE,
    slips=(
        Slip("A_b*h_static + V_v", _PLAN_ONLY),
        Slip("A_b*n_v*h_static", "You forgot the water in the vessel: it goes round as well."),
    ),
    remark="For dosing: the gross volume of pit and vessel would overdose. Follow the product's label, keep children and animals away while it mixes.",
)
