"""Falling water: how a sheet or stream leaves its edge, falls, narrows and lands, and how far it splashes and drifts."""

from __future__ import annotations

from brimwork import tables
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import (
    energy_of_a_fall,
    fall_from_rest,
    flow_on_a_crest,
    level_throw,
    specific_energy,
)
from brimwork.sources import BERNOULLI, CENGEL_MEMORY, ELGER, ISO_18481, OPENSTAX, ROUSE
from brimwork.steps import Eliminate, Law, Optimum, Solve, Step, Take

_NO_2 = "The 2 is missing: speed is the root of two g times the height."
_HEALTH = (
    "Falling and thrown water makes droplets, which wind carries. Water at about 20 to 45 degC may make them carry Legionella to anybody who breathes them: "
    "keep it clean and cool, change it after weeks at a standstill, ask for a risk assessment in public places, and do not build near people at special risk."
)

# --- at the edge --------------------------------------------------------------------------------------------------------------------

critical_depth = Formula(
    name="critical depth",
    result="y_c",
    equals="(q**2/g)**(1/3)",
    steps=(
        specific_energy,
        flow_on_a_crest,
        Eliminate("put the speed of the flow into the energy", out=("v",), relation="E_s = y_c + q**2/(2*g*y_c**2)"),
        Optimum("a flow that is free to choose its depth passes with the least energy", of="E_s", kind="min", relation="y_c = (q**2/g)**(1/3)"),
    ),
    published=(Published("q=0.5 m2/s, g=9.81 m/s2", "0.294 m", 2e-3, CENGEL_MEMORY.at("example on the character of flow: 0.2 m3/s in a channel of 0.4 m")),),
    slips=(
        Slip("(q/g)**(1/3)", "The flow is squared under the cube root."),
        Slip("sqrt(q**2/g)", "Take the cube root, not the square root."),
        Slip("3/2*(q**2/g)**(1/3)", "That is the energy, and so the head upstream. The depth is two thirds of it. Leave out the three halves."),
    ),
    ranges={"q": ("60 L/min per m", "300 L/min per m")},
)

head_over_a_step = Formula(
    name="head over a step",
    result="H",
    equals="3/2*y_c",
    steps=(
        specific_energy,
        flow_on_a_crest,
        Eliminate("put the speed of the flow into the energy", out=("v",), relation="E_s = y_c + q**2/(2*g*y_c**2)"),
        critical_depth,
        Take("before the step the water is nearly at rest, so its energy is the head", "H = E_s"),
        Step("at the critical depth the velocity head is half of the depth"),
    ),
    published=(Published("q=1.7053 m2/s, g=9.81 m/s2", "1 m", 5e-4, ELGER.at("Eq. 15.30, turned round"), after=(critical_depth,)),),
    slips=(
        Slip("y_c", "That is the depth at the edge of the step. Before it the water stands higher, by what makes its speed."),
        Slip("2/3*y_c", "Upside down: the depth is two thirds of the head."),
    ),
    ranges={"y_c": ("5 mm", "25 mm")},
    rises=("y_c",),
    remark="For a wide, level edge with still water before it; each step of a cascade has it again, for the same flow.",
)

brink_depth = Formula(
    name="depth at the brink",
    result="y_b",
    equals="0.715*y_c",
    fitted="H. Rouse, to free overfalls from a level channel; the end-depth method of ISO 18481 rests on the same fact",
    published=(Published("y_c=1 m", "0.715 m", 1e-6, ROUSE.at("depth at the end over critical depth")),),
    slips=(
        Slip("y_c", "Right at the edge the water is drawn down already, below its critical depth."),
        Slip("y_c/0.715", "You divided. At the edge the water is thinner than before it. Multiply by 0.715."),
    ),
    remark=f"For a level, wide lip with air behind the sheet ({ISO_18481.at('scope')}). A thin sheet on a rounded lip may cling and run down the face instead.",
)

speed_at_the_brink = Formula(
    name="speed at the brink",
    result="v_b",
    equals="q/y_b",
    steps=(Law("continuity at the edge, for each metre of it", "q = v_b*y_b", BERNOULLI.at("section on steady flow")), Solve("solve for the speed", of="q")),
    unpublished="flow over depth; the depths have their own checks",
    slips=(
        Slip(
            "q/y_c", "You used the critical depth. Right at the edge the water is thinner, and so faster. Put in the depth at the brink.", also_given=("y_c",)
        ),
        Slip("q*y_b", "You multiplied. The same flow through less depth must be faster."),
    ),
    ranges={"q": ("120 L/min per m", "300 L/min per m"), "y_b": ("5 mm", "10 mm")},
)

# --- down ---------------------------------------------------------------------------------------------------------------------------

time_of_fall = Formula(
    name="time of fall",
    result="t_fall",
    equals="sqrt(2*h_fall/g)",
    steps=(fall_from_rest, Solve("solve for the time", of="h_fall")),
    unpublished="free fall; a throw that follows from it is checked under flow of a full level pipe",
    slips=(
        Slip("sqrt(h_fall/g)", "The 2 is missing: in free fall the way is half of g times the time squared."),
        Slip("2*h_fall/g", "The root is missing: the way grows with the square of the time. Take the root of all of it."),
        Slip("sqrt(2*g*h_fall)", "That is the speed at the bottom, in metres a second. The time is that speed over g."),
    ),
)

throw = Formula(
    name="throw of a free sheet or jet",
    result="x_throw",
    equals="v_b*sqrt(2*h_fall/g)",
    steps=(fall_from_rest, level_throw, Eliminate("put the time of fall in", out=("t_fall",))),
    unpublished="the same throw, turned round, is checked under flow of a full level pipe and velocity coefficient from a throw",
    slips=(
        Slip("v_b*sqrt(h_fall/g)", "The 2 is missing in the time of fall."),
        Slip("v_b*2*h_fall/g", "The root is missing: the way down grows with the square of the time. Take the root before you multiply by the speed."),
        Slip(
            "sqrt(2*g*h_fall)*sqrt(2*h_fall/g)",
            "You used the speed of the fall. Only the level speed at the edge carries the water outwards. Put in the level speed.",
        ),
    ),
    remark=f"For water that leaves level and free of the face, in still air. {_HEALTH}",
)

landing_speed = Formula(
    name="speed with which water lands",
    result="v_land",
    equals="sqrt(v_b**2 + 2*g*h_fall)",
    steps=(energy_of_a_fall, Solve("solve for the speed below")),
    unpublished="the narrowing of a falling stream, which uses it, is checked",
    slips=(
        Slip("v_b + sqrt(2*g*h_fall)", "Speeds do not add, energies do: square them, add, and take the root."),
        Slip("sqrt(2*g*h_fall)", "You left out the speed with which it starts."),
        Slip("sqrt(v_b**2 + g*h_fall)", _NO_2),
    ),
    ranges={"h_fall": ("100 mm", "400 mm"), "v_b": ("0.5 m/s", "2 m/s")},
)

landing_thickness = Formula(
    name="thickness of the sheet where it lands",
    result="y_land",
    equals="q/v_land",
    steps=(Law("continuity below, for each metre of sheet", "q = v_land*y_land", BERNOULLI.at("section on steady flow")), Solve("solve for it", of="q")),
    unpublished="flow over speed; the speed has its own check",
    slips=(Slip("q/v_b", "The sheet is faster where it lands, and so thinner than at the edge. Divide by the speed where it lands.", also_given=("v_b",)),),
    remark="A sheet that gets too thin tears into strings before it lands.",
)

stream_narrows = Formula(
    name="thickness of a falling stream",
    result="d_land",
    equals="d_top*sqrt(v_b/v_land)",
    steps=(
        Law("continuity: as much passes below as above", "v_b*pi/4*d_top**2 = v_land*pi/4*d_land**2", BERNOULLI.at("section on steady flow")),
        Solve("solve for the thickness below"),
    ),
    published=(
        Published(
            "d_top=1.80 cm, v_b=0.500 m/s, h_fall=0.200 m", "0.89 cm", 1.5e-3, OPENSTAX.at("module m42205, problem: water from a tap"), after=(landing_speed,)
        ),
    ),
    where=("v_b < v_land",),
    slips=(
        Slip("d_top*v_b/v_land", "The area goes with the square of the thickness: take the root of the ratio of speeds."),
        Slip("d_top*sqrt(v_land/v_b)", "Upside down: faster water must be thinner."),
    ),
    ranges={"v_b": ("0.3 m/s", "1.5 m/s"), "v_land": ("1.6 m/s", "4 m/s")},
)

# --- splash and drift ---------------------------------------------------------------------------------------------------------------

drift_in_wind = Formula(
    name="drift of a drop in wind",
    result="x_drift",
    equals="v_wind*sqrt(2*h_fall/g)",
    steps=(
        fall_from_rest,
        Take("at most, the wind takes a drop along with its own speed from the start", "x_drift = v_wind*t_fall"),
        Eliminate("put the time of fall in", out=("t_fall",)),
    ),
    unpublished="a bound for drops of a millimetre and more, tried in the tests on drops with drag; finer spray hangs in the air longer",
    slips=(
        Slip("v_wind*sqrt(h_fall/g)", "The 2 is missing in the time of fall."),
        Slip("v_wind*2*h_fall/g", "The root is missing: the way down grows with the square of the time. Take the root before you multiply by the speed."),
    ),
    ranges={"v_wind": ("1 m/s", "10 m/s")},
    remark=f"Big drops go less far; spray that hardly falls goes further. Keep paths dry, ice-free and out of reach of it. {_HEALTH}",
)

apron_wanted = Formula(
    name="apron that the water wants",
    result="w_need",
    equals="k_wind*(x_throw + k_splash*h_fall)",
    steps=(
        Take("splashes reach from where the water lands, so far for each metre of fall", "x_reach = x_throw + k_splash*h_fall"),
        Take("wind carries them further", "w_need = k_wind*x_reach"),
        Step("put it in"),
    ),
    unpublished="common practice, no source",
    slips=(
        Slip("k_wind*k_splash*h_fall", "You left out the throw: splashes start where the water lands."),
        Slip(
            "x_throw + k_wind*k_splash*h_fall",
            "Wind carries the whole sheet, not its splashes alone. Multiply the throw and the splash together by the factor of the wind.",
        ),
    ),
    ranges={"x_throw": ("100 mm", "400 mm"), "k_wind": ("1.2", "1.5")},
    remark="The throw of a film that clings is 0. Factors stand in the table of splash factors.",
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------


def apron(h_fall: float, water: str, throw: float = 0.0, windy: bool = False) -> float:
    """Apron (m) that water falling h_fall (m) wants; `water` is a row of the table of splash factors. Raises InputError with the nearest names."""
    k_wind = tables.WINDY_SITE.value if windy else 1.0
    return apron_wanted(k_wind=k_wind, x_throw=throw, k_splash=tables.splash_factor(water).value, h_fall=h_fall)
