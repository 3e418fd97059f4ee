"""Shortcuts with volumes, areas and lengths: one shape taken for another, a mean for the whole, a part left out. As `shortcuts.py` wants them."""

from collections.abc import Iterator
from itertools import combinations

_WIDTHS = ("d_floor", "d_rim", "(d_floor + (d_rim - d_floor)*h/D)")  # of a bowl that tapers: below, at the rim, and where the water stands


def _cylinders(widths: tuple[str, ...], length: str) -> Iterator[str]:
    """A cylinder in the place of what tapers: of one width, or of two by any mean of them; and a frustum between the wrong two."""
    yield from (f"pi/4*{width}**2*{length}" for width in widths)
    for a, b in combinations(widths, 2):
        yield from (f"pi/4*({mean})*{length}" for mean in (f"(({a} + {b})/2)**2", f"{a}*{b}", f"({a}**2 + {b}**2)/2", f"(2*{a}*{b}/({a} + {b}))**2"))
        if (a, b) != (widths[0], widths[-1]):
            yield f"pi/12*({a}**2 + {a}*{b} + {b}**2)*{length}"


SHAPES: dict[str, tuple[str | tuple[str, str], ...]] = {
    "T01.5": ("w*h/2", "w*h", "w*sqrt(h/5)*1.05"),
    "side of the liner for a round pit": ("pi*d_t/2 + 2*D", "d_t + 2*D", "pi*d_t/2"),
    "water in a cone-shaped bowl": (
        *_cylinders(_WIDTHS, "h"),
        ("pi/4*((2*d_floor + (d_rim - d_floor)*h/D)/2)**2*h", "You took a cylinder of the mean width. A bowl that tapers holds more: use its own formula."),
        ("pi/8*(d_floor**2 + (d_floor + (d_rim - d_floor)*h/D)**2)*h", "You took the mean of both end areas. A bowl that tapers holds less: use its own formula."),
        "pi/12*d_rim**2*h", "pi/3*h*(d_floor**2 + d_floor*d_rim + d_rim**2)",
    ),
    "volume of a battered pit": (
        ("(L + m_b*h)*(W + m_b*h)*h", "You took the size at half depth for the whole. The corners hold more: use the whole formula."),
        ("h/2*(L*W + (L + 2*m_b*h)*(W + 2*m_b*h))", "You took the mean of floor and top. That is too much: use the whole formula."),
        "(L + 2*m_b*h)*(W + 2*m_b*h)*h", "L*W*h", "h/3*(L*W + (L + 2*m_b*h)*(W + 2*m_b*h) + sqrt(L*W*(L + 2*m_b*h)*(W + 2*m_b*h)))*1.05",
        ("L*W*h + m_b*(L + W)*h**2 + m_b**2*h**3", "You left out the 4/3 of the corners: multiply by it."), "L*W*h + m_b*(L + W)*h**2/2",
        "L*W*h + m_b*(L + W)*h", "L*W*h + m_b*(L + W)*h**2 + 4*m_b**2*h**3", "L*W*h + 2*m_b*(L + W)*h**2", "(L + m_b)*(W + m_b)*h",
        "h*(L + m_b*h/2)*(W + m_b*h/2)", "L*W*h + m_b*(L + W)*h**2 + 4/3*m_b*h**3", "L*W*h*(1 + m_b)",
    ),
    "volume from three areas": (
        "h*A_m", ("h/2*(A_1 + A_2)", "You took the mean of both ends. Count the middle area too, four times."),
        ("h/3*(A_1 + A_m + A_2)", "You took the mean of three areas. The middle one counts four times: divide by six."), "h/4*(A_1 + 2*A_m + A_2)",
        "h/6*(A_1 + A_m + A_2)", "h*sqrt(A_1*A_2)", "h*A_1", "h*A_2",
    ),
    "volume of a tapered pit": (
        ("h/2*(A_1 + A_2)", "You took the mean of both areas. That is too much: put in a third area, the root of both multiplied."), "h*sqrt(A_1*A_2)",
        "h/3*(A_1 + A_2)", "h*A_1", "h*A_2",
        ("h/3*(A_1 + A_2 + (A_1 + A_2)/2)", "You took the mean of both areas for the one between. Take the root of both multiplied."),
        "h*((sqrt(A_1) + sqrt(A_2))/2)**2",
    ),
    "water in a round bowl": (
        "pi*h**2*R_s", "2/3*pi*R_s**3", "pi*h**2/3*(3*R_s)", "pi*R_s**2*h", "pi*h**2/6*(3*R_s - h)", "pi*h/2*(2*R_s*h - h**2)", "pi/3*h*(2*R_s*h - h**2)",
        "2/3*pi*(2*R_s*h - h**2)*h",
    ),
    "sphere of a round bowl": (
        ("d_rim/2", "You took half the rim. That is so for half a sphere only: count the depth too."), "d_rim**2/(8*D)", "D/2 + d_rim**2/(4*D)",
        "d_rim**2/(4*D) + D", "(d_rim/2 + D)/2",
    ),
    "volume of a round tank": ("0.75*d_t**2*h", "0.8*d_t**2*h", "pi*d_t**2*h", "d_t**2*h", "3*(d_t/2)**2*h",),
    "depth in a round tank": ("V/d_t**2", "4*V/(3*d_t**2)", "V/(pi*d_t**2)",),
    "contact patch of a ring foot": (
        "pi*(d_fo + d_fi)/2*(d_fo - d_fi)", ("pi/4*(d_fo - d_fi)**2", "You squared the difference. Square each diameter, then take one from the other."),
        "pi*d_fo*(d_fo - d_fi)/2", "pi*d_fi*(d_fo - d_fi)/2", "pi/4*d_fo**2", "d_fo**2 - d_fi**2",
    ),
    "patch of a ring foot through a slab": (
        "pi/4*((d_fo + t_s)**2 - (d_fi - t_s)**2)", "pi/4*((d_fo + 2*t_s)**2 - d_fi**2)", "pi/4*(d_fo**2 - d_fi**2)",
        "pi*(d_fo + d_fi)/2*((d_fo - d_fi)/2 + t_s)", "pi/4*(d_fo + 2*t_s)**2",
    ),
    "patch of a round foot through a slab": (
        "pi/4*(d_fo + t_s)**2", "pi/4*d_fo**2", "pi/4*(d_fo**2 + (2*t_s)**2)", "(d_fo + 2*t_s)**2", "pi/4*d_fo*(d_fo + 4*t_s)",
    ),
    "pressure under a foot or a wheel": (
        "F_foot/b_foot**2", "F_foot/(b_foot + t_cov)**2", "F_foot/(b_foot**2 + (2*t_cov)**2)", "F_foot/(b_foot*(b_foot + 2*t_cov))",
    ),
    "T07.1": ("pi/4*a**2*h*r", "(pi/4*a**2*h - pi/4*b**2*(h - c))*r", "pi/4*(a**2 - b**2)*h*r + pi/4*b**2*h*1000*kg/m**3", "pi/4*a**2*h*1000*kg/m**3",),
    "T14.3": ("a*b*c*r", "pi/4*a*b*c*r", "0.6*a*b*c*r", "pi/6*((a + b + c)/3)**3*r", "pi/6*a*b*c*r*0.9", "0.5*a*b*c*r",),
    "T02.5": (
        "pi/4*a**2*h*8.33*lb/US_gal*0.9", "a**2*h*8.33*lb/US_gal", "pi/4*a**2*h*10*lb/US_gal", "pi/4*a**2*h*10*lb/imp_gal*1.2", "pi/4*a**2*h*8*lb/US_gal",
    ),
    "T02.4": ("pi*(D + d)/2*t*r*(1 + w)", "pi/4*(D - d)**2*t*r*(1 + w)", "pi*D*(D - d)/2*t*r*(1 + w)", "pi*d*(D - d)/2*t*r*(1 + w)", "pi/4*(D**2 - d**2)*t*r",),
    "T09.4": (
        "2*(l*w + (l + w)*h)", "(l + 2*a + 2*h)*(w + 2*a + 2*h)", "2*(l*w + 2*(l + w)*h)", "l*w + 2*(l + w)*h", "2*(l*w + 2*(l + w)*h) + 2*a*(l + w)",
        "2*(l*w + 2*(l + w)*h) + (l + a)*(w + a) - l*w",
    ),
    "area of the protection fleece": (
        "(L_in + 2*w_apron)*(W_in + 2*w_apron) + 2*D*(L_in + W_in)", "(L_in + 2*w_apron)*(W_in + 2*w_apron) + 2*D*(L_in + W_in) + L_in*W_in",
        "(L_in + 2*(w_apron + D))*(W_in + 2*(w_apron + D))", "(L_in + w_apron)*(W_in + w_apron) + 4*D*(L_in + W_in) + L_in*W_in",
        "2*(L_in + 2*w_apron)*(W_in + 2*w_apron) + 4*D*(L_in + W_in)", "4*D*(L_in + W_in) + 2*L_in*W_in",
    ),
    "area of the liner": (
        "(L_in + 2*D + w_apron + w_trim)*(W_in + 2*D + w_apron + w_trim)", "L_in*W_in + 2*D*(L_in + W_in)", "(L_in + 2*D)*(W_in + 2*D)",
        "(L_in + 2*(D + w_apron))*(W_in + 2*(D + w_apron))", "(L_in + D + w_apron + w_trim)*(W_in + D + w_apron + w_trim)",
        "L_in*W_in + 2*(L_in + W_in)*(D + w_apron + w_trim)",
    ),
    "area of the stone": (
        "L_in*W_in - A_bare", "(L_in + w_apron)*(W_in + w_apron) - A_bare", "(L_in + 2*w_apron)*(W_in + 2*w_apron)",
        "L_in*W_in + 2*w_apron*(L_in + W_in) - A_bare",
    ),
    "length of a sloping side": ("D + s_back", "D", "D + s_back/2", "(D + s_back)/2*1.4", "s_back", "sqrt(D**2 - s_back**2)",),
    "diagonal for squaring": (
        "L_dig + W_dig/2", "0.7*(L_dig + W_dig)", "1.4*L_dig", "1.4*W_dig", "1.4*(L_dig + W_dig)/2", "sqrt(2)*L_dig", "L_dig + W_dig/4",
        "0.96*L_dig + 0.4*W_dig",
    ),
    "liner folded away round a circle": (
        "D*(D + 2*(w_apron + w_trim))", "pi*D*(D + w_apron + w_trim)", "pi*D**2", "4*D*(D + 2*(w_apron + w_trim))", "pi*D*2*(w_apron + w_trim)",
    ),
    "root protection area": ("pi*12*d_stem**2", "(12*d_stem)**2", "(24*d_stem)**2", "pi*(6*d_stem)**2", "3*(12*d_stem)**2", "pi/4*(12*d_stem)**2",),
    "T01.1": ("12*d - a", "12*d - (a + l/2)", "10*d - (a - l/2)", "12*d/2 - (a - l/2)", "12*d - (a - l)",),
    "void fraction of packed spheres": (
        "1 - N_cell*4/3*pi*d_s**3/a_cell**3", "1 - N_cell*d_s**3/(2*a_cell**3)", "1 - pi/6", "N_cell*pi*d_s**3/(6*a_cell**3)",
        "1 - N_cell*pi*d_s**3/(8*a_cell**3)",
    ),
}  # fmt: skip
