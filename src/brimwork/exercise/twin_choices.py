"""What questions without numbers of their own say in the words of the other system of units: choices, and sums with a slip; see twin_words."""

from __future__ import annotations

from typing import Any

OTHER_CHOICES: dict[str, dict[str, Any]] = {
    # --- choices
    "T01.8": {
        "text": "A small fall is measured at 56 dB from 3 ft away, in the open. You move the seat from 6 ft to 12 ft. How does the sound at the seat change?",
        "wrong": (
            ("It drops to half the decibels.", "Decibels are logarithms. Half the number would be far quieter than it is."),
            ("It drops by about 3 dB.", "That is for half the strength. Twice as far away a quarter is left."),
            ("It drops by about 12 dB.", "That is for two doublings. From 6 ft to 12 ft is one."),
        ),
    },
    "T02.20": {
        "text": "A pit is 4 ft by 3 ft at the bottom and 2 ft deep. Its sides lean out by 0.35 ft for each foot up. How much does it hold?",
        "right": "About 35 cubic feet.",
        "because": "Over the floor stand 24 cubic feet. Wedges and corners round it add 11.",
        "wrong": (
            ("About 24 cubic feet.", "That is what stands straight over the floor. The sides lean out, so there is more round it."),
            ("About 29 cubic feet.", "You let one side of each pair lean out. Both ends and both sides do."),
            ("About 48 cubic feet.", "You took the area at the top all the way down. The pit gets narrower towards its floor."),
        ),
    },
    "T04.8": {
        "text": "A lip passes 8 US gallons a minute with a quarter of an inch of water over it. You want half an inch. How much flow does that take?",
        "right": "About 23 US gallons a minute.",
        "because": "Flow goes with head to the power 3/2, and 2 to that power is 2.83. So 8 becomes 23.",
        "wrong": (
            ("About 16 US gallons a minute.", "Twice the depth makes twice the area. But deeper water is faster too, so more than twice as much flows."),
            ("About 32 US gallons a minute.", "Four times would be the square. The speed grows with the root of the depth, so it is the power 3/2."),
            ("About 11 US gallons a minute.", "That is the root: it is how the speed alone grows. The stream is also twice as deep."),
        ),
    },
    "T05.7": {
        "text": "A hose with a bore of 1 in carries 8 US gallons a minute. You change it for one of 3/4 in, and keep the flow. What does the head that the hose loses do?",
        "because": "At one flow the loss goes with the bore to the power 5, and 1/0.75 to that power is 4.2.",
        "wrong": (
            ("It grows about 1.3 times.", "That is how much thinner the hose is. The water also has to run faster, and that counts far more."),
            ("It grows about 1.8 times.", "That is how much faster the water runs. Loss goes with the speed squared, and a thin hose rubs more."),
            ("It grows about 3 times.", "That is the speed squared alone. In a thinner hose more of the water rubs on the wall as well."),
        ),
    },
    "T06.20": {
        "text": "A lined pit measures 400 US gallons. Twelve blocks of 16 gallons go in, each 95 % empty. Pebbles fill the rest, 40 % empty. How much water does it hold?",
        "right": "About 266 US gallons.",
        "because": "The blocks hold 182 gallons. The other 208 gallons of the pit are 40 % empty and hold 83. Together 266, rounded at the end.",
        "wrong": (
            ("About 182 US gallons.", "That is the water in the blocks alone. Water stands between the pebbles too."),
            ("About 380 US gallons.", "You took 95 % of the whole pit. Only the blocks are so empty; pebbles leave 40 %."),
            ("About 160 US gallons.", "You took 40 % of the whole pit. That goes for pebbles alone, and blocks hold far more."),
        ),
    },
    "T06.8": {
        "text": "While the pump runs, water stands 0.1 in over the rim of a bowl. The hose mouth lies 0.6 in under the rim, and there is no check valve. The hidden"
        " tank has twice the plan area of the bowl. The pump starts after a rest. About how far does the tank fall?",
        "right": "By more than 0.3 in.",
        "because": "The bowl has emptied itself down to the hose mouth, so 0.7 in of it must be filled. Over twice the plan area that is 0.35 in, and hose and stone come on top.",
        "wrong": (
            ("By 0.05 in.", "You filled the 0.1 in over the rim. At the stop the bowl also ran empty down to the hose mouth."),
            ("By 0.1 in.", "The tank does not follow the bowl. It has another plan, and more than the water over the rim is missing."),
            ("Not at all, for the water goes round.", "It goes round, but a part of it is always up in the feature. That part is missing in the tank."),
        ),
    },
    "T07.20": {
        "text": "A full bowl stands on a ring foot, 15 in outside and 9 in inside. You change it for a full foot of the same size outside. What does the pressure do?",
        "wrong": (
            ("It falls by about a tenth.", "The hole is more than half as wide as the foot. Square that, and it takes over a third of the area."),
            ("It falls by more than a half.", "You compared the widths, 9 with 15. Areas go with the width squared."),
            ("It rises by about a third.", "The same load on more area presses less: divide by the larger area."),
        ),
    },
    "T08.6": {
        "text": "A pit 4.5 ft deep in wet sand is open and its side begins to crack. Someone's level staff is at the bottom. What now?",
        "because": "A side can fall without warning, and a cubic yard of soil weighs well over a ton.",
    },
    "T09.20": {
        "text": "The blocks are changed for taller ones, so a box with upright sides gets 4 in deeper. How much longer must the liner be cut?",
        "right": "8 in longer.",
        "wrong": (
            ("4 in longer.", "That is one side. The liner goes down one side and up the other, so the depth counts twice."),
            ("16 in longer.", "You counted all four sides. Along its length a liner meets two of them; the other two count in its width."),
            ("Not at all.", "You took it off the apron. The apron is as wide as before, and the liner must still cover it."),
        ),
    },
    "T10.7": {"text": "The pump's cord is 3 ft too short to reach the socket. What is right?"},
    "T11.6": {"because": "A child can drown in an inch or two of water. Where none lies open none is in reach; watch all the same, for stones move."},
    # --- find the slip
    "T01.10": {
        "text": "The bench mark stands at 100.00 ft. A staff on it reads 4.10 ft, and on a stone 6.25 ft. Somebody works out the level of the stone.",
        "lines": (
            ("Level of the bench mark: 100.00 ft.", "This holds: it is given."),
            ("The line of sight lies above it: 100.00 + 4.10 = 104.10 ft.", "This holds: the staff reads up from its foot."),
            ("The stone lies the second reading above that: 104.10 + 6.25 = 110.35 ft.", ""),
        ),
        "mend": ("level of the stone", "97.85 ft", "110.35 ft"),
    },
    "T02.22": {
        "text": "A pit has a floor of 4 ft by 3 ft and is 2 ft deep; its sides lean out by 0.35. Somebody works out what it holds.",
        "lines": (
            ("Over the floor: 4 x 3 x 2 = 24 ft3.", "This holds: length times width times depth."),
            ("Wedges along the sides: 0.35 x (4 + 3) x 2 = 4.9 ft3.", ""),
            ("Corners: 4/3 x 0.35 squared x 2 cubed = 1.31 ft3.", "The corners hold: four thin pyramids."),
            ("Together: 24 + 4.9 + 1.31 = 30.2 ft3.", "The sum holds: add the three parts."),
        ),
        "because": "A wedge gets higher and wider with the depth, so the depth is squared. As it stands, the units come out as square feet.",
        "mend": ("volume", "35.1 ft3", "30.2 ft3"),
    },
    "T04.7": {
        "text": "320 US gal/h runs over a round rim 24 in across, with a weir coefficient of 3.08 ft^0.5/s.",
        "lines": (
            ("Flow: 320 gallons an hour is 5.33 US gal/min.", "The flow holds: 320 over 60 minutes."),
            ("Edge: the rim is 24 in across, so the edge is 2 ft.", ""),
            ("Flow for each foot: the flow over the edge.", "This step holds: share the flow out along the edge."),
            ("Head: flow for each foot over 3.08, to the power 2/3.", "The power holds: 2/3 undoes 3/2."),
        ),
        "because": "Water goes over all round. The edge is pi x 2 = 6.28 ft, and the head is 0.087 in.",
    },
    "T04.10": {
        "text": "A pump sends 10 US gal/min over a straight lip 20 in long, with a weir coefficient of 3.26 ft^0.5/s. Somebody works out the head.",
        "lines": (
            ("Flow: 10 gallons a minute is 0.0223 ft3/s.", "The flow holds: 10 over 60 seconds, and a US gallon is 0.1337 of a cubic foot."),
            ("Flow for each foot: 0.0223/1.667 = 0.0134 ft2/s.", "This holds: the flow is shared out along the lip."),
            ("Over the coefficient: 0.0134/3.26 = 0.0041 ft^1.5.", "This holds: what is left is the head to the power 3/2."),
            ("Head: 0.0041 to the power 3/2 = 0.00315 in.", ""),
        ),
        "because": "To undo the power 3/2, take the power 2/3. Water three thousandths of an inch deep would be thinner than a hair.",
        "mend": ("head over the lip", "0.307 in", "0.00315 in"),
    },
    "T05.9": {
        "text": "8 US gal/min is to be lifted 3 ft through 12 ft of hose with a bore of 1 in (friction factor 0.025, fittings 4.7). Somebody works out the pump's head.",
        "lines": (
            ("Speed: 0.0178 ft3/s over 0.00545 ft2 = 3.27 ft/s.", "The speed holds: flow over the area of the bore."),
            ("Velocity head: 3.27 squared over two g = 0.166 ft.", "The velocity head holds: speed squared over two g."),
            ("Hose: 0.025 x 12/0.0833 x 0.166 = 0.598 ft.", "The hose holds: the friction factor, times how many bores long it is, times the velocity head."),
            ("Fittings: 4.7 x 0.166 = 0.780 ft.", "The fittings hold: their number times the velocity head."),
            ("Head: 0.598 + 0.780 = 1.378 ft.", ""),
        ),
        "mend": ("head that the pump must give", "4.38 ft", "1.378 ft"),
    },
    "T06.7": {
        "text": "Blocks 4 ft by 2.5 ft, 95 % void, stand in a tank. 5 US gal goes into transit. How far does the level fall?",
        "lines": (
            ("Plan: 4 x 2.5 = 10 square feet.", "The plan holds: length times width."),
            ("5 US gal is 0.668 cubic feet.", "This holds: a cubic foot has 7.48 US gallons."),
            ("Water area: 10 / 0.95 = 10.53 square feet.", ""),
            ("Fall: the volume over the water area.", "This holds: volume over area gives depth."),
        ),
        "because": "The blocks leave less room, so the water area is 10 x 0.95 = 9.5 square feet. The level falls by 0.844 in.",
    },
    "T06.10": {
        "text": "A tank can give 64 US gal. Of that, 8 US gal are in transit while the pump runs. Each day 4 US gal dry or splash out. Somebody works out how long it lasts.",
        "lines": (
            ("Water that the pump can reach: 64 US gal.", "This holds: it is given."),
            ("Of it in transit: 8 US gal.", "This holds: it is given."),
            ("Water there is to lose: 64 + 8 = 72 US gal.", ""),
            ("Days: 72 over 4 = 18.", "Water over loss is right. The slip came before."),
        ),
        "mend": ("time without top-up", "14 day", "18 day"),
    },
    "T06.22": {
        "text": "A lined pit of 500 US gallons takes 16 blocks of 12.5 gallons, each 95 % empty. Pebbles, 35 % empty, fill the rest. Somebody works out the water.",
        "lines": (
            ("Space of the blocks: 16 x 12.5 = 200 US gal.", "This holds: the number of blocks times the size of one."),
            ("Water in the blocks: 0.95 x 200 = 190 US gal.", "This holds: the empty share of the blocks."),
            ("Water in the stone: 0.35 x 500 = 175 US gal.", ""),
            ("Together: 190 + 175 = 365 US gal.", "The sum holds: blocks and stone together."),
        ),
        "because": "Stone fills only what the blocks leave. Take their 200 gallons off the pit first.",
        "mend": ("water held", "295 US gal", "365 US gal"),
    },
    "T07.22": {
        "text": "A bowl of 330 lb with 16 US gallons of water stands on a ring foot, 16 in outside and 9.6 in inside. Somebody works out the pressure under the ring.",
        "lines": (
            ("Water: 16 x 8.34 = 133 lb.", "This holds: a US gallon of water weighs 8.34 lb."),
            ("Weight: 330 + 133 = 463 lbf.", "The weight holds: bowl and water together."),
            ("Area: pi/4 x (16 - 9.6) squared = 32.2 in2.", ""),
            ("Pressure: 463/32.2 = 14.4 psi.", "The pressure holds: weight over area."),
        ),
        "mend": ("pressure", "3.6 psi", "14.4 psi"),
    },
    "T08.22": {
        "text": "A layer 4 in thick when rolled is wanted under 5 ft by 4 ft. It takes 1.25 ft3 loose for each ft3 rolled, and loose it weighs 100 lb/ft3. Somebody orders it.",
        "lines": (
            ("Rolled: 5 x 4 x 0.333 = 6.67 ft3.", "This holds: length, width and thickness in feet."),
            ("Loose: 6.67/1.25 = 5.33 ft3.", ""),
            ("Mass: 5.33 x 100 = 533 lb.", "This follows rightly from the line before."),
        ),
        "mend": ("mass", "833 lb", "533 lb"),
    },
    "T09.22": {
        "text": "Blocks stand 4 ft by 2.5 ft. On every side come 0.75 in of lining and clearance, a 0.75 in panel and 6 in of working space. The pit is 2 ft deep"
        " in loam, which swells by a quarter. Somebody works out the heap.",
        "lines": (
            ("Pit: 7.5 in more at each end, so 5.25 ft by 3.75 ft.", "The pit holds: 0.75 + 0.75 + 6 = 7.5 in, and both ends have it."),
            ("In the ground: 5.25 x 3.75 x 2 = 39.4 ft3.", "This holds: length times width times depth."),
            ("Heap: 39.4/1.25 = 31.5 ft3.", ""),
            ("Barrows of 3 ft3: 31.5/3 = 10.5, so 11 loads.", "This step holds: loads are rounded up. It only starts from the wrong heap."),
        ),
        "mend": ("loose volume of the heap", "49.2 ft3", "31.5 ft3"),
    },
    "T10.22": {
        "text": "A load draws 3 A at the end of 130 ft of two-core cable at 120 V. One core has 3.1 ohm/kft. Somebody works out the drop in per cent.",
        "lines": (
            ("One core: 130 ft x 3.1 ohm/kft = 0.403 ohm.", "This holds: length times what a thousand feet have."),
            ("Drop: 3 A x 0.403 ohm = 1.21 V.", ""),
            ("Of 120 V: 1.21/120 = 1.01 %.", "This follows rightly from the line before."),
        ),
        "because": "The current comes back through the other core. Count the length twice: 2 x 0.403 ohm.",
        "mend": ("drop in per cent", "2.02 %", "1.01 %"),
    },
    "T13.22": {
        "text": "An open reservoir without blocks has 10 ft2 of water. In a day it falls 0.35 in, and the control bucket beside it 0.15 in. Somebody works out the day's leak.",
        "lines": (
            ("The bucket lost 0.15 in by drying.", "This holds: a bucket does not leak."),
            ("Leak and drying together: 0.35 + 0.15 = 0.50 in.", ""),
            ("On 10 ft2 that makes 3.12 US gal.", "This follows rightly from the line before: an inch on a square foot is 0.623 of a US gallon."),
        ),
        "because": "The pit's 0.35 in are leak and drying together. Take the bucket's fall off, and the leak is left.",
        "mend": ("leak in a day", "1.25 US gal", "3.12 US gal"),
    },
    "T14.22": {
        "text": "A blade 36 in long is fed with 40 US gal/min, and its sheet falls 20 in. Somebody works out how far out it lands.",
        "lines": (
            ("For each foot: 40/3 = 13.3 US gal/min, which is 0.0297 ft2/s.", "This holds: the flow is shared out along the edge."),
            ("Critical depth: (0.0297^2/32.2)^(1/3) = 0.0302 ft.", "This holds: it follows from the flow for each foot alone."),
            ("At the brink: 0.715 x 0.0302 = 0.0216 ft deep, so 0.0297/0.0216 = 1.38 ft/s.", "This holds: the water is thinner at the brink, and faster."),
            ("Time of the fall: 1.67/32.2 = 0.0518 s.", ""),
            ("Throw: 1.38 x 0.0518 = 0.0714 ft.", "This follows rightly from the line before."),
        ),
        "because": "A fall takes the root of two heights over g: (2 x 1.67/32.2)^(1/2) = 0.322 s.",
        "mend": ("throw", "5.32 in", "0.857 in"),
    },
}
