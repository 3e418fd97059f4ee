"""A design's chain put together from its parts; each kind of feature adds its own."""

from __future__ import annotations

from brimwork.design.follows.bearing import Bearing
from brimwork.design.follows.digging import Digging
from brimwork.design.follows.hydraulics import Hydraulics
from brimwork.design.follows.surroundings import Surroundings
from brimwork.design.follows.water import Water


class Whole(Hydraulics, Water, Bearing, Digging, Surroundings):
    """Everything that all kinds of feature share."""
