"""Shortcuts: what people of the trade do instead of the right thing. A cylinder for a bowl that tapers, the mean of two ends, one formula for another, a round number.

Numbers by which one of them would pass for right are not drawn; one with a sentence is told to the learner. Judgement of the trade, no counts.
To add one, write it over the given values of its question.
"""

from __future__ import annotations

import ast
from functools import cache

from brimwork.exercise.shortcuts_with_shapes import SHAPES

# By question: an expression, with its sentence where learners are told of it.
_SHORTCUTS: dict[str, tuple[str | tuple[str, str], ...]] = {
    **SHAPES,
    "T07.2": (("M*g/(pi*a*(a - b)/2)", "You took the outer edge for the whole ring. It is shorter inside: square both widths, then take one from the other."),),
    "flow over a level lip": (
        ("1.84*b*H**(3/2)", "You put in 1.84 for the coefficient. Use the one that is given."), "1.7*b*H**(3/2)",
        ("1.705*b*H**(3/2)", "You used the number of a broad crest. This lip is thin: use its own coefficient."), "C_d*b*H*sqrt(2*g*H)",
        "1.84*(b - 0.2*H)*H**(3/2)", "C_d*b*H*sqrt(g*H)", "2/3*b*sqrt(2*g)*H**(3/2)", "2/3*C_d*b*sqrt(2*g)*H**2",
    ),
    "head over a level lip": (
        "(Q/(1.84*b))**(2/3)", ("(Q/(1.705*b))**(2/3)", "You used the number of a broad crest. This lip is thin: use its own coefficient."),
        "(Q/(C_d*b*sqrt(2*g)))**(2/3)", "(Q/b)**2/(2*g)", "((Q/b)**2/g)**(1/3)", "(3/2*Q/(C_d*b*sqrt(2*g)))**(1/2)",
    ),
    "flow over a lip with end contractions": (
        "2/3*C_d*b*sqrt(2*g)*H**(3/2)", "2/3*C_d*(b - n_c*H)*sqrt(2*g)*H**(3/2)", "2/3*C_d*(b - H/10)*sqrt(2*g)*H**(3/2)",
        "2/3*C_d*(b - 2*H/10)*sqrt(2*g)*H**(3/2)*0.98", "2/3*C_d*(b - n_c*H/5)*sqrt(2*g)*H**(3/2)",
        ("1.84*(b - n_c*H/10)*H**(3/2)", "You put in 1.84 for the coefficient. Use the one that is given."),
    ),
    "flow with a velocity of approach": (
        "2/3*C_d*b*sqrt(2*g)*H**(3/2)", "2/3*C_d*b*sqrt(2*g)*(H + h_a)**(3/2)", "2/3*C_d*b*sqrt(2*g)*(H**(3/2) + h_a**(3/2))",
        "2/3*C_d*b*sqrt(2*g)*(H**(3/2) - h_a**(3/2))",
    ),
    "flow over a lip with corrected head and length": (
        "2/3*C_d*b*sqrt(2*g)*H**(3/2)", "2/3*C_d*(b + k_b)*sqrt(2*g)*H**(3/2)", "2/3*C_d*b*sqrt(2*g)*(H + k_h)**(3/2)",
        "2/3*C_d*(b - k_b)*sqrt(2*g)*(H - k_h)**(3/2)", "2/3*C_d*(b + k_h)*sqrt(2*g)*(H + k_b)**(3/2)", "2/3*C_d*(b - k_b)*sqrt(2*g)*(H + k_h)**(3/2)",
    ),
    "flow through a trapezoidal notch": (
        "2/3*C_d*b*sqrt(2*g)*H**(3/2)", "8/15*C_d*sqrt(2*g)*tan(theta/2)*H**(5/2)", "2/3*C_d*(b + H*tan(theta/2))*sqrt(2*g)*H**(3/2)",
        "2/3*C_d*(b + 2*H*tan(theta/2))*sqrt(2*g)*H**(3/2)", "1.86*b*H**(3/2)", "2/3*C_d*b*sqrt(2*g)*H**(3/2) + 8/15*C_d*sqrt(2*g)*tan(theta)*H**(5/2)",
    ),
    "flow through a V-notch": (
        "1.4*H**(5/2)", "1.38*H**(5/2)", ("8/15*C_d*sqrt(2*g)*tan(theta)*H**(5/2)", "You used the whole angle. Take the tangent of half of it."),
        "2/3*C_d*2*H*tan(theta/2)*sqrt(2*g)*H**(3/2)", "8/15*C_d*sqrt(2*g)*H**(5/2)", "1/2*C_d*sqrt(2*g)*tan(theta/2)*H**(5/2)",
    ),
    "flow through a V-notch with corrected head": (
        "8/15*C_d*sqrt(2*g)*tan(theta/2)*H**(5/2)", "8/15*C_d*sqrt(2*g)*tan(theta/2)*(H - k_h)**(5/2)", "1.38*(H + k_h)**(5/2)",
        "8/15*C_d*sqrt(2*g)*tan(theta/2)*(H**(5/2) + k_h**(5/2))",
    ),
    "flow over a broad crest": (
        ("1.84*b*H**(3/2)", "You used the number of a thin lip. A broad crest passes less: use its own."), "2/3*sqrt(2*g)*b*H**(3/2)", "sqrt(g)*b*H**(3/2)",
        "2/3*sqrt(g)*b*H**(3/2)", "0.6*2/3*sqrt(2*g)*b*H**(3/2)", "1.5*b*H**(3/2)",
    ),
    "weir coefficient": ("1.84", "1.705", "C_d*sqrt(2*g)", "2/3*C_d*sqrt(g)", "2/3*sqrt(2*g)", "C_d*3",),
    "flow over a round rim": (("C_w*pi/4*d_rim**2*H**(3/2)", "You took the area of the circle. Water goes over its edge: put in pi times the width."), 
        "C_w*d_rim*H**(3/2)", "C_w*pi/2*d_rim*H**(3/2)", "C_w*3*d_rim*H**(3/2)", "C_w*pi*d_rim**2/4*H**(1/2)", "1.84*pi*d_rim*H**(3/2)",
        "C_w*4*d_rim*H**(3/2)", "C_w*pi*(d_rim + H)*H**(3/2)", "C_w*pi*d_rim*H",
    ),
    "T04.1": (("(Q/(pi/4*D**2)/C)**(2/3)", "You took the area of the circle. Water goes over its edge: put in pi times the width."),
        "(Q/D/C)**(2/3)", "(Q/(3*D)/C)**(2/3)", "(Q/(4*D)/C)**(2/3)", "(Q/(pi*D)/1.84)**(2/3)", "(Q/(pi*D)/C)**(1/2)", "Q/(pi*D)/C",),
    "T04.2": (("C*pi/4*D**2*H**1.5", "You took the area of the circle. Water goes over its edge: put in pi times the width."),
        "C*3*D*H**1.5", "C*D*H**1.5", "C*4*D*H**1.5", "C*pi*D*H**2", "C*pi/2*D*H**1.5",),
    "flow ratio of a rim out of level": (
        "(H + e_rim/2)/(H - e_rim/2)", "((H + e_rim)/(H - e_rim))**(3/2)",
        ("((H + e_rim)/H)**(3/2)", "You put the whole error on one side. Half goes up and half goes down."),
        ("1 + 3/2*e_rim/H", "You took a straight line for the power. Take the ratio of both heads to the power 3/2."), "((H + e_rim/2)/H)**(3/2)",
        "1 + e_rim/H", "(H/(H - e_rim))**(3/2)",
    ),
    "T03.5": (
        "(H + e/2)/(H - e/2)", ("((H + e)/H)**1.5", "You put the whole error on one side. Half goes up and half goes down."),
        ("1 + 1.5*e/H", "You took a straight line for the power. Take the ratio of both heads to the power 1.5."), "(H/(H - e))**1.5", "1 + e/H",
    ),
    "discharge coefficient of a full-width lip": (
        "0.602", "0.62", "0.602 + 0.083*P/H", "0.602 + 0.075*H/P", "0.611 + 0.075*H/P", "0.6 + H/P/10", "0.602*(1 + 0.083*H/P)",
    ),
    "discharge coefficient by height of the lip": ("C_0", "C_0 - C_1*H/P", "C_0 + C_1*P/H", "C_0 + C_1", "C_0*(1 + C_1*H/P)",),
    "head lost by Hazen-Williams": (
        "k_HW*L_pipe*Q**2/(C_HW**2*d_pipe**5)", "k_HW*L_pipe*(Q/C_HW)**1.852/d_pipe**5", "10.67*L_pipe*(Q/C_HW)**1.85/d_pipe**4.87*0.9",
        "k_HW*L_pipe*Q**1.852/(C_HW*d_pipe**4.871)", "k_HW*L_pipe*(Q/C_HW)**1.75/d_pipe**4.75",
    ),
    "head lost at another flow": (
        "h_f1*Q_2/Q_1", ("h_f1*(Q_2/Q_1)**2", "You squared the ratio of the flows. By this formula its power is 1.852."), "h_f1*(Q_2/Q_1)**1.75",
        "h_f1*(Q_1/Q_2)**1.852", "h_f1 + (Q_2 - Q_1)/Q_1*h_f1*1.85", "h_f1*(Q_2/Q_1)**1.5",
    ),
    "loss coefficient of a sudden widening": ("1 - (d_1/d_2)**2", "(1 - d_1/d_2)**2", "1", "(1 - (d_1/d_2)**4)", "1 - d_1/d_2", "0.5*(1 - (d_1/d_2)**2)",),
    "loss coefficient of a sudden narrowing": ("0.5", "(1 - (d_2/d_1)**2)**2", "(1 - d_2/d_1)/2", "1 - (d_2/d_1)**2", "0.42*(1 - (d_2/d_1)**2)",),
    "head lost at a sudden widening": ("(v_1**2 - v_2**2)/(2*g)", "v_1**2/(2*g)", "(v_1 - v_2)/(2*g)", "(v_1 - v_2)**2/g", "(v_1 - v_2)**2/20",),
    "total dynamic head": (
        "z_s", "z_s + 8*Q**2/(pi**2*g*d_pipe**4)*(f*L_pipe/d_pipe)", "z_s + 8*Q**2/(pi**2*g*d_pipe**4)*K", "1.1*z_s", "z_s*1.2",
        "8*Q**2/(pi**2*g*d_pipe**4)*(f*L_pipe/d_pipe + K)", "z_s + 0.1*L_pipe",
    ),
    "total dynamic head from its parts": ("z_s + h_f", "z_s + h_m", "1.1*z_s", "z_s*1.2", "h_f + h_m", "1.1*(z_s + h_f)",),
    "T05.3": ("a + b", "a + b + f", "a + b + e", "1.1*(a + b)", "a + 2*b", "a + b + 2*f",),
    "T05.4": (
        "M", "R", "M*sqrt(1 - S/H)", ("M*(1 - S/H)", "You took a straight line for the pump. Its head falls with the square of the flow."),
        ("(M + R)/2", "You took the mean of two flows. Put the curve of the pump equal to that of the hose."), "sqrt(M*R)", "M/2", "M*R/(M + R)",
        "R*sqrt((H - S)/h)",
    ),
    "duty flow": (
        ("Q_max*sqrt(1 - z_s/H_0)", "You forgot what the hose loses. Count the losses too."),
        ("Q_max*(1 - z_s/H_0)", "You took a straight line for the pump. Its head falls with the square of the flow."), "Q_max", "Q_max/2",
        "Q_max*sqrt(H_0/(H_0 + h_loss*(Q_max/Q_1)**2))", "Q_1*sqrt((H_0 - z_s)/h_loss)",
    ),
    "pump curve from two label numbers": (
        ("H_0*(1 - Q/Q_max)", "You took a straight line. The head falls with the square of the flow."), "H_0", "H_0*(1 - (Q/Q_max)**1.75)", "H_0/2",
        "H_0*(1 - Q/Q_max)**2", "H_0*sqrt(1 - (Q/Q_max)**2)", "H_0*(1 - (Q/Q_max)**3)",
    ),
    "speed in a pipe": ("Q/d_pipe**2", "4*Q/(3*d_pipe**2)", "Q/(3*d_pipe**2)", "1.25*Q/d_pipe**2",),
    "T05.1": ("Q/d**2", "Q/(0.75*d**2)", "Q/(0.8*d**2)", "Q/(3*d**2)", "0.4*Q/d**2",),
    "flow through an opening": (
        "A_o*sqrt(2*g*H_o)", "0.6*A_o*sqrt(2*g*H_o)", "C_d*A_o*sqrt(g*H_o)", "C_d*A_o*2*g*H_o", "2/3*C_d*A_o*sqrt(2*g*H_o)", "C_d*A_o*sqrt(20*H_o)",
        "C_d*A_o*4*sqrt(H_o)", "0.65*A_o*sqrt(2*g*H_o)",
    ),
    "friction factor by Swamee-Jain": (
        "0.02", "0.025", "0.03", "0.316/Re**0.25", "64/Re", "0.25/log10(k_s/(3.7*d_pipe))**2", "0.25/log10(5.74/Re**0.9)**2",
        "(-1.8*log10((k_s/(3.7*d_pipe))**1.11 + 6.9/Re))**(-2)*1.03", "0.25/log10(k_s/(3.7*d_pipe) + 5.74/Re)**2",
    ),
    "friction factor by Blasius": ("0.02", "0.03", "64/Re", "0.316/Re**0.2", "0.184/Re**0.2", "0.3/Re**0.25", "0.079/Re**0.25", "0.316/Re**(1/3)",),
    "friction factor by Haaland": (
        "0.02", "0.316/Re**0.25", "64/Re", "(-1.8*log10((k_s/(3.7*d_pipe))**1.11))**(-2)", "(-1.8*log10(6.9/Re))**(-2)",
        "(-2*log10((k_s/(3.7*d_pipe))**1.11 + 6.9/Re))**(-2)", "(-1.8*log10(k_s/(3.7*d_pipe) + 6.9/Re))**(-2)",
    ),
    "time to drain through an opening": (
        ("A_tank*(H_1 - H_2)/(C_d*A_o*sqrt(2*g*H_1))", "You kept the flow of the start. It falls with the head: use both roots."),
        ("A_tank*(H_1 - H_2)/(C_d*A_o*sqrt(2*g*(H_1 + H_2)/2))", "You used the flow at the mean head. The flow falls with the root of the head: use both roots."),
        "A_tank*(H_1 - H_2)/(C_d*A_o*sqrt(2*g*H_2))", "2*A_tank*sqrt(H_1)/(C_d*A_o*sqrt(2*g))", "2*A_tank*sqrt(H_1 - H_2)/(C_d*A_o*sqrt(2*g))",
        "A_tank*(H_1 - H_2)/(A_o*sqrt(2*g*H_1))", "A_tank*(H_1 - H_2)/(C_d*A_o*sqrt(2*g*(H_1 - H_2)))",
    ),
    "time to drain through a pipe": (
        "A_tank*(H_1 - H_2)/(pi/4*d_pipe**2*sqrt(2*g*(H_1 + H_2)/2/(f*L_pipe/d_pipe + K + 1)))",
        "2*A_tank*sqrt(f*L_pipe/d_pipe + K)*(sqrt(H_1) - sqrt(H_2))/(pi/4*d_pipe**2*sqrt(2*g))",
        "2*A_tank*sqrt(f*L_pipe/d_pipe)*(sqrt(H_1) - sqrt(H_2))/(pi/4*d_pipe**2*sqrt(2*g))",
        "A_tank*(H_1 - H_2)/(pi/4*d_pipe**2*sqrt(2*g*H_1/(f*L_pipe/d_pipe + K + 1)))",
    ),
    "time to drain a cone": (
        "pi/12*d_rim**2*(H_1 - H_2)/(C_d*A_o*sqrt(2*g*H_1))", "pi*d_rim**2*H_1**(5/2)/(10*D**2*C_d*A_o*sqrt(2*g))",
        "2*pi/4*d_rim**2*(sqrt(H_1) - sqrt(H_2))/(C_d*A_o*sqrt(2*g))",
    ),
    "time to drain a round bowl": (
        "pi*(4/3*R_s*(H_1**(3/2) - H_2**(3/2)))/(C_d*A_o*sqrt(2*g))", "2*pi*R_s**2*(sqrt(H_1) - sqrt(H_2))/(C_d*A_o*sqrt(2*g))",
        "pi*(4/3*R_s*H_1**(3/2) - 2/5*H_1**(5/2))/(C_d*A_o*sqrt(2*g))",
        
    ),
    "time to draw down over a V-notch": (
        "A_tank*(H_1 - H_2)/(k_n*((H_1 + H_2)/2)**(5/2))", "A_tank*(H_1 - H_2)/(k_n*H_1**(5/2))", "2*A_tank/(3*k_n)*(1/H_2**(3/2))",
        "A_tank*(H_1 - H_2)/(k_n*(H_1**(5/2) + H_2**(5/2))/2)",
    ),
    "time in which a rim runs down": (
        "A_tank*(H_1 - H_2)/(C_w*b*((H_1 + H_2)/2)**(3/2))", "A_tank*(H_1 - H_2)/(C_w*b*H_1**(3/2))", "2*A_tank/(C_w*b)/sqrt(H_2)",
        "A_tank*(H_1 - H_2)/(C_w*b*(H_1**(3/2) + H_2**(3/2))/2)",
    ),
    "flow down a rill": (
        "1.84*w_rill*y_n**1.5",
        ("k_M/n_Manning*w_rill*y_n*y_n**(2/3)*sqrt(S_rill)", "You took the depth for the hydraulic radius. Divide the area by the wetted edge."),
        "k_M/n_Manning*w_rill*y_n*(w_rill*y_n/(w_rill + y_n))**(2/3)*sqrt(S_rill)",
        "k_M/n_Manning*w_rill*y_n*(w_rill*y_n/(2*w_rill + 2*y_n))**(2/3)*sqrt(S_rill)",
        "k_M/n_Manning*w_rill*y_n*(w_rill*y_n/(w_rill + 2*y_n))**(1/2)*sqrt(S_rill)", "k_M/n_Manning*w_rill*y_n*(w_rill*y_n/(w_rill + 2*y_n))**(2/3)*S_rill",
    ),
    "hydraulic radius of a rill": (
        "y_n", ("w_rill*y_n/(w_rill + y_n)", "You counted one side only. Water wets the floor and two sides."), "w_rill*y_n/(2*w_rill + 2*y_n)", "w_rill/4",
        "y_n/2", "w_rill*y_n/(2*w_rill + y_n)",
    ),
    "T14.5": (
        ("m**(1/3)/second/n*(w*y)*y**(2/3)/sqrt(s)", "You took the depth for the hydraulic radius. Divide the area by the wetted edge."),
        "m**(1/3)/second/n*(w*y)*(w*y/(w + y))**(2/3)/sqrt(s)", "m**(1/3)/second/n*(w*y)*(w*y/(w + 2*y))**(1/2)/sqrt(s)",
    ),
    "flow of a siphon": (
        "pi/4*d_pipe**2*sqrt(2*g*H_s)", "pi/4*d_pipe**2*sqrt(2*g*H_s)/sqrt(f*L_pipe/d_pipe + K)", "pi/4*d_pipe**2*sqrt(2*g*H_s)/sqrt(f*L_pipe/d_pipe)",
        "0.6*pi/4*d_pipe**2*sqrt(2*g*H_s)", "pi/4*d_pipe**2*sqrt(2*g*H_s)/sqrt(f*L_pipe/d_pipe + 1)",
    ),
    "greatest height of a siphon's crest": (
        "(p_air - p_boil)/(rho*g)", "p_air/(rho*g) - (1 + f*L_up/d_pipe + K_up)*v**2/(2*g)", "(p_air - p_boil)/(rho*g) - (f*L_up/d_pipe + K_up)*v**2/(2*g)",
        "(p_air - p_boil)/(rho*g) - (1 + f*L_up/d_pipe)*v**2/(2*g)", "(p_air - p_boil)/(rho*g) - v**2/(2*g)", "10.3",
    ),
    "net positive suction head available": (
        "p_air/(rho*g) - z_suct - h_suct", "(p_air - p_boil)/(rho*g) - z_suct", "(p_air - p_boil)/(rho*g) + z_suct - h_suct", "10.3 - z_suct - h_suct",
        "10 - z_suct - h_suct", "(p_air - p_boil)/(rho*g) - h_suct",
    ),
    "throw of a free sheet or jet": ("v_b*2*h_fall/g", "v_b*sqrt(h_fall/g)", "2*v_b*sqrt(h_fall/g)", "sqrt(2*g*h_fall)*v_b/g*1.02", "v_b*0.45*sqrt(h_fall)*1.05",),
    "speed with which water lands": (
        "sqrt(2*g*h_fall)", ("v_b + sqrt(2*g*h_fall)", "You added both speeds. Square each, add, then take the root."), "sqrt(v_b**2 + g*h_fall)", "v_b",
        "sqrt(v_b + 2*g*h_fall)",
    ),
    "T14.2": ("q/(q**2/g)**(1/3)*sqrt(2*h/g)", "sqrt(2*h/g)", "q/(2/3*(q**2/g)**(1/3))*sqrt(2*h/g)", "q/(0.7*(q**2/g)**(1/3))*sqrt(2*h/g)*1.01",),
    "wind pressure": ("0.6*v_wind**2*k_e", "0.6*v_wind**2*k_e*1.05", "0.613*v_wind**2*k_e", "0.625*v_wind**2*k_e", "0.65*v_wind**2*k_e"),
    "depth at the brink": ("y_c", "2/3*y_c", "0.7*y_c", "3/4*y_c", "y_c/2",),
    "drift of a drop in wind": ("v_wind*sqrt(h_fall/g)", "v_wind*2*h_fall/g", "v_wind*h_fall", "v_wind/2*sqrt(2*h_fall/g)",),
    "hoop stress in the wall of a full vessel": (
        "rho*g*h_full*R_wall/(2*t_wall)", ("rho*g*h_full*2*R_wall/t_wall", "You put in the diameter. Put in the radius."), "1/2*rho*g*h_full*R_wall/t_wall",
        "rho*g*h_full*(R_wall + t_wall)/t_wall", "rho*g*h_full*(R_wall + t_wall/2)/t_wall", "rho*g*h_full*(R_wall - t_wall)/t_wall",
    ),
    "greatest pressure under an offset load": (
        "F_w/(B_base*L_base)",
        ("F_w/((B_base - 2*e_off)*L_base)", "You spread the load evenly over a smaller base. Here the pressure grows to one edge: use the six."),
        "F_w/(B_base*L_base)*(1 + e_off/B_base)", "F_w/(B_base*L_base)*(1 + 3*e_off/B_base)", "F_w/(B_base*L_base)*(1 + 6*e_off/L_base)",
        "2*F_w/(B_base*L_base)",
    ),
    "least pressure under an offset load": (
        "F_w/(B_base*L_base)", "F_w/(B_base*L_base)*(1 - e_off/B_base)", "F_w/(B_base*L_base)*(1 - 3*e_off/B_base)",
        "F_w/(B_base*L_base)*(1 - 6*e_off/L_base)",
    ),
    "greatest pressure under a load offset both ways": (
        "F_w/(B_base*L_base)*(1 + 6*e_off/B_base)", "F_w/(B_base*L_base)*(1 + 6*e_ac/L_base)",
        "F_w/(B_base*L_base)*(1 + 6*e_off/B_base)*(1 + 6*e_ac/L_base)", "F_w/((B_base - 2*e_off)*(L_base - 2*e_ac))",
        "F_w/(B_base*L_base)*(1 + 6*e_off/L_base + 6*e_ac/B_base)",
    ),
    "T07.5": (
        "(M + P)*g/(l*w)", "(M + P)*g/(l*w)*(1 + 6*e/l)", "M*g/(l*w)*(1 + 6*e/l)", "(M + P)*g/(l*w)*(1 + (M*e/(M + P))/l)", "(M + P)*g/((l - 2*e)*w)",
        "(M + P)*g/((l - 2*M*e/(M + P))*w)",
    ),
    "thrust of fill on a side of the box": (
        ("K_soil*rho_fill*g*D**2*L_out", "You forgot the half. The pressure grows from nothing at the top."), "1/2*rho_fill*g*D**2*L_out",
        "1/3*K_soil*rho_fill*g*D**2*L_out", "1/2*K_soil*rho_fill*g*D*L_out", "1/2*0.5*rho_fill*g*D**2*L_out", "1/2*0.33*rho_fill*g*D**2*L_out",
    ),
    "active coefficient of earth pressure": (
        "1 - sin(phi_s)", "1/3", "(1 - sin(phi_s))", "(1 - cos(phi_s))/(1 + cos(phi_s))", "(1 - tan(phi_s))/(1 + tan(phi_s))", "tan(pi/4 - phi_s/2)",
        "(1 + sin(phi_s))/(1 - sin(phi_s))",
    ),
    "pull in each leg of a sling": (
        "g*m_load/N_leg", "g*m_load/(N_leg*cos(alpha_leg))", "g*m_load/sin(alpha_leg)", "g*m_load*sin(alpha_leg)/N_leg", "10*m_load/N_leg",
        "g*m_load/(N_leg*alpha_leg)",
    ),
    "T11.2": ("M*g/2", "M*g/sin(t)", "M*g*sin(t)/2", "M*g/(2*tan(t))", "M*10/(2*cos(t))", "M*g/2*1.2",),
    "uplift of foam": ("g*V_f*rho", "g*V_f*rho_f", "g*V_f*(rho + rho_f)", "10*V_f*rho", "g*V_f*1000*1.01",),
    "ballast needed for a tank under water": (
        "f_s*rho*V_disp - m_t", "(f_s*(rho*V_disp - m_t))/(1 - rho/rho_s)", "rho*V_disp - m_t", "(rho*V_disp - m_t)/(1 - rho/rho_s)",
        "f_s*rho*V_disp/(1 - rho/rho_s)", "(f_s*rho*V_disp - m_t)*rho/rho_s",
    ),
    "T07.4": (
        "k*v*(1000*kg/m**3 - F)/(r - 1000*kg/m**3)", "k*v*(1000*kg/m**3)/(r*(1 - n))", "v*(1000*kg/m**3 - F)/((1 - n)*(r - 1000*kg/m**3))",
        "k*v*(1000*kg/m**3 - F)/((1 - n)*r)", "k*v",
    ),
    "water in blocks and stone": (
        "N_b*n_v*V_b", "N_b*V_b + n_s*(V_pit - N_b*V_b)", "n_s*V_pit", "n_v*V_pit", "N_b*n_v*V_b + n_s*V_pit", "(n_v + n_s)/2*V_pit",
        "N_b*n_v*V_b + (V_pit - N_b*V_b)",
    ),
    "blocks needed in a pit": ("V_w/(n_v*V_b)", "V_w/V_b", "V_pit/V_b", "(V_w - n_s*V_pit)/(n_v*V_b)", "V_w/((n_v - n_s)*V_b)", "(V_w - n_s*V_pit)/V_b",),
    "void fraction of a layer of blocks and stone": ("n_v", "n_s", "(n_v + n_s)/2", "n_v*A_b/A_pit", "n_s + n_v*A_b/A_pit", "n_v - n_s", "n_v*A_b/A_pit + n_s",),
    "mass of backfill to order": (
        "L_dig*W_dig*D*k_comp*rho_loose", "(L_dig*W_dig - L_out*W_out)*D*rho_loose", "(L_dig - L_out)*(W_dig - W_out)*D*k_comp*rho_loose",
        "2*(L_dig - L_out)*(W_dig + W_out)/2*D*k_comp*rho_loose", "L_out*W_out*D*k_comp*rho_loose", "(L_dig*W_dig - L_out*W_out)*D*rho_loose/k_comp",
    ),
    "days without top-up": (
        "V_use/(K_E*E_0*A_wet + Q_splash)", "(V_use - V_tr)/(K_E*E_0*A_wet)", "(V_use - V_tr)/(E_0*A_wet)", "V_use/(E_0*A_wet)", "(V_use - V_tr)/Q_splash",
        "(V_use - V_tr)/(K_E*(E_0*A_wet + Q_splash))", "(V_use - V_tr)/(K_E*E_0*A_wet - Q_splash)",
    ),
    "T06.2": ("v/(a*E*k + s)", "(v - t)/(a*E*k)", "(v - t)/(a*E)", "v/(a*E)", "(v - t)/s", "(v - t)/((a*E + s)*k)", "(v - t)/(a*E/k + s)",),
    "loss of water": ("E_0*A_wet", "K_E*E_0*A_wet", "E_0*A_wet + Q_splash", "K_E*(E_0*A_wet + Q_splash)", "Q_splash", "K_E*E_0*A_wet - Q_splash",),
    "water in transit": (
        "V_rim + V_siph + V_pc + V_hold", "V_rim + V_siph + V_film + V_sheet + V_pc", "V_siph + V_film + V_sheet + V_pc + V_hold",
        "V_rim + V_siph + V_sheet + V_pc + V_hold", "V_rim + V_siph + V_film + V_pc + V_hold", "V_rim + V_film + V_sheet + V_pc + V_hold",
        "V_rim + V_siph + V_film + V_sheet + V_hold", "1.1*(V_rim + V_siph + V_pc + V_hold)",
    ),
    "top-up for a time": (
        "t_gap*(E_w*A_wet + Q_splash)", "t_gap*(E_w*A_wet - k_run*A_catch*R_day)", "t_gap*(E_w*A_wet + Q_splash - A_catch*R_day)", "t_gap*E_w*A_wet",
        "t_gap*(E_w*A_wet + Q_splash + k_run*A_catch*R_day)",
    ),
    "treatment volume": (
        "A_b*n_v*h_static", "A_b*h_static + V_v", "V_v",
        ("n_v*(A_b*h_static + V_v)", "You multiplied the vessel's water by the void too. Only the blocks have a void: add the vessel whole."),
        "A_b*n_v*h_static - V_v",
    ),
    "T13.3": (
        "l*w*n*z*r/(100*litre)", "(l*w*z + v)*r/(100*litre)", "v*r/(100*litre)",
        ("(l*w*z + v)*n*r/(100*litre)", "You multiplied the vessel's water by the void too. Only the blocks have a void: add the vessel whole."),
        "(l*w*n*z - v)*r/(100*litre)",
    ),
    "T13.4": ("(a - b)/b", "b/a", "a/b - 1", "(a - b)/((a + b)/2)",),
    "voltage drop by resistance": ("r_warm*I_c*L_c", "2*r_warm*I_c/L_c", "4*r_warm*I_c*L_c", "r_warm*I_c",),
    "resistance of a warm copper conductor": (
        "r_cold", "r_cold*(1 + 0.004*(T_c - T_cold))*1.05", "r_cold*T_c/T_cold", "r_cold*(T_cold - T_zero)/(T_c - T_zero)", "r_cold*1.2",
        "r_cold*(1 + 0.0039*(T_c - 273.15))",
    ),
    "current": ("P_in/U_s", "P_in*k_pf/U_s", "P_in/(sqrt(3)*U_s*k_pf)", "P_in/230",),
    "T10.1": ("P/U", "P*f/U", "P/(sqrt(3)*U*f)", "P/(U*f**2)",),
    "price from margin": (
        ("C_est*(1 + s_margin)", "You added the share to the cost. A margin is a share of the price: divide."), "C_est/(1 + s_margin)",
        "C_est*(1 - s_margin)", "C_est + s_margin", "C_est*(1 + s_margin + s_margin**2)",
    ),
    "T12.2": ("c*(1 + k)", "c/(1 + k)", "c*(1 + k + k**2)", "c*(1 + k)**2", "c*(1 - k)",),
    "mark-up from margin": (
        "s_margin", "s_margin/(1 + s_margin)", "1 - s_margin", "s_margin*(1 + s_margin)", "s_margin*(1 + s_margin + s_margin**2)", "1/(1 - s_margin)",
    ),
    "T12.23": ("k - 1", "(k - 1)/2", "1/k", "log(k)", "1 - 1/k**2", "2*(k - 1)/(k + 1)",),
    "loose volume of spoil": ("V_dig", "V_dig*s_swell", "V_dig/(1 + s_swell)", "V_dig/(1 - s_swell)", "V_dig*(1 + s_swell)**2",),
    "T02.3": (("27*a*b*(f + i)*(1 + k)", "You gave cubic feet. A cubic yard has 27 of them: divide by 27."),
        "a*b*(f + i)/(1 - k)", "a*b*f*(1 + k)", "a*b*(f + i)", "a*b*(f + 10*i/12*1.2/2)*(1 + k)", "a*b*(f + i)*(1 + k)**2",),
    "T12.5": ("v/b", "floor(v/b)", "ceil(v/b) + 1", "ceil(v/(1 + k)/b)", "ceil(v*(1 + k)/b)",),
    "T12.1": ("floor(M*(1 + w)/b)", "ceil(M/b)", "ceil(M*(1 - w)/b)", "ceil(M*(1 + w)/b) + 1", "ceil(M*w/b)",),
    "swell from densities": (
        "1 - rho_loose/rho_bank", "rho_bank/rho_loose", "(rho_bank - rho_loose)/rho_bank", "2*(rho_bank - rho_loose)/(rho_bank + rho_loose)",
        "log(rho_bank/rho_loose)",
    ),
    "void ratio from void fraction": ("n_por", "n_por/(1 + n_por)", "1 - n_por", "(1 - n_por)/n_por", "n_por*(1 + n_por)",),
    "void fraction from void ratio": ("e_void", "e_void/(1 - e_void)", "1/(1 + e_void)", "e_void*(1 - e_void)", "1 - e_void",),
    "wind speed at two metres": ("v_wz", "v_wz*(2/z_wind)**(1/7)", "v_wz*(2/z_wind)**0.2", "v_wz*z_wind/2", "v_wz*2/z_wind", "v_wz*sqrt(2/z_wind)",),
    "mean vapour pressure of saturated air over a day": (
        ("p_tet*exp(17.27*((T_max + T_min)/2 - T_ice)/((T_max + T_min)/2 - T_tet))", "You took the mean warmth first. Work out both pressures, then take their mean."),
        "p_tet*exp(17.27*(T_max - T_ice)/(T_max - T_tet))", "p_tet*exp(17.27*(T_min - T_ice)/(T_min - T_tet))",
    ),
    "heat lost to the sky": (
        "sigma_SB*((T_max + T_min)/2)**4*(0.34 - k_vap*sqrt(p_vap))*(1.35*R_sol/R_clear - 0.35)*1.04",
        "sigma_SB*(T_max**4 + T_min**4)/2*(0.34 - k_vap*p_vap)*(1.35*R_sol/R_clear - 0.35)", "sigma_SB*(T_max**4 + T_min**4)/2*(0.34 - k_vap*sqrt(p_vap))",
        "sigma_SB*T_max**4*(0.34 - k_vap*sqrt(p_vap))*(1.35*R_sol/R_clear - 0.35)",
        "sigma_SB*T_min**4*(0.34 - k_vap*sqrt(p_vap))*(1.35*R_sol/R_clear - 0.35)",
    ),
    "sunlight under a clear sky": ("0.75*R_ext", "R_ext", "0.7*R_ext", "k_clear*z_site*R_ext",),
    "sunlight through the sky": (
        "a_sky*R_ext", "b_sky*t_bright/t_sun*R_ext", "(a_sky + b_sky)*R_ext", "t_bright/t_sun*R_ext", "R_ext", "(0.25 + 0.5*t_bright/t_sun)*R_ext*1.03",
    ),
    "longest possible sunshine": ("t_24/2", "t_24*omega_s/(2*pi)", "t_24*omega_s/3", "12*3600",),
    "hour angle at sunset": (
        "pi/2", "acos(-sin(phi_lat)*sin(delta_sun))", "acos(tan(phi_lat)*tan(delta_sun))", "acos(-phi_lat*delta_sun)", "acos(-tan(phi_lat))",
    ),
    "evaporation of open water by Penman": (
        "s_vp/(s_vp + gamma_p)*R_net/H_v", "1.26*s_vp/(s_vp + gamma_p)*R_net/H_v", "gamma_p/(s_vp + gamma_p)*(a_dry + b_dry*v_w2)*(p_sm - p_vap)",
        "R_net/H_v", "s_vp/(s_vp + gamma_p)*R_net/H_v + gamma_p/(s_vp + gamma_p)*a_dry*(p_sm - p_vap)",
        "s_vp/(s_vp + gamma_p)*R_net/H_v + (a_dry + b_dry*v_w2)*(p_sm - p_vap)",
    ),
    "sound level of two sources": (
        "L_one*1.03",
        ("L_one + 3", "You added 3 dB. That is so for two equal sources only: add the powers."), "L_two + 3", "L_one + L_two",
        ("(L_one + L_two)/2", "You took the mean of both levels. Two sources are louder than one: add their powers."), "10*log10(10**(L_one/10))",
        "20*log10(10**(L_one/20) + 10**(L_two/20))", "L_two",
    ),
    "sound level at a distance": (
        "L_near - 10*log10(r_far/r_near)", "L_near", "L_near*r_near/r_far", "L_near - 6", "L_near - 6*r_far/r_near", "L_near - 3*r_far/r_near",
    ),
    "T01.4": ("n - 10*log10(x/r)", "n", "n - 6", "n - 6*x/r", "n*r/x", "n - 3*x/r",),
    "T01.11": ("n", "n*k", "n + 3*(k - 1)", "n + k", "n + 20*log10(k)", "n + 3", "n + 3*log(k)",),
    "T01.3": ("s - (e - s)*b + y", "(s + e)/2 + y", "s + y", "s - (e - s)/(a + b)*b + y", "e + y", "s - (e - s)/a*b", "s + (e - s)/a*b + y",),
    "T03.2": ("-(s + b + l + a)", "-(s + b + l)", "-(b + l + a + c)", "-(s + l + a + c)", "-(s + b + a + c)",),
    "T11.1": (
        "23*kg*(25*cm/H)", "23*kg*(25*cm/H)*c", "23*kg*(1 - 0.003*abs(z - 75*cm)/cm)*c", "23*kg*(25*cm/H)*(1 - 0.003*z/cm)*(0.82 + 4.5*cm/D)*c",
        "23*kg*(25*cm/H)*(1 - 0.003*abs(z - 75*cm)/cm)*(0.82 + 4.5*cm/D)", "23*kg*(25*cm/H)*(1 - 0.003*abs(z - 75*cm)/cm)*0.82*c",
        "23*kg*(25*cm/H)*(1 - 0.003*abs(z - 75*cm)/cm)*c", "25*kg*(25*cm/H)*(1 - 0.003*abs(z - 75*cm)/cm)*(0.82 + 4.5*cm/D)*c",
        "23*kg*(H/(25*cm))*(1 - 0.003*abs(z - 75*cm)/cm)*(0.82 + 4.5*cm/D)*c",
    ),
}  # fmt: skip


@cache
def shortcuts(name: str) -> tuple[tuple[ast.expr, str], ...]:
    """The shortcuts of a question, by its code or the name of its formula: each a tree, and its sentence or ""."""
    rows = ((row, "") if isinstance(row, str) else row for row in _SHORTCUTS.get(name, ()))
    return tuple((ast.parse(text, mode="eval").body, said) for text, said in rows)
