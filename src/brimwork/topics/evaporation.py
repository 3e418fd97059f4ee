"""Evaporation from the weather: air, sun and wind of a day to the reference of FAO-56, and to open water by Penman."""

from __future__ import annotations

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import height_of_the_sun
from brimwork.sources import FAO_56, MCMAHON, SUN_GEOMETRY
from brimwork.steps import Law, Solve, Step, Take

_UCCLE = "T_max=21.5 degC, T_min=12.3 degC, RH_hi=84 %, RH_lo=63 %, z_site=100 m, phi_lat=50.80 deg, J_day=187"
_UCCLE_AT = FAO_56.at("Example 18, Uccle, 6 July")
_ALICE = "T_max=21 degC, T_min=2 degC, RH_hi=71 %, RH_lo=25 %, z_site=546 m, phi_lat=-23.7951 deg, J_day=202"
_ALICE_AT = MCMAHON.at("Alice Springs, 20 July 1980")
_FROM_WEATHER = "FAO-56, which recommends it to all who work out evaporation from the weather"

# --- the air ------------------------------------------------------------------------------------------------------------------------

saturated_air = Formula(
    name="vapour pressure of saturated air",
    result="p_sat",
    equals="p_tet*exp(17.27*(T_a - T_ice)/(T_a - T_tet))",
    fitted="O. Tetens, to measured vapour pressures, in the constants of FAO-56, Eq. 11",
    published=(
        Published("T_a=24.5 degC", "3.075 kPa", 5e-4, FAO_56.at("Example 3")),
        Published("T_a=15 degC", "1.705 kPa", 5e-4, FAO_56.at("Example 3")),
    ),
)

saturated_day = Formula(
    name="mean vapour pressure of saturated air over a day",
    close="0.01 kPa",
    result="p_sm",
    equals="p_tet/2*(exp(17.27*(T_max - T_ice)/(T_max - T_tet)) + exp(17.27*(T_min - T_ice)/(T_min - T_tet)))",
    fitted=f"{_FROM_WEATHER}: the mean of the two extremes, Eq. 12",
    published=(
        Published("T_max=24.5 degC, T_min=15 degC", "2.39 kPa", 1e-3, FAO_56.at("Example 3")),
        Published(_ALICE, "1.5963 kPa", 1e-4, _ALICE_AT),
    ),
    slips=(
        Slip(
            "p_tet*exp(17.27*((T_max + T_min)/2 - T_ice)/((T_max + T_min)/2 - T_tet))",
            "You took the mean temperature first. The curve bends upwards, so the mean of the two pressures is more. Work out the pressure at each temperature, then take their mean.",
        ),
    ),
)

vapour_in_the_air = Formula(
    name="vapour pressure of the air",
    result="p_vap",
    equals="p_tet/2*(RH_lo*exp(17.27*(T_max - T_ice)/(T_max - T_tet)) + RH_hi*exp(17.27*(T_min - T_ice)/(T_min - T_tet)))",
    fitted=f"{_FROM_WEATHER}: Eq. 17",
    published=(
        Published("T_max=25 degC, T_min=18 degC, RH_hi=82 %, RH_lo=54 %", "1.70 kPa", 3e-3, FAO_56.at("Example 5")),
        Published(_UCCLE, "1.409 kPa", 5e-4, _UCCLE_AT),
    ),
    slips=(
        Slip(
            "p_tet/2*(RH_hi*exp(17.27*(T_max - T_ice)/(T_max - T_tet)) + RH_lo*exp(17.27*(T_min - T_ice)/(T_min - T_tet)))",
            "The air is driest when it is warmest: the low humidity goes with the high temperature. Swap the two humidities.",
        ),
    ),
)

slope_of_saturation = Formula(
    name="slope of the saturated vapour pressure",
    result="s_vp",
    equals="17.27*(T_ice - T_tet)*p_tet*exp(17.27*(T_a - T_ice)/(T_a - T_tet))/(T_a - T_tet)**2",
    fitted="the slope of Tetens' formula, FAO-56, Eq. 13; the tests compare it with that formula's own differences",
    published=(
        Published("T_a=16.9 degC", "0.1221127 kPa/K", 1e-4, _UCCLE_AT),
        Published("T_a=11.5 degC", "0.0898 kPa/K", 1e-3, _ALICE_AT),
    ),
)

pressure_of_the_air = Formula(
    name="pressure of the air at a height",
    result="p_air",
    equals="p_sea*((T_sea - c_lapse*z_site)/T_sea)**5.26",
    fitted=f"{_FROM_WEATHER}: Eq. 7",
    published=(Published("z_site=1800 m", "81.8 kPa", 1e-3, FAO_56.at("Example 2")), Published(_ALICE, "95.01027 kPa", 1e-6, _ALICE_AT)),
)

psychrometric_constant = Formula(
    name="psychrometric constant",
    result="gamma_p",
    equals="k_psy*p_air",
    fitted=f"{_FROM_WEATHER}: Eq. 8",
    published=(
        Published("p_air=81.8 kPa", "0.054 kPa/K", 0.01, FAO_56.at("Example 2"), note="printed in two figures"),
        Published(_UCCLE, "0.06655628 kPa/K", 1e-3, _UCCLE_AT, after=(pressure_of_the_air,)),
    ),
)

wind_at_two_metres = Formula(
    name="wind speed at two metres",
    result="v_w2",
    equals="4.87*v_wz/log(k_log*z_wind - 5.42)",
    fitted=f"{_FROM_WEATHER}: wind over short grass, Eq. 47",
    by_hand=(ByHand("v_wz=3 m/s, z_wind=1 m", "4.87*3/log(67.8*1 - 5.42)", "3.53475 m/s"),),
    published=(Published("v_wz=2.78 m/s, z_wind=10 m", "2.078 m/s", 1e-3, _UCCLE_AT),),
    slips=(Slip("v_wz", "Wind blows harder higher up. Bring it down to two metres first."),),
    ranges={"z_wind": ("4 m", "10 m")},
)

# --- the sun ------------------------------------------------------------------------------------------------------------------------

nearness_of_the_sun = Formula(
    name="nearness of the sun",
    result="d_rel",
    equals="1 + 0.033*cos(2*pi*J_day/365)",
    close="0.002",
    fitted=f"{_FROM_WEATHER}: Eq. 23",
    by_hand=(ByHand("J_day=300", "1 + 0.033*cos(2*3.14159265*300/365)", "1.01441"),),
    unpublished="the sunlight above the air that uses it is checked",
)

declination = Formula(
    name="declination of the sun",
    result="delta_sun",
    equals="0.409*sin(2*pi*J_day/365 - 1.39)",
    fitted=f"{_FROM_WEATHER}: Eq. 24",
    by_hand=(ByHand("J_day=100", "0.409*sin(2*3.14159265*100/365 - 1.39)", "0.133083 rad"),),
    unpublished="the sunlight above the air that uses it is checked",
)

hour_of_sunset = Formula(
    name="hour angle at sunset",
    result="omega_s",
    equals="acos(-tan(phi_lat)*tan(delta_sun))",
    close="0.5 deg",
    steps=(
        Law(
            "the sun sets where its height in the sky is nothing",
            "cos(phi_lat)*cos(delta_sun)*cos(omega_s) = -sin(phi_lat)*sin(delta_sun)",
            SUN_GEOMETRY.at("height of the sun"),
        ),
        Solve("solve for the angle"),
    ),
    unpublished="the longest sunshine that follows from it is checked",
    remark="Beyond the polar circles there are days without a sunset, and the formula has no value.",
)

longest_sunshine = Formula(
    name="longest possible sunshine",
    result="t_sun",
    equals="t_24*omega_s/pi",
    steps=(Take("the sun goes once round in a day, half the angle from noon to sunset", "omega_s = pi*t_sun/t_24"), Solve("solve for the time", of="omega_s")),
    published=(Published("J_day=246, phi_lat=-20 deg", "11.7 h", 5e-3, FAO_56.at("Example 9"), after=(declination, hour_of_sunset)),),
)

sunlight_above_the_air = Formula(
    name="sunlight above the air",
    result="R_ext",
    equals="S_0*d_rel/pi*(omega_s*sin(phi_lat)*sin(delta_sun) + cos(phi_lat)*cos(delta_sun)*sin(omega_s))",
    steps=(
        height_of_the_sun,
        Take("from sunrise to sunset, shared out over the whole day", "R_ext = Integral(S_omega, (omega, -omega_s, omega_s))/(2*pi)"),
        Step("integrate"),
    ),
    published=(
        Published("J_day=246, phi_lat=-20 deg", "32.2e6 J/m2/day", 2e-3, FAO_56.at("Example 8"), after=(nearness_of_the_sun, declination, hour_of_sunset)),
        Published(_ALICE, "23.6182e6 J/m2/day", 1e-4, _ALICE_AT, after=(nearness_of_the_sun, declination, hour_of_sunset)),
    ),
    ranges={"phi_lat": ("5 deg", "55 deg"), "delta_sun": ("-15 deg", "23 deg")},
)

sunlight_through_the_sky = Formula(
    name="sunlight through the sky",
    result="R_sol",
    equals="(a_sky + b_sky*t_bright/t_sun)*R_ext",
    fitted="A. Angstrom, to measured sunlight and hours of sunshine; FAO-56, Eq. 35",
    published=(
        Published(
            f"{_ALICE}, t_bright=10.7 h, a_sky=0.23, b_sky=0.50",
            "17.1940e6 J/m2/day",
            1e-3,
            _ALICE_AT,
            after=(nearness_of_the_sun, declination, hour_of_sunset, longest_sunshine, sunlight_above_the_air),
        ),
    ),
    where=("t_bright < t_sun",),
    slips=(Slip("(a_sky + b_sky)*R_ext", "That is a clear day. Weigh the second share with the hours of sunshine."),),
    remark="Without local constants take 0.25 and 0.50.",
)

clear_sky = Formula(
    name="sunlight under a clear sky",
    result="R_clear",
    equals="(0.75 + k_clear*z_site)*R_ext",
    fitted=f"{_FROM_WEATHER}: Eq. 37",
    published=(Published("z_site=546 m, R_ext=23.6182e6 J/m2/day", "17.9716e6 J/m2/day", 1e-4, _ALICE_AT),),
)

heat_to_the_sky = Formula(
    name="heat lost to the sky",
    result="R_long",
    equals="sigma_SB*(T_max**4 + T_min**4)/2*(0.34 - k_vap*sqrt(p_vap))*(1.35*R_sol/R_clear - 0.35)",
    fitted=f"{_FROM_WEATHER}: Eq. 39",
    published=(Published(f"{_ALICE}, R_sol=17.1940e6 J/m2/day, R_clear=17.9716e6 J/m2/day", "7.1784e6 J/m2/day", 1e-3, _ALICE_AT, after=(vapour_in_the_air,)),),
    where=("R_sol < R_clear", "0.3*R_clear < R_sol"),
    ranges={"R_sol": ("100 W/m2", "250 W/m2")},
)

net_sunlight = Formula(
    name="sunlight kept less heat lost",
    result="R_net",
    equals="(1 - alpha_s)*R_sol - R_long",
    steps=(
        Take("what is not thrown back is kept", "R_kept = (1 - alpha_s)*R_sol"),
        Take("less what goes to the sky", "R_net = R_kept - R_long"),
        Step("put it in"),
    ),
    published=(
        Published("alpha_s=0.08, R_sol=17.1940e6 J/m2/day, R_long=7.1784e6 J/m2/day", "8.64010e6 J/m2/day", 1e-4, _ALICE_AT),
        Published(
            f"{_UCCLE}, R_sol=22.07e6 J/m2/day, alpha_s=0.23",
            "13.28266e6 J/m2/day",
            1e-3,
            _UCCLE_AT,
            after=(nearness_of_the_sun, declination, hour_of_sunset, sunlight_above_the_air, clear_sky, vapour_in_the_air, heat_to_the_sky),
        ),
    ),
    slips=(
        Slip("alpha_s*R_sol - R_long", "That is the share thrown back. What is left is kept. Multiply by one less the share thrown back."),
        Slip("R_sol - R_long", "You left out what is thrown back."),
    ),
    ranges={"R_sol": ("120 W/m2", "250 W/m2")},
)

# --- evaporation --------------------------------------------------------------------------------------------------------------------

reference_evapotranspiration = Formula(
    name="reference evapotranspiration",
    result="E_0",
    equals="(s_vp*R_net/H_v + gamma_p*k_ref/T_a*v_w2*(p_sm - p_vap))/(s_vp + gamma_p*(1 + k_leaf*v_w2))",
    fitted="H. L. Penman and J. L. Monteith, in the form of FAO-56, Eq. 6, for grass 0.12 m high; no heat kept by the ground over a day",
    published=(
        Published(
            f"{_UCCLE}, T_a=16.9 degC, v_w2=2.078 m/s, R_net=13.28e6 J/m2/day",
            "3.880142 mm/day",
            1e-3,
            _UCCLE_AT,
            after=(slope_of_saturation, pressure_of_the_air, psychrometric_constant, saturated_day, vapour_in_the_air),
            note="printed as 3.9",
        ),
    ),
    where=("p_vap < p_sm",),
    ranges={"R_net": ("30 W/m2", "200 W/m2")},
    slips=(
        Slip("s_vp*R_net/H_v/(s_vp + gamma_p*(1 + k_leaf*v_w2))", "You left out the wind and the dryness of the air."),
        Slip(
            "R_net/H_v", "Not all of the sunlight kept goes into drying: some of it warms the air. Multiply by the part that the slope of the curve gives it."
        ),
    ),
    remark="For grass, not for water: multiply by the coefficient of the wet surface, or use open water by Penman.",
)

open_water_by_penman = Formula(
    name="evaporation of open water by Penman",
    result="E_w",
    equals="s_vp/(s_vp + gamma_p)*R_net/H_v + gamma_p/(s_vp + gamma_p)*(a_dry + b_dry*v_w2)*(p_sm - p_vap)",
    fitted="H. L. Penman (1948, 1956): the heat balance of open water with a drying power fitted to measurements",
    published=(
        Published(
            f"{_ALICE}, T_a=11.5 degC, v_w2=0.5903 m/s, R_net=8.64010e6 J/m2/day",
            "2.9797 mm/day",
            1e-3,
            _ALICE_AT,
            after=(slope_of_saturation, pressure_of_the_air, psychrometric_constant, saturated_day, vapour_in_the_air),
        ),
    ),
    where=("p_vap < p_sm",),
    ranges={"R_net": ("30 W/m2", "200 W/m2")},
    slips=(
        Slip("s_vp/(s_vp + gamma_p)*R_net/H_v", "You left out the wind and the dryness of the air."),
        Slip(
            "R_net/H_v + (a_dry + b_dry*v_w2)*(p_sm - p_vap)", "Each part has its weight: sun and dry air share the work. Multiply each part by its own weight."
        ),
    ),
    remark="For open, shallow water at the temperature of the air. A wind function of another author gives a fifth more. Splash and wet stone come on top.",
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------
