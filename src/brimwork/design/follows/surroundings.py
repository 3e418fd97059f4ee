"""Supply of electricity, and what stands round the feature: footings, roots, neighbours, lifting, wind, money."""

from __future__ import annotations

import math

from brimwork import tables, topics
from brimwork.design.follows.chain import Chain, Found, result
from brimwork.topics.handling import lift_limit, pull_in_slings


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
        rest = {"I_c": self.current, "L_c": d["supply.cable_length"], "U_s": d["supply.voltage"]}
        if "supply.resistance" in d.values:
            return self._work("voltage drop in per cent by resistance", r_warm=d["supply.resistance"], **rest)
        return self._work("voltage drop in per cent by cable table", u_c=d["supply.drop"], **rest)

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
        return self._work("length of the cord", L_route=d["supply.cord_route"], l_drip=d["assumptions.drip_loop"], l_slack=d["assumptions.lift_out"])

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
        """Distance to a footing over the distance to keep; infinite where the pit is no deeper than the footing."""
        depth = self.design["site.footing_depth"]
        if self.pit_depth <= depth:
            return math.inf
        wanted = max(
            topics.formulas()["distance to keep from a footing"](k_foot=self.design["assumptions.footing_slope"], D_dig=self.pit_depth, D_foot=depth),
            tables.LEAST_FROM_FOOTING.value,
        )
        return self.design["site.footing_distance"] / wanted

    @result
    def root_radius(self):
        return self._work("radius of the roots of a tree", d_stem=self.design["site.tree_stem"])

    @result
    def noise(self):
        return self._work("sound level at a distance", L_near=self.design["site.sound_at_1m"], r_near=1.0, r_far=self.design["site.neighbour"])

    @property
    def noise_above(self) -> float:
        return self.noise - self.design["site.background"]

    @result
    def lift(self):
        """Lifting index of the heaviest thing that one person lifts: straight in front, seldom."""
        d = self.design
        limit = lift_limit(d["site.lift_reach"], d["site.lift_height"], d["site.lift_travel"], 1.0, 1.0, d["assumptions.grip"])
        return self._work("lifting index", m_load=d["site.lift_mass"], m_rwl=limit)

    @result
    def sling(self):
        d = self.design
        pull = pull_in_slings(d["site.sling_mass"], round(d["site.sling_legs"]), d["site.sling_angle"])
        return Found("F_leg", pull, "the pull in one leg; of three or four legs two carry")

    @property
    def sling_share(self) -> float:
        return self.sling / self.design["site.sling_rating"]

    @result
    def wind_pressure(self):
        d = self.design
        return self._work("wind pressure", k_e=d["assumptions.exposure"], rho_air=d["assumptions.air_density"], v_wind=d["site.wind_speed"])

    @result
    def cost_estimate(self):
        """The cost that the design gives, with its contingency; the cost sheet makes its own sums."""
        return self._work("cost with contingency", C_dir=self.design["site.cost"], s_cont=self.design["costing.contingency"])
