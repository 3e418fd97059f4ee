"""Supply of electricity, and what stands round the feature: footings, roots, neighbours, lifting, wind, money."""

from __future__ import annotations

import math

from brimwork.cables import CABLE_DROPS, CONDUCTORS, carried
from brimwork.design.follows import agreeing
from brimwork.design.follows.chain import Chain, Found, result
from brimwork.design.typed.known import Unknown
from brimwork.topics.ground import clear_of_footing
from brimwork.topics.handling import HIGHEST, lift_limit, pull_in_slings
from brimwork.units import InputError

HEAVIER = 1.01  # times the heaviest thing that one person lifts, from which a piece is another thing


class Surroundings(Chain):
    """Supply and site of a design."""

    @result
    def current(self):
        d = self.design
        if "measured.current" in d.values:
            return Found("I_c", d["measured.current"], "measured on the running pump")
        return self._work("current", P_in=d["pump.power"], U_s=d["supply.voltage"], k_pf=d["supply.power_factor"])

    @result
    def voltage_drop(self):
        d = self.design
        carried = d.given("supply.circuit_load")
        rest = {"I_c": max(self.current, carried.value) if carried else self.current, "L_c": d["supply.cable_length"], "U_s": d["supply.voltage"]}
        size, by = d.values.get("supply.conductor"), []
        if "supply.resistance" in d.values or size and size.value in CONDUCTORS:
            by.append(self._work("voltage drop in per cent by resistance", r_warm=self.counted("supply.resistance"), **rest))
        if "supply.voltage_drop" in d.values or size and size.value in CABLE_DROPS or not by:
            by.append(self._work("voltage drop in per cent by cable table", u_c=self.counted("supply.voltage_drop"), **rest))
        return max(by, key=lambda worked: worked.result)

    @result
    def energy(self):
        return self._work("energy in a year", P_in=self.design["pump.power"], t_day=self.design["supply.hours_per_day"], N_day=365)

    @result
    def running_cost(self):
        d = self.design
        return self._work("running cost in a year", P_in=d["pump.power"], t_day=d["supply.hours_per_day"], N_day=365, c_el=d["supply.tariff"])

    @result
    def cord_wanted(self):
        d = self.design
        return self._work("length of the cord", L_route=self.counted("supply.cord_route"), l_drip=d["assumptions.drip_loop"], l_slack=d["assumptions.lift_out"])

    @property
    def cable_carries(self) -> float:
        """Current (A) that the cable carries: what the electrician says, never more than the table of its conductors. Raises Unknown."""
        said, size = self.design.given("supply.cable_rating"), self.design.given("supply.conductor")
        known = [said.value] if said else []
        known += [carried(size.value).value] if size else []
        if not known:
            raise Unknown("supply.cable_rating")
        return min(known)

    @property
    def starting_current(self) -> float:
        """Current (A) while the pump starts, with all else that runs on the circuit."""
        d, running = self.design, self.current
        start = self.counted("pump.starting_current") if d.given("pump.starting_current") else d["assumptions.starting"] * running
        load = d.given("supply.circuit_load")
        return start + (max(load.value - running, 0.0) if load else 0.0)

    @property
    def leakage_share(self) -> float:
        """Earth leakage over what trips the residual-current device."""
        return self.design["supply.leakage"] / self.design["supply.residual_rating"]

    @property
    def cord_spare(self) -> float:
        return self.design["supply.cord"] - self.cord_wanted

    # --- site

    @property
    def footing_share(self) -> float:
        """Distance to a footing over the distance to keep, which is half a metre at least, whatever the depths."""
        d = self.design
        return self.counted("site.footing_distance") / clear_of_footing(self.ground_depth, d["site.footing_depth"], d["assumptions.footing_slope"])

    @result
    def root_radius(self):
        return self._work("root protection radius", d_stem=self.design["site.tree_stem"])

    @result
    def noise(self):
        return self._work("sound level at a distance", L_near=self.design["site.sound_at_1m"], r_near=1.0, r_far=self.design["site.neighbour"])

    @property
    def noise_above(self) -> float:
        return self.noise - self.design["site.background"]

    @result
    def lift(self):
        """Lifting index of the heaviest thing that one person lifts: straight in front, seldom; at the start of the lift or at its end, whichever is worse.

        By the constants that are printed in inches and pounds where the design is one of the US.
        """
        d, us = self.design, self.design.region == "US"
        start, travel = d["site.lift_height"], d["site.lift_travel"]
        ends = (start, min(start + travel, HIGHEST))
        limit = min(lift_limit(d["site.lift_reach"], height, travel, k_grip=min(d["assumptions.grip"], 1.0), us_form=us) for height in ends)
        return self._work("lifting index", m_load=self.counted("site.lift_mass"), m_rwl=limit)

    @property
    def lift_of_all(self) -> float:
        """The lifting index, once somebody has said how each heavier piece is lifted. Raises Unknown."""
        d = self.design
        if d.given("site.sling_mass") is None and not self.unslung and any(mass > d["site.lift_mass"] * HEAVIER for mass in self._known_pieces()):
            raise Unknown("site.slings" if d.given("site.slings") is None else "site.sling_mass")
        return self.lift

    def slings_answered(self) -> None:
        """First of all whether there are slings. Raises Unknown where nobody says, and not all is known of them either."""
        d = self.design
        if d.given("site.slings") is None and any(d.given(f"site.sling_{key}") is None for key in ("mass", "legs", "angle", "rating")):
            raise Unknown("site.slings")

    @property
    def unslung(self) -> bool:
        """Whether somebody says that no slings are used, and no mass on them stands on file."""
        answer = self.design.given("site.slings")
        return answer is not None and answer.value != "used" and self.design.given("site.sling_mass") is None

    def _known_pieces(self) -> list[float]:
        """Masses (kg) of what is set in one piece, as far as they are known."""
        try:
            return agreeing.pieces(self)
        except (Unknown, InputError, ArithmeticError):
            return []

    @result
    def sling(self):
        d = self.design
        equal = d["site.sling_equal"] == "yes"
        pull = pull_in_slings(self.counted("site.sling_mass"), round(d["site.sling_legs"]), d["site.sling_angle"], equal)
        return Found(
            "F_leg", pull, "the pull in one leg; " + ("by your answer a gear lets all legs pull alike" if equal else "of three or four legs two carry")
        )

    @property
    def sling_share(self) -> float:
        """Of the rating of a leg; infinite where no slings are used. Raises Unknown."""
        if self.unslung:
            return math.inf
        self.slings_answered()
        return self.sling / self.design["site.sling_rating"]

    @result
    def wind_pressure(self):
        d = self.design
        return self._work("wind pressure", k_e=d["assumptions.exposure"], rho_air=d["assumptions.air_density"], v_wind=d["site.wind_speed"])

    @result
    def cost_estimate(self):
        """The cost that the design gives, with its contingency; the cost sheet makes its own sums."""
        return self._work("cost with contingency", C_dir=self.design["site.base_estimate"], s_cont=self.design["costing.contingency"])
