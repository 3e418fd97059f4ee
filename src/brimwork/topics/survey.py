"""Survey: levels by a level and staff, a sight line over a sill, and sound at a distance.

No formula is known that gives the decibels of a feature from its flow and fall: what the water lands on matters as much. So sound is measured,
or compared, and these formulas only carry a measured level to another place or add two.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from brimwork.by_hand import ByHand
from brimwork.formula import Formula, Published, Slip
from brimwork.laws import spreading_sound
from brimwork.sources import DECIBELS
from brimwork.steps import Step, Take
from brimwork.units import InputError

_READINGS = "own geometry: readings down from one level line"

# --- levels -------------------------------------------------------------------------------------------------------------------------

height_of_instrument = Formula(
    name="height of collimation",
    result="z_line",
    equals="z_bench + s_first",
    defined="the bench mark, and the reading of a staff that stands on it",
    by_hand=(ByHand("z_bench=10.25 m, s_first=1.365 m", "10.25 + 1.365", "11.615 m"),),
    unpublished=_READINGS,
    slips=(
        Slip("z_bench - s_first", "You took the reading off. The level line lies above the staff's foot: add it."),
        Slip("s_first", "You left out the level of the bench mark."),
    ),
    ranges={"s_first": ("0.6 m", "2 m")},
)

level_of_a_point = Formula(
    name="level of a point",
    result="z_point",
    equals="z_bench + s_first - s_next",
    steps=(
        height_of_instrument,
        Take("a staff on the point reads how far it lies below the level line", "z_point = z_line - s_next"),
        Step("put the line in"),
    ),
    unpublished=_READINGS,
    slips=(
        Slip("z_bench + s_first + s_next", "You added the second reading. A larger reading means a lower point: take it off."),
        Slip("z_bench - s_first + s_next", "The readings have changed places. The first goes up to the level line, the second comes down from it."),
        Slip("z_bench + s_first", "That is the level line. Take the reading on the point off."),
    ),
    ranges={"s_next": ("0.6 m", "2.5 m"), "s_first": ("0.6 m", "2 m")},
)

still_to_dig = Formula(
    name="depth still to dig",
    result="h_cut",
    equals="z_bench + s_first - s_next - z_form",
    steps=(
        level_of_a_point,
        Take("it has to come down to the formation", "h_cut = z_point - z_form"),
        Step("put the level in"),
    ),
    unpublished=_READINGS,
    slips=(
        Slip("z_bench + s_first + s_next - z_form", "You added the second reading. A larger reading means a lower point: take it off."),
        Slip(
            "z_form - (z_bench + s_first - s_next)",
            "The sign is turned round: what still lies above the formation is to be dug. Take the formation from what the staff reads.",
        ),
    ),
    ranges={"z_bench": ("9.5 m", "10.5 m"), "z_form": ("9 m", "9.4 m"), "s_first": ("1.1 m", "1.3 m"), "s_next": ("1.5 m", "1.8 m")},
    remark="Negative: dug too deep. Make it up with compacted sub-base, never with loose soil.",
)

# --- sight line ---------------------------------------------------------------------------------------------------------------------

height_in_sight = Formula(
    name="height that a sill hides",
    result="z_hid",
    equals="z_eye - (z_eye - z_sill)*(x_sill + x_beyond)/x_sill",
    steps=(
        Take("the line of sight falls from the eye to the sill: share the fall out over each metre of the way", "m_sight = (z_eye - z_sill)/x_sill"),
        Take("it goes on falling as steeply, all the way to the feature", "z_hid = z_eye - m_sight*(x_sill + x_beyond)"),
        Step("put the fall in"),
    ),
    unpublished="it follows from the shape alone: one straight line",
    slips=(
        Slip("z_eye - (z_eye - z_sill)*x_beyond/x_sill", "You measured the distance from the sill. The line starts at the eye."),
        Slip("z_sill", "The line goes on falling behind the sill, so more is seen than what stands above it."),
        Slip("z_eye - (z_eye - z_sill)*x_sill/(x_sill + x_beyond)", "Upside down: the farther behind the sill, the lower the line."),
    ),
    where=("z_sill < z_eye",),
    remark="What stands lower than this is hidden; below zero means that the ground is seen. Try seated and standing eyes.",
)

# --- sound --------------------------------------------------------------------------------------------------------------------------

_SOUND = "For a small source in the open. A hard corner adds 3 to 6 decibels, common practice."

sound_at_a_distance = Formula(
    name="sound level at a distance",
    result="L_far",
    equals="L_near - 20*log10(r_far/r_near)",
    steps=(
        spreading_sound,
        Take("a level is ten times the logarithm of a ratio of intensities", "L_far = L_near - 10*log10(J_near/J_far)"),
        Step("put the ratio in"),
    ),
    published=(Published("L_near=60, r_near=1 m, r_far=2 m", "54", 1e-3, DECIBELS.at("each doubling takes off 6 dB")),),
    slips=(
        Slip("L_near - 10*log10(r_far/r_near)", "Sound spreads over an area, which goes with the square of the distance: 20, not 10. Use 20."),
        Slip(
            "L_near*r_near/r_far",
            "Decibels are logarithms. They do not halve with the distance, they lose 6 with each doubling. Take off 20 times the logarithm of the ratio.",
        ),
        Slip("L_near + 20*log10(r_far/r_near)", "You added. Farther away it is quieter."),
        Slip("L_near - 20*log(r_far/r_near)", "You used the natural logarithm. Decibels take the one to base ten. Use the logarithm to base ten."),
    ),
    remark=_SOUND,
)

sound_of_two = Formula(
    name="sound level of two sources",
    result="L_sum",
    equals="10*log10(10**(L_one/10) + 10**(L_two/10))",
    steps=(
        Take("each level stands for an intensity; the first is, in units of the threshold", "j_one = 10**(L_one/10)"),
        Take("the second level is found in the same way", "j_two = 10**(L_two/10)"),
        Take("intensities add, levels do not", "L_sum = 10*log10(j_one + j_two)"),
        Step("put both in"),
    ),
    published=(
        Published("L_one=62, L_two=73", "73.3", 1e-3, DECIBELS.at("62 and 73 dB")),
        Published("L_one=60, L_two=60", "63", 1e-3, DECIBELS.at("two equal sources: 3 dB more")),
    ),
    slips=(
        Slip("L_one + L_two", "Decibels are logarithms and do not add. Add the intensities they stand for."),
        Slip("(L_one + L_two)/2", "Two sources are louder than either alone, never a mean. Add their intensities."),
        Slip(
            "20*log10(10**(L_one/20) + 10**(L_two/20))",
            "You added pressures. Two different sources add as intensities: 10, not 20. Add them with ten in both places.",
        ),
    ),
    remark=_SOUND,
)

change_of_sound = Formula(
    name="change of sound level",
    result="L_diff",
    equals="10*log10(r_J)",
    steps=(
        Take("each level is ten times the logarithm of its intensity over the threshold: take the first", "L_one = 10*log10(j_one)"),
        Take("the second level is found in the same way", "L_two = 10*log10(j_two)"),
        Take("compare the second intensity with the first", "r_J = j_two/j_one"),
        Take("the level changes by the difference of both", "L_diff = L_two - L_one"),
        Step("the difference of two logarithms is the logarithm of the ratio: the threshold cancels"),
    ),
    published=(
        Published("r_J=2", "3", 5e-3, DECIBELS.at("two equal sources: 3 dB more")),
        Published("r_J=0.25", "-6", 5e-3, DECIBELS.at("each doubling of the distance takes off 6 dB: a quarter of the intensity")),
    ),
    slips=(
        Slip("20*log10(r_J)", "Twenty goes with pressures and with distances. Intensities and powers take ten. Multiply by ten."),
        Slip("10*log(r_J)", "You used the natural logarithm. Decibels take the one to base ten. Use the logarithm to base ten."),
        Slip("r_J", "That is the ratio itself. Decibels are ten times its logarithm. Take ten times its logarithm."),
    ),
    rises=("r_J",),
    remark="Only a change: how loud the water is to begin with must be measured. Flow times fall, after over before, may stand for the ratio only if the same "
    "share of the power becomes sound: an assumption, and what the water lands on can upset it.",
)

# --- procedures ---------------------------------------------------------------------------------------------------------------------

MISCLOSURE = 0.005  # m, closing back on the bench mark; judgement


@dataclass(frozen=True)
class Booking:
    """A level sheet worked out by rise and fall: level of each point (m), sums of rises and falls, and what closing back missed by."""

    levels: tuple[float, ...]
    rises: float
    falls: float
    misclosure: float | None
    closes: bool | None


def rise_and_fall(bench: float, readings: Sequence[float], back_to_bench: bool) -> Booking:
    """Levels from staff readings (m) with one set-up of the level, the first on the bench mark; the last too with back_to_bench.

    The two independent sums agree, or the sheet is wrong: last less first is rises less falls. Raises InputError for fewer than two readings.
    """
    if len(readings) < 2 or not all(0 <= reading < 10 for reading in readings):
        raise InputError("a level sheet needs two readings or more, each between 0 and 10 m: the first on the bench mark, such as 1.245")
    steps = [before - after for before, after in zip(readings, readings[1:])]
    levels = [bench]
    for step in steps:
        levels.append(levels[-1] + step)
    rises, falls = math.fsum(step for step in steps if step > 0), math.fsum(-step for step in steps if step < 0)
    missed = levels[-1] - bench if back_to_bench else None
    return Booking(tuple(levels), rises, falls, missed, None if missed is None else abs(missed) <= MISCLOSURE + 1e-9)
