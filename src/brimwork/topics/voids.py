"""Void fraction and void ratio: two words that are often mixed up, kept apart; from densities, and from packed spheres.

The void fraction (porosity) compares the empty space with the whole, the void ratio compares it with the solid. Water needs the first.
"""

from brimwork.formula import Formula, Published, Slip
from brimwork.sources import GAUSS, TERZAGHI, UNATTRIBUTED
from brimwork.steps import Step, Take

_SANDS = TERZAGHI.at("table of typical soils in natural state")

# --- void fraction and void ratio ---------------------------------------------------------------------------------------------------

void_fraction = Formula(
    name="void fraction from void ratio",
    result="n_por",
    equals="e_void/(1 + e_void)",
    steps=(
        Take("the void ratio compares the empty space with the solid", "V_void = e_void*V_solid"),
        Take("the void fraction compares it with the whole, empty and solid together", "n_por = V_void/(V_void + V_solid)"),
        Step("the solid cancels"),
    ),
    published=(
        Published("e_void=0.85", "0.46", 0.005, _SANDS, note="uniform sand, loose: 46 %"),
        Published("e_void=0.67", "0.40", 0.005, _SANDS, note="mixed sand, loose: 40 %"),
        Published("e_void=0.43", "0.30", 0.005, _SANDS, note="mixed sand, dense: 30 %"),
    ),
    slips=(
        Slip("e_void", "That is the void ratio, empty over solid. Water needs the share of the whole space, which is smaller."),
        Slip("e_void/(1 - e_void)", "The whole is the solid and the empty space together: add, do not subtract."),
        Slip("1/(1 + e_void)", "That is the solid share. The empty share is what is left. Take it from one."),
    ),
)

void_ratio = Formula(
    name="void ratio from void fraction",
    result="e_void",
    equals="n_por/(1 - n_por)",
    inverse_of=void_fraction,
    where=("n_por < 1",),
    published=(
        Published("n_por=0.46", "0.85", 0.005, _SANDS, note="uniform sand, loose"),
        Published("n_por=0.34", "0.51", 0.015, _SANDS, note="uniform sand, dense"),
    ),
    slips=(
        Slip("n_por", "That is the void fraction, empty over whole. The void ratio compares with the solid alone."),
        Slip("n_por/(1 + n_por)", "The solid is the whole less the empty space: subtract, do not add."),
    ),
    remark="A void fraction is always below 1. A 'void ratio' of 1 or more can be right, and is no void fraction.",
)

void_fraction_from_density = Formula(
    name="void fraction from bulk density",
    result="n_por",
    equals="1 - rho_bulk/rho_s",
    steps=(
        Take("dry stone weighs what its solid weighs: find the space of the solid", "V_solid = rho_bulk*V/rho_s"),
        Take("what is left of the whole is empty", "n_por = (V - V_solid)/V"),
        Step("the volume cancels"),
    ),
    where=("rho_bulk < rho_s",),
    published=(
        Published(
            "rho_bulk=112 lb/ft3, rho_s=168.5 lb/ft3", "0.34", 0.015, UNATTRIBUTED.at("gravel of 112 lb/ft3"), note="called a void ratio there; that is 0.50"
        ),
        Published("rho_bulk=1.43 t/m3, rho_s=2.65 t/m3", "0.46", 0.005, _SANDS, note="uniform sand, loose"),
    ),
    slips=(
        Slip("rho_bulk/rho_s", "That is the solid share. The empty share is what is left. Take it from one."),
        Slip(
            "rho_s/rho_bulk - 1",
            "That is the void ratio, empty over solid. Water needs the share of the whole space. Take one less the ratio of the densities.",
        ),
    ),
)

bulk_density = Formula(
    name="bulk density from void fraction",
    result="rho_bulk",
    equals="rho_s*(1 - n_por)",
    inverse_of=void_fraction_from_density,
    published=(Published("rho_s=2.65 t/m3, n_por=0.34", "1.75 t/m3", 0.005, _SANDS, note="uniform sand, dense"),),
    slips=(
        Slip("rho_s", "You used the density of solid rock. A layer of loose stone has gaps; use the loose (bulk) figure."),
        Slip("rho_s*n_por", "You used the empty share instead of the solid share. Put in one less the void fraction."),
    ),
)

packed_spheres = Formula(
    name="void fraction of packed spheres",
    result="n_por",
    equals="1 - N_cell*pi*d_s**3/(6*a_cell**3)",
    steps=(
        Take("the spheres in a cell take up room", "V_solid = N_cell*pi*d_s**3/6"),
        Take("what is left of the cell is empty", "n_por = (a_cell**3 - V_solid)/a_cell**3"),
        Step("divide"),
    ),
    where=("N_cell*pi*d_s**3/6 < 0.7405*a_cell**3",),
    published=(
        Published("N_cell=1, d_s=10 mm, a_cell=10 mm", "0.48", 0.01, UNATTRIBUTED.at("spheres in a cubic lattice"), note="1 - pi/6 = 0.4764"),
        Published("N_cell=4, d_s=10 mm, a_cell=14.142136 mm", "0.26", 0.01, UNATTRIBUTED.at("spheres in the densest lattice")),
        Published("N_cell=4, d_s=10 mm, a_cell=14.142136 mm", "0.25952", 1e-4, GAUSS.at("1 - pi/sqrt(18)")),
    ),
    slips=(
        Slip("N_cell*pi*d_s**3/(6*a_cell**3)", "That is the solid share. The empty share is what is left. Take it from one."),
        Slip(
            "1 - 4*N_cell*pi*d_s**3/(3*a_cell**3)",
            "You put the diameter in the place of the radius: eight times too much solid. Use pi/6 times the diameter cubed.",
        ),
    ),
    remark="One size of stone leaves 26 to 48 % however big it is: a figure far outside 25 to 50 % for one size deserves a second look.",
)
