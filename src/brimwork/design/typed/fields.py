"""What a design file may say: every section and key, with its unit, its meaning and how it is read; which of them a kind of feature has."""

from __future__ import annotations

from functools import cache

from brimwork.design.typed.buying_fields import BUYING_FIELDS
from brimwork.design.typed.criteria import LIMITED, kinds_of
from brimwork.design.typed.feature_fields import FEATURE_FIELDS
from brimwork.design.typed.ground_fields import GROUND_FIELDS
from brimwork.design.typed.kinds import KINDS
from brimwork.design.typed.limits import Bounds
from brimwork.design.typed.questions import QUESTIONS
from brimwork.design.typed.reading import Corners, Curve, Date, Dates, Field, OneOf, Several
from brimwork.design.typed.steps import STEPS
from brimwork.design.typed.water_fields import WATER_FIELDS

BASES = ("yours", "read", "memory", "common practice", "judgement", "measured")
REGIONS = ("UK", "US")
HEAD = ("format", "kind", "title", "region", "note")

Value = Field | OneOf | Date | Dates | Several | Corners | Curve | Bounds  # what can stand under a key

_FIELDS: dict[str, dict[str, Value]] = {
    **FEATURE_FIELDS,
    **WATER_FIELDS,
    **GROUND_FIELDS,
    **BUYING_FIELDS,
    "limits": {check: Bounds(row) for check, row in LIMITED.items()},
    "answers": {question.key: OneOf((question.asks or question.title).lower(), question.options) for question in QUESTIONS},
}
SECTIONS = {name: _FIELDS[name] for name in dict.fromkeys(name for names in KINDS.values() for name in names)}  # in the order in which they are shown

_VESSEL, _STONES, _SHEETS = ("overflowing vessel",), ("drilled stones",), ("blade", "cascade")
# Values of the sections that all kinds share, which play a part in some of them only.
_ONLY: dict[str, tuple[str, ...]] = {
    "flow.weir_coefficient": (*_VESSEL, *_SHEETS),
    "buying.sealant_reach": _SHEETS,
    "buying.liner_lap": ("cascade",),
    "prices.stones": _STONES,
    **dict.fromkeys(("pipe.mouth_below_rim", "measured.rim_levels", "buying.foam_board", "buying.foam_waste"), _VESSEL),
    **dict.fromkeys(("assumptions.pebble_gaps", "assumptions.pebble_density"), _VESSEL),
    "assumptions.wall_density": _SHEETS,
    **dict.fromkeys(("reservoir.creep_factor",), (*_VESSEL, *_STONES)),
}


@cache
def sections(kind: str) -> dict[str, dict[str, Value]]:
    """The sections of a design of that kind, in the order in which they are shown; to be read, not changed."""
    return {name: {key: field for key, field in SECTIONS[name].items() if _plays(f"{name}.{key}", kind)} for name in KINDS[kind]}


@cache
def _plays(key: str, kind: str) -> bool:
    """Whether a value plays any part in a design of that kind."""
    section, _, name = key.partition(".")
    asked = {question.key: question.kinds for question in QUESTIONS}
    kinds = {
        "answers": lambda: asked[name],
        "limits": lambda: kinds_of(name),
        "programme": lambda: STEPS[name].kinds if name in STEPS else (),
    }.get(section, lambda: _ONLY.get(key, ()))()
    return not kinds or kind in kinds
