"""A free sheet that falls from a level lip: what the blade and the cascade share."""

from __future__ import annotations

from brimwork import tables
from brimwork.design.follows.chain import GRAVITY, result
from brimwork.design.follows.whole import Whole
from brimwork.formula import Working


class SheetChain(Whole):
    """A feature whose water leaves a lip as a free sheet; `fall` (m) is said by each kind."""

    @property
    def edge_coefficient(self) -> float:
        """Weir coefficient of the lip, m^0.5/s: the one that the design gives, else of a broad crest, what a metre of it passes under a metre of head."""
        given = self.design.given("flow.weir_coefficient")
        return given.value if given else self._work("flow over a broad crest", b=1.0, H=1.0).result

    def _head(self, width: float) -> Working:
        """Head over a lip of that width (m), by the weir coefficient that the design gives, else as over a broad crest."""
        given = self.design.given("flow.weir_coefficient")
        if given:
            return self._work("head by weir coefficient", Q=self.flow_wanted, C_w=given.value, b=width)
        return self._work("head at a broad crest", Q=self.flow_wanted, b=width)

    @property
    def trough_share(self) -> float:
        """Speed head of the water along trough or header over the head on the lip: by so much the sheet is thicker at one end."""
        return (self.flow_wanted / self.trough_section) ** 2 / (2 * GRAVITY) / self.edge_head

    @property
    def thin_lip_said(self) -> str:
        """What a table says of the lip, where it is for such a one; nothing otherwise."""
        return ""

    @property
    def trough_section(self) -> float:
        """Area (m2) across which the water runs in trough or header."""
        raise NotImplementedError

    @result
    def critical_depth(self):
        return self._work("critical depth", q=self.design["flow.for_each_metre"])

    @result
    def brink_depth(self):
        return self._work("depth at the brink", y_c=self.critical_depth)

    @result
    def brink_speed(self):
        return self._work("speed at the brink", q=self.design["flow.for_each_metre"], y_b=self.brink_depth)

    @result
    def fall_time(self):
        return self._work("time of fall", h_fall=self.fall)

    @result
    def throw(self):
        return self._work("throw of a free sheet or jet", v_b=self.brink_speed, h_fall=self.fall)

    @property
    def sheet_share(self) -> float:
        """Flow for each metre over the least that keeps a sheet whole for its fall."""
        return self.design["flow.for_each_metre"] / tables.least_sheet_flow(self.fall).value
