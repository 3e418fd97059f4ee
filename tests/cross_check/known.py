"""Results that are known to differ and are not mended yet, by kind and name, each with its plain reason."""

KNOWN: dict[tuple[str, str], str] = {}
