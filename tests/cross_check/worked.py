"""Results of one design by name, and why the others are not there."""

import math

from plain_design import Impossible, Missing, Plain, Values


class Worked:
    """Results of one design; `why` says of the others what is missing, or that there is no such number."""

    def __init__(self, plain: Plain):
        self.plain, self.d, self.r, self.why = plain, plain.d, Values(), {}
        self.standing = None  # what stands on the blocks, once it is known

    def put(self, name: str, work) -> None:
        try:
            value = work()
            if isinstance(value, complex) or (not math.isfinite(value) and name not in MAY_BE_ENDLESS):
                raise Impossible("no finite number")
            if value < 0 and name not in MAY_BE_NEGATIVE and not name.startswith("level:"):
                raise Impossible("it would be below zero")
            self.r[name] = value
        except Missing as missing:
            self.why[name] = ("missing", str(missing))
        except Impossible as impossible:
            self.why[name] = ("impossible", str(impossible))
        except (ArithmeticError, ValueError):
            self.why[name] = ("impossible", "a division by nothing, or a number that there is not")

    def known(self, *names: str) -> bool:
        return all(name in self.r or name in self.d for name in names)


MAY_BE_ENDLESS = {"flotation", "rim_flow_ratio", "foam_held"}
MAY_BE_NEGATIVE = {
    "eccentricity",
    "standing_offset",
    "delivery",
    "foot",
    "foot_over_box",
    "roll_spare",
    "freeboard",
    "noise",
}
