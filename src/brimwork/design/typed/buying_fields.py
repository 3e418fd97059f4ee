"""What can be said of sizes sold, prices, cost and programme: the fields of a design, by section."""

from __future__ import annotations

from brimwork.design.typed.making import CP, J, assumed, share, sold
from brimwork.design.typed.prices import PER, PRICES, SOLD_LOOSE, Price
from brimwork.design.typed.reading import Date, Dates, Field, OneOf, Several
from brimwork.design.typed.steps import LEADS, STEPS, USUAL_TEAM, WAIT, Lead, Task
from brimwork.tables import HAND_DIGGING

_LOOSE = ("bag", "bulk bag", "tonne", "short ton", "cubic yard")
_A_YEAR = 365 * 86400.0


def _loose(name: str) -> OneOf:
    return OneOf(name, _LOOSE, "bulk bag", CP, "cubic yard")


def _time(step: Task) -> Field:
    """How long a step of the work takes."""
    return Field(f"time: {step.words}", step.usual.partition(" ")[2], most=_A_YEAR, usual=step.usual, basis=CP if step.by == WAIT else J)


def _lead(lead: Lead) -> Field:
    return Field(f"working days from order to site: {lead.words}", "day", most=_A_YEAR, usual=lead.usual, basis=lead.basis, usual_us=lead.usual_us)


def _price(row: Price) -> Field:
    """A price for one as it is sold, or for a metre or a foot."""
    per = ("cur/m", "cur/ft", "3 cur/m", "1 cur/ft") if row.by_length else ("cur", "", "40 cur", "")
    return Field(f"price of {row.name}", per[0], per[1], such=per[2], such_us=per[3])


BUYING_FIELDS: dict[str, dict] = {
    "buying": {
        "stone_sold": _loose("how the rounded stone is bought"),
        "sand_sold": OneOf("how the sand is bought", _LOOSE, "bag", CP),
        "sub_base_sold": _loose("how the aggregate for sub-base and backfill is bought"),
        "bag": sold("what one bag holds", "25 kg", "50 lb"),
        "bulk_bag": sold("what one bulk bag holds", "800 kg", "1760 lb"),
        "loose_step": assumed("loose material is sold in this share of a tonne, a ton or a cubic yard", "0.5", CP, most=10.0),
        "sand_density": assumed("bulk density of loose sand", "1600 kg/m3", CP, "lb/ft3"),
        "sub_base_density": assumed("bulk density of loose aggregate", "1700 kg/m3", CP, "lb/ft3"),
        "sand_packing": assumed("loose volume of sand over its volume in place: 1.15 to 1.25", "1.2", CP, most=3.0),
        "sub_base_packing": assumed("loose volume of aggregate over its volume in place: 1.15 to 1.35", "1.25", CP, most=3.0),
        "sheet_length": sold("length of a sheet of board", "2.44 m", "8 ft"),
        "sheet_width": sold("width of a sheet of board", "1.22 m", "4 ft"),
        "saw": sold("width of a saw cut", "4 mm", "0.125 in"),
        "strut_spacing": sold("distance between struts inside the box", "600 mm", "24 in", J),
        "batten": sold("length of timber that is sold", "2.4 m", "8 ft"),
        "screw_spacing": sold("distance between screws at the corners of the box", "150 mm", "6 in", J),
        "screw_box": assumed("screws in a box", "100", CP),
        "cut_step": sold("what is cut off a roll or coil is a multiple of", "0.5 m", "1 ft"),
        "liner_slack": assumed("slack of the liner", "0.02", CP, most=1.0),
        "liner_lap": sold("lap of liner over liner, and into each end of a rill", "150 mm", "6 in"),
        "fleece_roll": sold("width of a roll of fleece", "2 m", "6 ft"),
        "fleece_lap": sold("lap of a strip of fleece over the next", "100 mm", "4 in"),
        "fleece_waste": assumed("slack and trimming in the length of each strip of fleece; laps are counted beside it", "0.05", J, most=1.0),
        "fabric_roll": sold("width of a roll of separation fabric", "2 m", "6 ft"),
        "fabric_lap": sold("lap of a strip of separation fabric over the next", "300 mm", "12 in"),
        "fabric_waste": assumed("slack and trimming in the length of each strip of separation fabric; laps are counted beside it", "0.05", J, most=1.0),
        "mesh_roll": sold("width of a roll of mesh", "1 m", "4 ft"),
        "mesh_lap": sold("how far the mesh reaches beyond the box", "100 mm", "4 in", J),
        "mesh_strip_lap": sold("lap of a strip of mesh over the next", "100 mm", "4 in", J),
        "mesh_waste": assumed("trimming in the length of each strip of mesh; laps are counted beside it", "0.05", J, most=1.0),
        "tape_roll": sold("length of a roll of tape", "50 m", "150 ft"),
        "hose_waste": assumed("waste of hose", "0.1", CP, most=1.0),
        "hose_extra": sold("hose for the ends of each piece", "0.5 m", "20 in"),
        "pipe_waste": assumed("waste of duct and pipe", "0.1", CP, most=1.0),
        "duct_coil": sold("length of a coil of duct", "25 m", "100 ft"),
        "pipe_stick": sold("length of pipe that is sold", "3 m", "10 ft"),
        "overflow_run": Field("length of the overflow pipe, to where it drains", "m", "ft", such="4 m", such_us="13 ft"),
        "overflow_bends": assumed("bends of the overflow pipe", "2", J, most=20.0),
        "spare_washers": assumed("spare washers", "1", CP, most=100.0),
        "foam_board": sold("volume of one board of foam", "72 L", "2.5 ft3"),
        "foam_waste": assumed("waste of foam", "0.1", J, most=1.0),
        "sealant_reach": sold("joint that one cartridge of sealant fills", "6 m", "20 ft", J),
        "load": sold("loose soil that one load takes away", "3 m3", "4 yd3"),
    },
    "prices": {
        **{key: _price(row) for key, row in PRICES.items()},
        **{key + PER: OneOf(f"what the price of {PRICES[key].name.partition(',')[0]} is for", _LOOSE) for key in SOLD_LOOSE},
        "stones": Several("prices of the drilled stones, in their order", "cur", "cur", "420 cur, 380 cur", "420 cur, 380 cur"),
    },
    "costing": {
        "hours": Field("hours of work on site, all people together, in place of those of the programme", "h", such="60 h"),
        "rate": Field("rate of pay for an hour of one person (0 for your own work)", "cur/h", such="30 cur/h"),
        "overhead": share("overhead as a share of the direct cost", "0.1"),
        "contingency": assumed("contingency as a share of the cost: 10 to 15 % for work in the ground", "0.12", CP, most=1.0),
        "margin": share("margin: profit as a share of the price", "0.15"),
        "tax": share("tax, as a share of what it is on", "0.2"),
        "tax_on": OneOf("what the tax is on", ("the whole price", "materials and hire"), "the whole price", J, "materials and hire"),
        "prices_are": OneOf("the prices, as they are typed", ("before tax", "with tax"), "before tax", J),
        "water_price": Field("price of water", "cur/m3", "cur/US gal", such="3 cur/m3", such_us="0.01 cur/US gal"),
        "service": Field("service in a year: cleaning and small parts", "cur", such="80 cur"),
        "years": assumed("years over which the whole cost is counted", "10", J, most=100.0),
    },
    "programme": {
        "start": Date("first day on site"),
        "closed": Dates("public holidays and other days on which nobody works"),
        "in_hand": Field("working days that what is ordered comes before it is needed", "day", most=_A_YEAR, usual="1 day", basis=J),
        "people": Field("people who work on site", "", whole=True, most=50, usual=f"{USUAL_TEAM}", basis=CP),
        "day": Field("hours of a working day", "h", most=16 * 3600.0, least=3600.0, usual="8 h", basis=CP),
        "soil_type": OneOf("soil that is dug", tuple(HAND_DIGGING)),
        "barrowing": assumed("loading and barrowing what is dug, for each volume in the ground", "2 h/m3", CP, "h/yd3"),
        **{key: _time(step) for key, step in STEPS.items()},
        **{f"order_{key}": _lead(lead) for key, lead in LEADS.items()},
    },
}  # fmt: skip
