"""The parts of answered checks that are computed: joints under a load, feet on the lid, the pull in a vessel's wall."""

from __future__ import annotations

from collections.abc import Callable

from brimwork.design.follows.chain import Chain
from brimwork.design.judged.grading import Computed
from brimwork.design.typed import patches
from brimwork.design.typed.limits import at_least, at_most
from brimwork.design.typed.telling import INFINITE, told

# Slab past a joint on either side; the foot of a person or a wheel; pull in the wall of a vessel, over its strength; bow of the box.
BRIDGED, UNDERFOOT, PULLED, BOWED = at_least(0.150, 0.075), at_most(1.0, 1.0), at_most(0.10, 0.20), at_most(0.005, 0.010)


def _joints(chain: Chain) -> Computed:
    """What stands on the blocks against the joints between them and their edge."""
    region, bridge, limit = chain.design.region, chain.bridge, BRIDGED.text("mm", chain.design.region)
    if chain.overhang > patches.SET:
        return Computed("fail", f"reaches {told(chain.overhang, 'mm', region)} over the edge of the blocks", limit)
    if bridge == INFINITE:
        return Computed("pass", "inside one block", limit)
    if not chain.slab_count:
        return Computed("fail", "stands across a joint, with no slab that bridges it", limit)
    return Computed(BRIDGED.grade(bridge), f"bridges a joint by {told(bridge, 'mm', region)} where it reaches least", limit)


def _underfoot(chain: Chain) -> Computed:
    used, (load, _) = chain.foot_utilisation, chain.pressed_under(chain.cover)
    over = "a bare block" if chain.cover == 0 else "a block under its cover"
    return Computed(UNDERFOOT.grade(used), f"{load} presses {told(used, '', 'UK')} of what {over} may carry for seconds", UNDERFOOT.text(""))


def _wall_and_water(chain: Chain) -> Computed:
    share = chain.wall_share
    return Computed(PULLED.grade(share), f"the full vessel pulls its wall with {told(share, '', 'UK')} of its strength", PULLED.text(""))


def _bowed(chain: Chain) -> Computed:
    bow, region = chain.bow, chain.design.region
    where = f"{told(chain.unheld, 'mm', region)} between two struts or corners"
    return Computed(BOWED.grade(bow), f"the fill bows the box by {told(bow, 'mm', region)}, {where}", BOWED.text("mm", region))


# Questions of which a part is computed: how, by which results, and whether the answer is only wanted where nothing can be computed.
COMPUTED: dict[str, tuple[Callable[[Chain], Computed], tuple[str, ...], bool]] = {
    "C23": (_joints, (), True),
    "C36": (_bowed, ("side_thrust", "side_pressure", "bow"), False),
    "C30": (_wall_and_water, ("hoop_stress", "wall_share"), False),
    "C58": (_underfoot, ("foot_pressure", "brief_allowable", "foot_utilisation"), False),
}
