"""Friction: laminar or turbulent flow in a pipe, and the friction factor, for one pipe or for a million at once."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import NamedTuple

from brimwork.conditions import TestedRange
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import area_of_a_pipe, balance_in_a_pipe, balance_on_a_core, continuity_in_a_pipe, viscosity_in_a_pipe
from brimwork.needing import needed
from brimwork.sources import BLASIUS, CENGEL, COLEBROOK, EPANET_MANUAL, FLUIDS_PIPES, HAALAND, HAGEN_POISEUILLE, MAURER, OPENSTAX_MEMORY, SWAMEE_JAIN
from brimwork.steps import Eliminate, Ode, Solve, Step, Take
from brimwork.units import InputError

_LAMINAR = (TestedRange("Re", "", "2000", HAGEN_POISEUILLE.at("laminar flow")),)
_IS_TURBULENT, _IS_LAMINAR = ("2000 < 1.0001*Re",), ("Re < 4000",)  # in between it may be either
_TURBULENT = (TestedRange("Re", "4000", "", EPANET_MANUAL.at("ch. 12: turbulent above 4000")),)
_SPEED = (area_of_a_pipe, continuity_in_a_pipe, Eliminate("divide the flow by the area", out=("A_pipe",), relation="v = 4*Q/(pi*d_pipe**2)"))
_FRICTION_FACTOR = (
    balance_in_a_pipe,
    Take("call the shear at the wall, in eighths of density times speed squared, the friction factor", "f = 8*tau_w/(rho*v**2)"),
    Eliminate("put the shear in", out=("tau_w",), relation="f = 2*g*d_pipe*h_f/(L_pipe*v**2)"),
)

# --- laminar flow --------------------------------------------------------------------------------------------------------------------

reynolds_number = Formula(
    name="Reynolds number in a pipe",
    result="Re",
    equals="v*d_pipe/nu",
    steps=(
        Take("compare what keeps water going with what holds it back: speed over and over against viscosity", "Re = rho*v**2/(mu*v/d_pipe)"),
        Take("viscosity over density is the kinematic viscosity", "nu = mu/rho"),
        Step("cancel"),
    ),
    published=(Published("v=2.118671 m/s, d_pipe=0.5 m, nu=1.023053e-6 m2/s", "1035465", 1e-5, MAURER.at("Example 4.1"), note="0.416 m3/s through 0.5 m"),),
    slips=(
        Slip("v*d_pipe/(2*nu)", "You used the radius. For a round pipe the bore goes in. Put in the whole bore."),
        Slip("v/(d_pipe*nu)", "The bore multiplies: the same speed in a wider pipe is more turbulent."),
        Slip("1000*v*d_pipe/nu", "You put in the density too. It is in the viscosity nu already, so leave it out."),
    ),
    rises=("v", "d_pipe"),
    falls=("nu",),
)

laminar_flow = Formula(
    name="laminar flow in a pipe",
    result="Q",
    equals="pi*g*h_f*d_pipe**4/(128*nu*L_pipe)",
    steps=(
        balance_on_a_core,
        Solve("the shear that a core of this radius needs", relation="tau_r = rho*g*h_f*r_p/(2*L_pipe)"),
        viscosity_in_a_pipe,
        Ode(
            "solve: the water stands still at the wall",
            "u_r = rho*g*h_f/(4*mu*L_pipe)*(d_pipe**2/4 - r_p**2)",
            at=(("r_p = d_pipe/2", "u_r = 0"),),
        ),
        Take("add the rings from the middle to the wall", "Q = Integral(2*pi*r_p*u_r, (r_p, 0, d_pipe/2))"),
        Step(
            "put the speed in; what does not change with the radius stands outside",
            "Q = pi*rho*g*h_f/(2*mu*L_pipe)*Integral(d_pipe**2*r_p/4 - r_p**3, (r_p, 0, d_pipe/2))",
        ),
        Step(
            "the radii add up to half the square of the last one, their cubes to a quarter of its fourth power",
            "Q = pi*rho*g*h_f/(2*mu*L_pipe)*(d_pipe**4/32 - d_pipe**4/64)",
        ),
        Step("take it together", "Q = pi*rho*g*h_f*d_pipe**4/(128*mu*L_pipe)"),
        Take("viscosity over density is the kinematic viscosity", "nu = mu/rho"),
        Step("put it in"),
    ),
    published=(
        Published(
            "h_f=1.5432 m, d_pipe=0.3 mm, L_pipe=2.5 cm, nu=1e-6 m2/s",
            "0.12 cm3/s",
            5e-3,
            OPENSTAX_MEMORY.at("viscosity chapter, needle of an infusion"),
            note="16.2 kPa less 8 mmHg over rho g",
        ),
    ),
    slips=(
        Slip("pi*g*h_f*d_pipe**4/(8*nu*L_pipe)", "The 8 goes with the radius. With the bore it is 128: two to the fourth power, times 8. Use 128."),
        Slip(
            "pi*g*h_f*d_pipe**2/(128*nu*L_pipe)",
            "Laminar flow goes with the fourth power of the bore: two for the area, two for the speed. Take the bore to the fourth power.",
        ),
        Slip("pi*g*h_f*d_pipe**4/(64*nu*L_pipe)", "You took the speed in the middle for all of the pipe. The mean is half of it. Divide by 128, not by 64."),
    ),
    ranges={"d_pipe": ("2 mm", "5 mm"), "h_f": ("0.05 m", "0.3 m")},
    where=("g*h_f*d_pipe**3/(32*nu**2*L_pipe) < 4000",),
    rises=("h_f", "d_pipe"),
    falls=("nu", "L_pipe"),
    remark="Only for thin tubes and slow flow: a pump's hose is nearly always turbulent.",
)

laminar_head_loss = Formula(
    name="head lost in laminar flow",
    result="h_f",
    equals="32*nu*L_pipe*v/(g*d_pipe**2)",
    steps=(
        *_SPEED,
        laminar_flow,
        Eliminate("write the flow with the mean speed, and solve for the head", out=("Q",)),
    ),
    published=(Published("d_pipe=3 mm, v=0.9 m/s, L_pipe=9 m, nu=1.519e-6 m2/s, g=9.81 m/s2", "4.46 m", 1e-3, CENGEL.at("Ex 8-2")),),
    slips=(
        Slip("8*nu*L_pipe*v/(g*d_pipe**2)", "The 8 goes with the radius. With the bore it is 32. Use 32."),
        Slip("32*nu*L_pipe*v/(g*d_pipe)", "The bore is squared here."),
        Slip(
            "0.316/(v*d_pipe/nu)**(1/4)*L_pipe/d_pipe*v**2/(2*g)",
            "That is the law of turbulent flow. Below a Reynolds number of 2000 the flow is laminar: use its own law.",
        ),
    ),
    ranges={"d_pipe": ("2 mm", "5 mm"), "v": ("0.05 m/s", "0.3 m/s")},
    where=("v*d_pipe/nu < 4000",),
    rises=("nu", "L_pipe", "v"),
    falls=("d_pipe",),
)

laminar_friction_factor = Formula(
    name="friction factor of laminar flow",
    result="f",
    equals="64/Re",
    steps=(laminar_head_loss, *_FRICTION_FACTOR, reynolds_number, Step("put the head of laminar flow in")),
    tested=_LAMINAR,
    where=_IS_LAMINAR,
    published=(Published("Re=1000", "0.064", 1e-9, FLUIDS_PIPES.at("friction_laminar(1000)")),),
    slips=(
        Slip("16/Re", "That is Fanning's friction factor, a quarter of Darcy's, which this kit uses. Use 64."),
        Slip("Re/64", "Upside down: slower and thicker flow has the larger friction factor."),
    ),
    ranges={"Re": ("200", "2000")},
    falls=("Re",),
)

# --- turbulent flow ------------------------------------------------------------------------------------------------------------------

colebrook = Formula(
    name="friction factor by Colebrook",
    result="f",
    equals="1/sqrt(f) = -2*log10(k_s/(3.7*d_pipe) + 2.51/(Re*sqrt(f)))",
    between=("1/1000", "1"),
    where=_IS_TURBULENT,
    fitted="Colebrook and White, to measured pipes from smooth to rough",
    tested=(*_TURBULENT, TestedRange("k_s/d_pipe", "", "0.05", COLEBROOK.at("pipes measured"))),
    published=(
        Published("d_pipe=50 mm, k_s=0.002 mm, v=3.0558 m/s, nu=1.139139e-6 m2/s", "0.0172", 5e-3, CENGEL.at("Ex 8-3"), after=(reynolds_number,), note="6 L/s"),
        Published("Re=134126.5, k_s=0.002 mm, d_pipe=50 mm", "0.0171884", 5e-6, FLUIDS_PIPES.at("Colebrook(134126.5, 4e-5)")),
        Published("Re=1e5, k_s=0.1 mm, d_pipe=1 m", "0.018513866", 1e-7, FLUIDS_PIPES.at("Colebrook(1e5, 1e-4)")),
        Published("Re=5e4, k_s=0 mm, d_pipe=1 m", "0.0208914", 5e-6, FLUIDS_PIPES.at("Colebrook(5e4, 0)")),
    ),
    rises=("k_s",),
    falls=("d_pipe", "Re"),
    remark="Colebrook's law. The friction factor stands on both sides, and is found by trial between limits.",
)

swamee_jain = Formula(
    name="friction factor by Swamee-Jain",
    result="f",
    equals="0.25/log10(k_s/(3.7*d_pipe) + 5.74/Re**0.9)**2",
    fitted="Swamee and Jain, to Colebrook's law; used by EPANET",
    tested=(*_TURBULENT, TestedRange("k_s/d_pipe", "", "0.01", SWAMEE_JAIN.at("limits"))),
    where=_IS_TURBULENT,
    published=(
        Published("Re=1e5, k_s=0.1 mm, d_pipe=1 m", "0.018452424", 5e-6, FLUIDS_PIPES.at("Swamee_Jain_1976(1e5, 1e-4)"), note="its constant is 6.97^0.9"),
        Published("Re=5e4, k_s=0 mm, d_pipe=1 m", "0.0207606", 5e-6, FLUIDS_PIPES.at("Swamee_Jain_1976(5e4, 0)")),
    ),
    slips=(
        Slip("0.25/log(k_s/(3.7*d_pipe) + 5.74/Re**0.9)**2", "You used the natural logarithm. This one has base ten. Use the logarithm to base ten."),
        Slip("0.25/log10(k_s/(3.7*d_pipe) + 5.74/Re)**2", "The power 0.9 on the Reynolds number is missing."),
        Slip(
            "-0.5/log10(k_s/(3.7*d_pipe) + 5.74/Re**0.9)",
            "The logarithm is squared: what the law gives first is one over the root of the friction factor. Square the logarithm.",
        ),
    ),
    rises=("k_s",),
    falls=("d_pipe", "Re"),
)

haaland = Formula(
    name="friction factor by Haaland",
    result="f",
    equals="(-1.8*log10((k_s/(3.7*d_pipe))**1.11 + 6.9/Re))**(-2)",
    fitted="Haaland, to Colebrook's law",
    tested=(TestedRange("Re", "4000", "1e8", HAALAND.at("limits")), TestedRange("k_s/d_pipe", "", "0.05", HAALAND.at("limits"))),
    where=_IS_TURBULENT,
    published=(
        Published("Re=1e5, k_s=0.1 mm, d_pipe=1 m", "0.018265054", 1e-7, FLUIDS_PIPES.at("Haaland(1e5, 1e-4)")),
        Published("Re=5e4, k_s=0 mm, d_pipe=1 m", "0.0207135", 5e-6, FLUIDS_PIPES.at("Haaland(5e4, 0)")),
    ),
    rises=("k_s",),
    falls=("d_pipe", "Re"),
)

blasius = Formula(
    name="friction factor by Blasius",
    result="f",
    equals="0.316/Re**(1/4)",
    fitted="Blasius, to smooth pipes",
    tested=(TestedRange("Re", "4000", "100000", BLASIUS.at("limits")),),
    where=_IS_TURBULENT,
    published=(
        Published("Re=1e4", "0.03164", 2e-3, FLUIDS_PIPES.at("Blasius(10000), which takes 0.3164")),
        Published("Re=5e4", "0.0208914", 0.015, FLUIDS_PIPES.at("Colebrook(5e4, 0)"), note="another law for the same pipe"),
    ),
    slips=(
        Slip("0.316/sqrt(Re)", "You took the square root. It is the fourth root of the Reynolds number. Take the root of the root."),
        Slip("0.079/Re**(1/4)", "That is Fanning's friction factor, a quarter of Darcy's, which this kit uses. Use 64."),
        Slip("64/Re", "That is the law of laminar flow. Above a Reynolds number of 4000 the flow is turbulent and loses more. Use Blasius' law."),
    ),
    falls=("Re",),
)

flow_for_a_head_loss = Formula(
    name="flow that a friction head drives",
    result="Q",
    equals="-pi/2*d_pipe**2*sqrt(2*g*d_pipe*h_f/L_pipe)*log10(k_s/(3.7*d_pipe) + 2.51*nu/(d_pipe*sqrt(2*g*d_pipe*h_f/L_pipe)))",
    fitted="Colebrook and White, to measured pipes from smooth to rough",
    steps=(
        *_FRICTION_FACTOR,
        *_SPEED,
        reynolds_number,
        colebrook,
        Solve("speed and friction factor stand together only as the head, so the flow comes out directly"),
    ),
    published=(Published("h_f=0.6 m, L_pipe=100 m, d_pipe=0.5 m, k_s=0.046 mm, nu=1.023e-6 m2/s", "0.413 m3/s", 1e-3, MAURER.at("ch. 4, type 2")),),
    slips=(
        Slip(
            "-pi/2*d_pipe**2*sqrt(g*d_pipe*h_f/L_pipe)*log10(k_s/(3.7*d_pipe) + 2.51*nu/(d_pipe*sqrt(g*d_pipe*h_f/L_pipe)))",
            "The 2 under both roots is missing. Put it in under each root.",
        ),
    ),
    ranges={"h_f": ("0.1 m", "1 m")},
    where=("400 < d_pipe*sqrt(2*g*d_pipe*h_f/L_pipe)/nu",),
    rises=("d_pipe", "h_f"),
    falls=("L_pipe", "k_s", "nu"),
)

bore_for_a_head_loss = Formula(
    name="bore for a friction head",
    result="d_pipe",
    close="0.1 mm",
    inverse_of=flow_for_a_head_loss,
    between=("(Q**2/g)**(1/5)/20", "(Q**2/g)**(1/5)*20"),
    published=(Published("Q=0.416 m3/s, h_f=0.6 m, L_pipe=100 m, k_s=0.046 mm, nu=1.023e-6 m2/s", "0.501 m", 2e-3, MAURER.at("ch. 4, type 3")),),
    ranges={"h_f": ("0.1 m", "1 m")},
    rises=("Q", "L_pipe", "k_s", "nu"),
    falls=("h_f",),
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------

LAMINAR_BELOW, TURBULENT_ABOVE, ROUGHEST = 2000.0, 4000.0, 0.5
_LAWS = {"colebrook": colebrook, "swamee-jain": swamee_jain, "haaland": haaland, "blasius": blasius}
_BLOCK = 8192  # elements worked on at once: few enough to stay in the processor's cache


class Friction(NamedTuple):
    """A friction factor, how it was chosen ("laminar", "transition", "turbulent", "given" or "still"), and what must be said about it."""

    f: float
    regime: str
    notes: tuple[str, ...] = ()


def friction_factor(Re: float, relative_roughness: float = 0.0, law: str = "colebrook") -> Friction:
    """Friction factor at a Reynolds number, for a roughness given over the bore (0 is smooth); both pure numbers.

    Below 2000 the flow is laminar and f = 64/Re whatever the law. Above 4000 it is turbulent, by the `law` named: "colebrook",
    "swamee-jain", "haaland" or "blasius" (smooth pipes). Between, it may be either: the turbulent value is given, which is the larger, with
    a note. Limits: EPANET 2.2 User Manual, ch. 12. Raises InputError for a Reynolds number that is not above zero, a roughness that is
    below zero or more than half the bore, or an unknown law.
    """
    if law not in _LAWS:
        raise InputError(f"there is no friction law '{law}': type one of {', '.join(_LAWS)}")
    _possible(Re, relative_roughness)
    if Re < LAMINAR_BELOW:
        return Friction(laminar_friction_factor(Re=Re), "laminar")
    given = {"Re": Re, "k_s": relative_roughness, "d_pipe": 1.0}
    f = _colebrook_root(Re, relative_roughness, math.log) if law == "colebrook" else _LAWS[law](**_LAWS[law].only(given))
    notes = ["Blasius' law is for smooth pipes: the roughness is left out"] if law == "blasius" and relative_roughness else []
    if Re < TURBULENT_ABOVE:
        notes.append(f"at a Reynolds number of {Re:.0f} the flow may be laminar or turbulent: the turbulent friction factor, the larger, is used")
        return Friction(f, "transition", tuple(notes))
    return Friction(f, "turbulent", tuple(notes + _LAWS[law].notes(given)))


def _possible(Re: float, relative_roughness: float) -> None:
    if not 0 < Re < math.inf:
        raise InputError(f"the Reynolds number is {Re:g}, but must be above zero: water that stands has no friction factor")
    if not 0 <= relative_roughness <= ROUGHEST:
        raise InputError(f"the roughness is {relative_roughness:g} of the bore: type one from 0 (smooth) to {ROUGHEST}, such as 0.00006 for plastic hose")


def friction_factors(Re, relative_roughness=0.0):
    """Friction factors for NumPy arrays that broadcast together, by the same choice as `friction_factor` with Colebrook's law.

    Returns float64, within 1e-15 of the exact root. Raises InputError as there, for the first bad element.
    """
    with needed("numpy", "working an array"):
        import numpy

    columns = numpy.broadcast_arrays(numpy.asarray(Re, dtype=float), numpy.asarray(relative_roughness, dtype=float))
    flat, rough = (column.ravel() for column in columns)
    bad = ~((flat > 0) & (flat < math.inf) & (rough >= 0) & (rough <= ROUGHEST))
    if bad.any():
        _possible(float(flat[bad][0]), float(rough[bad][0]))
    result = numpy.empty(flat.shape)
    for start in range(0, flat.size, _BLOCK):
        part = slice(start, start + _BLOCK)
        result[part] = _colebrook_root(numpy.maximum(flat[part], LAMINAR_BELOW), rough[part], numpy.log)
    slow = flat < LAMINAR_BELOW
    if slow.any():
        result[slow] = laminar_friction_factor.array(Re=flat[slow])
    return result.reshape(columns[0].shape)


def _colebrook_root(Re, rough, log: Callable):
    """The same root as the formula's, by Newton, for one number or for arrays: x = 1/sqrt(f) solves x + c log(a + b x) = 0.

    One round from x = 7 brings it within 0.5; then each step about squares the error.
    """
    a, b, c = rough / 3.7, 2.51 / Re, 2 / math.log(10)
    x = -c * log(a + 7 * b)
    for _ in range(3):
        s = a + b * x
        x -= (x + c * log(s)) * s / (s + c * b)
    return 1 / (x * x)
