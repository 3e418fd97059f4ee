"""Tables of cables: drop, resistance and the current that they carry, each with its source."""

from __future__ import annotations

from brimwork.sources import CABLE_LESSON, FLEXIBLE_CABLES, NEC_TABLE_8
from brimwork.tables import Entry, named

_LESSON, _FLEX, _NEC = str(CABLE_LESSON.at("two-core")), str(FLEXIBLE_CABLES.at("two-core")), str(NEC_TABLE_8.at("solid copper"))
_MILLI, _KFT = 1e-3, 304.8
# Drop for each ampere and metre of two-core cable, V/(A m), both conductors counted, by cross-section.
CABLE_DROPS: dict[str, Entry] = {
    "1.5 mm2": Entry(29 * _MILLI, _LESSON),
    "2.5 mm2": Entry(18 * _MILLI, _LESSON),
    "4 mm2": Entry(13.2 * _MILLI, _FLEX),
    "6 mm2": Entry(8.5 * _MILLI, _FLEX),
    "10 mm2": Entry(5.1 * _MILLI, _FLEX),
    "16 mm2": Entry(3.2 * _MILLI, _FLEX),
}
# Resistance of one conductor, ohm/m, by American gauge.
CONDUCTORS: dict[str, Entry] = {
    "14 AWG": Entry(3.07 / _KFT, _NEC),
    "12 AWG": Entry(1.93 / _KFT, _NEC),
    "10 AWG": Entry(1.21 / _KFT, _NEC),
    "8 AWG": Entry(0.764 / _KFT, _NEC),
    "14 AWG, stranded": Entry(3.14 / _KFT, "from memory"),
    "12 AWG, stranded": Entry(1.98 / _KFT, "from memory"),
    "10 AWG, stranded": Entry(1.24 / _KFT, "from memory"),
    "8 AWG, stranded": Entry(0.778 / _KFT, "from memory"),
}
# Current (A) that a cable carries, by cross-section or gauge: the most that its breaker may be rated. How it is laid, its length and its neighbours take more off.
_UK, _US = "BS 7671 Table 4D4A, two-core in a duct in the ground; from memory", "NEC 240.4(D) and Table 310.16 at 60 degC; from memory"
CARRIED: dict[str, Entry] = {
    **{size: Entry(amperes, _UK) for size, amperes in (("1.5 mm2", 22), ("2.5 mm2", 29), ("4 mm2", 37), ("6 mm2", 46), ("10 mm2", 60))},
    **{gauge: Entry(amperes, _US) for gauge, amperes in (("14 AWG", 15), ("12 AWG", 20), ("10 AWG", 30), ("8 AWG", 40))},
}


def carried(size: str) -> Entry:
    """Current (A) that a cable of that cross-section or gauge carries, and basis. Raises InputError with the nearest names."""
    return named(size, CARRIED, "cable")


def cable_drop(size: str) -> Entry:
    """Drop for each ampere and metre (V/(A m)) of a two-core cable, and basis. Raises InputError with the nearest names."""
    return named(size, CABLE_DROPS, "cable")


def conductor(gauge: str) -> Entry:
    """Resistance of one conductor (ohm/m, warm) and basis. Raises InputError with the nearest names."""
    return named(gauge, CONDUCTORS, "conductor")
