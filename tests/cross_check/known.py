"""Results that are known to differ and are not mended yet, by kind and name, each with its plain reason."""

ONE_RESULTANT = "stones of unequal mass have one resultant, which does not stand in the middle; the product takes the middle"
LAST_POINT = "the last of the points along a maker's curve is rounded a hair beyond its end, and the curve is refused"
BELOW_NOTHING = "where a condition does not hold a number below nothing is given in place of a refusal"
NO_HOSE = "a hose of no length, or no bore, is refused as a division by nothing"
KNOWN: dict[tuple[str, str], str] = {
    **{("drilled stones", name): ONE_RESULTANT for name in ("eccentricity", "kern_share", "base_pressure", "soil_utilisation")},
    **{(kind, "nameplate"): LAST_POINT for kind in ("overflowing vessel", "drilled stones", "blade", "cascade")},
    **{
        (kind, name): BELOW_NOTHING
        for kind in ("overflowing vessel", "drilled stones", "blade", "cascade")
        for name in ("usable", "static_lift", "fall", "pit_depth", "stone_area")
    },
    **{(kind, "friction"): NO_HOSE for kind in ("overflowing vessel", "drilled stones", "blade", "cascade")},
}
