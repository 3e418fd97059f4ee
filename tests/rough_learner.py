"""A second learner, who works roughly: with shortcuts, half-remembered formulas and round numbers. Is what comes of it ever taken for right?

Run `python tests/rough_learner.py [--seeds 10] [--us]` for every question over many sets of numbers; the suite runs a small sample. Nothing here is shared
with `simulated_learner.py` but the means to pose a question and to work a text: its wrong methods are made by other rules, and the ones written by hand are
others. `SHORTCUTS` holds such as the screening of numbers (`exercise/shortcuts.py`) does not list: one shape for another, a coefficient from memory, a part
forgotten. Whoever moves one there writes another here. A number of more than four figures, and a power beyond six, stand in formulas that were fitted to
measurements: nobody carries them in the head, so they are copied as they stand. Judgement, no counts from real classes.
"""

from __future__ import annotations

import argparse
import ast
import collections
import math
from collections.abc import Iterator

import simulated_learner as simulated

from brimwork import system
from brimwork.exercise import twins
from brimwork.exercise.diagnosis import diagnose
from brimwork.exercise.trees import one_replaced
from brimwork.exercise.written import Numeric

SHORTCUTS: dict[str, tuple[str, ...]] = {
    # shape taken for another one
    "water surface of a round vessel": ("0.75*d_rim**2", "0.8*d_rim**2", "d_rim**2", "pi*d_rim"),
    "water in a pipe": ("pi*d_pipe**2*L_pipe", "0.8*d_pipe**2*L_pipe", "d_pipe**2*L_pipe", "pi*d_pipe*L_pipe"),
    "water in a cone-shaped bowl": ("pi/3*(d_rim/2)**2*h", "2/3*pi/4*d_rim**2*h", "pi/4*d_rim*d_floor*h", "pi*h/12*(d_floor**2 + (d_floor + (d_rim - d_floor)*h/D)**2)"),
    "volume of a battered pit": ("L*W*h + m_b*L*W*h", "(L + 2*m_b*h)*W*h", "L*(W + 2*m_b*h)*h", "L*W*h + m_b*(L + W)*h**2 + m_b**2*h**3/3", "(L + m_b*h)*W*h", "L*W*h + (L + W)*m_b*h/2*h"),
    "volume of a tapered pit": ("h/6*(A_1 + A_2 + 4*(A_1 + A_2)/2)", "h/3*(A_1 + A_2 + sqrt(A_1 + A_2))", "h/2*sqrt(A_1**2 + A_2**2)", "h/3*(A_1 + 2*A_2)", "h/3*(2*A_1 + A_2)"),
    "volume from three areas": ("h/2*(A_1/2 + A_m + A_2/2)", "h/3*(A_1 + 4*A_m + A_2)", "h/5*(A_1 + 3*A_m + A_2)", "h/2*(A_1 + A_m)"),
    "water in a round bowl": ("4/3*pi*R_s**3/2", "pi*(2*R_s*h - h**2)*h", "pi/6*h*h**2", "pi*h**2/2*R_s*1.5", "pi*h**2*(R_s - h/2)", "pi*h**2/3*(2*R_s - h)"),
    "sphere of a round bowl": ("sqrt((d_rim/2)**2 + D**2)", "d_rim**2/(8*D) + D", "(d_rim + D)/2", "d_rim/2 + D/2"),
    "edge of the kern of a ring foot": ("d_fo/8", "d_fo/6", "(d_fo + d_fi)/8", "(d_fo - d_fi)/8", "(d_fo**2 - d_fi**2)/(8*d_fo)"),
    "length of the liner for sloping sides": ("L + 2*(D + w_apron + w_trim)", "L + 2*(D + s_back + w_apron + w_trim)", "L + 2*(s_back + w_apron + w_trim)", "L + sqrt(D**2 + s_back**2) + w_apron + w_trim", "L + 2*(0.5*(D + s_back) + w_apron + w_trim)"),
    "side of the liner for a round pit": ("d_t + D + w_apron + w_trim", "d_t + 2*D", "d_t + 2*(w_apron + w_trim)", "d_t + 2*D + w_apron + w_trim"),
    "liner folded away in a corner": ("D**2", "4*D**2", "D*(D + w_apron + w_trim)", "(D + w_apron + w_trim)**2", "2*D*(w_apron + w_trim)"),
    "top length of a battered pit": ("L + m_b*h", "L + 2*m_b", "L*(1 + 2*m_b)", "L + 2*h/m_b", "L + 2*h"),
    "mass of a slab": ("1000*l_s*w_s*t_s"),
    "T07.1": ("pi/4*((a + b)/2)**2*h*r", "pi/4*(a - b)**2*h*r + pi/4*b**2*h*1000*kg/m**3", "pi*(a**2 - b**2)*h*r", "(pi/4*a**2*h - pi/4*b**2*h)*r"),
    "T08.3": ("w + s*d", "w + 2*d", "w + 2*d/s", "w + d", "w*(1 + s)"),
    "T09.2": ("w + h + a + e", "w + 2*h", "w + 2*(h + a)", "w + 2*(h + e)", "w + 2*h + a + e", "w + 4*h"),
    "T14.3": ("4/3*pi*a*b*c*r", "pi/6*a**3*r", "2/3*a*b*c*r", "pi/4*a*b*(2/3*c)*r*1.1"),
    # one formula for another, a coefficient from memory
    "flow by weir coefficient": ("C_w*b*H**(5/2)", "C_w*b*H*sqrt(2*9.81*H)", "C_w*b*sqrt(H)"),
    "head by weir coefficient": ("(Q/(C_w*b))**(3/2)", "sqrt(Q/(C_w*b))", "Q/(C_w*b)"),
    "head on a round rim": ("(Q/(C_w*3*d_rim))**(2/3)", "(Q/(C_w*d_rim))**(2/3)", "sqrt(Q/(C_w*pi*d_rim))"),
    "flow out of a bore over its rim": ("C_w*pi/4*d_bore**2*sqrt(H)", "0.6*pi/4*d_bore**2*sqrt(2*9.81*H)", "C_w*3*d_bore*H**(3/2)"),
    "head at a broad crest": ("2/3*(Q/(sqrt(g)*b))**(2/3)", "(Q/(sqrt(g)*b))**(2/3)", "3/2*(Q**2/(g*b))**(1/3)"),
    "critical depth": ("(q/g)**(1/3)", "q**2/g", "(q**2/10)**(1/2)", "2/3*(q**2/g)**(1/3)", "sqrt(q/sqrt(g))"),
    "head over a step": ("y_c", "2/3*y_c", "4/3*y_c", "y_c**1.5", "1.4*y_c"),
    "head lost to friction": ("f*L_pipe/d_pipe*v**2/g", "4*f*L_pipe/d_pipe*v**2/(2*g)", "f*L_pipe/d_pipe*v/(2*g)", "f*L_pipe*v**2/(2*g)"),
    "head lost to friction by flow": ("8*f*L_pipe*Q**2/(g*d_pipe**5)", "f*L_pipe*Q**2/(2*g*d_pipe**5)", "8*f*L_pipe*Q**2/(9*g*d_pipe**5)", "8*f*L_pipe*Q**2/(pi**2*g*d_pipe**4)"),
    "head lost in fittings": ("K*v**2/g", "K*v**2/20", "K*v/(2*g)", "v**2/(2*g)", "0.1*K*v**2/(2*g)"),
    "equivalent length of fittings": ("K*d_pipe/0.02", "K*d_pipe*f", "30*d_pipe", "K*d_pipe", "50*d_pipe"),
    "loss coefficient of a reducer": ("0.8*sin(a_red)*(1 - (d_2/d_1)**2)", "0.5*(1 - (d_2/d_1)**2)", "0.8*sin(a_red/2)", "0.8*sin(a_red/2)*(1 - d_2/d_1)", "0.8*tan(a_red/2)*(1 - (d_2/d_1)**2)*1.02"),
    "pressure after a sudden widening": ("p_1 + rho*(v_1**2 - v_2**2)/2", "p_1", "p_1 + rho*(v_1 - v_2)**2/2", "p_1 + rho*v_1*(v_1 - v_2)", "p_1 - rho*v_2*(v_1 - v_2)"),
    "laminar flow in a pipe": ("pi*g*h_f*d_pipe**4/(8*nu*L_pipe)", "pi/4*d_pipe**2*sqrt(2*g*h_f)", "pi*g*h_f*d_pipe**4/(64*nu*L_pipe)", "3*g*h_f*d_pipe**4/(128*nu*L_pipe)"),
    "flow by Hazen-Williams": ("(h_f*C_HW**1.852*d_pipe**4.871/(k_HW*L_pipe))**(1/2)", "C_HW*(h_f*d_pipe**5/(k_HW*L_pipe))**0.5", "0.85*C_HW*pi/4*d_pipe**2*(d_pipe/4)**(2/3)*(h_f/L_pipe)**(1/2)", "(h_f*C_HW**1.852*d_pipe**5/(k_HW*L_pipe))**(1/1.852)"),
    "head at another turning speed": ("H_n1*n_2/n_1", "H_n1*(n_2/n_1)**3", "H_n1*sqrt(n_2/n_1)", "H_n1 + (n_2 - n_1)/n_1*H_n1"),
    "power at another turning speed": ("P_n1*n_2/n_1", "P_n1*(n_2/n_1)**2", "P_n1*(n_2/n_1)**2.5", "P_n1*(1 + 3*(n_2 - n_1)/n_1)"),
    "duty flow of two equal pumps side by side": ("2*sqrt((H_0 - z_s)/(c_pump + k_sys))", "sqrt((H_0 - z_s)/(c_pump/2 + k_sys))", "sqrt((H_0 - z_s)/(c_pump + k_sys))", "sqrt((H_0 - z_s)/(c_pump/4))"),
    "duty flow of two equal pumps one after the other": ("sqrt((H_0 - z_s)/(c_pump + k_sys))", "2*sqrt((H_0 - z_s)/(c_pump + k_sys))", "sqrt((2*H_0 - z_s)/(c_pump + k_sys))", "sqrt((2*H_0 - z_s)/(4*c_pump + k_sys))"),
    "best hydraulic power of a label": ("rho*g*Q_max*H_0", "rho*g*Q_max*H_0/2", "rho*g*Q_max*H_0/4", "0.4*rho*g*Q_max*H_0", "rho*g*Q_max*H_0/3"),
    "hydraulic power": ("1000*10*Q*H_pump*1.05", "Q*H_pump/367*3600", "rho*Q*H_pump", "rho*g*Q*H_pump*0.6"),
    "flow of a full level pipe from its throw": ("pi/4*d_out**2*x_throw/h_fall", "pi/4*d_out**2*x_throw*sqrt(g/h_fall)", "pi/4*d_out**2*sqrt(2*g*h_fall)", "0.8*d_out**2*x_throw*sqrt(g/(2*h_fall))", "pi/4*d_out**2*x_throw*sqrt(2*g/h_fall)"),
    "height of a jet": ("v**2/g", "v/(2*g)", "v**2/20", "0.9*v**2/(2*g)", "v**2/(4*g)"),
    "time for two tanks to level": ("2*A_tank*(sqrt(H_1) - sqrt(H_2))/(C_d*A_o*sqrt(2*g))", "2*A_tank*(sqrt(H_1) - sqrt(H_2))/(C_d*A_o*sqrt(2*g)*(1 + A_t2/A_tank))", "A_tank*(sqrt(H_1) - sqrt(H_2))/(C_d*A_o*sqrt(2*g))"),
    "time to drain a cone": ("pi*d_rim**2*(H_1**(5/2) - H_2**(5/2))/(5*D**2*C_d*A_o*sqrt(2*g))", "pi/12*d_rim**2/D**2*(H_1**3 - H_2**3)/(C_d*A_o*sqrt(2*g*H_1))", "pi/12*d_rim**2/D**2*H_1**3/(C_d*A_o*sqrt(2*g*H_1))"),
    "throw of a free sheet or jet": ("v_b**2/g", "v_b*h_fall/2", "v_b*sqrt(h_fall/5)*1.05", "sqrt(2*h_fall/g)"),
    "T01.5": ("w*sqrt(h/g)", "w*2*h/g", "w*h", "sqrt(w*2*h/g)"),
    "speed by Manning": ("k_M/n_Manning*R_h**(1/2)*sqrt(S_rill)", "k_M/n_Manning*R_h**(2/3)*S_rill", "k_M*n_Manning*R_h**(2/3)*sqrt(S_rill)", "50*sqrt(R_h*S_rill)", "k_M/n_Manning*(4*R_h)**(2/3)*sqrt(S_rill)"),
    "rise of the water in a bend": ("v**2*w_rill/(g*R_bend)", "v**2/(2*g)", "v**2*w_rill/(20*R_bend)", "v*w_rill/(2*g*R_bend)", "v**2*R_bend/(2*g*w_rill)"),
    # loads, ground, lifting
    "greatest pressure under partial contact": ("F_w/(L_base*(B_base/2 - e_off))", "F_w/(B_base*L_base)*(1 + 6*e_off/B_base)", "F_w/(3*L_base*(B_base/2 - e_off))", "F_w/(B_base*L_base)", "2*F_w/(L_base*B_base)", "F_w/(L_base*(B_base - 2*e_off))"),
    "tipping factor": ("F_w*B_base/(F_push*h_push)", "F_w/F_push", "2*F_w*B_base/(F_push*h_push)", "F_w*B_base/(3*F_push*h_push)"),
    "wind pressure": ("k_e*rho_air*v_wind**2", "rho_air*v_wind**2/2", "0.6*v_wind**2*k_e*1.05", "k_e*v_wind**2", "k_e*rho_air*v_wind/2"),
    "coefficient of earth pressure at rest": ("(1 - sin(phi_s))/(1 + sin(phi_s))", "1 - cos(phi_s)", "1 - tan(phi_s)", "tan(phi_s)"),
    "mass of a compacted layer to order": ("L_dig*W_dig*t_sub*rho_loose", "L_dig*W_dig*t_sub*rho_loose/k_comp", "L_dig*W_dig*t_sub*k_comp*1600", "L_dig*W_dig*t_sub*2000", "L_dig*W_dig*t_sub*rho_loose*1.3*1.05"),
    "pressure on the block tops": ("g*(m_v + rho*V_v + m_slab)/A_c", "g*(m_v + rho*V_v)/A_c + g*rho_bulk*t_st", "g*(m_v + m_slab)/A_c + g*rho_bulk*t_st", "g*(m_v + rho*V_v + m_slab + rho_bulk*t_st*A_c)*A_c"),
    "lifting index": ("m_load/23", "m_load/25", "m_rwl/m_load", "m_load - m_rwl"),
    "T08.1": ("M/a/q", "M*10/a/(q*1.05)", "a*q/(M*g)", "M*g*a/q", "2*M*g/a/q"),
    "T07.2": ("M*g/(pi/4*a**2)", "M*g/(pi*a*(a - b))", "M*g/(pi*(a + b)/2*(a - b))", "M*10/(0.8*(a**2 - b**2))*0.97", "M*g/(a**2 - b**2)"),
    "T11.4": ("pi/4*D**2*(h - o)*b/u", "(pi/4*D**2*h - F)*b/u", "(D**2*(h - o) - F)*b/u", "(pi/4*D**2*(h - o) + F)*b/u", "(pi/4*D**2*(h - o) - F)/u"),
    # balance, supply, money
    "water that the reservoir must hold": ("V_tr + V_res", "V_dead + V_res", "V_dead + V_tr", "1.1*(V_tr + V_res)", "2*V_tr"),
    "storm water for the overflow": ("A_catch*h_rain - V_free", "k_run*A_catch*h_rain", "k_run*A_catch*h_rain + V_free", "k_run*(A_catch*h_rain - V_free)", "A_catch*h_rain"),
    "drain-back ratio": ("A_b*(h_over - h_run)/V_tr", "A_b*n_v*h_over/V_tr", "V_tr/(A_b*n_v*(h_over - h_run))", "A_b*n_v*(h_over + h_run)/V_tr"),
    "water in a vessel with foam and pebbles": ("V_in - V_f", "V_in - V_f - V_p", "V_in - V_f - n_por*V_p", "V_in - (1 - n_por)*V_p", "V_in - (1 - n_por)*(V_f + V_p)", "n_por*(V_in - V_f)"),
    "T06.3": ("a*y", "a*H", "a*(H - y)", "2*a*(H + y)", "a*H + y*a/2"),
    "T06.4": ("p*z/t", "t/(p*n*z)", "p*(1 - n)*z/t", "p*n*z - t", "n*z/t"),
    "T06.12": ("pi/4*d**2*l", "c*t*r", "pi/4*d**2*l + c*t", "pi/4*d**2*(l + t) + c*r*t/2", "d**2*l + c*t*r"),
    "energy in a year": ("P_in*t_day*365*24*3600/(24*3600)*1.02", "P_in*N_day", "P_in*24*3600*N_day", "P_in*t_day*300", "P_in*t_day*250"),
    "voltage drop in per cent by resistance": ("r_warm*I_c*L_c/U_s", "2*r_warm*I_c*L_c/230", "2*r_warm*I_c*L_c/(U_s*0.9)", "sqrt(3)*r_warm*I_c*L_c/U_s"),
    "T10.2": ("r*P/U*l/U", "2*r*(P/(U*f))*l/U", "r*(P*f/U)*l/U", "r*(P/(U*f))*l", "r*(P/(U*f))*l/U/1.1"),
    "price with tax": ("C_price/(1 - s_tax)", "C_price*s_tax", "C_price/(1 + s_tax)", "C_price*(1 + s_tax)**2"),
    "cost of a whole life": ("C_price + N_years*C_run", "C_price + C_run + C_serv", "N_years*(C_price + C_run + C_serv)", "N_years*(C_run + C_serv)", "C_price + N_years*C_serv"),
    "T12.4": ("(b - a)/((p - q)*(t*300*c/kWh))", "b/((p - q)*(t*365*c/kWh))", "(b - a)/(p*(t*365*c/kWh))", "(b - a)/(q*(t*365*c/kWh))", "(b + a)/((p - q)*(t*365*c/kWh))"),
    "T13.2": ("f*a/T", "(f - c)*a", "(f + c)*a/T", "c*a/T", "(f - c)/T*a*1.1"),
    "height that a sill hides": ("z_eye - z_sill", "(z_eye - z_sill)*x_beyond/x_sill", "z_sill - (z_eye - z_sill)*x_beyond/x_sill*0.9", "z_sill*x_beyond/x_sill", "z_eye - (z_eye - z_sill)*x_beyond/x_sill"),
    "psychrometric constant": ("0.665e-3", "k_psy*101300", "0.0665e-3*p_air", "k_psy*p_air*1.05"),
    "reference evapotranspiration": ("s_vp*R_net/H_v/(s_vp + gamma_p)", "(s_vp*R_net/H_v + gamma_p*k_ref/T_a*v_w2*(p_sm - p_vap))/(s_vp + gamma_p)", "(gamma_p*k_ref/T_a*v_w2*(p_sm - p_vap))/(s_vp + gamma_p*(1 + k_leaf*v_w2))", "1.26*s_vp*R_net/H_v/(s_vp + gamma_p)", "R_net/H_v"),
    "sound level of two sources": ("10*log10(10**(L_one/10) + 10**(L_two/10)) + 3", "L_one + 10*log10(2)", "sqrt(L_one**2 + L_two**2)", "L_two + 3.01"),
    "T03.3": ("a + b - d", "d - (a + b)*0.7", "d - sqrt(a*b)", "sqrt(a**2 + b**2) + d", "d - sqrt(2)*a"),
    "T03.4": ("e*f/r", "e/r", "e*r", "e*(1 + r/f)", "e*r/f/2"),
    "T01.12": ("r*2**(d/3)", "r*10**(d/10)", "r*2**(d/6)*1.05", "r*d/6", "r*(1 + d/6)"),
}  # fmt: skip


# --- rough working, by rule: each takes a part of the right method and gives what somebody puts in its place -----------------------------

_N = ast.Constant
_ROUNDED = ("pi is three", "g is ten", "number rounded")


def _rough(node: ast.expr) -> Iterator[tuple[str, ast.expr]]:
    match node:
        case ast.Name(id="pi"):
            yield "pi is three", _N(3)
            yield "pi forgotten", _N(1)
        case ast.Name(id="g"):
            yield "g is ten", _N(10)
        case ast.BinOp(left=left, op=ast.Add() | ast.Sub(), right=right):
            yield "second part dropped", left
            yield "first part dropped", right if isinstance(node.op, ast.Add) else ast.UnaryOp(ast.USub(), right)
            yield "mean of both for their sum", ast.BinOp(node, ast.Div(), _N(2))
        case ast.BinOp(left=left, op=ast.Pow(), right=power):
            try:
                size = float(eval(compile(ast.Expression(power), "", "eval"), {"__builtins__": {}}))
            except (NameError, TypeError):
                return
            if abs(size) > 6:
                return
            for other in {math.floor(size), math.ceil(size), round(2 * size) / 2, size - 0.5, size + 0.5} - {size, 0}:
                yield "another power", ast.BinOp(left, ast.Pow(), _N(other))
            yield "times for power", ast.BinOp(left, ast.Mult(), power)
        case ast.Call(func=ast.Name(id=name), args=[inside]):
            angle = {
                "sin": (inside, ast.Call(ast.Name("cos"), [inside], [])),
                "cos": (_N(1), ast.Call(ast.Name("sin"), [inside], [])),
                "tan": (inside, ast.Call(ast.Name("sin"), [inside], [])),
            }
            for other in angle.get(name, ()):
                yield "rough angle", other
            if name == "exp":
                yield "exponential as a straight line", ast.BinOp(_N(1), ast.Add(), inside)
            if name == "sqrt":
                yield "root left out", inside
                yield "half for the root", ast.BinOp(inside, ast.Div(), _N(2))
        case ast.Constant(value=float() | int() as value) if value not in (0, 1) and float(f"{value:.4g}") == value:
            for figures in (1, 2):
                short = float(f"{value:.{figures}g}")
                if abs(short / value - 1) > 0.02:
                    yield "number rounded", _N(short)
            yield "number doubled", _N(2 * value)
            yield "number halved", _N(value / 2)


def _places(tree: ast.expr) -> list[ast.expr]:
    """Every part of a working, but for a power that is copied."""
    copied = [ast.walk(node.right) for node in ast.walk(tree) if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Pow) and not [*_rough(node)]]
    left_alone = {id(part) for power in copied for part in power}
    return [node for node in ast.walk(tree) if isinstance(node, ast.expr) and id(node) not in left_alone]


def rough(text: str) -> Iterator[tuple[str, str]]:
    """Every method with one part worked roughly: how, and its text."""
    tree = ast.parse(text, mode="eval").body
    for place in _places(tree):
        for how, new in _rough(place):
            yield how, ast.unparse(one_replaced(tree, place, new))


def methods(text: str, name: str, pairs: bool) -> Iterator[tuple[str, str]]:
    """Wrong methods of a question: those written by hand, those with one part rough, and with `pairs` those with two."""
    yield from (("shortcut", other) for other in SHORTCUTS.get(name, ()))
    for how, once in rough(text):
        yield how, once
        if pairs:
            yield from ((f"{how} and {again}", twice) for again, twice in rough(once))


def tried(questions, seeds, pairs: bool = False) -> Iterator[tuple[str, int, str, str, str, str]]:
    """Each wrong method on each set of numbers: question, seed, how, its text, what was typed, kind of diagnosis.

    One whose number is the right one on other numbers too is the same method in other words. A constant that was rounded (g is 10) and then moves the answer
    by less than 0.7 %, as under a cube root, cannot be told from rounding by anybody, and is named "rounding" where it is right.
    """
    for declared in questions:
        declared = twins.here(declared) if isinstance(declared, Numeric) else declared
        text = simulated.right_text(declared)
        if not text:
            continue
        every = list(dict.fromkeys(methods(text, simulated.name_of(declared), pairs)))
        for seed in seeds:
            learner = simulated.Learner(declared, seed)
            right, answer = learner.elsewhere_of(text), learner.posed.answer
            for how, method in every:
                value = learner.work(method)
                if value is None or not answer or not 1e-4 < abs(value / answer) < 1e4 or simulated.same(learner.elsewhere_of(method), right):
                    continue
                if pairs and abs(value / answer - 1) > 0.03:
                    yield simulated.name_of(declared), seed, how, method, "", "far off"
                    continue
                typed = simulated.shown(value, learner.posed.unit)
                kind = diagnose(learner.posed, typed).kind
                kind = "rounding" if kind == "right" and how in _ROUNDED and abs(value / answer - 1) < 0.007 else kind
                yield simulated.name_of(declared), seed, how, method, typed, kind
            if not learner.posed.varies:
                break


def main() -> int:
    options = argparse.ArgumentParser(description=__doc__)
    for name, value in (("seeds", 4), ("part", 0), ("parts", 1)):
        options.add_argument(f"--{name}", type=int, default=value)
    options.add_argument("--us", action="store_true")
    options.add_argument("--pairs", action="store_true")
    chosen = options.parse_args()
    counts: dict[str, collections.Counter] = collections.defaultdict(collections.Counter)
    with system.working_in(system.FEET if chosen.us else system.METRES):
        for name, seed, how, method, typed, kind in tried(simulated.declared()[chosen.part :: chosen.parts], range(1, 1 + chosen.seeds), chosen.pairs):
            family = "shortcut" if how == "shortcut" else "two rough parts" if " and " in how else "one rough part"
            counts[family][kind] += 1
            if kind == "right":
                print(name, seed, how, method, typed, sep=" | ")
    for family, found in counts.items():
        print(
            f"{family}: {sum(found.values())}, accepted {found['right']}, "
            + ", ".join(f"{kind} {count}" for kind, count in found.most_common() if kind != "right")
        )
    return 1 if counts["shortcut"]["right"] or counts["one rough part"]["right"] else 0


if __name__ == "__main__":
    raise SystemExit(main())
