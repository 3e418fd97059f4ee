"""What can hurt somebody, said at the step of the form where it is decided, and on page one of the pack: in the words of the UK, with what each rests on.

Nothing here is a rule of any place: local codes and licensed practice come first.
"""

from __future__ import annotations

from typing import NamedTuple

_CP, _MEMORY = "common practice, no source", "from memory; local codes govern"


class Caution(NamedTuple):
    """`steps` are the steps of the form at which it stands."""

    words: str
    steps: tuple[str, ...]
    basis: str


_BED, _FEATURE, _RESERVOIR, _PUMPING, _LINING, _POWER, _LIFTS, _ANSWERS, _MEASURING = (
    "Site and people", "The feature", "Reservoir", "Pump and hose", "Lining and stone", "Electricity", "Handling", "Questions to answer", "Measured on site",
)  # fmt: skip
CAUTIONS_AT: tuple[Caution, ...] = (
    Caution(
        "Open water of any depth is a danger to small children, in a pit or a vessel that is being tested too: cover and fence it, and stay with them.",
        (_BED, _FEATURE),
        "guidance on open water (second-hand)",
    ),
    Caution("Have services under the ground located before anyone digs, and dig by hand near any mark.", (_BED, _RESERVOIR), "HSG47, 3rd ed. (second-hand)"),
    Caution(
        "Nobody enters a pit whose sides nobody competent has looked at; keep spoil and feet 0.6 m back from its edge, and look again after rain.",
        (_RESERVOIR,),
        "OSHA 29 CFR 1926 subpart P, summaries (second-hand)",
    ),
    Caution(
        "Mains electricity near water is work for a qualified electrician: residual-current protection, and bonding of metal parts where the rules ask for it, "
        "tested and certified before anyone touches the water. A device that trips is a warning: unplug, touch nothing wet, do not keep resetting.",
        (_PUMPING, _POWER),
        _MEMORY,
    ),
    Caution(
        "A hose or float valve that fills the reservoir must not let its water back into the pipes that people drink from: an air gap above the level at which the pit spills, "
        "and a check valve at the tap; the water supplier's rules govern.",
        (_RESERVOIR,),
        _MEMORY,
    ),
    Caution(
        "Lift by a plan. Weigh each piece or ask its maker, two people or a lifter, fingers out from under; a crane needs a lifting plan by a competent person.",
        (_FEATURE, _LIFTS),
        "NIOSH lifting equation (second-hand); rest common practice",
    ),
    Caution(
        "Cutting or drilling stone, concrete or slab makes dust that scars lungs: water on the blade, and a fitted P3 or N100 respirator.",
        (_FEATURE, _LINING),
        _CP,
    ),
    Caution(
        "Dose against algae or germs by the water there is, by the label, and never mix products; not where birds, pets or fish drink. "
        "Water at about 20 to 45 degC that makes spray can carry Legionella to anybody who breathes it: have it assessed.",
        (_RESERVOIR, _MEASURING),
        "HSE, other risk systems; CDC, decorative fountains (second-hand); dosing common practice, no source",
    ),
    Caution(
        "Pets and small animals drink here and must be able to climb out; many plants that like wet ground are poisonous: ask before they are planted.",
        (_BED,),
        _CP,
    ),
    Caution("Wet stone is slippery, and freezes first: keep splash and drips off the path, and switch off in frost.", (_LINING, _ANSWERS), _CP),
    Caution(
        "Before winter switch off and unplug, lift the pump out, drain hose and vessel, and cover what stays open; ice splits vessels, hoses and pumps.",
        (_PUMPING, _ANSWERS),
        _CP,
    ),
)


def cautions_at(step: str) -> list[Caution]:
    """The cautions of a step of the form."""
    return [caution for caution in CAUTIONS_AT if step in caution.steps]
