"""Pipework: stretches of pipe one after the other, and the head that they need at a flow."""

from __future__ import annotations

from typing import NamedTuple

from brimwork.nomenclature import QUANTITIES
from brimwork.topics.friction import Friction, friction_factor, reynolds_number
from brimwork.topics.hazen_williams import head_lost_by_hazen_williams
from brimwork.topics.pipes import fitting_head, friction_head, speed_in_a_pipe, total_head_from_parts

_GRAVITY = QUANTITIES["g"].fixed
GENTLE_BOIL = 0.015  # m: judgement, the limit of the check on the boil


class Stretch(NamedTuple):
    """A stretch of pipe of one bore (m), its length (m), the loss coefficient of its fittings; and its roughness k_s (m), a friction factor f, or C_HW.

    K_back is what a widening before it gives back, for the speed in it; it counts no further than its friction, for only a long straight bore gives all of it.
    """

    d_pipe: float
    L_pipe: float
    K: float = 0.0
    k_s: float = 0.0
    f: float | None = None
    C_HW: float | None = None
    K_back: float = 0.0


class Losses(NamedTuple):
    """What a stretch loses at a flow: heads (m), speed (m/s), Reynolds number, friction factor."""

    h_f: float
    h_m: float
    v: float
    Re: float
    friction: Friction


def losses(stretch: Stretch, Q: float, nu: float, law: str = "colebrook") -> Losses:
    """Losses of one stretch at a flow Q (m3/s) of water with kinematic viscosity nu (m2/s). Raises InputError for values that cannot be."""
    v = speed_in_a_pipe(Q=Q, d_pipe=stretch.d_pipe)
    Re = reynolds_number(v=v, d_pipe=stretch.d_pipe, nu=nu)
    if Q == 0:
        return Losses(0.0, 0.0, 0.0, 0.0, Friction(0.0, "still"))
    if stretch.L_pipe == 0:
        return Losses(0.0, fitting_head(K=stretch.K, v=v), v, Re, Friction(0.0, "no length"))
    if stretch.C_HW is not None:
        h_f = head_lost_by_hazen_williams(L_pipe=stretch.L_pipe, Q=Q, C_HW=stretch.C_HW, d_pipe=stretch.d_pipe)
        same = Friction(h_f * stretch.d_pipe * 2 * _GRAVITY / (stretch.L_pipe * v * v), "Hazen-Williams")
        return Losses(_left(h_f, stretch, v), fitting_head(K=stretch.K, v=v), v, Re, same)
    friction = Friction(stretch.f, "given") if stretch.f is not None else friction_factor(Re, stretch.k_s / stretch.d_pipe, law)
    h_f = friction_head(f=friction.f, L_pipe=stretch.L_pipe, d_pipe=stretch.d_pipe, v=v)
    return Losses(_left(h_f, stretch, v), fitting_head(K=stretch.K, v=v), v, Re, friction)


def _left(h_f: float, stretch: Stretch, v: float) -> float:
    """Friction (m) that is left over what a widening gives back."""
    return max(h_f - fitting_head(K=stretch.K_back, v=v), 0.0) if stretch.K_back else h_f


def head_needed(Q: float, z_s: float, stretches: tuple[Stretch, ...], nu: float, law: str = "colebrook") -> float:
    """Total dynamic head (m) for a flow Q (m3/s) through stretches one after the other, with a static lift z_s (m); nu in m2/s.

    The exit belongs to the fittings of the last stretch (loss coefficient 1). Where a stretch turns from laminar (Reynolds number 2000), the
    head steps up. Raises InputError for values that cannot be.
    """
    lost = [losses(stretch, Q, nu, law) for stretch in stretches]
    return total_head_from_parts(z_s=z_s, h_f=sum(part.h_f for part in lost), h_m=sum(part.h_m for part in lost))
