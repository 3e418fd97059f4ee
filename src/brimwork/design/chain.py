"""The chain that computes a design: every number from the design's values, each by a formula of the topics, once.

A result that needs a value nobody has given raises Unknown with its key; all the others still stand.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from brimwork import tables, topics
from brimwork.design import levels, patches, pipework
from brimwork.design.inputs import Design, Unknown
from brimwork.formula import Working
from brimwork.nomenclature import QUANTITIES
from brimwork.topics import pumps
from brimwork.topics.handling import lift_limit, pull_in_slings
from brimwork.units import InputError

SAME_LEVEL = 0.005  # m: two levels nearer than this count as one: judgement
GRAVITY = QUANTITIES["g"].constant
CONTINGENCY = 0.12  # common practice, no source: 10 to 15 %


@dataclass(frozen=True)
class Found:
    """A result of a procedure rather than of one formula: letter, SI value, and in words how it was found."""

    letter: str
    result: float
    how: str


class result:  # noqa: N801 - reads as a decorator
    """A number of the chain: worked once and kept, with its working under the method's name."""

    def __init__(self, method: Callable[[Chain], Working | Found]):
        self.method, self.__doc__ = method, method.__doc__

    def __set_name__(self, owner: type, name: str) -> None:
        self.name = name

    def __get__(self, chain: Chain | None, owner: type):
        return self if chain is None else chain.working(self.name).result


class Chain:
    """Numbers of one design, in SI. `working(name)` gives the working behind a number."""

    def __init__(self, design: Design):
        self.design, self._worked = design, {}

    def working(self, name: str) -> Working | Found:
        """The working behind the result `name`. Raises Unknown with the keys that are missing, InputError for values that cannot be."""
        if name not in self._worked:
            try:
                self._worked[name] = getattr(type(self), name).method(self)
            except ArithmeticError:
                raise InputError(
                    f"'{name.replace('_', ' ')}' cannot be worked out: a value that must be more than nothing is zero, or one is far too large"
                ) from None
        return self._worked[name]

    @classmethod
    def names(cls) -> list[str]:
        """The names of all results of this kind of feature."""
        return [name for name in dir(cls) if isinstance(getattr(cls, name), result)]

    def _work(self, formula: str, **values: float) -> Working:
        return topics.formulas()[formula].work(**values)

    def level(self, name: str) -> float:
        return levels.height(self.design, name)

    @cached_property
    def water(self) -> dict[str, float]:
        """Density and viscosities at the temperature of the water."""
        return tables.water(self.design["flow.water_temperature"])

    # --- what each kind of feature says for itself

    edge_head = 0.0  # m: water that stands over the edge

    @property
    def delivery(self) -> float:
        """Level in m to which the pump lifts."""
        raise NotImplementedError

    def in_transit(self) -> dict[str, float]:
        """Water in transit above the reservoir, by the letters of its formula, without pipe and stone."""
        raise NotImplementedError

    def wet_parts(self) -> tuple[float, str]:
        """Wetted area (m2) besides the stone, and in words what it is."""
        raise NotImplementedError

    standing_mass = 0.0  # kg: what stands on the blocks, without the stone
    standing_offset = 0.0  # m: how far it stands off the middle
    held_above = 0.0  # m3: water that stays up in the feature when the pump stops
    bare = 0.0  # m2: area of the blocks that bears no stone
    splash_throw = 0.0  # m: how far out the water lands, before it splashes

    def contact_shapes(self) -> tuple[patches.Shape, ...]:
        """What touches the blocks. Raises Unknown."""
        return ()

    # --- splash

    @property
    def apron(self) -> float:
        """Width in m of the stone that catches the splash."""
        return self.design["catch.apron"]

    @result
    def apron_wanted(self):
        d = self.design
        return self._work("apron that the water wants", k_wind=d["assumptions.wind_factor"], x_throw=self.splash_throw,
                          k_splash=d["catch.splash_factor"], h_fall=self.fall)  # fmt: skip

    @result
    def apron_share(self):
        return Found(
            "r_apron", self.apron / self.apron_wanted, f"the apron over the {QUANTITIES['w_apron'].metric_text(self.apron_wanted)} that water and wind want"
        )

    # --- pipe and pump

    @result
    def speed_wanted(self):
        return self._work("speed in a pipe", Q=self.flow_wanted, d_pipe=self.design["pipe.bore"])

    @result
    def reynolds(self):
        return self._work("Reynolds number in a pipe", v=self.speed_wanted, d_pipe=self.design["pipe.bore"], nu=self.water["nu"])

    @result
    def friction(self):
        found = self._losses(self.flow_wanted).friction
        law = self.design["pipe.friction_law"]
        how = (
            f"ribbed hose, {tables.RIBBED_HOSE.basis}"
            if law == "ribbed hose"
            else f"{found.regime} flow, by {law}"
            if law != found.regime
            else "the friction factor that Hazen-Williams stands for"
        )
        return Found("f", found.f, how)

    @cached_property
    def stretch(self) -> pipework.Stretch:
        """The hose from the pump."""
        d = self.design
        return self._hose(d["pipe.bore"], d["pipe.length"], d["pipe.fittings"])

    def _hose(self, bore: float, length: float, fittings: float) -> pipework.Stretch:
        """A hose as the design's friction law takes it: Blasius is for a smooth one, a ribbed one has a friction factor of its own."""
        law = self.design["pipe.friction_law"]
        if law == "ribbed hose":
            return pipework.Stretch(bore, length, fittings, f=tables.RIBBED_HOSE.value)
        if law == "Hazen-Williams":
            return pipework.Stretch(bore, length, fittings, C_HW=self.design["pipe.hazen_williams"])
        return pipework.Stretch(bore, length, fittings, 0.0 if law == "Blasius" else self.design["pipe.roughness"])

    def _losses(self, flow: float) -> pipework.Losses:
        return pipework.losses(self.stretch, flow, self.water["nu"], self._law)

    @property
    def _law(self) -> str:
        law = self.design["pipe.friction_law"].lower()
        return "colebrook" if law in ("ribbed hose", "hazen-williams") else law

    @result
    def friction_head(self):
        return self._work("head lost to friction", f=self.friction, L_pipe=self.design["pipe.length"], d_pipe=self.design["pipe.bore"], v=self.speed_wanted)

    @result
    def fittings_head(self):
        return self._work("head lost in fittings", K=self.design["pipe.fittings"], v=self.speed_wanted)

    @result
    def static_lift(self):
        return self._work("static lift to a rim", z_rim=self.delivery, H=self.edge_head, z_low=self.level("lowest water"))

    @result
    def head_wanted(self):
        return self._work("total dynamic head from its parts", z_s=self.static_lift, h_f=self.friction_head, h_m=self.fittings_head)

    @result
    def loss_share(self):
        return self._work("share of the head lost on the way", z_s=self.static_lift, h_f=self.friction_head, h_m=self.fittings_head)

    @cached_property
    def pump(self) -> pumps.Pump:
        """The maker's curve where it was given, else the parabola through the two label numbers."""
        if "pump.curve" in self.design.values:
            return pumps.TabulatedPump(self.design["pump.curve"])
        return pumps.LabelPump(self.design["pump.shut_off_head"], self.design["pump.free_flow"])

    def head_needed(self, flow: float) -> float:
        """System curve: head in m for a flow in m3/s, at the lowest water."""
        return pipework.head_needed(flow, self.static_lift, (self.stretch,), self.water["nu"], self._law)

    @result
    def pump_head_at_flow_wanted(self):
        pump = self.pump
        tabulated = isinstance(pump, pumps.TabulatedPump)
        kind = "the maker's curve" if tabulated else "the parabola through the label's two numbers, an approximation"
        return Found("H_pump", pump.head(self.flow_wanted) if tabulated or self.flow_wanted < pump.Q_max else 0.0, f"from {kind}")

    @cached_property
    def duty(self) -> pumps.Duty:
        return pumps.duty_point(self.pump, self.head_needed)

    @result
    def duty_flow(self):
        if "measured.flow" in self.design.values:
            return Found("Q_duty", self.design["measured.flow"], f"measured with a bucket; {self._predicted('Q_duty', lambda: self.duty.Q)}")
        return Found("Q_duty", self.duty.Q, "where the pump's curve meets the head that the pipe asks for, valve open, water at its lowest")

    def _predicted(self, letter: str, number: Callable[[], float]) -> str:
        """What the model says of a measured value, where it can."""
        try:
            return f"the model says {QUANTITIES[letter].metric_text(number())}"
        except (Unknown, InputError):
            return "the model cannot say, for want of values"

    @result
    def duty_head(self):
        return Found("H_t", self.duty.H, "the head at the flow that the model finds")

    @result
    def flow_ratio(self):
        return self._work("duty flow over flow wanted", Q_duty=self.duty_flow, Q_req=self.flow_wanted)

    @result
    def duty_speed(self):
        return self._work("speed in a pipe", Q=self.duty_flow, d_pipe=self.design["pipe.bore"])

    @result
    def lift_share(self):
        return self._work("static lift over shut-off head", z_s=self.static_lift, H_0=self.pump.head(0.0))

    @result
    def nameplate(self):
        pump, power = self.pump, self.design["pump.power"]
        if isinstance(pump, pumps.TabulatedPump):
            return Found("r_plate", pumps.best_power_of(pump, self.water["rho"]) / power, "the best point of the maker's curve over the power taken in")
        return self._work("nameplate ratio", rho=self.water["rho"], Q_max=pump.Q_max, H_0=pump.H_0, P_in=power)

    @property
    def label(self) -> str:
        """What the pump's label says of itself, in a sentence."""
        if "pump.curve" in self.design.values:
            return ""
        text = str(self.design.values["pump.free_flow"].text) if "pump.free_flow" in self.design.values else ""
        return pumps.nameplate_check(text, self.design["pump.shut_off_head"], self.design["pump.power"], self.water["rho"]).sentence

    # --- reservoir and water balance

    @result
    def block_plan(self):
        d = self.design
        along, across = d["reservoir.blocks_along"] * d["reservoir.block_length"], d["reservoir.blocks_across"] * d["reservoir.block_width"]
        return Found("A_b", along * across, f"blocks of {QUANTITIES['L'].metric_text(along, None)} by {QUANTITIES['L'].metric_text(across, None)} together")

    @result
    def water_area(self):
        return self._work("water area", A_b=self.block_plan, n_v=self.design["reservoir.void_fraction"])

    @result
    def static_volume(self):
        return self._work("water up to a level", A_b=self.block_plan, n_v=self.design["reservoir.void_fraction"], h=self.design["reservoir.static_level"])

    @result
    def usable(self):
        d = self.design
        return self._work("usable water above the pump limit", A_b=self.block_plan, n_v=d["reservoir.void_fraction"], h_static=d["reservoir.static_level"],
                          h_min=d["reservoir.lowest_level"])  # fmt: skip

    @result
    def turnover(self):
        return self._work("turnover time", V_use=self.usable, Q=self.flow_wanted)

    # --- water in transit and balance

    @result
    def transit_pipe(self):
        if self.design["pipe.check_valve"] == "yes":
            return Found("V_pc", 0.0, "a check valve keeps the pipe full")
        return self._work("water in a pipe", d_pipe=self.design["pipe.bore"], L_pipe=self.design["pipe.length"])

    @result
    def transit_stone(self):
        d = self.design
        return self._work("water on its way through the stone", A_run=d["catch.wet_area"], t_st=d["catch.stone_thickness"], n_hold=d["catch.hold_up"])

    @result
    def transit_by_model(self):
        terms = dict.fromkeys(("V_rim", "V_siph", "V_film", "V_sheet"), 0.0) | self.in_transit()
        return self._work("water in transit", **terms, V_pc=self.transit_pipe, V_hold=self.transit_stone)

    @result
    def transit(self):
        """Water in transit: from the drop that was seen when the pump started, else by the model."""
        if "measured.start_drop" in self.design.values:
            said = self._predicted("V_tr", lambda: self.transit_by_model)
            return Found("V_tr", self.design["measured.start_drop"] * self.water_area, f"from the measured drop of the level; {said}")
        return self.working("transit_by_model")

    @result
    def start_drop(self):
        return self._work("drop of the level on start", V_tr=self.transit, A_b=self.block_plan, n_v=self.design["reservoir.void_fraction"])

    @result
    def wet_area(self):
        area, words = self.wet_parts()
        return Found("A_wet", area + self.design["catch.wet_area"], f"{words} and wet stone together")

    def _climate(self) -> dict[str, float]:
        d = self.design
        return {"K_E": d["climate.coefficient"], "E_0": d["climate.evaporation"], "A_wet": self.wet_area, "Q_splash": d["climate.splash"]}

    @result
    def daily_loss(self):
        return self._work("loss of water", **self._climate())

    @result
    def days(self):
        return self._work("days without top-up", V_use=self.usable, V_tr=self.transit, **self._climate())

    @result
    def drainback_room(self):
        d = self.design
        return self._work("usable water above the pump limit", A_b=self.block_plan, n_v=d["reservoir.void_fraction"], h_static=d["reservoir.overflow_level"],
                          h_min=d["reservoir.running_level"])  # fmt: skip

    @result
    def drainback(self):
        d = self.design
        return self._work("drain-back ratio", A_b=self.block_plan, n_v=d["reservoir.void_fraction"], h_over=d["reservoir.overflow_level"],
                          h_run=d["reservoir.running_level"], V_tr=self.transit)  # fmt: skip

    @property
    def settles(self) -> str:
        """Where the water settles when the pump starts from the static level, if that is not the running level that the design gives."""
        try:
            found, given = self.design["reservoir.static_level"] - self.start_drop, self.design["reservoir.running_level"]
        except (Unknown, InputError):
            return ""
        if abs(found - given) <= SAME_LEVEL:
            return ""
        say = QUANTITIES["h"].both
        why = (
            "a top-up valve holds it there, and adds water that must have room when the pump stops"
            if given > found
            else "less water is in it than the static level says"
        )
        return f"from the static level the start draws the water down to {say(found)}; the design has it running at {say(given)}: that holds only where {why}"

    @result
    def day_share(self):
        return self._work("share of the usable water lost in a day", Q_loss=self.daily_loss, V_use=self.usable)

    @result
    def overflow_flow(self):
        d = self.design
        return self._work(
            "flow that an overflow pipe can carry", C_d=d["assumptions.overflow_discharge"], d_out=d["overflow_pipe.bore"], H_o=d["overflow_pipe.head"]
        )

    @result
    def overflow_ratio(self):
        d = self.design
        return self._work("overflow ratio", Q_over=self.overflow_flow, k_run=d["assumptions.run_off"], A_catch=d["overflow_pipe.catch_area"], i_rain=d["overflow_pipe.rain"],
                          Q_feed=d["overflow_pipe.feed"])  # fmt: skip

    # --- loads

    @result
    def block_allowable(self):
        d = self.design
        return self._work("pressure that the blocks may carry", p_short=d["reservoir.short_term_strength"], k_creep=d["reservoir.creep_factor"],
                          f_s=d["reservoir.safety_factor"])  # fmt: skip

    @result
    def stone_on_blocks(self):
        if self.bare > self.block_plan:
            raise InputError("what stands on the blocks is larger than the blocks together: take more blocks, or a smaller slab")
        mass = (self.block_plan - self.bare) * self.design["catch.stone_thickness"] * self.design["catch.stone_density"]
        return Found("m_stone", mass, "stone over the blocks, beside what stands on them")

    @result
    def base_mass(self):
        d = self.design
        blocks = d["reservoir.blocks_along"] * d["reservoir.blocks_across"] * d["reservoir.block_mass"]
        total = self.standing_mass + self.stone_on_blocks + blocks + self.water["rho"] * self.static_volume
        return Found("m_t", total, "what stands on the blocks, stone over them, blocks, and the water in them")

    @result
    def eccentricity(self):
        share = self.standing_mass / self.base_mass
        return Found("e_off", share * self.standing_offset, "the offset of what stands there, by its share of all the mass on the base")

    @property
    def base_length(self) -> float:
        return self.design["reservoir.blocks_along"] * self.design["reservoir.block_length"]

    @property
    def base_width(self) -> float:
        return self.design["reservoir.blocks_across"] * self.design["reservoir.block_width"]

    @result
    def kern_share(self):
        return self._work("eccentricity over the edge of the kern", e_off=self.eccentricity, B_base=self.base_length)

    @result
    def base_pressure(self):
        formula = "greatest pressure under an offset load" if self.kern_share <= 1 else "greatest pressure under partial contact"
        return self._work(formula, F_w=GRAVITY * self.base_mass, B_base=self.base_length, L_base=self.base_width, e_off=self.eccentricity)

    @result
    def soil_utilisation(self):
        return self._work("utilisation of the soil", p_max=self.base_pressure, p_soil=self.design["site.soil_bearing"])

    @property
    def push(self) -> float:
        return tables.PUSHES["private" if self.design["site.use"] == "private" else "public"].value

    @result
    def flotation(self):
        """Blocks and stone against ground water under the emptied liner; no credit for the vessel, which may come later."""
        d = self.design
        dry = self.stone_on_blocks + d["reservoir.blocks_along"] * d["reservoir.blocks_across"] * d["reservoir.block_mass"]
        if d["site.ground_water"] == 0:
            return Found("f_float", math.inf, "no ground water above the floor")
        return self._work(
            "flotation factor of an emptied pit", m_t=dry, rho=self.water["rho"], A_pit=self.box_length * self.box_width, h_gw=d["site.ground_water"]
        )

    # --- box, pit, liner, stone

    def _box(self, blocks: float) -> Working:
        return self._work("inside length of the box", L_bl=blocks, t_li=self.design["ground.lining"], c_side=self.design["ground.clearance"])

    @result
    def box_length(self):
        return self._box(self.base_length)

    @result
    def box_width(self):
        return self._box(self.base_width)

    @result
    def box_depth(self):
        d = self.design
        return Found("D", d["reservoir.block_height"] + d["ground.box_upstand"], "height of the blocks and what the box stands above them")

    @result
    def panel_long(self):
        return self._work("outside length of the box", L_in=self.box_length, t_pan=self.design["ground.board"])

    @result
    def panel_across(self):
        return self._work("outside length of the box", L_in=self.box_width, t_pan=self.design["ground.board"])

    def _liner(self, inside: float) -> Working:
        d = self.design
        return self._work("length of the liner", L_in=inside, D=self.box_depth, w_apron=d["catch.apron"], w_trim=d["lining.margin"])

    @result
    def liner_length(self):
        return self._liner(self.box_length)

    @result
    def liner_width(self):
        return self._liner(self.box_width)

    @property
    def narrow_side(self) -> float:
        return min(self.liner_length, self.liner_width)

    @result
    def roll(self):
        """The narrowest roll that covers the narrower side, else the widest there is."""
        widths = sorted(self.design["lining.rolls"])
        width = next((w for w in widths if w >= self.narrow_side), widths[-1])
        return Found("l_cut", width, "the narrowest roll that covers the narrower side of the cut")

    @property
    def roll_spare(self) -> float:
        return self.roll - self.narrow_side

    def _pit(self, outside: float) -> Working:
        return self._work("length of the pit", L_out=outside, t_work=self.design["ground.working_space"])

    @result
    def pit_length(self):
        return self._pit(self.panel_long)

    @result
    def pit_width(self):
        return self._pit(self.panel_across)

    @result
    def pit_depth(self):
        return Found("D_dig", -self.level("formation"), "from the finished paving to the formation")

    @result
    def diagonal(self):
        return self._work("diagonal for squaring", L_dig=self.pit_length, W_dig=self.pit_width)

    @result
    def dug(self):
        return self._work("volume to dig", L_dig=self.pit_length, W_dig=self.pit_width, D_dig=self.pit_depth)

    @result
    def spoil(self):
        return self._work("loose volume of spoil", V_dig=self.dug, s_swell=self.design["ground.bulking"] - 1)

    @result
    def stone_area(self):
        return self._work("area of the stone", L_in=self.box_length, W_in=self.box_width, w_apron=self.design["catch.apron"], A_bare=self.bare)

    @result
    def stone_mass(self):
        d = self.design
        return self._work("mass of stone to order", A_cov=self.stone_area, t_st=d["catch.stone_thickness"], rho_bulk=d["catch.stone_density"],
                          s_waste=d["catch.stone_waste"])  # fmt: skip

    # --- supply

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
        return self._work("cost with contingency", C_dir=self.design["site.cost"], s_cont=CONTINGENCY)

    @property
    def cost_share(self) -> float:
        return self.cost_estimate / self.design["site.budget"]
