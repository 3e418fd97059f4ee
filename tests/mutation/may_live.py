"""Mutants that may live, each with the reason: (formula, what was changed) as the command prints them. Fewer than ten."""

MAY_LIVE: dict[tuple[str, str], str] = {}

# "module: what was changed", without the line
MODULES_MAY_LIVE: dict[str, str] = {
    **dict.fromkeys(
        (
            "exercise.causes: 0.96 -> 0.9696",
            "exercise.causes: 1.04 -> 1.0504",
            "exercise.causes: value * draw.uniform(0.96, 1.04) -> value / draw.uniform(0.96, 1.04)",
        ),
        "values a little aside tell two formulas apart, by however little they are moved",
    ),
    **dict.fromkeys(
        (f"design.follows.missing: {one}" for one in ("0.0 -> 0.01", "1000.0 -> 1010.0", "1.0 -> 1.01", "0.01 -> 0.0101", "100.0 -> 101.0")),
        "what stands in for a number that nobody gave, or for a pump's curve: any of about that size will do",
    ),
    "exercise.diagnosis: _reach(answer) <= _SURE * abs(answer.value) -> _reach(answer) < _SURE * abs(answer.value)": "no number typed lies on it to the last bit",
    "exercise.diagnosis: ratio > 1 -> ratio >= 1": "at a ratio of one the answer is right, and nothing is said of its size",
    "exercise.diagnosis: question.answer < 0 -> question.answer <= 0": "an answer of nought has been told before, by its sign",
    "exercise.ways: size > 1 -> size >= 1": "of a one that is left out nothing is said",
    "exercise.causes: unit in ('deg', 'rad') -> unit not in ('deg', 'rad')": "asked is only whether one of two is an angle and the other is none",
}
