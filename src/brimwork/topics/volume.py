"""Volume: how much a pit, a tank or a bowl holds up to a depth, and how deep a volume stands in it."""

from brimwork.formula import Formula, Published, Slip
from brimwork.laws import area_of_a_circle, chord_and_sagitta, section_of_a_sphere
from brimwork.sources import ARCHIMEDES, EUCLID, MATH_CENTRAL, MOSCOW, NIST_44, WINE_GALLON
from brimwork.steps import Solve, Step, Take

_ADD_SLICES = "add thin level slices from the floor up to the depth"
_TOO_BIG = "The answer is four times too big, which is what happens when the diameter goes into the place of the radius. Halve it before you square it."

# --- pits ---------------------------------------------------------------------------------------------------------------------------

straight_pit = Formula(
    name="volume of a straight pit",
    result="V",
    equals="L*W*h",
    steps=(
        Take("every level slice of a straight-sided pit is the same rectangle", "A_z = L*W"),
        Take(_ADD_SLICES, "V = Integral(A_z, (z_f, 0, h))"),
        Step("all slices are equal, so the depth only multiplies"),
    ),
    published=(Published("L=11 in, W=7 in, h=3 in", "1 US gal", 1e-9, NIST_44.at("definition of the US gallon, 231 cubic inches"), note="11 x 7 x 3 = 231"),),
    slips=(
        Slip("L*W", "That is the area of the floor. Multiply it by the depth as well."),
        Slip("L + W + h", "You added the three sides. A volume takes their product. Multiply them."),
        Slip("2*(L + W)*h", "That is the area of the four walls. The volume is floor area times depth. Multiply floor by depth."),
    ),
)

depth_in_straight_pit = Formula(
    name="depth in a straight pit",
    result="h",
    equals="V/(L*W)",
    inverse_of=straight_pit,
    published=(Published("V=1 US gal, L=11 in, W=7 in", "3 in", 1e-9, NIST_44.at("definition of the US gallon, 231 cubic inches")),),
    slips=(Slip("V/L", "You divided by the length only. Divide by the whole floor area, length times width."),),
    ranges={"V": ("60 L", "400 L")},
)

battered_pit = Formula(
    name="volume of a battered pit",
    result="V",
    equals="L*W*h + m_b*(L + W)*h**2 + 4/3*m_b**2*h**3",
    steps=(
        Take("both ends lean out by the batter as we go up, so the length grows", "L_z = L + 2*m_b*z_f"),
        Take("and so does the width", "W_z = W + 2*m_b*z_f"),
        Take("a level slice is a rectangle", "A_z = L_z*W_z"),
        Take(_ADD_SLICES, "V = Integral(A_z, (z_f, 0, h))"),
        Step("multiply out the slice", "A_z = L*W + 2*m_b*(L + W)*z_f + 4*m_b**2*z_f**2"),
        Step(
            "add up part by part; what does not change with the height stands outside",
            "V = L*W*Integral(1, (z_f, 0, h)) + 2*m_b*(L + W)*Integral(z_f, (z_f, 0, h)) + 4*m_b**2*Integral(z_f**2, (z_f, 0, h))",
        ),
        Step("up to the depth, slice by slice, the ones add up to the depth, the heights to half its square, their squares to a third of its cube"),
    ),
    published=(Published("L=52 ft, W=22 ft, m_b=2, h=12 ft", "44256 ft3", 1e-6, MATH_CENTRAL.at("pit with 2:1 sides, 12 ft deep")),),
    slips=(
        Slip(
            "(L + 2*m_b*h)*(W + 2*m_b*h)*h",
            "This treats the pit as if it were as wide at the bottom as at the top. The sides lean in, so it holds less. Take off what the corners do not hold.",
        ),
        Slip("L*W*h", "This is the straight pit over the floor. The leaning sides leave room all round as well. Add the room at the sides and in the corners."),
        Slip(
            "(L*W + (L + 2*m_b*h)*(W + 2*m_b*h))/2*h",
            "You averaged the areas of floor and top. The corners make the area grow faster than in a straight line, so the average is too big. Use the middle area too, or the law with corners.",
        ),
        Slip(
            "(L + m_b*h)*(W + m_b*h)*h",
            "You took the size half-way up for the whole pit. That leaves out part of the four corners: put 4/3 before the last term.",
        ),
    ),
    remark="Two areas averaged give too much, always by 2/3 of the batter squared times the depth cubed, whatever the length and width.",
)

depth_in_battered_pit = Formula(
    name="depth in a battered pit",
    result="h",
    inverse_of=battered_pit,
    between=("0*L", "V/(L*W)"),
    published=(Published("V=44256 ft3, L=52 ft, W=22 ft, m_b=2", "12 ft", 1e-6, MATH_CENTRAL.at("pit with 2:1 sides, 12 ft deep")),),
    ranges={"V": ("60 L", "400 L")},
)

top_of_battered_pit = Formula(
    name="top length of a battered pit",
    result="L_top",
    equals="L + 2*m_b*h",
    steps=(
        Take("both ends lean out by the batter for each unit of height", "L_z = L + 2*m_b*z_f"),
        Take("the top is at the full depth", "z_f = h"),
        Take("call the length there the top length", "L_top = L_z"),
        Step("put the depth in"),
    ),
    published=(Published("L=52 ft, m_b=2, h=12 ft", "100 ft", 1e-9, MATH_CENTRAL.at("pit with 2:1 sides, 12 ft deep")),),
    slips=(Slip("L + m_b*h", "The pit leans out at both ends, and you counted one."),),
)

prismoidal_rule = Formula(
    name="volume from three areas",
    result="V",
    equals="h/6*(A_1 + 4*A_m + A_2)",
    steps=(
        Take("let the area grow with height as plane sides make it grow: by a first and a second power", "A_z = A_1 + c_1*z_f + c_2*z_f**2"),
        Take("then half-way up the area lies between them", "A_m = A_1 + c_1*h/2 + c_2*h**2/4"),
        Take("and at the top", "A_2 = A_1 + c_1*h + c_2*h**2"),
        Take(_ADD_SLICES, "V = Integral(A_z, (z_f, 0, h))"),
        Step("integrate, and find one part of bottom, four of middle and one of top in it"),
    ),
    published=(Published("A_1=1144 ft2, A_m=3496 ft2, A_2=7000 ft2, h=12 ft", "44256 ft3", 1e-6, MATH_CENTRAL.at("pit with 2:1 sides, 12 ft deep")),),
    slips=(
        Slip("h/2*(A_1 + A_2)", "You averaged the areas of bottom and top. Take the middle in too, with four parts."),
        Slip(
            "h/3*(A_1 + A_m + A_2)", "You gave the three areas equal parts. The middle counts four times. Count the middle area four times and divide by six."
        ),
        Slip("h*(A_1 + 4*A_m + A_2)", "There are six parts in the sum: divide by six."),
        Slip("h*A_m", "You took the middle area for the whole depth. That is close; the ends still correct it. Count the ends once each."),
    ),
)

tapered_pit = Formula(
    name="volume of a tapered pit",
    result="V",
    equals="h/3*(A_1 + sqrt(A_1*A_2) + A_2)",
    steps=(
        Take(
            "bottom and top have the same shape, so lengths grow in a straight line and areas as their square",
            "A_z = (sqrt(A_1) + (sqrt(A_2) - sqrt(A_1))*z_f/h)**2",
        ),
        Take(_ADD_SLICES, "V = Integral(A_z, (z_f, 0, h))"),
        Step("integrate the square"),
    ),
    published=(
        Published("A_1=4 m2, A_2=16 m2, h=6 m", "56 m3", 1e-9, MOSCOW.at("truncated pyramid, base 4, top 2, height 6"), note="printed upside down: base below"),
    ),
    slips=(
        Slip(
            "h*(A_1 + A_2)/2",
            "You averaged the top and bottom areas. That works for parallel sides, but a pit that tapers both ways holds less; "
            "add the middle term, the square root of the two areas multiplied.",
        ),
        Slip("A_2*h", "This treats the pit as if it were as wide at the bottom as at the top. Measure the floor as well and use both areas."),
        Slip("A_1*h", "This is the straight pit over the floor area. The leaning sides leave room as well. Use both areas."),
        Slip("h/3*(A_1 + A_2)", "One of three terms is missing: the square root of the two areas multiplied."),
        Slip("h*(A_1 + sqrt(A_1*A_2) + A_2)", "You added three terms and did not take a third."),
    ),
    remark="Only for bottom and top of the same shape. A rectangle with the same batter all round is not: use the battered pit.",
)

# --- round vessels ------------------------------------------------------------------------------------------------------------------

round_tank = Formula(
    name="volume of a round tank",
    result="V",
    equals="pi/4*d_t**2*h",
    steps=(
        area_of_a_circle,
        Take("a straight tank has the same diameter at every height", "d_z = d_t"),
        Take(_ADD_SLICES, "V = Integral(A_z, (z_f, 0, h))"),
        Step("all slices are equal, so the depth only multiplies"),
    ),
    published=(Published("d_t=7 in, h=6 in", "1 US gal", 5e-4, WINE_GALLON.at("definition"), note="the statute rounds 230.9 to 231"),),
    slips=(
        Slip("pi*d_t**2*h", _TOO_BIG),
        Slip("pi/4*d_t*h", "The diameter is squared in the area of a circle, and you used it once."),
        Slip(
            "pi*d_t*h",
            "That is the wall: the length round the tank times its depth. The volume needs the area of the circle. Use a quarter of pi times the diameter squared.",
        ),
        Slip("d_t**2*h", "That is a square tank as wide as the round one. A circle fills about 79 % of its square. Multiply by a quarter of pi."),
        Slip(
            "pi*d_t**2*h/16",
            "You halved the diameter twice. With the radius it is pi times radius squared; with the diameter, a quarter of pi. Use the diameter once, with a quarter of pi.",
        ),
    ),
)

depth_in_round_tank = Formula(
    name="depth in a round tank",
    result="h",
    equals="4*V/(pi*d_t**2)",
    inverse_of=round_tank,
    published=(Published("V=1 US gal, d_t=7 in", "6 in", 5e-4, WINE_GALLON.at("definition")),),
    slips=(Slip("V/(pi*d_t**2)", "You used the diameter where the radius goes: the area came out four times too big."),),
    ranges={"V": ("60 L", "400 L")},
)

cone_bowl = Formula(
    name="water in a cone-shaped bowl",
    result="V",
    equals="pi*h/4*(d_floor**2 + d_floor*(d_rim - d_floor)*h/D + (d_rim - d_floor)**2/3*(h/D)**2)",
    steps=(
        area_of_a_circle,
        Take("straight sides: the diameter grows evenly from bottom to rim", "d_z = d_floor + (d_rim - d_floor)*z_f/D"),
        Take(_ADD_SLICES, "V = Integral(A_z, (z_f, 0, h))"),
        Step("multiply out and integrate each power of the height"),
    ),
    published=(
        Published("d_floor=0 m, d_rim=2 m, h=1 m, D=1 m", "1.0472 m3", 1e-5, EUCLID.at("book XII, prop. 10: a cone is a third of its cylinder"), note="pi/3"),
    ),
    where=("h < 1.0001*D", "d_floor < d_rim"),
    slips=(
        Slip(
            "pi*h/4*((d_floor + d_rim)/2)**2",
            "You took the mean diameter of the whole bowl. The water only widens as far as its own depth, and area grows as the square. Use the width at the depth of the water.",
        ),
        Slip("pi*h/4*d_rim**2", "You used the rim diameter for all the depth. Lower down the bowl is narrower. Use the width at each depth."),
        Slip("pi*h*(d_floor**2 + d_floor*(d_rim - d_floor)*h/D + (d_rim - d_floor)**2/3*(h/D)**2)", _TOO_BIG),
    ),
)

depth_in_cone_bowl = Formula(
    name="depth in a cone-shaped bowl",
    result="h",
    inverse_of=cone_bowl,
    between=("0*D", "D"),
    published=(Published("V=1.04719 m3, d_floor=0 m, d_rim=2 m, D=1 m", "1 m", 1e-5, EUCLID.at("book XII, prop. 10: a cone is a third of its cylinder")),),
    where=("V < pi*D/12*(d_floor**2 + d_floor*d_rim + d_rim**2)", "d_floor < d_rim"),
    remark="More water than the bowl holds has no depth in it: the kit says so.",
)

sphere_of_bowl = Formula(
    name="sphere of a round bowl",
    result="R_s",
    equals="d_rim**2/(8*D) + D/2",
    steps=(
        chord_and_sagitta,
        Solve("solve for the radius"),
    ),
    published=(Published("d_rim=2 m, D=1 m", "1 m", 1e-9, EUCLID.at("book III, prop. 31: half a sphere is as deep as its radius")),),
    slips=(
        Slip(
            "d_rim/2",
            "That is half the rim. Only a half-sphere has its rim at its widest: a shallower bowl is part of a bigger sphere. Use rim and depth together.",
        ),
    ),
)

round_bowl = Formula(
    name="water in a round bowl",
    result="V",
    equals="pi*h**2/3*(3*R_s - h)",
    steps=(
        section_of_a_sphere,
        Take(_ADD_SLICES, "V = Integral(A_z, (z_f, 0, h))"),
        Step("multiply out: the square of the radius cancels", "A_z = pi*(2*R_s*z_f - z_f**2)"),
        Step("the heights add up to half the square of the depth, their squares to a third of its cube", "V = pi*(2*R_s*(h**2/2) - h**3/3)"),
        Step("a third of the square of the depth stands in both: put it in front"),
    ),
    published=(
        Published(
            "R_s=1 m, h=1 m", "2.0944 m3", 1e-5, ARCHIMEDES.at("book I, prop. 34: a sphere is two thirds of its cylinder"), note="half a sphere, 2/3 of pi"
        ),
    ),
    where=("h < 1.0001*R_s",),
    slips=(
        Slip("2*pi*R_s**3/3", "You used the whole half-sphere. The water only fills the bowl to its own depth, so use the cap formula with that depth."),
        Slip("pi*R_s**2*h", "That is a straight tank as wide as the sphere. A bowl is narrow at the bottom. Use the law of a bowl."),
        Slip("pi*R_s**2*h/3", "That is a cone. A bowl has round sides: use its own formula."),
        Slip("pi*R_s**2*sqrt((R_s - 3*h)**2)/3", "Radius and depth have changed places in the formula."),
    ),
    ranges={"h": ("100 mm", "280 mm")},
)

depth_in_round_bowl = Formula(
    name="depth in a round bowl",
    result="h",
    inverse_of=round_bowl,
    between=("0*R_s", "R_s"),
    published=(Published("V=2.09439 m3, R_s=1 m", "1 m", 1e-5, ARCHIMEDES.at("book I, prop. 34: a sphere is two thirds of its cylinder")),),
    where=("V < 2*pi/3*R_s**3",),
    remark="Up to half a sphere.",
)
