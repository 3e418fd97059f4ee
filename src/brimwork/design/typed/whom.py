"""Whom to ask for a value that is missing: what somebody at home cannot know, and who does."""

from __future__ import annotations

YOU, BY_ELECTRICIAN, MAKER, ENGINEER = "you", "a qualified electrician", "the supplier or the maker", "an engineer"

# Keys, or whole sections, that others than the builder answer.
_OF: dict[str, tuple[str, ...]] = {
    BY_ELECTRICIAN: (
        *(f"supply.{name}" for name in ("voltage", "frequency", "cable_length", "conductor", "cable_rating", "voltage_drop", "resistance", "duct_bore", "duct_cover",
          "circuit_load", "breaker", "leakage", "residual_rating", "residual_current")),
        *(f"answers.{name}" for name in ("cable_cover", "socket", "duct")),
    ),
    MAKER: (
        "pump", "reservoir.short_term_strength", "reservoir.creep_factor", "reservoir.block_mass", "vessel.tensile_strength", "vessel.wall_thickness", "supply.power_factor",
        "site.sling_rating", "answers.pump_marking", "lining.rolls",
    ),
    ENGINEER: ("site.wind_speed", "site.force_coefficient", "site.soil_bearing", "site.engineered", "reservoir.cut_walls", "blade.wall_retains"),
}  # fmt: skip


def whom(key: str) -> str:
    """Who is to be asked for the value under "section.key"."""
    section = key.partition(".")[0]
    return next((who for who, keys in _OF.items() if key in keys or section in keys), YOU)


def whom_of(keys: tuple[str, ...]) -> str:
    """Who is to be asked first for several: somebody else than the builder, where one of them is for somebody else."""
    return next((who for key in keys if (who := whom(key)) != YOU), YOU)
