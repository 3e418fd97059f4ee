"""A design's chain put together from its parts; each kind of feature adds its own."""

from __future__ import annotations

from brimwork.design.bearing import Bearing
from brimwork.design.digging import Digging
from brimwork.design.hydraulics import Hydraulics
from brimwork.design.surroundings import Surroundings
from brimwork.design.water import Water


class Whole(Hydraulics, Water, Bearing, Digging, Surroundings):
    """Everything that all kinds of feature share."""
