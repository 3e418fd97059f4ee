"""Results that are known to differ and are not mended yet, by kind and name, each with its plain reason."""

OVERFULL = "a vessel with more foam and pebbles than it holds is refused for its empty weight too, which does not hang on them"
NO_BOUND = "the drop by a cable table knows no bound, while that by resistance is refused from half of the voltage on"
KNOWN: dict[tuple[str, str], str] = {
    **{("overflowing vessel", name): OVERFULL for name in ("tipping_empty", "tipping_in_wind")},
    **{(kind, "voltage_drop"): NO_BOUND for kind in ("overflowing vessel", "drilled stones", "blade", "cascade")},
}
