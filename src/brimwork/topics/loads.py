"""Loads: the contact patch, the pressure on the blocks, and what they may carry for years.

Loads on blocks can hurt people. The block's own long-term figure governs, and a heavy or raised piece is for an engineer to decide.
"""

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import weight
from brimwork.sources import NIST_811
from brimwork.steps import Step, Take

_SPREAD = "common practice, no source: 45 degrees through a stiff slab"
_SPREAD_REMARK = "Through the slab only, never past its edge: loose stone on a plastic lid does not spread a load. The maker's sheet governs."
_SHEET = "The maker's long-term figure governs. Where the sheet gives none, ask for one, or have an engineer decide."
_OWN_AREA = "own geometry"
_NO_G = "You added kilograms per square metre to pascals. Turn mass into weight first: multiply by gravity."
_NO_WATER = "The feature was counted empty. Add the water it holds when running, because the blocks carry that too."

# --- contact patch ------------------------------------------------------------------------------------------------------------------

slab_patch = Formula(
    name="contact patch of a slab",
    result="A_c",
    equals="l_s*w_s",
    defined="a flat slab, bedded all over, touches with its whole underside",
    by_hand=(ByHand("l_s=600 mm, w_s=450 mm", "60*45", "2700 cm2"),),
    unpublished=_OWN_AREA,
    slips=(
        Slip("2*(l_s + w_s)", "That is the length round the slab. The patch is length times width. Multiply the two."),
        Slip("l_s*t_s", "That is a side of the slab. It touches with its underside, length times width. Multiply length by width.", also_given=("t_s",)),
    ),
    rises=("l_s", "w_s"),
    remark="Only if it is bedded all over: a slab that rocks touches on three points.",
)

ring_patch = Formula(
    name="contact patch of a ring foot",
    result="A_c",
    equals="pi/4*(d_fo**2 - d_fi**2)",
    steps=(
        Take("a ring foot touches with its outer circle less its inner circle", "A_c = pi*(d_fo/2)**2 - pi*(d_fi/2)**2"),
        Step("put diameters for radii"),
    ),
    where=("d_fi < d_fo",),
    unpublished=_OWN_AREA,
    slips=(
        Slip("pi/4*d_fo**2", "You took the whole circle. A ring foot touches with its ring only: a far smaller patch, and a higher pressure."),
        Slip("pi/4*(d_fo - d_fi)**2", "Subtract the areas, not the diameters: square each first."),
        Slip("pi*(d_fo**2 - d_fi**2)", "You put diameters in the place of radii: the patch came out four times too big."),
    ),
    rises=("d_fo",),
    falls=("d_fi",),
)

spread_of_ring = Formula(
    name="patch of a ring foot through a slab",
    result="A_c",
    equals="pi/4*((d_fo + 2*t_s)**2 - (d_fi - 2*t_s)**2)",
    steps=(
        Take("at 45 degrees the load gains the thickness of the slab on every side: the outer circle grows by it twice", "d_so = d_fo + 2*t_s"),
        Take("and the inner circle shrinks as much", "d_si = d_fi - 2*t_s"),
        Take("the patch under the slab is the ring between the two circles", "A_c = pi/4*(d_so**2 - d_si**2)"),
        Step("put both in"),
    ),
    where=("2*t_s < d_fi", "d_fi < d_fo"),
    unpublished=_SPREAD,
    slips=(
        Slip(
            "pi/4*((d_fo + t_s)**2 - (d_fi - t_s)**2)",
            "The load spreads by the thickness on both sides of the ring: each diameter changes by it twice. Add the thickness twice to the outside, and take it twice off the inside.",
        ),
        Slip(
            "pi/4*(d_fo**2 - d_fi**2)",
            "That is the patch on top of the slab. Under it the load has spread by the thickness on every side. Change both diameters by twice the thickness.",
        ),
    ),
    ranges={"t_s": ("40 mm", "70 mm")},
    rises=("d_fo", "t_s"),
    falls=("d_fi",),
    remark=_SPREAD_REMARK,
)

spread_of_disc = Formula(
    name="patch of a round foot through a slab",
    result="A_c",
    equals="pi/4*(d_fo + 2*t_s)**2",
    steps=(
        Take("at 45 degrees the load gains the thickness of the slab on every side", "d_so = d_fo + 2*t_s"),
        Take("the patch under the slab is that circle", "A_c = pi/4*d_so**2"),
        Step("put it in"),
    ),
    unpublished=_SPREAD,
    slips=(
        Slip("pi/4*(d_fo + t_s)**2", "The load spreads by the thickness on both sides: the diameter grows by it twice."),
        Slip(
            "pi/4*d_fo**2",
            "That is the patch on top of the slab. Under it the load has spread by the thickness on every side. Change both diameters by twice the thickness.",
        ),
    ),
    rises=("d_fo", "t_s"),
    remark=f"For a full foot, or a ring whose hole is narrower than twice the slab is thick. {_SPREAD_REMARK}",
)

# --- pressure on the blocks ---------------------------------------------------------------------------------------------------------

slab_mass = Formula(
    name="mass of a slab",
    result="m_slab",
    equals="rho_slab*l_s*w_s*t_s",
    steps=(
        Take("the slab is a straight block", "V = l_s*w_s*t_s"),
        Take("mass is density times volume", "m_slab = rho_slab*V"),
        Step("put the volume in"),
    ),
    unpublished="density times volume, by definition",
    slips=(Slip("rho_slab*l_s*w_s", "The thickness is missing: that is the mass of a slab one metre thick."),),
    rises=("rho_slab", "l_s", "w_s", "t_s"),
)

load_weight = Formula(
    name="weight of vessel, water and slab",
    result="F_w",
    equals="g*(m_v + rho*V_v + m_slab)",
    defined="weight is mass times gravity (Newton, law II): vessel, water and slab together",
    by_hand=(ByHand("m_v=90 kg, V_v=60 L, m_slab=45 kg, rho=1000 kg/m3", "9.80665*(90 + 1000*0.06 + 45)", "1912.3 N"),),
    published=(Published("m_v=1 kg, V_v=0 L, rho=1000 kg/m3, m_slab=0 kg", "9.80665 N", 1e-9, NIST_811.at("kilogram-force")),),
    slips=(
        Slip("m_v + rho*V_v + m_slab", "That is the mass. Weight is mass times gravity, in newtons."),
        Slip("g*(m_v + m_slab)", _NO_WATER),
        Slip("g*(m_v + rho*V_v)", "You left out the slab. The blocks carry it too."),
    ),
    rises=("m_v", "V_v", "m_slab"),
)

contact_pressure = Formula(
    name="pressure on a contact patch",
    result="p_c",
    equals="F_w/A_c",
    defined="pressure is weight over the area that really touches",
    published=(Published("F_w=1 lbf, A_c=1 in2", "6.894757 kPa", 1e-6, NIST_811.at("pound-force per square inch")),),
    slips=(Slip("F_w*A_c", "You multiplied. The same weight on a bigger patch presses less: divide."),),
    rises=("F_w",),
    falls=("A_c",),
    remark=_SHEET,
)

pressure_on_blocks = Formula(
    name="pressure on the block tops",
    result="p_c",
    equals="g*(m_v + rho*V_v + m_slab)/A_c + g*rho_bulk*t_st",
    steps=(
        weight,
        Take("stone laid over it weighs, for each unit of area, its loose density times its thickness", "p_st = g*rho_bulk*t_st"),
        Take("the blocks carry the weight over the patch, and the stone", "p_c = F_w/A_c + p_st"),
        Step("put both in"),
    ),
    unpublished="it follows from the balance of forces; weight and pressure are checked one by one",
    slips=(
        Slip("(m_v + rho*V_v + m_slab)/A_c + rho_bulk*t_st", _NO_G),
        Slip("g*(m_v + m_slab)/A_c + g*rho_bulk*t_st", _NO_WATER),
        Slip("g*(m_v + rho*V_v + m_slab)/A_c", "You left out the layer of stone. It lies on the blocks as well."),
        Slip(
            "g*(m_v + rho*V_v + m_slab)/A_c + g*rho_s*t_st",
            "You used the density of solid rock. A layer of loose stone has gaps; use the loose (bulk) figure.",
            also_given=("rho_s",),
        ),
        Slip("g*rho_bulk*t_st", "You counted the stone only. The vessel, its water and the slab stand on the blocks too."),
        Slip("g*(m_v + rho*V_v + m_slab)/A_c + rho_bulk*t_st", "The stone is still in kilograms per square metre. Multiply that term by gravity too."),
    ),
    ranges={"A_c": ("1500 cm2", "5000 cm2")},
    rises=("m_v", "V_v", "m_slab", "rho_bulk", "t_st"),
    falls=("A_c",),
    remark=_SHEET,
)

allowable_pressure = Formula(
    name="pressure that the blocks may carry",
    result="p_all",
    equals="p_short*k_creep/f_s",
    steps=(
        Take("under a load that stays, plastic keeps a part of its short-term strength", "p_long = k_creep*p_short"),
        Take("and the safety factor takes its share of that", "p_all = p_long/f_s"),
        Step("put it in"),
    ),
    unpublished="creep 0.40 and factor 1.5 are our own choice; the factors of the block guides (C680, C737) could not be read and are disputed",
    slips=(
        Slip("p_short*k_creep*f_s", "A safety factor must make the allowed load smaller. Divide the test strength by it."),
        Slip("p_short*k_creep", "You left the safety factor out. Divide by it."),
        Slip("p_short/f_s", "That is for a load of minutes. Plastic creeps: only part of its short-term strength lasts for years."),
        Slip("p_short/(k_creep*f_s)", "The creep factor is the share that lasts: multiply by it."),
    ),
    rises=("p_short", "k_creep"),
    falls=("f_s",),
    remark=_SHEET,
)

utilisation = Formula(
    name="utilisation of the blocks",
    result="u_p",
    equals="p_c/p_all",
    defined="what is carried, compared with what may be carried",
    by_hand=(ByHand("p_c=21 kPa, p_all=60 kPa", "21/60", "0.35"),),
    unpublished="a ratio, by definition",
    slips=(Slip("p_all/p_c", "Upside down: over 1 must mean too much."),),
    rises=("p_c",),
    falls=("p_all",),
    remark=_SHEET,
)

# --- a foot or a wheel on the blocks ------------------------------------------------------------------------------------------------

_SECONDS = "For a load of seconds. What stays for hours or years is another matter: plastic creeps."

foot_pressure = Formula(
    name="pressure under a foot or a wheel",
    result="p_foot",
    equals="F_foot/(b_foot + 2*t_cov)**2",
    steps=(
        Take("at 45 degrees the square on which it stands gains the thickness of the cover on every side", "b_under = b_foot + 2*t_cov"),
        Take("what presses, over the square under the cover", "p_foot = F_foot/b_under**2"),
        Step("put it in"),
    ),
    unpublished=_SPREAD,
    slips=(
        Slip("F_foot/(b_foot + t_cov)**2", "The load spreads by the thickness on both sides: the side of the square grows by it twice."),
        Slip("F_foot/b_foot**2", "That is the pressure on top of the cover. Under it the load has spread by the thickness on every side."),
        Slip("F_foot/(b_foot + 2*t_cov)", "You divided by the side of the square. Pressure is force over area: square the side."),
    ),
    ranges={"t_cov": ("20 mm", "80 mm")},
    rises=("F_foot",),
    falls=("b_foot", "t_cov"),
    remark=f"The cover is a stiff slab or grid that lies all over the blocks; without one its thickness is nothing. {_SPREAD_REMARK}",
)

brief_pressure = Formula(
    name="pressure that the blocks may carry for seconds",
    result="p_brief",
    equals="p_short/f_s",
    defined="the short-term strength, less the share that the safety factor takes",
    by_hand=(ByHand("p_short=180 kPa, f_s=1.5", "180/1.5", "120 kPa"),),
    unpublished="a strength over a safety factor, by definition; a factor of 1.5 is our own choice",
    slips=(
        Slip("p_short*f_s", "A safety factor must make the allowed load smaller. Divide the test strength by it."),
        Slip("p_short", "You left the safety factor out. Divide by it."),
        Slip(
            "p_short*k_creep/f_s",
            "Creep begins at once but grows for years. For a load of seconds the short-term strength counts, without the creep factor. Leave the creep factor out.",
            also_given=("k_creep",),
        ),
    ),
    rises=("p_short",),
    falls=("f_s",),
    remark=f"{_SECONDS} {_SHEET}",
)

foot_utilisation = Formula(
    name="utilisation under a foot or a wheel",
    result="u_foot",
    equals="p_foot/p_brief",
    defined="what a foot or a wheel presses, compared with what may press for seconds",
    by_hand=(ByHand("p_foot=45 kPa, p_brief=120 kPa", "45/120", "0.375"),),
    unpublished="a ratio, by definition",
    slips=(Slip("p_brief/p_foot", "Upside down: over 1 must mean too much."),),
    rises=("p_foot",),
    falls=("p_brief",),
    remark=_SECONDS,
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------
